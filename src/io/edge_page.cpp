#include <algorithm>
#include <map>
#include <set>
#include <vector>

#include "cabinet_work.h"
#include "edge_words.h"
#include "joinery_parts.h"
#include "machine_sets.h"
#include "report.h"

namespace haunch {
namespace {

/// A line for each setting that makes these, and below it where it is run. `where` gives nothing
/// for a run that is told elsewhere.
template <typename Says, typename Where>
PageText settings_text(const Assembly& wood, const Making& making, FeatureKind makes, Says says,
                       Where where) {
  PageText text;
  for (const Operation& operation : making.operations) {
    if (operation.makes != makes) continue;
    const std::string runs = runs_text(wood, operation, where);
    if (runs.empty()) continue;
    text += PageText::paragraph(says(operation));
    text += PageText::paragraph(runs, 4);
  }
  return text;
}

/// What panels were set out to have at their sides and ends.
struct Bedded {
  std::string panels, joint;  // marks of pieces, and the first joint, by which a trial is asked for
  Clearances sides, ends;
};

/// In joints of a kind, in the order of the pieces.
std::vector<Bedded> bedded_in(const Assembly& wood, JointKind kind) {
  std::vector<Bedded> of_pieces(wood.pieces.size());
  for (std::size_t number = 0; number < wood.joints.size(); ++number) {
    const Joint& joint = wood.joints[number];
    if (joint.kind != kind || joint.arched) continue;
    const bool at_end = joint.heading.axis == wood.pieces[joint.enters].place.axes[0];
    Bedded& its = of_pieces[joint.enters];
    if (its.joint.empty()) its.joint = joint_id(number);
    its.panels = wood.pieces[joint.enters].mark;
    (at_end ? its.ends : its.sides) = joint.design;
  }
  std::erase_if(of_pieces, [](const Bedded& its) { return !its.sides.bottom && !its.ends.bottom; });
  return of_pieces;
}

TextTable panel_table(const Assembly& wood, JointKind kind, std::vector<std::string> titles) {
  TextTable table(std::move(titles));
  for (const auto& [panel, joint, sides, ends] : bedded_in(wood, kind)) {
    std::vector<Cell> row{Cell::of_mark(panel), sides.bottom, sides.bite, ends.bottom, ends.bite};
    if (kind == JointKind::panel_in_groove) row.push_back(Cell::of_fit(ends.cheeks));
    row.push_back(Cell::of_mark(joint));
    table.add_alike(std::move(row));
  }
  return table;
}

/// "AB AM: sides 1 free, 5 in; ends 1 free, 5 in; play 0.1 (J35 J52)"
PageText panel_lines(const Assembly& wood, JointKind kind, const LengthPrinter& lengths) {
  struct Line {
    std::string says;
    Marks panels, joints;
  };
  std::vector<Line> lines;
  const auto edges = [&](std::string_view which, const Clearances& its) {
    if (!its.bottom) return std::string();
    return " " + std::string(which) + " " + lengths.one(*its.bottom) + " free, " +
           lengths.one(its.bite.value_or(Length())) + " in;";
  };
  for (const auto& [panel, joint, sides, ends] : bedded_in(wood, kind)) {
    std::string says = ":" + edges("sides", sides) + edges("ends", ends);
    if (const auto play = ends.cheeks ? ends.cheeks : sides.cheeks)
      says += " play " + lengths.fine().one(*play);
    auto same =
        std::find_if(lines.begin(), lines.end(), [&](const Line& it) { return it.says == says; });
    if (same == lines.end()) same = lines.insert(lines.end(), {says, {}, {}});
    same->panels.push_back(panel);
    same->joints.push_back(joint);
  }
  PageText text;
  for (const Line& line : lines)
    text += PageText::hanging(joined(line.panels) + line.says + " (" + joined(line.joints) + ")");
  return text;
}

/// From which edge a groove in a face is set, or from the face side one in an edge.
std::string place_across(const Operation& groove, const LengthPrinter& lengths) {
  if (groove.has(SizeName::from_back))
    return lengths.one(groove.setting(SizeName::from_back)) + " from the rear edge";
  if (groove.has(SizeName::from_edge))
    return lengths.one(groove.setting(SizeName::from_edge)) + " from the lower edge";
  return lengths.fine().one(groove.setting(SizeName::from_face)) + " from the face side";
}

}  // namespace

PageParts groove_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  bool any_stopped = false;
  const auto setting = [&](const Operation& groove) {
    const LengthPrinter fine = lengths.fine();
    return fine.one(groove.setting(SizeName::width)) + " wide, " +
           lengths.one(groove.setting(SizeName::depth)) + " deep, " + place_across(groove, lengths);
  };
  const auto where = [&](const Run& run, const Piece& piece) {
    if (piece.features[run.feature].cuts.empty()) return std::string();  // told by its curve
    if (run.extent() == piece.blank[0]) return edge_of(run, piece);
    any_stopped = true;
    return edge_of(run, piece) + ", stopped: from " + lengths.one(run.near) + " to " +
           lengths.one(*run.far) + (is_upright(piece) ? " from the foot," : " from the left end,");
  };
  const PageText page = settings_text(wood, making, FeatureKind::groove, setting, where);
  if (page.empty()) return {};
  return {
      {std::string("GROOVES, the whole length") + (any_stopped ? " unless they are stopped" : ""),
       page}};
}

PageParts edge_rebate_page(const Assembly& wood, const Making& making,
                           const LengthPrinter& lengths) {
  const auto setting = [&](const Operation& rebate) {
    const std::string deep = lengths.one(rebate.setting(SizeName::depth)) + " deep ";
    const std::string wide = lengths.one(rebate.setting(SizeName::width)) + " wide from the ";
    return rebate.has(SizeName::from_back)
               ? deep + "in the inner face, " + wide + "rear edge"
               : deep + "from the edge, " + wide + "back, leaving " +
                     lengths.one(rebate.setting(SizeName::from_face)) + " at the face side";
  };
  const auto where = [](const Run& run, const Piece& piece) {
    const bool of_back = size_of(piece.features[run.feature], SizeName::from_back).has_value();
    return run.side.into == 1 && !of_back ? edge_of(run, piece) : std::string();
  };
  const PageText page = settings_text(wood, making, FeatureKind::rebate, setting, where);
  if (page.empty()) return {};
  return {{std::string("REBATES of ") + (is_cabinet_work(wood) ? "case and frames" : "the frame") +
               ", at the back, the whole length",
           page}};
}

PageParts moulding_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  PageText page = settings_text(
      wood, making, FeatureKind::moulding,
      [&](const Operation& moulding) { return moulding_text(moulding, lengths); }, moulded_edge);
  if (page.empty()) return {};
  bool mitred = false;
  each_run(making, FeatureKind::moulding_mitre,
           [&](const Operation&, const Run&) { mitred = true; });
  return {{"MOULDINGS, the whole length" + std::string(mitred ? "" : ", after the ends are coped"),
           page}};
}

/// Where a mitre meets a moulding along an arch, and so is not at 45 degrees.
std::string mitres_over_arch(const Assembly& wood, const std::vector<const Run*>& runs,
                             const LengthPrinter& lengths) {
  std::string text;
  for (const Run* run : runs) {
    const Feature& feature = wood.pieces[run->piece].features[run->feature];
    const auto rise = size_of(feature, SizeName::rise);
    if (!rise) continue;
    text += (text.empty() ? "beside the arch the mitre rises " : ", ") + lengths.one(*rise) +
            " in " + wood.pieces[run->piece].mark;
  }
  return text.empty() ? text : text + " from the edge to its bottom, not at 45 degrees";
}

PageParts moulding_mitre_page(const Assembly& wood, const Making& making,
                              const LengthPrinter& lengths) {
  std::vector<const Run*> runs;  // in the edges that the shoulders come to, in order of the joints
  Length cut_away;               // of one leaf all the same
  each_run(making, FeatureKind::moulding_mitre, [&](const Operation& operation, const Run& run) {
    if (run.side.into == 0) return;
    cut_away = operation.setting(SizeName::depth);
    runs.push_back(&run);
  });
  if (runs.empty()) return {};
  std::stable_sort(runs.begin(), runs.end(),
                   [](const Run* a, const Run* b) { return a->joint < b->joint; });
  TextTable table({"in", "edge", "from", "begins", "ends", "deep", "mitred at", "takes"});
  for (const Run* run : runs) {
    const Piece& receives = wood.pieces[run->piece];
    const bool at_foot = run->near == Length();
    const bool at_head = run->far == receives.blank[0];
    table.add({Cell::of_mark(receives.mark), place_of(receives, *run),
               is_upright(receives) ? "foot" : "left end", run->near, *run->far, cut_away,
               std::string(at_foot   ? "its end"
                           : at_head ? "its beginning"
                                     : "both"),
               Cell::of_mark(wood.pieces[wood.joints[*run->joint].enters].mark)});
  }
  const std::string by = lengths.one(cut_away);
  const PageText how = PageText::paragraph(
      "The edge is cut away through the whole thickness, for the shoulders are set back on "
      "both faces. begins, ends: at the edge, which is the sight edge; deep: from there. At a "
      "mitred end the cut slopes at 45 degrees, through the whole thickness too, " +
      by +
      " in at its bottom. What comes there is mitred to it at its moulded edges, also "
      "through its whole thickness: at "
      "the edge from " +
      by + " behind its shoulder, running out to the shoulder " + by +
      " in from the edge. Mortises and grooves first, then the mouldings, then cut them "
      "away.");
  return {{"MOULDINGS CUT AWAY for the shoulders",
           PageText::table(table, lengths, 2) +
               PageText::paragraph(mitres_over_arch(wood, runs, lengths)),
           {how}}};
}

namespace {

/// What flat ends are fitted over, and by how much one side of them is longer.
std::string scribed_text(const Shoulders& shoulders, const Feature& cut,
                         const LengthPrinter& lengths) {
  const EndShoulders& end = shoulders.low ? *shoulders.low : *shoulders.high;
  const std::string by = lengths.one(end.line - std::min(end.face, end.back));
  switch (shoulders.line) {
    case ShoulderLine::face_shoulder:
      return "at the back " + by +
             " longer at each end, and fills the rebate there; the face side is cut back so far, " +
             lengths.one(cut.cuts.front().extent(2)) + " into the thickness";
    case ShoulderLine::sight_line:
      return "coped over the mouldings on both faces, which makes them " + by +
             " longer there at each end than between";
    case ShoulderLine::back_shoulder:
    case ShoulderLine::shoulder:
      break;
  }
  return "coped over the moulding at the face side, which makes that " + by +
         " longer at each end than the back";
}

/// Both lengths of a piece, that between the lines that its dowels and tenons are told from first.
TextTable scribed_table(ShoulderLine line) {
  switch (line) {
    case ShoulderLine::face_shoulder:
      return TextTable({"on", "", "face shoulders", "back shoulders"});
    case ShoulderLine::sight_line:
      return TextTable({"on", "", "sight lines", "over the copes"});
    case ShoulderLine::back_shoulder:
    case ShoulderLine::shoulder:
      break;
  }
  return TextTable({"on", "", "back shoulders", "face shoulders"});
}

}  // namespace

PageParts scribed_end_page(const Assembly& wood, const Making& making,
                           const LengthPrinter& lengths) {
  std::map<std::string, std::set<std::size_t>> sets;  // pieces, by what is told of their ends
  each_run(making, FeatureKind::scribed_end, [&](const Operation&, const Run& run) {
    const Feature& cut = wood.pieces[run.piece].features[run.feature];
    sets[scribed_text(making.shoulders[run.piece], cut, lengths)].insert(run.piece);
  });
  PageText page;
  for (const auto& [text, pieces] : sets) {
    const ShoulderLine line = making.shoulders[*pieces.begin()].line;
    TextTable table = scribed_table(line);
    for (const std::size_t number : pieces) {
      const Piece& piece = wood.pieces[number];
      const Shoulders& its = making.shoulders[number];
      const Length longer = std::max(its.between(&EndShoulders::face, piece.blank[0]),
                                     its.between(&EndShoulders::back, piece.blank[0]));
      table.add({Cell::of_mark(piece.mark), piece.name,
                 its.between(&EndShoulders::line, piece.blank[0]), longer});
    }
    page += PageText::paragraph(text);
    page += PageText::table(table, lengths, 4);
  }
  if (page.empty()) return {};
  return {{"ENDS, fitted over the edges that they stand on", page}};
}

PageParts rebate_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  const auto setting = [&](const Operation& rebate) {
    return lengths.one(rebate.setting(SizeName::width)) + " wide, " +
           lengths.fine().one(rebate.setting(SizeName::depth)) + " deep";
  };
  const auto where = [](const Run& run, const Piece& piece) {
    return piece.role == Role::panel ? face_of(run, piece) : std::string();
  };
  const PageText page = settings_text(wood, making, FeatureKind::rebate, setting, where);
  if (page.empty()) return {};
  return {{"REBATES, all round", page}};
}

PageParts raise_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  PageText page = settings_text(
      wood, making, FeatureKind::raise,
      [&](const Operation& raise) { return raise_text(raise, lengths); }, face_of);
  if (page.empty()) return {};
  const PageText how = PageText::paragraph(
      "The ends first, then the long edges, so that what breaks out at the corners is taken off.");
  return {{"RAISED PANELS, all round", page, {how}}};
}

PageParts panel_page(const Assembly& wood, const Making&, const LengthPrinter& lengths) {
  std::vector<std::string> titles{"panels", "side gap", "sides in", "end gap", "ends in"};
  titles.emplace_back("joint");
  const TextTable bedded = panel_table(wood, JointKind::panel_in_rebate, titles);
  titles.insert(titles.end() - 1, "play");
  const TextTable grooved = panel_table(wood, JointKind::panel_in_groove, titles);
  const bool in_lines = is_cabinet_work(wood);  // whose sections have few each
  const auto told = [&](const TextTable& table, JointKind kind) {
    return in_lines ? panel_lines(wood, kind, lengths) : PageText::table(table, lengths, 2);
  };
  PageParts page;
  if (!grooved.empty())
    page.push_back({in_lines
                        ? "PANELS in grooves"
                        : "PANELS in their grooves; in: how deep the edge stands in the groove",
                    told(grooved, JointKind::panel_in_groove)});
  if (!bedded.empty())
    page.push_back({"PANELS in their rebates; in: how far they lie on the wood at the face side",
                    told(bedded, JointKind::panel_in_rebate)});
  return page;
}

}  // namespace haunch
