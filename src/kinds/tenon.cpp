#include "tenon.h"

#include <algorithm>
#include <utility>

#include "share.h"

namespace haunch {
namespace {

constexpr int kMostTenons = 50;

/// Boxes at the end of a piece, measured from its tip as if it were the low end of its length.
struct EndCutter {
  Length length;  // of the piece
  bool high_end;  // which end is worked
  std::vector<Box> cuts;

  void cut(Length from_tip, Length to_tip, Strip width, Strip thickness) {
    if (from_tip >= to_tip || width.low >= width.high || thickness.low >= thickness.high) return;
    const Length low = high_end ? length - to_tip : from_tip;
    const Length high = high_end ? length - from_tip : to_tip;
    cuts.push_back({{low, width.low, thickness.low}, {high, width.high, thickness.high}});
  }
};

/// A strip of a piece's end that stands, to its own depth and between its own cheeks.
struct Standing {
  Strip width;
  Length depth;
  Strip cheeks;
};

std::vector<Standing> standing_strips(const TenonDesign& tenon) {
  std::vector<Standing> strips;
  for (const Strip& strip : tenon.layout.tenons)
    strips.push_back({strip, tenon.depth, {tenon.from_face, tenon.from_face + tenon.thickness}});
  for (const Strip& strip : tenon.layout.haunches)
    strips.push_back({strip,
                      tenon.haunch_depth,
                      {tenon.haunch_from_face, tenon.haunch_from_face + tenon.haunch_thickness}});
  std::erase_if(strips, [](const Standing& strip) {
    return strip.depth <= Length() || strip.width.low >= strip.width.high;
  });
  std::sort(strips.begin(), strips.end(),
            [](const Standing& a, const Standing& b) { return a.width.low < b.width.low; });
  return strips;
}

/// The wood to take off so that only the tenons and haunches stand: the cheeks over the whole width
/// first, then what single strips need besides.
std::vector<Box> tenon_cuts(const Piece& piece, const TenonDesign& tenon, bool high_end) {
  EndCutter end{piece.blank[0], high_end, {}};
  const Strip whole_width{Length(), piece.blank[1]};
  const Length thickness = piece.blank[2];
  const std::vector<Standing> strips = standing_strips(tenon);
  Strip outermost = strips.front().cheeks;
  for (const Standing& strip : strips)
    outermost = {std::min(outermost.low, strip.cheeks.low),
                 std::max(outermost.high, strip.cheeks.high)};
  end.cut(Length(), tenon.depth, whole_width, {Length(), outermost.low});
  end.cut(Length(), tenon.depth, whole_width, {outermost.high, thickness});
  Length done;
  for (const Standing& strip : strips) {
    end.cut(Length(), tenon.depth, {done, strip.width.low}, outermost);
    end.cut(Length(), tenon.depth - strip.depth, strip.width, outermost);
    end.cut(tenon.depth - strip.depth, tenon.depth, strip.width, {outermost.low, strip.cheeks.low});
    end.cut(tenon.depth - strip.depth, tenon.depth, strip.width,
            {strip.cheeks.high, outermost.high});
    done = strip.width.high;
  }
  end.cut(Length(), tenon.depth, {done, whole_width.high}, outermost);
  return std::move(end.cuts);
}

/// The mortise for one tenon: a box from the receiver's sight edge to the mortise's bottom, as far
/// as there is wood.
Box mortise_cut(const Piece& receiver, const Piece& enterer, const Strip& tenon, Heading heading,
                Length depth, const MortiseDesign& mortise) {
  const auto along = static_cast<std::size_t>(heading.axis);
  const auto across = static_cast<std::size_t>(enterer.place.axes[1]);
  const Box blank = placed_blank(receiver);
  Box box = blank;
  if (heading.upwards)
    box.high[along] = std::min(blank.high[along], blank.low[along] + depth);
  else
    box.low[along] = std::max(blank.low[along], blank.high[along] - depth);
  const Length base = enterer.place.origin[across];
  box.low[across] = std::max(blank.low[across], base + tenon.low - mortise.edge_clearance);
  box.high[across] = std::min(blank.high[across], base + tenon.high + mortise.edge_clearance);
  box.low[2] = blank.low[2] + mortise.from_face;
  box.high[2] = box.low[2] + mortise.width;
  return in_own_axes(box, receiver.place);
}

MortiseSizes cut_mortises(Assembly& assembly, const Joint& joint, const TenonDesign& tenon,
                          const MortiseDesign& mortise, std::optional<Length> receiver_shoulder) {
  Piece& receiver = assembly.pieces[joint.receives];
  const Piece& enterer = assembly.pieces[joint.enters];
  MortiseSizes sizes{
      mortise.width, tenon.depth + mortise.bottom_clearance, mortise.from_face, {}, {}};
  Feature feature{"mortise", {assembly.joints.size()}, {}, {}};
  for (const Strip& strip : tenon.layout.tenons) {
    const Box cut = mortise_cut(receiver, enterer, strip, joint.heading, sizes.depth, mortise);
    feature.cuts.push_back(cut);
    sizes.each.push_back({cut.low[0], cut.extent(0)});
  }
  if (receiver_shoulder) sizes.from_shoulder = sizes.each.front().from_foot - *receiver_shoulder;
  feature.sizes = {{"width", sizes.width}, {"depth", sizes.depth}, {"from_face", sizes.from_face}};
  receiver.features.push_back(std::move(feature));
  return sizes;
}

std::vector<TenonSpan> spans_of(const std::vector<Strip>& strips) {
  std::vector<TenonSpan> spans;
  for (const Strip& strip : strips)
    spans.push_back({strip.low, strip.high - strip.low});
  std::sort(spans.begin(), spans.end(),
            [](const TenonSpan& a, const TenonSpan& b) { return a.from_edge < b.from_edge; });
  return spans;
}

TenonSizes tenon_sizes(const TenonDesign& tenon) {
  TenonSizes sizes{
      tenon.thickness, {}, tenon.depth, tenon.from_face, spans_of(tenon.layout.tenons), {}, {}, {}};
  sizes.width = sizes.each.front().width;
  if (tenon.haunch_depth == Length() || tenon.layout.haunches.empty()) return sizes;
  sizes.haunches = spans_of(tenon.layout.haunches);
  sizes.haunch_depth = tenon.haunch_depth;
  sizes.haunch_thickness = tenon.haunch_thickness;
  return sizes;
}

}  // namespace

std::vector<Strip> divide_tenon(Strip across, std::optional<Length> limit, Length gap) {
  const Length whole = across.high - across.low;
  for (int count = 1; count <= kMostTenons; ++count) {
    const Length left = whole - gap * (count - 1);
    if (left <= Length()) return {};
    const std::vector<Length> widths = share_evenly(left, static_cast<std::size_t>(count));
    if (limit && widths.back() > *limit) continue;
    std::vector<Strip> strips;
    Length low = across.low;
    for (const Length width : widths) {
      strips.push_back({low, low + width});
      low += width + gap;
    }
    return strips;
  }
  return {};
}

void join_by_tenon(Assembly& assembly, const GrooveRef& receives, std::size_t enters,
                   Heading heading, const TenonDesign& tenon, const MortiseDesign& mortise,
                   std::optional<Length> receiver_shoulder) {
  Joint joint;
  joint.kind = tenon.stub ? "stub-tenon" : "mortise-and-tenon";
  joint.receives = receives.piece;
  joint.enters = enters;
  joint.heading = heading;
  joint.design.cheeks = mortise.width - tenon.thickness;
  joint.design.bottom = mortise.bottom_clearance;
  joint.tenon = tenon_sizes(tenon);
  const std::size_t number = assembly.joints.size();
  if (tenon.stub) {
    assembly.pieces[receives.piece].features[receives.feature].joints.push_back(number);
  } else {
    joint.design.edges = mortise.edge_clearance * 2;
    joint.mortise = cut_mortises(assembly, joint, tenon, mortise, receiver_shoulder);
  }
  Piece& enterer = assembly.pieces[enters];
  Feature feature{"tenon", {number}, tenon_cuts(enterer, tenon, heading.upwards), {}};
  feature.sizes = {{"thickness", joint.tenon->thickness},
                   {"width", joint.tenon->width},
                   {"depth", joint.tenon->depth},
                   {"from_face", tenon.from_face}};
  enterer.features.push_back(std::move(feature));
  assembly.joints.push_back(std::move(joint));
}

}  // namespace haunch
