// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <functional>

#include "report/job_paper.h"
#include "ui/common/shop_session.h"

class QComboBox;
class QLabel;
class QPushButton;

namespace sw::ui {

class PaperView;

/// A job on paper: job sheet or work card, previewed and saved as PDF.
class SheetPage : public QWidget {
  Q_OBJECT

 public:
  explicit SheetPage(ShopSession& session, QWidget* parent = nullptr);
  void showJob(model::JobId job, report::JobPaper what);
  [[nodiscard]] model::JobId job() const { return m_job; }

  /// Asks where to save; tests put their own. An empty answer saves nothing.
  std::function<QString(const QString& suggested)> chooseFile;

 signals:
  void backWanted();
  void savedTo(const QString& path);
  void failed(const QString& sentence);

 private:
  [[nodiscard]] Result<report::PaperDocument> make() const;
  void preview();
  void save();

  ShopSession& m_session;
  model::JobId m_job;
  QLabel* m_title;
  // In the order of the Tab key.
  QPushButton* m_back;
  QComboBox* m_what;
  QComboBox* m_paper;
  QPushButton* m_save;
  PaperView* m_view;
};

}  // namespace sw::ui
