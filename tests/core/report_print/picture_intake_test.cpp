// SPDX-License-Identifier: GPL-3.0-or-later
#include "report_print/picture_intake.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QCryptographicHash>
#include <QFile>
#include <QFileInfo>
#include <QImage>
#include <QTemporaryDir>

#include "printed.h"

namespace sw::report_print {
namespace {

class PictureIntakeTest : public ::testing::Test {
 protected:
  std::string saved(const QImage& image, const QString& name, const char* format) {
    const QString path = m_folder.filePath(name);
    if (!image.save(path, format)) throw std::runtime_error("no picture written");
    return path.toStdString();
  }
  std::string written(const QByteArray& bytes, const QString& name) {
    const QString path = m_folder.filePath(name);
    QFile file(path);
    if (!file.open(QIODevice::WriteOnly)) throw std::runtime_error("no file written");
    file.write(bytes);
    return path.toStdString();
  }
  static QImage grey(int width, int height) {
    QImage image(width, height, QImage::Format_RGB32);
    image.fill(Qt::gray);
    return image;
  }
  static QImage decoded(const std::string& bytes) {
    return QImage::fromData(QByteArray::fromStdString(bytes));
  }
  QTemporaryDir m_folder;
  QtPictureIntake m_intake;
};

TEST_F(PictureIntakeTest, LargePicturesAreShrunkSmallOnesKept) {
  const auto large = m_intake.prepare(saved(grey(3200, 1200), "large.jpg", "JPG"));
  ASSERT_TRUE(large);
  EXPECT_EQ(large->width, 1600);
  EXPECT_EQ(large->height, 600);
  EXPECT_EQ(large->picture.mime, "image/jpeg");
  EXPECT_EQ(decoded(large->picture.bytes).size(), QSize(1600, 600));
  EXPECT_EQ(decoded(large->picture.thumbnail).size(), QSize(240, 90));
  const auto small = m_intake.prepare(saved(grey(100, 80), "small.png", "PNG"));
  ASSERT_TRUE(small);
  EXPECT_EQ(decoded(small->picture.bytes).size(), QSize(100, 80));
}

TEST_F(PictureIntakeTest, TheNameOfAPictureIsTheHashOfWhatIsKept) {
  const auto prepared = m_intake.prepare(saved(grey(64, 64), "a b é.jpg", "JPG"));
  ASSERT_TRUE(prepared);
  const auto bytes = QByteArray::fromStdString(prepared->picture.bytes);
  EXPECT_EQ(prepared->picture.hash,
            QCryptographicHash::hash(bytes, QCryptographicHash::Sha256).toHex().toStdString());
}

TEST_F(PictureIntakeTest, TransparentPartsStayTransparent) {
  QImage image(20, 20, QImage::Format_ARGB32);
  image.fill(Qt::transparent);
  const auto prepared = m_intake.prepare(saved(image, "clear.png", "PNG"));
  ASSERT_TRUE(prepared);
  EXPECT_EQ(prepared->picture.mime, "image/png");
  EXPECT_EQ(qAlpha(decoded(prepared->picture.bytes).pixel(3, 3)), 0);
}

/// A JPEG whose EXIF says "turn 90 degrees clockwise" (orientation 6, Exif 2.3, tag 0x0112) and
/// holds a text.
QByteArray withExif(const QByteArray& jpeg) {
  QByteArray exif("Exif\0\0MM\0*\0\0\0\x08", 14);
  exif += QByteArray("\0\x02", 2);
  exif += QByteArray("\x01\x12\0\x03\0\0\0\x01\0\x06\0\0", 12);
  exif += QByteArray("\x01\x0E\0\x02\0\0\0\x0C\0\0\0\x26", 12);  // text at offset 38
  exif += QByteArray("\0\0\0\0", 4);
  exif += QByteArray("SECRETPLACE\0", 12);
  const int length = static_cast<int>(exif.size()) + 2;
  QByteArray segment("\xFF\xE1", 2);
  segment += static_cast<char>(length / 256);
  segment += static_cast<char>(length % 256);
  return jpeg.left(2) + segment + exif + jpeg.mid(2);
}

TEST_F(PictureIntakeTest, ExifTurnsThePictureAndIsLeftBehind) {
  const auto plain = saved(grey(80, 40), "plain.jpg", "JPG");
  QFile file(QString::fromStdString(plain));
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const auto path = written(withExif(file.readAll()), "turned.jpg");
  const auto prepared = m_intake.prepare(path);
  ASSERT_TRUE(prepared);
  EXPECT_EQ(prepared->width, 40);
  EXPECT_EQ(prepared->height, 80);
  for (const auto& bytes : {prepared->picture.bytes, prepared->picture.thumbnail}) {
    EXPECT_EQ(bytes.find("SECRETPLACE"), std::string::npos);
    EXPECT_EQ(bytes.find("Exif"), std::string::npos);
  }
}

TEST_F(PictureIntakeTest, AnUnreadableFormatIsNamed) {
  const auto refused = m_intake.prepare(written("not a picture", "photo.HEIC"));
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().key, "picture.unreadable");
  EXPECT_EQ(refused.error().detail("format"), "heic");
  const auto missing = m_intake.prepare("no/such/file.jpg");
  ASSERT_FALSE(missing);
  EXPECT_EQ(missing.error().code, ErrorCode::NotFound);
}

// 60 megapixels of one colour are a file of a few kilobytes.
TEST_F(PictureIntakeTest, ADecompressionBombIsRefused) {
  QImage image(10000, 6000, QImage::Format_Mono);
  image.fill(0);
  const auto path = saved(image, "bomb.png", "PNG");
  EXPECT_LT(QFileInfo(QString::fromStdString(path)).size(), 100'000);
  const auto refused = m_intake.prepare(path);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().key, "picture.too_large");
}

}  // namespace
}  // namespace sw::report_print
