#include "tests/support/temp_dir.hpp"

#include <stdlib.h>
#include <sys/wait.h>

#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace oaklight::test {

namespace fs = std::filesystem;

TempDir::TempDir() {
  // In memory where there is such a place: no test outlives the machine, and syncs cost nothing
  // there.
  const fs::path memory = "/dev/shm";
  const fs::path root = fs::exists(memory) ? memory : fs::temp_directory_path();
  std::string name = (root / "oaklight-test-XXXXXX").string();
  if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no folder for a test");
  path_ = name;
}

TempDir::~TempDir() {
  std::error_code ignored;
  fs::remove_all(path_, ignored);
}

std::string bytes_of(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::stringstream bytes;
  bytes << in.rdbuf();
  return bytes.str();
}

void write_bytes(const fs::path& path, const std::string& bytes) {
  std::ofstream out(path, std::ios::binary | std::ios::trunc);
  out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
}

Ran run_program(const std::string& command) {
  const TempDir folder;
  const std::string out = (folder / "out").string();
  const std::string errors = (folder / "errors").string();
  const int status = std::system(("(" + command + ") >" + out + " 2>" + errors).c_str());
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, bytes_of(out), bytes_of(errors)};
}

}  // namespace oaklight::test
