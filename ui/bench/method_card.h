// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "compute/description.h"

namespace sw::ui {

/// How a calculation is worked out: its formula line by line, what it rests on, its source.
class MethodCard final : public QWidget {
  Q_OBJECT

 public:
  MethodCard(const compute::Description& description, QWidget* parent);
};

}  // namespace sw::ui
