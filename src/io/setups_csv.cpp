#include "csv_row.h"
#include "setups_places.h"
#include "setups_words.h"

namespace haunch {
namespace {

void add_titles(std::string& out, Unit unit, CsvProfile profile) {
  CsvRow titles(out, unit, profile);
  for (const std::string_view title :
       {"setup", "operation", "machine", "cutter", "holding", "settings", "passes", "item", "mark",
        "name", "count", "worked", "from", "places", "measure", "wanted", "least", "most", "unit"})
    titles.plain(title);
  titles.end();
}

/// A row for each side that is worked and each line that places are told from; one of what is sawn,
/// milled or glued up.
class SetupRows {
 public:
  SetupRows(std::string& out, const SetupsReport& report, Unit unit, CsvProfile profile)
      : out_(out), report_(report), unit_(unit), profile_(profile) {}

  void add(std::size_t number) {
    for (const SetupPiece& piece : report_.plan.setups[number].pieces) {
      std::vector<PlacesTold> places =
          places_of(report_, report_.plan.setups[number], piece, lengths_);
      if (places.empty()) places.emplace_back();
      for (const PlacesTold& told : places)
        add_row(number, piece, told);
    }
  }

 private:
  void add_row(std::size_t number, const SetupPiece& piece, const PlacesTold& told) {
    const Setup& setup = report_.plan.setups[number];
    CsvRow row(out_, unit_, profile_);
    row.plain(setup_id(number));
    row.plain(setup.operation());
    row.text(report_.machine_name(setup));
    row.text(report_.cutter_name(setup));
    row.text(report_.holding_name(setup));
    row.text(settings_text(setup, lengths_));
    row.count(setup.passes);
    row.text(report_.item_of(piece).job->id);
    row.text(report_.piece_of(piece).mark);
    row.text(report_.piece_of(piece).name);
    row.count(report_.count_of(piece));
    row.text(told.worked);
    row.text(told.zero);
    row.text(told.places);
    const FirstPiece first = setup.first_piece.value_or(FirstPiece());
    row.plain(setup.first_piece ? word_of(first.size) : "");
    row.length(setup.first_piece ? std::optional(first.wanted) : std::nullopt);
    row.length(first.least);
    row.length(first.most);
    row.plain(word_of(unit_));
    row.end();
  }

  std::string& out_;
  const SetupsReport& report_;
  Unit unit_;
  CsvProfile profile_;
  LengthPrinter lengths_{unit_, LengthStyle{0}};
};

}  // namespace

std::string setups_csv(const SetupsReport& report, Unit unit, CsvProfile profile) {
  std::string out(csv_start(profile));
  add_titles(out, unit, profile);
  SetupRows rows(out, report, unit, profile);
  for (std::size_t number = 0; number < report.plan.setups.size(); ++number)
    rows.add(number);
  return out;
}

}  // namespace haunch
