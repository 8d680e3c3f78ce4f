// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QImage>
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <ostream>

#include "compute/calculation.h"
#include "figure/vectors.h"
#include "model/json.h"
#include "printed.h"
#include "report_print/figure_paint.h"

// Pictures of bolts, wheels and geometry drawn from inputs at the edges: nothing given that may be
// left out, extreme values, signs turned, lists as long as they may be. Every text has room, all
// stays on the paper, and every text can be read. With SW_PICTURES=DIR they are kept.

namespace sw::report_print {
namespace {

struct Edge {
  const char* calculation;
  const char* name;
  const char* input;
};

void PrintTo(const Edge& edge, std::ostream* out) {
  *out << edge.calculation << " " << edge.name;
}

constexpr auto kEdges = std::to_array<Edge>({
    {"thread", "tiny", R"({"thread": "M2"})"},
    {"thread", "coarseinch", R"({"thread": "1-1/2-6 UNC"})"},
    {"thread", "veryfine", R"({"thread": "M36x1"})"},
    {"clamp-force", "yields", R"({"thread": "M8", "strength_class": "8.8", "torque": "60 N m"})"},
    {"clamp-force", "onefriction",
     R"({"thread": "M10", "torque": "44 N m", "friction": {"min": 0.13, "max": 0.13}})"},
    {"clamp-force", "implied", R"({"thread": "M10", "torque": "44 N m", "clamp_force": "27 kN"})"},
    {"clamp-force", "torquewanted", R"({"thread": "M12", "clamp_force": "31 kN"})"},
    {"clamp-force", "strengthonly", R"({"thread": "M12", "strength_class": "10.9"})"},
    {"clamp-force", "ownhead",
     R"({"thread": "M12", "strength_class": "10.9", "torque": "90 N m",
         "thread_friction": {"min": 0.1, "max": 0.14}, "head_friction": {"min": 0.12, "max": 0.2}})"},
    {"torque-plausibility", "low",
     R"({"torque": "0.4 N m", "thread": "M12", "strength_class": "8.8"})"},
    {"torque-plausibility", "absurd",
     R"({"torque": "90000 N m", "thread": "M6", "strength_class": "8.8"})"},
    {"torque-plausibility", "plausible",
     R"({"torque": "70 N m", "thread": "M12", "strength_class": "8.8"})"},
    {"torque-plausibility", "exempt",
     R"({"torque": "110 N m", "thread": "M12", "strength_class": "8.8", "duty": "angle_tightened"})"},
    {"wrench-setting", "square",
     R"({"torque": "33 N m", "adapter": {"lever_length": "280 mm", "adapter_length": "70 mm",
         "adapter_angle": "90 deg"}})"},
    {"wrench-setting", "backwards",
     R"({"torque": "33 N m", "adapter": {"lever_length": "280 mm", "adapter_length": "70 mm",
         "adapter_angle": "180 deg"}})"},
    {"wrench-setting", "nolength",
     R"({"torque": "33 N m", "adapter": {"lever_length": "280 mm", "adapter_length": "0 mm"}})"},
    {"wrench-setting", "checkonly",
     R"({"check": {"set": "50 N m", "reference": "56 N m", "maximum": "100 N m"}})"},
    {"wrench-setting", "manywrenches",
     R"({"torque": "33 N m", "today": "2031-04-05", "wrenches": [
         {"name": "the one with the blue grip", "maximum": "10 N m"},
         {"name": "old", "maximum": "25 N m"}, {"name": "quarter", "maximum": "30 N m"},
         {"name": "three eighths", "maximum": "60 N m", "calibrated_on": "2031-01-05"},
         {"name": "half", "maximum": "200 N m", "calibrated_on": "2031-01-05"},
         {"name": "three quarters", "maximum": "600 N m"}, {"name": "one", "maximum": "1500 N m"}]})"},
    {"prevailing-torque", "onefigure",
     R"({"torque": {"min": "30 N m"}, "drag": "0 N m", "rule": "included"})"},
    {"prevailing-torque", "leftout",
     R"({"torque": {"min": "30 N m", "max": "36 N m"}, "drag": "4 N m", "rule": "add_if_third"})"},
    {"prevailing-torque", "discard",
     R"({"used_nut": {"thread": "5/16-24", "breakaway_torque": "0.2 N m"}})"},
    {"prevailing-torque", "nolimit",
     R"({"used_nut": {"thread": "M8", "breakaway_torque": "0 N m"}})"},
    {"castle-nut", "onefigure",
     R"({"thread": "M14x1.5", "torque": {"min": "72 N m"}, "reached": "72 N m",
         "slot": "not_aligned", "slots": 2})"},
    {"castle-nut", "pin",
     R"({"thread": "M14x1.5", "torque": {"min": "72 N m", "max": "85 N m"}, "reached": "80 N m",
         "slot": "aligned", "slots": 24, "cross_holes": 2})"},
    {"castle-nut", "over",
     R"({"thread": "M14x1.5", "torque": {"min": "72 N m", "max": "72 N m"}, "reached": "190 N m",
         "slot": "not_aligned"})"},
    {"tighten-pattern", "one", R"({"fasteners": 1})"},
    {"tighten-pattern", "two", R"({"fasteners": 2, "torque": "40 N m", "stages": [1]})"},
    {"tighten-pattern", "twelve",
     R"({"fasteners": 12, "torque": "123.4 N m",
         "stages": [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1]})"},
    {"wheel-nut-recheck", "noreading", R"({"odometer": "12000 km", "vehicle": "heavy"})"},
    {"wheel-nut-recheck", "longpast", R"({"odometer": "123456 km", "odometer_now": "234567 km"})"},
    {"wheel-nut-recheck", "early",
     R"({"odometer": "0 km", "odometer_now": "0 km", "first_after": "5 km"})"},
    {"tyre", "balloon", R"({"designation": "31x10.50R15LT"})"},
    {"tyre", "low", R"({"designation": "295/25 R20"})"},
    {"tyre", "tall", R"({"designation": "7.50-16", "diameter": "808 mm"})"},
    {"wheel-frequency", "manyspeeds",
     R"({"diameter": "740 mm", "speeds": ["30 km/h", "50 km/h", "60 km/h", "70 km/h", "80 km/h",
         "90 km/h", "100 km/h", "290 km/h"], "options": {"orders": 8}})"},
    {"wheel-frequency", "standing", R"({"roll_out": "6.9 m", "turns": 3, "speeds": ["0 km/h"]})"},
    {"wheel-frequency", "frequencies",
     R"({"diameter": "740 mm", "frequencies": ["6 Hz", "12 Hz", "40 Hz"],
         "options": {"speed_growth": "linear"}})"},
    {"unbalance", "nothing",
     R"({"weights": [], "weight_radius": "195 mm", "plane_spacing": "0 mm", "speed": "0 km/h",
         "diameter": "700 mm"})"},
    {"unbalance", "hundred",
     R"({"weights": [{"plane": "inner", "amount": "100 g", "angle": "180 deg"},
                     {"plane": "outer", "amount": "100 g", "angle": "183 deg"}],
         "weight_radius": "195 mm", "plane_spacing": "165 mm", "speed": "130 km/h",
         "diameter": "700 mm", "limit_each_plane": "5 g"})"},
    {"balance-one-plane", "quiet",
     R"({"initial": {"amount": 0, "angle": "0 deg"}, "trial_weight": {"amount": "25 g", "angle": "40 deg"},
         "with_trial": {"amount": 2.9, "angle": "161 deg"}})"},
    {"balance-one-plane", "inline",
     R"({"initial": {"amount": 4, "angle": "90 deg"}, "trial_weight": {"amount": "25 g", "angle": "270 deg"},
         "with_trial": {"amount": 4.1, "angle": "90 deg"}})"},
    {"balance-four-run", "bad",
     R"({"initial": 2.4, "with_trial": [2.6, 2.45, 2.55], "trial_weight": "5 g",
         "reading_uncertainty": 0.2})"},
    {"balance-four-run", "upside",
     R"({"initial": 2.0, "with_trial": [3, 1.73, 1.74], "trial_weight": "100 g"})"},
    {"toe", "out", R"({"diameter": "400 mm", "total": "-2.5 mm", "limit": {"max": "0.2 deg"}})"},
    {"toe", "none", R"({"diameter": "400 mm", "total": "0 mm"})"},
    {"toe", "crooked",
     R"({"diameter": "400 mm", "left": "1.25 deg", "right": "-0.75 deg",
         "limit": {"min": "-0.1 deg", "max": "0.1 deg"}, "angle_graduation": "0.1 deg"})"},
    {"toe", "huge", R"({"diameter": "640 mm", "total_angle": "-18 deg"})"},
    {"toe", "oneread",
     R"({"diameter": "640 mm", "readings": [{"front": "1391 mm", "rear": "1394 mm"}],
         "graduation": "1 mm", "limit": {"min": "0.1 deg"}})"},
    {"track-rod-turns", "ahead",
     R"({"pitch": "1.5 mm", "thread": "one_end", "arm": "140 mm", "rod": "ahead_of_axle",
         "present_angle": "2 deg", "wanted_angle": "-1.5 deg"})"},
    {"track-rod-turns", "leave",
     R"({"pitch": "1.5 mm", "thread": "one_end", "arm": "140 mm", "rod": "behind_axle",
         "present_angle": "0 deg", "wanted_angle": "0 deg"})"},
    {"caster", "negative",
     R"({"turn": "20 deg", "camber_outward": "-6 deg", "camber_inward": "6 deg",
         "limit": {"min": "1 deg", "max": "3 deg"}, "reading_uncertainty": "0.5 deg"})"},
    {"caster", "nolimit",
     R"({"turn": "20 deg", "camber_outward": "0 deg", "camber_inward": "0 deg"})"},
    {"trail", "trailonly", R"({"loaded_radius": "345 mm", "caster": "-12 deg"})"},
    {"trail", "scrubonly",
     R"({"loaded_radius": "345 mm", "axis_to_wheel": "20 mm", "kingpin_inclination": "14 deg",
         "camber": "-3 deg", "spacer": "-10 mm"})"},
    {"trail", "farout",
     R"({"loaded_radius": "300 mm", "caster": "28 deg", "axis_to_wheel": "400 mm",
         "kingpin_inclination": "0 deg", "spacer": "60 mm"})"},
    {"lift", "parallel", R"({"arms": "parallel", "lift": "75 mm"})"},
    {"lift", "down",
     R"({"arms": "trailing", "lift": "-120 mm", "arm_length": "500 mm", "pivot_height": "-90 mm"})"},
    {"lift", "high",
     R"({"arms": "leading", "lift": "300 mm", "arm_length": "500 mm", "pivot_height": "150 mm",
         "caster_before": "29 deg"})"},
    {"ackermann", "straight",
     R"({"kingpin_spacing": "1220 mm", "wheelbase": "2.36 m", "outer": "0 deg"})"},
    {"ackermann", "nearlystraight",
     R"({"kingpin_spacing": "1220 mm", "wheelbase": "2.36 m", "outer": "1 deg"})"},
    {"ackermann", "tight",
     R"({"kingpin_spacing": "1220 mm", "wheelbase": "2.36 m", "inner": "80 deg"})"},
});

constexpr std::array kRooms{figure::Size{46, 26}, figure::Size{30, 18}, figure::Size{24, 20}};
constexpr double kEm = 13;
constexpr double kSmallestText = 0.75;  // em

class EdgePictures : public ::testing::TestWithParam<Edge> {
 protected:
  void SetUp() override { sw::testing::ensureGui(); }
};

compute::Draw drawOf(const Edge& edge) {
  const auto calculation = compute::findCalculation(edge.calculation);
  const auto input = model::parseJson(edge.input);
  if (!calculation || !input) return {};
  auto answer = compute::answerTo(*calculation, *input);
  EXPECT_TRUE(answer) << (answer ? "" : answer.error().key + " " + answer.error().field);
  return answer ? answer->draw : compute::Draw{};
}

void expectRoomForTexts(const figure::Figure& figure, const FigureLook& look) {
  const TextPlaces places = placeTexts(figure, look);
  for (const auto* text : places.crowded) ADD_FAILURE() << "crowded: " << text->text;
  for (std::size_t i = 0; i < places.placed.size(); ++i) {
    EXPECT_GE(places.placed[i].text->size, kSmallestText) << places.placed[i].text->text;
    for (std::size_t j = 0; j < i; ++j) {
      EXPECT_FALSE(places.placed[i].box.intersects(places.placed[j].box))
          << places.placed[i].text->text << " over " << places.placed[j].text->text;
    }
  }
}

void expectOnPaper(const figure::Figure& figure) {
  const auto check = [&](const figure::Point& point) {
    const bool on = point.x > -0.5 && point.y > -0.5 && point.x < figure.size.width + 0.5 &&
                    point.y < figure.size.height + 0.5;
    EXPECT_TRUE(on) << point.x << " " << point.y;
  };
  for (const auto& item : figure.items) {
    if (const auto* path = std::get_if<figure::Path>(&item)) {
      std::for_each(path->points.begin(), path->points.end(), check);
    }
    if (const auto* mark = std::get_if<figure::Mark>(&item)) check(mark->at);
    if (const auto* text = std::get_if<figure::Text>(&item)) check(text->at);
  }
}

TEST_P(EdgePictures, HaveRoomAndStayOnTheirPaper) {
  const auto draw = drawOf(GetParam());
  ASSERT_TRUE(draw);
  for (const figure::Size& size : kRooms) {
    SCOPED_TRACE(size.width);
    const auto figure = draw(size);
    const auto look = printLook(kEm);
    expectOnPaper(figure);
    expectRoomForTexts(figure, look);
    if (const char* folder = std::getenv("SW_PICTURES"); folder != nullptr) {
      const std::string name = std::string(folder) + "/edge-" + GetParam().calculation + "-" +
                               GetParam().name + "-" + std::to_string(std::lround(size.width)) +
                               ".png";
      EXPECT_TRUE(picture(figure, look).save(QString::fromStdString(name)));
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Bench, EdgePictures, ::testing::ValuesIn(kEdges), [](const auto& row) {
  std::string name = std::string(row.param.calculation) + row.param.name;
  name.erase(std::remove(name.begin(), name.end(), '-'), name.end());
  return name;
});

// Plane geometry.
TEST(Vectors, BearingsGoClockwiseFromTheTop) {
  using figure::Point;
  EXPECT_NEAR(figure::bearing(Point{0, 0}, Point{0, -1}), 0, 1e-12);
  EXPECT_NEAR(figure::bearing(Point{0, 0}, Point{1, 0}), 90, 1e-12);
  EXPECT_NEAR(figure::bearing(Point{0, 0}, Point{0, 1}), 180, 1e-12);
  for (const double degrees : {0.0, 33.0, 171.0, 250.0}) {
    const Point there = figure::onCircle({3, 4}, 2.0, degrees);
    EXPECT_NEAR(figure::distance({3, 4}, there), 2.0, 1e-12);
    EXPECT_NEAR(std::remainder(figure::bearing({3, 4}, there) - degrees, 360.0), 0, 1e-9);
    const Point turned = figure::turned(figure::onCircle({3, 4}, 2.0, 0), {3, 4}, degrees);
    EXPECT_NEAR(figure::distance(turned, there), 0, 1e-12);
  }
}

TEST(Vectors, AScaleKeepsProportionsAndStaysInItsBox) {
  const figure::Scale scale({1, 2, 21, 8}, {-100, 100}, {0, 100});
  const auto low = scale.at(-100, 0);
  const auto high = scale.at(100, 100);
  EXPECT_NEAR((high.x - low.x) / 200, (low.y - high.y) / 100, 1e-12);
  EXPECT_NEAR(high.x - low.x, scale.em(200), 1e-12);
  EXPECT_GE(low.x, 1 - 1e-9);
  EXPECT_LE(high.x, 21 + 1e-9);
  EXPECT_NEAR(high.y, 2, 1e-12);
  EXPECT_NEAR(low.y, 8, 1e-12);
}

TEST(Vectors, AnArrowEndsInItsTipAndNowhereBeyond) {
  figure::Figure figure;
  add(figure, figure::Arrow{{0, 0}, {5, 0}});
  double farthest = 0;
  for (const auto& item : figure.items) {
    for (const auto& point : std::get<figure::Path>(item).points) {
      farthest = std::max(farthest, point.x);
    }
  }
  EXPECT_NEAR(farthest, 5, 1e-12);
}

}  // namespace
}  // namespace sw::report_print
