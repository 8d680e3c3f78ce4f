// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/common/bring_into_view.h"

#include <QCoreApplication>
#include <QEvent>
#include <QScrollArea>
#include <QTimer>

namespace sw::ui {

void bringIntoView(QScrollArea& scroll, QWidget& widget) {
  // The widget is what the call hangs on: gone with it.
  QTimer::singleShot(0, &widget, [&scroll, &widget] {
    constexpr int kDepth = 3;  // row, list, page: each layout tells the next one out
    for (int i = 0; i < kDepth; ++i) {
      QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
    }
    scroll.ensureWidgetVisible(&widget);
  });
}

}  // namespace sw::ui
