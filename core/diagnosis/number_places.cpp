// SPDX-License-Identifier: GPL-3.0-or-later
// Where the numbers stand that a shop may put its own for, and how its text changes.
#include <algorithm>
#include <iterator>
#include <nlohmann/json.hpp>

#include "diagnosis/own_numbers.h"
#include "model/json.h"
#include "model/words.h"

namespace sw::diagnosis {

namespace {

using model::Json;
using Path = std::vector<std::string>;

void addCauses(const CauseFile& file, std::vector<NumberPlace>& out) {
  for (const Cause& cause : file.table.causes) {
    out.push_back({{"causes", cause.key, "weight"}, NumberKind::Weight, cause.weight});
    for (std::size_t f = 0; f < cause.answers.size(); ++f) {
      const Feature& feature = file.table.features[f];
      for (std::size_t a = 0; a < feature.answers.size(); ++a) {
        out.push_back({{"causes", cause.key, "answers", feature.key, feature.answers[a].word},
                       NumberKind::Chance,
                       cause.answers[f][a]});
      }
    }
  }
}

void addChecks(const CauseFile& file, std::vector<NumberPlace>& out) {
  for (const Check& check : file.checks) {
    out.push_back({{"checks", check.key, "minutes"}, NumberKind::Minutes, check.minutes});
    for (const Detection& one : check.finds) {
      out.push_back({{"checks", check.key, "finds", file.table.causes[one.cause].key},
                     NumberKind::Chance,
                     one.chance});
    }
    out.push_back({{"checks", check.key, "false_alarm"}, NumberKind::Chance, check.falseAlarm});
    out.push_back({{"checks", check.key, "false_alarm_minutes"},
                   NumberKind::Minutes,
                   check.falseAlarmMinutes});
  }
}

void addSetups(const CauseFile& file, std::vector<NumberPlace>& out) {
  for (const Setup& setup : file.setups) {
    if (!setup.parent) continue;  // the vehicle on its wheels takes no time
    for (std::size_t support = 0; support < setup.minutes.size(); ++support) {
      const std::string word(wordOf(static_cast<model::SupportKind>(support)));
      const auto& minutes = setup.minutes[support];
      out.push_back({{"setups", setup.key, word, "open"}, NumberKind::Minutes, minutes.open});
      out.push_back({{"setups", setup.key, word, "close"}, NumberKind::Minutes, minutes.close});
    }
  }
}

/// An empty object where the text is none.
Json objectIn(std::string_view text) {
  auto json = model::parseJson(text);
  return json && json->is_object() ? std::move(*json) : Json::object();
}

const Json* find(const Json& json, const Path& path) {
  const Json* at = &json;
  for (const std::string& name : path) {
    if (!at->is_object()) return nullptr;
    const auto found = at->find(name);
    if (found == at->end()) return nullptr;
    at = &*found;
  }
  return at;
}

/// Takes out what the path names, and every object that is empty then.
void takeOut(Json& json, const Path& path, std::size_t from) {
  if (from == path.size() || !json.is_object()) return;
  const auto found = json.find(path[from]);
  if (found == json.end()) return;
  if (from + 1 < path.size()) {
    takeOut(*found, path, from + 1);
    if (!found->empty()) return;
  }
  json.erase(path[from]);
}

}  // namespace

std::vector<NumberPlace> numbersOf(const CauseFile& file) {
  std::vector<NumberPlace> list{{{"fallback_minutes"}, NumberKind::Minutes, file.fallbackMinutes},
                                {{"comeback_days"}, NumberKind::Days, file.comebackDays}};
  addCauses(file, list);
  addChecks(file, list);
  addSetups(file, list);
  return list;
}

std::vector<NumberPlace> ownAmong(const std::vector<NumberPlace>& places, std::string_view text) {
  const Json json = objectIn(text);
  std::vector<NumberPlace> own;
  std::copy_if(places.begin(), places.end(), std::back_inserter(own),
               [&](const NumberPlace& one) { return find(json, one.path) != nullptr; });
  return own;
}

bool isOwn(std::string_view text, const Path& path) {
  const Json json = objectIn(text);
  return !json.empty() && find(json, path) != nullptr;
}

Result<std::string> withChanges(const CauseFile& shipped, std::string_view text,
                                const std::vector<NumberChange>& changes) {
  Json json = objectIn(text);
  for (const NumberChange& change : changes) {
    if (!change.value) {
      takeOut(json, change.path, 0);
      continue;
    }
    Json* at = &json;
    for (const std::string& name : change.path) at = &(*at)[name];
    *at = *change.value;
  }
  std::string changed = json.empty() ? std::string{} : json.dump();
  if (const auto file = withOwnNumbers(shipped, changed); !file) return failAs(file);
  return changed;
}

std::string withoutNumber(std::string_view text, const Path& path) {
  if (path.empty()) return {};
  Json json = objectIn(text);
  takeOut(json, path, 0);
  return json.empty() ? std::string{} : json.dump();
}

}  // namespace sw::diagnosis
