#include "core/session/packet_check.hpp"

#include <algorithm>
#include <set>
#include <system_error>

#include "core/base/sha256.hpp"
#include "core/handoff/read_manifest.hpp"
#include "core/session/files.hpp"

namespace oaklight {
namespace {

namespace fs = std::filesystem;

constexpr const char* kEnding = ".manifest.json";
constexpr const char* kAskAgain = "Ask whoever handed it over for the packet again.";

Result<std::vector<std::string>> names_in(const fs::path& folder) {
  std::vector<std::string> names;
  std::error_code problem;
  for (fs::directory_iterator entry(folder, problem), end; !problem && entry != end;
       entry.increment(problem))
    names.push_back(entry->path().filename().string());
  if (problem) {
    return Error{ErrorCode::cannot_open, "The folder cannot be read (" + problem.message() + ").",
                 folder.string(), "Check the name and that you may read it."};
  }
  std::sort(names.begin(), names.end());
  return names;
}

Status check_file(const fs::path& folder, const ListedFile& listed) {
  const fs::path path = folder / listed.name;
  std::error_code none;
  if (!fs::exists(path, none))
    return Error{ErrorCode::damaged, "This file of the packet is missing.", path.string(),
                 kAskAgain};
  const auto bytes = read_whole_file(path);
  if (!bytes) return bytes.error();
  if (bytes->size() == listed.bytes && sha256_hex(*bytes) == listed.sha256) return Done{};
  return Error{ErrorCode::damaged,
               "This file is not as it was handed over: it was changed afterwards.", path.string(),
               kAskAgain};
}

}  // namespace

Result<PacketCheck> check_packet(const fs::path& folder) {
  const auto names = names_in(folder);
  if (!names) return names.error();
  PacketCheck check;
  std::set<std::string> listed;
  bool any = false;
  for (const std::string& name : *names) {
    if (!name.ends_with(kEnding)) continue;
    any = true;
    listed.insert(name);
    const auto text = read_whole_file(folder / name);
    const auto manifest =
        text ? read_manifest(*text, (folder / name).string()) : Result<Manifest>(text.error());
    if (!manifest) {
      check.problems.push_back(manifest.error());
      continue;
    }
    check.list_hashes.push_back(manifest->reader + ": " + manifest->list_sha256);
    for (const ListedFile& file : manifest->files) {
      listed.insert(file.name);
      const Status same = check_file(folder, file);
      if (same) {
        check.sound.push_back(file.name);
      } else {
        check.problems.push_back(same.error());
      }
    }
  }
  if (!any) {
    return Error{ErrorCode::no_data, "There is no manifest of a packet in this folder.",
                 folder.string(), "Give the folder that holds logger.manifest.json or the like."};
  }
  for (const std::string& name : *names) {
    if (listed.count(name) == 0) check.unlisted.push_back(name);
  }
  return check;
}

}  // namespace oaklight
