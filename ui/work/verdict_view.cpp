// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/verdict_view.h"

#include <QPushButton>
#include <QVBoxLayout>

#include "phrasing/verdict_phrase.h"
#include "ui/common/flow_layout.h"
#include "ui/common/marks.h"
#include "ui/common/text_label.h"
#include "ui/work/readings_plot.h"
#include "units/format.h"

namespace sw::ui {

namespace {

LimitBand bandOf(const workshop::SeriesBasis& basis) {
  LimitBand band;
  if (basis.limit == nullptr) return band;
  if (basis.limit->min) band.min = basis.limit->min->si;
  if (basis.limit->max) band.max = basis.limit->max->si;
  return band;
}

/// Values are shown in the unit of the limit, since that is what they are held against.
Unit unitOf(const workshop::SeriesView& series, const workshop::SeriesBasis& basis) {
  const QuantityKind kind = series.fact.quantity;
  std::string symbol = basis.instrument->graduation.unit;
  if (basis.limit != nullptr && (basis.limit->min || basis.limit->max)) {
    symbol = (basis.limit->min ? basis.limit->min : basis.limit->max)->unit;
  }
  return findUnit(kind, symbol).value_or(defaultUnit(kind));
}

QString sourceName(std::string_view source) {
  if (source == "scatter") return VerdictView::tr("scatter of the readings");
  if (source == "graduation") return VerdictView::tr("graduation");
  if (source == "permissible_error") return VerdictView::tr("permissible error");
  if (source == "own_check") return VerdictView::tr("own check");
  if (source == "angle") return VerdictView::tr("angle of pull");
  if (source == "local_error") return VerdictView::tr("local error");
  return QString::fromUtf8(source.data(), static_cast<qsizetype>(source.size()));
}

}  // namespace

VerdictView::VerdictView(QWidget* parent)
    : QWidget(parent),
      m_mark(new MarkView(this)),
      m_value(new TextLabel(TextRole::Value, this)),
      m_words(new TextLabel(TextRole::Strong, this)),
      m_advice(new TextLabel(TextRole::Body, this)),
      m_plot(new ReadingsPlot(this)),
      m_why(new QPushButton(tr("Why?"), this)),
      m_reasons(new TextLabel(TextRole::Body, this)) {
  setObjectName(QStringLiteral("verdictView"));
  m_value->setObjectName(QStringLiteral("verdictValue"));
  m_words->setObjectName(QStringLiteral("verdictWords"));
  m_advice->setObjectName(QStringLiteral("verdictAdvice"));
  m_reasons->setObjectName(QStringLiteral("verdictReasons"));
  m_why->setObjectName(QStringLiteral("verdictWhy"));
  m_why->setAccessibleName(tr("Why this verdict?"));
  m_why->setCheckable(true);
  m_reasons->setVisible(false);
  // With gloves the figure is as wide as the panel: what does not fit beside it goes below.
  auto* head = new FlowLayout;
  head->addWidget(m_mark);
  head->addWidget(m_value);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addLayout(head);
  column->addWidget(m_words);
  column->addWidget(m_advice);
  column->addWidget(m_plot);
  column->addWidget(m_why, 0, Qt::AlignLeft);
  column->addWidget(m_reasons);
  connect(m_why, &QPushButton::toggled, m_reasons, &QWidget::setVisible);
  clear();
}

void VerdictView::present(const workshop::SeriesView& series, const workshop::SeriesBasis& basis,
                          const SeriesOutcome& outcome) {
  const Unit unit = unitOf(series, basis);
  const LimitBand limit = bandOf(basis);
  const phrasing::JudgedValue judged{outcome.verdict,
                                     outcome.decisionSoFar,
                                     outcome.side,
                                     outcome.correctedMean,
                                     outcome.expandedUncertainty,
                                     outcome.used,
                                     series.fact.planned,
                                     limit};
  // A scale whose own error nobody knows proves nothing: it gets no tick.
  const bool unproved = outcome.verdict == Verdict::Within && !provesWithin(outcome);
  m_mark->setMark(unproved ? Mark::Undecided : markOf(outcome.verdict));
  // Large figures may need a second line: the uncertainty goes there as a whole.
  QString value = phrasing::measuredText(outcome.correctedMean, outcome.expandedUncertainty, unit);
  const auto plusMinus = value.indexOf(QChar(0x00B1));
  if (plusMinus > 0) value[plusMinus - 1] = QLatin1Char(' ');
  m_value->say(value);
  const QString phrase = phrasing::verdictPhrase(judged, unit);
  m_words->say(unproved ? tr("%1 – by the readings alone, not proved").arg(phrase) : phrase);
  m_advice->say(phrasing::advicePhrase(outcome.advice, unit));
  ReadingsPlot::Content content;
  for (const workshop::ReadingView& reading : series.readings) {
    if (reading.fact.use == model::ReadingUse::Used) {
      content.readings.push_back(reading.fact.value.si);
    }
  }
  content.mean = outcome.correctedMean;
  content.expandedUncertainty = outcome.expandedUncertainty;
  content.undecidedWithin = workshop::undecidedWithin(outcome);
  content.limit = limit;
  content.unit = unit;
  content.verdict = outcome.verdict;
  m_plot->present(std::move(content));
  showWhy(outcome, unit);
  m_mark->show();
  m_why->show();
}

void VerdictView::showWhy(const SeriesOutcome& outcome, const Unit& unit) {
  const auto inUnit = [&](double si) { return QString::fromStdString(displayText(si, unit)); };
  QStringList lines;
  for (const BudgetLine& line : outcome.budget) {
    lines += tr("%1: u = %2").arg(sourceName(line.source), inUnit(line.standardUncertainty));
  }
  const QString degrees = outcome.degreesOfFreedom
                              ? QString::number(*outcome.degreesOfFreedom, 'f', 1)
                              : QString(QChar(0x221E));
  lines += tr("together u = %1, degrees of freedom %2, coverage factor %3, U = %4")
               .arg(inUnit(outcome.standardUncertainty), degrees,
                    QString::number(outcome.coverageFactor, 'f', 2),
                    inUnit(outcome.expandedUncertainty));
  if (outcome.conformanceProbability) {
    lines += tr("probability of being within %1, asked for %2 (ISO 14253-1, JCGM 106)")
                 .arg(*outcome.conformanceProbability, 0, 'f', 3)
                 .arg(outcome.bar, 0, 'f', outcome.bar == 0.95 ? 2 : 3);
  }
  if (!outcome.instrumentErrorKnown) {
    lines += tr("the instrument's own error is not known: no certificate and no check of your own");
  }
  if (!outcome.withinInstrumentRange) lines += tr("a reading lies outside the instrument's range");
  m_reasons->setText(lines.join(QLatin1Char('\n')));
  m_reasons->setVisible(m_why->isChecked());
}

void VerdictView::clear() {
  m_value->say({});
  m_words->say({});
  m_advice->say({});
  m_plot->clear();
  m_mark->hide();
  m_why->hide();
  m_reasons->hide();
}

}  // namespace sw::ui
