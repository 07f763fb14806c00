#include "tenon_page.h"

#include <algorithm>
#include <tuple>
#include <vector>

#include "machine_sets.h"
#include "report.h"
#include "sawn.h"

namespace haunch {
namespace {

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

// ---- loose tenons

/// One length after another: length, width, thickness, depth in each piece.
using LooseKey = std::vector<Length>;

/// The radius to which a piece's edges are rounded; 0 for square ones.
Length rounding_of(const Piece& piece) {
  for (const Feature& feature : piece.features)
    if (feature.kind == "rounding") return size_of(feature, "radius").value_or(Length());
  return {};
}

}  // namespace

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

std::string haunching_page(const Assembly& wood, const LengthPrinter& lengths) {
  MortiseSets sets;
  for (const Piece& piece : wood.pieces) {
    for (const Feature& feature : piece.features) {
      if (feature.kind != "haunching") continue;
      const Box& first = feature.cuts.front();
      auto& rows = rows_for(
          sets, MortiseKey{first.extent(2), first.extent(1), first.low[2], {}, false, false, {}});
      for (const Box& cut : feature.cuts) {
        const MortiseRow row{{piece.mark},
                             worked_edge(piece, cut.low[1] == Length()),
                             is_upright(piece) ? "foot" : "left end",
                             cut.low[0],
                             cut.high[0],
                             {},
                             {},
                             {}};
        const auto known = std::find_if(rows.begin(), rows.end(), [&](const MortiseRow& it) {
          return std::tie(it.edge, it.from, it.near, it.far) ==
                 std::tie(row.edge, row.from, row.near, row.far);
        });
        if (known != rows.end())
          add_once(known->in, piece.mark);
        else
          rows.push_back(row);
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

}  // namespace haunch
