// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>

#include "report/job_paper.h"
#include "ui/common/page.h"

class QComboBox;
class QPushButton;

namespace sw::ui {

class PaperView;
class TextLabel;

/// A job on paper: job sheet or work card, previewed and saved as PDF.
class SheetPage : public Page {
  Q_OBJECT

 public:
  explicit SheetPage(ShopSession& session, QWidget* parent = nullptr);
  void begin(const Goal& goal) override;
  [[nodiscard]] model::JobId job() const { return m_job; }

  /// Asks where to save; tests put their own. An empty answer saves nothing.
  std::function<QString(const QString& suggested)> chooseFile;

 private:
  [[nodiscard]] Result<report::PaperDocument> make() const;
  void preview();
  void save();

  model::JobId m_job;
  TextLabel* m_title;
  // In the order of the Tab key.
  QComboBox* m_what;
  QComboBox* m_paper;
  QPushButton* m_save;
  PaperView* m_view;
};

}  // namespace sw::ui
