// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "ui/common/page.h"

class QLineEdit;
class QListWidget;
class QPushButton;
class QBoxLayout;

namespace sw::ui {

class BenchPanel;
class TextLabel;

/// Calculations outside of any step: found by a few words, worked at every key, kept as they were
/// typed, and put into the job that is open.
class BenchPage : public Page {
  Q_OBJECT

 public:
  explicit BenchPage(ShopSession& session, QWidget* parent = nullptr);
  void begin(const Goal& goal) override;

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void build();
  void fillList();
  /// Shows a calculation by name, with what was typed last; an unknown one changes nothing.
  void open(const std::string& name);
  void fillFromStep(const Goal& goal);
  [[nodiscard]] std::optional<Where> place() const;
  void sift(const QString& typed);

  std::optional<model::JobId> m_job;
  Goal m_from;  ///< the step it was opened from, if any
  std::string m_name;
  QLineEdit* m_find;
  QListWidget* m_list;
  TextLabel* m_none;
  QPushButton* m_back;
  QBoxLayout* m_sides;
  BenchPanel* m_panel = nullptr;
};

}  // namespace sw::ui
