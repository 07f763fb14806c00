#include "edge_details.h"

#include <algorithm>
#include <optional>
#include <set>
#include <string>
#include <utility>

#include "bodies.h"
#include "edge_words.h"
#include "noted_view.h"
#include "section.h"

namespace haunch {
namespace {

constexpr int kScales[] = {1, 2, 5};
constexpr double kTitleWidth = 90;

bool is_shape(FeatureKind kind) {
  return kind == FeatureKind::moulding || kind == FeatureKind::raise;
}

/// A long edge of a piece, and what shapes it, by index into the piece's features.
struct ShapedEdge {
  std::size_t piece = 0;
  bool high = false;
  std::vector<std::size_t> features;
};

/// A stretch along an edge.
struct Stretch {
  Length from, to;
};

/// Whether a prism runs along the edge, on its half of the piece.
bool runs_along(const Prism& prism, const Piece& piece, bool high) {
  const Length middle = floor_half(piece.blank[1]);
  return prism.along == 0 &&
         std::all_of(prism.outline.begin(), prism.outline.end(), [&](const Corner& corner) {
           return high ? corner.u >= middle : corner.u <= middle;
         });
}

/// Where a feature runs straight along the edge; nothing where it does not.
std::optional<Stretch> straight_run(const Piece& piece, const Feature& feature, bool high) {
  std::optional<Stretch> longest;
  for (const Prism& prism : feature.prisms)
    if (runs_along(prism, piece, high) &&
        (!longest || prism.to - prism.from > longest->to - longest->from))
      longest = {prism.from, prism.to};
  return longest;
}

/// The middle of the longest stretch in which nothing is worked that does not go on through it.
Length clear_place(const Piece& piece, Stretch within) {
  std::vector<Stretch> taken{{within.to, within.to}};
  for (const Feature& feature : piece.features)
    for (const Box& body : bodies_of(feature))
      if (body.low[0] > within.from || body.high[0] < within.to)
        taken.push_back({body.low[0], body.high[0]});
  std::sort(taken.begin(), taken.end(),
            [](const Stretch& a, const Stretch& b) { return a.from < b.from; });
  Stretch clear{within.from, within.from};
  Length from = within.from;
  for (const Stretch& its : taken) {
    if (its.from - from > clear.to - clear.from) clear = {from, its.from};
    from = std::max(from, its.to);
  }
  return clear.from + floor_half(clear.to - clear.from);
}

class EdgeDrawing {
 public:
  EdgeDrawing(const ItemReport& item, ShapedEdge edge, const LengthPrinter& lengths)
      : item_(item), edge_(std::move(edge)), lengths_(lengths), fine_(lengths.fine()) {}

  /// At the largest scale at which it has room.
  SheetBlock block(const std::vector<const Operation*>& operations, const Extent& room) const {
    SheetBlock block;
    for (const int one_to : kScales) {
      block = {titled(section({one_to}), words(operations, {one_to}), kTitleWidth), {one_to}};
      const Extent extent = extent_of(block.picture).value_or(Extent());
      if (extent.width() <= room.width() && extent.height() <= room.height()) break;
    }
    return block;
  }

 private:
  const Piece& piece() const { return item_.wood.pieces[edge_.piece]; }

  std::string title() const {
    return feature(0).kind == FeatureKind::moulding ? "moulded edge" : "raised edge";
  }

  TitleWords words(const std::vector<const Operation*>& operations, PaperScale scale) const {
    TitleWords all{"", title() + " of " + piece().mark + ", " + scale_text(scale), {}, true};
    for (const Operation* operation : operations) {
      const bool moulding = operation->makes == FeatureKind::moulding;
      const auto add = [&](std::string text) {
        if (!text.empty()) all.words.push_back(std::move(text));
      };
      add(moulding ? moulding_text(*operation, lengths_) : raise_text(*operation, lengths_));
      const Run& run = operation->runs.front();
      add(corners_text(item_.wood.pieces[run.piece].features[run.feature], lengths_));
      add(runs_text(item_.wood, *operation, moulding ? moulded_edge : face_of));
    }
    return all;
  }

  Picture section(PaperScale scale) const {
    const Stretch stretch = *straight_run(piece(), feature(0), edge_.high);
    const Length at = clear_place(piece(), stretch);
    const CutAway cut{{piece().place.axes[0], on_axis(0, {at}).front()}, region(at)};
    const DrawnWood drawn = drawn_of(item_.wood, edge_.piece);
    const LineView lines = section_of({&drawn, 1}, cut);
    NotedView view(lines, item_.wood, sight_of(cut.plane), scale, fine_);
    const PaperSide beside = side_of(view, 1, edge_.high);
    const PaperSide before = side_of(view, 2, is_at_back_alone());
    view.keep_clear();
    view.chain(before, piece().place.axes[1], on_axis(1, from_edge()));
    view.chain(beside, piece().place.axes[2], on_axis(2, from_face()));
    view.letter_beside(side_of(view, 2, false), "face");
    return view.picture();
  }

  const Feature& feature(std::size_t number) const {
    return piece().features[edge_.features[number]];
  }

  /// Of the shapes from the edge.
  Length deepest() const {
    Length most;
    for (std::size_t i = 0; i < edge_.features.size(); ++i)
      most = std::max(most, size_of(feature(i), SizeName::width).value_or(Length()));
    return most;
  }

  /// At which side of the view the low or the high end of one of the piece's own axes is.
  PaperSide side_of(const NotedView& view, std::size_t own, bool high) const {
    const Axis axis = piece().place.axes[own];
    const bool upwards = high != piece().place.backwards[own];  // in the assembly
    Triple one;
    one[static_cast<std::size_t>(axis)] = Length::from_mm(1);
    const ViewSpot zero = view.paper(Triple{}), next = view.paper(one);
    if (view.runs_level(axis))
      return (next.u > zero.u) == upwards ? PaperSide::right : PaperSide::left;
    return (next.v > zero.v) == upwards ? PaperSide::above : PaperSide::below;
  }

  /// Places on one of the piece's own axes, along that of the assembly.
  std::vector<Length> on_axis(std::size_t own, const std::vector<Length>& places) const {
    std::vector<Length> there;
    for (const Length place : places) {
      Triple spot;
      spot[own] = place;
      there.push_back(placed(Box{spot, spot}, piece().place)
                          .low[static_cast<std::size_t>(piece().place.axes[own])]);
    }
    return there;
  }

  /// What a joiner sets across the edge.
  std::vector<Length> from_edge() const {
    std::vector<Length> places{Length()};
    for (std::size_t i = 0; i < edge_.features.size(); ++i) {
      for (const MouldingCorner& corner : feature(i).corners)
        places.push_back(corner.from_edge);
      const auto width = size_of(feature(i), SizeName::width);
      if (const auto tongue = size_of(feature(i), SizeName::tongue)) places.push_back(*tongue);
      if (const auto quirk = size_of(feature(i), SizeName::quirk))
        places.push_back(*width - *quirk);
      if (width) places.push_back(*width);
    }
    if (edge_.high)
      for (Length& place : places)
        place = piece().blank[1] - place;
    return places;
  }

  /// The same from each face that is worked, and the thickness.
  std::vector<Length> from_face() const {
    const Length thick = piece().blank[2];
    std::vector<Length> places{Length(), thick};
    for (std::size_t i = 0; i < edge_.features.size(); ++i) {
      std::vector<Length> deep;
      for (const MouldingCorner& corner : feature(i).corners)
        deep.push_back(corner.deep);
      for (const SizeName name : {SizeName::fillet, SizeName::shoulder, SizeName::depth})
        if (const auto size = size_of(feature(i), name)) deep.push_back(*size);
      for (const Length its : deep) {
        if (starts_at(feature(i), Length())) places.push_back(its);
        if (starts_at(feature(i), thick)) places.push_back(thick - its);
      }
    }
    return places;
  }

  static bool starts_at(const Feature& feature, Length face) {
    for (const Prism& prism : feature.prisms)
      for (const Corner& corner : prism.outline)
        if (prism.along == 0 && corner.v == face) return true;
    return false;
  }

  bool is_at_back_alone() const {
    for (std::size_t i = 0; i < edge_.features.size(); ++i)
      if (starts_at(feature(i), Length())) return false;
    return true;
  }

  /// As much again as is worked, and at least half the thickness.
  Box region(Length at) const {
    const Length wide =
        std::min(piece().blank[1], deepest() + std::max(deepest(), floor_half(piece().blank[2])));
    const Length low = edge_.high ? piece().blank[1] - wide : Length();
    return placed({{at - Length::from_mm(1), low, Length()},
                   {at + Length::from_mm(1), low + wide, piece().blank[2]}},
                  piece().place);
  }

  const ItemReport& item_;
  ShapedEdge edge_;
  const LengthPrinter& lengths_;
  LengthPrinter fine_;  // of what fits go by
};

/// The edge that an operation is first run along straight, with all that shapes it.
std::optional<ShapedEdge> edge_for(const Assembly& wood, const Operation& operation) {
  for (const Run& run : operation.runs) {
    const Piece& piece = wood.pieces[run.piece];
    const bool high = operation.makes == FeatureKind::moulding && run.side.from_high;
    if (!straight_run(piece, piece.features[run.feature], high)) continue;
    ShapedEdge edge{run.piece, high, {run.feature}};
    for (std::size_t i = 0; i < piece.features.size(); ++i)
      if (i != run.feature && is_shape(piece.features[i].kind) &&
          straight_run(piece, piece.features[i], high))
        edge.features.push_back(i);
    return edge;
  }
  return {};
}

bool shapes(const Operation& operation, const ShapedEdge& edge) {
  return std::any_of(operation.runs.begin(), operation.runs.end(), [&](const Run& run) {
    return run.piece == edge.piece && std::find(edge.features.begin(), edge.features.end(),
                                                run.feature) != edge.features.end();
  });
}

}  // namespace

std::vector<EdgeDetail> edge_details(const ItemReport& item, const LengthPrinter& lengths,
                                     const Extent& room) {
  std::vector<EdgeDetail> details;
  std::set<const Operation*> shown;
  for (const Operation& operation : item.making->operations) {
    if (!is_shape(operation.makes) || shown.count(&operation) > 0) continue;
    const std::optional<ShapedEdge> edge = edge_for(item.wood, operation);
    if (!edge) continue;
    std::vector<const Operation*> its;
    for (const Operation& other : item.making->operations)
      if (is_shape(other.makes) && shapes(other, *edge)) its.push_back(&other);
    shown.insert(its.begin(), its.end());
    details.push_back({edge->piece, EdgeDrawing(item, *edge, lengths).block(its, room)});
  }
  return details;
}

}  // namespace haunch
