// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/bearings/rock_test_picture.h"

#include <algorithm>

#include "compute/verdict_mark.h"
#include "figure/drawing.h"
#include "figure/number_line.h"

namespace sw::compute {

namespace {

using figure::Figure;
using figure::Mark;
using figure::MarkShape;
using figure::NumberLine;
using figure::Point;
using figure::Range;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;
using mechanics::PlayState;
using mechanics::RockTest;
using mechanics::RockTestInput;

constexpr double kLeft = 5.4;  // em, for the names of the rows
constexpr double kTop = 2.2;
constexpr double kBarShare = 0.42;  // of a row
constexpr double kWords = 1.5;      // em above a bar

struct Rocks {
  double swivel = 0, all = 0;  ///< mm
};

Range rockRange(const RockTestInput& input, const RockTest& test, const Rocks& rocks,
                const std::optional<Length>& expected) {
  Range range{0, rocks.all};
  for (const auto* readings : {&input.brakeOn, &input.brakeOff}) {
    for (const Length reading : *readings) range.include(inMillimetres(reading));
  }
  const double u = inMillimetres(test.bearing.rock.expandedUncertainty);
  range.include(rocks.swivel + inMillimetres(input.noticeable));
  range.include(rocks.all + u);
  if (expected) range.include(rocks.swivel + inMillimetres(*expected));
  range.high *= 1.08;
  range.low = 0;
  return range;
}

struct Row {
  double top = 0, bottom = 0;  ///< of its bar
  [[nodiscard]] double middle() const { return 0.5 * (top + bottom); }
};

void drawReadings(Figure& figure, const NumberLine& scale, const Row& row,
                  const std::vector<Length>& readings) {
  for (const Length reading : readings) {
    figure.add(
        Mark{{scale.at(inMillimetres(reading)), row.middle()}, MarkShape::Ring, Tone::Ink, 0.3});
  }
}

/// What does not matter here ends at this line, from the start of the part.
void drawNoticeable(Figure& figure, const NumberLine& scale, const Row& row, double value,
                    const std::string& words) {
  const double x = scale.at(value);
  figure.add(figure::dashed({x, row.top}, {x, row.bottom + 0.4}, Tone::Limit));
  if (words.empty()) return;
  figure.add(Text{{x, row.bottom + 0.35}, words, Side::Below, Room::Movable, Tone::Limit, 0.8});
}

void drawPart(Figure& figure, const NumberLine& scale, const Row& row, Point span, Tone tone,
              const std::string& words) {
  const double left = scale.at(span.x);
  const double right = scale.at(span.y);
  figure.add(figure::box({left, row.top}, {right, row.bottom}, tone, 0.4));
  if (words.empty()) return;
  figure.add(Text{{left, row.top - 0.1}, words, Side::AboveRight, Room::Movable, tone, 0.9, true});
}

struct Conclusion {
  std::string words;
  MarkShape mark;
  Tone tone;
};

Conclusion conclusionOf(const RockTest& test) {
  if (test.reversed) return {"less with the brake off", MarkShape::Diamond, Tone::Doubt};
  const bool bearing = test.bearing.state == PlayState::Found;
  const bool swivel = test.swivel.state == PlayState::Found;
  if (bearing && swivel) return {"bearing and swivel", MarkShape::Square, Tone::Bad};
  if (bearing) return {"wheel bearing", MarkShape::Square, Tone::Bad};
  if (swivel) return {"swivel or suspension", MarkShape::Square, Tone::Bad};
  const bool open =
      test.bearing.state == PlayState::CannotTell || test.swivel.state == PlayState::CannotTell;
  if (open) return {"cannot tell", MarkShape::Diamond, Tone::Doubt};
  return {"nothing noticeable", MarkShape::Disc, Tone::Good};
}

std::string amount(const mechanics::RockPart& part) {
  return measuredWords(part.rock.value.si(), part.rock.expandedUncertainty.si(),
                       defaultUnit(QuantityKind::Length));
}

}  // namespace

Figure rockTestPicture(const RockTestInput& input, const RockTest& test,
                       const std::optional<Length>& expected, figure::Size size) {
  Figure figure;
  figure.size = size;
  const Conclusion conclusion = conclusionOf(test);
  figure.title = "Rock with the brake on and off";
  figure.description = "Swivel " + amount(test.swivel) + ", wheel bearing " + amount(test.bearing);
  const double swivel = inMillimetres(test.swivel.rock.value);
  const Rocks rocks{swivel, swivel + inMillimetres(test.bearing.rock.value)};
  const double bottom = size.height - figure::kRoomBelowLine;
  const double pitch = (bottom - kTop) / 2;
  const double bar = kBarShare * pitch;
  const Row on{kTop + kWords, kTop + kWords + bar};
  const Row off{on.top + pitch, on.bottom + pitch};
  const NumberLine scale(kLeft, size.width - 1.0, rockRange(input, test, rocks, expected));
  scale.draw(figure, kTop, bottom, "rock at the rim, mm");
  figure.add(Text{{kLeft - 0.5, on.middle()}, "brake on", Side::Left, Room::Fixed, Tone::Ink, 0.9});
  figure.add(
      Text{{kLeft - 0.5, off.middle()}, "brake off", Side::Left, Room::Fixed, Tone::Ink, 0.9});
  drawPart(figure, scale, on, {0, rocks.swivel}, Tone::Second, "swivel " + amount(test.swivel));
  drawPart(figure, scale, off, {0, std::min(rocks.swivel, rocks.all)}, Tone::Second, "");
  drawPart(figure, scale, off, {rocks.swivel, rocks.all}, Tone::Accent,
           "bearing " + amount(test.bearing));
  figure.add(figure::dashed({scale.at(rocks.swivel), on.bottom}, {scale.at(rocks.swivel), off.top},
                            Tone::Second, 0.1));
  const double noticeable = inMillimetres(input.noticeable);
  drawNoticeable(figure, scale, on, noticeable, "noticeable");
  drawNoticeable(figure, scale, off, rocks.swivel + noticeable, "");
  if (expected) {
    const Point at{scale.at(rocks.swivel + inMillimetres(*expected)), off.bottom};
    figure.add(Mark{{at.x, at.y + 0.35}, MarkShape::Triangle, Tone::Accent, 0.45});
    figure.add(Text{{at.x, at.y + 0.6},
                    "expected of its float",
                    Side::BelowRight,
                    Room::Movable,
                    Tone::Accent,
                    0.8});
  }
  drawReadings(figure, scale, on, input.brakeOn);
  drawReadings(figure, scale, off, input.brakeOff);
  figure::headline(figure, conclusion.words, conclusion.mark, conclusion.tone);
  return figure;
}

}  // namespace sw::compute
