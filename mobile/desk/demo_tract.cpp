#include "mobile/desk/demo_tract.hpp"

#include <span>

#include "core/base/embedded.hpp"
#include "core/session/tract_session.hpp"

namespace oaklight {
std::span<const EmbeddedFile> embedded_demo();
}

using oaklight::CruiseFiles;
using oaklight::NamedText;

namespace {

CruiseFiles demo_files() {
  CruiseFiles files;
  for (const oaklight::EmbeddedFile& file : oaklight::embedded_demo()) {
    for (const oaklight::KnownFile& known : oaklight::kKnownFiles) {
      if (file.path == known.name)
        files.*known.slot = NamedText{std::string(file.path), std::string(file.text)};
    }
  }
  return files;
}

}  // namespace

oaklight::Status make_demo_tract(const std::filesystem::path& path,
                                 const TractDesk::Clocks& clocks) {
  auto session = oaklight::TractSession::create(path, {clocks.clock, clocks.random, clocks.device});
  if (!session) return session.error();
  const auto report = session->import_files(demo_files());
  if (!report) return report.error();
  if (!report->faults.empty()) return report->faults.front();
  return oaklight::Done{};
}
