// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>
#include <string>
#include <vector>

#include "diagnosis/questions.h"
#include "workshop/checks_ahead.h"

class QPushButton;

namespace sw::ui {

class ChoiceRow;
class TextLabel;

/// The questions about the shake: the one worth asking first, and all of them on request.
class CausesQuestions : public QWidget {
  Q_OBJECT

 public:
  explicit CausesQuestions(const diagnosis::CauseFile& file, QWidget* parent = nullptr);
  using Values = std::vector<diagnosis::QuestionValue>;

  /// `values`: the best first; nothing while they are worked out.
  void show(const workshop::ShakeKnown& known, const std::optional<Values>& values);

 signals:
  void answered(const QString& feature, const QString& answer);

 private:
  struct Question {
    std::string key;
    std::vector<std::string> words;  ///< of its answers
    ChoiceRow* row = nullptr;
  };
  void refresh();
  [[nodiscard]] QString headline(bool asks) const;

  std::vector<Question> m_questions;  ///< one a feature
  workshop::ShakeKnown m_known;
  std::optional<Values> m_values;
  TextLabel* m_first;
  QPushButton* m_more;
};

}  // namespace sw::ui
