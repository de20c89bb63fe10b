#pragma once

#include <cmath>
#include <cstdint>
#include <optional>
#include <string>

#include "core/base/id.hpp"
#include "core/base/result.hpp"
#include "core/model/words.hpp"
#include "core/units/reading.hpp"
#include "mobile/web/bridge/phrase.hpp"

namespace oaklight::web {

/// What a call of the page was given. Whatever is missing or of another kind is nothing here, or an
/// error where it is needed; no text of a page can break the program.
class Arguments {
 public:
  explicit Arguments(const Json& json, UnitSystem usual = UnitSystem::us)
      : json_(json), usual_(usual) {}

  [[nodiscard]] const Json* find(const char* name) const {
    if (!json_.is_object()) return nullptr;
    const auto found = json_.find(name);
    return found == json_.end() || found->is_null() ? nullptr : &*found;
  }
  [[nodiscard]] bool has(const char* name) const { return find(name) != nullptr; }
  /// Whether it was given as null: "take it out again".
  [[nodiscard]] bool is_null(const char* name) const {
    const auto found = json_.is_object() ? json_.find(name) : json_.end();
    return json_.is_object() && found != json_.end() && found->is_null();
  }

  [[nodiscard]] std::optional<std::string> text(const char* name) const {
    const Json* value = find(name);
    return value != nullptr && value->is_string() ? std::optional(value->get<std::string>())
                                                  : std::nullopt;
  }
  [[nodiscard]] std::optional<double> number(const char* name) const {
    const Json* value = find(name);
    return value != nullptr && value->is_number() ? std::optional(value->get<double>())
                                                  : std::nullopt;
  }
  [[nodiscard]] std::optional<std::int32_t> whole(const char* name) const {
    constexpr double kMost = 2e9;
    const auto value = number(name);
    if (!value || std::floor(*value) != *value || std::fabs(*value) > kMost) return std::nullopt;
    return static_cast<std::int32_t>(*value);
  }
  [[nodiscard]] bool flag(const char* name) const {
    const Json* value = find(name);
    return value != nullptr && value->is_boolean() && value->get<bool>();
  }
  /// Its own, or that of the call around it.
  [[nodiscard]] UnitSystem system() const {
    const auto given = text("system");
    if (!given) return usual_;
    return *given == "metric" ? UnitSystem::metric : UnitSystem::us;
  }
  template <class E>
  [[nodiscard]] std::optional<E> word(const char* name) const {
    const auto given = text(name);
    return given ? from_word<E>(*given) : std::nullopt;
  }

  /// Errors: missing_value.
  [[nodiscard]] Error missing(const char* name) const {
    return {ErrorCode::missing_value, std::string("The page did not say: ") + name + ".", name,
            "Load the page again."};
  }
  /// Errors: missing_value; not_a_choice.
  template <class SomeId>
  [[nodiscard]] Result<SomeId> id(const char* name) const {
    const auto given = text(name);
    if (!given) return missing(name);
    const auto uuid = uuid_from_text(*given);
    if (!uuid) return uuid.error();
    return SomeId{*uuid};
  }
  /// Errors: missing_value; out_of_range.
  [[nodiscard]] Result<Dbh> dbh(const char* name = "tenths") const {
    const auto tenths = whole(name);
    if (!tenths) return missing(name);
    return Dbh::from_tenths(*tenths, system());
  }
  [[nodiscard]] Result<SpeciesCode> species() const {
    const auto code = whole("species");
    if (!code) return missing("species");
    return SpeciesCode{*code};
  }
  /// What stands under a name; nothing of it where that is no object.
  [[nodiscard]] Arguments inside(const char* name) const {
    static const Json kNone = Json::object();
    const Json* value = find(name);
    return Arguments(value != nullptr ? *value : kNone, system());
  }

 private:
  const Json& json_;
  UnitSystem usual_;
};

}  // namespace oaklight::web
