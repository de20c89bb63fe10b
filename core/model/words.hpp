#pragma once

#include <array>
#include <optional>
#include <string_view>

namespace oaklight {

/// One value of an enumeration and the word by which files, forms and the tract file write it.
template <class E>
struct Word {
  E value;
  std::string_view word;
};

/// The words of an enumeration. Each enumeration that is stored specialises this next to its
/// definition; the words are part of the file format and never change once released.
template <class E>
inline constexpr auto kWords = std::array<Word<E>, 0>{};

/// The word of a value.
template <class E>
constexpr std::string_view word_of(E value) {
  for (const auto& entry : kWords<E>) {
    if (entry.value == value) return entry.word;
  }
  return {};
}

/// The value of a word; nothing when no value has it.
template <class E>
constexpr std::optional<E> from_word(std::string_view word) {
  for (const auto& entry : kWords<E>) {
    if (entry.word == word) return entry.value;
  }
  return std::nullopt;
}

}  // namespace oaklight
