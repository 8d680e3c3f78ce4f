// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "compute/calculation.h"
#include "figure/svg.h"
#include "picture_checks.h"
#include "report_print/figure_paint.h"

// Every picture of every calculation, drawn from the example of its description, at 1x and 2x.

namespace sw::report_print {
namespace {

using testing::kPictureEm;

compute::Draw exampleOf(const compute::Calculation& calculation) {
  return testing::drawOf(calculation, calculation.describe().exampleInput).value_or(nullptr);
}

std::vector<const compute::Calculation*> drawn() {
  std::vector<const compute::Calculation*> rows;
  for (const auto& row : compute::calculations()) {
    if (exampleOf(row)) rows.push_back(&row);
  }
  return rows;
}

class Pictures : public testing::PicturesOf<const compute::Calculation*> {};

TEST_P(Pictures, HaveRoomForEveryTextAndStayOnTheirPaper) {
  const auto draw = exampleOf(*GetParam());
  for (const double scale : {1.0, 2.0}) {
    testing::expectGoodPicture(draw, std::string(GetParam()->name), scale);
  }
}

TEST_P(Pictures, GoIntoABrowser) {
  const std::string svg =
      figure::toSvg(exampleOf(*GetParam())(testing::kPictureRooms.front().size));
  EXPECT_EQ(svg.rfind("<svg ", 0), 0U);
  EXPECT_EQ(svg.find("nan"), std::string::npos);
}

INSTANTIATE_TEST_SUITE_P(Bench, Pictures, ::testing::ValuesIn(drawn()), [](const auto& row) {
  return testing::testName(std::string(row.param->name));
});

using TextPlacesTest = testing::PictureTest;

TEST_F(TextPlacesTest, AMovableTextGoesWhereThereIsRoomAndAnOptionalOneIsLeftOut) {
  figure::Figure figure;
  figure.size = {20, 10};
  figure.add(figure::Text{{10, 5}, "first"});
  figure.add(figure::Text{.at = {10, 5}, .text = "second", .room = figure::Room::Movable});
  figure.add(figure::Text{.at = {10, 5}, .text = "third", .room = figure::Room::Optional});
  const auto places = placeTexts(figure, printLook(kPictureEm));
  EXPECT_EQ(places.placed.size(), 2U);
  EXPECT_EQ(places.leftOut.size(), 1U);
  EXPECT_TRUE(places.crowded.empty());
}

TEST_F(TextPlacesTest, WhatCannotBePlacedIsAFault) {
  figure::Figure figure;
  figure.size = {6, 2};
  figure.add(figure::Text{{0, 1}, "much too long for it"});
  figure.add(figure::Text{{0, 1}, "and another"});
  EXPECT_FALSE(placeTexts(figure, printLook(kPictureEm)).crowded.empty());
}

}  // namespace
}  // namespace sw::report_print
