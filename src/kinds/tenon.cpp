#include "tenon.h"

#include <algorithm>
#include <utility>

#include "joint_rules.h"
#include "round_ends.h"
#include "scribe.h"
#include "share.h"

namespace haunch {
namespace {

constexpr int kMostTenons = 50;

constexpr Rule kCheeks{"cheek-fit", "of play between tenon and mortise cheeks, both together",
                       "a joint looser than 0.010 in fails in glue (teaching-shop tests); a "
                       "tighter one than none will not go home"};
constexpr Rule kStubCheeks{"stub-fit", "of play between stub and groove, both cheeks together",
                           "a stub looser than 0.010 in fails in glue (teaching-shop tests); a "
                           "tighter one than none will not go home"};
constexpr Rule kEdges{"edge-fit", "of play at the tenon's edges, both together",
                      "the tenon must go in without forcing the stile's end; over 1/16 in at each "
                      "edge it does not keep its place (trade practice)"};
constexpr Rule kEdge{"one-edge-fit", "of play at the tenon's one edge that has wood beside it",
                     "it must go in without forcing, and is planed flush at the other (trade "
                     "practice)"};
constexpr Rule kHaunch{"haunch-room", "between haunch and groove bottom",
                       "the shoulder must seat before the haunch does"};

constexpr Measure kCheeksFit{Figure::cheeks, &kCheeks, Asked::as_designed, &Limits::loosest_fit};
constexpr Measure kEdgesFit{Figure::edges, &kEdges, Asked::as_designed, &Limits::loosest_edges};
constexpr Measure kHaunchFree{Figure::haunch, &kHaunch, Asked::at_least};

constexpr Measure kTenonBuilt[] = {kCheeksFit, kEdgesFit,         {Figure::edge, &kEdge},
                                   kEndFree,   kShouldersHome[0], kShouldersHome[1],
                                   kHaunchFree};
constexpr Measure kTenonMoved[] = {kCheeksUnpressed, kEdgesUnpressed, kEndStillFree,
                                   kShouldersShut[0], kShouldersShut[1]};
// It presses on its wedges at any moisture.
constexpr Measure kWedgedTenonMoved[] = {kCheeksUnpressed, kEndStillFree, kShouldersShut[0],
                                         kShouldersShut[1]};
constexpr Measure kStubBuilt[] = {
    {Figure::cheeks, &kStubCheeks, Asked::as_designed, &Limits::loosest_fit},
    kEndFree,
    kShouldersHome[0],
    kShouldersHome[1],
    kHaunchFree};
constexpr Measure kLooseTenonBuilt[] = {kCheeksFit, kEdgesFit, kEndFree};
constexpr Measure kLooseTenonMoved[] = {kCheeksUnpressed, kEdgesUnpressed, kEndStillFree};

constexpr FitSizes kInMortise{Dimension::mortise_width, Dimension::tenon_thickness};
constexpr FitSizes kSlipInMortise{Dimension::mortise_width, Dimension::tenon_thickness, true, true};
constexpr FitSizes kInGroove{Dimension::groove_width, Dimension::tenon_thickness};

/// What of a tenon's room in its mortise lies before its near cheek, and behind its far one.
struct Play {
  Length before, behind;
};

Play play_of(const TenonDesign& tenon, const MortiseDesign& mortise) {
  const Length before = tenon.from_face - mortise.from_face;
  return {before, mortise.width - tenon.thickness - before};
}

/// An end that enters, and what is cut off it.
struct EndCutter {
  const Junction& junction;
  const Piece& piece;
  const EdgeProfile& edge;  // that its shoulders stand on
  Feature& feature;
  Box blank = junction.blank(piece);

  Length tip() const { return blank.high[kIn]; }
  Strip whole_width() const { return {blank.low[kAcross], blank.high[kAcross]}; }
  Strip whole_thickness() const { return {blank.low[kThrough], blank.high[kThrough]}; }

  /// Lengthwise from its tip on.
  void cut(Length from_tip, Length to_tip, Strip width, Strip thickness) {
    if (from_tip >= to_tip || width.low >= width.high || thickness.low >= thickness.high) return;
    feature.cuts.push_back(junction.own(Box{{tip() - to_tip, width.low, thickness.low},
                                            {tip() - from_tip, width.high, thickness.high}},
                                        piece.place));
  }
  /// The same down to the shoulder. Its planes are those of `seat`, as far as there is wood to
  /// stand on: what lies over the play of a mortise goes with what is beside it.
  void cut_to_shoulder(Length from_tip, Strip width, Strip thickness, Strip seat,
                       bool in_mortise = true) {
    if (seat.low >= seat.high) seat = thickness;
    if (thickness.low >= thickness.high) return;
    cut_off(feature,
            beyond(edge.seated(thickness, seat, in_mortise),
                   {{edge.line.front().u, width.low, thickness.low},
                    {tip() - from_tip, width.high, thickness.high}}),
            junction, piece.place);
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

/// Between and beside the cheeks of a strip that stands, from its end to the shoulder.
void cut_beside(EndCutter& end, const Standing& strip, Length from_tip, Strip thickness,
                const Play& play) {
  Strip room{thickness.low, {}};
  Strip seat = room;
  for (const Strip& cheeks : strip.cheeks) {
    room.high = cheeks.low;
    seat.high = cheeks.low - play.before;
    end.cut_to_shoulder(from_tip, strip.width, room, seat);
    room.low = cheeks.high;
    seat.low = cheeks.high + play.behind;
  }
  room.high = seat.high = thickness.high;
  end.cut_to_shoulder(from_tip, strip.width, room, seat);
}

/// A cheek from the tip to its shoulder: in one go, but where the edge's wood stands in the play of
/// the mortise, and so beside that.
void cut_cheek(EndCutter& end, const std::vector<Standing>& strips, Strip thickness, Strip seat,
               Length edge_clearance) {
  if (thickness.low >= thickness.high) return;
  const Strip whole = end.whole_width();
  const bool alike = seat.low >= seat.high || end.edge.seated(thickness, seat, true).line ==
                                                  end.edge.seated(thickness, seat, false).line;
  if (alike) return end.cut_to_shoulder(Length(), whole, thickness, seat);
  Length done = whole.low;
  for (const Standing& strip : strips) {
    const Strip in{std::max(done, strip.width.low - edge_clearance),
                   std::min(whole.high, strip.width.high + edge_clearance)};
    end.cut_to_shoulder(Length(), {done, in.low}, thickness, seat, false);
    end.cut_to_shoulder(Length(), in, thickness, seat);
    done = std::max(done, in.high);
  }
  end.cut_to_shoulder(Length(), {done, whole.high}, thickness, seat, false);
}

/// The wood to take off so that only the tenons and haunches stand: the cheeks over the whole width
/// first, then what single strips need besides.
void cut_tenon(EndCutter& end, const TenonDesign& tenon, const MortiseDesign& mortise) {
  const Play play = play_of(tenon, mortise);
  const std::vector<Standing> strips = standing_strips(tenon);
  Strip outermost = strips.front().cheeks.front();
  for (const Standing& strip : strips)
    outermost = {std::min(outermost.low, strip.cheeks.front().low),
                 std::max(outermost.high, strip.cheeks.back().high)};
  const Strip whole = end.whole_thickness();
  cut_cheek(end, strips, {whole.low, outermost.low}, {whole.low, outermost.low - play.before},
            mortise.edge_clearance);
  cut_cheek(end, strips, {outermost.high, whole.high}, {outermost.high + play.behind, whole.high},
            mortise.edge_clearance);
  Length done;
  for (const Standing& strip : strips) {
    const Length beyond_strip = tenon.depth - strip.depth;
    end.cut_to_shoulder(Length(), {done, strip.width.low}, outermost, outermost);
    end.cut(Length(), beyond_strip, strip.width, outermost);
    cut_beside(end, strip, beyond_strip, outermost, play);
    done = strip.width.high;
  }
  end.cut_to_shoulder(Length(), {done, end.whole_width().high}, outermost, outermost);
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
void round_tenons(EndCutter& end, const TenonDesign& tenon, const MortiseDesign& mortise) {
  const Length radius = tenon_edge_radius(tenon, mortise);
  for (const Strip& strip : tenon.layout.tenons)
    for (const Length low : cheeks_from_face(tenon.from_face, tenon.twin_from_face))
      for (const bool high : {false, true}) {
        const Length rounded =
            tenon.depth - (haunch_covers(tenon, strip, high) ? tenon.haunch_depth : Length());
        for (const Prism& prism : rounded_edge({strip.low, strip.high, low, low + tenon.thickness},
                                               high, radius, end.tip() - rounded, end.tip()))
          end.feature.prisms.push_back(end.junction.own(prism, end.piece.place));
      }
}

/// The mortise for one tenon: a box from the receiver's sight edge to the mortise's bottom, as far
/// as there is wood.
Box mortise_cut(const Box& receiver, const Strip& tenon, Length depth, Length from_face,
                const MortiseDesign& mortise) {
  const Length wall = receiver.low[kThrough] + from_face;
  const Length mouth = mortise.opens_at;
  return {{mouth, std::max(receiver.low[kAcross], tenon.low - mortise.edge_clearance), wall},
          {std::min(receiver.high[kIn], mouth + depth),
           std::min(receiver.high[kAcross], tenon.high + mortise.edge_clearance),
           wall + mortise.width}};
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
/// out.
std::vector<Prism> flares(const Box& cut, const Flare& flare) {
  const Length out = cut.high[kIn];
  const auto prism = [&](Length end, Length wide) {
    return Prism{kThrough,
                 cut.low[kThrough],
                 cut.high[kThrough],
                 {{out - flare.depth, end}, {out, wide}, {out, end}}};
  };
  return {prism(cut.low[kAcross], cut.low[kAcross] - flare.width),
          prism(cut.high[kAcross], cut.high[kAcross] + flare.width)};
}

/// Cuts into the piece that receives, for the joint that comes next.
struct Receiver {
  const Junction& junction;
  Piece& piece;
  Box blank = junction.blank(piece);

  void add_box(Feature& feature, const Box& box) const {
    feature.cuts.push_back(junction.own(box, piece.place));
  }
  void add_prisms(Feature& feature, const std::vector<Prism>& prisms) const {
    for (const Prism& prism : prisms)
      feature.prisms.push_back(junction.own(prism, piece.place));
  }
};

/// A mortise: a box, and where its ends are round the two ends of it; and what is pared for wedges.
void add_mortise(Feature& feature, const Receiver& receiver, const Box& cut,
                 const TenonDesign& tenon, const MortiseDesign& mortise) {
  Box straight = cut;
  if (mortise.ends != Ends::squared) {
    const Outline slot{cut.low[kAcross], cut.high[kAcross], cut.low[kThrough], cut.high[kThrough]};
    receiver.add_prisms(feature, slot_ends(slot, mortise.end_radius, cheek_play(tenon, mortise),
                                           kIn, cut.low[kIn], cut.high[kIn]));
    straight.low[kAcross] += mortise.end_radius;
    straight.high[kAcross] -= mortise.end_radius;
  }
  receiver.add_box(feature, straight);
  if (mortise.flare) receiver.add_prisms(feature, flares(cut, *mortise.flare));
}

/// The seats of haunches where no groove receives them.
void cut_haunchings(const Receiver& receiver, std::size_t joint, const TenonDesign& tenon,
                    MortiseDesign mortise) {
  if (!tenon.haunching || tenon.layout.haunches.empty()) return;
  mortise.edge_clearance = Length();
  Feature feature{FeatureKind::haunching, {joint}, {}, {}};
  const Length depth = tenon.set_back + *tenon.haunching;
  for (const Strip& strip : tenon.layout.haunches)
    receiver.add_box(feature,
                     mortise_cut(receiver.blank, strip, depth, mortise.from_face, mortise));
  feature.sizes = {{SizeName::width, mortise.width},
                   {SizeName::depth, depth},
                   {SizeName::from_face, mortise.from_face}};
  receiver.piece.features.push_back(std::move(feature));
}

/// Where a mortise lies along its piece; in the end of it, where along the end.
MortiseSpan span_of(const Receiver& receiver, const Box& cut) {
  const Place& place = receiver.piece.place;
  const Box own = receiver.junction.own(cut, place);
  MortiseSpan span{own.low[0], cut.extent(kAcross)};
  if (receiver.junction.own_axis(kIn, place) == 0)
    span.from_edge = own.low[receiver.junction.own_axis(kAcross, place)];
  return span;
}

MortiseSizes cut_mortises(const Receiver& receiver, std::size_t joint, const TenonDesign& tenon,
                          const MortiseDesign& mortise, std::optional<Length> receiver_shoulder) {
  MortiseSizes sizes{mortise.width,
                     tenon.set_back + tenon.depth + mortise.bottom_clearance,
                     mortise.from_face,
                     {},
                     {}};
  Feature feature{FeatureKind::mortise, {joint}, {}, {}};
  for (const Strip& strip : tenon.layout.tenons) {
    for (const Length from_face : cheeks_from_face(mortise.from_face, mortise.twin_from_face)) {
      const Box cut = mortise_cut(receiver.blank, strip, sizes.depth, from_face, mortise);
      add_mortise(feature, receiver, cut, tenon, mortise);
      MortiseSpan& span = sizes.each.emplace_back(span_of(receiver, cut));
      if (mortise.twin_from_face) span.from_face = from_face;
    }
  }
  if (receiver_shoulder) sizes.from_shoulder = sizes.each.front().from_foot - *receiver_shoulder;
  feature.sizes = {{SizeName::width, sizes.width},
                   {SizeName::depth, sizes.depth},
                   {SizeName::from_face, sizes.from_face}};
  if (mortise.ends != Ends::squared) {
    sizes.end_radius = mortise.end_radius;
    sizes.free_width =
        free_width(sizes.each.front().length, mortise.end_radius, cheek_play(tenon, mortise));
    feature.sizes.push_back({SizeName::radius, mortise.end_radius});
  }
  sizes.through = mortise.through;
  sizes.flare = mortise.flare;
  receiver.piece.features.push_back(std::move(feature));
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
  sizes.set_back = tenon.set_back;
  if (tenon.haunch_depth == Length() || tenon.layout.haunches.empty()) return sizes;
  sizes.haunches = spans_of(tenon.layout.haunches);
  sizes.haunch_depth = tenon.haunch_depth;
  sizes.haunch_thickness = tenon.haunch_thickness;
  sizes.haunch_from_face = tenon.haunch_from_face;
  return sizes;
}

JointKind kind_of(const MortiseDesign& mortise) {
  if (mortise.open_end) return JointKind::bridle;
  if (mortise.through) return JointKind::through_tenon;
  return mortise.twin_from_face ? JointKind::twin_tenon : JointKind::mortise_and_tenon;
}

/// A stub's joint with the groove, which is there already.
void stand_in_groove(Assembly& assembly, const Junction& junction, Feature& groove,
                     const TenonDesign& tenon, const MortiseDesign& design) {
  Joint joint = junction.joint(JointKind::stub_tenon, kStubMeasures);
  joint.design.cheeks = design.width - tenon.thickness;
  joint.design.bottom = design.bottom_clearance;
  joint.tenon = tenon_sizes(tenon);
  groove.joints.push_back(assembly.joints.size());
  assembly.joints.push_back(std::move(joint));
}

}  // namespace

const Measures kTenonMeasures{kTenonBuilt, kTenonMoved, kInMortise};
const Measures kWedgedTenonMeasures{kTenonBuilt, kWedgedTenonMoved, kInMortise};
const Measures kStubMeasures{kStubBuilt, kTenonMoved, kInGroove};
const Measures kLooseTenonMeasures{kLooseTenonBuilt, kLooseTenonMoved, kSlipInMortise};

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

void house_tenons(Assembly& assembly, Joint joint, const TenonDesign& tenon,
                  const MortiseDesign& mortise, std::optional<Length> receiver_shoulder) {
  const Junction junction(assembly, joint);
  joint.design.cheeks = mortise.width - tenon.thickness;
  if (mortise.open_end)
    joint.design.edge = mortise.edge_clearance;
  else
    joint.design.edges = edge_play(tenon, mortise);
  if (!mortise.through) joint.design.bottom = mortise.bottom_clearance;
  joint.tenon = tenon_sizes(tenon);
  joint.tenon->edge_radius = tenon_edge_radius(tenon, mortise);
  const std::size_t number = assembly.joints.size();
  const Receiver receiver{junction, assembly.pieces[junction.receives]};
  joint.mortise = cut_mortises(receiver, number, tenon, mortise, receiver_shoulder);
  cut_haunchings(receiver, number, tenon, mortise);
  joint.has_shoulder = !tenon.loose;
  assembly.joints.push_back(std::move(joint));
}

void Tenons::cut(Assembly& assembly, const End& at) const {
  const Junction& junction = at.junction;
  const std::size_t number = assembly.joints.size();
  if (tenon_.set_back > Length())
    mitre_moulding(assembly, junction, tenon_.set_back, tenon_.mitred);
  if (tenon_.stub)
    stand_in_groove(assembly, junction, assembly.pieces[junction.receives].features[at.groove],
                    tenon_, mortise_);
  else
    house_tenons(
        assembly,
        junction.joint(kind_of(mortise_), mortise_.flare ? kWedgedTenonMeasures : kTenonMeasures),
        tenon_, mortise_, at.receiver_shoulder);
  Joint& joint = assembly.joints[number];
  if (at.receiver_shoulder && joint.mortise) joint.mortise->shoulder = at.shoulder;
  TenonSizes& sizes = *joint.tenon;
  const EdgeProfile edge = worked_edge(assembly, junction);
  sizes.longer_at_face = edge.at_face() - tenon_.set_back;
  sizes.longer_at_back = edge.at_back() - tenon_.set_back;
  Feature feature{FeatureKind::tenon,
                  {number},
                  {},
                  {{SizeName::thickness, sizes.thickness},
                   {SizeName::width, sizes.width},
                   {SizeName::depth, sizes.depth},
                   {SizeName::from_face, tenon_.from_face}}};
  if (sizes.longer_at_face > Length())
    feature.sizes.push_back({SizeName::longer_in_front, sizes.longer_at_face});
  if (sizes.longer_at_back > Length())
    feature.sizes.push_back({SizeName::longer_at_back, sizes.longer_at_back});
  Piece& enterer = assembly.pieces[junction.enters];
  EndCutter end{junction, enterer, edge, feature};
  round_tenons(end, tenon_, mortise_);
  cut_tenon(end, tenon_, mortise_);
  enterer.features.push_back(std::move(feature));
}

}  // namespace haunch
