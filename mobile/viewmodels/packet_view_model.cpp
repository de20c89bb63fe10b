#include "mobile/viewmodels/packet_view_model.hpp"

#include <QCoreApplication>
#include <array>
#include <set>

#include "core/base/number_text.hpp"
#include "core/base/today.hpp"
#include "core/paper/packet_pages.hpp"
#include "core/paper/packet_pdf.hpp"
#include "core/session/decide.hpp"
#include "core/session/packet_files.hpp"
#include "mobile/viewmodels/mark_words.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::Action;
using oaklight::Packet;
using oaklight::PacketReader;
using oaklight::PaperSize;
using oaklight::Result;

namespace {

constexpr std::array kReaderOrder = {PacketReader::logger, PacketReader::firewood,
                                     PacketReader::standing, PacketReader::owner};

QString words(const char* text) { return QCoreApplication::translate("PacketViewModel", text); }

/// Tags of trees whose mark is not what the rules say of them any more.
QStringList stale_tags(const oaklight::TractData& data, const oaklight::TractKnowledge& knowledge) {
  oaklight::SystemClock clock;
  oaklight::IdSource ids(clock, oaklight::system_random());  // of marks that nobody stores
  const auto plans = oaklight::plan_stands(data, knowledge, ids);
  if (!plans) return {};
  std::set<oaklight::WalkTreeId> marked;
  for (const oaklight::Mark& mark : data.marks) marked.insert(mark.tree);
  std::set<oaklight::WalkTreeId> stale;
  for (const oaklight::Change& change : oaklight::marks_action(data, *plans).changes) {
    const auto* mark = std::get_if<oaklight::Mark>(&change);
    if (mark != nullptr && marked.contains(mark->tree)) stale.insert(mark->tree);
  }
  QStringList tags;
  for (const oaklight::WalkTree& tree : data.walk_trees) {
    if (stale.contains(tree.id)) tags << QString::fromStdString(tree.tag);
  }
  return tags;
}

QString first_of(const QStringList& tags) {
  constexpr int kMost = 8;
  const QString listed = QStringList(tags.mid(0, kMost)).join(QStringLiteral(", "));
  return tags.size() > kMost ? listed + QStringLiteral(" \u2026") : listed;
}

QString total_words(const oaklight::ProductTotal& total, const std::string& rule) {
  QString text = words(QT_TRANSLATE_NOOP("PacketViewModel", "%1 %2"))
                     .arg(product_words(total.product))
                     .arg(total.trees);
  if (total.board_feet)
    text += words(QT_TRANSLATE_NOOP("PacketViewModel", " (%1 board feet, %2)"))
                .arg(QString::fromStdString(oaklight::grouped_text(total.board_feet->value, 0)),
                     QString::fromStdString(rule));
  if (total.cords)
    text += words(QT_TRANSLATE_NOOP("PacketViewModel", " (%1 cords)"))
                .arg(QString::fromStdString(oaklight::number_text(total.cords->value, 2)));
  if (total.without_volume > 0)
    text += words(QT_TRANSLATE_NOOP("PacketViewModel", " (%1 without a volume)"))
                .arg(total.without_volume);
  return text;
}

}  // namespace

QString totals_words(const Packet& packet) {
  QStringList parts;
  if (packet.reader != PacketReader::standing)
    for (const oaklight::ProductTotal& total : packet.totals)
      parts << total_words(total, packet.log_rule);
  if (!packet.trained.empty()) {
    const char* apart = packet.reader == PacketReader::firewood
                            ? QT_TRANSLATE_NOOP("PacketViewModel", "%1 to leave alone")
                            : QT_TRANSLATE_NOOP("PacketViewModel", "%1 for a trained feller only");
    parts << words(apart).arg(packet.trained.size());
  }
  const char* sentence = QT_TRANSLATE_NOOP("PacketViewModel", "For the %1: %2 to cut. %3");
  if (packet.reader == PacketReader::standing)
    sentence = QT_TRANSLATE_NOOP("PacketViewModel", "For the %1: %2 to kill standing. %3");
  if (packet.reader == PacketReader::owner)
    sentence = QT_TRANSLATE_NOOP("PacketViewModel", "For the %1: %2 go. %3");
  return words(sentence)
      .arg(reader_name(packet.reader))
      .arg(packet.cut.size())
      .arg(parts.join(QStringLiteral("; ")))
      .trimmed();
}

PacketViewModel::PacketViewModel(TractDesk& desk, Settings& settings, QObject* parent)
    : PagesViewModel(settings.metric(), parent),
      desk_(desk),
      today_([&desk] { return oaklight::today(desk.clock()); }) {
  connect(&desk, &TractDesk::changed, this, [this] {
    say({});
    follow();
  });
  connect(&work_, &Background::lateChanged, this, &PacketViewModel::pagesChanged);
}

QStringList PacketViewModel::readers() const {
  QStringList names;
  for (const PacketReader reader : kReaderOrder) names << tr("For the %1").arg(reader_name(reader));
  return names;
}

void PacketViewModel::setReader(int reader) {
  if (reader == reader_ || reader < 0 || reader >= static_cast<int>(kReaderOrder.size())) return;
  reader_ = reader;
  toFirstPage();
  choose();
}

void PacketViewModel::setShown(bool shown) {
  shown_ = shown;
  follow();
}

void PacketViewModel::setOpen(bool open) {
  if (open_ == open) return;
  open_ = open;
  toFirstPage();
  follow();
}

PacketViewModel::Made PacketViewModel::put_together(const oaklight::TractData& data,
                                                    const oaklight::TractKnowledge& knowledge,
                                                    PacketReader reader, PaperSize paper,
                                                    const oaklight::PacketOptions& options) {
  Made made;
  if (data.walk_trees.empty()) {
    made.problem = tr("No tree was walked yet. Make crop tree cards on the page Light first.");
    return made;
  }
  if (data.marks.empty()) {
    made.problem =
        tr("Nothing is decided yet. Decide all stands now, or one at a time on the page "
           "Light.");
    made.can_decide = true;
    return made;
  }
  const QStringList stale = stale_tags(data, knowledge);
  if (!stale.isEmpty()) {
    made.problem = tr("Something changed since these trees were decided: %1. Decide again, so that "
                      "the list says what the rules say now. What was decided by hand stays.")
                       .arg(first_of(stale));
    made.can_decide = true;
    return made;
  }
  auto packet = oaklight::packet_for(data, knowledge, reader, options);
  if (!packet) {
    made.problem = sentence_of(packet.error());
    return made;
  }
  made.pages = oaklight::packet_pages(*packet, paper);
  made.packet = *std::move(packet);
  return made;
}

void PacketViewModel::follow() {
  if (!shown_ || !open_) return;
  work_.ask([this, data = desk_.snapshot(), &knowledge = desk_.knowledge(),
             reader = kReaderOrder[static_cast<std::size_t>(reader_)], paper = paperSize(),
             options = options()]() -> Background::Answer {
    auto made = std::make_shared<Made>(put_together(*data, knowledge, reader, paper, options));
    return [this, made] { show(std::move(*made)); };
  });
}

void PacketViewModel::show(Made made) {
  packet_ = made.packet ? std::make_shared<const Packet>(*std::move(made.packet)) : nullptr;
  can_decide_ = made.can_decide;
  summary_ = packet_ ? totals_words(*packet_) : QString();
  showPages(std::move(made.pages), made.problem);
}

QString PacketViewModel::summary() const { return work_.late() ? tr("Working \u2026") : summary_; }

/// What was handed over once is never written over: a second packet of a day has its own folder.
std::filesystem::path PacketViewModel::folder() const {
  const std::filesystem::path& tract = desk_.path();
  const std::string name = tract.stem().string() + "-packet-" + oaklight::to_text(today_());
  const std::string reader(oaklight::word_of(kReaderOrder[static_cast<std::size_t>(reader_)]));
  std::filesystem::path folder = tract.parent_path() / name;
  for (int number = 2; std::filesystem::exists(folder / (reader + ".manifest.json")); ++number)
    folder = tract.parent_path() / (name + "-" + std::to_string(number));
  return folder;
}

void PacketViewModel::make() {
  if (!packet_ || making_) return;
  making_ = true;
  desk_.whenSound([this](const oaklight::Status& sound) {
    making_ = false;
    if (!sound) return say(sentence_of(sound.error()));
    if (packet_) write();
  });
}

void PacketViewModel::write() {
  if (writing_.busy()) return;
  writing_.ask(
      [this, folder = folder(), packet = packet_, paper = paperSize()]() -> Background::Answer {
        const auto bytes = oaklight::packet_pdf(*packet, paper);
        const auto files = bytes ? oaklight::write_packet_files(folder, *packet, *bytes)
                                 : Result<std::vector<oaklight::PacketFile>>(bytes.error());
        return [this, files, folder] {
          if (!files) return say(sentence_of(files.error()));
          QStringList names;
          for (const oaklight::PacketFile& file : *files)
            names << QString::fromStdString(file.path.filename().string());
          say(tr("Written: %1, in the folder %2")
                  .arg(names.join(QStringLiteral(", ")), QString::fromStdString(folder.string())));
        };
      });
}

void PacketViewModel::decideAll() {
  desk_.submitLong([&knowledge = desk_.knowledge()](const oaklight::TractData& data,
                                                    oaklight::IdSource& ids) -> Result<Action> {
    const auto plans = oaklight::plan_stands(data, knowledge, ids);
    if (!plans) return plans.error();
    return oaklight::marks_action(data, *plans);
  });
}
