// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QByteArray>
#include <QString>
#include <map>

#include "report/document.h"

namespace sw::report {

/// A picture as it is embedded: the thumbnail's bytes and their type ("image/jpeg").
struct EmbeddedPicture {
  QByteArray bytes;
  QString mime;
};
using PictureMap = std::map<QString, EmbeddedPicture>;

enum class HtmlTarget {
  File,    ///< a page that stands alone in a browser: pictures inside, columns by the browser
  Layout,  ///< for QTextDocument: pictures by "picture:HASH", running lines painted by the caller
};

/// The document as HTML. Every text goes through one escaping function: markup in it stays text,
/// characters that turn the direction of writing or that only layout engines use are shown, not
/// obeyed. A page of its own holds no script and reaches for nothing outside itself.
[[nodiscard]] QString toHtml(const Document& document, HtmlTarget target = HtmlTarget::File,
                             const PictureMap& pictures = {});

/// The escaping by itself, for tests.
[[nodiscard]] QString escapedText(const QString& text);

}  // namespace sw::report
