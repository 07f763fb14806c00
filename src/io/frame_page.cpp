#include <algorithm>
#include <tuple>
#include <vector>

#include "joinery_parts.h"
#include "machine_sets.h"
#include "report.h"

namespace haunch {
namespace {

/// The size that its feature tells of a run, whatever its setting.
Length size_at(const Assembly& wood, const Run& run, SizeName name) {
  return size_of(wood.pieces[run.piece].features[run.feature], name).value_or(Length());
}

/// Runs in the order of the pieces, whatever they make.
void sort_by_piece(std::vector<const Run*>& runs) {
  std::stable_sort(runs.begin(), runs.end(), [](const Run* a, const Run* b) {
    return std::tie(a->piece, a->feature) < std::tie(b->piece, b->feature);
  });
}

/// Housings, and the rebates that take the whole end of another piece; those of a case stand on its
/// rods.
std::vector<const Run*> housings_in(const Assembly& wood, const Making& making) {
  std::vector<const Run*> runs;
  for (const FeatureKind kind : {FeatureKind::housing, FeatureKind::rebate})
    each_run(making, kind, [&](const Operation&, const Run& run) {
      if (run.joint && wood.joints[*run.joint].kind != JointKind::panel_in_rebate &&
          !is_of_case(wood, wood.pieces[run.piece]))
        runs.push_back(&run);
    });
  sort_by_piece(runs);
  return runs;
}

/// Whether it goes to the end of its piece.
bool is_at_end(const Assembly& wood, const Run& run) {
  return run.near == Length() || run.far == wood.pieces[run.piece].blank[0];
}

PageParts housing_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  TextTable table({"in", "from", "begins", "ends", "wide", "deep", "from shoulder", "takes", ""});
  for (const Run* run : housings_in(wood, making))
    table.add_alike({mark_of(wood, *run), std::string(word_of(run->from)), run->near, run->far,
                     Cell::of_fit(run->extent()), size_at(wood, *run, SizeName::depth),
                     near_from_shoulder(*run), taken_by(wood, *run),
                     is_at_end(wood, *run) ? "a rebate to the end" : ""});
  if (table.empty()) return {};
  const bool rebated = std::any_of(wood.pieces.begin(), wood.pieces.end(), [](const Piece& piece) {
    return piece.role == Role::jamb && has_long_rebate(piece);
  });
  PagePart page{"HOUSINGS, in the inner faces, across the whole width",
                PageText::table(table, lengths, 2)};
  if (rebated)
    page.legends = {
        PageText::paragraph("deep: from the inner face as it is before a rebate is worked there")};
  return {page};
}

/// "20 above the foot", of a rebate that does not go from end to end.
std::string stopped(const Run& run, Length length, const LengthPrinter& lengths) {
  const Length left = length - *run.far;
  if (run.near == left) return left == Length() ? "" : lengths.one(left) + " short of each end";
  std::string words = run.near > Length() ? lengths.one(run.near) + " above the foot" : "";
  if (left > Length()) words += (words.empty() ? "" : ", ") + lengths.one(left) + " below the top";
  return words;
}

PageParts leaf_rebates(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  std::vector<const Run*> runs;
  each_run(making, FeatureKind::rebate, [&](const Operation&, const Run& run) {
    const Piece& piece = wood.pieces[run.piece];
    if (piece.role != Role::panel && piece.features[run.feature].joints.empty())
      runs.push_back(&run);
  });
  sort_by_piece(runs);
  TextTable table({"in", "on the", "wide", "deep", "stops"});
  for (const Run* run : runs) {
    const Piece& piece = wood.pieces[run->piece];
    table.add_alike({mark_of(wood, *run), is_upright(piece) ? "inner face" : "lower face",
                     size_at(wood, *run, SizeName::width), size_at(wood, *run, SizeName::depth),
                     stopped(*run, piece.blank[0], lengths)});
  }
  if (table.empty()) return {};
  return {{"REBATES for the leaf, from the face side", PageText::table(table, lengths, 2)}};
}

PageParts bevel_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  PageText page;
  each_run(making, FeatureKind::bevel, [&](const Operation& bevel, const Run& run) {
    page += PageText::hanging(wood.pieces[run.piece].mark +
                              ", outer edge: " + lengths.one(bevel.setting(SizeName::width)) +
                              " off at its back, nothing at its face side");
  });
  if (page.empty()) return {};
  return {{"LOCK EDGES, planed on the bevel", page}};
}

PageParts stop_page(const Assembly& wood, const LengthPrinter& lengths) {
  const std::vector<const Piece*> stops = all_of(wood, Role::stop);
  if (stops.empty()) return {};
  return {
      {"STOPS, planted on",
       PageText::paragraph(joined(marks_of(stops)) + ": the edge nearest to the face side stands " +
                           lengths.one(stops.front()->place.origin[2]) +
                           " from it. Fix them once the leaf is hung, to its back.")}};
}

}  // namespace

PageParts frame_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  PageParts page = housing_page(wood, making, lengths);
  append(page, leaf_rebates(wood, making, lengths));
  append(page, bevel_page(wood, making, lengths));
  append(page, stop_page(wood, lengths));
  return page;
}

}  // namespace haunch
