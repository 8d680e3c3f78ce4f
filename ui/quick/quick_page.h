// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "ui/common/page.h"
#include "ui/quick/card_rows.h"

class QLineEdit;
class QPushButton;
class QScrollArea;
class QTimer;
class QVBoxLayout;

namespace sw::ui {

class CardRowView;
class TextLabel;

/// A work card that was filled in at the vehicle is copied into the job: rows in the card's order,
/// sent one by one until one is refused. What was typed and did not go in yet stays, also when the
/// program ends.
class QuickPage : public Page {
  Q_OBJECT

 public:
  explicit QuickPage(ShopSession& session, QWidget* parent = nullptr);
  void begin(const Goal& goal) override;

 protected:
  void hideEvent(QHideEvent* event) override;

 private:
  void build();
  void layOut();
  void link();

  void show(model::JobId job);
  void rebuild();
  void addGroup(const CardGroup& group, bool open);
  void addRow(const CardRow& row, const std::string& stepAbove);
  void sayWhatIsTyped();
  void focusFirst();
  /// The keyboard to its first field, and the row into view.
  void goTo(CardRowView& row);
  void startPlan();

  void edit(const CardRow& row, const QString& field, const QString& value);
  /// The row with the instrument or wrench chosen last where it asks for one.
  [[nodiscard]] CardRow withLastChoices(CardRow row) const;

  void copyIn();
  [[nodiscard]] std::optional<CardRow> nextFilled() const;
  bool send(const CardRow& row, const std::optional<std::string>& doneAt);
  void stopAt(const CardRow& row, const QString& sentence);

  void readDraft();
  void keepDraft();
  [[nodiscard]] QString draftPlace() const;
  /// A time of day with its day.
  [[nodiscard]] QString dated(const QString& time) const;
  [[nodiscard]] std::vector<CardGroup> groups() const;

  model::JobId m_job;
  std::map<std::string, RowValues> m_values;  ///< by the key of the row
  std::map<std::string, bool> m_folds;        ///< groups that were opened or folded by hand
  std::map<std::string, QStringList>
      m_wentIn;  ///< what went in since the page was opened, a group each
  std::map<std::string, std::string> m_lastChoices;       ///< by what fields offer
  std::optional<std::pair<std::string, QString>> m_stop;  ///< the refused row and why
  QStringList m_heard;
  bool m_copying = false;
  std::map<std::string, CardRowView*> m_rows;
  QWidget* m_lastInList = nullptr;  ///< where the Tab key leaves the list

  TextLabel* m_title;
  TextLabel* m_typed;
  TextLabel* m_empty;
  QPushButton* m_plan;
  QScrollArea* m_scroll;
  QVBoxLayout* m_list;
  QLineEdit* m_when;
  QPushButton* m_copy;
  QTimer* m_keep;
};

}  // namespace sw::ui
