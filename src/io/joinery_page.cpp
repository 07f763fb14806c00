#include "joinery_page.h"

#include <algorithm>
#include <vector>

#include "cabinet_work.h"
#include "extras.h"
#include "joinery_parts.h"
#include "machine_sets.h"

namespace haunch {
namespace {

// ---- the lines that places along pieces are told from

/// Whether something is told of a piece from the low end of its length, not of its ends alone.
bool is_marked_along(const Making& making, std::size_t piece, Length length) {
  const auto is_marked = [&](const Operation& operation, const Run& run) {
    if (run.piece != piece || run.side.into == 0) return false;
    switch (operation.makes) {
      case FeatureKind::mortise:
      case FeatureKind::glass_rebate:
      case FeatureKind::moulding_mitre:
        return true;
      case FeatureKind::groove:  // a curved one is told by its curve
        return !operation.has(SizeName::radius) && run.extent() != length;
      default:
        return false;
    }
  };
  for (const Operation& operation : making.operations)
    for (const Run& run : operation.runs)
      if (is_marked(operation, run)) return true;
  return false;
}

/// How the left ends of pieces are told, where they are marked from there: "from the left end, that
/// of the tenon there".
std::string left_end_text(const Assembly& wood, const Making& making, Role role) {
  bool any = false;
  bool tenoned = false;
  bool lapped = false;
  bool fitted = false;
  bool longer = false;
  for (std::size_t number = 0; number < wood.pieces.size(); ++number) {
    const Piece& piece = wood.pieces[number];
    if (piece.role != role || !is_marked_along(making, number, piece.blank[0])) continue;
    const bool laps = std::any_of(piece.features.begin(), piece.features.end(),
                                  [](const Feature& it) { return it.kind == FeatureKind::lap; });
    any = true;
    lapped = lapped || laps;
    const bool scribed =
        std::any_of(piece.features.begin(), piece.features.end(),
                    [](const Feature& it) { return it.kind == FeatureKind::scribed_end; });
    fitted = fitted || scribed;
    tenoned = tenoned || (!laps && !scribed && making.shoulders[number].low);
    longer = longer || piece.horn > Length();
  }
  if (!any) return {};
  std::string text = "from the left end";
  if (role != Role::rail) text += ", level with the outside of the left jamb";
  if (fitted && !tenoned && !lapped) text += ", where it is longest";
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

/// Whether panels lie in rebates instead of grooves.
bool has_rebated_edges(const Making& making) {
  bool any = false;
  each_run(making, FeatureKind::rebate,
           [&](const Operation&, const Run& run) { any = any || run.side.into == 1; });
  return any;
}

bool is_face_frame(const Assembly& wood) {
  return wood.whole().kind == GroupKind::face_frame;
}

std::string worked_in_edges(const Assembly& wood, const Making& making) {
  if (is_face_frame(wood)) return "Mortises";
  return std::string(has_rebated_edges(making) ? "Rebates" : "Grooves") + " and mortises";
}

/// `framed`: the frame that the leaves hang in is told of too.
std::string pair_text(const Assembly& wood, const Making& making, bool framed) {
  const std::vector<const Piece*> stiles = all_of(wood, Role::stile);
  const bool two_leaves = stiles.size() == 4 && !fits_that_stand(wood, StandsIn::beside).empty();
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
         " is its right one, of " + right + " its left one. " + worked_in_edges(wood, making) +
         " are all in the face edges. Lengths " + (framed ? "on stiles " : "") +
         "are from the foot of the finished " +
         (is_face_frame(wood) ? "frame" : "leaf, horns not counted") +
         (rails.empty() ? "" : "; on rails " + rails) + ".";
}

// ---- frames

std::string jambs_text(const Assembly& wood, const Making& making) {
  const std::vector<const Piece*> jambs = all_of(wood, Role::jamb);
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

PageParts marking_page(const Assembly& wood, const Making& making) {
  const PageText jambs = PageText::paragraph(jambs_text(wood, making));
  const PageText text = jambs + PageText::paragraph(pair_text(wood, making, !jambs.empty()));
  if (text.empty()) return {};
  return {{"MARKING OUT", text}};
}

// ---- sections of a cabinet's sheet

/// What is worked at the bench together.
struct BenchWork {
  std::string_view name;
  std::vector<GroupKind> kinds;
};

/// What a group is a part of right below the whole, or itself.
const Group& outermost_of(const Assembly& wood, std::size_t group) {
  while (wood.groups[group].in.value_or(0) != 0)
    group = *wood.groups[group].in;
  return wood.groups[group];
}

bool is_of(const BenchWork& section, const Assembly& wood, std::size_t group) {
  const GroupKind kind = outermost_of(wood, group).kind;
  return std::find(section.kinds.begin(), section.kinds.end(), kind) != section.kinds.end();
}

/// Of each piece whether pages tell of it.
using Told = std::vector<bool>;

Told told_in(const BenchWork& section, const Assembly& wood) {
  Told told;
  for (const Piece& piece : wood.pieces)
    told.push_back(!lies_beside(piece) && is_of(section, wood, piece.group));
  return told;
}

/// What lies beside the work has a page of its own.
Told told_of_all(const Assembly& wood) {
  Told told;
  for (const Piece& piece : wood.pieces)
    told.push_back(!lies_beside(piece));
  return told;
}

/// The wood with all that is not told left as plain strips of which no page tells; marks and
/// numbers of joints stay.
Assembly only(const Told& told, Assembly wood) {
  for (std::size_t number = 0; number < wood.pieces.size(); ++number) {
    if (told[number]) continue;
    wood.pieces[number].features.clear();
    wood.pieces[number].role = Role::packing;
    wood.pieces[number].matter = Matter::board;
  }
  for (Joint& joint : wood.joints)
    if (!told[joint.enters] && !told[joint.receives])
      joint = Joint{JointKind::butt, joint.receives, joint.enters, joint.heading, {}, {}, {}, {}};
  return wood;
}

/// What is run on the pieces that are told.
Making only(const Told& told, Making making) {
  for (Operation& operation : making.operations)
    std::erase_if(operation.runs, [&](const Run& run) { return !told[run.piece]; });
  std::erase_if(making.operations, [](const Operation& it) { return it.runs.empty(); });
  return making;
}

PageParts parts_of(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  constexpr JoineryPart* kInOrder[] = {
      rod_page,         groove_page,  edge_rebate_page, moulding_page,   moulding_mitre_page,
      scribed_end_page, mortise_page, haunching_page,   tenon_page,      loose_tenon_page,
      lap_page,         mitre_page,   hole_page,        pin_page,        wedge_page,
      tail_page,        rebate_page,  raise_page,       panel_page,      glass_page,
      fittings_page,    leaf_page,    frame_page,       face_frame_page, cup_page};
  PageParts page;
  for (JoineryPart* part : kInOrder)
    append(page, part(wood, making, lengths));
  return page;
}

/// How the stiles of its frames are told apart: "STILES P Q, AC AD: left and right …".
PageParts stiles_page(const BenchWork& section, const Assembly& wood) {
  std::string pairs;
  std::size_t last = 0;
  for (const Piece& piece : wood.pieces) {
    if (piece.role != Role::stile || !is_of(section, wood, piece.group)) continue;
    pairs += (pairs.empty() ? "" : piece.group == last ? " " : ", ") + piece.mark;
    last = piece.group;
  }
  if (pairs.empty()) return {};
  return {{"STILES " + pairs + ": left and right, face edges together; lengths from the foot"}};
}

PageParts section_page(const BenchWork& section, const Assembly& wood, const Making& making,
                       const LengthPrinter& lengths) {
  const Told told = told_in(section, wood);
  Assembly its = only(told, wood);
  std::erase_if(its.fits, [&](const Fit& fit) { return !is_of(section, wood, fit.group); });
  PageParts page = stiles_page(section, wood);
  append(page, parts_of(its, only(told, making), lengths));
  for (PagePart& part : page) {
    join_first_line(part, lengths.page_width());
    part.section = section.name;
  }
  return page;
}

}  // namespace

PageParts joinery_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  const BenchWork kSections[] = {{"CASE", {GroupKind::cabinet, GroupKind::run, GroupKind::carcase}},
                                 {"FACE FRAME", {GroupKind::face_frame}},
                                 {"FRONTS", {GroupKind::leaf, GroupKind::pair, GroupKind::front}},
                                 {"DRAWERS", {GroupKind::drawer}}};
  PageParts page;
  if (!is_cabinet_work(wood)) {
    const Told told = told_of_all(wood);
    page = marking_page(wood, making);
    append(page, parts_of(only(told, wood), only(told, making), lengths));
    return page;
  }
  for (const BenchWork& section : kSections)
    append(page, section_page(section, wood, making, lengths));
  return page;
}

}  // namespace haunch
