#include <iostream>
#include <map>

#include "core/base/number_text.hpp"
#include "core/command/json_values.hpp"
#include "core/command/program.hpp"
#include "core/handoff/reader_words.hpp"
#include "core/session/packet_files.hpp"
#ifdef OAKLIGHT_PAPER
#include "core/paper/packet_pdf.hpp"
#endif

namespace oaklight::command {
namespace {

struct Call {
  std::string tract;
  std::string folder = ".";
  PacketReader reader = PacketReader::logger;
  std::string paper = "letter";
  std::string work_day;
  std::string made_on;
  LogRule log_rule = LogRule::international;
  bool json = false;
};

Result<PacketOptions> options_of(const Call& call) {
  PacketOptions options;
  options.log_rule = call.log_rule;
  const auto made_on = day_or_today(call.made_on);
  if (!made_on) return made_on.error();
  options.today = *made_on;
  if (!call.work_day.empty()) {
    const auto day = day_from_text(call.work_day);
    if (!day) return day.error();
    options.work_day = *day;
  }
  return options;
}

/// The bytes of the pages; nothing in a program built without painting.
Result<std::optional<std::string>> pages_of(const Packet& packet, const Call& call) {
#ifdef OAKLIGHT_PAPER
  progress("drawing the pages");
  auto pdf = packet_pdf(packet, *from_word<PaperSize>(call.paper));
  if (!pdf) return pdf.error();
  return std::optional(*std::move(pdf));
#else
  (void)packet, (void)call;
  return std::optional<std::string>();
#endif
}

Result<std::vector<PacketFile>> write_packet(const Packet& packet, const Call& call) {
  const auto pdf = pages_of(packet, call);
  if (!pdf) return pdf.error();
  return write_packet_files(call.folder, packet, *pdf);
}

void print_totals(const Packet& packet) {
  for (const ProductTotal& total : packet.totals) {
    std::cout << "  " << word_of(total.product) << ": " << total.trees << " trees";
    if (total.board_feet) {
      std::cout << ", " << grouped_text(total.board_feet->value, 0) << " board feet "
                << packet.log_rule << " [board_feet]";
    }
    if (total.cords) std::cout << ", " << number_text(total.cords->value, 2) << " cords [cords]";
    if (total.without_volume > 0) std::cout << " (" << total.without_volume << " without a volume)";
    std::cout << '\n';
  }
}

void print(const Packet& packet, const std::vector<PacketFile>& products, const Call& call) {
  if (call.json) {
    Json json{{"for", word_of(packet.reader)},
              {"cut", packet.cut.size()},
              {"trained", packet.trained.size()},
              {"keep", packet.keep.size()},
              {"others", packet.others.size()},
              {"sha256", packet.list_sha256},
              {"files", Json::array()}};
    for (const PacketFile& p : products) json["files"].push_back(p.path.string());
    std::cout << json_text(json) << '\n';
    return;
  }
  const ReaderWords& words = words_for(packet.reader);
  std::cout << "Packet for " << words.whom << ": " << packet.cut.size() << ' ' << words.work_count
            << ", " << packet.trained.size() << ' ' << words.trained_count << ", "
            << packet.keep.size() << " that must not be cut\n";
  if (packet.reader != PacketReader::standing) print_totals(packet);
  if (!packet.volumes_by.empty()) std::cout << "  " << packet.volumes_by << '\n';
  for (const PacketFile& p : products)
    std::cout << "  " << p.path.string() << "  " << p.what << '\n';
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
  std::map<std::string, PacketReader> readers;
  for (const auto& entry : kWords<PacketReader>) readers.emplace(entry.word, entry.value);
  command->add_option("--for", call->reader, "Whom the packet is for")
      ->required()
      ->transform(CLI::CheckedTransformer(readers))
      ->option_text("logger|firewood|standing|owner");
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
