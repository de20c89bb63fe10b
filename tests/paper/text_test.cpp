#include "core/paper/text.hpp"

#include <QFontDatabase>
#include <QFontInfo>

#include "tests/paper/paper_fixture.hpp"

namespace oaklight {
namespace {

// All expected values here are derived: they follow from the promises in the header.

using Text = test::PaperTest;

TEST_F(Text, IsSetInTheTypefaceThatTheProgramBrings) {
  EXPECT_EQ(QFontInfo(font_of(kBodyText)).family(), QString::fromLatin1(kTypeface));
  EXPECT_TRUE(QFontInfo(font_of(kStrongText)).bold());
}

TEST_F(Text, IsNowhereSmallerThanTenPoints) {
  for (const TextStyle& style : {kTitleText, kHeadingText, kSubheadText, kBodyText, kStrongText,
                                 kSmallText, kSmallStrongText, kTagText, kFigureText}) {
    EXPECT_GE(style.points, 10.0);
  }
}

TEST_F(Text, WidthGrowsInStepWithItsSize) {
  const TextStyle ten{10.0};
  const TextStyle thirty{30.0};
  EXPECT_NEAR(3.0 * text_width("Red maple 12.3", ten), text_width("Red maple 12.3", thirty), 1e-9);
}

TEST_F(Text, LineBreaksAndControlsBecomeBlanks) {
  EXPECT_EQ(printable("a\r\nb\tc\x01"
                      "d")
                .toStdString(),
            "a  b c d");
}

TEST_F(Text, MarksThatTurnTextAroundAreTakenOut) {
  EXPECT_EQ(printable("do not \u202Ecut\u202C this\u2066\u2069").toStdString(), "do not cut this");
}

TEST_F(Text, BadBytesAreShownAndDoNotStopThePage) {
  EXPECT_EQ(printable("oak\xFF\xC3").toStdString(), "oak\uFFFD\uFFFD");
}

TEST_F(Text, WrapsBetweenWordsAndLosesNone) {
  const QString text = "Crowds the crown of crop tree 101 on its south and west sides";
  const auto lines = wrapped(text, kBodyText, 90.0);
  ASSERT_GT(lines.size(), 2u);
  QStringList words;
  for (const QString& line : lines) {
    EXPECT_LE(text_width(line, kBodyText), 90.0) << line.toStdString();
    words.append(line);
  }
  EXPECT_EQ(words.join(' ').toStdString(), text.toStdString());
}

TEST_F(Text, KeepsTheFirstLineNarrowerWhenAsked) {
  const auto lines = wrapped("one two three four five six seven", kBodyText, 100.0, 60.0);
  EXPECT_LE(text_width(lines.front(), kBodyText), 40.0);
  EXPECT_GT(text_width(lines[1], kBodyText), 40.0);
}

TEST_F(Text, BreaksAWordThatIsWiderThanTheLine) {
  const QString word(300, QChar('W'));
  QString joined;
  for (const QString& line : wrapped(word, kTagText, 50.0)) {
    EXPECT_LE(text_width(line, kTagText), 50.0);
    joined += line;
  }
  EXPECT_EQ(joined, word);
}

TEST_F(Text, FittedTextEndsInAnEllipsis) {
  EXPECT_EQ(fitted("Fern", kBodyText, 200.0), QString("Fern"));
  const QString cut = fitted(QString(300, QChar('x')), kBodyText, 80.0);
  EXPECT_TRUE(cut.endsWith(QChar(0x2026)));
  EXPECT_LE(text_width(cut, kBodyText), 80.0);
}

}  // namespace
}  // namespace oaklight
