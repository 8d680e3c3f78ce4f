// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLayout>
#include <QWidget>

namespace sw::ui {

/// Takes all widgets out of a layout. They go when control is back in the event loop, since one of
/// them may be the button that is being pressed.
inline void clearLayout(QLayout& layout) {
  while (QLayoutItem* item = layout.takeAt(0)) {
    if (item->widget() != nullptr) {
      item->widget()->hide();
      item->widget()->deleteLater();
    }
    delete item;
  }
}

}  // namespace sw::ui
