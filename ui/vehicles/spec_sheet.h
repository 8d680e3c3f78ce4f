// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/common/form_fields.h"
#include "ui/common/shop_session.h"
#include "ui/vehicles/spec_lines.h"

class QComboBox;
class QLineEdit;
class QPushButton;
class QTableWidget;

namespace sw::ui {

class SpecEditor;
class TextLabel;

/// The spec sheet of a vehicle: what the work asks for, on file or missing, beside an editor of one
/// line and what is done to the sheet as a whole.
class SpecSheet : public QWidget {
  Q_OBJECT

 public:
  explicit SpecSheet(ShopSession& session, QWidget* parent = nullptr);
  void show(model::VehicleId vehicle, std::optional<model::JobId> job);
  /// The book has changed: what was typed and not saved stays.
  void refresh();
  [[nodiscard]] std::size_t missing() const;

 private:
  [[nodiscard]] QWidget* laidOutList();
  void makeWholeSheet(QWidget* inside);
  void connectAll();
  void readLines();
  [[nodiscard]] static QString figureWithDoubt(const model::SpecItem& item);
  void fillTable();
  void listVehicles();
  void edit(const std::string& key);
  void editNextMissing();
  void sourceAll();
  void copySheet();
  [[nodiscard]] std::string registration() const;

  ShopSession& m_session;
  model::VehicleId m_vehicle;
  std::optional<model::JobId> m_job;
  std::vector<SpecLine> m_lines;
  // In the order of the Tab key.
  TextLabel* m_missing;
  QPushButton* m_another;
  QTableWidget* m_table;
  SpecEditor* m_editor = nullptr;
  QWidget* m_whole = nullptr;
  FormFields* m_sourceFields;
  QPushButton* m_sourceAll = nullptr;
  QWidget* m_copyPart = nullptr;
  QComboBox* m_from = nullptr;
  QPushButton* m_copy = nullptr;
};

}  // namespace sw::ui
