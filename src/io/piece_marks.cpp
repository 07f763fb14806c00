#include "piece_marks.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

#include "solid.h"

namespace haunch {
namespace {

constexpr double kMark = 3.5;
constexpr double kToMiddle = kMark * 0.36;  // from a letter's base line

bool holds(const Extent& extent, const ViewSpot& spot) {
  return extent.low.u < spot.u && spot.u < extent.high.u && extent.low.v < spot.v &&
         spot.v < extent.high.v;
}

bool holds(const std::vector<SpotRun>& loops, const ViewSpot& spot) {
  bool inside = false;
  for (const SpotRun& loop : loops)
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const ViewSpot &a = loop[i], &b = loop[(i + 1) % loop.size()];
      if ((a.v > spot.v) != (b.v > spot.v) &&
          spot.u < a.u + (b.u - a.u) * (spot.v - a.v) / (b.v - a.v))
        inside = !inside;
    }
  return inside;
}

/// What of a piece is seen on the paper, and how near to the viewer it stands.
struct SeenPiece {
  std::size_t piece = 0;
  Extent extent;
  double depth = 0;            // less is nearer
  std::vector<SpotRun> loops;  // of what is cut: its outline; else the whole extent
};

class PieceMarks {
 public:
  /// `room`: that marks beside their pieces stand in.
  PieceMarks(NotedView& view, std::vector<SeenPiece> seen, const Extent& room)
      : view_(view), seen_(std::move(seen)), room_(room) {}

  void mark_all() {
    mark_those([](const Piece&) { return true; });
  }

  /// `is_one`: of those that are met.
  template <typename IsOne>
  void mark_those(const IsOne& is_one) {
    std::vector<const SeenPiece*> left;
    for (const SeenPiece& its : seen_)
      if (is_one(piece(its)) && !mark_inside(its)) left.push_back(&its);
    for (const SeenPiece* its : left)
      mark_beside(*its);
  }

 private:
  const Piece& piece(const SeenPiece& its) const { return view_.wood().pieces[its.piece]; }

  static bool covers(const SeenPiece& its, const ViewSpot& spot) {
    return holds(its.extent, spot) && (its.loops.empty() || holds(its.loops, spot));
  }

  /// Whether it is met first at a place of the paper.
  bool is_met(const SeenPiece& its, const ViewSpot& spot) const {
    return covers(its, spot) &&
           std::none_of(seen_.begin(), seen_.end(), [&](const SeenPiece& other) {
             return other.piece != its.piece && other.depth < its.depth && covers(other, spot);
           });
  }

  /// Asked of places all over it: what is cut may have hollows that are narrower than a letter.
  bool lies_within(const SeenPiece& its, const Extent& text) const {
    constexpr int kParts = 4;
    const Extent room = grown(text, 0.4);
    for (int u = 0; u <= kParts; ++u)
      for (int v = 0; v <= kParts; ++v)
        if (!is_met(its, part_of(room, static_cast<double>(u) / kParts,
                                 static_cast<double>(v) / kParts)))
          return false;
    return true;
  }

  bool lies_round(const SeenPiece& its, const ViewSpot& spot) const {
    constexpr double kGap = 0.25;
    return is_met(its, spot) && is_met(its, moved(spot, {kGap, kGap})) &&
           is_met(its, moved(spot, {-kGap, -kGap}));
  }

  Lettering lettering(const SeenPiece& its) const {
    Lettering text{{}, piece(its).mark, kMark, Anchor::middle, false, true};
    text.mark = piece(its).mark;
    return text;
  }

  static ViewSpot part_of(const Extent& extent, double u, double v) {
    return {extent.low.u + extent.width() * u, extent.low.v + extent.height() * v};
  }

  /// Places in a piece, the middle first.
  static std::vector<ViewSpot> places(const SeenPiece& its) {
    std::vector<ViewSpot> all;
    const bool tall = its.extent.height() > its.extent.width();
    for (const double across : {0.5, 0.3, 0.7, 0.15, 0.85})
      for (const double part : {0.5, 0.42, 0.58, 0.35, 0.65, 0.28, 0.72, 0.2, 0.8, 0.12, 0.88})
        all.push_back(tall ? part_of(its.extent, across, part) : part_of(its.extent, part, across));
    return all;
  }

  bool mark_inside(const SeenPiece& its) {
    Lettering text = lettering(its);
    for (const ViewSpot& at : places(its)) {
      text.at = moved(at, {0, -kToMiddle});
      if (!lies_within(its, extent_of(text)) || !view_.letter(text, {text.at})) continue;
      if (its.loops.empty()) grain(its, at);
      return true;
    }
    return false;
  }

  /// Three strokes along the grain, beside the mark of a piece that is wide enough.
  void grain(const SeenPiece& its, const ViewSpot& mark) {
    const Piece& wood = piece(its);
    constexpr double kWide = 13, kApart = 1.1;
    if (wood.matter == Matter::glass || std::min(its.extent.width(), its.extent.height()) < kWide ||
        !view_.shows(wood.place.axes[0]))
      return;
    const bool level = view_.runs_level(wood.place.axes[0]);
    const ViewSpot middle = moved(mark, level ? ViewSpot{0, -6.5} : ViewSpot{0, -9});
    const auto spot = [&](double along, double across) {
      return moved(middle, level ? ViewSpot{along, across} : ViewSpot{across, along});
    };
    const Extent room = grown({spot(-5, -kApart), spot(5, kApart)}, 0.5);
    if (!lies_within(its, room) || !view_.is_free(room)) return;
    Stroke stroke{Pen::thin, {}};
    for (const int line : {-1, 0, 1}) {
      const double half = line == 0 ? 5 : 3;
      stroke.runs.push_back({spot(-half, line * kApart), spot(half, line * kApart)});
    }
    view_.picture().strokes.push_back(std::move(stroke));
    view_.reserve(room);
  }

  /// With a line to it from where there is room.
  void mark_beside(const SeenPiece& its) {
    const Lettering text = lettering(its);
    for (const ViewSpot& from : places(its)) {
      // What shows in no more than a gap is marked elsewhere.
      if (!lies_round(its, from)) continue;
      for (const double away : {7.0, 10.0, 14.0})
        for (const ViewSpot& way : {ViewSpot{1, 0.6}, ViewSpot{-1, 0.6}, ViewSpot{1, -0.6},
                                    ViewSpot{-1, -0.6}, ViewSpot{0.4, 1}, ViewSpot{0.4, -1}})
          if (try_beside(text, from, {from.u + way.u * away, from.v + way.v * away})) return;
    }
  }

  bool try_beside(Lettering text, const ViewSpot& from, const ViewSpot& to) {
    text.at = moved(to, {0, -kToMiddle});
    const Extent room = extent_of(text);
    if (!holds(grown(room_, 0.01), room.low) || !holds(grown(room_, 0.01), room.high) ||
        !view_.letter(text, {text.at}))
      return false;
    const double length = std::hypot(to.u - from.u, to.v - from.v), stop = 2.4 / length;
    const ViewSpot end{to.u + (from.u - to.u) * stop, to.v + (from.v - to.v) * stop};
    view_.picture().line(Pen::thin, from, end);
    dot(from);
    view_.reserve(grown({from, from}, 1));
    return true;
  }

  void dot(const ViewSpot& at) {
    Stroke stroke{Pen::tick, {{}}};
    for (int i = 0; i <= 8; ++i) {
      const double angle = std::numbers::pi * i / 4;
      stroke.runs[0].push_back(moved(at, {0.3 * std::cos(angle), 0.3 * std::sin(angle)}));
    }
    view_.picture().strokes.push_back(std::move(stroke));
  }

  NotedView& view_;
  std::vector<SeenPiece> seen_;
  Extent room_;
};

/// Told by their marks where their joints are drawn, and not where they are all but hidden.
bool is_small_part(Role role) {
  return role == Role::pin || role == Role::wedge || role == Role::dowel ||
         role == Role::loose_tenon || role == Role::spline;
}

/// Of a piece that a plane goes through, what it cuts.
std::optional<SeenPiece> cut_piece(const NotedView& view, const LineView& lines,
                                   std::size_t piece) {
  SeenPiece its{piece, {}, 0, {}};
  for (const CutArea& area : lines.areas)
    if (area.piece == piece)
      for (const auto& loop : area.loops) {
        its.loops.emplace_back();
        for (const ViewSpot& spot : loop)
          its.loops.back().push_back(view.scale().on_paper(spot));
      }
  if (its.loops.empty()) return {};
  const ViewSpot& first = its.loops.front().front();
  its.extent = {first, first};
  for (const SpotRun& loop : its.loops)
    for (const ViewSpot& spot : loop)
      its.extent = around(its.extent, {spot, spot});
  return its;
}

std::vector<SeenPiece> seen_pieces(const NotedView& view, const CutAway& cut,
                                   const LineView& lines) {
  const CutPlane& plane = cut.plane;
  const auto axis = static_cast<std::size_t>(plane.across);
  std::vector<SeenPiece> seen;
  for (std::size_t i = 0; i < view.wood().pieces.size(); ++i) {
    if (view.wood().pieces[i].role == Role::extra) continue;
    const bool is_detail = cut.region.has_value();
    if (auto its = cut_piece(view, lines, i)) {
      seen.push_back(std::move(*its));
      seen.back().depth = -1;
      continue;
    }
    Box box = placed_blank(view.wood().pieces[i]);
    const Length beyond =
        plane.looks_upwards ? box.low[axis] - plane.at : plane.at - box.high[axis];
    const Length farthest =
        plane.looks_upwards ? box.high[axis] - plane.at : plane.at - box.low[axis];
    if (farthest <= Length() || is_small_part(view.wood().pieces[i].role) || is_detail) continue;
    seen.push_back(
        {i, view.paper(box), static_cast<double>(std::max(beyond, Length()).steps()), {}});
  }
  return seen;
}

}  // namespace

void mark_pieces(NotedView& view, const CutAway& cut, const LineView& lines) {
  PieceMarks(view, seen_pieces(view, cut, lines), view.extent()).mark_all();
}

void mark_pieces_of_whole(NotedView& view, const CutAway& cut) {
  constexpr double kAbove = 14;  // where it is in the way of nothing
  Extent room = view.extent();
  room.high.v += kAbove;
  PieceMarks(view, seen_pieces(view, cut, {}), room).mark_those([](const Piece& piece) {
    return piece.group == 0;
  });
}

}  // namespace haunch
