// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "workshop/series_judge.h"

class QPushButton;

namespace sw::ui {

class MarkView;
class ReadingsPlot;
class TextLabel;

/// The verdict on a series: mark, value with uncertainty, plain words, advice, a picture; behind
/// "Why?" the budget under its standard names.
class VerdictView final : public QWidget {
  Q_OBJECT

 public:
  explicit VerdictView(QWidget* parent = nullptr);
  void present(const workshop::SeriesView& series, const workshop::SeriesBasis& basis,
               const SeriesOutcome& outcome);
  void clear();

 private:
  void showWhy(const SeriesOutcome& outcome, const Unit& unit);

  MarkView* m_mark;
  TextLabel* m_value;
  TextLabel* m_words;
  TextLabel* m_advice;
  ReadingsPlot* m_plot;
  QPushButton* m_why;
  TextLabel* m_reasons;
};

}  // namespace sw::ui
