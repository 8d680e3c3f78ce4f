// SPDX-License-Identifier: GPL-3.0-or-later
#include "report_print/picture_intake.h"

#include <QBuffer>
#include <QCryptographicHash>
#include <QFileInfo>
#include <QImage>
#include <QImageReader>
#include <QImageWriter>

namespace sw::report_print {

namespace {

constexpr int kMegabytes = 128;
constexpr qint64 kMostBytes = qint64{kMegabytes} * 1024 * 1024;
constexpr qint64 kMostPixels = 50'000'000;
constexpr int kLongSide = 1600;
constexpr int kThumbnailSide = 240;
constexpr int kQuality = 85;

std::vector<std::pair<std::string, std::string>> detailsOf(const QFileInfo& info) {
  return {{"format", info.suffix().toLower().toStdString()},
          {"name", info.fileName().toStdString()}};
}

QImage fitted(const QImage& image, int side) {
  if (image.width() <= side && image.height() <= side) return image;
  return image.scaled(side, side, Qt::KeepAspectRatio, Qt::SmoothTransformation);
}

/// The pixels alone: without what the file said about camera and place.
QImage bare(const QImage& image) {
  const bool alpha = image.hasAlphaChannel();
  QImage plain = image.convertToFormat(alpha ? QImage::Format_ARGB32 : QImage::Format_RGB32);
  for (const QString& key : plain.textKeys()) plain.setText(key, QString());
  return plain;
}

Result<QByteArray> encoded(const QImage& image) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  const bool alpha = image.hasAlphaChannel();
  QImageWriter writer(&buffer, alpha ? "png" : "jpeg");
  if (!alpha) writer.setQuality(kQuality);
  if (!buffer.open(QIODevice::WriteOnly) || !writer.write(image)) {
    return fail(ErrorCode::Internal, "picture.not_written", "file");
  }
  return bytes;
}

Result<QImage> readImage(const QString& path) {
  const QFileInfo info(path);
  if (!info.isFile()) {
    return fail(ErrorCode::NotFound, "picture.missing", "file", detailsOf(info));
  }
  if (info.size() > kMostBytes) {
    return fail(ErrorCode::InvalidInput, "picture.too_large", "file", detailsOf(info));
  }
  QImageReader reader(path);
  reader.setAutoTransform(true);
  reader.setDecideFormatFromContent(true);
  const QSize size = reader.size();
  if (size.isValid() && qint64{size.width()} * size.height() > kMostPixels) {
    return fail(ErrorCode::InvalidInput, "picture.too_large", "file", detailsOf(info));
  }
  QImageReader::setAllocationLimit(kMegabytes * 2);  // 50 megapixels of 4 bytes
  QImage image = reader.read();
  if (image.isNull()) {
    return fail(ErrorCode::InvalidInput, "picture.unreadable", "file", detailsOf(info));
  }
  if (qint64{image.width()} * image.height() > kMostPixels) {
    return fail(ErrorCode::InvalidInput, "picture.too_large", "file", detailsOf(info));
  }
  return image;
}

}  // namespace

Result<workshop::PictureIntake::Prepared> QtPictureIntake::prepare(const std::string& path) const {
  auto image = readImage(QString::fromStdString(path));
  if (!image) return failAs(image);
  const QImage kept = bare(fitted(*image, kLongSide));
  auto bytes = encoded(kept);
  if (!bytes) return failAs(bytes);
  auto thumbnail = encoded(bare(fitted(kept, kThumbnailSide)));
  if (!thumbnail) return failAs(thumbnail);
  const auto hash = QCryptographicHash::hash(*bytes, QCryptographicHash::Sha256).toHex();
  Prepared prepared;
  prepared.picture.hash = hash.toStdString();
  prepared.picture.mime = kept.hasAlphaChannel() ? "image/png" : "image/jpeg";
  prepared.picture.bytes = bytes->toStdString();
  prepared.picture.thumbnail = thumbnail->toStdString();
  prepared.width = kept.width();
  prepared.height = kept.height();
  return prepared;
}

}  // namespace sw::report_print
