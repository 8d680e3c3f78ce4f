// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>

#include "report/job_paper.h"
#include "ui/common/page.h"

class QComboBox;
class QPrinter;
class QPushButton;
class QStackedWidget;

namespace sw::ui {

class PageView;
class PaperText;
class TextLabel;

/// A job on paper: job sheet or work card as it will be printed, or as text to be read out; printed
/// and saved as PDF.
class SheetPage : public Page {
  Q_OBJECT

 public:
  explicit SheetPage(ShopSession& session, QWidget* parent = nullptr);
  void begin(const Goal& goal) override;
  [[nodiscard]] model::JobId job() const { return m_job; }

  /// Asks where to save; tests put their own. An empty answer saves nothing.
  std::function<QString(const QString& suggested)> chooseFile;
  /// Asks for the printer, its paper and which pages; false prints nothing.
  std::function<bool(QPrinter& printer)> choosePrinter;

 private:
  void build();
  void layOut();
  void link();
  [[nodiscard]] report::Paper paper() const;
  [[nodiscard]] Result<report::PaperDocument> make(report::Paper paper) const;
  void preview();
  void save();
  void print();

  model::JobId m_job;
  TextLabel* m_title;
  TextLabel* m_where;
  // In the order of the Tab key.
  QComboBox* m_what;
  QComboBox* m_paper;
  QPushButton* m_print;
  QPushButton* m_save;
  QPushButton* m_whole;
  QPushButton* m_asText;
  QStackedWidget* m_stack;
  PageView* m_pages;
  PaperText* m_text;
};

}  // namespace sw::ui
