#pragma once

#include <QString>

#include "core/base/error.hpp"
#include "core/model/species.hpp"

// Texts that several view models make.

/// What went wrong and how to mend it, for a person.
QString sentence_of(const oaklight::Error& error);
/// A species by its common name, in the language of the screen.
QString name_of(const oaklight::Species& species);
/// The same for a narrow cell: without what stands in brackets, long words with places to break.
QString cell_name_of(const oaklight::Species& species);
/// A figure as the core writes it, with raised figures: "80 ft2/ac" becomes "80 ft²/ac".
QString figure_of(const std::string& text);
/// A label of the tract's form, in the language of the screen.
QString form_words(const std::string& label);
