#include "run_page.h"

#include <algorithm>
#include <map>
#include <string>

namespace haunch {
namespace {

/// What is left of a planed strip's width, by the places along it between which it is straight.
std::map<Length, Length> widths_along(const Piece& filler, const Feature& planed) {
  std::map<Length, Length> widths{{Length(), filler.blank[1]}, {filler.blank[0], filler.blank[1]}};
  for (const Prism& prism : planed.prisms) {
    std::map<Length, std::pair<Length, Length>> taken;  // from where to where across it
    for (const Corner& corner : prism.outline) {
      const auto [at, is_new] = taken.try_emplace(corner.u, corner.v, corner.v);
      at->second.first = std::min(at->second.first, corner.v);
      at->second.second = std::max(at->second.second, corner.v);
    }
    for (const auto& [at, across] : taken)
      widths[at] = filler.blank[1] - (across.second - across.first);
  }
  return widths;
}

/// Whether what is planed off lies at the right, as the piece stands.
bool is_planed_right(const Piece& filler, const Feature& planed) {
  const auto& outline = planed.prisms.front().outline;
  return std::any_of(outline.begin(), outline.end(), [&](const Corner& it) {
           return it.v == filler.blank[1];
         }) != filler.place.backwards[1];
}

}  // namespace

std::vector<PlanedWidth> planed_widths(const Piece& filler) {
  std::vector<PlanedWidth> all;
  for (const Feature& feature : filler.features)
    if (feature.kind == FeatureKind::planed_taper)
      for (const auto& [at, width] : widths_along(filler, feature))
        all.push_back({at, width});
  return all;
}

PageParts fillers_page(const ItemReport& report, const LengthPrinter& lengths) {
  TextTable table({"filler", "", "edge", "from its foot", "wide"});
  for (const Piece& piece : report.wood.pieces)
    for (const Feature& feature : piece.features) {
      if (piece.role != Role::filler || feature.kind != FeatureKind::planed_taper) continue;
      const std::string edge = is_planed_right(piece, feature) ? "right" : "left";
      for (const auto& [at, width] : planed_widths(piece))
        table.add({Cell::of_mark(piece.mark), piece.name, edge, at, width});
    }
  if (table.empty()) return {};
  return {{"FILLERS, planed to the wall", PageText::table(table, lengths, 2)}};
}

}  // namespace haunch
