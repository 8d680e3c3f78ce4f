// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/ledger_view.h"

#include <QPushButton>
#include <QVBoxLayout>

#include "phrasing/names.h"
#include "ui/common/clear_layout.h"
#include "ui/common/flow_layout.h"
#include "ui/common/marks.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"
#include "ui/work/reason_row.h"
#include "ui/work/row_delegate.h"

namespace sw::ui {

namespace {

using model::LedgerState;

QString nameOf(const workshop::LedgerView& item) {
  const QString name = QString::fromStdString(item.name);
  return item.side ? LedgerPanel::tr("%1 (%2)").arg(name, phrasing::sideName(*item.side, {}))
                   : name;
}

QString stateOf(const workshop::LedgerView& item) {
  QString state = phrasing::nameOf(item.state);
  if (item.done && item.count && *item.done < *item.count) {
    state = LedgerPanel::tr("%1, %2 of %3 done").arg(state).arg(*item.done).arg(*item.count);
  }
  if (!item.reason.empty()) state += QStringLiteral(": ") + QString::fromStdString(item.reason);
  return state;
}

Mark markOf(const workshop::LedgerView& item) {
  if (item.clear()) return Mark::Done;
  return item.state == LedgerState::HandTight ? Mark::Undecided : Mark::Ready;
}

/// The states an item can be moved on to by hand.
std::vector<LedgerState> movesOf(const workshop::LedgerView& item) {
  if (item.type == model::LedgerKind::PutOn) {
    return item.clear() ? std::vector{LedgerState::On} : std::vector{LedgerState::TakenOff};
  }
  if (item.clear()) return {LedgerState::Off};
  std::vector<LedgerState> moves;
  if (item.state != LedgerState::HandTight) moves.push_back(LedgerState::HandTight);
  moves.push_back(item.fastened ? LedgerState::Torqued : LedgerState::Back);
  moves.push_back(LedgerState::Replaced);
  moves.push_back(LedgerState::LeftOff);
  return moves;
}

/// "fan cowl" -> "fan_cowl": the key of an item nobody foresaw.
std::string keyOf(const std::string& name) {
  std::string key;
  for (const QChar letter : QString::fromStdString(name).toLower()) {
    if (letter.isLetterOrNumber()) {
      key += QString(letter).toStdString();
    } else if (!key.empty() && key.back() != '_') {
      key += '_';
    }
  }
  return key;
}

}  // namespace

void LedgerModel::present(SharedJob job) {
  beginResetModel();
  m_job = std::move(job);
  m_order.clear();
  for (const bool clear : {false, true}) {
    for (std::size_t i = 0; i < m_job->ledger.size(); ++i) {
      if (m_job->ledger[i].clear() == clear) m_order.push_back(i);
    }
    if (!clear) m_open = m_order.size();
  }
  endResetModel();
}

const workshop::LedgerView* LedgerModel::itemAt(int row) const {
  if (row < 0 || row >= rowCount()) return nullptr;
  return &m_job->ledger[m_order[static_cast<std::size_t>(row)]];
}

int LedgerModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_order.size());
}

QVariant LedgerModel::data(const QModelIndex& index, int role) const {
  const workshop::LedgerView* item = itemAt(index.row());
  if (item == nullptr) return {};
  switch (role) {
    case Qt::DisplayRole:
      return nameOf(*item);
    case RowDelegate::MarkRole:
      return static_cast<int>(markOf(*item));
    case RowDelegate::SubtitleRole:
      return stateOf(*item);
    case Qt::AccessibleTextRole:
      return QString(nameOf(*item) + QStringLiteral(": ") + stateOf(*item));
    default:
      return {};
  }
}

LedgerPanel::LedgerPanel(ShopSession& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_title(new TextLabel(TextRole::Heading, this)),
      m_empty(
          new TextLabel(tr("Nothing came off and nothing was put on yet. Steps fill this list."),
                        TextRole::Quiet, this)),
      m_list(new RowList("ledgerList", tr("What came off and what was put on"), this)),
      m_moves(new QWidget(this)),
      m_moveButtons(new FlowLayout(m_moves)),
      m_add(new WordButton("alsoRemoved", tr("Also removed …"), this)),
      m_reason(new ReasonRow(QStringLiteral("ledgerReason"), this)) {
  setObjectName(QStringLiteral("ledgerPanel"));
  m_list->setModel(&m_model);
  m_title->setWordWrap(true);
  layOut();
  connect(m_list->selectionModel(), &QItemSelectionModel::currentChanged, this,
          &LedgerPanel::chosen);
  connect(m_add, &QPushButton::clicked, this, &LedgerPanel::addItem);
}

void LedgerPanel::layOut() {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(m_title);
  column->addWidget(m_empty);
  column->addWidget(m_list, 1);
  column->addWidget(m_moves);
  column->addWidget(m_add);
  column->addWidget(m_reason);
  column->addStretch(0);
}

void LedgerPanel::present(SharedJob job, std::optional<std::size_t> step) {
  m_job = std::move(job);
  m_step = step;
  m_model.present(m_job);
  const bool some = m_model.rowCount() > 0;
  m_empty->setVisible(!some);
  m_list->setVisible(some);
  m_title->setText(m_model.openItems() == 0 ? tr("Ledger")
                                            : tr("Ledger: %1 open").arg(m_model.openItems()));
  const bool open = !m_job->closed && !m_session.viewOnly();
  m_add->setEnabled(open);
  chosen();
}

Where LedgerPanel::whereOfItem(const workshop::LedgerView& item) const {
  return item.step ? whereOf(*m_job, *item.step) : Where{m_job->job, {}, item.side, {}, {}};
}

void LedgerPanel::chosen() {
  clearLayout(*m_moveButtons);
  const workshop::LedgerView* item = m_model.itemAt(m_list->currentIndex().row());
  const bool open = m_job && !m_job->closed && !m_session.viewOnly();
  m_moves->setVisible(item != nullptr && open);
  if (item == nullptr || !open) return;
  for (const LedgerState state : movesOf(*item)) {
    auto* button = new WordButton(phrasing::nameOf(state), m_moves);
    button->setObjectName(QStringLiteral("ledger_") + QString::fromLatin1(wordOf(state)));
    button->setAccessibleName(nameOf(*item) + QStringLiteral(": ") + button->text());
    connect(button, &QPushButton::clicked, this, [this, state] {
      if (state != LedgerState::LeftOff) return moveItem(state, {});
      m_reason->ask(tr("Why is it left off?"), tr("stands on the sheet"),
                    [this, state](const std::string& reason) {
                      moveItem(state, reason);
                      return true;
                    });
    });
    m_moveButtons->addWidget(button);
    button->show();
  }
}

void LedgerPanel::moveItem(LedgerState state, const std::string& reason) {
  const workshop::LedgerView* item = m_model.itemAt(m_list->currentIndex().row());
  if (item == nullptr) return;
  workshop::MoveLedger move;
  move.item = item->item;
  move.name = item->name;
  move.state = state;
  if (!reason.empty()) move.reason = reason;
  (void)m_session.perform(move, whereOfItem(*item));
}

Where LedgerPanel::whereOfStep() const {
  return m_step ? whereOf(*m_job, *m_step) : Where{m_job->job, {}, {}, {}, {}};
}

void LedgerPanel::addItem() {
  m_reason->ask(tr("What else came off?"), tr("e.g. mudguard bolt, 2"),
                [this](const std::string& name) {
                  workshop::MoveLedger move;
                  move.item = keyOf(name);
                  move.name = name;
                  move.state = LedgerState::Off;
                  const bool photo = m_reason->otherWay();
                  const Where where = whereOfStep();
                  if (!m_session.perform(move, where)) return false;
                  if (photo) addPhoto(name, where);
                  return true;
                });
  m_reason->offer(tr("Record with a photo …"));
}

void LedgerPanel::addPhoto(const std::string& caption, const Where& where) {
  const QString file = choosePicture ? choosePicture() : QString();
  if (file.isEmpty()) return;
  (void)m_session.perform(workshop::AddPhoto{file.toStdString(), caption}, where);
}

}  // namespace sw::ui
