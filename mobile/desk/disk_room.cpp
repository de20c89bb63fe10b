#include "mobile/desk/disk_room.hpp"

#include <limits>
#include <string>
#include <system_error>

namespace {

// Our own choice: a day's tally is under 1 MiB, its backups, copies and packets some tens.
constexpr std::uintmax_t kWarnBelow = 200;
constexpr std::uintmax_t kRefuseBelow = 50;
constexpr std::uintmax_t kBytesInMebibyte = 1024 * 1024;

std::uintmax_t free_beside(const std::filesystem::path& file) {
  std::error_code unknown;
  const auto space = std::filesystem::space(file.parent_path(), unknown);
  return unknown ? std::numeric_limits<std::uintmax_t>::max() : space.available;
}

}  // namespace

DiskRoom::DiskRoom(std::filesystem::path file) : file_(std::move(file)), measure_(free_beside) {}

std::uintmax_t DiskRoom::mebibytes() const { return measure_(file_) / kBytesInMebibyte; }

DiskRoom::Level DiskRoom::level() const {
  const std::uintmax_t left = mebibytes();
  return left < kRefuseBelow ? Level::too_low : left < kWarnBelow ? Level::low : Level::enough;
}

QString DiskRoom::warning() const {
  switch (level()) {
    case Level::too_low:
      return tr("Only %1 MiB are free on this device: finish this plot, begin no other. Give files "
                "away or delete what is not needed.")
          .arg(mebibytes());
    case Level::low:
      return tr("Only %1 MiB are free on this device. Give files away or delete what is not needed "
                "before the next day in the woods.")
          .arg(mebibytes());
    case Level::enough:
      break;
  }
  return {};
}

oaklight::Error DiskRoom::refusal() const {
  return {oaklight::ErrorCode::cannot_write,
          tr("Only %1 MiB are free on this device, so no plot is begun.")
              .arg(mebibytes())
              .toStdString(),
          "plot",
          tr("Give files away or delete what is not needed, then start it again.").toStdString()};
}
