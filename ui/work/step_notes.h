// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/work/step_section.h"

namespace sw::ui {

class FlowLayout;
class TextLabel;

/// Notes and photos that were recorded at the step.
class StepNotes final : public QWidget {
  Q_OBJECT

 public:
  StepNotes(ShopSession& session, QWidget* parent);
  void present(const StepContext& context);

 private:
  void addPhoto(const model::Photo& photo);

  ShopSession& m_session;
  TextLabel* m_notes;
  FlowLayout* m_photos;
};

}  // namespace sw::ui
