// What is told of a face frame besides its joints: where its openings are, and its screws.
#include <string>
#include <vector>

#include "joinery_parts.h"
#include "machine_sets.h"
#include "own_axes.h"
#include "polyhedron.h"
#include "report.h"

namespace haunch {
namespace {

PageParts openings(const Assembly& wood, const LengthPrinter& lengths) {
  if (wood.whole().kind != GroupKind::face_frame) return {};
  TextTable table({"", "width", "height", "from left", "from foot"});
  std::size_t number = 0;
  for (const Box& open : wood.open)
    table.add({"opening " + std::to_string(++number), open.extent(0), open.extent(1), open.low[0],
               open.low[1]});
  return {{"OPENINGS, from the lower left corner", PageText::table(table, lengths, 2)}};
}

/// Screws in one place of a piece: their middles from an end, and in a face across from an edge.
struct ScrewRow {
  std::string in, place, from;
  std::vector<Length> along, across;
  const Operation* setting;
};

/// The middle of a hole in a face, from the low edge of its piece.
Length across(const Piece& piece, const Run& run) {
  const Box hole = bounds_of(piece.features[run.feature].prisms.front());
  return hole.low[1] + floor_half(hole.extent(1));
}

bool is_pocket(const Operation& setting) {
  return setting.has(SizeName::from_shoulder);
}

/// Of a pocket that is the end whose joint it holds.
std::string screw_place(const Assembly& wood, const Operation& setting, const Run& run) {
  const Piece& piece = wood.pieces[run.piece];
  if (is_pocket(setting)) return end_name(piece, !wood.joints[*run.joint].heading.upwards);
  const bool at_low = !run.side.from_high;
  if (run.side.into == 2) return std::string(word_of(side_of(piece, run.side))) + " side";
  return run.side.into == 0 ? end_name(piece, at_low) : edge_name(piece, at_low) + " edge";
}

std::vector<ScrewRow> screws_in(const Assembly& wood, const Making& making) {
  std::vector<ScrewRow> rows;
  each_run(making, FeatureKind::screw_hole, [&](const Operation& setting, const Run& run) {
    const Piece& piece = wood.pieces[run.piece];
    if (piece.features[run.feature].fitting) return;
    const std::string place = screw_place(wood, setting, run);
    auto same = std::find_if(rows.begin(), rows.end(), [&](const ScrewRow& it) {
      return it.setting == &setting && it.in == piece.mark && it.place == place;
    });
    if (same == rows.end())
      same = rows.insert(rows.end(),
                         {piece.mark, place, std::string(word_of(run.from)), {}, {}, &setting});
    same->along.push_back(run.near);
    if (!is_pocket(setting) && run.side.into == 2) same->across.push_back(across(piece, run));
  });
  return rows;
}

std::vector<Length> each_once(std::vector<Length> lengths) {
  std::sort(lengths.begin(), lengths.end());
  lengths.erase(std::unique(lengths.begin(), lengths.end()), lengths.end());
  return lengths;
}

std::string list_text(const std::vector<Length>& all, const LengthPrinter& lengths) {
  std::string text;
  for (const Length each : all)
    text += (text.empty() ? "" : ", ") + lengths.one(each);
  return text;
}

std::string pocket_text(const Operation& setting, const LengthPrinter& lengths) {
  return "pockets of " + lengths.one(setting.setting(SizeName::width)) +
         " from the back, slanting 4 in 15 to the middle of the end; the head " +
         lengths.one(setting.setting(SizeName::from_shoulder)) + " from the end, the hole " +
         lengths.one(setting.setting(SizeName::diameter));
}

PageParts screws(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  TextTable table({"in", "at", "from", "round", "deep", "middles"});
  Marks pockets;
  bool faces = false;
  for (const ScrewRow& row : screws_in(wood, making)) {
    const bool pocket = is_pocket(*row.setting);
    if (pocket) add_once(pockets, pocket_text(*row.setting, lengths));
    faces = faces || !row.across.empty();
    const auto bored = [&](SizeName size) {
      return pocket ? std::nullopt : std::optional(row.setting->setting(size));
    };
    table.add_alike({Cell::of_mark(row.in), row.place, row.from, bored(SizeName::diameter),
                     bored(SizeName::depth), middles_text(row.along, row.across, lengths)});
  }
  if (table.empty()) return {};
  PageText how;
  for (const std::string& pocket : pockets)
    how += PageText::paragraph(pocket);
  return {
      {"HOLES FOR SCREWS",
       how + PageText::table(table, lengths, 2),
       {PageText::paragraph(
           faces ? "x: each along, each up from the lower edge; of what lies flat, from its front"
                 : "")}}};
}

/// Of those in which wood moves on its screws, in the piece's own axes.
struct SlotRow {
  std::string in, side;
  Length wide, length;
  std::vector<Length> along, across;  // across: of slots in a broad face
};

/// The side that the screws come in from: of what lies on another the one away from it.
SlotRow slot_row(const Assembly& wood, const Piece& piece, const Feature& slot) {
  const Box& cut = slot.cuts.front();
  const Joint& joint = wood.joints[slot.joints.front()];
  const auto into = own_axis(piece.place, joint.heading.axis);
  const WorkedSide side{into, piece.place.backwards[into] == joint.heading.upwards};
  SlotRow row{piece.mark,
              into == 2 ? std::string(word_of(side_of(piece, side))) + " side"
                        : edge_name(piece, !side.from_high) + " edge",
              slot.sizes[1].size,
              slot.sizes[0].size,
              {cut.low[0] + floor_half(cut.extent(0))},
              {}};
  if (into == 2) row.across = {cut.low[1] + floor_half(cut.extent(1))};
  return row;
}

PageParts slots(const Assembly& wood, const LengthPrinter& lengths) {
  std::vector<SlotRow> rows;
  for (const Piece& piece : wood.pieces)
    for (const Feature& feature : piece.features) {
      if (feature.kind != FeatureKind::slot) continue;
      SlotRow row = slot_row(wood, piece, feature);
      const auto same = std::find_if(rows.begin(), rows.end(), [&](const SlotRow& it) {
        return it.in == row.in && it.side == row.side && it.length == row.length;
      });
      if (same == rows.end()) {
        rows.push_back(std::move(row));
        continue;
      }
      same->along.insert(same->along.end(), row.along.begin(), row.along.end());
      same->across.insert(same->across.end(), row.across.begin(), row.across.end());
    }
  TextTable table({"in", "at", "wide", "long", "middles"});
  for (const SlotRow& row : rows)
    table.add_alike({Cell::of_mark(row.in), row.side, row.wide, row.length,
                     middles_text(row.along, row.across, lengths)});
  if (table.empty()) return {};
  return {{"SLOTS FOR SCREWS",
           PageText::table(table, lengths, 2),
           {PageText::paragraph(
               "middles from the left or front end; set each screw in the middle, not tight: "
               "there the wood moves")}}};
}

}  // namespace

std::string middles_text(const std::vector<Length>& all_along,
                         const std::vector<Length>& all_across, const LengthPrinter& lengths) {
  const std::vector<Length> along = each_once(all_along);
  if (all_across.empty()) return list_text(along, lengths);
  const std::vector<Length> across = each_once(all_across);
  if (along.size() * across.size() == all_along.size())
    return list_text(along, lengths) + " x " + list_text(across, lengths);
  std::string text;
  for (std::size_t i = 0; i < all_along.size(); ++i)
    text += (i == 0 ? "" : ", ") + lengths.one(all_along[i]) + " x " + lengths.one(all_across[i]);
  return text;
}

PageParts face_frame_page(const Assembly& wood, const Making& making,
                          const LengthPrinter& lengths) {
  PageParts page = screws(wood, making, lengths);
  append(page, slots(wood, lengths));
  append(page, openings(wood, lengths));
  return page;
}

}  // namespace haunch
