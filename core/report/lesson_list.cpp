// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/lesson_list.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <nlohmann/json.hpp>

#include "report/text_table.h"

namespace sw::report {

namespace {

using diagnosis::Scores;
using model::Json;
using workshop::ShopLearning;
using workshop::ShopState;
using workshop::Taught;

std::string plateOf(const ShopState& shop, model::VehicleId vehicle) {
  const auto* found = shop.vehicle(vehicle);
  return found == nullptr ? std::string{} : found->fact.registration;
}

struct Row {
  const char* name;
  const Scores& scores;
};

std::array<Row, 3> rowsOf(const ShopLearning& learning) {
  const auto& report = learning.choice.report;
  return {{{"starting", report.starting}, {"learned", report.learned}, {"guess", report.uniform}}};
}

const char* inUse(const ShopLearning& learning) {
  return learning.choice.report.useLearned() ? "learned" : "starting";
}

std::string digits(double value) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%.3f", value);
  return text.data();
}

}  // namespace

std::string_view lessonState(const Taught& job) {
  if (!job.row.leftOutWhy.empty()) return "left_out";
  return job.takenBack ? "came_back" : "counts";
}

Json lessonsJson(const ShopLearning& learning, const ShopState& shop) {
  Json jobs = Json::array();
  for (const Taught& job : learning.jobs) {
    Json row = Json::object();
    row["job"] = job.row.job.value;
    row["registration"] = plateOf(shop, job.row.vehicle);
    row["ended_at"] = toIso(job.row.endedAt);
    row["causes"] = job.row.fact.causes;
    row["answers"] = job.row.fact.answers;
    row["state"] = std::string(lessonState(job));
    if (!job.row.leftOutWhy.empty()) row["why"] = job.row.leftOutWhy;
    jobs.push_back(std::move(row));
  }
  Json scores = Json::object();
  for (const Row& row : rowsOf(learning)) {
    scores[row.name] = {{"jobs", row.scores.jobs},
                        {"brier", row.scores.brier},
                        {"log", row.scores.log},
                        {"first_right", row.scores.firstRight}};
  }
  return {{"jobs", std::move(jobs)},
          {"scores", std::move(scores)},
          {"in_use", inUse(learning)},
          {"damping", learning.choice.damping}};
}

std::string lessonsText(const ShopLearning& learning, const ShopState& shop) {
  std::vector<TextRow> jobs{{"Job", "Registration", "Ended", "Causes", "State", "Why"}};
  for (const Taught& job : learning.jobs) {
    std::string state(lessonState(job));
    std::replace(state.begin(), state.end(), '_', ' ');
    jobs.push_back({std::to_string(job.row.job.value), plateOf(shop, job.row.vehicle),
                    toIso(localDate(job.row.endedAt)),
                    job.row.fact.causes.empty() ? "none found" : job.row.fact.causes, state,
                    job.row.leftOutWhy});
  }
  std::vector<TextRow> scores{{"Table", "Jobs", "Brier (0 to 2)", "Log", "Right first"}};
  for (const Row& row : rowsOf(learning)) {
    scores.push_back({row.name, std::to_string(row.scores.jobs), digits(row.scores.brier),
                      digits(row.scores.log), digits(row.scores.firstRight)});
  }
  return tableText(std::move(jobs)) + "\n" + tableText(std::move(scores)) +
         "\nIn use: " + inUse(learning) + "\n";
}

}  // namespace sw::report
