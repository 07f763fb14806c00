#include "report_stream.h"

#include <utility>

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
      return csv_head(view_.section, unit(), view_.csv);
    case Format::table:
      return {};
  }
  return {};
}

std::string ReportStream::item(const ItemReport& report) {
  if (any_) return following_item(report);
  any_ = true;
  first_unit_ = report.job->unit;
  std::string text = head();
  append(text, report, true);
  return text;
}

std::string ReportStream::following_item(const ItemReport& report) const {
  std::string text;
  append(text, report, false);
  return text;
}

void ReportStream::append(std::string& text, const ItemReport& report, bool first) const {
  switch (view_.format) {
    case Format::json:
      append_item_json(text, report, view_.section, view_.unit.value_or(report.job->unit), first);
      break;
    case Format::csv:
      append_item_csv(text, report, view_.section, unit(), view_.csv);
      break;
    case Format::table:
      if (!first) text += view_.on_paper ? std::string_view("\f") : kBetweenItems;
      text += item_page(report, view_, unit());
      break;
  }
}

void ReportStream::note(const std::vector<PlacedProblem>& errors) {
  constexpr std::size_t kPiece = std::size_t{1} << 20;
  if (view_.format != Format::json) return;
  for (const PlacedProblem& error : errors) {
    const bool first = errors_.empty();
    if (first || errors_.back().size() > kPiece) errors_.emplace_back();
    append_error_json(errors_.back(), error, first);
  }
}

std::vector<std::string> ReportStream::end(const Tally& tally) {
  std::vector<std::string> pieces = std::exchange(errors_, {});
  if (view_.format == Format::json) {
    pieces.insert(pieces.begin(), std::string(kReportJsonErrors));
    pieces.emplace_back(kReportJsonEnd);
  }
  if (!any_) pieces.insert(pieces.begin(), head());
  if (view_.format != Format::table || !any_) return pieces;
  if (view_.section == Section::sheet) pieces.push_back(page_cautions(view_.page_width));
  if (tally.refused > 0) pieces.push_back(refused_line(tally));
  return pieces;
}

}  // namespace haunch
