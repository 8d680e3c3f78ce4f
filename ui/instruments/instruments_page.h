// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/common/form_fields.h"
#include "ui/common/page.h"

class QComboBox;
class QFormLayout;
class QLineEdit;
class QPushButton;
class QTableWidget;

namespace sw::ui {

class TextLabel;

/// The instruments of the shop beside a form to add or change one and to record an own check of it.
class InstrumentsPage : public Page {
  Q_OBJECT

 public:
  explicit InstrumentsPage(ShopSession& session, QWidget* parent = nullptr);
  void begin(const Goal& goal) override;

 private:
  void makeForm(QWidget* inside);
  void makeCheck(QWidget* inside);
  [[nodiscard]] QWidget* laidOutList();
  void layOut(QWidget* inside);
  void connectAll();

  void refresh();
  void listInstruments(const workshop::ShopState& shop);
  /// Shows the instrument of that name in the form, a new one for an empty name.
  void show(const std::string& name);
  void showTitle();
  void fitExamples();
  void keepDrafts();
  void save();
  void recordCheck();
  void showProblem(const QString& sentence);
  [[nodiscard]] const workshop::Revision<model::Instrument>* shown() const;
  [[nodiscard]] QString place(const char* form) const;

  std::optional<model::JobId> m_job;
  std::string m_name;  ///< of the instrument in the form; empty for a new one
  FormFields* m_fields;
  FormFields* m_checkFields;
  // In the order of the Tab key.
  QPushButton* m_new;
  QPushButton* m_back;
  TextLabel* m_none;
  QTableWidget* m_table;
  TextLabel* m_title;
  TextLabel* m_worth;
  TextLabel* m_unsaved;
  QFormLayout* m_form = nullptr;
  QComboBox* m_kind = nullptr;
  QLineEdit* m_nameEdit = nullptr;
  QLineEdit* m_graduation = nullptr;
  TextLabel* m_problem = nullptr;
  QPushButton* m_save = nullptr;
  QWidget* m_check = nullptr;
  QLineEdit* m_against = nullptr;
  QPushButton* m_record = nullptr;
};

}  // namespace sw::ui
