#include "core/store/page_reader.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <bit>
#include <set>

namespace oaklight::store {
namespace {

constexpr std::uint8_t kLeaf = 0x0D;
constexpr std::uint8_t kInterior = 0x05;
constexpr std::size_t kFileHeader = 100;  // the first page begins with it
// What our own connections refuse to write; a size above it is noise.
constexpr std::uint64_t kMostBytesOfARow = 64 * 1024 * 1024;
// In a sound file each page belongs to one row; here also to old images of it. More is a loop.
constexpr std::uint64_t kMostReadsOfAPage = 8;

/// Numbers are big-endian. Bytes beyond the end read as nothing.
std::optional<std::uint64_t> number(std::string_view bytes, std::size_t at, std::size_t size) {
  if (at > bytes.size() || size > bytes.size() - at) return std::nullopt;
  std::uint64_t value = 0;
  for (const char c : bytes.substr(at, size)) value = (value << 8) | static_cast<std::uint8_t>(c);
  return value;
}

/// A number of one to nine bytes; `at` is moved behind it.
std::optional<std::uint64_t> varint(std::string_view bytes, std::size_t& at) {
  std::uint64_t value = 0;
  for (int i = 0; i < 9; ++i) {
    const auto byte = number(bytes, at, 1);
    if (!byte) return std::nullopt;
    ++at;
    if (i == 8) return (value << 8) | *byte;
    value = (value << 7) | (*byte & 0x7F);
    if (*byte < 0x80) break;
  }
  return value;
}

/// Bytes of a cell of that serial type; nothing for the two that SQLite keeps for itself.
std::optional<std::uint64_t> size_of(std::uint64_t type) {
  constexpr std::uint64_t kSizes[] = {0, 1, 2, 3, 4, 6, 8, 8, 0, 0};
  if (type < 10) return kSizes[type];
  if (type < 12) return std::nullopt;
  return (type - 12) / 2;
}

std::int64_t signed_number(std::uint64_t value, std::size_t bytes) {
  const std::size_t spare = 64 - 8 * bytes;
  return static_cast<std::int64_t>(value << spare) >> spare;
}

/// A cell whose bytes are all there.
Value value_of(std::uint64_t type, std::string_view bytes) {
  if (type == 0) return {};
  if (type == 8 || type == 9) return static_cast<std::int64_t>(type - 8);
  if (type == 7) return std::bit_cast<double>(*number(bytes, 0, 8));
  if (type < 7) return signed_number(*number(bytes, 0, bytes.size()), bytes.size());
  if (type % 2 == 0) return Blob{std::string(bytes)};
  return std::string(bytes);
}

std::optional<Row> record(std::string_view payload) {
  std::size_t at = 0;
  const auto header = varint(payload, at);
  if (!header || *header > payload.size() || *header < at) return std::nullopt;
  const std::string_view types = payload.substr(0, *header);
  std::size_t body = *header;
  Row row;
  while (at < types.size()) {
    const auto type = varint(types, at);
    const auto size = type ? size_of(*type) : std::nullopt;
    if (!size || *size > payload.size() - body) return std::nullopt;
    row.push_back(value_of(*type, payload.substr(body, *size)));
    body += *size;
  }
  if (body != payload.size()) return std::nullopt;
  return row;
}

std::size_t header_at(PageReader::Page page) { return page == 1 ? kFileHeader : 0; }

}  // namespace

PageReader::PageReader(const std::filesystem::path& path)
    : descriptor_(::open(path.c_str(), O_RDONLY | O_CLOEXEC)) {
  struct stat about {};
  if (descriptor_ >= 0 && ::fstat(descriptor_, &about) == 0)
    pages_ = static_cast<Page>(static_cast<std::uint64_t>(about.st_size) / kPageBytes);
  overflow_left_ = kMostReadsOfAPage * pages_;
}

PageReader::~PageReader() {
  if (descriptor_ >= 0) ::close(descriptor_);
}

std::optional<std::string> PageReader::bytes(Page page) const {
  if (page < 1 || page > pages_) return std::nullopt;
  std::string text(kPageBytes, '\0');
  const auto at = static_cast<off_t>(std::uint64_t{page - 1} * kPageBytes);
  const auto n = ::pread(descriptor_, text.data(), text.size(), at);
  if (n != static_cast<ssize_t>(text.size())) return std::nullopt;
  return text;
}

/// The content of a row: what of it lies on its page, and what follows on others.
std::optional<std::string> PageReader::payload(std::string_view page, std::size_t at,
                                               std::uint64_t size) const {
  constexpr std::uint64_t kMost = kPageBytes - 35;
  constexpr std::uint64_t kLeast = (kPageBytes - 12) * 32 / 255 - 23;
  if (size > kMostBytesOfARow) return std::nullopt;
  std::uint64_t here = size;
  if (size > kMost) {
    here = kLeast + (size - kLeast) % (kPageBytes - 4);
    if (here > kMost) here = kLeast;
  }
  if (at > page.size() || here > page.size() - at) return std::nullopt;
  std::string all(page.substr(at, here));
  auto next = here < size ? number(page, at + here, 4) : std::optional<std::uint64_t>(0);
  while (all.size() < size) {
    const auto more = next && overflow_left_ > 0 ? bytes(static_cast<Page>(*next)) : std::nullopt;
    if (!more) return std::nullopt;
    --overflow_left_;
    next = number(*more, 0, 4);
    all += more->substr(4, size - all.size());
  }
  return all;
}

std::optional<PageReader::RawRow> PageReader::cell(std::string_view page, std::size_t at) const {
  const auto size = varint(page, at);
  const auto key = size ? varint(page, at) : std::nullopt;
  const auto content = key ? payload(page, at, *size) : std::nullopt;
  auto cells = content ? record(*content) : std::nullopt;
  if (!cells) return std::nullopt;
  return RawRow{static_cast<std::int64_t>(*key), std::move(*cells)};
}

std::optional<PageReader::Leaf> PageReader::leaf(Page page) const {
  const auto text = bytes(page);
  const std::size_t header = header_at(page);
  if (!text || static_cast<std::uint8_t>((*text)[header]) != kLeaf) return std::nullopt;
  Leaf found;
  const std::uint64_t count = *number(*text, header + 3, 2);
  // A cell takes two bytes of pointer and four of content at the least.
  if (count > kPageBytes / 6) return std::nullopt;
  for (std::uint64_t i = 0; i < count; ++i) {
    const auto at = number(*text, header + 8 + 2 * i, 2);
    auto row = at ? cell(*text, *at) : std::nullopt;
    if (row) {
      found.rows.push_back(std::move(*row));
    } else {
      ++found.unreadable;
    }
  }
  return found;
}

bool PageReader::read_children(Page page, std::vector<Page>& children) const {
  const auto text = bytes(page);
  const std::size_t header = header_at(page);
  if (!text || static_cast<std::uint8_t>((*text)[header]) != kInterior) return false;
  const std::uint64_t count = *number(*text, header + 3, 2);
  if (count > kPageBytes / 6) return false;
  for (std::uint64_t i = 0; i < count; ++i) {
    const auto at = number(*text, header + 12 + 2 * i, 2);
    const auto child = at ? number(*text, *at, 4) : std::nullopt;
    children.push_back(child ? static_cast<Page>(*child) : 0);
  }
  children.push_back(static_cast<Page>(*number(*text, header + 8, 4)));
  return true;
}

PageReader::Tree PageReader::tree(Page root) const {
  Tree found;
  std::set<Page> seen;
  std::vector<Page> next = {root};
  while (!next.empty()) {
    const Page page = next.back();
    next.pop_back();
    if (!seen.insert(page).second) continue;
    const auto text = bytes(page);
    const auto kind = text ? static_cast<std::uint8_t>((*text)[header_at(page)]) : 0;
    if (kind == kLeaf) {
      found.leaves.push_back(page);
    } else if (!read_children(page, next)) {
      ++found.broken;
    }
  }
  return found;
}

std::vector<PageReader::Root> PageReader::roots() const {
  std::vector<Root> found;
  for (const Page page : tree(1).leaves) {
    const auto list = leaf(page);
    if (!list) continue;
    for (const RawRow& row : list->rows) {
      // type, name, tbl_name, rootpage, sql
      if (row.cells.size() != 5 || row.cells[0] != Value{std::string("table")}) continue;
      const auto* name = std::get_if<std::string>(&row.cells[1]);
      const auto* root = std::get_if<std::int64_t>(&row.cells[3]);
      if (name == nullptr || root == nullptr || *root < 1 || *root > pages_) continue;
      found.push_back({*name, static_cast<Page>(*root)});
    }
  }
  return found;
}

}  // namespace oaklight::store
