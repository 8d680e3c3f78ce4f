// SPDX-License-Identifier: GPL-3.0-or-later
#include "report_print/figure_paint.h"

#include <QFontMetricsF>
#include <QImage>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <array>
#include <cmath>

namespace sw::report_print {

namespace {

using figure::Figure;
using figure::Item;
using figure::Mark;
using figure::MarkShape;
using figure::Path;
using figure::Point;
using figure::Room;
using figure::Side;
using figure::Stroke;
using figure::Text;
using figure::Tone;

constexpr double kGap = 0.25;    // em, between a text and its point
constexpr double kApart = 0.08;  // em, between two texts
constexpr std::array kSides{Side::Right,      Side::Left,       Side::Above,     Side::Below,
                            Side::AboveRight, Side::BelowRight, Side::AboveLeft, Side::BelowLeft};
constexpr std::array kDistances{1.0, 3.0, 5.0, 8.0};

double emOf(const FigureLook& look) {
  return look.font.pixelSize();
}

QFont fontFor(const Text& text, const FigureLook& look) {
  QFont font = look.font;
  font.setPixelSize(std::max(1, static_cast<int>(std::lround(emOf(look) * text.size))));
  font.setBold(text.strong);
  return font;
}

QRectF boxAt(const Text& text, Side side, QSizeF size, double em, double distance) {
  const figure::Way way = figure::wayTo(side);
  const bool corner = way.x != 0 && way.y != 0;
  // At a corner there is little between the two, or the text would seem to belong to nothing.
  const double gap = (corner && distance <= 1 ? 0.1 : kGap * distance) * em;
  const double x = text.at.x * em + way.x * (gap + size.width() / 2);
  const double y = text.at.y * em + way.y * (gap * 0.6 + size.height() / 2);
  return {x - size.width() / 2, y - size.height() / 2, size.width(), size.height()};
}

bool isFree(const QRectF& box, const QRectF& paper, const std::vector<PlacedText>& placed,
            double apart) {
  if (!paper.contains(box)) return false;
  const QRectF around = box.adjusted(-apart, -apart, apart, apart);
  return std::none_of(placed.begin(), placed.end(),
                      [&](const PlacedText& other) { return other.box.intersects(around); });
}

/// Moved by as little as brings it onto the paper.
QRectF onto(QRectF box, const QRectF& paper) {
  if (box.left() < paper.left()) box.moveLeft(paper.left());
  if (box.right() > paper.right()) box.moveRight(paper.right());
  if (box.top() < paper.top()) box.moveTop(paper.top());
  if (box.bottom() > paper.bottom()) box.moveBottom(paper.bottom());
  return box;
}

void place(const Text& text, const QRectF& paper, const FigureLook& look, TextPlaces& places) {
  const double em = emOf(look);
  const QFont font = fontFor(text, look);
  const QFontMetricsF metrics(font);
  const QString words = QString::fromStdString(text.text);
  const QSizeF size(metrics.horizontalAdvance(words), metrics.ascent() + metrics.descent());
  const QRectF wanted = onto(boxAt(text, text.side, size, em, 1.0), paper);
  const double apart = kApart * em;
  if (isFree(wanted, paper, places.placed, apart)) {
    places.placed.push_back({wanted, &text, font});
    return;
  }
  if (text.room == Room::Optional) {
    places.leftOut.push_back(&text);
    return;
  }
  if (text.room == Room::Movable) {
    for (const double distance : kDistances) {
      for (const Side side : kSides) {
        const QRectF box = boxAt(text, side, size, em, distance);
        if (!isFree(box, paper, places.placed, apart)) continue;
        places.placed.push_back({box, &text, font});
        return;
      }
    }
  }
  places.crowded.push_back(&text);
  places.placed.push_back({wanted, &text, font});
}

QPolygonF polygonOf(const std::vector<Point>& points, double em) {
  QPolygonF polygon;
  for (const Point& point : points) polygon << QPointF(point.x * em, point.y * em);
  return polygon;
}

void paintPath(QPainter& painter, const Path& path, const FigureLook& look) {
  const double em = emOf(look);
  const QColor colour = look.colour(path.tone);
  const QPolygonF polygon = polygonOf(path.points, em);
  QPen pen(Qt::NoPen);
  if (path.stroke != Stroke::None) {
    pen = QPen(colour, path.width * em, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
    if (path.stroke == Stroke::Dashed) pen.setDashPattern({3.5, 3.0});
  }
  painter.setPen(pen);
  QColor fill = colour;
  fill.setAlphaF(static_cast<float>(path.fill));
  painter.setBrush(path.fill > 0 ? QBrush(fill) : QBrush(Qt::NoBrush));
  if (path.closed) {
    painter.drawPolygon(polygon);
  } else {
    painter.drawPolyline(polygon);
  }
}

void paintMark(QPainter& painter, const Mark& mark, const FigureLook& look) {
  const double em = emOf(look);
  const QColor colour = look.colour(mark.tone);
  const bool open = mark.shape == MarkShape::Ring || mark.shape == MarkShape::Cross;
  painter.setPen(QPen(colour, (open ? 0.14 : 0.05) * em, Qt::SolidLine, Qt::RoundCap));
  painter.setBrush(open ? QBrush(Qt::NoBrush) : QBrush(colour));
  for (const auto& outline : figure::markOutlines(mark)) {
    const QPolygonF polygon = polygonOf(outline, em);
    if (mark.shape == MarkShape::Cross) {
      painter.drawPolyline(polygon);
    } else {
      painter.drawPolygon(polygon);
    }
  }
}

}  // namespace

FigureLook printLook(double emPixels) {
  QFont font(QStringLiteral("DejaVu Sans"));
  font.setPixelSize(static_cast<int>(std::lround(emPixels)));
  return {font,
          [](Tone tone) {
            const figure::Colour colour = figure::printColour(tone);
            return QColor(colour.red, colour.green, colour.blue);
          },
          QColor(Qt::white)};
}

TextPlaces placeTexts(const Figure& figure, const FigureLook& look) {
  const double em = emOf(look);
  const QRectF paper(0, 0, figure.size.width * em, figure.size.height * em);
  TextPlaces places;
  for (const Room room : {Room::Fixed, Room::Movable, Room::Optional}) {
    for (const Item& item : figure.items) {
      const auto* text = std::get_if<Text>(&item);
      if (text != nullptr && text->room == room && !text->text.empty()) {
        place(*text, paper, look, places);
      }
    }
  }
  return places;
}

void paint(QPainter& painter, const Figure& figure, const FigureLook& look) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  for (const Item& item : figure.items) {
    if (const auto* path = std::get_if<Path>(&item)) paintPath(painter, *path, look);
    if (const auto* mark = std::get_if<Mark>(&item)) paintMark(painter, *mark, look);
  }
  for (const PlacedText& placed : placeTexts(figure, look).placed) {
    if (look.ground.isValid()) {
      QColor veil = look.ground;
      veil.setAlphaF(0.75F);
      painter.fillRect(placed.box, veil);
    }
    painter.setFont(placed.font);
    painter.setPen(look.colour(placed.text->tone));
    const double ascent = QFontMetricsF(placed.font).ascent();
    painter.drawText(QPointF(placed.box.left(), placed.box.top() + ascent),
                     QString::fromStdString(placed.text->text));
  }
  painter.restore();
}

QImage picture(const Figure& figure, const FigureLook& look) {
  const double em = emOf(look);
  QImage image(static_cast<int>(std::ceil(figure.size.width * em)),
               static_cast<int>(std::ceil(figure.size.height * em)), QImage::Format_ARGB32);
  image.fill(look.ground.isValid() ? look.ground : QColor(Qt::white));
  QPainter painter(&image);
  paint(painter, figure, look);
  return image;
}

}  // namespace sw::report_print
