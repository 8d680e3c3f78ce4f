// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/work/step_section.h"

class QComboBox;
class QLineEdit;
class QPushButton;
class QVBoxLayout;

namespace sw::ui {

class PullStateRows;
class ReadingsTable;
class TextLabel;
class VerdictView;

/// The measurement panel: the limit with its source before anything is typed, the instrument, a
/// line of readings judged while it is typed, the verdict, the readings on record and what this
/// vehicle gave before.
class MeasureSection final : public StepSection {
  Q_OBJECT

 public:
  MeasureSection(ShopSession& session, QWidget* parent);
  [[nodiscard]] bool suits(const StepContext& context) const override;
  [[nodiscard]] QWidget* firstField() override;
  [[nodiscard]] bool satisfied() const override { return !lacks("no_reading"); }

 protected:
  void fill(Showing showing) override;

 private:
  void layOut();
  QWidget* buildMore();
  void wire();
  void listInstruments();
  void showWorth();
  void showLimit();
  void showState();
  void showEarlier();
  void showRecorded();
  void judge();
  void record();
  [[nodiscard]] workshop::TakeReadings action() const;
  /// The kind of instrument the step would like best.
  [[nodiscard]] std::optional<model::InstrumentKind> wantedKind() const;

  TextLabel* m_limit;
  TextLabel* m_source;
  QPushButton* m_spec;
  QComboBox* m_instrument;
  QPushButton* m_addInstrument;
  TextLabel* m_worth;  ///< what readings with the instrument prove
  QLineEdit* m_readings;
  QPushButton* m_record;
  TextLabel* m_problem;
  VerdictView* m_verdict;
  ReadingsTable* m_table;
  TextLabel* m_state;
  QPushButton* m_moreButton;
  QPushButton* m_earlierButton;
  QWidget* m_more;
  PullStateRows* m_stateRows;
  QLineEdit* m_planned;
  QPushButton* m_afresh;
  QLineEdit* m_why;
  TextLabel* m_earlier;
};

}  // namespace sw::ui
