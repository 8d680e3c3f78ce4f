// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "compute/calculation.h"
#include "ui/common/shop_session.h"

class QFormLayout;
class QLineEdit;
class QPushButton;
class QTimer;
class QBoxLayout;
class QVBoxLayout;

namespace sw::ui {

class BenchField;
class FigureView;
class TextLabel;

/// One calculation to work with: what it asks for, its answer in words, its picture, its figures
/// and how it is worked out. Computes at every key. With a place in a job it can be put there.
class BenchPanel : public QWidget {
  Q_OBJECT

 public:
  BenchPanel(ShopSession& session, const compute::Calculation& calculation, QWidget* parent);

  /// Where "put into the job" puts it; nothing hides the button.
  void setPlace(const std::optional<Where>& where);
  /// Fills the form in; what it does not name is emptied.
  void show(const model::Json& input);
  [[nodiscard]] model::Json input() const;
  void focusFirst();

 signals:
  /// The form was changed by hand: worth keeping as a draft.
  void edited();

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void build();
  void buildForm(QVBoxLayout* column);
  void buildAnswer(QVBoxLayout* column);
  void addField(QFormLayout* form, const compute::FieldDescription& field, QWidget* parent);
  void workSoon();
  void work();
  /// Required fields without a value, by name; empty = none.
  [[nodiscard]] QString missing() const;
  void showAnswer(const compute::Answer& answer);
  void showFigures(const compute::Answer& answer);
  void putIntoJob();

  ShopSession& m_session;
  compute::Calculation m_calculation;
  compute::Description m_description;
  std::optional<Where> m_where;
  QBoxLayout* m_sides = nullptr;
  std::vector<BenchField*> m_fields;
  QWidget* m_more = nullptr;
  QPushButton* m_moreButton = nullptr;
  TextLabel* m_state = nullptr;  ///< what is missing or wrong
  QWidget* m_answer = nullptr;
  QVBoxLayout* m_words = nullptr;
  FigureView* m_picture = nullptr;
  QVBoxLayout* m_figures = nullptr;
  QLineEdit* m_remark = nullptr;
  QPushButton* m_put = nullptr;
  QTimer* m_pause = nullptr;
  bool m_slow = false;  ///< the last answer took longer than a frame
};

}  // namespace sw::ui
