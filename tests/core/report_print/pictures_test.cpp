// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QImage>
#include <cstdlib>
#include <nlohmann/json.hpp>

#include "compute/calculation.h"
#include "figure/svg.h"
#include "model/json.h"
#include "printed.h"
#include "report_print/figure_paint.h"

// Every picture of every calculation, drawn from the example of its description in the rooms it
// gets on a page, beside a step and on paper, at 1x and 2x: no text overlaps another or is cut.
// With SW_PICTURES=DIR the pictures are kept there to be looked at.

namespace sw::report_print {
namespace {

struct Room {
  const char* name;
  figure::Size size;
};

constexpr std::array kRooms{Room{"page", {46, 26}}, Room{"step", {30, 18}},
                            Room{"narrow", {24, 20}}};
constexpr double kEm = 13;

compute::Draw drawOf(const compute::Calculation& calculation) {
  const auto input = model::parseJson(calculation.describe().exampleInput);
  if (!input) return {};
  auto answer = compute::answerTo(calculation, *input);
  return answer ? answer->draw : compute::Draw{};
}

std::vector<const compute::Calculation*> drawn() {
  std::vector<const compute::Calculation*> rows;
  for (const auto& row : compute::calculations()) {
    if (drawOf(row)) rows.push_back(&row);
  }
  return rows;
}

class Pictures : public ::testing::TestWithParam<const compute::Calculation*> {
 protected:
  void SetUp() override { sw::testing::ensureGui(); }
};

std::string wordsOf(const std::vector<const figure::Text*>& texts) {
  std::string words;
  for (const auto* text : texts) words += "[" + text->text + "] ";
  return words;
}

void keep(const QImage& image, const std::string& name) {
  const char* folder = std::getenv("SW_PICTURES");
  if (folder != nullptr) {
    EXPECT_TRUE(image.save(QString::fromStdString(std::string(folder) + "/" + name + ".png")));
  }
}

TEST_P(Pictures, HaveRoomForEveryText) {
  const auto draw = drawOf(*GetParam());
  for (const Room& room : kRooms) {
    for (const double scale : {1.0, 2.0}) {
      const auto figure = draw(room.size);
      const auto look = printLook(kEm * scale);
      const TextPlaces places = placeTexts(figure, look);
      SCOPED_TRACE(std::string(room.name) + " at " + std::to_string(scale));
      EXPECT_TRUE(places.crowded.empty()) << wordsOf(places.crowded);
      const QRectF paper(0, 0, figure.size.width * kEm * scale, figure.size.height * kEm * scale);
      for (std::size_t i = 0; i < places.placed.size(); ++i) {
        EXPECT_TRUE(paper.contains(places.placed[i].box)) << places.placed[i].text->text;
        for (std::size_t j = 0; j < i; ++j) {
          EXPECT_FALSE(places.placed[i].box.intersects(places.placed[j].box))
              << places.placed[i].text->text << " over " << places.placed[j].text->text;
        }
      }
      keep(picture(figure, look),
           std::string(GetParam()->name) + "-" + room.name + (scale > 1 ? "-2x" : ""));
    }
  }
}

TEST_P(Pictures, SayWhatTheyShowAndStayOnTheirPaper) {
  const auto draw = drawOf(*GetParam());
  const auto figure = draw(kRooms[0].size);
  EXPECT_FALSE(figure.title.empty());
  EXPECT_FALSE(figure.description.empty());
  EXPECT_FALSE(figure.items.empty());
  const auto onPaper = [&](const figure::Point& point) {
    return point.x > -0.5 && point.y > -0.5 && point.x < figure.size.width + 0.5 &&
           point.y < figure.size.height + 0.5;
  };
  for (const auto& item : figure.items) {
    if (const auto* path = std::get_if<figure::Path>(&item)) {
      for (const auto& point : path->points) {
        EXPECT_TRUE(onPaper(point)) << point.x << " " << point.y;
      }
    }
    if (const auto* mark = std::get_if<figure::Mark>(&item)) {
      EXPECT_TRUE(onPaper(mark->at));
    }
  }
  const std::string svg = figure::toSvg(figure);
  EXPECT_EQ(svg.rfind("<svg ", 0), 0U);
  EXPECT_EQ(svg.find("nan"), std::string::npos);
}

INSTANTIATE_TEST_SUITE_P(Bench, Pictures, ::testing::ValuesIn(drawn()), [](const auto& row) {
  std::string name(row.param->name);
  name.erase(std::remove(name.begin(), name.end(), '-'), name.end());
  return name;
});

class TextPlacesTest : public ::testing::Test {
 protected:
  void SetUp() override { sw::testing::ensureGui(); }
};

TEST_F(TextPlacesTest, AMovableTextGoesWhereThereIsRoomAndAnOptionalOneIsLeftOut) {
  figure::Figure figure;
  figure.size = {20, 10};
  figure.add(figure::Text{{10, 5}, "first"});
  figure.add(figure::Text{.at = {10, 5}, .text = "second", .room = figure::Room::Movable});
  figure.add(figure::Text{.at = {10, 5}, .text = "third", .room = figure::Room::Optional});
  const auto places = placeTexts(figure, printLook(kEm));
  EXPECT_EQ(places.placed.size(), 2U);
  EXPECT_EQ(places.leftOut.size(), 1U);
  EXPECT_TRUE(places.crowded.empty());
}

TEST_F(TextPlacesTest, WhatCannotBePlacedIsAFault) {
  figure::Figure figure;
  figure.size = {6, 2};
  figure.add(figure::Text{{0, 1}, "much too long for it"});
  figure.add(figure::Text{{0, 1}, "and another"});
  EXPECT_FALSE(placeTexts(figure, printLook(kEm)).crowded.empty());
}

}  // namespace
}  // namespace sw::report_print
