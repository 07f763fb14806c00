// What silence picks is never what fails: cabinets, face frames and drawers that say their size and
// what closes them, and no more.

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <string>

#include "checks.h"
#include "effort.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// The failing checks of a spec, or why it is refused; in words, one to a line.
std::string verdict(const std::string& spec) {
  const JobReading reading = read_job(value_of(spec), nullptr, "job");
  if (!reading.job) return "refused: " + in_lines(reading.problems) + "\n";
  const Worked worked = reading.job->work();
  if (!worked.problems.empty()) return "refused: " + in_lines(worked.problems) + "\n";
  std::string fails;
  for (const Finding& finding : check_job(worked.assembly, *reading.job))
    if (finding.status == Status::fail) {
      fails += fmt::format("{} {}:", finding.rule->check, decimal(finding.value, Unit::mm));
      for (const std::size_t part : finding.parts)
        fails += " " + worked.assembly.pieces[part].name + ",";
      fails += "\n";
    }
  return fails;
}

struct Size {
  int width, height, depth;  // in mm; in inches about as many
};

std::string cabinet(Unit unit, const Size& size, const std::string& more) {
  const auto say = [&](int mm) {
    return unit == Unit::mm ? std::to_string(mm) : fmt::format("{}", (mm * 10 + 127) / 254);
  };
  return fmt::format(R"({{"kind": "cabinet", "units": "{}", "size": {{"width": {}, "height": {}, )"
                     R"("depth": {}}}{}}})",
                     word_of(unit), say(size.width), say(size.height), say(size.depth), more);
}

struct Front {
  const char* layout;
  int least_width, most_width;  // that a joiner would close so
  int least_height, most_height;
};

constexpr std::array<Front, 8> kFronts{{
    {R"({"front": "none"})", 200, 1200, 300, 2200},
    {R"({"front": "none", "shelves": 2})", 300, 900, 600, 2200},
    {R"({"front": "door"})", 300, 600, 300, 2200},
    {R"({"front": "pair", "shelves": 1})", 500, 1200, 600, 2200},
    {R"({"front": "drawer"})", 300, 1200, 150, 310},
    {R"({"front": "drawer", "grade": {"count": 4, "step": 10}})", 300, 1200, 600, 1100},
    {R"({"rows": [{"height": 8, "front": "drawer"}, {"front": "pair"}]})", 500, 1200, 700, 1100},
    {R"({"columns": [{"front": "door"}, {"front": "none", "shelves": 1}]})", 600, 1200, 600, 2200},
}};

/// Figures that are of a unit.
std::string in_unit(std::string layout, Unit unit) {
  const std::size_t at = layout.find(R"("height": 8,)");
  if (at != std::string::npos && unit == Unit::mm) layout.replace(at, 11, R"("height": 180)");
  const std::size_t step = layout.find(R"("step": 10)");
  if (step != std::string::npos && unit == Unit::inch) layout.replace(step, 10, R"("step": "3/8")");
  return layout;
}

/// One thing that a cabinet says besides: all that goes with it is left to be picked.
constexpr const char* kOneThing[] = {
    "",
    R"(, "species": "European oak")",
    R"(, "face_frame": {})",
    R"(, "face_frame": {"joint": "stub"})",
    R"(, "face_frame": {"joint": "dowel"})",
    R"(, "face_frame": {"joint": "half-lap"})",
    R"(, "face_frame": {"joint": "bridle"})",
    R"(, "face_frame": {"joint": "butted"})",
    R"(, "face_frame": {"joint": "screws"})",
    R"(, "toe": {"by": "notched"})",
    R"(, "toe": {"by": "legs"})",
    R"(, "toe": {"by": "base"})",
    R"(, "feet": {})",
    R"(, "case": {"material": "European oak"})",
    R"(, "case": {"joint": "stopped-housing"})",
    R"(, "case": {"joint": "rebated"})",
    R"(, "case": {"joint": "tongued"})",
    R"(, "case": {"joint": "dowel"})",
    R"(, "case": {"joint": "lapped-dovetail"})",
    R"(, "case": {"joint": "butted", "back": {"fit": "planted"}})",
    R"(, "case": {"back": {"fit": "rebated"}})",
    R"(, "case": {"back": {"fit": "planted"}})",
    R"(, "case": {"back": {"fit": "none"}})",
    R"(, "case": {"top": "rails"})",
    R"(, "fronts": {"meets": "inset"})",
    R"(, "fronts": {"hinges": {}})",
    R"(, "fronts": {"drawer": {"runner": {"side": "1/2 in"}}})",
    R"(, "fronts": {"drawer": {"material": "birch plywood"}})",
};

TEST_CASE("What silence picks of a cabinet never fails", "[wood]") {
  // With less effort some of them: one in so many.
  const std::int64_t every = 100 / std::clamp<std::int64_t>(times_effort(100), 1, 100);
  std::int64_t number = 0;
  for (const Unit unit : {Unit::mm, Unit::inch})
    for (const char* more : kOneThing)
      for (const Front& front : kFronts)
        for (const int width : {300, 500, 900, 1200})
          for (const int height : {200, 300, 720, 1100, 2100})
            for (const int depth : {300, 580}) {
              if (width < front.least_width || width > front.most_width ||
                  height < front.least_height || height > front.most_height)
                continue;
              if (number++ % every != 0) continue;
              const std::string spec =
                  cabinet(unit, {width, height, depth},
                          more + (R"(, "layout": )" + in_unit(front.layout, unit)));
              INFO(spec);
              CHECK(verdict(spec) == "");
            }
}

}  // namespace
}  // namespace haunch::test
