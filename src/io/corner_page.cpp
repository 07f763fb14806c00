#include <algorithm>
#include <iterator>
#include <utility>
#include <vector>

#include "joinery_parts.h"
#include "machine_sets.h"
#include "report.h"
#include "sawn.h"

namespace haunch {
namespace {

// ---- dowels

/// The middles of holes in one edge or end of a piece that hold one other.
struct HoleRow {
  std::string in, edge, from, holds;
  std::vector<Length> along, across;  // of those in a face both ways
};
using HoleSets = std::vector<MachineSet<const Operation*, std::vector<HoleRow>>>;

/// The mark of the other piece that a dowel is let in to.
const std::string& other_end_of(const Assembly& wood, const Joint& joint) {
  for (const Joint& other : wood.joints)
    if (other.enters == joint.enters && other.receives != joint.receives)
      return wood.pieces[other.receives].mark;
  return wood.pieces[joint.receives].mark;
}

HoleSets hole_sets(const Assembly& wood, const Making& making) {
  HoleSets sets;
  each_run(making, FeatureKind::dowel_hole, [&](const Operation& setting, const Run& run) {
    const Piece& piece = wood.pieces[run.piece];
    const bool in_face = run.side.into == 2;
    const std::string edge = place_of(piece, run) + (run.side.into == 1 ? " edge" : "");
    const std::string& holds = other_end_of(wood, wood.joints[*run.joint]);
    auto& rows = rows_for(sets, &setting);
    auto same = std::find_if(rows.begin(), rows.end(), [&](const HoleRow& it) {
      return it.in == piece.mark && it.edge == edge && it.holds == holds;
    });
    if (same == rows.end()) {
      const bool from_front = run.side.into == 0 && piece.place.axes[1] == Axis::z;
      rows.push_back({piece.mark,
                      edge,
                      from_front ? "front edge" : std::string(word_of(run.from)),
                      holds,
                      {},
                      {}});
      same = std::prev(rows.end());
    }
    same->along.push_back(run.near);
    if (in_face)
      same->across.push_back(middle_across(piece, piece.features[run.feature].prisms[0]));
  });
  return sets;
}

PagePart dowel_part(const Assembly& wood, const LengthPrinter& lengths) {
  std::vector<MachineSet<std::vector<Length>, Marks>> sets;
  for (const Joint& joint : wood.joints) {
    if (!is_dowel(joint)) continue;
    const Piece& dowel = wood.pieces[joint.enters];
    add_once(rows_for(sets, {dowel.blank[1], dowel.blank[0], joint.tenon->depth}), dowel.mark);
  }
  TextTable table({"thick", "long", "into each piece", "dowels"});
  for (const auto& [key, marks] : sets)
    table.add({Cell::of_fit(key[0]), key[1], key[2], std::to_string(marks.size())});
  return {"DOWELS", PageText::table(table, lengths, 2)};
}

// ---- half-laps

/// Those of glazing bars are told with these.
bool is_of_bar(const Assembly& wood, const Run& run) {
  return wood.pieces[run.piece].role == Role::glazing_bar;
}

PageText lap_recess_table(const Assembly& wood, const Making& making,
                          const LengthPrinter& lengths) {
  TextTable table({"back of", "from", "begins", "ends", "long", "takes"});
  each_run(making, FeatureKind::lap, [&](const Operation&, const Run& run) {
    if (run.side.from_high && !is_of_bar(wood, run))
      table.add_alike({mark_of(wood, run), "foot", run.near, run.far, Cell::of_fit(run.extent()),
                       taken_by(wood, run)});
  });
  return PageText::table(table, lengths, 4);
}

// ---- mitres

/// Slots and splines of one leaf are all alike.
PageText spline_text(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  const Operation* slot = nullptr;
  each_run(making, FeatureKind::spline_slot,
           [&](const Operation& operation, const Run&) { slot = &operation; });
  if (slot == nullptr) return {};
  const std::vector<const Piece*> splines = all_of(wood, Role::spline);
  const Triple sizes = sawn_sizes(*splines.back());
  const LengthPrinter fine = lengths.fine();
  const auto size = [&](SizeName name) { return fine.one(slot->setting(name)); };
  const Length near = slot->setting(SizeName::from_corner);
  return PageText::paragraph("in each face a slot " + size(SizeName::width) + " wide, " +
                             size(SizeName::from_face) + " from the face side, " +
                             lengths.one(slot->setting(SizeName::depth)) +
                             " deep square to the mitre; along it from " + lengths.one(near) +
                             " to " + lengths.one(near + slot->setting(SizeName::length)) +
                             " from the sight corner") +
         PageText::paragraph("splines " + joined(marks_of(splines)) + ": grain across the mitre, " +
                             lengths.one(sizes[0]) + " long, " + lengths.one(sizes[1]) + " wide, " +
                             fine.one(sizes[2]) + " thick");
}

}  // namespace

PageParts hole_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  const HoleSets sets = hole_sets(wood, making);
  if (sets.empty()) return {};
  PageText page;
  bool faces = false;
  for (const auto& [setting, rows] : sets) {
    page +=
        PageText::hanging(lengths.one(setting->setting(SizeName::diameter)) + " wide, " +
                          lengths.one(setting->setting(SizeName::depth)) + " deep, " +
                          (setting->has(SizeName::from_face)
                               ? "middle " + lengths.one(setting->setting(SizeName::from_face)) +
                                     " from the face side"
                               : "in faces"));
    TextTable table({"in", "", "from", "middles at", "holds"});
    for (const HoleRow& row : rows)
      table.add_alike({Cell::of_mark(row.in), row.edge, row.from,
                       middles_text(row.along, row.across, lengths), Cell::of_mark(row.holds)});
    page += PageText::table(table, lengths, 4);
    faces = faces || !setting->has(SizeName::from_face);
  }
  PagePart holes{"HOLES FOR DOWELS", page};
  if (faces)
    holes.legends = {PageText::paragraph(
        "x: each along, each across from the front edge, or of a drawer from the lower one")};
  return {std::move(holes), dowel_part(wood, lengths)};
}

PageParts lap_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  TextTable ends({"face side of", "", "shoulder to shoulder", "left end", "right end"});
  Length meet, behind;  // of one leaf all the same
  each_run(making, FeatureKind::lap, [&](const Operation& setting, const Run& run) {
    if (is_of_bar(wood, run)) return;
    (run.side.from_high ? behind : meet) = setting.setting(SizeName::depth);
    if (run.side.from_high || run.near > Length()) return;
    const Piece& piece = wood.pieces[run.piece];
    const Shoulders& its = making.shoulders[run.piece];
    ends.add({Cell::of_mark(piece.mark), piece.name,
              its.between(&EndShoulders::line, piece.blank[0]), its.low->line, its.high->line});
  });
  if (ends.empty()) return {};
  return {{"HALF-LAPS, which meet " + lengths.fine().one(meet) + " from the face side",
           PageText::hanging("cut away, " + lengths.fine().one(behind) + " deep:") +
               lap_recess_table(wood, making, lengths) +
               PageText::hanging("cut away, " + lengths.fine().one(meet) + " deep:") +
               PageText::table(ends, lengths, 4)}};
}

PageParts mitre_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  std::vector<Length> off(wood.pieces.size());  // of long points, at both ends
  each_run(making, FeatureKind::mitre, [&](const Operation& mitre, const Run& run) {
    off[run.piece] += mitre.setting(SizeName::width);
  });
  TextTable table({"both ends of", "", "long points", "short points"});
  for (std::size_t number = 0; number < wood.pieces.size(); ++number) {
    const Piece& piece = wood.pieces[number];
    if (off[number] > Length() && piece.role != Role::bead)  // beads are told with the glass
      table.add(
          {Cell::of_mark(piece.mark), piece.name, piece.blank[0], piece.blank[0] - off[number]});
  }
  if (table.empty()) return {};
  return {{"MITRES, at 45 degrees",
           PageText::table(table, lengths, 2) + spline_text(wood, making, lengths)}};
}

PageParts wedge_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  TextTable table({"long", "wide", "thick end", "thin end", "wedges"});
  each_run(making, FeatureKind::taper, [&](const Operation& taper, const Run& run) {
    const Triple& blank = wood.pieces[run.piece].blank;
    table.add_alike(
        {blank[0], blank[1], blank[2], taper.setting(SizeName::thickness), mark_of(wood, run)});
  });
  if (table.empty()) return {};
  return {{"WEDGES, grain along their length, one at each edge of a tenon",
           PageText::table(table, lengths, 2)}};
}

}  // namespace haunch
