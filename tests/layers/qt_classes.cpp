// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <string>

#include "include_rules.h"

namespace sw::layers {
namespace {

// A class missing here is refused, so a list that is too short is noticed and one too long is
// caught by the test that looks for each name among Qt's own headers.
constexpr auto kCore = std::to_array<std::string_view>({
    "QBuffer",
    "QByteArray",
    "QByteArrayView",
    "QChar",
    "QCommandLineOption",
    "QCommandLineParser",
    "QCoreApplication",
    "QCryptographicHash",
    "QDate",
    "QDateTime",
    "QDebug",
    "QDir",
    "QDirIterator",
    "QElapsedTimer",
    "QEventLoop",
    "QFile",
    "QFileDevice",
    "QFileInfo",
    "QFileSystemWatcher",
    "QFlags",
    "QHash",
    "QIODevice",
    "QJsonArray",
    "QJsonDocument",
    "QJsonObject",
    "QJsonParseError",
    "QJsonValue",
    "QLatin1String",
    "QLibraryInfo",
    "QList",
    "QLocale",
    "QLockFile",
    "QLoggingCategory",
    "QMap",
    "QMargins",
    "QMarginsF",
    "QMessageLogContext",
    "QMetaObject",
    "QMetaType",
    "QMimeDatabase",
    "QMimeType",
    "QMutex",
    "QMutexLocker",
    "QObject",
    "QPoint",
    "QPointF",
    "QProcess",
    "QProcessEnvironment",
    "QRandomGenerator",
    "QRect",
    "QRectF",
    "QRegularExpression",
    "QRegularExpressionMatch",
    "QResource",
    "QSaveFile",
    "QScopeGuard",
    "QSet",
    "QSettings",
    "QSize",
    "QSizeF",
    "QStandardPaths",
    "QStorageInfo",
    "QString",
    "QStringConverter",
    "QStringList",
    "QStringView",
    "QSysInfo",
    "QTemporaryDir",
    "QTemporaryFile",
    "QTextStream",
    "QThread",
    "QTime",
    "QTimeZone",
    "QTimer",
    "QTranslator",
    "QUrl",
    "QUuid",
    "QVariant",
    "QVector",
    "QVersionNumber",
    "QtEndian",
    "QtGlobal",
    "QtMath",
});

constexpr auto kGui = std::to_array<std::string_view>({
    "QAbstractTextDocumentLayout",
    "QBrush",
    "QColor",
    "QFont",
    "QFontDatabase",
    "QFontInfo",
    "QFontMetrics",
    "QFontMetricsF",
    "QGuiApplication",
    "QImage",
    "QImageIOHandler",
    "QImageReader",
    "QImageWriter",
    "QPageLayout",
    "QPageRanges",
    "QPageSize",
    "QPagedPaintDevice",
    "QPaintDevice",
    "QPainter",
    "QPainterPath",
    "QPalette",
    "QPdfWriter",
    "QPen",
    "QPixmap",
    "QPolygon",
    "QPolygonF",
    "QTextBlock",
    "QTextBlockFormat",
    "QTextCharFormat",
    "QTextCursor",
    "QTextDocument",
    "QTextFormat",
    "QTextFrame",
    "QTextLayout",
    "QTextObject",
    "QTextOption",
    "QTextTable",
    "QTransform",
});

template <class Names>
bool holds(const Names& names, std::string_view name) {
  return std::ranges::find(names, name) != names.end();
}

bool isUpper(char c) {
  return c >= 'A' && c <= 'Z';
}

bool isQt(std::string_view header) {
  if (header.size() < 2) return false;
  if (header[0] == 'Q') return isUpper(header[1]) || header.starts_with("Qt");
  return header[0] == 'q' && header.ends_with(".h") && header.find('/') == std::string_view::npos;
}

}  // namespace

std::span<const std::string_view> qtCoreClasses() {
  return kCore;
}
std::span<const std::string_view> qtGuiClasses() {
  return kGui;
}

QtPart qtPartOf(std::string_view header) {
  if (!isQt(header)) return QtPart::None;
  if (const auto slash = header.rfind('/'); slash != std::string_view::npos) {
    header.remove_prefix(slash + 1);
  }
  if (holds(kCore, header)) return QtPart::Core;
  if (header.starts_with("QSql")) return QtPart::Sql;
  if (holds(kGui, header)) return QtPart::Gui;
  return QtPart::Other;
}

}  // namespace sw::layers
