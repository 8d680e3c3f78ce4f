// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/load_index.h"

#include <array>
#include <cmath>
#include <cstddef>
#include <utility>

namespace sw::mechanics {

namespace {

constexpr std::array<int, 67> kLoads{
    250,  257,  265,  272,  280,  290,  300,  307,  315,  325,   // 60
    335,  345,  355,  365,  375,  387,  400,  412,  425,  437,   // 70
    450,  462,  475,  487,  500,  515,  530,  545,  560,  580,   // 80
    600,  615,  630,  650,  670,  690,  710,  730,  750,  775,   // 90
    800,  825,  850,  875,  900,  925,  950,  975,  1000, 1030,  // 100
    1060, 1090, 1120, 1150, 1180, 1215, 1250, 1285, 1320, 1360,  // 110
    1400, 1450, 1500, 1550, 1600, 1650, 1700};                   // 120
static_assert(kLoads.size() == kMostLoadIndex - kLeastLoadIndex + 1);

constexpr std::array<std::pair<char, int>, 17> kSpeeds{{{'F', 80},
                                                        {'G', 90},
                                                        {'J', 100},
                                                        {'K', 110},
                                                        {'L', 120},
                                                        {'M', 130},
                                                        {'N', 140},
                                                        {'P', 150},
                                                        {'Q', 160},
                                                        {'R', 170},
                                                        {'S', 180},
                                                        {'T', 190},
                                                        {'U', 200},
                                                        {'H', 210},
                                                        {'V', 240},
                                                        {'W', 270},
                                                        {'Y', 300}}};

}  // namespace

std::optional<Mass> loadOfIndex(int loadIndex) {
  if (loadIndex < kLeastLoadIndex || loadIndex > kMostLoadIndex) return std::nullopt;
  return kilograms(kLoads.at(static_cast<std::size_t>(loadIndex - kLeastLoadIndex)));
}

Mass loadIndexRule(int loadIndex) {
  constexpr double kMassAtZero = 45;
  constexpr double kStepsPerDecade = 80;
  return kilograms(kMassAtZero * std::pow(10.0, loadIndex / kStepsPerDecade));
}

std::optional<Speed> speedOfSymbol(char symbol) {
  for (const auto& [letter, speed] : kSpeeds) {
    if (letter == symbol) return kilometresPerHour(speed);
  }
  return std::nullopt;
}

}  // namespace sw::mechanics
