#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "core/forms/form.hpp"

namespace oaklight {

/// How much a form has to say about a field.
enum class Need {
  may_lack,  ///< the form may leave it out
  in_form,   ///< the form has it; a row may leave it empty
  filled,    ///< the form has it as required: no record can be made without it
};

/// A field that the model has a place for. A form may leave fields out, rename their labels and
/// tighten their ranges, but a field without a place would lose what people typed.
struct KeptField {
  std::string_view record;
  std::string_view field;
  FieldKind kind = FieldKind::text;
  Need need = Need::may_lack;
  std::string_view choices = "";  ///< kinds choice and choices: the list, see model_words
};

/// Every field that read_cruise keeps, by record.
std::span<const KeptField> kept_fields();

/// The words that the model knows for a choice list ("crown_class"); empty: no such list.
std::vector<std::string_view> model_words(std::string_view choice_list);

}  // namespace oaklight
