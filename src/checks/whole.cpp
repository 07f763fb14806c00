// The whole: no two pieces share wood, the pieces add up to the leaf, its face has no hole, it fits
// its opening.
#include <algorithm>
#include <array>
#include <numeric>
#include <set>
#include <utility>

#include "family.h"
#include "seasons.h"

namespace haunch {
namespace {

constexpr Rule kShared{"fouling", "of one piece inside another",
                       "two pieces cannot be in one place"};
constexpr Rule kWidth{"leaf-width", "from edge to edge of the wood",
                      "the pieces must add up to the leaf"};
constexpr Rule kHeight{"leaf-height", "from foot to head of the wood",
                       "the pieces must add up to the leaf"};
constexpr Rule kFlush{"panel-flush", "of panel standing proud of the frame",
                      "a panel that stands proud catches and cannot be stacked or planed flush"};
constexpr Rule kHole{"face-closed", "of gap seen through the leaf",
                     "between frame and panels no light must come through"};
constexpr Rule kOpeningWidth{"opening-width", "between leaf and opening, both sides together",
                             "a leaf larger than its opening cannot be hung"};
constexpr Rule kOpeningHeight{"opening-height", "between leaf and opening, head and foot together",
                              "a leaf larger than its opening cannot be hung"};

constexpr Rule kArchedHead{"opening-arch",
                           "between leaf and opening along the arch, measured upright",
                           "a leaf larger than its opening cannot be hung"};

// Of what leaves hang in.
constexpr Rule kFrameWidth{"frame-width", "over the jambs", "the pieces must add up to the frame"};
constexpr Rule kFrameHeight{"frame-height", "from the frame's foot to its top",
                            "the pieces must add up to the frame"};
constexpr Rule kFrameFlush{"frame-flush", "of wood standing out of the frame, face or back",
                           "what stands proud of a frame is in the way of plaster and casings"};
constexpr Rule kFrameHole{"frame-closed", "of gap seen through the frame beside its way through",
                          "where nothing is meant to be open no light must come through"};
constexpr Rule kThresholdEnds{"threshold-ends", "of gap beside an end of the threshold",
                              "a hole beside a threshold lets draught and water in"};
constexpr Rule kWay{"way-clear", "of wood standing in the way through",
                    "between the stops nothing may stand in the way"};
constexpr Rule kWallWidth{"wall-width", "between frame and wall, both sides together",
                          "a frame larger than its opening does not go in"};
constexpr Rule kWallHeight{"wall-height", "between frame and wall, head and foot together",
                           "a frame larger than its opening does not go in"};

// Of cabinets, and of what they are made of.
constexpr std::string_view kAddsUp = "the pieces must add up to the size over all";
constexpr Rule kOverallWidth{"overall-width", "from edge to edge of the wood", kAddsUp};
constexpr Rule kOverallHeight{"overall-height", "from the lowest of the wood to its top", kAddsUp};
constexpr Rule kOverallDepth{"overall-depth", "from the front of the wood to its back", kAddsUp};
constexpr Rule kOverallHole{"overall-closed", "of gap seen through from front to back",
                            "where nothing is meant to be open nothing must be seen through"};
constexpr Rule kOpening{"opening-clear", "of wood standing in an opening",
                        "what closes an opening is made to its whole width and height"};

/// The rules of a whole, in the words of what it is.
struct WholeRules {
  const Rule &width, &height;
  const Rule* flush;  // of what has a size that is to be kept within from face to back
  const Rule* depth;  // of what has one that its pieces must add up to
  const Rule &hole, &way, &opening_width, &opening_height;
  bool play_shows;  // that of a housing, where its piece goes in
};
constexpr WholeRules kOfLeaf{kWidth, kHeight,       &kFlush,        nullptr, kHole,
                             kWay,   kOpeningWidth, kOpeningHeight, false};
constexpr WholeRules kOfFrame{kFrameWidth, kFrameHeight, &kFrameFlush, nullptr, kFrameHole,
                              kWay,        kWallWidth,   kWallHeight,  true};
constexpr WholeRules kOfCase{kOverallWidth,  kOverallHeight, nullptr,
                             &kOverallDepth, kOverallHole,   kOpening,
                             kOpeningWidth,  kOpeningHeight, true};

const WholeRules& rules_for(const Assembly& assembly) {
  if (assembly.whole().kind >= GroupKind::cabinet) return kOfCase;
  const Fit* fit = fit_in_opening(assembly);
  return fit != nullptr && fit->stands == StandsIn::wall ? kOfFrame : kOfLeaf;
}

constexpr std::string_view kBinds = "a leaf that swells binds in its opening";
constexpr Rule kSideLeft{"opening-left", "between leaf and opening, left", kBinds};
constexpr Rule kSideRight{"opening-right", "between leaf and opening, right", kBinds};
constexpr Rule kSideHead{"opening-head", "between leaf and opening, head", kBinds};
constexpr Rule kSideFoot{"opening-foot", "between leaf and opening, foot", kBinds};

// Of what slides in its opening, and stands on what it runs on.
constexpr std::string_view kSticks =
    "a drawer that swells sticks: in the wettest month 1/32 in (1 mm) is to be left (trade "
    "practice)";
constexpr Rule kSlideSides{"drawer-sides", "between drawer and opening, both sides together",
                           kSticks};
constexpr Rule kSlideHead{"drawer-head", "between drawer and opening, above", kSticks};

/// The pairs of pieces whose blanks meet, found by sweeping along x.
std::vector<std::array<std::size_t, 2>> meeting_pairs(const std::vector<Solid>& solids) {
  std::vector<std::size_t> order(solids.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return solids[a].blank.low[0] < solids[b].blank.low[0];
  });
  std::vector<std::array<std::size_t, 2>> pairs;
  for (std::size_t i = 0; i < order.size(); ++i) {
    const Box& blank = solids[order[i]].blank;
    for (std::size_t j = i + 1; j < order.size() && solids[order[j]].blank.low[0] < blank.high[0];
         ++j)
      if (interiors_meet(blank, solids[order[j]].blank))
        pairs.push_back({std::min(order[i], order[j]), std::max(order[i], order[j])});
  }
  std::sort(pairs.begin(), pairs.end());
  return pairs;
}

void check_shared(Bench& bench) {
  const Bounds none{{}, Length(), {}, {}};
  // A pin that draws is bent by the tenon that it is driven through: see check_pins.
  std::set<std::array<std::size_t, 2>> drawn;
  for (const Joint& joint : bench.assembly.joints)
    if (joint.design.draw) drawn.insert({joint.receives, joint.enters});
  bool clean = true;
  for (const auto& [a, b] : meeting_pairs(bench.solids)) {
    if (drawn.contains({a, b})) continue;
    const Length shared = depth_of_common(bench.solids[a], bench.solids[b]);
    if (shared == Length()) continue;
    clean = false;
    report(bench, kShared, {a, b}, {}, shared, none);
  }
  if (clean) report(bench, kShared, {}, {}, Length(), none);
}

/// Whether a hole is open to the outside of the face: where rails have shrunk below the ends of
/// their stiles.
bool reaches_edge(const Box& hole, const Box& face) {
  return hole.low[0] == face.low[0] || hole.low[1] == face.low[1] || hole.high[0] == face.high[0] ||
         hole.high[1] == face.high[1];
}

/// Where light comes through between the two leaves of a pair, as it should: all along where they
/// meet square; where they lap, at the ends that lips leave open before the frame.
std::vector<Box> gaps_of_pair(const Bench& bench, const Fit& meeting) {
  const Neighbours pair = neighbours_of(bench.assembly, meeting);
  const Box left = placed_blanks(bench.assembly, pair.left);
  const Box right = placed_blanks(bench.assembly, pair.right);
  const Length room = meeting.room.across();
  Box gap = around(left, right);
  gap.low[0] = std::min(left.high[0], right.low[0] - room);
  gap.high[0] = std::max(right.low[0], left.high[0] + room);
  if (left.high[0] < right.low[0]) return {gap};
  const Fit* fit = fit_in_opening(bench.assembly);
  if (fit == nullptr || fit->meets != Meets::rebate) return {};
  const Box opening = opening_of(*fit);
  Box above = gap;
  above.low[1] = opening.high[1] - fit->room.head;
  gap.high[1] = opening.low[1] + fit->room.foot;
  return {gap, above};
}

/// Where nothing closes the face, as it should be.
std::vector<Box> open_in(const Bench& bench) {
  std::vector<Box> open = bench.assembly.open;
  for (const Fit* meeting : fits_that_stand(bench.assembly, StandsIn::beside))
    for (const Box& gap : gaps_of_pair(bench, *meeting))
      open.push_back(gap);
  return open;
}

/// Whether something of `open` may lie before or behind a block.
bool is_open_at(const Wood& open, const Polyhedron& block) {
  const auto meets = [&](const Spot& low, const Spot& high) {
    return low[0] <= block.high[0] && block.low[0] <= high[0] && low[1] <= block.high[1] &&
           block.low[1] <= high[1];
  };
  const auto spot = [](const Triple& place) {
    return Spot{static_cast<double>(place[0].steps()), static_cast<double>(place[1].steps()), 0};
  };
  return std::any_of(open.boxes.begin(), open.boxes.end(),
                     [&](const Box& part) { return meets(spot(part.low), spot(part.high)); }) ||
         std::any_of(open.sloping.begin(), open.sloping.end(),
                     [&](const Polyhedron& part) { return meets(part.low, part.high); });
}

/// What wood does not cover, as deep as all of `open`. Boxes come first: they mostly leave nothing
/// for what slopes.
void take_out_shadows(Wood& open, const std::vector<Solid>& solids, Length deep) {
  for (const Solid& solid : solids)
    for (Box shadow : solid.wood.boxes) {
      shadow.low[2] = Length();
      shadow.high[2] = deep;
      take_out(open, shadow);
    }
  for (const Solid& solid : solids)
    for (const Polyhedron& block : solid.wood.sloping) {
      if (open.empty()) return;
      if (!is_open_at(open, block)) continue;
      for (const Polyhedron& shadow : shadows_of(block, 2, 0, static_cast<double>(deep.steps())))
        take_out(open, shadow);
    }
}

/// Takes out what lies beyond an outline of the whole. Wood that has moved ends elsewhere: then all
/// that is near the outline too, by more than wood moves, and less than any member is wide.
void take_out_beyond(Wood& open, const Prism& beyond, Length deep, bool moved) {
  if (!moved) return take_out(open, {beyond.along, Length(), deep, beyond.outline});
  const Length off = Length::from_mm(10);
  Box top{{beyond.outline.front().u, beyond.outline.front().v, Length()},
          {beyond.outline.front().u, beyond.outline.front().v, deep}};
  for (const Corner& corner : beyond.outline) {
    top.low[0] = std::min(top.low[0], corner.u - off);
    top.high[0] = std::max(top.high[0], corner.u + off);
    top.high[1] = std::max(top.high[1], corner.v + off);
  }
  top.low[1] = top.high[1] - off * 2;
  take_out(open, top);
  for (const Length across : {-off, Length(), off}) {
    std::vector<Corner> outline = beyond.outline;
    for (Corner& corner : outline)
      corner = {corner.u + across, corner.v - off};
    take_out(open, {beyond.along, Length(), deep, std::move(outline)});
  }
}

/// The largest hole seen from the face side: the lesser side of the largest rectangle that no wood
/// covers, or the least width of a hole that slopes.
Length widest_hole(const Bench& bench, const std::vector<Solid>& solids, const Box& face) {
  const Length none;
  const Length deep = face.extent(0) + face.extent(1);  // so that no hole is less deep than wide
  Wood open{{Box{{face.low[0], face.low[1], none}, {face.high[0], face.high[1], deep}}}, {}};
  for (Box way : open_in(bench)) {
    way.low[2] = none;
    way.high[2] = deep;
    take_out(open, way);
  }
  for (const Prism& prism : bench.assembly.beyond)
    take_out_beyond(open, prism, deep, bench.moisture.has_value());
  take_out_shadows(open, solids, deep);
  Length widest;
  const auto is_outside = [&](const Box& hole) {
    return bench.moisture && reaches_edge(hole, face);
  };
  for (const Box& hole : open.boxes)
    if (!is_outside(hole)) widest = std::max(widest, std::min(hole.extent(0), hole.extent(1)));
  for (const Polyhedron& hole : open.sloping)
    if (!is_outside(room_of(Wood{{}, {hole}}))) widest = std::max(widest, least_width(hole));
  return widest;
}

/// Wood in two places at once, but for pieces that are joined: what they leave each other is
/// measured joint by joint; so is what leaves leave each other and their frame. Planted ones give
/// way, as do beads, which are sprung in; wedges are driven in so that they press.
void check_moved_shared(Bench& bench) {
  std::set<std::array<std::size_t, 2>> joined;
  for (const Joint& joint : bench.assembly.joints)
    joined.insert({std::min(joint.receives, joint.enters), std::max(joint.receives, joint.enters)});
  std::vector<bool> gives_way(bench.solids.size(), true);
  for (const Joint& joint : bench.assembly.joints)
    gives_way[joint.receives] = gives_way[joint.enters] = false;
  for (std::size_t piece = 0; piece < bench.solids.size(); ++piece) {
    const Role role = bench.assembly.pieces[piece].role;
    if (role == Role::wedge || role == Role::bead) gives_way[piece] = true;
  }
  for (const auto& pair : meeting_pairs(bench.solids)) {
    if (joined.contains(pair) || gives_way[pair[0]] || gives_way[pair[1]] ||
        hanging_of(bench.assembly, pair[0]) != hanging_of(bench.assembly, pair[1]))
      continue;
    const Length shared = depth_of_common(bench.solids[pair[0]], bench.solids[pair[1]]);
    if (shared != Length())
      report(bench, kShared, {pair[0], pair[1]}, {}, shared, Bounds{{}, Length(), {}, {}});
  }
}

/// How far wood stands in what should be open.
void check_way(Bench& bench) {
  Length most;
  for (const Box& way : bench.assembly.open)
    for (const Solid& solid : bench.solids)
      most = std::max(most, depth_of_common(solid.wood, {{way}, {}}));
  report(bench, rules_for(bench.assembly).way, {}, {}, most, Bounds{{}, Length(), {}, {}});
}

/// The widest place beside the ends of a threshold, as high and as deep as it is, that no wood
/// closes.
Length widest_beside_ends(const Bench& bench, std::size_t threshold) {
  Box strip = bench.solids[threshold].blank;
  strip.low[0] = Length();
  strip.high[0] = bench.assembly.size[0];
  std::vector<Box> open{strip};
  for (const Solid& solid : bench.solids)
    for (const Box& wood : solid.wood.boxes)
      take_out(open, wood);
  Length widest;
  for (const Box& hole : open)
    widest = std::max(widest, hole.extent(0));
  return widest;
}

void check_threshold(Bench& bench) {
  for (std::size_t number = 0; number < bench.solids.size(); ++number)
    if (bench.assembly.pieces[number].role == Role::threshold)
      report(bench, kThresholdEnds, {number}, {}, widest_beside_ends(bench, number),
             Bounds{{}, Length(), {}, {}});
}

/// From the leaf's wood up to the arch over its opening, where it is least; of a leaf with a lip
/// from that behind it.
void check_arched_head(Bench& bench, const Fit& fit, const Bounds& bounds) {
  std::vector<Corner> outline = fit.arch;
  Length top;
  for (const Corner& corner : outline)
    top = std::max(top, corner.v + Length::from_mm(1));
  outline.push_back({outline.back().u, top});
  outline.push_back({outline.front().u, top});
  const Wood above{{}, polyhedra_of({2, Length(), bench.assembly.size[2], outline})};
  std::optional<Length> least;
  for (const Solid& solid : bench.solids) {
    Box behind = solid.blank;
    behind.low[2] = std::max(behind.low[2], fit.lip);
    const Wood body = fit.lip > Length() ? clipped(solid.wood, behind) : solid.wood;
    if (const auto room = gap(body, above, {1, true}); room && (!least || *room < *least))
      least = room;
  }
  report(bench, kArchedHead, {}, {}, least, bounds);
}

void check_opening(Bench& bench, const Fit& fit) {
  if (fit.meets == Meets::overlay) return;
  const Box wood = room_in_opening(bench.solids, fit);
  const WholeRules& rules = rules_for(bench.assembly);
  report(bench, rules.opening_width, {}, {}, fit.width - wood.extent(0),
         Bounds{fit.room.across(), {}, {}, {}});
  report(bench, rules.opening_height, {}, {}, fit.height - wood.extent(1),
         Bounds{fit.room.upright(), {}, {}, {}});
  if (!fit.arch.empty()) check_arched_head(bench, fit, {fit.room.head, {}, {}, {}});
}

/// The groups that hang in another, or meet; none of a leaf or frame by itself.
std::vector<std::size_t> leaves_of(const Assembly& assembly) {
  std::vector<std::size_t> leaves;
  for (const Fit* hung : fits_that_stand(assembly, StandsIn::group))
    leaves.push_back(hung->group);
  if (!leaves.empty()) return leaves;
  for (const Fit* meeting : fits_that_stand(assembly, StandsIn::beside)) {
    const Neighbours pair = neighbours_of(assembly, *meeting);
    leaves.insert(leaves.end(), {pair.left, pair.right});
  }
  return leaves;
}

bool is_mitred(const Assembly& assembly) {
  return std::any_of(assembly.joints.begin(), assembly.joints.end(),
                     [](const Joint& joint) { return joint.kind == JointKind::mitre; });
}

/// Holes in the leaf, or in each of those that hang or meet; not those beside them. Mitres stand
/// open here as far as they would if no spline and glue held them, which is doubtful at worst.
void check_moved_holes(Bench& bench) {
  const Length most = bench.limits.shut_shoulder;
  const Bounds bounds =
      is_mitred(bench.assembly) ? Bounds{{}, {}, {}, most} : Bounds{{}, most, {}, {}};
  const auto tell = [&](const std::vector<Solid>& solids, std::vector<std::size_t> parts) {
    report(bench, kHole, std::move(parts), {}, widest_hole(bench, solids, bounds_of_wood(solids)),
           bounds);
  };
  const std::vector<std::size_t> leaves = leaves_of(bench.assembly);
  if (leaves.empty()) tell(bench.solids, {});
  for (const std::size_t leaf : leaves) {
    std::vector<Solid> solids;
    for (const std::size_t piece : pieces_of(bench.assembly, leaf))
      solids.push_back(bench.solids[piece]);
    tell(solids, {first_of(bench.assembly, leaf)});
  }
}

/// From face to back, without what lies on the face: the lips of hung leaves, fronts.
Length depth_but_lips(const Bench& bench, const Box& wood) {
  const std::vector<Fit>& fits = bench.assembly.fits;
  const bool lips = std::any_of(fits.begin(), fits.end(), [](const Fit& it) {
    return (it.stands == StandsIn::group && it.meets == Meets::rebate) ||
           (it.stands == StandsIn::front && it.meets == Meets::overlay);
  });
  return lips ? wood.high[2] - std::max(wood.low[2], Length()) : wood.extent(2);
}

}  // namespace

/// Half of the play at the sides may go; above, a drawer takes what it was given for the season.
void report_moved_slide(Bench& bench, const SideGaps& gaps, const Fit& fit,
                        std::optional<std::size_t> front) {
  const std::vector<std::size_t> parts =
      front ? std::vector<std::size_t>{*front} : std::vector<std::size_t>{};
  report(bench, kSlideSides, parts, {}, gaps.left + gaps.right,
         Bounds{Length(), {}, floor_half(fit.room.across()), {}});
  report(bench, kSlideHead, parts, {}, gaps.head,
         Bounds{Length(), {}, bench.limits.least_at_side, {}});
}

void check_moved_whole(Bench& bench, const Assembly& built) {
  check_moved_shared(bench);
  check_moved_holes(bench);
  const Fit* fit = fit_in_opening(built);
  if (fit == nullptr || fit->meets == Meets::overlay ||
      !fits_that_stand(built, StandsIn::group).empty())
    return;
  if (std::holds_alternative<Slide>(fit->moves))
    report_moved_slide(bench, side_gaps(bench.solids, *fit), *fit, {});
  else
    report_moved_sides(bench, side_gaps(bench.solids, *fit), {}, Beside::opening, Beside::opening);
  if (!fit->arch.empty())
    check_arched_head(bench, *fit, {Length(), {}, bench.limits.least_at_side, {}});
}

void report_moved_sides(Bench& bench, const SideGaps& gaps, std::optional<std::size_t> leaf,
                        Beside left, Beside right) {
  const std::vector<std::size_t> parts =
      leaf ? std::vector<std::size_t>{*leaf} : std::vector<std::size_t>{};
  const auto tell = [&](const Rule& rule, Length gap) {
    report(bench, rule, parts, {}, gap, Bounds{Length(), {}, bench.limits.least_at_side, {}});
  };
  if (left == Beside::opening) tell(kSideLeft, gaps.left);
  if (right == Beside::opening) tell(kSideRight, gaps.right);
  tell(kSideHead, gaps.head);
  tell(kSideFoot, gaps.foot);
}

SideGaps side_gaps(const std::vector<Solid>& solids, const Fit& fit) {
  const Box wood = room_in_opening(solids, fit);
  const Box opening = opening_of(fit);
  return {wood.low[0] - opening.low[0], opening.high[0] - wood.high[0],
          opening.high[1] - wood.high[1], wood.low[1] - opening.low[1]};
}

Box bounds_of_wood(const std::vector<Solid>& solids) {
  std::optional<Box> bounds;
  for (const Solid& solid : solids) {
    if (solid.wood.empty()) continue;
    const Box room = room_of(solid.wood);
    bounds = bounds ? around(*bounds, room) : room;
  }
  return bounds.value_or(solids.front().blank);
}

/// How far the corner of a leaf that is planed to its opening may stand back from the box round it:
/// both edges that meet there are planed.
Length planed_corners(const Assembly& assembly) {
  const Fit* fit = fit_in_opening(assembly);
  const bool follows = fit != nullptr && fit->found && fit->found->follow;
  return follows ? Length::from_mm_thousandths(100) : Length();
}

void check_whole(Bench& bench) {
  check_shared(bench);
  const Box wood = bounds_of_wood(bench.solids);
  const Triple& size = bench.assembly.size;
  const Length planed = planed_corners(bench.assembly);
  const auto exactly = [&](Length length) { return Bounds{length - planed, length, {}, {}}; };
  const WholeRules& rules = rules_for(bench.assembly);
  report(bench, rules.width, {}, {}, wood.extent(0), exactly(size[0]));
  report(bench, rules.height, {}, {}, wood.extent(1), exactly(size[1]));
  if (rules.flush != nullptr)
    report(bench, *rules.flush, {}, {}, std::max(depth_but_lips(bench, wood) - size[2], Length()),
           Bounds{{}, {}, {}, Length()});
  if (rules.depth != nullptr)
    report(bench, *rules.depth, {}, {}, depth_but_lips(bench, wood), exactly(size[2]));
  const Box face{{Length(), Length(), Length()}, size};
  const Limits& limits = bench.limits;
  report(bench, rules.hole, {}, {}, widest_hole(bench, bench.solids, face),
         rules.play_shows ? Bounds{{}, limits.least_wood, {}, limits.loosest_fit}
                          : Bounds{{}, Length(), {}, {}});
  if (!bench.assembly.open.empty()) check_way(bench);
  check_threshold(bench);
  if (const Fit* fit = fit_in_opening(bench.assembly)) check_opening(bench, *fit);
}

std::vector<const Rule*> rules_of_whole() {
  return {&kShared,       &kWidth,         &kHeight,       &kFlush,         &kHole,
          &kOpeningWidth, &kOpeningHeight, &kArchedHead,   &kSideLeft,      &kSideRight,
          &kSideHead,     &kSideFoot,      &kSlideSides,   &kSlideHead,     &kFrameWidth,
          &kFrameHeight,  &kFrameFlush,    &kFrameHole,    &kThresholdEnds, &kWay,
          &kWallWidth,    &kWallHeight,    &kOverallWidth, &kOverallHeight, &kOverallDepth,
          &kOverallHole,  &kOpening};
}

}  // namespace haunch
