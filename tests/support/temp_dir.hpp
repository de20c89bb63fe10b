#pragma once

#include <filesystem>
#include <string>

namespace oaklight::test {

/// A folder of its own for one test, gone with the object.
class TempDir {
 public:
  TempDir();
  ~TempDir();
  TempDir(const TempDir&) = delete;
  TempDir& operator=(const TempDir&) = delete;

  [[nodiscard]] const std::filesystem::path& path() const { return path_; }
  std::filesystem::path operator/(const std::string& name) const { return path_ / name; }

 private:
  std::filesystem::path path_;
};

/// All bytes of a file; "" when there is none.
std::string bytes_of(const std::filesystem::path& path);
void write_bytes(const std::filesystem::path& path, const std::string& bytes);

/// What a program of the system said.
struct Ran {
  int exit_code = -1;
  std::string out;
  std::string errors;
};

/// Runs a shell command. Paths in it must hold no spaces or quotes.
Ran run_program(const std::string& command);

}  // namespace oaklight::test
