#include "core/base/id.hpp"

#include <algorithm>
#include <memory>
#include <random>

namespace oaklight {
namespace {

constexpr std::string_view kHex = "0123456789abcdef";
constexpr std::uint32_t kCounterEnd = 1U << 12;
// A counter starts in the lower half, so that a busy millisecond has room before it carries.
constexpr std::uint32_t kCounterStartMask = (kCounterEnd >> 1) - 1;

constexpr unsigned kNoDigit = 16;

/// Of each byte 0 to 15, or kNoDigit for what is no lower case digit: a million rows have two ids
/// each, so no branch is spent on a digit.
constexpr auto kDigits = [] {
  std::array<std::uint8_t, 256> digits{};
  digits.fill(kNoDigit);
  for (std::size_t i = 0; i < kHex.size(); ++i) {
    digits[static_cast<unsigned char>(kHex[i])] = static_cast<std::uint8_t>(i);
  }
  return digits;
}();

unsigned digit_of(char c) { return kDigits[static_cast<unsigned char>(c)]; }

constexpr std::array<std::size_t, 4> kDashes = {8, 13, 18, 23};

bool is_dash_place(std::size_t i) { return std::ranges::find(kDashes, i) != kDashes.end(); }

}  // namespace

std::string to_text(const Uuid& id) {
  std::string text;
  text.reserve(36);
  for (const std::uint8_t byte : id.bytes) {
    if (is_dash_place(text.size())) text += '-';
    text += kHex[byte >> 4];
    text += kHex[byte & 15];
  }
  return text;
}

Result<Uuid> uuid_from_text(std::string_view text) {
  const auto bad = [text] {
    return Error{ErrorCode::not_a_choice, "This is not a record id: \"" + std::string(text) + "\".",
                 "", "An id has 36 characters, like 017f22e2-79b0-7cc3-98c4-dc0c0c07398f."};
  };
  if (text.size() != 36) return bad();
  Uuid id;
  unsigned seen = 0;  // kNoDigit's bit stays when one was met
  std::size_t at = 0;
  for (std::uint8_t& byte : id.bytes) {
    if (is_dash_place(at) && text[at++] != '-') return bad();
    const unsigned high = digit_of(text[at++]);
    const unsigned low = digit_of(text[at++]);
    seen |= high | low;
    byte = static_cast<std::uint8_t>((high << 4U) | low);
  }
  if ((seen & kNoDigit) != 0) return bad();
  return id;
}

IdSource::IdSource(Clock& clock, Random random) : clock_(clock), random_(std::move(random)) {}

Uuid IdSource::next() {
  const std::int64_t now = clock_.now_ms();
  if (now > last_ms_) {
    last_ms_ = now;
    counter_ = static_cast<std::uint32_t>(random_()) & kCounterStartMask;
  } else if (++counter_ == kCounterEnd) {
    ++last_ms_;
    counter_ = static_cast<std::uint32_t>(random_()) & kCounterStartMask;
  }
  Uuid id;
  const auto ms = static_cast<std::uint64_t>(last_ms_);
  for (std::size_t i = 0; i < 6; ++i) id.bytes[i] = static_cast<std::uint8_t>(ms >> (40 - 8 * i));
  id.bytes[6] = static_cast<std::uint8_t>(0x70U | (counter_ >> 8));
  id.bytes[7] = static_cast<std::uint8_t>(counter_);
  const std::uint64_t noise = random_();
  for (std::size_t i = 0; i < 8; ++i)
    id.bytes[8 + i] = static_cast<std::uint8_t>(noise >> (56 - 8 * i));
  id.bytes[8] = static_cast<std::uint8_t>((id.bytes[8] & 0x3FU) | 0x80U);
  return id;
}

void IdSource::resume_after(const Uuid& last) {
  std::int64_t ms = 0;
  for (std::size_t i = 0; i < 6; ++i) ms = (ms << 8) | last.bytes[i];
  const std::uint32_t counter = ((last.bytes[6] & 0x0FU) << 8) | last.bytes[7];
  if (ms > last_ms_ || (ms == last_ms_ && counter > counter_)) {
    last_ms_ = ms;
    counter_ = counter;
  }
}

IdSource::Random system_random() {
  auto device = std::make_shared<std::random_device>();
  return [device] { return (static_cast<std::uint64_t>((*device)()) << 32) | (*device)(); };
}

}  // namespace oaklight
