// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>
#include <string>
#include <utility>
#include <vector>

class QButtonGroup;

namespace sw::ui {

/// The property of a button that Enter does not press.
inline constexpr char kSpaceOnly[] = "spaceOnly";

/// One question with its answers side by side, none chosen beforehand. The answers are the stored
/// words of an enumeration with the words for people.
class ChoiceRow : public QWidget {
  Q_OBJECT

 public:
  using Answer = std::pair<std::string, QString>;
  ChoiceRow(const QString& name, const QString& question, const std::vector<Answer>& answers,
            QWidget* parent = nullptr);

  /// The word chosen, if any.
  [[nodiscard]] std::optional<std::string> chosen() const;
  /// Shows the answer that is on record; tells nobody.
  void choose(const std::string& word);
  void clear();
  /// Hides one answer that cannot be given now, all others are offered.
  void withhold(const std::string& word);
  void offerAll();
  /// For answers that are recorded at once: Enter does not give them.
  void leaveToSpace();

 signals:
  void answered();

 private:
  QButtonGroup* m_group;
  std::vector<std::string> m_words;
  bool m_quiet = false;  ///< while what is on record is shown
};

}  // namespace sw::ui
