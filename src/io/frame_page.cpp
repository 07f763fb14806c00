#include "frame_page.h"

#include <algorithm>
#include <tuple>
#include <vector>

#include "machine_sets.h"
#include "report.h"

namespace haunch {
namespace {

/// Runs in the order of the pieces, whatever they make.
void sort_by_piece(std::vector<const Run*>& runs) {
  std::stable_sort(runs.begin(), runs.end(), [](const Run* a, const Run* b) {
    return std::tie(a->piece, a->feature) < std::tie(b->piece, b->feature);
  });
}

/// A housing, or the rebate at a piece's end, as it is marked out.
struct HousingRow {
  Marks in, takes;
  const Run* run;
  Length depth;
  bool to_the_end = false;
};

/// Housings, and the rebates that take the whole end of another piece.
std::vector<HousingRow> housing_rows(const Assembly& wood, const Making& making) {
  std::vector<const Run*> runs;
  for (const FeatureKind kind : {FeatureKind::housing, FeatureKind::rebate})
    each_run(making, kind, [&](const Operation&, const Run& run) {
      if (run.joint && wood.joints[*run.joint].kind != JointKind::panel_in_rebate)
        runs.push_back(&run);
    });
  sort_by_piece(runs);
  std::vector<HousingRow> rows;
  for (const Run* run : runs) {
    const Piece& piece = wood.pieces[run->piece];
    const Length depth = size_of(piece.features[run->feature], SizeName::depth).value_or(Length());
    auto row = std::find_if(rows.begin(), rows.end(), [&](const HousingRow& it) {
      return it.run->near == run->near && it.run->far == run->far && it.depth == depth;
    });
    if (row == rows.end()) row = rows.insert(row, {{}, {}, run, depth, run->far == piece.blank[0]});
    add_once(row->in, piece.mark);
    add_once(row->takes, wood.pieces[wood.joints[*run->joint].enters].mark);
  }
  return rows;
}

/// A rebate along the piece, for the leaf.
bool has_long_rebate(const Piece& piece) {
  return std::any_of(piece.features.begin(), piece.features.end(), [](const Feature& feature) {
    return feature.kind == FeatureKind::rebate && feature.joints.empty();
  });
}

std::string housing_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  const std::vector<HousingRow> rows = housing_rows(wood, making);
  if (rows.empty()) return {};
  TextTable table({"in", "from", "near", "far", "wide", "deep", "from shoulder", "takes", ""});
  for (const HousingRow& row : rows)
    table.add({joined(row.in), std::string(word(row.run->from)), row.run->near, *row.run->far,
               row.run->extent(), row.depth,
               row.run->from_shoulder ? Cell(row.run->from_shoulder->near) : Cell(std::string()),
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
  Marks marks;
  Length width, depth, from, left_at_end;

  bool alike(const RebateRow& other) const {
    return std::tie(on, width, depth, from, left_at_end) ==
           std::tie(other.on, other.width, other.depth, other.from, other.left_at_end);
  }
};

std::vector<RebateRow> rebate_rows(const Assembly& wood, const Making& making) {
  std::vector<const Run*> runs;
  each_run(making, FeatureKind::rebate, [&](const Operation&, const Run& run) {
    const Piece& piece = wood.pieces[run.piece];
    if (piece.role != Role::panel && piece.features[run.feature].joints.empty())
      runs.push_back(&run);
  });
  sort_by_piece(runs);
  std::vector<RebateRow> rows;
  for (const Run* run : runs) {
    const Piece& piece = wood.pieces[run->piece];
    const Feature& feature = piece.features[run->feature];
    const RebateRow its{is_upright(piece) ? "inner face" : "lower face",
                        {},
                        size_of(feature, SizeName::width).value_or(Length()),
                        size_of(feature, SizeName::depth).value_or(Length()),
                        run->near,
                        piece.blank[0] - *run->far};
    auto row =
        std::find_if(rows.begin(), rows.end(), [&](const RebateRow& it) { return it.alike(its); });
    if (row == rows.end()) row = rows.insert(row, its);
    add_once(row->marks, piece.mark);
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

std::string edge_rebate_page(const Assembly& wood, const Making& making,
                             const LengthPrinter& lengths) {
  const std::vector<RebateRow> rows = rebate_rows(wood, making);
  if (rows.empty()) return {};
  const bool any_stopped = std::any_of(rows.begin(), rows.end(), [&](const RebateRow& row) {
    return !stopped(row, lengths).empty();
  });
  TextTable table({"in", "on the", "wide", "deep", any_stopped ? "stops" : ""});
  for (const RebateRow& row : rows)
    table.add({joined(row.marks), row.on, row.width, row.depth, stopped(row, lengths)});
  return "\nREBATES for the leaf, from the face side\n" + table.text(lengths, 2);
}

std::string bevel_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  std::string page;
  each_run(making, FeatureKind::bevel, [&](const Operation& bevel, const Run& run) {
    page += "  " + wood.pieces[run.piece].mark +
            ", outer edge: " + lengths.one(bevel.setting(SizeName::width)) +
            " off at its back, nothing at its face side\n";
  });
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

std::string frame_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  return housing_page(wood, making, lengths) + edge_rebate_page(wood, making, lengths) +
         bevel_page(wood, making, lengths) + stop_page(wood, lengths);
}

}  // namespace haunch
