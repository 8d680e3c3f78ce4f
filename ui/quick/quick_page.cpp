// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/quick/quick_page.h"

#include <QHBoxLayout>
#include <QJsonDocument>
#include <QJsonObject>
#include <QLineEdit>
#include <QPushButton>
#include <QScopedValueRollback>
#include <QScrollArea>
#include <QTimer>
#include <QVBoxLayout>

#include "phrasing/error_sentence.h"
#include "report/job_paper.h"
#include "ui/common/bring_into_view.h"
#include "ui/common/flow_layout.h"
#include "ui/common/tab_order.h"
#include "ui/common/text_label.h"
#include "ui/quick/card_row_view.h"
#include "ui/quick/done_at.h"

namespace sw::ui {

namespace {

constexpr int kKeepAfter = 300;  // ms: what a power cut may cost

/// What has no parent in the list is deleted with its widgets.
void clearLayout(QLayout& layout) {
  while (QLayoutItem* item = layout.takeAt(0)) {
    // Later: one of them may be what is being pressed.
    if (QWidget* widget = item->widget()) {
      widget->setParent(nullptr);
      widget->deleteLater();
    }
    delete item;
  }
}

/// The instrument that was used last is the one in hand.
bool staysInHand(const CardField& field) {
  return field.name == "instrument" || field.name == "wrench";
}

/// Fields that offer the same choices.
std::string choiceKey(const CardField& field) {
  std::string key = field.name;
  for (const auto& [word, text] : field.choices) key += '|' + word;
  return key;
}

}  // namespace

QuickPage::QuickPage(ShopSession& session, QWidget* parent)
    : Page(session, "quickPage", parent),
      m_title(new TextLabel(TextRole::Heading, this)),
      m_typed(new TextLabel(TextRole::Quiet, this)),
      m_empty(new TextLabel(TextRole::Body, this)),
      m_plan(new QPushButton(tr("Start the plan of the &card"), this)),
      m_scroll(new QScrollArea(this)),
      m_list(new QVBoxLayout),
      m_when(new QLineEdit(this)),
      m_copy(new QPushButton(tr("Copy &in"), this)),
      m_keep(new QTimer(this)) {
  build();
  layOut();
  link();
}

void QuickPage::build() {
  m_typed->setObjectName(QStringLiteral("typedRows"));
  m_typed->setWordWrap(false);
  m_empty->setObjectName(QStringLiteral("quickEmpty"));
  m_plan->setObjectName(QStringLiteral("startCardPlan"));
  m_plan->setAutoDefault(false);
  m_scroll->setObjectName(QStringLiteral("quickScroll"));
  m_scroll->setFocusPolicy(Qt::NoFocus);
  m_scroll->setFrameShape(QFrame::NoFrame);
  m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  m_scroll->setWidgetResizable(true);
  m_when->setObjectName(QStringLiteral("doneWhen"));
  m_when->setAccessibleName(tr("When the work was done"));
  m_when->setPlaceholderText(tr("now"));
  m_when->setToolTip(tr("14:05 is today; another day as 2031-03-02 14:05. Empty = now."));
  m_copy->setObjectName(QStringLiteral("copyIn"));
  m_copy->setAutoDefault(false);
  m_keep->setSingleShot(true);
  m_keep->setInterval(kKeepAfter);
}

void QuickPage::layOut() {
  auto* head = new FlowLayout;
  head->addWidget(m_title);
  head->addWidget(m_typed);
  auto* inside = new QWidget(m_scroll);
  auto* around = new QVBoxLayout(inside);
  around->addLayout(m_list);
  around->addStretch(1);
  m_scroll->setWidget(inside);
  auto* bottom = new FlowLayout;
  auto* when = new TextLabel(tr("Done at (14:05, or 2031-03-02 14:05)"), TextRole::Body, this);
  when->setWordWrap(false);
  bottom->addWidget(when);
  bottom->addWidget(m_when);
  bottom->addWidget(m_copy);
  auto* column = new QVBoxLayout(this);
  column->addLayout(head);
  column->addWidget(m_empty);
  column->addWidget(m_plan, 0, Qt::AlignLeft);
  column->addWidget(m_scroll, 1);
  column->addLayout(bottom);
}

void QuickPage::link() {
  connect(m_plan, &QPushButton::clicked, this, &QuickPage::startPlan);
  connect(m_copy, &QPushButton::clicked, this, &QuickPage::copyIn);
  connect(m_when, &QLineEdit::textEdited, this, [this] {
    if (!m_keep->isActive()) m_keep->start();
  });
  // Said with its day, or it would mean another day tomorrow.
  connect(m_when, &QLineEdit::editingFinished, this,
          [this] { m_when->setText(dated(m_when->text())); });
  connect(m_keep, &QTimer::timeout, this, &QuickPage::keepDraft);
  connect(&session(), &ShopSession::told, this, [this](const QString& sentence) {
    if (m_copying) m_heard += sentence;
  });
  connect(&session(), &ShopSession::changed, this, [this] {
    if (isVisible() && !m_copying) rebuild();
  });
}

void QuickPage::begin(const Goal& goal) {
  if (!goal.job) return;
  m_wentIn.clear();
  m_stop.reset();
  show(*goal.job);
  focusFirst();
}

void QuickPage::show(model::JobId job) {
  if (m_job != job) {
    m_job = job;
    m_folds.clear();
    readDraft();
  }
  rebuild();
}

void QuickPage::hideEvent(QHideEvent* event) {
  if (m_keep->isActive()) keepDraft();
  Page::hideEvent(event);
}

std::vector<CardGroup> QuickPage::groups() const {
  const auto job = session().job(m_job);
  const auto shop = session().shop();
  if (!job || !shop) return {};
  return cardGroups(**job, **shop, session().workshop().clock().now());
}

void QuickPage::rebuild() {
  const QWidget* focus = focusWidget();
  const QString focused = focus == nullptr ? QString() : focus->objectName();
  clearLayout(*m_list);
  m_rows.clear();
  m_title->setText(tr("Copy in the card of job %1").arg(m_job.value));
  const auto job = session().job(m_job);
  const bool plan = job && !(*job)->runs.empty();
  const bool closed = job && (*job)->closed.has_value();
  bool openOne = false;
  bool dueOne = false;
  for (const CardGroup& group : groups()) {
    const bool first = !dueOne && group.due;
    dueOne = dueOne || first;
    openOne = openOne || !group.rows.empty();
    const auto byHand = m_folds.find(group.key);
    addGroup(group, byHand != m_folds.end() ? byHand->second : first);
  }
  m_empty->say(closed   ? tr("This job is closed; nothing is copied into it any more.")
               : !plan  ? tr("This job has no plan yet. The work card of a job without a plan has "
                              "the steps of the usual one: start it, then copy the card in.")
               : dueOne ? QString()
                        : tr("Every step that must be done is done."));
  m_plan->setVisible(job && !plan && !closed);
  m_copy->setEnabled(!session().viewOnly() && openOne);
  tabAsLaidOut(*this);
  sayWhatIsTyped();
  if (auto* again = findChild<QWidget*>(focused); again != nullptr && !focused.isEmpty()) {
    again->setFocus();
  }
}

void QuickPage::addGroup(const CardGroup& group, bool open) {
  const auto went = m_wentIn.find(group.key);
  const bool anyWent = went != m_wentIn.end();
  if (group.rows.empty() && !anyWent) return;
  auto* head = new QPushButton(tr("%1 %2 – open: %3")
                                   .arg(open ? QStringLiteral("▾") : QStringLiteral("▸"))
                                   .arg(group.title)
                                   .arg(group.rows.size()),
                               m_scroll->widget());
  head->setObjectName(QString::fromStdString("group:" + group.key));
  head->setAccessibleName(open ? tr("Fold %1").arg(group.title) : tr("Open %1").arg(group.title));
  head->setAutoDefault(false);
  m_list->addWidget(head, 0, Qt::AlignLeft);
  connect(head, &QPushButton::clicked, this, [this, key = group.key, open] {
    m_folds[key] = !open;
    rebuild();
  });
  if (anyWent) {
    for (const QString& line : went->second) {
      m_list->addWidget(new TextLabel(line, TextRole::Quiet, m_scroll->widget()));
    }
  }
  if (!open) return;
  std::string above;
  for (const CardRow& one : group.rows) {
    const CardRow row = withLastChoices(one);
    const std::string step = row.key.substr(0, row.key.rfind('/'));
    addRow(row, above);
    above = step;
  }
}

void QuickPage::addRow(const CardRow& row, const std::string& stepAbove) {
  const bool sameStep = row.key.substr(0, row.key.rfind('/')) == stepAbove;
  auto* view = new CardRowView(
      row, m_values[row.key],
      sameStep ? CardRowView::Head::OfStepAbove : CardRowView::Head::WithTitle, m_scroll->widget());
  m_list->addWidget(view);
  m_rows[row.key] = view;
  if (m_stop && m_stop->first == row.key) view->mark(m_stop->second);
  connect(view, &CardRowView::edited, this,
          [this, row](const QString& field, const QString& value) { edit(row, field, value); });
}

void QuickPage::sayWhatIsTyped() {
  int filled = 0;
  for (const auto& [key, values] : m_values) filled += isFilled(values) ? 1 : 0;
  m_typed->setText(filled == 0 ? tr("nothing waits to be copied in")
                               : tr("rows filled in and not copied yet: %1").arg(filled));
}

void QuickPage::focusFirst() {
  for (const CardGroup& group : groups()) {
    for (const CardRow& row : group.rows) {
      const auto view = m_rows.find(row.key);
      if (view == m_rows.end()) continue;
      goTo(*view->second);
      return;
    }
  }
  QWidget* other = m_plan->isHidden() ? static_cast<QWidget*>(m_when) : m_plan;
  other->setFocus();
}

void QuickPage::goTo(CardRowView& row) {
  row.firstField()->setFocus();
  bringIntoView(*m_scroll, row);
}

void QuickPage::startPlan() {
  workshop::StartPlan plan;
  plan.plan = report::kPlanOfAJobWithoutRuns;
  if (session().perform(plan, {m_job, {}, {}, {}, {}})) focusFirst();
}

void QuickPage::edit(const CardRow& row, const QString& field, const QString& value) {
  const bool isTime = field == QLatin1String("began");
  m_values[row.key][field.toStdString()] = (isTime ? dated(value) : value).toStdString();
  if (!m_keep->isActive()) m_keep->start();
  sayWhatIsTyped();
  for (const CardField& chosen : row.fields) {
    if (chosen.name != field.toStdString() || !staysInHand(chosen) || value.isEmpty()) continue;
    if (m_lastChoices[choiceKey(chosen)] == value.toStdString()) continue;
    m_lastChoices[choiceKey(chosen)] = value.toStdString();
    // Later: the field that says so is one of those made anew.
    QMetaObject::invokeMethod(this, &QuickPage::rebuild, Qt::QueuedConnection);
  }
}

CardRow QuickPage::withLastChoices(CardRow row) const {
  for (CardField& field : row.fields) {
    if (!staysInHand(field) || !field.preset.empty()) continue;
    const auto last = m_lastChoices.find(choiceKey(field));
    if (last != m_lastChoices.end()) field.preset = last->second;
  }
  return row;
}

std::optional<CardRow> QuickPage::nextFilled() const {
  for (const CardGroup& group : groups()) {
    for (const CardRow& row : group.rows) {
      const auto values = m_values.find(row.key);
      if (values != m_values.end() && isFilled(values->second)) return withLastChoices(row);
    }
  }
  return std::nullopt;
}

void QuickPage::copyIn() {
  const auto doneAt = doneAtOf(m_when->text(), session().workshop().clock().now());
  if (!doneAt) {
    emit failed(phrasing::sentence(doneAt.error()));
    m_when->setFocus();
    return;
  }
  const QScopedValueRollback copying(m_copying, true);
  m_stop.reset();
  int count = 0;
  while (const auto row = nextFilled()) {
    if (!send(*row, *doneAt)) break;
    ++count;
  }
  keepDraft();
  rebuild();
  if (!m_stop) {
    emit said(tr("Rows copied in: %1.").arg(count));
    focusFirst();
    return;
  }
  emit failed(tr("Rows copied in: %1. Stopped at %2").arg(count).arg(m_stop->second));
  const auto view = m_rows.find(m_stop->first);
  if (view == m_rows.end()) return;
  goTo(*view->second);
}

bool QuickPage::send(const CardRow& row, const std::optional<std::string>& doneAt) {
  const auto job = session().job(m_job);
  if (!job) return false;
  const auto commands =
      commandsOf(row, m_values[row.key], **job, doneAt, session().workshop().clock().now());
  m_heard.clear();
  if (!commands) {
    stopAt(row, phrasing::sentence(commands.error()));
    return false;
  }
  for (const CardCommand& command : *commands) {
    const auto sent = session().perform(command.action, command.where);
    if (sent) continue;
    stopAt(row, phrasing::sentence(sent.error()));
    return false;
  }
  m_values.erase(row.key);
  const bool asked = row.kind == CardKind::Statement || row.kind == CardKind::Answer ||
                     row.kind == CardKind::Torque || row.kind == CardKind::Part;
  const QString what = asked ? row.title + QStringLiteral(": ") + row.detail : row.title;
  m_wentIn[row.key.substr(0, row.key.find('/'))] +=
      tr("%1 – in the book. %2").arg(what, m_heard.join(QLatin1Char(' '))).trimmed();
  return true;
}

void QuickPage::stopAt(const CardRow& row, const QString& sentence) {
  m_stop = {row.key, tr("“%1”: %2").arg(row.title, sentence)};
  m_folds[row.key.substr(0, row.key.find('/'))] = true;
}

QString QuickPage::dated(const QString& time) const {
  return withItsDay(time, session().workshop().clock().now());
}

QString QuickPage::draftPlace() const {
  return QStringLiteral("job/%1/card").arg(m_job.value);
}

void QuickPage::readDraft() {
  m_values.clear();
  const auto kept = QJsonDocument::fromJson(session().draft(draftPlace()).toUtf8()).object();
  m_when->setText(kept.value(QStringLiteral("when")).toString());
  const QJsonObject rows = kept.value(QStringLiteral("rows")).toObject();
  for (auto row = rows.begin(); row != rows.end(); ++row) {
    const QJsonObject fields = row.value().toObject();
    for (auto field = fields.begin(); field != fields.end(); ++field) {
      m_values[row.key().toStdString()][field.key().toStdString()] =
          field.value().toString().toStdString();
    }
  }
}

void QuickPage::keepDraft() {
  m_keep->stop();
  QJsonObject rows;
  for (const auto& [key, values] : m_values) {
    if (!isFilled(values)) continue;
    QJsonObject fields;
    for (const auto& [name, value] : values) {
      fields.insert(QString::fromStdString(name), QString::fromStdString(value));
    }
    rows.insert(QString::fromStdString(key), fields);
  }
  const QString when = dated(m_when->text());
  const QJsonObject kept{{QStringLiteral("when"), when}, {QStringLiteral("rows"), rows}};
  const bool nothing = rows.isEmpty() && when.isEmpty();
  session().keepDraft(
      draftPlace(),
      nothing ? QString() : QString::fromUtf8(QJsonDocument(kept).toJson(QJsonDocument::Compact)));
}

}  // namespace sw::ui
