#include "joinery_page.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <vector>

#include "frame_page.h"
#include "glass_page.h"
#include "leaf_page.h"
#include "report.h"
#include "sawn.h"

namespace haunch {
namespace {

using Marks = std::vector<std::string>;

void add_once(Marks& marks, const std::string& mark) {
  if (std::find(marks.begin(), marks.end(), mark) == marks.end()) marks.push_back(mark);
}

bool is_upright(const Piece& piece) {
  return piece.place.axes[0] == Axis::y;
}

/// The name of an edge across the piece's width as it stands in the leaf.
std::string edge_name(const Piece& piece, bool low) {
  if (is_upright(piece)) return low ? "left" : "right";
  return low ? "lower" : "upper";
}

/// The same, but of a stile, which is worked on one edge only, its face edge, so that both of a
/// pair read alike.
std::string worked_edge(const Piece& piece, bool low) {
  return piece.role == "stile" ? "face" : edge_name(piece, low);
}

/// The name of an end of the piece as it stands in the leaf.
std::string end_name(const Piece& piece, bool low) {
  if (is_upright(piece)) return low ? "lower end" : "upper end";
  return low ? "left end" : "right end";
}

/// From shoulder to shoulder of one piece, at its face side and at its back.
struct ShoulderLengths {
  Length face, back;

  friend bool operator==(const ShoulderLengths&, const ShoulderLengths&) = default;
};

/// One set of figures that a machine is set to, and what is run with it.
template <typename Key, typename Rows>
struct MachineSet {
  Key key;
  Rows rows;
};

/// The rows of the set with this key, which is made if need be; sets stand in the order they were
/// first met.
template <typename Key, typename Rows>
Rows& rows_for(std::vector<MachineSet<Key, Rows>>& sets, const Key& key) {
  for (auto& set : sets)
    if (set.key == key) return set.rows;
  sets.push_back({key, {}});
  return sets.back().rows;
}

bool is_lap(const Joint& joint) {
  return joint.kind == "half-lap";
}

bool is_dowel(const Joint& joint) {
  return joint.kind == "dowel";
}

/// A rebate along a piece's edge in which panels lie.
bool holds_panels(const Assembly& wood, const Feature& feature) {
  return feature.kind == "rebate" && !feature.joints.empty() &&
         wood.joints[feature.joints.front()].kind == "panel-in-rebate";
}

bool has_rebated_edges(const Assembly& wood) {
  for (const Piece& piece : wood.pieces)
    for (const Feature& feature : piece.features)
      if (holds_panels(wood, feature)) return true;
  return false;
}

// ---- stiles as a pair

std::string pair_text(const Assembly& wood) {
  std::vector<const Piece*> stiles;
  for (const Piece& piece : wood.pieces)
    if (piece.role == "stile") stiles.push_back(&piece);
  const bool two_leaves = stiles.size() == 4 && !wood.meetings.empty();
  if (stiles.size() != 2 && !two_leaves) return {};
  std::string text;
  for (std::size_t i = 0; i < stiles.size(); i += 2)
    text += (text.empty() ? "" : "; ") + stiles[i]->mark + " (left) and " + stiles[i + 1]->mark +
            " (right)";
  const std::string left = stiles[0]->mark + (two_leaves ? " and " + stiles[2]->mark : "");
  const std::string right = stiles[1]->mark + (two_leaves ? " and " + stiles[3]->mark : "");
  return "  " +
         wrapped(text + (two_leaves ? " are pairs" : " are a pair") +
                     ". Put face side up, foot towards you, face edges "
                     "together: the face edge of " +
                     left + " is its right one, of " + right + " its left one. " +
                     (has_rebated_edges(wood) ? "Rebates" : "Grooves") +
                     " and mortises are all in the face edges. Lengths are "
                     "from the foot of the "
                     "finished leaf, horns not counted.",
                 kPageWidth, 2) +
         "\n";
}

// ---- mortises

struct MortiseRow {
  Marks in;
  std::string edge;
  std::string from;
  Length near, far;
  std::optional<Length> near_from_shoulder;
  std::optional<Length> free;  // to a square-edged tenon, where the ends stay round
  Marks takes;
  std::string_view shoulder = {};  // which one that is, where a piece has a long and a short one
};
/// What a machine is set to for a mortise.
struct MortiseKey {
  Length width, depth, from_face;
  Length end_radius;  // 0: square
  bool through;
  bool open_end;  // at its piece's end
  std::optional<Flare> flare;

  friend bool operator==(const MortiseKey&, const MortiseKey&) = default;
};
using MortiseSets = std::vector<MachineSet<MortiseKey, std::vector<MortiseRow>>>;

void add_mortise(std::vector<MortiseRow>& rows, const Assembly& wood, const Joint& joint,
                 const MortiseSpan& span) {
  const Piece& receives = wood.pieces[joint.receives];
  const std::string& enters = wood.pieces[joint.enters].mark;
  const MortiseSizes& mortise = *joint.mortise;
  const bool in_end = span.from_edge.has_value();
  const Length near = span.from_edge.value_or(span.from_foot);
  MortiseRow row{{receives.mark},
                 in_end ? end_name(receives, joint.heading.upwards)
                        : worked_edge(receives, joint.heading.upwards),
                 in_end                 ? edge_name(receives, true) + " edge"
                 : is_upright(receives) ? "foot"
                                        : "left end",
                 near,
                 near + span.length,
                 {},
                 {},
                 {enters},
                 mortise.shoulder};
  if (mortise.free_width)
    row.free = *mortise.free_width + span.length - mortise.each.front().length;
  if (mortise.from_shoulder)
    row.near_from_shoulder =
        *mortise.from_shoulder + span.from_foot - mortise.each.front().from_foot;
  for (MortiseRow& other : rows) {
    if (other.near != row.near || other.far != row.far || other.edge != row.edge) continue;
    add_once(other.in, receives.mark);
    add_once(other.takes, enters);
    return;
  }
  rows.push_back(std::move(row));
}

void sort_rows(MortiseSets& sets) {
  for (auto& set : sets)
    std::stable_sort(
        set.rows.begin(), set.rows.end(), [](const MortiseRow& a, const MortiseRow& b) {
          return std::tie(a.from, a.in, a.edge, a.near) < std::tie(b.from, b.in, b.edge, b.near);
        });
}

MortiseSets mortise_sets(const Assembly& wood) {
  MortiseSets sets;
  for (const Joint& joint : wood.joints) {
    if (!joint.mortise || is_dowel(joint) || is_lap(joint)) continue;
    const MortiseSizes& mortise = *joint.mortise;
    for (const MortiseSpan& span : mortise.each) {
      const Length from_face = span.from_face.value_or(mortise.from_face);
      auto& rows =
          rows_for(sets, MortiseKey{mortise.width, mortise.depth, from_face, mortise.end_radius,
                                    mortise.through, joint.design.edge.has_value(), mortise.flare});
      add_mortise(rows, wood, joint, span);
    }
  }
  sort_rows(sets);
  return sets;
}

std::string mortise_text(const MortiseKey& key, const LengthPrinter& lengths) {
  std::string text = lengths.one(key.width) + " wide, ";
  text += key.through ? "right through " + lengths.one(key.depth) + " of wood"
                      : lengths.one(key.depth) + " deep";
  text += ", " + lengths.one(key.from_face) + " from the face side";
  if (key.end_radius > Length())
    text += ", ends round by a cutter of " + lengths.one(key.end_radius * 2);
  if (key.open_end) text += ", open at the end of its piece";
  text = "  " + wrapped(text, kPageWidth, 2) + "\n";
  if (!key.flare) return text;
  const std::string flare = "opened for wedges: " + lengths.one(key.flare->width) +
                            " more at each end where it comes out, running out to nothing " +
                            lengths.one(key.flare->depth) + " in";
  return text + "  " + wrapped(flare, kPageWidth, 2) + "\n";
}

/// "from shoulder", or which of two it is from.
std::string shoulder_heading(const std::vector<MortiseRow>& rows) {
  for (const MortiseRow& row : rows)
    if (!row.shoulder.empty()) return "from " + std::string(row.shoulder) + " shoulder";
  return "from shoulder";
}

std::string mortise_page(const Assembly& wood, const LengthPrinter& lengths) {
  const MortiseSets sets = mortise_sets(wood);
  if (sets.empty()) return {};
  std::string page = "\nMORTISES\n";
  bool any_round = false;
  bool any_squared = false;
  for (const auto& [key, rows] : sets) {
    const bool round = key.end_radius > Length();
    any_round = any_round || round;
    any_squared = any_squared || !round;
    page += mortise_text(key, lengths);
    TextTable table({"in", "edge", "from", "near", "far", "long", round ? "free" : "straight",
                     shoulder_heading(rows), "takes"});
    for (const MortiseRow& row : rows) {
      const Length straight =
          row.free ? *row.free : std::max(row.far - row.near - key.width, Length());
      table.add({joined(row.in), row.edge, row.from, row.near, row.far, row.far - row.near,
                 straight,
                 row.near_from_shoulder ? Cell(*row.near_from_shoulder) : Cell(std::string()),
                 joined(row.takes)});
    }
    page += table.text(lengths, 4);
  }
  if (any_round)
    page += "  " +
            wrapped("free: the widest tenon with square edges that goes in between the round ends.",
                    kPageWidth, 2) +
            "\n";
  if (!any_squared) return page;
  page += "  " +
          wrapped(
              "straight: what is free between the ends where a cutter of the mortise's width "
              "leaves them round. A wider "
              "square tenon wants the ends squared or its own edges rounded.",
              kPageWidth, 2) +
          "\n";
  return page;
}

/// The seats of haunches where no groove receives them.
std::string haunching_page(const Assembly& wood, const LengthPrinter& lengths) {
  MortiseSets sets;
  for (const Piece& piece : wood.pieces) {
    for (const Feature& feature : piece.features) {
      if (feature.kind != "haunching") continue;
      const Box& first = feature.cuts.front();
      auto& rows = rows_for(
          sets, MortiseKey{first.extent(2), first.extent(1), first.low[2], {}, false, false, {}});
      for (const Box& cut : feature.cuts) {
        const auto same = [&](const MortiseRow& it) {
          return it.near == cut.low[0] && it.far == cut.high[0];
        };
        const auto known = std::find_if(rows.begin(), rows.end(), same);
        if (known != rows.end())
          add_once(known->in, piece.mark);
        else
          rows.push_back({{piece.mark},
                          worked_edge(piece, cut.low[1] == Length()),
                          is_upright(piece) ? "foot" : "left end",
                          cut.low[0],
                          cut.high[0],
                          {},
                          {},
                          {}});
      }
    }
  }
  sort_rows(sets);
  std::string page;
  for (const auto& [key, rows] : sets) {
    page += mortise_text(key, lengths);
    TextTable table({"in", "edge", "from", "near", "far", "long"});
    for (const MortiseRow& row : rows)
      table.add({joined(row.in), row.edge, row.from, row.near, row.far, row.far - row.near});
    page += table.text(lengths, 4);
  }
  return page.empty() ? page : "\nHAUNCHINGS, beside the mortises\n" + page;
}

// ---- tenons

struct TenonRow {
  Marks marks;
  std::string name;
  ShoulderLengths shoulders;
  std::vector<TenonSpan> each, haunches;
};
/// What a machine is set to for a tenon.
struct TenonSetting {
  Length thickness, depth, from_face;
  Length haunch_depth, haunch_thickness;  // 0: no haunch
  std::optional<Length> left_in_groove;   // of a stub, below its end
  std::optional<Length> twin_from_face;   // of a pair side by side, of the second
  Length edge_radius;                     // 0: square edges
  Length longer_at_face, longer_at_back;  // of its shoulders
  Length set_back;                        // past the sight edge

  bool even() const { return longer_at_face == longer_at_back; }
  friend bool operator==(const TenonSetting&, const TenonSetting&) = default;
};

using TenonSets = std::vector<MachineSet<TenonSetting, std::vector<TenonRow>>>;

bool same_spans(const std::vector<TenonSpan>& a, const std::vector<TenonSpan>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const TenonSpan& x, const TenonSpan& y) {
                      return x.from_edge == y.from_edge && x.width == y.width;
                    });
}

/// Shoulder to shoulder: a piece less the tenons at both its ends.
std::vector<ShoulderLengths> shoulder_lengths(const Assembly& wood) {
  std::vector<ShoulderLengths> shoulders;
  for (const Piece& piece : wood.pieces)
    shoulders.push_back({piece.blank[0], piece.blank[0]});
  for (const Joint& joint : wood.joints) {
    if (!joint.tenon || !joint.has_shoulder) continue;
    ShoulderLengths& its = shoulders[joint.enters];
    its.face -= joint.tenon->depth - joint.tenon->longer_at_face;
    its.back -= joint.tenon->depth - joint.tenon->longer_at_back;
  }
  return shoulders;
}

void add_tenon(std::vector<TenonRow>& rows, const Piece& piece, const TenonSizes& tenon,
               const ShoulderLengths& shoulders) {
  for (TenonRow& row : rows) {
    const bool alike = row.shoulders == shoulders && same_spans(row.each, tenon.each) &&
                       same_spans(row.haunches, tenon.haunches);
    const bool same_piece = row.marks.front() == piece.mark;
    if (!alike || (row.name != piece.name && piece.role != "muntin" && !same_piece)) continue;
    add_once(row.marks, piece.mark);
    return;
  }
  rows.push_back({{piece.mark},
                  piece.role == "muntin" ? "muntin" : piece.name,
                  shoulders,
                  tenon.each,
                  tenon.haunches});
}

TenonSets tenon_sets(const Assembly& wood) {
  const std::vector<ShoulderLengths> shoulders = shoulder_lengths(wood);
  TenonSets sets;
  for (const Joint& joint : wood.joints) {
    if (!joint.tenon || !joint.has_shoulder || is_lap(joint)) continue;
    TenonSizes tenon = *joint.tenon;
    TenonSetting setting{tenon.thickness,
                         tenon.depth,
                         tenon.from_face,
                         tenon.haunch_depth,
                         tenon.haunch_thickness,
                         {},
                         tenon.each.back().from_face,
                         tenon.edge_radius,
                         tenon.longer_at_face,
                         tenon.longer_at_back,
                         tenon.set_back};
    if (setting.twin_from_face)
      std::erase_if(tenon.each,
                    [&](const TenonSpan& span) { return span.from_face != tenon.from_face; });
    if (!joint.mortise) setting.left_in_groove = joint.design.bottom;
    auto& rows = rows_for(sets, setting);
    add_tenon(rows, wood.pieces[joint.enters], tenon, shoulders[joint.enters]);
  }
  return sets;
}

/// "13 to 79, 90 to 120"
std::string spans_text(const std::vector<TenonSpan>& spans, const LengthPrinter& lengths) {
  std::string text;
  for (const TenonSpan& span : spans)
    text += (text.empty() ? "" : ", ") + lengths.one(span.from_edge) + " to " +
            lengths.one(span.from_edge + span.width);
  return text;
}

std::string setting_text(const TenonSetting& setting, const LengthPrinter& lengths) {
  std::string text = lengths.one(setting.thickness) + " thick, " + lengths.one(setting.depth) +
                     " deep, " + lengths.one(setting.from_face) + " from the face side";
  if (setting.twin_from_face)
    text += ", and its twin " + lengths.one(*setting.twin_from_face) + " from it";
  if (setting.edge_radius > Length())
    text += ", edges rounded to a radius of " + lengths.one(setting.edge_radius);
  text = "  " + wrapped(text, kPageWidth, 2) + "\n";
  if (setting.left_in_groove)
    text += "  a stub, which stands in the groove and leaves " +
            lengths.one(*setting.left_in_groove) + " below it\n";
  if (setting.haunch_depth > Length())
    text += "  with haunches " + lengths.one(setting.haunch_thickness) + " thick, " +
            lengths.one(setting.haunch_depth) + " deep\n";
  return text;
}

/// The rows of one set: where the shoulders differ, both lengths.
std::string tenon_table(const TenonSetting& setting, const std::vector<TenonRow>& rows,
                        const LengthPrinter& lengths) {
  std::vector<std::string> heads{"on", ""};
  if (setting.even())
    heads.emplace_back("shoulder to shoulder");
  else
    heads.insert(heads.end(), {"face shoulders", "back shoulders"});
  heads.insert(heads.end(), {"tenon", "haunch"});
  TextTable table(heads);
  for (const TenonRow& row : rows) {
    std::vector<Cell> cells{joined(row.marks), row.name, row.shoulders.face};
    if (!setting.even()) cells.emplace_back(row.shoulders.back);
    cells.emplace_back(spans_text(row.each, lengths));
    cells.emplace_back(spans_text(row.haunches, lengths));
    table.add(cells);
  }
  return table.text(lengths, 4);
}

/// Where a long and a short shoulder stand.
std::string long_and_short_text(const TenonSetting& setting, const LengthPrinter& lengths) {
  std::string text;
  if (setting.set_back > Length())
    text = "deep from the shoulders, which stand " + lengths.one(setting.set_back) +
           " past the sight edges, where the moulding is cut away";
  else if (setting.longer_at_face > setting.longer_at_back)
    text =
        "deep from the back shoulder; at each end the face shoulder is coped over the moulding, "
        "and comes " +
        lengths.one(setting.longer_at_face) + " nearer to the tenon's end";
  else if (setting.longer_at_face > Length())
    text =
        "deep from the sight edge; at each end both shoulders are coped over the moulding, and "
        "come " +
        lengths.one(setting.longer_at_face) + " nearer to the tenon's end";
  else if (setting.longer_at_back > Length())
    text = "deep from the face shoulder; at each end the back shoulder stands " +
           lengths.one(setting.longer_at_back) + " nearer to the tenon's end, and fills the rebate";
  return text.empty() ? text : "  " + wrapped(text, kPageWidth, 2) + "\n";
}

/// Whether shoulders stand longer in front of a rebate.
bool has_long_shoulders(const Assembly& wood) {
  for (const Piece& piece : wood.pieces)
    for (const Feature& feature : piece.features)
      if (size_of(feature, "longer_in_front")) return true;
  return false;
}

/// Of tenons that are thin across their piece's width.
std::string turned_tenons_text(const Assembly& wood) {
  std::string text = "tenon: across the thickness, from the left or lower face";
  if (has_long_shoulders(wood))
    text +=
        "; on a rebated piece the shoulder stands longer by the rebate's depth, from the face "
        "side as far as the rebate goes";
  return "  " + wrapped(text, kPageWidth, 2) + "\n";
}

std::string tenon_page(const Assembly& wood, const LengthPrinter& lengths) {
  const TenonSets sets = tenon_sets(wood);
  if (sets.empty()) return {};
  std::string page = "\nTENONS\n";
  for (const auto& [setting, rows] : sets) {
    page += setting_text(setting, lengths) + long_and_short_text(setting, lengths);
    page += tenon_table(setting, rows, lengths);
  }
  const auto is_turned = [](const Joint& joint) { return joint.tenon && joint.cheek; };
  const auto turned = std::count_if(wood.joints.begin(), wood.joints.end(), is_turned);
  const auto tenons = std::count_if(wood.joints.begin(), wood.joints.end(),
                                    [](const Joint& joint) { return joint.tenon.has_value(); });
  if (turned < tenons)
    page += "  tenon, haunch: across the width, from the lower or left edge; both ends alike\n";
  return turned > 0 ? page + turned_tenons_text(wood) : page;
}

// ---- loose tenons

/// One length after another: length, width, thickness, depth in each piece.
using LooseKey = std::vector<Length>;

/// The radius to which a piece's edges are rounded; 0 for square ones.
Length rounding_of(const Piece& piece) {
  for (const Feature& feature : piece.features)
    if (feature.kind == "rounding") return size_of(feature, "radius").value_or(Length());
  return {};
}

std::string loose_tenon_page(const Assembly& wood, const LengthPrinter& lengths) {
  std::vector<MachineSet<LooseKey, Marks>> sets;
  for (const Joint& joint : wood.joints) {
    if (!joint.tenon || joint.has_shoulder || is_dowel(joint)) continue;
    const Piece& piece = wood.pieces[joint.enters];
    add_once(rows_for(sets, LooseKey{piece.blank[0], piece.blank[1], piece.blank[2],
                                     joint.tenon->depth, *joint.design.bottom, rounding_of(piece)}),
             piece.mark);
  }
  if (sets.empty()) return {};
  TextTable table(
      {"tenons", "long", "wide", "thick", "into each piece", "below each end", "edges rounded to"});
  for (const auto& [key, marks] : sets)
    table.add({joined(marks), key[0], key[1], key[2], key[3], key[4],
               key[5] > Length() ? Cell(key[5]) : Cell(std::string())});
  return "\nLOOSE TENONS, grain along their length\n" + table.text(lengths, 2);
}

// ---- dowels

/// A row of holes in one edge or end, by their middles.
struct HoleRow {
  Marks in;
  std::string edge, from;
  std::vector<Length> middles;
  Marks holds;  // what the dowels hold there

  bool alike(const HoleRow& other) const {
    return edge == other.edge && from == other.from && middles == other.middles;
  }
};
using HoleKey = std::vector<Length>;  // diameter, depth, from the face side to the middle
using HoleSets = std::vector<MachineSet<HoleKey, std::vector<HoleRow>>>;

/// The mark of the other piece that a dowel is let in to.
const std::string& other_end_of(const Assembly& wood, const Joint& joint) {
  for (const Joint& other : wood.joints)
    if (other.enters == joint.enters && other.receives != joint.receives)
      return wood.pieces[other.receives].mark;
  return wood.pieces[joint.receives].mark;
}

/// Puts a hole to the others in the same edge of the same piece that hold the same.
void add_hole(std::vector<HoleRow>& rows, HoleRow row) {
  for (HoleRow& other : rows)
    if (other.in == row.in && other.edge == row.edge && other.holds == row.holds) {
      other.middles.push_back(row.middles.front());
      return;
    }
  rows.push_back(std::move(row));
}

HoleSets hole_sets(const Assembly& wood) {
  HoleSets sets;
  for (const Joint& joint : wood.joints) {
    if (!is_dowel(joint)) continue;
    const Piece& receives = wood.pieces[joint.receives];
    const MortiseSizes& hole = *joint.mortise;
    const MortiseSpan& span = hole.each.front();
    const bool in_end = span.from_edge.has_value();
    const Length radius = floor_half(hole.width);
    HoleRow row{{receives.mark},
                in_end ? end_name(receives, joint.heading.upwards)
                       : worked_edge(receives, joint.heading.upwards) + " edge",
                in_end                 ? edge_name(receives, true) + " edge"
                : is_upright(receives) ? "foot"
                                       : "left end",
                {span.from_edge.value_or(span.from_foot) + radius},
                {other_end_of(wood, joint)}};
    add_hole(rows_for(sets, HoleKey{hole.width, hole.depth, hole.from_face + radius}),
             std::move(row));
  }
  return sets;
}

/// Pieces that are bored alike, together.
std::vector<HoleRow> merged(const std::vector<HoleRow>& rows) {
  std::vector<HoleRow> result;
  for (const HoleRow& row : rows) {
    const auto same = std::find_if(result.begin(), result.end(),
                                   [&](const HoleRow& other) { return other.alike(row); });
    if (same == result.end()) {
      result.push_back(row);
      continue;
    }
    add_once(same->in, row.in.front());
    add_once(same->holds, row.holds.front());
  }
  return result;
}

std::string dowel_table(const Assembly& wood, const LengthPrinter& lengths) {
  std::vector<MachineSet<std::vector<Length>, Marks>> sets;
  for (const Joint& joint : wood.joints) {
    if (!is_dowel(joint)) continue;
    const Piece& dowel = wood.pieces[joint.enters];
    add_once(rows_for(sets, {dowel.blank[1], dowel.blank[0], joint.tenon->depth}), dowel.mark);
  }
  TextTable table({"thick", "long", "into each piece", "dowels"});
  for (const auto& [key, marks] : sets)
    table.add({key[0], key[1], key[2], std::to_string(marks.size())});
  return "\nDOWELS\n" + table.text(lengths, 2);
}

std::string hole_page(const Assembly& wood, const LengthPrinter& lengths) {
  const HoleSets sets = hole_sets(wood);
  if (sets.empty()) return {};
  std::string page = "\nHOLES FOR DOWELS\n";
  for (const auto& [key, rows] : sets) {
    page += "  " + lengths.one(key[0]) + " wide, " + lengths.one(key[1]) + " deep, middle " +
            lengths.one(key[2]) + " from the face side\n";
    TextTable table({"in", "", "from", "middles at", "holds"});
    for (const HoleRow& row : merged(rows)) {
      std::string middles;
      for (const Length middle : row.middles)
        middles += (middles.empty() ? "" : ", ") + lengths.one(middle);
      table.add({joined(row.in), row.edge, row.from, middles, joined(row.holds)});
    }
    page += table.text(lengths, 4);
  }
  return page + dowel_table(wood, lengths);
}

// ---- half-laps

/// A stretch of a stile's back that is cut away for laps.
struct LapRow {
  Marks in;
  Length near, far;
  Marks takes;
};

std::string lap_recess_table(const Assembly& wood, const LengthPrinter& lengths) {
  std::vector<LapRow> rows;
  for (const Joint& joint : wood.joints) {
    if (!is_lap(joint)) continue;
    const MortiseSpan& span = joint.mortise->each.front();
    const Length far = span.from_foot + span.length;
    const auto same = std::find_if(rows.begin(), rows.end(), [&](const LapRow& row) {
      return row.near == span.from_foot && row.far == far;
    });
    LapRow& row =
        same == rows.end() ? rows.emplace_back(LapRow{{}, span.from_foot, far, {}}) : *same;
    add_once(row.in, wood.pieces[joint.receives].mark);
    add_once(row.takes, wood.pieces[joint.enters].mark);
  }
  TextTable table({"back of", "from", "near", "far", "long", "takes"});
  for (const LapRow& row : rows)
    table.add({joined(row.in), std::string("foot"), row.near, row.far, row.far - row.near,
               joined(row.takes)});
  return table.text(lengths, 4);
}

std::string lap_page(const Assembly& wood, const LengthPrinter& lengths) {
  const auto first = std::find_if(wood.joints.begin(), wood.joints.end(), is_lap);
  if (first == wood.joints.end()) return {};
  const std::vector<ShoulderLengths> shoulders = shoulder_lengths(wood);
  TextTable ends({"face side of", "", "shoulder to shoulder", "left end", "right end"});
  for (const Joint& joint : wood.joints) {
    if (!is_lap(joint) || joint.heading.upwards) continue;
    const Piece& piece = wood.pieces[joint.enters];
    const Length left = joint.tenon->depth;
    const Length between = shoulders[joint.enters].face;
    ends.add({piece.mark, piece.name, between, left, piece.blank[0] - between - left});
  }
  const Length meet = first->tenon->from_face;
  return "\nHALF-LAPS, which meet " + lengths.one(meet) + " from the face side\n  cut away, " +
         lengths.one(first->tenon->thickness) + " deep:\n" + lap_recess_table(wood, lengths) +
         "  cut away, " + lengths.one(meet) + " deep:\n" + ends.text(lengths, 4);
}

// ---- mitres

std::string spline_text(const Assembly& wood, const LengthPrinter& lengths) {
  std::string text;
  Marks splines;
  for (const Piece& piece : wood.pieces) {
    if (piece.role == "spline") add_once(splines, piece.mark);
    for (const Feature& feature : piece.features) {
      if (feature.kind != "spline-slot" || !text.empty()) continue;
      const auto size = [&](std::size_t number) { return feature.sizes[number].size; };
      text = "in each face a slot " + lengths.one(size(0)) + " wide, " + lengths.one(size(4)) +
             " from the face side, " + lengths.one(size(1)) +
             " deep square to the mitre; along it from " + lengths.one(size(3)) + " to " +
             lengths.one(size(3) + size(2)) + " from the sight corner";
    }
  }
  if (text.empty()) return {};
  text = "  " + wrapped(text, kPageWidth, 2) + "\n";
  const auto first = std::find_if(wood.pieces.begin(), wood.pieces.end(),
                                  [](const Piece& piece) { return piece.role == "spline"; });
  const Triple sizes = sawn_sizes(*first);
  return text + "  " +
         wrapped("splines " + joined(splines) + ": grain across the mitre, " +
                     lengths.one(sizes[0]) + " long, " + lengths.one(sizes[1]) + " wide, " +
                     lengths.one(sizes[2]) + " thick",
                 kPageWidth, 2) +
         "\n";
}

std::string mitre_page(const Assembly& wood, const LengthPrinter& lengths) {
  TextTable table({"both ends of", "", "long points", "short points"});
  for (const Piece& piece : wood.pieces) {
    if (piece.role == "bead") continue;  // told with the glass
    Length off;
    for (const Feature& feature : piece.features)
      if (feature.kind == "mitre") off += feature.sizes.front().size;
    if (off > Length()) table.add({piece.mark, piece.name, piece.blank[0], piece.blank[0] - off});
  }
  if (table.empty()) return {};
  return "\nMITRES, at 45 degrees\n" + table.text(lengths, 2) + spline_text(wood, lengths);
}

// ---- wedges

std::string wedge_page(const Assembly& wood, const LengthPrinter& lengths) {
  std::vector<MachineSet<std::vector<Length>, Marks>> sets;
  for (const Piece& piece : wood.pieces)
    for (const Feature& feature : piece.features) {
      if (feature.kind != "taper") continue;
      const std::vector<Length> key{piece.blank[0], piece.blank[1], piece.blank[2],
                                    feature.sizes.front().size};
      add_once(rows_for(sets, key), piece.mark);
    }
  if (sets.empty()) return {};
  TextTable table({"long", "wide", "thick end", "thin end", "wedges"});
  for (const auto& [key, marks] : sets)
    table.add({key[0], key[1], key[2], key[3], joined(marks)});
  return "\nWEDGES, grain along their length, one at each edge of a tenon\n" +
         table.text(lengths, 2);
}

// ---- grooves, rebates and panels

using CutKey = std::vector<Length>;
using EdgeRows = std::map<std::string, Marks>;  // by the name of the edge
using EdgeSets = std::vector<MachineSet<CutKey, EdgeRows>>;

std::string edges_text(const EdgeRows& rows) {
  std::string text;
  for (const auto& [edge, marks] : rows)
    text += (text.empty() ? "" : "; ") + edge + " of " + joined(marks);
  return text;
}

std::string groove_page(const Assembly& wood, const LengthPrinter& lengths) {
  EdgeSets sets;
  bool any_stopped = false;
  for (const Piece& piece : wood.pieces) {
    for (const Feature& feature : piece.features) {
      if (feature.kind != "groove" || feature.cuts.empty()) continue;
      const Box& cut = feature.cuts.front();
      auto& rows = rows_for(sets, CutKey{cut.extent(2), cut.extent(1), cut.low[2]});
      std::string edge = worked_edge(piece, cut.low[1] == Length()) + " edge";
      const bool stopped = cut.extent(0) != piece.blank[0];
      any_stopped = any_stopped || stopped;
      if (stopped)
        edge += ", stopped: from " + lengths.one(cut.low[0]) + " to " + lengths.one(cut.high[0]) +
                (is_upright(piece) ? " from the foot," : " from the left end,");
      add_once(rows[edge], piece.mark);
    }
  }
  if (sets.empty()) return {};
  std::string page = std::string("\nGROOVES, the whole length") +
                     (any_stopped ? " unless they are stopped\n" : "\n");
  for (const auto& [key, rows] : sets) {
    page += "  " + lengths.one(key[0]) + " wide, " + lengths.one(key[1]) + " deep, " +
            lengths.one(key[2]) + " from the face side\n";
    page += "    " + wrapped(edges_text(rows), kPageWidth, 4) + "\n";
  }
  return page;
}

/// Rebates along the edges of a frame, at its back.
std::string edge_rebate_page(const Assembly& wood, const LengthPrinter& lengths) {
  EdgeSets sets;
  for (const Piece& piece : wood.pieces) {
    for (const Feature& feature : piece.features) {
      if (!holds_panels(wood, feature)) continue;
      const Box& cut = feature.cuts.front();
      auto& rows = rows_for(sets, CutKey{cut.extent(2), cut.extent(1), cut.low[2]});
      add_once(rows[worked_edge(piece, cut.low[1] == Length()) + " edge"], piece.mark);
    }
  }
  if (sets.empty()) return {};
  std::string page = "\nREBATES of the frame, at the back, the whole length\n";
  for (const auto& [key, rows] : sets) {
    page += "  " + lengths.one(key[1]) + " deep from the edge, " + lengths.one(key[0]) +
            " wide from the back, leaving " + lengths.one(key[2]) + " at the face side\n";
    page += "    " + wrapped(edges_text(rows), kPageWidth, 4) + "\n";
  }
  return page;
}

std::string rebate_page(const Assembly& wood, const LengthPrinter& lengths) {
  EdgeSets sets;
  for (const Piece& piece : wood.pieces) {
    for (const Feature& feature : piece.features) {
      if (feature.kind != "rebate" || piece.role != "panel") continue;
      const Box& cut = feature.cuts.front();
      auto& rows = rows_for(sets, CutKey{cut.extent(1), cut.extent(2)});
      add_once(rows[cut.low[2] == Length() ? "face side" : "back"], piece.mark);
    }
  }
  if (sets.empty()) return {};
  std::string page = "\nREBATES, all round\n";
  for (const auto& [key, rows] : sets) {
    page += "  " + lengths.one(key[0]) + " wide, " + lengths.one(key[1]) + " deep\n";
    page += "    " + wrapped(edges_text(rows), kPageWidth, 4) + "\n";
  }
  return page;
}

/// A raise or moulding as its cutter is set: sizes by name.
struct CutterSetting {
  std::vector<NamedSize> sizes;

  Length size(std::string_view name) const {
    for (const NamedSize& it : sizes)
      if (it.name == name) return it.size;
    return {};
  }
  friend bool operator==(const CutterSetting& a, const CutterSetting& b) {
    return std::equal(a.sizes.begin(), a.sizes.end(), b.sizes.begin(), b.sizes.end(),
                      [](const NamedSize& x, const NamedSize& y) {
                        return x.name == y.name && x.size == y.size;
                      });
  }
};

std::string raise_text(const CutterSetting& raise, const LengthPrinter& lengths) {
  const Length radius = raise.size("radius");
  const Length tongue = raise.size("tongue");
  const Length shoulder = raise.size("shoulder");
  const Length slope = raise.size("width") - tongue;
  std::string text = lengths.one(raise.size("width")) + " wide and " +
                     lengths.one(raise.size("depth")) + " deep: from the edge " +
                     (tongue == Length() ? "" : lengths.one(tongue) + " of flat tongue, then ") +
                     "a ";
  text += radius == Length()
              ? "bevel " + lengths.one(slope) + " wide"
              : "cove " + lengths.one(slope) + " wide of radius " + lengths.one(radius);
  text += " that rises " + lengths.one(raise.size("depth") - shoulder);
  return text + (shoulder == Length()
                     ? " to the field"
                     : ", then a shoulder of " + lengths.one(shoulder) + " up to the field");
}

std::string raise_page(const Assembly& wood, const LengthPrinter& lengths) {
  std::vector<MachineSet<CutterSetting, EdgeRows>> sets;
  for (const Piece& piece : wood.pieces) {
    for (const Feature& feature : piece.features) {
      if (feature.kind != "raise") continue;
      auto& rows = rows_for(sets, CutterSetting{feature.sizes});
      const bool front = feature.cuts.front().low[2] == Length();
      add_once(rows[front ? "face side" : "back"], piece.mark);
    }
  }
  if (sets.empty()) return {};
  std::string page = "\nRAISED PANELS, all round\n";
  for (const auto& [raise, rows] : sets) {
    page += "  " + wrapped(raise_text(raise, lengths), kPageWidth, 2) + "\n";
    page += "    " + wrapped(edges_text(rows), kPageWidth, 4) + "\n";
  }
  return page + "  " +
         wrapped(
             "The ends first, then the long edges, so that what breaks out at the "
             "corners is taken off.",
             kPageWidth, 2) +
         "\n";
}

/// "ovolo of radius 8, 8 wide and 9 deep, under a fillet of 1"
std::string moulding_text(const Feature& feature, const LengthPrinter& lengths) {
  const CutterSetting moulding{feature.sizes};
  const Length radius = moulding.size("radius");
  const Length fillet = moulding.size("fillet");
  const Length hollow = moulding.size("hollow_radius");
  std::string text = "bevel";
  if (radius > Length()) text = "ovolo of radius " + lengths.one(radius);
  if (hollow > Length()) text = "cove of radius " + lengths.one(hollow);
  text += ", " + lengths.one(moulding.size("width")) + " wide on the face and " +
          lengths.one(moulding.size("depth")) + " deep";
  if (fillet > Length()) text += ", with a fillet of " + lengths.one(fillet) + " under the face";
  return text;
}

/// Mouldings stuck on the edges of a frame.
std::string moulding_page(const Assembly& wood, const LengthPrinter& lengths) {
  std::vector<MachineSet<std::string, EdgeRows>> sets;
  bool mitred = false;
  for (const Piece& piece : wood.pieces) {
    for (const Feature& feature : piece.features) {
      mitred = mitred || feature.kind == "moulding-mitre";
      if (feature.kind != "moulding") continue;
      const std::string text =
          moulding_text(feature, lengths) +
          (feature.prisms.size() > 1 ? "; on both faces" : "; at the face side");
      const bool low = feature.prisms.front().outline.back().u == Length();
      add_once(rows_for(sets, text)[worked_edge(piece, low) + " edge"], piece.mark);
    }
  }
  if (sets.empty()) return {};
  std::string page = "\nMOULDINGS, the whole length" +
                     std::string(mitred ? "" : ", after the ends are coped") + "\n";
  for (const auto& [text, rows] : sets) {
    page += "  " + wrapped(text, kPageWidth, 2) + "\n";
    page += "    " + wrapped(edges_text(rows), kPageWidth, 4) + "\n";
  }
  return page;
}

/// Where mouldings are cut away for shoulders, from sight line to sight line or to the end.
std::string moulding_mitre_page(const Assembly& wood, const LengthPrinter& lengths) {
  TextTable table({"in", "edge", "from", "near", "far", "deep", "mitred at", "takes"});
  for (const Joint& joint : wood.joints) {
    if (!joint.tenon || joint.tenon->set_back == Length()) continue;
    const Piece& receives = wood.pieces[joint.receives];
    const Piece& enters = wood.pieces[joint.enters];
    const auto along = static_cast<std::size_t>(receives.place.axes[0]);
    const Box end = placed_blank(enters);
    const Length near = end.low[along] - receives.place.origin[along];
    const Length far = end.high[along] - receives.place.origin[along];
    const bool at_foot = near == Length();
    const bool at_head = far == receives.blank[0];
    table.add({receives.mark, worked_edge(receives, joint.heading.upwards),
               is_upright(receives) ? "foot" : "left end", near, far, joint.tenon->set_back,
               std::string(at_foot   ? "far"
                           : at_head ? "near"
                                     : "both"),
               enters.mark});
  }
  if (table.empty()) return {};
  return "\nMOULDINGS CUT AWAY for the shoulders, mitred from the sight line\n" +
         table.text(lengths, 2);
}

/// The panels by what they were set out to have at their sides and ends, in joints of a kind.
std::vector<MachineSet<CutKey, Marks>> panel_sets(const Assembly& wood, std::string_view kind) {
  std::vector<MachineSet<CutKey, Marks>> sets;
  for (std::size_t number = 0; number < wood.pieces.size(); ++number) {
    const Piece& piece = wood.pieces[number];
    CutKey key(5);
    bool held = false;
    for (const Joint& joint : wood.joints) {
      if (joint.enters != number || joint.kind != kind || joint.arched) continue;
      const std::size_t at = joint.heading.axis == piece.place.axes[0] ? 2 : 0;
      key[at] = *joint.design.bottom;
      key[at + 1] = *joint.design.bite;
      key[4] = joint.design.cheeks.value_or(Length());
      held = true;
    }
    if (held) add_once(rows_for(sets, key), piece.mark);
  }
  return sets;
}

std::string panel_page(const Assembly& wood, const LengthPrinter& lengths) {
  std::string page;
  TextTable grooved(
      {"panels", "side gap", "side bite", "end gap", "end bite", "play in thickness"});
  for (const auto& [key, marks] : panel_sets(wood, "panel-in-groove"))
    grooved.add({joined(marks), key[0], key[1], key[2], key[3], key[4]});
  if (!grooved.empty()) page += "\nPANELS in their grooves\n" + grooved.text(lengths, 2);
  TextTable bedded({"panels", "side gap", "side bite", "end gap", "end bite"});
  for (const auto& [key, marks] : panel_sets(wood, "panel-in-rebate"))
    bedded.add({joined(marks), key[0], key[1], key[2], key[3]});
  if (!bedded.empty())
    page +=
        "\nPANELS in their rebates, against the wood at the face side\n" + bedded.text(lengths, 2);
  return page;
}

// ---- fittings

/// A box that holds a recess, in its piece's own axes.
Box room_of(const Feature& feature) {
  if (feature.prisms.empty()) return feature.cuts.front();
  const Prism& hole = feature.prisms.front();
  const std::size_t u = hole.along == 0 ? 1 : 0;
  const std::size_t v = hole.along == 2 ? 1 : 2;
  Box box;
  box.low[hole.along] = hole.from;
  box.high[hole.along] = hole.to;
  const auto [left, right] =
      std::minmax_element(hole.outline.begin(), hole.outline.end(),
                          [](const Corner& a, const Corner& b) { return a.u < b.u; });
  const auto [low, high] =
      std::minmax_element(hole.outline.begin(), hole.outline.end(),
                          [](const Corner& a, const Corner& b) { return a.v < b.v; });
  std::tie(box.low[u], box.high[u]) = std::pair(left->u, right->u);
  std::tie(box.low[v], box.high[v]) = std::pair(low->v, high->v);
  return box;
}

/// The least box round what a piece's places are told in: the leaf that it is of, or of a frame's
/// piece itself.
Box told_in(const Assembly& wood, const Piece& piece) {
  const auto number = static_cast<std::size_t>(&piece - wood.pieces.data());
  if (wood.what == "leaf") return {{}, wood.size};
  for (const Hanging& hung : wood.hung)
    if (hung.has(number)) return placed_blanks(wood, hung.first, hung.count);
  return placed_blank(piece);
}

/// A place along the side from both ends of the leaf; of a round hole its middle.
struct FromEnds {
  Length near;
  std::optional<Length> far;
  Length from_other_end;
};

FromEnds from_ends(const Assembly& wood, const Piece& piece, const Feature& feature) {
  const std::size_t along = feature.fitting->into == 0 ? 1 : 0;
  const auto axis = static_cast<std::size_t>(piece.place.axes[along]);
  const Box room = room_of(feature);
  const Box whole = told_in(wood, piece);
  const Length start = piece.place.origin[axis] - whole.low[axis];
  const Length low = start + room.low[along];
  const Length high = start + room.high[along];
  if (feature.prisms.empty()) return {low, high, whole.extent(axis) - high};
  const Length middle = low + floor_half(high - low);
  return {middle, {}, whole.extent(axis) - middle};
}

std::vector<std::string> fitting_titles(const Piece& piece, std::size_t into) {
  const bool upright = piece.place.axes[into == 0 ? 1 : 0] == Axis::y;
  return {"",
          "",
          upright ? "from foot" : "from left",
          "to",
          upright ? "from top" : "from right",
          "round",
          "long",
          "wide",
          "deep",
          piece.place.axes[into] == Axis::z ? "from edge" : "from face"};
}

std::vector<Cell> fitting_row(const Assembly& wood, const Piece& piece, const Feature& feature) {
  const FromEnds place = from_ends(wood, piece, feature);
  const auto cell = [&](std::string_view size) {
    const auto its = size_of(feature, size);
    return its ? Cell(*its) : Cell(std::string());
  };
  return {feature.fitting->name,
          std::string(feature.kind),
          place.near,
          place.far ? Cell(*place.far) : Cell(std::string()),
          place.from_other_end,
          cell("diameter"),
          cell("length"),
          cell("width"),
          cell("depth"),
          cell(piece.place.axes[feature.fitting->into] == Axis::z ? "from_edge" : "from_face")};
}

std::string inner_face(const Piece& jamb) {
  const bool rebated =
      std::any_of(jamb.features.begin(), jamb.features.end(),
                  [](const Feature& it) { return it.kind == "rebate" && it.joints.empty(); });
  return rebated ? "inner face, in the bottom of its rebate" : "inner face";
}

/// "outer edge", of a stile; else "upper edge", "inner face", "face side" …
std::string side_text(const Assembly& wood, const Piece& piece, const Fitting& fitting) {
  const std::string side(side_name(piece, fitting));
  if (piece.role == "jamb" && piece.place.axes[fitting.into] == Axis::x)
    return (piece.place.origin[0] == Length()) == (side == "right") ? inner_face(piece)
                                                                    : "outer face";
  if (fitting.into == 2) return side == "face" ? "face side" : side;
  if (fitting.into == 0) return side + " end";
  const bool outer = piece.role == "stile" &&
                     (piece.place.origin[0] == told_in(wood, piece).low[0]) == (side == "left");
  return piece.role == "stile" ? (outer ? "outer edge" : "face edge") : side + " edge";
}

/// One side of one piece, and what is let in to it, in the order in which it was set out.
std::string fittings_of_side(const Assembly& wood, const Piece& piece, const Fitting& side,
                             const LengthPrinter& lengths) {
  TextTable table(fitting_titles(piece, side.into));
  for (const Feature& feature : piece.features)
    if (feature.fitting && feature.fitting->into == side.into &&
        feature.fitting->from_high == side.from_high)
      table.add(fitting_row(wood, piece, feature));
  if (table.empty()) return {};
  return "  " + piece.mark + ", " + piece.name + ": " + side_text(wood, piece, side) + "\n" +
         table.text(lengths, 4);
}

/// What is let in for hinges, locks and the like, by piece and side.
std::string fittings_page(const Assembly& wood, const LengthPrinter& lengths) {
  std::string page;
  for (const Piece& piece : wood.pieces)
    for (const std::size_t into : {std::size_t{1}, std::size_t{2}, std::size_t{0}})
      for (const bool from_high : {false, true})
        page += fittings_of_side(wood, piece, {{}, into, from_high}, lengths);
  if (page.empty()) return {};
  return "\nFITTINGS, let in after glue-up, horns sawn off\n" + page + "  " +
         wrapped(
             "From foot, top, left and right: of the leaf" +
                 std::string(wood.hung.empty() ? "" : "; of a piece of the frame, of that piece") +
                 ". From edge: the piece's outer edge, or where it has none the left or lower one. "
                 "Of a round hole its middle is told.",
             kPageWidth, 2) +
         "\n";
}

}  // namespace

std::string joinery_page(const Assembly& wood, const LengthPrinter& lengths) {
  const std::string pair = pair_text(wood);
  return (pair.empty() ? "" : "\nMARKING OUT\n" + pair) + groove_page(wood, lengths) +
         edge_rebate_page(wood, lengths) + moulding_page(wood, lengths) +
         moulding_mitre_page(wood, lengths) + mortise_page(wood, lengths) +
         haunching_page(wood, lengths) + tenon_page(wood, lengths) +
         loose_tenon_page(wood, lengths) + lap_page(wood, lengths) + mitre_page(wood, lengths) +
         hole_page(wood, lengths) + wedge_page(wood, lengths) + rebate_page(wood, lengths) +
         raise_page(wood, lengths) + panel_page(wood, lengths) + glass_page(wood, lengths) +
         fittings_page(wood, lengths) + leaf_page(wood, lengths) + frame_page(wood, lengths);
}

}  // namespace haunch
