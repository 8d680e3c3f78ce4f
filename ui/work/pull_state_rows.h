// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "model/pull_state.h"
#include "workshop/command.h"

namespace sw::ui {

class ChoiceRow;

/// The state a pull is taken in: what the procedure has produced, and what differs.
class PullStateRows final : public QWidget {
  Q_OBJECT

 public:
  explicit PullStateRows(QWidget* parent = nullptr);
  void present(const model::PullState& state);
  [[nodiscard]] model::PullState state() const;
  /// Puts the state into the command.
  void putInto(workshop::TakeReadings& action) const;

 signals:
  void changed();

 private:
  ChoiceRow* m_seal;
  ChoiceRow* m_rods;
  ChoiceRow* m_damper;
  ChoiceRow* m_sealant;
  ChoiceRow* m_grease;
  ChoiceRow* m_movement;
  ChoiceRow* m_position;
};

}  // namespace sw::ui
