#include <algorithm>
#include <tuple>
#include <vector>

#include "joinery_parts.h"
#include "machine_sets.h"
#include "report.h"

namespace haunch {
namespace {

/// A run, with all pieces that are marked alike.
struct MortiseRow {
  Marks in;
  std::string edge;
  std::string_view from;
  const Run* run;
  Marks takes;
  Marks joints;
};
/// What a machine is set to for a mortise, and how that is opened for wedges.
struct MortiseKey {
  const Operation* setting;
  std::optional<Flare> flare;

  friend bool operator==(const MortiseKey&, const MortiseKey&) = default;
};
using MortiseSets = std::vector<MachineSet<MortiseKey, std::vector<MortiseRow>>>;

bool marked_alike(const MortiseRow& a, const MortiseRow& b) {
  return std::tie(a.run->near, a.run->far, a.edge, a.from) ==
             std::tie(b.run->near, b.run->far, b.edge, b.from) &&
         near_from_shoulder(*a.run) == near_from_shoulder(*b.run);
}

void sort_rows(MortiseSets& sets) {
  for (auto& set : sets)
    std::stable_sort(set.rows.begin(), set.rows.end(),
                     [](const MortiseRow& a, const MortiseRow& b) {
                       return std::tie(a.from, a.in, a.edge, a.run->near) <
                              std::tie(b.from, b.in, b.edge, b.run->near);
                     });
}

/// Mortises, or the seats of haunches.
MortiseSets mortise_sets(const Assembly& wood, const Making& making, FeatureKind kind) {
  MortiseSets sets;
  each_run(making, kind, [&](const Operation& setting, const Run& run) {
    if (setting.cut == Cut::flare) return;
    const Piece& piece = wood.pieces[run.piece];
    const Joint& joint = wood.joints[*run.joint];
    auto& rows =
        rows_for(sets, MortiseKey{&setting, joint.mortise ? joint.mortise->flare : std::nullopt});
    MortiseRow row{{piece.mark},
                   place_of(piece, run),
                   word_of(run.from),
                   &run,
                   {wood.pieces[joint.enters].mark},
                   {joint_id(*run.joint)}};
    const auto same = std::find_if(rows.begin(), rows.end(), [&](const MortiseRow& other) {
      return marked_alike(other, row);
    });
    if (same == rows.end()) return rows.push_back(std::move(row));
    add_once(same->in, row.in.front());
    add_once(same->takes, row.takes.front());
    add_once(same->joints, row.joints.front());
  });
  sort_rows(sets);
  return sets;
}

PageText mortise_text(const MortiseKey& key, const LengthPrinter& lengths) {
  const Operation& its = *key.setting;
  const std::string depth = lengths.one(its.setting(SizeName::depth));
  const LengthPrinter fine = lengths.fine();
  std::string text = fine.one(its.setting(SizeName::width)) + " wide, ";
  text += its.through ? "right through " + depth + " of wood" : depth + " deep";
  text += ", " + fine.one(its.setting(SizeName::from_face)) + " from the face side";
  if (its.has(SizeName::radius))
    text += ", ends round by a cutter of " + lengths.one(its.setting(SizeName::radius) * 2);
  if (its.open_end) text += ", open at the end of its piece";
  PageText lines = PageText::paragraph(text);
  if (!key.flare) return lines;
  const std::string flare = "opened for wedges: " + lengths.one(key.flare->width) +
                            " more at each end where it comes out, running out to nothing " +
                            lengths.one(key.flare->depth) + " in";
  return lines + PageText::paragraph(flare);
}

/// The places of frames say for themselves that they are faces.
std::string place_heading(const std::vector<MortiseRow>& rows) {
  const bool faces = std::any_of(rows.begin(), rows.end(),
                                 [](const MortiseRow& row) { return row.edge.ends_with(" face"); });
  return faces ? "" : "edge";
}

PageText mortise_table(const std::vector<MortiseRow>& rows, ShoulderLine line,
                       const LengthPrinter& lengths) {
  TextTable table({"in", place_heading(rows), "from", "begins", "ends", "long", "square",
                   std::string(word_of(line)), "takes", "joint"});
  for (const MortiseRow& row : rows)
    table.add({Cell::of_mark(joined(row.in)), row.edge, std::string(row.from), row.run->near,
               *row.run->far, extent_printed(*row.run, lengths), *row.run->straight,
               near_from_shoulder(*row.run), Cell::of_mark(joined(row.takes)), joined(row.joints)});
  return PageText::table(table, lengths, 4);
}

/// One table, or one for each line that places are told from besides an end.
PageText mortise_tables(std::vector<MortiseRow> rows, const LengthPrinter& lengths) {
  PageText text;
  while (!rows.empty()) {
    const auto from_line = std::find_if(rows.begin(), rows.end(), [](const MortiseRow& row) {
      return row.run->from_shoulder.has_value();
    });
    const ShoulderLine line =
        from_line == rows.end() ? ShoulderLine::shoulder : from_line->run->from_shoulder->line;
    const auto rest = std::stable_partition(rows.begin(), rows.end(), [&](const MortiseRow& row) {
      return !row.run->from_shoulder || row.run->from_shoulder->line == line;
    });
    text += mortise_table({rows.begin(), rest}, line, lengths);
    rows.erase(rows.begin(), rest);
  }
  return text;
}

/// What depths count from, where the wood is worked there besides.
PageText depth_text(const Assembly& wood, const Making& making) {
  bool edges = false;
  bool faces = false;
  Marks works;
  each_run(making, FeatureKind::mortise, [&](const Operation&, const Run& run) {
    (run.side.into == 2 ? faces : edges) = true;
    for (const Feature& feature : wood.pieces[run.piece].features)
      for (const FeatureKind work :
           {FeatureKind::groove, FeatureKind::rebate, FeatureKind::moulding})
        if (feature.kind == work) add_once(works, "a " + std::string(word_of(work)));
  });
  if (works.empty()) return {};
  std::string any = works.front();
  for (std::size_t i = 1; i < works.size(); ++i)
    any += " or " + works[i];
  const std::string where = !faces ? "edge" : edges ? "edge or face" : "face";
  return PageText::paragraph("deep: from the " + where + " as it is before " + any +
                             " is worked there");
}

/// "shoulder: where it begins, told from there", of the lines that places are told from besides an
/// end.
PageText lines_text(const MortiseSets& sets) {
  Marks lines;
  for (const auto& [key, rows] : sets)
    for (const MortiseRow& row : rows)
      if (const auto& from = row.run->from_shoulder)
        add_once(lines, std::string(word_of(from->line)));
  std::string text;
  for (const std::string& line : lines)
    text += (text.empty() ? "" : ", ") + line;
  if (text.empty()) return {};
  return PageText::paragraph(text + ": where it begins, told from there");
}

}  // namespace

PageParts mortise_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  const MortiseSets sets = mortise_sets(wood, making, FeatureKind::mortise);
  if (sets.empty()) return {};
  PagePart page{"MORTISES"};
  bool any_round = false;
  bool any_squared = false;
  for (const auto& [key, rows] : sets) {
    const bool round = key.setting->has(SizeName::radius);
    any_round = any_round || round;
    any_squared = any_squared || !round;
    page.body += mortise_text(key, lengths) + mortise_tables(rows, lengths);
  }
  page.legends.push_back(depth_text(wood, making));
  page.legends.push_back(lines_text(sets));
  std::string square =
      "square: the widest tenon with square edges that goes in between the round ends";
  if (any_squared)
    square += "; for a wider one square the ends, or round the tenon's edges" +
              std::string(any_round ? " where the ends do not stay round" : "");
  page.legends.push_back(PageText::paragraph(square + "."));
  return {page};
}

PageParts haunching_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  PageText page;
  for (const auto& [key, rows] : mortise_sets(wood, making, FeatureKind::haunching)) {
    page += mortise_text(key, lengths);
    TextTable table({"in", "edge", "from", "begins", "ends", "long"});
    for (const MortiseRow& row : rows)
      table.add({Cell::of_mark(joined(row.in)), row.edge, std::string(row.from), row.run->near,
                 *row.run->far, extent_printed(*row.run, lengths)});
    page += PageText::table(table, lengths, 4);
  }
  if (page.empty()) return {};
  return {{"HAUNCHINGS, beside the mortises, deep from the same edge", page}};
}

}  // namespace haunch
