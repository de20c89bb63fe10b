#pragma once

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/store/value.hpp"

namespace oaklight::store {

/// Reads the pages of an SQLite file without SQLite, for a file that SQLite gives up on: each page
/// stands for itself, and what one says wrongly spoils no other. Nothing in the file is believed
/// further than its own bytes.
/// Source: "Database File Format", sqlite.org/fileformat2.html, sections 1.3 to 1.6 and 2.1.
class PageReader {
 public:
  using Page = std::uint32_t;  ///< numbered from 1

  static constexpr std::size_t kPageBytes = 4096;  ///< as every tract file has

  explicit PageReader(const std::filesystem::path& path);
  PageReader(const PageReader&) = delete;
  PageReader& operator=(const PageReader&) = delete;
  ~PageReader();

  [[nodiscard]] Page pages() const { return pages_; }

  /// A row as it lies on a page; a column at its end that a later step added is not there.
  struct RawRow {
    std::int64_t key = 0;  ///< rowid
    Row cells;
  };
  /// Rows of a page that holds rows of a table, and how many of its cells cannot be read.
  struct Leaf {
    std::vector<RawRow> rows;
    int unreadable = 0;
  };
  /// Nothing when the page is no such page, or cannot be read at all.
  [[nodiscard]] std::optional<Leaf> leaf(Page page) const;

  /// A table of the file's own list of tables.
  struct Root {
    std::string table;
    Page page = 0;
  };
  /// What can be read of that list.
  [[nodiscard]] std::vector<Root> roots() const;

  /// Pages that one can come to from a table's root.
  struct Tree {
    std::vector<Page> leaves;
    int broken = 0;  ///< pages that should be of this tree and are not
  };
  [[nodiscard]] Tree tree(Page root) const;

 private:
  [[nodiscard]] std::optional<std::string> bytes(Page page) const;
  [[nodiscard]] std::optional<RawRow> cell(std::string_view page, std::size_t at) const;
  [[nodiscard]] std::optional<std::string> payload(std::string_view page, std::size_t at,
                                                   std::uint64_t size) const;
  [[nodiscard]] bool read_children(Page page, std::vector<Page>& children) const;

  int descriptor_ = -1;
  Page pages_ = 0;
  mutable std::uint64_t overflow_left_ = 0;  ///< pages that rows may still go on over
};

}  // namespace oaklight::store
