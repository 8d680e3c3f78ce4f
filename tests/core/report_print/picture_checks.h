// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>

#include <QImage>
#include <array>
#include <cmath>
#include <cstdlib>
#include <string>

#include "compute/calculation.h"
#include "report_print/figure_paint.h"

// What every picture must keep in every room: no text over another, nothing off the paper. With
// SW_PICTURES=DIR the pictures are kept there to be looked at.

namespace sw::testing {

struct PictureRoom {
  const char* name;
  figure::Size size;
};
inline constexpr std::array kPictureRooms{
    PictureRoom{"page", {46, 26}}, PictureRoom{"step", {30, 18}}, PictureRoom{"narrow", {24, 20}}};

inline void keepPicture(const figure::Figure& figure, const report_print::FigureLook& look,
                        const std::string& name) {
  const char* folder = std::getenv("SW_PICTURES");
  if (folder == nullptr) return;
  const QImage image = report_print::picture(figure, look);
  EXPECT_TRUE(image.save(QString::fromStdString(std::string(folder) + "/" + name + ".png")));
}

inline void expectTextsApart(const figure::Figure& figure, const report_print::FigureLook& look) {
  const auto places = report_print::placeTexts(figure, look);
  for (const auto* text : places.crowded) ADD_FAILURE() << "no room for " << text->text;
  for (const auto& placed : places.placed) {
    EXPECT_GE(placed.text->size, 0.75) << placed.text->text;
    EXPECT_EQ(placed.text->text.find("nan"), std::string::npos) << placed.text->text;
  }
}

inline void expectOnPaper(const figure::Figure& figure) {
  const auto expectPoint = [&](const figure::Point& point) {
    ASSERT_TRUE(std::isfinite(point.x) && std::isfinite(point.y));
    EXPECT_GT(point.x, -0.5);
    EXPECT_GT(point.y, -0.5);
    EXPECT_LT(point.x, figure.size.width + 0.5);
    EXPECT_LT(point.y, figure.size.height + 0.5);
  };
  for (const auto& item : figure.items) {
    if (const auto* path = std::get_if<figure::Path>(&item)) {
      for (const auto& point : path->points) expectPoint(point);
    }
    if (const auto* mark = std::get_if<figure::Mark>(&item)) expectPoint(mark->at);
  }
}

inline void expectGoodPicture(const compute::Draw& draw, const std::string& name) {
  constexpr double kEm = 13;
  for (const PictureRoom& room : kPictureRooms) {
    SCOPED_TRACE(name + ", " + room.name);
    const figure::Figure figure = draw(room.size);
    const auto look = report_print::printLook(kEm);
    EXPECT_FALSE(figure.title.empty());
    EXPECT_FALSE(figure.description.empty());
    expectTextsApart(figure, look);
    expectOnPaper(figure);
    keepPicture(figure, look, name + "-" + room.name);
  }
}

}  // namespace sw::testing
