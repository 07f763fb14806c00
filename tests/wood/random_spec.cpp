#include "random_spec.h"

#include <algorithm>
#include <array>
#include <utility>

namespace haunch::test {

namespace {

constexpr Length mm(std::int64_t whole) {
  return Length::from_mm(whole);
}
constexpr Length hundredths(std::int64_t count) {
  return Length::from_mm_thousandths(10 * count);
}

/// Chooses lengths as a shop writes them: mostly round in the spec's unit, some to the finest step
/// that a caliper reads, a few in thirds of an inch.
class Shop {
 public:
  Shop(Dice& dice, Unit unit, Keys keys) : dice_(dice), unit_(unit), keys_(keys) {}

  Length size(Length low, Length high) { return snapped(low, high, grain()); }
  Length fit(Length low, Length high) {
    return snapped(low, high,
                   unit_ == Unit::mm ? hundredths(1) : Length::from_inch_parts(5, 10'000));
  }

 private:
  Length grain() {
    const bool metric = unit_ == Unit::mm;
    const auto kind = dice_.between(1, 100);
    if (kind <= 60) return metric ? mm(1) : Length::from_inch_parts(1, 16);
    if (kind <= 84) return metric ? hundredths(50) : Length::from_inch_parts(1, 64);
    if (kind <= 96 || keys_ == Keys::all) {
      return metric ? Length::from_mm_thousandths(1) : Length::from_inch_parts(1, 10'000);
    }
    return Length();
  }

  Length snapped(Length low, Length high, Length unit) {
    if (high < low) high = low;
    const Length any = Length::from_steps(dice_.between(low.steps(), high.steps()));
    if (unit == Length()) return third_of_inch(any);
    const Length snap = nearest_multiple(any, unit);
    return snap < low || high < snap ? floor_multiple(any, Length::from_mm_thousandths(1)) : snap;
  }

  static Length third_of_inch(Length near) {
    const std::int64_t thirds = near.steps() * 3 / Length::kStepsPerInch;
    return Length::from_steps((thirds * Length::kStepsPerInch * 2 + 3) / 6);
  }

  Dice& dice_;
  Unit unit_;
  Keys keys_;
};

/// Lays a whole spec out, every key given, so that it mostly can be worked; then leaves keys out.
class Draughtsman {
 public:
  Draughtsman(std::uint64_t seed, Keys keys)
      : dice_(seed), keys_(keys), shop_(dice_, pick_unit(), keys) {}

  DoorSpec draw() {
    choose_leaf();
    choose_rails();
    choose_panels();
    choose_groove_and_mortise();
    choose_tenons();
    choose_muntin_tenons();
    choose_panel();
    put("horn", dice_.chance(30) ? Length() : shop_.size(mm(5), mm(40)));
    choose_words();
    choose_tiers();
    if (dice_.chance(15))
      make_rebated();
    else if (dice_.chance(20))
      make_moulded();
    if (keys_ == Keys::some) {
      leave_out();
      if (dice_.chance(9)) be_silly();
    } else {
      make_even();
    }
    return std::move(spec_);
  }

 private:
  Unit pick_unit() {
    unit_ = dice_.chance(50) ? Unit::mm : Unit::inch;
    return unit_;
  }

  void put(std::string_view key, Length length) {
    spec_.lengths.push_back({key, std::max(length, Length())});
  }
  Length get(std::string_view key) const { return spec_.find(key).value_or(Length()); }

  void choose_leaf() {
    spec_.unit = unit_;
    house_ = dice_.chance(55);
    put("opening.width", house_ ? shop_.size(mm(620), mm(1150)) : shop_.size(mm(280), mm(700)));
    put("opening.height", house_ ? shop_.size(mm(1830), mm(2450)) : shop_.size(mm(300), mm(1500)));
    choose_clearances();
    put("thickness", house_ ? shop_.size(mm(34), mm(60)) : shop_.size(mm(18), mm(30)));
    thickness_ = get("thickness");
    const Length left = house_ ? shop_.size(mm(80), mm(140)) : shop_.size(mm(45), mm(75));
    const Length right = dice_.chance(30) ? left + shop_.size(mm(1), mm(25)) : left;
    stile_ = left;
    if (left == right && dice_.chance(80)) {
      put("stile_width", left);
    } else {
      put("stile_width.left", left);
      put("stile_width.right", right);
    }
    inner_ = width_ - left - right;
  }

  void choose_clearances() {
    std::array<Length, 4> sides;
    if (dice_.chance(50)) {
      sides.fill(dice_.chance(15) ? Length() : shop_.size(mm(1), mm(4)));
      put("clearance", sides[0]);
    } else {
      const std::array<std::string_view, 4> names{"clearance.left", "clearance.right",
                                                  "clearance.head", "clearance.foot"};
      for (std::size_t i = 0; i < 4; ++i) {
        sides[i] = dice_.chance(10) ? Length() : shop_.size(mm(0), mm(6));
        put(names[i], sides[i]);
      }
    }
    width_ = get("opening.width") - sides[0] - sides[1];
    height_ = get("opening.height") - sides[2] - sides[3];
  }

  void choose_rails() {
    const std::int64_t most = house_ ? 6 : 4;
    const std::int64_t rails = std::max<std::int64_t>(2, dice_.between(0, most));
    const Length cap = floor_divide(height_, 2 * rails);
    const Length least = house_ ? mm(70) : mm(38);
    const Length usual = house_ ? mm(200) : mm(75);
    for (std::int64_t i = 0; i < rails; ++i) {
      SpecRail rail;
      rail.width = shop_.size(std::min(least, cap), std::min(usual, cap));
      spec_.rails.push_back(std::move(rail));
    }
    place_rails();
    const std::array<std::string, 6> names{"top", "frieze", "lock", "snow", "kick", "bottom"};
    for (std::size_t i = 0; i < spec_.rails.size(); ++i) {
      if (dice_.chance(20)) spec_.rails[i].name = names[i] + " rail";
    }
  }

  /// Middle rails near where equal openings would put them, each by one of its lines, or left to
  /// the program.
  void place_rails() {
    const auto gaps = static_cast<std::int64_t>(spec_.rails.size()) - 1;
    Length free = height_;
    for (const SpecRail& rail : spec_.rails)
      free -= rail.width;
    const Length opening = floor_divide(free, gaps);
    Length top = height_;
    for (std::size_t i = 0; i < spec_.rails.size(); ++i) {
      SpecRail& rail = spec_.rails[i];
      const bool middle = i > 0 && i + 1 < spec_.rails.size();
      // Where nothing is said of the only one it may go by what the leaf is for, and the unit.
      const bool only = keys_ == Keys::all && spec_.rails.size() == 3;
      if (middle && (dice_.chance(55) || only))
        place(rail, top - rail.width, floor_divide(opening, 3));
      top -= rail.width + opening;
    }
  }

  void place(SpecRail& rail, Length bottom, Length jitter) {
    const Length at = std::max(shop_.size(bottom - jitter, bottom + jitter), Length());
    const auto line = dice_.between(0, 2);
    rail.line = line == 0 ? "bottom" : line == 1 ? "centre" : "top";
    rail.height = line == 0 ? at : line == 1 ? at + floor_half(rail.width) : at + rail.width;
  }

  void choose_panels() {
    muntin_ = house_ ? shop_.size(mm(50), mm(110)) : shop_.size(mm(32), mm(60));
    put("muntin_width", muntin_);
    std::int64_t most = 1;
    while (most < 5 && inner_ >= most * muntin_ + (most + 1) * mm(45))
      ++most;
    const auto tiers = spec_.rails.size() - 1;
    const auto across = static_cast<int>(dice_.between(1, most));
    spec_.across.assign(tiers, across);
    if (dice_.chance(35)) {
      for (int& each : spec_.across)
        each = static_cast<int>(dice_.between(1, most));
      spec_.panels_as = PanelsAs::each_tier;
    } else {
      spec_.panels_as = static_cast<PanelsAs>(dice_.between(1, 3));
    }
  }

  Length narrowest_rail() const {
    Length least = spec_.rails.front().width;
    for (const SpecRail& rail : spec_.rails)
      least = std::min(least, rail.width);
    return least;
  }

  void choose_groove_and_mortise() {
    const Length room = std::min(floor_divide(narrowest_rail(), 4), floor_divide(muntin_, 3));
    groove_depth_ = shop_.size(std::min(mm(5), room), std::min(mm(15), room));
    put("groove_depth", groove_depth_);
    const Length low = floor_divide(thickness_, 4);
    const Length high = floor_multiple(floor_half(thickness_), mm(1));
    mortise_width_ = shop_.size(low, high);
    groove_width_ = dice_.chance(60) ? mortise_width_ : shop_.size(low, high);
    put("groove.width", groove_width_);
    groove_front_ = wall(groove_width_);
    put("groove.from_face", groove_front_);
    put("mortise.from_face", wall(mortise_width_));
  }

  /// Near the middle of the thickness, sometimes well off it.
  Length wall(Length width) {
    const Length middle = floor_half(thickness_ - width);
    if (dice_.chance(40)) return middle;
    return shop_.size(std::min(mm(4), middle), thickness_ - width - std::min(mm(4), middle));
  }

  void choose_fit() {
    const Length fit = dice_.chance(12) ? Length() : shop_.fit(hundredths(2), hundredths(40));
    const auto left_out = dice_.between(0, 3);  // of the three that hang together; 3: none
    if (left_out != 0) put("fit_allowance", fit);
    if (left_out != 1) put("tenon.thickness", mortise_width_ - fit);
    if (left_out != 2) put("mortise.width", mortise_width_);
  }

  void choose_tenons() {
    choose_fit();
    const bool stub = dice_.chance(18);
    put("tenon_depth", stub ? some_stub() : shop_.size(groove_depth_ + mm(2), stile_ - mm(8)));
    const Length edge = dice_.chance(15) ? Length() : shop_.fit(hundredths(5), mm(1));
    put("tenon.edge_clearance", edge);
    put("tenon.bottom_clearance", dice_.chance(15) ? Length() : shop_.size(hundredths(25), mm(4)));
    const Length most = floor_half(narrowest_rail() - groove_depth_);
    put("tenon.relish", shop_.size(std::min(mm(6), most), most));
    put("tenon.width_limit", shop_.size(mm(25), mm(160)));
    put("tenon.gap", shop_.size(edge * 2 + mm(4), edge * 2 + mm(30)));
    put("tenon.haunch_depth",
        dice_.chance(10) ? Length() : groove_depth_ - shop_.fit(Length(), mm(1)));
  }

  Length some_stub() {
    return dice_.chance(40) ? groove_depth_ : shop_.size(floor_half(groove_depth_), groove_depth_);
  }

  void choose_muntin_tenons() {
    const bool stub = dice_.chance(30);
    const Length most = floor_half(narrowest_rail()) - mm(4);
    put("tenon.muntin_depth", stub ? some_stub() : shop_.size(groove_depth_, most));
  }

  void choose_panel() {
    const Length allowance = dice_.chance(15) ? Length() : shop_.fit(hundredths(5), hundredths(80));
    put("panel.allowance", allowance);
    const Length tongue = groove_width_ - allowance;
    const auto kind = dice_.between(1, 100);
    Length thickness = tongue;
    if (kind > 25) thickness = shop_.size(tongue, groove_width_);
    if (kind > 45) thickness = shop_.size(groove_width_, thickness_);
    if (kind > 96 && keys_ == Keys::some) thickness = tongue - shop_.fit(hundredths(1), mm(1));
    put("panel.thickness", thickness);
    spec_.kind = dice_.chance(15) ? "board" : "solid";
    if (dice_.chance(15)) return choose_glass();
    if (kind > 45 && thickness > groove_width_ + mm(3)) choose_raise(thickness - tongue);
    const Length bite = std::min(mm(3), groove_depth_);
    if (dice_.chance(50)) {
      put("panel.gap", dice_.chance(15) ? Length() : shop_.size(Length(), groove_depth_ - bite));
    } else {
      put("panel.gap.across_grain", shop_.size(Length(), groove_depth_ - bite));
      put("panel.gap.along_grain", shop_.size(Length(), groove_depth_ - bite));
    }
  }

  /// Instead of a panel.
  void choose_glass() {
    std::erase_if(spec_.lengths, [](const SpecLength& it) { return it.key.starts_with("panel."); });
    spec_.kind = dice_.chance(50) ? "glass" : "sealed-unit";
    const Length behind = thickness_ - groove_front_;
    put("panel.thickness", shop_.size(mm(3), std::max(floor_half(behind), mm(4))));
    const Length rebate =
        dice_.chance(50) ? groove_depth_ : shop_.size(groove_depth_, groove_depth_ + mm(6));
    put("panel.glass.rebate", rebate);
    put("panel.glass.edge_clearance", shop_.size(Length(), std::min(mm(5), floor_half(rebate))));
    put("panel.glass.bedding", dice_.chance(15) ? Length() : shop_.size(Length(), mm(2)));
  }

  /// One in two of the panels that are thick enough. The tongue is as long as the groove is deep,
  /// or longer.
  void choose_raise(Length waste) {
    if (!dice_.chance(50)) return;
    const std::array<std::string, 3> faces{"back", "front", "both"};
    spec_.raised = faces[static_cast<std::size_t>(dice_.between(0, 2))];
    spec_.profile = dice_.chance(80) ? "bevel" : "cove";
    const Length tongue =
        dice_.chance(30) ? groove_depth_ : shop_.size(groove_depth_, groove_depth_ + mm(8));
    put("panel.raise.tongue", tongue);
    put("panel.raise.width", tongue + shop_.size(waste, waste + mm(30)));
    put("panel.raise.shoulder",
        dice_.chance(20) ? Length() : shop_.fit(hundredths(50), floor_half(waste) - mm(1)));
  }

  static bool is_glass(const std::string& kind) { return kind == "glass" || kind == "sealed-unit"; }
  bool has_glass() const {
    return is_glass(spec_.kind) ||
           std::any_of(spec_.tiers.begin(), spec_.tiers.end(),
                       [](const TierPanels& tier) { return is_glass(tier.kind); });
  }

  void choose_panel_words() {
    if (is_glass(spec_.kind)) return;
    const std::array<std::string, 3> rebates{"back", "front", "both"};
    if (spec_.raised.empty()) spec_.rebate = rebates[static_cast<std::size_t>(dice_.between(0, 2))];
    spec_.grain = dice_.chance(75) ? "upright" : "level";
  }

  /// Now and then the panels of some tiers are drawn anew.
  void choose_tiers() {
    if (!dice_.chance(spec_.rails.size() > 2 ? 30 : 5)) return;
    DoorSpec whole = std::move(spec_);
    for (std::size_t i = 1; i < whole.rails.size(); ++i) {
      spec_ = DoorSpec();
      if (dice_.chance(65)) {
        choose_panel();
        choose_panel_words();
      }
      whole.tiers.push_back(
          {spec_.lengths, spec_.rebate, spec_.raised, spec_.profile, spec_.grain, spec_.kind});
    }
    spec_ = std::move(whole);
  }

  void choose_words() {
    choose_panel_words();
    if (dice_.chance(20)) spec_.name = "flour store door";
    if (dice_.chance(20)) spec_.species = "oak";
    if (dice_.chance(20)) spec_.quantity = static_cast<int>(dice_.between(1, 12));
  }

  /// The same leaf with rebated edges, which have no groove: the rebate ends at the tenon or begins
  /// behind it, and the haunch is past it.
  void make_rebated() {
    spec_.edge = "rebated";
    const Length fit = spec_.find("fit_allowance").value_or(Length());
    const Length wall =
        get("mortise.from_face") +
        (dice_.chance(40) ? mortise_width_ : shop_.size(Length(), mortise_width_ - fit));
    const Length width = thickness_ - wall;
    const auto replaced_of_leaf = [](const SpecLength& it) {
      return it.key.starts_with("groove") || it.key == "tenon_depth" ||
             it.key == "tenon.muntin_depth" || it.key == "tenon.haunch_depth";
    };
    const auto replaced = [](const SpecLength& it) {
      return it.key.starts_with("panel.raise") || it.key == "panel.allowance" ||
             it.key == "panel.thickness";
    };
    const auto bed = [&](auto& panels) {
      if (is_glass(panels.kind)) return bed_glass(panels.lengths);
      // No key says how thick its tongue is.
      if (keys_ == Keys::some && !panels.raised.empty() && dice_.chance(60))
        return bed_raised(panels.lengths);
      std::erase_if(panels.lengths, replaced);
      panels.rebate.clear();
      panels.raised.clear();
      panels.profile.clear();
      panels.lengths.push_back({"panel.thickness", shop_.size(floor_half(width), width)});
    };
    for (TierPanels& tier : spec_.tiers)
      bed(tier);
    bed(spec_);
    std::erase_if(spec_.lengths, replaced_of_leaf);
    put("edge.depth", groove_depth_);
    put("edge.width", width);
    put("tenon_depth", shop_.size(groove_depth_ + mm(3), stile_ - mm(8)));
    put("tenon.muntin_depth",
        shop_.size(groove_depth_ + mm(3), floor_half(narrowest_rail()) - mm(4)));
    const Length past = std::min(get("tenon_depth"), get("tenon.muntin_depth")) -
                        get("tenon.bottom_clearance") - mm(1);
    put("tenon.haunch_depth", shop_.fit(groove_depth_, std::max(groove_depth_, past)));
  }

  /// Glass lies in the edges' rebate, which has no depth of its own.
  static void bed_glass(std::vector<SpecLength>& panel) {
    std::erase_if(panel, [](const SpecLength& it) { return it.key == "panel.glass.rebate"; });
  }
  /// So does a raised panel with its tongue, whose thickness follows from the rebate.
  static void bed_raised(std::vector<SpecLength>& panel) {
    std::erase_if(panel, [](const SpecLength& it) { return it.key == "panel.allowance"; });
  }

  /// The same leaf with moulded edges, as deep as there is wood before groove and mortise and no
  /// wider than the tenons are deep.
  void make_moulded() {
    // A groove that is open to the back has no wood there for a shoulder.
    if (has_glass() && groove_front_ + groove_width_ >= thickness_) return;
    const bool both =
        dice_.chance(25) && !has_glass();  // its rebate takes the moulding at the back
    const auto room = [&](Length from_face, Length width) {
      return both ? std::min(from_face, thickness_ - from_face - width) : from_face;
    };
    const Length around = std::min(room(get("groove.from_face"), groove_width_),
                                   room(get("mortise.from_face"), mortise_width_));
    const Length tenon = std::min(get("tenon_depth"), get("tenon.muntin_depth"));
    const Length most = std::min({around - mm(1), tenon, floor_divide(muntin_, 3)});
    if (most < mm(2)) return;
    spec_.edge = "coped";
    spec_.moulded_faces = both ? "both" : "front";
    const std::array<std::string, 3> profiles{"bevel", "ovolo", "cove"};
    spec_.moulding = profiles[static_cast<std::size_t>(dice_.between(0, 2))];
    const Length width =
        dice_.chance(15) && tenon <= most ? tenon : shop_.size(mm(1), most - hundredths(50));
    const Length fillet = dice_.chance(30) ? Length() : shop_.fit(Length(), most - width);
    put("edge.fillet", std::min(fillet, most - width));
    put("edge.width", width);
    put("edge.depth", width + get("edge.fillet"));
    if (dice_.chance(50)) make_mitred(width);
  }

  /// The mouldings mitred: tenons go past the groove from shoulders that are set back.
  void make_mitred(Length width) {
    spec_.edge = "mitred";
    std::erase_if(spec_.lengths, [](const SpecLength& it) {
      return it.key == "tenon_depth" || it.key == "tenon.muntin_depth" ||
             it.key == "tenon.haunch_depth";
    });
    put("tenon_depth", shop_.size(groove_depth_ + mm(4), stile_ - width - mm(8)));
    put("tenon.muntin_depth",
        shop_.size(groove_depth_ + mm(4), floor_half(narrowest_rail()) - width - mm(4)));
    const Length past = std::min(get("tenon_depth"), get("tenon.muntin_depth")) -
                        get("tenon.bottom_clearance") - mm(1);
    const Length least = std::max(groove_depth_ - width, Length());
    put("tenon.haunch_depth", shop_.fit(least, std::max(least, past)));
  }

  void leave_out() {
    const auto share = static_cast<int>(dice_.between(0, 9)) * 10;
    auto& lengths = spec_.lengths;
    const auto drop = [&](std::vector<SpecLength>& from, bool measured) {
      std::erase_if(from, [&](const SpecLength& each) {
        const bool kept =
            each.key.starts_with("opening") || (measured && each.key == "panel.thickness");
        return !kept && dice_.chance(share);
      });
    };
    const auto measured = [](const std::string& kind) { return !kind.empty() && kind != "solid"; };
    drop(lengths, measured(spec_.kind));
    for (TierPanels& tier : spec_.tiers)
      drop(tier.lengths, measured(tier.kind));
    if (spec_.kind == "solid" && dice_.chance(share)) spec_.kind.clear();
    complete("stile_width.left", "stile_width.right");
    // A tongue shorter than the groove that is then taken would wedge.
    const auto is_tongue = [](const SpecLength& it) { return it.key == "panel.raise.tongue"; };
    if (!spec_.find("groove_depth")) {
      std::erase_if(lengths, is_tongue);
      for (TierPanels& tier : spec_.tiers)
        std::erase_if(tier.lengths, is_tongue);
    }
    if (dice_.chance(share)) spec_.rebate.clear();
    if (dice_.chance(share)) spec_.grain.clear();
    if (dice_.chance(share)) spec_.profile.clear();
    if (dice_.chance(share)) spec_.panels_as = PanelsAs::left_out;
    if (dice_.chance(share / 4)) leave_rails_out();
  }

  void complete(std::string_view one, std::string_view other) {
    const auto a = spec_.find(one);
    const auto b = spec_.find(other);
    if (a && !b) put(other, *a);
    if (b && !a) put(one, *b);
  }

  /// The number of tiers is then the program's to choose, so that panels are told for every tier
  /// alike.
  void leave_rails_out() {
    spec_.rails.clear();
    spec_.tiers.clear();
    if (spec_.panels_as != PanelsAs::left_out) spec_.panels_as = PanelsAs::across;
    spec_.across.resize(1);
  }

  /// One length that no joiner would write beside the others.
  void be_silly() {
    const auto last = static_cast<std::int64_t>(spec_.lengths.size()) - 1;
    Length& length = spec_.lengths[static_cast<std::size_t>(dice_.between(0, last))].length;
    const auto kind = dice_.between(0, 4);
    if (kind == 0) length = Length();
    if (kind == 1) length = floor_half(length);
    if (kind == 2) length = length * 2;
    if (kind == 3) length = shop_.size(Length(), mm(400));
    if (kind == 4) length = Length::from_steps(dice_.between(0, 3));
  }

  void make_even() {
    const Length even = Length::from_mm_thousandths(3);
    for (SpecLength& each : spec_.lengths)
      each.length = floor_multiple(each.length, even);
    for (TierPanels& tier : spec_.tiers)
      for (SpecLength& each : tier.lengths)
        each.length = floor_multiple(each.length, even);
    for (SpecRail& rail : spec_.rails) {
      rail.width = floor_multiple(rail.width, even);
      rail.height = floor_multiple(rail.height, even);
    }
    spec_.lengths.erase(std::remove_if(spec_.lengths.begin(), spec_.lengths.end(),
                                       [](const SpecLength& each) {
                                         return each.key == "tenon.thickness" ||
                                                each.key == "mortise.width" ||
                                                each.key == "fit_allowance";
                                       }),
                        spec_.lengths.end());
    put("mortise.width", floor_multiple(mortise_width_, even));
    put("fit_allowance", floor_multiple(shop_.fit(hundredths(2), hundredths(40)), even));
  }

  Dice dice_;
  Unit unit_ = Unit::mm;
  Keys keys_;
  Shop shop_;
  DoorSpec spec_;
  bool house_ = false;
  Length width_, height_, thickness_, stile_, inner_, muntin_;
  Length groove_depth_, groove_width_, groove_front_, mortise_width_;
};

/// A decimal without trailing zeros; `billionths` >= 0.
std::string decimal_text(std::int64_t whole, std::int64_t billionths) {
  std::string text = std::to_string(whole);
  if (billionths == 0) return text;
  std::string part = std::to_string(billionths);
  part.insert(0, 9 - part.size(), '0');
  part.erase(part.find_last_not_of('0') + 1);
  return text + "." + part;
}

/// The length in millimetres; 625 billionths of a millimetre are one step, so this is always exact.
std::string mm_text(Length length) {
  const std::int64_t per = Length::kStepsPerMm;
  return decimal_text(length.steps() / per, length.steps() % per * 625);
}

/// The length as decimal inches where they end within nine places. 127 steps are 3125 billionths.
std::optional<std::string> inch_text(Length length) {
  const std::int64_t per = Length::kStepsPerInch;
  const std::int64_t part = length.steps() % per;
  if (part % 127 != 0) return std::nullopt;
  return decimal_text(length.steps() / per, part / 127 * 3125);
}

/// "4 3/8" where the length is a whole number of 64ths, or of thirds to the nearest step.
std::optional<std::string> fraction_text(Length length) {
  const std::int64_t per = Length::kStepsPerInch;
  const std::int64_t whole = length.steps() / per;
  const std::int64_t part = length.steps() % per;
  const std::string before = whole == 0 ? "" : std::to_string(whole) + " ";
  if (part == 0) return std::nullopt;
  if (part % (per / 64) == 0) return before + std::to_string(part / (per / 64)) + "/64";
  if (part == (per + 1) / 3) return before + "1/3";
  if (part == (per * 2 + 1) / 3) return before + "2/3";
  return std::nullopt;
}

std::string quoted(const std::string& text) {
  return '"' + text + '"';
}

/// Writes a spec: one object at a time, its members shuffled if so wished.
class Scribe {
 public:
  explicit Scribe(const Writing& writing) : writing_(writing), dice_(writing.style) {}

  std::string write(const DoorSpec& spec) {
    Members members{{"kind", quoted("door")},
                    {"units", quoted(writing_.unit == Unit::mm ? "mm" : "in")}};
    for (const std::string& top : top_keys(spec))
      members.push_back({top, value(spec, top)});
    if (!spec.rails.empty()) members.push_back({"rail_widths", rails(spec)});
    if (spec.panels_as != PanelsAs::left_out) members.push_back({"panels", panels(spec)});
    if (!spec.name.empty()) members.push_back({"name", quoted(spec.name)});
    if (!spec.species.empty()) members.push_back({"species", quoted(spec.species)});
    if (spec.quantity > 0) members.push_back({"quantity", std::to_string(spec.quantity)});
    return object(std::move(members));
  }

 private:
  using Members = std::vector<std::pair<std::string, std::string>>;

  /// What stands before the first dot of each key, once, in order; and where only words are of an
  /// object.
  static std::vector<std::string> top_keys(const DoorSpec& spec) {
    std::vector<std::string> keys;
    const auto add = [&](std::string key) {
      if (std::find(keys.begin(), keys.end(), key) == keys.end()) keys.push_back(std::move(key));
    };
    for (const SpecLength& each : spec.lengths) {
      add(std::string(each.key.substr(0, each.key.find('.'))));
    }
    if (!spec.rebate.empty() || !spec.raised.empty() || !spec.grain.empty() || !spec.kind.empty() ||
        !spec.tiers.empty())
      add("panel");
    if (!spec.edge.empty()) add("edge");
    return keys;
  }

  /// A length, or an object of those that have `key` before a dot.
  std::string value(const DoorSpec& spec, const std::string& key) {
    if (const auto length = spec.find(key)) return written(*length);
    Members members;
    const std::string stem = key + ".";
    for (const SpecLength& each : spec.lengths) {
      if (!each.key.starts_with(stem)) continue;
      const std::string rest(
          each.key.substr(stem.size(), each.key.find('.', stem.size()) - stem.size()));
      const bool known = std::any_of(members.begin(), members.end(),
                                     [&](const auto& member) { return member.first == rest; });
      if (!known) members.push_back({rest, value(spec, stem + rest)});
    }
    if (key == "panel" && !spec.kind.empty()) members.push_back({"kind", quoted(spec.kind)});
    if (key == "edge") members.push_back({"kind", quoted(spec.edge)});
    if (key == "edge" && !spec.moulding.empty())
      members.push_back({"profile", quoted(spec.moulding)});
    if (key == "edge" && !spec.moulded_faces.empty())
      members.push_back({"faces", quoted(spec.moulded_faces)});
    if (key == "panel" && !spec.rebate.empty()) members.push_back({"rebate", quoted(spec.rebate)});
    if (key == "panel" && !spec.raised.empty()) members.push_back({"raised", quoted(spec.raised)});
    if (key == "panel.raise" && !spec.profile.empty())
      members.push_back({"profile", quoted(spec.profile)});
    if (key == "panel" && !spec.grain.empty()) members.push_back({"grain", quoted(spec.grain)});
    if (key == "panel" && !spec.tiers.empty()) members.push_back({"tiers", tiers(spec)});
    return object(std::move(members));
  }

  std::string tiers(const DoorSpec& spec) {
    std::string list;
    for (const TierPanels& tier : spec.tiers) {
      DoorSpec alone;
      alone.lengths = tier.lengths;
      alone.rebate = tier.rebate;
      alone.raised = tier.raised;
      alone.profile = tier.profile;
      alone.grain = tier.grain;
      alone.kind = tier.kind;
      list += (list.empty() ? "" : ", ") + value(alone, "panel");
    }
    return "[" + list + "]";
  }

  std::string rails(const DoorSpec& spec) {
    std::string list;
    for (const SpecRail& rail : spec.rails) {
      const bool named = writing_.rail_names && !rail.name.empty();
      std::string text;
      if (!named && rail.line.empty() && !dice_.chance(20)) {
        text = written(rail.width);
      } else {
        Members members{{"width", written(rail.width)}};
        if (named) members.push_back({"name", quoted(rail.name)});
        if (!rail.line.empty()) members.push_back({std::string(rail.line), written(rail.height)});
        text = object(std::move(members));
      }
      list += (list.empty() ? "" : ", ") + text;
    }
    return "[" + list + "]";
  }

  std::string panels(const DoorSpec& spec) {
    const bool alike = std::all_of(spec.across.begin(), spec.across.end(),
                                   [&](int each) { return each == spec.across.front(); });
    const auto tiers = static_cast<int>(spec.across.size());
    if (alike && spec.panels_as == PanelsAs::count) {
      return std::to_string(tiers * spec.across.front());
    }
    if (alike && spec.panels_as == PanelsAs::across) {
      return "{\"across\": " + std::to_string(spec.across.front()) + "}";
    }
    std::string list;
    for (const int each : spec.across)
      list += (list.empty() ? "" : ", ") + std::to_string(each);
    return "{\"across\": [" + list + "]}";
  }

  std::string object(Members members) {
    if (writing_.shuffled) {
      for (std::size_t i = members.size(); i > 1; --i) {
        const auto other = dice_.between(0, static_cast<std::int64_t>(i) - 1);
        std::swap(members[i - 1], members[static_cast<std::size_t>(other)]);
      }
    }
    std::string text;
    for (const auto& [key, value] : members) {
      text += (text.empty() ? "" : ", ") + quoted(key) + ": " + value;
    }
    return "{" + text + "}";
  }

  /// A bare number where the spec's unit can say it, or a text in either unit.
  std::string written(Length length) {
    const bool text = dice_.chance(25);
    const bool inch = writing_.unit == Unit::inch;
    if (const auto fraction = fraction_text(length); fraction && (text || !inch_text(length))) {
      return quoted(*fraction + (inch && dice_.chance(50) ? "" : " in"));
    }
    const auto decimal = inch_text(length);
    if (inch && decimal && !text) return *decimal;
    if (!inch && !text) return mm_text(length);
    if (decimal && dice_.chance(50)) return quoted(*decimal + " in");
    return quoted(mm_text(length) + " mm");
  }

  Writing writing_;
  Dice dice_;
};

}  // namespace

std::uint64_t Dice::roll() {
  state_ += 0x9e3779b97f4a7c15ULL;
  std::uint64_t mixed = state_;
  mixed = (mixed ^ (mixed >> 30U)) * 0xbf58476d1ce4e5b9ULL;
  mixed = (mixed ^ (mixed >> 27U)) * 0x94d049bb133111ebULL;
  return mixed ^ (mixed >> 31U);
}

std::int64_t Dice::between(std::int64_t low, std::int64_t high) {
  if (high <= low) return low;
  const auto span = static_cast<std::uint64_t>(high - low) + 1;
  return low + static_cast<std::int64_t>(roll() % span);
}

namespace {

std::optional<Length> find_in(const std::vector<SpecLength>& lengths, std::string_view key) {
  for (const SpecLength& each : lengths) {
    if (each.key == key) return each.length;
  }
  return std::nullopt;
}

}  // namespace

std::optional<Length> TierPanels::find(std::string_view key) const {
  return find_in(lengths, key);
}

std::optional<Length> DoorSpec::find(std::string_view key) const {
  return find_in(lengths, key);
}

DoorSpec random_door(std::uint64_t seed, Keys keys) {
  return Draughtsman(seed, keys).draw();
}

std::string to_json(const DoorSpec& spec, const Writing& writing) {
  return Scribe(writing).write(spec);
}

DoorSpec scaled(DoorSpec spec, std::int64_t times) {
  for (SpecLength& each : spec.lengths)
    each.length = each.length * times;
  for (TierPanels& tier : spec.tiers)
    for (SpecLength& each : tier.lengths)
      each.length = each.length * times;
  for (SpecRail& rail : spec.rails) {
    rail.width = rail.width * times;
    rail.height = rail.height * times;
  }
  return spec;
}

DoorSpec mirrored(DoorSpec spec) {
  const std::array<std::string_view, 4> sides{"clearance.left", "clearance.right",
                                              "stile_width.left", "stile_width.right"};
  for (SpecLength& each : spec.lengths) {
    const auto* side = std::find(sides.begin(), sides.end(), each.key);
    if (side != sides.end()) each.key = sides[static_cast<std::size_t>(side - sides.begin()) ^ 1U];
  }
  return spec;
}

}  // namespace haunch::test
