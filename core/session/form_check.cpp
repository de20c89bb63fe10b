#include "core/session/form_check.hpp"

#include <utility>

#include "core/base/number_text.hpp"
#include "core/forms/check_value.hpp"

namespace oaklight {
namespace {

constexpr int kHalfLogFeet = 8;  // a half log of 16 ft (core/model/tree.hpp)

const SpeciesNames& no_names() {
  static const SpeciesNames kNone{SpeciesTable{}};
  return kNone;
}

}  // namespace

FormCheck::FormCheck(const Form& form, std::string_view record, std::string place,
                     UnitSystem system)
    : form_(form), record_(form.find_record(record)), place_(std::move(place)), system_(system) {}

FormCheck& FormCheck::as_typed(std::string_view field, UnitSystem system,
                               const std::string& typed) {
  const Field* known = record_ == nullptr ? nullptr : record_->find(field);
  if (known == nullptr || fault_) return *this;
  const auto value = check_value(form_, *known, system, typed, no_names());
  if (!value) {
    fault_ = value.error();
    fault_->where = place_ + "/" + std::string(field);
  }
  return *this;
}

FormCheck& FormCheck::text(std::string_view field, std::string_view value) {
  return as_typed(field, system_, std::string(value));
}

FormCheck& FormCheck::dbh(std::string_view field, const std::optional<Dbh>& value) {
  if (!value) return *this;
  return as_typed(field, value->system(), number_text(value->tenths() / 10.0, 1));
}

FormCheck& FormCheck::length(std::string_view field, const std::optional<TapedLength>& value) {
  if (!value) return *this;
  return as_typed(field, value->system(), number_text(value->hundredths() / 100.0, 2));
}

FormCheck& FormCheck::whole(std::string_view field, const std::optional<int>& value) {
  return value ? as_typed(field, system_, std::to_string(*value)) : *this;
}

FormCheck& FormCheck::number(std::string_view field, const std::optional<double>& value) {
  constexpr int kMostDecimals = 6;
  const Field* known = record_ == nullptr ? nullptr : record_->find(field);
  if (!value || known == nullptr) return *this;
  return as_typed(field, system_, number_text(*value, known->decimals.value_or(kMostDecimals)));
}

FormCheck& FormCheck::refuse_if(bool wrong, ErrorCode code, std::string_view field,
                                std::string what, std::string fix) {
  if (wrong && !fault_) {
    fault_ = Error{code, std::move(what), place_ + "/" + std::string(field), std::move(fix)};
  }
  return *this;
}

void check_facts(FormCheck& check, const TreeFacts& facts) {
  check.dbh("dbh", facts.dbh)
      .quantity("live_crown_pct", facts.live_crown)
      .quantity("dieback_pct", facts.dieback)
      .length("height", facts.height)
      .number("logs", facts.half_logs ? std::optional(*facts.half_logs / 2.0) : std::nullopt)
      .text("note", facts.note);
  const bool dead = facts.status == TreeStatus::dead;
  check.refuse_if(dead && facts.live_crown && *facts.live_crown > Percent{0.0},
                  ErrorCode::contradiction, "live_crown_pct",
                  "The tree is dead, and has a live crown.",
                  "Correct its status, or leave the live crown out.");
  if (!facts.height || !facts.half_logs) return;
  const int log_feet = kHalfLogFeet * *facts.half_logs;
  check.refuse_if(
      Feet{static_cast<double>(log_feet)} > facts.height->feet(), ErrorCode::contradiction, "logs",
      "The logs are " + std::to_string(log_feet) + " ft long together, more than the tree is high.",
      "Correct the logs (16 ft each) or the height.");
}

}  // namespace oaklight
