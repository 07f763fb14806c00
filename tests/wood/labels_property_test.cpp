// Of whatever can be worked, each piece of the cut list has one label, and each label words that
// stand on a sticker, shortened or not.
#include <set>

#include "catch.h"
#include "frame_draw.h"
#include "json_reader.h"
#include "label_sheets.h"
#include "property_runs.h"
#include "random_cabinet.h"

namespace haunch::test {
namespace {

std::size_t pieces_cut(const ItemReport& report) {
  std::int64_t all = 0;
  for (const CutRow& row : report.cutlist)
    all += row.quantity;
  return static_cast<std::size_t>(all);
}

/// What is told on stickers, by their own word.
std::size_t pieces_told(const std::string& html) {
  constexpr std::string_view kBefore = "data-pieces=\"";
  std::size_t all = 0;
  for (std::size_t at = html.find(kBefore); at != std::string::npos;
       at = html.find(kBefore, at + 1))
    all += static_cast<std::size_t>(std::stoul(html.substr(at + kBefore.size())));
  return all;
}

std::string faults_of(const ItemReport& report) {
  const ItemLabels labels = labels_of(report);
  std::string wrong;
  if (labels.count() != pieces_cut(report)) wrong += "not as many labels as pieces\n";
  std::set<std::string> marks;
  for (int copy = 1; copy <= labels.quantity; ++copy)
    for (const Label& label : labels.labels) {
      if (!marks.insert(order_mark(labels.one(copy), label.piece)).second)
        wrong += label.piece + " twice\n";
      if (label.is_marked() && label.face == label.edge) wrong += label.piece + ": no edge\n";
    }
  const StickerSheet sheet{{210, 297}, {70, 36}, {}, {}};
  const LabelSheets made = label_sheets({labels}, sheet, *grid_of(sheet), "week 12",
                                        LengthPrinter(Unit::mm, kBenchLengths));
  if (made.too_long.empty() && pieces_told(made.html) != labels.count())
    wrong += "not every piece is on a sticker\n";
  return wrong;
}

Outcome judge(const std::string& spec, std::string& wrong) {
  const Reading document = read_json(spec);
  if (!document.value) return Outcome::refused;
  JobReading reading = read_job(*document.value, nullptr, "K1");
  if (!reading.job) return Outcome::refused;
  const ItemOutcome outcome = report_item(std::move(reading.job), {.cutlist = true});
  if (!outcome.report) return Outcome::refused;
  wrong = faults_of(*outcome.report);
  if (!wrong.empty()) wrong += spec;
  return Outcome::worked;
}

}  // namespace

TEST_CASE("every piece of random doors has its label", "[labels][property]") {
  const Tally tally = run_over(seeds_for(200), [](std::uint64_t seed, std::string& wrong) {
    const DoorSpec spec = random_door(seed, Keys::all);
    return judge(to_json(spec, {spec.unit, seed, false, true}), wrong);
  });
  require_worked_share(tally, 40);
}

TEST_CASE("every piece of random sets has its label", "[labels][property]") {
  const Tally tally = run_over(seeds_for(60), [](std::uint64_t seed, std::string& wrong) {
    return judge(FrameDraw(seed).set(), wrong);
  });
  require_worked_share(tally, 40);
}

TEST_CASE("every piece of random cabinets has its label", "[labels][property]") {
  const Tally tally = run_over(seeds_for(100), [](std::uint64_t seed, std::string& wrong) {
    return judge(random_cabinet(seed).json, wrong);
  });
  require_worked_share(tally, 40);
}

}  // namespace haunch::test
