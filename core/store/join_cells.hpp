#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/store/record_table.hpp"

// What a join asks of single rows.

namespace oaklight::store {

std::string text_of(const Value& value);  ///< "" for what is no text

/// A number that tells this image of a record from its others: when it was made counts, but not
/// its name nor whether it is in use, since a join may have to settle those. Never 0, and good
/// within one process only.
std::uint64_t exact_image(const RecordTable& table, const Row& row);
/// A number that is the same for images that say the same, whenever they were made.
std::uint64_t content_image(const RecordTable& table, const Row& row);
/// The same for records that say the same.
std::uint64_t content_beside_uid(const RecordTable& table, const Row& row);

/// The column by which people call a record; no two in use wear one name.
std::optional<std::string> name_column(const std::string& table);
/// Among whom a name is the only one.
std::string scope_of(const RecordTable& table, const Row& row);
/// The one place that a record takes up: a tree has one mark, a tract one of each form. Nothing for
/// kinds of records of which there may be any number.
std::optional<std::string> place_of(const RecordTable& table, const Row& row);

/// "101 (2nd)", and back to "101".
std::string nth_name(const std::string& name, int n);
std::string first_name(const std::string& name);

bool is_by_hand(const RecordTable& table, const Row& row);

/// What is recorded, by column, as text.
std::vector<std::pair<std::string, std::string>> cells_of(const RecordTable& table, const Row& row);

}  // namespace oaklight::store
