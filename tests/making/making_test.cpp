// How pieces are made: what is set, and where it is run.
#include "making.h"

#include <filesystem>
#include <fstream>
#include <sstream>

#include "vocabulary.h"

namespace haunch::test {
namespace {

/// The runs on a piece that make this, each with its setting.
struct WorkedRun {
  Operation setting;
  Run run;
};
std::vector<WorkedRun> runs_on(const Assembly& leaf, std::string_view name, FeatureKind makes,
                               Cut cut = Cut::whole) {
  std::vector<WorkedRun> found;
  for (const Operation& operation : making_of(leaf).operations)
    for (const Run& run : operation.runs)
      if (operation.makes == makes && operation.cut == cut && leaf.pieces[run.piece].name == name)
        found.push_back({operation, run});
  return found;
}

std::size_t settings_for(const Assembly& leaf, FeatureKind makes) {
  std::size_t count = 0;
  for (const Operation& operation : making_of(leaf).operations)
    count += operation.makes == makes ? 1 : 0;
  return count;
}

/// A house door 924 x 2054, 44 thick; stiles 100, rails 100 and 200, tenons 65 deep.
std::string house(std::string_view more = R"("groove_depth": 12)") {
  return house_mm(R"("clearance": 3, "thickness": 44, "stile_width": 100,
                     "rail_widths": [100, 200], "tenon_depth": 65, "mortise": {"width": 15}, )" +
                  std::string(more));
}

}  // namespace

TEST_CASE("Grooves that are alike are ploughed at one setting, each along its whole edge") {
  const Assembly leaf = wood(house());
  CHECK(settings_for(leaf, FeatureKind::groove) == 1);
  const auto [setting, run] = runs_on(leaf, "right stile", FeatureKind::groove).at(0);
  CHECK(setting.setting(SizeName::width) == mm(15));
  CHECK(setting.setting(SizeName::depth) == mm(12));
  CHECK(run.side == WorkedSide{1, false});
  CHECK(run.near == Length());
  CHECK(run.far == mm(2054));
}

TEST_CASE("A mortise is told from the foot, and what a round cutter leaves straight in it") {
  // A rail of 100 at the head, a third of it relish, 12 of groove: the tenon is 55 wide, from 1966
  // to 2021; with 0.4 of play at each end the mortise is 55.8 long, less a cutter of 15.
  const Assembly leaf = wood(house(R"("groove_depth": 12, "tenon": {"relish": 33})"));
  const auto [setting, run] = runs_on(leaf, "left stile", FeatureKind::mortise).at(0);
  CHECK(run.from == Line::foot);
  CHECK(run.near == mm(2054 - 100 + 12 - 0.4));
  CHECK(run.far == mm(2054 - 33 + 0.4));
  CHECK(run.straight == mm(55.8 - 15));
  CHECK_FALSE(run.from_shoulder);
  CHECK(setting.setting(SizeName::depth) == mm(67));
}

TEST_CASE("A mortise in a rail is told from the rail's shoulder too") {
  // The end of the tenon is 65 from the shoulder.
  const Assembly leaf = wood(house(R"("groove_depth": 12, "panels": 2)"));
  const auto [setting, run] = runs_on(leaf, "top rail", FeatureKind::mortise).at(0);
  CHECK(run.from == Line::left_end);
  REQUIRE(run.from_shoulder);
  CHECK(run.from_shoulder->near == run.near - mm(65));
  CHECK(run.from_shoulder->line == ShoulderLine::shoulder);
}

TEST_CASE("Both cheeks of a tenon are one setting where its shoulders are in one line") {
  const Assembly leaf = wood(house());
  const auto cheeks = runs_on(leaf, "top rail", FeatureKind::tenon);
  REQUIRE(cheeks.size() == 2);
  CHECK(cheeks[0].setting.setting(SizeName::depth) == mm(65));
  CHECK(cheeks[0].run.side == WorkedSide{0, false});
  CHECK(cheeks[1].run.side == WorkedSide{0, true});
  CHECK(runs_on(leaf, "top rail", FeatureKind::tenon, Cut::haunch).size() == 2);
}

TEST_CASE("A long and a short shoulder are two settings") {
  const Assembly leaf = wood(house(R"("edge": {"kind": "rebated", "depth": 12, "width": 28})"));
  CHECK(runs_on(leaf, "top rail", FeatureKind::tenon).empty());
  const auto face = runs_on(leaf, "top rail", FeatureKind::tenon, Cut::face_cheek);
  const auto back = runs_on(leaf, "top rail", FeatureKind::tenon, Cut::back_cheek);
  REQUIRE(face.size() == 2);
  REQUIRE(back.size() == 2);
  CHECK(face[0].setting.setting(SizeName::depth) == mm(65));
  CHECK(back[0].setting.setting(SizeName::depth) == mm(65 - 12));
}

TEST_CASE("A shoulder coped over a moulding is a setting of its own") {
  const Assembly leaf = wood(house(
      R"("edge": {"kind": "coped", "profile": "ovolo", "width": 8, "depth": 9}, "groove_depth": 12)"));
  const auto face = runs_on(leaf, "top rail", FeatureKind::tenon, Cut::face_cope);
  const auto back = runs_on(leaf, "top rail", FeatureKind::tenon, Cut::back_cheek);
  REQUIRE(face.size() == 2);
  REQUIRE(back.size() == 2);
  CHECK(face[0].setting.setting(SizeName::depth) == mm(65 - 8));
  CHECK(back[0].setting.setting(SizeName::depth) == mm(65));
}

TEST_CASE("A hinge is told from the foot of its leaf and from the top") {
  const Assembly leaf = wood(house(
      R"("hangs": "left", "hinges": {"number": 2, "length": 100, "width": 38, "thickness": 3})"));
  for (const auto& [setting, run] : runs_on(leaf, "left stile", FeatureKind::gain)) {
    CHECK(run.from == Line::foot);
    CHECK(run.to == Line::top);
    CHECK(*run.far - run.near == mm(100));
    CHECK(*run.far + *run.from_other_end == mm(2054));
  }
}

TEST_CASE("The groove of an arched rail is in the edge that is arched, however deep it begins") {
  for (const int rise : {30, 90, 118}) {
    const Assembly leaf = wood(bare_house_mm(
        R"("rail_widths": [110, 195, 230], "arch": {"rise": )" + std::to_string(rise) + "}"));
    const auto grooves = runs_on(leaf, "top rail", FeatureKind::groove);
    REQUIRE(grooves.size() == 1);
    CHECK(grooves[0].run.side == WorkedSide{1, false});
  }
}

TEST_CASE("Of two mitred ends each has its own slot for a spline") {
  const Assembly leaf =
      wood(cabinet_mm(R"("joint": {"corner": "mitre"}, "rail_widths": [57, 57])"));
  const auto slots = runs_on(leaf, "left stile", FeatureKind::spline_slot);
  REQUIRE(slots.size() == 2);
  CHECK(slots[0].run.side.from_high != slots[1].run.side.from_high);
}

// The rail of the left end lies backwards in the case: its left end, seen from its face, is behind.
TEST_CASE(
    "A rail of a case's framed left end is told from its rear end, of the right from its front") {
  const Assembly wood_of_case = wood(R"({"kind": "cabinet", "units": "mm",
      "size": {"width": 900, "height": 900, "depth": 600},
      "case": {"ends": "framed", "end": {"stile_width": {"left": 90, "right": 60},
                                         "panels": {"across": 2}}}})");
  const auto from = [&](std::string_view side) {
    return runs_on(wood_of_case, std::string(side) + " side, top rail", FeatureKind::mortise)
        .at(0)
        .run.from;
  };
  CHECK(from("left") == Line::rear_end);
  CHECK(from("right") == Line::front_end);
}

TEST_CASE("A stopped housing is told across its side, one from edge to edge is not") {
  const auto housing = [](std::string_view joint) {
    const Assembly shelves = wood(R"({"kind": "cabinet", "units": "mm",
        "size": {"width": 800, "height": 800, "depth": 500},
        "layout": {"shelves": {"count": 1, "joint": ")" +
                                  std::string(joint) + R"("}}})");
    return runs_on(shelves, "left side", FeatureKind::housing).at(0).run;
  };
  CHECK_FALSE(housing("housed").across);
  const auto across = housing("stopped-housing").across;
  REQUIRE(across);
  CHECK(across->near > Length());  // stopped in front
  CHECK(across->far == mm(500));
}

TEST_CASE("All that is worked on any example has its operation") {
  for (const auto& file : std::filesystem::directory_iterator(HAUNCH_EXAMPLES)) {
    std::stringstream text;
    text << std::ifstream(file.path()).rdbuf();
    const Reading document = read_json(text.str());
    if (!document.value) continue;
    const JobReading reading = read_job(*document.value, nullptr, "job");
    if (!reading.job) continue;
    const Assembly made = reading.job->work().assembly;
    std::vector<std::vector<bool>> done;
    for (const Piece& piece : made.pieces)
      done.emplace_back(piece.features.size(), false);
    for (const Operation& operation : making_of(made).operations)
      for (const Run& run : operation.runs) {
        CHECK(made.pieces[run.piece].features.at(run.feature).kind == operation.makes);
        done[run.piece][run.feature] = true;
      }
    INFO(file.path().string());
    for (const auto& features : done)
      CHECK(std::count(features.begin(), features.end(), false) == 0);
  }
}

}  // namespace haunch::test
