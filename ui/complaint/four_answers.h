// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "workshop/command.h"

namespace sw::ui {

class ChoiceRow;

/// The four questions about the shake that decide most, as a new job and its complaint ask them.
class FourAnswers : public QWidget {
  Q_OBJECT

 public:
  explicit FourAnswers(QWidget* parent = nullptr);

  [[nodiscard]] ChoiceRow* braking() const { return m_braking; }
  [[nodiscard]] ChoiceRow* speedBand() const { return m_band; }
  [[nodiscard]] ChoiceRow* afterBump() const { return m_bump; }
  [[nodiscard]] ChoiceRow* whereFelt() const { return m_felt; }

  /// Where it is felt, in words; nothing where that is not known.
  [[nodiscard]] std::optional<std::string> felt() const;
  /// Gives the complaint what was answered.
  void fill(workshop::SetComplaint& complaint) const;
  void clear();

 private:
  ChoiceRow* m_braking;
  ChoiceRow* m_band;
  ChoiceRow* m_bump;
  ChoiceRow* m_felt;
};

}  // namespace sw::ui
