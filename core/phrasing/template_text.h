// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QtCore/QString>
#include <QtCore/QtGlobal>
#include <functional>
#include <string>

namespace sw::phrasing {

/// A text of the translation context "phrasing" with a remark for translators; written in tables as
/// QT_TRANSLATE_NOOP3("phrasing", "text", "remark").
struct Source {
  const char* text;
  const char* remark;
};
[[nodiscard]] QString translated(const Source& source);

/// What a placeholder stands for; empty where there is nothing to say.
using ValueOf = std::function<QString(const QString& name)>;

/// Fills "{name}" once, never again within what was filled in. A part in square brackets is left
/// out where one of its placeholders is empty: "[{field}: ]not a number". Brackets do not nest.
[[nodiscard]] QString filled(const QString& text, const ValueOf& valueOf);

/// For a sentence: on one line, without control or direction marks, at most 160 characters and "…".
[[nodiscard]] QString shown(const std::string& utf8);

}  // namespace sw::phrasing
