#include <algorithm>
#include <utility>
#include <vector>

#include "joinery_parts.h"
#include "machine_sets.h"

namespace haunch {
namespace {

/// "B 23.25 deep from the face side"
std::string meeting_rebate_text(const Piece& stile, const Box& cut, const LengthPrinter& lengths) {
  const bool at_back = cut.high[2] == stile.blank[2];
  return stile.mark + " " + lengths.fine().one(cut.extent(2)) + " deep " +
         (at_back ? "at the back" : "from the face side");
}

std::string meeting_text(const Assembly& wood, const Fit& meeting, const LengthPrinter& lengths) {
  const Length gap = meeting.room.across();
  if (meeting.meets != Meets::rebate) return "square edges, " + lengths.one(gap) + " apart";
  std::string rebates;
  for (const Piece& piece : wood.pieces)
    for (const Feature& feature : piece.features)
      if (feature.kind == FeatureKind::meeting_rebate)
        rebates += (rebates.empty() ? "" : ", ") +
                   meeting_rebate_text(piece, feature.cuts.front(), lengths);
  const std::string first = meeting.group == neighbours_of(wood, meeting).right ? "right" : "left";
  return "rebates " + lengths.one(meeting.lap.across() + gap) +
         " wide along the outer edges, the whole length: " + rebates + ". The " + first +
         " leaf laps before the other and opens first; " + lengths.one(gap) +
         " between their edges, " + lengths.fine().one(meeting.behind) + " in the thickness";
}

/// "left edge of A": of a rebate along the outside of a piece.
std::string edge_text(const Piece& piece, const WorkedSide& side) {
  std::string edge = edge_name(piece, !side.from_high) + " edge";
  if (is_upright(piece) && side.into == 0) edge = side.from_high ? "top end" : "foot";
  return edge + " of " + piece.mark;
}

/// The gaps along a side of an opening that was measured all round, and what is planed off for
/// them.
void add_found(TextTable& table, std::string side, const std::array<Length, 3>& places, Length room,
               bool follow) {
  const std::array<Length, 3> gaps = gaps_along(places, room, follow);
  std::vector<Cell> cells{std::move(side), gaps[0], gaps[1], gaps[2]};
  const Taper taper = taper_along(places, follow);
  if (follow) cells.insert(cells.end(), {Cell(taper.first), Cell(taper.last)});
  table.add(std::move(cells));
}

PageParts found_page(const Assembly& wood, const LengthPrinter& lengths) {
  const Fit* fit = fit_in_opening(wood);
  if (fit == nullptr || !fit->found) return {};
  const AsFound& found = *fit->found;
  const auto titles = [&](const std::string& first, const std::string& last) {
    std::vector<std::string> all{"gap", first, "middle", last};
    if (found.follow) all.insert(all.end(), {"plane off " + first, "and " + last});
    return all;
  };
  TextTable sides(titles("head", "foot")), ends(titles("left", "right"));
  add_found(sides, "left", found.left, fit->room.left, found.follow);
  add_found(sides, "right", found.right, fit->room.right, found.follow);
  add_found(ends, "head", found.head, fit->room.head, found.follow);
  add_found(ends, "foot", found.foot, fit->room.foot, found.follow);
  const bool wall = fit->stands == StandsIn::wall;
  const PageText body =
      PageText::table(sides, lengths, 2) + PageText::table(ends, lengths, 2) +
      PageText::hanging(found.follow
                            ? "plane off: after glue-up, from the corners named, straight from one "
                              "to the other; all else is told from the leaf before that"
                            : "") +
      PageText::hanging("no tape tells what is plumb: hold a level to the jambs before it is hung");
  return {{std::string("OPENING AS FOUND, the gap where it was measured") +
               (wall ? ", for packing" : ""),
           body}};
}

PageParts lip_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  PageText page;
  for (const Operation& rebate : making.operations) {
    if (rebate.makes != FeatureKind::lip_rebate) continue;
    std::string where;
    for (const Run& run : rebate.runs)
      where += (where.empty() ? "" : ", ") + edge_text(wood.pieces[run.piece], run.side);
    page += PageText::hanging(lengths.one(rebate.setting(SizeName::width)) + " wide, " +
                              lengths.one(rebate.setting(SizeName::depth)) +
                              " deep from the back: " + where);
  }
  if (page.empty()) return {};
  const auto part = [](PageText body) {
    return PageParts{
        {"LIP, left by rebates round the back, worked after glue-up", std::move(body)}};
  };
  const Fit* fit = fit_in_opening(wood);
  if (fit == nullptr || fit->meets != Meets::rebate) return part(page);
  const Sides& lap = fit->lap;
  std::string over;
  const auto add = [&](const char* side, Length length) {
    if (length > Length())
      over += (over.empty() ? "" : ", ") + std::string(side) + " " + lengths.one(length);
  };
  add("left", lap.left);
  add("right", lap.right);
  add("head", lap.head);
  add("foot", lap.foot);
  return part(page + PageText::hanging("the lip is " + lengths.one(fit->lip) +
                                       " thick and lies over the frame " + over));
}

/// "radius 863.6, 748.2 along it"
std::string curve_text(const Feature& feature, const LengthPrinter& lengths) {
  return "radius " + lengths.one(*size_of(feature, SizeName::radius)) + ", " +
         lengths.one(*size_of(feature, SizeName::along_curve)) + " along the curve";
}

/// Of a blank whose lower edge the curve does not spring from, because its width is a whole figure.
std::string springing_text(const Piece& rail, const Feature& arch, const LengthPrinter& lengths) {
  const Length crown = rail.blank[1] - *size_of(arch, SizeName::at_crown);
  const Length springing = crown - *size_of(arch, SizeName::rise);
  if (springing == Length()) return {};
  return "; the curve is at the shoulders " + lengths.one(springing) +
         " above the blank's lower edge, at the crown " + lengths.one(crown) + " above it";
}

std::string arch_text(const Piece& rail, const Feature& arch, const LengthPrinter& lengths) {
  if (const auto side = size_of(arch, SizeName::side))
    return "underside of " + rail.mark + ": half of an arch, " + curve_text(arch, lengths) +
           "; the blank is " + lengths.one(rail.blank[1]) +
           " wide, the curve springs at the outer stile " +
           lengths.one(rail.blank[1] - *size_of(arch, SizeName::at_crown) -
                       *size_of(arch, SizeName::rise)) +
           " above its lower edge and ends at the meeting stile " + lengths.one(*side) +
           " above it; " + lengths.one(*size_of(arch, SizeName::at_crown)) +
           " are left between the curves";
  const Length rise = *size_of(arch, SizeName::rise);
  return "underside of " + rail.mark + ": rise " + lengths.one(rise) + " over " +
         lengths.one(*size_of(arch, SizeName::span)) + " from stile to stile, " +
         curve_text(arch, lengths) + "; the blank is " + lengths.one(rail.blank[1]) + " wide, " +
         lengths.one(*size_of(arch, SizeName::at_crown)) + " are left at the crown" +
         springing_text(rail, arch, lengths);
}

std::string groove_text(const Piece& rail, const Feature& groove, const LengthPrinter& lengths) {
  const bool open = groove.kind != FeatureKind::groove;
  return std::string(open ? "rebate, open to the back, " : "groove ") + "along it in " + rail.mark +
         ": " + lengths.one(*size_of(groove, SizeName::width)) + " wide, " +
         lengths.one(*size_of(groove, SizeName::depth)) + " deep, " +
         lengths.one(*size_of(groove, SizeName::from_face)) +
         " from the face side; its bottom has " + curve_text(groove, lengths);
}

/// "moulding along it in C: its border on the face has radius 781.0, …"
std::string moulding_text(const Piece& rail, const Feature& moulding,
                          const LengthPrinter& lengths) {
  const Feature& arch =
      *std::find_if(rail.features.begin(), rail.features.end(),
                    [](const Feature& it) { return it.kind == FeatureKind::arch; });
  const Length border = *size_of(arch, SizeName::radius) + *size_of(moulding, SizeName::width);
  return "moulding along it in " + rail.mark + ": the stiles', its border on the face has radius " +
         lengths.one(border);
}

/// A curved bead: what it is struck to, what it is cut from, and how it is mitred.
std::string bead_text(const Piece& bead, const LengthPrinter& lengths) {
  std::string text = bead.name + " " + bead.mark + ": sawn from " + lengths.one(bead.blank[0]) +
                     " by " + lengths.one(bead.blank[1]) + "; ";
  for (const Feature& feature : bead.features) {
    const bool under = feature.kind == FeatureKind::arch;
    if (under || feature.kind == FeatureKind::arched_top)
      text += (under ? "underside radius " : ", top radius ") +
              lengths.one(*size_of(feature, SizeName::radius));
    const auto side = size_of(feature, SizeName::side);
    if (feature.kind != FeatureKind::arched_top || !side) continue;
    text += "; mitred with the side beads from corner to corner";
    if (size_of(feature, SizeName::rise)) return text;
    text += ", ";
    text += *side == Length() ? "level" : lengths.one(*side) + " up in its width";
  }
  return text;
}

/// What stands in the arch, and how.
std::string bedded_text(const Piece& piece, const Joint& joint, const LengthPrinter& lengths) {
  const bool groove = joint.kind == JointKind::panel_in_groove;
  return piece.mark + " has a gap of " + lengths.one(*joint.design.bottom) + " below the " +
         (groove ? "groove" : "rebate") + "'s bottom there, and stands " +
         lengths.one(*joint.design.bite) + " in it";
}

std::string top_text(const Piece& panel, const Feature& top, const LengthPrinter& lengths) {
  const Length left = *size_of(top, SizeName::side);
  const std::string curve = "top of " + panel.mark + ": " + curve_text(top, lengths);
  if (const auto rise = size_of(top, SizeName::rise))
    return curve + "; its left side is " + lengths.one(left) + " high, its right one " +
           lengths.one(left + *rise);
  return curve + "; its sides are " + lengths.one(left) + " high";
}

/// Where a curve over a leaf is struck from: a pair has one curve over both.
std::string_view middle_words(const Assembly& wood) {
  return fits_that_stand(wood, StandsIn::beside).empty() ? "the middle of the leaf"
                                                         : "the middle between the leaves";
}

/// How the curve of a leaf's top is struck. `top`: the piece that tells of it.
std::string head_text(const Assembly& wood, const Piece& top, const Feature& head,
                      const LengthPrinter& lengths) {
  const Length centre = *size_of(head, SizeName::centre_from_foot);
  std::string marks;
  for (const Piece& piece : wood.pieces)
    for (const Feature& feature : piece.features)
      if (feature.kind == head.kind && piece.group == top.group)
        marks += (marks.empty() ? "" : " ") + piece.mark;
  return "top of " + marks + ": " + curve_text(head, lengths) + ", struck from " +
         std::string(middle_words(wood)) + " " + lengths.one(centre < Length() ? -centre : centre) +
         (centre < Length() ? " below" : " above") + " its foot; it rises " +
         lengths.one(*size_of(head, SizeName::rise)) + " over " +
         lengths.one(*size_of(head, SizeName::span));
}

/// What is left square until after glue-up; stiles that are alike together.
std::string sawing_text(const Assembly& wood, const Piece& top, const Feature& head,
                        const LengthPrinter& lengths) {
  std::vector<std::pair<std::string, std::string>> stiles;
  for (const Piece& piece : wood.pieces)
    for (const Feature& feature : piece.features) {
      const auto side = size_of(feature, SizeName::side);
      if (!side || feature.kind != head.kind || piece.group != top.group) continue;
      const std::string sizes =
          " " + lengths.one(piece.blank[0]) + " long, " + lengths.one(*side) + " at the outer edge";
      if (!stiles.empty() && stiles.back().second == sizes)
        stiles.back().first += " " + piece.mark;
      else
        stiles.emplace_back(piece.mark, sizes);
    }
  std::string told;
  for (const auto& [marks, sizes] : stiles)
    told.append(told.empty() ? "" : "; ").append(marks).append(sizes);
  return "tops stay square until the frame is glued up, then rail, haunches and stiles are sawn "
         "to the curve in one: " +
         told;
}

std::string opening_text(const Assembly& wood, const Feature& head, const LengthPrinter& lengths) {
  const Fit& fit = *fit_in_opening(wood);
  const std::string arch =
      "opening " + std::string(fit.meets == Meets::overlay ? "behind" : "above") + " it: rise " +
      lengths.one(*size_of(head, SizeName::opening_rise)) + " over " +
      lengths.one(*size_of(head, SizeName::opening_span)) + ", radius " +
      lengths.one(*size_of(head, SizeName::opening_radius)) + " about the same middle; ";
  if (fit.meets == Meets::overlay)
    return arch + lengths.one(fit.lap.head) + " of lap over it square to the curve";
  return arch + lengths.one(fit.room.head) + " of gap " +
         (fit.meets == Meets::rebate ? "behind the lip, " : "") +
         "square to the curve, and so no less upright";
}

/// Whether it is worked along a curve, and has no straight part.
bool is_along_arch(const Feature& feature) {
  return (feature.kind == FeatureKind::groove || feature.kind == FeatureKind::rebate ||
          feature.kind == FeatureKind::glass_rebate) &&
         feature.cuts.empty() && size_of(feature, SizeName::radius);
}

PageParts arch_page(const Assembly& wood, const LengthPrinter& lengths) {
  const std::vector<std::string> lines = arch_lines(wood, lengths);
  if (lines.empty()) return {};
  PageText page;
  for (const std::string& line : lines)
    page += PageText::hanging(line);
  return {{"ARCHES", page}};
}

}  // namespace

std::vector<std::string> arch_lines(const Assembly& wood, const LengthPrinter& lengths) {
  std::vector<std::string> lines;
  bool arched = false;
  bool opening_told = false;  // once for both leaves of a pair
  const auto add = [&](std::string text) { lines.push_back(std::move(text)); };
  for (const Piece& piece : wood.pieces)
    for (const Feature& feature : piece.features) {
      if (feature.kind == FeatureKind::arched_head && size_of(feature, SizeName::span)) {
        add(head_text(wood, piece, feature, lengths));
        add(sawing_text(wood, piece, feature, lengths));
        if (!std::exchange(opening_told, true)) add(opening_text(wood, feature, lengths));
        arched = true;
      }
      if (piece.role == Role::bead) {
        if (feature.kind == FeatureKind::arch) add(bead_text(piece, lengths));
        continue;
      }
      if (feature.kind == FeatureKind::arch) add(arch_text(piece, feature, lengths));
      if (is_along_arch(feature)) add(groove_text(piece, feature, lengths));
      if (feature.kind == FeatureKind::moulding && size_of(feature, SizeName::tolerance))
        add(moulding_text(piece, feature, lengths));
      if (feature.kind == FeatureKind::arched_top) add(top_text(piece, feature, lengths));
      arched = arched || feature.kind == FeatureKind::arch;
    }
  for (const Joint& joint : wood.joints)
    if (joint.arched && joint.design.bite)
      add(bedded_text(wood.pieces[joint.enters], joint, lengths));
  if (!arched) lines.clear();
  return lines;
}

PageParts leaf_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  PageParts page = found_page(wood, lengths);
  append(page, arch_page(wood, lengths));
  append(page, lip_page(wood, making, lengths));
  for (const Fit* meeting : fits_that_stand(wood, StandsIn::beside))
    page.push_back({"MEETING STILES", PageText::paragraph(meeting_text(wood, *meeting, lengths))});
  return page;
}

}  // namespace haunch
