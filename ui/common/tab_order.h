// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

class QWidget;

namespace sw::ui {

/// Lets the Tab key go through what lies inside `root` the way it is laid out, for pages whose rows
/// come and go.
void tabAsLaidOut(QWidget& root);

}  // namespace sw::ui
