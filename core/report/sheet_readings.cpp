// SPDX-License-Identifier: GPL-3.0-or-later
#include <QStringList>
#include <algorithm>
#include <map>
#include <set>

#include "measure/evaluation.h"
#include "report/quantity_text.h"
#include "report/sheet_sections.h"
#include "report/wording.h"
#include "units/format.h"
#include "workshop/runs.h"

namespace sw::report {

namespace {

using model::Entry;
using workshop::ReadingView;
using workshop::SeriesView;

constexpr double kSurelyShown = 0.9995;  // from here on three decimals would print 1.000

QString useText(model::ReadingUse use) {
  switch (use) {
    case model::ReadingUse::Settling:
      return QStringLiteral(" settling, not used");
    case model::ReadingUse::NotUsed:
      return QStringLiteral(" not used");
    case model::ReadingUse::Used:
      break;
  }
  return {};
}

/// Why an entry stands no more: the header of the one that took its place.
QString correctionNote(const SheetContext& context, const Entry& later) {
  QString text = later.reason ? humanWord(*later.reason) : QStringLiteral("corrected");
  if (!later.reasonText.empty()) text += QStringLiteral(", ") + fromUtf8(later.reasonText);
  return text + QStringLiteral("; ") + context.initials(later.by) + QStringLiteral(", ") +
         timeText(later.enteredAt);
}

/// An earlier form of a reading, struck through, with the reason it was replaced.
Line struckReading(const SheetContext& context, const Entry& before, const Entry& later) {
  const auto* was = model::as<model::Reading>(before);
  const auto* now = model::as<model::Reading>(later);
  QString struck = was == nullptr ? QString{} : typedAndSi(was->value);
  if (was != nullptr && now != nullptr && was->value == now->value) {
    struck = before.side != later.side ? sideText(before.side) + QChar(u' ') + struck
                                       : struck + useText(was->use);
  }
  return {{struck, Emphasis::Struck, MarkShape::None},
          {QStringLiteral(" ") + correctionNote(context, later), Emphasis::Quiet, MarkShape::None}};
}

void addReading(const SheetContext& context, const ReadingView& reading, Cell& cell) {
  const Entry* entry = context.entry(reading.entry);
  if (entry != nullptr) {
    const auto chain = context.earlier(*entry);
    for (std::size_t i = 0; i < chain.size(); ++i) {
      const Entry& later = i + 1 < chain.size() ? *chain[i + 1] : *entry;
      cell.lines.push_back(struckReading(context, *chain[i], later));
    }
  }
  cell.lines.push_back({{typedAndSi(reading.fact.value)},
                        {useText(reading.fact.use), Emphasis::Quiet, MarkShape::None}});
}

/// Readings of the series that were taken back.
void addWithdrawn(const SheetContext& context, const SeriesView& series, Cell& cell) {
  for (const auto& entry : context.job().entries) {
    if (model::as<model::Withdrawal>(*entry) == nullptr || !entry->replaces) continue;
    const Entry* before = context.entry(*entry->replaces);
    const auto* reading = before == nullptr ? nullptr : model::as<model::Reading>(*before);
    if (reading == nullptr || reading->series != series.id) continue;
    cell.lines.push_back(struckReading(context, *before, *entry));
  }
}

Cell readingsCell(const SheetContext& context, const SeriesView& series) {
  Cell cell;
  for (const ReadingView& reading : series.readings) addReading(context, reading, cell);
  addWithdrawn(context, series, cell);
  return cell;
}

Cell whatCell(const SheetContext& context, const SeriesView& series) {
  Cell cell{{styled(seriesTitle(context, series), Emphasis::Strong)}};
  const auto quiet = [&](const QString& text) {
    cell.lines.push_back(styled(text, Emphasis::Quiet));
  };
  if (series.fact.state) quiet(phrasing::stateInWords(*series.fact.state));
  QString with = QStringLiteral("with ") + context.instrumentName(series.fact.instrument);
  if (series.fact.angleWithin) {
    with += QStringLiteral(", within ") + typed(*series.fact.angleWithin) +
            QStringLiteral(" of the line of pull");
  }
  quiet(with);
  if (series.fact.arm) quiet(QStringLiteral("lever arm ") + typedAndSi(*series.fact.arm));
  if (const Entry* entry = context.entry(series.id)) quiet(context.byAndWhen(*entry));
  return cell;
}

/// "ν = 5.2", never broken across lines.
QString symbolText(const char* symbol, const QString& value) {
  return QString::fromUtf8(symbol) + QChar(kNoBreak) + QStringLiteral("=") + QChar(kNoBreak) +
         value;
}

QString coverageText(const model::VerdictGiven& verdict) {
  QStringList parts;
  const double k = verdict.expandedUncertainty / verdict.standardUncertainty;
  if (verdict.standardUncertainty > 0) parts += symbolText("k", fromUtf8(fixedDecimal(k, 2)));
  parts += symbolText("ν", verdict.degreesOfFreedom
                               ? fromUtf8(fixedDecimal(*verdict.degreesOfFreedom, 1))
                               : QStringLiteral("∞"));
  return parts.join(QStringLiteral(", "));
}

QString probabilityText(const model::VerdictGiven& verdict) {
  if (!verdict.probability) return {};
  const double p = *verdict.probability;
  const QString shown = p > kSurelyShown       ? QStringLiteral("> 0.999")
                        : p < 1 - kSurelyShown ? QStringLiteral("< 0.001")
                                               : fromUtf8(fixedDecimal(p, 3));
  return QStringLiteral("probability of conformance ") + shown + QStringLiteral(" (asked ") +
         fromUtf8(fixedDecimal(verdict.bar, verdict.bar == 0.95 ? 2 : 3)) + QStringLiteral(")");
}

QString budgetText(const model::VerdictGiven& verdict, QuantityKind kind) {
  return symbolText("u", siText(kind, verdict.standardUncertainty, 2)) + QStringLiteral(", ") +
         coverageText(verdict);
}

Cell resultCell(const SheetContext& context, const SeriesView& series) {
  Cell cell;
  if (series.verdict) {
    cell.lines.push_back(styled(resultText(series), Emphasis::Strong));
    cell.lines.push_back(
        styled(budgetText(*series.verdict, series.fact.quantity), Emphasis::Quiet));
    if (series.fact.arm && series.fact.quantity == QuantityKind::Force) {
      cell.lines.push_back(
          styled(QStringLiteral("torque ") +
                     siText(QuantityKind::Torque, series.verdict->value * series.fact.arm->si),
                 Emphasis::Quiet));
    }
  }
  const QString limit = limitOf(context, series);
  if (!limit.isEmpty()) cell.lines.push_back(plain(QStringLiteral("limit ") + limit));
  const auto* spec =
      series.fact.limit ? context.shop().revision<model::SpecItem>(*series.fact.limit) : nullptr;
  if (spec != nullptr && !spec->source.empty()) {
    cell.lines.push_back(styled(fromUtf8(spec->source), Emphasis::Quiet));
  }
  return cell;
}

/// The hub was loose when the series was taken, by what was seen in its run or before it; for the
/// last pull of a side by what was seen since, too.
bool looseAt(const SheetContext& context, const SeriesView& series) {
  if (!series.side || !series.fact.safety) return false;
  std::map<std::string, std::string> newest;
  context.each<model::Observation>([&](const Entry& entry, const model::Observation& seen) {
    const bool then = entry.run == series.run || entry.id < series.id;
    if (entry.side == series.side && then) {
      newest[seen.key] = workshop::meaningOf(context.job(), entry, seen);
    }
  });
  const bool then = std::any_of(newest.begin(), newest.end(),
                                [](const auto& one) { return one.second == "loose"; });
  const auto& all = context.job().series;
  const bool last = std::none_of(all.begin(), all.end(), [&](const SeriesView& other) {
    return other.fact.safety && other.side == series.side && other.id > series.id;
  });
  return then || (last && workshop::loose(context.job(), *series.side));
}

QString notProvedReason(const SheetContext& context, const SeriesView& series) {
  QString why;
  context.each<model::Override>([&](const Entry& entry, const model::Override& granted) {
    const bool here =
        entry.run == series.run && entry.step == series.step && entry.side == series.side;
    if (here && granted.rule == "not_proved") {
      why = fromUtf8(granted.why) + QStringLiteral(" (") + context.initials(entry.by) +
            QStringLiteral(")");
    }
  });
  return why;
}

void addEarlierVerdicts(const SheetContext& context, const SeriesView& series, Cell& cell) {
  const Entry* entry = series.verdictEntry ? context.entry(*series.verdictEntry) : nullptr;
  if (entry == nullptr) return;
  for (const Entry* before : context.earlier(*entry)) {
    const auto* verdict = model::as<model::VerdictGiven>(*before);
    if (verdict == nullptr || verdict->verdict == word(Verdict::Provisional) ||
        verdict->verdict == series.verdict->verdict) {
      continue;
    }
    cell.lines.push_back({{QStringLiteral("earlier: "), Emphasis::Quiet, MarkShape::None},
                          {verdictSpan(verdict->verdict).text, Emphasis::Struck, MarkShape::None}});
  }
}

QString likelyText(const std::string& side) {
  if (side == word(LimitSide::InsideLikely)) return QStringLiteral("probably inside");
  if (side == word(LimitSide::OutsideLikely)) return QStringLiteral("probably outside");
  return {};
}

void addVerdictDetails(const SeriesView& series, Cell& cell) {
  const model::VerdictGiven& verdict = *series.verdict;
  const auto quiet = [&](const QString& text) {
    if (!text.isEmpty()) cell.lines.push_back(styled(text, Emphasis::Quiet));
  };
  if (verdict.verdict == word(Verdict::Provisional)) {
    quiet(QStringLiteral("%1 of %2 readings, so far %3")
              .arg(verdict.used)
              .arg(series.fact.planned)
              .arg(humanWord(verdict.soFar)));
  }
  if (verdict.verdict == word(Verdict::Outside) && verdict.limitSide != word(LimitSide::None)) {
    quiet(humanWord(verdict.limitSide) + QStringLiteral(" the limit"));
  }
  if (verdict.verdict == word(Verdict::Undecided)) quiet(likelyText(verdict.limitSide));
  quiet(probabilityText(verdict));
  if (verdict.used > series.fact.planned) {
    quiet(QStringLiteral("extended from %1 to %2 readings")
              .arg(series.fact.planned)
              .arg(verdict.used));
  }
  if (verdict.consistency == word(Consistency::RangeTooWide) ||
      verdict.consistency == word(Consistency::Outlier) ||
      verdict.consistency == word(Consistency::InconsistentMedianUsed)) {
    quiet(QStringLiteral("readings: ") + humanWord(verdict.consistency));
  }
}

void addRow(const SheetContext& context, const SeriesView& series, Table& table) {
  Cell verdict = verdictCell(context, series);
  if (series.verdict) addVerdictDetails(series, verdict);
  addEarlierVerdicts(context, series, verdict);
  table.rows.push_back({{whatCell(context, series), readingsCell(context, series),
                         resultCell(context, series), std::move(verdict)},
                        RowKind::Body});
}

QString permissibleText(const model::Instrument& instrument) {
  if (!instrument.permissibleError) return QStringLiteral("not known");
  QString text = QStringLiteral("±") + QChar(kNoBreak) + typed(*instrument.permissibleError);
  if (instrument.errorShape == "certificate" && instrument.coverageFactor) {
    text += QStringLiteral(" (certificate, k") + QChar(kNoBreak) + QStringLiteral("= ") +
            fromUtf8(fullPrecision(*instrument.coverageFactor)) + QStringLiteral(")");
  }
  return text;
}

QString spanText(const model::Instrument& instrument) {
  if (instrument.rangeMin && instrument.rangeMax) {
    return typed(*instrument.rangeMin) + QStringLiteral(" to ") + typed(*instrument.rangeMax);
  }
  if (instrument.rangeMax) return QStringLiteral("to ") + typed(*instrument.rangeMax);
  return instrument.rangeMin ? QStringLiteral("from ") + typed(*instrument.rangeMin) : QString{};
}

QString calibrationText(const model::Instrument& instrument) {
  QStringList parts;
  if (instrument.calibratedOn) parts += dateText(*instrument.calibratedOn);
  if (instrument.calibrationDue)
    parts += QStringLiteral("due ") + dateText(*instrument.calibrationDue);
  if (!instrument.certificate.empty()) parts += fromUtf8(instrument.certificate);
  return parts.isEmpty() ? QStringLiteral("none") : parts.join(QStringLiteral(", "));
}

struct UsedInstruments {
  std::set<model::EntryId> instruments;
  std::map<model::EntryId, std::set<model::EntryId>> checks;
};

UsedInstruments usedInstruments(const SheetContext& context) {
  UsedInstruments used;
  for (const SeriesView& series : context.job().series) {
    used.instruments.insert(series.fact.instrument);
    if (series.fact.instrumentCheck) {
      used.checks[series.fact.instrument].insert(*series.fact.instrumentCheck);
    }
  }
  context.each<model::TorqueCheck>([&](const Entry&, const model::TorqueCheck& check) {
    used.instruments.insert(check.wrench);
  });
  context.each<model::ShimPack>([&](const Entry&, const model::ShimPack& pack) {
    if (pack.instrument) used.instruments.insert(*pack.instrument);
  });
  return used;
}

Cell checksCell(const SheetContext& context, const std::set<model::EntryId>& checks) {
  Cell cell;
  for (const auto& id : checks) {
    const auto* check = context.shop().revision<model::InstrumentCheck>(id);
    if (check == nullptr) continue;
    cell.lines.push_back(plain(fromUtf8(check->against) + QStringLiteral(": applied ") +
                               typed(check->applied) + QStringLiteral(", shown ") +
                               typed(check->shown)));
  }
  return cell;
}

}  // namespace

QString seriesTitle(const SheetContext& context, const SeriesView& series) {
  const auto* step = context.step(series.run, series.step);
  const QString title = step == nullptr ? humanWord(series.step) : fromUtf8(step->title);
  return (title.isEmpty() ? QStringLiteral("Measurement") : title) + sideSuffix(series.side);
}

QString resultText(const SeriesView& series) {
  if (!series.verdict) return {};
  return valueWithUncertainty(series.fact.quantity, series.verdict->value,
                              series.verdict->expandedUncertainty);
}

QString limitOf(const SheetContext& context, const SeriesView& series) {
  const auto* spec =
      series.fact.limit ? context.shop().revision<model::SpecItem>(*series.fact.limit) : nullptr;
  return spec == nullptr ? QString{} : limitText(*spec);
}

Cell verdictCell(const SheetContext& context, const SeriesView& series) {
  if (!series.verdict) return {{{verdictSpan("not_measured")}}};
  const Span given = verdictSpan(series.verdict->verdict);
  const bool within = series.verdict->verdict == word(Verdict::Within);
  const auto index = context.stepIndex(series.run, series.step, series.side);
  const bool closed = index && context.job().overridden("not_proved", *index);
  const bool isLoose = within && looseAt(context, series);
  Cell cell;
  if (closed) {
    cell.lines.push_back({{QStringLiteral("not proved"), Emphasis::Strong, MarkShape::Undecided}});
    cell.lines.push_back(plain(QStringLiteral("closed so: ") + notProvedReason(context, series)));
  }
  if (isLoose) {
    const QString text = QStringLiteral("within the figure, but the hub is loose: not within");
    cell.lines.push_back({{text, Emphasis::Strong, MarkShape::Outside}});
  } else if (closed) {
    cell.lines.push_back(styled(QStringLiteral("by the figures: ") + given.text, Emphasis::Quiet));
  } else {
    cell.lines.push_back({given});
  }
  return cell;
}

Section readingsSection(const SheetContext& context) {
  Section section{QStringLiteral("Measurements"), {}};
  const auto& job = context.job();
  Table table;
  table.columns = {{QStringLiteral("What, in which state, with what"), 34, Align::Left},
                   {QStringLiteral("Readings as taken"), 22, Align::Left},
                   {QStringLiteral("Value ± U, limit"), 23, Align::Left},
                   {QStringLiteral("Verdict"), 21, Align::Left}};
  const auto addRows = [&](const std::optional<model::RunId>& run, const QString& title) {
    const std::size_t before = table.rows.size();
    for (const SeriesView& series : job.series) {
      if (series.run == run) addRow(context, series, table);
    }
    if (table.rows.size() == before) return;
    table.rows.insert(table.rows.begin() + static_cast<std::ptrdiff_t>(before),
                      Row{{cellOf(title)}, RowKind::Group});
  };
  for (const auto& run : job.runs) addRows(run.id, context.runTitle(run));
  addRows(std::nullopt, QStringLiteral("Outside the plan"));
  if (!table.rows.empty()) section.blocks.push_back(std::move(table));
  return section;
}

Section instrumentsSection(const SheetContext& context) {
  Section section{QStringLiteral("Instruments used"), {}};
  UsedInstruments used = usedInstruments(context);
  Table table;
  table.columns = {{QStringLiteral("Instrument"), 24, Align::Left},
                   {QStringLiteral("Graduation"), 11, Align::Left},
                   {QStringLiteral("Permissible error"), 15, Align::Left},
                   {QStringLiteral("Range"), 15, Align::Left},
                   {QStringLiteral("Calibrated"), 17, Align::Left},
                   {QStringLiteral("Own check"), 18, Align::Left}};
  for (const auto& id : used.instruments) {
    const auto* instrument = context.shop().revision<model::Instrument>(id);
    if (instrument == nullptr) continue;
    table.rows.push_back(
        {{cellOf(fromUtf8(instrument->name)), cellOf(typed(instrument->graduation)),
          cellOf(permissibleText(*instrument)), cellOf(spanText(*instrument)),
          cellOf(calibrationText(*instrument)), checksCell(context, used.checks[id])},
         RowKind::Body});
  }
  if (!table.rows.empty()) section.blocks.push_back(std::move(table));
  return section;
}

}  // namespace sw::report
