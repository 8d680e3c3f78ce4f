// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/measure_section.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "phrasing/error_sentence.h"
#include "phrasing/event_sentence.h"
#include "phrasing/names.h"
#include "phrasing/verdict_phrase.h"
#include "report/quantity_text.h"
#include "ui/common/flow_layout.h"
#include "ui/common/form.h"
#include "ui/common/page_parts.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"
#include "ui/instruments/instrument_text.h"
#include "ui/work/pull_state_rows.h"
#include "ui/work/readings_table.h"
#include "ui/work/verdict_view.h"
#include "workshop/earlier_readings.h"
#include "workshop/series_judge.h"

namespace sw::ui {

namespace {

constexpr QLatin1String kInstrument("instrument");

const workshop::SeriesView* seriesAt(const workshop::JobState& job, std::size_t step) {
  const workshop::SeriesView* series = job.newestSeries(step);
  return series != nullptr && series->usedCount() > 0 ? series : nullptr;
}

/// How the typed text is read, before it is recorded.
QString readAs(const workshop::Outcome& outcome) {
  QStringList lines;
  for (const workshop::Event& event : outcome.events) {
    if (event.key == "read_as" || event.key == "state_differs") {
      lines += phrasing::eventSentence(event.key, event.values);
    }
  }
  return lines.join(QLatin1Char('\n'));
}

/// What a line of readings looks like; bare numbers are read in the unit of the instrument.
QString exampleOf(const procedures::MeasureSpec& measure) {
  const bool one = measure.planned + measure.settling == 1;
  switch (measure.quantity) {
    case QuantityKind::Force:
      return one ? MeasureSection::tr("e.g. 18.5 N") : MeasureSection::tr("e.g. 18.5 19 18.5");
    case QuantityKind::Pressure:
      return one ? MeasureSection::tr("e.g. 2.1 bar") : MeasureSection::tr("e.g. 2.1 2.0 2.1");
    case QuantityKind::Length:
      return one ? MeasureSection::tr("e.g. 0.35 mm") : MeasureSection::tr("e.g. 0.35 0.36 0.35");
    default:
      return {};
  }
}

}  // namespace

MeasureSection::MeasureSection(ShopSession& session, QWidget* parent)
    : StepSection(session, "measureSection", parent),
      m_limit(new TextLabel(TextRole::Value, this)),
      m_source(new TextLabel(TextRole::Body, this)),
      m_spec(new WordButton("measureSpec", tr("Fill in the spec sheet"), this)),
      m_instrument(comboBox("measureInstrument", tr("Instrument"), this)),
      m_addInstrument(new WordButton("addInstrument", tr("Another …"), this)),
      m_worth(new TextLabel(TextRole::Body, this)),
      m_readings(namedField("readings", tr("Readings"), this)),
      m_record(new WordButton("recordReadings", tr("Record"), this)),
      m_problem(new TextLabel(TextRole::Strong, this)),
      m_verdict(new VerdictView(this)),
      m_table(new ReadingsTable(this)),
      m_state(new TextLabel(TextRole::Quiet, this)),
      m_moreButton(new WordButton("measureMore", tr("Something is different …"), this)),
      m_earlierButton(new WordButton("earlierReadings", tr("Earlier on this vehicle"), this)),
      m_earlier(new TextLabel(TextRole::Body, this)) {
  m_more = buildMore();
  m_limit->setObjectName(QStringLiteral("measureLimit"));
  m_source->setObjectName(QStringLiteral("measureSource"));
  m_worth->setObjectName(QStringLiteral("instrumentWorth"));
  m_problem->setObjectName(QStringLiteral("measureProblem"));
  m_state->setObjectName(QStringLiteral("measureState"));
  m_earlier->setObjectName(QStringLiteral("earlierText"));
  m_instrument->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  m_instrument->setMinimumContentsLength(8);
  m_moreButton->setCheckable(true);
  m_earlierButton->setCheckable(true);
  guard(m_readings, {});
  layOut();
  wire();
}

QWidget* MeasureSection::buildMore() {
  auto* more = new QWidget(this);
  m_stateRows = new PullStateRows(more);
  m_planned = namedField("plannedReadings", tr("How many readings are planned"), more);
  m_afresh = new WordButton("newSeries", tr("Start the series afresh"), more);
  m_afresh->setCheckable(true);
  m_why = namedField("newSeriesWhy", tr("Why the series starts afresh"), more);
  m_why->setPlaceholderText(tr("needed once there was a verdict"));
  auto* form = newForm();
  form->addRow(tr("Planned"), m_planned);
  auto* why = newForm();
  why->addRow(tr("Because"), m_why);
  auto* column = new QVBoxLayout(more);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(m_stateRows);
  column->addLayout(form);
  column->addWidget(m_afresh, 0, Qt::AlignLeft);
  column->addLayout(why);
  return more;
}

void MeasureSection::layOut() {
  auto* with = new QHBoxLayout;
  with->addWidget(m_instrument, 1);
  with->addWidget(m_addInstrument);
  auto* entry = new QHBoxLayout;
  entry->addWidget(m_readings, 1);
  entry->addWidget(m_record);
  auto* folds = new FlowLayout;
  folds->addWidget(m_moreButton);
  folds->addWidget(m_earlierButton);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(m_limit);
  column->addWidget(m_source);
  column->addWidget(m_spec, 0, Qt::AlignLeft);
  column->addWidget(m_state);
  column->addLayout(with);
  column->addWidget(m_worth);
  column->addLayout(entry);
  column->addWidget(m_problem);
  column->addWidget(m_verdict);
  column->addWidget(m_table);
  column->addLayout(folds);
  column->addWidget(m_more);
  column->addWidget(m_earlier);
}

void MeasureSection::wire() {
  connect(m_readings, &QLineEdit::textChanged, this, &MeasureSection::judge);
  connect(m_readings, &QLineEdit::returnPressed, this, &MeasureSection::record);
  connect(m_record, &QPushButton::clicked, this, &MeasureSection::record);
  connect(m_instrument, &QComboBox::currentIndexChanged, this, &MeasureSection::judge);
  // Bare numbers are read in the unit of the instrument: a line kept without it would change.
  connect(m_instrument, &QComboBox::activated, this,
          [this] { keepChoice(kInstrument, m_instrument->currentData().toString()); });
  connect(m_stateRows, &PullStateRows::changed, this, [this] {
    m_state->say(phrasing::stateInWords(m_stateRows->state()));
    judge();
  });
  connect(m_table, &ReadingsTable::actionWanted, this,
          [this](const workshop::Action& action) { (void)send(action); });
  connect(m_moreButton, &QPushButton::toggled, m_more, &QWidget::setVisible);
  connect(m_earlierButton, &QPushButton::toggled, this, &MeasureSection::showEarlier);
  connect(m_spec, &QPushButton::clicked, this, [this] {
    emit goWanted({PageId::Vehicle, this->context().job->job, {}, {}, {}});
  });
  connect(m_addInstrument, &QPushButton::clicked, this, [this] {
    Goal goal{PageId::Instruments, this->context().job->job, {}, {}, {}};
    if (m_instrument->count() == 0) goal.instrumentKind = wantedKind();
    emit goWanted(goal);
  });
}

std::optional<model::InstrumentKind> MeasureSection::wantedKind() const {
  const auto& kinds = context().definition().measure->instruments;
  return kinds.empty() ? std::nullopt : std::optional(kinds.front());
}

bool MeasureSection::suits(const StepContext& context) const {
  return context.definition().measure.has_value();
}

QWidget* MeasureSection::firstField() {
  return m_readings;
}

void MeasureSection::fill(Showing showing) {
  listInstruments();
  setExample(m_readings, exampleOf(*context().definition().measure));
  if (showing == Showing::OtherStep) {
    m_moreButton->setChecked(false);
    m_earlierButton->setChecked(false);
    m_afresh->setChecked(false);
    m_planned->clear();
    m_why->clear();
    showState();
  }
  m_more->setVisible(m_moreButton->isChecked());
  m_earlier->setVisible(m_earlierButton->isChecked());
  for (QWidget* widget : {static_cast<QWidget*>(m_record), static_cast<QWidget*>(m_instrument)}) {
    widget->setEnabled(!context().locked());
  }
  m_planned->setPlaceholderText(QString::number(context().definition().measure->planned));
  showLimit();
  judge();
}

void MeasureSection::showState() {
  const auto& measure = *context().definition().measure;
  const bool pull = measure.quantity == QuantityKind::Force;
  m_stateRows->setVisible(pull);
  const workshop::SeriesView* series = context().job->newestSeries(context().step);
  const auto state = series != nullptr && series->fact.state
                         ? *series->fact.state
                         : measure.state.value_or(model::PullState{});
  m_stateRows->present(state);
  m_state->say(pull ? phrasing::stateInWords(state) : QString());
}

void MeasureSection::listInstruments() {
  const QSignalBlocker quiet(m_instrument);
  const QString before = m_instrument->currentData().toString();
  const auto& measure = *context().definition().measure;
  m_instrument->clear();
  std::vector<const model::Instrument*> fitting;
  for (const auto* instrument : context().shop->instruments()) {
    const model::Instrument& fact = instrument->fact;
    if (fact.active && fact.graduation.kind == measure.quantity) fitting.push_back(&fact);
  }
  const auto rank = [&](const model::Instrument* one) {
    const auto& kinds = measure.instruments;
    const auto found = std::find(kinds.begin(), kinds.end(), one->type);
    return std::distance(kinds.begin(), found);
  };
  std::stable_sort(fitting.begin(), fitting.end(),
                   [&](const auto* a, const auto* b) { return rank(a) < rank(b); });
  for (const model::Instrument* one : fitting) {
    const QString name = QString::fromStdString(one->name);
    m_instrument->addItem(tr("%1 (reads to %2)").arg(name, report::typed(one->graduation)), name);
  }
  const workshop::SeriesView* series = context().job->newestSeries(context().step);
  const auto* used = series == nullptr
                         ? nullptr
                         : context().shop->revision<model::Instrument>(series->fact.instrument);
  const QString kept = keptChoice(kInstrument);
  const QString wanted = !kept.isEmpty()     ? kept
                         : !before.isEmpty() ? before
                         : used != nullptr   ? QString::fromStdString(used->name)
                                             : QString();
  m_instrument->setCurrentIndex(qMax(0, m_instrument->findData(wanted)));
  const auto kind = wantedKind();
  m_addInstrument->setText(!fitting.empty() ? tr("Another …")
                           : kind           ? tr("Put on file: %1").arg(phrasing::nameOf(*kind))
                                            : tr("Put an instrument on file"));
  m_instrument->setVisible(!fitting.empty());
}

void MeasureSection::showWorth() {
  const auto* instrument =
      context().shop->instrumentByName(m_instrument->currentData().toString().toStdString());
  if (instrument == nullptr) return m_worth->say({});
  const auto* check = context().shop->check(instrument->fact.instrument);
  m_worth->say(worthText(instrument->fact, check == nullptr ? nullptr : &check->fact));
}

void MeasureSection::showLimit() {
  const auto& measure = *context().definition().measure;
  m_spec->setVisible(false);
  m_limit->say({});
  if (measure.limit.empty()) {
    m_source->say(tr("Recorded without a limit."));
    return;
  }
  const auto* spec = context().shop->spec(context().job->opened.vehicle, measure.limit);
  if (spec == nullptr) {
    m_source->say(tr("No limit on file: what is read is recorded, but not judged."));
    m_spec->setVisible(!context().locked());
    return;
  }
  const QString source = spec->fact.source.empty() ? tr("source not given")
                                                   : QString::fromStdString(spec->fact.source);
  model::SpecItem first = spec->fact;
  first.secondMin.reset();
  first.secondMax.reset();
  m_limit->say(report::limitText(first));
  const QString both = report::limitText(spec->fact);
  m_source->say(both == m_limit->text() ? tr("Limit of the sheet, %1").arg(source)
                                        : tr("Limit of the sheet: %1, %2").arg(both, source));
}

void MeasureSection::showRecorded() {
  const workshop::SeriesView* series = seriesAt(*context().job, context().step);
  const auto basis = series == nullptr ? Result<workshop::SeriesBasis>{}
                                       : workshop::basisOf(series->fact, *context().shop);
  const auto outcome = series == nullptr || !basis ? Result<SeriesOutcome>{}
                                                   : workshop::judgeSeries(*series, *basis);
  if (series != nullptr && basis && outcome) {
    m_verdict->present(*series, *basis, *outcome);
  } else {
    m_verdict->clear();
  }
}

void MeasureSection::judge() {
  if (!context().job) return;
  const workshop::SeriesView* recorded = context().job->newestSeries(context().step);
  if (recorded != nullptr) {
    m_table->present(*recorded);
  } else {
    m_table->clear();
  }
  m_problem->say({});
  showWorth();
  const bool typed = typedIn(*m_readings).has_value();
  if (context().locked() || !typed || m_instrument->count() == 0) {
    if (typed && m_instrument->count() == 0) {
      m_problem->say(tr("No instrument that reads this is on file yet. Press \"%1\": what is "
                        "typed here waits.")
                         .arg(m_addInstrument->text()));
    }
    showRecorded();
    emit supposed(context().job);
    return;
  }
  auto tried = rehearse(action());
  if (!tried) {
    m_problem->say(whyNot(tried.error()));
    showRecorded();
    emit supposed(context().job);
    return;
  }
  m_problem->say(readAs(tried->outcome));
  const auto job = std::make_shared<const workshop::JobState>(std::move(*tried->job));
  emit supposed(job);
  const workshop::SeriesView* series = seriesAt(*job, context().step);
  if (series == nullptr) return showRecorded();
  const auto basis = workshop::basisOf(series->fact, *context().shop);
  const auto outcome = basis ? workshop::judgeSeries(*series, *basis) : Result<SeriesOutcome>{};
  if (basis && outcome) m_verdict->present(*series, *basis, *outcome);
}

workshop::TakeReadings MeasureSection::action() const {
  workshop::TakeReadings take;
  take.readings = typedIn(*m_readings).value_or("");
  take.instrument = m_instrument->currentData().toString().toStdString();
  if (const auto planned = typedIn(*m_planned)) {
    take.planned = QString::fromStdString(*planned).toLongLong();
  }
  if (context().definition().measure->quantity == QuantityKind::Force) m_stateRows->putInto(take);
  if (m_afresh->isChecked()) {
    take.newSeries = true;
    take.why = typedIn(*m_why);
  }
  return take;
}

void MeasureSection::record() {
  if (context().locked() || !typedIn(*m_readings)) return;
  if (m_instrument->count() == 0) {
    m_addInstrument->setFocus();
    return;
  }
  const auto take = action();
  // Cleared first: what was accepted is no draft, and the page is shown anew while it is saved.
  const QString text = m_readings->text();
  m_readings->setText({});  // and no undo in the field: the entry is what Ctrl+Z takes back
  m_readings->setFocus();
  if (!send(take)) {
    m_readings->setText(text);
    return;
  }
  m_afresh->setChecked(false);
  keepChoice(kInstrument, {});
}

void MeasureSection::showEarlier() {
  m_earlier->setVisible(m_earlierButton->isChecked());
  if (!m_earlierButton->isChecked()) return;
  const auto found = workshop::earlierReadings(
      session().workshop().book(), workshop::earlierQuestionAt(*context().job, context().step));
  QStringList lines;
  if (found) {
    for (const workshop::EarlierReading& one : *found) {
      const Unit& unit = defaultUnit(one.series.quantity);
      QString line =
          tr("%1, job %2: %3, %4")
              .arg(report::dateText(one.series.doneAt))
              .arg(one.series.job.value)
              .arg(phrasing::measuredText(one.series.value, one.series.expandedUncertainty, unit),
                   phrasing::verdictName(one.series.verdict, {}));
      if (one.packTotal) {
        line += tr(", pack %1 mm").arg(inMillimetres(*one.packTotal), 0, 'f', 2);
      }
      lines += line;
    }
  }
  m_earlier->setText(lines.isEmpty() ? tr("This was not measured on this vehicle before.")
                                     : lines.join(QLatin1Char('\n')));
}

}  // namespace sw::ui
