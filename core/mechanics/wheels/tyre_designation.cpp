// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/tyre_designation.h"

#include <array>
#include <cmath>
#include <utility>

#include "base/words.h"
#include "mechanics/wheels/load_index.h"
#include "mechanics/wheels/marking_scanner.h"

namespace sw {

template <>
struct Words<mechanics::SizeForm> {
  static constexpr std::array<std::pair<mechanics::SizeForm, std::string_view>, 4> table{
      {{mechanics::SizeForm::MetricWithAspect, "metric_with_aspect"},
       {mechanics::SizeForm::MetricWithoutAspect, "metric_without_aspect"},
       {mechanics::SizeForm::Flotation, "flotation"},
       {mechanics::SizeForm::InchWidth, "inch_width"}}};
};

template <>
struct Words<mechanics::TyreConstruction> {
  static constexpr std::array<std::pair<mechanics::TyreConstruction, std::string_view>, 3> table{
      {{mechanics::TyreConstruction::Radial, "radial"},
       {mechanics::TyreConstruction::Diagonal, "diagonal"},
       {mechanics::TyreConstruction::BiasBelted, "bias_belted"}}};
};

namespace mechanics {

namespace {

constexpr std::size_t kLongestMarking = 60;

struct Structure {
  std::string_view text;
  TyreConstruction construction;
  std::optional<char> speedSymbol;
};

constexpr std::array<Structure, 9> kStructures{{{"ZR", TyreConstruction::Radial, std::nullopt},
                                                {"VR", TyreConstruction::Radial, std::nullopt},
                                                {"SR", TyreConstruction::Radial, 'S'},
                                                {"HR", TyreConstruction::Radial, 'H'},
                                                {"RF", TyreConstruction::Radial, std::nullopt},
                                                {"R", TyreConstruction::Radial, std::nullopt},
                                                {"-", TyreConstruction::Diagonal, std::nullopt},
                                                {"D", TyreConstruction::Diagonal, std::nullopt},
                                                {"B", TyreConstruction::BiasBelted, std::nullopt}}};

/// What may stand behind the rim and its one spelling. Longer before shorter.
constexpr std::array<std::pair<std::string_view, std::string_view>, 19> kMarks{
    {{"EXTRA LOAD", "XL"},
     {"REINFORCED", "RF"},
     {"REINF", "RF"},
     {"TUBELESS", "TL"},
     {"TUBE TYPE", "TT"},
     {"TUBETYPE", "TT"},
     {"M+S", "M+S"},
     {"M&S", "M+S"},
     {"M/S", "M+S"},
     {"M-S", "M+S"},
     {"M.S", "M+S"},
     {"MS", "M+S"},
     {"XL", "XL"},
     {"RF", "RF"},
     {"LT", "LT"},
     {"TT", "TT"},
     {"TL", "TL"},
     {"CP", "CP"},
     {"C", "C"}}};

bool between(double value, double least, double most) {
  return value >= least && value <= most;
}

bool isMetricWidth(const MarkedNumber& number) {
  return !number.hasPoint && between(number.value, 105, 455) && std::fmod(number.value, 10) == 5;
}

bool isInchWidth(const MarkedNumber& number) {
  return between(number.value, 3, 19);
}

/// Reads one marking from front to back; each part says whether it understood what it found.
class Reader {
 public:
  explicit Reader(std::string_view text) : m_scan(text) {}

  [[nodiscard]] bool prefixAndSize();
  [[nodiscard]] bool structureAndRim();
  [[nodiscard]] bool rest();
  [[nodiscard]] std::string unread() const { return m_scan.rest(); }
  [[nodiscard]] TyreDesignation take() { return std::move(m_tyre); }

 private:
  [[nodiscard]] bool metric(const MarkedNumber& width);
  [[nodiscard]] bool flotation(const MarkedNumber& diameter);
  [[nodiscard]] bool widthAlone(const MarkedNumber& width);
  [[nodiscard]] bool number(const MarkedNumber& first);
  [[nodiscard]] bool mark();

  MarkingScanner m_scan;
  TyreDesignation m_tyre;
};

bool Reader::prefixAndSize() {
  for (const std::string_view prefix : {"LT", "P"}) {
    if (!m_scan.take(prefix)) continue;
    m_tyre.marks.emplace_back(prefix);
    break;
  }
  const auto first = m_scan.number();
  if (!first) return false;
  if (m_scan.take("/")) return metric(*first);
  if (m_scan.take("X")) return flotation(*first);
  return widthAlone(*first);
}

bool Reader::metric(const MarkedNumber& width) {
  const auto aspect = m_scan.number();
  if (!isMetricWidth(width) || !aspect || aspect->hasPoint || !between(aspect->value, 20, 100)) {
    return false;
  }
  m_tyre.form = SizeForm::MetricWithAspect;
  m_tyre.sectionWidth = millimetres(width.value);
  m_tyre.aspect = aspect->value;
  return true;
}

bool Reader::flotation(const MarkedNumber& diameter) {
  const auto width = m_scan.number();
  if (!width || !between(diameter.value, 20, 60) || !between(width->value, 5, 25)) return false;
  m_tyre.form = SizeForm::Flotation;
  m_tyre.overallDiameter = inches(diameter.value);
  m_tyre.sectionWidth = inches(width->value);
  return true;
}

bool Reader::widthAlone(const MarkedNumber& width) {
  if (isMetricWidth(width)) {
    m_tyre.form = SizeForm::MetricWithoutAspect;
    m_tyre.sectionWidth = millimetres(width.value);
    return true;
  }
  m_tyre.form = SizeForm::InchWidth;
  m_tyre.sectionWidth = inches(width.value);
  return isInchWidth(width);
}

bool Reader::structureAndRim() {
  for (const Structure& structure : kStructures) {
    if (!m_scan.take(structure.text)) continue;
    m_tyre.construction = structure.construction;
    m_tyre.speedSymbol = structure.speedSymbol;
    const auto rim = m_scan.number();
    if (!rim || !between(rim->value, 8, 30) || std::fmod(rim->value * 2, 1) != 0) return false;
    m_tyre.rimCode = rim->value;
    return !m_tyre.overallDiameter || *m_tyre.overallDiameter > inches(rim->value);
  }
  return false;
}

bool Reader::rest() {
  while (!m_scan.atEnd()) {
    const auto next = m_scan.number();
    if (!(next ? number(*next) : mark())) return false;
  }
  return true;
}

bool Reader::number(const MarkedNumber& first) {
  if (first.hasPoint) return false;
  if (m_scan.takeWord("PR")) {
    if (m_tyre.plyRating || !between(first.value, 2, 40)) return false;
    m_tyre.plyRating = static_cast<int>(first.value);
    return true;
  }
  if (m_tyre.loadIndex || !between(first.value, 40, 200)) return false;
  m_tyre.loadIndex = static_cast<int>(first.value);
  if (m_scan.take("/")) {
    const auto dual = m_scan.number();
    if (!dual || dual->hasPoint || !between(dual->value, 40, 200)) return false;
    m_tyre.loadIndexDual = static_cast<int>(dual->value);
  }
  const auto letter = m_scan.letterAlone();
  if (!letter || !speedOfSymbol(*letter)) return true;
  m_scan.skipLetter();
  // A symbol in the structure ("HR") and another behind the index must not contradict.
  if (m_tyre.speedSymbol && *m_tyre.speedSymbol != *letter) return false;
  m_tyre.speedSymbol = letter;
  return true;
}

bool Reader::mark() {
  for (const auto& [spelling, mark] : kMarks) {
    if (!m_scan.takeWord(spelling)) continue;
    m_tyre.marks.emplace_back(mark);
    return true;
  }
  return false;
}

}  // namespace

std::string_view word(SizeForm form) {
  return wordOf(form);
}
std::string_view word(TyreConstruction construction) {
  return wordOf(construction);
}

Result<TyreDesignation> parseTyreDesignation(std::string_view text) {
  if (text.size() > kLongestMarking) {
    return fail(ErrorCode::InvalidInput, "tyre.not_understood", "tyre");
  }
  Reader reader(text);
  if (!reader.prefixAndSize() || !reader.structureAndRim() || !reader.rest()) {
    return fail(ErrorCode::InvalidInput, "tyre.not_understood", "tyre",
                {{"text", std::string(text)}, {"part", reader.unread()}});
  }
  return reader.take();
}

}  // namespace mechanics
}  // namespace sw
