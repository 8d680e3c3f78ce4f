// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/html.h"

#include <algorithm>

namespace sw::report {

namespace {

// Black, white and grey; the verdict colours are an accent on the shape alone.
constexpr auto kSheetStyle =
    "body { font-family: 'DejaVu Sans', sans-serif; font-size: 8.5pt; color: #16191d; }\n"
    "h1 { font-size: 15pt; font-weight: bold; margin: 0 0 1px 0; }\n"
    "h2 { font-size: 10.5pt; font-weight: bold; margin: 13px 0 3px 0; }\n"
    "p { margin: 2px 0 2px 0; }\n"
    "p.issuer { font-size: 9pt; margin: 0 0 2px 0; }\n"
    "p.sub { font-size: 9.5pt; margin: 0 0 8px 0; }\n"
    "p.lead { font-size: 9.5pt; margin: 3px 0 4px 0; }\n"
    "p.small, li.small, p.foot { font-size: 7.5pt; }\n"
    "p.foot { margin: 2px 0 2px 0; }\n"
    "table.grid, table.pairs { border-collapse: collapse; width: 100%; margin: 0 0 4px 0; }\n"
    "table.grid th { font-size: 7.5pt; font-weight: bold; text-align: left; "
    "background-color: #e9ebee; border-bottom: 1px solid #16191d; padding: 2px 4px 2px 4px; }\n"
    "table.grid td { border-bottom: 1px solid #c9cdd2; padding: 2px 4px 2px 4px; "
    "vertical-align: top; }\n"
    "table.grid td.group { background-color: #f4f5f7; font-weight: bold; }\n"
    "table.pairs td { padding: 1px 6px 1px 0; vertical-align: top; }\n"
    "td.key { color: #4c535b; }\n"
    "span.quiet { color: #4c535b; font-size: 7.5pt; }\n"
    "span.struck { text-decoration: line-through; color: #4c535b; }\n"
    "ul { margin: 0 0 0 0; }\n";

constexpr auto kCardStyle =
    "body { font-family: 'DejaVu Sans Condensed', 'DejaVu Sans', sans-serif; font-size: 7.5pt; "
    "color: #000000; }\n"
    "h1 { font-size: 12pt; font-weight: bold; margin: 0 0 0 0; }\n"
    "h2 { font-size: 8.5pt; font-weight: bold; margin: 4px 0 1px 0; }\n"
    "p { margin: 0 0 1px 0; }\n"
    "p.issuer, p.sub, p.lead { font-size: 8pt; margin: 0 0 1px 0; }\n"
    "p.small, li.small, p.foot { font-size: 7.5pt; }\n"
    "table.grid, table.pairs { border-collapse: collapse; width: 100%; margin: 0 0 0 0; }\n"
    "table.grid th { font-size: 7.5pt; font-weight: bold; text-align: left; "
    "border-bottom: 1px solid #000000; padding: 0 2px 0 2px; }\n"
    "table.grid td { border-bottom: 1px solid #9a9a9a; padding: 0 2px 0 2px; "
    "vertical-align: top; }\n"
    "table.grid td.group { font-weight: bold; background-color: #e4e4e4; }\n"
    "table.pairs td { padding: 0 4px 0 0; vertical-align: top; }\n"
    "span.quiet { color: #333333; }\n"
    "span.struck { text-decoration: line-through; }\n"
    "ul { margin: 0 0 0 0; }\n";

constexpr auto kBrowserStyle =
    "body { margin: 12mm auto 12mm auto; max-width: 190mm; }\n"
    "ul { padding-left: 14px; }\n"
    "p.running { font-size: 8pt; border-bottom: 1px solid #16191d; }\n"
    "tr { page-break-inside: avoid; }\n"
    "h2 { page-break-after: avoid; }\n"
    "img { max-height: 45mm; }\n"
    "@media print { body { margin: 0; max-width: none; } }\n";
constexpr auto kBrowserCardStyle = "div.columns { column-count: 2; column-gap: 5mm; }\n";

struct Mark {
  MarkShape shape;
  const char16_t* glyph;
  const char* colour;
};
// Contrast on white 4.6 to 12.2; the shapes differ without the colours.
constexpr Mark kMarks[] = {{MarkShape::Within, u"\u25CF", "#0067b3"},
                           {MarkShape::Undecided, u"\u2B16", "#9a5f00"},
                           {MarkShape::Outside, u"\u25A0", "#6e0a1e"},
                           {MarkShape::NotMeasured, u"\u25CC", "#70757b"}};

/// Turns the writing direction of what follows: embeddings, overrides, isolates.
bool turnsDirection(char16_t c) {
  return (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
}

/// Object replacement, non-characters and lone surrogates: QTextDocument gives some of them a
/// meaning.
bool noCharacter(char16_t c) {
  return (c >= 0xFDD0 && c <= 0xFDEF) || c >= 0xFFF9 || c == 0xFEFF;
}

QString shown(const QString& text) {
  QString out;
  out.reserve(text.size());
  for (qsizetype i = 0; i < text.size(); ++i) {
    const char16_t c = text.at(i).unicode();
    const bool pair = QChar::isHighSurrogate(c) && i + 1 < text.size() &&
                      QChar::isLowSurrogate(text.at(i + 1).unicode());
    if (pair) {
      out += text.at(i);
      out += text.at(++i);
    } else if (turnsDirection(c)) {
      out += QStringLiteral("[U+%1]").arg(static_cast<int>(c), 4, 16, QChar(u'0')).toUpper();
    } else if (c == u'\n' || c == 0x2028 || c == 0x2029) {
      out += QChar(u'\n');
    } else if (c < 0x20 || (c >= 0x7F && c < 0xA0)) {
      out += QChar(u' ');
    } else if (noCharacter(c) || QChar::isSurrogate(c)) {
      out += QChar(u'\uFFFD');
    } else {
      out += text.at(i);
    }
  }
  return out;
}

class Writer {
 public:
  Writer(const Document& document, HtmlTarget target, const PictureMap& pictures)
      : m_document(document), m_target(target), m_pictures(pictures) {}

  QString write() {
    head();
    if (m_target == HtmlTarget::File && !m_document.running.isEmpty()) {
      paragraph("running", plain(m_document.running));
    }
    if (!m_document.issuer.isEmpty()) paragraph("issuer", plain(m_document.issuer));
    raw("<h1>");
    text(m_document.title);
    raw("</h1>\n");
    if (!m_document.subtitle.isEmpty()) paragraph("sub", plain(m_document.subtitle));
    raw("<div class=\"columns\">\n");
    for (const Section& section : m_document.sections) write(section);
    raw("</div>\n");
    if (!m_document.footer.empty()) raw("<hr/>\n");
    for (const QString& line : m_document.footer) paragraph("foot", plain(line));
    raw("</body>\n</html>\n");
    return std::move(m_out);
  }

 private:
  void head() {
    raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n<title>");
    oneLine(m_document.running.isEmpty()
                ? m_document.title
                : m_document.title + QStringLiteral(" – ") + m_document.running);
    raw("</title>\n<style type=\"text/css\">\n");
    const bool card = m_document.style == Style::Card;
    raw(card ? kCardStyle : kSheetStyle);
    if (m_target == HtmlTarget::File) {
      raw(kBrowserStyle);
      if (card) raw(kBrowserCardStyle);
      const bool a4 = m_document.paper == Paper::A4;
      raw(a4 ? "@page { size: A4; margin: 14mm; }\n" : "@page { size: letter; margin: 14mm; }\n");
    }
    raw("</style>\n</head>\n<body>\n");
  }

  void raw(const char* markup) { m_out += QLatin1String(markup); }
  void text(const QString& content) { m_out += escapedText(content); }
  /// Where no markup may stand: attributes and the title.
  void oneLine(const QString& content) {
    text(QString(content).replace(QChar(u'\n'), QChar(u' ')));
  }

  void write(const Section& section) {
    if (section.blocks.empty()) return;
    if (!section.title.isEmpty()) {
      raw("<h2>");
      text(section.title);
      raw("</h2>\n");
    }
    for (const Block& block : section.blocks) {
      std::visit([this](const auto& content) { write(content); }, block);
    }
  }

  void write(const Paragraph& content) { paragraph(classOf(content.look), content.line); }

  void write(const Bullets& content) {
    raw("<ul>\n");
    for (const Line& item : content.items) {
      m_out += QStringLiteral("<li class=\"%1\">").arg(QLatin1String(classOf(content.look)));
      line(item);
      raw("</li>\n");
    }
    raw("</ul>\n");
  }

  void write(const KeyValues& content) {
    const auto across = static_cast<std::size_t>(std::max(1, content.pairsAcross));
    raw("<table class=\"pairs\" width=\"100%\" cellspacing=\"0\">\n");
    constexpr int kKeyWidth = 18;
    const int valueWidth = 100 / static_cast<int>(across) - kKeyWidth;
    for (std::size_t i = 0; i < content.items.size(); i += across) {
      raw("<tr>");
      for (std::size_t j = i; j < i + across; ++j) {
        m_out += QStringLiteral("<td class=\"key\" width=\"%1%\">").arg(kKeyWidth);
        if (j < content.items.size()) text(content.items[j].first);
        m_out += QStringLiteral("</td><td width=\"%1%\">").arg(valueWidth);
        if (j < content.items.size()) write(content.items[j].second);
        raw("</td>");
      }
      raw("</tr>\n");
    }
    raw("</table>\n");
  }

  void write(const Table& table) {
    raw("<table class=\"grid\" width=\"100%\" cellspacing=\"0\">\n<thead><tr>");
    for (const Column& column : table.columns) {
      m_out += QStringLiteral("<th width=\"%1%\" align=\"%2\">")
                   .arg(column.widthPercent)
                   .arg(QLatin1String(word(column.align)));
      text(column.head);
      raw("</th>");
    }
    raw("</tr></thead>\n<tbody>\n");
    for (const Row& row : table.rows) write(table, row);
    raw("</tbody></table>\n");
  }

  void write(const Table& table, const Row& row) {
    raw("<tr>");
    if (row.kind == RowKind::Group) {
      m_out += QStringLiteral("<td class=\"group\" colspan=\"%1\">")
                   .arg(static_cast<qulonglong>(table.columns.size()));
      if (!row.cells.empty()) write(row.cells.front());
      raw("</td></tr>\n");
      return;
    }
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
      m_out += QStringLiteral("<td align=\"%1\">").arg(QLatin1String(word(table.columns[i].align)));
      if (i < row.cells.size()) write(row.cells[i]);
      raw("</td>");
    }
    raw("</tr>\n");
  }

  void write(const Cell& cell) {
    for (std::size_t i = 0; i < cell.lines.size(); ++i) {
      if (i > 0) raw("<br/>");
      line(cell.lines[i]);
    }
  }

  void write(const Pictures& content) {
    raw("<table class=\"pairs\" cellspacing=\"0\">\n");
    constexpr std::size_t kAcross = 3;
    for (std::size_t i = 0; i < content.items.size(); i += kAcross) {
      raw("<tr>");
      for (std::size_t j = i; j < std::min(i + kAcross, content.items.size()); ++j) {
        raw("<td>");
        picture(content.items[j]);
        raw("</td>");
      }
      raw("</tr>\n");
    }
    raw("</table>\n");
  }

  void picture(const Pictures::Item& item) {
    const auto found = m_pictures.find(item.hash);
    if (found != m_pictures.end()) {
      raw("<img src=\"");
      if (m_target == HtmlTarget::Layout) {
        oneLine(QStringLiteral("picture:") + item.hash);
      } else {
        oneLine(QStringLiteral("data:") + found->second.mime + QStringLiteral(";base64,"));
        m_out += QLatin1String(found->second.bytes.toBase64());
      }
      raw("\" alt=\"");
      oneLine(item.caption);
      raw("\"/><br/>");
    }
    text(item.caption);
  }

  void paragraph(const char* name, const Line& content) {
    m_out += QStringLiteral("<p class=\"%1\">").arg(QLatin1String(name));
    line(content);
    raw("</p>\n");
  }

  void line(const Line& content) {
    for (const Span& span : content) write(span);
  }

  void write(const Span& span) {
    for (const Mark& mark : kMarks) {
      if (mark.shape != span.mark) continue;
      m_out += QStringLiteral("<span style=\"color:%1\">%2</span>")
                   .arg(QLatin1String(mark.colour), QString::fromUtf16(mark.glyph));
      if (!span.text.isEmpty()) m_out += QChar(u'\u00A0');
    }
    switch (span.emphasis) {
      case Emphasis::Plain:
        return text(span.text);
      case Emphasis::Strong:
        return between("<b>", span.text, "</b>");
      case Emphasis::Struck:
        return between("<span class=\"struck\">", span.text, "</span>");
      case Emphasis::Quiet:
        return between("<span class=\"quiet\">", span.text, "</span>");
    }
  }

  void between(const char* open, const QString& content, const char* close) {
    raw(open);
    text(content);
    raw(close);
  }

  static const char* classOf(TextLook look) {
    switch (look) {
      case TextLook::Lead:
        return "lead";
      case TextLook::Small:
        return "small";
      case TextLook::Normal:
        break;
    }
    return "text";
  }

  static const char* word(Align align) {
    switch (align) {
      case Align::Right:
        return "right";
      case Align::Centre:
        return "center";
      case Align::Left:
        break;
    }
    return "left";
  }

  const Document& m_document;
  HtmlTarget m_target;
  const PictureMap& m_pictures;
  QString m_out;
};

}  // namespace

QString escapedText(const QString& text) {
  QString html = shown(text).toHtmlEscaped();
  html.replace(QChar(u'\n'), QStringLiteral("<br/>"));
  return html;
}

QString toHtml(const Document& document, HtmlTarget target, const PictureMap& pictures) {
  return Writer(document, target, pictures).write();
}

}  // namespace sw::report
