// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

class QScrollArea;
class QWidget;

namespace sw::ui {

/// Scrolls to the widget once the rows that were just made have their places.
void bringIntoView(QScrollArea& scroll, QWidget& widget);

}  // namespace sw::ui
