// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>

#include <QImage>
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <ostream>
#include <string>
#include <string_view>

#include "compute/calculation.h"
#include "model/json.h"
#include "printed.h"
#include "report_print/figure_paint.h"

// What every picture must keep in every room it gets, on a page, beside a step and on paper: no
// text over another, none too small to read, nothing off the paper. With SW_PICTURES=DIR the
// pictures are kept there to be looked at.

namespace sw::testing {

struct PictureRoom {
  const char* name;
  figure::Size size;
};
inline constexpr std::array kPictureRooms{
    PictureRoom{"page", {46, 26}}, PictureRoom{"step", {30, 18}}, PictureRoom{"narrow", {24, 20}}};
inline constexpr double kPictureEm = 13;

/// How a calculation draws its answer to this input; empty where it draws nothing.
inline Result<compute::Draw> drawOf(const compute::Calculation& calculation,
                                    std::string_view input) {
  return model::parseJson(input)
      .and_then([&](const model::Json& json) { return compute::answerTo(calculation, json); })
      .map([](const compute::Answer& answer) { return answer.draw; });
}

inline void keepPicture(const figure::Figure& figure, const report_print::FigureLook& look,
                        const std::string& name) {
  const char* folder = std::getenv("SW_PICTURES");
  if (folder == nullptr) return;
  const QImage image = report_print::picture(figure, look);
  EXPECT_TRUE(image.save(QString::fromStdString(std::string(folder) + "/" + name + ".png")));
}

inline void expectTextsApart(const figure::Figure& figure, const report_print::FigureLook& look) {
  const double em = look.font.pixelSize();
  const QRectF paper(0, 0, figure.size.width * em, figure.size.height * em);
  const auto places = report_print::placeTexts(figure, look);
  for (const auto* text : places.crowded) ADD_FAILURE() << "no room for " << text->text;
  for (std::size_t i = 0; i < places.placed.size(); ++i) {
    const auto& [box, text, font] = places.placed[i];
    EXPECT_GE(text->size, 0.75) << text->text;
    EXPECT_EQ(text->text.find("nan"), std::string::npos) << text->text;
    EXPECT_TRUE(paper.contains(box)) << text->text;
    for (std::size_t j = 0; j < i; ++j) {
      EXPECT_FALSE(box.intersects(places.placed[j].box))
          << text->text << " over " << places.placed[j].text->text;
    }
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
    if (const auto* text = std::get_if<figure::Text>(&item)) expectPoint(text->at);
  }
}

inline void expectGoodPicture(const compute::Draw& draw, const std::string& name,
                              double scale = 1.0) {
  for (const PictureRoom& room : kPictureRooms) {
    SCOPED_TRACE(name + ", " + room.name + " at " + std::to_string(scale));
    const figure::Figure figure = draw(room.size);
    const auto look = report_print::printLook(kPictureEm * scale);
    EXPECT_FALSE(figure.title.empty());
    EXPECT_FALSE(figure.description.empty());
    EXPECT_FALSE(figure.items.empty());
    expectTextsApart(figure, look);
    expectOnPaper(figure);
    keepPicture(figure, look, name + "-" + room.name + (scale > 1 ? "-2x" : ""));
  }
}

/// An input at the end of what can be asked.
struct PictureEdge {
  const char* calculation;
  const char* name;
  const char* input;
};

inline void PrintTo(const PictureEdge& edge, std::ostream* out) {
  *out << edge.calculation << " " << edge.name;
}

inline void expectGoodPicture(const PictureEdge& edge) {
  const auto calculation = compute::findCalculation(edge.calculation);
  ASSERT_TRUE(calculation);
  const auto draw = drawOf(*calculation, edge.input);
  ASSERT_TRUE(draw) << draw.error().key << " " << draw.error().field;
  ASSERT_TRUE(*draw);
  expectGoodPicture(*draw, std::string("edge-") + edge.calculation + "-" + edge.name);
}

class PictureTest : public ::testing::Test {
 protected:
  void SetUp() override { ensureGui(); }
};
template <class Row>
class PicturesOf : public PictureTest, public ::testing::WithParamInterface<Row> {};

/// A name that a test may have.
inline std::string testName(std::string name) {
  std::erase(name, '-');
  return name;
}

}  // namespace sw::testing
