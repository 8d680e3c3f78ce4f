// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QMainWindow>
#include <QPointer>
#include <map>

#include "ui/actions.h"
#include "ui/common/goal.h"
#include "ui/common/shop_session.h"

class QComboBox;
class QLabel;
class QPushButton;
class QStackedWidget;

namespace sw::ui {

class MessageBar;
class Page;
class SearchBox;
class TextLabel;

/// The window: pages one at a time, the pages of a job a key apart, what the program has to say
/// above them, who is at work, and when the last entry was saved.
class MainWindow : public QMainWindow {
  Q_OBJECT

 public:
  explicit MainWindow(ShopSession& session, QWidget* parent = nullptr);

  void go(const Goal& goal);
  void showStart() { go({}); }
  [[nodiscard]] const Goal& here() const { return m_here; }
  /// The page, made on its first visit.
  [[nodiscard]] Page& page(PageId id);
  template <class P>
  [[nodiscard]] P& pageAs(PageId id) {
    return static_cast<P&>(page(id));
  }

  /// Something worth knowing, below the page.
  void say(const QString& sentence);
  [[nodiscard]] QString message() const;

 protected:
  void resizeEvent(QResizeEvent* event) override;
  /// Enter presses the button the keyboard stands on, as the space bar does.
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void buildBar();
  void buildJobBar();
  QPushButton* button(ActionId id, QWidget* parent);
  void act(ActionId id);
  void listPeople();
  void askWhoIsAtWork();
  void refreshJobBar();
  void help();
  void switchMode();
  void fitBars();
  void listPages();
  void switchLook();
  void complain(const QString& sentence);

  ShopSession& m_session;
  QStackedWidget* m_stack;
  MessageBar* m_messages;
  std::map<PageId, Page*> m_pages;
  Goal m_here;
  QWidget* m_bar;
  QWidget* m_jobBar;
  TextLabel* m_jobName;
  std::map<ActionId, QPushButton*> m_buttons;
  QComboBox* m_people;
  QComboBox* m_pagesBox;          ///< where the buttons of the pages do not fit on one line
  bool m_justTold = false;        ///< by the entry that is being saved
  QPointer<QWidget> m_askedFrom;  ///< where an entry waited for who is at work
  SearchBox* m_search;
  QLabel* m_saved;
};

}  // namespace sw::ui
