// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/common/page.h"

namespace sw::ui {

Page::Page(ShopSession& session, const char* name, QWidget* parent)
    : QWidget(parent), m_session(session) {
  setObjectName(QString::fromLatin1(name));
}

}  // namespace sw::ui
