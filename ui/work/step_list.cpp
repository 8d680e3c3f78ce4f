// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/step_list.h"

#include <QEvent>
#include <QTimer>

#include <QCoreApplication>

#include "phrasing/names.h"

namespace sw::ui {

using workshop::StepStatus;

Mark markOf(StepStatus status) {
  switch (status) {
    case StepStatus::Ready:
      return Mark::Ready;
    case StepStatus::Running:
      return Mark::Running;
    case StepStatus::Done:
    case StepStatus::DoneBefore:
      return Mark::Done;
    case StepStatus::NotApplicable:
    case StepStatus::Superseded:
      return Mark::Left;
    case StepStatus::OutOfLimits:
      return Mark::Outside;
    case StepStatus::NotProved:
      return Mark::Undecided;
    case StepStatus::Waits:
      break;
  }
  return Mark::None;
}

QString statusText(StepStatus status) {
  const auto say = [](const char* text) { return QCoreApplication::translate("StepList", text); };
  switch (status) {
    case StepStatus::Ready:
      return say(QT_TRANSLATE_NOOP("StepList", "ready"));
    case StepStatus::Waits:
      return say(QT_TRANSLATE_NOOP("StepList", "waits"));
    case StepStatus::Running:
      return say(QT_TRANSLATE_NOOP("StepList", "time runs"));
    case StepStatus::Done:
      return say(QT_TRANSLATE_NOOP("StepList", "done"));
    case StepStatus::DoneBefore:
      return say(QT_TRANSLATE_NOOP("StepList", "done before recording"));
    case StepStatus::NotApplicable:
      return say(QT_TRANSLATE_NOOP("StepList", "does not apply"));
    case StepStatus::OutOfLimits:
      return say(QT_TRANSLATE_NOOP("StepList", "outside the limit"));
    case StepStatus::NotProved:
      return say(QT_TRANSLATE_NOOP("StepList", "not proved within"));
    case StepStatus::Superseded:
      break;
  }
  return say(QT_TRANSLATE_NOOP("StepList", "a newer round took its place"));
}

void StepListModel::present(SharedJob job, const std::vector<workshop::StepLine>& lines,
                            std::optional<model::Side> only) {
  std::vector<Row> rows;
  std::optional<std::size_t> run;
  for (std::size_t i = 0; i < job->steps.size(); ++i) {
    const workshop::StepView& view = job->steps[i];
    const bool otherSide = only && view.side && view.side != only;
    if (otherSide || lines[i].status == StepStatus::Superseded) continue;
    if (run != view.run) {
      run = view.run;
      const workshop::RunView& of = job->runs[view.run];
      QString title = QString::fromStdString(of.procedure->title);
      if (of.fact.round > 1) title = tr("%1, round %2").arg(title).arg(of.fact.round);
      rows.push_back({std::nullopt, title, {}, {}, Mark::None, true});
    }
    QString side = view.side ? phrasing::sideName(*view.side, {}) : QString();
    const StepStatus status = lines[i].status;
    const bool leaveIt = view.step->optional && status == StepStatus::Ready;
    rows.push_back({i, QString::fromStdString(view.step->title), side,
                    leaveIt ? tr("if you like") : statusText(status), markOf(status),
                    !leaveIt && (status == StepStatus::Done || status == StepStatus::Ready)});
  }
  const bool sameShape = m_job && rows.size() == m_rows.size();
  if (!sameShape) beginResetModel();
  m_job = std::move(job);
  m_rows = std::move(rows);
  if (!sameShape) {
    endResetModel();
  } else if (!m_rows.empty()) {
    emit dataChanged(index(0), index(rowCount() - 1));
  }
}

std::optional<std::size_t> StepListModel::stepAt(const QModelIndex& index) const {
  if (!index.isValid()) return std::nullopt;
  return m_rows.at(static_cast<std::size_t>(index.row())).step;
}

QModelIndex StepListModel::indexOf(std::size_t step) const {
  for (std::size_t row = 0; row < m_rows.size(); ++row) {
    if (m_rows[row].step == step) return index(static_cast<int>(row));
  }
  return {};
}

int StepListModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

QVariant StepListModel::data(const QModelIndex& index, int role) const {
  const Row& row = m_rows.at(static_cast<std::size_t>(index.row()));
  switch (role) {
    case Qt::DisplayRole:
      return row.side.isEmpty() ? row.title : tr("%1 (%2)").arg(row.title, row.side);
    case RowDelegate::MarkRole:
      return row.step ? QVariant(static_cast<int>(row.mark)) : QVariant();
    case RowDelegate::SubtitleRole:
      return row.plain ? QString() : row.status;
    case RowDelegate::HeadingRole:
      return !row.step.has_value();
    case Qt::AccessibleTextRole:
      return row.step ? tr("%1: %2").arg(data(index, Qt::DisplayRole).toString(), row.status)
                      : row.title;
    default:
      return {};
  }
}

Qt::ItemFlags StepListModel::flags(const QModelIndex& index) const {
  return stepAt(index) ? Qt::ItemIsEnabled | Qt::ItemIsSelectable : Qt::NoItemFlags;
}

StepList::StepList(QWidget* parent) : RowList("stepList", tr("Steps of the job"), parent) {
  setModel(&m_model);
}

void StepList::present(SharedJob job, const std::vector<workshop::StepLine>& lines,
                       std::optional<model::Side> only) {
  m_quiet = true;
  m_model.present(std::move(job), lines, only);
  m_quiet = false;
}

void StepList::mark(std::size_t step) {
  const QModelIndex index = m_model.indexOf(step);
  // A row one has pressed stays where it is, under the finger.
  const bool isHere = index == currentIndex();
  m_quiet = true;
  setCurrentIndex(index);
  m_quiet = false;
  if (!index.isValid()) return;
  scrollTo(index, isHere ? QAbstractItemView::EnsureVisible : QAbstractItemView::PositionAtCenter);
}

void StepList::changeEvent(QEvent* event) {
  RowList::changeEvent(event);
  const bool resized = event->type() == QEvent::StyleChange || event->type() == QEvent::FontChange;
  if (!resized) return;
  // At the other size the chosen step stays in sight.
  QTimer::singleShot(0, this, [this] {
    if (currentIndex().isValid()) scrollTo(currentIndex(), QAbstractItemView::PositionAtCenter);
  });
}

void StepList::mousePressEvent(QMouseEvent* event) {
  RowList::mousePressEvent(event);
  // Choosing may have moved the rows while the press was handled: what is marked is what is shown.
  selectionModel()->select(currentIndex(), QItemSelectionModel::ClearAndSelect);
}

void StepList::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
  RowList::currentChanged(current, previous);
  if (m_quiet) return;
  if (const auto step = m_model.stepAt(current)) emit chosen(*step);
}

}  // namespace sw::ui
