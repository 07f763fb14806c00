#include "glass_page.h"

#include <algorithm>
#include <vector>

#include "machine_sets.h"
#include "report.h"

namespace haunch {
namespace {

/// Rows of figures, each with the marks of the pieces that it is of.
struct Row {
  Marks marks;
  std::string what;
  std::string from;  // of what lies along a piece, the end that it is told from
  std::vector<Length> figures;
};

void add(std::vector<Row>& rows, const std::string& mark, const std::string& what,
         const std::string& from, const std::vector<Length>& figures) {
  for (Row& row : rows) {
    if (row.what != what || row.from != from || row.figures != figures) continue;
    add_once(row.marks, mark);
    return;
  }
  rows.push_back({{mark}, what, from, figures});
}

std::string text_of(const std::vector<Row>& rows, const std::vector<std::string>& titles,
                    const LengthPrinter& lengths) {
  TextTable table(titles);
  for (const Row& row : rows) {
    std::vector<Cell> cells{joined(row.marks), row.what, row.from};
    for (const Length figure : row.figures)
      cells.emplace_back(figure);
    table.add(std::move(cells));
  }
  return table.text(lengths, 2);
}

std::vector<Row> rebates_in(const Assembly& wood, const Making& making) {
  std::vector<Row> rows;
  each_run(making, FeatureKind::glass_rebate, [&](const Operation& rebate, const Run& run) {
    const Piece& piece = wood.pieces[run.piece];
    add(rows, piece.mark, place_of(piece, run), std::string(word(run.from)),
        {run.near, *run.far, rebate.setting(SizeName::depth), rebate.setting(SizeName::from_face)});
  });
  return rows;
}

/// Of the joint by which glass stands in the rebate at its left or foot; all sides are alike.
const Joint* joint_of(const Assembly& wood, std::size_t pane) {
  for (const Joint& joint : wood.joints)
    if (joint.enters == pane) return &joint;
  return nullptr;
}

std::vector<Row> panes_in(const Assembly& wood) {
  std::vector<Row> rows;
  for (std::size_t number = 0; number < wood.pieces.size(); ++number) {
    const Piece& piece = wood.pieces[number];
    const Joint* joint = piece.matter == Matter::glass ? joint_of(wood, number) : nullptr;
    if (joint == nullptr) continue;
    add(rows, piece.mark, piece.material, "",
        {piece.blank[1], piece.blank[0], piece.blank[2], *joint->design.bite, *joint->design.bottom,
         *joint->design.bearing});
  }
  return rows;
}

std::vector<Row> beads_in(const Assembly& wood) {
  std::vector<Row> rows;
  for (const Piece& piece : wood.pieces)
    if (piece.role == Role::bead)
      add(rows, piece.mark, "", "",
          {piece.blank[0], piece.blank[0] - piece.blank[1] * 2, piece.blank[1], piece.blank[2]});
  return rows;
}

}  // namespace

std::string glass_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  const std::vector<Row> panes = panes_in(wood);
  if (panes.empty()) return {};
  const std::vector<Row> rebates = rebates_in(wood, making);
  std::string page = "\nGLASS, put in from the back\n";
  if (!rebates.empty())
    page += text_of(rebates, {"rebate in", "edge", "from", "near", "far", "deep", "from face"},
                    lengths) +
            "  " +
            wrapped(
                "open to the back; deep from the edge, stopped as given, and the corners squared "
                "with a "
                "chisel",
                kPageWidth, 2) +
            "\n";
  page += text_of(panes,
                  {"pane", "", "", "width", "height", "thick", "bite", "edge clearance", "bedding"},
                  lengths);
  page += text_of(beads_in(wood), {"beads", "", "", "long point", "short point", "wide", "thick"},
                  lengths);
  return page + "  " +
         wrapped(
             "glass on setting blocks as thick as the edge clearance, at the quarter points of "
             "its foot; bedded on both faces; beads mitred and pinned at most " +
                 in_words(
                     lengths.unit() == Unit::mm ? Length::from_mm(150) : Length::from_inch_parts(6),
                     lengths.unit()) +
                 " apart, as glazing sprigs are",
             kPageWidth, 2) +
         "\n";
}

}  // namespace haunch
