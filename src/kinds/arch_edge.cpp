#include "arch_edge.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "arch_outline.h"

namespace haunch {
namespace {

/// A layer of a moulding: so deep below the face, and from where to where from the edge.
struct MouldingLayer {
  Length from, to;
  Curves across;
};

/// Where an outline's level or upright sides end, so that these are exact, and between those as
/// many levels as there are layers.
std::vector<Length> levels_of(const std::vector<MouldingPoint>& outline) {
  std::vector<Length> levels{outline.front().deep, outline.front().deep};
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const MouldingPoint& a = outline[i];
    const MouldingPoint& b = outline[(i + 1) % outline.size()];
    levels[0] = std::min(levels[0], a.deep);
    levels[1] = std::max(levels[1], a.deep);
    if (a.from_edge == b.from_edge || a.deep == b.deep)
      levels.insert(levels.end(), {a.deep, b.deep});
  }
  std::sort(levels.begin(), levels.end());
  levels.erase(std::unique(levels.begin(), levels.end()), levels.end());
  std::vector<Length> all{levels.front()};
  for (std::size_t i = 1; i < levels.size(); ++i) {
    const Length deep = levels[i] - levels[i - 1];
    const std::int64_t count = ceiling_multiple(deep, kArchLayer).steps() / kArchLayer.steps();
    for (std::int64_t n = 1; n <= count; ++n)
      all.push_back(levels[i - 1] + floor_divide(deep * n, count));
  }
  return all;
}

/// How far from the edge a side of an outline is at a depth between its ends.
Length from_edge_at(const MouldingPoint& a, const MouldingPoint& b, Length deep) {
  const auto steps = [](Length length) { return static_cast<double>(length.steps()); };
  const double share = steps(deep - a.deep) / steps(b.deep - a.deep);
  return a.from_edge +
         Length::from_steps(static_cast<std::int64_t>(share * steps(b.from_edge - a.from_edge)));
}

/// All that an outline is between two depths.
Curves across_layer(const std::vector<MouldingPoint>& outline, Length from, Length to) {
  std::vector<Length> places;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    MouldingPoint a = outline[i];
    MouldingPoint b = outline[(i + 1) % outline.size()];
    if (a.deep > b.deep) std::swap(a, b);
    if (b.deep <= from || a.deep >= to) continue;
    places.push_back(from_edge_at(a, b, std::max(a.deep, from)));
    places.push_back(from_edge_at(a, b, std::min(b.deep, to)));
  }
  const auto [least, most] = std::minmax_element(places.begin(), places.end());
  return {*least, *most};
}

std::vector<MouldingLayer> layers_of(const std::vector<MouldingPoint>& outline) {
  const std::vector<Length> levels = levels_of(outline);
  std::vector<MouldingLayer> layers;
  for (std::size_t i = 1; i < levels.size(); ++i)
    layers.push_back({levels[i - 1], levels[i], across_layer(outline, levels[i - 1], levels[i])});
  std::erase_if(layers, [](const MouldingLayer& it) { return it.across.inner >= it.across.outer; });
  return layers;
}

/// What straight parts of a raise are along the upper edge, where the grain is upright or level:
/// one of the boxes over the tongue, and one slope.
void drop_upper_edge(Feature& raise, bool upright) {
  constexpr std::ptrdiff_t kBoxLevel = 1, kBoxUpright = 3, kSlopeLevel = 1, kSlopeUpright = 3;
  raise.cuts.erase(raise.cuts.begin() + (upright ? kBoxUpright : kBoxLevel));
  raise.prisms.erase(raise.prisms.begin() + (upright ? kSlopeUpright : kSlopeLevel));
}

}  // namespace

void stick_along_arch(Assembly& assembly, std::size_t number, const Arch& arch,
                      const EdgeDesign& design, Length past) {
  Piece& rail = assembly.pieces[number];
  Feature moulding = moulding_of(design);
  moulding.sizes.push_back({SizeName::tolerance, arch.tolerance});
  for (const auto& outline : moulding_cuts(design))
    for (const MouldingLayer& layer : layers_of(outline)) {
      const std::vector<Corner> corners = ring(arch, layer.across, past);
      moulding.prisms.push_back(across_thickness(corners, rail, layer.from, layer.to));
      if (design.moulded_back())
        moulding.prisms.push_back(
            across_thickness(corners, rail, rail.blank[2] - layer.to, rail.blank[2] - layer.from));
    }
  rail.features.push_back(std::move(moulding));
}

void raise_round_arch(Piece& panel, const Arch& arch, Length outward, const RaiseDesign& raise,
                      Length depth, bool at_back, Length play) {
  raise_round(panel, raise, depth, at_back, play);
  Feature& feature = panel.features.back();
  drop_upper_edge(feature, panel.place.axes[0] == Axis::y);
  const Box blank = placed_blank(panel);
  const Length thick = panel.blank[2];
  for (const RaiseLayer& layer : raise_layers(raise, depth, play, kArchLayer)) {
    const auto line =
        line_to_ends(arch, outward - layer.in, blank.low[0], blank.high[0], Heights::up);
    for (std::vector<Corner>& corners : above(line, blank.high[1]))
      feature.prisms.push_back(across_thickness(std::move(corners), panel,
                                                at_back ? thick - layer.to : layer.from,
                                                at_back ? thick - layer.from : layer.to));
  }
}

}  // namespace haunch
