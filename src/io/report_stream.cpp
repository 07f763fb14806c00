#include "report_stream.h"

#include <utility>

#include "batch_page.h"
#include "report_csv.h"
#include "report_json.h"
#include "report_page.h"

namespace haunch {
namespace {

constexpr std::string_view kBetweenItems =
    "\n--------------------------------------------------------------------------------\n\n";

std::string refused_line(const Tally& tally) {
  return std::string(kBetweenItems) + not_here(tally);
}

}  // namespace

std::string ReportStream::head() const {
  switch (view_.format) {
    case Format::json:
      return report_json_head(unit());
    case Format::csv:
      return csv_head(view_.section, unit(), view_.csv);
    default:
      return {};
  }
}

ToldItem ReportStream::item(const ItemReport& report) {
  if (any_) return following_item(report);
  any_ = true;
  first_unit_ = report.job->unit;
  return told(report, head(), true);
}

ToldItem ReportStream::following_item(const ItemReport& report) const {
  return told(report, {}, false);
}

ToldItem ReportStream::told(const ItemReport& report, std::string before, bool first) const {
  switch (view_.format) {
    case Format::json:
      append_item_json(before, report, view_.section, view_.unit.value_or(report.job->unit), first);
      break;
    case Format::csv:
      append_item_csv(before, report, view_.section, unit(), view_.csv);
      break;
    default:
      return {{}, item_sheet(report, view_, unit())};
  }
  return {std::move(before), {}};
}

std::string ReportStream::take(ToldItem item) {
  if (!item.sheet) return std::move(item.text);
  std::string before = batch_.size() == kMostOfBatch ? batch() : "";
  batch_.push_back(std::move(*item.sheet));
  return before;
}

/// A single item is a sheet by itself.
std::string ReportStream::batch() {
  const bool more = batches_ > 0 || batch_.size() == kMostOfBatch;
  std::string text;
  if (batches_ > 0) text = view_.on_paper ? std::string_view("\f") : kBetweenItems;
  ++batches_;
  const std::vector<ItemSheet> items = std::exchange(batch_, {});
  if (items.size() > 1) return text + batch_page(items, view_, unit(), more ? batches_ : 0);
  text += item_page(items.front(), view_, unit());
  return text + (view_.section == Section::sheet ? page_cautions(view_.page_width).text() : "");
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
  if (!batch_.empty()) pieces.push_back(batch());
  if (tally.refused > 0) pieces.push_back(refused_line(tally));
  return pieces;
}

}  // namespace haunch
