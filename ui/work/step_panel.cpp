// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/step_panel.h"

#include <QDragEnterEvent>
#include <QFrame>
#include <QMimeData>
#include <QPointer>
#include <QPushButton>
#include <QScrollBar>
#include <QTimer>
#include <QUrl>
#include <QVBoxLayout>
#include <algorithm>

#include "phrasing/error_sentence.h"
#include "phrasing/names.h"
#include "report/quantity_text.h"
#include "ui/common/bring_into_view.h"
#include "ui/common/clear_layout.h"
#include "ui/common/flow_layout.h"
#include "ui/common/tab_order.h"
#include "ui/common/text_label.h"
#include "ui/common/theme.h"
#include "ui/common/word_button.h"
#include "ui/work/bench_section.h"
#include "ui/work/hold_section.h"
#include "ui/work/measure_section.h"
#include "ui/work/observe_section.h"
#include "ui/work/pack_section.h"
#include "ui/work/parts_section.h"
#include "ui/work/reason_row.h"
#include "ui/work/road_test_section.h"
#include "ui/work/step_notes.h"
#include "ui/work/torque_section.h"

namespace sw::ui {

namespace {

/// What keeps a step waiting, and which step ends that.
QString reasonText(const workshop::Refusal& refusal) {
  return phrasing::refusalPhrase(refusal.key + "||" + refusal.what);
}

/// Some texts say it themselves.
QString aloneText(const QString& text) {
  const QString alone = StepPanel::tr("Alone: %1");
  const QString word = alone.section(QLatin1Char(':'), 0, 0);
  return text.startsWith(word) ? text : alone.arg(text);
}

QStringList picturesIn(const QMimeData* data) {
  QStringList files;
  for (const QUrl& url : data->urls()) {
    if (url.isLocalFile()) files += url.toLocalFile();
  }
  return files;
}

}  // namespace

StepPanel::StepPanel(ShopSession& session, QWidget* parent)
    : QScrollArea(parent), m_session(session) {
  setObjectName(QStringLiteral("stepPanel"));
  setFocusPolicy(Qt::NoFocus);
  setFrameShape(QFrame::NoFrame);
  setWidgetResizable(true);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setAcceptDrops(true);
  build();
  wire();
}

void StepPanel::build() {
  auto* inside = new QWidget(this);
  m_title = new TextLabel(TextRole::Title, inside);
  m_title->setObjectName(QStringLiteral("stepTitle"));
  m_place = new TextLabel(TextRole::Quiet, inside);
  m_place->setObjectName(QStringLiteral("stepPlace"));
  m_caution = new TextLabel(TextRole::Strong, inside);
  m_caution->setObjectName(QStringLiteral("stepCaution"));
  m_how = new WordButton("stepHow", tr("How it is done"), inside);
  m_how->setCheckable(true);
  m_text = new TextLabel(TextRole::Body, inside);
  m_alone = new TextLabel(TextRole::Body, inside);
  m_lock = new QFrame(inside);
  m_lock->setObjectName(QStringLiteral("stepLock"));
  m_lock->setFrameShape(QFrame::StyledPanel);
  m_lockText = new TextLabel(TextRole::Strong, m_lock);
  m_lockText->setObjectName(QStringLiteral("lockText"));
  m_lockWays = new FlowLayout;
  m_allBefore = new WordButton("allBefore", tr("All of this was done before recording"), m_lock);
  m_against = new WordButton("againstOrder", tr("Do it out of order …"), m_lock);
  m_bench = new BenchSection(m_session, inside);
  m_sections = {new SupportSection(m_session, inside),  new HoldSection(m_session, inside),
                new PartsSection(m_session, inside),    new WaitSection(m_session, inside),
                new PackSection(m_session, inside),     new MeasureSection(m_session, inside),
                new TorqueSection(m_session, inside),   new ObserveSection(m_session, inside),
                new RoadTestSection(m_session, inside), m_bench};
  m_notes = new StepNotes(m_session, inside);
  m_goOn = new WordButton("goOn", {}, this);
  m_goOn->hide();
  m_done = new WordButton("stepDone", tr("&Done"), inside);
  m_before = new WordButton("stepBefore", tr("Done &before recording"), inside);
  m_notApplicable = new WordButton("stepNotApplicable", tr("Does not appl&y …"), inside);
  m_reopen = new WordButton("stepReopen", tr("&Open it again"), inside);
  m_note = new WordButton("stepNote", tr("&Note …"), inside);
  m_photo = new WordButton("stepPhoto", tr("&Photo …"), inside);
  m_reason = new ReasonRow(QStringLiteral("stepReason"), inside);
  layOut(inside);
  setWidget(inside);
}

void StepPanel::layOut(QWidget* inside) {
  auto* inLock = new QVBoxLayout(m_lock);
  inLock->addWidget(m_lockText);
  inLock->addLayout(m_lockWays);
  inLock->addWidget(m_allBefore, 0, Qt::AlignLeft);
  inLock->addWidget(m_against, 0, Qt::AlignLeft);
  auto* foot = new FlowLayout;
  for (QPushButton* one : {m_done, m_before, m_notApplicable, m_reopen, m_note, m_photo}) {
    foot->addWidget(one);
  }
  auto* column = new QVBoxLayout(inside);
  for (QWidget* widget : {static_cast<QWidget*>(m_title), static_cast<QWidget*>(m_place),
                          static_cast<QWidget*>(m_caution), static_cast<QWidget*>(m_how),
                          static_cast<QWidget*>(m_text), static_cast<QWidget*>(m_alone),
                          static_cast<QWidget*>(m_lock)}) {
    column->addWidget(widget);
  }
  for (StepSection* section : m_sections) column->addWidget(section);
  column->addWidget(m_notes);
  column->addLayout(foot);
  column->addWidget(m_reason);
  column->addStretch(1);
}

void StepPanel::wire() {
  for (StepSection* section : m_sections) {
    connect(section, &StepSection::goWanted, this, &StepPanel::goWanted);
    connect(section, &StepSection::recorded, this, &StepPanel::takeKeyboard);
    connect(section, &StepSection::supposed, m_bench, &BenchSection::suppose);
  }
  connect(m_how, &QPushButton::toggled, this, &StepPanel::foldText);
  connect(m_reason, &ReasonRow::finished, this, &StepPanel::takeKeyboard);
  // Once it is laid out.
  connect(
      m_reason, &ReasonRow::asked, this, [this] { ensureWidgetVisible(m_reason); },
      Qt::QueuedConnection);
  connect(m_done, &QPushButton::clicked, this, [this] { mark(model::StepAction::Done); });
  connect(m_before, &QPushButton::clicked, this,
          [this] { mark(model::StepAction::DoneBeforeRecording); });
  connect(m_reopen, &QPushButton::clicked, this, [this] { mark(model::StepAction::Reopened); });
  connect(m_goOn, &QPushButton::clicked, this, [this] {
    if (m_next) emit stepWanted(*m_next);
  });
  connect(m_allBefore, &QPushButton::clicked, this, [this] {
    // The button goes with the lock: the keyboard must not fall on the next one.
    if (m_session.perform(workshop::MarkBefore{}, here())) takeKeyboard();
  });
  connect(m_against, &QPushButton::clicked, this, &StepPanel::goAgainst);
  connect(m_notApplicable, &QPushButton::clicked, this, [this] {
    m_reason->ask(tr("Why does the step not apply?"), tr("stands on the sheet"),
                  [this](const std::string& reason) {
                    workshop::DoStep step{model::StepAction::NotApplicable, reason};
                    return m_session.perform(step, here()).has_value();
                  });
  });
  connect(m_photo, &QPushButton::clicked, this, [this] {
    const QString file = choosePicture ? choosePicture() : QString();
    if (!file.isEmpty()) (void)addPhoto(file);
  });
  connect(m_note, &QPushButton::clicked, this, [this] {
    m_reason->ask(tr("What is worth noting here?"), {}, [this](const std::string& note) {
      return m_session.perform(workshop::AddNote{note}, here()).has_value();
    });
    // A note half written is not lost with the light, nor by a look at another step.
    const QString place = QStringLiteral("job/%1/step/%2/note")
                              .arg(m_context.job->job.value)
                              .arg(QString::fromStdString(m_context.job->stepName(m_context.step)));
    m_reason->keep(m_session.draft(place),
                   [this, place](const QString& text) { m_session.keepDraft(place, text); });
  });
}

Where StepPanel::here() const {
  return whereOf(*m_context.job, m_context.step);
}

bool StepPanel::plain() const {
  const procedures::Step& step = m_context.definition();
  return !step.hold && step.id != "choose_support";
}

void StepPanel::present(const StepContext& context, const workshop::StepLine& line,
                        std::optional<std::size_t> next) {
  const bool other =
      !m_context.job || m_context.step != context.step || m_context.job->job != context.job->job;
  m_context = context;
  m_next = next;
  m_open =
      line.status == workshop::StepStatus::Ready || line.status == workshop::StepStatus::Running;
  showHead();
  showLock(line);
  // From the last to the first: what is typed above is worked out below, for the step shown now.
  for (auto it = m_sections.rbegin(); it != m_sections.rend(); ++it) {
    const bool suits = (*it)->suits(context);
    if (suits) (*it)->present(context);
    (*it)->setVisible(suits);
  }
  m_notes->present(context);
  showFoot(line);
  tabAsLaidOut(*widget());
  if (other) {
    m_reason->close();
    ensureVisible(0, 0);
  }
}

void StepPanel::showHead() {
  const workshop::StepView& view = m_context.view();
  const workshop::RunView& run = m_context.job->runs[view.run];
  const procedures::Step& step = m_context.definition();
  m_title->setText(stepTitle(view));
  QStringList place{QString::fromStdString(run.procedure->title)};
  if (run.fact.round > 1) place += tr("round %1").arg(run.fact.round);
  if (step.minutes > 0) place += tr("about %1").arg(report::minutesText(step.minutes));
  if (step.needsTwo) place += tr("needs two");
  if (step.optional) place += tr("if you like");
  m_place->setText(place.join(QStringLiteral(" · ")));
  m_caution->say(QString::fromStdString(step.caution));
  m_text->setText(QString::fromStdString(step.text));
  m_alone->say(step.onePerson.empty() ? QString()
                                      : aloneText(QString::fromStdString(step.onePerson)));
  foldText();
}

void StepPanel::foldText() {
  const bool gloves = currentTheme().mode == Mode::Workshop;
  const bool some = !m_text->text().isEmpty();
  m_how->setVisible(gloves && some);
  m_text->setVisible(some && (!gloves || m_how->isChecked()));
}

void StepPanel::changeEvent(QEvent* event) {
  QScrollArea::changeEvent(event);
  if (event->type() == QEvent::StyleChange && m_context.job) foldText();
}

void StepPanel::showLock(const workshop::StepLine& line) {
  clearLayout(*m_lockWays);
  const bool waits = line.status == workshop::StepStatus::Waits;
  m_lock->setVisible(waits);
  if (!waits) return;
  QStringList reasons;
  bool onlyOrder = true;
  for (const workshop::Refusal& refusal : line.against) {
    reasons += reasonText(refusal);
    onlyOrder = onlyOrder && refusal.key == "needs";
    const auto step = workshop::stepNamed(*m_context.job, refusal.step);
    if (!step || *step == m_context.step || m_lockWays->count() >= 4) continue;
    auto* way = new WordButton(
        "goFirst",
        tr("Go there: %1").arg(QString::fromStdString(m_context.job->steps[*step].step->title)),
        m_lock);
    way->setObjectName(QStringLiteral("goFirst_%1").arg(m_lockWays->count()));
    connect(way, &QPushButton::clicked, this, [this, step] { emit stepWanted(*step); });
    m_lockWays->addWidget(way);
    way->show();
  }
  m_lockText->setText(tr("This comes first: %1.").arg(reasons.join(QStringLiteral("; "))));
  m_against->setVisible(onlyOrder);
  m_allBefore->setVisible(std::any_of(line.against.begin(), line.against.end(),
                                      [](const auto& one) { return one.key == "needs"; }));
}

void StepPanel::showFoot(const workshop::StepLine& line) {
  using workshop::StepStatus;
  const bool editable = !m_context.job->closed && !m_session.viewOnly();
  const bool lacks = !workshop::lacking(*m_context.job, m_context.step).empty();
  m_done->setVisible(m_open && plain() && !lacks);
  m_done->setEnabled(editable);
  m_before->setVisible(m_open && plain() && editable);
  m_notApplicable->setVisible(m_open && plain() && editable);
  m_reopen->setVisible(!m_open && line.status != StepStatus::Waits && plain() && editable);
  m_note->setVisible(editable);
  m_photo->setVisible(editable);
  const bool goesOn = !m_open && m_next.has_value();
  m_goOn->setVisible(goesOn);
  if (!goesOn) return;
  const workshop::StepView& next = m_context.job->steps[*m_next];
  QString name = stepTitle(next);
  m_goOn->setAccessibleName(tr("Go on: %1").arg(name));
  m_goOn->setText(tr("&Go on: %1").arg(name.replace(QLatin1Char('&'), QStringLiteral("&&"))));
}

void StepPanel::takeKeyboard() {
  for (StepSection* section : m_sections) {
    QWidget* field = section->isVisibleTo(this) ? section->firstField() : nullptr;
    if (field != nullptr && field->isEnabled() && m_open && !section->satisfied()) {
      return bringTo(*field);
    }
  }
  for (QPushButton* one : {m_goOn, m_done, m_note}) {
    if (!one->isHidden() && one->isEnabled()) return bringTo(*one);
  }
}

/// The keyboard goes there at once, the view once all is laid out: from the top, as far as needed.
void StepPanel::bringTo(QWidget& field) {
  field.setFocus();
  QTimer::singleShot(0, this, [this, shown = QPointer<QWidget>(&field)] {
    if (shown == nullptr || !shown->hasFocus() || !widget()->isAncestorOf(shown)) return;
    verticalScrollBar()->setValue(0);
    ensureWidgetVisible(shown);
  });
}

QPushButton* StepPanel::goOnButton() const {
  return m_goOn;
}

void StepPanel::mark(model::StepAction action) {
  workshop::DoStep step;
  if (action != model::StepAction::Done) step.action = action;
  (void)m_session.perform(step, here());
}

void StepPanel::goAgainst() {
  m_reason->ask(tr("Why out of order?"), tr("stands on the sheet"), [this](const std::string& why) {
    return m_session.perform(workshop::OverrideRule{"order", why}, here()).has_value();
  });
}

void StepPanel::dragEnterEvent(QDragEnterEvent* event) {
  if (!picturesIn(event->mimeData()).isEmpty() && m_context.job) event->acceptProposedAction();
}

void StepPanel::dropEvent(QDropEvent* event) {
  const QStringList files = picturesIn(event->mimeData());
  if (files.isEmpty() || !m_context.job) return;
  event->acceptProposedAction();
  for (const QString& file : files) {
    if (!addPhoto(file)) return;
  }
}

bool StepPanel::addPhoto(const QString& file) {
  return m_session.perform(workshop::AddPhoto{file.toStdString(), std::nullopt}, here())
      .has_value();
}

}  // namespace sw::ui
