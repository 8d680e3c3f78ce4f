// SPDX-License-Identifier: GPL-3.0-or-later
#include "figure/svg.h"

#include <array>
#include <charconv>
#include <string_view>

namespace sw::figure {

namespace {

std::string colourOf(Tone tone) {
  const Colour colour = printColour(tone);
  std::string text = "#";
  for (const unsigned part : {colour.red, colour.green, colour.blue}) {
    constexpr std::string_view kDigits = "0123456789abcdef";
    text += kDigits[part / 16];
    text += kDigits[part % 16];
  }
  return text;
}

std::string number(double value) {
  std::array<char, 32> text{};
  const auto end =
      std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed, 2);
  return {text.data(), end.ptr};
}

std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      default:
        out += c;
    }
  }
  return out;
}

class SvgWriter {
 public:
  explicit SvgWriter(double em) : m_em(em) {}

  std::string write(const Figure& figure) {
    const std::string width = px(figure.size.width);
    const std::string height = px(figure.size.height);
    m_out = "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"" + width +
            "\" height=\"" + height + "\" viewBox=\"0 0 " + width + " " + height +
            "\" font-family=\"'DejaVu Sans', sans-serif\"><title>" + escaped(figure.title) +
            "</title><desc>" + escaped(figure.description) + "</desc>";
    for (const Item& item : figure.items) {
      std::visit([this](const auto& each) { put(each); }, item);
    }
    return m_out + "</svg>";
  }

 private:
  [[nodiscard]] std::string px(double em) const { return number(em * m_em); }

  void put(const Path& path) {
    m_out += path.closed ? "<polygon points=\"" : "<polyline points=\"";
    for (const Point& point : path.points) m_out += px(point.x) + "," + px(point.y) + " ";
    const std::string colour = colourOf(path.tone);
    m_out += "\" fill=\"" + (path.fill > 0 ? colour : "none") + "\" fill-opacity=\"" +
             number(path.fill) + "\"";
    if (path.stroke != Stroke::None) {
      m_out += " stroke=\"" + colour + "\" stroke-width=\"" + px(path.width) + "\"";
    }
    if (path.stroke == Stroke::Dashed) {
      m_out += " stroke-dasharray=\"" + px(0.5) + " " + px(0.35) + "\"";
    }
    m_out += "/>";
  }

  void put(const Mark& mark) {
    const std::string colour = colourOf(mark.tone);
    if (mark.shape == MarkShape::Disc || mark.shape == MarkShape::Ring) {
      const bool full = mark.shape == MarkShape::Disc;
      m_out += "<circle cx=\"" + px(mark.at.x) + "\" cy=\"" + px(mark.at.y) + "\" r=\"" +
               px(mark.radius) + "\" fill=\"" + (full ? colour : "none") + "\" stroke=\"" + colour +
               "\" stroke-width=\"" + px(0.1) + "\"/>";
      return;
    }
    for (const Path& path : outlineOf(mark)) put(path);
  }

  static std::vector<Path> outlineOf(const Mark& mark);

  void put(const Text& text) {
    const auto [x, y] = wayTo(text.side);
    const char* const anchor = x > 0 ? "start" : x < 0 ? "end" : "middle";
    const int dx = y == 0 ? x : 0;  // a corner needs no gap
    m_out += "<text x=\"" + px(text.at.x + 0.3 * dx) + "\" y=\"" +
             px(text.at.y + (0.35 + 0.75 * y) * text.size) + "\" font-size=\"" + px(text.size) +
             "\" text-anchor=\"" + anchor + "\" fill=\"" + colourOf(text.tone) + "\"" +
             (text.strong ? " font-weight=\"bold\"" : "") + ">" + escaped(text.text) + "</text>";
  }

  double m_em;
  std::string m_out;
};

std::vector<Path> SvgWriter::outlineOf(const Mark& mark) {
  std::vector<Path> paths;
  for (std::vector<Point>& points : markOutlines(mark)) {
    Path path;
    path.points = std::move(points);
    path.tone = mark.tone;
    path.closed = mark.shape != MarkShape::Cross;
    path.fill = path.closed ? 1.0 : 0.0;
    path.width = path.closed ? 0.05 : 0.15;
    paths.push_back(std::move(path));
  }
  return paths;
}

}  // namespace

std::string toSvg(const Figure& figure, double em) {
  return SvgWriter(em).write(figure);
}

}  // namespace sw::figure
