#include "found_opening.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "rounding.h"

namespace haunch {
namespace {

/// What no tape shows.
constexpr Length kUnseen = Length::from_mm_thousandths(20);
constexpr Length kTapeReads = Length::from_mm(2);
constexpr double kStepsInMm = Length::kStepsPerMm;

struct Point {
  double x = 0, y = 0;
};

Point middle(Point a, Point b) {
  return {(a.x + b.x) / 2, (a.y + b.y) / 2};
}
double distance(Point a, Point b) {
  return std::hypot(a.x - b.x, a.y - b.y);
}
Point turned(Point p, double angle) {
  return {p.x * std::cos(angle) + p.y * std::sin(angle),
          p.y * std::cos(angle) - p.x * std::sin(angle)};
}

double mm(Length length) {
  return static_cast<double>(length.steps()) / kStepsInMm;
}
Length length_of(double mm) {
  return nearest_step(mm * kStepsInMm);
}

/// Its sides, each at three places in the order of the readings. In mm.
struct Shape {
  std::array<Point, 3> left, right, head, foot;
};

/// The shape whose corners the foot's width, the outer heights and two diagonals make.
struct Corners {
  Point lower_left, lower_right, upper_left, upper_right;
};

/// In mm, from the lower left one. Each upper corner lies where a height and a diagonal meet, the
/// left with the falling one, the right with the rising one; how far it leans to the right of
/// upright follows from the cosine rule. Not a number where they do not reach each other.
Corners corners_of(const OpeningReadings& readings, double rising, double falling) {
  const double foot = mm(readings.widths[2]);
  const double left = mm(readings.heights[0]);
  const double right = mm(readings.heights[2]);
  const double left_lean = (foot * foot + left * left - falling * falling) / (2 * foot);
  const double right_lean = (rising * rising - foot * foot - right * right) / (2 * foot);
  return {{0, 0},
          {foot, 0},
          {left_lean, std::sqrt(left * left - left_lean * left_lean)},
          {foot + right_lean, std::sqrt(right * right - right_lean * right_lean)}};
}

/// How much the diagonals are changed for a change by 1.
struct Shares {
  double rising = 1, falling = 1;
};
constexpr Shares kFirstAlone{1, 0}, kSecondAlone{0, 1};

Corners with_change(const OpeningReadings& readings, Shares shares, double change) {
  return corners_of(readings, mm(readings.diagonals[0]) + shares.rising * change,
                    mm(readings.diagonals[1]) + shares.falling * change);
}

/// The change, in mm, with which the head comes out as wide as it was read: it grows with the
/// diagonals. Not a number where none does.
double change_that_closes(const OpeningReadings& readings, Shares shares) {
  constexpr double kFarthest = 200;
  constexpr int kHalvings = 60;
  const auto is_wide = [&](double change) {
    const Corners corners = with_change(readings, shares, change);
    return corners.upper_left.x < corners.upper_right.x &&
           distance(corners.upper_left, corners.upper_right) >= mm(readings.widths[0]);
  };
  double low = -kFarthest, high = kFarthest;
  if (is_wide(low) || !is_wide(high)) return std::nan("");
  for (int i = 0; i < kHalvings; ++i)
    (is_wide((low + high) / 2) ? high : low) = (low + high) / 2;
  return (low + high) / 2;
}

/// Both come in by half of what their middles are nearer than the corners make them.
void bow(Point& a, Point& b, double read) {
  const double straight = distance(a, b);
  const double in = (straight - read) / 2 / straight;
  const Point way{(b.x - a.x) * in, (b.y - a.y) * in};
  a = {a.x + way.x, a.y + way.y};
  b = {b.x - way.x, b.y - way.y};
}

Shape shape_of(const OpeningReadings& readings, const Corners& c) {
  Shape shape{{c.upper_left, middle(c.upper_left, c.lower_left), c.lower_left},
              {c.upper_right, middle(c.upper_right, c.lower_right), c.lower_right},
              {c.upper_left, middle(c.upper_left, c.upper_right), c.upper_right},
              {c.lower_left, middle(c.lower_left, c.lower_right), c.lower_right}};
  bow(shape.left[1], shape.right[1], mm(readings.widths[1]));
  bow(shape.foot[1], shape.head[1], mm(readings.heights[1]));
  return shape;
}

/// Every shape that some of the readings make; the first shares what is wrong between both
/// diagonals, the others put it on one.
std::vector<Shape> shapes_of(const OpeningReadings& readings) {
  std::vector<Shape> shapes;
  const double both = change_that_closes(readings, {});
  shapes.push_back(shape_of(readings, with_change(readings, {}, both)));
  if (!disagree(*diagonal_short(readings))) return shapes;
  for (const Shares shares : {kFirstAlone, kSecondAlone}) {
    const double change = change_that_closes(readings, shares);
    if (std::isfinite(change))
      shapes.push_back(shape_of(readings, with_change(readings, shares, change)));
  }
  return shapes;
}

Shape turned(const Shape& shape, double angle) {
  Shape all = shape;
  for (auto* side : {&all.left, &all.right, &all.head, &all.foot})
    for (Point& point : *side)
      point = turned(point, angle);
  return all;
}

double least_of(const std::array<Point, 3>& side, double Point::*axis) {
  return std::min({side[0].*axis, side[1].*axis, side[2].*axis});
}
double most_of(const std::array<Point, 3>& side, double Point::*axis) {
  return std::max({side[0].*axis, side[1].*axis, side[2].*axis});
}

struct Rectangle {
  Point low, high;

  double width() const { return high.x - low.x; }
  double height() const { return high.y - low.y; }
};

/// The largest within a shape, its sides along the axes.
Rectangle within(const Shape& shape) {
  return {{most_of(shape.left, &Point::x), most_of(shape.foot, &Point::y)},
          {least_of(shape.right, &Point::x), least_of(shape.head, &Point::y)}};
}

/// The line along a side, from its first place to its last, that lies no farther out than any of
/// the three: so far it comes in at both ends.
struct SideLine {
  double first = 0, last = 0;
};
SideLine line_along(const std::array<Point, 3>& side, double Point::*axis, double inwards) {
  const double first = side[0].*axis * inwards, last = side[2].*axis * inwards;
  const double more = std::max(0.0, side[1].*axis * inwards - (first + last) / 2);
  return {(first + more) * inwards, (last + more) * inwards};
}

/// The box round the straight sides, and the most that one of them comes in to it.
struct Around {
  Rectangle box;
  double most = 0;
};
Around around(const Shape& shape) {
  const SideLine left = line_along(shape.left, &Point::x, 1);
  const SideLine right = line_along(shape.right, &Point::x, -1);
  const SideLine foot = line_along(shape.foot, &Point::y, 1);
  const SideLine head = line_along(shape.head, &Point::y, -1);
  double most = 0;
  for (const SideLine& line : {left, right, foot, head})
    most = std::max(most, std::abs(line.first - line.last));
  return {{{std::min(left.first, left.last), std::min(foot.first, foot.last)},
           {std::max(right.first, right.last), std::max(head.first, head.last)}},
          most};
}

/// The turn, within a tenth of a radian, at which `cost`, which falls to its least and rises from
/// there, is least.
template <typename Cost>
double best_turn(Cost cost) {
  constexpr double kMost = 0.1;
  constexpr int kSteps = 120;
  double low = -kMost, high = kMost;
  for (int i = 0; i < kSteps; ++i) {
    const double third = (high - low) / 3;
    if (cost(low + third) > cost(high - third))
      low += third;
    else
      high -= third;
  }
  return (low + high) / 2;
}

Length rounding_step(Unit unit) {
  return unit == Unit::mm ? Length::from_mm_thousandths(500) : Length::from_inch_parts(1, 64);
}

/// The size less what it loses, that rounded up.
Length less(Length size, double loss_mm, Unit unit) {
  const Length step = rounding_step(unit);
  const Length loss = std::max(Length(), length_of(loss_mm) - kUnseen);
  return size - floor_multiple(loss + step - Length::from_steps(1), step);
}

/// To 0.1 mm or 1/64 in, down: a gap is no less than it is told, and no less is planed off. The
/// middle of a side that is straight stays on the line between its ends.
std::array<Length, 3> beyond(const std::array<Point, 3>& side, double Point::*axis, double line,
                             double outwards, Unit unit) {
  constexpr double kStraight = 0.05;  // mm
  const Length step =
      unit == Unit::mm ? Length::from_mm_thousandths(100) : Length::from_inch_parts(1, 64);
  std::array<Length, 3> all;
  for (std::size_t i = 0; i < all.size(); ++i)
    all[i] = floor_multiple(length_of((side[i].*axis - line) * outwards) + kUnseen, step);
  const double off = side[1].*axis - (side[0].*axis + side[2].*axis) / 2;
  if (std::abs(off) < kStraight) all[1] = floor_half(all[0] + all[2]);
  return all;
}

/// A rectangle of a size in the middle of another, and how far the shape reaches beyond it.
AsFound found_round(const Shape& shape, const Rectangle& room, Length width, Length height,
                    Unit unit) {
  const Point low{(room.low.x + room.high.x - mm(width)) / 2,
                  (room.low.y + room.high.y - mm(height)) / 2};
  return {beyond(shape.left, &Point::x, low.x, -1, unit),
          beyond(shape.right, &Point::x, low.x + mm(width), 1, unit),
          beyond(shape.head, &Point::y, low.y + mm(height), 1, unit),
          beyond(shape.foot, &Point::y, low.y, -1, unit)};
}

/// What lies within the rounding of a reading is no place where it comes in.
void close_at_zero(AsFound& found) {
  for (auto* side : {&found.left, &found.right, &found.head, &found.foot})
    for (Length& place : *side)
      place = std::max(place, Length());
}

Length least_of(const std::array<Length, 3>& readings) {
  return *std::min_element(readings.begin(), readings.end());
}

}  // namespace

std::optional<Length> diagonal_short(const OpeningReadings& readings) {
  const double change = change_that_closes(readings, kSecondAlone);
  if (!std::isfinite(change)) return {};
  return length_of(change);
}

bool disagree(Length diagonal_short) {
  return std::max(diagonal_short, -diagonal_short) > kTapeReads;
}

SquareOpening largest_square(const OpeningReadings& readings, Unit unit) {
  SquareOpening square{least_of(readings.widths), least_of(readings.heights), {}};
  const Length width = square.width, height = square.height;
  std::vector<Shape> shapes = shapes_of(readings);
  for (Shape& shape : shapes) {
    const double angle = best_turn([&](double turn) {
      const Rectangle it = within(turned(shape, turn));
      return -it.width() * it.height();
    });
    shape = turned(shape, angle);
    const Rectangle room = within(shape);
    square.width = std::min(square.width, less(width, mm(width) - room.width(), unit));
    square.height = std::min(square.height, less(height, mm(height) - room.height(), unit));
  }
  square.found =
      found_round(shapes.front(), within(shapes.front()), square.width, square.height, unit);
  close_at_zero(square.found);
  return square;
}

SquareOpening box_to_follow(const OpeningReadings& readings, Unit unit) {
  const Shape shape = shapes_of(readings).front();
  const double angle = best_turn([&](double turn) { return around(turned(shape, turn)).most; });
  const Shape upright = turned(shape, angle);
  const Rectangle box = around(upright).box;
  const Length step = rounding_step(unit);
  SquareOpening square{floor_multiple(length_of(box.width()) + kUnseen, step),
                       floor_multiple(length_of(box.height()) + kUnseen, step),
                       {}};
  square.found = found_round(upright, box, square.width, square.height, unit);
  square.found.follow = true;
  return square;
}

}  // namespace haunch
