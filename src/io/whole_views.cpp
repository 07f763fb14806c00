#include "whole_views.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "extras.h"
#include "line_sum.h"
#include "member_chains.h"
#include "movements.h"
#include "own_axes.h"
#include "paper.h"
#include "piece_marks.h"
#include "projection.h"
#include "report.h"

namespace haunch {
namespace {

constexpr double kNote = 2.8;

// ---- where it is cut

bool has_depth(const Assembly& wood) {
  const GroupKind kind = wood.whole().kind;
  return kind == GroupKind::frame || kind == GroupKind::set || goes_back(wood);
}

/// Whether a plane square to `axis` would run along a piece that lies flat in it.
bool runs_along_a_board(const Assembly& wood, Axis axis, Length at) {
  const auto number = static_cast<std::size_t>(axis);
  return std::any_of(wood.pieces.begin(), wood.pieces.end(), [&](const Piece& piece) {
    const Box box = placed_blank(piece);
    const std::size_t own = own_axis(piece.place, axis);
    const bool is_thin =
        piece.blank[own] <= std::min(piece.blank[(own + 1) % 3], piece.blank[(own + 2) % 3]);
    return is_thin && box.low[number] < at && at < box.high[number];
  });
}

/// Through the middle of the first thing that moves, or of the whole; aside from what lies flat
/// there.
Length cut_place(const Assembly& wood, Axis axis) {
  const auto number = static_cast<std::size_t>(axis);
  std::vector<Box> boxes;
  for (const Fit& fit : wood.fits)
    if (fit.swing() != nullptr) boxes.push_back(placed_blanks(wood, fit.group));
  for (const Fit& fit : wood.fits)
    if (std::holds_alternative<Slide>(fit.moves)) boxes.push_back(placed_blanks(wood, fit.group));
  boxes.push_back({{}, wood.size});
  for (const Box& box : boxes)
    for (const std::int64_t part : {8, 7, 9, 6, 10, 5, 11, 4, 12}) {
      const Length at = box.low[number] + floor_divide(box.extent(number) * part, 16);
      if (!runs_along_a_board(wood, axis, at)) return at;
    }
  return floor_half(wood.size[number]);
}

// ---- the views

/// "hinges" along the side of each leaf where they are.
void tell_hinges(NotedView& view) {
  for (const HungLeaf& leaf : hung_leaves(view.wood())) {
    const Extent extent = view.paper(placed_blanks(view.wood(), leaf.group));
    Lettering text{{}, "hinges", kNote, Anchor::middle, true};
    const double u = leaf.at_right ? extent.high.u - 1.2 : extent.low.u + 3.2;
    std::vector<ViewSpot> places;
    for (const double part : {0.75, 0.25, 0.6, 0.4, 0.85, 0.15})
      places.push_back({u, extent.low.v + extent.height() * part});
    view.letter(text, places);
  }
}

/// Each fitting by its name, beside what is let in for it; hinges are told along their side.
void tell_fittings(NotedView& view) {
  std::map<std::string, Extent> fittings;
  for (const Piece& piece : view.wood().pieces)
    for (const Feature& feature : piece.features) {
      if (!feature.fitting || feature.kind == FeatureKind::shelf_pin_holes ||
          feature.fitting->name.find("hinge") != std::string::npos)
        continue;
      for (const Box& cut : feature.cuts) {
        const Extent extent = view.paper(placed(cut, piece.place));
        const auto [its, is_new] = fittings.try_emplace(feature.fitting->name, extent);
        if (!is_new) its->second = around(its->second, extent);
      }
    }
  for (const auto& [name, extent] : fittings) {
    const Lettering text{{}, name, kNote};
    const double half = width_of(text) / 2 + 1;
    const double u = (extent.low.u + extent.high.u) / 2, v = (extent.low.v + extent.high.v) / 2;
    std::vector<ViewSpot> places;
    for (const double up : {v - 1, extent.high.v + 1, extent.low.v - 3.2, extent.high.v + 4.5})
      for (const double along : {u, extent.high.u + half, extent.low.u - half})
        if (const ViewSpot at{along, up}; along - half > view.extent().low.u &&
                                          along + half < view.extent().high.u &&
                                          !(along == u && up == v - 1))
          places.push_back(at);
    view.letter(text, places);
  }
}

/// The stretch of a line that lies within a rectangle; nothing where that is a mere point.
std::optional<ViewLine> stretch_in(const Extent& room, ViewLine line) {
  double from = 0, to = 1;
  const auto keep = [&](double at, double by, double low, double high) {
    if (by == 0) {
      if (at <= low || at >= high) to = 0;
      return;
    }
    const double enters = ((by > 0 ? low : high) - at) / by,
                 leaves = ((by > 0 ? high : low) - at) / by;
    from = std::max(from, enters);
    to = std::min(to, leaves);
  };
  const double by_u = line.to.u - line.from.u, by_v = line.to.v - line.from.v;
  keep(line.from.u, by_u, room.low.u, room.high.u);
  keep(line.from.v, by_v, room.low.v, room.high.v);
  if (from >= to) return {};
  const ViewSpot start = line.from;
  line.from = {start.u + from * by_u, start.v + from * by_v};
  line.to = {start.u + to * by_u, start.v + to * by_v};
  return line;
}

bool is_member(Role role) {
  return role == Role::rail || role == Role::muntin || role == Role::mullion ||
         role == Role::spline || role == Role::loose_tenon || role == Role::glazing_bar;
}

/// Adds hidden lines of what is jointed into another piece, as tenons are; panels aside. They are
/// those of the members by themselves: a wedge's or a panel's would lie over theirs.
LineView with_tenons(LineView view, const std::vector<DrawnWood>& woods, const Assembly& wood,
                     const Sight& sight) {
  std::vector<DrawnWood> members;
  for (const DrawnWood& its : woods)
    if (const Role role = wood.pieces[its.piece].role; is_member(role) || role == Role::stile)
      members.push_back(its);
  const auto take_tenons = [&](const ViewLine& line) {
    if (!is_member(wood.pieces[line.piece].role)) return;
    for (const Joint& joint : wood.joints) {
      if (joint.enters != line.piece || joint.kind == JointKind::mitre) continue;
      const Box box = placed_blank(wood.pieces[joint.receives]);
      const Extent room{seen_at(sight, box.low), seen_at(sight, box.high)};
      if (const auto part = stretch_in(room, line)) view.lines.push_back(*part);
    }
  };
  for (const ViewLine& line : view_of(members, sight, HiddenLines::drawn).lines)
    if (line.of == LineOf::hidden) take_tenons(line);
  view.lines = summed(view.lines);  // what lies within both pieces of a corner is there twice
  return view;
}

/// One that is rebated where two leaves meet.
struct MeetingStile {
  Box box, rebate;
};

std::vector<MeetingStile> meeting_stiles(const Assembly& wood) {
  std::vector<MeetingStile> stiles;
  for (const Piece& piece : wood.pieces)
    for (const Feature& feature : piece.features)
      if (feature.kind == FeatureKind::meeting_rebate)
        stiles.push_back({placed_blank(piece), placed(feature.cuts.front(), piece.place)});
  return stiles;
}

}  // namespace

std::vector<LetteredCut> whole_cuts(const Assembly& wood) {
  if (!has_depth(wood)) return {};
  return {{"", {{Axis::y, cut_place(wood, Axis::y), false}, {}}},
          {"", {{Axis::x, cut_place(wood, Axis::x), true}, {}}}};
}

std::optional<LetteredCut> meeting_cut(const Assembly& wood) {
  const std::vector<MeetingStile> stiles = meeting_stiles(wood);
  if (stiles.size() != 2) return {};
  Box region = around(stiles[0].box, stiles[1].box);
  const Length middle = floor_half(region.low[1] + region.high[1]);
  Length at = middle;
  for (const Piece& piece : wood.pieces)  // not where what enters them is cut
    if (piece.role == Role::rail)
      if (const Box box = placed_blank(piece); box.low[1] <= at && at <= box.high[1])
        at = box.high[1] + whole_mm(60);
  return LetteredCut{"", {{Axis::y, at, false}, region}};
}

WholeView meeting_view(const Assembly& wood, const std::vector<DrawnWood>& woods,
                       const LetteredCut& cut, const LengthPrinter& lengths, PaperScale scale) {
  const LineView lines = section_of(woods, cut.cut);
  NotedView view(lines, wood, sight_of(cut.cut.plane), scale, lengths);
  mark_pieces(view, cut.cut, lines);
  view.keep_clear();
  std::vector<Length> at_face, at_back, through;
  for (const MeetingStile& stile : meeting_stiles(wood)) {
    const Box &box = stile.box, &rebate = stile.rebate;
    const bool in_face = rebate.low[2] == box.low[2], at_right = rebate.high[0] == box.high[0];
    const Length low = at_right ? box.low[0] : rebate.high[0],
                 high = at_right ? rebate.low[0] : box.high[0];
    auto& cut_side = in_face ? at_face : at_back;
    auto& whole_side = in_face ? at_back : at_face;
    cut_side.insert(cut_side.end(), {low, high});
    whole_side.insert(whole_side.end(), {box.low[0], box.high[0]});
    through.insert(through.end(), {box.low[2], box.high[2], rebate.low[2], rebate.high[2]});
  }
  view.chain(PaperSide::below, Axis::x, at_face);
  view.chain(PaperSide::above, Axis::x, at_back);
  view.chain(PaperSide::right, Axis::z, through);
  std::string title = "meeting stiles from above, face side below";
  for (std::size_t group = 0; group < wood.groups.size(); ++group)
    if (wood.groups[group].kind == GroupKind::leaf)
      title += (wood.groups[group].at.origin[0] == Length() ? "; left leaf " : "; right leaf ") +
               lengths.one(placed_blanks(wood, group).extent(0)) + " wide";
  return {cut.letter, title, std::move(view.picture())};
}

WholeViews::WholeViews(const ShownWhole& shown, const std::vector<DrawnWood>& woods,
                       const std::vector<LetteredCut>& cuts, const LengthPrinter& lengths)
    : shown_(shown), cuts_(cuts), lengths_(lengths) {
  const Sight sight = sight_from(ViewedFrom::front);
  LineView seen = view_of(woods, sight, HiddenLines::left_out);
  lines_.push_back(has_depth(shown.wood) ? std::move(seen)
                                         : with_tenons(std::move(seen), woods, shown.wood, sight));
  for (const LetteredCut& its : cuts)
    if (!its.cut.region) lines_.push_back(section_of(woods, its.cut));
}

std::vector<WholeView> WholeViews::at_scale(PaperScale scale) const {
  std::vector<WholeView> views{elevation(scale)};
  for (const LetteredCut& its : cuts_)
    if (!its.cut.region) views.push_back(section(its, lines_[views.size()], scale));
  return views;
}

WholeView WholeViews::elevation(PaperScale scale) const {
  NotedView view(lines_.front(), shown_.wood, sight_from(ViewedFrom::front), scale, lengths_);
  mark_pieces(view, {{Axis::z, room().low[2], true}, {}}, {});
  tell_hinges(view);
  tell_fittings(view);
  for (const LetteredCut& its : cuts_)
    mark_cut(view, its, room());
  chains(view, ChainsOf::elevation);
  std::string title = "seen from its face side";
  if (!shown_.rooms.empty()) {
    const NamedRoom& outermost = shown_.rooms.front();
    title += "; " + outermost.what + " " + lengths_.one(outermost.width) + " x " +
             lengths_.one(outermost.height);
  }
  return {"", title, std::move(view.picture())};
}

WholeView WholeViews::section(const LetteredCut& cut, const LineView& lines,
                              PaperScale scale) const {
  const CutPlane& plane = cut.cut.plane;
  NotedView view(lines, shown_.wood, sight_of(plane), scale, lengths_);
  draw_movements(view, plane);
  mark_pieces(view, cut.cut, lines);
  const bool level = plane.across == Axis::y;
  chains(view, level ? ChainsOf::plan : ChainsOf::upright);
  return {cut.letter, level ? "from above" : "from the left", std::move(view.picture())};
}

void WholeViews::chains(NotedView& view, ChainsOf of) const {
  view.keep_clear();
  for (const PlacedChain& chain : chains_told(shown_, of))
    view.chain(chain.side, chain.axis, chain.places);
}

Box WholeViews::room() const {
  Box all = placed_blank(shown_.wood.pieces.front());
  for (const Piece& piece : shown_.wood.pieces)
    if (!lies_beside(piece)) all = around(all, placed_blank(piece));
  return all;
}

}  // namespace haunch
