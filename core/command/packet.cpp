#include <chrono>
#include <filesystem>
#include <iostream>
#include <map>
#include <nlohmann/json.hpp>

#include "core/base/number_text.hpp"
#include "core/command/program.hpp"
#include "core/handoff/manifest.hpp"
#include "core/session/files.hpp"
#ifdef OAKLIGHT_PAPER
#include "core/paper/packet_pdf.hpp"
#endif

namespace oaklight::command {
namespace {

struct Call {
  std::string tract;
  std::string folder = ".";
  Reader reader = Reader::logger;
  std::string paper = "letter";
  std::string work_day;
  std::string made_on;
  LogRule log_rule = LogRule::international;
  bool json = false;
};

Day today() { return Day{std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now())}; }

Result<PacketOptions> options_of(const Call& call) {
  PacketOptions options;
  options.today = today();
  options.log_rule = call.log_rule;
  if (!call.made_on.empty()) {
    const auto day = day_from_text(call.made_on);
    if (!day) return day.error();
    options.today = *day;
  }
  if (!call.work_day.empty()) {
    const auto day = day_from_text(call.work_day);
    if (!day) return day.error();
    options.work_day = *day;
  }
  return options;
}

/// A file of the packet that was written.
struct Product {
  std::filesystem::path path;
  std::string what;
};

Status write_product(const std::filesystem::path& path, const std::string& what,
                     const std::string& bytes, std::vector<Product>& products) {
  const Status written = write_whole_file(path, bytes);
  if (!written) return written.error();
  products.push_back({path, what});
  return Done{};
}

Status write_pdf(const Packet& packet, const Call& call, const std::filesystem::path& path,
                 std::vector<Product>& products) {
#ifdef OAKLIGHT_PAPER
  progress("drawing the pages");
  const auto pdf = packet_pdf(packet, *from_word<PaperSize>(call.paper));
  if (!pdf) return pdf.error();
  return write_product(path, "pages to print", *pdf, products);
#else
  (void)packet, (void)call, (void)path, (void)products;
  return Done{};
#endif
}

Result<std::vector<Product>> write_packet(const Packet& packet, const Call& call) {
  std::error_code problem;
  std::filesystem::create_directories(call.folder, problem);
  if (problem) {
    return Error{ErrorCode::cannot_write, "This folder cannot be made (" + problem.message() + ").",
                 call.folder, "Choose another folder with --out."};
  }
  const auto base = std::filesystem::path(call.folder) / std::string(word_of(call.reader));
  const auto named = [&](const char* end) { return std::filesystem::path(base.string() + end); };
  std::vector<Product> products;
  const Status pdf = write_pdf(packet, call, named(".pdf"), products);
  if (!pdf) return pdf.error();
  const Status list = write_product(named(".csv"), "the list", packet.list_csv, products);
  if (!list) return list.error();
  const Status manifest = write_product(named(".manifest.json"), "counts and checksum",
                                        manifest_json(packet), products);
  if (!manifest) return manifest.error();
  return products;
}

void print(const Packet& packet, const std::vector<Product>& products, const Call& call) {
  if (call.json) {
    nlohmann::ordered_json json{
        {"for", word_of(packet.reader)},           {"cut", packet.cut.size()},
        {"trained", packet.trained.size()},        {"keep", packet.keep.size()},
        {"others", packet.others.size()},          {"sha256", packet.list_sha256},
        {"files", nlohmann::ordered_json::array()}};
    for (const Product& p : products) json["files"].push_back(p.path.string());
    std::cout << json.dump(2) << '\n';
    return;
  }
  std::cout << "Packet for the " << (packet.reader == Reader::logger ? "logger" : "firewood cutter")
            << ": " << packet.cut.size() << " trees to cut, " << packet.trained.size()
            << (packet.reader == Reader::logger ? " for a trained feller only, "
                                                : " to leave alone, ")
            << packet.keep.size() << " that must not be cut\n";
  for (const ProductTotal& total : packet.totals) {
    std::cout << "  " << word_of(total.product) << ": " << total.trees << " trees";
    if (total.board_feet) {
      std::cout << ", " << grouped_text(total.board_feet->value, 0) << " board feet "
                << packet.log_rule;
    }
    if (total.cords) std::cout << ", " << number_text(total.cords->value, 2) << " cords";
    if (total.without_volume > 0) std::cout << " (" << total.without_volume << " without a volume)";
    std::cout << '\n';
  }
  for (const Product& p : products) std::cout << "  " << p.path.string() << "  " << p.what << '\n';
}

int run(const Call& call) {
  const auto options = options_of(call);
  if (!options) return fail(options.error(), call.json);
  const auto session = open_to_read(call.tract);
  if (!session) return fail(session.error(), call.json);
  const auto packet = session->packet(call.reader, *options);
  if (!packet) return fail(packet.error(), call.json);
  const auto products = write_packet(*packet, call);
  if (!products) return fail(products.error(), call.json);
  print(*packet, *products, call);
  return kDone;
}

}  // namespace

void add_packet(CLI::App& app, int& exit_code) {
  auto call = std::make_shared<Call>();
  CLI::App* command = app.add_subcommand(
      "packet", "Write what is handed over: cautions, map, marked list, what must not be cut");
  add_tract(*command, call->tract);
  std::map<std::string, Reader> readers;
  for (const auto& entry : kWords<Reader>) readers.emplace(entry.word, entry.value);
  command->add_option("--for", call->reader, "Whom the packet is for")
      ->required()
      ->transform(CLI::CheckedTransformer(readers))
      ->option_text("logger|firewood");
  command->add_option("--out", call->folder, "Folder for the files (default: here)");
  command->add_option("--paper", call->paper, "letter or a4 (default: letter)")
      ->check(CLI::IsMember({"letter", "a4"}));
  command->add_option("--work-day", call->work_day, "Day planned for the work, like 2026-12-07");
  command->add_option("--made-on", call->made_on,
                      "Day to print as the packet's day (default: today)");
  add_log_rule(*command, call->log_rule);
  add_json(*command, call->json);
  command->footer(
      "Example: oaklight packet hollow.gpkg --for logger --out packet --log-rule doyle");
  command->callback([call, &exit_code] { exit_code = run(*call); });
}

}  // namespace oaklight::command
