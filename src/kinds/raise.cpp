#include "raise.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "arc.h"
#include "rounding.h"

namespace haunch {
namespace {

/// A place on the slope: how far in from the panel's edge, and how deep below the field.
struct SlopePoint {
  Length in, deep;
};

double steps(Length length) {
  return static_cast<double>(length.steps());
}

/// The circle that leaves the tongue level and comes to the foot of the shoulder: its radius r from
/// run² + (r - rise)² = r².
double cove_radius(double run, double rise) {
  return (run * run + rise * rise) / (2 * rise);
}

/// A corner where the cove is `play` above the tongue, so that what the lip there comes to is
/// exact: the slope is least near the tongue, where a chord's 0.02 mm come to tenths along it.
void meet_lip(std::vector<SlopePoint>& slope, double radius, Length play) {
  const SlopePoint& foot = slope.front();
  const Length deep = foot.deep - play;
  if (play <= Length() || deep <= slope.back().deep) return;
  const double up = radius - steps(play);
  const SlopePoint lip{foot.in + nearest_step(std::sqrt(radius * radius - up * up)), deep};
  const auto beyond = std::find_if(slope.begin(), slope.end(),
                                   [&](const SlopePoint& it) { return it.deep <= deep; });
  if (beyond->deep == deep)
    *beyond = lip;
  else
    slope.insert(beyond, lip);
}

/// From the tongue's end up to the shoulder's foot. A tongue of 0 keeps one step of flat, so that
/// there is an edge to measure at.
std::vector<SlopePoint> slope_of(const RaiseDesign& raise, Length depth, Length play) {
  const SlopePoint foot{std::max(raise.tongue, Length::from_steps(1)), depth};
  const SlopePoint head{raise.width, raise.shoulder};
  if (raise.profile == Profile::bevel) return {foot, head};
  const double run = steps(head.in - foot.in);
  const double rise = steps(foot.deep - head.deep);
  const double radius = cove_radius(run, rise);
  const double turn = std::atan2(run, radius - rise);
  const int parts = chords_of(radius, turn);
  std::vector<SlopePoint> slope{foot};
  for (int i = 1; i < parts; ++i) {
    const double angle = turn * i / parts;
    slope.push_back({foot.in + nearest_step(radius * std::sin(angle)),
                     foot.deep - nearest_step(radius * (1 - std::cos(angle)))});
  }
  slope.push_back(head);
  meet_lip(slope, radius, play);
  return slope;
}

/// The void over the slope along one edge: axis 0 or 1 runs across it, and the edge is at that
/// axis's low or high end.
Prism slope_prism(const Piece& panel, const std::vector<SlopePoint>& slope, std::size_t across,
                  bool at_high, bool at_back) {
  Prism prism{1 - across, Length(), panel.blank[1 - across], {}};
  const auto add = [&](Length in, Length deep) {
    const Length u = at_high ? panel.blank[across] - in : in;
    prism.outline.push_back({u, at_back ? panel.blank[2] - deep : deep});
  };
  add(slope.back().in, Length());
  add(slope.front().in, Length());
  for (const SlopePoint& point : slope)
    if (point.deep > Length()) add(point.in, point.deep);
  return prism;
}

/// The wood over the tongue along all four edges.
std::vector<Box> over_tongue(const Piece& panel, Length tongue, Length from, Length to) {
  const Length none;
  const Length length = panel.blank[0];
  const Length width = panel.blank[1];
  return {Box{{none, none, from}, {length, tongue, to}},
          Box{{none, width - tongue, from}, {length, width, to}},
          Box{{none, tongue, from}, {tongue, width - tongue, to}},
          Box{{length - tongue, tongue, from}, {length, width - tongue, to}}};
}

}  // namespace

bool cove_can_rise(const RaiseDesign& raise, Length depth) {
  return depth - raise.shoulder <= raise.width - raise.tongue;
}

void raise_round(Piece& panel, const RaiseDesign& raise, Length depth, bool at_back, Length play) {
  const std::vector<SlopePoint> slope = slope_of(raise, depth, play);
  const Length from = at_back ? panel.blank[2] - depth : Length();
  Feature feature{FeatureKind::raise,
                  {},
                  over_tongue(panel, slope.front().in, from, from + depth),
                  {{SizeName::width, raise.width},
                   {SizeName::tongue, raise.tongue},
                   {SizeName::shoulder, raise.shoulder},
                   {SizeName::depth, depth}}};
  if (raise.profile == Profile::cove)
    feature.sizes.push_back(
        {SizeName::radius, nearest_step(cove_radius(steps(raise.width - slope.front().in),
                                                    steps(depth - raise.shoulder)))});
  for (const std::size_t across : {std::size_t{1}, std::size_t{0}})
    for (const bool at_high : {false, true})
      feature.prisms.push_back(slope_prism(panel, slope, across, at_high, at_back));
  panel.features.push_back(std::move(feature));
}

std::vector<RaiseLayer> raise_layers(const RaiseDesign& raise, Length depth, Length play,
                                     Length most) {
  const std::vector<SlopePoint> slope = slope_of(raise, depth, play);
  const auto in_at = [&](Length deep) {
    const auto above = std::find_if(slope.begin() + 1, slope.end() - 1,
                                    [&](const SlopePoint& it) { return it.deep <= deep; });
    const SlopePoint& below = *(above - 1);
    const double share = steps(below.deep - deep) / steps(below.deep - above->deep);
    return below.in +
           Length::from_steps(static_cast<std::int64_t>(share * steps(above->in - below.in)));
  };
  const Length rise = depth - raise.shoulder;
  const std::int64_t count = ceiling_multiple(rise, most).steps() / most.steps();
  std::vector<Length> levels{depth - play};
  for (std::int64_t i = 0; i <= count; ++i)
    levels.push_back(raise.shoulder + floor_divide(rise * i, count));
  std::sort(levels.begin(), levels.end());
  levels.erase(std::unique(levels.begin(), levels.end()), levels.end());
  std::vector<RaiseLayer> layers;
  if (raise.shoulder > Length()) layers.push_back({Length(), raise.shoulder, raise.width});
  for (std::size_t i = 1; i < levels.size(); ++i)
    if (levels[i - 1] >= raise.shoulder && levels[i] <= depth)
      layers.push_back({levels[i - 1], levels[i], in_at(levels[i])});
  return layers;
}

}  // namespace haunch
