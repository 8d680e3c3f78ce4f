// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <memory>

#include "workshop/checks_ahead.h"

class QPushButton;

namespace sw::ui {

class FigureView;
class TextLabel;

/// The leading causes in words and as bars; on request why, and the chances as figures.
class CausesLead : public QWidget {
  Q_OBJECT

 public:
  explicit CausesLead(QWidget* parent = nullptr);
  /// Both are kept while they are shown.
  void show(std::shared_ptr<const diagnosis::CauseFile> file,
            std::shared_ptr<const workshop::ChecksAhead> ahead);
  /// What an earlier visit has to do with it; empty = nothing.
  void sayComeback(const QString& sentence);

 private:
  void refresh();
  [[nodiscard]] QString leadText() const;
  [[nodiscard]] QString curedText() const;
  [[nodiscard]] QString whyText(std::size_t place) const;
  [[nodiscard]] QString nameOf(std::size_t cause) const;

  std::shared_ptr<const diagnosis::CauseFile> m_file;
  std::shared_ptr<const workshop::ChecksAhead> m_ahead;
  TextLabel* m_comeback;
  TextLabel* m_lead;
  FigureView* m_picture;
  QPushButton* m_why;
  QPushButton* m_figures;
  TextLabel* m_whyText;
};

}  // namespace sw::ui
