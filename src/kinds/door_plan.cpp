#include "door_plan.h"

#include <algorithm>
#include <utility>

#include "door_defaults.h"
#include "haunch/length_text.h"
#include "share.h"

namespace haunch {
namespace {

constexpr int kMostParts = 100'000;

const SizeKey& size_key(std::string_view key) {
  const auto keys = door_size_keys();
  return *std::find_if(keys.begin(), keys.end(),
                       [&](const SizeKey& size) { return size.key == key; });
}

std::string pointer_to(std::string_view dotted_key) {
  std::string path = "/" + std::string(dotted_key);
  std::replace(path.begin(), path.end(), '.', '/');
  return path;
}

/// Settles the sizes of one door, step by step; each step rests on those before it.
class DoorPlanner {
 public:
  explicit DoorPlanner(const DoorSpec& spec)
      : spec_(spec),
        unit_(spec.units.value_or(Unit::mm)),
        defaults_(door_defaults(unit_, spec.opening_height.size.value_or(Length()))) {}

  PlannedDoor plan() {
    using Step = void (DoorPlanner::*)();
    for (const Step step :
         {&DoorPlanner::settle_leaf, &DoorPlanner::settle_rails, &DoorPlanner::place_rails,
          &DoorPlanner::settle_tiers, &DoorPlanner::settle_groove_depth,
          &DoorPlanner::settle_tenon_depths, &DoorPlanner::settle_fit,
          &DoorPlanner::settle_places_in_thickness, &DoorPlanner::settle_clearances,
          &DoorPlanner::settle_tenon_widths, &DoorPlanner::settle_panels}) {
      (this->*step)();
      if (!result_.problems.empty()) break;
    }
    result_.plan = std::move(plan_);
    return std::move(result_);
  }

 private:
  // One step each, in this order.
  void settle_leaf();
  void settle_rails();
  void place_rails();
  void settle_tiers();
  void settle_groove_depth();
  void settle_tenon_depths();
  void settle_fit();
  void settle_places_in_thickness();
  void settle_clearances();
  void settle_tenon_widths();
  void settle_panels();

  // Values and where they come from.
  Length settle(std::string_view key, Length fallback, std::string_view why);
  Length take(std::string_view key, Length fallback, std::string_view why);
  struct Member {
    std::string_view key;
    Length* size;
  };
  void settle_group(std::string_view group, Length fallback, const std::vector<Member>& members);
  void take_species();
  void assume(std::string_view key, decltype(Assumed::value) value, std::string_view why);
  void note_shop(std::string_view key, decltype(Assumed::value) value) {
    assume(key, std::move(value), "the shop file");
  }
  void add_lever(std::string key, Length value, Change change, bool zero_allowed);
  void problem(std::string_view key, std::string message);
  std::string say(Length length) const { return in_words(length, unit_); }
  const Stated& stated(std::string_view key) const { return spec_.*size_key(key).size; }
  std::string_view kind_of_door() const { return defaults_.house ? "house door" : "cabinet door"; }
  std::string usual() const { return std::string("usual for a ") + std::string(kind_of_door()); }

  // The leaf.
  void settle_opening();
  void settle_stiles();

  // Rails.
  std::string rail_name(std::size_t rail, std::size_t count) const;
  void place_between(std::size_t above, std::size_t below);
  void add_rail_levers();
  bool is_end(std::size_t rail) const { return rail == 0 || rail + 1 == plan_.rails.size(); }

  // Tiers.
  std::vector<int> panels_across();
  bool has_muntins() const;
  bool takes_muntins(std::size_t rail) const;
  bool mortises_meet(std::size_t rail) const;
  Length deepest_muntin_tenon(Length wanted) const;

  // Tenons.
  bool has_mortises() const { return !rail_stub_ || (has_muntins() && !muntin_stub_); }
  bool reconcile_fit();
  Length mortise_fallback(std::string& why) const;
  Length cutter_for(Length thickness) const;
  Length take_from_face(std::string_view key, Length width, const Stated& other,
                        Length other_width);
  MortiseDesign mortise_for(bool stub, Length depth) const;
  TenonDesign tenon_for(bool stub, Length depth) const;
  TenonDesign rail_tenon(std::size_t rail, std::optional<Length> limit);
  void lay_out(TenonDesign& tenon, Strip across, std::optional<Length> limit,
               const std::string& name);
  Length relish_fallback(Length rail_width) const;
  Length relish_of(std::size_t rail);
  void note_gap(Length gap, bool by_thickness, const std::string& name, Length whole);
  void settle_tenon_levers();

  // Panels.
  template <typename Word>
  Word settle_choice(const Chosen<Word>& chosen, std::string_view key, Word fallback,
                     std::string_view word);
  Length take_gap(std::string_view key, Length usual_gap);
  void demand_panel_sizes();

  DoorSpec
      spec_;  // a copy: where the shop's sizes of a fit overrule each other, one is struck out here
  Unit unit_;
  DoorDefaults defaults_;
  DoorPlan plan_;
  PlannedDoor result_;
  bool rail_stub_ = false;
  bool muntin_stub_ = false;
  Length fit_;
  Length mortise_width_;
  Length mortise_from_face_;
  Length rail_depth_, muntin_depth_;
  Length edge_clearance_, bottom_clearance_, haunch_depth_;
  std::optional<Length> gap_used_;  // between the tenons of the last one that was divided
};

// ---- values and where they come from

void DoorPlanner::assume(std::string_view key, decltype(Assumed::value) value,
                         std::string_view why) {
  result_.assumed.push_back({std::string(key), std::move(value), std::string(why)});
}

void DoorPlanner::problem(std::string_view key, std::string message) {
  result_.problems.push_back(
      {key.empty() ? std::string() : pointer_to(key), std::move(message), {}});
}

void DoorPlanner::add_lever(std::string key, Length value, Change change, bool zero_allowed) {
  if (change == Change::none) return;
  const Length step = change == Change::size ? defaults_.size_step : defaults_.fit_step;
  result_.levers.push_back(
      {std::move(key), value, step, zero_allowed ? Length() : Length::from_steps(1)});
}

/// The stated size, else the shop's, else `fallback`; one that the spec does not state is listed
/// with its reason.
Length DoorPlanner::settle(std::string_view key, Length fallback, std::string_view why) {
  const Stated& stated = spec_.*size_key(key).size;
  const Length size = stated.size.value_or(fallback);
  if (!stated.size)
    assume(key, size, why);
  else if (stated.by_shop)
    note_shop(key, size);
  return size;
}

/// The sizes of a group, told as one where nothing, or the shop alone, said the same of all of
/// them.
void DoorPlanner::settle_group(std::string_view group, Length fallback,
                               const std::vector<Member>& members) {
  const Stated& first = stated(members.front().key);
  const bool as_one = std::all_of(members.begin(), members.end(), [&](const Member& member) {
    const Stated& its = stated(member.key);
    return its.size == first.size && its.by_shop == first.by_shop && (its.by_shop || !its.size);
  });
  for (const Member& member : members)
    *member.size = as_one ? first.size.value_or(fallback) : settle(member.key, fallback, usual());
  if (as_one && first.size) note_shop(group, *first.size);
  if (as_one && !first.size) assume(group, fallback, usual());
}

/// The same for a size that a remedy may change.
Length DoorPlanner::take(std::string_view key, Length fallback, std::string_view why) {
  const SizeKey& row = size_key(key);
  const Length size = settle(key, fallback, why);
  add_lever(std::string(key), size, row.change, row.zero_allowed);
  return size;
}

void DoorPlanner::take_species() {
  if (spec_.species.empty())
    assume("species", std::string("not stated"), "no wood is named; sizes do not depend on it");
  if (spec_.species_by_shop) note_shop("species", spec_.species);
}

// ---- the leaf

void DoorPlanner::settle_leaf() {
  if (!spec_.units)
    assume("units", std::string("mm"), "every size in the spec carries its own unit");
  if (spec_.units && spec_.units_by_shop) note_shop("units", std::string(unit_word(unit_)));
  take_species();
  settle_opening();
  plan_.thickness = take("thickness", defaults_.thickness, usual());
  plan_.horn =
      take("horn", defaults_.horn,
           defaults_.house ? "left on at each end of a stile, sawn off after glue-up" : usual());
  settle_stiles();
}

void DoorPlanner::settle_opening() {
  Opening& opening = plan_.opening;
  opening.width = *spec_.opening_width.size;
  opening.height = *spec_.opening_height.size;
  settle_group("clearance", defaults_.clearance,
               {{"clearance.left", &opening.left},
                {"clearance.right", &opening.right},
                {"clearance.head", &opening.head},
                {"clearance.foot", &opening.foot}});
  plan_.width = opening.width - opening.left - opening.right;
  plan_.height = opening.height - opening.head - opening.foot;
  if (plan_.width <= Length() || plan_.height <= Length())
    problem("clearance", "leaves a leaf of " + say(plan_.width) + " by " + say(plan_.height) +
                             " in an opening of " + say(opening.width) + " by " +
                             say(opening.height) + "; make it less");
}

void DoorPlanner::settle_stiles() {
  Length& left = plan_.stile_left;
  Length& right = plan_.stile_right;
  settle_group("stile_width", defaults_.stile,
               {{"stile_width.left", &left}, {"stile_width.right", &right}});
  if (left == right) {
    add_lever("stile_width", left, Change::size, false);
  } else {
    add_lever("stile_width.left", left, Change::size, false);
    add_lever("stile_width.right", right, Change::size, false);
  }
  if (plan_.width <= left + right)
    problem("stile_width", "the stiles take " + say(left + right) + " of the leaf's " +
                               say(plan_.width) + "; make them narrower");
}

// ---- rails

std::string DoorPlanner::rail_name(std::size_t rail, std::size_t count) const {
  if (rail == 0) return "top rail";
  if (rail + 1 == count) return "bottom rail";
  if (count > 3) return "middle rail " + std::to_string(rail);
  return defaults_.house ? "lock rail" : "middle rail";
}

void DoorPlanner::settle_rails() {
  std::vector<RailSpec> rails = spec_.rails.rails;
  if (rails.empty()) {
    std::vector<Length> widths = defaults_.rails;
    if (widths.empty()) widths.assign(2, std::max(plan_.stile_left, plan_.stile_right));
    for (const Length width : widths) {
      RailSpec rail;
      rail.width = width;
      rail.plain = true;
      rails.push_back(rail);
    }
    assume("rail_widths", widths,
           defaults_.house ? usual() : "top and bottom as wide as the stile");
  } else if (spec_.rails.by_shop) {
    std::vector<Length> widths;
    for (const RailSpec& rail : rails)
      widths.push_back(rail.width);
    note_shop("rail_widths", widths);
  }
  Length sum;
  for (std::size_t i = 0; i < rails.size(); ++i) {
    const std::string name = rails[i].name.empty() ? rail_name(i, rails.size()) : rails[i].name;
    plan_.rails.push_back({rails[i].width, {}, name});
    sum += rails[i].width;
  }
  if (sum >= plan_.height)
    problem("rail_widths", "the rails take " + say(sum) + " of the leaf's " + say(plan_.height) +
                               " and leave no panel; make them narrower or fewer");
}

/// Sets the rails between two placed ones so that the openings between them are equal.
void DoorPlanner::place_between(std::size_t above, std::size_t below) {
  std::vector<RailPlan>& rails = plan_.rails;
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

void DoorPlanner::place_rails() {
  std::vector<RailPlan>& rails = plan_.rails;
  const std::size_t last = rails.size() - 1;
  rails[0].low = plan_.height - rails[0].width;
  rails[last].low = Length();
  std::size_t placed = 0;
  for (std::size_t i = 1; i <= last; ++i) {
    const RailSpec* spec = i < last && !spec_.rails.rails.empty() ? &spec_.rails.rails[i] : nullptr;
    if (i < last && (spec == nullptr || !spec->line)) continue;
    if (i < last) {
      const Length below_line = *spec->line == RailLine::top      ? rails[i].width
                                : *spec->line == RailLine::centre ? floor_half(rails[i].width)
                                                                  : Length();
      rails[i].low = spec->height - below_line;
    }
    place_between(placed, i);
    placed = i;
  }
  for (std::size_t i = 0; i < last; ++i) {
    const Length sight = rails[i].low - (rails[i + 1].low + rails[i + 1].width);
    if (sight <= Length())
      problem("rail_widths." + std::to_string(i + 1),
              "leaves " + say(sight) + " between the " + rails[i].name + " and the " +
                  rails[i + 1].name + "; place them so that a panel has room between");
  }
  add_rail_levers();
}

void DoorPlanner::add_rail_levers() {
  for (std::size_t i = 0; i < plan_.rails.size(); ++i) {
    const RailPlan& rail = plan_.rails[i];
    const bool plain = spec_.rails.rails.empty() || spec_.rails.rails[i].plain;
    const std::string key = "rail_widths." + std::to_string(i);
    add_lever(plain ? key : key + ".width", rail.width, Change::size, false);
    if (is_end(i)) continue;
    const bool placed = !spec_.rails.rails.empty() && spec_.rails.rails[i].line;
    if (placed)
      add_lever(key + "." + std::string(rail_line_word(*spec_.rails.rails[i].line)),
                spec_.rails.rails[i].height, Change::size, true);
    else
      add_lever(key + ".top", rail.low + rail.width, Change::size, true);
  }
}

// ---- tiers and muntins

/// The number of panels in each tier, from the top. Contradictions were found before.
std::vector<int> DoorPlanner::panels_across() {
  const std::size_t tiers = plan_.rails.size() - 1;
  std::vector<int> across(tiers, 1);
  if (const auto* count = std::get_if<PanelCount>(&spec_.panels))
    across.assign(tiers, count->count / static_cast<int>(tiers));
  if (const auto* each = std::get_if<PanelsAcross>(&spec_.panels)) {
    if (each->each.size() == 1)
      across.assign(tiers, each->each.front());
    else
      across = each->each;
  }
  if (spec_.panels.index() == 0) assume("panels", std::string("one in each tier"), usual());
  if (spec_.panels_by_shop) note_shop("panels", std::string("as the shop file says"));
  return across;
}

bool DoorPlanner::has_muntins() const {
  return std::any_of(plan_.tiers.begin(), plan_.tiers.end(),
                     [](const TierPlan& tier) { return tier.sights.size() > 1; });
}

void DoorPlanner::settle_tiers() {
  const std::vector<int> across = panels_across();
  int parts = static_cast<int>(plan_.rails.size()) + 2;
  for (const int panels : across)
    parts += 2 * panels - 1;
  if (parts > kMostParts) {
    problem("panels", "makes " + std::to_string(parts) + " parts; the most in one item is 100000");
    return;
  }
  if (*std::max_element(across.begin(), across.end()) > 1)
    plan_.muntin_width = take("muntin_width", defaults_.muntin, usual());
  const Length inside = plan_.width - plan_.stile_left - plan_.stile_right;
  for (std::size_t i = 0; i < across.size(); ++i) {
    TierPlan tier;
    tier.height = {plan_.rails[i + 1].low + plan_.rails[i + 1].width, plan_.rails[i].low};
    const Length left = inside - plan_.muntin_width * (across[i] - 1);
    if (left <= Length()) {
      problem(spec_.muntin_width.size ? "muntin_width" : "panels",
              std::to_string(across[i] - 1) + " muntins of " + say(plan_.muntin_width) +
                  " leave no width for panels in the " + say(inside) +
                  " between the stiles; make muntin_width or the number of panels less");
      return;
    }
    Length low = plan_.stile_left;
    for (const Length sight : share_evenly(left, static_cast<std::size_t>(across[i]))) {
      tier.sights.push_back({low, low + sight});
      low += sight + plan_.muntin_width;
    }
    if (tier.sights.front().high <= tier.sights.front().low) {
      problem("panels", "leaves panels of no width; make the number of panels less");
      return;
    }
    plan_.tiers.push_back(std::move(tier));
  }
}

// ---- groove and tenon depths

void DoorPlanner::settle_groove_depth() {
  const Length depth = take("groove_depth", defaults_.groove_depth, usual());
  plan_.groove.depth = depth;
  const auto demand = [&](Length width, int grooves, std::string_view name) {
    if (depth * grooves < width) return;
    problem("groove_depth",
            say(depth) +
                (grooves == 2 ? " from both edges goes through the " : " goes through the ") +
                std::string(name) + ", " + say(width) + " wide; make groove_depth less than " +
                say(floor_divide(width, grooves)));
  };
  demand(std::min(plan_.stile_left, plan_.stile_right), 1, "stile");
  for (std::size_t i = 0; i < plan_.rails.size(); ++i)
    demand(plan_.rails[i].width, is_end(i) ? 1 : 2, plan_.rails[i].name);
  if (has_muntins()) demand(plan_.muntin_width, 2, "muntin");
}

/// Whether muntins above and below a rail stand so that their mortises could meet inside it.
bool DoorPlanner::mortises_meet(std::size_t rail) const {
  if (is_end(rail)) return false;
  const auto& above = plan_.tiers[rail - 1].sights;
  const auto& below = plan_.tiers[rail].sights;
  const Length margin = defaults_.left_behind_mortise;
  for (std::size_t i = 0, j = 0; i + 1 < above.size() && j + 1 < below.size();) {
    if (above[i].high < below[j + 1].low + margin && below[j].high < above[i + 1].low + margin)
      return true;
    above[i].high < below[j].high ? ++i : ++j;
  }
  return false;
}

/// Whether a rail receives muntins from above or below.
bool DoorPlanner::takes_muntins(std::size_t rail) const {
  return (rail > 0 && plan_.tiers[rail - 1].sights.size() > 1) ||
         (rail + 1 < plan_.rails.size() && plan_.tiers[rail].sights.size() > 1);
}

/// The deepest tenon, up to `wanted`, that a muntin can have in every rail it enters, wood being
/// left behind the mortise (up to the groove of the rail's other edge) or between two mortises that
/// meet.
Length DoorPlanner::deepest_muntin_tenon(Length wanted) const {
  const Length bottom = spec_.bottom_clearance.size.value_or(defaults_.bottom_clearance);
  const Length left = defaults_.left_behind_mortise;
  Length deepest = wanted;
  for (std::size_t i = 0; i < plan_.rails.size(); ++i) {
    if (!takes_muntins(i)) continue;
    const Length width = plan_.rails[i].width;
    const Length behind = is_end(i) ? width : width - plan_.groove.depth;
    const Length room = mortises_meet(i) ? floor_half(width - left) : behind - left;
    deepest = std::min(deepest, room - bottom);
  }
  return deepest;
}

void DoorPlanner::settle_tenon_depths() {
  const Length narrow = std::min(plan_.stile_left, plan_.stile_right);
  rail_depth_ = take("tenon_depth", nearest_multiple(floor_divide(narrow * 2, 3), defaults_.whole),
                     "two thirds of the stile");
  rail_stub_ = rail_depth_ <= plan_.groove.depth;
  if (rail_depth_ >= narrow)
    problem("tenon_depth", say(rail_depth_) + " goes through the stile, " + say(narrow) +
                               " wide; make it less than the stile's width");
  if (!has_muntins()) return;
  const Length deepest = deepest_muntin_tenon(rail_depth_);
  const Length fallback =
      std::max(deepest == rail_depth_ ? deepest : floor_multiple(deepest, defaults_.whole),
               plan_.groove.depth);
  muntin_depth_ =
      take("tenon.muntin_depth", fallback,
           rail_depth_ == fallback ? "as deep as the rails' tenons"
                                   : "as deep as leaves wood behind and between the mortises");
  muntin_stub_ = muntin_depth_ <= plan_.groove.depth;
  for (std::size_t i = 0; i < plan_.rails.size(); ++i) {
    if (takes_muntins(i) && muntin_depth_ >= plan_.rails[i].width)
      problem("tenon.muntin_depth", say(muntin_depth_) + " goes through the " +
                                        plan_.rails[i].name + ", " + say(plan_.rails[i].width) +
                                        " wide; make it less");
  }
}

// ---- mortise, tenon and groove across the thickness

/// The smallest cutter from a third to four tenths of the thickness, else the one nearest to a
/// third.
Length DoorPlanner::cutter_for(Length thickness) const {
  const std::vector<Length>& cutters = spec_.cutters.empty() ? defaults_.cutters : spec_.cutters;
  for (const Length cutter : cutters)
    if (cutter * 3 >= thickness && cutter * 10 <= thickness * 4) return cutter;
  const auto off = [&](Length cutter) {
    return std::max(cutter * 3 - thickness, thickness - cutter * 3);
  };
  return *std::min_element(cutters.begin(), cutters.end(),
                           [&](Length a, Length b) { return off(a) < off(b); });
}

/// Where mortise, tenon and allowance are all given: true when they agree, or when one of the
/// shop's gives way.
bool DoorPlanner::reconcile_fit() {
  Stated& mortise = spec_.mortise_width;
  Stated& tenon = spec_.tenon_thickness;
  Stated& allowance = spec_.fit_allowance;
  if (!mortise.size || !tenon.size || !allowance.size) return true;
  if (*mortise.size - *tenon.size == *allowance.size) return true;
  for (Stated* shops : {&tenon, &mortise, &allowance}) {
    if (!shops->by_shop) continue;
    *shops = {};
    return true;
  }
  return false;
}

Length DoorPlanner::mortise_fallback(std::string& why) const {
  if (spec_.tenon_thickness.size) {
    why = "tenon thickness and fit allowance";
    return *spec_.tenon_thickness.size + spec_.fit_allowance.size.value_or(defaults_.fit_allowance);
  }
  if (spec_.groove_width.size) {
    why = "as wide as the groove";
    return *spec_.groove_width.size;
  }
  const Length thickness = plan_.thickness;
  const Length cutter = cutter_for(thickness);
  const bool in_rule = cutter * 3 >= thickness && cutter * 10 <= thickness * 4;
  why = in_rule ? "the smallest cutter from a third to 0.4 of the thickness"
                : "the cutter nearest to a third of the thickness";
  return cutter;
}

void DoorPlanner::settle_fit() {
  // Without a mortise, a tenon's thickness is fitted to the groove.
  if (!has_mortises() && spec_.groove_width.size) spec_.mortise_width = spec_.groove_width;
  if (!reconcile_fit()) {
    problem("fit_allowance", "mortise " + say(*spec_.mortise_width.size) + " less tenon " +
                                 say(*spec_.tenon_thickness.size) + " is " +
                                 say(*spec_.mortise_width.size - *spec_.tenon_thickness.size) +
                                 ", not " + say(*spec_.fit_allowance.size) +
                                 "; give two of mortise.width, tenon.thickness and fit_allowance");
    return;
  }
  std::string why;
  mortise_width_ = spec_.mortise_width.size ? *spec_.mortise_width.size : mortise_fallback(why);
  if (has_mortises()) take("mortise.width", mortise_width_, why);
  if (spec_.mortise_width.size && spec_.tenon_thickness.size) {
    fit_ = take("fit_allowance", mortise_width_ - *spec_.tenon_thickness.size,
                "mortise width less tenon thickness");
  } else {
    fit_ = take("fit_allowance", defaults_.fit_allowance, "a film of glue on each cheek");
  }
  plan_.groove.width =
      take("groove.width", mortise_width_, has_mortises() ? "as wide as the mortise" : why);
  const Length tenon = mortise_width_ - fit_;
  if (has_mortises()) take("tenon.thickness", tenon, "mortise width less fit allowance");
  if (fit_ < Length() || tenon <= Length() || plan_.groove.width <= fit_)
    problem(spec_.tenon_thickness.size ? "tenon.thickness" : "fit_allowance",
            "a mortise of " + say(mortise_width_) + " and a groove of " + say(plan_.groove.width) +
                " with a fit allowance of " + say(fit_) +
                " leave no tenon, or one thicker than its mortise; make the allowance less, but "
                "not under 0");
}

/// Face side to the near wall of a mortise or groove: in line with the other where only that one's
/// place is stated, else in the middle of the thickness.
Length DoorPlanner::take_from_face(std::string_view key, Length width, const Stated& other,
                                   Length other_width) {
  const Length middle = floor_half(plan_.thickness - width);
  const Length in_line = other.size ? *other.size + floor_half(other_width - width) : middle;
  const bool fits = in_line >= Length() && in_line + width <= plan_.thickness;
  const std::string why =
      other.size && fits
          ? "in line with the " + std::string(key.starts_with("groove") ? "mortise" : "groove")
          : "in the middle of the thickness";
  const Length from_face = take(key, fits ? in_line : middle, why);
  if (from_face < Length() || from_face + width > plan_.thickness)
    problem(stated(key).size
                ? key
                : std::string_view(key.starts_with("groove") ? "groove.width" : "mortise.width"),
            say(width) + " wide and " + say(from_face) +
                " from the face side does not lie within the thickness of " + say(plan_.thickness) +
                "; make them less");
  return from_face;
}

void DoorPlanner::settle_places_in_thickness() {
  const Length groove = plan_.groove.width;
  if (has_mortises())
    mortise_from_face_ =
        take_from_face("mortise.from_face", mortise_width_, spec_.groove_from_face, groove);
  const Stated& mortise = has_mortises() ? spec_.mortise_from_face : Stated();
  plan_.groove.from_face = take_from_face("groove.from_face", groove, mortise, mortise_width_);
}

// ---- clearances and widths of the tenons

void DoorPlanner::settle_clearances() {
  const Length groove = plan_.groove.depth;
  if (has_mortises()) {
    edge_clearance_ = take("tenon.edge_clearance", defaults_.edge_clearance,
                           "play at each edge, for setting and glue");
    bottom_clearance_ =
        take("tenon.bottom_clearance", defaults_.bottom_clearance, "room for glue below the tenon");
    if (edge_clearance_ >= groove)
      problem("tenon.edge_clearance",
              say(edge_clearance_) + " is not less than the groove's depth, " + say(groove) +
                  "; make it less, or the mortise comes out beside the shoulder");
  }
  if (!rail_stub_ || (has_muntins() && !muntin_stub_ && spec_.width_limit.size)) {
    const Length fallback = std::max(groove - defaults_.haunch_short_of_groove, Length());
    haunch_depth_ = take("tenon.haunch_depth", fallback,
                         "a little less than the groove, so that the shoulder seats first");
    if (haunch_depth_ > groove)
      problem("tenon.haunch_depth", say(haunch_depth_) + " is deeper than the groove, " +
                                        say(groove) + "; make it at most that");
  }
  plan_.rail_mortise = mortise_for(rail_stub_, rail_depth_);
  plan_.muntin_mortise = mortise_for(muntin_stub_, muntin_depth_);
}

/// What a tenon goes into: a mortise, or, a stub, just the groove.
MortiseDesign DoorPlanner::mortise_for(bool stub, Length depth) const {
  const GrooveDesign& groove = plan_.groove;
  if (stub) return {groove.width, groove.from_face, {}, groove.depth - depth};
  return {mortise_width_, mortise_from_face_, edge_clearance_, bottom_clearance_};
}

/// A tenon's sizes, its width excepted. It stands in the middle of what it goes into.
TenonDesign DoorPlanner::tenon_for(bool stub, Length depth) const {
  const MortiseDesign mortise = mortise_for(stub, depth);
  const Length beside = floor_half(fit_);
  TenonDesign tenon;
  tenon.stub = stub;
  tenon.depth = depth;
  tenon.thickness = mortise.width - fit_;
  tenon.from_face = mortise.from_face + beside;
  tenon.haunch_depth = haunch_depth_;
  tenon.haunch_thickness = plan_.groove.width - fit_;
  tenon.haunch_from_face = plan_.groove.from_face + beside;
  return tenon;
}

Length DoorPlanner::relish_fallback(Length rail_width) const {
  return std::max(nearest_multiple(floor_divide(rail_width, 3), defaults_.whole),
                  defaults_.least_relish);
}

/// What a tenon loses at its rail's outer edge, at the end of a stile.
Length DoorPlanner::relish_of(std::size_t rail) {
  const RailPlan& its = plan_.rails[rail];
  const Length relish = spec_.relish.size.value_or(relish_fallback(its.width));
  const bool least = relish == defaults_.least_relish;
  if (!spec_.relish.size)
    assume("tenon.relish", relish,
           its.name +
               (least ? ": the least that keeps the stile's end whole" : ": a third of the rail"));
  if (edge_clearance_ >= relish)
    problem("tenon.edge_clearance",
            say(edge_clearance_) + " is not less than the relish, " + say(relish) +
                "; make it less, or the mortise comes out at the end of the stile");
  return relish;
}

/// Lays tenons and haunches out in `across`, whose ends beyond it are a haunch (relish) or nothing
/// (groove).
void DoorPlanner::lay_out(TenonDesign& tenon, Strip across, std::optional<Length> limit,
                          const std::string& name) {
  const Length whole = across.high - across.low;
  const Length quarter = nearest_multiple(floor_divide(whole, 4), defaults_.whole);
  const Length gap = spec_.gap.size.value_or(std::max(tenon.thickness, quarter));
  tenon.layout.tenons = divide_tenon(across, limit, gap);
  if (tenon.layout.tenons.empty()) {
    problem(spec_.width_limit.size ? "tenon.width_limit"
            : spec_.gap.size       ? "tenon.gap"
                                   : "rail_widths",
            "no tenon of the " + name + " is left: " + say(whole) + " to share with gaps of " +
                say(gap) + "; see tenon.relish, groove_depth, tenon.width_limit and tenon.gap");
    return;
  }
  const auto& tenons = tenon.layout.tenons;
  for (std::size_t i = 1; i < tenons.size(); ++i)
    tenon.layout.haunches.push_back({tenons[i - 1].high, tenons[i].low});
  if (tenons.size() > 1) note_gap(gap, tenon.thickness >= quarter, name, whole);
}

void DoorPlanner::note_gap(Length gap, bool by_thickness, const std::string& name, Length whole) {
  gap_used_ = gap;
  if (!spec_.gap.size)
    assume("tenon.gap", gap,
           name + (by_thickness ? ": as much as the tenon is thick"
                                : ": a quarter of the " + say(whole) + " to be divided"));
}

TenonDesign DoorPlanner::rail_tenon(std::size_t rail, std::optional<Length> limit) {
  const RailPlan& its = plan_.rails[rail];
  const Length groove = plan_.groove.depth;
  const bool top = rail == 0;
  const bool bottom = rail + 1 == plan_.rails.size();
  const Length outer = rail_stub_ || !(top || bottom) ? Length() : relish_of(rail);
  TenonDesign tenon = tenon_for(rail_stub_, rail_depth_);
  const Strip across{bottom ? outer : groove, its.width - (top ? outer : groove)};
  if (across.high <= across.low) {
    problem("rail_widths." + std::to_string(rail),
            "the " + its.name + " is too narrow for a tenon: " + say(its.width) +
                " less groove_depth " + say(groove) +
                (outer > Length() ? " less tenon.relish " + say(outer) : " at each grooved edge") +
                "; make it wider");
    return tenon;
  }
  lay_out(tenon, across, rail_stub_ ? std::nullopt : limit, its.name);
  if (!rail_stub_ && top) tenon.layout.haunches.push_back({across.high, its.width});
  if (!rail_stub_ && bottom) tenon.layout.haunches.push_back({Length(), across.low});
  return tenon;
}

void DoorPlanner::settle_tenon_widths() {
  std::optional<Length> limit;
  if (has_mortises()) {
    const Length five = nearest_multiple((mortise_width_ - fit_) * 5, defaults_.whole);
    if (!rail_stub_ || spec_.width_limit.size)
      limit = take("tenon.width_limit", std::max(five, defaults_.least_width_limit),
                   five > defaults_.least_width_limit ? "five times the tenon's thickness"
                                                      : "the least that is ever divided");
  }
  for (std::size_t i = 0; i < plan_.rails.size(); ++i)
    plan_.rail_tenons.push_back(rail_tenon(i, limit));
  if (has_muntins()) {
    const Length groove = plan_.groove.depth;
    plan_.muntin_tenon = tenon_for(muntin_stub_, muntin_depth_);
    const bool divided = !muntin_stub_ && spec_.width_limit.size;
    lay_out(plan_.muntin_tenon, {groove, plan_.muntin_width - groove},
            divided ? limit : std::nullopt, "muntin");
  }
  settle_tenon_levers();
}

/// Gap and relish are chosen for each rail where they are left open; stated, they are one size for
/// all.
void DoorPlanner::settle_tenon_levers() {
  if (gap_used_ && spec_.gap.size) take("tenon.gap", {}, {});
  if (gap_used_ && !spec_.gap.size) add_lever("tenon.gap", *gap_used_, Change::size, true);
  if (rail_stub_) return;
  if (spec_.relish.size)
    take("tenon.relish", {}, {});
  else
    add_lever("tenon.relish",
              relish_fallback(std::min(plan_.rails.front().width, plan_.rails.back().width)),
              Change::size, true);
}

template <typename Word>
Word DoorPlanner::settle_choice(const Chosen<Word>& chosen, std::string_view key, Word fallback,
                                std::string_view word) {
  if (!chosen.word) assume(key, std::string(word), usual());
  if (chosen.by_shop) note_shop(key, std::string("as the shop file says"));
  return chosen.word.value_or(fallback);
}

// ---- panels

void DoorPlanner::settle_panels() {
  PanelPlan& panel = plan_.panel;
  const GrooveDesign& groove = plan_.groove;
  panel.allowance =
      take("panel.allowance", defaults_.panel_allowance, "so that the panel slides in its groove");
  panel.tongue = groove.width - panel.allowance;
  if (panel.tongue <= Length()) {
    problem("panel.allowance", say(panel.allowance) +
                                   " leaves nothing of a tongue in a groove of " +
                                   say(groove.width) + "; make it less");
    return;
  }
  panel.thickness = take("panel.thickness", panel.tongue, "flat: as thick as its tongue");
  panel.rebated = panel.thickness > groove.width;
  if (panel.rebated)
    panel.rebate = settle_choice(spec_.rebate, "panel.rebate", Rebate::back, "back");
  panel.grain = settle_choice(spec_.grain, "panel.grain", Grain::upright, "upright");
  panel.gap_across = take_gap("panel.gap.across_grain", defaults_.gap_across);
  panel.gap_along = take_gap("panel.gap.along_grain", defaults_.gap_along);
  demand_panel_sizes();
}

/// The gap at a panel's edge: the usual one, or less where the groove would not hold the panel's
/// edge.
Length DoorPlanner::take_gap(std::string_view key, Length usual_gap) {
  const Length most = std::max(plan_.groove.depth - defaults_.least_bite, Length());
  return take(key, std::min(most, usual_gap),
              most < usual_gap ? "what leaves a bite of " + say(defaults_.least_bite) : usual());
}

void DoorPlanner::demand_panel_sizes() {
  const PanelPlan& panel = plan_.panel;
  const bool upright = panel.grain == Grain::upright;
  const Length groove = plan_.groove.depth;
  const Length least = panel.rebated ? groove * 2 : Length();
  for (const TierPlan& tier : plan_.tiers) {
    const Length high = tier.height.high - tier.height.low +
                        (groove - (upright ? panel.gap_along : panel.gap_across)) * 2;
    const Length wide = tier.sights.front().high - tier.sights.front().low +
                        (groove - (upright ? panel.gap_across : panel.gap_along)) * 2;
    if (high > least && wide > least) continue;
    problem("panel.gap", "leaves a panel of " + say(wide) + " by " + say(high) +
                             (panel.rebated ? ", all of it rebate" : ", which is none") +
                             "; make panel.gap less, or the opening larger");
    return;
  }
}

bool is_clean(const std::vector<Problem>& problems, std::string_view path) {
  return std::none_of(problems.begin(), problems.end(),
                      [&](const Problem& problem) { return problem.path.starts_with(path); });
}

/// `1, 2 or 3 panels across` for an error about panels that do not share evenly over the tiers.
std::string panels_problem(int count, int tiers) {
  std::string message = std::to_string(count) + " panels do not share evenly over " +
                        std::to_string(tiers) + " tiers; give a multiple of " +
                        std::to_string(tiers) +
                        ", or say how many in each tier from the top: {\"across\": [";
  const int lower = std::max(count / tiers, 1);
  for (int tier = 0; tier < tiers; ++tier)
    message += (tier > 0 ? ", " : "") +
               std::to_string(lower + (tier >= tiers - count % tiers && count > tiers ? 1 : 0));
  return message + "]}";
}

std::optional<Problem> panels_contradiction(const DoorSpec& spec, int tiers) {
  if (const auto* count = std::get_if<PanelCount>(&spec.panels);
      count != nullptr && count->count % tiers != 0)
    return Problem{"/panels", panels_problem(count->count, tiers), {}};
  const auto* across = std::get_if<PanelsAcross>(&spec.panels);
  if (across == nullptr || across->each.size() == 1 || std::ssize(across->each) == tiers) return {};
  return Problem{"/panels/across",
                 "gives " + std::to_string(across->each.size()) + " tiers, but " +
                     std::to_string(tiers + 1) + " rails make " + std::to_string(tiers) +
                     "; give one number for each tier from the top",
                 {}};
}

}  // namespace

std::vector<Problem> contradictions(const DoorSpec& spec, const std::vector<Problem>& reading) {
  std::vector<Problem> problems;
  if (!is_clean(reading, "/rail_widths") || !is_clean(reading, "/panels") ||
      !is_clean(reading, "/opening"))
    return problems;
  if (!spec.opening_height.size) return problems;
  const auto defaults = door_defaults(spec.units.value_or(Unit::mm), *spec.opening_height.size);
  const std::size_t rails = spec.rails.rails.empty()
                                ? std::max<std::size_t>(defaults.rails.size(), 2)
                                : spec.rails.rails.size();
  if (auto problem = panels_contradiction(spec, static_cast<int>(rails) - 1))
    problems.push_back(std::move(*problem));
  return problems;
}

PlannedDoor plan_door(const DoorSpec& spec) {
  return DoorPlanner(spec).plan();
}

}  // namespace haunch
