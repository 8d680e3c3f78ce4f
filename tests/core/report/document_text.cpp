// SPDX-License-Identifier: GPL-3.0-or-later
#include "document_text.h"

namespace sw::testing {

namespace {

using namespace sw::report;

class Collector {
 public:
  std::string text;

  void operator()(const KeyValues& content) {
    for (const auto& [key, value] : content.items) {
      add(key);
      add(value);
    }
  }
  void operator()(const Table& table) {
    for (const Column& column : table.columns) add(column.head);
    for (const Row& row : table.rows) {
      for (const Cell& cell : row.cells) add(cell);
    }
  }
  void operator()(const Paragraph& content) { add(content.line); }
  void operator()(const Bullets& content) {
    for (const Line& line : content.items) add(line);
  }
  void operator()(const Pictures& content) {
    for (const auto& item : content.items) add(item.caption);
  }
  void add(const Section& section) {
    add(section.title);
    for (const Block& block : section.blocks) std::visit(*this, block);
  }
  void add(const QString& line) { text += line.toStdString() + "\n"; }
  void add(const Line& line) {
    for (const Span& span : line) {
      const bool struck = span.emphasis == Emphasis::Struck;
      text += (struck ? "[[" : "") + span.text.toStdString() + (struck ? "]]" : "");
    }
    text += "\n";
  }
  void add(const Cell& cell) {
    for (const Line& line : cell.lines) add(line);
  }
};

}  // namespace

std::string textOf(const Document& document) {
  Collector collector;
  for (const auto& line : {document.issuer, document.title, document.subtitle, document.running}) {
    collector.add(line);
  }
  for (const Section& section : document.sections) collector.add(section);
  for (const QString& line : document.footer) collector.add(line);
  return collector.text;
}

std::string sectionText(const Document& document, const std::string& title) {
  Collector collector;
  for (const Section& section : document.sections) {
    if (section.title.toStdString() == title) collector.add(section);
  }
  return collector.text;
}

std::vector<std::vector<std::string>> rowsOf(const Document& document, const std::string& title) {
  std::vector<std::vector<std::string>> rows;
  for (const Section& section : document.sections) {
    if (section.title.toStdString() != title) continue;
    for (const Block& block : section.blocks) {
      const auto* table = std::get_if<Table>(&block);
      if (table == nullptr) continue;
      for (const Row& row : table->rows) {
        std::vector<std::string> cells;
        for (const Cell& cell : row.cells) {
          Collector collector;
          collector.add(cell);
          cells.push_back(collector.text);
        }
        rows.push_back(std::move(cells));
      }
    }
  }
  return rows;
}

}  // namespace sw::testing
