// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QString>
#include <charconv>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <type_traits>
#include <vector>

#include "base/clock.h"
#include "base/words.h"
#include "units/typed_quantity.h"

class QComboBox;
class QLineEdit;
class QTimer;

namespace sw::ui {

class ChoiceRow;

/// Texts by the names that facts and commands give their fields: figures as typed, stored words.
using FieldTexts = std::map<std::string, std::string>;

/// The fields of a form under those names: what is on record, and what was typed since. A command
/// gets what differs from the record and nothing else.
class FormFields : public QObject {
  Q_OBJECT

 public:
  explicit FormFields(QObject* parent = nullptr);

  void add(const std::string& field, QLineEdit* edit);
  void add(const std::string& field, ChoiceRow* row);
  /// The stored words stand in the data of the items.
  void add(const std::string& field, QComboBox* box);

  /// Shows what is on record; what was typed before is gone.
  void show(const FieldTexts& record);
  /// The record is another; what was typed and not recorded yet stays.
  void follow(const FieldTexts& record);

  [[nodiscard]] std::string text(const std::string& field) const;
  /// The text where it differs from the record.
  [[nodiscard]] std::optional<std::string> changed(const std::string& field) const;
  [[nodiscard]] bool hasChanges() const;

  /// Puts the keyboard on the field a refusal names. False where the form has none of that name.
  bool focus(const std::string& field) const;

  /// What was typed and not recorded, to be kept for later; empty without changes.
  [[nodiscard]] QString draft() const;
  /// Shows it again. False where there is nothing in it.
  bool takeDraft(const QString& draft);

 signals:
  /// Something is typed or chosen.
  void edited();
  /// A field was left, an answer given or typing has paused, and the draft is another: worth
  /// keeping.
  void settled();
  /// Return was pressed in a field.
  void entered();

 private:
  struct Field {
    std::string name;
    QWidget* widget = nullptr;
    std::function<std::string()> read;
    std::function<void(const std::string&)> write;
    std::string record;
  };
  [[nodiscard]] const Field* find(const std::string& field) const;
  void settle();

  std::vector<Field> m_fields;
  QString m_settled;  ///< the draft last told
  QTimer* m_wait;     ///< from the last key on: a power cut must not lose what was typed
};

namespace form {

template <class T>
struct IsOptional : std::false_type {};
template <class T>
struct IsOptional<std::optional<T>> : std::true_type {};

/// The text of a fact's field; references to other facts have none.
template <class T>
[[nodiscard]] std::optional<std::string> textOf(const T& value) {
  if constexpr (IsOptional<T>::value) {
    if (!value) return std::nullopt;
    return textOf(*value);
  } else if constexpr (std::is_same_v<T, std::string>) {
    return value;
  } else if constexpr (std::is_same_v<T, TypedQuantity>) {
    return value.text();
  } else if constexpr (std::is_same_v<T, Date>) {
    return toIso(value);
  } else if constexpr (std::is_same_v<T, bool>) {
    return std::string(value ? "yes" : "no");
  } else if constexpr (std::is_same_v<T, std::int64_t>) {
    return std::to_string(value);
  } else if constexpr (HasWords<T>) {
    return std::string(wordOf(value));
  } else {
    return std::nullopt;
  }
}

/// Puts the text into a command's field; a word or number that is none leaves it as it was.
template <class T>
void put(const std::string& text, T& field) {
  if constexpr (IsOptional<T>::value) {
    typename T::value_type value{};
    const auto before = value;
    put(text, value);
    if constexpr (std::is_same_v<typename T::value_type, std::string>) {
      field = text;
    } else if constexpr (HasWords<typename T::value_type>) {
      if (const auto word = fromWord<typename T::value_type>(text)) field = *word;
    } else if (value != before || text == "no") {
      field = value;
    }
  } else if constexpr (std::is_same_v<T, std::string>) {
    field = text;
  } else if constexpr (std::is_same_v<T, bool>) {
    field = text == "yes";
  } else if constexpr (std::is_same_v<T, std::int64_t>) {
    std::from_chars(text.data(), text.data() + text.size(), field);
  } else if constexpr (HasWords<T>) {
    if (const auto word = fromWord<T>(text)) field = *word;
  }
}

}  // namespace form

/// What a fact says, field by field.
template <class Fact>
[[nodiscard]] FieldTexts textsOf(const Fact& fact) {
  FieldTexts texts;
  Fact::fields(fact, [&texts](const char* name, const auto& value) {
    if (auto text = form::textOf(value)) texts[name] = std::move(*text);
  });
  return texts;
}

/// Gives the command what the form has changed.
template <class Action>
void takeChanges(const FormFields& fields, Action& action) {
  Action::fields(action, [&fields](const char* name, auto& value, const char*) {
    if (const auto text = fields.changed(name)) form::put(*text, value);
  });
}

}  // namespace sw::ui
