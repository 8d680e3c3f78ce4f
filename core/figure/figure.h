// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

// A picture as plain values: what is drawn, not with what. The unit of length is the size of its
// text (1 em), x to the right and y down, so that a picture is made for the room it gets and its
// text always has the size of the text around it. Colours are roles. Painters place the texts: they
// know how wide one is.

namespace sw::figure {

struct Size {
  double width = 0;
  double height = 0;
};

struct Point {
  double x = 0;
  double y = 0;
};

enum class Tone {
  Ink,       ///< what the picture is about
  Quiet,     ///< axes and their numbers
  Grid,      ///< behind everything
  Accent,    ///< a prediction or a fitted line
  Limit,     ///< limits
  Good,      ///< within
  Doubt,     ///< undecided
  Bad,       ///< outside
  Second,    ///< a second set of data beside the first
  Material,  ///< parts in a drawing
};

struct Colour {
  unsigned char red = 0;
  unsigned char green = 0;
  unsigned char blue = 0;
};
/// On white paper.
[[nodiscard]] Colour printColour(Tone tone);

enum class Stroke { None, Solid, Dashed };

/// An open or closed run of straight pieces.
struct Path {
  std::vector<Point> points;
  Tone tone = Tone::Ink;
  double width = 0.12;
  Stroke stroke = Stroke::Solid;
  bool closed = false;
  /// Filled with its tone at this opacity, 0 to 1; 0 = not filled.
  double fill = 0;
};

enum class MarkShape { Disc, Ring, Square, Diamond, Cross, Triangle };

struct Mark {
  Point at;
  MarkShape shape = MarkShape::Disc;
  Tone tone = Tone::Ink;
  double radius = 0.3;
};

/// Where a text lies as seen from its point.
enum class Side { Centre, Right, Left, Above, Below, AboveRight, AboveLeft, BelowRight, BelowLeft };

/// What a painter may do with a text for which there is no room.
enum class Room {
  Fixed,     ///< stays where it is
  Movable,   ///< another side of its point will do
  Optional,  ///< may be left out, like a number of an axis
};

struct Text {
  Point at;
  std::string text;
  Side side = Side::Right;
  Room room = Room::Fixed;
  Tone tone = Tone::Ink;
  double size = 1.0;  ///< em
  bool strong = false;
};

using Item = std::variant<Path, Mark, Text>;

struct Figure {
  Size size;
  std::string title;        ///< for those who do not see it, and for captions
  std::string description;  ///< what it shows, in a sentence
  std::vector<Item> items;

  void add(Path path);
  void add(const Mark& mark);
  void add(Text text);
  void add(Item item);
};

/// -1, 0 or 1 to the right and down.
struct Way {
  int x = 0;
  int y = 0;
};
/// From the point to its text.
[[nodiscard]] Way wayTo(Side side);

/// Points of a circle arc, degrees clockwise from the top.
[[nodiscard]] std::vector<Point> arc(Point centre, double radius, double fromDegrees,
                                     double toDegrees);
/// The outlines of a mark; closed but for a cross, which is two strokes.
[[nodiscard]] std::vector<std::vector<Point>> markOutlines(const Mark& mark);
[[nodiscard]] Point onCircle(Point centre, double radius, double degrees);

}  // namespace sw::figure
