#include "arch.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "own_axes.h"
#include "rounding.h"

namespace haunch {
namespace {

double steps(Length length) {
  return static_cast<double>(length.steps());
}

/// Half the angle that the arch spans.
double half_angle(const Arch& arch) {
  return std::asin(std::min(steps(arch.span) / 2 / arch.radius(), 1.0));
}

/// The angle of each chord. It is chosen for a curve 50 mm outside of the arch, so that grooves
/// keep the tolerance too.
double chord_angle(const Arch& arch) {
  const double widest = arch.radius() + steps(Length::from_mm(50));
  const double most = 2 * std::acos(1 - std::min(steps(arch.tolerance) / widest, 1.0));
  return half_angle(arch) / std::max(std::ceil(half_angle(arch) / most), 1.0);
}

struct Point {
  double x, y;
};

double centre_x(const Arch& arch) {
  return steps(arch.left) + steps(arch.span) / 2;
}

double centre_y(const Arch& arch) {
  return steps(arch.springing + arch.rise) - arch.radius();
}

/// The points of one curve, as far as the circle goes: at equal angles about the crown, at the
/// circle's ends, and at those that are `more`.
std::vector<Point> points_of(const Arch& arch, double radius, const std::vector<double>& more) {
  const double right = std::acos(0.0);
  const double angle = chord_angle(arch);
  std::vector<double> angles{-right, right};
  angles.insert(angles.end(), more.begin(), more.end());
  for (int i = 0; angle * i < right; ++i)
    angles.insert(angles.end(), {angle * i, -angle * i});
  std::sort(angles.begin(), angles.end());
  std::vector<Point> points;
  for (const double its : angles)
    points.push_back({centre_x(arch) + radius * std::sin(its),
                      centre_y(arch) + (its == 0 ? radius : radius * std::cos(its))});
  return points;
}

Point between(const Point& a, const Point& b, double x) {
  return {x, a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x)};
}

/// The part of a line of chords from x to x, level beyond its ends.
std::vector<Point> clipped(const std::vector<Point>& line, double from, double to) {
  std::vector<Point> part;
  if (line.front().x > from) part.push_back({from, line.front().y});
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (i > 0 && line[i - 1].x < from && line[i].x > from)
      part.push_back(between(line[i - 1], line[i], from));
    if (line[i].x >= from && line[i].x <= to) part.push_back(line[i]);
    if (i > 0 && line[i - 1].x < to && line[i].x > to)
      part.push_back(between(line[i - 1], line[i], to));
  }
  if (line.back().x < to) part.push_back({to, line.back().y});
  return part;
}

/// Corners of the leaf's x and y, in a piece's own axes.
std::vector<Corner> own_corners(std::vector<Corner> line, const Piece& piece) {
  for (Corner& corner : line)
    corner = in_own_axes(corner, piece.place);
  return line;
}

Prism across_thickness(std::vector<Corner> line, const Piece& piece, Length from, Length to) {
  return {2, from, to, own_corners(std::move(line), piece)};
}

/// With its first and its last corner on the curve itself, wherever it ends.
std::vector<Corner> line_to_ends(const Arch& arch, Length outward, Length from, Length to,
                                 Heights heights) {
  return arch_line(arch, outward, from, to, heights,
                   {arch.angle_at(outward, from), arch.angle_at(outward, to)});
}

/// What stands above a line of chords, to a height that one of them may touch: left and right of
/// its highest corner.
std::vector<std::vector<Corner>> above(const std::vector<Corner>& line, Length top) {
  const auto crown = std::max_element(line.begin(), line.end(),
                                      [](const Corner& a, const Corner& b) { return a.v < b.v; });
  std::vector<Corner> left(line.begin(), crown + 1);
  std::vector<Corner> right(crown, line.end());
  if (crown->v < top) left.push_back({crown->u, top});
  left.push_back({line.front().u, top});
  right.push_back({line.back().u, top});
  if (crown->v < top) right.push_back({crown->u, top});
  std::vector<std::vector<Corner>> parts;
  if (crown != line.begin()) parts.push_back(std::move(left));
  if (crown + 1 != line.end()) parts.push_back(std::move(right));
  return parts;
}

/// A leaf's top from x to x, with a corner at the sight edges of its stiles between.
std::vector<Corner> head_line(const ArchedHead& head, Length from, Length to) {
  std::vector<Corner> line;
  Length low = from;
  for (const Length high : {head.left_sight, head.right_sight, to}) {
    if (high <= low || high > to) continue;
    const auto part =
        arch_line(head.opening, -head.clearance, low, high, Heights::down, head.corners());
    line.insert(line.end(), part.begin() + (line.empty() ? 0 : 1), part.end());
    low = high;
  }
  return line;
}

/// Takes off what of a piece stands above its leaf's top.
Feature& saw_to_head(Piece& piece, const ArchedHead& head) {
  const Box blank = placed_blank(piece);
  Feature sawn{FeatureKind::arched_head,
               {},
               {},
               {{SizeName::radius, head.radius()},
                {SizeName::along_curve,
                 curve_length(head.opening, -head.clearance, blank.low[0], blank.high[0])}}};
  for (std::vector<Corner>& corners :
       above(head_line(head, blank.low[0], blank.high[0]), blank.high[1]))
    sawn.prisms.push_back(across_thickness(std::move(corners), piece, Length(), piece.blank[2]));
  piece.features.push_back(std::move(sawn));
  return piece.features.back();
}

}  // namespace

double Arch::radius() const {
  if (struck > Length()) return steps(struck);
  const double half = steps(span) / 2;
  const double high = steps(rise);
  return (half * half + high * high) / (2 * high);
}

Length Arch::radius_with(Length outward) const {
  return nearest_step(radius() + steps(outward));
}

double Arch::angle_at(Length outward, Length x) const {
  const double out = (steps(x) - centre_x(*this)) / (radius() + steps(outward));
  return std::asin(std::clamp(out, -1.0, 1.0));
}

Length Arch::height_at(Length outward, Length x) const {
  const double its = radius() + steps(outward);
  const double out = steps(x) - centre_x(*this);
  return nearest_step(centre_y(*this) + std::sqrt(std::max(its * its - out * out, 0.0)));
}

Length ArchedHead::height_at(Length x) const {
  return opening.height_at(-clearance, x);
}

Length ArchedHead::lowest(Length from, Length to) const {
  return std::min(height_at(from), height_at(to));
}

std::vector<double> ArchedHead::corners() const {
  std::vector<double> angles;
  for (const Length x : {Length(), left_sight, right_sight, width})
    angles.push_back(opening.angle_at(-clearance, x));
  return angles;
}

Length ArchedHead::lowest_wood(Length from, Length to) const {
  const auto over = [&](Length x) {
    return arch_line(opening, -clearance, x, x, Heights::down, corners()).front().v;
  };
  return std::min(over(from), over(to));
}

int chords_of(const Arch& arch) {
  return 2 * static_cast<int>(std::lround(half_angle(arch) / chord_angle(arch)));
}

std::vector<Corner> arch_line(const Arch& arch, Length outward, Length from, Length to,
                              Heights heights, const std::vector<double>& more) {
  const std::vector<Point> points = points_of(arch, arch.radius() + steps(outward), more);
  // What comes to a whole number but for the last places of a double is that number.
  constexpr double kNoise = 1e-3;
  std::vector<Corner> line;
  for (const Point& point : clipped(points, steps(from), steps(to))) {
    const double height =
        heights == Heights::up ? std::ceil(point.y - kNoise) : std::floor(point.y + kNoise);
    const Corner corner{nearest_step(point.x), nearest_step(height)};
    if (line.empty() || line.back().u != corner.u) line.push_back(corner);
  }
  return line;
}

Length curve_length(const Arch& arch, Length outward, Length from, Length to) {
  return nearest_step((arch.radius() + steps(outward)) *
                      (arch.angle_at(outward, to) - arch.angle_at(outward, from)));
}

GrooveRef cut_arch(Assembly& assembly, std::size_t number, const Arch& arch,
                   const GrooveDesign& groove) {
  Piece& rail = assembly.pieces[number];
  const Length right = arch.left + arch.span;
  const std::vector<Corner> under = arch_line(arch, Length(), arch.left, right, Heights::up);
  Feature cut{FeatureKind::arch,
              {},
              {},
              {{SizeName::rise, arch.rise},
               {SizeName::span, arch.span},
               {SizeName::radius, arch.radius_with(Length())},
               {SizeName::along_curve, curve_length(arch, Length(), arch.left, right)},
               {SizeName::at_crown, rail.blank[1] - arch.rise - arch.below},
               {SizeName::tolerance, arch.tolerance}}};
  std::vector<Corner> sawn = under;
  if (arch.below > Length()) {
    const Length foot = arch.springing - arch.below;
    sawn.push_back({right, foot});
    sawn.push_back({arch.left, foot});
  }
  cut.prisms.push_back(across_thickness(std::move(sawn), rail, Length(), rail.blank[2]));
  rail.features.push_back(std::move(cut));
  std::vector<Corner> ring = line_to_ends(arch, groove.depth, arch.left, right, Heights::up);
  ring.insert(ring.end(), under.rbegin(), under.rend());
  Feature ploughed{FeatureKind::groove,
                   {},
                   {},
                   {{SizeName::width, groove.width},
                    {SizeName::depth, groove.depth},
                    {SizeName::from_face, groove.from_face},
                    {SizeName::radius, arch.radius_with(groove.depth)},
                    {SizeName::along_curve, curve_length(arch, groove.depth, arch.left, right)}}};
  ploughed.prisms.push_back(
      across_thickness(ring, rail, groove.from_face, groove.from_face + groove.width));
  rail.features.push_back(std::move(ploughed));
  return {number, rail.features.size() - 1};
}

void saw_head(Assembly& leaf, std::size_t left, std::size_t right, std::size_t number,
              const ArchedHead& head) {
  const Arch& opening = head.opening;
  const Length none;
  for (const std::size_t stile : {left, right})
    saw_to_head(leaf.pieces[stile], head)
        .sizes.push_back({SizeName::side, head.height_at(stile == left ? none : head.width)});
  Feature& sawn = saw_to_head(leaf.pieces[number], head);
  sawn.sizes[1].size = curve_length(opening, -head.clearance, none, head.width);
  const Length crown = opening.springing + opening.rise - head.clearance;
  for (const NamedSize& size : {NamedSize{SizeName::rise, crown - head.lowest(none, head.width)},
                                {SizeName::span, head.width},
                                {SizeName::centre_from_foot, head.centre()},
                                {SizeName::tolerance, opening.tolerance},
                                {SizeName::opening_rise, opening.rise},
                                {SizeName::opening_span, opening.span},
                                {SizeName::opening_radius, opening.radius_with(none)}})
    sawn.sizes.push_back(size);
  for (std::vector<Corner>& corners : above(head_line(head, none, head.width), leaf.size[1]))
    leaf.beyond.push_back({2, none, leaf.size[2], std::move(corners)});
  leaf.fits.front().arch = arch_line(opening, none, opening.left, opening.left + opening.span,
                                     Heights::up, head.corners());
}

void cut_arched_top(Piece& panel, const Arch& arch, Length outward) {
  const Box blank = placed_blank(panel);
  const std::vector<Corner> line =
      line_to_ends(arch, outward, blank.low[0], blank.high[0], Heights::down);
  Feature cut{FeatureKind::arched_top,
              {},
              {},
              {{SizeName::radius, arch.radius_with(outward)},
               {SizeName::along_curve, curve_length(arch, outward, blank.low[0], blank.high[0])},
               {SizeName::side, arch.height_at(outward, blank.low[0]) - blank.low[1]}}};
  for (std::vector<Corner>& corners : above(line, blank.high[1]))
    cut.prisms.push_back(across_thickness(std::move(corners), panel, Length(), panel.blank[2]));
  panel.features.push_back(std::move(cut));
}

void rebate_round_arch(Piece& panel, const Arch& arch, Length outward, Length width, Length from,
                       Length to) {
  rebate_round(panel, width, from, to);
  Feature& rebate = panel.features.back();
  // The second box is that of the upper edge where the grain is level, the fourth where it is
  // upright.
  rebate.cuts.erase(rebate.cuts.begin() + (panel.place.axes[0] == Axis::y ? 3 : 1));
  const Box blank = placed_blank(panel);
  const std::vector<Corner> line =
      line_to_ends(arch, outward - width, blank.low[0], blank.high[0], Heights::down);
  for (std::vector<Corner>& corners : above(line, blank.high[1]))
    rebate.prisms.push_back(across_thickness(std::move(corners), panel, from, to));
}

}  // namespace haunch
