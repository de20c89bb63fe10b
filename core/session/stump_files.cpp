#include "core/session/stump_files.hpp"

#include "core/session/files.hpp"

namespace oaklight {

Result<std::vector<std::filesystem::path>> write_stump_files(
    const std::filesystem::path& folder, const StumpCheck& check,
    const std::optional<std::string>& pdf) {
  if (const Status made = make_folder(folder); !made) return made.error();
  std::vector<std::filesystem::path> written;
  const auto write = [&](const char* name, const std::string& bytes) -> Status {
    const Status done = write_whole_file(folder / name, bytes);
    if (done) written.push_back(folder / name);
    return done;
  };
  if (pdf) {
    if (const Status done = write("stumps.pdf", *pdf); !done) return done.error();
  }
  if (const Status done = write("stumps.csv", stump_check_csv(check)); !done) return done.error();
  return written;
}

}  // namespace oaklight
