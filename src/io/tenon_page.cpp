#include <algorithm>
#include <map>
#include <vector>

#include "joinery_parts.h"
#include "machine_sets.h"

namespace haunch {
namespace {

// ---- tenons

/// What one joint's tenons are cut with, and where they stand across their piece.
struct Tenons {
  const Run* run = nullptr;
  const Operation* cheeks = nullptr;
  const Operation* twin = nullptr;  // of a pair side by side, of the second
  const Operation* haunch = nullptr;
  std::string each, haunches;  // "13 to 79, 90 to 120"
};

/// Pieces with tenons that are marked alike, at one end or at both.
struct TenonRow {
  const Piece* piece;
  const Shoulders* shoulders;
  bool turned;  // the tenon is marked across its piece's thickness
  bool at_low, at_high;
  std::string each, haunches;

  Length between(Length EndShoulders::*which) const {
    return shoulders->between(which, piece->blank[0]);
  }
};

using TenonSets = std::vector<MachineSet<PageText, std::vector<TenonRow>>>;

/// In the order of the joints. Of cheeks that are cut apart one side tells where the tenons stand.
std::map<std::size_t, Tenons> tenons_by_joint(const Assembly& wood, const Making& making,
                                              const LengthPrinter& lengths) {
  std::map<std::size_t, Tenons> all;
  each_run(making, FeatureKind::tenon, [&](const Operation& operation, const Run& run) {
    if (operation.cut == Cut::back_cheek || operation.cut == Cut::back_cope) return;
    Tenons& its = all[*run.joint];
    its.run = &run;
    const bool is_haunch = operation.cut == Cut::haunch;
    if (!is_haunch &&
        operation.setting(SizeName::from_face) != wood.joints[*run.joint].tenon->from_face) {
      its.twin = &operation;
      return;
    }
    (is_haunch ? its.haunch : its.cheeks) = &operation;
    std::string& spans = is_haunch ? its.haunches : its.each;
    spans += (spans.empty() ? "" : ", ") + lengths.one(run.near) + " to " + lengths.one(*run.far);
  });
  return all;
}

std::string sizes_text(const Operation& cut, Length depth, const LengthPrinter& lengths) {
  const LengthPrinter fine = lengths.fine();
  return fine.one(cut.setting(SizeName::thickness)) + " thick, " + lengths.one(depth) + " deep, " +
         fine.one(cut.setting(SizeName::from_face)) + " from the face side";
}

/// `depth`: from the line that the piece's shoulders are told from.
PageText setting_text(const Tenons& its, const Joint& joint, Length depth,
                      const LengthPrinter& lengths) {
  const auto line = [](const std::string& words) { return PageText::paragraph(words); };
  std::string sizes = sizes_text(*its.cheeks, depth, lengths);
  if (its.twin)
    sizes +=
        ", and its twin " + lengths.fine().one(its.twin->setting(SizeName::from_face)) + " from it";
  if (its.cheeks->has(SizeName::radius))
    sizes += ", edges rounded to a radius of " + lengths.one(its.cheeks->setting(SizeName::radius));
  PageText text = line(sizes);
  if (!joint.mortise && joint.design.bottom)
    text += line("a stub, which stands in the groove and leaves " +
                 lengths.one(*joint.design.bottom) + " below it");
  if (its.haunch)
    text += line("with haunches " +
                 sizes_text(*its.haunch, its.haunch->setting(SizeName::depth), lengths));
  if (joint.tenon->set_back > Length())
    text += line("deep from the shoulders, which stand " + lengths.one(joint.tenon->set_back) +
                 " past the sight edges, where the moulding is cut away");
  return text;
}

/// A tenon to those of its setting: both ends of a piece that are alike are one row.
void add_tenon(std::vector<TenonRow>& rows, const TenonRow& row) {
  for (TenonRow& other : rows) {
    if (other.piece != row.piece || other.each != row.each || other.haunches != row.haunches)
      continue;
    other.at_low = other.at_low || row.at_low;
    other.at_high = other.at_high || row.at_high;
    return;
  }
  rows.push_back(row);
}

TenonSets tenon_sets(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  TenonSets sets;
  for (const auto& [joint, its] : tenons_by_joint(wood, making, lengths)) {
    const Run& run = *its.run;
    const bool high = run.side.from_high;
    const Shoulders& shoulders = making.shoulders[run.piece];
    const Length depth = (high ? shoulders.high : shoulders.low)->line;
    add_tenon(rows_for(sets, setting_text(its, wood.joints[joint], depth, lengths)),
              {&wood.pieces[run.piece], &shoulders,
               run.from == Line::inner_face || run.from == Line::lower_face, !high, high, its.each,
               its.haunches});
  }
  return sets;
}

/// Pieces whose marks alone tell them apart.
std::string name_of(const Piece& piece) {
  return piece.role == Role::muntin || piece.role == Role::jamb ? std::string(word_of(piece.role))
                                                                : piece.name;
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
  const Shoulders& its = *row.shoulders;
  const bool both = its.low && its.high;
  return {its.line,
          !both && is_upright(*row.piece),
          its.low.has_value(),
          its.high.has_value(),
          longer(its.low),
          longer(its.high),
          row.turned};
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
PageText line_text(const ShoulderPattern& pattern, const LengthPrinter& lengths) {
  const std::string by = lengths.one(std::max(pattern.low_longer, pattern.high_longer));
  const bool sight = pattern.line == ShoulderLine::sight_line;
  std::string text = "deep from the " + std::string(word_of(pattern.line)) +
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
  return PageText::paragraph(text);
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

PageText tenon_table(const ShoulderPattern& pattern, const std::vector<TenonRow>& rows,
                     const LengthPrinter& lengths) {
  std::vector<std::string> titles{"on", "", ""};
  for (std::string& title : length_titles(pattern))
    titles.push_back(std::move(title));
  titles.insert(titles.end(), {"tenon", "haunch"});
  TextTable table(titles);
  for (const TenonRow& row : rows) {
    const Piece& piece = *row.piece;
    const std::string end = row.at_low && row.at_high ? "" : end_name(piece, row.at_low);
    std::vector<Cell> cells{Cell::of_mark(piece.mark), name_of(piece), end,
                            row.between(&EndShoulders::line)};
    if (pattern.line != ShoulderLine::shoulder)
      cells.emplace_back(row.between(
          pattern.line == ShoulderLine::face_shoulder ? &EndShoulders::back : &EndShoulders::face));
    cells.emplace_back(row.each);
    cells.emplace_back(row.haunches);
    table.add_alike(std::move(cells));
  }
  return PageText::table(table, lengths, 4);
}

/// The rows of one setting, in a table for each way in which their shoulders stand.
PageText tenon_tables(const std::vector<TenonRow>& rows, const LengthPrinter& lengths) {
  std::vector<MachineSet<ShoulderPattern, std::vector<TenonRow>>> tables;
  for (const TenonRow& row : rows)
    rows_for(tables, pattern_of(row)).push_back(row);
  PageText text;
  for (const auto& [pattern, its] : tables)
    text += line_text(pattern, lengths) + tenon_table(pattern, its, lengths);
  return text;
}

/// What the tenons' places across their pieces are told from.
std::vector<PageText> across_legends(const TenonSets& sets) {
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
        add(is_upright(*row.piece) ? "of a jamb from its inner face"
                                   : "of a transom from its lower face");
    }
  const std::string ends = !alike  ? ""
                           : named ? "; both ends alike, unless one is named"
                                   : "; both ends alike";
  std::vector<PageText> legends;
  if (edges)
    legends.push_back(
        PageText::paragraph("tenon, haunch: across the width, from the lower or left edge" + ends));
  if (!faces.empty())
    legends.push_back(
        PageText::paragraph("tenon: across the thickness, " + faces + (edges ? "" : ends)));
  return legends;
}

// ---- loose tenons

/// The radius to which a piece's edges are rounded; nothing for square ones.
std::optional<Length> rounding_of(const Piece& piece) {
  for (const Feature& feature : piece.features)
    if (feature.kind == FeatureKind::rounding) return size_of(feature, SizeName::radius);
  return {};
}

}  // namespace

PageParts tenon_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  const TenonSets sets = tenon_sets(wood, making, lengths);
  if (sets.empty()) return {};
  PagePart page{"TENONS"};
  for (const auto& [setting, rows] : sets)
    page.body += setting + tenon_tables(rows, lengths);
  page.legends = across_legends(sets);
  return {page};
}

PageParts loose_tenon_page(const Assembly& wood, const Making&, const LengthPrinter& lengths) {
  TextTable table(
      {"tenons", "long", "wide", "thick", "into each piece", "below each end", "edges rounded to"});
  for (const Joint& joint : wood.joints) {
    if (joint.kind != JointKind::loose_tenon) continue;
    const Piece& piece = wood.pieces[joint.enters];
    table.add_alike({Cell::of_mark(piece.mark), piece.blank[0], piece.blank[1],
                     Cell::of_fit(piece.blank[2]), joint.tenon->depth, joint.design.bottom,
                     rounding_of(piece)});
  }
  if (table.empty()) return {};
  return {{"LOOSE TENONS, grain along their length", PageText::table(table, lengths, 2)}};
}

}  // namespace haunch
