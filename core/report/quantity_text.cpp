// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/quantity_text.h"

#include <algorithm>
#include <cmath>

#include "units/format.h"

namespace sw::report {

namespace {

/// Digits that carry meaning: "0.045" has two, "25.0" three.
int significantDigits(const std::string& number) {
  const auto first = number.find_first_of("123456789");
  if (first == std::string::npos) return 1;
  return static_cast<int>(std::count_if(number.begin() + static_cast<std::ptrdiff_t>(first),
                                        number.end(), [](char c) { return c != '.'; }));
}

QString sameIn(const TypedQuantity& quantity, const Unit& unit) {
  const int digits = std::clamp(significantDigits(quantity.number), 3, 6);
  const std::string text = displayText(quantity.si, {unit.kind, "", unit.toSi}, digits);
  return withUnit(text, std::string(unit.symbol));
}

QString rangeText(const std::optional<TypedQuantity>& min, const std::optional<TypedQuantity>& max,
                  bool withSi) {
  const auto text = [&](const TypedQuantity& figure) {
    return withSi ? typedAndSi(figure) : typed(figure);
  };
  if (min && max) return text(*min) + QStringLiteral(" to ") + text(*max);
  if (min) return QStringLiteral("at least ") + text(*min);
  if (max) return QStringLiteral("at most ") + text(*max);
  return {};
}

QString bracketed(const QString& text) {
  return text.isEmpty() ? text : QStringLiteral(" (") + text + QStringLiteral(")");
}

}  // namespace

QString unitText(const std::string& symbol) {
  if (symbol == "deg") return QStringLiteral("°");
  if (symbol == "um") return QStringLiteral("µm");
  if (symbol == "cm3") return QStringLiteral("cm³");
  if (symbol == "kgf/cm2") return QStringLiteral("kgf/cm²");
  return fromUtf8(symbol).replace(QChar(u' '), QChar(kNoBreak));
}

QString withUnit(const std::string& number, const std::string& symbol) {
  QString text = fromUtf8(number);
  if (text.startsWith(QChar(u'-'))) text.replace(0, 1, QChar(u'\u2212'));
  if (symbol.empty()) return text;
  if (symbol != "deg") text += QChar(kNoBreak);
  return text + unitText(symbol);
}

QString typed(const TypedQuantity& quantity) {
  return withUnit(quantity.number, quantity.unit);
}

QString typedAndSi(const TypedQuantity& quantity) {
  const Unit& own = defaultUnit(quantity.kind);
  const auto unit = findUnit(quantity.kind, quantity.unit);
  const bool shown = !unit || unit->toSi == own.toSi || quantity.kind == QuantityKind::Number;
  return shown ? typed(quantity) : typed(quantity) + bracketed(sameIn(quantity, own));
}

QString valueWithUncertainty(QuantityKind kind, double value, double expanded) {
  const Unit& unit = defaultUnit(kind);
  const auto pair = roundToUncertainty(value / unit.toSi, expanded / unit.toSi);
  if (!(expanded > 0)) return siText(kind, value, 6);
  return QStringLiteral("(") + withUnit(pair.value, "") + QChar(kNoBreak) + QStringLiteral("±") +
         QChar(kNoBreak) + fromUtf8(pair.uncertainty) + QStringLiteral(")") + QChar(kNoBreak) +
         unitText(std::string(unit.symbol));
}

QString siText(QuantityKind kind, double value, int significant) {
  const Unit& unit = defaultUnit(kind);
  return withUnit(displayText(value, {kind, "", unit.toSi}, significant), std::string(unit.symbol));
}

QString limitText(const model::SpecItem& limit) {
  const bool second = limit.secondMin || limit.secondMax;
  return rangeText(limit.min, limit.max, !second) +
         bracketed(rangeText(limit.secondMin, limit.secondMax, false));
}

QString torqueText(const model::SpecItem& spec) {
  const auto& low = spec.value ? spec.value : spec.min;
  const auto& secondLow = spec.secondValue ? spec.secondValue : spec.secondMin;
  const bool second = secondLow || spec.secondMax;
  const auto figures = [](const std::optional<TypedQuantity>& from,
                          const std::optional<TypedQuantity>& to, bool withSi) {
    if (from && to) return rangeText(from, to, withSi);
    if (from) return withSi ? typedAndSi(*from) : typed(*from);
    return rangeText(from, to, withSi);
  };
  return figures(low, spec.max, !second) + bracketed(figures(secondLow, spec.secondMax, false));
}

QString timeText(const Timestamp& time) {
  const QString iso = fromUtf8(toIso(time));
  return iso.left(10) + QChar(u' ') + iso.mid(11, 5);
}

QString dateText(const Date& date) {
  return fromUtf8(toIso(date));
}

QString dateText(const Timestamp& time) {
  return dateText(localDate(time));
}

QString moneyText(std::int64_t minor, const std::string& currency) {
  const auto magnitude = static_cast<double>(std::llabs(minor)) / 100.0;
  return withUnit((minor < 0 ? "-" : "") + fixedDecimal(magnitude, 2), currency);
}

QString minutesText(double minutes) {
  const auto whole = static_cast<std::int64_t>(std::llround(minutes));
  const QString rest = QString::number(whole % 60) + QChar(kNoBreak) + QStringLiteral("min");
  if (whole < 60) return rest;
  const QString hours = QString::number(whole / 60) + QChar(kNoBreak) + QStringLiteral("h");
  return whole % 60 == 0 ? hours : hours + QChar(kNoBreak) + rest;
}

}  // namespace sw::report
