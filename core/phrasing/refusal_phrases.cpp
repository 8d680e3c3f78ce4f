// SPDX-License-Identifier: GPL-3.0-or-later
#include <QtCore/QRegularExpression>
#include <QtCore/QStringList>

#include "phrasing/error_sentence.h"
#include "phrasing/named_table.h"
#include "phrasing/names.h"
#include "phrasing/sentence_tables.h"

namespace sw::phrasing {

namespace {

constexpr std::array kPhrases = {
    Named<std::string_view>{
        "hold_open",
        QT_TRANSLATE_NOOP3("phrasing", "[{step}: ]the hold “{what}” is still to be answered",
                           "a hold point; {what} is its name")},
    Named<std::string_view>{"needs",
                            QT_TRANSLATE_NOOP3("phrasing", "[{step} first: ]“{what}”",
                                               "{what} is the title of a step that comes first")},
    Named<std::string_view>{"step_open",
                            QT_TRANSLATE_NOOP3("phrasing", "[{step} is open: ]“{what}”",
                                               "{what} is the title of a step not done")},
    Named<std::string_view>{
        "not_proved",
        QT_TRANSLATE_NOOP3("phrasing",
                           "[{step}: ]the reading is not proved within its limit ({what})",
                           "{what} is the verdict; the reading guards against danger")},
    Named<std::string_view>{
        "loose", QT_TRANSLATE_NOOP3("phrasing",
                                    "[{step}: ]the number is within, but the hub was found loose",
                                    "a bearing without preload")},
    Named<std::string_view>{
        "single_use",
        QT_TRANSLATE_NOOP3("phrasing", "[{step}: ]a new {what} is to be fitted and recorded",
                           "{what} is a part that may be used only once")},
    Named<std::string_view>{
        "worn",
        QT_TRANSLATE_NOOP3(
            "phrasing", "[{step}: ]the bearing was found worn: renew it, do not shim it (“{what}”)",
            "{what} is the title of the step that would shim")},
    Named<std::string_view>{
        "no_reading",
        QT_TRANSLATE_NOOP3("phrasing", "[{step}: ]no readings were taken yet (“{what}”)",
                           "{what} is the title of the step")},
    Named<std::string_view>{"not_observed",
                            QT_TRANSLATE_NOOP3("phrasing", "[{step}: ]“{what}” was not answered",
                                               "{what} is the key of a question")},
    Named<std::string_view>{
        "not_torqued",
        QT_TRANSLATE_NOOP3("phrasing", "[{step}: ]{what} not torqued to the last stage",
                           "{what} is a group of fasteners")},
    Named<std::string_view>{
        "no_pack", QT_TRANSLATE_NOOP3("phrasing", "[{step}: ]no shim pack was recorded (“{what}”)",
                                      "{what} is the title of the step")},
    Named<std::string_view>{
        "no_road_test",
        QT_TRANSLATE_NOOP3("phrasing", "[{step}: ]no road test was recorded (“{what}”)",
                           "{what} is the title of the step")},
    Named<std::string_view>{
        "no_pull_since_pack",
        QT_TRANSLATE_NOOP3("phrasing", "no pull was taken since the pack was fitted ({what} side)",
                           "{what} is left or right")},
    Named<std::string_view>{"ledger", QT_TRANSLATE_NOOP3("phrasing", "[{step}: ]{what}",
                                                         "{what} is an item and its state")},
    Named<std::string_view>{
        "declined",
        QT_TRANSLATE_NOOP3("phrasing",
                           "declined work is on record ({what}): close the job as declined",
                           "{what} is the work")},
};

/// "key|step|what"; the last part may hold the mark itself.
struct Reason {
  std::string key, step, what;
};
Reason split(const std::string& refusal) {
  const std::size_t first = refusal.find('|');
  const std::size_t second = first == std::string::npos ? first : refusal.find('|', first + 1);
  if (second == std::string::npos) return {refusal, {}, {}};
  return {refusal.substr(0, first), refusal.substr(first + 1, second - first - 1),
          refusal.substr(second + 1)};
}

/// "track rod: hand_tight" -> "track rod: hand-tight".
QString itemAndState(const std::string& what) {
  const std::size_t mark = what.rfind(": ");
  if (mark == std::string::npos) return shown(what);
  return shown(what.substr(0, mark + 2)) + QChar(' ') + ledgerStateName(what.substr(mark + 2));
}

QString notMeasured() {
  static constexpr Source kText =
      QT_TRANSLATE_NOOP3("phrasing", "not measured", "a reading that was not taken");
  return translated(kText);
}

QString whatText(const Reason& reason) {
  if (reason.key == "hold_open") return holdName(reason.what);
  if (reason.key == "no_pull_since_pack") return sideWordName(reason.what);
  if (reason.key == "ledger") return itemAndState(reason.what);
  if (reason.key == "not_proved" && reason.what == "not_measured") return notMeasured();
  const auto verdict = reason.key == "not_proved" ? verdictFromWord(reason.what) : std::nullopt;
  return verdict ? nameOf(*verdict) : shown(reason.what);
}

}  // namespace

QString refusalPhrase(const std::string& refusal) {
  Reason reason = split(refusal);
  if (reason.key == "not_proved" && reason.what == "loose") reason.key = "loose";
  const QString phrase = nameIn(kPhrases, std::string_view(reason.key));
  if (phrase.isEmpty()) {
    const QStringList parts{shown(reason.step), shown(reason.what), shown(reason.key)};
    return parts.filter(QRegularExpression(QStringLiteral("."))).join(QStringLiteral(": "));
  }
  return filled(phrase, [&](const QString& name) {
    return name == "step" ? shown(reason.step) : whatText(reason);
  });
}

}  // namespace sw::phrasing
