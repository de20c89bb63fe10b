#include "mobile/viewmodels/light_view_model.hpp"

#include <algorithm>

#include "core/session/decide.hpp"
#include "core/session/stand_part.hpp"
#include "mobile/desk/unwalked.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::Action;
using oaklight::Result;
using oaklight::Stand;

namespace {

/// The stand with cards that comes first, or else the first.
std::optional<oaklight::StandId> first_stand(const oaklight::LiveTract& live) {
  for (const Stand& stand : live.data().stands) {
    if (!live.walk_trees_of(stand.id).empty()) return stand.id;
  }
  const auto& stands = live.data().stands;
  return stands.empty() ? std::nullopt : std::optional(stands.front().id);
}

}  // namespace

LightViewModel::LightViewModel(TractDesk& desk, Settings& settings, QObject* parent)
    : QObject(parent),
      desk_(desk),
      cards_(desk),
      card_(desk),
      tree_(desk, settings),
      stand_(first_stand(desk.live())) {
  connect(&desk, &TractDesk::changed, this, &LightViewModel::follow);
  connect(&work_, &Background::lateChanged, this, &LightViewModel::workingChanged);
  connect(&tree_, &WalkTreeViewModel::saved, this, [this](oaklight::WalkTreeId crop) {
    const auto* found = desk_.live().find(crop);
    if (found != nullptr && found->crop) card_.choose(crop);
  });
  follow();
}

QStringList LightViewModel::stands() const {
  QStringList names;
  for (const Stand& stand : desk_.data().stands) names << QString::fromStdString(stand.name);
  return names;
}

int LightViewModel::stand() const {
  const auto& stands = desk_.data().stands;
  const auto at = stand_ ? std::ranges::find(stands, *stand_, &Stand::id) : stands.end();
  return at == stands.end() ? -1 : static_cast<int>(at - stands.begin());
}

int LightViewModel::unwalked() const {
  const Stand* shown = stand_ ? desk_.live().find(*stand_) : nullptr;
  return shown != nullptr && is_unwalked(desk_.live(), *shown) ? stand() : -1;
}

void LightViewModel::setStand(int row) {
  const auto& stands = desk_.data().stands;
  if (row < 0 || row >= static_cast<int>(stands.size()) || row == stand()) return;
  stand_ = stands[static_cast<std::size_t>(row)].id;
  advice_.clear();
  guards_.set({});
  card_.choose({});
  follow();
}

void LightViewModel::setShown(bool shown) {
  if (shown_ == shown) return;
  shown_ = shown;
  if (shown_) follow();
}

void LightViewModel::follow() {
  if (stand_ && desk_.live().find(*stand_) == nullptr) stand_.reset();
  if (!stand_) stand_ = first_stand(desk_.live());
  emit standsChanged();
  say({});
  if (!shown_) return;
  cards_.follow(stand_.value_or(oaklight::StandId{}));
  compute();
}

void LightViewModel::compute() {
  work_.drop();
  if (!stand_)
    return show(oaklight::Error{oaklight::ErrorCode::no_data, "The tract has no stand yet.",
                                "stand", "Make one on the page Tract."});
  if (cards_.count() == 0) return show(std::shared_ptr<const StandDecision>());
  auto part = oaklight::stand_part(desk_.live(), *stand_);
  if (!part) return show(part.error());
  work_.ask([this, part = *std::move(part), stand = *stand_,
             &knowledge = desk_.knowledge()]() -> Background::Answer {
    auto decision = decide_stand(part, knowledge, stand);
    return [this, decision = std::move(decision)] { show(decision); };
  });
}

void LightViewModel::show(const Result<std::shared_ptr<const StandDecision>>& decision) {
  const auto shown = decision ? *decision : nullptr;
  problem_ = decision ? QString() : sentence_of(decision.error());
  const bool any = shown != nullptr && !shown->cards.empty();
  advice_ = any ? QString::fromStdString(shown->cards.front().advice.text) : QString();
  guards_.set(any ? shown->cards.front().guards : std::vector<oaklight::GuardView>());
  cards_.set(shown);
  card_.set(shown);
  emit decided();
}

void LightViewModel::openCard(int row) {
  if (row >= 0 && row < cards_.count()) card_.choose(cards_.at(row));
}
void LightViewModel::closeCard() { card_.choose({}); }

void LightViewModel::newCropTree() {
  if (stand_) tree_.beginCropTree(*stand_);
}

void LightViewModel::newNeighbour(int side) {
  if (card_.crop() && side >= 0 && side < 4)
    tree_.beginNeighbour(*card_.crop(), *(std::begin(oaklight::kSides) + side));
}

void LightViewModel::lookAgain(int row) {
  if (const auto* tree = card_.trees()->at(row)) tree_.beginAgain(tree->tree, tree->contact);
}

void LightViewModel::decide() {
  if (!stand_) return;
  auto written = std::make_shared<std::size_t>(0);
  desk_.submitLong(
      [&knowledge = desk_.knowledge(), stand = *stand_, written](
          const oaklight::TractData& data, oaklight::IdSource& ids) -> Result<Action> {
        auto action = oaklight::recommend_stand(data, knowledge, ids, stand);
        if (action) *written = action->changes.size();
        return action;
      },
      [this, written](const oaklight::Status& done) {
        if (done)
          say(*written == 0 ? tr("Nothing new: every tree is decided so already.")
                            : tr("%n tree(s) decided.", nullptr, static_cast<int>(*written)));
      });
}

void LightViewModel::say(const QString& notice) {
  if (notice_ == notice) return;
  notice_ = notice;
  emit noticeChanged();
}
