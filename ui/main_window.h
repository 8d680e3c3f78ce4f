// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QMainWindow>

#include "ui/common/shop_session.h"

class QComboBox;
class QLabel;
class QStackedWidget;

namespace sw::ui {

class MessageBar;
class NewJobPage;
class SheetPage;
class StartPage;

/// The window: pages one at a time, what the program has to say above them, who is at work, and
/// when the last entry was saved.
class MainWindow : public QMainWindow {
  Q_OBJECT

 public:
  explicit MainWindow(ShopSession& session, QWidget* parent = nullptr);

  void showStart();
  void showNewJob();
  void showSheet(model::JobId job);

  /// Something worth knowing, above the page.
  void say(const QString& sentence);

  [[nodiscard]] SheetPage& sheetPage() { return *m_sheet; }
  [[nodiscard]] QString message() const;

 private:
  void buildBar();
  void listPeople();

  ShopSession& m_session;
  QStackedWidget* m_pages;
  MessageBar* m_messages;
  StartPage* m_start;
  NewJobPage* m_newJob;
  SheetPage* m_sheet;
  QComboBox* m_people;
  QLabel* m_saved;
};

}  // namespace sw::ui
