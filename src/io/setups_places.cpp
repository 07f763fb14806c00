#include "setups_places.h"

#include <algorithm>
#include <tuple>
#include <utility>

#include "bodies.h"
#include "datum.h"
#include "machine_sets.h"

namespace haunch {
namespace {

bool is_whole_length(const Piece& piece, const Run& run) {
  return run.side.into != 0 && run.far && run.near == Length() && *run.far == piece.blank[0];
}

std::string place_text(const Piece& piece, const Run& run, const LengthPrinter& lengths) {
  if (is_whole_length(piece, run)) return "the whole length";
  std::string text = lengths.one(run.near);
  if (run.far) text += " to " + lengths.one(*run.far);
  return text;
}

/// Which end of its piece a run in a face is at that is told across it, as sockets are; nothing of
/// others.
std::optional<bool> at_low_end(const Piece& piece, const Run& run) {
  const bool across = run.from == Line::lower_edge || run.from == Line::left_edge;
  const bool through = run.from == Line::inner_face || run.from == Line::lower_face;
  if (!(run.side.into == 2 && across) && !(run.side.into == 1 && through)) return {};
  const std::vector<Box> bodies = bodies_of(piece.features[run.feature]);
  return std::all_of(bodies.begin(), bodies.end(),
                     [&](const Box& body) { return body.low[0] < piece.blank[0] - body.high[0]; });
}

/// Of a rebate round a leaf or where two meet: on which of its corners, of a pin's hole in what is
/// no stile beside which edge, as its setting does not tell.
std::string corner_text(const Piece& piece, const Run& run) {
  const Feature& feature = piece.features[run.feature];
  if (feature.kind == FeatureKind::pin_hole && size_of(feature, SizeName::depth) &&
      piece.role != Role::stile) {
    const Prism& hole = feature.prisms.front();
    return ", from the " + entered_edge(piece, hole) + (hole.along == 2 ? " edge" : "");
  }
  if (feature.kind != FeatureKind::meeting_rebate && feature.kind != FeatureKind::lip_rebate)
    return {};
  const std::vector<Box> bodies = bodies_of(feature);
  const bool at_face = std::all_of(bodies.begin(), bodies.end(),
                                   [](const Box& body) { return body.low[2] == Length(); });
  return at_face ? ", at the face" : ", at the back";
}

/// The side alone.
std::string side_text(const Piece& piece, const Run& run) {
  const FeatureKind kind = piece.features[run.feature].kind;
  const bool is_top = kind == FeatureKind::arched_head || kind == FeatureKind::arched_top;
  if (is_top && is_upright(piece)) return end_name(piece, false);
  if (run.side.into == 0) return place_of(piece, run);
  const Surface side = side_of(piece, run.side);
  if (run.side.into == 2) {
    if (has_inner_face(piece.role)) return "inner face";
    if (side == Surface::face) return "face side";
    return side == Surface::back ? "back" : std::string(word_of(side)) + " face";
  }
  const bool of_datum = run.side.from_high == datum_of(piece).edge_high;
  if (piece.role == Role::stile && of_datum) return "face edge";
  if (side == Surface::face) return "front edge";
  return side == Surface::back ? "rear edge" : std::string(word_of(side)) + " edge";
}

/// " (0 to 60 across)"
std::string across_text(const std::optional<AcrossFace>& across, const LengthPrinter& lengths) {
  if (!across) return {};
  return " (" + lengths.one(across->near) +
         (across->far ? " to " + lengths.one(*across->far) : std::string()) + " across)";
}

/// One cut, though it serves several joints.
bool goes_from_edge_to_edge(const Run& run) {
  return run.side.into == 2 && run.far && !run.across;
}

/// Of runs in their order, told along their piece.
std::string along_text(const Piece& piece, const std::vector<Run>& runs,
                       const LengthPrinter& lengths) {
  std::vector<std::pair<std::string, int>> places;
  for (const Run& run : runs) {
    std::string place = place_text(piece, run, lengths);
    const bool is_new = places.empty() || places.back().first != place;
    if (is_new) places.emplace_back(std::move(place), 0);
    if (is_new || !goes_from_edge_to_edge(run)) ++places.back().second;
  }
  std::string text;
  for (const auto& [place, times] : places) {
    text += (text.empty() ? "" : ", ") + place;
    if (times > 1) text += times == 2 ? " twice" : " " + std::to_string(times) + " times";
  }
  return text;
}

std::string places_text(const Piece& piece, const std::vector<Run>& runs,
                        const LengthPrinter& lengths) {
  std::vector<Run> in_order = runs;
  std::stable_sort(in_order.begin(), in_order.end(), [](const Run& a, const Run& b) {
    return std::tie(a.across, a.near) < std::tie(b.across, b.near);
  });
  std::string text;
  for (auto first = in_order.begin(); first != in_order.end();) {
    const auto end = std::find_if(first, in_order.end(),
                                  [&](const Run& run) { return run.across != first->across; });
    text += (text.empty() ? "" : "; ") + along_text(piece, {first, end}, lengths) +
            across_text(first->across, lengths);
    first = end;
  }
  return text;
}

/// Of what is worked in a face so far from an edge: which edge that is.
std::string datum_text(const Piece& piece, const Run& run, const DatumSide& datum) {
  const FeatureKind kind = piece.features[run.feature].kind;
  if (datum.name != "that edge" || kind == FeatureKind::pin_hole) return {};
  Run at_edge = run;
  at_edge.side = datum.side;
  return ", from the " + side_text(piece, at_edge);
}

std::string worked_text(const Piece& piece, const Run& run, const DatumSide& datum) {
  const std::string side =
      side_text(piece, run) + corner_text(piece, run) + datum_text(piece, run, datum);
  const std::optional<bool> low = at_low_end(piece, run);
  return low ? side + ", " + end_name(piece, *low) : side;
}

std::string zero_text(const Piece& piece, const Run& run, const std::optional<Lie>& lie) {
  constexpr std::string_view kWhere[] = {"to the left", "to the right", "on the table",
                                         "up",          "towards you",  "at the fence"};
  std::string text(word_of(run.from));
  if (lie) {
    const Toward hand = hand_of(*lie, piece, run);
    text += ", " + std::string(kWhere[static_cast<std::size_t>(hand)]);
  }
  return text;
}

}  // namespace

std::vector<PlacesTold> places_of(const SetupsReport& report, const Setup& setup,
                                  const SetupPiece& piece, const LengthPrinter& lengths) {
  const Piece& wood = report.piece_of(piece);
  const auto worked = [&](const Run& run) {
    return worked_text(wood, run, datum_side(report.item_of(piece).wood, run, setup.settings));
  };
  std::vector<PlacesTold> all;
  std::vector<Run> left = piece.runs;
  while (!left.empty()) {
    const Run first = left.front();
    const std::string side = worked(first);
    const auto others = std::stable_partition(left.begin(), left.end(), [&](const Run& run) {
      return run.from == first.from && worked(run) == side;
    });
    const std::vector<Run> its(left.begin(), others);
    left.erase(left.begin(), others);
    all.push_back({side + (piece.both_faces ? ", both faces" : ""),
                   zero_text(wood, first, report.lie_of(setup, piece, first)),
                   places_text(wood, its, lengths)});
  }
  return all;
}

}  // namespace haunch
