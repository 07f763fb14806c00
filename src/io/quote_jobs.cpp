#include "quote_jobs.h"

#include <algorithm>
#include <cmath>

#include "quote_goods.h"
#include "quote_words.h"

namespace haunch {
namespace {

constexpr std::string_view kLegend =
    "jobs that tell of more work at once are worth less; a rate moves worth / (worth + 5) of the "
    "way "
    "to what they took";

/// "0.92 to 1.31 of it": where the true minutes lie, as multiples of those of the rate.
std::string range_words(const Backing& backing) {
  const auto range = range_of(backing);
  if (!range) return "not known of one";
  return figure_text(range->least, 2) + " to " + figure_text(range->most, 2) + " of it";
}

/// The lines of rates that jobs stand behind, a rate once.
std::vector<const HourLine*> backed_lines(const HoursPlan& hours) {
  std::vector<const HourLine*> lines;
  for (const HourLine& line : hours.lines) {
    const bool told = std::any_of(lines.begin(), lines.end(), [&](const HourLine* other) {
      return other->list == line.list && other->rate == line.rate;
    });
    if (line.standing.backing.jobs > 0 && !told) lines.push_back(&line);
  }
  return lines;
}

PageText hours_words(const HoursRange& range, std::size_t width) {
  std::string words = "likely " + hours_text(range.likely) + " h; as far off as the worst job, " +
                      hours_text(range.worst) + " h";
  if (range.nine_most)
    words += "; nine times of ten between " + hours_text(*range.nine_least) + " and " +
             hours_text(*range.nine_most) + " h";
  return PageText::hanging(words, 2, width);
}

/// Of rates that a job timed by themselves.
PageText rates_table(const std::vector<const HourLine*>& lines, const LengthPrinter& lengths) {
  TextTable table({"rate", "jobs", "timed", "worth", "off by", "true, nine of ten"});
  for (const HourLine* line : lines) {
    const Backing& backing = line->standing.backing;
    if (backing.timed == 0) continue;
    table.add(
        {line->rate, Cell::of_figure(std::to_string(backing.jobs)),
         Cell::of_figure(std::to_string(backing.timed)),
         Cell::of_figure(figure_text(backing.worth, 2)),
         backing.timed > 1 ? Cell::of_figure(percent_text(std::exp(backing.spread) - 1)) : Cell(""),
         range_words(backing)});
  }
  return PageText::table(table, lengths, 2);
}

/// What is in between is moved by little.
std::string among_others(const std::vector<const HourLine*>& lines) {
  std::vector<std::string> rates;
  for (const HourLine* line : lines)
    if (line->standing.backing.timed == 0) rates.push_back(line->rate);
  if (rates.empty()) return {};
  return "told of among other work only, and moved the less by it: " + joined_words(rates, ", ");
}

}  // namespace

PageParts jobs_parts(const QuoteReport& report, const LengthPrinter& lengths) {
  const QuoteVariant& stated = report.variants.front();
  const std::vector<const HourLine*> lines = backed_lines(stated.hours);
  if (lines.empty()) return {};
  PagePart part{"WHAT JOBS SAY OF THE HOURS"};
  if (const auto range = report.hours_range(stated)) {
    part.heading += ", " + std::to_string(range->jobs) + (range->jobs == 1 ? " job" : " jobs");
    part.body += hours_words(*range, lengths.page_width());
  }
  for (const std::string& doubt : report.doubts)
    part.body +=
        PageText::hanging("CAUTION: " + doubt + "; is the row right?", 2, lengths.page_width());
  if (std::any_of(lines.begin(), lines.end(),
                  [](const HourLine* line) { return line->standing.backing.timed > 0; }))
    part.body += rates_table(lines, lengths);
  for (const std::string& words : {among_others(lines), std::string(kLegend)})
    if (!words.empty()) part.body += PageText::hanging(words, 2, lengths.page_width());
  return {part};
}

}  // namespace haunch
