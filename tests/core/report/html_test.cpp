// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/html.h"

#include <gtest/gtest.h>

#include <QRegularExpression>

#include "report/job_sheet.h"

namespace sw::report {
namespace {

std::string escaped(const char* text) {
  return escapedText(QString::fromUtf8(text)).toStdString();
}

TEST(Html, MarkupStaysText) {
  EXPECT_EQ(escaped("<b>x</b>"), "&lt;b&gt;x&lt;/b&gt;");
  EXPECT_EQ(escaped("a & \"b\""), "a &amp; &quot;b&quot;");
  EXPECT_EQ(escaped("<img src=file:secret.png>"), "&lt;img src=file:secret.png&gt;");
}

TEST(Html, LineEndsBecomeBreaksAndControlsSpaces) {
  EXPECT_EQ(escaped("one\ntwo"), "one<br/>two");
  EXPECT_EQ(escaped("a\tb\x01"
                    "c"),
            "a b c");
}

// Unicode 15, 23.2: U+202A..202E and U+2066..2069 turn the direction of what follows.
TEST(Html, DirectionOverridesAreShownNotObeyed) {
  EXPECT_EQ(escaped("plate \u202Ecba"), "plate [U+202E]cba");
  EXPECT_EQ(escaped("\u2067x\u2069"), "[U+2067]x[U+2069]");
  EXPECT_EQ(escaped("שלום"), "שלום");
}

// QTextDocument marks its frames with U+FDD0 and U+FDD1 and its objects with U+FFFC.
TEST(Html, CharactersOfTheLayoutEngineDoNotComeThrough) {
  EXPECT_EQ(escaped("a\uFDD0b\uFFFCc"), "a\uFFFDb\uFFFDc");
  QString lone(QStringLiteral("x"));
  lone += QChar(char16_t{0xD800});
  EXPECT_EQ(escapedText(lone).toStdString(), "x\uFFFD");
  EXPECT_EQ(escaped("🔧 ok"), "🔧 ok");
}

Document hostile(const QString& text) {
  Document document;
  document.issuer = document.title = document.subtitle = document.running = text;
  Table table{{{text, 50, Align::Left}, {text, 50, Align::Right}},
              {{{cellOf(text)}, RowKind::Group},
               {{cellOf(text), {{styled(text, Emphasis::Struck)}}}, RowKind::Body}}};
  KeyValues pairs;
  pairs.items = {{text, cellOf(text)}};
  document.sections = {
      {text,
       {table, pairs, Paragraph{plain(text), TextLook::Lead},
        Bullets{{styled(text, Emphasis::Strong)}, TextLook::Small}, Pictures{{{text, text}}}}}};
  document.footer = {text};
  return document;
}

TEST(Html, NoTextOfADocumentReachesItUnescaped) {
  const QString evil = QStringLiteral("\"><script src='http://x'>'&<img src=\"file:///x\">");
  PictureMap pictures;
  pictures[evil] = {QByteArray("not an image"), QStringLiteral("image/png")};
  for (const auto target : {HtmlTarget::File, HtmlTarget::Layout}) {
    const QString html = toHtml(hostile(evil), target, pictures);
    static const QRegularExpression kTag(QStringLiteral("<[^>]*>"));
    static const QRegularExpression kOurs(
        QStringLiteral(
            "^<(!DOCTYPE "
            "html|/?(html|head|meta|title|style|body|h1|h2|p|div|table|thead|tbody|tr|th|td|"
            "span|b|br|ul|li|hr)( [a-z]+=\"[a-z0-9#:;%./ -]*\")*/?|"
            "img src=\"(picture:|data:image/png;base64,)[^\"<>]*\" alt=\"[^\"<>]*\"/)>$"),
        QRegularExpression::CaseInsensitiveOption);
    int tags = 0;
    for (auto it = kTag.globalMatch(html); it.hasNext(); ++tags) {
      const QString tag = it.next().captured();
      EXPECT_TRUE(kOurs.match(tag).hasMatch()) << tag.toStdString();
    }
    EXPECT_GT(tags, 50);
    EXPECT_GE(html.count(QStringLiteral("&lt;script src=")), 14);
  }
}

TEST(Html, APageOfItsOwnReachesForNothingOutside) {
  PictureMap pictures;
  pictures[QStringLiteral("ab12")] = {QByteArray("\xFF\xD8 picture"), QStringLiteral("image/jpeg")};
  Document document;
  document.sections = {{{}, {Pictures{{{QStringLiteral("ab12"), QStringLiteral("Left cap")}}}}}};
  const QString html = toHtml(document, HtmlTarget::File, pictures);
  EXPECT_TRUE(html.contains(QStringLiteral("src=\"data:image/jpeg;base64,")));
  for (const char* reach : {"http:", "https:", "file:", "url(", "@import", "<script", "<link"}) {
    EXPECT_FALSE(html.contains(QLatin1String(reach))) << reach;
  }
}

TEST(Html, AVerdictHasWordAndShape) {
  Document document;
  document.sections = {
      {{},
       {Paragraph{{{QStringLiteral("within"), Emphasis::Strong, MarkShape::Within}}, {}},
        Paragraph{{{QStringLiteral("outside"), Emphasis::Strong, MarkShape::Outside}}, {}},
        Paragraph{{{QStringLiteral("undecided"), Emphasis::Strong, MarkShape::Undecided}}, {}},
        Paragraph{{{QStringLiteral("none"), Emphasis::Plain, MarkShape::NotMeasured}}, {}}}}};
  const QString html = toHtml(document);
  for (const char* shape : {"●", "■", "⬖", "◌"}) {
    EXPECT_EQ(html.count(QString::fromUtf8(shape)), 1) << shape;
  }
}

TEST(Html, SameDocumentSameText) {
  const auto document = hostile(QStringLiteral("x"));
  EXPECT_EQ(toHtml(document), toHtml(document));
}

}  // namespace
}  // namespace sw::report
