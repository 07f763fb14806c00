#include "tenon_page.h"

#include <algorithm>
#include <map>
#include <vector>

#include "machine_sets.h"
#include "report.h"

namespace haunch {
namespace {

// ---- tenons

/// What a machine is set to for a tenon.
struct TenonSetting {
  Length thickness, depth, from_face;
  Length haunch_depth, haunch_thickness, haunch_from_face;  // 0: no haunch
  std::optional<Length> left_in_groove;                     // of a stub, below its end
  std::optional<Length> twin_from_face;                     // of a pair side by side, of the second
  Length edge_radius;                                       // 0: square edges
  Length set_back;                                          // of its shoulder, past the sight edge

  friend bool operator==(const TenonSetting&, const TenonSetting&) = default;
};

/// Pieces with tenons that are marked alike, at one end or at both.
struct TenonRow {
  Marks marks;
  std::string name;
  bool upright = false;
  bool turned = false;  // the tenon is marked across its piece's thickness
  bool at_low = false, at_high = false;
  Shoulders shoulders;
  Length line, face, back;  // between the lines, and between the shoulders at face and back
  std::vector<TenonSpan> each, haunches;

  bool long_and_short() const { return shoulders.line != ShoulderLine::shoulder; }
};

using TenonSets = std::vector<MachineSet<TenonSetting, std::vector<TenonRow>>>;

bool same_spans(const std::vector<TenonSpan>& a, const std::vector<TenonSpan>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const TenonSpan& x, const TenonSpan& y) {
                      return x.from_edge == y.from_edge && x.width == y.width;
                    });
}

bool same_ends(const TenonRow& a, const TenonRow& b) {
  return a.at_low == b.at_low && a.at_high == b.at_high;
}

bool same_tenons(const TenonRow& a, const TenonRow& b) {
  return a.shoulders == b.shoulders && a.line == b.line && same_spans(a.each, b.each) &&
         same_spans(a.haunches, b.haunches);
}

/// Pieces whose marks alone tell them apart.
std::string name_of(const Piece& piece) {
  return piece.role == Role::muntin || piece.role == Role::jamb ? std::string(word(piece.role))
                                                                : piece.name;
}

/// One joint's tenons.
struct TenonsOfJoint {
  TenonSetting setting;
  TenonRow row;
};

TenonsOfJoint tenons_of(const Assembly& wood, const Making& making, const Joint& joint,
                        const Run& run) {
  const Piece& piece = wood.pieces[run.piece];
  const Shoulders& shoulders = making.shoulders[run.piece];
  TenonsOfJoint its;
  its.setting.depth = (run.side.from_high ? shoulders.high : shoulders.low)->line;
  its.setting.set_back = joint.tenon->set_back;
  if (!joint.mortise) its.setting.left_in_groove = joint.design.bottom;
  TenonRow& row = its.row;
  row.marks = {piece.mark};
  row.name = name_of(piece);
  row.upright = is_upright(piece);
  row.turned = run.from == Line::inner_face || run.from == Line::lower_face;
  (run.side.from_high ? row.at_high : row.at_low) = true;
  row.shoulders = shoulders;
  row.line = shoulders.between(&EndShoulders::line, piece.blank[0]);
  row.face = shoulders.between(&EndShoulders::face, piece.blank[0]);
  row.back = shoulders.between(&EndShoulders::back, piece.blank[0]);
  return its;
}

/// What an operation adds to its joint's setting and places. Of a pair side by side one is told in
/// full.
void take(TenonsOfJoint& its, const Operation& operation, const Run& run, const Joint& joint) {
  const TenonSpan span{run.near, run.extent()};
  const Length thickness = operation.setting(SizeName::thickness);
  const Length from_face = operation.setting(SizeName::from_face);
  if (operation.cut == Cut::haunch) {
    its.setting.haunch_thickness = thickness;
    its.setting.haunch_depth = operation.setting(SizeName::depth);
    its.setting.haunch_from_face = from_face;
    its.row.haunches.push_back(span);
  } else if (from_face != joint.tenon->from_face) {
    its.setting.twin_from_face = from_face;
  } else {
    its.setting.thickness = thickness;
    its.setting.from_face = from_face;
    its.setting.edge_radius = operation.setting(SizeName::radius);
    its.row.each.push_back(span);
  }
}

/// In the order of the joints. Of cheeks that are cut apart one side tells where the tenons stand.
std::vector<TenonsOfJoint> tenons_by_joint(const Assembly& wood, const Making& making) {
  std::map<std::size_t, TenonsOfJoint> all;
  each_run(making, FeatureKind::tenon, [&](const Operation& operation, const Run& run) {
    if (operation.cut == Cut::back_cheek) return;
    const Joint& joint = wood.joints[*run.joint];
    auto its = all.find(*run.joint);
    if (its == all.end()) its = all.emplace(*run.joint, tenons_of(wood, making, joint, run)).first;
    take(its->second, operation, run, joint);
  });
  std::vector<TenonsOfJoint> result;
  for (auto& [joint, its] : all)
    result.push_back(std::move(its));
  return result;
}

/// A tenon to those of its setting: both ends of a piece that are alike are one row.
void add_tenon(std::vector<TenonRow>& rows, TenonRow row) {
  for (TenonRow& other : rows) {
    if (other.marks != row.marks || !same_tenons(other, row)) continue;
    other.at_low = other.at_low || row.at_low;
    other.at_high = other.at_high || row.at_high;
    return;
  }
  rows.push_back(std::move(row));
}

/// Pieces of one name that are alike, together.
std::vector<TenonRow> merged(const std::vector<TenonRow>& rows) {
  std::vector<TenonRow> result;
  for (const TenonRow& row : rows) {
    const auto same = std::find_if(result.begin(), result.end(), [&](const TenonRow& other) {
      return other.name == row.name && same_ends(other, row) && same_tenons(other, row);
    });
    if (same == result.end())
      result.push_back(row);
    else
      add_once(same->marks, row.marks.front());
  }
  return result;
}

TenonSets tenon_sets(const Assembly& wood, const Making& making) {
  TenonSets sets;
  for (TenonsOfJoint& its : tenons_by_joint(wood, making))
    add_tenon(rows_for(sets, its.setting), std::move(its.row));
  for (auto& set : sets)
    set.rows = merged(set.rows);
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
    text += "  " +
            wrapped("with haunches " + lengths.one(setting.haunch_thickness) + " thick, " +
                        lengths.one(setting.haunch_depth) + " deep, " +
                        lengths.one(setting.haunch_from_face) + " from the face side",
                    kPageWidth, 2) +
            "\n";
  if (setting.set_back > Length())
    text += "  " +
            wrapped("deep from the shoulders, which stand " + lengths.one(setting.set_back) +
                        " past the sight edges, where the moulding is cut away",
                    kPageWidth, 2) +
            "\n";
  return text;
}

// ---- long and short shoulders

/// Rows of one table: told from the same lines, their shoulders as much longer at the same ends.
struct ShoulderPattern {
  ShoulderLine line = ShoulderLine::shoulder;
  bool upright = false, low = false, high = false;  // which ends have shoulders
  Length low_longer, high_longer;                   // how far the long one stands past the line
  bool in_frame = false;

  friend bool operator==(const ShoulderPattern&, const ShoulderPattern&) = default;
};

Length longer(const std::optional<EndShoulders>& end) {
  return end ? end->line - std::min(end->face, end->back) : Length();
}

ShoulderPattern pattern_of(const TenonRow& row) {
  const Shoulders& its = row.shoulders;
  const bool both = its.low && its.high;
  return {its.line,        !both && row.upright, its.low.has_value(), its.high.has_value(),
          longer(its.low), longer(its.high),     row.turned};
}

/// "at each end", "at the upper end".
std::string at_ends(const ShoulderPattern& pattern) {
  const bool low = pattern.low_longer > Length();
  const bool high = pattern.high_longer > Length();
  if (low && high) return "at each end";
  return pattern.upright || !low ? (low ? "at the lower end" : "at the upper end")
                                 : "at the left end";
}

/// Which line a table's depth and first length are from, and what stands past it.
std::string line_text(const ShoulderPattern& pattern, const LengthPrinter& lengths) {
  const std::string by = lengths.one(std::max(pattern.low_longer, pattern.high_longer));
  const bool sight = pattern.line == ShoulderLine::sight_line;
  std::string text = "deep from the " + std::string(shoulder_line_word(pattern.line)) +
                     (sight ? ", where the edge comes that the tenon goes in to; " : "; ") +
                     at_ends(pattern);
  switch (pattern.line) {
    case ShoulderLine::shoulder:
      return {};
    case ShoulderLine::face_shoulder:
      text +=
          " the back shoulder stands " + by + " nearer to the tenon's end, and fills the rebate";
      break;
    case ShoulderLine::back_shoulder:
      text += pattern.in_frame
                  ? " the face shoulder stands " + by +
                        " nearer to the tenon's end, as far in from the face side as the rebate "
                        "goes that it fills"
                  : " the face shoulder is coped over the moulding, and comes " + by +
                        " nearer to the tenon's end";
      break;
    case ShoulderLine::sight_line:
      text += " both shoulders are coped over the moulding, and come " + by +
              " nearer to the tenon's end";
      break;
  }
  return "  " + wrapped(text, kPageWidth, 2) + "\n";
}

/// What a length goes to from a piece's other end, which has no shoulder; empty where both have.
std::string from_other_end(const ShoulderPattern& pattern) {
  if (pattern.low && pattern.high) return {};
  if (pattern.upright) return pattern.low ? "upper end to " : "foot to ";
  return pattern.low ? "right end to " : "left end to ";
}

/// The titles of the lengths between shoulders: that between the lines first.
std::vector<std::string> length_titles(const ShoulderPattern& pattern) {
  const std::string from = from_other_end(pattern);
  const auto title = [&](const std::string& word) {
    return from.empty() ? word + "s" : from + word;
  };
  switch (pattern.line) {
    case ShoulderLine::shoulder:
      return {from.empty() ? std::string("shoulder to shoulder") : from + "shoulder"};
    case ShoulderLine::face_shoulder:
      return {title("face shoulder"), title("back shoulder")};
    case ShoulderLine::back_shoulder:
      return {title("back shoulder"), title("face shoulder")};
    case ShoulderLine::sight_line:
      return {title("sight line"), "over the copes"};
  }
  return {};
}

std::string tenon_table(const ShoulderPattern& pattern, const std::vector<TenonRow>& rows,
                        const LengthPrinter& lengths) {
  std::vector<std::string> titles{"on", "", ""};
  for (std::string& title : length_titles(pattern))
    titles.push_back(std::move(title));
  titles.insert(titles.end(), {"tenon", "haunch"});
  TextTable table(titles);
  for (const TenonRow& row : rows) {
    const std::string end = row.upright ? (row.at_low ? "lower end" : "upper end")
                                        : (row.at_low ? "left end" : "right end");
    std::vector<Cell> cells{joined(row.marks), row.name, row.at_low && row.at_high ? "" : end,
                            row.line};
    if (row.long_and_short())
      cells.emplace_back(pattern.line == ShoulderLine::face_shoulder ? row.back : row.face);
    cells.emplace_back(spans_text(row.each, lengths));
    cells.emplace_back(spans_text(row.haunches, lengths));
    table.add(cells);
  }
  return table.text(lengths, 4);
}

/// The rows of one setting, in a table for each way in which their shoulders stand.
std::string tenon_tables(const std::vector<TenonRow>& rows, const LengthPrinter& lengths) {
  std::vector<MachineSet<ShoulderPattern, std::vector<TenonRow>>> tables;
  for (const TenonRow& row : rows)
    rows_for(tables, pattern_of(row)).push_back(row);
  std::string text;
  for (const auto& [pattern, its] : tables)
    text += line_text(pattern, lengths) + tenon_table(pattern, its, lengths);
  return text;
}

/// What the tenons' places across their pieces are told from.
std::string across_text(const TenonSets& sets) {
  bool edges = false;
  bool alike = false;
  bool named = false;
  std::string faces;
  const auto add = [&](const std::string& face) {
    if (faces.find(face) == std::string::npos) faces += (faces.empty() ? "" : ", ") + face;
  };
  for (const auto& [setting, rows] : sets)
    for (const TenonRow& row : rows) {
      edges = edges || !row.turned;
      alike = alike || (row.at_low && row.at_high);
      named = named || row.at_low != row.at_high;
      if (row.turned)
        add(row.upright ? "of a jamb from its inner face" : "of a transom from its lower face");
    }
  const std::string ends = !alike  ? ""
                           : named ? "; both ends alike, unless one is named"
                                   : "; both ends alike";
  std::string text;
  if (edges)
    text += "  " +
            wrapped("tenon, haunch: across the width, from the lower or left edge" + ends,
                    kPageWidth, 2) +
            "\n";
  if (!faces.empty())
    text += "  " +
            wrapped("tenon: across the thickness, " + faces + (edges ? "" : ends), kPageWidth, 2) +
            "\n";
  return text;
}

// ---- loose tenons

/// The radius to which a piece's edges are rounded; nothing for square ones.
std::optional<Length> rounding_of(const Piece& piece) {
  for (const Feature& feature : piece.features)
    if (feature.kind == FeatureKind::rounding) return size_of(feature, SizeName::radius);
  return {};
}

}  // namespace

std::string tenon_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  const TenonSets sets = tenon_sets(wood, making);
  if (sets.empty()) return {};
  std::string page = "\nTENONS\n";
  for (const auto& [setting, rows] : sets)
    page += setting_text(setting, lengths) + tenon_tables(rows, lengths);
  return page + across_text(sets);
}

std::string loose_tenon_page(const Assembly& wood, const LengthPrinter& lengths) {
  TextTable table(
      {"tenons", "long", "wide", "thick", "into each piece", "below each end", "edges rounded to"});
  for (const Joint& joint : wood.joints) {
    if (!joint.tenon || joint.has_shoulder || is_dowel(joint)) continue;
    const Piece& piece = wood.pieces[joint.enters];
    table.add_alike({Cell::of_mark(piece.mark), piece.blank[0], piece.blank[1], piece.blank[2],
                     joint.tenon->depth, joint.design.bottom, rounding_of(piece)});
  }
  if (table.empty()) return {};
  return "\nLOOSE TENONS, grain along their length\n" + table.text(lengths, 2);
}

}  // namespace haunch
