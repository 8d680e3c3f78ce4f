// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractListModel>
#include <memory>
#include <optional>
#include <vector>

#include "ui/common/marks.h"
#include "ui/work/row_delegate.h"
#include "workshop/step_status.h"

namespace sw::ui {

using SharedJob = std::shared_ptr<const workshop::JobState>;

/// The steps of a job under the titles of their procedures, as far as they concern the chosen side.
class StepListModel final : public QAbstractListModel {
  Q_OBJECT

 public:
  using QAbstractListModel::QAbstractListModel;

  void present(SharedJob job, const std::vector<workshop::StepLine>& lines,
               std::optional<model::Side> only);
  [[nodiscard]] std::optional<std::size_t> stepAt(const QModelIndex& index) const;
  [[nodiscard]] QModelIndex indexOf(std::size_t step) const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;

 private:
  struct Row {
    std::optional<std::size_t> step;  ///< absent for a title
    QString title, side, status;
    Mark mark = Mark::None;
    bool plain = true;  ///< the mark says it all
    bool operator==(const Row&) const = default;
  };
  SharedJob m_job;
  std::vector<Row> m_rows;
};

/// The list; tells which step was chosen by key or mouse.
class StepList final : public RowList {
  Q_OBJECT

 public:
  explicit StepList(QWidget* parent = nullptr);
  void present(SharedJob job, const std::vector<workshop::StepLine>& lines,
               std::optional<model::Side> only);
  void mark(std::size_t step);

 signals:
  void chosen(std::size_t step);

 protected:
  void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
  void mousePressEvent(QMouseEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  StepListModel m_model;
  bool m_quiet = false;
};

/// The mark and the words of a state.
[[nodiscard]] Mark markOf(workshop::StepStatus status);
[[nodiscard]] QString statusText(workshop::StepStatus status);

}  // namespace sw::ui
