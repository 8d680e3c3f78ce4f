// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <optional>
#include <utility>
#include <variant>
#include <vector>

// A printed document as plain values: what stands on it, not how it is drawn. Texts are plain
// texts; they become markup in html.cpp and nowhere else.

namespace sw::report {

/// The shape beside a verdict's word, so that a grey print still tells them apart.
enum class MarkShape {
  None,
  Within,       ///< filled circle
  Undecided,    ///< half-filled diamond
  Outside,      ///< filled square
  NotMeasured,  ///< dashed ring
};

enum class Emphasis { Plain, Strong, Struck, Quiet };

struct Span {
  QString text;
  Emphasis emphasis = Emphasis::Plain;
  MarkShape mark = MarkShape::None;
};
using Line = std::vector<Span>;

struct Cell {
  std::vector<Line> lines;
};

enum class Align { Left, Right, Centre };

struct Column {
  QString head;
  int widthPercent = 0;
  Align align = Align::Left;
};

/// Body rows have a cell a column; a group row has one cell across all of them.
enum class RowKind { Body, Group };
struct Row {
  std::vector<Cell> cells;
  RowKind kind = RowKind::Body;
};

struct Table {
  std::vector<Column> columns;
  std::vector<Row> rows;
};

struct KeyValues {
  std::vector<std::pair<QString, Cell>> items;
  int pairsAcross = 1;
};

enum class TextLook { Normal, Lead, Small };
struct Paragraph {
  Line line;
  TextLook look = TextLook::Normal;
};

struct Bullets {
  std::vector<Line> items;
  TextLook look = TextLook::Normal;
};

/// Pictures by the hash the book keeps them under; whoever renders brings the bytes.
struct Pictures {
  struct Item {
    QString hash;
    QString caption;
  };
  std::vector<Item> items;
};

using Block = std::variant<KeyValues, Table, Paragraph, Bullets, Pictures>;

struct Section {
  QString title;  ///< empty = no heading
  std::vector<Block> blocks;
};

enum class Paper { A4, Letter };
/// A sheet is read, a card is worked from: small type, two columns, boxes to write in.
enum class Style { Sheet, Card };

struct Document {
  Style style = Style::Sheet;
  Paper paper = Paper::A4;
  QString title;
  QString subtitle;
  QString issuer;   ///< the shop
  QString running;  ///< on every page: vehicle and job number
  std::vector<Section> sections;
  std::vector<QString> footer;
};

[[nodiscard]] inline Line plain(QString text) {
  return {Span{std::move(text)}};
}
[[nodiscard]] inline Line styled(QString text, Emphasis emphasis) {
  return {Span{std::move(text), emphasis, MarkShape::None}};
}
[[nodiscard]] inline Cell cellOf(QString text) {
  return {{plain(std::move(text))}};
}

}  // namespace sw::report
