// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/complaint/complaint_page.h"

#include <QFormLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "phrasing/error_sentence.h"
#include "ui/common/choice_row.h"
#include "ui/common/flow_layout.h"
#include "ui/common/page_parts.h"
#include "ui/common/text_label.h"
#include "ui/complaint/causes_part.h"
#include "ui/complaint/four_answers.h"
#include "ui/complaint/plan_part.h"

namespace sw::ui {

ComplaintPage::ComplaintPage(ShopSession& session, QWidget* parent)
    : Page(session, "complaintPage", parent),
      m_fields(new FormFields(this)),
      m_wordsForm(fieldForm()),
      m_feltForm(fieldForm()),
      m_speedForm(fieldForm()),
      m_restForm(fieldForm()) {
  auto* inside = new QWidget(this);
  makeFields(inside);
  m_causes = new CausesPart(session, inside);
  m_plan = new PlanPart(session, inside);
  layOut(inside);
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(0, 0, 0, 0);
  outer->addWidget(scrolled(inside, "complaintScroll", this));
  connectAll();
}

QLineEdit* ComplaintPage::add(QFormLayout* form, const char* field, const char* name,
                              const QString& label, const QString& example) {
  auto* edit = addLine(form, name, label, example, m_answers->parentWidget());
  m_fields->add(field, edit);
  return edit;
}

void ComplaintPage::makeFields(QWidget* inside) {
  m_unsaved = new TextLabel(tr("What was typed before and not saved stands here again."),
                            TextRole::Quiet, inside);
  m_words = lineEdit("complaintWords", tr("The owner's words"), {}, inside);
  addRow(m_wordsForm, tr("Owner's &words"), m_words);
  m_fields->add("words", m_words);
  m_answers = new FourAnswers(inside);
  m_fields->add("braking", m_answers->braking());
  m_fields->add("speed_band", m_answers->speedBand());
  m_fields->add("after_bump", m_answers->afterBump());
  m_felt =
      add(m_feltForm, "where_felt", "feltWords", tr("&Felt, in own words"), tr("may stay empty"));
  const QString speed = tr("with its unit; may stay empty");
  add(m_speedForm, "onset_rising", "onsetRising", tr("Speeding up, it &starts at"), speed);
  add(m_speedForm, "release_rising", "releaseRising", tr("Speeding &up, it is gone at"), speed);
  add(m_speedForm, "onset_falling", "onsetFalling", tr("Slowing &down, it starts at"), speed);
  add(m_speedForm, "release_falling", "releaseFalling", tr("Slowing down, it is &gone at"), speed);
  m_source = new ChoiceRow(QStringLiteral("speedSource"), tr("How were the speeds read?"),
                           {{"dial", tr("on the dial")}, {"gps", tr("by GPS")}}, inside);
  m_fields->add("speed_source", m_source);
  add(m_restForm, "recent_work", "recentWork", tr("&Recent work"),
      tr("what was done to it before it began"));
  add(m_restForm, "conditions", "conditions", tr("C&onditions"), tr("load, road, weather"));
  m_problem = new TextLabel(TextRole::Strong, inside);
  m_problem->setObjectName(QStringLiteral("complaintProblem"));
  m_problem->hide();
  m_save = new QPushButton(tr("Save the co&mplaint"), inside);
  m_save->setObjectName(QStringLiteral("saveComplaint"));
}

void ComplaintPage::layOut(QWidget* inside) {
  auto* buttons = new FlowLayout;
  buttons->addWidget(m_save);
  auto* column = new QVBoxLayout(inside);
  column->addWidget(new TextLabel(tr("Complaint"), TextRole::Heading, inside));
  column->addWidget(m_unsaved);
  column->addLayout(m_wordsForm);
  column->addWidget(m_answers);
  column->addLayout(m_feltForm);
  column->addWidget(new TextLabel(
      tr("Speeds as far as anybody knows them. Nobody goes out to look for them before the vehicle "
         "has been looked over."),
      TextRole::Body, inside));
  column->addLayout(m_speedForm);
  column->addWidget(m_source);
  column->addLayout(m_restForm);
  column->addWidget(m_problem);
  column->addLayout(buttons);
  column->addWidget(m_causes);
  column->addWidget(m_plan);
  column->addStretch(1);
}

void ComplaintPage::connectAll() {
  connect(m_answers->whereFelt(), &ChoiceRow::answered, this, &ComplaintPage::takeFelt);
  connect(m_felt, &QLineEdit::textChanged, this, &ComplaintPage::showFelt);
  connect(m_fields, &FormFields::edited, m_problem, &QWidget::hide);
  connect(m_fields, &FormFields::settled, this,
          [this] { session().keepDraft(place(), m_fields->draft()); });
  connect(m_fields, &FormFields::entered, this, [this] { focusNextChild(); });
  connect(m_save, &QPushButton::clicked, this, &ComplaintPage::save);
  connect(m_causes, &CausesPart::rankWanted, this, [this] {
    const PageId page = PageId::Causes;
    emit goWanted({page, m_job, {}, {}, {}});
  });
  connect(m_plan, &PlanPart::startWanted, this, &ComplaintPage::startPlan);
  connect(m_plan, &PlanPart::workWanted, this, &ComplaintPage::goToWork);
  connect(&session(), &ShopSession::changed, this, [this] {
    if (isVisible()) refresh();
  });
}

/// The answers are short ways to type the words; any other words are as good.
void ComplaintPage::showFelt() {
  ChoiceRow* row = m_answers->whereFelt();
  row->clear();
  row->choose(m_felt->text().toStdString());
}

void ComplaintPage::takeFelt() {
  m_felt->setText(QString::fromStdString(m_answers->felt().value_or("")));
  session().keepDraft(place(), m_fields->draft());
}

FieldTexts ComplaintPage::record() const {
  const auto job = session().job(m_job);
  if (!job || !(*job)->complaint) return {};
  return textsOf(*(*job)->complaint);
}

QString ComplaintPage::place() const {
  return QStringLiteral("job/%1/complaint").arg(m_job.value);
}

void ComplaintPage::begin(const Goal& goal) {
  if (!goal.job) return;
  m_job = *goal.job;
  m_fields->show(record());
  m_unsaved->setVisible(m_fields->takeDraft(session().draft(place())));
  m_problem->hide();
  m_causes->show(m_job);
  m_plan->show(m_job);
  putCursor(m_words);
}

void ComplaintPage::refresh() {
  m_fields->follow(record());
  m_causes->refresh();
  m_plan->show(m_job);
}

bool ComplaintPage::save() {
  m_problem->hide();
  if (!m_fields->hasChanges()) {
    m_problem->say(tr("Nothing is different from what is on record."));
    return true;
  }
  workshop::SetComplaint action;
  takeChanges(*m_fields, action);
  const auto outcome = session().perform(action, {m_job, {}, {}, {}, {}});
  if (!outcome) {
    const std::string& field = outcome.error().field;
    if (field == "speed_source") {
      m_problem->say(tr("Say how the speeds were read: a dial shows more than is driven."));
    }
    m_fields->focus(field);
    return false;
  }
  session().keepDraft(place(), {});
  m_fields->show(record());
  m_unsaved->hide();
  return true;
}

void ComplaintPage::startPlan() {
  // What was typed belongs to the job before its plan does.
  if (m_fields->hasChanges() && !save()) return;
  workshop::StartPlan action;
  action.plan = m_plan->plan();
  if (!session().perform(action, {m_job, {}, {}, {}, {}})) return;
  emit goWanted({PageId::Kit, m_job, {}, {}, {}});
}

void ComplaintPage::goToWork() {
  emit goWanted({PageId::Work, m_job, {}, {}, {}});
}

}  // namespace sw::ui
