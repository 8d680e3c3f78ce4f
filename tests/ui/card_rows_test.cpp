// SPDX-License-Identifier: GPL-3.0-or-later
// A card copied in from its first row to its last brings the job to where it can be signed off.
#include "ui/quick/card_rows.h"

#include "ui/quick/done_at.h"
#include "window_fixture.h"
#include "workshop/rules.h"

namespace sw::ui {
namespace {

class CardRows : public WindowTest {
 protected:
  void SetUp() override {
    makeDemoBook();
    openSession();  // no window that would follow every entry
    session->setPerson(session->shop().value()->people().front()->fact.initials);
  }
  [[nodiscard]] std::shared_ptr<const workshop::JobState> state() const {
    return *session->job(kJob);
  }
  [[nodiscard]] const workshop::ShopState& shop() const { return **session->shop(); }
  [[nodiscard]] std::optional<CardRow> firstDue() const {
    for (const CardGroup& group : cardGroups(*state(), shop(), clock.now())) {
      if (!group.due) continue;
      for (const CardRow& row : group.rows) {
        if (!state()->steps[row.step].step->optional) return row;
      }
    }
    return std::nullopt;
  }

  /// What somebody with a sound axle would have written.
  [[nodiscard]] RowValues filled(const CardRow& row) const {
    RowValues values;
    for (const CardField& field : row.fields) {
      if (field.look == FieldLook::Tick && field.name == "tick") values["tick"] = "1";
      if (field.look != FieldLook::Choice || field.choices.empty()) continue;
      const bool maybe = field.name == "source";
      if (!maybe) values[field.name] = field.choices.front().first;
    }
    const procedures::Step& step = *state()->steps[row.step].step;
    if (row.kind == CardKind::Statement) values["answer"] = seen(step, row.about);
    if (row.kind == CardKind::Readings) values["readings"] = readings(*step.measure);
    if (row.kind == CardKind::Pack) values["shims"] = "0.50 + 0.25";
    if (row.kind == CardKind::Wait) values["began"] = "2031-03-02 08:00";
    if (row.kind == CardKind::Torque) {
      values["set"] = row.fields.front().hint.section(QStringLiteral("e.g. "), 1).toStdString();
    }
    return values;
  }
  [[nodiscard]] std::string seen(const procedures::Step& step, const std::string& key) const {
    for (const auto& statement : step.hold->statements) {
      if (statement.key != key) continue;
      for (const auto& choice : statement.choices) {
        if (choice.passes) return choice.word;
      }
      if (statement.check == "wheel_nut_torque") {
        return shop().spec(state()->opened.vehicle, "wheel_nuts")->fact.value->text();
      }
      if (statement.answer == procedures::AnswerType::Count) {
        return std::to_string(std::max<std::int64_t>(statement.atLeast.value_or(1), 1));
      }
      return "1500 kg";
    }
    return {};
  }
  [[nodiscard]] std::string readings(const procedures::MeasureSpec& spec) const {
    const auto* limit =
        spec.limit.empty() ? nullptr : shop().spec(state()->opened.vehicle, spec.limit);
    double si = spec.quantity == QuantityKind::Pressure ? 2.0e5 : 0.35e-3;
    if (limit != nullptr && limit->fact.max) {
      const double low = limit->fact.min ? limit->fact.min->si : 0.0;
      si = low + (limit->fact.max->si - low) * (limit->fact.min ? 0.5 : 0.2);
    } else if (spec.quantity == QuantityKind::Force) {
      si = 20.0;
    }
    const Unit& unit = defaultUnit(spec.quantity);
    const QString one = QString::number(si / unit.toSi, 'f', 2);
    QStringList all;
    for (std::int64_t i = 0; i < spec.planned + spec.settling; ++i) all += one;
    return all.join(QLatin1Char(' ')).toStdString() + " " + std::string(unit.symbol);
  }

  static constexpr model::JobId kJob{12};
};

TEST_F(CardRows, AWholeCardLeavesNothingOpen) {
  std::size_t rows = 0;
  for (; rows < 600; ++rows) {
    const auto row = firstDue();
    if (!row) break;
    SCOPED_TRACE(row->key);
    if (row->kind == CardKind::Wait) clock.advanceMilliseconds(26LL * 3600 * 1000);
    clock.advanceMilliseconds(30'000);
    const auto commands = commandsOf(*row, filled(*row), *state(), std::nullopt, clock.now());
    ASSERT_TRUE(commands) << commands.error().key << " " << commands.error().field;
    for (const CardCommand& command : *commands) {
      const auto done = session->perform(command.action, command.where);
      ASSERT_TRUE(done) << done.error().key << " " << done.error().field;
    }
  }
  EXPECT_GT(rows, 100U);
  EXPECT_LT(rows, 600U);
  for (const auto& refusal : workshop::againstSignOff(*state())) {
    ADD_FAILURE() << refusal.key << " " << refusal.step << " " << refusal.what;
  }
}

TEST_F(CardRows, KeysNameOneRowEach) {
  std::set<std::string> keys;
  std::size_t rows = 0;
  for (const CardGroup& group : cardGroups(*state(), shop(), clock.now())) {
    for (const CardRow& row : group.rows) {
      keys.insert(row.key);
      ++rows;
      ASSERT_FALSE(row.fields.empty()) << row.key;
      EXPECT_FALSE(row.title.isEmpty()) << row.key;
      // What is answered for safety is never there beforehand.
      if (row.kind == CardKind::Statement || row.kind == CardKind::Answer) {
        EXPECT_TRUE(row.fields.front().preset.empty()) << row.key;
      }
    }
  }
  EXPECT_EQ(keys.size(), rows);
}

TEST_F(CardRows, HalfARowNamesWhatIsMissing) {
  CardRow row;
  row.kind = CardKind::Readings;
  row.fields = {{"readings", FieldLook::Text, {}, {}, {}, {}},
                {"instrument", FieldLook::Choice, {}, {}, {}, {}}};
  const auto none = commandsOf(row, {{"readings", "18.5 N"}}, *state(), {}, clock.now());
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().field, "instrument");
  row.fields[1].preset = "Spring scale";
  EXPECT_TRUE(commandsOf(row, {{"readings", "18.5 N"}}, *state(), {}, clock.now()));
}

TEST(DoneAt, TimesAsPeopleWriteThem) {
  const Timestamp now = *parseTimestamp("2031-03-03T16:20+01:00");
  const auto at = [&](const char* text) {
    const auto read = doneAtOf(QString::fromLatin1(text), now);
    return read && *read ? **read : std::string("-");
  };
  EXPECT_EQ(at("14:05"), "2031-03-03T14:05+01:00");
  EXPECT_EQ(at("9:05"), "2031-03-03T09:05+01:00");
  EXPECT_EQ(at(" 0905 "), "2031-03-03T09:05+01:00");
  EXPECT_EQ(at("2031-03-02 14:05"), "2031-03-02T14:05+01:00");
  EXPECT_EQ(at("2031-03-02T14:05Z"), "2031-03-02T14:05Z");
  EXPECT_EQ(at("2031-03-02T14:05-03:00"), "2031-03-02T14:05-03:00");
  EXPECT_EQ(at(""), "-");
  for (const char* wrong : {"yesterday", "25:00", "14:61", "2031-02-30 10:00", "2031-03-02"}) {
    EXPECT_FALSE(doneAtOf(QString::fromLatin1(wrong), now)) << wrong;
  }
}

TEST(DoneAt, ATimeKeepsItsDay) {
  const Timestamp now = *parseTimestamp("2031-03-03T16:20+01:00");
  EXPECT_EQ(withItsDay(QStringLiteral("9:05"), now), QStringLiteral("2031-03-03 09:05"));
  EXPECT_EQ(withItsDay(QStringLiteral("2031-03-02 14:05"), now),
            QStringLiteral("2031-03-02 14:05"));
  for (const char* kept : {"", "noon", "25:10"}) {
    EXPECT_EQ(withItsDay(QString::fromLatin1(kept), now), QString::fromLatin1(kept));
  }
}

}  // namespace
}  // namespace sw::ui
