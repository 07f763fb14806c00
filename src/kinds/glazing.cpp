#include "glazing.h"

#include <array>
#include <utility>

#include "junction.h"
#include "marks.h"
#include "mitre.h"

namespace haunch {
namespace {

constexpr std::array<Axis, 3> kUpright{Axis::y, Axis::x, Axis::z};
constexpr std::array<Axis, 3> kLevel{Axis::x, Axis::y, Axis::z};

/// One side of a light: what it is called, its rebate, and the way glass and bead go in to it.
struct Side {
  std::string_view name;
  const GrooveRef& rebate;
  Heading heading;
};

std::array<Side, 4> sides_of(const LightSides& sides) {
  return {Side{"left bead", sides.left, {Axis::x, false}},
          Side{"right bead", sides.right, {Axis::x, true}},
          Side{"head bead", sides.head, {Axis::y, true}},
          Side{"foot bead", sides.foot, {Axis::y, false}}};
}

void join(Assembly& assembly, JointKind kind, const Side& side, std::size_t enters,
          const Clearances& design) {
  Joint joint = Junction(assembly, side.rebate.piece, enters, side.heading).joint(kind, {});
  joint.has_shoulder = false;
  joint.design = design;
  assembly.pieces[side.rebate.piece].features[side.rebate.feature].joints.push_back(
      assembly.joints.size());
  assembly.joints.push_back(std::move(joint));
}

void add_bead(Assembly& assembly, const Side& side, Strip wide, Strip high,
              const GlassDesign& glass, const std::string& which, const std::string& key) {
  const bool upright = side.heading.axis == Axis::x;
  const Length reach = glass.rebate;
  const Length thickness = glass.bead(assembly.size[2]);
  const Strip along = upright ? high : wide;
  const Strip across = upright ? wide : high;
  const Length low = side.heading.upwards ? across.high : across.low - reach;
  const Length from = along.low - reach;
  const Place place{{upright ? low : from, upright ? from : low, assembly.size[2] - thickness},
                    upright ? kUpright : kLevel};
  const Triple blank{along.high - along.low + reach * 2, reach, thickness};
  const std::size_t piece =
      add_piece(assembly, std::string(side.name) + which, Role::bead, blank, place);
  Piece& bead = assembly.pieces[piece];
  bead.key = key + "/" + in_key(std::string(side.name));
  bead.features.push_back(mitred_ends(blank, !side.heading.upwards));
  // Pinned through, to the rebate's bottom that it lies on.
  bead.held = side.heading.upwards ? Held::high_edge : Held::low_edge;
  join(assembly, JointKind::bead_in_rebate, side, piece, {{}, {}, Length(), {}});
}

}  // namespace

GrooveRef rebate_for_glass(Assembly& assembly, std::size_t piece, Edge edge, Strip along,
                           const GlassDesign& glass) {
  const Piece& its = assembly.pieces[piece];
  const Length origin = its.place.origin[static_cast<std::size_t>(its.place.axes[0])];
  return work_along_edge(assembly, piece, edge, FeatureKind::glass_rebate,
                         {glass.rebate, its.blank[2] - glass.front, glass.front},
                         Stretch{along.low - origin, along.high - origin});
}

void glaze(Assembly& assembly, const LightSides& sides, Strip wide, Strip high,
           const GlassDesign& glass, const std::string& which, const std::string& key) {
  const Length bite = glass.bite();
  const Place place{{wide.low - bite, high.low - bite, glass.front + glass.bedding}, kUpright};
  const Triple blank{high.high - high.low + bite * 2, wide.high - wide.low + bite * 2,
                     glass.thickness};
  const std::size_t pane = add_piece(assembly, (glass.sealed ? "sealed unit" : "glass") + which,
                                     Role::glass, blank, place);
  assembly.pieces[pane].key = key;
  assembly.pieces[pane].matter = Matter::glass;
  assembly.pieces[pane].material = glass.material;
  const Clearances design{{}, {}, glass.edge_clearance, bite, glass.bedding};
  for (const Side& side : sides_of(sides))
    join(assembly, glass.sealed ? JointKind::sealed_unit_in_rebate : JointKind::glass_in_rebate,
         side, pane, design);
  for (const Side& side : sides_of(sides))
    add_bead(assembly, side, wide, high, glass, which, key);
}

}  // namespace haunch
