#include "cabinet_oracle.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <optional>
#include <random>

#include "haunch/length_text.h"
#include "wood_oracle.h"

namespace haunch::test {
namespace {

using Point = std::array<double, 3>;  // in the assembly, in steps
bool holds(const Block& box, const Point& at) {
  for (std::size_t axis = 0; axis < 3; ++axis)
    if (at[axis] < static_cast<double>(box.low[axis]) ||
        at[axis] > static_cast<double>(box.high[axis]))
      return false;
  return true;
}

/// A place on one of a piece's own axes, in the assembly.
std::int64_t stood(Length at, std::size_t own, const Place& place) {
  const std::int64_t zero = place.origin[static_cast<std::size_t>(place.axes[own])].steps();
  return place.backwards[own] ? zero - at.steps() : zero + at.steps();
}

/// From a piece's own axes into the assembly's.
Block stood(const Triple& low, const Triple& high, const Place& place) {
  Block box;
  for (std::size_t own = 0; own < 3; ++own) {
    const auto axis = static_cast<std::size_t>(place.axes[own]);
    const auto [from, to] =
        std::minmax({stood(low[own], own, place), stood(high[own], own, place)});
    box.low[axis] = from;
    box.high[axis] = to;
  }
  return box;
}

/// A prism where it stands: its outline along two axes of the assembly, and the box round it.
struct Slope {
  std::size_t u = 0, v = 1;
  std::vector<std::array<double, 2>> outline;
  Block round;

  /// Counts the sides that a ray towards higher u meets.
  bool has(const Point& at) const {
    if (!holds(round, at)) return false;
    bool odd = false;
    for (std::size_t i = 0, last = outline.size() - 1; i < outline.size(); last = i++) {
      const auto [u1, v1] = outline[last];
      const auto [u2, v2] = outline[i];
      if ((v1 > at[v]) == (v2 > at[v])) continue;
      if (at[u] < u1 + (u2 - u1) * (at[v] - v1) / (v2 - v1)) odd = !odd;
    }
    return odd;
  }
};

Slope stood(const Prism& prism, const Place& place) {
  const std::size_t own_u = prism.along == 0 ? 1 : 0;
  const std::size_t own_v = prism.along == 2 ? 1 : 2;
  Triple low, high;
  low[prism.along] = prism.from;
  high[prism.along] = prism.to;
  const auto by_u = [](const Corner& a, const Corner& b) { return a.u < b.u; };
  const auto by_v = [](const Corner& a, const Corner& b) { return a.v < b.v; };
  const auto& outline = prism.outline;
  low[own_u] = std::min_element(outline.begin(), outline.end(), by_u)->u;
  high[own_u] = std::max_element(outline.begin(), outline.end(), by_u)->u;
  low[own_v] = std::min_element(outline.begin(), outline.end(), by_v)->v;
  high[own_v] = std::max_element(outline.begin(), outline.end(), by_v)->v;
  Slope slope;
  slope.u = static_cast<std::size_t>(place.axes[own_u]);
  slope.v = static_cast<std::size_t>(place.axes[own_v]);
  slope.round = stood(low, high, place);
  for (const Corner& corner : outline)
    slope.outline.push_back({static_cast<double>(stood(corner.u, own_u, place)),
                             static_cast<double>(stood(corner.v, own_v, place))});
  return slope;
}

/// A piece where it stands.
struct Timber {
  const Piece* piece = nullptr;
  Block blank;
  std::vector<Block> cuts;  // square ones
  std::vector<Slope> slopes;

  bool has_wood(const Point& at) const {
    return holds(blank, at) &&
           std::none_of(cuts.begin(), cuts.end(), [&](const Block& it) { return holds(it, at); }) &&
           std::none_of(slopes.begin(), slopes.end(), [&](const Slope& it) { return it.has(at); });
  }
  /// The boxes round all that is cut.
  std::vector<Block> taken() const {
    std::vector<Block> all = cuts;
    for (const Slope& slope : slopes)
      all.push_back(slope.round);
    return all;
  }
};

Timber timber_of(const Piece& piece) {
  Timber timber{&piece, stood({}, piece.blank, piece.place), {}, {}};
  for (const Feature& feature : piece.features) {
    for (const Box& cut : feature.cuts)
      timber.cuts.push_back(stood(cut.low, cut.high, piece.place));
    for (const Prism& prism : feature.prisms)
      timber.slopes.push_back(stood(prism, piece.place));
  }
  return timber;
}

Timber moved(Timber timber, std::size_t axis, std::int64_t by) {
  const auto move = [&](Block& box) {
    box.low[axis] += by;
    box.high[axis] += by;
  };
  move(timber.blank);
  for (Block& cut : timber.cuts)
    move(cut);
  for (Slope& slope : timber.slopes) {
    move(slope.round);
    for (auto& corner : slope.outline) {
      if (slope.u == axis) corner[0] += static_cast<double>(by);
      if (slope.v == axis) corner[1] += static_cast<double>(by);
    }
  }
  return timber;
}

std::vector<Timber> timbers_of(const Assembly& assembly) {
  std::vector<Timber> all;
  for (const Piece& piece : assembly.pieces)
    all.push_back(timber_of(piece));
  return all;
}

/// The faces of cuts along an axis within a region, with its ends.
std::vector<std::int64_t> faces(const Block& region, std::size_t axis, const Timber& a,
                                const Timber& b) {
  std::vector<std::int64_t> all{region.low[axis], region.high[axis]};
  for (const Timber* timber : {&a, &b})
    for (const Block& box : timber->taken()) {
      if (!has_volume(common(box, region))) continue;
      for (const std::int64_t face : {box.low[axis], box.high[axis]})
        if (face > region.low[axis] && face < region.high[axis]) all.push_back(face);
    }
  std::sort(all.begin(), all.end());
  all.erase(std::unique(all.begin(), all.end()), all.end());
  return all;
}

/// Asked in the middle of a cell; of one where wood slopes elsewhere, as its slope may go through
/// that.
bool shared_in(const Block& cell, const Timber& a, const Timber& b, std::mt19937_64& random) {
  const auto slopes = [&](const Timber& timber) {
    return std::any_of(timber.slopes.begin(), timber.slopes.end(),
                       [&](const Slope& it) { return has_volume(common(it.round, cell)); });
  };
  const auto both_have = [&](const auto& share_of) {
    Point at{};
    for (std::size_t axis = 0; axis < 3; ++axis)
      at[axis] = static_cast<double>(cell.low[axis]) +
                 share_of() * static_cast<double>(cell.high[axis] - cell.low[axis]);
    return a.has_wood(at) && b.has_wood(at);
  };
  if (!slopes(a) && !slopes(b)) return both_have([] { return 0.5; });
  std::uniform_real_distribution<double> share(0.0, 1.0);
  for (int i = 0; i < 12; ++i)
    if (both_have([&] { return share(random); })) return true;
  return false;
}

bool share(const Timber& a, const Timber& b) {
  const Block region = common(a.blank, b.blank);
  if (!has_volume(region)) return false;
  std::mt19937_64 random(1);
  const auto x = faces(region, 0, a, b);
  const auto y = faces(region, 1, a, b);
  const auto z = faces(region, 2, a, b);
  for (std::size_t i = 0; i + 1 < x.size(); ++i)
    for (std::size_t j = 0; j + 1 < y.size(); ++j)
      for (std::size_t k = 0; k + 1 < z.size(); ++k)
        if (shared_in({{x[i], y[j], z[k]}, {x[i + 1], y[j + 1], z[k + 1]}}, a, b, random))
          return true;
  return false;
}

std::string told(std::int64_t steps) {
  return decimal(Length::from_steps(steps), Unit::mm);
}

bool is_in(const Assembly& assembly, std::size_t group, std::size_t whole) {
  std::optional<std::size_t> at = group;
  while (at && *at != whole)
    at = assembly.groups[*at].in;
  return at.has_value();
}

/// The fit of the front that a piece is of, if it is of one.
const Fit* front_with(const Assembly& assembly, const Piece& piece) {
  for (const Fit& fit : assembly.fits)
    if (fit.stands == StandsIn::front && is_in(assembly, piece.group, fit.group)) return &fit;
  return nullptr;
}

// ---- at rest

void cuts_lie_in_blanks(const Timber& timber, std::vector<std::string>& faults) {
  for (const Block& box : timber.taken())
    for (std::size_t axis = 0; axis < 3; ++axis)
      if (box.low[axis] < timber.blank.low[axis] || box.high[axis] > timber.blank.high[axis] ||
          box.low[axis] >= box.high[axis]) {
        faults.push_back(timber.piece->name + ": a cut that is not in its blank");
        break;
      }
}

/// Fronts that lie over stand before the face; all else is within the size.
void stays_within(const Assembly& assembly, const Timber& timber,
                  std::vector<std::string>& faults) {
  const Fit* front = front_with(assembly, *timber.piece);
  for (std::size_t axis = 0; axis < 3; ++axis) {
    const bool before = axis == 2 && front != nullptr && front->meets != Meets::inset;
    if (timber.blank.low[axis] < 0 && !before)
      faults.push_back(fmt::format("{}: {} before the size along {}", timber.piece->name,
                                   told(-timber.blank.low[axis]), axis));
    const std::int64_t past = timber.blank.high[axis] - assembly.size[axis].steps();
    if (past > 0)
      faults.push_back(
          fmt::format("{}: {} past the size along {}", timber.piece->name, told(past), axis));
  }
}

// ---- fronts

/// The box round what of a front stands at its face.
Block face_of(const std::vector<Timber>& timbers, const Assembly& assembly, std::size_t group) {
  std::optional<Block> face;
  for (const Timber& timber : timbers) {
    if (!is_in(assembly, timber.piece->group, group)) continue;
    if (!face || timber.blank.low[2] < face->low[2])
      face = timber.blank;
    else if (timber.blank.low[2] == face->low[2])
      face = hull(*face, timber.blank);
  }
  return face.value_or(Block{});
}

/// From a front to the nearest blank of others on one side; nothing where none stands there.
std::optional<std::int64_t> gap_beside(const std::vector<Timber>& timbers, const Assembly& assembly,
                                       std::size_t group, const Block& face, std::size_t axis,
                                       bool high) {
  std::optional<std::int64_t> least;
  for (const Timber& timber : timbers) {
    if (is_in(assembly, timber.piece->group, group)) continue;
    Block beside = timber.blank;
    beside.low[axis] = face.low[axis];
    beside.high[axis] = face.high[axis];
    if (!has_volume(common(beside, face))) continue;
    const std::int64_t gap =
        high ? timber.blank.low[axis] - face.high[axis] : face.low[axis] - timber.blank.high[axis];
    const bool within = gap < 0 && (high ? timber.blank.high[axis] < face.high[axis]
                                         : timber.blank.low[axis] > face.low[axis]);
    if (!within && (!least || gap < *least)) least = gap;
  }
  return least;
}

// ---- moved

/// A point about a pin, opened so far.
Point turned(const Swing& swing, Point at, double angle) {
  const double x = at[0] - static_cast<double>(swing.pin[0].steps());
  const double z = at[2] - static_cast<double>(swing.pin[2].steps());
  const double way = swing.at_high ? -1 : 1;
  at[0] =
      static_cast<double>(swing.pin[0].steps()) + x * std::cos(angle) + way * z * std::sin(angle);
  at[2] =
      static_cast<double>(swing.pin[2].steps()) - way * x * std::sin(angle) + z * std::cos(angle);
  return at;
}

/// Points just within the four edges of a blank that run upwards, and between those.
std::vector<Point> points_round(const Block& blank) {
  constexpr double kWithin = 0.02 * static_cast<double>(Length::kStepsPerMm);
  constexpr int kAlong = 4;
  const auto at = [&](std::size_t axis, int part, int of) {
    const double low = static_cast<double>(blank.low[axis]) + kWithin;
    const double high = static_cast<double>(blank.high[axis]) - kWithin;
    return low + (high - low) * part / of;
  };
  std::vector<Point> points;
  for (int y = 0; y <= 2; ++y)
    for (int x = 0; x <= kAlong; ++x)
      for (int z = 0; z <= kAlong; ++z)
        if (x == 0 || x == kAlong || z == 0 || z == kAlong)
          points.push_back({at(0, x, kAlong), at(1, y, 2), at(2, z, kAlong)});
  return points;
}

bool meets_turned(const Timber& door, const Timber& other, const Swing& swing, double angle) {
  for (const Point& point : points_round(door.blank))
    if (other.has_wood(turned(swing, point, angle)) && door.has_wood(point)) return true;
  for (const Point& point : points_round(other.blank))
    if (door.has_wood(turned(swing, point, -angle)) && other.has_wood(point)) return true;
  return false;
}

bool beside_in_height(const Block& a, const Block& b) {
  return a.low[1] < b.high[1] && b.low[1] < a.high[1];
}

constexpr int kSteps = 12;

void swings_free(const std::vector<Timber>& timbers, const Assembly& assembly, const Fit& fit,
                 std::vector<std::string>& faults) {
  for (const Timber& door : timbers) {
    if (!is_in(assembly, door.piece->group, fit.group)) continue;
    for (const Timber& other : timbers) {
      if (is_in(assembly, other.piece->group, fit.group) ||
          !beside_in_height(door.blank, other.blank))
        continue;
      for (int step = 1; step <= kSteps; ++step) {
        const double angle = std::numbers::pi / 2 * step / kSteps;
        if (!meets_turned(door, other, *fit.swing(), angle)) continue;
        faults.push_back(fmt::format("{} of {} meets {} of {} at {} degrees", door.piece->name,
                                     assembly.groups[door.piece->group].path, other.piece->name,
                                     assembly.groups[other.piece->group].path, 90 * step / kSteps));
        break;
      }
    }
  }
}

void slides_free(const std::vector<Timber>& timbers, const Assembly& assembly, const Fit& fit,
                 std::vector<std::string>& faults) {
  const Slide& slide = std::get<Slide>(fit.moves);
  const auto axis = static_cast<std::size_t>(slide.along);
  for (int step = 1; step <= kSteps; ++step)
    for (const Timber& timber : timbers) {
      if (!is_in(assembly, timber.piece->group, fit.group)) continue;
      const Timber drawn = moved(timber, axis, slide.by.steps() * step / kSteps);
      for (const Timber& other : timbers) {
        if (is_in(assembly, other.piece->group, fit.group)) continue;
        const Fit* front = front_with(assembly, *other.piece);
        if (front != nullptr && front->swing() != nullptr) continue;  // opened first
        if (!share(drawn, other)) continue;
        faults.push_back(fmt::format("{} of {}, drawn {}, meets {}", timber.piece->name,
                                     assembly.groups[timber.piece->group].path,
                                     told(-slide.by.steps() * step / kSteps), other.piece->name));
        return;
      }
    }
}

}  // namespace

std::vector<std::string> faults_at_rest(const Assembly& assembly) {
  const std::vector<Timber> timbers = timbers_of(assembly);
  std::vector<std::string> faults;
  for (std::size_t i = 0; i < timbers.size(); ++i) {
    cuts_lie_in_blanks(timbers[i], faults);
    stays_within(assembly, timbers[i], faults);
    for (std::size_t j = i + 1; j < timbers.size(); ++j)
      if (share(timbers[i], timbers[j]))
        faults.push_back(timbers[i].piece->name + " and " + timbers[j].piece->name + " share wood");
  }
  return faults;
}

std::vector<std::string> faults_of_gaps(const Assembly& assembly) {
  const std::vector<Timber> timbers = timbers_of(assembly);
  std::vector<std::string> faults;
  for (const Fit& fit : assembly.fits) {
    if (fit.stands != StandsIn::front) continue;
    const Block face = face_of(timbers, assembly, fit.group);
    const auto look = [&](const char* side, bool beside, std::size_t axis, bool high, Length room) {
      if (!beside) return;
      const auto gap = gap_beside(timbers, assembly, fit.group, face, axis, high);
      if (gap != room.steps())
        faults.push_back(fmt::format("{}: {} {} where {} was to be",
                                     assembly.groups[fit.group].path, gap ? told(*gap) : "nothing",
                                     side, told(room.steps())));
    };
    look("left", fit.beside.left, 0, false, fit.room.left);
    look("right", fit.beside.right, 0, true, fit.room.right);
    look("below", fit.beside.foot, 1, false, fit.room.foot);
    look("above", fit.beside.head, 1, true, fit.room.head);
  }
  return faults;
}

std::vector<std::string> faults_of_loose_shelves(const Assembly& assembly, Length play) {
  const std::vector<Timber> timbers = timbers_of(assembly);
  std::vector<std::string> faults;
  for (const Timber& shelf : timbers) {
    if (!shelf.piece->loose) continue;
    std::int64_t left = shelf.blank.low[0], right = assembly.size[0].steps() - shelf.blank.high[0];
    for (const Timber& other : timbers) {
      Block beside = other.blank;
      beside.low[0] = shelf.blank.low[0];
      beside.high[0] = shelf.blank.high[0];
      if (&other == &shelf || !has_volume(common(beside, shelf.blank))) continue;
      if (other.blank.high[0] <= shelf.blank.low[0])
        left = std::min(left, shelf.blank.low[0] - other.blank.high[0]);
      if (other.blank.low[0] >= shelf.blank.high[0])
        right = std::min(right, other.blank.low[0] - shelf.blank.high[0]);
    }
    if (left + right != play.steps())
      faults.push_back(fmt::format("{}: {} beside it", shelf.piece->name, told(left + right)));
  }
  return faults;
}

std::vector<std::string> faults_on_the_way(const Assembly& assembly) {
  const std::vector<Timber> timbers = timbers_of(assembly);
  std::vector<std::string> faults;
  for (const Fit& fit : assembly.fits) {
    if (fit.stands != StandsIn::front) continue;
    if (fit.swing() != nullptr) swings_free(timbers, assembly, fit, faults);
    if (std::holds_alternative<Slide>(fit.moves)) slides_free(timbers, assembly, fit, faults);
  }
  return faults;
}

double square_volume(const Piece& piece) {
  const Timber timber = timber_of(piece);
  if (!timber.slopes.empty()) return -1;
  double volume = 0;
  const auto x = faces(timber.blank, 0, timber, timber);
  const auto y = faces(timber.blank, 1, timber, timber);
  const auto z = faces(timber.blank, 2, timber, timber);
  for (std::size_t i = 0; i + 1 < x.size(); ++i)
    for (std::size_t j = 0; j + 1 < y.size(); ++j)
      for (std::size_t k = 0; k + 1 < z.size(); ++k) {
        const auto middle = [](const auto& all, std::size_t at) {
          return static_cast<double>(all[at] + all[at + 1]) / 2;
        };
        const auto wide = [](const auto& all, std::size_t at) {
          return static_cast<double>(all[at + 1] - all[at]);
        };
        if (timber.has_wood({middle(x, i), middle(y, j), middle(z, k)}))
          volume += wide(x, i) * wide(y, j) * wide(z, k);
      }
  return volume;
}

}  // namespace haunch::test
