#include "csv_row.h"
#include "order_marks.h"
#include "setups_words.h"

namespace haunch {
namespace {

void add_titles(std::string& out, Unit unit, CsvProfile profile) {
  CsvRow titles(out, unit, profile);
  for (const std::string_view title :
       {"setup", "operation", "machine", "cutter", "holding", "settings", "passes", "item", "mark",
        "name", "count", "places", "measure", "wanted", "least", "most", "unit"})
    titles.plain(title);
  titles.end();
}

}  // namespace

std::string setups_csv(const SetupsReport& report, Unit unit, CsvProfile profile) {
  std::string out(csv_start(profile));
  add_titles(out, unit, profile);
  const LengthPrinter lengths(unit, LengthStyle{0});
  for (std::size_t number = 0; number < report.plan.setups.size(); ++number) {
    const Setup& setup = report.plan.setups[number];
    for (const SetupPiece& piece : setup.pieces) {
      CsvRow row(out, unit, profile);
      row.plain(setup_id(number));
      row.plain(setup.operation());
      row.text(report.machine_name(setup));
      row.text(report.cutter_name(setup));
      row.text(report.holding_name(setup));
      row.text(settings_text(setup, lengths));
      row.count(setup.passes);
      row.text(report.item_of(piece).job->id);
      row.text(report.piece_of(piece).mark);
      row.text(report.piece_of(piece).name);
      row.count(report.count_of(piece));
      row.text(places_text(report.piece_of(piece), piece.runs, lengths));
      const FirstPiece first = setup.first_piece.value_or(FirstPiece());
      row.plain(setup.first_piece ? word_of(first.size) : "");
      row.length(setup.first_piece ? std::optional(first.wanted) : std::nullopt);
      row.length(first.least);
      row.length(first.most);
      row.plain(word_of(unit));
      row.end();
    }
  }
  return out;
}

}  // namespace haunch
