#include "report_page.h"

#include <algorithm>
#include <array>
#include <utility>

#include "joinery_page.h"
#include "materials.h"
#include "run_page.h"
#include "season_page.h"
#include "text_table.h"
#include "together_page.h"
#include "tolerance_page.h"
#include "with_it_page.h"

namespace haunch {
namespace {

// ---- head

std::string verdict_text(std::int64_t checks, std::int64_t failed, std::int64_t cautions) {
  const std::string all = std::to_string(checks);
  if (failed == 0 && cautions == 0) return "all " + all + " checks pass";
  std::string text = std::to_string(failed) + " of " + all + " checks fail";
  if (failed == 0) text = all + " checks, none fails";
  if (cautions > 0)
    text += ", " + std::to_string(cautions) + (cautions == 1 ? " caution" : " cautions");
  return text;
}

std::string opening_text(const Assembly& wood, const LengthPrinter& lengths) {
  const Fit* fit = fit_in_opening(wood);
  if (fit == nullptr) return {};
  const auto& p = lengths;
  const std::string which = fit->stands == StandsIn::wall ? "wall opening " : "opening ";
  const bool overlay = fit->meets == Meets::overlay;
  const Sides& sides = overlay ? fit->lap : fit->room;
  const std::string largest = !fit->found          ? ""
                              : fit->found->follow ? "box round the "
                                                   : "largest square in the ";
  return largest + which + p.one(fit->width) + " x " + p.one(fit->height) +
         (overlay ? ", the leaf lies over it left " : ", gaps left ") + p.one(sides.left) +
         ", right " + p.one(sides.right) + ", head " + p.one(sides.head) + ", foot " +
         p.one(sides.foot);
}

/// "left leaf 672.5 wide, right leaf 660.5": of a pair, whose own width is over both.
std::string leaf_widths_text(const Assembly& wood, const LengthPrinter& lengths) {
  std::string text;
  for (const Fit* meeting : fits_that_stand(wood, StandsIn::beside)) {
    const Neighbours pair = neighbours_of(wood, *meeting);
    const auto width = [&](std::size_t group) {
      return lengths.one(placed_blanks(wood, group).extent(0));
    };
    text += "left leaf " + width(pair.left) + " wide, right leaf " + width(pair.right);
  }
  return text;
}

/// ", white oak; panels of ash"
std::string species_text(const OfRoles<std::string>& species) {
  std::string text = species.all.empty() ? "" : ", " + species.all;
  for (const auto& [role, name] : species.own)
    text.append(text.empty() ? ", " : "; ").append(role).append("s of ").append(name);
  return text;
}

/// "; panels of birch plywood": what is no wood of the species. Of what more than two roles are
/// made of, not which.
std::string materials_text(const Assembly& wood) {
  struct Made {
    std::string_view material;
    std::vector<Role> roles;
  };
  std::vector<Made> all;
  for (const Piece& piece : wood.pieces) {
    if (piece.material.empty()) continue;
    auto its = std::find_if(all.begin(), all.end(),
                            [&](const Made& it) { return it.material == piece.material; });
    if (its == all.end()) its = all.insert(all.end(), {piece.material, {}});
    const bool glass = piece.matter == Matter::glass;
    if (!glass && std::find(its->roles.begin(), its->roles.end(), piece.role) == its->roles.end())
      its->roles.push_back(piece.role);
  }
  std::string text;
  for (const Made& made : all) {
    std::string roles;
    for (const Role role : made.roles)
      roles += (roles.empty() ? "" : ", ") + several_of(role);
    if (made.roles.size() > 2) roles = "most of it";
    text.append("; ").append(roles).append(roles.empty() ? "" : " of ").append(made.material);
  }
  return text;
}

/// "; weight not known: no wood is named", where no caution says so.
std::string weight_text(const ItemReport& report) {
  const auto& weights = report.weights;
  if (!weights || weights->whole.is_known()) return {};
  if (!weights->leaves.empty() && names_any_wood(*report.job)) return {};
  return "; weight not known: " + unknown_words(weights->whole, report.wood, *report.job);
}

/// Itself and its opening, in lines that go on below where the page ends.
PageText sizes_text(const ItemReport& report, const LengthPrinter& lengths) {
  const bool is_deep =
      !fits_that_stand(report.wood, StandsIn::wall).empty() || goes_back(report.wood);
  return PageText::hanging(std::string(word_of(report.wood.whole().kind)) + " " +
                           lengths.one(report.wood.size[0]) + " wide, " +
                           lengths.one(report.wood.size[1]) + " high, " +
                           lengths.one(report.wood.size[2]) + (is_deep ? " deep" : " thick") +
                           species_text(report.job->species) + materials_text(report.wood) +
                           weight_text(report)) +
         PageText::hanging(leaf_widths_text(report.wood, lengths)) +
         PageText::hanging(opening_text(report.wood, lengths));
}

// ---- cut list

/// Blind pins do not go right through what they are driven in to.
bool has_blind_pins(const Assembly& wood) {
  return std::any_of(wood.pieces.begin(), wood.pieces.end(), [](const Piece& piece) {
    return std::any_of(piece.features.begin(), piece.features.end(), [&](const Feature& feature) {
      const auto depth = size_of(feature, SizeName::depth);
      return feature.kind == FeatureKind::pin_hole && depth &&
             *depth < piece.blank[feature.prisms.front().along];
    });
  });
}

/// "strip of oak, 2 thick: front of A B C; all round H": which edges have one.
PageText stripped_edges(const std::vector<CutRow>& cuts, const LengthPrinter& lengths) {
  struct Edge {
    std::string strip, edge, marks;
  };
  std::vector<Edge> edges;
  const auto add = [&](const CutStrip& strip, const std::string& edge, const CutRow& row) {
    const std::string kind =
        "strip of " + strip.material + ", " + lengths.one(strip.thickness) + " thick: ";
    auto same = std::find_if(edges.begin(), edges.end(),
                             [&](const Edge& it) { return it.strip == kind && it.edge == edge; });
    if (same == edges.end()) same = edges.insert(edges.end(), {kind, edge, ""});
    same->marks += " " + joined(row.marks);
  };
  for (const CutRow& row : cuts)
    if (row.strips.size() == 4)
      add(row.strips.front(), "all round", row);
    else
      for (const CutStrip& strip : row.strips)
        add(strip, strip.edge + " of", row);
  PageText text;
  for (const Edge& its : edges)
    text += PageText::hanging(its.strip + its.edge + its.marks);
  return text;
}

/// Why some pieces are sawn longer than they stay, and how beads are measured.
PageText cut_remarks(const ItemReport& report, const LengthPrinter& lengths) {
  std::string reasons;
  const auto add = [&](auto is_it, std::string_view reason) {
    const bool any = std::any_of(
        report.cutlist.begin(), report.cutlist.end(),
        [&](const CutRow& row) { return row.saw_length > row.length && is_it(row.part); });
    if (any) reasons += (reasons.empty() ? "" : "; ") + std::string(reason);
  };
  add([](Role part) { return part != Role::rail && part != Role::pin; },
      "with a horn at each end, sawn off after glue-up");
  add([](Role part) { return part == Role::rail; },
      "rails with wood at the ends of their tenons, planed off after glue-up");
  add([](Role part) { return part == Role::pin; },
      has_blind_pins(report.wood) ? "pins with what is struck" : "pins with taper and waste");
  const bool beads = std::any_of(report.wood.pieces.begin(), report.wood.pieces.end(),
                                 [](const Piece& piece) { return piece.role == Role::bead; });
  return PageText::hanging(beads ? "beads: to the long points of their mitres" : "") +
         PageText::paragraph(reasons.empty() ? "" : "saw to: " + reasons) +
         stripped_edges(report.cutlist, lengths);
}

PageParts cutlist_page(const ItemSheet& sheet, const LengthPrinter& lengths) {
  std::vector<std::string> titles = cut_titles();
  titles.emplace_back("marks");
  TextTable table(std::move(titles));
  for (const CutRow& row : sheet.cuts) {
    std::vector<Cell> cells = cut_cells(row);
    cells.push_back(Cell::of_mark(joined(row.marks)));
    table.add(std::move(cells));
  }
  const std::string for_all =
      sheet.quantity > 1 ? ", for all " + std::to_string(sheet.quantity) : "";
  return {{"CUT LIST" + for_all,
           PageText::table(table, lengths, 2) + sheet.cut_remarks +
               strips_text(strip_totals(sheet.cuts), lengths),
           {},
           Stands::before_all}};
}

// ---- checks

/// Findings that say the same of several places.
struct FindingGroup {
  const Finding* first;
  const std::optional<Remedy>* remedy;
  bool search_stopped;
  std::vector<std::size_t> parts;
  std::vector<std::size_t> joints;
};

bool says_the_same(const Finding& a, const Finding& b) {
  return a.rule == b.rule && a.status == b.status && a.moisture == b.moisture &&
         a.value == b.value && a.min == b.min && a.max == b.max && a.fitting == b.fitting;
}

bool same_remedy(const std::optional<Remedy>& a, const std::optional<Remedy>& b) {
  if (a.has_value() != b.has_value()) return false;
  return !a || (a->key == b->key && a->to == b->to);
}

std::vector<FindingGroup> groups_of(const ItemReport& report, Status status) {
  static const std::optional<Remedy> kNone;
  std::vector<FindingGroup> groups;
  for (std::size_t i = 0; i < report.findings.size(); ++i) {
    const Finding& finding = report.findings[i];
    if (finding.status != status) continue;
    const auto& remedy = report.remedies ? report.remedies->of[i] : kNone;
    const bool stopped = search_stopped(report, i);
    auto group = std::find_if(groups.begin(), groups.end(), [&](const FindingGroup& it) {
      return says_the_same(*it.first, finding) && same_remedy(*it.remedy, remedy) &&
             it.search_stopped == stopped;
    });
    if (group == groups.end())
      group = groups.insert(groups.end(), {&finding, &remedy, stopped, {}, {}});
    for (const std::size_t part : finding.parts)
      if (std::find(group->parts.begin(), group->parts.end(), part) == group->parts.end())
        group->parts.push_back(part);
    if (finding.joint) group->joints.push_back(*finding.joint);
  }
  return groups;
}

/// The marks of the pieces that it is about.
std::vector<std::string> places_of(const FindingGroup& group, const Assembly& wood) {
  std::vector<std::size_t> parts = group.parts;
  std::sort(parts.begin(), parts.end());
  return marks_of(wood, parts);
}

std::string places_text(const FindingGroup& group, const Assembly& wood) {
  std::string text;
  for (const std::string& mark : places_of(group, wood))
    text += " " + mark;
  std::string joints;
  std::vector<std::size_t> numbers = group.joints;
  std::sort(numbers.begin(), numbers.end());
  for (const std::size_t joint : numbers)
    joints += (joints.empty() ? "" : " ") + joint_id(joint);
  return text + (joints.empty() ? "" : " (" + joints + ")");
}

std::string remedy_text(const FindingGroup& group, Unit unit) {
  if (*group.remedy)
    return remedy_message(**group.remedy, unit) +
           (group.search_stopped ? "; not all was tried: a smaller change may do" : "");
  return group.search_stopped
             ? "none was found within the tries allowed; not all was tried"
             : "no change of one size was found that puts it right and nothing else wrong";
}

PageText doubts_page(const ItemReport& report, Status status, Unit unit) {
  PageText page;
  for (const FindingGroup& group : groups_of(report, status)) {
    const std::string word = status == Status::fail ? "FAIL" : "caution";
    page += PageText::about(places_of(group, report.wood),
                            word + "  " + std::string(group.first->rule->check) +
                                places_text(group, report.wood) + ": " +
                                finding_message(*group.first, unit));
    if (report.remedies) page += PageText::hanging("remedy: " + remedy_text(group, unit), 4);
  }
  return page;
}

/// What passes, rule by rule, with the least and the greatest figure.
struct PassRow {
  std::size_t places = 0;
  const Finding* least = nullptr;
  const Finding* greatest = nullptr;
};

/// A rule's name, and of wood that has moved its moisture.
std::string rule_name(const Finding& finding) {
  const std::string name(finding.rule->check);
  return finding.moisture ? name + " at " + percent_words(*finding.moisture) : name;
}

std::vector<std::pair<std::string, PassRow>> passes_of(const ItemReport& report) {
  std::vector<std::pair<std::string, PassRow>> rows;
  for (const Finding& finding : report.findings) {
    if (finding.status != Status::ok) continue;
    const std::string name = rule_name(finding);
    auto row =
        std::find_if(rows.begin(), rows.end(), [&](const auto& it) { return it.first == name; });
    if (row == rows.end()) row = rows.insert(rows.end(), {name, {0, &finding, &finding}});
    PassRow& pass = row->second;
    ++pass.places;
    if (finding.value < pass.least->value) pass.least = &finding;
    if (finding.value > pass.greatest->value) pass.greatest = &finding;
  }
  return rows;
}

PageText passes_page(const ItemReport& report, const LengthPrinter& lengths) {
  TextTable table({"passes", "places", "least", "greatest", "at least", "at most"});
  for (const auto& [rule, pass] : passes_of(report))
    table.add({rule, std::to_string(pass.places), pass.least->value, pass.greatest->value,
               pass.least->min, pass.greatest->max});
  return PageText::table(table, lengths, 2);
}

PageText passes_in_brief(const ItemReport& report) {
  std::string text;
  for (const auto& [rule, pass] : passes_of(report)) {
    if (pass.least->moisture) continue;
    text += (text.empty() ? "pass (in so many places): " : ", ") + rule;
    if (pass.places > 1) text += " (" + std::to_string(pass.places) + ")";
  }
  return PageText::hanging(text);
}

/// Fails and cautions.
PageText doubts_page(const ItemReport& report, Unit unit) {
  return doubts_page(report, Status::fail, unit) + doubts_page(report, Status::caution, unit);
}

PageParts checks_page(const ItemReport& report, Section section, const LengthPrinter& lengths) {
  return {{"CHECKS: " + verdict(report),
           doubts_page(report, lengths.unit()) + (section == Section::check
                                                      ? passes_page(report, lengths.fine())
                                                      : passes_in_brief(report)),
           {},
           Stands::on_every_sheet}};
}

// ---- rooms and cautions

/// "both leaves over their lips": which leaves a room is of, and how they are measured.
std::string room_words(const ItemReport& report, const NamedRoom& room) {
  const bool both = !fits_that_stand(report.wood, StandsIn::beside).empty();
  const bool lips = std::any_of(report.rooms.begin(), report.rooms.end(),
                                [](const NamedRoom& it) { return it.what == "leaf in the frame"; });
  if (room.what == "room for the leaf" && both) return "room for the leaves";
  if (room.what == "leaf in the frame" && both) return "both leaves in the frame";
  if (room.what != "leaf") return room.what;
  return (both ? "both leaves" : "leaf") + std::string(!lips  ? ""
                                                       : both ? " over their lips"
                                                              : " over its lips");
}

PageParts rooms_page(const ItemReport& report, const LengthPrinter& lengths) {
  if (report.rooms.empty()) return {};
  TextTable table({"", "width", "height"});
  for (const NamedRoom& room : report.rooms)
    table.add({room_words(report, room), room.width, room.height});
  const bool in_wall = report.rooms.front().what == "wall opening";
  return {{in_wall ? "FROM WALL TO LEAF" : "ROOMS, from the outside in",
           PageText::table(table, lengths, 2)}};
}

/// Each chain in a line, its figures rounded so that they add up as printed.
PageParts chains_page(const ItemReport& report, const LengthPrinter& lengths) {
  if (report.chains.empty()) return {};
  PageText page;
  for (const Chain& chain : report.chains) {
    std::string line = chain.what + ":";
    Length along, told;
    for (const Chain::Link& link : chain.links) {
      along += link.length;
      const Length to = lengths.as_printed(along);
      line.append(&link == &chain.links.front() ? " " : ", ").append(link.what).append(" ");
      line += lengths.one(to - told);
      told = to;
    }
    page += PageText::hanging(line + "; " + lengths.one(chain.total()) + " in all");
  }
  return {{"CHAINS", page}};
}

PageParts cautions_page(const ItemReport& report) {
  if (report.cautions.empty()) return {};
  PageText page;
  for (const Caution& caution : report.cautions)
    page += PageText::hanging(std::string(caution.about) + ": " + caution.words);
  return {{"CAUTIONS", page, {}, Stands::on_every_sheet}};
}

/// What a sheet begins with where not all is well.
PageParts doubts_first(const ItemReport& report, Unit unit) {
  PageParts page;
  if (report.worst() != Status::ok)
    page = {{"CHECKS: " + verdict(report), doubts_page(report, unit), {}, Stands::on_every_sheet}};
  append(page, cautions_page(report));
  return page;
}

// ---- given and assumed

/// How each length of the spec was read, in both units. What is in one unit only reads the same
/// with any.
PageParts given_page(const ItemReport& report, LengthStyle style) {
  if (report.job->given.empty()) return {};
  const LengthPrinter mm(Unit::mm, style);
  const LengthPrinter inches(Unit::inch, style);
  TextTable table({"key", "written", "mm", "in"});
  for (const Given& given : report.job->given)
    table.add({given.key, given.written, mm.one(given.length), inches.one(given.length)});
  return {{"GIVEN, as it was read", PageText::table(table, mm, 2)}};
}

/// A value too long for its column stands before its reason.
std::vector<Cell> assumed_row(const std::string& key, const std::string& value,
                              const std::string& why) {
  constexpr std::size_t kLongest = 20;
  if (display_width(value) > kLongest) return {key, std::string(), value + ": " + why};
  return {key, value, why};
}

bool lists_assumed(const View& view) {
  return view.full || view.section == Section::check;
}

/// "22 values are"; none: nothing.
std::string values_are(std::size_t number) {
  if (number == 0) return {};
  return std::to_string(number) + (number == 1 ? " value is" : " values are");
}

PageParts parts_of(const ItemReport& report, const ItemSheet& sheet, const View& view,
                   const LengthPrinter& lengths) {
  const Section section = view.section;
  const bool whole = section == Section::sheet;
  const bool checks = whole || section == Section::check;
  const bool short_sheet = whole && !view.full;
  PageParts page;
  const auto add = [&](bool wanted, auto&& part, const auto&... from) {
    if (wanted) append(page, part(from...));
  };
  add(short_sheet, doubts_first, report, lengths.unit());
  add(whole, rooms_page, report, lengths);
  add(whole, chains_page, report, lengths);
  add(whole || section == Section::cutlist, cutlist_page, sheet, lengths);
  if (whole || section == Section::joints) {
    append(page, fillers_page(report, lengths));
    append(page, joinery_page(report.wood, report.making.value(), lengths));
    append(page, extras_page(report, lengths));
    append(page, together_page(report, lengths));
    append(page, finish_page(report, lengths.exact()));
  }
  add(whole, bought_page, report);
  add(whole, carrying_page, report, lengths);
  add(checks && !short_sheet, checks_page, report, section, lengths);
  if (checks && report.fits)
    append(page, tolerance_page(report.wood, *report.fits, lengths.exact()));
  add((whole || section == Section::season) && report.seasons, season_page, report,
      lengths.exact());
  add(checks && !short_sheet, cautions_page, report);
  add(whole && view.full, given_page, report, view.lengths);
  add(lists_assumed(view), assumed_parts, report, lengths.fine());
  return page;
}

/// What stands in a groove or a mortise by its thickness.
bool fits_by_thickness(Role part) {
  return part == Role::panel || part == Role::loose_tenon || part == Role::spline ||
         part == Role::dowel;
}

/// "0.1 mm, fits to 0.01"
std::string roundings(Unit unit, const LengthStyle& style) {
  constexpr std::array<std::string_view, 4> kSteps{"1 mm", "0.1 mm", "0.01 mm", "0.001 mm"};
  if (unit == Unit::inch) return "1/" + std::to_string(style.inch_denominator) + " in";
  return std::string(kSteps[static_cast<std::size_t>(style.decimals)]) +
         (style.decimals < 2 ? ", fits to 0.01" : "");
}

}  // namespace

std::string verdict(const ItemReport& report) {
  return verdict_text(static_cast<std::int64_t>(report.findings.size()),
                      report.count_of(Status::fail), report.count_of(Status::caution));
}

std::string verdict(const ItemSheet& sheet) {
  return verdict_text(sheet.checks, sheet.failed, sheet.cautions);
}

std::string item_title(const ItemSheet& sheet, Unit unit) {
  return sheet.id + ": " + sheet.name + ", " + std::to_string(sheet.quantity) + " off; sizes in " +
         unit_words(unit) + sheet.set_out;
}

PageText head_text(const ItemSheet& sheet) {
  return sheet.sizes + PageText::hanging(sheet.note.empty() ? "" : "note: " + sheet.note) +
         PageText::hanging(verdict(sheet));
}

std::string unit_words(Unit unit) {
  return unit == Unit::mm ? "mm" : "inches";
}

std::vector<std::string> cut_titles() {
  return {"part", "pieces", "length", "saw to", "width", "rip to", "thick", "grain"};
}

std::vector<Cell> cut_cells(const CutRow& row) {
  const auto if_other = [](Length sawn, Length finished) {
    return sawn != finished ? Cell(sawn) : Cell(std::string());
  };
  return {row.called,
          std::to_string(row.quantity),
          row.length,
          if_other(row.saw_length, row.length),
          row.width,
          if_other(row.saw_width, row.width),
          fits_by_thickness(row.part) ? Cell::of_fit(row.thickness) : Cell(row.thickness),
          std::string(row.grain == "along" || row.grain == "none" ? "" : row.grain)};
}

PageText strips_text(const std::vector<StripTotal>& strips, const LengthPrinter& lengths) {
  const bool metric = lengths.unit() == Unit::mm;
  const Length tenth = metric ? Length::from_mm(100) : Length::from_inch_parts(12);
  std::string text;
  for (const StripTotal& its : strips) {
    // Never less than there is.
    const std::int64_t tenths = (its.length.steps() + tenth.steps() - 1) / tenth.steps();
    const std::string amount =
        metric ? std::to_string(tenths / 10) + "." + std::to_string(tenths % 10) + " m"
               : std::to_string(tenths) + " ft";
    text += (text.empty() ? "edge strip, without waste: " : "; ") + amount + " of " +
            (its.material.empty() ? "no wood told" : its.material) + ", " +
            lengths.one(its.thickness) + " thick, for edges of " + lengths.one(its.width);
  }
  return PageText::hanging(text);
}

PageParts assumed_parts(const ItemReport& report, const LengthPrinter& lengths) {
  if (report.assumed.empty()) return {};
  TextTable table({"key", "value", "why"});
  for (const Assumed& assumed : report.assumed) {
    // The item's id heads its page; without it items that are worked alike read alike.
    const bool heads = assumed.key == "id";
    table.add(assumed_row(assumed.key, heads ? "as above" : value_text(assumed.value, lengths),
                          assumed.why));
  }
  return {{"ASSUMED, for want of a word in the spec", PageText::table(table, lengths, 2)}};
}

PageParts passes_parts(const ItemReport& report, const LengthPrinter& lengths) {
  PageText passes = passes_page(report, lengths.fine());
  if (passes.empty()) return {};
  return {{"CHECKS THAT PASS", std::move(passes)}};
}

ItemSheet item_sheet(const ItemReport& report, const View& view, Unit unit) {
  bool rounded = false;
  const LengthPrinter lengths(unit, view.lengths, view.page_width, &rounded);
  const Job& job = *report.job;
  ItemSheet sheet;
  sheet.id = job.id;
  sheet.name = job.name;
  sheet.note = job.note;
  sheet.quantity = job.quantity;
  if (job.unit != unit) sheet.set_out = ", set out in " + unit_words(job.unit);
  sheet.size = report.wood.size;
  sheet.sizes = sizes_text(report, lengths);
  sheet.checks = static_cast<std::int64_t>(report.findings.size());
  sheet.failed = report.count_of(Status::fail);
  sheet.cautions = report.count_of(Status::caution);
  sheet.cuts = report.cutlist;
  sheet.cut_remarks = cut_remarks(report, lengths);
  if (view.section == Section::sheet) sheet.hardware = report.together.hardware;
  sheet.parts = parts_of(report, sheet, view, lengths);
  if (!lists_assumed(view)) sheet.assumed = report.assumed.size();
  sheet.rounded = rounded;
  return sheet;
}

std::string value_text(const AssumedValue& value, const LengthPrinter& lengths) {
  switch (value.kind) {
    case AssumedValue::Kind::length:
      return lengths.one(value.length);
    case AssumedValue::Kind::number:
      return std::to_string(value.number);
    case AssumedValue::Kind::words:
      return value.words;
    case AssumedValue::Kind::lengths:
      break;
  }
  std::string text;
  for (const Length each : value.lengths)
    text += (text.empty() ? "" : ", ") + lengths.one(each);
  return text;
}

std::string item_page(const ItemReport& report, const View& view, Unit unit) {
  return item_page(item_sheet(report, view, unit), view, unit);
}

std::string item_page(const ItemSheet& sheet, const View& view, Unit unit) {
  return fitted(item_title(sheet, unit) + "\n" + head_text(sheet).text() + text_of(sheet.parts) +
                    last_line(values_are(sheet.assumed), sheet.rounded, unit, view),
                view.page_width);
}

std::string last_line(std::string_view assumed, bool rounded, Unit unit, const View& view) {
  std::string text;
  const LengthStyle& style = view.lengths;
  const bool marked =
      style.is_exact() || (unit == Unit::inch && style.inch_denominator == 0);  // with "~"
  const std::string values = std::string(assumed) + " assumed";
  if (!assumed.empty())
    text =
        rounded && !marked
            ? "\n" + values + ", figures rounded to " + roundings(unit, style) + ": see --full.\n"
            : "\n" + values + ", not stated: --full lists them, 'haunch explain' says why.\n";
  else if (rounded && !marked)
    text = "\nFigures are rounded to " + roundings(unit, style) +
           "; JSON and CSV give them exactly.\n";
  if (rounded && marked)
    text += "\n~ stands before a figure that was rounded; JSON and CSV give it exactly.\n";
  return text;
}

PageText page_cautions(std::size_t page_width) {
  return PageText::gap() +
         PageText::paragraph(
             "Guards on, dust drawn off, work held. Doors on escape routes, fire doors and glass "
             "in doors are not sized "
             "from this sheet: the local code and a licensed professional decide.",
             0, page_width);
}

}  // namespace haunch
