#include "glazing.h"

#include <algorithm>
#include <array>
#include <utility>

#include "arch_outline.h"
#include "junction.h"
#include "marks.h"
#include "mitre.h"
#include "share.h"

namespace haunch {
namespace {

constexpr std::array<Axis, 3> kUpright{Axis::y, Axis::x, Axis::z};
constexpr std::array<Axis, 3> kLevel{Axis::x, Axis::y, Axis::z};

/// One side of a light: what it is called, its rebate, and the way glass and bead go in to it.
struct Side {
  std::string_view name;
  const LightSide& rebate;
  Heading heading;
};

std::array<Side, 4> sides_of(const Light& light) {
  return {Side{"left bead", light.left, {Axis::x, false}},
          Side{"right bead", light.right, {Axis::x, true}},
          Side{"head bead", light.head, {Axis::y, true}},
          Side{"foot bead", light.foot, {Axis::y, false}}};
}

void join(Assembly& assembly, JointKind kind, const Side& side, std::size_t enters,
          const Clearances& design) {
  const GrooveRef& rebate = side.rebate.rebate;
  Joint joint = Junction(assembly, rebate.piece, enters, side.heading).joint(kind, {});
  joint.has_shoulder = false;
  joint.design = design;
  assembly.pieces[rebate.piece].features[rebate.feature].joints.push_back(assembly.joints.size());
  assembly.joints.push_back(std::move(joint));
}

/// A bead's mitre where it meets the one at an arched head: a line from the sight corner, where the
/// arch springs, to the corner of the rebates, where the curve over their bottom ends.
struct CurvedMitre {
  Corner sight, outer;
};

CurvedMitre mitre_at(const Arch& arch, Length reach, bool right) {
  return {curve_end(arch, Length(), right), curve_end(arch, reach, right)};
}

/// Cuts a bead's mitred end off: what lies beyond the line, up or down to a height.
void cut_mitre(Feature& mitres, const Piece& bead, const CurvedMitre& line, Length beyond) {
  std::vector<Corner> corners{line.sight, line.outer};
  for (const Corner& end : {line.outer, line.sight})
    if (end.v != beyond) corners.push_back({end.u, beyond});
  if (corners.size() > 2)
    mitres.prisms.push_back(across_thickness(corners, bead, Length(), bead.blank[2]));
}

/// What a bead is cut from, along its side from corner to corner of the rebates.
Box room_of_bead(const Assembly& assembly, const Side& side, const Light& light,
                 const GlassDesign& glass) {
  const Length reach = side.rebate.depth;
  const auto axis = static_cast<std::size_t>(side.heading.axis);
  Box room{
      {light.wide.low - light.left.depth, light.high.low - light.foot.depth,
       assembly.size[2] - glass.bead(assembly.size[2])},
      {light.wide.high + light.right.depth, light.high.high + light.head.depth, assembly.size[2]}};
  if (light.arch != nullptr)
    room.high[1] = axis == 0 ? curve_end(*light.arch, reach, side.heading.upwards).v
                             : light.arch->springing + light.arch->rise + reach;
  if (!side.heading.upwards)
    room.high[axis] = room.low[axis] + reach;
  else if (axis == 1 && light.arch != nullptr)
    room.low[1] = light.arch->springing;
  else
    room.low[axis] = room.high[axis] - reach;
  return room;
}

/// Of a bead in a straight light.
Feature straight_mitres(const Piece& bead, const Side& side, const Light& light) {
  const bool upright = side.heading.axis == Axis::x;
  return mitred_ends(bead.blank, !side.heading.upwards, (upright ? light.foot : light.left).depth,
                     (upright ? light.head : light.right).depth);
}

/// The ends of a bead: where two of one depth meet at 45 degrees.
Feature mitres_of(const Piece& bead, const Side& side, const Light& light) {
  Feature mitres = straight_mitres(bead, side, light);
  if (light.arch == nullptr || (side.heading.axis == Axis::y && !side.heading.upwards))
    return mitres;
  const Length reach = light.head.depth;
  mitres.sizes.front().size = reach;
  const Box room = placed_blank(bead);
  if (side.heading.axis == Axis::x) {
    mitres.prisms.pop_back();
    cut_mitre(mitres, bead, mitre_at(*light.arch, reach, side.heading.upwards), room.high[1]);
    return mitres;
  }
  mitres.prisms.clear();
  for (const bool right : {false, true})
    cut_mitre(mitres, bead, mitre_at(*light.arch, reach, right), room.low[1]);
  return mitres;
}

/// Beads lie in rebates of their own depth; where two meet, the mitre goes from the corner of the
/// rebates to that of the sight edges.
void add_bead(Assembly& assembly, const Side& side, const Light& light, const GlassDesign& glass,
              const std::string& which, const std::string& key) {
  const bool upright = side.heading.axis == Axis::x;
  const bool arched = light.arch != nullptr && !upright && side.heading.upwards;
  const Box room = room_of_bead(assembly, side, light, glass);
  const Triple blank{room.extent(upright ? 1 : 0), room.extent(upright ? 0 : 1), room.extent(2)};
  const std::size_t piece = add_piece(assembly, std::string(side.name) + which, Role::bead, blank,
                                      {room.low, upright ? kUpright : kLevel});
  Piece& bead = assembly.pieces[piece];
  bead.key = key + "/" + in_key(std::string(side.name));
  bead.features.push_back(mitres_of(bead, side, light));
  if (arched) {
    Arch own = *light.arch;
    own.below = Length();
    saw_arch(assembly, piece, own);
    // To the step as the rebate that it lies in.
    cut_arched_top(bead, own, light.head.depth, Heights::up);
  }
  // Pinned through, to the rebate's bottom that it lies on.
  bead.held = side.heading.upwards ? Held::high_edge : Held::low_edge;
  join(assembly, JointKind::bead_in_rebate, side, piece, {{}, {}, Length(), {}});
  assembly.joints.back().arched = arched;
}

void glaze_pane(Assembly& assembly, const Light& light, const GlassDesign& glass,
                const std::string& which, const std::string& key) {
  const auto bite = [&](const LightSide& side) { return side.depth - glass.edge_clearance; };
  const Place place{{light.wide.low - bite(light.left), light.high.low - bite(light.foot),
                     glass.front + glass.bedding},
                    kUpright};
  const Length top =
      light.arch != nullptr ? light.arch->springing + light.arch->rise : light.high.high;
  const Triple blank{top - light.high.low + bite(light.head) + bite(light.foot),
                     light.wide.high - light.wide.low + bite(light.left) + bite(light.right),
                     glass.thickness};
  const std::size_t pane = add_piece(assembly, (glass.sealed ? "sealed unit" : "glass") + which,
                                     Role::glass, blank, place);
  Piece& its = assembly.pieces[pane];
  its.key = key;
  its.matter = Matter::glass;
  its.material = glass.material;
  if (light.arch != nullptr) cut_arched_top(its, *light.arch, bite(light.head));
  for (const Side& side : sides_of(light)) {
    join(assembly, glass.sealed ? JointKind::sealed_unit_in_rebate : JointKind::glass_in_rebate,
         side, pane, {{}, {}, glass.edge_clearance, bite(side.rebate), glass.bedding});
    assembly.joints.back().arched =
        light.arch != nullptr && side.heading.axis == Axis::y && side.heading.upwards;
  }
  for (const Side& side : sides_of(light))
    add_bead(assembly, side, light, glass, which, key);
}

}  // namespace

Length GlassDesign::widest_pane(Length light) const {
  if (!bars || bars->across == 1) return light + bite() * 2;
  const auto panes = static_cast<std::int64_t>(bars->across);
  const Length sight = share_evenly(light - bars->width * (panes - 1), bars->across).back();
  const Length at_bar = bars->rebate - edge_clearance;
  return sight + at_bar + (panes > 2 ? std::max(bite(), at_bar) : bite());
}

GrooveRef rebate_for_glass(Assembly& assembly, std::size_t piece, Edge edge, Strip along,
                           const GlassDesign& glass) {
  const Piece& its = assembly.pieces[piece];
  const Length origin = its.place.origin[static_cast<std::size_t>(its.place.axes[0])];
  return work_along_edge(assembly, piece, edge, FeatureKind::glass_rebate,
                         {glass.rebate, its.blank[2] - glass.front, glass.front},
                         Stretch{along.low - origin, along.high - origin});
}

Length low_end(const Arch& arch, Length depth, bool right) {
  const Length sight =
      line_to_ends(arch, depth, arch.end(right), arch.end(right), Heights::up).front().v;
  return std::min(curve_end(arch, depth, right).v, sight);
}

void rise_with_arch(Assembly& assembly, const GrooveRef& rebate, const Arch& arch, Length depth) {
  Piece& upright = assembly.pieces[rebate.piece];
  Feature& feature = upright.features[rebate.feature];
  const bool right = placed_blank(upright).low[0] >= arch.end(true);
  const Length from = right ? arch.end(true) : arch.left - depth;
  std::vector<Corner> rising = line_to_ends(arch, depth, from, from + depth, Heights::up);
  const Length low = low_end(arch, depth, right);
  const Length at_from = rising.front().v;
  if (rising.back().v > low) rising.push_back({from + depth, low});
  if (at_from > low) rising.push_back({from, low});
  if (rising.size() < 3) return;
  const Box& straight = feature.cuts.front();
  feature.prisms.push_back(
      across_thickness(std::move(rising), upright, straight.low[2], straight.high[2]));
}

void glaze(Assembly& assembly, const Light& light, const GlassDesign& glass,
           const std::string& which, const std::string& key) {
  if (!glass.bars) return glaze_pane(assembly, light, glass, which, key);
  const std::vector<Light> panes = divide_light(assembly, light, *glass.bars, which, key);
  for (std::size_t pane = 0; pane < panes.size(); ++pane) {
    const std::string number = std::to_string(pane + 1);
    std::string its_name = which;
    its_name.append(", pane ").append(number);
    std::string its_key = key;
    its_key.append("/pane-").append(number);
    glaze_pane(assembly, panes[pane], glass, its_name, its_key);
  }
}

}  // namespace haunch
