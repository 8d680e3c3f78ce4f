// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/work_card.h"

#include <QStringList>
#include <algorithm>
#include <array>
#include <map>

#include "report/quantity_text.h"
#include "report/wording.h"

namespace sw::report {

namespace {

using model::Side;
using procedures::Step;

enum class Tick { None, Open, Done };

/// One step with its two sides on one line.
struct CardStep {
  const Step* step = nullptr;
  Tick left = Tick::None;
  Tick right = Tick::None;
  Tick once = Tick::None;
};

struct CardRun {
  QString title;
  std::int64_t round = 1;
  std::vector<CardStep> steps;

  [[nodiscard]] bool open() const {
    return std::any_of(steps.begin(), steps.end(), [](const CardStep& step) {
      return step.left == Tick::Open || step.right == Tick::Open || step.once == Tick::Open;
    });
  }
};

void put(CardRun& run, const Step* step, std::optional<Side> side, Tick tick) {
  auto found = std::find_if(run.steps.begin(), run.steps.end(),
                            [&](const CardStep& one) { return one.step == step; });
  if (found == run.steps.end()) {
    run.steps.push_back({step});
    found = std::prev(run.steps.end());
  }
  if (!side) {
    found->once = tick;
  } else {
    (*side == Side::Left ? found->left : found->right) = tick;
  }
}

QString roundTitle(const procedures::Procedure& procedure, std::int64_t round) {
  QString title = fromUtf8(procedure.title);
  if (round > 1) title += QStringLiteral(", round %1").arg(round);
  return title;
}

std::vector<CardRun> runsOfJob(const workshop::JobState& job) {
  std::vector<CardRun> runs;
  for (std::size_t i = 0; i < job.runs.size(); ++i) {
    const auto& view = job.runs[i];
    CardRun run{roundTitle(*view.procedure, view.fact.round), view.fact.round, {}};
    for (const auto& step : job.steps) {
      if (step.run != i || step.superseded) continue;
      put(run, step.step, step.side, step.done() ? Tick::Done : Tick::Open);
    }
    if (!run.steps.empty()) runs.push_back(std::move(run));
  }
  return runs;
}

std::vector<CardRun> runsOfPlan(const workshop::JobState& job, const CardOptions& options) {
  std::vector<CardRun> runs;
  const auto facts = workshop::factsOf(job, 1);
  for (const auto* procedure : options.plan) {
    CardRun run{fromUtf8(procedure->title), 1, {}};
    for (const auto& instance :
         procedures::instantiate(*procedure, {Side::Left, Side::Right}, facts)) {
      put(run, instance.step, instance.side, Tick::Open);
    }
    if (!run.steps.empty()) runs.push_back(std::move(run));
  }
  return runs;
}

QString box(Tick tick) {
  switch (tick) {
    case Tick::Open:
      return QStringLiteral("☐");
    case Tick::Done:
      return QStringLiteral("☑");
    case Tick::None:
      break;
  }
  return {};
}

/// Places to write a figure in.
QString blanks(std::int64_t count) {
  constexpr std::int64_t kMost = 6;
  QString text;
  for (std::int64_t i = 0; i < std::min(count, kMost); ++i) {
    if (i > 0) text += QChar(u' ');
    text += QStringLiteral("_____");
  }
  return text;
}

class CardWriter {
 public:
  CardWriter(const workshop::JobState& job, const workshop::ShopState& shop)
      : m_job(job), m_shop(shop) {}

  Table table(const CardRun& run) {
    Table table;
    table.columns = {{{}, 4, Align::Centre},
                     {QStringLiteral("L"), 4, Align::Centre},
                     {QStringLiteral("R"), 4, Align::Centre},
                     {run.title, 51, Align::Left},
                     {QStringLiteral("figure, count"), 37, Align::Left}};
    m_facts = workshop::factsOf(m_job, run.round);
    for (const CardStep& step : run.steps) add(step, table);
    return table;
  }

 private:
  void add(const CardStep& step, Table& table) {
    Cell title = cellOf(fromUtf8(step.step->title));
    if (step.step->needsTwo) {
      title.lines.front().push_back({QStringLiteral(" (needs two)")});
    }
    if (step.step->optional) title.lines.front().push_back({QStringLiteral(" (optional)")});
    table.rows.push_back({{cellOf(box(step.once)), cellOf(box(step.left)), cellOf(box(step.right)),
                           std::move(title), figures(step)},
                          RowKind::Body});
    if (step.step->hold) addStatements(step, table);
  }

  [[nodiscard]] Cell figures(const CardStep& step) const {
    Cell cell;
    if (step.step->measure) addMeasure(step, *step.step->measure, cell);
    if (step.step->torque) addTorque(step, *step.step->torque, cell);
    if (step.step->shimPack) addSides(step, QStringLiteral("pack %1 mm").arg(blanks(2)), cell);
    if (step.step->waitMinutes) {
      cell.lines.push_back(plain(QStringLiteral("wait ") + minutesText(*step.step->waitMinutes) +
                                 QStringLiteral(", from _____")));
    }
    if (step.step->roadTest) {
      cell.lines.push_back(plain(QStringLiteral("shake _____ gone _____")));
    }
    if (step.step->hold) cell.lines.push_back(plain(QStringLiteral("initials at each line")));
    return cell;
  }

  void addMeasure(const CardStep& step, const procedures::MeasureSpec& measure, Cell& cell) const {
    const auto* spec = specItem(measure.limit);
    if (spec != nullptr) cell.lines.push_back(plain(limitText(*spec)));
    if (spec == nullptr && !measure.limit.empty()) {
      cell.lines.push_back(plain(QStringLiteral("limit not on file")));
    }
    const std::int64_t count = measure.planned + measure.settling;
    QString fields = blanks(count);
    if (measure.settling == 1) fields = QStringLiteral("(_____) ") + blanks(measure.planned);
    addSides(step, fields, cell);
  }

  void addTorque(const CardStep& step, const procedures::TorqueSpec& torque, Cell& cell) const {
    const auto* spec = specItem(torque.fasteners);
    if (spec == nullptr) {
      cell.lines.push_back(plain(QStringLiteral("torque not on file: _____")));
    } else {
      QString text = torqueText(*spec);
      if (torque.castellated) text += QStringLiteral(", on to the slot");
      cell.lines.push_back(plain(text));
      QStringList how;
      if (!spec->fastenerSize.empty()) how += fromUtf8(spec->fastenerSize);
      if (!spec->pattern.empty()) how += humanWord(spec->pattern);
      for (const double stage : torque.stages) {
        if (stage < 1) how += QStringLiteral("first %1 %").arg(qRound(stage * 100));
      }
      if (!how.isEmpty()) cell.lines.push_back(plain(how.join(QStringLiteral(", "))));
    }
    const QString count = spec != nullptr && spec->count
                              ? QStringLiteral("____ of %1").arg(*spec->count)
                              : QStringLiteral("____");
    addSideBySide(step, count, cell);
  }

  void addSides(const CardStep& step, const QString& fields, Cell& cell) const {
    if (step.left != Tick::None) cell.lines.push_back(plain(QStringLiteral("L ") + fields));
    if (step.right != Tick::None) cell.lines.push_back(plain(QStringLiteral("R ") + fields));
    if (step.once != Tick::None) cell.lines.push_back(plain(fields));
  }

  void addSideBySide(const CardStep& step, const QString& field, Cell& cell) const {
    QStringList parts;
    if (step.left != Tick::None) parts += QStringLiteral("L ") + field;
    if (step.right != Tick::None) parts += QStringLiteral("R ") + field;
    if (step.once != Tick::None) parts += field;
    cell.lines.push_back(plain(parts.join(QStringLiteral("   "))));
  }

  void addStatements(const CardStep& step, Table& table) const {
    for (const auto& statement : step.step->hold->statements) {
      if (!procedures::holds(statement.when, m_facts, std::nullopt)) continue;
      QString ask = QStringLiteral("– ") + fromUtf8(statement.ask);
      const auto support = statement.when.find("support");
      if (!m_job.support && support != statement.when.end()) {
        QStringList kinds;
        for (const auto& kind : support->second) kinds += humanWord(kind);
        ask += QStringLiteral(" [") + kinds.join(QStringLiteral(", ")) + QStringLiteral("]");
      }
      table.rows.push_back(
          {{Cell{}, Cell{}, Cell{}, cellOf(ask), cellOf(QStringLiteral("__________ init. _____"))},
           RowKind::Body});
    }
  }

  [[nodiscard]] const model::SpecItem* specItem(const std::string& key) const {
    const auto* found = key.empty() ? nullptr : m_shop.spec(m_job.opened.vehicle, key);
    return found == nullptr ? nullptr : &found->fact;
  }

  const workshop::JobState& m_job;
  const workshop::ShopState& m_shop;
  procedures::Facts m_facts;
};

QString headText(const workshop::JobState& job) {
  const model::Vehicle& vehicle = job.vehicle.fact;
  QStringList parts;
  if (!vehicle.makeModel.empty()) parts += fromUtf8(vehicle.makeModel);
  if (!vehicle.vin.empty()) parts += fromUtf8(vehicle.vin);
  if (job.opened.odometer) parts += typed(*job.opened.odometer);
  if (job.support) parts += humanWord(*job.support);
  const QString arrangement = arrangementText(vehicle.arrangement);
  if (!arrangement.isEmpty()) parts += arrangement;
  return parts.join(QStringLiteral("; "));
}

}  // namespace

Document workCard(const workshop::JobState& job, const workshop::ShopState& shop,
                  const CardOptions& options) {
  Document document;
  document.style = Style::Card;
  document.paper = options.paper;
  document.issuer = options.shopName;
  document.title = QStringLiteral("Work card, job %1").arg(job.job.value);
  document.subtitle = fromUtf8(job.vehicle.fact.registration);
  document.running =
      fromUtf8(job.vehicle.fact.registration) + QStringLiteral(" – job %1").arg(job.job.value);
  Section head;
  head.blocks.push_back(Paragraph{plain(headText(job)), TextLook::Normal});
  const auto runs = job.runs.empty() ? runsOfPlan(job, options) : runsOfJob(job);
  QStringList finished;
  CardWriter writer(job, shop);
  for (const CardRun& run : runs) {
    if (!run.open()) finished += run.title;
  }
  if (!finished.isEmpty()) {
    head.blocks.push_back(
        Paragraph{plain(QStringLiteral("Done already: ") + finished.join(QStringLiteral("; "))),
                  TextLook::Normal});
  }
  document.sections.push_back(std::move(head));
  for (const CardRun& run : runs) {
    if (run.open()) document.sections.push_back({{}, {writer.table(run)}});
  }
  document.footer = {QStringLiteral(
      "L, R as seen from the driver's seat. (_____) = settling pull, not used. The vehicle's own "
      "documentation, local codes and licensed practice come first.")};
  return document;
}

}  // namespace sw::report
