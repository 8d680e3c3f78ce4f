// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/common/page.h"

class QPushButton;
class QTextBrowser;

namespace sw::ui {

/// The help of the page one comes from, the keys of the window, and the other pages below.
class HelpPage final : public Page {
  Q_OBJECT

 public:
  HelpPage(ShopSession& session, QWidget* parent);
  void begin(const Goal& goal) override;
  /// The page whose help is wanted and that "Back" leads to.
  void about(const Goal& from) { m_from = from; }

 private:
  [[nodiscard]] QString markdown() const;

  Goal m_from;
  QPushButton* m_back;
  QTextBrowser* m_text;
};

}  // namespace sw::ui
