// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/shop_learning.h"

#include <algorithm>

#include "workshop/checks_ahead.h"
#include "workshop/lesson.h"

namespace sw::workshop {

namespace {

constexpr double kDayMilliseconds = 86'400'000;

bool within(Timestamp from, Timestamp to, double days) {
  return static_cast<double>(to.utcMilliseconds - from.utcMilliseconds) <= days * kDayMilliseconds;
}

}  // namespace

std::vector<diagnosis::ClosedJob> ShopLearning::lessons() const {
  std::vector<diagnosis::ClosedJob> list;
  for (const Taught& one : jobs) {
    if (one.counts()) list.push_back(one.closed);
  }
  return list;
}

Result<ShopLearning> shopLearning(const Workshop& workshop) {
  const auto shop = workshop.shop();
  if (!shop) return failAs(shop);
  auto file = causesOf(**shop);
  if (!file) return failAs(file);
  auto rows = workshop.book().lessons(std::nullopt, kMostLessons);
  if (!rows) return failAs(rows);
  ShopLearning learning;
  learning.start = std::move(*file);
  for (store::LessonRow& row : *rows) {
    auto closed = closedJobOf(row.fact, learning.start.table);
    if (!closed) continue;
    const bool takenBack =
        row.next && within(row.endedAt, row.next->openedAt, learning.start.comebackDays);
    learning.jobs.push_back({std::move(row), std::move(*closed), takenBack});
  }
  const auto lessons = learning.lessons();
  learning.choice = diagnosis::chooseTable(learning.start.table, lessons);
  learning.inUse = learning.start;
  learning.inUse.damping = learning.choice.damping;
  if (learning.choice.report.useLearned()) {
    learning.inUse.table = diagnosis::learned(learning.start.table, lessons);
  }
  return learning;
}

Result<std::optional<store::LessonRow>> comebackOf(const Workshop& workshop, const JobState& job,
                                                   const diagnosis::CauseFile& file) {
  auto rows = workshop.book().lessons(job.vehicle.fact.vehicle, kMostLessons);
  if (!rows) return failAs(rows);
  for (auto row = rows->rbegin(); row != rows->rend(); ++row) {
    const bool takenBack = row->next && row->next->job == job.job && !row->fact.causes.empty() &&
                           within(row->endedAt, row->next->openedAt, file.comebackDays);
    if (takenBack) return std::optional(std::move(*row));
  }
  return std::optional<store::LessonRow>{};
}

}  // namespace sw::workshop
