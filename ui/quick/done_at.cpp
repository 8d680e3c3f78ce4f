// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/quick/done_at.h"

#include <QRegularExpression>

namespace sw::ui {

namespace {

constexpr int kDayLength = 10;  // "2031-03-02"
constexpr int kZoneLength = 6;  // "+01:00"

/// "+01:00" of the clock on the wall.
std::string zoneOf(const Timestamp& now) {
  const std::string iso = toIso(now);
  return iso.substr(iso.size() - kZoneLength);
}

}  // namespace

Result<std::optional<std::string>> doneAtOf(const QString& text, const Timestamp& now) {
  QString typed = text.trimmed();
  if (typed.isEmpty()) return std::optional<std::string>{};
  static const QRegularExpression kTime(QStringLiteral("^([0-9]{1,2}):?([0-9]{2})$"));
  static const QRegularExpression kZone(QStringLiteral("(Z|[+-][0-9]{2}:[0-9]{2})$"));
  if (const auto time = kTime.match(typed); time.hasMatch()) {
    typed = QString::fromStdString(toIso(now)).left(kDayLength) + QLatin1Char('T') +
            time.captured(1).rightJustified(2, QLatin1Char('0')) + QLatin1Char(':') +
            time.captured(2);
  }
  if (typed.size() > kDayLength && typed.at(kDayLength).isSpace()) {
    typed[kDayLength] = QLatin1Char('T');
  }
  std::string iso = typed.toStdString();
  if (!kZone.match(typed.mid(kDayLength)).hasMatch()) iso += zoneOf(now);
  const auto read = parseTimestamp(iso);
  if (!read) {
    return fail(ErrorCode::InvalidInput, "clock.not_a_time", "done_at",
                {{"text", text.trimmed().toStdString()}});
  }
  return std::optional(iso);
}

QString withItsDay(const QString& text, const Timestamp& now) {
  static const QRegularExpression kTimeAlone(QStringLiteral("^\\s*[0-9]{1,2}:?[0-9]{2}\\s*$"));
  const auto read = doneAtOf(text, now);
  if (!kTimeAlone.match(text).hasMatch() || !read || !*read) return text;
  constexpr int kMinutes = 16;  // "2031-03-03T14:05"
  return QString::fromStdString(**read).left(kMinutes).replace(kDayLength, 1, QLatin1Char(' '));
}

}  // namespace sw::ui
