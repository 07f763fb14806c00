#include "report_stream.h"

#include "report_csv.h"
#include "report_json.h"
#include "report_page.h"

namespace haunch {
namespace {

constexpr std::string_view kBetweenItems =
    "\n--------------------------------------------------------------------------------\n\n";

std::string refused_line(const Tally& tally) {
  return std::string(kBetweenItems) + "NOT HERE: " + std::to_string(tally.refused) + " of " +
         std::to_string(tally.items()) +
         (tally.refused == 1 ? " items was refused" : " items were refused") +
         "; standard error said why\n";
}

}  // namespace

std::string ReportStream::head() const {
  switch (view_.format) {
    case Format::json:
      return report_json_head(unit());
    case Format::csv:
      return csv_head(view_.section, unit(), view_.for_spreadsheet);
    case Format::table:
      return {};
  }
  return {};
}

std::string ReportStream::item(const ItemReport& report) {
  const bool first = !any_;
  if (first) first_unit_ = report.job->unit;
  any_ = true;
  std::string text = first ? head() : std::string();
  switch (view_.format) {
    case Format::json:
      append_item_json(text, report, view_.section, view_.unit.value_or(report.job->unit), first);
      break;
    case Format::csv:
      append_item_csv(text, report, view_.section, unit(), view_.for_spreadsheet);
      break;
    case Format::table:
      if (!first) text += kBetweenItems;
      text += item_page(report, view_.section, unit(), view_.lengths);
      break;
  }
  return text;
}

std::string ReportStream::end(const std::vector<PlacedProblem>& errors, const Tally& tally) {
  std::string text = any_ ? std::string() : head();
  if (view_.format == Format::json) text += report_json_tail(errors);
  if (view_.format != Format::table || !any_) return text;
  if (view_.section == Section::sheet) text += page_cautions();
  if (tally.refused > 0) text += refused_line(tally);
  return text;
}

}  // namespace haunch
