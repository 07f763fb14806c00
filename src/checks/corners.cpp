#include "corners.h"

#include <algorithm>
#include <numbers>
#include <optional>
#include <utility>
#include <variant>

#include "swung.h"

namespace haunch {
namespace {

constexpr Rule kClear{"corner-clear", "of wood in that of the run that goes through the corner",
                      "two runs cannot stand in one place"};
constexpr Rule kOpens{"corner-opens",
                      "of it, as it opens, in fronts and handles of the run in the corner",
                      "the filler in the corner lets what opens beside it pass the other run's "
                      "handles: for a drawer it is wider by so much; a door may hang the other "
                      "way"};
constexpr Rule kPassed{"corner-passed",
                       "of a front of the run in the corner, as that opens, in this or its handle",
                       "the filler beside the blind part there lets its fronts pass the handles "
                       "here: for a drawer it is wider by so much; a door may hang the other way"};

/// Wood, and a box that holds it.
struct Roomed {
  Wood wood;
  Box room;
};

/// Of one run, in the axes of the run that is checked.
struct Shut {
  std::size_t piece = 0;  // or that which its handle is on
  Roomed wood;
};
struct Opening {
  std::size_t named = 0;
  std::vector<Roomed> places;  // that it goes through
};
struct RunInCorner {
  std::vector<Shut> shut;
  std::vector<Opening> openings;
};

Roomed roomed(const Box& box) {
  return {{{box}, {}}, box};
}
Roomed roomed(const Prism& prism) {
  return {{{}, polyhedra_of(prism)}, bounds_of(prism)};
}

/// In front of all of a drawer's front, as nothing says where on it a handle is.
Box shut_handle(const OpenedFront& front, Length handle) {
  if (front.fit.swing() != nullptr) return handle_of(front, handle);
  Box box = front.box;
  box.high[2] = box.low[2];
  box.low[2] -= handle;
  return box;
}

/// From where it is shut to where it is out, with its handle.
Box drawn_way(const OpenedFront& front, Length handle) {
  const auto& slide = std::get<Slide>(front.fit.moves);
  const auto axis = static_cast<std::size_t>(slide.along);
  Box box = front.box;
  box.low[axis] = std::min(box.low[axis], box.low[axis] + slide.by);
  box.high[axis] = std::max(box.high[axis], box.high[axis] + slide.by);
  box.low[2] -= handle;
  return box;
}

class CornerSide {
 public:
  CornerSide(const Assembly& assembly, const std::vector<OpenedFront>& fronts, Length handle,
             const Place& place)
      : assembly_(assembly), fronts_(fronts), handle_(handle), place_(place) {}

  RunInCorner in_corner() {
    for (std::size_t i = 0; i < assembly_.pieces.size(); ++i) {
      Piece piece = assembly_.pieces[i];
      piece.place = placed(piece.place, place_);
      Solid solid = solid_of(piece, Fittings::let_in);
      its_.shut.push_back({i, {std::move(solid.wood), solid.blank}});
    }
    for (const OpenedFront& front : fronts_)
      add_front(front);
    return std::move(its_);
  }

 private:
  void add_front(const OpenedFront& front) {
    if (handle_ > Length())
      its_.shut.push_back({front.named, roomed(placed(shut_handle(front, handle_), place_))});
    Opening opening{front.named, {}};
    const Swing* swing = front.fit.swing();
    if (swing == nullptr)
      opening.places.push_back(roomed(placed(drawn_way(front, handle_), place_)));
    for (int step = 1; swing != nullptr && step <= kSwingSteps; ++step) {
      const double angle = std::numbers::pi / 2 * step / kSwingSteps;
      opening.places.push_back(roomed(placed(turned(front.box, *swing, angle), place_)));
      if (handle_ > Length())
        opening.places.push_back(
            roomed(placed(turned(handle_of(front, handle_), *swing, angle), place_)));
    }
    its_.openings.push_back(std::move(opening));
  }

  const Assembly& assembly_;
  const std::vector<OpenedFront>& fronts_;
  Length handle_;
  Place place_;
  RunInCorner its_;
};

Length deep_in(const Roomed& one, const Roomed& other) {
  return interiors_meet(one.room, other.room) ? depth_of_common(one.wood, other.wood) : Length();
}

/// The piece that something stands in deepest.
struct Deepest {
  Length deep;
  std::optional<std::size_t> piece;
};
Deepest deepest(const std::vector<Roomed>& places, const std::vector<Shut>& all) {
  Deepest most;
  for (const Shut& shut : all)
    for (const Roomed& place : places) {
      const Length deep = but_rounding(deep_in(place, shut.wood));
      if (deep > most.deep) most = {deep, shut.piece};
    }
  return most;
}

void check_at_rest(Bench& bench, const Bench& other, const Place& place) {
  Deepest most;
  for (const Piece& each : other.assembly.pieces) {
    Piece piece = each;
    piece.place = placed(piece.place, place);
    const Solid there = solid_of(piece, Fittings::let_in);
    for (std::size_t i = 0; i < bench.solids.size(); ++i) {
      if (!interiors_meet(there.blank, bench.solids[i].blank)) continue;
      const Length deep = but_rounding(depth_of_common(there, bench.solids[i]));
      if (deep > most.deep) most = {deep, i};
    }
  }
  std::vector<std::size_t> parts;
  if (most.piece) parts.push_back(*most.piece);
  report(bench, kClear, std::move(parts), {}, most.deep, Bounds{{}, Length(), {}, {}});
}

void check_corner(Bench& bench, const std::vector<OpenedFront>& fronts, Length handle,
                  const ThroughRun& through, const Place& place) {
  const Bench other{through.wood, bench.limits, solids_of(through.wood), {}, {}, {}};
  const std::vector<OpenedFront> its_fronts = opened_fronts(other);
  check_at_rest(bench, other, place);
  const RunInCorner own = CornerSide(bench.assembly, fronts, handle, Place()).in_corner();
  const RunInCorner its = CornerSide(through.wood, its_fronts, through.handle, place).in_corner();
  for (const Opening& opening : own.openings)
    report(bench, kOpens, {opening.named}, {}, deepest(opening.places, its.shut).deep,
           Bounds{{}, Length(), {}, {}});
  for (const Opening& opening : its.openings) {
    const Deepest most = deepest(opening.places, own.shut);
    std::vector<std::size_t> parts;
    if (most.piece) parts.push_back(*most.piece);
    report(bench, kPassed, std::move(parts), {}, most.deep, Bounds{{}, Length(), {}, {}});
  }
}

}  // namespace

void check_corners(Bench& bench, const std::vector<OpenedFront>& fronts,
                   const Surroundings& around) {
  for (const ThroughRun& through : around.corners)
    check_corner(bench, fronts, around.handle, through, place_in_corner(through, around.planes));
}

std::vector<const Rule*> rules_of_corners() {
  return {&kClear, &kOpens, &kPassed};
}

}  // namespace haunch
