// Leaves under arches, with every joint, edge and panel: asked of single places in their wood, no
// two pieces share one, and none is open from face to back.
#include <fmt/format.h>

#include <cmath>

#include "catch.h"
#include "property_runs.h"
#include "sloping_wood.h"

namespace haunch::test {
namespace {

constexpr double kHundredth = Length::kStepsPerMm / 100.0;

double steps(Length length) {
  return static_cast<double>(length.steps());
}

/// A leaf, or a pair, of round figures in which an arch has room.
class ArchedSpec {
 public:
  explicit ArchedSpec(std::uint64_t seed) : dice_(seed) {
    const char* at = pick({"underside", "top", "both"});
    pair_ = dice_.chance(30);
    const std::int64_t stile = dice_.between(95, 130);
    const std::int64_t rise = dice_.between(20, 90);
    const char* joint =
        pick({"haunched", "twin", "loose", "through", "bridle", "dowel", "half-lap"});
    text_ = fmt::format(
        R"({{"kind": "door", "units": "mm", "opening": {{"width": {}, "height": 2060}}, )"
        R"("thickness": 44, "stile_width": {}, "rail_widths": [{}, {}, 230], "leaves": {}, )"
        R"("arch": {{"at": "{}", "rise": {}}}, "joint": {{"corner": "{}"}}, "edge": {{"kind": )"
        R"("{}"}})",
        dice_.between(800, 1000) * (pair_ ? 2 : 1), stile, dice_.between(120, 220),
        dice_.between(120, 200), pair_ ? 2 : 1, at, rise, joint,
        pick({"square", "rebated", "coped", "mitred"}));
    text_ +=
        pick({"", "", R"(, "meets": "rebate", "lap": 12)", R"(, "meets": "overlay", "lap": 14)"});
    text_ += pick({"", R"(, "panel": {"raised": "front"})",
                   R"(, "panel": {"raised": "both", "raise": {"profile": "cove"}})",
                   R"(, "panel": {"kind": "glass", "thickness": 6})"});
    text_ += "}";
  }

  const std::string& text() const { return text_; }
  Dice& dice() { return dice_; }

 private:
  const char* pick(std::initializer_list<const char*> some) {
    return *(some.begin() + dice_.between(0, std::ssize(some) - 1));
  }

  Dice dice_;
  bool pair_ = false;
  std::string text_;
};

/// How many pieces have wood at a place.
int pieces_at(const Assembly& leaf, const Point& point) {
  int count = 0;
  for (const Piece& piece : leaf.pieces)
    count += holds(piece, point) ? 1 : 0;
  return count;
}

/// The pieces near the top corners, where arch, stile and what they hold meet.
struct Corners {
  double left, right, low, high;  // sight edges, and the height between which is looked
};

Corners corners_of(const Assembly& leaf) {
  Corners found{steps(leaf.size[0]), 0, 0, steps(leaf.size[1])};
  for (const Piece& piece : leaf.pieces) {
    const Box blank = placed_blank(piece);
    if (piece.role == Role::stile) {
      if (blank.low[0] < Length::from_mm(40)) found.left = steps(blank.high[0]);
      if (blank.high[0] > leaf.size[0] - Length::from_mm(40)) found.right = steps(blank.low[0]);
    }
    if (piece.role == Role::rail) found.low = std::max(found.low, steps(blank.low[1]));
  }
  return found;
}

/// Whether a place is in what an arched top leaves of the leaf's box.
bool is_beyond(const Assembly& leaf, double x, double y) {
  Piece air;
  air.blank = leaf.size;
  air.place.axes = {Axis::x, Axis::y, Axis::z};
  Feature taken;
  taken.prisms = leaf.beyond;
  air.features.push_back(taken);
  return !holds(air, {x, y, kHundredth});
}

bool between_leaves(const Assembly& leaf, double x) {
  const auto meetings = fits_that_stand(leaf, StandsIn::beside);
  if (meetings.empty()) return false;
  const double off = std::abs(x - steps(leaf.size[0]) / 2);
  return off < steps(meetings.front()->room.across()) + Length::kStepsPerMm;
}

std::string faults_at(const Assembly& leaf, double x, double y) {
  constexpr int kDepths = 24;
  const double last = steps(leaf.size[2]) - 2 * kHundredth;
  bool closed = false;
  for (int i = 0; i < kDepths; ++i) {
    const Point point{x, y, kHundredth + last * i / (kDepths - 1)};
    const int count = pieces_at(leaf, point);
    closed = closed || count > 0;
    if (count > 1)
      return fmt::format("{} pieces share {:.3f} {:.3f} {:.3f}\n", count, x / Length::kStepsPerMm,
                         y / Length::kStepsPerMm, point[2] / Length::kStepsPerMm);
  }
  if (closed || is_beyond(leaf, x, y) || between_leaves(leaf, x)) return {};
  return fmt::format("one sees through at {:.3f} {:.3f}\n", x / Length::kStepsPerMm,
                     y / Length::kStepsPerMm);
}

std::string faults_of(const Assembly& leaf, Dice& dice) {
  const Corners corners = corners_of(leaf);
  // On no line where faces lie.
  const auto share = [&] { return (static_cast<double>(dice.between(1, 9'999)) + 0.37) / 10'000; };
  const double near = 60.0 * Length::kStepsPerMm;
  std::string wrong;
  for (int i = 0; i < 120; ++i) {
    const double side = i % 2 == 0 ? corners.left : corners.right;
    wrong +=
        faults_at(leaf, side + near * (share() - 0.5), corners.low + near * (share() * 1.5 - 0.5));
    wrong += faults_at(leaf, steps(leaf.size[0]) * share(),
                       corners.low + (corners.high - corners.low) * share());
  }
  for (const Piece& piece : leaf.pieces)
    for (const Feature& feature : piece.features)
      for (const Prism& prism : feature.prisms)
        if (!lies_within(prism, piece))
          wrong += fmt::format("a {} of the {} goes beyond its blank\n", word_of(feature.kind),
                               piece.name);
  return wrong;
}

}  // namespace

TEST_CASE("under a random arch no wood is in two pieces, and none is missing", "[wood][property]") {
  const Tally tally = run_over(seeds_for(150), [](std::uint64_t seed, std::string& wrong) {
    ArchedSpec spec(seed);
    const Trial trial = work(spec.text());
    if (!trial.assembly) return Outcome::refused;
    wrong = faults_of(*trial.assembly, spec.dice());
    if (!wrong.empty()) wrong = spec.text() + "\n" + wrong;
    return Outcome::worked;
  });
  require_worked_share(tally, 15);
}

}  // namespace haunch::test
