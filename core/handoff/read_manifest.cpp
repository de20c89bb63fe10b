#include "core/handoff/read_manifest.hpp"

#include <nlohmann/json.hpp>

namespace oaklight {
namespace {

using nlohmann::json;

std::string text_at(const json& object, const char* key) {
  const auto found = object.find(key);
  return found != object.end() && found->is_string() ? found->get<std::string>() : std::string{};
}

bool is_plain_name(const std::string& name) {
  return !name.empty() && name.front() != '.' &&
         name.find_first_of(std::string_view("/\\\0", 3)) == std::string::npos;
}

}  // namespace

Result<Manifest> read_manifest(std::string_view text, const std::string& where) {
  const json manifest = json::parse(text, nullptr, false);
  if (manifest.is_discarded()) {
    return Error{ErrorCode::bad_json, "The manifest cannot be read.", where,
                 "Ask whoever sent the packet for it again."};
  }
  const Error other{ErrorCode::not_a_choice, "This is no manifest of a packet of Oaklight.", where,
                    "Ask whoever sent the packet for it again."};
  if (!manifest.is_object() || text_at(manifest, "manifest_for") != "packet") return other;
  const auto files = manifest.find("files");
  if (files == manifest.end() || !files->is_array()) return other;
  Manifest read{text_at(manifest, "reader"), text_at(manifest, "list_sha256"), {}};
  for (const json& file : *files) {
    if (!file.is_object()) return other;
    const auto bytes = file.find("bytes");
    ListedFile listed{text_at(file, "name"), 0, text_at(file, "sha256")};
    if (!is_plain_name(listed.name) || bytes == file.end() || !bytes->is_number_unsigned())
      return other;
    listed.bytes = bytes->get<std::uint64_t>();
    read.files.push_back(std::move(listed));
  }
  return read;
}

}  // namespace oaklight
