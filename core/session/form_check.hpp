#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/forms/form.hpp"
#include "core/model/tree.hpp"

namespace oaklight {

/// Holds the values of one record against the tract's form, as the import of files does. Keeps the
/// first fault found. A field that the form leaves out has no limits.
class FormCheck {
 public:
  /// record  of the form: "trees"
  /// place   how `where` begins: "plot/7/tree"
  FormCheck(const Form& form, std::string_view record, std::string place, UnitSystem system);

  FormCheck& text(std::string_view field, std::string_view value);
  FormCheck& dbh(std::string_view field, const std::optional<Dbh>& value);
  FormCheck& length(std::string_view field, const std::optional<TapedLength>& value);
  FormCheck& whole(std::string_view field, const std::optional<int>& value);
  /// In the field's unit; digits beyond the form's decimals do not matter.
  FormCheck& number(std::string_view field, const std::optional<double>& value);
  template <class Unit>
  FormCheck& quantity(std::string_view field, const std::optional<Quantity<Unit>>& value) {
    return number(field, value ? std::optional(value->value) : std::nullopt);
  }
  /// A rule that no single field can tell.
  FormCheck& refuse_if(bool wrong, ErrorCode code, std::string_view field, std::string what,
                       std::string fix);

  [[nodiscard]] const std::optional<Error>& fault() const { return fault_; }

 private:
  FormCheck& as_typed(std::string_view field, UnitSystem system, const std::string& typed);

  const Form& form_;
  const RecordForm* record_;
  std::string place_;
  UnitSystem system_;
  std::optional<Error> fault_;
};

/// The facts of one standing tree, wherever it was met. `record` may be "trees" or "crop_trees".
void check_facts(FormCheck& check, const TreeFacts& facts);

}  // namespace oaklight
