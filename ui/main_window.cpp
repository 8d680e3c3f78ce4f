// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window.h"

#include <QApplication>
#include <QComboBox>
#include <QFileInfo>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QShortcut>
#include <QStackedWidget>
#include <QStatusBar>
#include <QVBoxLayout>
#include <utility>

#include "ui/common/bring_into_view.h"
#include "ui/common/choice_row.h"
#include "ui/common/flow_layout.h"
#include "ui/common/message_bar.h"
#include "ui/common/page.h"
#include "ui/common/page_parts.h"
#include "ui/common/text_label.h"
#include "ui/common/theme.h"
#include "ui/help/help_page.h"
#include "ui/pages.h"
#include "ui/search/search_box.h"

namespace sw::ui {

namespace {

constexpr std::pair<ActionId, PageId> kJobPages[] = {
    {ActionId::Vehicle, PageId::Vehicle}, {ActionId::Complaint, PageId::Complaint},
    {ActionId::Causes, PageId::Causes},   {ActionId::Kit, PageId::Kit},
    {ActionId::Work, PageId::Work},       {ActionId::Quick, PageId::Quick},
    {ActionId::Sheet, PageId::Sheet},     {ActionId::Finish, PageId::Finish}};

/// Buttons that a job's bar has no need of, in the order they make room.
constexpr ActionId kMayWait[] = {ActionId::Look, ActionId::Instruments, ActionId::Bench};

/// What a hold may ask of the vehicle.
constexpr char kAxleLoad[] = "front_axle_load";

QString actionText(const char* text) {
  return QCoreApplication::translate("Actions", text);
}

/// What it does, and the key that does it.
QString tipOf(const ActionRow& row) {
  const QKeySequence key(QString::fromLatin1(row.shortcut));
  return QStringLiteral("%1 (%2)").arg(actionText(row.tip), key.toString(QKeySequence::NativeText));
}

}  // namespace

MainWindow::MainWindow(ShopSession& session, QWidget* parent)
    : QMainWindow(parent),
      m_session(session),
      m_stack(new QStackedWidget(this)),
      m_messages(new MessageBar(this)),
      m_bar(new QWidget(this)),
      m_jobBar(new QWidget(this)),
      m_jobName(new TextLabel(TextRole::Strong, m_jobBar)),
      m_people(comboBox("people", tr("Who is at work"), m_bar)),
      m_pagesBox(comboBox("pagesBox", tr("Page of the job"), m_jobBar)),
      m_search(new SearchBox(session, this, m_bar)),
      m_saved(new QLabel(this)) {
  setObjectName(QStringLiteral("mainWindow"));
  setWindowTitle(tr("Swivelwright – %1").arg(QFileInfo(session.bookPath()).fileName()));
  buildBar();
  buildJobBar();
  auto* middle = new QWidget(this);
  auto* column = new QVBoxLayout(middle);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(m_bar);
  column->addWidget(m_jobBar);
  column->addWidget(m_stack, 1);
  column->addWidget(m_messages);  // below: nothing above it moves when it comes and goes
  setCentralWidget(middle);
  m_saved->setObjectName(QStringLiteral("savedAt"));
  m_saved->setText(session.viewOnly() ? tr("Open for reading only.")
                                      : tr("Every entry is saved as it is made."));
  statusBar()->addPermanentWidget(m_saved);

  connect(&session, &ShopSession::refused, this,
          [this](const QString& sentence, const QString& field) {
            complain(sentence);
            const bool ofTheVehicle = field == QLatin1String(kAxleLoad);
            if (ofTheVehicle && m_here.job && m_here.page != PageId::Vehicle) {
              m_messages->offer(tr("Enter it now"));
            }
            if (field == QLatin1String("by") && m_session.person().empty()) askWhoIsAtWork();
          });
  connect(m_messages, &MessageBar::offerTaken, this, [this] {
    go({PageId::Vehicle, m_here.job, {}, {}, {}, {}, kAxleLoad});
  });
  connect(&session, &ShopSession::told, this, [this](const QString& sentence) {
    m_messages->say(sentence, MessageBar::Tone::Answer);
    m_justTold = true;
  });
  connect(&session, &ShopSession::saved, this, [this](const QString& at) {
    m_saved->setText(tr("Saved %1").arg(at));
    if (!std::exchange(m_justTold, false)) m_messages->dropAnswer();
  });
  connect(&session, &ShopSession::changed, this, [this] {
    listPeople();
    refreshJobBar();
  });
  // Seen where it arrives: an Enter in a field goes on to nothing else.
  qApp->installEventFilter(this);
  listPeople();
  fitBars();
  showStart();
}

QPushButton* MainWindow::button(ActionId id, QWidget* parent) {
  const ActionRow& row = actionRow(id);
  auto* made = new QPushButton(actionText(row.text), parent);
  made->setObjectName(QString::fromLatin1(row.name));
  made->setToolTip(tipOf(row));
  made->setAccessibleName(actionText(row.text));
  made->setAccessibleDescription(actionText(row.tip));
  m_buttons[id] = made;
  return made;
}

void MainWindow::buildBar() {
  m_bar->setObjectName(QStringLiteral("topBar"));
  auto* row = new FlowLayout(m_bar);
  for (const ActionId id :
       {ActionId::Start, ActionId::NewJob, ActionId::Bench, ActionId::Instruments, ActionId::Undo,
        ActionId::Mode, ActionId::Look}) {
    auto* made = button(id, m_bar);
    connect(made, &QPushButton::clicked, this, [this, id] { act(id); });
    row->addWidget(made);
  }
  m_people->setToolTip(tr("Who is at work"));
  m_people->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  row->addWidget(m_people);
  row->addWidget(m_search);
  connect(m_search, &SearchBox::goWanted, this, &MainWindow::go);
  connect(m_people, &QComboBox::activated, this, [this](int index) {
    m_session.setPerson(m_people->itemData(index).toString().toStdString());
    if (m_askedFrom == nullptr) return;
    m_messages->dropAnswer();
    m_askedFrom->setFocus();
    m_askedFrom = nullptr;
  });
  for (const ActionRow& action : actionTable()) {
    auto* key = new QShortcut(QKeySequence(QString::fromLatin1(action.shortcut)), this);
    connect(key, &QShortcut::activated, this, [this, id = action.id] { act(id); });
  }
}

void MainWindow::buildJobBar() {
  m_jobBar->setObjectName(QStringLiteral("jobBar"));
  m_jobName->setObjectName(QStringLiteral("jobName"));
  m_jobName->setWordWrap(false);
  auto* row = new FlowLayout(m_jobBar);
  row->addWidget(m_jobName);
  for (const auto& [action, page] : kJobPages) {
    auto* made = button(action, m_jobBar);
    made->setCheckable(true);
    // Not "clicked": assistive tools switch a button without a click.
    connect(made, &QPushButton::toggled, this, [this, id = action] { act(id); });
    row->addWidget(made);
  }
  listPages();
  row->addWidget(m_pagesBox);
  m_jobBar->hide();
}

void MainWindow::act(ActionId id) {
  for (const auto& [action, page] : kJobPages) {
    if (action != id) continue;
    if (m_here.job) go({page, m_here.job, {}, {}, {}});
    refreshJobBar();
    return;
  }
  switch (id) {
    case ActionId::Start:
      return showStart();
    case ActionId::NewJob:
      return go({PageId::NewJob, {}, {}, {}, {}});
    case ActionId::Instruments:
      return go({PageId::Instruments, m_here.job, {}, {}, {}});
    case ActionId::Bench:
      return go({PageId::Bench, m_here.job, {}, {}, {}});
    case ActionId::Help:
      return help();
    case ActionId::Find:
      return m_search->start();
    case ActionId::Undo:
      if (m_here.job) m_session.undo(*m_here.job);
      return;
    case ActionId::Mode:
      return switchMode();
    case ActionId::Look:
      return switchLook();
    default:
      return;
  }
}

void MainWindow::help() {
  if (m_here.page == PageId::Help) return;
  pageAs<HelpPage>(PageId::Help).about(m_here);
  go({PageId::Help, m_here.job, {}, {}, {}});
}

void MainWindow::switchMode() {
  Theme theme = currentTheme();
  theme.mode = theme.mode == Mode::Desk ? Mode::Workshop : Mode::Desk;
  applyTheme(theme);
  m_session.keepLook(wordsOf(theme));
  listPeople();  // measured anew
  fitBars();
  // What one was typing into stays in sight at the other size.
  QWidget* field = focusWidget();
  for (QWidget* one = field; one != nullptr; one = one->parentWidget()) {
    if (auto* scroll = qobject_cast<QScrollArea*>(one)) return bringIntoView(*scroll, *field);
  }
}

namespace {

/// The width of a bar on one line.
int widthOf(const QWidget& bar) {
  const QMargins margins = bar.layout()->contentsMargins();
  return bar.layout()->sizeHint().width() + margins.left() + margins.right();
}

}  // namespace

/// A job needs the height: its bars keep to one line each, and what does not fit waits in a box.
void MainWindow::fitBars() {
  const int half = sizesOf(currentTheme().mode).gap / 2;
  for (QWidget* bar : {m_bar, m_jobBar}) bar->layout()->setContentsMargins(12, half, 12, half);
  const bool ofAJob = m_here.job.has_value();
  for (const ActionId id : kMayWait) m_buttons[id]->show();
  for (const ActionId id : kMayWait) {
    if (ofAJob && widthOf(*m_bar) > width()) m_buttons[id]->hide();
  }
  m_pagesBox->hide();
  for (const auto& [action, page] : kJobPages) m_buttons[action]->show();
  const bool tight = ofAJob && widthOf(*m_jobBar) > width();
  for (const auto& [action, page] : kJobPages) m_buttons[action]->setVisible(!tight);
  m_pagesBox->setVisible(tight);
}

void MainWindow::listPages() {
  for (const auto& [action, page] : kJobPages) {
    m_pagesBox->addItem(actionText(actionRow(action).text), static_cast<int>(action));
  }
  for (const ActionId id : kMayWait) {
    m_pagesBox->addItem(actionText(actionRow(id).text), static_cast<int>(id));
  }
  connect(m_pagesBox, &QComboBox::activated, this,
          [this](int index) { act(static_cast<ActionId>(m_pagesBox->itemData(index).toInt())); });
}

void MainWindow::resizeEvent(QResizeEvent* event) {
  QMainWindow::resizeEvent(event);
  fitBars();
}

void MainWindow::switchLook() {
  Theme theme = currentTheme();
  theme.look = theme.look == Look::Light  ? Look::Dark
               : theme.look == Look::Dark ? Look::HighContrast
                                          : Look::Light;
  applyTheme(theme);
  m_session.keepLook(wordsOf(theme));
}

void MainWindow::listPeople() {
  const QSignalBlocker quiet(m_people);
  m_people->clear();
  const auto shop = m_session.workshop().shop();
  if (!shop) return;
  const bool somebody = !(*shop)->people().empty();
  m_people->setEnabled(somebody);
  if (m_session.person().empty()) {
    m_people->addItem(somebody ? tr("Who is at work?") : tr("nobody yet"), QString());
  }
  for (const auto* person : (*shop)->people()) {
    if (!person->fact.active) continue;
    const QString initials = QString::fromStdString(person->fact.initials);
    m_people->addItem(QString::fromStdString(person->fact.name), initials);
    if (person->fact.initials == m_session.person())
      m_people->setCurrentIndex(m_people->count() - 1);
  }
}

void MainWindow::askWhoIsAtWork() {
  complain(tr("Nothing was recorded yet: choose at the top who is at work, then do it again."));
  m_askedFrom = focusWidget();
  // Later: the page itself puts the keyboard back on its field first.
  QMetaObject::invokeMethod(m_people, qOverload<>(&QWidget::setFocus), Qt::QueuedConnection);
}

void MainWindow::refreshJobBar() {
  const bool ofAJob = m_here.job.has_value();
  m_jobBar->setVisible(ofAJob);
  for (const auto& [action, page] : kJobPages) {
    const QSignalBlocker quiet(m_buttons[action]);
    m_buttons[action]->setChecked(page == m_here.page);
    if (page != m_here.page) continue;
    m_pagesBox->setCurrentIndex(m_pagesBox->findData(static_cast<int>(action)));
  }
  const QString undo = ofAJob ? m_session.undoText(*m_here.job) : QString();
  m_buttons[ActionId::Undo]->setEnabled(!undo.isEmpty());
  m_buttons[ActionId::Undo]->setToolTip(undo.isEmpty() ? tipOf(actionRow(ActionId::Undo))
                                                       : tr("Take back: %1").arg(undo));
  if (!ofAJob) return;
  const auto job = m_session.job(*m_here.job);
  if (!job) return;
  const QString plate = QString::fromStdString((*job)->vehicle.fact.registration);
  m_jobName->setText(tr("%1, job %2").arg(plate).arg(m_here.job->value));
  fitBars();
}

Page& MainWindow::page(PageId id) {
  auto found = m_pages.find(id);
  if (found != m_pages.end()) return *found->second;
  Page* made = makePage(id, m_session, this);
  m_stack->addWidget(made);
  m_pages.emplace(id, made);
  connect(made, &Page::goWanted, this, &MainWindow::go);
  connect(made, &Page::said, this, &MainWindow::say);
  connect(made, &Page::failed, this, &MainWindow::complain);
  return *made;
}

void MainWindow::go(const Goal& goal) {
  Page& next = page(goal.page);
  m_here = goal;
  m_stack->setCurrentWidget(&next);
  refreshJobBar();
  // Offered again at the next start.
  if (goal.job) {
    const bool named = goal.page == PageId::Work && !goal.step.empty();
    m_session.keepPlace(*goal.job, named ? goal.step : m_session.lastStep(*goal.job));
  }
  next.begin(goal);
}

bool MainWindow::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride) {
    // A field that has nothing of its own to undo leaves the key to the job.
    const auto* field = qobject_cast<QLineEdit*>(watched);
    const bool isUndo = static_cast<QKeyEvent*>(event)->matches(QKeySequence::Undo);
    if (isUndo && field != nullptr && field->window() == this && !field->isUndoAvailable()) {
      event->ignore();
      return true;
    }
  }
  if (event->type() != QEvent::KeyPress) return QMainWindow::eventFilter(watched, event);
  const auto* key = static_cast<QKeyEvent*>(event);
  const bool isEnter = key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter;
  auto* button = isEnter ? qobject_cast<QAbstractButton*>(watched) : nullptr;
  // What records at once what was seen is left to the space bar: an Enter pressed twice after a
  // line of readings answers no question. A key held down presses nothing.
  if (button == nullptr || button->window() != this || button->property(kSpaceOnly).toBool()) {
    return QMainWindow::eventFilter(watched, event);
  }
  if (!key->isAutoRepeat()) button->click();
  return true;
}

void MainWindow::complain(const QString& sentence) {
  m_messages->say(sentence, MessageBar::Tone::Refusal);
}

void MainWindow::say(const QString& sentence) {
  m_messages->say(sentence, MessageBar::Tone::Note);
}

QString MainWindow::message() const {
  return m_messages->text();
}

}  // namespace sw::ui
