#include "report_csv.h"

#include <algorithm>
#include <iterator>

#include "csv_row.h"
#include "season_page.h"

namespace haunch {
namespace {

/// What a column holds, and so which unit stands behind its name.
enum class Of : unsigned char { words, lengths, areas, volumes };

struct Column {
  std::string_view name;
  Of of = Of::words;
};

constexpr Of sizes = Of::lengths;

std::string_view unit_of(Of of, Unit unit) {
  switch (of) {
    case Of::lengths:
      return word_of(unit);
    case Of::areas:
      return unit == Unit::mm ? "m2" : "sqft";
    case Of::volumes:
      return unit == Unit::mm ? "m3" : "cuft";
    case Of::words:
      break;
  }
  return {};
}

constexpr Column kCutColumns[] = {{"item"},
                                  {"part"},
                                  {"marks"},
                                  {"quantity"},
                                  {"length", sizes},
                                  {"saw_length", sizes},
                                  {"width", sizes},
                                  {"thickness", sizes},
                                  {"material"},
                                  {"grain"},
                                  {"name"},
                                  {"called"},
                                  {"area", Of::areas},
                                  {"volume", Of::volumes},
                                  {"saw_width", sizes},
                                  {"strips"}};
constexpr Column kJointColumns[] = {{"item"},
                                    {"joint"},
                                    {"kind"},
                                    {"receives"},
                                    {"enters"},
                                    {"no"},
                                    {"of"},
                                    {"mortise_from_foot", sizes},
                                    {"mortise_from_shoulder", sizes},
                                    {"mortise_length", sizes},
                                    {"mortise_width", sizes},
                                    {"mortise_depth", sizes},
                                    {"mortise_from_face", sizes},
                                    {"tenon_from_edge", sizes},
                                    {"tenon_width", sizes},
                                    {"tenon_thickness", sizes},
                                    {"tenon_depth", sizes},
                                    {"tenon_from_face", sizes},
                                    {"cheeks", sizes},
                                    {"edges", sizes},
                                    {"bottom", sizes},
                                    {"bite", sizes},
                                    {"mortise_from_edge", sizes},
                                    {"edge", sizes},
                                    {"shoulder_to_shoulder_face", sizes},
                                    {"shoulder_to_shoulder_back", sizes},
                                    {"side"},
                                    {"from"},
                                    {"near", sizes},
                                    {"far", sizes},
                                    {"width", sizes},
                                    {"depth", sizes},
                                    {"from_face", sizes},
                                    {"thickness", sizes},
                                    {"diameter", sizes},
                                    {"from_edge", sizes},
                                    {"settings"},
                                    {"for"}};
constexpr std::size_t kWorkColumns =
    12;  // the last ones: what is worked beside mortises and tenons
constexpr std::size_t kJointOwnColumns = std::size(kJointColumns) - kWorkColumns;
constexpr Column kCheckColumns[] = {{"item"},
                                    {"check"},
                                    {"status"},
                                    {"parts"},
                                    {"joint"},
                                    {"value", sizes},
                                    {"min", sizes},
                                    {"max", sizes},
                                    {"message"},
                                    {"remedy_key"},
                                    {"remedy_from", sizes},
                                    {"remedy_to", sizes}};

constexpr Column kSeasonColumns[] = {{"item"},
                                     {"what"},
                                     {"state"},
                                     {"moisture"},
                                     {"width", sizes},
                                     {"gap", sizes},
                                     {"bite", sizes},
                                     {"clearance_left", sizes},
                                     {"clearance_right", sizes},
                                     {"clearance_head", sizes},
                                     {"clearance_foot", sizes}};

template <std::size_t Count>
std::string header(const Column (&columns)[Count], Unit unit, CsvProfile profile) {
  std::string line(csv_start(profile));
  CsvRow row(line, unit, profile);
  for (const Column& column : columns)
    row.plain(std::string(column.name) + (column.of == Of::words ? "" : "_") +
              std::string(unit_of(column.of, unit)));
  row.end();
  return line;
}

/// Of finished sizes, all pieces together, in the square and the cube of metres or feet.
struct Amount {
  double area = 0, volume = 0;
};

Amount amount_of(const CutRow& cut, Unit unit) {
  constexpr Length kMetre = Length::from_mm(1000), kFoot = Length::from_inch_parts(12);
  const double whole = static_cast<double>((unit == Unit::mm ? kMetre : kFoot).steps());
  const auto in_unit = [whole](Length size) { return static_cast<double>(size.steps()) / whole; };
  const double area = in_unit(cut.length) * in_unit(cut.width) * static_cast<double>(cut.quantity);
  return {area, area * in_unit(cut.thickness)};
}

/// "front 2 oak; rear 2 oak", thick in the column's unit.
std::string strips_text(const CutRow& cut, Unit unit) {
  std::string text;
  for (const CutStrip& strip : cut.strips)
    text += (text.empty() ? "" : "; ") + strip.edge + " " + in_words(strip.thickness, unit) + " " +
            strip.material;
  return text;
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
  row.text(report.job->name);
  row.text(cut.called);
  const Amount amount = amount_of(cut, row.unit());
  row.number(amount.area, 6);
  row.number(amount.volume, 6);
  row.length(cut.saw_width);
  row.text(strips_text(cut, row.unit()));
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

void append_shoulders(CsvRow& row, const ItemReport& report, const Joint& joint) {
  const auto shoulders = shoulders_at(joint, report.wood.pieces[joint.enters],
                                      report.making.value().shoulders[joint.enters]);
  row.length(shoulders ? std::optional(shoulders->face) : std::nullopt);
  row.length(shoulders ? std::optional(shoulders->back) : std::nullopt);
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
  append_shoulders(row, report, joint);
  for (std::size_t of_work = 0; of_work < kWorkColumns; ++of_work)
    row.plain("");
  row.end();
}

/// Settings that have a column of their own, in their order.
constexpr SizeName kSettingColumns[] = {SizeName::width,     SizeName::depth,
                                        SizeName::from_face, SizeName::thickness,
                                        SizeName::diameter,  SizeName::from_edge};

/// The others: "length 110", in the unit of the table.
std::string other_settings(const Operation& operation, Unit unit) {
  std::string text;
  for (const NamedSize& each : operation.settings)
    if (std::find(std::begin(kSettingColumns), std::end(kSettingColumns), each.name) ==
        std::end(kSettingColumns))
      text += (text.empty() ? "" : "; ") + std::string(word_of(each.name)) + " " +
              decimal(each.size, unit);
  return text;
}

/// One row for each place that something is worked at beside mortises and tenons.
void append_run(CsvRow row, const ItemReport& report, const Operation& operation, const Run& run) {
  const Piece& piece = report.wood.pieces[run.piece];
  row.text(report.job->id);
  row.plain(run.joint ? joint_id(*run.joint) : "");
  row.plain(operation.cut == Cut::whole ? word_of(operation.makes) : word_of(operation.cut));
  row.plain(piece.mark);
  for (std::size_t of_joint = 4; of_joint < kJointOwnColumns; ++of_joint)
    row.plain("");
  row.plain(word_of(side_of(piece, run.side)));
  row.plain(word_of(run.from));
  row.length(run.near);
  row.length(run.far);
  for (const SizeName name : kSettingColumns)
    row.length(size_of(operation.settings, name));
  row.plain(other_settings(operation, row.unit()));
  const auto& fitting = piece.features[run.feature].fitting;
  row.text(fitting ? fitting->name : "");
  row.end();
}

/// Whether the rows of joints tell it already.
bool is_told_with_joints(const Operation& operation) {
  return operation.cut == Cut::whole &&
         (operation.makes == FeatureKind::mortise || operation.makes == FeatureKind::tenon);
}

void append_joints(const CsvRow& row, const ItemReport& report) {
  for (std::size_t joint = 0; joint < report.wood.joints.size(); ++joint) {
    const auto& tenon = report.wood.joints[joint].tenon;
    const std::size_t count = tenon ? tenon->each.size() : 1;
    for (std::size_t number = 0; number < count; ++number)
      append_joint(row, report, joint, number, count);
  }
  for (const Operation& operation : report.making.value().operations)
    if (!is_told_with_joints(operation))
      for (const Run& run : operation.runs)
        append_run(row, report, operation, run);
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

std::string csv_head(Section section, Unit unit, CsvProfile profile) {
  if (section == Section::joints) return header(kJointColumns, unit, profile);
  if (section == Section::season) return header(kSeasonColumns, unit, profile);
  if (section == Section::check) return header(kCheckColumns, unit, profile);
  return header(kCutColumns, unit, profile);
}

void append_item_csv(std::string& out, const ItemReport& report, Section section, Unit unit,
                     CsvProfile profile) {
  const CsvRow row(out, unit, profile);
  if (section == Section::joints) {
    append_joints(row, report);
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
