// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/lesson.h"

#include <algorithm>
#include <sstream>

namespace sw::workshop {

namespace {

using diagnosis::CauseFile;
using model::EntryId;
using model::ShakeResult;
using model::YesNo;

/// The drives of a job: the last one, and the last before it on which it shook.
struct Drives {
  const model::RoadTest* last = nullptr;
  EntryId lastEntry;
  EntryId shookBefore;  ///< 0: none
  bool shookAtFirst = false;
};

Drives drivesOf(const JobState& job) {
  Drives drives;
  for (const model::Entry* entry : job.valid) {
    const auto* test = model::as<model::RoadTest>(*entry);
    if (test == nullptr) continue;
    if (test->when == model::RoadTestWhen::Before) {
      drives.shookAtFirst = test->shake != ShakeResult::None;
      continue;
    }
    if (drives.last != nullptr && drives.last->shake != ShakeResult::None) {
      drives.shookBefore = drives.lastEntry;
    }
    drives.last = test;
    drives.lastEntry = entry->id;
  }
  return drives;
}

bool complaintSaysSo(const model::Complaint& complaint) {
  return complaint.onsetRising.has_value() || complaint.speedBand == YesNo::Yes ||
         complaint.afterBump == YesNo::Yes ||
         (complaint.braking != model::BrakingAnswer::Unknown &&
          complaint.braking != model::BrakingAnswer::No);
}

bool saysItShakes(const JobState& job, const Drives& drives) {
  if (drives.shookAtFirst || (job.complaint && complaintSaysSo(*job.complaint))) return true;
  return std::any_of(job.valid.begin(), job.valid.end(), [](const model::Entry* entry) {
    return model::as<model::ShakeTold>(*entry) != nullptr;
  });
}

/// A check of this cause proves nothing before others were made, and they were not.
bool provesNothing(const CauseFile& file, const ShakeKnown& known, std::size_t cause) {
  const auto clear = [&](std::size_t check) {
    return std::any_of(known.made.begin(), known.made.end(),
                       [&](const MadeCheck& one) { return one.check == check && one.clear; });
  };
  return std::any_of(file.checks.begin(), file.checks.end(), [&](const diagnosis::Check& check) {
    const bool finds =
        std::any_of(check.findings.begin(), check.findings.end(),
                    [&](const diagnosis::Finding& one) { return one.cause == cause; });
    return finds && !std::all_of(check.after.begin(), check.after.end(), clear);
  });
}

bool nothingWasFound(const ShakeKnown& known) {
  bool anyClear = false;
  for (const MadeCheck& made : known.made) {
    if (!made.found.empty()) return false;
    anyClear = anyClear || made.clear;
  }
  return anyClear && known.putRight.empty();
}

std::string answersOf(const ShakeKnown& known, const CauseFile& file) {
  std::string text;
  for (const ToldAnswer& one : known.told) {
    const auto& feature = file.table.features[one.feature];
    if (!text.empty()) text += ' ';
    text += feature.key + "=" + feature.answers[one.answer].word;
  }
  return text;
}

}  // namespace

std::vector<std::size_t> curedCauses(const JobState& job, const CauseFile& file,
                                     const ShakeKnown& known) {
  const Drives drives = drivesOf(job);
  std::vector<std::size_t> causes;
  if (drives.last == nullptr || drives.last->shake != ShakeResult::None) return causes;
  for (const PutRight& one : known.putRight) {
    const bool between = drives.shookBefore < one.entry && one.entry < drives.lastEntry;
    if (between && !provesNothing(file, known, one.cause)) causes.push_back(one.cause);
  }
  return causes;
}

std::optional<model::Lesson> lessonOf(const JobState& job, const CauseFile& file) {
  const Drives drives = drivesOf(job);
  if (drives.last == nullptr || !saysItShakes(job, drives)) return std::nullopt;
  const ShakeKnown known = shakeKnown(job, file);
  model::Lesson lesson{{}, answersOf(known, file)};
  if (drives.last->shake != ShakeResult::None) {
    if (!nothingWasFound(known)) return std::nullopt;
    return lesson;
  }
  for (const std::size_t cause : curedCauses(job, file, known)) {
    if (!lesson.causes.empty()) lesson.causes += ' ';
    lesson.causes += file.table.causes[cause].key;
  }
  if (lesson.causes.empty()) return std::nullopt;
  return lesson;
}

std::optional<diagnosis::ClosedJob> closedJobOf(const model::Lesson& lesson,
                                                const diagnosis::CauseTable& table) {
  diagnosis::ClosedJob job{{}, std::vector<std::optional<std::size_t>>(table.features.size())};
  std::istringstream causes(lesson.causes);
  for (std::string key; causes >> key;) {
    if (const auto cause = table.cause(key)) job.causes.push_back(*cause);
  }
  if (job.causes.empty() && !lesson.causes.empty()) return std::nullopt;
  std::istringstream answers(lesson.answers);
  for (std::string pair; answers >> pair;) {
    const auto equals = pair.find('=');
    if (equals == std::string::npos) continue;
    const auto feature = table.feature(pair.substr(0, equals));
    if (feature) job.answers[*feature] = table.features[*feature].answer(pair.substr(equals + 1));
  }
  return job;
}

}  // namespace sw::workshop
