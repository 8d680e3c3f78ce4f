// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/work/step_section.h"

class QComboBox;
class QLineEdit;
class QPushButton;

namespace sw::ui {

class ChoiceRow;
class TextLabel;

/// The shim pack found or fitted: the stack as typed, its thickness by micrometer, and the next
/// allowed pack where a pull fell short or ran over.
class PackSection final : public StepSection {
  Q_OBJECT

 public:
  PackSection(ShopSession& session, QWidget* parent);
  [[nodiscard]] bool suits(const StepContext& context) const override;
  [[nodiscard]] QWidget* firstField() override;

 protected:
  void fill(Showing showing) override;

 private:
  void record();
  void showPacks();
  void showNext();

  TextLabel* m_packs;
  TextLabel* m_next;
  ChoiceRow* m_place;
  QLineEdit* m_shims;
  QLineEdit* m_measured;
  QComboBox* m_micrometer;
  QPushButton* m_record;
};

}  // namespace sw::ui
