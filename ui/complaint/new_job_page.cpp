// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/complaint/new_job_page.h"

#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "ui/common/page_parts.h"
#include "ui/common/text_label.h"
#include "ui/complaint/four_answers.h"

namespace sw::ui {

namespace {

/// "Mara Tollgate" -> "MT".
std::string initialsOf(const QString& name) {
  QString initials;
  for (const QString& word : name.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
    initials += word.at(0).toUpper();
  }
  return initials.toStdString();
}

}  // namespace

NewJobPage::NewJobPage(ShopSession& session, QWidget* parent)
    : Page(session, "newJobPage", parent),
      m_form(new QFormLayout),
      m_plate(lineEdit("plate", tr("Registration"), tr("as on the plate"), this)),
      m_known(new QLabel(this)),
      m_who(lineEdit("yourName", tr("Your name"), tr("first and last name"), this)),
      m_odometer(lineEdit("odometer", tr("Odometer"), tr("may wait"), this)),
      m_words(lineEdit("ownersWords", tr("The owner's words"), tr("may wait"), this)),
      m_problem(new QLabel(this)) {
  m_answers = new FourAnswers(this);

  auto* title = new TextLabel(tr("New job"), TextRole::Heading, this);
  m_known->setObjectName(QStringLiteral("plateKnown"));
  m_known->setTextFormat(Qt::PlainText);
  m_problem->setObjectName(QStringLiteral("problem"));
  m_problem->setTextFormat(Qt::PlainText);
  m_problem->setWordWrap(true);
  m_problem->hide();

  m_form->setRowWrapPolicy(QFormLayout::WrapLongRows);
  m_form->addRow(tr("&Registration"), m_plate);
  m_form->addRow(QString(), m_known);
  m_form->addRow(tr("Your &name"), m_who);
  m_form->addRow(tr("&Odometer"), m_odometer);
  m_form->addRow(tr("Owner's &words"), m_words);

  // Made after the questions: the Tab key goes the way one reads.
  m_open = new QPushButton(tr("Open the &job"), this);
  m_open->setObjectName(QStringLiteral("openJob"));
  m_open->setDefault(true);
  auto* back = new QPushButton(tr("&Back"), this);
  back->setObjectName(QStringLiteral("cancelJob"));
  auto* buttons = new QHBoxLayout;
  buttons->addWidget(m_open);
  buttons->addWidget(back);
  buttons->addStretch(1);

  auto* inside = new QWidget(this);
  auto* column = new QVBoxLayout(inside);
  column->addWidget(title);
  column->addLayout(m_form);
  column->addWidget(m_answers);
  column->addWidget(m_problem);
  column->addLayout(buttons);
  column->addStretch(1);
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(0, 0, 0, 0);
  outer->addWidget(scrolled(inside, "newJobScroll", this));

  connect(m_plate, &QLineEdit::textChanged, this, &NewJobPage::tellWhetherKnown);
  // Enter goes down the page: to the name where it is asked, past the odometer, to the answers.
  connect(m_plate, &QLineEdit::returnPressed, this,
          [this] { (m_who->isVisible() ? m_who : m_words)->setFocus(); });
  for (QLineEdit* edit : {m_who, m_odometer}) {
    connect(edit, &QLineEdit::returnPressed, m_words, qOverload<>(&QWidget::setFocus));
  }
  connect(m_words, &QLineEdit::returnPressed, this,
          [this] { m_answers->findChild<QPushButton*>()->setFocus(); });
  connect(m_open, &QPushButton::clicked, this, &NewJobPage::openJob);
  connect(back, &QPushButton::clicked, this, [this] { emit goWanted({}); });
}

void NewJobPage::clear() {
  for (QLineEdit* edit : {m_plate, m_who, m_odometer, m_words}) edit->clear();
  m_answers->clear();
}

void NewJobPage::begin(const Goal& goal) {
  m_problem->hide();
  // The name is asked once, of the first person in the book.
  const auto shop = session().workshop().shop();
  const bool nobody = shop && (*shop)->people().empty();
  if (goal.vehicle && shop) {
    const auto* vehicle = (*shop)->vehicle(*goal.vehicle);
    if (vehicle != nullptr) m_plate->setText(QString::fromStdString(vehicle->fact.registration));
  }
  m_form->setRowVisible(m_who, nobody);
  tellWhetherKnown();
  m_plate->setFocus();
}

void NewJobPage::tellWhetherKnown() {
  const auto plate = typed(m_plate);
  const auto shop = session().workshop().shop();
  if (!plate || !shop) {
    m_known->setText(tr("A plate the book does not know makes a new vehicle."));
    return;
  }
  const auto* vehicle = (*shop)->vehicleByRegistration(*plate);
  if (vehicle == nullptr) {
    m_known->setText(tr("New vehicle."));
    return;
  }
  const QString what = QString::fromStdString(vehicle->fact.makeModel);
  m_known->setText(what.isEmpty() ? tr("Known vehicle.") : tr("Known vehicle: %1").arg(what));
}

bool NewJobPage::takePerson() {
  if (!session().person().empty()) return true;
  const auto shop = session().workshop().shop();
  if (shop && !(*shop)->people().empty()) {
    showProblem(tr("Choose at the top who is at work, then open the job."), nullptr);
    return false;
  }
  const auto name = typed(m_who);
  if (!name) {
    showProblem(tr("Your name: every entry says who made it. Type it once."), m_who);
    return false;
  }
  workshop::SetPerson person;
  person.name = *name;
  person.initials = initialsOf(m_who->text());
  if (!session().perform(person)) return false;
  session().setPerson(person.initials);
  return true;
}

void NewJobPage::showProblem(const QString& sentence, QWidget* field) {
  m_problem->setText(sentence);
  m_problem->show();
  if (field != nullptr) field->setFocus();
}

void NewJobPage::openJob() {
  m_problem->hide();
  const auto plate = typed(m_plate);
  if (!plate) {
    showProblem(tr("Registration: type what is on the plate."), m_plate);
    return;
  }
  if (!takePerson()) return;
  workshop::OpenJob job;
  job.registration = *plate;
  job.odometer = typed(m_odometer);
  job.request = typed(m_words);
  const auto outcome = session().perform(job);
  if (!outcome) {
    if (outcome.error().field == "odometer") m_odometer->setFocus();
    return;
  }
  workshop::SetComplaint complaint;
  complaint.words = typed(m_words);
  m_answers->fill(complaint);
  (void)session().perform(complaint, {outcome->job, {}, {}, {}, {}});
  session().keepPlace(*outcome->job, {});
  clear();
  emit goWanted({PageId::Start, {}, {}, {}, {}});
}

}  // namespace sw::ui
