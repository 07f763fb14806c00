// What is told of a face frame besides its joints: where its openings are, and its screws.
#include <cmath>
#include <string>
#include <vector>

#include "joinery_parts.h"
#include "machine_sets.h"
#include "polyhedron.h"
#include "report.h"
#include "rounding.h"

namespace haunch {
namespace {

Length diagonal(Length width, Length height) {
  return nearest_step(
      std::hypot(static_cast<double>(width.steps()), static_cast<double>(height.steps())));
}

PageParts openings(const Assembly& wood, const LengthPrinter& lengths) {
  if (wood.whole().kind != GroupKind::face_frame) return {};
  TextTable table({"", "width", "height", "from left", "from foot", "diagonals"});
  std::size_t number = 0;
  for (const Box& open : wood.open)
    table.add({"opening " + std::to_string(++number), open.extent(0), open.extent(1), open.low[0],
               open.low[1], diagonal(open.extent(0), open.extent(1))});
  table.add({"over all", wood.size[0], wood.size[1], Length(), Length(),
             diagonal(wood.size[0], wood.size[1])});
  return {{"OPENINGS, from the lower left corner",
           table.text(lengths, 2),
           {"  diagonals: both alike where it is square\n"}}};
}

/// The middles of screws in one place of a piece.
struct ScrewRow {
  std::string in, place, from, middles;
};
using ScrewSets = std::vector<MachineSet<const Operation*, std::vector<ScrewRow>>>;

/// The middle of a hole in a face, from the low edge of its piece.
Length across(const Piece& piece, const Run& run) {
  const Box hole = bounds_of(piece.features[run.feature].prisms.front());
  return hole.low[1] + floor_half(hole.extent(1));
}

ScrewSets screws_in(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  ScrewSets sets;
  each_run(making, FeatureKind::screw_hole, [&](const Operation& setting, const Run& run) {
    const Piece& piece = wood.pieces[run.piece];
    if (piece.features[run.feature].fitting) return;
    // Of a pocket that is the end whose joint it holds.
    const bool pocket = setting.has(SizeName::from_shoulder);
    const bool in_end = pocket || run.side.into == 0;
    const bool at_low = pocket ? !wood.joints[*run.joint].heading.upwards : !run.side.from_high;
    const bool in_face = !pocket && run.side.into == 2;
    const std::string place = in_face  ? std::string(word_of(side_of(piece, run.side))) + " side"
                              : in_end ? end_name(piece, at_low)
                                       : edge_name(piece, at_low) + " edge";
    const std::string middle =
        lengths.one(run.near) + (in_face ? " x " + lengths.one(across(piece, run)) : "");
    auto& rows = rows_for(sets, &setting);
    const auto same = std::find_if(rows.begin(), rows.end(), [&](const ScrewRow& it) {
      return it.in == piece.mark && it.place == place;
    });
    if (same == rows.end())
      rows.push_back({piece.mark, place, std::string(word_of(run.from)), middle});
    else
      same->middles += ", " + middle;
  });
  return sets;
}

std::string setting_text(const Operation& setting, const LengthPrinter& lengths) {
  const std::string hole = lengths.one(setting.setting(SizeName::diameter));
  if (!setting.has(SizeName::from_shoulder))
    return hole + " bored, " + lengths.one(setting.setting(SizeName::depth)) + " deep";
  return "pockets of " + lengths.one(setting.setting(SizeName::width)) +
         " from the back, slanting 4 in 15 to the middle of the end; the head " +
         lengths.one(setting.setting(SizeName::from_shoulder)) + " from the end, the hole " + hole;
}

PageParts screws(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  std::string page;
  for (const auto& [setting, rows] : screws_in(wood, making, lengths)) {
    TextTable table({"in", "at", "from", "middles"});
    for (const ScrewRow& row : rows)
      table.add({Cell::of_mark(row.in), row.place, row.from, row.middles});
    page += hanging(setting_text(*setting, lengths)) + table.text(lengths, 4);
  }
  if (page.empty()) return {};
  return {{"HOLES FOR SCREWS",
           page,
           {page.find(" x ") == std::string::npos
                ? ""
                : paragraph("x: in a face, from that end x from the lower edge; of what lies flat "
                            "from its front edge")}}};
}

}  // namespace

PageParts face_frame_page(const Assembly& wood, const Making& making,
                          const LengthPrinter& lengths) {
  PageParts page = screws(wood, making, lengths);
  append(page, openings(wood, lengths));
  return page;
}

}  // namespace haunch
