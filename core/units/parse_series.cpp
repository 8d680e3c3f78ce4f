// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "units/field_unit.h"
#include "units/number_text.h"
#include "units/parse.h"

namespace sw {

namespace {

using field_unit::Item;
using number_text::isBlank;
using number_text::isDigit;
using number_text::kGlue;
using number_text::NumberFault;
using spelling::UnitMatch;

/// One item with where it ended and what went wrong, if anything.
struct CutItem {
  Item item;
  NumberFault fault = NumberFault::None;
  std::size_t end = 0;
};

bool separates(char c) {
  return c == ';' || c == '\n';
}

/// Where the unit that begins at `from` ends: at a separator or where the next number starts.
std::size_t endOfUnit(std::string_view text, std::size_t from) {
  for (std::size_t at = from; at < text.size(); ++at) {
    if (separates(text[at])) return at;
    const bool behindBlank = at > 0 && isBlank(text[at - 1]);
    if (behindBlank && number_text::startsNumber(text.substr(at))) return at;
  }
  return text.size();
}

/// "18<no-break space>5" groups digits, and "18 ,5" may be one number with a stray space.
bool mayBelongToNext(std::string_view text, std::size_t from, bool hasMark) {
  std::size_t at = from;
  bool glued = false;
  while (at < text.size() && isBlank(text[at]) && !separates(text[at])) {
    glued = glued || text[at] == kGlue;
    ++at;
  }
  if (at == from || at >= text.size()) return false;
  return (glued && isDigit(text[at])) || (!hasMark && number_text::isMark(text[at]));
}

CutItem cutItem(std::string_view text, std::size_t from) {
  CutItem cut;
  auto number = number_text::scanNumber(text.substr(from));
  cut.fault = number.fault;
  const std::size_t afterNumber = from + number.length;
  cut.end = endOfUnit(text, std::max(afterNumber, from + 1));
  if (cut.fault == NumberFault::None) {
    cut.end = endOfUnit(text, afterNumber);
    cut.item.unitText = number_text::trimmed(text.substr(afterNumber, cut.end - afterNumber));
    if (mayBelongToNext(text, afterNumber, number.hasMark)) cut.fault = NumberFault::TwoMarks;
  }
  cut.item.text = std::string(number_text::trimmed(text.substr(from, cut.end - from)));
  cut.item.number = std::move(number);
  return cut;
}

Error atPosition(Error error, std::size_t index) {
  error.details.emplace_back("position", std::to_string(index + 1));
  return error;
}

Result<std::vector<Item>> cutItems(std::string_view text, const FieldSpec& field) {
  std::vector<Item> items;
  std::size_t at = 0;
  while (true) {
    while (at < text.size() && (isBlank(text[at]) || separates(text[at]))) ++at;
    if (at >= text.size()) return items;
    CutItem cut = cutItem(text, at);
    if (cut.fault != NumberFault::None) {
      return tl::make_unexpected(
          atPosition(field_unit::numberError(cut.fault, cut.item.text, field), items.size()));
    }
    at = cut.end;
    items.push_back(std::move(cut.item));
  }
}

using ItemUnits = std::vector<std::optional<UnitMatch>>;

Result<ItemUnits> unitsOf(const std::vector<Item>& items, const FieldSpec& field) {
  ItemUnits units;
  for (const Item& item : items) {
    if (item.unitText.empty()) {
      units.emplace_back();
      continue;
    }
    const auto unit = field_unit::ofItem(item, field);
    if (!unit) return tl::make_unexpected(atPosition(unit.error(), units.size()));
    units.emplace_back(*unit);
  }
  return units;
}

/// Two different units on the line leave a bare number without a clear one.
bool namesTwoUnits(const ItemUnits& units) {
  const UnitMatch* first = nullptr;
  for (const auto& unit : units) {
    if (!unit) continue;
    if (first != nullptr && first->unit.symbol != unit->unit.symbol) return true;
    first = first == nullptr ? &*unit : first;
  }
  return false;
}

}  // namespace

Result<std::vector<ParsedQuantity>> parseSeries(std::string_view text, const FieldSpec& field) {
  const auto fieldUnit = field_unit::ofField(field);
  if (!fieldUnit) return failAs(fieldUnit);
  const auto plain = number_text::normalised(text);
  if (!plain) {
    return tl::make_unexpected(
        atPosition(field_unit::numberError(NumberFault::NotANumber, text, field), 0));
  }
  const auto items = cutItems(*plain, field);
  if (!items) return failAs(items);
  if (items->empty()) {
    return tl::make_unexpected(atPosition(field_unit::readingError("units.empty", text, field), 0));
  }
  const auto units = unitsOf(*items, field);
  if (!units) return failAs(units);

  const auto named =
      std::find_if(units->begin(), units->end(), [](const auto& unit) { return unit.has_value(); });
  const auto bare = std::find(units->begin(), units->end(), std::nullopt);
  const bool hasNamed = named != units->end();
  if (bare != units->end() && namesTwoUnits(*units)) {
    return tl::make_unexpected(
        atPosition(field_unit::readingError("units.mixed_units", text, field),
                   static_cast<std::size_t>(bare - units->begin())));
  }
  const bool noteBare = !hasNamed && field.kind != QuantityKind::Number;
  const auto bareNote = noteBare ? std::optional(ReadNote::BareNumber) : std::nullopt;
  const UnitMatch bareUnit = hasNamed ? **named : *fieldUnit;
  std::vector<ParsedQuantity> parsed;
  parsed.reserve(items->size());
  for (std::size_t i = 0; i < items->size(); ++i) {
    const auto& own = (*units)[i];
    parsed.push_back(field_unit::quantityOf((*items)[i].number, own ? *own : bareUnit,
                                            own ? std::nullopt : bareNote));
  }
  return parsed;
}

}  // namespace sw
