// What the receiver hears, from a file, a serial device and a socket, and what it says of none.
#include <gtest/gtest.h>

#include <arpa/inet.h>
#include <pty.h>
#include <sys/socket.h>
#include <termios.h>
#include <unistd.h>

#include <QtTest/QTest>

#include "core/place/geodesy.hpp"
#include "mobile/desk/receiver.hpp"
#include "tests/app/nmea.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {
namespace {

constexpr std::int64_t kMay2026 = 1'777'900'020'000;
const Position kStart{Degrees{39.35}, Degrees{-82.21}};

class ReceiverAt : public testing::Test {
 protected:
  ReceiverAt() { qputenv("QT_NMEA_PUSH_DELAY", "0"); }
  static QByteArray three_seconds() {
    QByteArray said;
    for (int i = 0; i < 3; ++i) {
      Fix fix;
      fix.at = position_at(kStart, Degrees{90.0}, Feet{10.0 * i});
      fix.accuracy = Metres{4.0};
      fix.course = Degrees{90.0};
      fix.speed = MetresPerSecond{3.0};
      fix.ms = kMay2026 + 200 * i;
      said += nmea_of(fix);
    }
    return said;
  }
  void listen(const QString& where) {
    receiver_ = std::make_unique<Receiver>(where);
    QObject::connect(receiver_.get(), &Receiver::fixed, receiver_.get(),
                     [this](const Fix& fix) { fixes_.push_back(fix); });
    receiver_->start();
  }
  bool heard(std::size_t count) {
    return QTest::qWaitFor([&] { return fixes_.size() >= count; }, 10'000);
  }

  TempDir folder_;
  std::unique_ptr<Receiver> receiver_;
  std::vector<Fix> fixes_;
};

TEST_F(ReceiverAt, AFileIsPlayedAsItWasTaken) {
  write_bytes(folder_ / "walk.nmea", three_seconds().toStdString());
  listen(QString::fromStdString((folder_ / "walk.nmea").string()));
  ASSERT_TRUE(heard(3)) << fixes_.size();
  EXPECT_LT(to_metres(leg_between(fixes_.front().at, kStart).distance).value, 0.1);
  EXPECT_NEAR(leg_between(fixes_.front().at, fixes_.back().at).distance.value, 20.0, 0.1);
  ASSERT_TRUE(fixes_.back().course && fixes_.back().accuracy);
  EXPECT_NEAR(fixes_.back().course->value, 90.0, 0.01);
  EXPECT_NEAR(fixes_.back().accuracy->value, 4.0, 0.01);
}

TEST_F(ReceiverAt, ACourseThatIsNoBearingIsNotTold) {
  const auto walk = [](double course) {
    Fix fix;
    fix.at = kStart;
    fix.course = Degrees{course};
    fix.speed = MetresPerSecond{3.0};
    fix.ms = kMay2026;
    return nmea_of(fix).toStdString();
  };
  write_bytes(folder_ / "walk.nmea", walk(40'500.0));
  listen(QString::fromStdString((folder_ / "walk.nmea").string()));
  ASSERT_TRUE(heard(1));
  EXPECT_FALSE(fixes_.front().course.has_value());
}

/// An open end of a cable, closed again.
struct OpenEnd {
  int number = -1;
  ~OpenEnd() {
    if (number >= 0) close(number);
  }
  void say(const QByteArray& bytes) const {
    ASSERT_EQ(write(number, bytes.constData(), static_cast<std::size_t>(bytes.size())),
              bytes.size());
  }
};

TEST_F(ReceiverAt, ASerialDeviceIsHeard) {
  // A pseudo terminal is to the program what a cable of a receiver is.
  OpenEnd ours, theirs;
  char name[100] = {};
  ASSERT_EQ(openpty(&ours.number, &theirs.number, name, nullptr, nullptr), 0);
  termios plain{};
  ASSERT_EQ(tcgetattr(theirs.number, &plain), 0);
  cfmakeraw(&plain);
  ASSERT_EQ(tcsetattr(theirs.number, TCSANOW, &plain), 0);
  listen(QString::fromLatin1(name));
  ours.say(three_seconds());
  ASSERT_TRUE(heard(3)) << fixes_.size();
  EXPECT_NEAR(leg_between(fixes_.front().at, fixes_.back().at).distance.value, 20.0, 0.1);
  receiver_.reset();
}

TEST_F(ReceiverAt, AReceiverOnTheNetworkIsHeard) {
  OpenEnd server{socket(AF_INET, SOCK_STREAM, 0)};
  sockaddr_in place{};
  place.sin_family = AF_INET;
  place.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  socklen_t size = sizeof place;
  auto* address = reinterpret_cast<sockaddr*>(&place);
  ASSERT_EQ(bind(server.number, address, size), 0);
  ASSERT_EQ(::listen(server.number, 1), 0);
  ASSERT_EQ(getsockname(server.number, address, &size), 0);
  listen(QStringLiteral("socket://127.0.0.1:%1").arg(ntohs(place.sin_port)));
  OpenEnd ours{accept(server.number, nullptr, nullptr)};
  ASSERT_GE(ours.number, 0);
  QTest::qWait(50);  // what lies in the socket when listening begins is passed over as old
  ours.say(three_seconds());
  ASSERT_TRUE(heard(3)) << fixes_.size();
  EXPECT_NEAR(fixes_.back().accuracy.value_or(Metres{}).value, 4.0, 0.01);
  receiver_.reset();
}

TEST_F(ReceiverAt, NoPlaceTellsWhyAndWhatToDo) {
  listen(QStringLiteral("/nowhere/ttyACM7"));
  EXPECT_TRUE(receiver_->problem().contains("/nowhere/ttyACM7"));
  EXPECT_TRUE(receiver_->problem().contains("Setup"));
  listen(QString::fromLatin1(Receiver::kNone));
  EXPECT_EQ(receiver_->problem(), "") << "none was asked for";
}

}  // namespace
}  // namespace oaklight::test
