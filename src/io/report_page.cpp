#include "report_page.h"

#include <algorithm>

#include "joinery_page.h"
#include "season_page.h"
#include "text_table.h"
#include "tolerance_page.h"

namespace haunch {
namespace {

// ---- head

std::string verdict(const ItemReport& report) {
  const auto failed = report.count_of(Status::fail);
  const auto cautions = report.count_of(Status::caution);
  const std::string all = std::to_string(report.findings.size());
  if (failed == 0 && cautions == 0) return "all " + all + " checks pass";
  std::string text = std::to_string(failed) + " of " + all + " checks fail";
  if (failed == 0) text = "no check of " + all + " fails";
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
  return which + p.one(fit->width) + " x " + p.one(fit->height) +
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

/// "; panels of birch plywood": what is no wood of the species.
std::string materials_text(const Assembly& wood) {
  std::string text;
  for (const Piece& piece : wood.pieces) {
    if (piece.material.empty()) continue;
    const std::string one = piece.matter == Matter::glass
                                ? piece.material
                                : std::string(word_of(piece.role)) + "s of " + piece.material;
    if (text.find(one) == std::string::npos) text += "; " + one;
  }
  return text;
}

/// A line of the head, gone on below where the page ends.
std::string head_page(const ItemReport& report, const LengthPrinter& lengths) {
  const Job& job = *report.job;
  const bool other_unit = job.unit != lengths.unit();
  std::string page =
      job.id + ": " + job.name + ", " + std::to_string(job.quantity) + " off; sizes in " +
      (lengths.unit() == Unit::mm ? "mm" : "inches") +
      (other_unit ? ", set out in " + std::string(job.unit == Unit::mm ? "mm" : "inches") : "") +
      "\n";
  const bool is_in_wall = !fits_that_stand(report.wood, StandsIn::wall).empty();
  page += hanging(std::string(word_of(report.wood.whole().kind)) + " " +
                  lengths.one(report.wood.size[0]) + " wide, " + lengths.one(report.wood.size[1]) +
                  " high, " + lengths.one(report.wood.size[2]) + (is_in_wall ? " deep" : " thick") +
                  species_text(job.species) + materials_text(report.wood));
  page += hanging(leaf_widths_text(report.wood, lengths));
  page += hanging(opening_text(report.wood, lengths));
  page += hanging(job.note.empty() ? "" : "note: " + job.note);
  return page + hanging(verdict(report));
}

// ---- cut list

/// Blind pins are shorter than the stiles are thick that they are driven in to.
bool has_blind_pins(const Assembly& wood) {
  const auto of_role = [&](Role role) {
    return std::find_if(wood.pieces.begin(), wood.pieces.end(),
                        [&](const Piece& piece) { return piece.role == role; });
  };
  const auto pin = of_role(Role::pin);
  const auto stile = of_role(Role::stile);
  return pin != wood.pieces.end() && stile != wood.pieces.end() && pin->blank[0] < stile->blank[2];
}

/// Why some pieces are sawn longer than they stay.
std::string saw_text(const ItemReport& report) {
  std::string reasons;
  const auto add = [&](auto is_it, std::string_view reason) {
    const bool any = std::any_of(
        report.cutlist.begin(), report.cutlist.end(),
        [&](const CutRow& row) { return row.saw_length != row.length && is_it(row.part); });
    if (any) reasons += (reasons.empty() ? "" : "; ") + std::string(reason);
  };
  add([](Role part) { return part != Role::rail && part != Role::pin; },
      "with a horn at each end, sawn off after glue-up");
  add([](Role part) { return part == Role::rail; },
      "rails with wood at the ends of their tenons, planed off after glue-up");
  add([](Role part) { return part == Role::pin; },
      has_blind_pins(report.wood) ? "pins with what is struck" : "pins with taper and waste");
  if (reasons.empty()) return {};
  return paragraph("saw to: " + reasons);
}

std::string cutlist_page(const ItemReport& report, const LengthPrinter& lengths) {
  TextTable table({"part", "pieces", "length", "saw to", "width", "thick", "grain", "marks"});
  for (const CutRow& row : report.cutlist) {
    const bool horns = row.saw_length != row.length;
    table.add({row.called, std::to_string(row.quantity), row.length,
               horns ? Cell(row.saw_length) : Cell(std::string()), row.width, row.thickness,
               std::string(row.grain == "along" || row.grain == "none" ? "" : row.grain),
               joined(row.marks)});
  }
  std::string page =
      "\nCUT LIST" +
      std::string(report.job->quantity > 1 ? ", for all " + std::to_string(report.job->quantity)
                                           : "") +
      "\n" + table.text(lengths, 2);
  if (std::any_of(report.wood.pieces.begin(), report.wood.pieces.end(),
                  [](const Piece& piece) { return piece.role == Role::bead; }))
    page += "  beads: to the long points of their mitres\n";
  page += saw_text(report);
  return page;
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

std::string places_text(const FindingGroup& group, const Assembly& wood) {
  std::vector<std::size_t> parts = group.parts;
  std::sort(parts.begin(), parts.end());
  std::string text;
  for (const std::size_t part : parts)
    text += " " + wood.pieces[part].mark;
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

std::string doubts_page(const ItemReport& report, Status status, Unit unit) {
  std::string page;
  for (const FindingGroup& group : groups_of(report, status)) {
    const std::string word = status == Status::fail ? "FAIL" : "caution";
    page += hanging(word + "  " + std::string(group.first->rule->check) +
                    places_text(group, report.wood) + ": " + finding_message(*group.first, unit));
    if (report.remedies) page += hanging("remedy: " + remedy_text(group, unit), 4);
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

std::string passes_page(const ItemReport& report, const LengthPrinter& lengths) {
  TextTable table({"passes", "places", "least", "greatest", "at least", "at most"});
  for (const auto& [rule, pass] : passes_of(report))
    table.add({rule, std::to_string(pass.places), pass.least->value, pass.greatest->value,
               pass.least->min, pass.greatest->max});
  return table.empty() ? "" : table.text(lengths, 2);
}

std::string passes_in_brief(const ItemReport& report) {
  std::string text;
  for (const auto& [rule, pass] : passes_of(report)) {
    if (pass.least->moisture) continue;
    text += (text.empty() ? "pass (in so many places): " : ", ") + rule;
    if (pass.places > 1) text += " (" + std::to_string(pass.places) + ")";
  }
  return hanging(text);
}

std::string checks_page(const ItemReport& report, Section section, const LengthPrinter& lengths) {
  const Unit unit = lengths.unit();
  std::string page = "\nCHECKS: " + verdict(report) + "\n";
  page += doubts_page(report, Status::fail, unit) + doubts_page(report, Status::caution, unit);
  return page +
         (section == Section::check ? passes_page(report, lengths) : passes_in_brief(report));
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

std::string rooms_page(const ItemReport& report, const LengthPrinter& lengths) {
  if (report.rooms.empty()) return {};
  TextTable table({"", "width", "height"});
  for (const NamedRoom& room : report.rooms)
    table.add({room_words(report, room), room.width, room.height});
  return "\nFROM WALL TO LEAF\n" + table.text(lengths, 2);
}

std::string cautions_page(const ItemReport& report) {
  if (report.cautions.empty()) return {};
  std::string page = "\nCAUTIONS\n";
  for (const Caution& caution : report.cautions)
    page += hanging(std::string(caution.about) + ": " + caution.words);
  return page;
}

/// What a sheet begins with where not all is well.
std::string doubts_first(const ItemReport& report, Unit unit) {
  const std::string doubts =
      doubts_page(report, Status::fail, unit) + doubts_page(report, Status::caution, unit);
  return (doubts.empty() ? "" : "\nCHECKS: " + verdict(report) + "\n" + doubts) +
         cautions_page(report);
}

// ---- given and assumed

/// How each length of the spec was read, in both units. What is in one unit only reads the same
/// with any.
std::string given_page(const ItemReport& report, LengthStyle style) {
  if (report.job->given.empty()) return {};
  const LengthPrinter mm(Unit::mm, style);
  const LengthPrinter inches(Unit::inch, style);
  TextTable table({"key", "written", "mm", "in"});
  for (const Given& given : report.job->given)
    table.add({given.key, given.written, mm.one(given.length), inches.one(given.length)});
  return "\nGIVEN, as it was read\n" + table.text(mm, 2);
}

/// A value too long for its column stands before its reason.
std::vector<Cell> assumed_row(const std::string& key, const std::string& value,
                              const std::string& why) {
  constexpr std::size_t kLongest = 20;
  if (display_width(value) > kLongest) return {key, std::string(), value + ": " + why};
  return {key, value, why};
}

std::string assumed_page(const ItemReport& report, const LengthPrinter& lengths) {
  if (report.assumed.empty()) return {};
  TextTable table({"key", "value", "why"});
  for (const Assumed& assumed : report.assumed)
    table.add(assumed_row(assumed.key, value_text(assumed.value, lengths), assumed.why));
  return "\nASSUMED, for want of a word in the spec\n" + table.text(lengths, 2);
}

/// That there is more to be known than stands on the page.
std::string assumed_line(const ItemReport& report) {
  if (report.assumed.empty()) return {};
  const std::size_t number = report.assumed.size();
  return "\n" + std::to_string(number) + (number == 1 ? " value is" : " values are") +
         " assumed, not stated: --full lists them, 'haunch explain' says why.\n";
}

}  // namespace

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
  const LengthPrinter lengths(unit, view.lengths, view.page_width);
  const Section section = view.section;
  const bool whole = section == Section::sheet;
  const bool checks = whole || section == Section::check;
  const bool short_sheet = whole && !view.full;
  std::string page = short_sheet ? doubts_first(report, unit) : "";
  if (whole) page += rooms_page(report, lengths);
  if (whole || section == Section::cutlist) page += cutlist_page(report, lengths);
  if (whole || section == Section::joints)
    page += joinery_page(report.wood, report.making.value(), lengths);
  if (checks && !short_sheet) page += checks_page(report, section, lengths);
  if (checks && report.fits) page += tolerance_page(report.wood, *report.fits, lengths);
  if ((whole || section == Section::season) && report.seasons) page += season_page(report, lengths);
  if (checks && !short_sheet) page += cautions_page(report);
  if (whole && view.full) page += given_page(report, view.lengths);
  page +=
      view.full || section == Section::check ? assumed_page(report, lengths) : assumed_line(report);
  const bool rounded = page.find(" ~") != std::string::npos;
  page.insert(0, head_page(report, lengths));
  if (rounded)
    page += "\n~ stands before a figure that was rounded; JSON and CSV give it exactly.\n";
  return fitted(page, view.page_width);
}

std::string page_cautions(std::size_t page_width) {
  return "\n" +
         wrapped(
             "Guards on, dust drawn off, work held. Doors on escape routes, fire doors and glass "
             "in doors are not sized "
             "from this sheet: the local code and a licensed professional decide.",
             page_width, 0) +
         "\n";
}

}  // namespace haunch
