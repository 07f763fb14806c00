#include "joinery_page.h"

#include <vector>

#include "corner_page.h"
#include "edge_page.h"
#include "fitting_page.h"
#include "frame_page.h"
#include "glass_page.h"
#include "leaf_page.h"
#include "pin_page.h"
#include "report.h"
#include "tenon_page.h"

namespace haunch {
namespace {

std::string pair_text(const Assembly& wood) {
  std::vector<const Piece*> stiles;
  for (const Piece& piece : wood.pieces)
    if (piece.role == "stile") stiles.push_back(&piece);
  const bool two_leaves = stiles.size() == 4 && !wood.meetings.empty();
  if (stiles.size() != 2 && !two_leaves) return {};
  std::string text;
  for (std::size_t i = 0; i < stiles.size(); i += 2)
    text += (text.empty() ? "" : "; ") + stiles[i]->mark + " (left) and " + stiles[i + 1]->mark +
            " (right)";
  const std::string left = stiles[0]->mark + (two_leaves ? " and " + stiles[2]->mark : "");
  const std::string right = stiles[1]->mark + (two_leaves ? " and " + stiles[3]->mark : "");
  return "  " +
         wrapped(text + (two_leaves ? " are pairs" : " are a pair") +
                     ". Put face side up, foot towards you, face edges "
                     "together: the face edge of " +
                     left + " is its right one, of " + right + " its left one. " +
                     (has_rebated_edges(wood) ? "Rebates" : "Grooves") +
                     " and mortises are all in the face edges. Lengths are "
                     "from the foot of the "
                     "finished leaf, horns not counted.",
                 kPageWidth, 2) +
         "\n";
}

}  // namespace

std::string joinery_page(const Assembly& wood, const LengthPrinter& lengths) {
  const std::string pair = pair_text(wood);
  return (pair.empty() ? "" : "\nMARKING OUT\n" + pair) + groove_page(wood, lengths) +
         edge_rebate_page(wood, lengths) + moulding_page(wood, lengths) +
         moulding_mitre_page(wood, lengths) + mortise_page(wood, lengths) +
         haunching_page(wood, lengths) + tenon_page(wood, lengths) +
         loose_tenon_page(wood, lengths) + lap_page(wood, lengths) + mitre_page(wood, lengths) +
         hole_page(wood, lengths) + pin_page(wood, lengths) + wedge_page(wood, lengths) +
         rebate_page(wood, lengths) + raise_page(wood, lengths) + panel_page(wood, lengths) +
         glass_page(wood, lengths) + fittings_page(wood, lengths) + leaf_page(wood, lengths) +
         frame_page(wood, lengths);
}

}  // namespace haunch
