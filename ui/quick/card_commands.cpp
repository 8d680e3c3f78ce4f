// SPDX-License-Identifier: GPL-3.0-or-later
// What a filled-in row says, as commands.
#include <algorithm>

#include "ui/quick/card_rows.h"
#include "ui/quick/done_at.h"

namespace sw::ui {

namespace {

using Commands = std::vector<CardCommand>;

/// The row's fields as they read, presets included; the first that is needed and empty is kept.
class Filled {
 public:
  Filled(const CardRow& row, const RowValues& values) : m_row(row), m_values(values) {}

  [[nodiscard]] std::string read(const std::string& name) const {
    if (const auto found = m_values.find(name); found != m_values.end()) return found->second;
    for (const CardField& field : m_row.fields) {
      if (field.name == name) return field.preset;
    }
    return {};
  }
  [[nodiscard]] std::optional<std::string> maybe(const std::string& name) const {
    const std::string value = read(name);
    return value.empty() ? std::nullopt : std::optional(value);
  }
  [[nodiscard]] std::string needed(const std::string& name) {
    std::string value = read(name);
    if (value.empty() && m_missing.empty()) m_missing = name;
    return value;
  }
  [[nodiscard]] const std::string& missing() const { return m_missing; }

 private:
  const CardRow& m_row;
  const RowValues& m_values;
  std::string m_missing;
};

workshop::Action partAction(const CardRow& row) {
  const auto mark = row.about.find('|');
  workshop::UsePart use;
  use.key = row.about.substr(0, mark);
  use.name = row.about.substr(mark + 1);
  use.quantity = std::to_string(row.number);
  return use;
}

workshop::Action roadTestAction(Filled& filled) {
  workshop::RecordRoadTest test;
  if (const auto shake = fromWord<model::ShakeResult>(filled.needed("shake"))) test.shake = *shake;
  test.onset = filled.maybe("onset");
  test.release = filled.maybe("release");
  test.speedSource = fromWord<model::SpeedSource>(filled.read("source"));
  return test;
}

workshop::Action readingsAction(Filled& filled) {
  workshop::TakeReadings take;
  take.readings = filled.needed("readings");
  take.instrument = filled.needed("instrument");
  return take;
}

workshop::Action torqueAction(const CardRow& row, Filled& filled) {
  workshop::MarkTorque mark;
  mark.set = filled.needed("set");
  mark.wrench = filled.needed("wrench");
  mark.stage = row.number;
  return mark;
}

workshop::Action packAction(const CardRow& row, Filled& filled) {
  workshop::RecordPack pack;
  pack.role = fromWord<model::PackRole>(row.about).value_or(model::PackRole::Found);
  pack.shims = filled.needed("shims");
  return pack;
}

workshop::Action actionOf(const CardRow& row, Filled& filled) {
  switch (row.kind) {
    case CardKind::Part:
      (void)filled.needed("tick");
      return partAction(row);
    case CardKind::Support: {
      const auto kind = fromWord<model::SupportKind>(filled.needed("support"));
      return workshop::ChooseSupport{kind.value_or(model::SupportKind::Stands)};
    }
    case CardKind::Answer:
      return workshop::Observe{row.about, filled.needed("answer"), filled.maybe("text")};
    case CardKind::Statement:
      return workshop::AnswerHold{row.about, filled.needed("answer")};
    case CardKind::Readings:
      return readingsAction(filled);
    case CardKind::Pack:
      return packAction(row, filled);
    case CardKind::Torque:
      return torqueAction(row, filled);
    case CardKind::RoadTest:
      return roadTestAction(filled);
    case CardKind::Tick:
    case CardKind::Wait:
      break;
  }
  return workshop::DoStep{};
}

}  // namespace

Result<std::vector<CardCommand>> commandsOf(const CardRow& row, const RowValues& values,
                                            const workshop::JobState& job,
                                            const std::optional<std::string>& doneAt,
                                            const Timestamp& now) {
  Where where = whereOf(job, row.step);
  where.doneAt = doneAt;
  Filled filled(row, values);
  if (!filled.read("before").empty()) {
    workshop::DoStep before;
    before.action = model::StepAction::DoneBeforeRecording;
    return Commands{{before, where}};
  }
  Commands commands;
  if (row.kind == CardKind::Wait) {
    const std::string began = filled.needed("began");
    auto at = doneAtOf(QString::fromStdString(began), now);
    if (!at) return tl::make_unexpected(at.error().about("began"));
    Where start = where;
    start.doneAt = *at;
    commands.push_back({workshop::StartTimer{}, start});
  }
  commands.push_back({actionOf(row, filled), where});
  if (!filled.missing().empty()) {
    return fail(ErrorCode::Missing, "workshop.field_needed", filled.missing());
  }
  return commands;
}

}  // namespace sw::ui
