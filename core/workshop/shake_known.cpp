// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/shake_known.h"

#include <algorithm>
#include <map>

#include "measure/evaluation.h"

namespace sw::workshop {

namespace {

using diagnosis::Beyond;
using diagnosis::CauseFile;
using diagnosis::Check;
using diagnosis::Clear;
using diagnosis::Finding;
using model::BrakingAnswer;
using model::YesNo;

std::optional<std::string> yesNo(YesNo answer) {
  if (answer == YesNo::Unknown) return std::nullopt;
  return answer == YesNo::Yes ? "yes" : "no";
}

/// The answers the complaint itself gives, by feature.
std::map<std::string, std::string> ofComplaint(const model::Complaint& complaint) {
  std::map<std::string, std::string> told;
  const auto put = [&](const char* feature, const std::optional<std::string>& answer) {
    if (answer) told[feature] = *answer;
  };
  put("steady", yesNo(complaint.speedBand));
  put("after_bump", yesNo(complaint.afterBump));
  if (complaint.braking != BrakingAnswer::Unknown) {
    told["braking"] = std::string(wordOf(complaint.braking));
  }
  if (complaint.whereFelt == "steering wheel") told["felt_in_seat"] = "no";
  if (complaint.whereFelt == "seat or floor") told["felt_in_seat"] = "yes";
  if (complaint.onsetRising && complaint.releaseFalling) {
    const double share = complaint.releaseFalling->si / complaint.onsetRising->si;
    told["goes_on_slower"] = share < kGoesOnBelow ? "yes" : "no";
  }
  return told;
}

/// The newest answer to each question. What was told one by one goes before what a step saw under
/// the same key, and that before the complaint.
std::vector<ToldAnswer> toldIn(const JobState& job, const CauseFile& file) {
  std::map<std::string, std::string> answers;
  if (job.complaint) answers = ofComplaint(*job.complaint);
  const auto* felt = job.observed("shake_felt", std::nullopt);
  if (felt != nullptr && felt->value == "steering_wheel") answers["felt_in_seat"] = "no";
  if (felt != nullptr && felt->value == "seat") answers["felt_in_seat"] = "yes";
  for (const diagnosis::Feature& feature : file.table.features) {
    const auto* seen = job.observed(feature.key, std::nullopt);
    if (seen != nullptr && feature.answer(seen->value)) answers[feature.key] = seen->value;
  }
  for (const model::Entry* entry : job.valid) {
    if (const auto* told = model::as<model::ShakeTold>(*entry)) {
      answers[told->feature] = told->answer;
    }
  }
  std::vector<ToldAnswer> list;
  for (const auto& [key, word] : answers) {
    const auto feature = file.table.feature(key);
    const auto answer = feature ? file.table.features[*feature].answer(word) : std::nullopt;
    if (answer) list.push_back({*feature, *answer});
  }
  return list;
}

/// What one run recorded: the newest observation under each key and the newest verdict under each
/// limit, on each side.
class RunRecord {
 public:
  RunRecord(const JobState& job, model::RunId run) {
    for (const model::Entry* entry : job.valid) {
      const auto* seen = model::as<model::Observation>(*entry);
      if (seen == nullptr || entry->run != run) continue;
      m_seen[seen->key][entry->side] = seen->value;
      m_last = std::max(m_last, entry->id);
    }
    for (const SeriesView& series : job.series) {
      if (series.run != run || !series.verdict) continue;
      m_verdicts[series.fact.limitKey][series.side] = {series.verdict->verdict,
                                                       series.verdict->limitSide};
      m_last = std::max(m_last, series.verdictEntry.value_or(series.id));
    }
  }

  [[nodiscard]] bool empty() const { return m_seen.empty() && m_verdicts.empty(); }
  /// The newest of these entries.
  [[nodiscard]] model::EntryId last() const { return m_last; }

  [[nodiscard]] bool found(const Finding& finding) const {
    if (!finding.observed.empty()) {
      return onAnySide(m_seen, finding.observed, [&](const std::string& word) {
        return std::find(finding.words.begin(), finding.words.end(), word) != finding.words.end();
      });
    }
    return onAnySide(m_verdicts, finding.limit, [&](const Judged& judged) {
      if (judged.verdict != word(Verdict::Outside)) return false;
      return !finding.beyond || judged.side == wordOf(*finding.beyond);
    });
  }

  [[nodiscard]] bool clear(const Clear& clear) const {
    if (!clear.observed.empty()) {
      return onEverySide(m_seen, clear.observed, [&](const std::string& word) {
        return std::find(clear.words.begin(), clear.words.end(), word) != clear.words.end();
      });
    }
    return onEverySide(m_verdicts, clear.limit, [](const Judged& judged) {
      return judged.verdict == word(Verdict::Within);
    });
  }

 private:
  struct Judged {
    std::string verdict, side;
  };
  template <class Value>
  using BySide = std::map<std::string, std::map<std::optional<model::Side>, Value>>;

  template <class Value, class Holds>
  static bool onAnySide(const BySide<Value>& map, const std::string& key, const Holds& holds) {
    const auto sides = map.find(key);
    return sides != map.end() && std::any_of(sides->second.begin(), sides->second.end(),
                                             [&](const auto& side) { return holds(side.second); });
  }
  template <class Value, class Holds>
  static bool onEverySide(const BySide<Value>& map, const std::string& key, const Holds& holds) {
    const auto sides = map.find(key);
    return sides != map.end() && std::all_of(sides->second.begin(), sides->second.end(),
                                             [&](const auto& side) { return holds(side.second); });
  }

  BySide<std::string> m_seen;
  BySide<Judged> m_verdicts;
  model::EntryId m_last;
};

std::optional<MadeCheck> madeIn(const JobState& job, const CauseFile& file, std::size_t check) {
  const Check& one = file.checks[check];
  const auto run = job.newestRun(one.procedure, std::nullopt);
  if (!run) return std::nullopt;
  const RunRecord record(job, job.runs[*run].id);
  if (record.empty()) return std::nullopt;
  MadeCheck made{check, *run, record.last(), {}, false, {}};
  for (const Finding& finding : one.findings) {
    const bool known =
        std::find(made.found.begin(), made.found.end(), finding.cause) != made.found.end();
    if (!known && record.found(finding)) made.found.push_back(finding.cause);
  }
  made.clear = made.found.empty() && !one.clear.empty() &&
               std::all_of(one.clear.begin(), one.clear.end(),
                           [&](const Clear& clear) { return record.clear(clear); });
  return made;
}

/// What a check says of the causes, found or clear; nothing while it could not be told or waits.
std::optional<diagnosis::Evidence> evidenceOf(const CauseFile& file, const MadeCheck& made,
                                              const ShakeKnown& known) {
  const Check& check = file.checks[made.check];
  if (made.clear) return nothingFound(file.table, check.key, plannedCheck(check));
  if (!made.waitsFor.empty()) return std::nullopt;
  std::optional<diagnosis::Evidence> evidence;
  for (const std::size_t cause : made.found) {
    if (known.isPutRight(cause)) continue;
    auto one = causeFound(file.table, check.key, plannedCheck(check), cause);
    if (evidence) {
      evidence->likelihood[cause] = one.likelihood[cause];
    } else {
      evidence = std::move(one);
    }
  }
  return evidence;
}

void putWaits(const CauseFile& file, ShakeKnown& known) {
  for (MadeCheck& made : known.made) {
    if (made.found.empty()) continue;
    for (const std::size_t before : file.checks[made.check].after) {
      const bool clear =
          std::any_of(known.made.begin(), known.made.end(),
                      [&](const MadeCheck& other) { return other.check == before && other.clear; });
      if (!clear) made.waitsFor.push_back(before);
    }
  }
}

/// What was found again after it was put right is not right.
void dropFoundAgain(const std::vector<MadeCheck>& made, std::vector<PutRight>& right) {
  const auto foundAgain = [&](const PutRight& one) {
    return std::any_of(made.begin(), made.end(), [&](const MadeCheck& check) {
      return check.last > one.entry &&
             std::find(check.found.begin(), check.found.end(), one.cause) != check.found.end();
    });
  };
  right.erase(std::remove_if(right.begin(), right.end(), foundAgain), right.end());
}

}  // namespace

bool ShakeKnown::isPutRight(std::size_t cause) const {
  return std::any_of(putRight.begin(), putRight.end(),
                     [&](const PutRight& one) { return one.cause == cause; });
}

bool ShakeKnown::hasMade(std::size_t check) const {
  return std::any_of(made.begin(), made.end(), [&](const MadeCheck& one) {
    return one.check == check && (one.clear || !one.found.empty());
  });
}

bool ShakeKnown::hasAnswer(std::size_t feature) const {
  return std::any_of(told.begin(), told.end(),
                     [&](const ToldAnswer& one) { return one.feature == feature; });
}

ShakeKnown shakeKnown(const JobState& job, const CauseFile& file) {
  ShakeKnown known;
  known.told = toldIn(job, file);
  for (std::size_t check = 0; check < file.checks.size(); ++check) {
    if (auto made = madeIn(job, file, check)) known.made.push_back(std::move(*made));
  }
  putWaits(file, known);
  known.putRight = putRightIn(job, file);
  dropFoundAgain(known.made, known.putRight);
  for (const ToldAnswer& one : known.told) {
    known.evidence.push_back(answered(file.table, one.feature, one.answer));
  }
  for (const MadeCheck& made : known.made) {
    if (auto evidence = evidenceOf(file, made, known)) {
      known.evidence.push_back(std::move(*evidence));
    }
  }
  for (const PutRight& one : known.putRight) {
    known.evidence.push_back(diagnosis::repaired(file.table, one.cause));
  }
  return known;
}

}  // namespace sw::workshop
