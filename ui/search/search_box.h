// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLineEdit>
#include <vector>

#include "report/search.h"
#include "ui/common/goal.h"
#include "ui/common/shop_session.h"

class QListWidget;
class QTimer;

namespace sw::ui {

/// Finds vehicles and jobs while one types: a box, and below it a list over the page. Down goes
/// into the list, Enter opens, Esc closes.
class SearchBox : public QLineEdit {
  Q_OBJECT

 public:
  /// `host` is what the list lies over.
  SearchBox(ShopSession& session, QWidget* host, QWidget* parent);

  /// Puts the cursor here, ready to type anew.
  void start();
  [[nodiscard]] QSize sizeHint() const override;

 signals:
  void goWanted(const sw::ui::Goal& goal);

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void find();
  void showRows();
  void place();
  void close();
  void open(int row);
  bool keyInList(int key);

  ShopSession& m_session;
  QWidget* m_host;
  QListWidget* m_list;
  QTimer* m_wait;
  std::vector<report::SearchRow> m_rows;
};

}  // namespace sw::ui
