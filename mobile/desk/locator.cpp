#include "mobile/desk/locator.hpp"

namespace {

// An hour of fixes at one plot is a tablet left lying there.
constexpr std::size_t kMostGathered = 3'600;

}  // namespace

Locator::Locator(int old_ms, QObject* parent) : QObject(parent) {
  old_.setSingleShot(true);
  old_.setInterval(old_ms);
  connect(&old_, &QTimer::timeout, this, [this] {
    forget();
    emit moved();
  });
}

void Locator::use(std::unique_ptr<Receiver> receiver) {
  receiver_ = std::move(receiver);
  forget();
  gathered_.clear();
  if (receiver_ != nullptr) {
    connect(receiver_.get(), &Receiver::fixed, this, &Locator::take);
    connect(receiver_.get(), &Receiver::problemChanged, this, &Locator::problemChanged);
    if (wanted_ > 0) receiver_->start();
  }
  emit problemChanged();
  emit moved();
}

void Locator::want(bool wanted) {
  wanted_ += wanted ? 1 : -1;
  if (receiver_ == nullptr) return;
  if (wanted_ > 0) {
    receiver_->start();
  } else {
    receiver_->stop();
    old_.stop();
    forget();
  }
}

std::optional<oaklight::Degrees> Locator::heading() const {
  return here_ ? heading_.at(here_->ms) : std::nullopt;
}

void Locator::gather() {
  gathered_.clear();
  gathering_ = true;
}

void Locator::take(const oaklight::Fix& fix) {
  here_ = fix;
  heading_.add(fix);
  if (gathering_ && gathered_.size() < kMostGathered) gathered_.push_back(fix);
  old_.start();
  emit moved();
}

void Locator::forget() {
  here_.reset();
  heading_ = {};
}
