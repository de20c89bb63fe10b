#include "mobile/viewmodels/stumps_view_model.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/number_text.hpp"
#include "core/base/today.hpp"
#include "core/session/plot_work.hpp"
#include "core/session/stump_work.hpp"
#include "core/session/walk.hpp"
#include "mobile/viewmodels/mark_words.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::Finding;
using oaklight::Status;
using oaklight::StumpView;
using oaklight::WalkTreeId;
using oaklight::Wound;

namespace {

constexpr std::array kWounds = {Wound::small, Wound::medium, Wound::large, Wound::broken};

QString icon_of(std::optional<Finding> finding) {
  if (!finding) return QStringLiteral("minus");
  switch (*finding) {
    case Finding::as_marked:
      return QStringLiteral("tick");
    case Finding::standing:
      return QStringLiteral("plot_planned");
    case Finding::hung:
      return QStringLiteral("caution");
    case Finding::not_marked:
      return QStringLiteral("cross");
    case Finding::hurt:
      break;
  }
  return QStringLiteral("take");
}

std::optional<Finding> finding_of(StumpsViewModel::Act act) {
  switch (act) {
    case StumpsViewModel::Found:
      return Finding::as_marked;
    case StumpsViewModel::Standing:
      return Finding::standing;
    case StumpsViewModel::Hung:
      return Finding::hung;
    case StumpsViewModel::NotMarked:
      return Finding::not_marked;
    case StumpsViewModel::Hurt:
      return Finding::hurt;
    default:
      return std::nullopt;
  }
}

std::optional<oaklight::StumpDiameter> diameter_of(const QString& digits,
                                                   oaklight::UnitSystem system) {
  bool fine = false;
  const int tenths = digits.toInt(&fine);
  if (!fine) return std::nullopt;
  const auto diameter = oaklight::StumpDiameter::from_tenths(tenths, system);
  return diameter ? std::optional(*diameter) : std::nullopt;
}

}  // namespace

StumpsViewModel::StumpsViewModel(TractDesk& desk, Settings& settings, QObject* parent)
    : QObject(parent), desk_(desk), settings_(settings) {
  connect(&desk, &TractDesk::changed, this, &StumpsViewModel::follow);
  connect(&desk, &TractDesk::damageFound, this, &StumpsViewModel::changed);
  connect(&settings, &Settings::changed, this, [this] {
    fillRows();
    emit changed();
  });
}

void StumpsViewModel::setShown(bool shown) {
  if (shown_ == shown) return;
  shown_ = shown;
  if (shown_) follow();
}

void StumpsViewModel::follow() {
  if (!shown_) return;
  oaklight::PacketOptions options;
  options.today = today();
  work_.ask([this, data = desk_.snapshot(), &knowledge = desk_.knowledge(), options,
             here = here_ ? here_ : desk_.data().tract.landing]() -> Background::Answer {
    auto view = std::make_shared<oaklight::Result<StumpView>>(
        oaklight::stump_view(*data, knowledge, options, here));
    return [this, view] { show(view); };
  });
}

void StumpsViewModel::show(const std::shared_ptr<oaklight::Result<StumpView>>& view) {
  view_ = *view ? view : nullptr;
  problem_ = *view ? QString() : sentence_of(view->error());
  if (view_ == nullptr) in_hand_.reset();
  const bool gone = in_hand_ && desk_.live().find(*in_hand_) == nullptr;
  if (gone || !in_hand_) in_hand_ = firstOpen();
  fillRows();
  emit changed();
}

void StumpsViewModel::fillRows() {
  std::vector<StumpRow> rows;
  if (view_ != nullptr) {
    const StumpView& view = **view_;
    const auto add = [&](WalkTreeId id, const std::string& tag, const QString& detail,
                         bool listed) {
      const oaklight::WalkTree* tree = desk_.live().find(id);
      if (tree == nullptr) return;
      const auto findings = desk_.live().stumps_of(id);
      const auto latest = findings.empty() ? std::nullopt : std::optional(findings.back()->finding);
      rows.push_back({id, QString::fromStdString(tag), tree_words(desk_.knowledge(), tree->facts),
                      icon_of(latest), stateOf(id), detail, listed});
    };
    if (leaving_) {
      for (const oaklight::LeaveTree& tree : view.leave) {
        add(tree.tree, tree.tag, tree.crop ? tr("crop tree") : tr("to be left"), false);
      }
    } else {
      for (const std::size_t place : view.order) {
        const oaklight::ListedTree& tree = view.check.listed[place];
        add(tree.tree, tree.tag, wayText(place), true);
      }
    }
  }
  trees_.set(std::move(rows));
}

std::optional<WalkTreeId> StumpsViewModel::firstOpen() const {
  if (view_ == nullptr) return std::nullopt;
  const StumpView& view = **view_;
  for (const std::size_t place : view.order) {
    const WalkTreeId id = view.check.listed[place].tree;
    if (desk_.live().find(id) != nullptr && desk_.live().stumps_of(id).empty()) return id;
  }
  return std::nullopt;
}

std::optional<std::size_t> StumpsViewModel::placeInHand() const {
  if (view_ == nullptr || !in_hand_) return std::nullopt;
  const auto& listed = (**view_).check.listed;
  const auto found = std::ranges::find(listed, *in_hand_, &oaklight::ListedTree::tree);
  if (found == listed.end()) return std::nullopt;
  return static_cast<std::size_t>(found - listed.begin());
}

oaklight::Day StumpsViewModel::today() const { return oaklight::today(desk_.clock()); }

QString StumpsViewModel::tag() const {
  const oaklight::WalkTree* tree = in_hand_ ? desk_.live().find(*in_hand_) : nullptr;
  return tree == nullptr ? QString() : QString::fromStdString(tree->tag);
}

QString StumpsViewModel::tree() const {
  const oaklight::WalkTree* tree = in_hand_ ? desk_.live().find(*in_hand_) : nullptr;
  return tree == nullptr ? QString() : tree_words(desk_.knowledge(), tree->facts);
}

QString StumpsViewModel::stateOf(WalkTreeId id) const {
  const auto findings = desk_.live().stumps_of(id);
  if (findings.empty()) return tr("Not looked at");
  const oaklight::Stump& stump = *findings.back();
  QString words;
  switch (stump.finding) {
    case Finding::as_marked:
      words = tr("Found as marked");
      break;
    case Finding::standing:
      words = tr("Still standing");
      break;
    case Finding::hung:
      words = tr("Hung up");
      break;
    case Finding::not_marked:
      words = tr("Cut, not marked");
      break;
    case Finding::hurt:
      words = tr("Hurt");
      break;
  }
  if (stump.wound) {
    const auto place = std::ranges::find(kWounds, *stump.wound);
    words = tr("%1: %2").arg(words, wounds()[static_cast<qsizetype>(place - kWounds.begin())]);
  }
  return findings.size() > 1 ? tr("%1 (noted %2 times)").arg(words).arg(findings.size()) : words;
}

QString StumpsViewModel::state() const {
  return in_hand_ && desk_.live().find(*in_hand_) != nullptr ? stateOf(*in_hand_) : QString();
}

QString StumpsViewModel::wayText(std::size_t place) const {
  const auto& leg = (**view_).legs[place];
  if (!leg) {
    return (**view_).check.listed[place].position ? tr("on the map") : tr("no position");
  }
  const bool us = settings_.system() == oaklight::UnitSystem::us;
  const double far = us ? leg->distance.value : oaklight::to_metres(leg->distance).value;
  return tr("%1° %2, %3 %4")
      .arg(static_cast<int>(std::lround(leg->azimuth.value)) % 360)
      .arg(QString::fromStdString(oaklight::compass_point(leg->azimuth)),
           QString::fromStdString(oaklight::grouped_text(far, 0)),
           us ? QStringLiteral("ft") : QStringLiteral("m"));
}

QString StumpsViewModel::way() const {
  const auto place = placeInHand();
  return place ? wayText(*place) : QString();
}

QStringList StumpsViewModel::cautions() const {
  QStringList lines;
  const auto place = placeInHand();
  if (!place) return lines;
  for (const oaklight::Caution& caution : (**view_).check.listed[*place].cautions) {
    const QString text = QString::fromStdString(caution.text);
    lines << (caution.severity == oaklight::Severity::stop ? tr("STOP. %1").arg(text) : text);
  }
  return lines;
}

QString StumpsViewModel::progress() const {
  if (view_ == nullptr) return {};
  const oaklight::StumpCheck& check = (**view_).check;
  const int again = check.of(oaklight::ListState::standing) + check.of(oaklight::ListState::hung) +
                    check.of(oaklight::ListState::unclear);
  return tr("%1 of %2 looked at, %3 not right; %4 cut without a mark, %5 hurt")
      .arg(check.looked_at())
      .arg(check.listed.size())
      .arg(again)
      .arg(check.unmarked.size())
      .arg(check.hurt.size());
}

QStringList StumpsViewModel::before() const {
  return {
      tr("Look up: broken limbs, bent stems, rolling logs. Never alone, in wind or near felling."),
      tr("Nobody goes under or beside a tree that is hung up.")};
}

StumpsViewModel::Acts StumpsViewModel::may() const {
  Acts may;
  if (desk_.readOnly() || view_ == nullptr) return may;
  may.setFlag(Act::Loose);
  if (!in_hand_ || desk_.live().find(*in_hand_) == nullptr) return may;
  const bool listed = oaklight::is_listed(desk_.live(), *in_hand_);
  may.setFlag(Act::Found, listed);
  may.setFlag(Act::Standing, listed);
  may.setFlag(Act::Hung, listed);
  may.setFlag(Act::NotMarked, !listed);
  may.setFlag(Act::Hurt, !listed);
  return may;
}

void StumpsViewModel::showLeaving(bool leaving) {
  if (leaving_ == leaving) return;
  leaving_ = leaving;
  if (leaving_) {
    in_hand_.reset();
  } else {
    in_hand_ = firstOpen();
  }
  fillRows();
  emit changed();
}

void StumpsViewModel::choose(int row) {
  const StumpRow* chosen = trees_.at(row);
  if (chosen == nullptr) return;
  in_hand_ = chosen->id;
  emit changed();
}

void StumpsViewModel::next() {
  in_hand_ = firstOpen();
  emit changed();
}

void StumpsViewModel::note(int act) {
  const auto finding = finding_of(static_cast<Act>(act));
  if (!finding || !in_hand_ || !may().testFlag(static_cast<Act>(act))) return;
  const WalkTreeId id = *in_hand_;
  desk_.submit(
      [this, id, finding = *finding, day = oaklight::to_text(today())] {
        return oaklight::note_finding(desk_.live(), desk_.knowledge(), desk_.ids(), id, finding,
                                      day);
      },
      [this, id](const Status& noted) {
        if (!noted) return;
        const oaklight::WalkTree* tree = desk_.live().find(id);
        if (tree != nullptr) {
          said_ = tr("%1: %2").arg(QString::fromStdString(tree->tag), stateOf(id));
          if (tree->position) here_ = tree->position;
        }
        // A tree of the list is done with; one to be left may still be told its wound.
        if (in_hand_ == id && oaklight::is_listed(desk_.live(), id)) in_hand_ = firstOpen();
        fillRows();
        emit changed();
        follow();
      });
}

QStringList StumpsViewModel::wounds() const {
  return {tr("Small"), tr("Medium"), tr("Large"), tr("Broken")};
}

void StumpsViewModel::noteWound(int row) {
  if (row < 0 || row >= static_cast<int>(kWounds.size()) || !in_hand_ ||
      !may().testFlag(Act::Hurt)) {
    return;
  }
  const WalkTreeId id = *in_hand_;
  const Wound wound = kWounds[static_cast<std::size_t>(row)];
  desk_.submit(
      [this, id, wound, day = oaklight::to_text(today())] {
        return oaklight::note_wound(desk_.live(), desk_.knowledge(), desk_.ids(), id, wound, day);
      },
      [this, id](const Status& noted) {
        const oaklight::WalkTree* tree = desk_.live().find(id);
        if (!noted || tree == nullptr) return;
        said_ = tr("%1: %2").arg(QString::fromStdString(tree->tag), stateOf(id));
        fillRows();
        emit changed();
      });
}

QString StumpsViewModel::loosePreview(const QString& digits) const {
  const auto diameter = diameter_of(digits, settings_.system());
  if (!diameter) return {};
  return QString::fromStdString(oaklight::number_text(diameter->tenths() / 10.0, 1)) +
         (settings_.system() == oaklight::UnitSystem::us ? QStringLiteral(" in")
                                                         : QStringLiteral(" cm"));
}

void StumpsViewModel::noteLoose(const QString& digits) {
  const auto diameter = diameter_of(digits, settings_.system());
  if (!diameter || !may().testFlag(Act::Loose)) return;
  oaklight::StumpDraft draft;
  draft.finding = Finding::not_marked;
  draft.over_bark = diameter;
  draft.seen_on = oaklight::to_text(today());
  desk_.submit(
      [this, draft] {
        return oaklight::add_stump(desk_.live(), desk_.knowledge(), desk_.ids(), draft);
      },
      [this, words = loosePreview(digits)](const Status& noted) {
        if (!noted) return;
        said_ = tr("Stump without a tag, %1").arg(words);
        emit changed();
      });
}
