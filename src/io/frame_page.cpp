#include "frame_page.h"

#include <algorithm>
#include <vector>

#include "machine_sets.h"
#include "report.h"
#include "shoulders.h"

namespace haunch {
namespace {

/// A housing, or the rebate at a piece's end, as it is marked out.
struct HousingRow {
  std::vector<std::string> in, takes;
  Box cut;
  bool to_the_end = false;
  std::string from;
  std::optional<Length> from_shoulder;  // where its piece has one there
};

/// The joint that a feature serves, where it takes the whole end of another piece.
const Joint* joint_of_end(const Assembly& wood, const Feature& feature) {
  if (feature.joints.size() != 1 || feature.cuts.empty()) return nullptr;
  const Joint& joint = wood.joints[feature.joints.front()];
  const bool whole = joint.kind == JointKind::housing || joint.kind == JointKind::rebated_corner;
  const bool receives = feature.kind == FeatureKind::housing || feature.kind == FeatureKind::rebate;
  return whole && receives ? &joint : nullptr;
}

bool marked_alike(const Box& a, const Box& b) {
  return a.low[0] == b.low[0] && a.high[0] == b.high[0] && a.extent(2) == b.extent(2);
}

std::vector<HousingRow> housing_rows(const Assembly& wood) {
  const std::vector<Shoulders> shoulders = shoulders_of(wood);
  std::vector<HousingRow> rows;
  for (const Piece& piece : wood.pieces) {
    const auto& low = shoulders[static_cast<std::size_t>(&piece - wood.pieces.data())].low;
    for (const Feature& feature : piece.features) {
      const Joint* joint = joint_of_end(wood, feature);
      if (joint == nullptr) continue;
      const Box& cut = feature.cuts.front();
      auto row = std::find_if(rows.begin(), rows.end(),
                              [&](const HousingRow& it) { return marked_alike(it.cut, cut); });
      if (row == rows.end())
        row = rows.insert(rows.end(), {{},
                                       {},
                                       cut,
                                       cut.high[0] == piece.blank[0],
                                       low ? "lower end" : "foot",
                                       low ? std::optional(cut.low[0] - low->line) : std::nullopt});
      add_once(row->in, piece.mark);
      add_once(row->takes, wood.pieces[joint->enters].mark);
    }
  }
  return rows;
}

/// A rebate along the piece, for the leaf.
bool has_long_rebate(const Piece& piece) {
  return std::any_of(piece.features.begin(), piece.features.end(), [](const Feature& feature) {
    return feature.kind == FeatureKind::rebate && feature.joints.empty();
  });
}

std::string housing_page(const Assembly& wood, const LengthPrinter& lengths) {
  const std::vector<HousingRow> rows = housing_rows(wood);
  if (rows.empty()) return {};
  TextTable table({"in", "from", "near", "far", "wide", "deep", "from shoulder", "takes", ""});
  for (const HousingRow& row : rows)
    table.add({joined(row.in), row.from, row.cut.low[0], row.cut.high[0], row.cut.extent(0),
               row.cut.extent(2),
               row.from_shoulder ? Cell(*row.from_shoulder) : Cell(std::string()),
               joined(row.takes), std::string(row.to_the_end ? "a rebate to the end" : "")});
  const bool rebated = std::any_of(wood.pieces.begin(), wood.pieces.end(), [](const Piece& piece) {
    return piece.role == Role::jamb && has_long_rebate(piece);
  });
  return "\nHOUSINGS, in the inner faces, across the whole width\n" + table.text(lengths, 2) +
         (rebated ? "  deep: from the inner face as it is before a rebate is worked there\n" : "");
}

/// A rebate along one edge of a piece.
struct RebateRow {
  std::string on;
  std::vector<std::string> marks;
  Length width, depth, from, left_at_end;
};

std::vector<RebateRow> rebate_rows(const Assembly& wood) {
  std::vector<RebateRow> rows;
  for (const Piece& piece : wood.pieces) {
    for (const Feature& feature : piece.features) {
      if (feature.kind != FeatureKind::rebate || piece.role == Role::panel ||
          !feature.joints.empty())
        continue;
      const Box& cut = feature.cuts.front();
      const std::string on = is_upright(piece) ? "inner face" : "lower face";
      const Length left = piece.blank[0] - cut.high[0];
      auto row = std::find_if(rows.begin(), rows.end(), [&](const RebateRow& it) {
        return it.on == on && it.width == cut.extent(1) && it.depth == cut.extent(2) &&
               it.from == cut.low[0] && it.left_at_end == left;
      });
      if (row == rows.end())
        row = rows.insert(rows.end(), {on, {}, cut.extent(1), cut.extent(2), cut.low[0], left});
      add_once(row->marks, piece.mark);
    }
  }
  return rows;
}

/// "20 above the foot", of one that does not go from end to end.
std::string stopped(const RebateRow& row, const LengthPrinter& lengths) {
  if (row.from == row.left_at_end)
    return row.from == Length() ? "" : lengths.one(row.from) + " short of each end";
  std::string words = row.from > Length() ? lengths.one(row.from) + " above the foot" : "";
  if (row.left_at_end > Length())
    words += (words.empty() ? "" : ", ") + lengths.one(row.left_at_end) + " below the top";
  return words;
}

std::string edge_rebate_page(const Assembly& wood, const LengthPrinter& lengths) {
  const std::vector<RebateRow> rows = rebate_rows(wood);
  if (rows.empty()) return {};
  const bool any_stopped = std::any_of(rows.begin(), rows.end(), [&](const RebateRow& row) {
    return !stopped(row, lengths).empty();
  });
  TextTable table({"in", "on the", "wide", "deep", any_stopped ? "stops" : ""});
  for (const RebateRow& row : rows)
    table.add({joined(row.marks), row.on, row.width, row.depth, stopped(row, lengths)});
  return "\nREBATES for the leaf, from the face side\n" + table.text(lengths, 2);
}

std::string bevel_page(const Assembly& wood, const LengthPrinter& lengths) {
  std::string page;
  for (const Piece& piece : wood.pieces)
    for (const Feature& feature : piece.features)
      if (feature.kind == FeatureKind::bevel)
        page += "  " + piece.mark + ", outer edge: " + lengths.one(feature.sizes.front().size) +
                " off at its back, nothing at its face side\n";
  return page.empty() ? "" : "\nLOCK EDGES, planed on the bevel\n" + page;
}

std::string stop_page(const Assembly& wood, const LengthPrinter& lengths) {
  const Piece* first = nullptr;
  std::vector<std::string> marks;
  for (const Piece& piece : wood.pieces) {
    if (piece.role != Role::stop) continue;
    if (first == nullptr) first = &piece;
    marks.push_back(piece.mark);
  }
  if (first == nullptr) return {};
  return "\nSTOPS, planted on\n  " +
         wrapped(joined(marks) + ": their near edges " + lengths.one(first->place.origin[2]) +
                     " from the face side. Fix them once the leaf is hung, to its back.",
                 kPageWidth, 2) +
         "\n";
}

}  // namespace

std::string frame_page(const Assembly& wood, const LengthPrinter& lengths) {
  return housing_page(wood, lengths) + edge_rebate_page(wood, lengths) + bevel_page(wood, lengths) +
         stop_page(wood, lengths);
}

}  // namespace haunch
