#include "mobile/desk/background.hpp"

#include <utility>

namespace {

// What comes sooner needs no word that it is coming: a flicker only worries.
constexpr int kPatienceMs = 300;

}  // namespace

Background::Background(QObject* parent) : QObject(parent) {
  pool_.setMaxThreadCount(1);
  patience_.setSingleShot(true);
  patience_.setInterval(kPatienceMs);
  connect(&patience_, &QTimer::timeout, this, [this] { setLate(true); });
}

Background::~Background() {
  pool_.clear();
  pool_.waitForDone();
}

void Background::ask(Work work) {
  const std::uint64_t number = ++newest_;
  pool_.clear();
  if (!busy_) patience_.start();
  busy_ = true;
  pool_.start([this, number, work = std::move(work)] {
    Answer answer = work();
    QMetaObject::invokeMethod(
        this,
        [this, number, answer = std::move(answer)] {
          if (number == newest_) settle(answer);
        },
        Qt::QueuedConnection);
  });
}

void Background::drop() {
  ++newest_;
  pool_.clear();
  rest();
}

void Background::rest() {
  busy_ = false;
  patience_.stop();
  setLate(false);
}

void Background::settle(const Answer& answer) {
  rest();
  answer();
  emit answered();
}

void Background::setLate(bool late) {
  if (late_ == late) return;
  late_ = late;
  emit lateChanged();
}
