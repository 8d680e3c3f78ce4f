// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "compute/calculation.h"
#include "ui/work/step_section.h"

class QPushButton;
class QVBoxLayout;

namespace sw::ui {

class FigureView;
class FlowLayout;
class TextLabel;

/// What can be worked out at this step: the first calculation answered from what the job knows, in
/// one sentence and a few lines, its picture folded; and the way to the bench for each.
class BenchSection final : public StepSection {
  Q_OBJECT

 public:
  BenchSection(ShopSession& session, QWidget* parent);
  [[nodiscard]] bool suits(const StepContext& context) const override;
  [[nodiscard]] QWidget* firstField() override { return nullptr; }
  /// Answers for the job as it would stand, while something is typed at the step.
  void suppose(const SharedJob& job);

 protected:
  void fill(Showing showing) override;

 private:
  void answerFirst();
  [[nodiscard]] std::optional<compute::Answer> worked();
  void showLines(const compute::Answer& answer);
  void listWays();
  void openBench(const std::string& calculation);
  void keep();

  std::vector<std::string> m_names;
  SharedJob m_job;                     ///< as it stands, or as it would
  std::string m_input;                 ///< of the first, as JSON
  compute::Description m_description;  ///< of the first
  TextLabel* m_head;
  TextLabel* m_words;
  QVBoxLayout* m_lines;
  QPushButton* m_fold;
  FigureView* m_picture;
  FlowLayout* m_ways;
  QPushButton* m_keep;
};

}  // namespace sw::ui
