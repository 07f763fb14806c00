#include "carrying.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "extras.h"
#include "family.h"
#include "rounding.h"

namespace haunch {
namespace {

constexpr double kNever = -std::numeric_limits<double>::max();
/// The most that one person should lift under the best conditions: 51 lb (23 kg), NIOSH.
constexpr double kOnePersonLifts = 23;

double steps(Length length) {
  return static_cast<double>(length.steps());
}

/// Leeway in steps, and whether it is had by tilting.
struct Leeway {
  double left = kNever;
  bool tilted = false;

  bool goes_level() const { return left >= 0 && !tilted; }
};
/// What goes without being tilted is better than what does not, then what leaves more room.
Leeway better(const Leeway& a, const Leeway& b) {
  if (a.goes_level() != b.goes_level()) return a.goes_level() ? a : b;
  return b.left > a.left ? b : a;
}

Passing passing(const Leeway& room) {
  constexpr double kFar = 1e15;  // a size of some 600 m: of what never goes
  return {nearest_step(std::max(room.left, -kFar)), room.tilted};
}

/// How wide an opening of a height must be for a rectangle of p x q, p >= q, to go through
/// (Wetzel).
double width_needed(double p, double q, double height) {
  if (p <= height) return q;
  if (q > height) return -kNever;
  const double square = p * p + q * q;
  return (2 * p * q * height + (p * p - q * q) * std::sqrt(square - height * height)) / square;
}

/// What a rectangle leaves of an opening's width, or lying on its side of its height.
Leeway in_opening(double a, double b, double width, double height) {
  const double p = std::max(a, b), q = std::min(a, b);
  Leeway upright{width - width_needed(p, q, height), p > height};
  if (p <= width) upright = better(upright, {std::min(width - p, height - q), false});
  return upright;
}

std::array<double, 3> sorted_steps(const Triple& box) {
  std::array<double, 3> all{steps(box[0]), steps(box[1]), steps(box[2])};
  std::sort(all.begin(), all.end());
  return all;
}

// ---- round a stair

constexpr int kAngles = 180;  // of a quarter turn: half a degree each

double angle_of(int number) {
  return std::numbers::pi / 2 * number / kAngles;
}

/// The longest rectangle of a width that gets round the corner between two passages.
double longest_round(double width, double first, double second) {
  if (width > std::min(first, second)) return kNever;
  double longest = -kNever;
  for (int i = 1; i < kAngles; ++i) {
    const double sine = std::sin(angle_of(i)), cosine = std::cos(angle_of(i));
    longest = std::min(longest, (first * cosine + second * sine - width) / (sine * cosine));
  }
  return longest;
}

/// How long a box is from above, as far as it can be raised at one end; nothing where it does not
/// go under the headroom at all.
std::optional<Leeway> length_from_above(double length, double height, double headroom) {
  std::optional<Leeway> shortest;
  for (int i = 0; i <= kAngles; ++i) {
    const double sine = std::sin(angle_of(i)), cosine = std::cos(angle_of(i));
    if (length * sine + height * cosine > headroom) continue;
    const double from_above = length * cosine + height * sine;
    if (!shortest || from_above < shortest->left)
      shortest = Leeway{from_above, i > 0 && i < kAngles};
  }
  return shortest;
}

}  // namespace

Passing through_door(const Triple& box, const DoorOnTheWay& door) {
  const auto sizes = sorted_steps(box);
  return passing(in_opening(sizes[0], sizes[1], steps(door.width), steps(door.height)));
}

Passing round_stair(const Triple& box, const StairOnTheWay& stair) {
  std::array<double, 3> sizes = sorted_steps(box);
  Leeway best;
  do {
    const auto& [width, height, length] = sizes;
    const auto from_above = length_from_above(length, height, steps(stair.headroom));
    if (!from_above) continue;
    const double longest = longest_round(width, steps(stair.width), steps(stair.landing));
    const double left = longest == kNever
                            ? std::min(steps(stair.width), steps(stair.landing)) - width
                            : longest - from_above->left;
    best = better(best, {left, from_above->tilted});
  } while (std::next_permutation(sizes.begin(), sizes.end()));
  return passing(best);
}

Passing in_lift(const Triple& box, const LiftOnTheWay& lift) {
  const std::array<double, 3> car{steps(lift.width), steps(lift.depth), steps(lift.height)};
  std::array<double, 3> sizes = sorted_steps(box);
  Leeway best;
  do {
    for (std::size_t axis = 0; axis < 3; ++axis) {
      Leeway room = in_opening(sizes[1], sizes[2], car[(axis + 1) % 3], car[(axis + 2) % 3]);
      room.left = std::min(room.left, car[axis] - sizes[0]);
      best = better(best, room);
    }
  } while (std::next_permutation(sizes.begin(), sizes.end()));
  return passing(best);
}

bool Carried::goes() const {
  for (const auto& way : {door, stair, lift})
    if (way && !way->goes()) return false;
  return true;
}

namespace {

void send(Carried& its, const Access& way) {
  if (way.door) its.door = through_door(its.size, *way.door);
  if (way.stair) its.stair = round_stair(its.size, *way.stair);
  if (way.lift) its.lift = in_lift(its.size, *way.lift);
}

Triple extent_of(const Box& box) {
  return {box.extent(0), box.extent(1), box.extent(2)};
}

/// Weighs and measures what is carried.
class Loading {
 public:
  Loading(const Assembly& wood, const Job& job)
      : wood_(wood), job_(job), kilograms_(weigh(wood, job).pieces) {}

  std::vector<Carried> all() {
    for (std::size_t group = 0; group < wood_.groups.size(); ++group)
      add(group);
    for (std::size_t group = 0; group < wood_.groups.size(); ++group)
      if (wood_.groups[group].kind == GroupKind::face_frame) with_its_case(group);
    return std::move(all_);
  }

 private:
  void add(std::size_t group) {
    const Group& its = wood_.groups[group];
    if (its.kind == GroupKind::extras) return;
    const std::vector<std::size_t> pieces = pieces_of(wood_, group);
    if (its.kind == GroupKind::run)
      for (const std::size_t piece : pieces)
        all_.push_back(load({}, {piece}, wood_.pieces[piece].name));
    else if (!pieces.empty())
      all_.push_back(load({group}, pieces, group_name(its)));
  }

  Carried load(std::vector<std::size_t> groups, std::vector<std::size_t> pieces,
               std::string name) const {
    Carried its{std::move(name), std::move(groups), std::move(pieces), {}, {}, {}, {}, {}, true};
    Box room = placed_blank(wood_.pieces[its.pieces.front()]);
    for (const std::size_t piece : its.pieces) {
      room = around(room, placed_blank(wood_.pieces[piece]));
      if (const auto& kilograms = kilograms_[piece])
        its.weight.kilograms += *kilograms;
      else
        its.weight.unknown.push_back(piece);
    }
    its.size = extent_of(room);
    send(its, *job_.access);
    if (!its.goes()) its.pieces_go = pieces_go(its);
    return its;
  }

  bool pieces_go(const Carried& whole) const {
    return std::all_of(whole.pieces.begin(), whole.pieces.end(), [&](std::size_t piece) {
      Carried its{{}, {}, {}, wood_.pieces[piece].blank, {}, {}, {}, {}, true};
      send(its, *job_.access);
      return its.goes();
    });
  }

  /// Of a face frame that stands on one case.
  void with_its_case(std::size_t frame) {
    std::vector<std::size_t> cases;
    for (std::size_t group = 0; group < wood_.groups.size(); ++group)
      if (wood_.groups[group].kind == GroupKind::carcase &&
          wood_.groups[group].in == wood_.groups[frame].in)
        cases.push_back(group);
    if (cases.size() != 1) return;
    std::vector<std::size_t> pieces = pieces_of(wood_, cases.front());
    const std::vector<std::size_t> framed = pieces_of(wood_, frame);
    pieces.insert(pieces.end(), framed.begin(), framed.end());
    all_.push_back(load(
        {cases.front(), frame}, std::move(pieces),
        group_name(wood_.groups[cases.front()]) + " with its " + group_name(wood_.groups[frame])));
  }

  const Assembly& wood_;
  const Job& job_;
  const std::vector<std::optional<double>> kilograms_;
  std::vector<Carried> all_;
};

}  // namespace

std::vector<Carried> carried(const Assembly& wood, const Job& job) {
  return job.access ? Loading(wood, job).all() : std::vector<Carried>();
}

std::vector<Caution> carrying_cautions(const std::vector<Carried>& all, const Job& job) {
  if (all.empty()) return {};
  const double limit = job.access->carry.value_or(kOnePersonLifts);
  const auto heaviest = std::max_element(
      all.begin(), all.end(),
      [](const Carried& a, const Carried& b) { return a.weight.kilograms < b.weight.kilograms; });
  if (heaviest->weight.kilograms <= limit) return {};
  return {
      {"carrying",
       fmt::format("{} comes to {:.0f} kg{}, over the {:.0f} kg that {}; take out what comes "
                   "out, have more hands or a machine, and keep to the local rules for lifting "
                   "by hand",
                   heaviest->name, heaviest->weight.kilograms,
                   heaviest->weight.is_known() ? "" : " and what is not known", limit,
                   job.access->carry ? "those who carry may lift"
                                     : "one person may lift under the best conditions (NIOSH)")}};
}

namespace {

constexpr std::string_view kWayReason =
    "what does not go there has to be put together there, or be made in parts";
constexpr Rule kDoorRule{"way-through-door", "of room as it goes through the door on its way",
                         kWayReason, true};
constexpr Rule kStairRule{"way-round-stair", "of room as it goes round the stair on its way",
                          kWayReason, true};
constexpr Rule kLiftRule{"way-in-lift", "of room as it stands in the lift on its way", kWayReason,
                         true};

}  // namespace

void check_carrying(Bench& bench, const Job& job) {
  for (const Carried& its : carried(bench.assembly, job)) {
    if (its.groups.size() > 1) continue;  // put together there, where it does not go as one
    const auto told = [&](const Rule& rule, const std::optional<Passing>& way) {
      Bounds bounds;
      bounds.fail_min = Length();
      if (way) report(bench, rule, {its.pieces.front()}, {}, way->room, bounds);
    };
    told(kDoorRule, its.door);
    told(kStairRule, its.stair);
    told(kLiftRule, its.lift);
  }
}

std::vector<const Rule*> rules_of_carrying() {
  return {&kDoorRule, &kStairRule, &kLiftRule};
}

}  // namespace haunch
