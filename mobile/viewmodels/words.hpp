#pragma once

#include <QString>

#include "core/base/error.hpp"
#include "core/model/species.hpp"

// Texts that several view models make.

/// What went wrong and how to mend it, for a person.
QString sentence_of(const oaklight::Error& error);
/// A species by its common name, in the language of the screen.
QString name_of(const oaklight::Species& species);
/// A label of the tract's form, in the language of the screen.
QString form_words(const std::string& label);
