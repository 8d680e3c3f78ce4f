// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/wording.h"

#include <QStringList>
#include <algorithm>
#include <array>
#include <utility>

#include "measure/evaluation.h"
#include "report/quantity_text.h"

namespace sw::report {

namespace {

using Pair = std::pair<std::string_view, const char*>;

constexpr auto kHumanWords = std::to_array<Pair>({
    {"dial", "by the dial"},
    {"gps", "by GPS"},
    {"starts_and_stays", "starts under braking and stays"},
    {"only", "only under braking"},
    {"also", "also under braking"},
    {"not_used", "not used"},
    {"never_calibrated", "never calibrated"},
    {"ok", "in calibration"},
    {"due", "calibration due soon"},
    {"overdue", "calibration overdue"},
    {"unknown", "not known"},
    {"sprung_pin", "sprung pin"},
    {"behind_hub", "bolted behind the hub"},
});

template <std::size_t N>
QString look(const std::array<Pair, N>& table, std::string_view key) {
  const auto found =
      std::find_if(table.begin(), table.end(), [&](const Pair& row) { return row.first == key; });
  return found == table.end() ? QString{} : QString::fromUtf8(found->second);
}

QString orElse(const QString& text, std::string_view stored) {
  return text.isEmpty() ? humanWord(stored) : text;
}

constexpr auto kWhys = std::to_array<Pair>({
    {"plan", "part of the plan"},
    {"short_of_target", "the pull fell short of the target: next allowed pack, no drive between"},
    {"over_the_limit", "the pull was over the limit: next allowed pack the other way"},
    {"still_shakes", "still shakes after the road test: next round"},
    {"packs_exhausted", "no further allowed pack: what else to suspect"},
    {"worn", "worn or dented bearings: renewed, not shimmed"},
    {"chosen", "chosen by hand"},
});

constexpr auto kOverrides = std::to_array<Pair>({
    {"order", "order of the steps"},
    {"wait", "waiting time"},
    {"not_proved", "reading closed as not proved"},
    {"torque_set", "set value other than the sheet's"},
});

constexpr auto kRefusals = std::to_array<Pair>({
    {"hold_open", "hold point not answered"},
    {"not_proved", "safety reading not proved within"},
    {"ledger", "ledger not clear"},
    {"single_use", "single-use part not recorded as replaced"},
    {"step_open", "step not done"},
    {"declined", "work was declined"},
});

struct VerdictLook {
  Verdict verdict;
  MarkShape shape;
  Emphasis emphasis;
};
constexpr VerdictLook kVerdicts[] = {
    {Verdict::Within, MarkShape::Within, Emphasis::Strong},
    {Verdict::Outside, MarkShape::Outside, Emphasis::Strong},
    {Verdict::Undecided, MarkShape::Undecided, Emphasis::Strong},
    {Verdict::Provisional, MarkShape::Undecided, Emphasis::Plain},
    {Verdict::InstrumentTooCoarse, MarkShape::Undecided, Emphasis::Strong},
    {Verdict::NoLimit, MarkShape::NotMeasured, Emphasis::Plain},
};

void yesNo(QStringList& out, const std::optional<model::YesNo>& answer, const char* yes,
           const char* no) {
  if (answer == model::YesNo::Yes) out += QString::fromUtf8(yes);
  if (answer == model::YesNo::No) out += QString::fromUtf8(no);
}

template <class E>
void known(QStringList& out, const char* before, const std::optional<E>& value) {
  if (value) out += QString::fromUtf8(before) + humanWord(*value);
}

void wheelBearing(QStringList& out, const std::optional<model::WheelBearingSetting>& setting) {
  if (!setting) return;
  switch (*setting) {
    case model::WheelBearingSetting::EndFloat:
      out += QStringLiteral("wheel bearing set by end float");
      return;
    case model::WheelBearingSetting::Preload:
      out += QStringLiteral("wheel bearing set by preload pull");
      return;
    case model::WheelBearingSetting::Unit:
      out += QStringLiteral("wheel bearing unit without setting");
      return;
  }
}

QString shimEndsText(model::ShimEnds ends) {
  if (ends == model::ShimEnds::Both) return QStringLiteral("shims top and bottom");
  return QStringLiteral("shims at the ") + humanWord(ends);
}

}  // namespace

QString humanWord(std::string_view stored) {
  const QString listed = look(kHumanWords, stored);
  if (!listed.isEmpty()) return listed;
  return fromUtf8(std::string(stored)).replace(QChar(u'_'), QChar(u' '));
}

QString capitalised(QString text) {
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text;
}

QString sideText(std::optional<model::Side> side) {
  return side ? humanWord(*side) : QString{};
}

QString sideSuffix(std::optional<model::Side> side) {
  return side ? QStringLiteral(" (") + sideText(side) + QStringLiteral(")") : QString{};
}

QString sidesText(const std::vector<model::Side>& sides) {
  if (sides.size() == 2) return QStringLiteral("left and right");
  return sides.empty() ? QString{} : sideText(sides.front());
}

Span verdictSpan(std::string_view stored) {
  const auto verdict = verdictFromWord(stored);
  for (const VerdictLook& row : kVerdicts) {
    if (row.verdict != verdict) continue;
    const QString name = phrasing::nameOf(row.verdict);
    // Weight and capitals: "outside" is found on a grey print at a glance.
    const bool loud = row.verdict == Verdict::Outside;
    return {loud ? name.toUpper() : name, row.emphasis, row.shape};
  }
  return {humanWord(stored), Emphasis::Plain, MarkShape::NotMeasured};
}

QString arrangementText(const model::AxleArrangement& arrangement) {
  QStringList out;
  if (arrangement.dragLinkSide) {
    out += QStringLiteral("drag link on the ") + sideText(arrangement.dragLinkSide) +
           QStringLiteral(" side");
  }
  known(out, "drag link fixes to the ", arrangement.dragLinkFixesTo);
  known(out, "damper fixes to the ", arrangement.damperFixesTo);
  yesNo(out, arrangement.steeringArmOnCap, "steering arm is part of the cap",
        "steering arm apart from the cap");
  if (arrangement.lubricant) {
    out += arrangement.lubricant == model::Lubricant::Oil ? QStringLiteral("oil-filled hub")
                                                          : QStringLiteral("grease-packed hub");
  }
  if (arrangement.swivelBearing) {
    const auto kind = *arrangement.swivelBearing;
    out += kind == model::SwivelBearing::Taper  ? QStringLiteral("taper roller swivel bearings")
           : kind == model::SwivelBearing::Bush ? QStringLiteral("bushed swivel")
                                                : QStringLiteral("sprung swivel pin");
  }
  if (arrangement.shimEnds) out += shimEndsText(*arrangement.shimEnds);
  known(out, "shims ", arrangement.shimLayout);
  if (arrangement.discMount) {
    out += arrangement.discMount == model::DiscMount::Outside
               ? QStringLiteral("disc outside the hub")
               : QStringLiteral("disc bolted behind the hub");
  }
  wheelBearing(out, arrangement.wheelBearing);
  yesNo(out, arrangement.absLead, "ABS lead", "no ABS lead");
  yesNo(out, arrangement.lockingHubs, "locking hubs", "no locking hubs");
  return capitalised(out.join(QStringLiteral("; ")));
}

QString whyText(std::string_view why) {
  return orElse(look(kWhys, why), why);
}

QString overrideText(std::string_view rule) {
  return orElse(look(kOverrides, rule), rule);
}

QString refusalText(const workshop::Refusal& refusal) {
  QString text = orElse(look(kRefusals, refusal.key), refusal.key);
  const bool isWord = refusal.key == "not_proved";
  // An open step is named beside its reason already.
  if (!refusal.what.empty() && refusal.key != "step_open") {
    const QString what = refusal.key == "hold_open" ? phrasing::holdName(refusal.what)
                         : isWord                   ? humanWord(refusal.what)
                                                    : fromUtf8(refusal.what);
    text += QStringLiteral(": ") + what;
  }
  return text;
}

QString torqueStateText(const model::TorqueCheck& check) {
  const bool inCalibration = check.calibration == "ok" || check.calibration == "due";
  const QString calibration = inCalibration ? QStringLiteral("in calibration")
                              : check.calibration == "unknown"
                                  ? QStringLiteral("calibration not known")
                                  : orElse(look(kHumanWords, check.calibration), check.calibration);
  const QString range = check.wrenchInRange ? QStringLiteral("a wrench in range")
                                            : QStringLiteral("a wrench OUT OF RANGE");
  const QString joint = inCalibration ? QStringLiteral(" and ") : QStringLiteral(", ");
  QString text = QStringLiteral("set value reached with ") + range + joint + calibration;
  if (check.done < check.count) {
    text = QStringLiteral("%1 of %2 done: ").arg(check.done).arg(check.count) + text;
  }
  return text;
}

QString ruleSentence() {
  return QStringLiteral(
      "Verdict rule: \"within\" or \"outside\" is said only where the probability of conformance "
      "(or of non-conformance) is at least 95 % (ISO 14253-1:2017, JCGM 106; 97.5 % or 98.7 % "
      "after "
      "a series was extended); \"undecided\" never passes a safety reading.");
}

QString noClearanceSentence() {
  return QStringLiteral(
      "This sheet records what was done and measured. It does not clear the vehicle for the road; "
      "the vehicle's own documentation, local codes and licensed practice come first.");
}

}  // namespace sw::report
