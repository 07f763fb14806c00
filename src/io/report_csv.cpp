#include "report_csv.h"

#include "csv_row.h"
#include "season_page.h"

namespace haunch {
namespace {

/// A column: its name, and whether it holds lengths and so carries the unit.
struct Column {
  std::string_view name;
  bool length = false;
};

constexpr Column kCutColumns[] = {{"item"},         {"part"},
                                  {"marks"},        {"quantity"},
                                  {"length", true}, {"saw_length", true},
                                  {"width", true},  {"thickness", true},
                                  {"material"},     {"grain"}};
constexpr Column kJointColumns[] = {{"item"},
                                    {"joint"},
                                    {"kind"},
                                    {"receives"},
                                    {"enters"},
                                    {"no"},
                                    {"of"},
                                    {"mortise_from_foot", true},
                                    {"mortise_from_shoulder", true},
                                    {"mortise_length", true},
                                    {"mortise_width", true},
                                    {"mortise_depth", true},
                                    {"mortise_from_face", true},
                                    {"tenon_from_edge", true},
                                    {"tenon_width", true},
                                    {"tenon_thickness", true},
                                    {"tenon_depth", true},
                                    {"tenon_from_face", true},
                                    {"cheeks", true},
                                    {"edges", true},
                                    {"bottom", true},
                                    {"bite", true},
                                    {"mortise_from_edge", true},
                                    {"edge", true}};
constexpr Column kCheckColumns[] = {{"item"},
                                    {"check"},
                                    {"status"},
                                    {"parts"},
                                    {"joint"},
                                    {"value", true},
                                    {"min", true},
                                    {"max", true},
                                    {"message"},
                                    {"remedy_key"},
                                    {"remedy_from", true},
                                    {"remedy_to", true}};

constexpr Column kSeasonColumns[] = {{"item"},
                                     {"what"},
                                     {"state"},
                                     {"moisture"},
                                     {"width", true},
                                     {"gap", true},
                                     {"bite", true},
                                     {"clearance_left", true},
                                     {"clearance_right", true},
                                     {"clearance_head", true},
                                     {"clearance_foot", true}};

template <std::size_t Count>
std::string header(const Column (&columns)[Count], Unit unit, bool for_spreadsheet) {
  std::string line(csv_start(for_spreadsheet));
  CsvRow row(line, unit, for_spreadsheet);
  for (const Column& column : columns)
    row.plain(std::string(column.name) + (column.length ? "_" + std::string(word_of(unit)) : ""));
  row.end();
  return line;
}

void append_cut(CsvRow row, const ItemReport& report, const CutRow& cut) {
  row.text(report.job->id);
  row.plain(word_of(cut.part));
  row.plain(joined(cut.marks));
  row.count(cut.quantity);
  for (const Length length : {cut.length, cut.saw_length, cut.width, cut.thickness})
    row.length(length);
  row.text(cut.material);
  row.plain(cut.grain);
  row.end();
}

void append_mortise(CsvRow& row, const Joint& joint, std::size_t number) {
  if (!joint.mortise) {
    for (int empty = 0; empty < 6; ++empty)
      row.plain("");
    return;
  }
  const MortiseSizes& mortise = *joint.mortise;
  const MortiseSpan& span = mortise.each[number];
  row.length(span.from_foot);
  row.length(mortise.from_shoulder_of(span));
  for (const Length length :
       {span.length, mortise.width, mortise.depth, span.from_face.value_or(mortise.from_face)})
    row.length(length);
}

void append_tenon(CsvRow& row, const Joint& joint, std::size_t number) {
  if (!joint.tenon) {
    for (int empty = 0; empty < 5; ++empty)
      row.plain("");
    return;
  }
  const TenonSizes& tenon = *joint.tenon;
  const TenonSpan& span = tenon.each[number];
  for (const Length length : {span.from_edge, span.width, tenon.thickness, tenon.depth,
                              span.from_face.value_or(tenon.from_face)})
    row.length(length);
}

/// One row for each tenon of a joint; one for a panel's edge.
void append_joint(CsvRow row, const ItemReport& report, std::size_t joint_number,
                  std::size_t number, std::size_t count) {
  const Joint& joint = report.wood.joints[joint_number];
  row.text(report.job->id);
  row.plain(joint_id(joint_number));
  row.plain(word_of(joint.kind));
  row.plain(report.wood.pieces[joint.receives].mark);
  row.plain(report.wood.pieces[joint.enters].mark);
  row.count(static_cast<std::int64_t>(number + 1));
  row.count(static_cast<std::int64_t>(count));
  append_mortise(row, joint, number);
  append_tenon(row, joint, number);
  for (const auto& clearance :
       {joint.design.cheeks, joint.design.edges, joint.design.bottom, joint.design.bite})
    row.length(clearance);
  row.length(joint.mortise ? joint.mortise->each[number].from_edge : std::nullopt);
  row.length(joint.design.edge);
  row.end();
}

void append_check(CsvRow row, const ItemReport& report, std::size_t number, Unit unit) {
  const Finding& finding = report.findings[number];
  row.text(report.job->id);
  row.plain(finding.rule->check);
  row.plain(word_of(finding.status));
  row.plain(joined(marks_of(report.wood, finding.parts)));
  row.plain(finding.joint ? joint_id(*finding.joint) : "");
  row.length(finding.value);
  row.length(finding.min);
  row.length(finding.max);
  row.text(finding_message(finding, unit));
  const auto remedy = report.remedies ? report.remedies->of[number] : std::nullopt;
  row.plain(remedy ? remedy->key : "");
  row.length(remedy ? std::optional(remedy->from) : std::nullopt);
  row.length(remedy ? std::optional(remedy->to) : std::nullopt);
  row.end();
}

}  // namespace

std::string csv_head(Section section, Unit unit, bool for_spreadsheet) {
  if (section == Section::joints) return header(kJointColumns, unit, for_spreadsheet);
  if (section == Section::season) return header(kSeasonColumns, unit, for_spreadsheet);
  if (section == Section::check) return header(kCheckColumns, unit, for_spreadsheet);
  return header(kCutColumns, unit, for_spreadsheet);
}

void append_item_csv(std::string& out, const ItemReport& report, Section section, Unit unit,
                     bool for_spreadsheet) {
  const CsvRow row(out, unit, for_spreadsheet);
  if (section == Section::joints) {
    for (std::size_t joint = 0; joint < report.wood.joints.size(); ++joint) {
      const auto& tenon = report.wood.joints[joint].tenon;
      const std::size_t count = tenon ? tenon->each.size() : 1;
      for (std::size_t number = 0; number < count; ++number)
        append_joint(row, report, joint, number, count);
    }
  } else if (section == Section::season) {
    append_season_csv(row, report);
  } else if (section == Section::check) {
    for (std::size_t number = 0; number < report.findings.size(); ++number)
      append_check(row, report, number, unit);
  } else {
    for (const CutRow& cut : report.cutlist)
      append_cut(row, report, cut);
  }
}

}  // namespace haunch
