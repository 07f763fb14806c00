#include "spec_agreement.h"

#include <algorithm>
#include <array>
#include <optional>

#include "haunch/length_text.h"

namespace haunch::test {

namespace {

using MaybeLength = std::optional<Length>;

constexpr Length kStep = Length::from_steps(1);

Length low(const Piece& piece, Axis axis) {
  return piece.place.origin[static_cast<std::size_t>(axis)];
}

Length high(const Piece& piece, Axis axis) {
  for (std::size_t i = 0; i < 3; ++i) {
    if (piece.place.axes[i] == axis) return low(piece, axis) + piece.blank[i];
  }
  return low(piece, axis);
}

class Comparison {
 public:
  Comparison(const DoorSpec& spec, const Assembly& assembly) : spec_(spec), assembly_(assembly) {
    for (const Piece& piece : assembly.pieces) {
      if (piece.role == Role::stile) stiles_.push_back(&piece);
      if (piece.role == Role::rail) rails_.push_back(&piece);
    }
    const auto higher = [](const Piece* a, const Piece* b) {
      return low(*a, Axis::y) > low(*b, Axis::y);
    };
    std::sort(rails_.begin(), rails_.end(), higher);
    const auto lefter = [](const Piece* a, const Piece* b) {
      return low(*a, Axis::x) < low(*b, Axis::x);
    };
    std::sort(stiles_.begin(), stiles_.end(), lefter);
  }

  std::vector<std::string> all() {
    if (stiles_.size() != 2 || rails_.size() < 2) return {"not two stiles and at least two rails"};
    leaf();
    stiles();
    rails();
    openings();
    tiers();
    grooves();
    for (const Joint& joint : assembly_.joints) {
      if (assembly_.pieces[joint.enters].role == Role::glass) {
        pane_edge(joint);
      } else if (joint.design.bite) {
        panel_edge(joint);
      } else if (joint.kind != JointKind::bead_in_rebate) {
        tenon(joint);
      }
    }
    return std::move(found_);
  }

 private:
  void expect(const std::string& what, Length measured, MaybeLength wanted) {
    if (!wanted || measured == *wanted) return;
    found_.push_back(what + " is " + decimal(measured, Unit::mm) + " mm, by the spec " +
                     decimal(*wanted, Unit::mm) + " mm");
  }

  void expect_true(const std::string& what, bool holds) {
    if (!holds) found_.push_back(what);
  }

  MaybeLength given(std::string_view key) const { return spec_.find(key); }

  MaybeLength given_either(std::string_view whole, std::string_view part) const {
    const MaybeLength one = given(whole);
    return one ? one : given(part);
  }

  // ---- sizes and places ----

  void leaf() {
    const MaybeLength left = given_either("clearance", "clearance.left");
    const MaybeLength right = given_either("clearance", "clearance.right");
    const MaybeLength head = given_either("clearance", "clearance.head");
    const MaybeLength foot = given_either("clearance", "clearance.foot");
    if (left && right) {
      expect("leaf width", assembly_.size[0], *given("opening.width") - *left - *right);
    }
    if (head && foot) {
      expect("leaf height", assembly_.size[1], *given("opening.height") - *head - *foot);
    }
    expect("leaf thickness", assembly_.size[2], given("thickness"));
  }

  void stiles() {
    expect("left stile", stiles_[0]->blank[1], given_either("stile_width", "stile_width.left"));
    expect("right stile", stiles_[1]->blank[1], given_either("stile_width", "stile_width.right"));
    for (const Piece* stile : stiles_) {
      expect("stile length", stile->blank[0], assembly_.size[1]);
      expect("horn", stile->horn, given("horn"));
    }
  }

  void rails() {
    expect("top rail's top", high(*rails_.front(), Axis::y), assembly_.size[1]);
    expect("bottom rail's foot", low(*rails_.back(), Axis::y), Length());
    if (spec_.rails.empty()) return;
    if (rails_.size() != spec_.rails.size()) {
      found_.push_back("not as many rails as in the spec");
      return;
    }
    for (std::size_t i = 0; i < rails_.size(); ++i) {
      const SpecRail& wanted = spec_.rails[i];
      const Length bottom = low(*rails_[i], Axis::y);
      const Length top = high(*rails_[i], Axis::y);
      expect("rail width", rails_[i]->blank[1], wanted.width);
      if (wanted.line == "top") expect("rail's top", top, wanted.height);
      if (wanted.line == "bottom") expect("rail's bottom", bottom, wanted.height);
      const Length off = bottom + top - wanted.height * 2;
      expect_true("rail's centre is not where the spec puts it",
                  wanted.line != "centre" || (off <= kStep && -kStep <= off));
      expect_true("rail's name", wanted.name.empty() || rails_[i]->name == wanted.name);
    }
  }

  /// A house door's only middle rail, of which nothing is said, has its top 965 mm or 38 in above
  /// the foot, where it has room there. Whether it is such a one.
  bool is_lock_rail_placed() {
    if (spec_.rails.size() != 3 || !spec_.rails[1].line.empty() ||
        *spec_.find("opening.height") <= Length::from_inch_parts(60))
      return false;
    const Length top = spec_.unit == Unit::mm ? Length::from_mm(965) : Length::from_inch_parts(38);
    const Length width = spec_.rails[1].width;
    if (top >= low(*rails_[0], Axis::y) || top - width <= high(*rails_[2], Axis::y)) return false;
    expect("the top of the only middle rail", high(*rails_[1], Axis::y), top);
    return true;
  }

  /// Between two placed rails all sights are equal; odd steps go to the top ones.
  void openings() {
    if (rails_.size() != spec_.rails.size() || is_lock_rail_placed()) return;
    std::vector<Length> run;
    for (std::size_t i = 1; i < rails_.size(); ++i) {
      run.push_back(low(*rails_[i - 1], Axis::y) - high(*rails_[i], Axis::y));
      const bool placed = i + 1 == rails_.size() || !spec_.rails[i].line.empty();
      if (!placed) continue;
      std::reverse(run.begin(), run.end());
      even(run, "openings between placed rails");
      run.clear();
    }
  }

  /// Equal but for odd steps, which the last ones have.
  void even(const std::vector<Length>& parts, const std::string& what) {
    expect_true(what + " are not positive", parts.front() > Length());
    expect_true(
        what + " are not equal, with the odd steps in the last",
        std::is_sorted(parts.begin(), parts.end()) && parts.back() - parts.front() <= kStep);
  }

  void tiers() {
    for (std::size_t i = 1; i < rails_.size(); ++i) {
      std::vector<const Piece*> uprights{stiles_[0]};
      for (const Piece& piece : assembly_.pieces) {
        const bool here = piece.role == Role::muntin &&
                          low(piece, Axis::y) < low(*rails_[i - 1], Axis::y) &&
                          high(piece, Axis::y) > high(*rails_[i], Axis::y) &&
                          high(piece, Axis::y) <= high(*rails_[i - 1], Axis::y) + muntin_depth() &&
                          low(piece, Axis::y) >= low(*rails_[i], Axis::y) - muntin_depth();
        if (here) uprights.push_back(&piece);
      }
      uprights.push_back(stiles_[1]);
      tier(i - 1, uprights);
    }
  }

  /// Muntin tenons deeper than a rail is wide reach into the next tier; how far they may.
  Length muntin_depth() const {
    return given("tenon.muntin_depth").value_or(Length()) +
           (spec_.edge == "mitred" ? given("edge.width").value_or(mm_of_default_moulding())
                                   : Length());
  }
  /// The wider of those that are taken where nothing is said.
  static Length mm_of_default_moulding() { return Length::from_mm_thousandths(9'525); }

  void tier(std::size_t index, const std::vector<const Piece*>& uprights) {
    std::vector<Length> sights;
    for (std::size_t i = 1; i < uprights.size(); ++i) {
      sights.push_back(low(*uprights[i], Axis::x) - high(*uprights[i - 1], Axis::x));
      if (uprights[i]->role == Role::muntin) {
        expect("muntin width", uprights[i]->blank[1], given("muntin_width"));
      }
    }
    even(sights, "sights across a tier");
    const bool told = spec_.panels_as != PanelsAs::left_out;
    const bool each = spec_.across.size() + 1 == rails_.size();
    const int wanted = !told ? 1 : each ? spec_.across[index] : spec_.across.front();
    expect_true("not as many panels across as in the spec",
                static_cast<int>(sights.size()) == wanted);
  }

  // ---- grooves, tenons, panels ----

  void grooves() {
    for (const Piece& piece : assembly_.pieces) {
      for (const Feature& feature : piece.features) {
        const bool rebate = feature.kind == FeatureKind::rebate && piece.role != Role::panel;
        expect_true("a groove in a rebated frame, or a rebate in another",
                    (feature.kind != FeatureKind::groove || spec_.edge != "rebated") &&
                        (!rebate || spec_.edge == "rebated"));
        if (feature.kind == FeatureKind::moulding) moulding(piece, feature);
        for (const Box& cut : feature.cuts) {
          if (feature.kind == FeatureKind::groove) groove(piece, cut);
          if (rebate) edge_rebate(piece, cut);
        }
      }
    }
  }

  void groove(const Piece& piece, const Box& cut) {
    expect("groove depth", cut.extent(1), given("groove_depth"));
    expect("groove width", cut.extent(2), given("groove.width"));
    if (!given("groove.width")) board_groove(cut.extent(2));
    expect("groove from the face", cut.low[2], given("groove.from_face"));
    expect("groove length", cut.extent(0), piece.blank[0]);
    const bool told = given("groove.from_face") || given("mortise.from_face");
    const Length off = cut.low[2] + cut.high[2] - piece.blank[2];
    expect_true("groove not in the middle of the thickness",
                told || (off <= kStep && -kStep <= off));
  }

  /// Left open, it takes the thinnest board that is no thicker than the frame can bear.
  void board_groove(Length width) {
    if (!given("thickness")) return;
    MaybeLength least;
    for (std::size_t i = 0; i < std::max<std::size_t>(spec_.tiers.size(), 1); ++i) {
      const TierPanels* tier = spec_.tiers.empty() ? nullptr : &spec_.tiers[i];
      if (kind_of(tier) != "board") continue;
      const MaybeLength allowance = given_of(tier, "panel.allowance");
      if (!allowance) return;
      const Length wanted = *given_of(tier, "panel.thickness") + *allowance;
      if (wanted * 10 <= *given("thickness") * 4 && (!least || wanted < *least)) least = wanted;
    }
    expect("groove width for a board", width, least);
  }

  void edge_rebate(const Piece& piece, const Box& cut) {
    expect("rebate depth", cut.extent(1), given("edge.depth"));
    expect("rebate width", cut.extent(2), given("edge.width"));
    expect("rebate's back", cut.high[2], piece.blank[2]);
    expect("rebate length", cut.extent(0), piece.blank[0]);
  }

  /// On as many faces as the spec says, over the whole length, as wide and deep as it says.
  void moulding(const Piece& piece, const Feature& feature) {
    expect_true("a moulding on an edge that is not coped",
                spec_.edge == "coped" || spec_.edge == "mitred");
    const bool both = spec_.moulded_faces == "both";
    expect_true("faces moulded",
                spec_.moulded_faces.empty() || feature.prisms.size() == (both ? 2U : 1U));
    for (const Prism& prism : feature.prisms) {
      Length low = prism.outline[0].u;
      Length high = low;
      for (const Corner& corner : prism.outline) {
        low = std::min(low, corner.u);
        high = std::max(high, corner.u);
      }
      expect("moulding width", high - low, given("edge.width"));
      expect("moulding length", prism.to - prism.from, piece.blank[0]);
    }
  }

  bool all_stubs() const {
    return std::none_of(assembly_.joints.begin(), assembly_.joints.end(), [](const Joint& joint) {
      return joint.kind == JointKind::mortise_and_tenon;
    });
  }

  /// Two of the three sizes tell it; where there are only stubs, the groove is what the tenons are
  /// fitted to.
  MaybeLength fit() const {
    if (const MaybeLength allowance = given("fit_allowance")) return allowance;
    const MaybeLength thickness = given("tenon.thickness");
    const bool by_groove = all_stubs() && !given("mortise.width");
    const MaybeLength mortise = given(by_groove ? "groove.width" : "mortise.width");
    if (mortise && thickness) return *mortise - *thickness;
    return std::nullopt;
  }

  /// Depth of the groove that a joint's tenon passes: all grooves of a leaf are alike.
  /// Of rebated ones the depth of the rebate.
  MaybeLength groove_depth() const {
    return given(spec_.edge == "rebated" ? "edge.depth" : "groove_depth");
  }

  /// Where the tenon ends, from the face side.
  MaybeLength far_cheek() const {
    const MaybeLength face = given("mortise.from_face");
    const MaybeLength mortise = given("mortise.width");
    const MaybeLength tenon = given("tenon.thickness");
    if (!face || !fit() || (!mortise && !tenon)) return {};
    return *face + floor_half(*fit()) + (tenon ? *tenon : *mortise - *fit());
  }

  /// What a tenon beside a rebate at the back loses to it: where it ends before that, its play.
  MaybeLength lost_to_rebate() const {
    const MaybeLength cheek = far_cheek();
    const MaybeLength rebate = given("edge.width");
    const MaybeLength thickness = given("thickness");
    if (!cheek || !rebate || !thickness) return {};
    return given(*cheek <= *thickness - *rebate ? "tenon.edge_clearance" : "edge.depth");
  }

  /// What a tenon loses at an inner edge: the groove, or a mitred moulding if that is wider; before
  /// a rebate its play.
  MaybeLength lost_at_edge() const {
    if (spec_.edge == "rebated") return lost_to_rebate();
    const MaybeLength groove = groove_depth();
    if (spec_.edge != "mitred") return groove;
    const MaybeLength moulding = given("edge.width");
    if (!groove || !moulding) return {};
    return std::max(*groove, *moulding);
  }

  void tenon(const Joint& joint) {
    const bool muntin = assembly_.pieces[joint.enters].role == Role::muntin;
    const Length depth = joint.tenon ? joint.tenon->depth : Length();
    expect("tenon depth", depth, given(muntin ? "tenon.muntin_depth" : "tenon_depth"));
    if (joint.design.cheeks) expect("fit", *joint.design.cheeks, fit());
    if (const MaybeLength g = groove_depth()) {
      expect_true("a tenon no deeper than the groove is a stub, a deeper one is not",
                  (joint.kind == JointKind::stub_tenon) == (depth <= *g));
      if (joint.kind == JointKind::stub_tenon) {
        expect("bottom of a stub", joint.design.bottom.value_or(-kStep), *g - depth);
      }
    }
    if (joint.kind == JointKind::mortise_and_tenon) mortised(joint, muntin);
  }

  void mortised(const Joint& joint, bool muntin) {
    expect("bottom clearance", joint.design.bottom.value_or(-kStep),
           given("tenon.bottom_clearance"));
    expect("tenon thickness", joint.tenon->thickness, given("tenon.thickness"));
    expect("mortise width", joint.mortise->width, given("mortise.width"));
    expect("mortise from the face", joint.mortise->from_face, given("mortise.from_face"));
    expect("mortise depth", joint.mortise->depth - joint.tenon->depth - joint.tenon->set_back,
           given("tenon.bottom_clearance"));
    if (joint.tenon->haunch_depth > Length()) {
      expect("haunch depth", joint.tenon->haunch_depth, given("tenon.haunch_depth"));
    }
    const Piece* piece = &assembly_.pieces[joint.enters];
    haunches(joint, piece == rails_.front(), piece == rails_.back());
    const MaybeLength edge = given("tenon.edge_clearance");
    if (!edge) return;
    expect("edges", joint.design.edges.value_or(-kStep), *edge * 2);
    tenon_row(joint, *edge, muntin);
  }

  /// A haunch over the relish at the leaf's head and foot, and in each gap, and nowhere else.
  void haunches(const Joint& joint, bool top, bool bottom) {
    const TenonSizes& tenon = *joint.tenon;
    const MaybeLength depth = given("tenon.haunch_depth");
    if (depth ? *depth == Length() : tenon.haunch_depth == Length()) {
      expect_true("a haunch without depth", tenon.haunches.empty());
      return;
    }
    std::vector<TenonSpan> wanted;
    if (bottom) wanted.push_back({Length(), tenon.each.front().from_edge});
    Length done = tenon.each.front().from_edge + tenon.each.front().width;
    for (std::size_t i = 1; i < tenon.each.size(); ++i) {
      if (tenon.each[i].from_edge > done) wanted.push_back({done, tenon.each[i].from_edge - done});
      done = tenon.each[i].from_edge + tenon.each[i].width;
    }
    if (top) wanted.push_back({done, assembly_.pieces[joint.enters].blank[1] - done});
    const auto same = [](const TenonSpan& a, const TenonSpan& b) {
      return a.from_edge == b.from_edge && a.width == b.width;
    };
    expect_true("haunches are not over the relish and in the gaps",
                std::equal(wanted.begin(), wanted.end(), tenon.haunches.begin(),
                           tenon.haunches.end(), same));
  }

  bool any_glass() const {
    return std::any_of(assembly_.pieces.begin(), assembly_.pieces.end(),
                       [](const Piece& piece) { return piece.role == Role::glass; });
  }

  /// The row of tenons: where it begins and ends in the entering piece, and how it is divided.
  void tenon_row(const Joint& joint, Length edge, bool muntin) {
    const Piece& piece = assembly_.pieces[joint.enters];
    const Piece& receiving = assembly_.pieces[joint.receives];
    const Axis across = muntin ? Axis::x : Axis::y;
    const Length from = low(receiving, across);
    const auto& each = joint.mortise->each;
    const Length first = from + each.front().from_foot + edge;
    const Length last = from + each.back().from_foot + each.back().length - edge;
    const bool top = &piece == rails_.front();
    const bool bottom = &piece == rails_.back();
    if (muntin && any_glass()) return divided(joint, edge, last - first, muntin);
    const auto rail =
        static_cast<std::size_t>(std::find(rails_.begin(), rails_.end(), &piece) - rails_.begin());
    const MaybeLength below = muntin ? lost_at_edge() : bottom ? MaybeLength() : edge_of_tier(rail);
    const MaybeLength above = muntin ? lost_at_edge()
                              : top  ? MaybeLength()
                                     : edge_of_tier(rail - 1);
    const MaybeLength low_loss = bottom ? given("tenon.relish") : below;
    const MaybeLength high_loss = top ? given("tenon.relish") : above;
    if (low_loss) expect("lower edge of the tenon", first, low(piece, across) + *low_loss);
    if (high_loss) expect("upper edge of the tenon", last, high(piece, across) - *high_loss);
    divided(joint, edge, last - first, muntin);
  }

  /// The least number of tenons that obeys the limit, equal but for odd steps, the gap between
  /// them.
  void divided(const Joint& joint, Length edge, Length whole, bool muntin) {
    const auto& each = joint.mortise->each;
    const auto count = static_cast<std::int64_t>(each.size());
    std::vector<Length> widths;
    for (std::size_t i = 0; i < each.size(); ++i) {
      widths.push_back(each[i].length - edge * 2);
      if (i == 0) continue;
      const Length gap = each[i].from_foot - each[i - 1].from_foot - each[i - 1].length + edge * 2;
      expect("gap between tenons", gap, given("tenon.gap"));
    }
    even(widths, "tenons of one joint");
    const MaybeLength limit = given("tenon.width_limit");
    if (muntin && !limit) expect_true("a muntin's tenon is divided unasked", count == 1);
    if (!limit) return;
    expect_true("a tenon is wider than the limit", widths.back() <= *limit);
    const MaybeLength gap = given("tenon.gap");
    if (count == 1 || !gap) return;
    const Length fewer = whole - *gap * (count - 2);
    expect_true("more tenons than the limit asks for", fewer > *limit * (count - 1));
  }

  /// What is said of the tier that a panel stands in: between which rails its middle lies.
  const TierPanels* tier_of(const Piece& panel) const {
    if (spec_.tiers.empty()) return nullptr;
    const Length twice = low(panel, Axis::y) + high(panel, Axis::y);
    std::size_t tier = 0;
    while (tier + 2 < rails_.size() && twice < low(*rails_[tier + 1], Axis::y) * 2)
      ++tier;
    return &spec_.tiers[tier];
  }

  /// A length of a tier's panels, and for want of it of all panels.
  MaybeLength given_of(const TierPanels* tier, std::string_view key) const {
    const MaybeLength own = tier != nullptr ? tier->find(key) : std::nullopt;
    return own || stands_alone(tier) ? own : given(key);
  }

  static std::string kind_word(const std::string& kind) { return kind.empty() ? "solid" : kind; }

  std::string kind_of(const TierPanels* tier) const {
    return kind_word(tier == nullptr || tier->kind.empty() ? spec_.kind : tier->kind);
  }

  /// A tier of another kind takes nothing from what is said of all panels.
  bool stands_alone(const TierPanels* tier) const {
    return tier != nullptr && kind_of(tier) != kind_word(spec_.kind);
  }

  MaybeLength gap_of(const TierPanels* tier, std::string_view part) const {
    if (tier != nullptr) {
      const MaybeLength whole = tier->find("panel.gap");
      const MaybeLength own = whole ? whole : tier->find(part);
      if (own || stands_alone(tier)) return own;
    }
    return given_either("panel.gap", part);
  }

  /// The words of a panel as they are in force in its tier.
  struct Words {
    std::string rebate, raised, grain;
  };
  Words words_of(const TierPanels* tier) const {
    if (tier == nullptr) return {spec_.rebate, spec_.raised, spec_.grain};
    Words words{tier->rebate, tier->raised, tier->grain.empty() ? spec_.grain : tier->grain};
    if (stands_alone(tier)) return {tier->rebate, tier->raised, tier->grain};
    if (!tier->rebate.empty() || !tier->raised.empty()) return words;
    words.rebate = spec_.rebate;
    words.raised = spec_.raised;
    return words;
  }

  void pane_edge(const Joint& joint) {
    const Piece& pane = assembly_.pieces[joint.enters];
    const TierPanels* tier = tier_of(pane);
    const MaybeLength rebate =
        spec_.edge == "rebated" ? groove_depth() : given_of(tier, "panel.glass.rebate");
    const MaybeLength clearance = given_of(tier, "panel.glass.edge_clearance");
    expect("glass thickness", pane.blank[2], given_of(tier, "panel.thickness"));
    expect("edge clearance", joint.design.bottom.value_or(-kStep), clearance);
    expect("bedding", joint.design.bearing.value_or(-kStep), given_of(tier, "panel.glass.bedding"));
    if (rebate && clearance)
      expect("bite of glass", joint.design.bite.value_or(-kStep), *rebate - *clearance);
    expect_true(
        "a sealed unit is joined as one",
        (joint.kind == JointKind::sealed_unit_in_rebate) == (kind_of(tier) == "sealed-unit"));
  }

  /// What a tenon loses at its piece's edge that looks at the tier above or below: the groove, or a
  /// deeper rebate for glass. Unknown where it is left to a default.
  MaybeLength edge_of_tier(std::size_t index) const {
    const MaybeLength groove = lost_at_edge();
    const TierPanels* tier = spec_.tiers.empty() ? nullptr : &spec_.tiers[index];
    if (!groove || kind_of(tier) == "solid" || kind_of(tier) == "board") return groove;
    if (spec_.edge == "rebated") return groove;  // in which the glass lies
    const MaybeLength rebate = given_of(tier, "panel.glass.rebate");
    if (!rebate && kind_of(tier) == "glass") return groove;
    return rebate ? MaybeLength(std::max(*groove, *rebate)) : rebate;
  }

  void panel_edge(const Joint& joint) {
    const TierPanels* tier = tier_of(assembly_.pieces[joint.enters]);
    const Words words = words_of(tier);
    const bool level = words.grain == "level";
    const bool side = joint.heading.axis == Axis::x;
    const MaybeLength gap =
        gap_of(tier, side == level ? "panel.gap.along_grain" : "panel.gap.across_grain");
    expect("panel gap", joint.design.bottom.value_or(-kStep), gap);
    if (gap && groove_depth()) {
      expect("bite", joint.design.bite.value_or(-kStep), *groove_depth() - *gap);
    }
    const Piece& panel = assembly_.pieces[joint.enters];
    expect("panel thickness", panel.blank[2], given_of(tier, "panel.thickness"));
    expect_true("what the panel is made of",
                (panel.matter == Matter::board) == (kind_of(tier) == "board"));
    expect_true("panel's grain", panel.place.axes[0] == (level ? Axis::x : Axis::y));
    panel_cheeks(joint, panel.blank[2], tier);
    for (const Feature& feature : panel.features) {
      for (const Box& cut : feature.cuts)
        edge_cut(panel, cut, feature.kind == FeatureKind::raise, tier);
    }
  }

  /// A rebate or raise lies at the side that the spec names, and leaves the tongue; a rebate is as
  /// wide as the groove is deep, over a raised panel's tongue so much is taken off in its length.
  void edge_cut(const Piece& panel, const Box& cut, bool raise, const TierPanels* tier) {
    const Words words = words_of(tier);
    expect_true("raised, or not raised", raise == !words.raised.empty());
    const bool front = cut.low[2] == Length();
    const bool back = cut.high[2] == panel.blank[2];
    const std::string side = raise ? words.raised : words.rebate.empty() ? "back" : words.rebate;
    expect_true("a rebate at the wrong side of the panel",
                (front && side != "back") || (back && side != "front"));
    MaybeLength wide = raise ? given_of(tier, "panel.raise.tongue") : groove_depth();
    if (raise && wide) wide = std::max(*wide, kStep);  // no tongue has a step to measure at
    expect_true("rebate width", !wide || cut.extent(0) == *wide || cut.extent(1) == *wide);
    const MaybeLength groove = given("groove.width");
    const MaybeLength allowance = given_of(tier, "panel.allowance");
    if (!groove || !allowance) return;
    const Length waste = panel.blank[2] - (*groove - *allowance);
    const Length off = side == "both" ? cut.extent(2) * 2 - waste : cut.extent(2) - waste;
    expect_true("rebate depth", off <= kStep && -kStep <= off);
  }

  /// A tongue has the allowance; a flat panel has what is really left of the groove.
  void panel_cheeks(const Joint& joint, Length thickness, const TierPanels* tier) {
    const MaybeLength width = given("groove.width");
    const MaybeLength allowance = given_of(tier, "panel.allowance");
    if (!width || !allowance || !joint.design.cheeks) return;
    const bool flat = thickness <= *width && words_of(tier).raised.empty();
    if (flat && thickness < *width - *allowance) return;  // too thin: its check says so
    expect("panel cheeks", *joint.design.cheeks, flat ? *width - thickness : *allowance);
  }

  const DoorSpec& spec_;
  const Assembly& assembly_;
  std::vector<const Piece*> stiles_;  // left, right
  std::vector<const Piece*> rails_;   // from the top
  std::vector<std::string> found_;
};

}  // namespace

std::vector<std::string> disagreements(const DoorSpec& spec, const Assembly& assembly) {
  return Comparison(spec, assembly).all();
}

}  // namespace haunch::test
