// How much shelves sag under what they carry.
#include <algorithm>
#include <cmath>
#include <numeric>
#include <string>

#include "checks.h"
#include "family.h"
#include "kind.h"
#include "materials.h"
#include "own_axes.h"
#include "rounding.h"
#include "stiffness.h"

namespace haunch {
namespace {

constexpr Rule kSag{
    "shelf-sag", "of sag in the middle, once the load has lain for long",
    "over 1/32 in per ft (2.6 mm in 1 m) of span it is seen; a load that stays adds half of the "
    "first sag in wood, more in sheets (Fine Woodworking 2007; NDS 3.5.2; EN 1995-1-1). Reckoned "
    "with free ends, which sag most"};

constexpr double kNewtonsPerKg = 9.81;
// Across the grain wood is about a twentieth as stiff as along it (Wood Handbook 2010, Table 5-1);
// plywood about half as stiff across the grain of its face.
constexpr double kAcrossWood = 0.05, kAcrossBoard = 0.5;

double in_mm(Length length) {
  return static_cast<double>(length.steps()) / static_cast<double>(Length::from_mm(1).steps());
}

/// Along x, which shelves span.
std::optional<Stiffness> stiffness_along(const Piece& piece, const Job& job) {
  const bool along_grain = piece.place.axes[0] == Axis::x;
  std::optional<Stiffness> found;
  double across = kAcrossBoard;
  switch (piece.matter) {
    case Matter::glass:
      return stiffness_of_glass();
    case Matter::board:
      found = stiffness_of_board(piece.material, in_mm(piece.blank[2]));
      break;
    case Matter::wood:
      across = kAcrossWood;
      if (const auto species = find_species(weighed_as(piece, job), job.woods))
        found = stiffness_of_species(species->name);
      break;
  }
  if (found && !along_grain) found->mpa *= across;
  return found;
}

/// A part of a section that bends: a shelf, or a strip on its edge. Places are from any one level.
struct Part {
  double wide, high, middle;  // mm
  double mpa;
};

/// Modulus of elasticity times second moment, about the neutral axis of all parts together, N mm2:
/// each as wide as its stiffness makes it beside the others (transformed section).
double bending_stiffness(const std::vector<Part>& parts) {
  double sum = 0, moments = 0;
  for (const Part& part : parts) {
    sum += part.mpa * part.wide * part.high;
    moments += part.mpa * part.wide * part.high * part.middle;
  }
  const double axis = moments / sum;
  double all = 0;
  for (const Part& part : parts) {
    const double off = part.middle - axis;
    all += part.mpa * (part.wide * std::pow(part.high, 3) / 12 + part.wide * part.high * off * off);
  }
  return all;
}

Part part_of(const Box& room, double mpa) {
  return {in_mm(room.extent(2)), in_mm(room.extent(1)), in_mm(room.low[1] + room.high[1]) / 2, mpa};
}

/// A shelf, and the strips that are glued to its edges as parts of its blank.
std::vector<Part> parts_of(const Piece& piece, const Box& blank, double mpa) {
  std::vector<Part> parts{part_of(blank, mpa)};
  for (const EdgeStrip& strip : piece.strips) {
    if (strip.along != 0) continue;
    const auto its = stiffness_of_board(strip.material, in_mm(piece.blank[2]));
    const auto wood = its ? its : stiffness_of_species(strip.material);
    Part part = parts.front();
    part.wide = in_mm(strip.thickness);
    if (wood) part.mpa = wood->mpa;
    parts.front().wide -= part.wide;
    parts.push_back(part);
  }
  return parts;
}

/// What is fixed along a shelf's front or rear edge, for most of its length.
std::vector<std::size_t> strips_on(const Bench& bench, std::size_t shelf) {
  std::vector<std::size_t> strips;
  for (const Joint& joint : bench.assembly.joints) {
    const bool on = joint.receives == shelf && joint.heading.axis == Axis::z;
    if (on && bench.solids[joint.enters].blank.extent(0) * 2 > bench.solids[shelf].blank.extent(0))
      strips.push_back(joint.enters);
  }
  return strips;
}

/// Between what its ends stand in.
Length span_of(const Bench& bench, std::size_t shelf) {
  Length span = bench.solids[shelf].blank.extent(0);
  for (std::size_t number = 0; number < bench.assembly.joints.size(); ++number) {
    const Joint& joint = bench.assembly.joints[number];
    if (joint.enters == shelf && joint.heading.axis == Axis::x)
      span -= bench.measures[number].reach;
  }
  return span;
}

/// A beam with free ends under an even load sags 5 F L^3 / (384 E I) in its middle (any book on
/// mechanics): F the whole load in N, L in mm, E I in N mm2. Creep adds its part of that. The
/// limit, a 384th of the span, is 1/32 in per ft.
void check_shelf(Bench& bench, std::size_t shelf, const Job& job) {
  const Piece& piece = bench.assembly.pieces[shelf];
  const auto its = stiffness_along(piece, job);
  if (!its) return;
  std::vector<Part> parts = parts_of(piece, bench.solids[shelf].blank, its->mpa);
  std::vector<std::size_t> named{shelf};
  for (const std::size_t strip : strips_on(bench, shelf))
    if (const auto stiffness = stiffness_along(bench.assembly.pieces[strip], job)) {
      parts.push_back(part_of(bench.solids[strip].blank, stiffness->mpa));
      named.push_back(strip);
    }
  const Length span = span_of(bench, shelf);
  const double first =
      5 * piece.load * kNewtonsPerKg * std::pow(in_mm(span), 3) / (384 * bending_stiffness(parts));
  const double steps = first * (1 + its->creep) * static_cast<double>(Length::from_mm(1).steps());
  report(bench, kSag, std::move(named), {}, nearest_step(steps),
         Bounds{{}, {}, {}, floor_divide(span, 384)});
}

}  // namespace

std::optional<Caution> shelves_not_looked_at(const Assembly& assembly, const Job& job) {
  std::vector<std::string> materials;
  for (const Piece& piece : assembly.pieces) {
    if (piece.load <= 0 || stiffness_along(piece, job)) continue;
    const std::string& material = weighed_as(piece, job);
    const std::string name = material.empty() ? "a wood that is not named" : material;
    if (std::find(materials.begin(), materials.end(), name) == materials.end())
      materials.push_back(name);
  }
  if (materials.empty()) return {};
  std::string words = "not looked at in shelves of ";
  for (const std::string& material : materials)
    words += (&material == &materials.front() ? "" : ", ") + material;
  return Caution{"shelf sag", words + ": how stiff it is is not known here"};
}

void check_shelves(Bench& bench, const Job& job) {
  for (std::size_t piece = 0; piece < bench.solids.size(); ++piece)
    if (bench.assembly.pieces[piece].load > 0) check_shelf(bench, piece, job);
}

std::vector<const Rule*> rules_of_shelves() {
  return {&kSag};
}

}  // namespace haunch
