#include "glazing.h"

#include <algorithm>
#include <array>
#include <utility>

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

/// Beads lie in rebates of their own depth; where two meet, the mitre goes from the corner of the
/// rebates to that of the sight edges.
void add_bead(Assembly& assembly, const Side& side, const Light& light, const GlassDesign& glass,
              const std::string& which, const std::string& key) {
  const bool upright = side.heading.axis == Axis::x;
  const Length reach = side.rebate.depth;
  const Length thickness = glass.bead(assembly.size[2]);
  const Strip along = upright ? light.high : light.wide;
  const Strip across = upright ? light.wide : light.high;
  const Length at_low = (upright ? light.foot : light.left).depth;
  const Length at_high = (upright ? light.head : light.right).depth;
  const Length low = side.heading.upwards ? across.high : across.low - reach;
  const Length from = along.low - at_low;
  const Place place{{upright ? low : from, upright ? from : low, assembly.size[2] - thickness},
                    upright ? kUpright : kLevel};
  const Triple blank{along.high - along.low + at_low + at_high, reach, thickness};
  const std::size_t piece =
      add_piece(assembly, std::string(side.name) + which, Role::bead, blank, place);
  Piece& bead = assembly.pieces[piece];
  bead.key = key + "/" + in_key(std::string(side.name));
  bead.features.push_back(mitred_ends(blank, !side.heading.upwards, at_low, at_high));
  // Pinned through, to the rebate's bottom that it lies on.
  bead.held = side.heading.upwards ? Held::high_edge : Held::low_edge;
  join(assembly, JointKind::bead_in_rebate, side, piece, {{}, {}, Length(), {}});
}

void glaze_pane(Assembly& assembly, const Light& light, const GlassDesign& glass,
                const std::string& which, const std::string& key) {
  const auto bite = [&](const LightSide& side) { return side.depth - glass.edge_clearance; };
  const Place place{{light.wide.low - bite(light.left), light.high.low - bite(light.foot),
                     glass.front + glass.bedding},
                    kUpright};
  const Triple blank{light.high.high - light.high.low + bite(light.head) + bite(light.foot),
                     light.wide.high - light.wide.low + bite(light.left) + bite(light.right),
                     glass.thickness};
  const std::size_t pane = add_piece(assembly, (glass.sealed ? "sealed unit" : "glass") + which,
                                     Role::glass, blank, place);
  assembly.pieces[pane].key = key;
  assembly.pieces[pane].matter = Matter::glass;
  assembly.pieces[pane].material = glass.material;
  for (const Side& side : sides_of(light))
    join(assembly, glass.sealed ? JointKind::sealed_unit_in_rebate : JointKind::glass_in_rebate,
         side, pane, {{}, {}, glass.edge_clearance, bite(side.rebate), glass.bedding});
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
