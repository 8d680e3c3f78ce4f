// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <functional>

#include "report/document.h"
#include "report/html.h"
#include "ui/common/shop_session.h"

class QComboBox;
class QLabel;
class QTextBrowser;

namespace sw::ui {

/// A job on paper: job sheet or work card, previewed and saved as PDF.
class SheetPage : public QWidget {
  Q_OBJECT

 public:
  enum class What { WorkshopCopy, CustomerCopy, WorkCard };

  explicit SheetPage(ShopSession& session, QWidget* parent = nullptr);
  void showJob(model::JobId job, What what);
  [[nodiscard]] model::JobId job() const { return m_job; }

  /// Asks where to save; tests put their own. An empty answer saves nothing.
  std::function<QString(const QString& suggested)> chooseFile;

 signals:
  void backWanted();
  void savedTo(const QString& path);
  void failed(const QString& sentence);

 private:
  struct Made {
    report::Document document;
    report::PictureMap pictures;
  };
  [[nodiscard]] Result<Made> make() const;
  void preview();
  void save();

  ShopSession& m_session;
  model::JobId m_job;
  QLabel* m_title;
  QComboBox* m_what;
  QComboBox* m_paper;
  QTextBrowser* m_view;
};

}  // namespace sw::ui
