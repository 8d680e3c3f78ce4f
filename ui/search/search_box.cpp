// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/search/search_box.h"

#include <QApplication>
#include <QKeyEvent>
#include <QListWidget>
#include <QTimer>
#include <algorithm>
#include <utility>

#include "phrasing/error_sentence.h"
#include "ui/common/theme.h"

namespace sw::ui {

namespace {

constexpr int kPause = 120;            // ms without a key before it looks
constexpr std::size_t kMostRows = 40;  // more than anybody reads; type another word
constexpr int kMostWidth = 760;        // px of the list
constexpr double kMostOfHeight = 0.6;  // of the window

QString lineOf(const report::SearchRow& row) {
  const QString plate = QString::fromStdString(row.registration);
  const QString what = QString::fromStdString(row.what);
  const QString text = QString::fromStdString(row.text).simplified();
  if (!row.job) return SearchBox::tr("%1 – %2: %3").arg(plate, what, text);
  return SearchBox::tr("%1, job %2 – %3: %4").arg(plate).arg(row.job->value).arg(what, text);
}

Goal goalOf(const report::SearchRow& row) {
  if (row.job) {
    return {PageId::Work, row.job, row.vehicle, {}, {}};
  }
  return {PageId::Vehicle, {}, row.vehicle, {}, {}};
}

}  // namespace

SearchBox::SearchBox(ShopSession& session, QWidget* host, QWidget* parent)
    : QLineEdit(parent),
      m_session(session),
      m_host(host),
      m_list(new QListWidget(host)),
      m_wait(new QTimer(this)) {
  setObjectName(QStringLiteral("find"));
  setAccessibleName(tr("Find: plate, VIN, owner, owner's words, part or note"));
  setToolTip(accessibleName());
  setPlaceholderText(tr("Find"));
  m_list->setObjectName(QStringLiteral("found"));
  m_list->setAccessibleName(tr("Found"));
  m_list->setWordWrap(true);
  m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  m_list->setFrameStyle(QFrame::Box | QFrame::Plain);  // seen over the page in every look
  m_list->setLineWidth(2);
  m_list->hide();
  m_list->installEventFilter(this);
  m_host->installEventFilter(this);
  m_wait->setSingleShot(true);
  m_wait->setInterval(kPause);
  connect(this, &QLineEdit::textEdited, m_wait, qOverload<>(&QTimer::start));
  connect(m_wait, &QTimer::timeout, this, &SearchBox::find);
  connect(m_list, &QListWidget::itemClicked, this,
          [this](QListWidgetItem* item) { open(m_list->row(item)); });
  connect(qApp, &QApplication::focusChanged, this, [this](const QWidget*, const QWidget* now) {
    if (now != nullptr && now != this && now != m_list) close();
  });
}

QSize SearchBox::sizeHint() const {
  const Sizes sizes = sizesOf(currentTheme().mode);
  return {qMax(15 * sizes.textPixels, 3 * sizes.target), QLineEdit::sizeHint().height()};
}

void SearchBox::start() {
  setFocus();
  selectAll();
}

void SearchBox::find() {
  m_wait->stop();
  m_rows.clear();
  if (text().trimmed().isEmpty()) return close();
  auto rows = report::searchRowsOf(m_session.workshop(), text().toStdString(), kMostRows);
  m_list->clear();
  if (rows) {
    // The owner's words are often the complaint's, too: said once.
    const auto same = [](const report::SearchRow& a, const report::SearchRow& b) {
      return a.job && a.job == b.job && a.text == b.text;
    };
    rows->erase(std::unique(rows->begin(), rows->end(), same), rows->end());
    m_rows = std::move(*rows);
    for (const report::SearchRow& row : m_rows) m_list->addItem(lineOf(row));
  }
  if (m_rows.empty()) {
    auto* none = new QListWidgetItem(
        rows ? tr("Nothing in the book has all these words.") : phrasing::sentence(rows.error()),
        m_list);
    none->setFlags(Qt::NoItemFlags);
  }
  setAccessibleDescription(tr("Found: %1").arg(m_rows.size()));
  showRows();
}

void SearchBox::showRows() {
  m_list->setCurrentRow(-1);
  m_list->show();
  m_list->raise();
  place();
}

void SearchBox::place() {
  const int gap = sizesOf(currentTheme().mode).gap;
  const int width = qMin(kMostWidth, m_host->width() - 2 * gap);
  m_list->setFixedWidth(width);
  int height = 2 * m_list->frameWidth();
  for (int row = 0; row < m_list->count(); ++row) height += m_list->sizeHintForRow(row);
  const QPoint below = mapTo(m_host, QPoint(0, this->height()));
  const int room = static_cast<int>(m_host->height() * kMostOfHeight);
  m_list->setFixedHeight(qBound(sizesOf(currentTheme().mode).target, height, room));
  m_list->move(qMin(below.x(), m_host->width() - gap - width), below.y() + 2);
}

void SearchBox::close() {
  m_wait->stop();
  m_list->hide();
}

void SearchBox::open(int row) {
  if (row < 0 || row >= static_cast<int>(m_rows.size())) return;
  const Goal goal = goalOf(m_rows[static_cast<std::size_t>(row)]);
  close();
  emit goWanted(goal);
}

void SearchBox::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Down:
      if (m_list->isHidden()) find();
      if (!m_rows.empty()) {
        m_list->setFocus();
        m_list->setCurrentRow(0);
      }
      return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
      if (m_list->isHidden() || m_wait->isActive()) find();
      // One hit is the one that was meant; of several the list asks which.
      if (m_rows.size() == 1) return open(0);
      if (!m_rows.empty()) {
        m_list->setFocus();
        m_list->setCurrentRow(0);
      }
      return;
    case Qt::Key_Escape:
      if (m_list->isHidden()) clear();
      return close();
    default:
      QLineEdit::keyPressEvent(event);
  }
}

bool SearchBox::keyInList(int key) {
  switch (key) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
      open(m_list->currentRow());
      return true;
    case Qt::Key_Escape:
      setFocus();
      close();
      return true;
    case Qt::Key_Up:
      if (m_list->currentRow() > 0) return false;
      m_list->setCurrentRow(-1);
      setFocus();
      return true;
    default:
      return false;
  }
}

bool SearchBox::eventFilter(QObject* watched, QEvent* event) {
  if (watched == m_host && event->type() == QEvent::Resize && m_list->isVisible()) place();
  if (watched == m_list && event->type() == QEvent::KeyPress) {
    return keyInList(static_cast<QKeyEvent*>(event)->key());
  }
  return QLineEdit::eventFilter(watched, event);
}

}  // namespace sw::ui
