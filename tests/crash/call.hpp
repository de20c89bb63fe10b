#pragma once

#include <filesystem>
#include <functional>
#include <map>
#include <string>
#include <vector>

#include "core/session/tract_session.hpp"

namespace oaklight::test {

/// The bytes of files by their names, in one folder.
using Files = std::map<std::string, std::string>;
Files files_in(const std::filesystem::path& folder);
void lay_out(const Files& files, const std::filesystem::path& folder);

/// Where a call works.
struct Place {
  std::filesystem::path folder;
  StoreContext context;
  TractSession* session = nullptr;  ///< on woods.gpkg, for calls that want it open
  [[nodiscard]] TractStore& store() const { return session->store(); }
};

/// One thing that is asked of core, the same in every run.
struct Call {
  std::string name;
  Files files;         ///< before
  bool opened = true;  ///< it is asked of a session on woods.gpkg that is open already
  /// What it gave, in words enough to tell it from something else.
  std::function<Result<std::string>(Place&)> ask;
  bool fresh_ids = false;   ///< gives the same once more only when the file was opened again
  bool takes_back = false;  ///< of its actions what was written when a later one failed
  bool of_each = false;     ///< a statement that it runs several times has several meanings
};

/// Made, opened, copied, rescued.
std::vector<Call> calls_of_opening();
std::vector<Call> calls_of_records();
std::vector<Call> calls_of_joining();
std::vector<Call> calls_of_session();

/// What was read, held against what the small tract holds: "as it is, 6 lines of history".
Result<std::string> read_from(const TractStore& store);

/// For steps that need no words.
template <class T>
Result<std::string> told(const Result<T>& result) {
  return result ? Result<std::string>(std::string("done")) : Result<std::string>(result.error());
}

/// A made file of all kinds of records, with a history that was undone in part.
std::string small_tract();

}  // namespace oaklight::test
