#include "solids.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "bench.h"
#include "face_svg.h"
#include "lines.h"
#include "round_bore.h"
#include "shell.h"
#include "step_text.h"

namespace haunch {
namespace {

/// The most that straight lines leave a curve of this item: that of its holes, or of an arch that
/// is told to be drawn more coarsely.
Length most_off(const ItemReport& item) {
  constexpr std::string_view kArch = "arch.tolerance";
  Length most = kBoreTolerance;
  for (const Given& given : item.job->given)
    if (given.key.ends_with(kArch)) most = std::max(most, given.length);
  for (const Assumed& assumed : item.assumed)
    if (assumed.key.ends_with(kArch)) most = std::max(most, assumed.value.length);
  return most;
}

bool slopes(const Piece& piece) {
  return std::any_of(piece.features.begin(), piece.features.end(),
                     [](const Feature& feature) { return !feature.prisms.empty(); });
}

std::string_view low_end(const Piece& piece) {
  return is_upright(piece) ? "lower" : runs_back(piece) ? "front" : "left";
}

std::string mm_text(Length length) {
  return decimal(length, Unit::mm) + " mm";
}

/// What the head of a file says: whose it is, how it lies, what is left out.
std::vector<std::string> about(const ItemReport& item, const Piece& piece, const Place& bench) {
  const bool to_edge = datum_of(piece).edge_high != bench.backwards[1];
  std::vector<std::string> lines{
      item.job->id + ", " + item.job->name + ": " + piece.mark + ", " + piece.name,
      "finished sizes in millimetres, fittings let in",
      "x along its length from its " + std::string(low_end(piece)) + " end, y across it " +
          (to_edge ? "to" : "from") + " its face edge, z up from its back to its face side"};
  if (slopes(piece))
    lines.push_back(
        "where it is curved it is drawn in straight lines, which leave the curve by at most " +
        mm_text(most_off(item)));
  if (piece.horn > Length())
    lines.push_back("without its horns, " + mm_text(piece.horn) + " at each end");
  return lines;
}

/// Adds the files of a piece, or why there is none.
void add(ItemSolids& solids, const ItemReport& item, std::size_t number) {
  const Piece& piece = item.wood.pieces[number];
  Piece alone = piece;
  alone.place = on_bench(piece);
  const Wood wood = solid_of(alone, Fittings::let_in).wood;
  const auto shell = shell_of(wood);
  const std::string who = piece.name + " " + piece.mark;
  if (!shell)
    return solids.faults.push_back(who + " is no solid: its cuts leave " +
                                   (wood.empty() ? "nothing of it" : "wood too thin to draw"));
  if (shell->bodies != 1)
    return solids.faults.push_back(who + " is no solid: its cuts leave " +
                                   std::to_string(shell->bodies) + " parts");
  const StepPart part{item.job->id + " " + piece.mark, piece.name, about(item, piece, alone.place)};
  const std::string name = safe_name(item.job->id) + "/" + safe_name(piece.mark);
  solids.files.push_back({name + ".step", step_text(part, *shell)});
  for (const FaceView& view : worked_faces(item.wood, *item.making, number))
    solids.files.push_back({name + "-" + std::string(word_of(side_of(piece, view.side))) + ".svg",
                            face_svg(item, piece, view)});
}

}  // namespace

ItemSolids solids_of(const ItemReport& item) {
  ItemSolids solids;
  for (std::size_t piece = 0; piece < item.wood.pieces.size(); ++piece)
    add(solids, item, piece);
  if (!solids.faults.empty()) solids.files.clear();
  return solids;
}

}  // namespace haunch
