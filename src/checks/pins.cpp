// Pins through tenons: that they draw the right way, and the wood that their holes leave in tenon
// and cheeks.
#include <algorithm>

#include "family.h"

namespace haunch {
namespace {

constexpr Rule kDraw{
    "pin-draw", "that the tenon's hole stands nearer to its shoulder than the mortise's",
    "a pin pulls the joint home where the tenon's hole stands nearer to its "
    "shoulder, and pushes it open where it stands further off; over a third of "
    "the pin it splits the tenon (1/8 in with a pin of 3/8 in: Fairham 1917)",
    false, "that the tenon's hole stands further from its shoulder than the mortise's"};
constexpr Rule kShear{"pin-shear", "of tenon between its pin's hole and its end",
                      "with less than the pin is thick the pin tears it out (trade practice)"};
constexpr Rule kRoot{"pin-root", "of tenon between its pin's hole and its shoulder",
                     "under 3 mm it breaks off as the hole is bored (trade practice)"};
constexpr Rule kBeside{"pin-beside", "of tenon beside its pin's hole",
                       "a pin wants as much wood at each side as it is thick and a half: it is at "
                       "most a quarter of its tenon (shop rule)"};
constexpr Rule kCheek{"pin-cheek", "of cheek between the pin's hole and the sight edge",
                      "with less than the pin is thick the cheek splits: its middle wants 1 1/2 to "
                      "2 pins from the shoulder (trade practice)"};
constexpr Rule kWall{"pin-wall", "of cheek between the pin's hole and what is cut beside it",
                     "under 5 mm it breaks out as it is bored (trade practice)"};
constexpr Rule kBehind{"pin-behind", "of wood behind the pin's hole",
                       "under 5 mm the bottom telegraphs or breaks through (trade practice)"};

/// A pin's hole in one piece, layer by layer of the wood that it goes through, in the assembly.
struct Hole {
  std::size_t piece = 0;
  const Feature* feature = nullptr;
  std::vector<Box> layers;

  Length middle(std::size_t axis) const {
    return floor_half(layers.front().low[axis] + layers.front().high[axis]);
  }
};

std::optional<Hole> hole_of(const Assembly& wood, std::size_t joint) {
  const std::size_t number = wood.joints[joint].receives;
  const Piece& piece = wood.pieces[number];
  for (const Feature& feature : piece.features) {
    if (feature.kind != FeatureKind::pin_hole || feature.joints != std::vector{joint}) continue;
    Hole hole{number, &feature, {}};
    for (const Prism& prism : feature.prisms)
      hole.layers.push_back(bounds_of(placed(prism, piece.place)));
    return hole;
  }
  return {};
}

/// A pin with its holes in a tenon and in the cheeks of its mortise, and the joint of those two.
struct Pinned {
  std::size_t joint;  // of the pin and the tenon
  Hole tenon, cheeks;
  Way in;       // the way the tenon goes into its mortise
  Length line;  // of its shoulder, past the sight edge
};

std::optional<Pinned> pinned(const Bench& bench, std::size_t number) {
  const Assembly& wood = bench.assembly;
  const Joint& of_tenon = wood.joints[number];
  for (std::size_t other = 0; other < wood.joints.size(); ++other) {
    const Joint& of_cheeks = wood.joints[other];
    if (other == number || of_cheeks.enters != of_tenon.enters) continue;
    const auto main = std::find_if(wood.joints.begin(), wood.joints.end(), [&](const Joint& it) {
      return it.receives == of_cheeks.receives && it.enters == of_tenon.receives && it.tenon;
    });
    const auto tenon = hole_of(wood, number);
    const auto cheeks = hole_of(wood, other);
    if (main == wood.joints.end() || !tenon || !cheeks) return {};
    const auto held = static_cast<std::size_t>(main - wood.joints.begin());
    return Pinned{number,
                  *tenon,
                  *cheeks,
                  {static_cast<std::size_t>(main->heading.axis), main->heading.upwards},
                  bench.measures[held].line};
  }
  return {};
}

/// A void of a piece: of what slopes the box around each part.
struct Void {
  const Feature* feature;
  Box box;
};

std::vector<Void> voids_of(const Piece& piece) {
  std::vector<Void> voids;
  for (const Feature& feature : piece.features) {
    if (feature.fitting) continue;
    for (const Box& box : bounds_of(taken_away(feature, piece.place)))
      voids.push_back({&feature, box});
  }
  return voids;
}

bool has_pin(const Piece& piece) {
  return std::any_of(piece.features.begin(), piece.features.end(),
                     [](const Feature& it) { return it.kind == FeatureKind::pin_hole; });
}

/// Those of each piece that has a pin, by its number.
using VoidsOfPieces = std::vector<std::vector<Void>>;

VoidsOfPieces voids_beside_pins(const Assembly& wood) {
  VoidsOfPieces voids;
  for (const Piece& piece : wood.pieces)
    voids.push_back(has_pin(piece) ? voids_of(piece) : std::vector<Void>());
  return voids;
}

/// From a hole on, this way, to the first other void or the face of the blank; of its layers the
/// least. A void that the hole runs into leaves none.
struct Runs {
  const Hole& hole;
  const Box& blank;
  const std::vector<Void>& voids;

  Runs(const Bench& bench, const Hole& of, const VoidsOfPieces& all)
      : hole(of), blank(bench.solids[of.piece].blank), voids(all[of.piece]) {}

  Length wood(Way way) const {
    std::optional<Length> least;
    for (const Box& layer : hole.layers) {
      Length run = way.upwards ? blank.high[way.axis] - layer.high[way.axis]
                               : layer.low[way.axis] - blank.low[way.axis];
      for (const Void& other : voids) {
        if (other.feature == hole.feature) continue;
        if (const auto to = gap(layer, other.box, way))
          run = std::min(run, std::max(Length(), *to));
      }
      least = least ? std::min(*least, run) : run;
    }
    return least.value_or(Length());
  }
};

void check_tenon_wood(Bench& bench, const Pinned& pin, const VoidsOfPieces& voids,
                      Length diameter) {
  const Limits& limits = bench.limits;
  const Runs runs(bench, pin.tenon, voids);
  const std::size_t across = 1 - pin.in.axis;
  const std::vector<std::size_t> parts{pin.tenon.piece};
  report(bench, kShear, parts, pin.joint, runs.wood(pin.in),
         Bounds{limits.least_wood, {}, diameter, {}});
  const Box& mortised = bench.solids[pin.cheeks.piece].blank;
  const Box& hole = pin.tenon.layers.front();
  const Length root = pin.in.upwards ? hole.low[pin.in.axis] - mortised.low[pin.in.axis]
                                     : mortised.high[pin.in.axis] - hole.high[pin.in.axis];
  report(bench, kRoot, parts, pin.joint, root - pin.line, Bounds{limits.least_wood, {}, {}, {}});
  report(bench, kBeside, parts, pin.joint,
         std::min(runs.wood({across, false}), runs.wood({across, true})),
         Bounds{limits.least_wood, {}, diameter + floor_half(diameter), {}});
}

void check_cheek_wood(Bench& bench, const Pinned& pin, const VoidsOfPieces& voids,
                      Length diameter) {
  const Limits& limits = bench.limits;
  const Runs runs(bench, pin.cheeks, voids);
  const std::size_t across = 1 - pin.in.axis;
  const std::vector<std::size_t> parts{pin.cheeks.piece};
  const Bounds thin{limits.least_wood, {}, limits.thin_wood, {}};
  report(bench, kCheek, parts, pin.joint, runs.wood({pin.in.axis, !pin.in.upwards}),
         Bounds{limits.least_wood, {}, diameter, {}});
  report(bench, kWall, parts, pin.joint,
         std::min({runs.wood(pin.in), runs.wood({across, false}), runs.wood({across, true})}),
         thin);
  const Length behind = runs.blank.high[2] - pin.cheeks.layers.back().high[2];
  if (behind > Length()) report(bench, kBehind, parts, pin.joint, behind, thin);
}

void check_pin(Bench& bench, std::size_t number, const VoidsOfPieces& voids) {
  const Joint& joint = bench.assembly.joints[number];
  const auto pin = pinned(bench, number);
  const std::vector<std::size_t> parts{joint.receives, joint.enters};
  if (!pin) return report(bench, kDraw, parts, number, {}, {});
  const Length diameter = pin->cheeks.layers.front().extent(0);
  const Length further = pin->cheeks.middle(pin->in.axis) - pin->tenon.middle(pin->in.axis);
  // Past half of the pin, holes that overlap by less do not let it through.
  const Length half = floor_half(diameter);
  const std::optional<Length> designed =
      *joint.design.draw <= half ? joint.design.draw : std::nullopt;
  report(bench, kDraw, parts, number, pin->in.upwards ? further : -further,
         Bounds{designed, designed.value_or(half), {}, floor_divide(diameter, 3)});
  check_tenon_wood(bench, *pin, voids, diameter);
  check_cheek_wood(bench, *pin, voids, diameter);
}

}  // namespace

void check_pins(Bench& bench) {
  const VoidsOfPieces voids = voids_beside_pins(bench.assembly);
  for (std::size_t number = 0; number < bench.assembly.joints.size(); ++number)
    if (bench.assembly.joints[number].design.draw) check_pin(bench, number, voids);
}

std::vector<const Rule*> rules_of_pins() {
  return {&kDraw, &kShear, &kRoot, &kBeside, &kCheek, &kWall, &kBehind};
}

}  // namespace haunch
