// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "compute/description.h"
#include "model/json.h"

class QComboBox;
class QLineEdit;
class QVBoxLayout;

namespace sw::ui {

/// One field of a calculation's input: what is typed or chosen, as the JSON that goes in. Made from
/// its description; `path` is its place in the input ("/measured/0/pack").
class BenchField : public QWidget {
  Q_OBJECT

 public:
  BenchField(const compute::FieldDescription& field, std::string path, QWidget* parent);

  /// Whether a field of this description can be shown in a form: lists of objects that hold lists
  /// of objects cannot.
  [[nodiscard]] static bool canShow(const compute::FieldDescription& field);
  /// Nothing where it is left empty.
  [[nodiscard]] virtual std::optional<model::Json> value() const = 0;
  virtual void show(const model::Json& value) = 0;
  virtual void clear() = 0;
  /// Puts the keyboard on what the path names; false where it is none of this field.
  virtual bool focusOn(const std::string& path) = 0;

  [[nodiscard]] const compute::FieldDescription& field() const { return m_field; }
  [[nodiscard]] const std::string& path() const { return m_path; }
  [[nodiscard]] std::string name() const { return std::string(m_field.name); }

 signals:
  void edited();

 private:
  compute::FieldDescription m_field;
  std::string m_path;
};

/// The widget for a field of this kind; `parent` owns it.
[[nodiscard]] BenchField* newBenchField(const compute::FieldDescription& field, std::string path,
                                        QWidget* parent);

/// A quantity, a number, a text, or several of them in one line.
class LineField final : public BenchField {
  Q_OBJECT

 public:
  LineField(const compute::FieldDescription& field, std::string path, QWidget* parent);
  [[nodiscard]] std::optional<model::Json> value() const override;
  void show(const model::Json& value) override;
  void clear() override;
  bool focusOn(const std::string& path) override;

 private:
  [[nodiscard]] model::Json scalar(const std::string& text) const;
  [[nodiscard]] model::Json list(const std::string& text) const;

  std::string m_kind;  ///< of one value
  bool m_isList = false;
  QLineEdit* m_edit;
};

/// One of a few words, or yes and no.
class ChoiceField final : public BenchField {
  Q_OBJECT

 public:
  ChoiceField(const compute::FieldDescription& field, std::string path, QWidget* parent);
  [[nodiscard]] std::optional<model::Json> value() const override;
  void show(const model::Json& value) override;
  void clear() override;
  bool focusOn(const std::string& path) override;

 private:
  QComboBox* m_box;
};

/// Fields that belong together.
class GroupField final : public BenchField {
  Q_OBJECT

 public:
  GroupField(const compute::FieldDescription& field, std::string path, QWidget* parent);
  [[nodiscard]] std::optional<model::Json> value() const override;
  void show(const model::Json& value) override;
  void clear() override;
  bool focusOn(const std::string& path) override;

 private:
  std::vector<BenchField*> m_fields;
};

/// A line of fields for each of several things, with lines added and taken away.
class RowsField final : public BenchField {
  Q_OBJECT

 public:
  RowsField(const compute::FieldDescription& field, std::string path, QWidget* parent);
  [[nodiscard]] std::optional<model::Json> value() const override;
  void show(const model::Json& value) override;
  void clear() override;
  bool focusOn(const std::string& path) override;

 private:
  struct Row {
    QWidget* widget;
    std::vector<BenchField*> fields;
  };
  void addRow();
  void removeRow(const QWidget* widget);
  void setCount(std::size_t rows);

  std::vector<Row> m_rows;
  QVBoxLayout* m_lines;
};

}  // namespace sw::ui
