// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>
#include <vector>

#include "workshop/command.h"
#include "workshop/job_state.h"

class QLineEdit;
class QListWidget;
class QPushButton;

namespace sw::ui {

class ChoiceRow;
class TextLabel;

/// The readings of a series as typed; a chosen one is corrected, left out or taken back with a
/// reason, and the whole series moved to the other side.
class ReadingsTable final : public QWidget {
  Q_OBJECT

 public:
  explicit ReadingsTable(QWidget* parent = nullptr);
  void present(const workshop::SeriesView& series);
  void clear();

 signals:
  void actionWanted(const sw::workshop::Action& action);

 private:
  void layOut();
  void chosen();
  void correct();
  [[nodiscard]] std::optional<model::EntryId> chosenEntry() const;

  TextLabel* m_title;
  QListWidget* m_list;
  QWidget* m_editor;
  QLineEdit* m_value;
  ChoiceRow* m_reason;
  QPushButton* m_correct;
  QPushButton* m_leaveOut;
  QPushButton* m_withdraw;
  QPushButton* m_move;
  std::vector<model::EntryId> m_entries;
  std::optional<model::EntryId> m_series;
};

}  // namespace sw::ui
