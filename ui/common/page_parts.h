// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <string>

class QComboBox;
class QFormLayout;
class QLineEdit;
class QScrollArea;
class QTableWidget;
class QWidget;

// Widgets as all pages have them.

namespace sw::ui {

[[nodiscard]] QLineEdit* lineEdit(const char* name, const QString& accessible,
                                  const QString& placeholder, QWidget* parent);
/// Does not turn with the wheel: scrolling a page over it changes nothing.
[[nodiscard]] QComboBox* comboBox(const char* name, const QString& accessible, QWidget* parent);

/// Labels beside their fields, above them where they are long.
[[nodiscard]] QFormLayout* fieldForm();
/// A labelled row; the label, which may hold a mnemonic, stands at the middle of the field.
void addRow(QFormLayout* form, const QString& label, QWidget* field);
/// A labelled row with a line to type into, which is named by its label.
QLineEdit* addLine(QFormLayout* form, const char* name, const QString& label,
                   const QString& placeholder, QWidget* parent);
/// What stands in the field; nothing where it is empty.
[[nodiscard]] std::optional<std::string> typed(const QLineEdit* edit);

/// A page that is longer than the window: scrolled up and down only, and no stop of the Tab key.
[[nodiscard]] QScrollArea* scrolled(QWidget* inside, const char* name, QWidget* parent);
/// Puts the keyboard on the widget and scrolls to it.
void putCursor(QWidget* widget);

/// Rows that are chosen whole; the columns share the width and their texts wrap.
[[nodiscard]] QTableWidget* rowTable(const char* name, const QString& accessible,
                                     const QStringList& heads, QWidget* parent);
/// Puts the texts into the cells of a row.
void fillRow(QTableWidget* table, int row, const QStringList& texts);

}  // namespace sw::ui
