#include "arch.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "arch_outline.h"
#include "rounding.h"

namespace haunch {
namespace {

double steps(Length length) {
  return static_cast<double>(length.steps());
}

/// Half the angle that the arch spans.
double half_angle(const Arch& arch) {
  const double half = steps(arch.span) / 2 + std::abs(steps(arch.beside));
  return std::asin(std::min(half / arch.radius(), 1.0));
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
  return steps(arch.left) + steps(arch.span) / 2 + steps(arch.beside);
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

/// A leaf's top from x to x, with a corner at the sight edges of its stiles between.
std::vector<Corner> head_line(const ArchedHead& head, Length from, Length to) {
  std::vector<Corner> line;
  Length low = from;
  for (const Length high : {head.left_sight, head.right_sight, to}) {
    if (high <= low || high > to) continue;
    const auto part =
        arch_line(head.opening, head.outward, low, high, Heights::down, head.corners());
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
                 curve_length(head.opening, head.outward, blank.low[0], blank.high[0])}}};
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
  return opening.height_at(outward, x);
}

Length ArchedHead::lowest(Length from, Length to) const {
  return std::min(height_at(from), height_at(to));
}

Length ArchedHead::highest(Length from, Length to) const {
  const Length middle = opening.left + floor_half(opening.span);
  if (from < middle && middle < to) return crown();
  return std::max(height_at(from), height_at(to));
}

std::vector<double> ArchedHead::corners() const {
  std::vector<double> angles;
  for (const Length x : {Length(), left_sight, right_sight, width})
    angles.push_back(opening.angle_at(outward, x));
  if (lip > Length())
    for (const Length x : {body_left, body_right})
      angles.push_back(opening.angle_at(outward - lip, x));
  return angles;
}

Length ArchedHead::lowest_wood(Length from, Length to) const {
  const auto over = [&](Length x) {
    return arch_line(opening, outward, x, x, Heights::down, corners()).front().v;
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

void saw_arch(Assembly& assembly, std::size_t number, const Arch& arch) {
  Piece& rail = assembly.pieces[number];
  const Length right = arch.left + arch.span;
  Feature cut{FeatureKind::arch,
              {},
              {},
              {{SizeName::rise, arch.rise},
               {SizeName::span, arch.span},
               {SizeName::radius, arch.radius_with(Length())},
               {SizeName::along_curve, curve_length(arch, Length(), arch.left, right)},
               {SizeName::at_crown, rail.blank[1] - arch.rise - arch.below},
               {SizeName::tolerance, arch.tolerance}}};
  // Of half an arch how high its higher end is above the rail's lower edge.
  if (arch.is_half())
    cut.sizes.push_back(
        {SizeName::side, curve_end(arch, Length(), arch.beside > Length()).v - arch.foot()});
  std::vector<Corner> sawn = line_to_ends(arch, Length(), arch.left, right, Heights::up);
  for (const Corner& end : {Corner{right, arch.foot()}, Corner{arch.left, arch.foot()}})
    if (curve_end(arch, Length(), end.u == right).v > end.v) sawn.push_back(end);
  cut.prisms.push_back(across_thickness(std::move(sawn), rail, Length(), rail.blank[2]));
  rail.features.push_back(std::move(cut));
}

GrooveRef work_along_arch(Assembly& assembly, std::size_t number, const Arch& arch,
                          FeatureKind kind, const GrooveDesign& groove, Length past) {
  Piece& rail = assembly.pieces[number];
  const Length left = arch.left - past;
  const Length right = arch.left + arch.span + past;
  Feature worked{kind,
                 {},
                 {},
                 {{SizeName::width, groove.width},
                  {SizeName::depth, groove.depth},
                  {SizeName::from_face, groove.from_face},
                  {SizeName::radius, arch.radius_with(groove.depth)},
                  {SizeName::along_curve, curve_length(arch, groove.depth, left, right)}}};
  worked.prisms.push_back(across_thickness(ring(arch, {Length(), groove.depth}, past), rail,
                                           groove.from_face, groove.from_face + groove.width));
  rail.features.push_back(std::move(worked));
  return {number, rail.features.size() - 1};
}

std::vector<Corner> opening_line(const ArchedHead& head, const std::vector<double>& more) {
  std::vector<double> corners = head.corners();
  corners.insert(corners.end(), more.begin(), more.end());
  const Arch& opening = head.opening;
  return arch_line(opening, Length(), opening.left, opening.left + opening.span, Heights::up,
                   corners);
}

void saw_head(Assembly& leaf, std::size_t left, std::size_t right, std::size_t number,
              const ArchedHead& head) {
  const Arch& opening = head.opening;
  const Length none;
  for (const std::size_t stile : {left, right})
    saw_to_head(leaf.pieces[stile], head)
        .sizes.push_back({SizeName::side, head.height_at(stile == left ? none : head.width)});
  Feature& sawn = saw_to_head(leaf.pieces[number], head);
  sawn.sizes[1].size = curve_length(opening, head.outward, none, head.width);
  for (const NamedSize& size :
       {NamedSize{SizeName::rise, head.crown() - head.lowest(none, head.width)},
        {SizeName::span, head.width},
        {SizeName::centre_from_foot, head.centre()},
        {SizeName::tolerance, opening.tolerance},
        {SizeName::opening_rise, opening.rise},
        {SizeName::opening_span, opening.span},
        {SizeName::opening_radius, opening.radius_with(none)}})
    sawn.sizes.push_back(size);
  const std::vector<Corner> line = head_line(head, none, head.width);
  // One leaf of a pair may end beside the crown.
  leaf.size[1] = std::max_element(line.begin(), line.end(), [](const Corner& a, const Corner& b) {
                   return a.v < b.v;
                 })->v;
  for (std::vector<Corner>& corners : above(line, leaf.size[1]))
    leaf.beyond.push_back({2, none, leaf.size[2], std::move(corners)});
  leaf.fits.front().arch = opening_line(head, {});
}

void rebate_for_arched_lip(Piece& piece, const ArchedHead& head, Length lip) {
  const Box blank = placed_blank(piece);
  const Length from = std::max(blank.low[0], head.body_left);
  const Length to = std::min(blank.high[0], head.body_right);
  Feature rebate{FeatureKind::lip_rebate,
                 {},
                 {},
                 {{SizeName::width, head.lip}, {SizeName::depth, piece.blank[2] - lip}}};
  const std::vector<Corner> line =
      arch_line(head.opening, head.outward - head.lip, from, to, Heights::down, head.corners());
  for (std::vector<Corner>& corners : above(line, blank.high[1]))
    rebate.prisms.push_back(across_thickness(std::move(corners), piece, lip, piece.blank[2]));
  piece.features.push_back(std::move(rebate));
}

void cut_arched_top(Piece& panel, const Arch& arch, Length outward, Heights heights) {
  const Box blank = placed_blank(panel);
  const std::vector<Corner> line =
      arch.is_half() && heights == Heights::down
          // With no corner of its own at its ends, where a rebate goes on over it.
          ? arch_line(arch, outward, blank.low[0], blank.high[0], heights)
          : line_to_ends(arch, outward, blank.low[0], blank.high[0], heights);
  Feature cut{FeatureKind::arched_top,
              {},
              {},
              {{SizeName::radius, arch.radius_with(outward)},
               {SizeName::along_curve, curve_length(arch, outward, blank.low[0], blank.high[0])},
               {SizeName::side, arch.height_at(outward, blank.low[0]) - blank.low[1]}}};
  // Under half of an arch its right side is not as high as its left.
  if (arch.is_half())
    cut.sizes.push_back({SizeName::rise, arch.height_at(outward, blank.high[0]) -
                                             arch.height_at(outward, blank.low[0])});
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

Corner curve_end(const Arch& arch, Length outward, bool right) {
  const Length x = arch.end(right) + (right ? outward : -outward);
  return line_to_ends(arch, outward, x, x, Heights::up).front();
}

}  // namespace haunch
