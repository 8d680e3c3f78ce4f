// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/causes/number_words.h"

#include <QCoreApplication>
#include <algorithm>

#include "phrasing/names.h"
#include "ui/common/plain_text.h"
#include "units/parse.h"

namespace sw::ui {

namespace {

using diagnosis::CauseFile;
using diagnosis::NumberKind;
using diagnosis::NumberPlace;

constexpr int kDigits = 6;
constexpr int kRoughDigits = 3;

QString tr(const char* text) {
  return QCoreApplication::translate("sw::ui::NumberWords", text);
}

double shownAs(NumberKind kind, double value) {
  return kind == NumberKind::Chance ? value * 100 : value;
}

QString supportName(const std::string& word) {
  const auto support = fromWord<model::SupportKind>(word);
  return support ? phrasing::nameOf(*support) : text(word);
}

QString answerText(const CauseFile& file, const NumberPlace& place) {
  const auto feature = file.table.feature(place.path[3]);
  if (!feature) return text(place.path[4]);
  const auto& asked = file.table.features[*feature];
  const auto answer = asked.answer(place.path[4]);
  return answer ? text(asked.answers[*answer].text) : text(place.path[4]);
}

QString causeName(const CauseFile& file, const std::string& key) {
  const auto cause = file.table.cause(key);
  return cause ? text(file.table.causes[*cause].name) : text(key);
}

QString checkLabel(const CauseFile& file, const NumberPlace& place) {
  const std::string& name = place.path[2];
  if (name == "minutes") return tr("Minutes it takes");
  if (name == "false_alarm") return tr("Points at something that is not to blame, of 100");
  if (name == "false_alarm_minutes") return tr("Minutes lost by that");
  return causeName(file, place.path[3]);
}

}  // namespace

std::vector<NumberItem> numberItems(const CauseFile& file) {
  std::vector<NumberItem> items{{{}, tr("The search as a whole")}};
  for (const auto& check : file.checks) {
    items.push_back({{"checks", check.key}, tr("Check: %1").arg(text(check.name))});
  }
  for (const auto& setup : file.setups) {
    if (!setup.parent) continue;  // on its wheels it stands already
    items.push_back({{"setups", setup.key}, tr("Set-up: %1").arg(text(setup.name))});
  }
  for (const auto& cause : file.table.causes) {
    items.push_back({{"causes", cause.key}, tr("Cause: %1").arg(text(cause.name))});
  }
  return items;
}

bool belongsTo(const NumberPlace& place, const NumberItem& item) {
  if (item.path.empty()) return place.path.size() == 1;
  return place.path.size() > item.path.size() &&
         std::equal(item.path.begin(), item.path.end(), place.path.begin());
}

QString numberGroup(const CauseFile& file, const NumberPlace& place) {
  if (place.path.size() == 5) {
    const auto feature = file.table.feature(place.path[3]);
    return feature ? text(file.table.features[*feature].ask) : text(place.path[3]);
  }
  if (place.path.front() == "setups") return supportName(place.path[2]);
  if (place.path.size() == 4) return tr("Where it is to blame, it finds, of 100 times");
  if (place.path.back().starts_with("false_alarm")) return tr("False alarms");
  return {};
}

QString numberLabel(const CauseFile& file, const NumberPlace& place) {
  if (place.path.size() == 1) {
    return place.kind == NumberKind::Days ? tr("Days in which a comeback takes back the cause")
                                          : tr("Minutes that giving up costs, to begin with");
  }
  if (place.path.size() == 5) return answerText(file, place);
  if (place.path.front() == "causes") return tr("Jobs of 100 in which it is to blame");
  if (place.path.front() == "setups") {
    return place.path.back() == "open" ? tr("Minutes to set it up") : tr("Minutes to undo it");
  }
  return checkLabel(file, place);
}

QString numberText(NumberKind kind, double value) {
  return QString::number(shownAs(kind, value), 'g', kDigits);
}

QString roughNumberText(NumberKind kind, double value) {
  return QString::number(shownAs(kind, value), 'g', kRoughDigits);
}

Result<double> numberFrom(NumberKind kind, const std::string& typed, const std::string& field) {
  const auto read = parseQuantity(typed, {field, QuantityKind::Number, {}});
  if (!read) return failAs(read);
  return kind == NumberKind::Chance ? read->value.si / 100 : read->value.si;
}

std::string numberName(const std::vector<std::string>& path) {
  std::string name;
  for (const std::string& one : path) name += (name.empty() ? "" : "/") + one;
  return name;
}

}  // namespace sw::ui
