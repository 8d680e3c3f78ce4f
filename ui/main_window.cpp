// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window.h"

#include <QComboBox>
#include <QFileInfo>
#include <QLabel>
#include <QStackedWidget>
#include <QStatusBar>
#include <QToolBar>
#include <QVBoxLayout>

#include "ui/common/message_bar.h"
#include "ui/complaint/new_job_page.h"
#include "ui/sheet/sheet_page.h"
#include "ui/start/start_page.h"

namespace sw::ui {

MainWindow::MainWindow(ShopSession& session, QWidget* parent)
    : QMainWindow(parent),
      m_session(session),
      m_pages(new QStackedWidget(this)),
      m_messages(new MessageBar(this)),
      m_start(new StartPage(session, this)),
      m_newJob(new NewJobPage(session, this)),
      m_sheet(new SheetPage(session, this)),
      m_people(new QComboBox(this)),
      m_saved(new QLabel(this)) {
  setObjectName(QStringLiteral("mainWindow"));
  setWindowTitle(tr("Swivelwright – %1").arg(QFileInfo(session.bookPath()).fileName()));
  m_pages->addWidget(m_start);
  m_pages->addWidget(m_newJob);
  m_pages->addWidget(m_sheet);
  auto* middle = new QWidget(this);
  auto* column = new QVBoxLayout(middle);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(m_messages);
  column->addWidget(m_pages, 1);
  setCentralWidget(middle);
  buildBar();
  m_saved->setObjectName(QStringLiteral("savedAt"));
  m_saved->setText(session.viewOnly() ? tr("Open for reading only.")
                                      : tr("Every entry is saved as it is made."));
  statusBar()->addPermanentWidget(m_saved);

  connect(m_start, &StartPage::newJobWanted, this, &MainWindow::showNewJob);
  connect(m_start, &StartPage::jobWanted, this, &MainWindow::showSheet);
  connect(m_newJob, &NewJobPage::cancelled, this, &MainWindow::showStart);
  connect(m_newJob, &NewJobPage::opened, this, &MainWindow::showStart);
  connect(m_sheet, &SheetPage::backWanted, this, &MainWindow::showStart);
  connect(m_sheet, &SheetPage::savedTo, this, [this](const QString& path) {
    m_messages->say(tr("Saved as %1").arg(path), MessageBar::Tone::Note);
  });
  connect(m_sheet, &SheetPage::failed, this, [this](const QString& sentence) {
    m_messages->say(sentence, MessageBar::Tone::Refusal);
  });
  connect(&session, &ShopSession::refused, this, [this](const QString& sentence) {
    m_messages->say(sentence, MessageBar::Tone::Refusal);
  });
  connect(&session, &ShopSession::told, this,
          [this](const QString& sentence) { m_messages->say(sentence, MessageBar::Tone::Note); });
  connect(&session, &ShopSession::saved, this,
          [this](const QString& at) { m_saved->setText(tr("Saved %1").arg(at)); });
  connect(&session, &ShopSession::changed, this, &MainWindow::listPeople);
  listPeople();
  showStart();
}

void MainWindow::buildBar() {
  auto* bar = new QToolBar(tr("Who is at work"), this);
  bar->setObjectName(QStringLiteral("topBar"));
  bar->setMovable(false);
  auto* space = new QWidget(bar);
  space->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
  bar->addWidget(space);
  auto* label = new QLabel(tr("At &work:"), bar);
  label->setBuddy(m_people);
  bar->addWidget(label);
  m_people->setObjectName(QStringLiteral("people"));
  m_people->setAccessibleName(tr("Who is at work"));
  m_people->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  bar->addWidget(m_people);
  addToolBar(Qt::TopToolBarArea, bar);
  connect(m_people, &QComboBox::activated, this, [this](int index) {
    m_session.setPerson(m_people->itemData(index).toString().toStdString());
  });
}

void MainWindow::listPeople() {
  const QSignalBlocker quiet(m_people);
  m_people->clear();
  const auto shop = m_session.workshop().shop();
  if (!shop) return;
  const bool somebody = !(*shop)->people().empty();
  m_people->setEnabled(somebody);
  if (m_session.person().empty()) {
    m_people->addItem(somebody ? tr("choose") : tr("nobody yet"), QString());
  }
  for (const auto* person : (*shop)->people()) {
    if (!person->fact.active) continue;
    const QString initials = QString::fromStdString(person->fact.initials);
    m_people->addItem(QString::fromStdString(person->fact.name), initials);
    if (person->fact.initials == m_session.person())
      m_people->setCurrentIndex(m_people->count() - 1);
  }
}

void MainWindow::showStart() {
  m_pages->setCurrentWidget(m_start);
  m_start->begin();
}

void MainWindow::showNewJob() {
  m_pages->setCurrentWidget(m_newJob);
  m_newJob->begin();
}

void MainWindow::showSheet(model::JobId job) {
  m_sheet->showJob(job, report::JobPaper::WorkshopCopy);
  m_pages->setCurrentWidget(m_sheet);
}

void MainWindow::say(const QString& sentence) {
  m_messages->say(sentence, MessageBar::Tone::Note);
}

QString MainWindow::message() const {
  return m_messages->text();
}

}  // namespace sw::ui
