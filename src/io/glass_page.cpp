#include <algorithm>
#include <tuple>
#include <utility>
#include <vector>

#include "joinery_parts.h"
#include "machine_sets.h"
#include "polyhedron.h"
#include "report.h"

namespace haunch {
namespace {

bool is_bar(const Assembly& wood, const Run& run) {
  return wood.pieces[run.piece].role == Role::glazing_bar;
}

TextTable rebates_in(const Assembly& wood, const Making& making) {
  TextTable table({"rebate in", "edge", "from", "begins", "ends", "deep", "from face"});
  each_run(making, FeatureKind::glass_rebate, [&](const Operation& rebate, const Run& run) {
    if (is_bar(wood, run)) return;  // told with the bars: along all of them
    if (wood.pieces[run.piece].features[run.feature].cuts.empty()) return;  // told by its curve
    table.add_alike({mark_of(wood, run), place_of(wood.pieces[run.piece], run),
                     std::string(word_of(run.from)), run.near, run.far,
                     rebate.setting(SizeName::depth), rebate.setting(SizeName::from_face)});
  });
  return table;
}

/// Of sides that are alike one figure, else each that there is: "10, 6".
Cell each_once(const std::vector<Length>& sizes, const LengthPrinter& lengths) {
  std::vector<Length> seen;
  std::string words;
  for (const Length size : sizes) {
    if (std::find(seen.begin(), seen.end(), size) != seen.end()) continue;
    seen.push_back(size);
    words += (words.empty() ? "" : ", ") + lengths.one(size);
  }
  return seen.size() == 1 ? Cell(seen.front()) : Cell(words);
}

TextTable panes_in(const Assembly& wood, const LengthPrinter& lengths) {
  TextTable table(
      {"pane", "", "width", "height", "thick", "edge cover", "edge clearance", "bedding"});
  for (std::size_t number = 0; number < wood.pieces.size(); ++number) {
    const Piece& piece = wood.pieces[number];
    const Joint* joint = nullptr;
    std::vector<Length> covers;
    for (const Joint& its : wood.joints)
      if (its.enters == number && piece.matter == Matter::glass) {
        joint = &its;
        covers.push_back(*its.design.bite);
      }
    if (joint == nullptr) continue;
    table.add_alike({Cell::of_mark(piece.mark), piece.material, piece.blank[1], piece.blank[0],
                     piece.blank[2], each_once(covers, lengths), joint->design.bottom,
                     joint->design.bearing});
  }
  return table;
}

bool is_curved(const Piece& bead) {
  return std::any_of(bead.features.begin(), bead.features.end(),
                     [](const Feature& it) { return it.kind == FeatureKind::arch; });
}

/// From short point to short point of a bead, whose mitres go by the beads that it meets.
Length short_points(const Piece& bead) {
  Length length = bead.blank[0];
  for (const Feature& feature : bead.features)
    for (const Prism& prism : feature.prisms)
      if (feature.kind == FeatureKind::mitre) length -= bounds_of(prism).extent(0);
  return length;
}

/// Whether beads of two widths meet, whose mitres are not at 45 degrees. Those with a curved bead
/// are told with its arch.
bool has_unequal_beads(const Assembly& wood) {
  const auto any = [&](const auto& wanted) {
    return std::any_of(wood.pieces.begin(), wood.pieces.end(), [&](const Piece& piece) {
      return piece.role == Role::bead && wanted(piece);
    });
  };
  return !any(is_curved) && any([](const Piece& piece) {
    return short_points(piece) != piece.blank[0] - piece.blank[1] * 2;
  });
}

TextTable beads_in(const Assembly& wood) {
  TextTable table({"beads", "long point", "short point", "wide", "thick"});
  for (const Piece& piece : wood.pieces)
    if (piece.role == Role::bead && !is_curved(piece))
      table.add_alike({Cell::of_mark(piece.mark), piece.blank[0], short_points(piece),
                       piece.blank[1], piece.blank[2]});
  return table;
}

/// What is cut out of bars where they cross, bar by bar.
TextTable halvings_in(const Assembly& wood, const Making& making) {
  struct Halving {
    std::size_t bar, other;
    const Run* run;
    Length depth;
  };
  std::vector<Halving> halvings;
  each_run(making, FeatureKind::lap, [&](const Operation& lap, const Run& run) {
    if (!is_bar(wood, run)) return;
    const Joint& joint = wood.joints[*run.joint];
    halvings.push_back({run.piece, joint.enters == run.piece ? joint.receives : joint.enters, &run,
                        lap.setting(SizeName::depth)});
  });
  std::stable_sort(halvings.begin(), halvings.end(), [](const Halving& a, const Halving& b) {
    return std::tuple(a.bar, a.other, a.run->near) < std::tuple(b.bar, b.other, b.run->near);
  });
  TextTable table({"halved", "off the", "from", "begins", "ends", "deep", "crosses"});
  for (const Halving& it : halvings)
    table.add_alike({Cell::of_mark(wood.pieces[it.bar].mark),
                     it.run->side.from_high ? "back" : "face", std::string(word_of(it.run->from)),
                     it.run->near, it.run->far, it.depth,
                     Cell::of_mark(wood.pieces[it.other].mark)});
  return table;
}

/// The bars of one section.
struct BarSection {
  Length width, thickness, rebate, front;

  friend bool operator==(const BarSection&, const BarSection&) = default;
};

PageParts bars_part(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  std::vector<MachineSet<BarSection, Marks>> sections;
  each_run(making, FeatureKind::glass_rebate, [&](const Operation& rebate, const Run& run) {
    const Piece& piece = wood.pieces[run.piece];
    if (!is_bar(wood, run)) return;
    add_once(rows_for(sections, {piece.blank[1], piece.blank[2], rebate.setting(SizeName::depth),
                                 rebate.setting(SizeName::from_face)}),
             piece.mark);
  });
  if (sections.empty()) return {};
  PageText page;
  for (const auto& [section, marks] : sections)
    page +=
        PageText::hanging(joined(marks) + ": " + lengths.one(section.width) + " wide, " +
                          lengths.one(section.thickness) + " thick; both edges rebated " +
                          lengths.one(section.rebate) + " deep from " + lengths.one(section.front) +
                          " behind the face to the back, which " + "leaves a tongue of " +
                          lengths.one(section.width - section.rebate * 2));
  const TextTable halvings = halvings_in(wood, making);
  if (!halvings.empty())
    page += PageText::table(halvings, lengths, 2) +
            PageText::paragraph(
                "off the face in two steps: the width of the bar that goes through, as deep as "
                "its face, and in the middle of that its tongue; cut before the rebates are "
                "worked, and put the bars together before they go into the frame");
  return {{"GLAZING BARS", page}};
}

/// The uprights whose rebates end along an arch, and where these end at their lowest.
std::string rising_text(const Assembly& wood, const LengthPrinter& lengths) {
  std::vector<std::pair<std::string, std::string>> ends;  // how high, and the marks
  for (const Piece& piece : wood.pieces)
    for (const Feature& feature : piece.features) {
      if (feature.kind != FeatureKind::glass_rebate || feature.cuts.empty() ||
          feature.prisms.empty())
        continue;
      const std::string high = lengths.one(feature.cuts.front().high[0]);
      const auto same =
          std::find_if(ends.begin(), ends.end(), [&](const auto& it) { return it.first == high; });
      if (same == ends.end())
        ends.emplace_back(high, piece.mark);
      else
        same->second += " " + piece.mark;
    }
  std::string text;
  for (const auto& [high, marks] : ends)
    text.append(text.empty() ? "along the arch they end in a curve, at its lowest " : ", ")
        .append(high)
        .append(" from the foot in ")
        .append(marks);
  return text;
}

}  // namespace

PageParts glass_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  const TextTable panes = panes_in(wood, lengths);
  if (panes.empty()) return {};
  const TextTable rebates = rebates_in(wood, making);
  PageText page;
  if (!rebates.empty())
    page += PageText::table(rebates, lengths, 2) +
            PageText::paragraph(
                "open to the back; deep from the edge, stopped as given, and the corners squared "
                "with a "
                "chisel") +
            PageText::paragraph(rising_text(wood, lengths));
  page += PageText::table(panes, lengths, 2) + PageText::table(beads_in(wood), lengths, 2);
  if (has_unequal_beads(wood))
    page += PageText::paragraph(
        "where beads of two widths meet, strike the mitre from the corner of the rebates to that "
        "of the sight edges: it is not at 45 degrees");
  const PageText how = PageText::paragraph(
      "glass on setting blocks as thick as the edge clearance, at the quarter points of "
      "its foot; bedded on both faces; beads mitred and pinned at most " +
      in_words(lengths.unit() == Unit::mm ? Length::from_mm(150) : Length::from_inch_parts(6),
               lengths.unit()) +
      " apart, as glazing sprigs are");
  PageParts parts = bars_part(wood, making, lengths);
  PageParts glass{{"GLASS, put in from the back", page, {how}}};
  append(parts, std::move(glass));
  return parts;
}

}  // namespace haunch
