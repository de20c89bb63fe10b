#include "core/paper/gui_app.hpp"

#include <gtest/gtest.h>

#include <QGuiApplication>

#include "core/paper/packet_pdf.hpp"
#include "tests/paper/invented_packet.hpp"

namespace oaklight {
namespace {

// All expected values here are derived: they follow from the promises in the header.

struct Arguments {
  int count = 1;
  char name[5] = "test";
  char* words[2] = {name, nullptr};
};

TEST(PaperApplication, MakesAnApplicationAndTakesItAwayAgain) {
  ASSERT_EQ(QCoreApplication::instance(), nullptr);
  {
    const auto app = PaperApplication::start();
    ASSERT_TRUE(app) << to_text(app.error());
    EXPECT_NE(qobject_cast<QGuiApplication*>(QCoreApplication::instance()), nullptr);
  }
  EXPECT_EQ(QCoreApplication::instance(), nullptr);
}

TEST(PaperApplication, UsesTheApplicationThatIsThere) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  Arguments arguments;
  const QGuiApplication mine(arguments.count, arguments.words);
  for (int i = 0; i < 2; ++i) {
    const auto app = PaperApplication::start();
    ASSERT_TRUE(app) << to_text(app.error());
    EXPECT_EQ(QCoreApplication::instance(), &mine);
  }
  EXPECT_EQ(QCoreApplication::instance(), &mine);
}

TEST(PaperApplication, RefusesAProgramThatRunsQtWithoutGraphics) {
  Arguments arguments;
  const QCoreApplication mine(arguments.count, arguments.words);
  const auto app = PaperApplication::start();
  ASSERT_FALSE(app);
  EXPECT_EQ(app.error().code, ErrorCode::cannot_write);
}

TEST(PaperApplication, WritesPdfsOneAfterTheOtherWithoutAScreenAndInSilence) {
  qunsetenv("QT_QPA_PLATFORM");
  qunsetenv("DISPLAY");
  qunsetenv("WAYLAND_DISPLAY");
  qunsetenv("XDG_RUNTIME_DIR");
  testing::internal::CaptureStderr();
  const auto first = packet_pdf(test::invented_packet(2), PaperSize::letter);
  const auto second = packet_pdf(test::invented_packet(2), PaperSize::letter);
  EXPECT_EQ(testing::internal::GetCapturedStderr(), "");
  ASSERT_TRUE(first && second);
  EXPECT_EQ(first->size(), second->size());
}

}  // namespace
}  // namespace oaklight
