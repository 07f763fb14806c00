#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "door_plan_steps.h"
#include "share.h"

namespace haunch {
namespace {

constexpr int kMostParts = 10'000;

// ---- the leaf

void settle_opening(DoorLedger& ledger, FramePlan& frame) {
  Fit& opening = frame.opening;
  opening.width = *ledger.spec.size("opening.width");
  opening.height = *ledger.spec.size("opening.height");
  opening.found = ledger.spec.found;
  settle_meets(ledger, frame);
  settle_follow(ledger, opening);
  frame.width = opening.width - opening.room.across() + frame.lip.across();
  frame.height = opening.height - opening.room.upright() + frame.lip.upright();
  if (frame.width <= Length() || frame.height <= Length())
    ledger.problem({"clearance", "opening"},
                   fmt::format("leaves a leaf of {} by {} in an opening of {} by {}; make it less",
                               ledger.say(frame.width), ledger.say(frame.height),
                               ledger.say(opening.width), ledger.say(opening.height)));
}

void settle_stiles(DoorLedger& ledger, FramePlan& frame) {
  Length& left = frame.stile_left;
  Length& right = frame.stile_right;
  const Length usual = ledger.defaults.stile;
  ledger.settle_group("stile_width",
                      {{"stile_width.left", &left, usual}, {"stile_width.right", &right, usual}},
                      ledger.usual());
  if (left == right) {
    ledger.add_lever("stile_width", left, false);
  } else {
    ledger.add_lever("stile_width.left", left);
    ledger.add_lever("stile_width.right", right);
  }
  const Length width =
      frame.pair ? floor_half(frame.pair->width - frame.pair->clearance) : frame.width;
  if (width <= left + right)
    ledger.problem({"stile_width", "opening.width"},
                   fmt::format("the stiles take {} of the leaf's {}; make them narrower",
                               ledger.say(left + right), ledger.say(width)));
}

bool has_mitred_corners(const DoorLedger& ledger) {
  return ledger.spec.word<JointWord>("joint.corner") == JointWord::mitre;
}

/// A stile that is cut off at 45 degrees has no horns.
void settle_horn(DoorLedger& ledger, FramePlan& frame) {
  if (has_mitred_corners(ledger)) {
    const KeyValue& horn = ledger.stated("horn");
    if (horn.by_spec() && *horn.size > Length())
      ledger.problem({"horn", "joint"}, "mitred stiles have no horns; take it out, or say 0");
    return;
  }
  frame.horn =
      ledger.take("horn", ledger.defaults.horn,
                  ledger.defaults.house ? "left on at each end of a stile, sawn off after glue-up"
                                        : ledger.usual());
}

// ---- rails

std::string rail_name(std::size_t rail, std::size_t count, bool house) {
  if (rail == 0) return "top rail";
  if (rail + 1 == count) return "bottom rail";
  if (count > 3) return fmt::format("middle rail {}", rail);
  return house ? "lock rail" : "middle rail";
}

std::vector<Length> widths_of(const std::vector<RailSpec>& rails) {
  std::vector<Length> widths;
  for (const RailSpec& rail : rails)
    widths.push_back(rail.width);
  return widths;
}

/// The rails as stated, else the usual ones.
std::vector<RailSpec> rails_of(DoorLedger& ledger, const FramePlan& frame) {
  const std::vector<RailSpec>& stated = ledger.spec.rails;
  if (ledger.stated("rail_widths").by_shop) ledger.note_shop("rail_widths", widths_of(stated));
  if (!stated.empty()) return stated;
  std::vector<Length> widths = ledger.defaults.rails;
  const bool high = frame.height > ledger.defaults.highest_without_rail;
  if (widths.empty()) widths.assign(high ? 3 : 2, frame.wide_stile());
  const bool mitred = has_mitred_corners(ledger);
  if (mitred) widths.front() = widths.back() = frame.wide_stile();
  ledger.assume("rail_widths", widths,
                mitred && ledger.defaults.house
                    ? "top and bottom as wide as the stile, for a mitre comes out at the corner so"
                : ledger.defaults.house ? ledger.usual()
                : high ? "as wide as the stile, one between top and bottom above 60 in (1524 mm)"
                       : "top and bottom as wide as the stile");
  std::vector<RailSpec> rails;
  for (const Length width : widths)
    rails.push_back({width, {}, {}, {}, true});
  return rails;
}

/// Sets the rails between two placed ones so that the openings between them are equal.
void place_between(std::vector<RailPlan>& rails, std::size_t above, std::size_t below) {
  Length left = rails[above].low - (rails[below].low + rails[below].width);
  for (std::size_t i = above + 1; i < below; ++i)
    left -= rails[i].width;
  const std::vector<Length> openings = share_evenly(left, below - above);  // from the foot
  Length low = rails[below].low + rails[below].width;
  for (std::size_t i = below; i-- > above + 1;) {
    low += openings[below - 1 - i];
    rails[i].low = low;
    low += rails[i].width;
  }
}

/// Where the lower edge of a rail lies that is placed by one of its lines.
Length low_edge(const RailSpec& rail) {
  switch (*rail.line) {
    case RailLine::top:
      return rail.height - rail.width;
    case RailLine::centre:
      return rail.height - floor_half(rail.width);
    case RailLine::bottom:
      return rail.height;
  }
  return {};
}

void place_rails(const std::vector<RailSpec>& specs, FramePlan& frame) {
  std::vector<RailPlan>& rails = frame.rails;
  const std::size_t last = rails.size() - 1;
  rails[0].low = frame.height - rails[0].width;
  std::size_t placed = 0;
  for (std::size_t i = 1; i <= last; ++i) {
    if (i < last && !specs[i].line) continue;
    if (i < last) rails[i].low = low_edge(specs[i]);
    place_between(rails, placed, i);
    placed = i;
  }
}

/// A house door's only rail between top and bottom, where it is not placed, has its top where a
/// lock rail's is, if a panel has room above and below it there. Whether it was placed so.
bool place_lock_rail(const DoorLedger& ledger, const FramePlan& frame,
                     std::vector<RailSpec>& specs) {
  if (!ledger.defaults.house || specs.size() != 3 || specs[1].line) return false;
  const Length top = ledger.defaults.lock_rail_top;
  if (top >= frame.height - frame.rails.front().width ||
      top - specs[1].width <= frame.rails.back().width)
    return false;
  specs[1].line = RailLine::top;
  specs[1].height = top;
  return true;
}

/// Which rail a hand looks for the lock at, by its place: that of a house door's lock; of one
/// without a lock the only one between top and bottom, or the one that crosses a lock's usual
/// height.
void find_lock_rail(const DoorLedger& ledger, FramePlan& frame) {
  if (!ledger.defaults.house) return;
  const bool has_lock = ledger.spec.speaks_of("lock");
  const Length lock = ledger.spec.size("lock.height").value_or(ledger.defaults.lock_height);
  for (std::size_t i = 1; i + 1 < frame.rails.size(); ++i) {
    RailPlan& rail = frame.rails[i];
    const bool crosses = rail.low <= lock && lock <= rail.low + rail.width;
    rail.is_lock_rail = crosses || (!has_lock && frame.rails.size() == 3);
  }
}

void demand_sights(DoorLedger& ledger, const FramePlan& frame) {
  for (std::size_t i = 0; i + 1 < frame.rails.size(); ++i) {
    const RailPlan& above = frame.rails[i];
    const RailPlan& below = frame.rails[i + 1];
    const Length sight = above.low - (below.low + below.width);
    if (sight > Length()) continue;
    const std::string how =
        sight == Length() ? "touch" : fmt::format("overlap by {}", ledger.say(-sight));
    ledger.problem({{"rail_widths", i + 2 < frame.rails.size() ? i + 1 : i}},
                   fmt::format("the {} and the {} {}; place them so that a panel has room between",
                               above.name, below.name, how));
    return;  // those above and below only follow
  }
}

void add_rail_levers(DoorLedger& ledger, const FramePlan& frame,
                     const std::vector<RailSpec>& specs) {
  for (std::size_t i = 0; i < specs.size(); ++i) {
    const RailPlan& rail = frame.rails[i];
    ledger.add_lever({"rail_widths", i, specs[i].plain ? "" : ".width"},
                     rail.width - frame.arched(i), false, rail.name);
    if (frame.is_end_rail(i)) continue;
    const RailLine line = specs[i].line.value_or(RailLine::top);
    const Length height = specs[i].line ? specs[i].height : rail.low + rail.width;
    ledger.add_lever({"rail_widths", i, "." + std::string(word_of(line))}, height, true, rail.name);
  }
}

// ---- tiers and muntins

/// The number of panels in each tier, from the top. Contradictions were found before.
std::vector<int> panels_across(DoorLedger& ledger, std::size_t tiers) {
  const PanelsSpec& panels = ledger.spec.panels;
  std::vector<int> across(tiers, 1);
  if (const auto* count = std::get_if<PanelCount>(&panels))
    across.assign(tiers, count->count / static_cast<int>(tiers));
  if (const auto* each = std::get_if<PanelsAcross>(&panels))
    across = each->each.size() == 1 ? std::vector<int>(tiers, each->each.front()) : each->each;
  const std::string shown = fmt::format("{} across", tiers_words(across));
  if (panels.index() == 0) ledger.assume("panels", std::string("one in each tier"), ledger.usual());
  if (ledger.stated("panels").by_shop) ledger.note_shop("panels", shown);
  return across;
}

std::size_t part_count(const std::vector<int>& across) {
  std::size_t parts = across.size() + 3;  // rails and stiles
  for (const int panels : across)
    parts += 2 * static_cast<std::size_t>(panels) - 1;
  return parts;
}

/// Shares the width of a tier among its panels; false when there is none to share.
bool share_tier(DoorLedger& ledger, const FramePlan& frame, int panels, TierPlan& tier) {
  const Length inside = frame.width - frame.stile_left - frame.stile_right;
  const Length left = inside - frame.muntin_width * (panels - 1);
  if (left < Length::from_steps(panels)) {
    ledger.problem({"muntin_width", "panels"},
                   fmt::format("{} of {} leave no width for panels in the {} between the stiles; "
                               "make muntin_width or the number of "
                               "panels less",
                               panels == 2 ? "1 muntin" : fmt::format("{} muntins", panels - 1),
                               ledger.say(frame.muntin_width), ledger.say(inside)));
    return false;
  }
  Length low = frame.stile_left;
  for (const Length sight : share_evenly(left, static_cast<std::size_t>(panels))) {
    tier.sights.push_back({low, low + sight});
    low += sight + frame.muntin_width;
  }
  return true;
}

}  // namespace

std::string tiers_words(const std::vector<int>& across) {
  std::string words;
  for (const int panels : across)
    words += (words.empty() ? "" : ", ") + std::to_string(panels);
  return words;
}

void settle_leaf(DoorLedger& ledger, FramePlan& frame, WhichLeaf leaf) {
  ledger.note_names();
  if (!ledger.stated("use").stated)
    ledger.assume("use", std::string(word_of(ledger.use)), why_usual(ledger.use));
  ledger.note_shops_word("use");
  settle_opening(ledger, frame);
  settle_pair(ledger, frame, leaf);
  frame.thickness = ledger.take("thickness", ledger.defaults.thickness, ledger.usual());
  settle_horn(ledger, frame);
  if (ledger.clean()) settle_stiles(ledger, frame);
  if (ledger.clean()) settle_lip(ledger, frame);
  if (ledger.clean()) settle_meeting_stiles(ledger, frame);
}

void settle_rails(DoorLedger& ledger, FramePlan& frame) {
  std::vector<RailSpec> specs = rails_of(ledger, frame);
  settle_arch(ledger, frame, specs.front().width);
  if (!ledger.clean()) return;
  Length sum;
  for (std::size_t i = 0; i < specs.size(); ++i) {
    const std::string name =
        specs[i].name.empty() ? rail_name(i, specs.size(), ledger.defaults.house) : specs[i].name;
    frame.rails.push_back({specs[i].width + frame.arched(i), {}, name});
    sum += frame.rails.back().width;
  }
  if (sum >= frame.height) {
    ledger.problem(
        {"rail_widths", "opening.height"},
        fmt::format(
            "the rails take {} of the leaf's {} and leave no panel; make them narrower or fewer",
            ledger.say(sum), ledger.say(frame.height)));
    return;
  }
  const bool usual_place = place_lock_rail(ledger, frame, specs);
  place_rails(specs, frame);
  find_lock_rail(ledger, frame);
  if (frame.arch) frame.arch->springing = frame.rails.front().low + frame.arch->below;
  demand_wood_under_head(ledger, frame);
  demand_sights(ledger, frame);
  add_rail_levers(ledger, frame, specs);
  for (std::size_t i = 1; i + 1 < specs.size(); ++i)
    if (usual_place)
      ledger.assume(
          {"rail_widths", i, ".top"}, specs[i].height,
          frame.rails[i].name + ": 38 in above the foot (Building Construction, panelled doors)");
    else if (!specs[i].line)
      ledger.assume({"rail_widths", i, ".top"}, frame.rails[i].low + frame.rails[i].width,
                    frame.rails[i].name + ": so that the openings above and below are equal");
}

void settle_tiers(DoorLedger& ledger, FramePlan& frame) {
  const std::vector<int> across = panels_across(ledger, frame.rails.size() - 1);
  if (const std::size_t parts = part_count(across); parts > kMostParts) {
    ledger.problem({"panels"},
                   fmt::format("makes {} parts; the most in one item is {}", parts, kMostParts));
    return;
  }
  if (*std::max_element(across.begin(), across.end()) > 1)
    frame.muntin_width = ledger.take("muntin_width", ledger.defaults.muntin, ledger.usual());
  for (std::size_t i = 0; i < across.size(); ++i) {
    const RailPlan& below = frame.rails[i + 1];
    TierPlan tier{{below.low + below.width, frame.rails[i].low}, {}};
    if (!share_tier(ledger, frame, across[i], tier)) return;
    frame.tiers.push_back(std::move(tier));
  }
  demand_one_panel_under_arch(ledger, frame);
}

}  // namespace haunch
