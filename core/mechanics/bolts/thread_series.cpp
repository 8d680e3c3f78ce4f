// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/thread_series.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "units/format.h"

namespace sw::mechanics {

namespace {

constexpr double kSameSize = 1e-6;  // m: a thousandth of a millimetre

/// Coarse pitch first; 0 ends the list.
struct MetricRow {
  double diameter;
  std::array<double, 5> pitches;
};

constexpr auto kMetric = std::to_array<MetricRow>({
    {2, {0.4, 0.25}},        {2.5, {0.45, 0.35}},
    {3, {0.5, 0.35}},        {4, {0.7, 0.5}},
    {5, {0.8, 0.5}},         {6, {1, 0.75}},
    {7, {1, 0.75}},          {8, {1.25, 1, 0.75}},
    {9, {1.25, 1, 0.75}},    {10, {1.5, 1.25, 1, 0.75}},
    {11, {1.5, 1, 0.75}},    {12, {1.75, 1.5, 1.25, 1}},
    {14, {2, 1.5, 1.25, 1}}, {16, {2, 1.5, 1}},
    {18, {2.5, 2, 1.5, 1}},  {20, {2.5, 2, 1.5, 1}},
    {22, {2.5, 2, 1.5, 1}},  {24, {3, 2, 1.5, 1}},
    {27, {3, 2, 1.5, 1}},    {30, {3.5, 3, 2, 1.5, 1}},
    {33, {3.5, 3, 2, 1.5}},  {36, {4, 3, 2, 1.5}},
    {39, {4, 3, 2, 1.5}},
});

/// Threads per inch, 0 where there is none.
struct InchRow {
  const char* size;
  double diameter;
  double coarse;
  double fine;
};

constexpr auto kInch = std::to_array<InchRow>({
    {"#0", 0.060, 0, 80},     {"#1", 0.073, 64, 72},    {"#2", 0.086, 56, 64},
    {"#3", 0.099, 48, 56},    {"#4", 0.112, 40, 48},    {"#5", 0.125, 40, 44},
    {"#6", 0.138, 32, 40},    {"#8", 0.164, 32, 36},    {"#10", 0.190, 24, 32},
    {"#12", 0.216, 24, 28},   {"1/4", 0.25, 20, 28},    {"5/16", 0.3125, 18, 24},
    {"3/8", 0.375, 16, 24},   {"7/16", 0.4375, 14, 20}, {"1/2", 0.5, 13, 20},
    {"9/16", 0.5625, 12, 18}, {"5/8", 0.625, 11, 18},   {"3/4", 0.75, 10, 16},
    {"7/8", 0.875, 9, 14},    {"1", 1, 8, 12},          {"1-1/8", 1.125, 7, 12},
    {"1-1/4", 1.25, 7, 12},   {"1-3/8", 1.375, 6, 12},  {"1-1/2", 1.5, 6, 12},
});

Thread metric(double diameter, double pitch, PitchFrom from) {
  return {ThreadStandard::IsoMetric, millimetres(diameter), millimetres(pitch), from,
          "M" + fullPrecision(diameter) + "x" + fullPrecision(pitch)};
}

Thread inch(const InchRow& row, double perInch, PitchFrom from) {
  const char* series = from == PitchFrom::CoarseSeries ? " UNC" : " UNF";
  return {ThreadStandard::UnifiedInch, inches(row.diameter), inches(1 / perInch), from,
          std::string(row.size) + "-" + fullPrecision(perInch) + series};
}

std::vector<Thread> allThreads() {
  std::vector<Thread> all;
  for (const MetricRow& row : kMetric) {
    for (const double pitch : row.pitches) {
      const bool coarse = pitch == row.pitches.front();
      const auto from = coarse ? PitchFrom::CoarseSeries : PitchFrom::FineSeries;
      if (pitch > 0) all.push_back(metric(row.diameter, pitch, from));
    }
  }
  for (const InchRow& row : kInch) {
    if (row.coarse > 0) all.push_back(inch(row, row.coarse, PitchFrom::CoarseSeries));
    if (row.fine > 0) all.push_back(inch(row, row.fine, PitchFrom::FineSeries));
  }
  return all;
}

bool same(Length a, Length b) {
  return std::abs((a - b).si()) < kSameSize;
}

bool within(Length a, Length b, double share) {
  return std::abs((a - b).si()) <= share * std::min(a.si(), b.si());
}

/// Nominal sizes have no digits below a picometre; what stands there is the subtraction's.
Length difference(Length a, Length b) {
  constexpr double kPicometresPerMetre = 1e12;
  return metres(std::round((a - b).si() * kPicometresPerMetre) / kPicometresPerMetre);
}

template <class Fits>
std::optional<Thread> findThread(Fits fits) {
  const auto& all = standardThreads();
  const auto found = std::find_if(all.begin(), all.end(), fits);
  if (found == all.end()) return std::nullopt;
  return *found;
}

Result<double> engagedDepth(const Thread& a, const Thread& b) {
  const bool aIsLarger = a.diameter > b.diameter;
  const Thread& nut = aIsLarger ? a : b;
  const Thread& bolt = aIsLarger ? b : a;
  const auto geometry = threadGeometry(nut);
  if (!geometry) return failAs(geometry);
  const double share = (bolt.diameter - geometry->nutMinor) / (nut.diameter - geometry->nutMinor);
  return std::max(0.0, share);
}

}  // namespace

const std::vector<Thread>& standardThreads() {
  static const std::vector<Thread> kAll = allThreads();
  return kAll;
}

std::optional<Thread> findInSeries(ThreadStandard standard, Length diameter, Length pitch) {
  return findThread([&](const Thread& each) {
    return each.standard == standard && same(each.diameter, diameter) && same(each.pitch, pitch);
  });
}

std::optional<Thread> findBySize(ThreadStandard standard, Length diameter, PitchFrom series) {
  return findThread([&](const Thread& each) {
    return each.standard == standard && same(each.diameter, diameter) && each.pitchFrom == series;
  });
}

std::string inchSizeName(Length diameter) {
  for (const InchRow& row : kInch) {
    if (same(inches(row.diameter), diameter)) return row.size;
  }
  return fullPrecision(inInches(diameter));
}

Result<std::vector<LookAlike>> lookAlikes(const Thread& thread) {
  std::vector<LookAlike> found;
  for (const Thread& other : standardThreads()) {
    const bool sameSize =
        other.standard == thread.standard && same(other.diameter, thread.diameter);
    if (sameSize || !within(other.diameter, thread.diameter, kLookAlikeDiameter) ||
        !within(other.pitch, thread.pitch, kLookAlikePitch)) {
      continue;
    }
    const auto depth = engagedDepth(thread, other);
    if (!depth) return failAs(depth);
    found.push_back({other, difference(other.diameter, thread.diameter),
                     difference(other.pitch, thread.pitch), *depth});
  }
  return found;
}

}  // namespace sw::mechanics
