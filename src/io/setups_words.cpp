#include "setups_words.h"

#include <algorithm>
#include <utility>

#include "datum.h"
#include "machine_sets.h"
#include "polyhedron.h"

namespace haunch {
namespace {

std::string setting_text(const NamedSize& setting, const LengthPrinter& lengths) {
  return setting_words(setting.name, lengths.fine().one(setting.size));
}

bool is_whole_length(const Piece& piece, const Run& run) {
  return run.side.into != 0 && run.far && run.near == Length() && *run.far == piece.blank[0];
}

std::string place_text(const Piece& piece, const Run& run, const LengthPrinter& lengths) {
  if (is_whole_length(piece, run)) return "the whole length";
  std::string text = lengths.one(run.near);
  if (run.far) text += " to " + lengths.one(*run.far);
  return text;
}

std::string fault_text(const WayFinding& finding, const LengthPrinter& lengths) {
  constexpr std::string_view kSizes[] = {" long", " wide", " thick"};
  const std::string is = lengths.one(finding.value);
  const std::string may_be = lengths.one(finding.limit);
  switch (finding.fault) {
    case WayFault::no_machine:
      return "no machine does this";
    case WayFault::cutter_wide:
      return "the narrowest cutter is " + is + " wide, the cut only " + may_be;
    case WayFault::cutter_short:
      return "the cutter reaches " + is + ", the cut is " + may_be + " deep";
    case WayFault::cutter_missing:
      if (finding.value == Length()) return "there is no cutter of this shape";
      return "it takes a cutter of just " + may_be + ", the nearest is " + is;
    case WayFault::piece_short:
      return is + " long; not safe under " + may_be;
    case WayFault::piece_narrow:
      return is + " wide; not safe under " + may_be;
    case WayFault::piece_thin:
      return is + " thick; not safe under " + may_be;
    case WayFault::not_held:
      return is + std::string(kSizes[finding.along]) + ": what holds the work here takes no " +
             (finding.value > finding.limit ? "more" : "less") + " than " + may_be;
    case WayFault::no_room:
      return is + " long: it cannot stand on its end here, where there is room for " + may_be;
    case WayFault::curved:
      return "the cut is curved, and what holds the work here takes it past the cutter straight";
  }
  return {};
}

/// What was tried and helps.
std::string remedy_text(const NamedSize& remedy, const LengthPrinter& lengths) {
  if (remedy.name == SizeName::length)
    return "work it " + lengths.one(remedy.size) + " long and cut it to length after";
  return setting_text(remedy, lengths) + " it could be cut here";
}

std::vector<Box> bodies_of(const Feature& feature) {
  std::vector<Box> bodies = feature.cuts;
  for (const Prism& prism : feature.prisms)
    bodies.push_back(bounds_of(prism));
  return bodies;
}

/// Which end of its piece a run in a face is at that is told across it, as sockets are; nothing of
/// others.
std::optional<bool> at_low_end(const Piece& piece, const Run& run) {
  const bool across = run.from == Line::lower_edge || run.from == Line::left_edge;
  if (run.side.into != 2 || !across) return {};
  const std::vector<Box> bodies = bodies_of(piece.features[run.feature]);
  return std::all_of(bodies.begin(), bodies.end(),
                     [&](const Box& body) { return body.low[0] < piece.blank[0] - body.high[0]; });
}

/// Of a rebate round a leaf or where two meet: on which of its corners, as its setting does not
/// tell.
std::string_view corner_text(const Piece& piece, const Run& run) {
  const Feature& feature = piece.features[run.feature];
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

}  // namespace

std::string setting_words(SizeName name, const std::string& figure) {
  switch (name) {
    case SizeName::length:
      return figure + " long";
    case SizeName::width:
      return figure + " wide";
    case SizeName::thickness:
      return figure + " thick";
    case SizeName::depth:
      return figure + " deep";
    case SizeName::diameter:
      return figure + " in diameter";
    case SizeName::from_face:
      return figure + " from the face side";
    case SizeName::from_edge:
      return figure + " from the edge";
    case SizeName::from_shoulder:
      return figure + " from the shoulder";
    default:
      break;
  }
  std::string word(word_of(name));
  std::replace(word.begin(), word.end(), '_', ' ');
  return word + " " + figure;
}

std::string settings_text(const std::vector<NamedSize>& settings, const LengthPrinter& lengths) {
  std::string text;
  for (const NamedSize& setting : settings)
    text += (text.empty() ? "" : ", ") + setting_text(setting, lengths);
  return text;
}

std::string settings_text(const Setup& setup, const LengthPrinter& lengths) {
  return settings_text(setup.settings, lengths) +
         (setup.through ? ", right through from both sides" : "");
}

std::string places_text(const Piece& piece, const std::vector<Run>& runs,
                        const LengthPrinter& lengths) {
  std::vector<Run> in_order = runs;
  std::stable_sort(in_order.begin(), in_order.end(),
                   [](const Run& a, const Run& b) { return a.near < b.near; });
  std::vector<std::pair<std::string, int>> places;
  for (const Run& run : in_order) {
    std::string place = place_text(piece, run, lengths);
    if (places.empty() || places.back().first != place) places.emplace_back(std::move(place), 0);
    ++places.back().second;
  }
  std::string text;
  for (const auto& [place, times] : places) {
    text += (text.empty() ? "" : ", ") + place;
    if (times > 1) text += times == 2 ? " twice" : " " + std::to_string(times) + " times";
  }
  return text;
}

std::string worked_text(const Piece& piece, const Run& run) {
  const std::string side = side_text(piece, run) + std::string(corner_text(piece, run));
  const std::optional<bool> low = at_low_end(piece, run);
  return low ? side + ", " + end_name(piece, *low) : side;
}

std::string holding_text(const Holding& holding, bool in_face, std::string_view datum_name) {
  const std::string worked = in_face ? "worked face" : "worked side";
  const std::string datum(datum_name);
  switch (holding.worked) {
    case WorkedLooks::up:
      return worked + " up, " + datum + " to the fence";
    case WorkedLooks::down:
      return worked + " down, " + datum + " to the fence";
    case WorkedLooks::sideways:
      break;
  }
  if (holding.datum == DatumLies::on_table)
    return datum + " on the table, " + worked + " to the cutter";
  return datum + " to the fence, " + worked + " first";
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

std::string first_piece_text(const FirstPiece& first, const LengthPrinter& lengths) {
  const LengthPrinter fine = lengths.fine();
  std::string text = std::string(word_of(first.size)) + " " + fine.one(first.wanted);
  if (first.least && first.most)
    text += ", " + fine.one(*first.least) + " to " + fine.one(*first.most);
  return text;
}

std::string operation_words(const Setup& setup) {
  std::string words = setup.operation();
  std::replace(words.begin(), words.end(), '-', ' ');
  return words;
}

std::string finding_text(const WayFinding& finding, const LengthPrinter& lengths) {
  const std::string text = fault_text(finding, lengths);
  return finding.remedy ? text + "; " + remedy_text(*finding.remedy, lengths) : text;
}

}  // namespace haunch
