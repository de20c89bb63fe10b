// Neither program talks to a network. The kernel is told to kill a process, and whatever it starts,
// the moment it asks for a socket of any kind but the local one; then everything that the programs
// do is done. The one exception is a receiver of positions at socket://host:port, which a person
// has to name.
#include <fcntl.h>
#include <gtest/gtest.h>
#include <linux/filter.h>
#include <linux/seccomp.h>
#include <sys/prctl.h>
#include <sys/socket.h>
#include <sys/syscall.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <csignal>
#include <cstddef>
#include <vector>

#include "tests/command/program.hpp"
#include "tests/support/bad_outlines.hpp"
#include "tests/support/places.hpp"

namespace oaklight::test {
namespace {

constexpr int kNoFilter = 126;  // what the child leaves with where the kernel has no such thing

/// From here on a socket that could reach another machine is the end of this process.
bool forbid_network() {
  const std::array<sock_filter, 6> program = {{
      BPF_STMT(BPF_LD | BPF_W | BPF_ABS, offsetof(seccomp_data, nr)),
      BPF_JUMP(BPF_JMP | BPF_JEQ | BPF_K, __NR_socket, 0, 3),
      BPF_STMT(BPF_LD | BPF_W | BPF_ABS, offsetof(seccomp_data, args)),
      BPF_JUMP(BPF_JMP | BPF_JEQ | BPF_K, AF_UNIX, 1, 0),
      BPF_STMT(BPF_RET | BPF_K, SECCOMP_RET_KILL_PROCESS),
      BPF_STMT(BPF_RET | BPF_K, SECCOMP_RET_ALLOW),
  }};
  const sock_fprog filter{program.size(), const_cast<sock_filter*>(program.data())};
  return prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) == 0 &&
         prctl(PR_SET_SECCOMP, SECCOMP_MODE_FILTER, &filter) == 0;
}

/// Runs a shell command so; its status as waitpid gives it.
int run_without_network(const std::string& command) {
  const pid_t child = fork();
  if (child == 0) {
    const int nowhere = open("/dev/null", O_RDWR);
    dup2(nowhere, STDOUT_FILENO);
    dup2(nowhere, STDERR_FILENO);
    if (!forbid_network()) _exit(kNoFilter);
    const std::string whole = "exec " + command;
    execl("/bin/sh", "sh", "-c", whole.c_str(), static_cast<char*>(nullptr));
    _exit(127);
  }
  int status = 0;
  waitpid(child, &status, 0);
  return status;
}

bool was_killed(int status) { return WIFSIGNALED(status) && WTERMSIG(status) == SIGSYS; }

class Network : public testing::Test {
 protected:
  void SetUp() override {
    const int status = run_without_network("true");
    if (WIFEXITED(status) && WEXITSTATUS(status) == kNoFilter) {
      GTEST_SKIP() << "this kernel forbids no sockets (seccomp): nothing was tested";
    }
  }
};

TEST_F(Network, TheGuardCatchesASocket) {
  EXPECT_TRUE(
      was_killed(run_without_network("/usr/bin/python3 -c 'import socket; socket.socket()'")));
  EXPECT_FALSE(was_killed(
      run_without_network("/usr/bin/python3 -c 'import socket; socket.socket(socket.AF_UNIX)'")));
}

TEST_F(Network, NoSubcommandAsksForOne) {
  const DemoTract demo;
  const std::string folder = demo.folder.path().string();
  write_bytes(demo.folder / "stands.kml",
              kml_of("Upland", {"-82.22,39.35 -82.21,39.35 -82.21,39.36 -82.22,39.35"}));
  // The same as a GeoPackage and a Shapefile, which GDAL reads, a library that could reach a
  // network.
  for (const char* other : {"stands_other.gpkg", "stands_other.shp"}) {
    run_program("ogr2ogr " + (demo.folder / other).string() + " " +
                (demo.folder / "stands.kml").string());
  }
  const std::vector<std::string> words = {
      "check " + demo.tract,
      "estimate " + demo.tract + " --json",
      "recommend " + demo.tract,
      "recommend " + demo.tract + " --plots",
      "explain " + demo.tract + " 101 --day 2026-12-07",
      "packet " + demo.tract + " --for logger --out " + folder,
      "packet " + demo.tract + " --for owner --out " + folder,
      "sheet " + demo.tract + " " + folder + "/sheets.pdf",
      "route " + demo.tract + " --out " + folder + "/plan",
      "compare " + demo.tract + " " + demo.tract,
      "stumps " + demo.tract + " --out " + folder + "/stumps",
      "boundary " + demo.tract + " " + folder + "/stands.kml",
      "boundary " + demo.tract + " " + folder + "/stands_other.gpkg",
      "boundary " + demo.tract + " " + folder + "/stands_other.shp",
      "boundary " + demo.tract + " http://127.0.0.1:9/stands.kml",
      "boundary " + demo.tract + " /vsicurl/http://127.0.0.1:9/stands.gpkg",
      "import " + folder + "/new.gpkg " + demo_plots().string(),
      "source stocking",
  };
  for (const std::string& call : words) {
    const int status = run_without_network(build_path("bin/oaklight ") + call);
    EXPECT_FALSE(was_killed(status)) << call;
    EXPECT_TRUE(WIFEXITED(status)) << call;
  }
}

class TabletNetwork : public Network {
 protected:
  void SetUp() override {
    Network::SetUp();
    if (access(app().c_str(), X_OK) != 0) GTEST_SKIP() << "the tablet app is not built";
  }
  static std::string app() { return build_path("bin/oaklight-tablet"); }
  static int run(const std::string& words) {
    return run_without_network("env QT_QPA_PLATFORM=offscreen timeout 60 " + app() + " " + words);
  }
};

TEST_F(TabletNetwork, LoadingEveryPageAsksForNone) {
  const TempDir folder;
  const int status = run("--self-test --folder " + folder.path().string());
  EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0) << status;
}

}  // namespace
}  // namespace oaklight::test
