// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/vehicles/spec_lines.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "phrasing/names.h"
#include "report/quantity_text.h"
#include "report/wording.h"

namespace sw::ui {

namespace {

using model::SpecKind;

#define SW_TEXT(text) QT_TRANSLATE_NOOP("SpecSheet", text)

QString words(const char* text) {
  return QCoreApplication::translate("SpecSheet", text);
}

std::optional<QuantityKind> quantityOf(const model::SpecItem& item) {
  for (const auto* figure : {&item.value, &item.min, &item.max}) {
    if (*figure) return (*figure)->kind;
  }
  return std::nullopt;
}

/// "4 a side, M10x1.5, 10.9, cross".
QString fastenersText(const model::SpecItem& item) {
  QStringList parts;
  if (item.count) parts += words(SW_TEXT("%1 a side")).arg(*item.count);
  if (!item.fastenerSize.empty()) parts += report::fromUtf8(item.fastenerSize);
  if (!item.fastenerClass.empty()) parts += report::fromUtf8(item.fastenerClass);
  if (!item.pattern.empty()) parts += report::humanWord(item.pattern);
  if (item.singleUse) parts += words(SW_TEXT("new ones each time"));
  return parts.join(QStringLiteral(", "));
}

QString valueText(const model::SpecItem& item) {
  if (!item.value) return {};
  if (!item.secondValue) return report::typedAndSi(*item.value);
  return report::typed(*item.value) + QStringLiteral(" (") + report::typed(*item.secondValue) +
         QStringLiteral(")");
}

std::vector<SpecNeed> needsOf(const procedures::Library& library, const workshop::ShopState& shop,
                              model::VehicleId vehicle, const workshop::JobState* job) {
  if (job != nullptr && !job->runs.empty()) return workshop::specNeedsOf(*job, shop);
  auto needs = workshop::specNeedsOf(library, "swivel-preload", shop, vehicle);
  return needs ? std::move(*needs) : std::vector<SpecNeed>{};
}

}  // namespace

std::vector<SpecLine> specLines(const procedures::Library& library, const workshop::ShopState& shop,
                                model::VehicleId vehicle, const workshop::JobState* job) {
  std::vector<SpecLine> lines;
  for (SpecNeed& need : needsOf(library, shop, vehicle, job)) {
    const auto* found = shop.spec(vehicle, need.key);
    lines.push_back({std::move(need), found == nullptr ? nullptr : &found->fact});
  }
  for (const auto* found : shop.specSheet(vehicle)) {
    const auto same = [&](const SpecLine& line) { return line.need.key == found->fact.key; };
    if (std::any_of(lines.begin(), lines.end(), same)) continue;
    SpecNeed need;
    need.key = found->fact.key;
    need.type = found->fact.type;
    need.quantity = quantityOf(found->fact);
    lines.push_back({std::move(need), &found->fact});
  }
  return lines;
}

QString specName(const std::string& key) {
  const QString name = phrasing::specKeyName(key);
  if (name != report::fromUtf8(key)) return report::capitalised(name);
  return report::capitalised(report::humanWord(key).replace(QLatin1Char('.'), QLatin1Char(' ')));
}

QString specFigure(const model::SpecItem& item) {
  QStringList parts;
  const auto add = [&parts](const QString& text) {
    if (!text.isEmpty()) parts += text;
  };
  if (item.type == SpecKind::Limit) add(report::limitText(item));
  if (item.type == SpecKind::Torque) add(report::torqueText(item));
  if (item.type == SpecKind::Value) add(valueText(item));
  add(report::fromUtf8(item.text));
  add(fastenersText(item));
  return parts.join(QStringLiteral(", "));
}

QString specSource(const model::SpecItem& item) {
  QString text = report::fromUtf8(item.source);
  if (item.sourceDate) {
    text +=
        (text.isEmpty() ? QString() : QStringLiteral(", ")) + report::dateText(*item.sourceDate);
  }
  return text;
}

QString unitsHint(std::optional<QuantityKind> quantity) {
  if (!quantity) return words(SW_TEXT("with its unit"));
  switch (*quantity) {
    case QuantityKind::Force:
      return words(SW_TEXT("in N, kgf or lbf"));
    case QuantityKind::Length:
      return words(SW_TEXT("in mm or in"));
    case QuantityKind::Torque:
      return words(SW_TEXT("in N m or lbf ft"));
    case QuantityKind::Pressure:
      return words(SW_TEXT("in bar or psi"));
    case QuantityKind::Number:
      return words(SW_TEXT("a number"));
    default:
      return words(SW_TEXT("with its unit"));
  }
}

#undef SW_TEXT

}  // namespace sw::ui
