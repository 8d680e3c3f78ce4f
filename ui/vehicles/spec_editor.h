// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/common/form_fields.h"
#include "ui/common/shop_session.h"
#include "ui/vehicles/spec_lines.h"

class QComboBox;
class QFormLayout;
class QLineEdit;
class QPushButton;

namespace sw::ui {

class ChoiceRow;
class TextLabel;

/// One line of a spec sheet: its figures, its fasteners and where it stands.
class SpecEditor : public QWidget {
  Q_OBJECT

 public:
  explicit SpecEditor(ShopSession& session, QWidget* parent = nullptr);
  /// The line to edit; without one, a line of the user's own.
  void show(const model::Vehicle& vehicle, const std::optional<SpecLine>& line);
  /// The line as it is now on file; what was typed and not saved stays.
  void follow(const SpecLine& line);
  [[nodiscard]] const std::string& key() const { return m_need.key; }
  void putCursorFirst();

 signals:
  void saved();

 private:
  struct Row {
    std::string field;
    QWidget* widget = nullptr;
  };
  void makeFields();
  QLineEdit* add(const char* field, const char* name, const QString& label, const QString& example);
  void fitToType();
  [[nodiscard]] model::SpecKind type() const;
  [[nodiscard]] QString place() const;
  [[nodiscard]] bool readBareNumber(const char* field, workshop::OptText& text);
  void save();
  void takeOff();
  void send(const workshop::SetSpec& action);

  ShopSession& m_session;
  std::string m_registration;
  model::VehicleId m_vehicle;
  SpecNeed m_need;
  bool m_onFile = false;
  FormFields* m_fields;
  TextLabel* m_title;
  TextLabel* m_unsaved;
  QFormLayout* m_form;
  std::vector<Row> m_rows;
  QComboBox* m_type = nullptr;
  QComboBox* m_pattern = nullptr;
  ChoiceRow* m_singleUse = nullptr;
  TextLabel* m_problem = nullptr;
  QPushButton* m_save = nullptr;
  QPushButton* m_takeOff = nullptr;
};

}  // namespace sw::ui
