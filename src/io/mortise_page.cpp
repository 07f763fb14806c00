#include "mortise_page.h"

#include <algorithm>
#include <tuple>
#include <vector>

#include "machine_sets.h"
#include "report.h"
#include "shoulders.h"

namespace haunch {
namespace {

struct MortiseRow {
  Marks in;
  std::string edge;
  std::string from;
  Length near, far;
  std::optional<Length> near_from_shoulder;
  std::optional<Length> free;  // to a square-edged tenon, where the ends stay round
  Marks takes;
  ShoulderLine line = ShoulderLine::shoulder;  // which one that is
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

/// Where a mortise is cut in: "face" of a stile's edge, "lower", "left end", "inner face".
std::string place_of(const Piece& receives, const Joint& joint, bool in_end) {
  const bool low = joint.heading.upwards;
  if (in_end) return end_name(receives, low);
  return comes_through_face(receives, joint.heading) ? worked_face(receives, low)
                                                     : worked_edge(receives, low);
}

/// At an end with equal shoulders they are the line.
ShoulderLine line_at_low_end(const Shoulders& shoulders) {
  const auto& low = shoulders.low;
  const bool equal = !low || (low->face == low->line && low->back == low->line);
  return equal ? ShoulderLine::shoulder : shoulders.line;
}

void add_mortise(std::vector<MortiseRow>& rows, const Assembly& wood, const Joint& joint,
                 const MortiseSpan& span, const Shoulders& shoulders) {
  const Piece& receives = wood.pieces[joint.receives];
  const std::string& enters = wood.pieces[joint.enters].mark;
  const MortiseSizes& mortise = *joint.mortise;
  const bool in_end = span.from_edge.has_value();
  const Length near = span.from_edge.value_or(span.from_foot);
  MortiseRow row{{receives.mark},
                 place_of(receives, joint, in_end),
                 in_end ? edge_name(receives, true) + " edge" : low_end(receives, shoulders),
                 near,
                 near + span.length,
                 {},
                 {},
                 {enters},
                 line_at_low_end(shoulders)};
  if (mortise.free_width)
    row.free = *mortise.free_width + span.length - mortise.each.front().length;
  if (mortise.from_shoulder)
    row.near_from_shoulder =
        *mortise.from_shoulder + span.from_foot - mortise.each.front().from_foot;
  for (MortiseRow& other : rows) {
    if (std::tie(other.near, other.far, other.edge, other.from, other.near_from_shoulder) !=
        std::tie(row.near, row.far, row.edge, row.from, row.near_from_shoulder))
      continue;
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
  const std::vector<Shoulders> shoulders = shoulders_of(wood);
  MortiseSets sets;
  for (const Joint& joint : wood.joints) {
    if (!joint.mortise || is_dowel(joint) || is_lap(joint)) continue;
    const MortiseSizes& mortise = *joint.mortise;
    for (const MortiseSpan& span : mortise.each) {
      const Length from_face = span.from_face.value_or(mortise.from_face);
      auto& rows =
          rows_for(sets, MortiseKey{mortise.width, mortise.depth, from_face, mortise.end_radius,
                                    mortise.through, joint.design.edge.has_value(), mortise.flare});
      add_mortise(rows, wood, joint, span, shoulders[joint.receives]);
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

/// The places of frames say for themselves that they are faces.
std::string place_heading(const std::vector<MortiseRow>& rows) {
  const bool faces = std::any_of(rows.begin(), rows.end(),
                                 [](const MortiseRow& row) { return row.edge.ends_with(" face"); });
  return faces ? "" : "edge";
}

std::string mortise_table(const MortiseKey& key, const std::vector<MortiseRow>& rows,
                          ShoulderLine line, const LengthPrinter& lengths) {
  TextTable table({"in", place_heading(rows), "from", "near", "far", "long",
                   key.end_radius > Length() ? "free" : "straight",
                   "from " + std::string(shoulder_line_word(line)), "takes"});
  for (const MortiseRow& row : rows) {
    const Length round_ends = key.open_end ? floor_half(key.width) : key.width;
    const Length straight =
        row.free ? *row.free : std::max(row.far - row.near - round_ends, Length());
    table.add({joined(row.in), row.edge, row.from, row.near, row.far, row.far - row.near, straight,
               row.near_from_shoulder ? Cell(*row.near_from_shoulder) : Cell(std::string()),
               joined(row.takes)});
  }
  return table.text(lengths, 4);
}

/// One table, or one for each line that places are told from besides an end.
std::string mortise_tables(const MortiseKey& key, std::vector<MortiseRow> rows,
                           const LengthPrinter& lengths) {
  std::string text;
  while (!rows.empty()) {
    const auto from_line = std::find_if(rows.begin(), rows.end(), [](const MortiseRow& row) {
      return row.near_from_shoulder.has_value();
    });
    const ShoulderLine line = from_line == rows.end() ? ShoulderLine::shoulder : from_line->line;
    const auto rest = std::stable_partition(rows.begin(), rows.end(), [&](const MortiseRow& row) {
      return !row.near_from_shoulder || row.line == line;
    });
    text += mortise_table(key, {rows.begin(), rest}, line, lengths);
    rows.erase(rows.begin(), rest);
  }
  return text;
}

/// What depths count from, where the wood is worked there besides.
std::string depth_text(const Assembly& wood) {
  bool edges = false;
  bool faces = false;
  Marks works;
  for (const Joint& joint : wood.joints) {
    if (!joint.mortise || is_dowel(joint) || is_lap(joint)) continue;
    (comes_through_face(wood.pieces[joint.receives], joint.heading) ? faces : edges) = true;
    for (const Feature& feature : wood.pieces[joint.receives].features)
      for (const FeatureKind work :
           {FeatureKind::groove, FeatureKind::rebate, FeatureKind::moulding})
        if (feature.kind == work) add_once(works, "a " + std::string(word(work)));
  }
  if (works.empty()) return {};
  std::string any = works.front();
  for (std::size_t i = 1; i < works.size(); ++i)
    any += " or " + works[i];
  const std::string where = !faces ? "edge" : edges ? "edge or face" : "face";
  return "  " +
         wrapped("deep: from the " + where + " as it is before " + any + " is worked there",
                 kPageWidth, 2) +
         "\n";
}

/// The seats that a feature has in its piece, to those that are cut with the same setting.
void add_haunchings(MortiseSets& sets, const Piece& piece, const Feature& feature,
                    const Shoulders& shoulders) {
  const Box& first = feature.cuts.front();
  auto& rows = rows_for(
      sets, MortiseKey{first.extent(2), first.extent(1), first.low[2], {}, false, false, {}});
  for (const Box& cut : feature.cuts) {
    const MortiseRow row{{piece.mark},
                         worked_edge(piece, cut.low[1] == Length()),
                         low_end(piece, shoulders),
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

}  // namespace

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
    page += mortise_text(key, lengths) + mortise_tables(key, rows, lengths);
  }
  page += depth_text(wood);
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
  const std::vector<Shoulders> shoulders = shoulders_of(wood);
  MortiseSets sets;
  for (std::size_t number = 0; number < wood.pieces.size(); ++number)
    for (const Feature& feature : wood.pieces[number].features)
      if (feature.kind == FeatureKind::haunching)
        add_haunchings(sets, wood.pieces[number], feature, shoulders[number]);
  sort_rows(sets);
  std::string page;
  for (const auto& [key, rows] : sets) {
    page += mortise_text(key, lengths);
    TextTable table({"in", "edge", "from", "near", "far", "long"});
    for (const MortiseRow& row : rows)
      table.add({joined(row.in), row.edge, row.from, row.near, row.far, row.far - row.near});
    page += table.text(lengths, 4);
  }
  return page.empty() ? page
                      : "\nHAUNCHINGS, beside the mortises, deep from the same edge\n" + page;
}

}  // namespace haunch
