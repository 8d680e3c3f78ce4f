// SPDX-License-Identifier: GPL-3.0-or-later
#include "simulated_vehicle.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace sw::eval {

namespace {

double uniform(std::mt19937_64& random) {
  return std::uniform_real_distribution<double>(0, 1)(random);
}

double factor(double deviation, std::mt19937_64& random) {
  return std::exp(deviation * std::normal_distribution<double>()(random));
}

/// A chance whose odds are multiplied.
double moved(double chance, double by) {
  return chance * by / (chance * by + 1 - chance);
}

void moveRow(std::vector<double>& row, double deviation, std::mt19937_64& random) {
  for (double& chance : row) chance *= factor(deviation, random);
  const double sum = std::accumulate(row.begin(), row.end(), 0.0);
  for (double& chance : row) chance /= sum;
}

}  // namespace

std::size_t drawPlace(const std::vector<double>& weights, std::mt19937_64& random) {
  double left = uniform(random) * std::accumulate(weights.begin(), weights.end(), 0.0);
  std::size_t place = 0;
  while (place + 1 < weights.size() && left >= weights[place]) left -= weights[place++];
  return place;
}

std::size_t drawCause(const diagnosis::CauseTable& truth, std::mt19937_64& random) {
  std::vector<double> weights;
  for (const auto& cause : truth.causes) weights.push_back(cause.weight);
  return drawPlace(weights, random);
}

std::vector<std::optional<std::size_t>> drawAnswers(const diagnosis::CauseTable& truth,
                                                    std::size_t cause,
                                                    std::span<const std::size_t> features,
                                                    std::mt19937_64& random) {
  std::vector<std::optional<std::size_t>> answers(truth.features.size());
  for (const std::size_t feature : features) {
    const std::size_t answer = drawPlace(truth.causes[cause].answers[feature], random);
    if (uniform(random) >= kLeftOpen) answers[feature] = answer;
  }
  return answers;
}

diagnosis::CauseFile perturbed(const diagnosis::CauseFile& file, double deviation,
                               std::mt19937_64& random) {
  auto truth = file;
  for (auto& cause : truth.table.causes) {
    cause.weight *= factor(deviation, random);
    for (auto& row : cause.answers) moveRow(row, deviation, random);
  }
  for (auto& check : truth.checks) {
    for (auto& one : check.finds) one.chance = moved(one.chance, factor(deviation, random));
    check.falseAlarm = moved(check.falseAlarm, factor(deviation, random));
  }
  return truth;
}

SimulatedVehicle drawVehicle(const diagnosis::CauseFile& truth, std::mt19937_64& random) {
  SimulatedVehicle vehicle;
  vehicle.cause = drawCause(truth.table, random);
  std::vector<std::size_t> asked;
  for (const auto key : kAsked) asked.push_back(truth.table.feature(key).value());
  vehicle.answers = drawAnswers(truth.table, vehicle.cause, asked, random);
  for (const auto& check : truth.checks) {
    const auto found = std::find_if(check.finds.begin(), check.finds.end(),
                                    [&](const auto& one) { return one.cause == vehicle.cause; });
    const double luck = uniform(random);
    CheckLuck& one = vehicle.luck.emplace_back();
    one.finds = found != check.finds.end() && luck < found->chance;
    one.alarms = found == check.finds.end() && luck < check.falseAlarm;
  }
  return vehicle;
}

}  // namespace sw::eval
