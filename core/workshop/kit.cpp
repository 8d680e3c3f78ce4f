// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/kit.h"

#include <algorithm>
#include <charconv>
#include <cstdint>

namespace sw::workshop {

namespace {

using Kind = KitLine::Kind;

/// What the steps ask for of one line, before it is put into words.
struct Amounts {
  std::int64_t count = 0;
  std::vector<std::pair<std::string, std::int64_t>> texts;  ///< how often each is asked for

  void add(std::int64_t more) { count += more; }
  void add(const std::string& text) {
    std::int64_t number = 0;
    const char* end = text.data() + text.size();
    const auto read = std::from_chars(text.data(), end, number);
    if (read.ec == std::errc{} && read.ptr == end) return add(number);
    if (text.empty()) return;
    const auto found =
        std::find_if(texts.begin(), texts.end(), [&](const auto& t) { return t.first == text; });
    if (found == texts.end()) {
      texts.emplace_back(text, 1);
    } else {
      ++found->second;
    }
  }

  [[nodiscard]] std::string inWords() const {
    std::string words = count > 0 ? std::to_string(count) : std::string{};
    for (const auto& [text, times] : texts) {
      if (!words.empty()) words += "; ";
      const bool measured = text.front() >= '0' && text.front() <= '9';
      words += measured && times > 1 ? std::to_string(times) + " x " + text : text;
    }
    return words;
  }
};

bool stepDone(const JobState& job, std::size_t step) {
  const HoldView* hold = job.holdAt(step);
  return hold != nullptr ? hold->passed() : job.steps[step].done();
}

class Collector {
 public:
  explicit Collector(const JobState& job) : m_job(job) {}

  std::vector<KitLine> collect() {
    for (std::size_t i = 0; i < m_job.steps.size(); ++i) {
      const StepView& view = m_job.steps[i];
      if (!view.superseded && view.action != model::StepAction::NotApplicable) addStep(i);
    }
    for (std::size_t i = 0; i < m_lines.size(); ++i) m_lines[i].amount = m_amounts[i].inWords();
    std::stable_sort(m_lines.begin(), m_lines.end(),
                     [](const KitLine& a, const KitLine& b) { return a.kind < b.kind; });
    return std::move(m_lines);
  }

 private:
  void addStep(std::size_t index) {
    const StepView& view = m_job.steps[index];
    for (const auto& tool : view.step->tools) {
      KitLine& line = m_lines[lineOf(Kind::Tool, tool.name, index)];
      for (const std::string& other : tool.instead) {
        const bool known =
            std::find(line.instead.begin(), line.instead.end(), other) != line.instead.end();
        if (!known) line.instead.push_back(other);
      }
    }
    const auto facts = factsOf(m_job, m_job.runs[view.run].fact.round);
    for (const auto& part : view.step->parts) {
      if (!procedures::holds(part.when, facts, view.side)) continue;
      const std::size_t at = lineOf(Kind::Part, part.name, index);
      m_amounts[at].add(part.quantity);
      m_lines[at].singleUse = m_lines[at].singleUse || part.singleUse;
    }
    for (const auto& consumable : view.step->consumables) {
      m_amounts[lineOf(Kind::Consumable, consumable.name, index)].add(consumable.amount);
    }
  }

  /// The index of the line, made where it is new, with the step noted in it.
  std::size_t lineOf(Kind kind, const std::string& name, std::size_t step) {
    const auto [found, isNew] = m_index.try_emplace({kind, name}, m_lines.size());
    if (isNew) {
      KitLine line;
      line.kind = kind;
      line.key = std::string(wordOf(kind)) + '/' + name;
      line.name = name;
      line.optional = true;
      m_lines.push_back(std::move(line));
      m_amounts.emplace_back();
    }
    KitLine& line = m_lines[found->second];
    if (line.steps.empty() || line.steps.back() != step) line.steps.push_back(step);
    line.optional = line.optional && m_job.steps[step].step->optional;
    line.stillNeeded = line.stillNeeded || !stepDone(m_job, step);
    return found->second;
  }

  const JobState& m_job;
  std::vector<KitLine> m_lines;
  std::vector<Amounts> m_amounts;  ///< beside m_lines
  std::map<std::pair<Kind, std::string>, std::size_t> m_index;
};

std::string placeOf(model::JobId job) {
  return "job/" + std::to_string(job.value) + "/kit/";
}

}  // namespace

std::vector<KitLine> kitOf(const JobState& job) {
  return Collector(job).collect();
}

Result<std::map<std::string, KitTick>> kitTicks(const store::Book& book, model::JobId job) {
  const auto drafts = book.drafts();
  if (!drafts) return failAs(drafts);
  const std::string place = placeOf(job);
  std::map<std::string, KitTick> ticks;
  for (const store::Draft& draft : *drafts) {
    if (!draft.place.starts_with(place)) continue;
    const auto tick = fromWord<KitTick>(draft.text);
    if (tick) ticks.emplace(draft.place.substr(place.size()), *tick);
  }
  return ticks;
}

Result<void> setKitTick(store::Book& book, model::JobId job, const std::string& key, KitTick tick) {
  const std::string place = placeOf(job) + key;
  if (tick == KitTick::Open) return book.dropDraft(place);
  return book.setDraft({place, std::string(wordOf(tick))});
}

}  // namespace sw::workshop
