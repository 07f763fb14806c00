#include "joinery_page.h"

#include <algorithm>
#include <string_view>
#include <vector>

#include "corner_page.h"
#include "edge_page.h"
#include "fitting_page.h"
#include "frame_page.h"
#include "glass_page.h"
#include "leaf_page.h"
#include "mortise_page.h"
#include "pin_page.h"
#include "report.h"
#include "tenon_page.h"

namespace haunch {
namespace {

std::string paragraph(const std::string& text) {
  return text.empty() ? text : "  " + wrapped(text, kPageWidth, 2) + "\n";
}

// ---- the lines that places along pieces are told from

/// Whether something is told of a piece from the low end of its length, not of its ends alone.
bool is_marked_along(const Assembly& wood, const Piece& piece) {
  for (const Feature& feature : piece.features) {
    const bool stopped = feature.kind == FeatureKind::groove && !feature.cuts.empty() &&
                         feature.cuts.front().extent(0) != piece.blank[0];
    if (stopped || feature.kind == FeatureKind::glass_rebate ||
        feature.kind == FeatureKind::moulding_mitre)
      return true;
    if (feature.kind != FeatureKind::mortise || feature.joints.empty()) continue;
    const Joint& joint = wood.joints[feature.joints.front()];
    if (joint.mortise && !joint.mortise->each.front().from_edge) return true;
  }
  return false;
}

/// How the left ends of pieces are told, where they are marked from there: "from the left end, that
/// of the tenon there".
std::string left_end_text(const Assembly& wood, const Making& making, Role role) {
  bool any = false;
  bool tenoned = false;
  bool lapped = false;
  bool longer = false;
  for (std::size_t number = 0; number < wood.pieces.size(); ++number) {
    const Piece& piece = wood.pieces[number];
    if (piece.role != role || !is_marked_along(wood, piece)) continue;
    const bool laps = std::any_of(piece.features.begin(), piece.features.end(),
                                  [](const Feature& it) { return it.kind == FeatureKind::lap; });
    any = true;
    lapped = lapped || laps;
    tenoned = tenoned || (!laps && making.shoulders[number].low);
    longer = longer || piece.horn > Length();
  }
  if (!any) return {};
  std::string text = "from the left end";
  if (role != Role::rail) text += ", level with the outside of the left jamb";
  if (tenoned || lapped)
    text += std::string(", that of the ") +
            (!lapped   ? "tenon"
             : tenoned ? "tenon or lap"
                       : "lap") +
            " there";
  if (longer)
    text += role == Role::rail ? ", what is left to plane off not counted" : ", horns not counted";
  return text;
}

// ---- leaves

/// `framed`: the frame that the leaves hang in is told of too.
std::string pair_text(const Assembly& wood, const Making& making, bool framed) {
  std::vector<const Piece*> stiles;
  for (const Piece& piece : wood.pieces)
    if (piece.role == Role::stile) stiles.push_back(&piece);
  const bool two_leaves = stiles.size() == 4 && !wood.meetings.empty();
  if (stiles.size() != 2 && !two_leaves) return {};
  std::string text;
  for (std::size_t i = 0; i < stiles.size(); i += 2)
    text += (text.empty() ? "" : "; ") + stiles[i]->mark + " (left) and " + stiles[i + 1]->mark +
            " (right)";
  const std::string left = stiles[0]->mark + (two_leaves ? " and " + stiles[2]->mark : "");
  const std::string right = stiles[1]->mark + (two_leaves ? " and " + stiles[3]->mark : "");
  const std::string rails = left_end_text(wood, making, Role::rail);
  return text + (two_leaves ? " are pairs" : " are a pair") +
         ". Put face side up, foot towards you, face edges together: the face edge of " + left +
         " is its right one, of " + right + " its left one. " +
         (has_rebated_edges(wood) ? "Rebates" : "Grooves") +
         " and mortises are all in the face edges. Lengths " + (framed ? "on stiles " : "") +
         "are from the foot of the finished leaf, horns not counted" +
         (rails.empty() ? "" : "; on rails " + rails) + ".";
}

// ---- frames

std::string jambs_text(const Assembly& wood, const Making& making) {
  std::vector<const Piece*> jambs;
  for (const Piece& piece : wood.pieces)
    if (piece.role == Role::jamb) jambs.push_back(&piece);
  if (jambs.size() != 2) return {};
  const auto first = static_cast<std::size_t>(jambs.front() - wood.pieces.data());
  std::string text =
      jambs[0]->mark + " (left) and " + jambs[1]->mark +
      " (right) are the jambs, a pair, worked in their inner faces, which look at the way through. "
      "Lengths on jambs are from " +
      (making.shoulders[first].low ? "the lower end, that of the tenon in the sill" : "the foot");
  const std::string head = left_end_text(wood, making, Role::head);
  const std::string sill = left_end_text(wood, making, Role::sill);
  if (head == sill && !head.empty()) return text + "; on head and sill " + head + ".";
  if (!head.empty()) text += "; on the head " + head;
  if (!sill.empty()) text += "; on the sill " + sill;
  return text + ".";
}

std::string marking_page(const Assembly& wood, const Making& making) {
  const std::string jambs = paragraph(jambs_text(wood, making));
  const std::string text = jambs + paragraph(pair_text(wood, making, !jambs.empty()));
  return text.empty() ? text : "\nMARKING OUT\n" + text;
}

}  // namespace

std::string joinery_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  using Page = std::string (*)(const Assembly&, const Making&, const LengthPrinter&);
  constexpr Page kWorked[] = {groove_page,  edge_rebate_page, moulding_page, moulding_mitre_page,
                              mortise_page, haunching_page,   tenon_page};
  std::string page = marking_page(wood, making);
  for (const Page worked : kWorked)
    page += worked(wood, making, lengths);
  return page + loose_tenon_page(wood, lengths) + lap_page(wood, making, lengths) +
         mitre_page(wood, lengths) + hole_page(wood, making, lengths) +
         pin_page(wood, making, lengths) + wedge_page(wood, lengths) +
         rebate_page(wood, making, lengths) + raise_page(wood, making, lengths) +
         panel_page(wood, lengths) + glass_page(wood, making, lengths) +
         fittings_page(wood, making, lengths) + leaf_page(wood, making, lengths) +
         frame_page(wood, making, lengths);
}

}  // namespace haunch
