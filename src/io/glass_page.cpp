#include "joinery_parts.h"
#include "machine_sets.h"

namespace haunch {
namespace {

TextTable rebates_in(const Assembly& wood, const Making& making) {
  TextTable table({"rebate in", "edge", "from", "begins", "ends", "deep", "from face"});
  each_run(making, FeatureKind::glass_rebate, [&](const Operation& rebate, const Run& run) {
    table.add_alike({mark_of(wood, run), place_of(wood.pieces[run.piece], run),
                     std::string(word_of(run.from)), run.near, run.far,
                     rebate.setting(SizeName::depth), rebate.setting(SizeName::from_face)});
  });
  return table;
}

/// Of the joint by which glass stands in the rebate at its left or foot; all sides are alike.
const Joint* joint_of(const Assembly& wood, std::size_t pane) {
  for (const Joint& joint : wood.joints)
    if (joint.enters == pane) return &joint;
  return nullptr;
}

TextTable panes_in(const Assembly& wood) {
  TextTable table(
      {"pane", "", "width", "height", "thick", "edge cover", "edge clearance", "bedding"});
  for (std::size_t number = 0; number < wood.pieces.size(); ++number) {
    const Piece& piece = wood.pieces[number];
    const Joint* joint = piece.matter == Matter::glass ? joint_of(wood, number) : nullptr;
    if (joint == nullptr) continue;
    table.add_alike({Cell::of_mark(piece.mark), piece.material, piece.blank[1], piece.blank[0],
                     piece.blank[2], joint->design.bite, joint->design.bottom,
                     joint->design.bearing});
  }
  return table;
}

TextTable beads_in(const Assembly& wood) {
  TextTable table({"beads", "long point", "short point", "wide", "thick"});
  for (const Piece& piece : wood.pieces)
    if (piece.role == Role::bead)
      table.add_alike({Cell::of_mark(piece.mark), piece.blank[0],
                       piece.blank[0] - piece.blank[1] * 2, piece.blank[1], piece.blank[2]});
  return table;
}

}  // namespace

PageParts glass_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  const TextTable panes = panes_in(wood);
  if (panes.empty()) return {};
  const TextTable rebates = rebates_in(wood, making);
  PageText page;
  if (!rebates.empty())
    page += PageText::table(rebates, lengths, 2) +
            PageText::paragraph(
                "open to the back; deep from the edge, stopped as given, and the corners squared "
                "with a "
                "chisel");
  page += PageText::table(panes, lengths, 2) + PageText::table(beads_in(wood), lengths, 2);
  const PageText how = PageText::paragraph(
      "glass on setting blocks as thick as the edge clearance, at the quarter points of "
      "its foot; bedded on both faces; beads mitred and pinned at most " +
      in_words(lengths.unit() == Unit::mm ? Length::from_mm(150) : Length::from_inch_parts(6),
               lengths.unit()) +
      " apart, as glazing sprigs are");
  return {{"GLASS, put in from the back", page, {how}}};
}

}  // namespace haunch
