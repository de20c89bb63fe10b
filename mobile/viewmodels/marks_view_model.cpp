#include "mobile/viewmodels/marks_view_model.hpp"

#include <array>

#include "core/session/decide.hpp"
#include "mobile/desk/unwalked.hpp"
#include "mobile/viewmodels/mark_words.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::PacketReader;
using oaklight::Reader;
using oaklight::Verdict;

namespace {

constexpr std::array kVerdictOrder = {Verdict::take, Verdict::keep, Verdict::kill_standing,
                                      Verdict::look_again};
constexpr std::array kReaderOrder = {Reader::logger, Reader::firewood};
constexpr std::array kTotalsOrder = {PacketReader::logger, PacketReader::firewood};
constexpr int kUndecidedRow = static_cast<int>(kVerdictOrder.size()) + 1;

}  // namespace

MarksViewModel::MarksViewModel(TractDesk& desk, Settings& settings, QObject* parent)
    : QObject(parent),
      desk_(desk),
      marks_(desk.knowledge()),
      tree_(desk.knowledge()),
      packet_(desk, settings),
      stumps_(desk, settings),
      stump_report_(desk, settings) {
  connect(&desk, &TractDesk::changed, this, &MarksViewModel::follow);
  connect(&list_work_, &Background::lateChanged, this, &MarksViewModel::workingChanged);
  connect(&totals_work_, &Background::lateChanged, this, &MarksViewModel::workingChanged);
  fillVerdicts({});
  readers_.set({{"", "", tr("Everybody's"), {}, true},
                {"", "", tr("Logger's"), {}, false},
                {"", "", tr("Firewood cutter's"), {}, false}});
}

void MarksViewModel::setShown(bool shown) {
  if (shown_ == shown) return;
  shown_ = shown;
  packet_.setShown(shown);
  if (shown_) follow();
}

void MarksViewModel::follow() {
  if (!shown_) return;
  emit unwalkedChanged();
  list_work_.ask(
      [this, data = desk_.snapshot(), &knowledge = desk_.knowledge()]() -> Background::Answer {
        auto view = std::make_shared<oaklight::Result<oaklight::MarksView>>(
            oaklight::marks_view(*data, knowledge, std::nullopt, std::nullopt));
        return [this, view] { show(view); };
      });
  addUp();
}

int MarksViewModel::unwalked() const { return unwalked_row(desk_.live()); }

void MarksViewModel::show(const std::shared_ptr<oaklight::Result<oaklight::MarksView>>& answer) {
  const auto& view = *answer;
  problem_ = view ? QString() : sentence_of(view.error());
  fillVerdicts(view ? view->totals : oaklight::MarkTotals{});
  // The list shares what may be long.
  marks_.set(view ? std::shared_ptr<const oaklight::MarksView>(answer, &*view) : nullptr, filter_);
  emit filterChanged();
}

void MarksViewModel::fillVerdicts(const oaklight::MarkTotals& totals) {
  const auto chip = [this](const QString& name, int count, bool on) {
    return Chip{"", "", tr("%1 (%2)").arg(name).arg(count), {}, on};
  };
  std::vector<Chip> chips{chip(tr("All"), totals.trees, !filter_.verdict && !filter_.undecided)};
  for (const Verdict verdict : kVerdictOrder)
    chips.push_back(chip(verdict_words(verdict), totals.of(verdict), filter_.verdict == verdict));
  chips.push_back(chip(tr("Not decided"), totals.undecided, filter_.undecided));
  verdicts_.set(std::move(chips));
}

void MarksViewModel::filter() {
  marks_.set(marks_.view(), filter_);
  emit filterChanged();
}

void MarksViewModel::setTag(const QString& tag) {
  if (this->tag() == tag) return;
  filter_.tag = tag.toStdString();
  filter();
}

void MarksViewModel::chooseVerdict(int row) {
  if (row < 0 || row >= verdicts_.rowCount()) return;
  filter_.undecided = row == kUndecidedRow;
  filter_.verdict.reset();
  if (row > 0 && row < kUndecidedRow)
    filter_.verdict = kVerdictOrder[static_cast<std::size_t>(row) - 1];
  for (int other = 0; other < verdicts_.rowCount(); ++other) verdicts_.setOn(other, other == row);
  filter();
}

void MarksViewModel::chooseReader(int row) {
  if (row < 0 || row >= readers_.rowCount()) return;
  filter_.reader.reset();
  if (row > 0) filter_.reader = kReaderOrder[static_cast<std::size_t>(row) - 1];
  for (int other = 0; other < readers_.rowCount(); ++other) readers_.setOn(other, other == row);
  filter();
}

QString MarksViewModel::shown() const {
  const auto& view = marks_.view();
  if (view == nullptr) return problem_;
  QString text = tr("%1 of %2 trees").arg(marks_.count()).arg(view->totals.trees);
  if (view->totals.by_hand > 0) text += tr("; %1 decided by hand").arg(view->totals.by_hand);
  if (view->totals.stops > 0) text += tr("; %1 with a STOP").arg(view->totals.stops);
  return text;
}

void MarksViewModel::openTree(int row) {
  if (const oaklight::MarkRow* found = marks_.at(row)) tree_.choose(*found);
}

void MarksViewModel::addUp() {
  totals_work_.ask([this, data = desk_.snapshot(), &knowledge = desk_.knowledge(),
                    options = packet_.options()]() -> Background::Answer {
    std::vector<std::pair<PacketReader, oaklight::Result<oaklight::Packet>>> packets;
    for (const PacketReader reader : kTotalsOrder)
      packets.emplace_back(reader, oaklight::packet_for(*data, knowledge, reader, options));
    return [this, packets = std::move(packets)] {
      totals_.clear();
      for (const auto& [reader, packet] : packets)
        totals_
            << (packet
                    ? totals_words(*packet)
                    : tr("For the %1: %2").arg(reader_name(reader), sentence_of(packet.error())));
      emit totalsChanged();
    };
  });
}
