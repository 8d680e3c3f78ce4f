// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <set>
#include <string>

#include "ui/causes/number_words.h"
#include "ui/common/form_fields.h"
#include "ui/common/page.h"

class QPushButton;
class QTableWidget;
class QVBoxLayout;

namespace sw::ui {

class TextLabel;

/// The numbers the search for a cause reckons with, and the shop's own in their place: a list of
/// what they belong to beside a form. A field that is empty takes the shipped number, which stands
/// in it grey.
class NumbersPage : public Page {
  Q_OBJECT

 public:
  explicit NumbersPage(ShopSession& session, QWidget* parent = nullptr);
  void begin(const Goal& goal) override;

 private:
  void layOut();
  [[nodiscard]] QWidget* laidOutList();
  void refresh();
  void fillList();
  void showItem(std::size_t item);
  void dropFields();
  void buildForm();
  FieldTexts addFields();
  void keepDraft();
  void save();
  void giveBack(const std::vector<std::string>& path);
  bool record(const std::string& numbers);
  void complain(const Error& error);
  [[nodiscard]] QString labelOf(const std::string& field) const;
  [[nodiscard]] QString place() const;

  std::optional<model::JobId> m_job;
  diagnosis::CauseFile m_file;  ///< with the shop's own numbers
  std::string m_own;            ///< them alone, as JSON
  std::set<std::string> m_ownNames;
  std::vector<NumberItem> m_items;
  std::size_t m_item = 0;
  std::vector<diagnosis::NumberPlace> m_places;  ///< of the item shown
  std::unique_ptr<FormFields> m_fields;
  // In the order of the Tab key.
  QTableWidget* m_table;
  TextLabel* m_count;
  QPushButton* m_allBack;
  QPushButton* m_toCauses = nullptr;
  TextLabel* m_title;
  TextLabel* m_problem;
  QVBoxLayout* m_form;
  QPushButton* m_save;
  QPushButton* m_back;
};

}  // namespace sw::ui
