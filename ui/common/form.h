// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFormLayout>

namespace sw::ui {

/// Labels beside their fields, or above them where the row is too narrow.
[[nodiscard]] inline QFormLayout* newForm(QWidget* parent = nullptr) {
  auto* form = new QFormLayout(parent);
  form->setContentsMargins(0, 0, 0, 0);
  form->setRowWrapPolicy(QFormLayout::WrapLongRows);
  form->setLabelAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  return form;
}

}  // namespace sw::ui
