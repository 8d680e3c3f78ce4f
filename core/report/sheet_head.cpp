// SPDX-License-Identifier: GPL-3.0-or-later
#include <QStringList>
#include <algorithm>

#include "report/quantity_text.h"
#include "report/sheet_sections.h"
#include "report/wording.h"

namespace sw::report {

namespace {

void item(KeyValues& pairs, const char* key, const QString& value) {
  if (!value.isEmpty()) pairs.items.emplace_back(QString::fromUtf8(key), cellOf(value));
}

QString openedBy(const SheetContext& context) {
  QString text;
  context.each<model::JobOpened>([&](const model::Entry& entry, const model::JobOpened&) {
    text = timeText(entry.doneAt) + QStringLiteral(", ") + context.initials(entry.by);
  });
  return text;
}

QString endedBy(const SheetContext& context) {
  const auto& job = context.job();
  if (!job.closed) return QStringLiteral("still open");
  const auto* entry = context.entry(*job.closedEntry);
  return humanWord(job.closed->outcome) + QStringLiteral(", ") + timeText(*job.closedAt) +
         QStringLiteral(", ") + context.initials(entry == nullptr ? std::nullopt : entry->by);
}

QString tyresText(const model::Vehicle& vehicle) {
  if (vehicle.tyreOriginal.empty() || vehicle.tyreOriginal == vehicle.tyreFitted) {
    return fromUtf8(vehicle.tyreFitted);
  }
  const QString built = QStringLiteral("built with ") + fromUtf8(vehicle.tyreOriginal);
  if (vehicle.tyreFitted.empty()) return built;
  return fromUtf8(vehicle.tyreFitted) + QStringLiteral(" fitted, ") + built;
}

QString driveText(const model::Vehicle& vehicle) {
  QStringList parts;
  if (vehicle.handOfDrive) parts += humanWord(*vehicle.handOfDrive) + QStringLiteral("-hand drive");
  if (vehicle.trafficSide) {
    parts += QStringLiteral("drives on the ") + humanWord(*vehicle.trafficSide);
  }
  return parts.join(QStringLiteral(", "));
}

QString speedText(const std::optional<TypedQuantity>& speed) {
  return speed ? typedAndSi(*speed) : QString{};
}

QString speedsText(const model::Complaint& complaint) {
  QStringList parts;
  const auto add = [&](const char* what, const std::optional<TypedQuantity>& speed) {
    if (speed) parts += QString::fromUtf8(what) + speedText(speed);
  };
  add("starts at ", complaint.onsetRising);
  add("gone above ", complaint.releaseRising);
  add("slowing down, starts at ", complaint.onsetFalling);
  add("slowing down, gone below ", complaint.releaseFalling);
  if (!parts.isEmpty() && complaint.speedSource) {
    parts += QStringLiteral("speed ") + humanWord(*complaint.speedSource);
  }
  return parts.join(QStringLiteral("; "));
}

QString knownAnswer(model::YesNo answer) {
  return answer == model::YesNo::Unknown ? QString{} : humanWord(answer);
}

struct StepCount {
  std::size_t done = 0;
  std::size_t all = 0;
};

StepCount countSteps(const workshop::JobState& job, std::size_t run) {
  StepCount count;
  for (const auto& step : job.steps) {
    if (step.run != run) continue;
    ++count.all;
    if (step.done()) ++count.done;
  }
  return count;
}

/// What a mark says beyond "done": not applicable, done before recording, a remark.
void addRemarks(const SheetContext& context, const workshop::RunView& run, Cell& cell) {
  context.each<model::StepMark>([&](const model::Entry& entry, const model::StepMark& mark) {
    const bool plainDone = mark.action == model::StepAction::Done && mark.text.empty();
    if (entry.run != run.id || plainDone) return;
    QString text = context.stepTitle(entry) + QStringLiteral(": ") + humanWord(mark.action);
    if (!mark.text.empty()) text += QStringLiteral(" – ") + fromUtf8(mark.text);
    text += QStringLiteral(" (") + context.byAndWhen(entry) + QStringLiteral(")");
    cell.lines.push_back(styled(text, Emphasis::Quiet));
  });
}

void addTimers(const SheetContext& context, const workshop::RunView& run, Cell& cell) {
  context.each<model::TimerStarted>([&](const model::Entry& entry, const model::TimerStarted& t) {
    if (entry.run != run.id) return;
    cell.lines.push_back(styled(context.stepTitle(entry) + QStringLiteral(": waiting ") +
                                    minutesText(t.minutes) + QStringLiteral(" from ") +
                                    timeText(entry.doneAt) + QStringLiteral(" (") +
                                    context.initials(entry.by) + QStringLiteral(")"),
                                Emphasis::Quiet));
  });
}

}  // namespace

Section jobSection(const SheetContext& context) {
  const auto& job = context.job();
  KeyValues pairs;
  pairs.pairsAcross = 2;
  item(pairs, "Job", QString::number(job.job.value));
  item(pairs, "Opened", openedBy(context));
  item(pairs, "Job ended", endedBy(context));
  if (job.support) item(pairs, "Support used", humanWord(*job.support));
  Section section{{}, {pairs}};
  if (!job.opened.request.empty()) {
    KeyValues request;
    item(request, "Asked for", fromUtf8(job.opened.request));
    section.blocks.push_back(std::move(request));
  }
  return section;
}

Section vehicleSection(const SheetContext& context) {
  const auto& job = context.job();
  const model::Vehicle& vehicle = job.vehicle.fact;
  const bool workshopCopy = context.options().copy == SheetCopy::Workshop;
  KeyValues pairs;
  pairs.pairsAcross = 2;
  item(pairs, "Registration", fromUtf8(vehicle.registration));
  item(pairs, "Make and model", fromUtf8(vehicle.makeModel));
  item(pairs, "VIN or chassis no.", fromUtf8(vehicle.vin));
  item(pairs, "Odometer", job.opened.odometer ? typed(*job.opened.odometer) : QString{});
  item(pairs, "Owner", fromUtf8(vehicle.owner));
  item(pairs, "Tyres", tyresText(vehicle));
  if (workshopCopy) {
    item(pairs, "Drive", driveText(vehicle));
    if (vehicle.frontAxleLoad) item(pairs, "Front axle load", typedAndSi(*vehicle.frontAxleLoad));
  }
  Section section{QStringLiteral("Vehicle"), {pairs}};
  if (!workshopCopy) return section;
  KeyValues longer;
  item(longer, "Axle arrangement", arrangementText(vehicle.arrangement));
  item(longer, "Vehicle notes", fromUtf8(vehicle.notes));
  if (!longer.items.empty()) section.blocks.push_back(std::move(longer));
  return section;
}

Section complaintSection(const SheetContext& context) {
  Section section{QStringLiteral("Complaint"), {}};
  const auto& complaint = context.job().complaint;
  if (!complaint) return section;
  KeyValues pairs;
  item(pairs, "Owner's words", fromUtf8(complaint->words));
  item(pairs, "Speeds", speedsText(*complaint));
  const bool braking = complaint->braking != model::BrakingAnswer::Unknown;
  item(pairs, "Under braking", braking ? humanWord(complaint->braking) : QString{});
  item(pairs, "After a bump", knownAnswer(complaint->afterBump));
  item(pairs, "In a band of speed", knownAnswer(complaint->speedBand));
  item(pairs, "Felt at", fromUtf8(complaint->whereFelt));
  item(pairs, "Recent work", fromUtf8(complaint->recentWork));
  item(pairs, "Conditions", fromUtf8(complaint->conditions));
  if (!pairs.items.empty()) section.blocks.push_back(std::move(pairs));
  return section;
}

Section planSection(const SheetContext& context) {
  const auto& job = context.job();
  Section section{QStringLiteral("Work, in order"), {}};
  Table table;
  table.columns = {{QStringLiteral("Procedure"), 46, Align::Left},
                   {QStringLiteral("Sides"), 12, Align::Left},
                   {QStringLiteral("Why"), 30, Align::Left},
                   {QStringLiteral("Steps"), 12, Align::Left}};
  for (std::size_t i = 0; i < job.runs.size(); ++i) {
    const auto& run = job.runs[i];
    const StepCount count = countSteps(job, i);
    Cell title = cellOf(context.runTitle(run));
    addRemarks(context, run, title);
    addTimers(context, run, title);
    const QString steps = QStringLiteral("%1 of %2").arg(count.done).arg(count.all);
    table.rows.push_back({{std::move(title), cellOf(sidesText(run.sides)),
                           cellOf(whyText(run.fact.why)), cellOf(steps)},
                          RowKind::Body});
  }
  if (!table.rows.empty()) section.blocks.push_back(std::move(table));
  return section;
}

}  // namespace sw::report
