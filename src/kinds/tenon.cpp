#include "tenon.h"

#include <algorithm>
#include <utility>

#include "round_ends.h"
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

/// A strip of a piece's end that stands, to its own depth and between its own cheeks; of twins
/// between theirs, those nearer to the face side first.
struct Standing {
  Strip width;
  Length depth;
  std::vector<Strip> cheeks;
};

/// Face side to the near cheek of each tenon of a strip.
std::vector<Length> cheeks_from_face(Length first, std::optional<Length> twin) {
  return twin ? std::vector{first, *twin} : std::vector{first};
}

std::vector<Standing> standing_strips(const TenonDesign& tenon) {
  std::vector<Standing> strips;
  std::vector<Strip> cheeks;
  for (const Length low : cheeks_from_face(tenon.from_face, tenon.twin_from_face))
    cheeks.push_back({low, low + tenon.thickness});
  for (const Strip& strip : tenon.layout.tenons)
    strips.push_back({strip, tenon.depth, cheeks});
  for (const Strip& strip : tenon.layout.haunches)
    strips.push_back({strip,
                      tenon.haunch_depth,
                      {{tenon.haunch_from_face, tenon.haunch_from_face + tenon.haunch_thickness}}});
  std::erase_if(strips, [](const Standing& strip) {
    return strip.depth <= Length() || strip.width.low >= strip.width.high;
  });
  std::sort(strips.begin(), strips.end(),
            [](const Standing& a, const Standing& b) { return a.width.low < b.width.low; });
  return strips;
}

/// The cheek at the face side or the back: square down to the shoulder, or coped over a moulding.
void cut_cheek(Feature& feature, const Piece& piece, const TenonDesign& tenon, EndCutter& end,
               Strip cheek, bool at_back) {
  const Strip whole_width{Length(), piece.blank[1]};
  const Length thick = cheek.high - cheek.low;
  const bool coped = tenon.coped && (!at_back || tenon.coped->moulded_back());
  if (!coped) {
    end.cut(Length(), tenon.depth - (at_back ? tenon.longer_at_back : Length()), whole_width,
            cheek);
    return;
  }
  Cope cope = cope_of(piece.blank, *tenon.coped, tenon.depth, thick, end.high_end, at_back);
  end.cuts.insert(end.cuts.end(), cope.cuts.begin(), cope.cuts.end());
  feature.prisms.insert(feature.prisms.end(), cope.prisms.begin(), cope.prisms.end());
}

/// The wood to take off so that only the tenons and haunches stand: the cheeks over the whole width
/// first, then what single strips need besides.
void cut_tenon(Feature& feature, const Piece& piece, const TenonDesign& tenon, bool high_end) {
  EndCutter end{piece.blank[0], high_end, {}};
  const Strip whole_width{Length(), piece.blank[1]};
  const Length thickness = piece.blank[2];
  const std::vector<Standing> strips = standing_strips(tenon);
  Strip outermost = strips.front().cheeks.front();
  for (const Standing& strip : strips)
    outermost = {std::min(outermost.low, strip.cheeks.front().low),
                 std::max(outermost.high, strip.cheeks.back().high)};
  cut_cheek(feature, piece, tenon, end, {Length(), outermost.low}, false);
  cut_cheek(feature, piece, tenon, end, {outermost.high, thickness}, true);
  Length done;
  for (const Standing& strip : strips) {
    end.cut(Length(), tenon.depth, {done, strip.width.low}, outermost);
    end.cut(Length(), tenon.depth - strip.depth, strip.width, outermost);
    Length beside = outermost.low;
    for (const Strip& cheeks : strip.cheeks) {
      end.cut(tenon.depth - strip.depth, tenon.depth, strip.width, {beside, cheeks.low});
      beside = cheeks.high;
    }
    end.cut(tenon.depth - strip.depth, tenon.depth, strip.width, {beside, outermost.high});
    done = strip.width.high;
  }
  end.cut(Length(), tenon.depth, {done, whole_width.high}, outermost);
  feature.cuts = std::move(end.cuts);
}

/// Whether a haunch stands beside this edge of a tenon, and the groove that it is in is open over
/// the whole of the tenon's thickness.
bool haunch_covers(const TenonDesign& tenon, const Strip& strip, bool high) {
  const bool open =
      tenon.haunch_from_face <= tenon.from_face && !tenon.twin_from_face &&
      tenon.from_face + tenon.thickness <= tenon.haunch_from_face + tenon.haunch_thickness;
  return open && std::any_of(tenon.layout.haunches.begin(), tenon.layout.haunches.end(),
                             [&](const Strip& haunch) {
                               return high ? haunch.low == strip.high : haunch.high == strip.low;
                             });
}

/// What is taken off the edges of tenons for round ends: from their tips to their shoulder, or to
/// the haunch beside them.
std::vector<Prism> tenon_roundings(const Piece& piece, const TenonDesign& tenon,
                                   const MortiseDesign& mortise, bool high_end) {
  std::vector<Prism> prisms;
  const Length radius = tenon_edge_radius(tenon, mortise);
  for (const Strip& strip : tenon.layout.tenons)
    for (const Length low : cheeks_from_face(tenon.from_face, tenon.twin_from_face))
      for (const bool high : {false, true}) {
        const Length rounded =
            tenon.depth - (haunch_covers(tenon, strip, high) ? tenon.haunch_depth : Length());
        const Length from = high_end ? piece.blank[0] - rounded : Length();
        for (Prism& prism : rounded_edge({strip.low, strip.high, low, low + tenon.thickness}, high,
                                         radius, from, from + rounded))
          prisms.push_back(std::move(prism));
      }
  return prisms;
}

/// The mortise for one tenon: a box from the receiver's sight edge to the mortise's bottom, as far
/// as there is wood.
Box mortise_cut(const Piece& receiver, const Piece& enterer, const Strip& tenon, Heading heading,
                Length depth, Length from_face, const MortiseDesign& mortise) {
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
  box.low[2] = blank.low[2] + from_face;
  box.high[2] = box.low[2] + mortise.width;
  return in_own_axes(box, receiver.place);
}

/// What a tenon leaves beside one of its cheeks, the lesser of the two.
Length cheek_play(const TenonDesign& tenon, const MortiseDesign& mortise) {
  return floor_half(mortise.width - tenon.thickness);
}

/// Both edges together. A square-edged tenon meets round ends with its corners.
Length edge_play(const TenonDesign& tenon, const MortiseDesign& mortise) {
  const bool corners_meet = mortise.ends == Ends::tenon_shortened;
  const Length inset =
      corners_meet ? end_inset(mortise.end_radius, cheek_play(tenon, mortise)) : Length();
  return (mortise.edge_clearance - inset) * 2;
}

/// The two wedges of wood that are pared away at the ends of a mortise from the edge where it comes
/// out. `out_low`: that is the low edge of its piece's width.
std::vector<Prism> flares(const Box& cut, const Flare& flare, bool out_low) {
  const Length out = out_low ? cut.low[1] : cut.high[1];
  const Length in = out_low ? out + flare.depth : out - flare.depth;
  const auto prism = [&](Length end, Length wide) {
    return Prism{2, cut.low[2], cut.high[2], {{end, in}, {wide, out}, {end, out}}};
  };
  return {prism(cut.low[0], cut.low[0] - flare.width),
          prism(cut.high[0], cut.high[0] + flare.width)};
}

/// Adds a mortise to its feature: a box, and where its ends are round the two ends of it.
void add_mortise(Feature& feature, Box cut, std::size_t along, const TenonDesign& tenon,
                 const MortiseDesign& mortise) {
  if (mortise.ends != Ends::squared) {
    const std::size_t deep = 1 - along;
    const Outline slot{cut.low[along], cut.high[along], cut.low[2], cut.high[2]};
    for (Prism& end : slot_ends(slot, mortise.end_radius, cheek_play(tenon, mortise), deep,
                                cut.low[deep], cut.high[deep]))
      feature.prisms.push_back(std::move(end));
    cut.low[along] += mortise.end_radius;
    cut.high[along] -= mortise.end_radius;
  }
  feature.cuts.push_back(cut);
}

/// The seats of haunches where no groove receives them.
void cut_haunchings(Assembly& assembly, const Joint& joint, const TenonDesign& tenon,
                    MortiseDesign mortise) {
  if (!tenon.haunching || tenon.layout.haunches.empty()) return;
  mortise.edge_clearance = Length();
  Piece& receiver = assembly.pieces[joint.receives];
  Feature feature{"haunching", {assembly.joints.size()}, {}, {}};
  const Length depth = tenon.set_back + *tenon.haunching;
  for (const Strip& strip : tenon.layout.haunches)
    feature.cuts.push_back(mortise_cut(receiver, assembly.pieces[joint.enters], strip,
                                       joint.heading, depth, mortise.from_face, mortise));
  feature.sizes = {{"width", mortise.width}, {"depth", depth}, {"from_face", mortise.from_face}};
  receiver.features.push_back(std::move(feature));
}

MortiseSizes cut_mortises(Assembly& assembly, const Joint& joint, const TenonDesign& tenon,
                          const MortiseDesign& mortise, std::optional<Length> receiver_shoulder) {
  Piece& receiver = assembly.pieces[joint.receives];
  const Piece& enterer = assembly.pieces[joint.enters];
  MortiseSizes sizes{mortise.width,
                     tenon.set_back + tenon.depth + mortise.bottom_clearance,
                     mortise.from_face,
                     {},
                     {}};
  Feature feature{"mortise", {assembly.joints.size()}, {}, {}};
  const bool twins = mortise.twin_from_face.has_value();
  const bool in_end = receiver.place.axes[0] == joint.heading.axis;
  const std::size_t along = in_end ? 1 : 0;
  for (const Strip& strip : tenon.layout.tenons) {
    for (const Length from_face : cheeks_from_face(mortise.from_face, mortise.twin_from_face)) {
      const Box cut =
          mortise_cut(receiver, enterer, strip, joint.heading, sizes.depth, from_face, mortise);
      add_mortise(feature, cut, along, tenon, mortise);
      if (mortise.flare)
        for (Prism& prism : flares(cut, *mortise.flare, !joint.heading.upwards))
          feature.prisms.push_back(std::move(prism));
      sizes.each.push_back({cut.low[0], cut.extent(along),
                            twins ? std::optional(from_face) : std::nullopt,
                            in_end ? std::optional(cut.low[1]) : std::nullopt});
    }
  }
  if (receiver_shoulder) sizes.from_shoulder = sizes.each.front().from_foot - *receiver_shoulder;
  feature.sizes = {{"width", sizes.width}, {"depth", sizes.depth}, {"from_face", sizes.from_face}};
  if (mortise.ends != Ends::squared) {
    sizes.end_radius = mortise.end_radius;
    sizes.free_width =
        free_width(sizes.each.front().length, mortise.end_radius, cheek_play(tenon, mortise));
    feature.sizes.push_back({"radius", mortise.end_radius});
  }
  sizes.through = mortise.through;
  sizes.flare = mortise.flare;
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
  if (tenon.twin_from_face) {
    std::vector<TenonSpan> pairs;
    for (const TenonSpan& span : sizes.each)
      for (const Length from_face : {tenon.from_face, *tenon.twin_from_face})
        pairs.push_back({span.from_edge, span.width, from_face});
    sizes.each = std::move(pairs);
  }
  sizes.longer_at_back = tenon.longer_at_back;
  sizes.set_back = tenon.set_back;
  if (tenon.coped) sizes.longer_at_face = tenon.coped->width;
  if (tenon.coped && tenon.coped->moulded_back()) sizes.longer_at_back = tenon.coped->width;
  if (tenon.haunch_depth == Length() || tenon.layout.haunches.empty()) return sizes;
  sizes.haunches = spans_of(tenon.layout.haunches);
  sizes.haunch_depth = tenon.haunch_depth;
  sizes.haunch_thickness = tenon.haunch_thickness;
  sizes.haunch_from_face = tenon.haunch_from_face;
  return sizes;
}

std::string_view kind_of(const MortiseDesign& mortise) {
  if (mortise.open_end) return "bridle";
  if (mortise.through) return "through-tenon";
  return mortise.twin_from_face ? "twin-tenon" : "mortise-and-tenon";
}

/// A stub's joint with the groove, which is there already.
void stand_in_groove(Assembly& assembly, const GrooveRef& receives, std::size_t enters,
                     Heading heading, const TenonDesign& tenon, const MortiseDesign& groove) {
  Joint joint;
  joint.kind = "stub-tenon";
  joint.receives = receives.piece;
  joint.enters = enters;
  joint.heading = heading;
  joint.design.cheeks = groove.width - tenon.thickness;
  joint.design.bottom = groove.bottom_clearance;
  joint.tenon = tenon_sizes(tenon);
  assembly.pieces[receives.piece].features[receives.feature].joints.push_back(
      assembly.joints.size());
  assembly.joints.push_back(std::move(joint));
}

}  // namespace

Length tenon_edge_radius(const TenonDesign& tenon, const MortiseDesign& mortise) {
  if (mortise.ends != Ends::tenon_rounded) return {};
  const Length play = mortise.width - tenon.thickness;
  return std::max(mortise.end_radius - (play - floor_half(play)), Length());
}

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

void house_tenons(Assembly& assembly, std::string_view kind, std::size_t receives,
                  std::size_t enters, Heading heading, const TenonDesign& tenon,
                  const MortiseDesign& mortise, std::optional<Length> receiver_shoulder) {
  Joint joint;
  joint.kind = kind;
  joint.receives = receives;
  joint.enters = enters;
  joint.heading = heading;
  joint.design.cheeks = mortise.width - tenon.thickness;
  if (mortise.open_end)
    joint.design.edge = mortise.edge_clearance;
  else
    joint.design.edges = edge_play(tenon, mortise);
  if (!mortise.through) joint.design.bottom = mortise.bottom_clearance;
  joint.tenon = tenon_sizes(tenon);
  joint.tenon->edge_radius = tenon_edge_radius(tenon, mortise);
  joint.mortise = cut_mortises(assembly, joint, tenon, mortise, receiver_shoulder);
  cut_haunchings(assembly, joint, tenon, mortise);
  joint.has_shoulder = !tenon.loose;
  assembly.joints.push_back(std::move(joint));
}

void join_by_tenon(Assembly& assembly, const GrooveRef& receives, std::size_t enters,
                   Heading heading, const TenonDesign& tenon, const MortiseDesign& mortise,
                   std::optional<Length> receiver_shoulder, std::string_view shoulder) {
  const std::size_t number = assembly.joints.size();
  if (tenon.set_back > Length())
    mitre_moulding(assembly, receives.piece, enters, heading, tenon.set_back, tenon.mitred);
  if (tenon.stub)
    stand_in_groove(assembly, receives, enters, heading, tenon, mortise);
  else
    house_tenons(assembly, kind_of(mortise), receives.piece, enters, heading, tenon, mortise,
                 receiver_shoulder);
  Joint& joint = assembly.joints[number];
  if (receiver_shoulder && joint.mortise) joint.mortise->shoulder = shoulder;
  const TenonSizes& sizes = *joint.tenon;
  Piece& enterer = assembly.pieces[enters];
  Feature feature{"tenon", {number}, {}, {}};
  feature.prisms = tenon_roundings(enterer, tenon, mortise, heading.upwards);
  cut_tenon(feature, enterer, tenon, heading.upwards);
  feature.sizes = {{"thickness", sizes.thickness},
                   {"width", sizes.width},
                   {"depth", sizes.depth},
                   {"from_face", tenon.from_face}};
  enterer.features.push_back(std::move(feature));
}

}  // namespace haunch
