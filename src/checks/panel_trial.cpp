#include "panel_trial.h"

#include <algorithm>

#include "readings.h"
#include "rounding.h"
#include "trade_limits.h"

namespace haunch {
namespace {

/// How far a point is lifted off the table: the cup is a parabola across the width.
Length lift(const PanelPoint& point, Length cup, Face hollow, Length width) {
  double from_middle = 1;  // 0 in the middle, 1 at either edge
  if (point.at)
    from_middle =
        2 * static_cast<double>(point.at->steps()) / static_cast<double>(width.steps()) - 1;
  const double of_edge = from_middle * from_middle;
  const double part = hollow == Face::first ? of_edge : 1 - of_edge;
  return nearest_step(static_cast<double>(cup.steps()) * part);
}

Length size_of(Length length) {
  return std::max(length, -length);
}

bool fits(const PanelTongue& tongue, const FitBand& allowed) {
  return tongue.thinnest >= allowed.min && tongue.thickest <= allowed.max;
}

/// The largest cup, up to the one there is, with which the tongue fits everywhere; it does without
/// any, and the wrong only grows with the cup.
Length largest_cup(const PanelDesign& design, const PanelReadings& read, const FitBand& allowed) {
  Length good;
  Length bad = read.cup;
  while (bad - good > Length::from_steps(1)) {
    const Length middle = good + floor_half(bad - good);
    const bool will_do = fits(best_depth(read.remaining, middle, read.hollow, design), allowed);
    (will_do ? good : bad) = middle;
  }
  return good;
}

void advise(PanelTrial& trial, const PanelDesign& design, const PanelReadings& read, Unit unit) {
  const Length limit = most_unequal(unit);
  if (!trial.fits()) {
    const PanelTongue flat = best_depth(read.remaining, Length(), read.hollow, design);
    const bool thin =
        std::any_of(read.remaining.begin(), read.remaining.end(),
                    [&](const PanelPoint& point) { return point.thickness < trial.allowed.min; });
    if (thin) {
      trial.advice.push_back(PanelAdvice::too_thin);
    } else if (fits(flat, trial.allowed)) {
      trial.advice.push_back(PanelAdvice::let_rest);
      trial.flat_enough = largest_cup(design, read, trial.allowed);
    } else {
      trial.advice.push_back(PanelAdvice::register_on_first);
    }
  }
  if (read.cup > Length() && trial.removed > limit)
    trial.advice.push_back(PanelAdvice::alternate_faces);
  if (size_of(trial.removed - trial.tongue.depth) > limit)
    trial.advice.push_back(PanelAdvice::unequal_in_the_end);
  if (trial.advice.empty()) trial.advice.push_back(PanelAdvice::go_on);
}

Length mean_thickness(const std::vector<PanelPoint>& points) {
  std::vector<Length> readings;
  for (const PanelPoint& point : points)
    readings.push_back(point.thickness);
  return sum_up(readings).mean;
}

}  // namespace

FitBand usual_play(Unit unit) {
  return {Length(), limits_in(unit).loosest_panel};
}

Length most_unequal(Unit unit) {
  return unit == Unit::mm ? Length::from_mm_thousandths(1500) : Length::from_inch_parts(1, 16);
}

std::optional<PanelDesign> panel_design(const Assembly& wood, std::size_t number) {
  const Joint& joint = wood.joints[number];
  if (!joint.design.bite || !joint.design.cheeks) return {};
  const Piece& panel = wood.pieces[joint.enters];
  const Box* groove = cut_for(wood, number);
  if (groove == nullptr) return {};
  return PanelDesign{panel.blank[2], panel.blank[1], groove->extent(2) - *joint.design.cheeks,
                     groove->extent(2)};
}

PanelTongue best_depth(const std::vector<PanelPoint>& remaining, Length cup, Face hollow,
                       const PanelDesign& design) {
  std::vector<Length> over;  // what each point asks for
  for (const PanelPoint& point : remaining)
    over.push_back(point.thickness + lift(point, cup, hollow, design.width) - design.tongue);
  const auto [least, most] = std::minmax_element(over.begin(), over.end());
  PanelTongue tongue;
  tongue.depth = std::max(Length(), floor_half(*least + *most));
  tongue.thinnest = design.tongue + *least - tongue.depth;
  tongue.thickest = design.tongue + *most - tongue.depth;
  for (std::size_t i = 0; i < over.size(); ++i) {
    const Length wrong = over[i] - tongue.depth;
    if (size_of(wrong) <= size_of(tongue.worst)) continue;
    tongue.worst = wrong;
    tongue.worst_point = i;
  }
  return tongue;
}

PanelTrial try_panel(const PanelDesign& design, const PanelReadings& readings, Unit unit) {
  PanelTrial trial;
  const PanelTongue free = best_depth(readings.remaining, readings.cup, readings.hollow, design);
  const PanelTongue flat = best_depth(readings.remaining, Length(), readings.hollow, design);
  trial.tongue = readings.pressed ? flat : free;
  trial.other = readings.pressed ? free : flat;
  trial.allowed = {design.groove - readings.play.max, design.groove - readings.play.min};
  trial.removed_is_designed = !readings.removed;
  trial.removed = readings.removed.value_or(
      std::max(Length(), design.thickness - mean_thickness(readings.remaining)));
  const auto [thin, thick] = std::minmax_element(
      readings.remaining.begin(), readings.remaining.end(),
      [](const PanelPoint& a, const PanelPoint& b) { return a.thickness < b.thickness; });
  trial.stock_varies = thick->thickness - thin->thickness;
  advise(trial, design, readings, unit);
  return trial;
}

}  // namespace haunch
