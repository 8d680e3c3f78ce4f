// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/vehicles/spec_lines.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <array>

#include "procedures/instantiate.h"
#include "report/quantity_text.h"
#include "report/wording.h"

namespace sw::ui {

namespace {

using model::SpecKind;

#define SW_TEXT(text) QT_TRANSLATE_NOOP("SpecSheet", text)

QString words(const char* text) {
  return QCoreApplication::translate("SpecSheet", text);
}

struct KnownLine {
  std::string_view key;
  const char* name;
};
constexpr auto kKnownLines = std::to_array<KnownLine>({
    {"swivel.starting_force", SW_TEXT("Swivel: pull to start it turning")},
    {"swivel.dressed_pull", SW_TEXT("Swivel: pull with seal, rods and damper on")},
    {"swivel.end_float", SW_TEXT("Swivel: end float")},
    {"wheel_bearing.end_float", SW_TEXT("Wheel bearing: end float")},
    {"wheel_bearing.preload_pull", SW_TEXT("Wheel bearing: pull")},
    {"tyre.front_pressure", SW_TEXT("Front tyre pressure")},
    {"shims.sizes", SW_TEXT("Shim sizes to be had")},
    {"shims.max_pack", SW_TEXT("Thickest shim pack allowed")},
    {"shims.max_count", SW_TEXT("Most shims in a pack")},
    {"swivel_cap_bolts", SW_TEXT("Upper swivel cap bolts")},
    {"lower_swivel_cap_bolts", SW_TEXT("Lower swivel cap bolts")},
    {"steering_arm_nuts", SW_TEXT("Steering arm nuts")},
    {"seal_retainer_bolts", SW_TEXT("Seal retainer bolts")},
    {"track_rod_nut", SW_TEXT("Track rod nut")},
    {"drag_link_nut", SW_TEXT("Drag link nut")},
    {"damper_nut", SW_TEXT("Steering damper nut")},
    {"caliper_bolts", SW_TEXT("Caliper bolts")},
    {"stub_axle_bolts", SW_TEXT("Stub axle bolts")},
    {"hub_nut", SW_TEXT("Hub nut or lock nut")},
    {"drive_flange_bolts", SW_TEXT("Drive flange bolts")},
    {"wheel_nuts", SW_TEXT("Wheel nuts")},
});

class Needs {
 public:
  void add(SpecNeed need) {
    const auto same = [&](const SpecNeed& one) { return one.key == need.key; };
    if (need.key.empty() || std::any_of(m_needs.begin(), m_needs.end(), same)) return;
    m_needs.push_back(std::move(need));
  }
  void addStep(const procedures::Step& step) {
    if (step.measure) add({step.measure->limit, SpecKind::Limit, step.measure->quantity});
    if (step.torque) add({step.torque->fasteners, SpecKind::Torque, QuantityKind::Torque});
  }
  [[nodiscard]] std::vector<SpecNeed> take() {
    add({"shims.sizes", SpecKind::Text, std::nullopt});
    add({"shims.max_pack", SpecKind::Value, QuantityKind::Length});
    add({"shims.max_count", SpecKind::Value, QuantityKind::Number});
    add({"wheel_nuts", SpecKind::Torque, QuantityKind::Torque});
    return std::move(m_needs);
  }

 private:
  std::vector<SpecNeed> m_needs;
};

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

}  // namespace

std::vector<SpecNeed> specNeeds(const procedures::Library& library,
                                const model::AxleArrangement& arrangement,
                                const workshop::JobState* job) {
  Needs needs;
  if (job != nullptr && !job->runs.empty()) {
    for (const auto& step : job->steps) needs.addStep(*step.step);
    return needs.take();
  }
  const procedures::Facts facts = [&](const std::string& fact, std::optional<model::Side>) {
    return procedures::arrangementWord(arrangement, fact);
  };
  const auto* plan = library.plan("swivel-preload");
  if (plan == nullptr) return needs.take();
  for (const std::string& id : plan->procedures) {
    const auto* procedure = library.procedure(id);
    if (procedure == nullptr) continue;
    for (const procedures::Step& step : procedure->steps) {
      if (procedures::holds(step.when, facts, model::Side::Left)) needs.addStep(step);
    }
  }
  return needs.take();
}

std::vector<SpecLine> specLines(const workshop::ShopState& shop, model::VehicleId vehicle,
                                const std::vector<SpecNeed>& needs) {
  std::vector<SpecLine> lines;
  for (const SpecNeed& need : needs) {
    const auto* found = shop.spec(vehicle, need.key);
    lines.push_back({need, found == nullptr ? nullptr : &found->fact});
  }
  for (const auto* found : shop.specSheet(vehicle)) {
    const auto same = [&](const SpecLine& line) { return line.need.key == found->fact.key; };
    if (std::any_of(lines.begin(), lines.end(), same)) continue;
    lines.push_back({{found->fact.key, found->fact.type, quantityOf(found->fact)}, &found->fact});
  }
  return lines;
}

QString specName(const std::string& key) {
  for (const KnownLine& line : kKnownLines) {
    if (line.key == key) return words(line.name);
  }
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
