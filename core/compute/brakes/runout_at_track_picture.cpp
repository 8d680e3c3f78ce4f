// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/brakes/runout_at_track_picture.h"

#include <algorithm>

#include "compute/verdict_mark.h"
#include "figure/drawing.h"

namespace sw::compute {

namespace {

using figure::Figure;
using figure::Mark;
using figure::MarkShape;
using figure::Point;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;

constexpr double kOverhang = 1.12;   // the disc reaches beyond the middle of the track
constexpr double kPlate = 0.9;       // em, its drawn thickness
constexpr double kRiseShare = 0.46;  // of the height: runout or limit, whichever is more
constexpr double kMostLimit = 3;     // times the runout: a limit further off is not drawn
constexpr double kHub = 0.26;        // of the height

bool limitIsNear(const TrackShown& shown) {
  return shown.limit && *shown.limit <= kMostLimit * shown.runout;
}

/// The section, enlarged along the axle only: what lies left of the axle is lifted.
class Section {
 public:
  Section(const TrackShown& shown, figure::Size size)
      : m_middle(size.width / 2), m_top(0.66 * size.height) {
    const double track = shown.trackRadius.si();
    const double seat = 0.5 * shown.seatDiameter.si();
    const double scale = (size.width / 2 - 1.0) / (kOverhang * std::max(track, seat));
    m_track = track * scale;
    m_seat = seat * scale;
    m_reach = kOverhang * std::max(m_track, m_seat);
    const double drawn =
        limitIsNear(shown) ? std::max(shown.limit->si(), shown.runout.si()) : shown.runout.si();
    m_enlarged = drawn > 0 ? kRiseShare * size.height / drawn : 0;
    m_slope = m_enlarged * shown.runout.si() / (2 * m_track);
  }
  /// The underside of the disc; `from` the axle, to the right. It pivots about the right edge of
  /// the seat.
  [[nodiscard]] Point face(double from) const {
    return {m_middle + from, m_top - m_slope * (m_seat - from)};
  }
  [[nodiscard]] double enlarged(Length rise) const { return m_enlarged * rise.si(); }
  [[nodiscard]] double top() const { return m_top; }
  [[nodiscard]] double middle() const { return m_middle; }
  [[nodiscard]] double track() const { return m_track; }
  [[nodiscard]] double seat() const { return m_seat; }
  [[nodiscard]] double reach() const { return m_reach; }

 private:
  double m_middle, m_top;
  double m_track = 0, m_seat = 0, m_reach = 0, m_slope = 0, m_enlarged = 0;
};

void drawHub(Figure& figure, const Section& section, SeatFault fault) {
  const double bottom = section.top() + kHub * figure.size.height;
  const Point left = section.face(-section.seat());
  const Point right = section.face(section.seat());
  const bool speck = fault == SeatFault::Speck;
  const Point corner{left.x, speck ? section.top() : left.y};
  figure.add(
      figure::outline({corner, right, {right.x, bottom}, {left.x, bottom}}, Tone::Material, 0.3));
  if (!speck) return;
  figure::hatch(figure, {left.x, section.top()}, {right.x, bottom}, Tone::Material, 0.7);
  figure.add(figure::area({left.x, section.top()}, {left.x + 0.8, left.y}, Tone::Bad, 1.0));
}

void drawDisc(Figure& figure, const Section& section) {
  const Point left = section.face(-section.reach());
  const Point right = section.face(section.reach());
  figure.add(figure::outline({left, right, {right.x, right.y - kPlate}, {left.x, left.y - kPlate}},
                             Tone::Ink, 0.18));
  figure.add(figure::dashed({section.middle(), 2.2}, {section.middle(), figure.size.height - 0.4},
                            Tone::Quiet, 0.08));
}

/// Indicator tips at both sides of the track, and how far they differ.
void drawTrack(Figure& figure, const Section& section, const TrackShown& shown) {
  const Point high = section.face(-section.track());
  const Point low = section.face(section.track());
  const Point highTop{high.x, high.y - kPlate};
  const Point lowTop{low.x, low.y - kPlate};
  add(figure, figure::Dimension{.from = {lowTop.x, highTop.y},
                                .to = lowTop,
                                .tone = Tone::Accent,
                                .ends = figure::DimensionEnds::Stroked});
  figure.add(figure::dashed(highTop, {lowTop.x, highTop.y}, Tone::Accent, 0.1));
  figure.add(Text{{lowTop.x, highTop.y},
                  figureWords(shown.runout.si(), QuantityKind::Length) + " at the track",
                  Side::AboveLeft,
                  Room::Movable,
                  Tone::Accent,
                  1.0,
                  true});
}

/// The limit in the same enlargement, or in words where it is far off.
void drawLimit(Figure& figure, const Section& section, const TrackShown& shown) {
  const std::string words =
      "limit " + limitWords(shown.limit->si(), defaultUnit(QuantityKind::Length));
  if (!limitIsNear(shown)) return figure::headline(figure, words);
  const Point low = section.face(section.track());
  const double y = low.y - kPlate - section.enlarged(*shown.limit);
  const double left = section.middle() - section.track();
  figure.add(figure::dashed({left, y}, {low.x + 0.5, y}, Tone::Limit));
  figure.add(Text{{low.x - 0.5, y}, words, Side::AboveLeft, Room::Movable, Tone::Limit, 0.9});
}

void drawWords(Figure& figure, const Section& section, const TrackShown& shown) {
  const bool speck = shown.fault == SeatFault::Speck;
  const Point left = section.face(-section.seat());
  figure.add(Text{{left.x - 0.2, section.top() + 0.5},
                  speck ? "speck" : "hub face",
                  Side::Left,
                  Room::Movable,
                  Tone::Bad,
                  0.9});
  figure.add(Text{{left.x - 0.2, section.top() + 1.7},
                  figureWords(shown.amount.si(), QuantityKind::Length),
                  Side::Left,
                  Room::Movable,
                  Tone::Bad,
                  0.9,
                  true});
  const double bottom = section.top() + kHub * figure.size.height;
  figure.add(Text{{section.middle(), 0.5 * (section.top() + bottom)},
                  "hub",
                  Side::Centre,
                  Room::Fixed,
                  Tone::Ink,
                  0.9});
  figure.add(Text{{0.2, figure.size.height - 0.1},
                  "not to scale along the axle",
                  Side::AboveRight,
                  Room::Optional,
                  Tone::Quiet,
                  0.75});
}

}  // namespace

Figure runoutAtTrackPicture(const TrackShown& shown, figure::Size size) {
  Figure figure;
  figure.size = size;
  figure.title = "A fault at the seat tilts the disc";
  figure.description = figureWords(shown.amount.si(), QuantityKind::Length) +
                       " at the seat becomes " +
                       figureWords(shown.runout.si(), QuantityKind::Length) + " at the track";
  const Section section(shown, size);
  drawHub(figure, section, shown.fault);
  drawDisc(figure, section);
  drawTrack(figure, section, shown);
  drawWords(figure, section, shown);
  if (shown.limit) drawLimit(figure, section, shown);
  return figure;
}

}  // namespace sw::compute
