// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/common/goal.h"
#include "ui/common/shop_session.h"

namespace sw::ui {

/// A page of the window. The window shows one at a time and carries out what pages ask for.
class Page : public QWidget {
  Q_OBJECT

 public:
  Page(ShopSession& session, const char* name, QWidget* parent);

  /// Is shown now: looks at the book again and puts the keyboard where work begins.
  virtual void begin(const Goal& goal) = 0;

 signals:
  void goWanted(const sw::ui::Goal& goal);
  /// Worth knowing, said below the page.
  void said(const QString& sentence);
  /// Something could not be done, and why.
  void failed(const QString& sentence);

 protected:
  [[nodiscard]] ShopSession& session() const { return m_session; }

 private:
  ShopSession& m_session;
};

}  // namespace sw::ui
