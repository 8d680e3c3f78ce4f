// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/finish/finish_page.h"

#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "phrasing/error_sentence.h"
#include "phrasing/names.h"
#include "report/fact_text.h"
#include "ui/common/flow_layout.h"
#include "ui/common/form.h"
#include "ui/common/tab_order.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"
#include "ui/work/reason_row.h"
#include "ui/work/step_section.h"
#include "workshop/step_status.h"

namespace sw::ui {

namespace {

constexpr std::size_t kMostReasons = 20;  // more is no help: the rest follows as these are done

template <class T>
void addFacts(const workshop::JobState& job, QStringList& lines) {
  for (const model::Entry* entry : job.valid) {
    if (model::as<T>(*entry) == nullptr) continue;
    lines += phrasing::factName(model::kindOf(entry->payload)) + QStringLiteral(": ") +
             report::fieldsText(*entry, nullptr);
  }
}

}  // namespace

FinishPage::FinishPage(ShopSession& session, QWidget* parent)
    : Page(session, "finishPage", parent),
      m_title(new TextLabel(tr("Finish"), TextRole::Heading, this)),
      m_state(new TextLabel(TextRole::Strong, this)),
      m_reasons(new QVBoxLayout),
      m_more(new TextLabel(TextRole::Quiet, this)),
      m_signOff(new WordButton("signOff", tr("Sign the job off"), this)),
      m_record(buildRecord(this)),
      m_recorded(new TextLabel(TextRole::Body, this)),
      m_declineWork(new WordButton("declineWork", tr("The owner declines work …"), this)),
      m_declined(new WordButton("closeDeclined", tr("Close as declined …"), this)),
      m_without(new WordButton("closeWithout", tr("Close without sign-off …"), this)),
      m_reason(new ReasonRow(QStringLiteral("finishReason"), this)) {
  m_state->setObjectName(QStringLiteral("finishState"));
  m_recorded->setObjectName(QStringLiteral("finishRecorded"));
  layOut();
  wire();
}

QWidget* FinishPage::buildRecord(QWidget* parent) {
  auto* box = new QWidget(parent);
  auto* form = newForm(box);
  const auto field = [&](const char* name, const QString& label, const QString& example) {
    auto* made = namedField(name, label, box);
    made->setPlaceholderText(example);
    form->addRow(label, made);
    return made;
  };
  const auto add = [&](const char* name, const QString& text, void (FinishPage::*act)()) {
    auto* made = new WordButton(name, text, box);
    connect(made, &QPushButton::clicked, this, act);
    form->addRow(QString(), made);
  };
  m_labour = field("labourTime", tr("Labour"), tr("e.g. 90 min or 1.5 h"));
  m_labourFor = field("labourFor", tr("What for"), tr("may be left out"));
  add("addLabour", tr("Add the labour"), &FinishPage::addLabour);
  m_part = field("partName", tr("Part or consumable"), tr("what it is"));
  m_quantity = field("partQuantity", tr("How much"), tr("1, or e.g. 0.5 l"));
  m_price = field("partPrice", tr("Price of one"), tr("may be left out, e.g. 4.50"));
  add("addPart", tr("Add the part"), &FinishPage::addPart);
  m_recheck = field("recheckWhat", tr("Recheck"), tr("e.g. wheel nuts to torque"));
  m_recheckOn = field("recheckOn", tr("On"), tr("date, e.g. 2031-04-30"));
  m_recheckAt = field("recheckAt", tr("At"), tr("odometer, e.g. 84300 km"));
  add("addRecheck", tr("Add the recheck"), &FinishPage::addRecheck);
  return box;
}

void FinishPage::layOut() {
  auto* ends = new FlowLayout;
  for (QPushButton* one : {m_declineWork, m_declined, m_without}) ends->addWidget(one);
  auto* inside = new QWidget(this);
  auto* column = new QVBoxLayout(inside);
  column->addWidget(m_title);
  column->addWidget(m_state);
  column->addLayout(m_reasons);
  column->addWidget(m_more);
  column->addWidget(m_signOff, 0, Qt::AlignLeft);
  column->addWidget(new TextLabel(tr("For the record"), TextRole::Heading, inside));
  column->addWidget(m_record);
  column->addWidget(m_recorded);
  column->addWidget(new TextLabel(tr("Another end"), TextRole::Heading, inside));
  column->addLayout(ends);
  column->addWidget(m_reason);
  column->addStretch(1);
  auto* scroll = new QScrollArea(this);
  scroll->setObjectName(QStringLiteral("finishScroll"));
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setWidgetResizable(true);
  scroll->setWidget(inside);
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(0, 0, 0, 0);
  outer->addWidget(scroll);
}

void FinishPage::wire() {
  connect(m_signOff, &QPushButton::clicked, this, [this] { (void)send(workshop::SignOff{}); });
  connect(m_declineWork, &QPushButton::clicked, this, [this] {
    m_reason->ask(tr("Which work does the owner decline?"), {}, [this](const std::string& what) {
      return send(workshop::DeclineWork{what, std::nullopt});
    });
  });
  connect(m_declined, &QPushButton::clicked, this,
          [this] { closeAs(model::JobOutcome::Declined); });
  connect(m_without, &QPushButton::clicked, this,
          [this] { closeAs(model::JobOutcome::ClosedWithoutSignOff); });
  connect(&session(), &ShopSession::changed, this, [this] {
    if (isVisible()) look();
  });
}

void FinishPage::begin(const Goal& goal) {
  if (!goal.job) return;
  m_job = *goal.job;
  m_reason->close();
  look();
  if (!m_ways.empty()) {
    m_ways.front()->setFocus();
  } else {
    m_labour->setFocus();
  }
}

bool FinishPage::send(workshop::Action action) {
  return session().perform(std::move(action), {m_job, {}, {}, {}, {}}).has_value();
}

void FinishPage::look() {
  const auto job = session().job(m_job);
  if (!job) {
    emit failed(phrasing::sentence(job.error()));
    return;
  }
  showReasons(**job);
  showRecorded(**job);
  const bool open = !(*job)->closed && !session().viewOnly();
  for (QWidget* widget :
       {static_cast<QWidget*>(m_signOff), m_record, static_cast<QWidget*>(m_declineWork),
        static_cast<QWidget*>(m_declined), static_cast<QWidget*>(m_without)}) {
    widget->setEnabled(open);
  }
}

void FinishPage::showReasons(const workshop::JobState& job) {
  for (QPushButton* way : m_ways) {
    way->hide();
    way->deleteLater();
  }
  m_ways.clear();
  if (job.closed) {
    m_state->say(tr("The job is closed: %1.").arg(phrasing::nameOf(job.closed->outcome)));
    return;
  }
  const auto reasons = workshop::againstSignOff(job);
  m_state->say(reasons.empty()
                   ? tr("Nothing stands against sign-off. It says what was done and measured; it "
                        "does not pass the vehicle for the road.")
                   : tr("Open before sign-off: %1. Press one to go there.").arg(reasons.size()));
  m_more->say(
      reasons.size() > kMostReasons
          ? tr("and %1 more, which show as these are done").arg(reasons.size() - kMostReasons)
          : QString());
  for (const workshop::Refusal& reason : reasons) {
    if (m_ways.size() == kMostReasons) break;
    const QString phrase = phrasing::refusalPhrase(reason.key + "||" + reason.what);
    const auto step = workshop::stepNamed(job, reason.step);
    // A step that is only not done yet has no more to say than its name.
    const bool onlyOpen = step && reason.key == "step_open";
    const QString text = !step      ? phrase
                         : onlyOpen ? stepTitle(job.steps[*step])
                                    : tr("%1: %2").arg(stepTitle(job.steps[*step]), phrase);
    auto* way = new WordButton("reason", text, this);
    way->setObjectName(QStringLiteral("reason_%1").arg(m_ways.size()));
    way->setAccessibleName(way->text());
    // What no step put there stands in the ledger beside the work.
    Goal goal{PageId::Work, m_job, {}, {}, {}};
    if (step) goal = {PageId::Work, m_job, {}, whereOf(job, *step).step, job.steps[*step].side};
    connect(way, &QPushButton::clicked, this, [this, goal] { emit goWanted(goal); });
    m_reasons->addWidget(way);
    way->show();
    m_ways.push_back(way);
  }
  tabAsLaidOut(*this);
}

void FinishPage::showRecorded(const workshop::JobState& job) {
  QStringList lines;
  addFacts<model::Labour>(job, lines);
  addFacts<model::PartUsed>(job, lines);
  addFacts<model::RecheckDue>(job, lines);
  addFacts<model::WorkDeclined>(job, lines);
  m_recorded->say(lines.join(QLatin1Char('\n')));
}

void FinishPage::addLabour() {
  workshop::AddLabour labour;
  labour.time = typedIn(*m_labour).value_or("");
  labour.text = typedIn(*m_labourFor);
  if (!send(labour)) return m_labour->setFocus();
  m_labour->clear();
  m_labourFor->clear();
}

void FinishPage::addPart() {
  workshop::UsePart part;
  part.name = typedIn(*m_part).value_or("");
  part.quantity = typedIn(*m_quantity);
  part.unitPrice = typedIn(*m_price);
  if (part.name.empty()) return m_part->setFocus();
  if (!send(part)) return m_quantity->setFocus();
  for (QLineEdit* field : {m_part, m_quantity, m_price}) field->clear();
}

void FinishPage::addRecheck() {
  workshop::AddRecheck recheck;
  recheck.what = typedIn(*m_recheck).value_or("");
  recheck.on = typedIn(*m_recheckOn);
  recheck.atOdometer = typedIn(*m_recheckAt);
  if (recheck.what.empty()) return m_recheck->setFocus();
  if (!send(recheck)) return m_recheckOn->setFocus();
  for (QLineEdit* field : {m_recheck, m_recheckOn, m_recheckAt}) field->clear();
}

void FinishPage::closeAs(model::JobOutcome outcome) {
  m_reason->ask(tr("Why does the job end so?"), tr("stands on the sheet"),
                [this, outcome](const std::string& reason) {
                  return send(workshop::CloseJob{outcome, reason});
                });
}

}  // namespace sw::ui
