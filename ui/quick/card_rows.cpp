// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/quick/card_rows.h"

#include <QCoreApplication>
#include <algorithm>
#include <random>

#include "phrasing/error_sentence.h"
#include "phrasing/names.h"
#include "report/quantity_text.h"
#include "report/wording.h"
#include "workshop/rules.h"
#include "workshop/step_status.h"
#include "workshop/torque_plan.h"

namespace sw::ui {

namespace {

using procedures::AnswerType;
using workshop::JobState;
using workshop::ShopState;
using workshop::StepView;
using Choices = std::vector<std::pair<std::string, QString>>;

QString tr(const char* text) {
  return QCoreApplication::translate("CardRows", text);
}

QString fromUtf8(const std::string& text) {
  return QString::fromStdString(text);
}

template <HasWords E>
Choices choicesOf() {
  Choices choices;
  for (const auto& [value, word] : Words<E>::table) {
    choices.emplace_back(std::string(word), phrasing::nameOf(value));
  }
  return choices;
}

std::string runKey(const JobState& job, std::size_t run) {
  const model::RunStarted& fact = job.runs[run].fact;
  return fact.procedure + "#" + std::to_string(fact.round);
}

QString sideText(std::optional<model::Side> side) {
  if (!side) return {};
  return *side == model::Side::Left ? tr(" (left)") : tr(" (right)");
}

CardField tickField() {
  return {"tick", FieldLook::Tick, tr("done"), {}, {}, {}};
}

CardField choiceField(const char* name, const QString& label, Choices choices) {
  return {name, FieldLook::Choice, label, {}, std::move(choices), {}};
}

CardField textField(const char* name, const QString& label, const QString& hint = {}) {
  return {name, FieldLook::Text, label, hint, {}, {}};
}

/// The rows of one step after another.
class StepRows {
 public:
  StepRows(const JobState& job, const ShopState& shop, const Timestamp& day,
           std::vector<CardRow>& rows)
      : m_job(job), m_shop(shop), m_day(day), m_rows(rows) {}

  void add(std::size_t step) {
    m_step = step;
    const procedures::Step& definition = *view().step;
    const auto* hold = m_job.holdAt(step);
    if (hold != nullptr) return addStatements(*hold);
    if (definition.id == "choose_support") return addSupport();
    const std::size_t first = m_rows.size();
    addParts(definition);
    for (const auto& question : definition.observe) addQuestion(question);
    if (definition.waitMinutes) addWait(*definition.waitMinutes);
    if (definition.shimPack) addPack(*definition.shimPack);
    if (definition.measure) addReadings(*definition.measure);
    if (definition.torque) addTorque(*definition.torque);
    if (definition.roadTest) addRoadTest();
    const auto isPart = [](const CardRow& row) { return row.kind == CardKind::Part; };
    if (std::all_of(m_rows.begin() + static_cast<std::ptrdiff_t>(first), m_rows.end(), isPart)) {
      put(CardKind::Tick, "tick", {}, {tickField()});
    }
    // Work that was done before anybody wrote anything down: said once a step.
    m_rows.back().fields.push_back(
        {"before", FieldLook::Tick, tr("done before recording"), {}, {}, {}});
  }

 private:
  [[nodiscard]] const StepView& view() const { return m_job.steps[m_step]; }

  CardRow& put(CardKind kind, const std::string& what, const QString& detail,
               std::vector<CardField> fields) {
    const StepView& at = view();
    CardRow row;
    row.key = runKey(m_job, at.run) + "/" + at.step->id + "/" +
              (at.side ? std::string(wordOf(*at.side)) : "once") + "/" + what;
    row.step = m_step;
    row.kind = kind;
    row.title = fromUtf8(at.step->title) + sideText(at.side);
    if (at.step->optional) row.title += tr(" – optional");
    row.detail = detail;
    row.fields = std::move(fields);
    m_rows.push_back(std::move(row));
    return m_rows.back();
  }

  void addSupport() {
    put(CardKind::Support, "support", tr("What carries the vehicle?"),
        {choiceField("support", tr("What carries the vehicle?"), choicesOf<model::SupportKind>())});
  }

  void addStatements(const workshop::HoldView& hold) {
    for (const auto& statement : hold.statements) {
      const bool today =
          statement.answeredAt && localDate(*statement.answeredAt) == localDate(m_day);
      const bool answered = statement.answer && statement.answer->passes;
      if (answered && (!hold.askAgain || today)) continue;
      const procedures::Statement& asks = *statement.statement;
      const QString ask = fromUtf8(asks.ask);
      CardField field = textField("answer", ask, tr("what was seen"));
      if (asks.answer == AnswerType::Choice) {
        field = choiceField("answer", ask, mixed(asks.choices, asks.key));
      }
      put(CardKind::Statement, "statement:" + asks.key, ask, {field}).about = asks.key;
    }
  }

  /// Not always the passing one first: an answer is read before it is chosen.
  [[nodiscard]] Choices mixed(const std::vector<procedures::Choice>& all,
                              const std::string& key) const {
    Choices choices = inOrder(all);
    std::mt19937 random(static_cast<std::uint32_t>(std::hash<std::string>{}(key)) +
                        static_cast<std::uint32_t>(m_job.job.value));
    std::shuffle(choices.begin(), choices.end(), random);
    return choices;
  }
  [[nodiscard]] static Choices inOrder(const std::vector<procedures::Choice>& all) {
    Choices choices;
    for (const auto& choice : all) choices.emplace_back(choice.word, fromUtf8(choice.text));
    return choices;
  }

  [[nodiscard]] bool hasFactHere(const auto& wanted) const {
    return std::any_of(m_job.valid.begin(), m_job.valid.end(), [&](const model::Entry* entry) {
      return m_job.belongsTo(*entry, m_step) && wanted(*entry);
    });
  }

  void addParts(const procedures::Step& definition) {
    const auto facts = workshop::factsOf(m_job, m_job.runs[view().run].fact.round);
    for (const auto& part : definition.parts) {
      if (!part.singleUse || !procedures::holds(part.when, facts, view().side)) continue;
      const bool used = hasFactHere([&](const model::Entry& entry) {
        const auto* fact = model::as<model::PartUsed>(entry);
        return fact != nullptr && fact->key == part.key;
      });
      if (used) continue;
      const QString detail =
          tr("A new %1, how many: %2").arg(fromUtf8(part.name)).arg(part.quantity);
      CardField field{"tick", FieldLook::Tick, tr("new one fitted"), {}, {}, {}};
      CardRow& row = put(CardKind::Part, "part:" + part.key, detail, {field});
      row.about = part.key + "|" + part.name;
      row.number = part.quantity;
    }
  }

  void addQuestion(const procedures::Observe& question) {
    const bool answered = hasFactHere([&](const model::Entry& entry) {
      const auto* seen = model::as<model::Observation>(entry);
      return seen != nullptr && seen->key == question.key;
    });
    if (answered) return;
    const QString ask = fromUtf8(question.ask);
    put(CardKind::Answer, "seen:" + question.key, ask,
        {choiceField("answer", ask, inOrder(question.choices)),
         textField("text", tr("In own words"), tr("in own words, if need be"))})
        .about = question.key;
  }

  void addWait(double minutes) {
    const bool running =
        std::any_of(m_job.timers.begin(), m_job.timers.end(),
                    [this](const workshop::TimerView& timer) { return timer.step == m_step; });
    const QString wait = tr("Wait %1").arg(report::minutesText(minutes));
    if (running) {
      put(CardKind::Tick, "wait", wait, {tickField()});
    } else {
      put(CardKind::Wait, "wait", wait,
          {textField("began", tr("When the wait began"), tr("began, e.g. 14:05"))});
    }
  }

  void addPack(const procedures::ShimPackSpec& spec) {
    put(CardKind::Pack, "pack", {},
        {textField("shims", tr("Shims of the pack"), tr("e.g. 0.50 + 0.25"))})
        .about = std::string(wordOf(spec.role));
  }

  void addReadings(const procedures::MeasureSpec& spec) {
    const auto* series = m_job.newestSeries(m_step);
    const auto planned = static_cast<std::size_t>(spec.planned);
    if (series != nullptr && series->usedCount() >= std::max<std::size_t>(1, planned)) return;
    const auto* limit =
        spec.limit.empty() ? nullptr : m_shop.spec(m_job.opened.vehicle, spec.limit);
    QStringList parts;
    if (limit != nullptr) parts += report::limitText(limit->fact);
    parts += tr("readings: %1").arg(spec.planned);
    if (spec.settling > 0) parts += tr("before them to settle: %1").arg(spec.settling);
    CardField instrument = choiceField("instrument", tr("Instrument"), instrumentsFor(spec));
    if (instrument.choices.size() == 1) instrument.preset = instrument.choices.front().first;
    put(CardKind::Readings, "readings", parts.join(QStringLiteral("; ")),
        {textField("readings", tr("Readings, one after the other"),
                   (spec.planned > 1 ? tr("e.g. 18.5 19 18.5 %1") : tr("e.g. 18.5 %1"))
                       .arg(report::unitText(std::string(defaultUnit(spec.quantity).symbol)))),
         instrument});
  }

  /// Those that measure it, the kinds the step names first.
  [[nodiscard]] Choices instrumentsFor(const procedures::MeasureSpec& spec) const {
    Choices named, others;
    for (const auto* instrument : m_shop.instruments()) {
      const model::Instrument& fact = instrument->fact;
      if (!fact.active || fact.graduation.kind != spec.quantity) continue;
      const bool isNamed = std::find(spec.instruments.begin(), spec.instruments.end(), fact.type) !=
                           spec.instruments.end();
      (isNamed ? named : others).emplace_back(fact.name, fromUtf8(fact.name));
    }
    named.insert(named.end(), others.begin(), others.end());
    return named;
  }

  void addTorque(const procedures::TorqueSpec& torque) {
    const auto plan = workshop::torquePlan(m_job, m_shop, m_step);
    if (!plan) {
      addStage(1, phrasing::sentence(plan.error()), tr("set to"), {});
      return;
    }
    for (std::size_t i = plan->next; i < plan->stages.size(); ++i) {
      const auto& stage = plan->stages[i];
      QString detail = fromUtf8(torque.name) + QStringLiteral(": ") + report::typed(stage.set);
      if (plan->stages.size() > 1) {
        detail += tr(", stage %1 of %2").arg(stage.number).arg(plan->stages.size());
      }
      Choices wrenches;
      for (const auto& wrench : workshop::wrenchesFor(m_shop, stage.set, m_day)) {
        if (wrench.range != workshop::WrenchRange::Fits) continue;
        wrenches.emplace_back(wrench.name, fromUtf8(wrench.name));
      }
      addStage(stage.number, detail, tr("set to, e.g. %1").arg(report::typed(stage.set)), wrenches);
    }
  }

  void addStage(std::int64_t number, const QString& detail, const QString& hint,
                const Choices& wrenches) {
    CardField wrench = choiceField("wrench", tr("Torque wrench"), wrenches);
    if (wrenches.size() == 1) wrench.preset = wrenches.front().first;
    put(CardKind::Torque, "stage:" + std::to_string(number), detail,
        {textField("set", tr("What the wrench was set to"), hint), wrench})
        .number = number;
  }

  void addRoadTest() {
    put(CardKind::RoadTest, "drive", tr("Shake on the road?"),
        {choiceField("shake", tr("Shake on the road?"), choicesOf<model::ShakeResult>()),
         textField("onset", tr("Starts at"), tr("starts at, e.g. 73 km/h")),
         textField("release", tr("Gone at"), tr("gone at")),
         choiceField("source", tr("Speed by"), choicesOf<model::SpeedSource>())});
  }

  const JobState& m_job;
  const ShopState& m_shop;
  Timestamp m_day;
  std::vector<CardRow>& m_rows;
  std::size_t m_step = 0;
};

}  // namespace

std::vector<CardGroup> cardGroups(const JobState& job, const ShopState& shop,
                                  const Timestamp& day) {
  std::vector<CardGroup> groups;
  for (std::size_t run = 0; run < job.runs.size(); ++run) {
    CardGroup group;
    group.key = runKey(job, run);
    group.title = fromUtf8(job.runs[run].procedure->title);
    if (job.runs[run].fact.round > 1) group.title += tr(", round %1").arg(job.runs[run].fact.round);
    StepRows rows(job, shop, day, group.rows);
    for (std::size_t i = 0; i < job.steps.size(); ++i) {
      const StepView& view = job.steps[i];
      if (view.run != run || view.superseded || job.closed) continue;
      const auto* hold = job.holdAt(i);
      if (hold != nullptr ? hold->passed() : view.done()) continue;
      rows.add(i);
      group.due = group.due || workshop::stillOpen(job, i);
    }
    groups.push_back(std::move(group));
  }
  return groups;
}

bool isFilled(const RowValues& values) {
  return std::any_of(values.begin(), values.end(),
                     [](const auto& value) { return !value.second.empty(); });
}

}  // namespace sw::ui
