// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/instruments/instruments_page.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QTableWidget>
#include <QVBoxLayout>

#include "phrasing/error_sentence.h"
#include "phrasing/names.h"
#include "report/wording.h"
#include "ui/common/flow_layout.h"
#include "ui/common/page_parts.h"
#include "ui/common/text_label.h"
#include "ui/instruments/instrument_text.h"

namespace sw::ui {

namespace {

QPushButton* pushButton(const char* name, const QString& text, QWidget* parent) {
  auto* button = new QPushButton(text, parent);
  button->setObjectName(QString::fromLatin1(name));
  return button;
}

std::optional<model::InstrumentKind> kindIn(const QComboBox* box) {
  return fromWord<model::InstrumentKind>(box->currentData().toString().toStdString());
}

}  // namespace

InstrumentsPage::InstrumentsPage(ShopSession& session, QWidget* parent)
    : Page(session, "instrumentsPage", parent),
      m_fields(new FormFields(this)),
      m_checkFields(new FormFields(this)),
      m_new(pushButton("newInstrument", tr("&New instrument"), this)),
      m_back(pushButton("backToWork", tr("Back to the &work"), this)),
      m_none(new TextLabel(tr("No instrument is on file yet. Fill in the form: a spring scale to "
                              "pull with, a torque wrench, a micrometer or caliper for the shims. "
                              "A fish scale is a good beginning."),
                           TextRole::Body, this)),
      m_table(rowTable("instrumentTable", tr("Instruments of the shop"),
                       {tr("Instrument"), tr("State")}, this)) {
  auto* inside = new QWidget(this);
  m_title = new TextLabel(TextRole::Heading, inside);
  m_title->setObjectName(QStringLiteral("instrumentTitle"));
  m_title->setWordWrap(true);
  m_worth = new TextLabel(TextRole::Strong, inside);
  m_worth->setObjectName(QStringLiteral("instrumentWorth"));
  m_unsaved = new TextLabel(tr("What was typed before and not saved stands here again."),
                            TextRole::Quiet, inside);
  makeForm(inside);
  makeCheck(inside);
  layOut(inside);
  auto* columns = new QHBoxLayout(this);
  columns->addWidget(laidOutList(), 1);
  columns->addWidget(scrolled(inside, "instrumentScroll", this), 1);
  connectAll();
}

void InstrumentsPage::makeForm(QWidget* inside) {
  m_form = fieldForm();
  m_kind = comboBox("instrumentKind", tr("Kind"), inside);
  m_kind->setPlaceholderText(tr("choose"));
  for (const auto& [kind, word] : Words<model::InstrumentKind>::table) {
    m_kind->addItem(phrasing::nameOf(kind),
                    QString::fromLatin1(word.data(), qsizetype(word.size())));
  }
  addRow(m_form, tr("&Kind"), m_kind);
  m_fields->add("type", m_kind);
  const auto add = [&](const char* field, const char* name, const QString& label,
                       const QString& example) {
    auto* edit = addLine(m_form, name, label, example, inside);
    m_fields->add(field, edit);
    return edit;
  };
  m_nameEdit = add("name", "instrumentName", tr("Na&me"), tr("what the shop calls it"));
  m_graduation = add("graduation", "graduation", tr("&Smallest step"), {});
  add("permissible_error", "permissibleError", tr("&Permissible error"),
      tr("if known: 0.3 N or 4 %"));
  add("range_min", "rangeMin", tr("Usable &from"), tr("may stay empty"));
  add("range_max", "rangeMax", tr("Usable up &to"), tr("may stay empty"));
  add("calibrated_on", "calibratedOn", tr("&Calibrated on"), tr("like 2031-04-05"));
  add("calibration_due", "calibrationDue", tr("Calibration &due"), tr("like 2032-04-05"));
  add("certificate", "certificate", tr("C&ertificate"), tr("its number; may stay empty"));
  m_problem = new TextLabel(TextRole::Strong, inside);
  m_problem->setObjectName(QStringLiteral("instrumentProblem"));
  m_save = pushButton("saveInstrument", {}, inside);
}

void InstrumentsPage::makeCheck(QWidget* inside) {
  m_check = new QWidget(inside);
  auto* title = new TextLabel(tr("Own check"), TextRole::Heading, m_check);
  auto* how = new TextLabel(tr("Let it measure something known and type what it shows."),
                            TextRole::Body, m_check);
  auto* form = fieldForm();
  const auto add = [&](const char* field, const char* name, const QString& label,
                       const QString& example) {
    auto* edit = addLine(form, name, label, example, m_check);
    m_checkFields->add(field, edit);
    return edit;
  };
  m_against = add("against", "checkAgainst", tr("&Against"), {});
  add("applied", "checkApplied", tr("Kn&own value"), tr("what it should show"));
  add("shown", "checkShown", tr("It s&howed"), tr("what it did show"));
  add("applied_uncertainty", "checkUncertainty", tr("Known w&ithin"), tr("may stay empty"));
  m_record = pushButton("recordCheck", tr("&Record the check"), m_check);
  auto* buttons = new FlowLayout;
  buttons->addWidget(m_record);
  auto* column = new QVBoxLayout(m_check);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(title);
  column->addWidget(how);
  column->addLayout(form);
  column->addLayout(buttons);
}

QWidget* InstrumentsPage::laidOutList() {
  auto* list = new QWidget(this);
  auto* column = new QVBoxLayout(list);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(new TextLabel(tr("Instruments"), TextRole::Heading, list));
  auto* buttons = new FlowLayout;
  buttons->addWidget(m_new);
  buttons->addWidget(m_back);
  column->addLayout(buttons);
  column->addWidget(m_none);
  column->addWidget(m_table, 1);
  column->addStretch(0);
  return list;
}

void InstrumentsPage::layOut(QWidget* inside) {
  auto* buttons = new FlowLayout;
  buttons->addWidget(m_save);
  auto* column = new QVBoxLayout(inside);
  column->setContentsMargins(0, 0, column->contentsMargins().right(), 0);
  column->addWidget(m_title);
  column->addWidget(m_worth);
  column->addWidget(m_unsaved);
  column->addLayout(m_form);
  column->addWidget(m_problem);
  column->addLayout(buttons);
  column->addWidget(m_check);
  column->addStretch(1);
}

void InstrumentsPage::connectAll() {
  connect(m_new, &QPushButton::clicked, this, [this] {
    show({});
    m_fields->focus("type");
  });
  connect(m_back, &QPushButton::clicked, this, [this] {
    emit goWanted({PageId::Work, m_job, {}, {}, {}});
  });
  connect(m_table, &QTableWidget::itemSelectionChanged, this, [this] {
    const auto* item = m_table->item(m_table->currentRow(), 0);
    if (item != nullptr) show(item->data(Qt::UserRole).toString().toStdString());
  });
  connect(m_kind, &QComboBox::currentIndexChanged, this, &InstrumentsPage::fitExamples);
  connect(m_fields, &FormFields::settled, this, &InstrumentsPage::keepDrafts);
  connect(m_checkFields, &FormFields::settled, this, &InstrumentsPage::keepDrafts);
  connect(m_fields, &FormFields::entered, this, &InstrumentsPage::save);
  connect(m_checkFields, &FormFields::entered, this, &InstrumentsPage::recordCheck);
  connect(m_save, &QPushButton::clicked, this, &InstrumentsPage::save);
  connect(m_record, &QPushButton::clicked, this, &InstrumentsPage::recordCheck);
  connect(&session(), &ShopSession::changed, this, [this] {
    if (isVisible()) refresh();
  });
}

void InstrumentsPage::begin(const Goal& goal) {
  m_job = goal.job;
  m_back->setVisible(m_job.has_value());
  refresh();
  const bool empty = m_table->rowCount() == 0;
  if (goal.instrumentKind || empty || m_name.empty()) show({});
  if (goal.instrumentKind && m_fields->text("type").empty()) {
    const std::string word(wordOf(*goal.instrumentKind));
    m_kind->setCurrentIndex(m_kind->findData(QString::fromStdString(word)));
  }
  const bool writes = goal.instrumentKind.has_value() || empty;
  if (writes) {
    m_fields->focus(m_fields->text("type").empty() ? "type" : "name");
  } else {
    m_table->setFocus();
  }
}

const workshop::Revision<model::Instrument>* InstrumentsPage::shown() const {
  const auto shop = session().shop();
  return shop && !m_name.empty() ? (*shop)->instrumentByName(m_name) : nullptr;
}

QString InstrumentsPage::place(const char* form) const {
  return QStringLiteral("instruments/%1/%2")
      .arg(QString::fromStdString(m_name), QLatin1String(form));
}

void InstrumentsPage::refresh() {
  const auto shop = session().shop();
  if (!shop) {
    emit failed(phrasing::sentence(shop.error()));
    return;
  }
  listInstruments(**shop);
  if (const auto* instrument = shown()) m_fields->follow(textsOf(instrument->fact));
  showTitle();
}

void InstrumentsPage::listInstruments(const workshop::ShopState& shop) {
  const QSignalBlocker quiet(m_table);
  const Date today = localDate(session().workshop().clock().now());
  m_table->setRowCount(0);
  for (const auto* revision : shop.instruments()) {
    const model::Instrument& instrument = revision->fact;
    if (!instrument.active) continue;
    const auto* check = shop.check(instrument.instrument);
    QStringList state{calibrationText(instrument, today)};
    if (check != nullptr) state += tr("own check: %1").arg(checkText(&check->fact));
    const int row = m_table->rowCount();
    m_table->insertRow(row);
    const QString name = QString::fromStdString(instrument.name);
    fillRow(m_table, row,
            {tr("%1\n%2, %3").arg(name, phrasing::nameOf(instrument.type), readsText(instrument)),
             state.join(QLatin1Char('\n'))});
    m_table->item(row, 0)->setData(Qt::UserRole, name);
    if (instrument.name == m_name) m_table->selectRow(row);
  }
  m_none->setVisible(m_table->rowCount() == 0);
  m_table->setVisible(m_table->rowCount() > 0);
}

void InstrumentsPage::show(const std::string& name) {
  m_name = name;
  const auto* instrument = shown();
  if (instrument == nullptr) {
    const QSignalBlocker quiet(m_table);
    m_table->clearSelection();
    m_table->setCurrentCell(-1, -1);
  }
  m_fields->show(instrument == nullptr ? FieldTexts{} : textsOf(instrument->fact));
  m_checkFields->show({});
  const bool kept = m_fields->takeDraft(session().draft(place("data")));
  const bool keptCheck = m_checkFields->takeDraft(session().draft(place("check")));
  m_unsaved->setVisible(kept || keptCheck);
  m_problem->hide();
  showTitle();
  fitExamples();
}

void InstrumentsPage::showTitle() {
  const auto* instrument = shown();
  const bool isNew = instrument == nullptr;
  m_title->setText(isNew ? tr("New instrument") : QString::fromStdString(m_name));
  m_save->setText(isNew ? tr("&Add the instrument") : tr("Save the chan&ges"));
  m_form->setRowVisible(m_nameEdit, isNew);
  m_check->setVisible(!isNew);
  if (isNew) {
    m_worth->say({});
    return;
  }
  const auto shop = session().shop();
  const auto* check = shop ? (*shop)->check(instrument->fact.instrument) : nullptr;
  m_worth->say(worthText(instrument->fact, check == nullptr ? nullptr : &check->fact));
}

void InstrumentsPage::fitExamples() {
  const auto kind = kindIn(m_kind);
  m_graduation->setPlaceholderText(kind ? graduationExample(*kind) : tr("0.5 N, 0.01 mm, 1 N m"));
  m_against->setPlaceholderText(checkExample(kind.value_or(model::InstrumentKind::Other)));
}

void InstrumentsPage::keepDrafts() {
  session().keepDraft(place("data"), m_fields->draft());
  session().keepDraft(place("check"), m_checkFields->draft());
}

void InstrumentsPage::showProblem(const QString& sentence) {
  m_problem->say(sentence);
}

void InstrumentsPage::save() {
  m_problem->hide();
  if (!m_fields->hasChanges()) {
    showProblem(tr("Nothing is different from what is on file."));
    return;
  }
  workshop::SetInstrument action;
  action.name = m_name.empty() ? m_fields->text("name") : m_name;
  const auto shop = session().shop();
  const bool isKnown = shop && (*shop)->instrumentByName(action.name) != nullptr;
  if (action.name.empty() || (m_name.empty() && isKnown)) {
    showProblem(isKnown ? tr("There is one of this name. Choose it in the list to change it, or "
                             "give the new one another name.")
                        : tr("Name: type what the shop calls it."));
    m_fields->focus("name");
    return;
  }
  takeChanges(*m_fields, action);
  const QString kept = place("data");
  const auto outcome = session().perform(action);
  if (!outcome) {
    m_fields->focus(outcome.error().field);
    return;
  }
  session().keepDraft(kept, {});
  m_name = action.name;
  refresh();
  show(m_name);
  if (m_job) m_back->setFocus();
}

void InstrumentsPage::recordCheck() {
  m_problem->hide();
  workshop::CheckInstrument action;
  takeChanges(*m_checkFields, action);
  action.instrument = m_name;
  const auto outcome = session().perform(action);
  if (!outcome) {
    m_checkFields->focus(outcome.error().field);
    return;
  }
  session().keepDraft(place("check"), {});
  m_checkFields->show({});
  m_unsaved->hide();
}

}  // namespace sw::ui
