// Wood left: beside, behind and beyond each mortise, between mortises, and beside each groove.
#include <algorithm>
#include <cmath>

#include "family.h"
#include "own_axes.h"
#include "rounding.h"

namespace haunch {
namespace {

constexpr Rule kWall{"mortise-wall", "of wood beside the mortise",
                     "a wall under a quarter of the thickness, or 5 mm, splits (trade practice)"};
constexpr Rule kTwinWall{"twin-wall", "of wood beside the outer of two mortises side by side",
                         "a wall under a sixth of the thickness, or 5 mm, splits (trade practice)"};
constexpr Rule kBehind{"mortise-behind", "of wood behind the mortise",
                       "under 5 mm the bottom telegraphs or breaks through (trade practice)"};
constexpr Rule kEnd{"mortise-end", "of wood from the mortise to the end of its piece",
                    "under 12 mm (1/2 in) of relish the end shears out (trade practice)"};
constexpr Rule kEdge{"mortise-edge",
                     "of wood between the mortise in an end and the edge or groove of its piece",
                     "under 5 mm it breaks out (trade practice)"};
constexpr Rule kBetween{"mortise-between", "of wood between two mortises",
                        "under 5 mm the wood between them breaks out (trade practice)"};
constexpr Rule kHoleWall{"hole-wall", "of wood beside the dowel hole, face or back",
                         "under 5 mm the face splits or shows the dowel (trade practice)"};
constexpr std::string_view kInSheets =
    "under 4 mm a sheet splits or bulges; 8 mm dowels in 16 mm sheets are usual (trade practice)";
constexpr Rule kHoleWallOfSheet{"hole-wall", kHoleWall.words, kInSheets};
constexpr Rule kHoleBehind{"hole-behind", "of wood behind the dowel hole",
                           "under 5 mm the bottom telegraphs or breaks through (trade practice)"};
constexpr Rule kHoleEdge{
    "hole-edge", "of wood from the dowel hole to the edge or end of its piece",
    "a hole wants as much wood beside it as the dowel is thick (trade practice)"};
constexpr Rule kHoleEdgeOfSheet{"hole-edge", kHoleEdge.words, kInSheets};
constexpr Rule kHoleGroove{"hole-groove",
                           "of wood between the dowel hole and what is cut beside it",
                           "under 5 mm it breaks out as it is bored (trade practice)"};
constexpr Rule kHoleBetween{"hole-between", "of wood between two dowel holes",
                            "under 5 mm the wood between them breaks out (trade practice)"};
constexpr Rule kSlotWall{"slot-wall", "of wood beside the spline's slot, face or back",
                         "a wall under a quarter of the thickness, or 5 mm, splits (trade "
                         "practice)"};
constexpr Rule kSlotEdge{"slot-edge",
                         "of wood from the spline's slot to the leaf's edge or a groove",
                         "under 5 mm it breaks out (trade practice)"};
constexpr Rule kHousingBehind{"housing-behind", "of wood behind the housing",
                              "under 5 mm a jamb bends and splits at its housing (trade practice)"};
constexpr Rule kHousingEnd{
    "housing-end", "of wood from the housing to the end of its piece",
    "under 10 mm of short grain beyond a housing breaks off (trade practice)"};
constexpr Rule kGroove{"groove-wall", "of wood beside and behind the groove",
                       "a thin lip breaks off when the panel is pressed (trade practice)"};

constexpr Rule kMoulding{"moulding-wall", "of wood between moulding and groove",
                         "a feather edge in front of the panel breaks off (trade practice)"};
constexpr Rule kRebate{"rebate-wall", "of wood beside and behind the rebate",
                       "a thin lip breaks off when the panel is pressed (trade practice)"};

/// A void of a piece, in the assembly's axes.
struct Void {
  const Feature* feature;
  Box box;  // of one that slopes the box around it
  std::optional<Polyhedron> sloping = {};

  bool is(FeatureKind kind) const { return feature->kind == kind; }
  bool is_groove() const { return is(FeatureKind::groove); }
  bool is_mortise() const { return is(FeatureKind::mortise) || is(FeatureKind::dowel_hole); }
  /// Whether it is a rebate along the outside of the leaf.
  bool is_outside() const { return is(FeatureKind::lip_rebate) || is(FeatureKind::meeting_rebate); }
};
using Voids = std::vector<Void>;
/// Some of them.
using Chosen = std::vector<const Void*>;

template <typename Wanted>
Chosen chosen(const Voids& voids, const Wanted& wanted) {
  Chosen some;
  for (const Void& each : voids)
    if (wanted(each)) some.push_back(&each);
  return some;
}

bool overlap_or_touch(const Box& a, const Box& b) {
  for (std::size_t axis = 0; axis < 3; ++axis)
    if (a.high[axis] < b.low[axis] || b.high[axis] < a.low[axis]) return false;
  return true;
}

/// A mortise is as long, wide and deep as it is anywhere: what slopes at its ends is taken into the
/// box around it.
void add_mortise(Voids& voids, const Piece& piece, const Feature& feature) {
  std::vector<Box> ends;
  for (const Prism& prism : feature.prisms)
    ends.push_back(bounds_of(placed(prism, piece.place)));
  for (const Box& cut : feature.cuts) {
    const Box straight = placed(cut, piece.place);
    Box whole = straight;
    for (const Box& end : ends)
      if (overlap_or_touch(straight, end)) whole = around(whole, end);
    voids.push_back({&feature, whole});
  }
}

/// The box around a hole, which is as wide as it is anywhere.
Box hole_of(const Piece& piece, const Feature& feature) {
  return bounds_of(placed(feature.prisms.front(), piece.place));
}

Voids voids_of(const Piece& piece) {
  Voids voids;
  for (const Feature& feature : piece.features) {
    if (feature.fitting) continue;
    if (feature.kind == FeatureKind::mortise) {
      add_mortise(voids, piece, feature);
      continue;
    }
    if (feature.kind == FeatureKind::dowel_hole) {
      for (const Prism& prism : feature.prisms)
        voids.push_back({&feature, bounds_of(placed(prism, piece.place))});
      continue;
    }
    for (const Box& cut : feature.cuts)
      voids.push_back({&feature, placed(cut, piece.place)});
    for (const Prism& prism : feature.prisms)
      for (Polyhedron& block : polyhedra_of(placed(prism, piece.place))) {
        const Box around = bounds_of(block);
        voids.push_back({&feature, around, std::move(block)});
      }
  }
  return voids;
}

/// Part of a void, from which wood is measured on.
class Slab {
 public:
  explicit Slab(const Box& box) : box_(box) {}

  const Box& box() const { return box_; }

  /// On to a void that goes on beyond it, in its shadow, if that is nearer than `most`.
  std::optional<Length> distance(const Void& to, Way way, std::optional<Length> most = {}) {
    if (!in_shadow(box_, to.box, way.axis)) return {};
    if (!to.sloping) return gap(box_, to.box, way);
    // The box around it may be half a step too large.
    const Length least = nearest(to.box, way) - Length::from_steps(1);
    if (most && least >= *most) return {};
    return gap(shape_for(*to.sloping), *to.sloping, way);
  }

 private:
  Length nearest(const Box& to, Way way) const {
    return way.upwards ? to.low[way.axis] - box_.high[way.axis]
                       : box_.low[way.axis] - to.high[way.axis];
  }

  /// As a run beside another.
  const Polyhedron& shape_for(const Polyhedron& other) {
    const std::size_t along = other.along == kNoAxis ? 2 : other.along;
    if (!shape_ || shape_->along != along) shape_ = polyhedron_of(box_, along);
    return *shape_;
  }

  Box box_;
  std::optional<Polyhedron> shape_;
};

/// Wood from a face of a slab on, this way, until there is none. Negative where a void that ends
/// beyond begins before.
struct WoodRun {
  Length wood;
  bool to_mortise = false;
};

WoodRun wood_from(Slab& slab, Way way, const Box& blank, const Chosen& voids,
                  const Void* own = nullptr) {
  const Length from = way.upwards ? slab.box().high[way.axis] : slab.box().low[way.axis];
  WoodRun run{way.upwards ? blank.high[way.axis] - from : from - blank.low[way.axis], false};
  for (const Void* to : voids) {
    if (to == own) continue;
    const auto wood = slab.distance(*to, way, run.wood);
    if (wood && *wood < run.wood) run = {*wood, to->is_mortise()};
  }
  return run;
}

/// What one joint's mortises leave of their piece.
struct WoodLeft {
  std::optional<Length> beside, behind, end, between;

  void note(std::optional<Length>& least, Length wood) {
    least = least ? std::min(*least, wood) : wood;
  }
  void note_run(const WoodRun& run, std::optional<Length> WoodLeft::*otherwise) {
    note(run.to_mortise ? between : this->*otherwise, run.wood);
  }
};

/// The fin between a mortise and a groove beside it, across the thickness; nothing where they
/// overlap or touch.
std::optional<Length> fin_between(const Box& mortise, const Box& groove, std::size_t through) {
  if (!in_shadow(mortise, groove, through)) return {};
  const Length fin = std::max(groove.low[through] - mortise.high[through],
                              mortise.low[through] - groove.high[through]);
  return fin > Length() ? std::optional(fin) : std::nullopt;
}

/// From corner to corner of two mortises that pass each other in their piece, apart both ways;
/// nothing for others.
std::optional<Length> corner_distance(const Box& a, const Box& b, std::size_t along,
                                      std::size_t in) {
  const std::size_t through = 3 - along - in;
  if (a.high[through] <= b.low[through] || b.high[through] <= a.low[through]) return {};
  const auto apart = [&](std::size_t axis) {
    return std::max(b.low[axis] - a.high[axis], a.low[axis] - b.high[axis]);
  };
  if (apart(along) <= Length() || apart(in) <= Length()) return {};
  return nearest_step(std::hypot(static_cast<double>(apart(along).steps()),
                                 static_cast<double>(apart(in).steps())));
}

/// One step of the mortise's depth at its bottom, beyond any groove.
Box bottom_slab(Box mortise, Way in) {
  const Length step = Length::from_steps(1);
  if (in.upwards)
    mortise.low[in.axis] = mortise.high[in.axis] - step;
  else
    mortise.high[in.axis] = mortise.low[in.axis] + step;
  return mortise;
}

/// Takes a rebate off a box along one axis, where it has all of the box the other two ways.
void trim(Box& box, const Box& rebate, std::size_t axis) {
  for (std::size_t other = 0; other < 3; ++other)
    if (other != axis &&
        (rebate.low[other] > box.low[other] || box.high[other] > rebate.high[other]))
      return;
  if (rebate.low[axis] > box.low[axis])
    box.high[axis] = std::min(box.high[axis], rebate.low[axis]);
  else
    box.low[axis] = std::max(box.low[axis], rebate.high[axis]);
}

/// What of a mortise is in wood: one that comes out at the edge or the end of a piece ends at the
/// rebates that are worked there after glue-up.
Box within_rebates(Box mortise, std::size_t in, std::size_t along, const Voids& voids) {
  for (const std::size_t axis : {in, along})
    for (const Void& rebate : voids)
      if (rebate.is_outside()) trim(mortise, rebate.box, axis);
  return mortise;
}

WoodLeft wood_left(const Joint& joint, const Piece& piece, const Box& blank, const Feature& mortise,
                   const Voids& voids) {
  const Way in{static_cast<std::size_t>(joint.heading.axis), joint.heading.upwards};
  // A mortise in the end of its piece is long in that piece's width.
  const bool in_end = piece.place.axes[0] == joint.heading.axis;
  const auto along = static_cast<std::size_t>(piece.place.axes[in_end ? 1 : 0]);
  const std::size_t through = 3 - along - in.axis;
  const Chosen all = chosen(voids, [](const Void&) { return true; });
  // The curve of a top goes right through the thickness, and across a mortise that is open there;
  // so does the rebate behind a lip along it.
  const Chosen beside = chosen(voids, [](const Void& it) {
    return !it.is(FeatureKind::arched_head) && !(it.is(FeatureKind::lip_rebate) && it.sloping);
  });
  WoodLeft left;
  for (const Void& own : voids) {
    if (own.feature != &mortise) continue;
    Slab slab(bottom_slab(within_rebates(own.box, in.axis, along, voids), in));
    for (const bool upwards : {false, true}) {
      left.note_run(wood_from(slab, {through, upwards}, blank, beside, &own), &WoodLeft::beside);
      left.note_run(wood_from(slab, {along, upwards}, blank, all, &own), &WoodLeft::end);
    }
    left.note_run(wood_from(slab, in, blank, all, &own), &WoodLeft::behind);
    for (const Void& other : voids) {
      if (other.is_groove())
        if (const auto fin = fin_between(own.box, other.box, through)) left.note(left.beside, *fin);
      if (!other.is_mortise()) continue;
      const auto corners = corner_distance(own.box, other.box, along, in.axis);
      if (corners && (!left.between || *corners < *left.between)) left.between = corners;
    }
  }
  return left;
}

void check_mortise(Bench& bench, std::size_t number, const Feature& mortise, const Voids& voids) {
  const Joint& joint = bench.assembly.joints[number];
  const Piece& piece = bench.assembly.pieces[joint.receives];
  const Limits& limits = bench.limits;
  const WoodLeft left = wood_left(joint, piece, bench.solids[joint.receives].blank, mortise, voids);
  const std::vector<std::size_t> parts{joint.receives};
  const auto bounds = [&](Length thin) { return Bounds{limits.least_wood, {}, thin, {}}; };
  const bool twins = bench.measures[number].side_by_side > 1;
  // Before the short mortise of a glazing bar there is what its glass is bedded on, and no more.
  const bool bar = bench.assembly.pieces[joint.enters].role == Role::glazing_bar;
  const Length thin_wall = bar ? Length() : floor_divide(piece.blank[2], twins ? 6 : 4);
  report(bench, twins ? kTwinWall : kWall, parts, number, left.beside,
         bounds(std::max(thin_wall, limits.thin_wood)));
  if (left.behind && joint.design.bottom)
    report(bench, kBehind, parts, number, left.behind, bounds(limits.thin_wood));
  // The play at a tenon's edge is taken out of its relish.
  const Length play = floor_half(joint.design.edges.value_or(Length()));
  const bool in_end =
      static_cast<std::size_t>(joint.heading.axis) == static_cast<std::size_t>(piece.place.axes[0]);
  if (left.end && in_end) report(bench, kEdge, parts, number, left.end, bounds(limits.thin_wood));
  if (left.end && !in_end && joint.design.edges)
    report(bench, kEnd, parts, number, left.end, bounds(limits.least_to_end - play));
  if (left.between) report(bench, kBetween, parts, number, left.between, bounds(limits.thin_wood));
}

/// The lesser distance from a hole to the two edges or ends beside it.
Length to_edge_of_piece(const Box& hole, const Box& blank, std::size_t along) {
  return std::min(hole.low[along] - blank.low[along], blank.high[along] - hole.high[along]);
}

void check_hole(Bench& bench, std::size_t number, const Feature& feature, const Voids& voids) {
  const Joint& joint = bench.assembly.joints[number];
  const Piece& piece = bench.assembly.pieces[joint.receives];
  const Limits& limits = bench.limits;
  const Box& blank = bench.solids[joint.receives].blank;
  const WoodLeft left = wood_left(joint, piece, blank, feature, voids);
  const Box hole = hole_of(piece, feature);
  const bool in_end = piece.place.axes[0] == joint.heading.axis;
  const auto along = static_cast<std::size_t>(piece.place.axes[in_end ? 1 : 0]);
  const std::vector<std::size_t> parts{joint.receives};
  const Bounds thin{limits.least_wood, {}, limits.thin_wood, {}};
  const bool sheet = piece.matter == Matter::board;
  const Bounds in_sheet{limits.least_wood, {}, limits.thin_beside_hole, {}};
  // Between other holes at both its sides it has no face beside it.
  if (left.beside || !left.between)
    report(bench, sheet ? kHoleWallOfSheet : kHoleWall, parts, number, left.beside,
           sheet ? in_sheet : thin);
  if (left.behind) report(bench, kHoleBehind, parts, number, left.behind, thin);
  const Length to_edge = to_edge_of_piece(hole, blank, along);
  report(bench, sheet ? kHoleEdgeOfSheet : kHoleEdge, parts, number, to_edge,
         sheet ? in_sheet : Bounds{limits.least_wood, {}, bench.measures[number].thickness, {}});
  if (left.end && *left.end < to_edge) report(bench, kHoleGroove, parts, number, left.end, thin);
  if (left.between) report(bench, kHoleBetween, parts, number, left.between, thin);
}

/// A slot in a mitre, across the width of its piece: to the outer edge and to the groove.
void check_slot(Bench& bench, std::size_t number, const Feature& feature, const Voids& voids) {
  const Joint& joint = bench.assembly.joints[number];
  const Piece& piece = bench.assembly.pieces[joint.receives];
  const Limits& limits = bench.limits;
  const Box& blank = bench.solids[joint.receives].blank;
  const auto across = static_cast<std::size_t>(piece.place.axes[1]);
  const auto through = static_cast<std::size_t>(piece.place.axes[2]);
  Slab slot(hole_of(piece, feature));
  const Chosen grooves = chosen(voids, [](const Void& it) { return it.is_groove(); });
  Length beside = blank.extent(through);
  Length edge = blank.extent(across);
  for (const bool upwards : {false, true}) {
    beside = std::min(beside, wood_from(slot, {through, upwards}, blank, grooves).wood);
    edge = std::min(edge, wood_from(slot, {across, upwards}, blank, grooves).wood);
  }
  const Length quarter = floor_divide(piece.blank[2], 4);
  report(bench, kSlotWall, {joint.receives}, number, beside,
         Bounds{limits.least_wood, {}, std::max(quarter, limits.thin_wood), {}});
  report(bench, kSlotEdge, {joint.receives}, number, edge,
         Bounds{limits.least_wood, {}, limits.thin_wood, {}});
}

/// Whether a feature receives the end of another piece as it is, without a tenon.
bool houses_an_end(const Bench& bench, const Feature& feature) {
  if (feature.joints.size() != 1 || feature.cuts.empty() || feature.kind == FeatureKind::notch)
    return false;
  const JointKind kind = bench.assembly.joints[feature.joints.front()].kind;
  return (kind == JointKind::housing || kind == JointKind::stopped_housing ||
          kind == JointKind::rebated_corner || kind == JointKind::tongue) &&
         feature.kind != FeatureKind::tongue;
}

/// The wood behind a housing or the rebate at a piece's end, and beyond a housing along its piece.
void check_housing(Bench& bench, std::size_t number, const Feature& housing) {
  const Joint& joint = bench.assembly.joints[number];
  const Piece& piece = bench.assembly.pieces[joint.receives];
  const Box& blank = bench.solids[joint.receives].blank;
  const auto along = static_cast<std::size_t>(piece.place.axes[0]);
  const Way in{static_cast<std::size_t>(joint.heading.axis), joint.heading.upwards};
  const Box box = placed(housing.cuts.front(), piece.place);
  const Length behind =
      in.upwards ? blank.high[in.axis] - box.high[in.axis] : box.low[in.axis] - blank.low[in.axis];
  const Limits& limits = bench.limits;
  report(bench, kHousingBehind, {joint.receives}, number, behind,
         Bounds{limits.least_wood, {}, limits.thin_wood, {}});
  const Length beyond =
      std::min(blank.high[along] - box.high[along], box.low[along] - blank.low[along]);
  if (beyond > Length() && piece.matter != Matter::board)
    report(bench, kHousingEnd, {joint.receives}, number, beyond,
           Bounds{limits.least_wood, {}, limits.least_beyond_housing, {}});
}

void check_grooves(Bench& bench, std::size_t number, const Voids& voids) {
  const Piece& piece = bench.assembly.pieces[number];
  const Chosen grooves = chosen(voids, [](const Void& it) { return it.is_groove(); });
  if (grooves.empty()) return;
  const Box& blank = bench.solids[number].blank;
  std::optional<Length> least;
  for (const Void* groove : grooves) {
    const Box& box = groove->box;
    auto across = static_cast<std::size_t>(piece.place.axes[1]);
    auto through = static_cast<std::size_t>(piece.place.axes[2]);
    if (opens_in_face(box, blank, across, through)) std::swap(across, through);
    // A rebate across a groove's end is not beside it.
    const Chosen beside = chosen(voids, [&](const Void& it) {
      return it.is_groove() || (it.is_outside() && !interiors_meet(it.box, box));
    });
    // Worked from the edge that it is nearer to; one that follows an arch does not begin at the
    // blank's.
    const bool inward =
        piece.role == Role::rail && groove->sloping
            ? true
            : box.low[across] - blank.low[across] <= blank.high[across] - box.high[across];
    Slab slab(box);
    for (const Way way : {Way{through, false}, Way{through, true}, Way{across, inward}}) {
      const Length wood = wood_from(slab, way, blank, beside, groove).wood;
      least = least ? std::min(*least, wood) : wood;
    }
  }
  report(bench, kGroove, {number}, {}, least,
         Bounds{bench.limits.least_wood, {}, bench.limits.thin_wood, {}});
}

/// What a moulding leaves at the sight edge between itself and the groove.
void check_mouldings(Bench& bench, std::size_t number, const Voids& voids) {
  const auto through = static_cast<std::size_t>(bench.assembly.pieces[number].place.axes[2]);
  const Chosen mouldings =
      chosen(voids, [](const Void& it) { return it.is(FeatureKind::moulding) && it.sloping; });
  if (mouldings.empty()) return;
  std::optional<Length> least;
  for (const Void& groove : voids) {
    if (!groove.is_groove()) continue;
    Slab slab(groove.box);
    for (const Void* moulding : mouldings)
      for (const bool upwards : {false, true})
        if (const auto wood = slab.distance(*moulding, {through, upwards}, least))
          least = least ? std::min(*least, *wood) : wood;
  }
  if (least)
    report(bench, kMoulding, {number}, {}, least,
           Bounds{bench.limits.least_lip, {}, bench.limits.thin_lip, {}});
}

/// The lip in front of a rebate that holds panels, and the wood behind it.
void check_rebates(Bench& bench, std::size_t number) {
  const Piece& piece = bench.assembly.pieces[number];
  const auto across = static_cast<std::size_t>(piece.place.axes[1]);
  const auto through = static_cast<std::size_t>(piece.place.axes[2]);
  const Box& blank = bench.solids[number].blank;
  Voids rebates;
  for (const Feature& feature : piece.features) {
    const bool holds = feature.kind == FeatureKind::rebate && !feature.joints.empty() &&
                       bench.assembly.joints[feature.joints.front()].receives == number &&
                       bench.assembly.joints[feature.joints.front()].design.bite;
    for (const Box& cut : feature.cuts)
      if (holds) rebates.push_back({&feature, placed(cut, piece.place)});
  }
  std::optional<Length> least;
  const Chosen all = chosen(rebates, [](const Void&) { return true; });
  for (const Void& rebate : rebates) {
    const Way inward{across, rebate.box.low[across] == blank.low[across]};
    const Way to_lip{through, rebate.box.low[through] == blank.low[through]};
    Slab slab(rebate.box);
    for (const Way way : {to_lip, inward}) {
      const Length wood = wood_from(slab, way, blank, all, &rebate).wood;
      least = least ? std::min(*least, wood) : wood;
    }
  }
  if (least)
    report(bench, kRebate, {number}, {}, least,
           Bounds{bench.limits.least_wood, {}, bench.limits.thin_wood, {}});
}

}  // namespace

void check_walls(Bench& bench) {
  const std::vector<Piece>& pieces = bench.assembly.pieces;
  std::vector<Voids> voids;  // of each piece
  voids.reserve(pieces.size());
  for (const Piece& piece : pieces)
    voids.push_back(voids_of(piece));
  const auto check_each = [&](FeatureKind kind, auto check) {
    for (const Piece& piece : pieces)
      for (const Feature& feature : piece.features) {
        if (feature.kind != kind || feature.fitting) continue;
        const std::size_t joint = feature.joints.front();
        check(bench, joint, feature, voids[bench.assembly.joints[joint].receives]);
      }
  };
  check_each(FeatureKind::mortise, check_mortise);
  check_each(FeatureKind::dowel_hole, check_hole);
  check_each(FeatureKind::spline_slot, check_slot);
  for (const Piece& piece : pieces)
    for (const Feature& feature : piece.features)
      if (houses_an_end(bench, feature)) check_housing(bench, feature.joints.front(), feature);
  for (std::size_t number = 0; number < pieces.size(); ++number)
    check_grooves(bench, number, voids[number]);
  for (std::size_t number = 0; number < pieces.size(); ++number)
    check_rebates(bench, number);
  for (std::size_t number = 0; number < pieces.size(); ++number)
    check_mouldings(bench, number, voids[number]);
}

std::vector<const Rule*> rules_of_walls() {
  return {&kWall,          &kTwinWall,   &kEdge,       &kBehind,   &kEnd,        &kBetween,
          &kHousingBehind, &kHousingEnd, &kGroove,     &kRebate,   &kMoulding,   &kSlotWall,
          &kSlotEdge,      &kHoleWall,   &kHoleBehind, &kHoleEdge, &kHoleGroove, &kHoleBetween};
}

}  // namespace haunch
