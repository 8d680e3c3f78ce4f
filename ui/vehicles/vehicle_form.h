// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/common/form_fields.h"
#include "ui/common/shop_session.h"

class QFormLayout;
class QPushButton;
class QVBoxLayout;

namespace sw::ui {

class TextLabel;

/// The vehicle itself and what decides which steps its front axle needs, asked in plain words.
class VehicleForm : public QWidget {
  Q_OBJECT

 public:
  explicit VehicleForm(ShopSession& session, QWidget* parent = nullptr);
  void show(model::VehicleId vehicle);
  /// Puts the keyboard on the field of a fact.
  void focusOn(const std::string& field) { m_fields->focus(field); }
  /// The book has changed: what was typed and not saved stays.
  void refresh();

 private:
  void makeData(QWidget* inside, QVBoxLayout* column);
  void makeArrangement(QWidget* inside, QVBoxLayout* column);
  ChoiceRow* ask(const char* field, const char* name, const QString& question,
                 const std::vector<std::pair<std::string, QString>>& answers, QWidget* inside);
  [[nodiscard]] const model::Vehicle* vehicle() const;
  [[nodiscard]] FieldTexts record() const;
  void withholdWhatCannotBeTakenBack();
  [[nodiscard]] QString place() const;
  void save();

  ShopSession& m_session;
  model::VehicleId m_vehicle;
  FormFields* m_fields;
  /// Questions whose answer on record cannot become "not known" again, by their field.
  std::map<std::string, ChoiceRow*> m_lasting;
  TextLabel* m_problem = nullptr;
  QPushButton* m_save = nullptr;
};

}  // namespace sw::ui
