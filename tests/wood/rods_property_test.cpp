// Rods of random work: each piece stands on them from end to end, each mortise where it is cut, and
// on every sheet of paper each line of lettering has a place of its own. HAUNCH_TEST_SEED=n runs
// the spec with that seed again.
#include <algorithm>

#include "catch.h"
#include "frame_draw.h"
#include "property_runs.h"
#include "random_cabinet.h"
#include "random_spec.h"
#include "rods_svg.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

std::size_t axis_of(RodDirection direction) {
  constexpr std::size_t kAll[] = {1, 0, 2};
  return kAll[static_cast<std::size_t>(direction)];
}

bool is_marked(const Rod& rod, Length at, std::size_t piece) {
  const auto mark = std::find_if(rod.marks.begin(), rod.marks.end(),
                                 [&](const RodMark& it) { return it.at == at; });
  return mark != rod.marks.end() &&
         std::any_of(mark->names.begin(), mark->names.end(), [&](const RodName& name) {
           return std::find(name.pieces.begin(), name.pieces.end(), piece) != name.pieces.end();
         });
}

/// What is wrong with a rod, in lines.
std::string faults_of(const Assembly& wood, const Rod& rod) {
  std::string faults;
  const auto ask = [&](Length at, std::size_t piece, const char* what) {
    if (!is_marked(rod, at, piece))
      faults += wood.pieces[piece].name + ": " + what + " at " + decimal(at, Unit::mm) +
                " is not on the " + std::string(word_of(rod.direction)) + " rod\n";
  };
  const std::size_t axis = axis_of(rod.direction);
  for (const RodStrip& strip : rod.strips)
    for (const std::size_t piece : strip.pieces) {
      const Box blank = placed_blank(wood.pieces[piece]);
      ask(blank.low[axis], piece, "an end");
      ask(blank.high[axis], piece, "an end");
      for (const Feature& feature : wood.pieces[piece].features) {
        if (feature.kind != FeatureKind::mortise || !feature.prisms.empty()) continue;
        if (wood.pieces[piece].place.axes[0] != static_cast<Axis>(axis)) continue;
        for (const Box& cut : feature.cuts) {
          const Box there = placed(cut, wood.pieces[piece].place);
          if (there.low[axis] > blank.low[axis]) ask(there.low[axis], piece, "a mortise");
          if (there.high[axis] < blank.high[axis]) ask(there.high[axis], piece, "a mortise");
        }
      }
    }
  for (std::size_t i = 1; i < rod.marks.size(); ++i)
    if (rod.marks[i - 1].at >= rod.marks[i].at) faults += "marks are not in order\n";
  return faults;
}

double number_in(const std::string& text, std::string_view attribute) {
  const std::size_t at = text.find(" " + std::string(attribute) + "=\"");
  return at == text.npos ? -1 : std::stod(text.substr(at + attribute.size() + 3));
}

/// The heights of lettering of one class on a sheet, in the order of the file.
std::vector<double> lines_of(const std::string& sheet, const std::string& which) {
  std::vector<double> heights;
  for (std::size_t at = sheet.find("<text"); at != sheet.npos; at = sheet.find("<text", at + 1)) {
    const std::string tag = sheet.substr(at, sheet.find('>', at) - at);
    if (tag.find("class=\"" + which + "\"") != tag.npos) heights.push_back(number_in(tag, "y"));
  }
  return heights;
}

/// Where lettering is over other lettering, or reaches into the 10 mm round the sheet.
std::string crowded(const std::string& drawing) {
  std::string faults;
  const std::string start = "<svg id=";
  for (std::size_t at = drawing.find(start); at != drawing.npos;) {
    const std::size_t next = drawing.find(start, at + 1);
    const std::string sheet = drawing.substr(at, next - at);
    const double height = number_in(sheet, "height");
    for (const char* which : {"figure", "words"}) {
      double before = 10;
      for (const double line : lines_of(sheet, which)) {
        if (line - before < 3.49 || line > height - 20)
          faults += sheet.substr(0, sheet.find('>')) + ": " + which + " at " +
                    std::to_string(line) + " after " + std::to_string(before) + "\n";
        before = line;
      }
    }
    at = next;
  }
  return faults;
}

Outcome look_at(const std::string& spec, std::string& wrong) {
  Trial trial = work(spec);
  if (!trial.assembly) return Outcome::refused;
  ItemRods rods{"item", "", Unit::mm, std::move(*trial.assembly), {}};
  const Making making = making_of(rods.wood);
  for (const RodDirection direction :
       {RodDirection::height, RodDirection::width, RodDirection::depth}) {
    rods.rods.push_back(rod_of(rods.wood, making, direction));
    wrong += faults_of(rods.wood, rods.rods.back());
  }
  for (const char* paper : {"", "a4", "letter"})
    wrong += crowded(rods_svg({rods}, LengthPrinter(Unit::mm, kBenchLengths), paper));
  if (!wrong.empty()) wrong += spec + "\n";
  return Outcome::worked;
}

}  // namespace

TEST_CASE("rods of random doors have all of them", "[rod][property]") {
  const Tally tally = run_over(seeds_for(200), [](std::uint64_t seed, std::string& wrong) {
    const DoorSpec spec = random_door(seed, Keys::all);
    return look_at(to_json(spec, {spec.unit, seed, false, true}), wrong);
  });
  require_worked_share(tally, 40);
}

TEST_CASE("rods of random sets have all of them", "[rod][property]") {
  const Tally tally = run_over(seeds_for(100), [](std::uint64_t seed, std::string& wrong) {
    return look_at(FrameDraw(seed).set(), wrong);
  });
  require_worked_share(tally, 40);
}

TEST_CASE("rods of random cabinets have all of them", "[rod][property]") {
  const Tally tally = run_over(seeds_for(100), [](std::uint64_t seed, std::string& wrong) {
    return look_at(random_cabinet(seed).json, wrong);
  });
  require_worked_share(tally, 30);
}

}  // namespace haunch::test
