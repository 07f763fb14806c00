// Cabinets worked by hand: the case, what stands in it, what closes it.
#include <algorithm>

#include "checks.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

std::string cabinet(std::string_view more,
                    std::string_view size = R"({"width": 900, "height": 870, "depth": 580})") {
  return R"({"kind": "cabinet", "units": "mm", "size": )" + std::string(size) +
         (more.empty() ? "" : ", ") + std::string(more) + "}";
}

const Piece& called(const Assembly& wood, std::string_view name) {
  for (const Piece& piece : wood.pieces)
    if (piece.name == name) return piece;
  throw std::invalid_argument("no piece: " + std::string(name));
}

std::string sizes(const Piece& piece) {
  std::string text;
  for (const Length length : piece.blank)
    text += (text.empty() ? "" : " x ") + decimal(length, Unit::mm);
  return text;
}

/// Its box in the cabinet: from left to right, from low to high, from front to back.
std::string lies(const Piece& piece) {
  const Box box = placed_blank(piece);
  std::string text;
  for (std::size_t axis = 0; axis < 3; ++axis)
    text += (axis == 0 ? "" : ", ") + decimal(box.low[axis], Unit::mm) + " to " +
            decimal(box.high[axis], Unit::mm);
  return text;
}

std::vector<std::string> not_ok(const Assembly& wood) {
  std::vector<std::string> checks;
  for (const Finding& finding : check_assembly(wood, Unit::mm))
    if (finding.status != Status::ok) checks.emplace_back(finding.rule->check);
  return checks;
}

const std::vector<std::string> kNothing;

/// In which piece a fitting is let in, and where a recess of it lies in the cabinet: "left side 0
/// to 18, 600 to 660, 400 to 460".
std::vector<std::string> lets_in(const Assembly& wood, std::string_view fitting) {
  std::vector<std::string> all;
  for (const Piece& piece : wood.pieces)
    for (const Feature& feature : piece.features) {
      if (!feature.fitting || feature.fitting->name != fitting) continue;
      std::string text = piece.name;
      all.push_back(text);
      if (feature.cuts.empty()) continue;
      const Box box = placed(feature.cuts.front(), piece.place);
      for (std::size_t axis = 0; axis < 3; ++axis)
        text += (axis == 0 ? " " : ", ") + decimal(box.low[axis], Unit::mm) + " to " +
                decimal(box.high[axis], Unit::mm);
      all.back() = text;
    }
  return all;
}

std::string chains(const Worked& worked) {
  std::string text;
  for (const Chain& chain : worked.chains) {
    text += (text.empty() ? "" : "; ") + chain.what;
    for (const Chain::Link& link : chain.links)
      text += ", " + link.what + " " + decimal(link.length, Unit::mm);
    text += " = " + decimal(chain.total(), Unit::mm);
  }
  return text;
}

std::string refused(const std::string& spec) {
  JobReading reading = read_job(value_of(spec), nullptr, "job");
  if (!reading.job) return in_lines(reading.problems);
  return in_lines(reading.job->work().problems);
}

}  // namespace

TEST_CASE("A case that says no more than its size") {
  // 18 mm stuff, housed a third, 6, into each other: what stands between the sides is 900 - 36 + 12
  // long. The back stands 5 of 6 in its grooves: 864 + 10 by 834 + 10.
  const Worked worked = work(cabinet(""));
  const Assembly& wood = worked.assembly;
  CHECK(wood.pieces.size() == 5);
  CHECK(sizes(called(wood, "left side")) == "870 x 580 x 18");
  CHECK(sizes(called(wood, "bottom")) == "876 x 580 x 18");
  CHECK(sizes(called(wood, "top")) == "876 x 580 x 18");
  CHECK(sizes(called(wood, "back")) == "844 x 874 x 6");
  CHECK(lies(called(wood, "top")) == "12 to 888, 852 to 870, 0 to 580");
  // 12 behind its groove of 6.1, in the middle of which it stands.
  CHECK(lies(called(wood, "back")) == "13 to 887, 13 to 857, 561.95 to 567.95");
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("A nominal 18 that measures 17.4 changes what it should and nothing else") {
  const Worked worked = work(cabinet(R"("case": {"thickness": 17.4})"));
  const Assembly& wood = worked.assembly;
  // 900 - 34.8 between the sides, and a third of 17.4 down to whole millimetres, 5, in each.
  CHECK(sizes(called(wood, "bottom")) == "875.2 x 580 x 17.4");
  CHECK(sizes(called(wood, "left side")) == "870 x 580 x 17.4");
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("Inset fronts with nothing between them leave one gap, whatever closes") {
  // 700 high less top and bottom leave 664: 264 for a front, 200 for each drawer. With 2 round them
  // and 1 of each to the line between.
  const Assembly wood = work(cabinet(R"("fronts": {"meets": "inset",
                             "drawer": {"runner": {"side": 12.7, "length": 250}}},
                             "layout": {"rows": [{"front": "fixed"},
                               {"height": 200, "front": "drawer"},
                               {"height": 200, "front": "drawer"}]})",
                                     R"({"width": 400, "height": 700, "depth": 400})"))
                            .assembly;
  CHECK(lies(called(wood, "front 1, front")) == "20 to 380, 419 to 680, 0 to 20");
  CHECK(lies(called(wood, "drawer 1, front")) == "20 to 380, 219 to 417, 0 to 20");
  CHECK(lies(called(wood, "drawer 2, front")) == "20 to 380, 20 to 217, 0 to 20");
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("A loose shelf stands behind its door, however thick that is") {
  // Behind 24 of door, and the 3 that it is less deep than the clear depth.
  for (const char* door : {R"("fronts": {"meets": "inset", "door": {"thickness": 24}},
                               "layout": {"front": "door", "shelves": 1})",
                           R"("fronts": {"meets": "inset"},
                               "layout": {"front": "door", "thickness": 24, "shelves": 1})"}) {
    const Assembly wood =
        work(cabinet(door, R"({"width": 450, "height": 700, "depth": 400})")).assembly;
    CHECK(placed_blank(called(wood, "shelf 1")).low[2] == mm(27));
    CHECK(not_ok(wood) == kNothing);
  }
}

TEST_CASE("A case without a back is open where nothing of it stands, and it may have shelves") {
  for (const char* more : {R"("case": {"back": {"fit": "none"}}, "layout": {"shelves": 2})",
                           R"("case": {"back": {"fit": "none"}}, "fronts": {"meets": "inset"},
                               "layout": {"front": "pair", "shelves": 1})"})
    CHECK(not_ok(work(cabinet(more)).assembly) == kNothing);
}

TEST_CASE("A runner stands beside the narrow housing of a tongued rail, not in it") {
  const Assembly wood = work(cabinet(R"("case": {"joint": "tongued"},
                       "layout": {"front": "drawer", "grade": {"count": 3, "step": 10}})",
                                     R"({"width": 500, "height": 720, "depth": 400})"))
                            .assembly;
  for (const Finding& finding : check_assembly(wood, Unit::mm)) {
    INFO(finding.rule->check);
    CHECK(finding.status != Status::fail);
  }
}

TEST_CASE("A cup is bored beside the rail of a tall leaf, not into its joint") {
  // 1400 high with a middle rail: the middle of three cups would stand at it.
  const Assembly wood = work(cabinet(R"("fronts": {"hinges": {}}, "layout": {"front": "door"})",
                                     R"({"width": 450, "height": 1400, "depth": 400})"))
                            .assembly;
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("A rear rail that begins behind the stop is housed across its whole width") {
  const Assembly wood = work(cabinet(R"("case": {"joint": "stopped-housing", "top": "rails"},
                             "layout": {"columns": [{}, {}]})"))
                            .assembly;
  const Piece& rear = called(wood, "rear top rail");
  REQUIRE(cuts(rear, "housing").size() == 1);
  const Box housing = cuts(rear, "housing").front();
  CHECK(housing.low[1] == Length());
  CHECK(housing.high[1] == rear.blank[1]);
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("Chains of widths, heights and depths add up to the size") {
  const Worked worked = work(cabinet(R"("toe": {"height": 100, "setback": 60},
                 "layout": {"columns": [{"width": 400, "front": "door"}, {"front": "door"}]})"));
  CHECK(chains(worked) ==
        "across, from the left, left side 18, opening 1 400, partition 18, opening 2 446, right "
        "side 18 = 900; "
        "down, from the top, top 18, clear 734, bottom 18, toe 100 = 870; "
        "from front to back, clear 561.9, groove of the back 6.1, behind it 12 = 580");
}

TEST_CASE("Sides are notched for the toe, whose board stands back in the notch") {
  const Worked worked = work(cabinet(R"("toe": {"height": 100, "setback": 60})"));
  const Assembly& wood = worked.assembly;
  const Piece& side = called(wood, "left side");
  const auto notch = std::find_if(side.features.begin(), side.features.end(),
                                  [](const Feature& it) { return it.kind == FeatureKind::notch; });
  REQUIRE(notch != side.features.end());
  CHECK(notch->cuts.front() == box(0, 0, 0, 100, 60, 18));
  CHECK(lies(called(wood, "toe board")) == "18 to 882, 0 to 100, 60 to 78");
  CHECK(lies(called(wood, "bottom")) == "12 to 888, 100 to 118, 0 to 580");
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("Leaves over the front leave 3 between them, half of it at the sides and the foot") {
  const Worked worked = work(cabinet(R"("toe": {"height": 100}, "species": "white oak",
                      "layout": {"columns": [{"front": "door"}, {"front": "door", "hangs": "right"}]})"));
  const Assembly& wood = worked.assembly;
  // Openings of (864 - 18) / 2 = 423; the leaves from 1.5 to 448.5 and from 451.5 to 898.5, from
  // 101.5 above the floor to 3 under the top's upper face.
  CHECK(lies(called(wood, "door 1, left stile")) == "1.5 to 58.5, 101.5 to 867, -20 to 0");
  CHECK(lies(called(wood, "door 2, right stile")) == "841.5 to 898.5, 101.5 to 867, -20 to 0");
  CHECK(lies(called(wood, "door 2, left stile")) == "451.5 to 508.5, 101.5 to 867, -20 to 0");
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("A pair shares its opening and keeps the gap between its leaves") {
  // 864 wide with laps of 16.5: 897; (897 - 3) / 2 = 447 each.
  const Worked worked = work(cabinet(R"("layout": {"front": "pair"})"));
  CHECK(lies(called(worked.assembly, "door 1, right stile")).starts_with("391.5 to 448.5"));
  CHECK(lies(called(worked.assembly, "door 2, left stile")).starts_with("451.5 to 508.5"));
}

TEST_CASE("A partition stands in both rails of a case without a whole top") {
  const Worked worked = work(cabinet(R"("case": {"top": "rails"},
      "layout": {"columns": [{"front": "none"}, {"front": "none"}]})"));
  const Assembly& wood = worked.assembly;
  CHECK(sizes(called(wood, "front top rail")) == "876 x 100 x 18");
  CHECK(lies(called(wood, "rear top rail")) == "12 to 888, 852 to 870, 461.9 to 561.9");
  // 834 clear, 6 into the bottom and 6 into the rails.
  CHECK(sizes(called(wood, "partition 1")) == "846 x 561.9 x 18");
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("Two shelves housed in one partition at one height go in a quarter each") {
  const Worked worked =
      work(cabinet(R"("layout": {"columns": [{"rows": [{}, {}]}, {"rows": [{}, {}]}]})"));
  const Assembly& wood = worked.assembly;
  // (864 - 18) / 2 = 423 clear, 6 into the side, 4 into the partition.
  CHECK(sizes(called(wood, "shelf 1")) == "433 x 561.9 x 18");
  CHECK(sizes(called(wood, "shelf 2")) == "433 x 561.9 x 18");
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("A stopped housing ends behind the front edge, and the shelf is notched for it") {
  const Worked worked = work(cabinet(R"("case": {"joint": "stopped-housing"},
      "layout": {"rows": [{}, {}]})"));
  const Piece& shelf = called(worked.assembly, "shelf 1");
  const auto notches =
      std::count_if(shelf.features.begin(), shelf.features.end(),
                    [](const Feature& it) { return it.kind == FeatureKind::notch; });
  CHECK(notches == 2);
  CHECK(shelf.features.front().cuts.front() == box(0, 0, 0, 6, 12, 18));
  CHECK(not_ok(worked.assembly) == kNothing);
}

TEST_CASE(
    "A router leaves the stopped end of a housing round, and the notch goes back to clear it") {
  const ShopDefaults router = shop(R"({"units": "mm", "cutters": [6, 10]})");
  const Assembly made = wood(
      cabinet(R"("case": {"joint": "stopped-housing"}, "layout": {"rows": [{}, {}]})"), &router);
  // A housing of 18.1 ends 12 behind the front edge, half a circle of 9.05 before it is as wide.
  const Piece& side = called(made, "left side");
  const auto housing =
      std::find_if(side.features.begin(), side.features.end(),
                   [](const Feature& it) { return it.kind == FeatureKind::housing; });
  REQUIRE(housing != side.features.end());
  CHECK(size_of(*housing, SizeName::radius) == mm(9.05));
  CHECK(housing->cuts.front().low[1] == mm(21.05));
  REQUIRE(housing->prisms.size() == 1);
  Length least = mm(100);
  for (const Corner& corner : housing->prisms.front().outline)
    least = std::min(least, corner.v);
  CHECK(least == mm(12));
  const Piece& shelf = called(made, "shelf 1");
  const auto notch = std::find_if(shelf.features.begin(), shelf.features.end(),
                                  [](const Feature& it) { return it.kind == FeatureKind::notch; });
  REQUIRE(notch != shelf.features.end());
  CHECK(notch->cuts.front().extent(1) == mm(21.05));
  CHECK(not_ok(made) == kNothing);
}

TEST_CASE("Loose shelves lie on pins 32 apart, in rows that are alike from both ends") {
  const Worked worked = work(cabinet(R"("layout": {"front": "none", "shelves": 1})"));
  const Assembly& wood = worked.assembly;
  // 834 clear: 25 pitches of 32 are 800, 17 left at each end. The pin nearest to the middle,
  // (834 - 18) / 2 + 18 = 426 above the foot for the underside, is the 13th: 18 + 17 + 12 x 32 =
  // 419, its top 421.5; the 14th would be 453.5.
  CHECK(lies(called(wood, "shelf 1")) == "19.5 to 880.5, 421.5 to 439.5, 3 to 558.9");
  CHECK(called(wood, "shelf 1").loose);
  // 30 kg on each metre, for books.
  CHECK(called(wood, "shelf 1").load == Approx(0.861 * 30));
  const Piece& side = called(wood, "left side");
  const auto rows = std::find_if(side.features.begin(), side.features.end(), [](const Feature& it) {
    return it.kind == FeatureKind::shelf_pin_holes;
  });
  REQUIRE(rows != side.features.end());
  CHECK(rows->prisms.size() == 5);
  CHECK(size_of(*rows, SizeName::from_foot) == mm(355));
  CHECK(size_of(*rows, SizeName::from_front) == mm(37));
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("A fixed shelf carries books where nothing is said, and is looked at under them") {
  const auto its = job(cabinet(R"("case": {"material": "chipboard", "thickness": 12},
      "layout": {"rows": [{}, {}]})",
                               R"({"width": 2400, "height": 500, "depth": 400})"));
  const Worked worked = its->work();
  // 2376 clear: 30 kg on each metre.
  CHECK(called(worked.assembly, "shelf 1").load == Approx(2.376 * 30));
  const std::vector<Finding> findings = check_built(worked.assembly, *its);
  CHECK(std::any_of(findings.begin(), findings.end(), [](const Finding& it) {
    return std::string_view(it.rule->check) == "shelf-sag" && it.status != Status::ok;
  }));
}

TEST_CASE("That no stiffness of a shelf is known is told") {
  const auto told = [](std::string_view material) {
    const auto its = job(cabinet(R"("case": {"material": ")" + std::string(material) +
                                 R"("}, "layout": {"shelves": 1})"));
    return shelves_not_looked_at(its->work().assembly, *its);
  };
  REQUIRE(told("European oak"));
  CHECK(told("European oak")->words ==
        "not looked at in shelves of European oak: how stiff it is is not known here");
  CHECK_FALSE(told("white oak"));
  CHECK_FALSE(told("birch plywood"));
}

TEST_CASE("Hinges with a cup are bored in the leaf and in what it hangs on") {
  const Worked worked = work(cabinet(R"("fronts": {"hinges": {"number": 2}},
      "layout": {"front": "door"})",
                                     R"({"width": 450, "height": 720, "depth": 350})"));
  const Assembly& wood = worked.assembly;
  const Piece& stile = called(wood, "door 1, left stile");
  // 5 from the edge to the rim of a cup of 35, 80 from the leaf's ends.
  const auto cup =
      std::find_if(stile.features.begin(), stile.features.end(),
                   [](const Feature& it) { return it.kind == FeatureKind::hinge_cup; });
  REQUIRE(cup != stile.features.end());
  CHECK(size_of(*cup, SizeName::from_edge) == mm(22.5));
  CHECK(size_of(*cup, SizeName::from_foot) == mm(80));
  const Piece& side = called(wood, "left side");
  const auto screws =
      std::count_if(side.features.begin(), side.features.end(),
                    [](const Feature& it) { return it.kind == FeatureKind::screw_hole; });
  CHECK(screws == 4);
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("The plate of an inset leaf is told from the front edge of the case, behind a frame") {
  const auto from_front = [](std::string_view frame, std::string_view thickness) {
    const Worked worked = work(cabinet(
        R"("fronts": {"meets": "inset", "hinges": {}, "door": {"thickness": )" +
        std::string(thickness) + "}}, " + std::string(frame) + R"("layout": {"front": "door"})"));
    for (const Feature& feature : called(worked.assembly, "left side").features)
      if (feature.kind == FeatureKind::screw_hole) return size_of(feature, SizeName::from_front);
    return std::optional<Length>();
  };
  // 37 behind the leaf's back: of a leaf of 22 in a case without a frame 59 from its front edge, in
  // a frame of 20 two behind that.
  CHECK(from_front("", "22") == mm(59));
  CHECK(from_front(R"("face_frame": {"thickness": 20}, )", "22") == mm(39));
}

TEST_CASE("Runners of drawers side by side go as deep into a partition as the rails before them") {
  const Worked worked = work(cabinet(R"("fronts": {"meets": "inset"}, "layout": {"columns": [
      {"rows": [{"front": "drawer"}, {"front": "drawer"}]},
      {"rows": [{"front": "drawer"}, {"front": "drawer"}]}]})"));
  const Assembly& wood = worked.assembly;
  // A quarter of 18 into the partition from both its faces, 4; a third into the sides, 6.
  std::string depths;
  for (const Joint& joint : wood.joints) {
    if (wood.pieces[joint.enters].role != Role::runner) continue;
    const Box* cut = cut_for(wood, static_cast<std::size_t>(&joint - wood.joints.data()));
    REQUIRE(cut != nullptr);
    depths += wood.pieces[joint.receives].name + " " + decimal(cut->extent(2), Unit::mm) + ", ";
  }
  CHECK(depths == "left side 6, partition 1 4, partition 1 4, right side 6, ");
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("Metal runners are screwed to what stands beside the opening, alike at both sides") {
  // 852 is the top's lower face; the opening below it is 150 high, its lower edge at 702. The box
  // stands 6 above that and is 138 high: half of it, 69, and 6 are 75 above 702. The case stands on
  // no toe, its side at the floor, the partition in the bottom's housing, 6 below 18.
  const Worked worked = work(cabinet(R"("fronts": {"drawer": {"runner": {"side": 12.7,
      "length": 450, "holes": [37, 261]}}},
      "layout": {"columns": [{"width": 400, "rows": [{"front": "drawer", "height": 150},
                                                     {"front": "door"}]}, {"front": "door"}]})"));
  const Assembly& wood = worked.assembly;
  std::string told;
  for (const Piece& piece : wood.pieces)
    for (const Feature& hole : piece.features)
      if (hole.kind == FeatureKind::screw_hole && hole.fitting)
        told += piece.name + ", " + hole.fitting->name + ": " +
                decimal(*size_of(hole, SizeName::from_foot), Unit::mm) + " up, " +
                decimal(*size_of(hole, SizeName::from_front), Unit::mm) + " behind, " +
                decimal(*size_of(hole, SizeName::diameter), Unit::mm) + " round, " +
                decimal(*size_of(hole, SizeName::depth), Unit::mm) + " deep" +
                (hole.fitting->from_high ? " from the right\n" : " from the left\n");
  CHECK(told ==
        "left side, runner of drawer 1: 777 up, 37 behind, 5 round, 12 deep from the right\n"
        "left side, runner of drawer 1: 777 up, 261 behind, 5 round, 12 deep from the right\n"
        "partition 1, runner of drawer 1: 765 up, 37 behind, 5 round, 6.5 deep from the left\n"
        "partition 1, runner of drawer 1: 765 up, 261 behind, 5 round, 6.5 deep from the left\n");
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("Behind a frame the packing stands where the runners do") {
  const Worked worked = work(cabinet(R"("face_frame": {}, "fronts": {"drawer": {"runner":
      {"side": 12.7, "length": 450, "holes": [37], "hole_above": 100}}},
      "layout": {"rows": [{"front": "drawer", "height": 200}, {"front": "door"}]})"));
  // The opening's lower edge is at 870 - 40 - 200 = 630, the box 6 above that: a row at 736 in the
  // middle of 60. The front is inset, 20 as the frame: the holes are 37 behind the strip's end.
  const Piece& strip = called(worked.assembly, "packing 1");
  const Box at = placed_blank(strip);
  CHECK(at.low[1] == mm(706));
  CHECK(at.high[1] == mm(766));
  const auto hole = std::find_if(strip.features.begin(), strip.features.end(),
                                 [](const Feature& it) { return it.fitting.has_value(); });
  REQUIRE(hole != strip.features.end());
  CHECK(size_of(*hole, SizeName::from_front) == mm(37));
  CHECK(size_of(*hole, SizeName::from_edge) == mm(30));
}

TEST_CASE(
    "Holes of runners that stand before the case, or of which nothing is bored, are refused") {
  CHECK(
      refused(cabinet(R"("face_frame": {}, "fronts": {"meets": "overlay", "drawer": {"runner":
      {"side": 12.7, "length": 450, "holes": [37, 10]}}}, "layout": {"front": "drawer"})")) ==
      "/fronts/drawer/runner/holes: the middle of a hole of 5 mm stands 10 mm behind the front of "
      "all, and the case begins at 20 mm; change its place");
  CHECK(refused(cabinet(R"("fronts": {"drawer": {"runner": {"side": 12.7, "hole": 4}}},
      "layout": {"front": "drawer"})")) ==
        "/fronts/drawer/runner/hole: is of screw holes; say where they are bored by \"holes\", or "
        "take it out");
}

TEST_CASE("Plain fronts of one width, one above the other, are cut from one board") {
  const std::string_view kThree = R"("layout": {"columns": [{"width": 400, "rows":
      [{"front": "fixed"}, {"front": "fixed"}]}, {"rows": [{"front": "fixed"}, {"front": "drawer"},
      {"front": "fixed"}]}]})";
  const Worked worked =
      work(cabinet(R"("fronts": {"grain_runs_on": true, "drawer": {"runner": {"side": 12.7}}}, )" +
                   std::string(kThree)));
  const std::string first = called(worked.assembly, "front 1, grain 1 of 2").mark;
  const std::string second = called(worked.assembly, "front 2, grain 2 of 2").mark;
  called(worked.assembly, "front 3, front");
  const auto told = std::find_if(worked.cautions.begin(), worked.cautions.end(),
                                 [](const Caution& it) { return it.about.starts_with("grain"); });
  REQUIRE(told != worked.cautions.end());
  CHECK(told->words == "it runs on from one to the next: cut " + first + " and " + second +
                           " from one board in this order, from its upper end");
  CHECK(refused(cabinet(R"("fronts": {"grain_runs_on": true}, "layout": {"front": "fixed"})")) ==
        "/fronts/grain_runs_on: no two plain fronts of one width stand one above the other; take "
        "it out");
}

TEST_CASE("Plain fronts of board have strips at all four edges, within their size") {
  const Worked worked = work(cabinet(
      R"("fronts": {"material": "birch plywood", "edge_strip": {"thickness": 2, "material": "oak"}},
         "layout": {"front": "fixed"})"));
  const Piece& front = called(worked.assembly, "front 1, front");
  CHECK(sizes(front) == "865.5 x 897 x 20");
  const std::vector<EdgeStrip> all{{0, false, mm(2), "oak"},
                                   {0, true, mm(2), "oak"},
                                   {1, false, mm(2), "oak"},
                                   {1, true, mm(2), "oak"}};
  CHECK(front.strips == all);
  CHECK(refused(cabinet(R"("fronts": {"edge_strip": 2}, "layout": {"front": "fixed"})")) ==
        "/fronts/edge_strip: is for plain fronts of board, and these are of wood; take it out, or "
        "say by \"material\" what board they are of");
}

TEST_CASE("A fitting is let in to any piece, and to its twin at the other side") {
  const auto fitted = [](std::string_view fitting) {
    return cabinet(R"("layout": {"columns": [{"width": 400, "front": "door"}, {"front": "door"}]},
                      "fittings": [{"name": "it", )" +
                   std::string(fitting) + "}]");
  };
  const auto lies = [&](std::string_view fitting) {
    return lets_in(work(fitted(fitting)).assembly, "it");
  };
  using Lies = std::vector<std::string>;
  // Places are the piece's own: from its foot, its left end, its front edge.
  CHECK(lies(R"("on": "left side", "into": "right", "at": 600, "mirrored": true,
                "cuts": [{"length": 60, "width": 40, "from": 100, "depth": 5}])") ==
        Lies{"left side 13 to 18, 600 to 660, 100 to 140",
             "right side 882 to 887, 600 to 660, 100 to 140"});
  CHECK(lies(R"("on": "partition 1", "into": "left", "at": 206, "mirrored": true,
                "cuts": [{"length": 60, "width": 40, "from": 100, "depth": 5}])") ==
        Lies{"partition 1 418 to 423, 218 to 278, 100 to 140",
             "partition 1 431 to 436, 218 to 278, 100 to 140"});
  // The bottom begins 6 in the left side, at 12, and ends at 888.
  CHECK(lies(R"("on": "bottom", "into": "upper", "at": 50, "mirrored": true,
                "cuts": [{"length": 60, "width": 40, "from": 100, "depth": 5}])") ==
        Lies{"bottom 62 to 122, 13 to 18, 100 to 140", "bottom 778 to 838, 13 to 18, 100 to 140"});
  // Leaf 1 stands from 1.5 to 425.5, at 1.5 above the floor: its stiles from their outer edges.
  CHECK(lies(R"("on": "door 1, left stile", "into": "face", "at": 300, "mirrored": true,
                "cuts": [{"length": 60, "width": 10, "from": 20, "depth": 5}])") ==
        Lies{"door 1, left stile 21.5 to 31.5, 301.5 to 361.5, -20 to -15",
             "door 1, right stile 395.5 to 405.5, 301.5 to 361.5, -20 to -15"});
  CHECK(refused(fitted(R"("on": "left sid", "into": "right", "at": 0,
                          "cuts": [{"length": 60, "width": 40, "depth": 5}])")) ==
        "/fittings/0/on: \"left sid\" is no piece of this cabinet; did you mean \"left side\"?");
  CHECK(refused(fitted(R"("on": "back", "into": "face", "at": 100, "mirrored": true,
                          "cuts": [{"length": 60, "width": 40, "depth": 5}])")) ==
        "/fittings/0/mirrored: it is the same from the left and from the right; take it out");
}

TEST_CASE("A fitting of a cabinet may be moved for a check's sake") {
  const auto made = job(cabinet(R"("fittings": [{"name": "it", "on": "left side", "into": "right",
      "at": 100, "cuts": [{"length": 60, "width": 40, "from": 100, "depth": 5}]}])"));
  const std::vector<Lever> levers = made->levers();
  REQUIRE(levers.front().key == "fittings.0.at");
  const Worked moved = made->with(levers.front(), mm(250))->work();
  CHECK(lets_in(moved.assembly, "it") ==
        std::vector<std::string>{"left side 13 to 18, 250 to 310, 100 to 140"});
}

TEST_CASE("Fittings of a shop file are let in to doors, and not in the case") {
  const ShopDefaults doors = shop(
      R"({"units": "mm", "fittings": [{"name": "catch", "on": "right stile", "into": "back",
          "at": 100, "cuts": [{"diameter": 5, "depth": 8}]}]})");
  const Assembly fitted = wood(cabinet(R"("layout": {"front": "door"})"), &doors);
  CHECK(lets_in(fitted, "catch") == std::vector<std::string>{"door 1, right stile"});
}

TEST_CASE("What a cabinet cannot be is told with what would be right") {
  CHECK(refused(R"({"kind": "cabinet", "units": "mm"})") ==
        ": \"size\" is missing; give \"size\", from outside to outside: {\"width\": …, \"height\": "
        "…, and of a cabinet "
        "\"depth\": …}");
  CHECK(refused(cabinet(R"("case": {"joint_depth": 18, "back": {"depth": 6}})")) ==
        "/case/joint_depth: 18 mm is not less than the thickness of 18 mm; leave wood behind");
  CHECK(refused(cabinet("", R"({"width": 30, "height": 870, "depth": 580})")) ==
        "/size/width: two sides of 18 mm leave nothing between them; make it wider");
}

TEST_CASE("A dowelled case: ends stand flat, dowels 12 in the face and 24 in the end") {
  // 17.6 less 5 behind each hole and 0.5 below its dowel: 12.1, down to 12. A bottom 320 deep has
  // holes at 40, 160 and 280, their near walls 4 before.
  const Worked worked = work(cabinet(R"("case": {"joint": "dowel", "thickness": 17.6})",
                                     R"({"width": 800, "height": 720, "depth": 320})"));
  const Assembly& wood = worked.assembly;
  CHECK(sizes(called(wood, "bottom")) == "764.8 x 320 x 17.6");
  std::vector<std::string> dowels;
  for (const Piece& piece : wood.pieces)
    if (piece.role == Role::dowel) dowels.push_back(sizes(piece));
  CHECK(dowels == std::vector<std::string>(12, "36 x 7.9 x 7.9"));
  std::vector<Length> walls;
  for (const Feature& feature : called(wood, "bottom").features)
    if (feature.kind == FeatureKind::dowel_hole && feature.prisms.front().from == Length())
      walls.push_back(bounds_of(feature.prisms.front()).low[1]);
  CHECK(walls == std::vector<Length>{mm(36), mm(156), mm(276)});
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE(
    "Shelves that are dowelled to both faces of a partition have their holes beside each other") {
  const Worked worked = work(cabinet(
      R"("case": {"joint": "dowel"}, "layout": {"columns": [
           {"shelves": {"count": 1, "joint": "dowel"}}, {"shelves": {"count": 1, "joint": "dowel"}}]})",
      R"({"width": 800, "height": 720, "depth": 320})"));
  CHECK(not_ok(worked.assembly) == kNothing);
}

TEST_CASE(
    "A lapped case of oak: tails three quarters of 20, the groove of the back in the last one") {
  // Pins of 10, tails of 30: 450 less 2 half pins of 10 holds 11 of them.
  const Worked worked = work(cabinet(
      R"("species": "white oak", "case": {"joint": "lapped-dovetail", "material": "white oak", "thickness": 20})",
      R"({"width": 800, "height": 900, "depth": 450})"));
  const Assembly& wood = worked.assembly;
  CHECK(sizes(called(wood, "top")) == "790 x 450 x 20");
  const auto tails = std::find_if(wood.joints.begin(), wood.joints.end(), [](const Joint& joint) {
    return joint.kind == JointKind::lapped_dovetail;
  });
  REQUIRE(tails != wood.joints.end());
  REQUIRE(tails->tails);
  CHECK(tails->tails->length == mm(15));
  CHECK(tails->tails->each.size() == 11);
  CHECK(tails->tails->each.front().from_edge == mm(10));
  // The groove from 431.9 to 438 comes out in the tail from 410 to 440, which is 411.9 to 438.1 at
  // its root.
  CHECK(tails->tails->each.back().from_edge == mm(410));
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("Fixed shelves stand the same height apart, behind doors 3 behind the case's edges") {
  // 684 clear less two of 18, in three: 216.
  const Worked worked =
      work(cabinet(R"("layout": {"front": "door", "shelves": {"count": 2, "joint": "housed"}})",
                   R"({"width": 500, "height": 720, "depth": 320})"));
  const Assembly& wood = worked.assembly;
  CHECK(lies(called(wood, "shelf 1")) == "12 to 488, 234 to 252, 3 to 301.9");
  CHECK(lies(called(wood, "shelf 2")) == "12 to 488, 468 to 486, 3 to 301.9");
  CHECK(called(wood, "shelf 1").features.front().kind == FeatureKind::notch);
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("A case on feet stands off the floor as high as they are") {
  const Worked worked = work(cabinet(R"("feet": {"height": 80, "width": 50, "from_edge": 30})"));
  const Assembly& wood = worked.assembly;
  CHECK(lies(called(wood, "left side")) == "0 to 18, 80 to 870, 0 to 580");
  CHECK(lies(called(wood, "front left foot")) == "30 to 80, 0 to 80, 30 to 80");
  CHECK(lies(called(wood, "rear right foot")) == "820 to 870, 0 to 80, 500 to 550");
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("Two bevelled cleats hook behind the back, the wall's below the case's") {
  const Worked worked = work(cabinet(R"("hanging": {"cleat": 90})"));
  const Assembly& wood = worked.assembly;
  // The back stands so far forward that 18 are left behind it. The point of the bevel is at the
  // rear.
  CHECK(lies(called(wood, "hanging cleat")) == "18 to 882, 762 to 852, 562 to 580");
  CHECK(lies(called(wood, "wall cleat")) == "18 to 882, 690 to 780, 562 to 580");
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("A case without a back is open on purpose") {
  CHECK(not_ok(work(cabinet(R"("case": {"back": {"fit": "none"}})")).assembly) == kNothing);
}

TEST_CASE("What stands behind the front edges of a case has its strips there") {
  const Worked worked = work(cabinet(R"("case": {"edge_strip": {"front": 2, "rear": 1}},
                                         "layout": {"shelves": 1})"));
  const Assembly& wood = worked.assembly;
  const std::vector<EdgeStrip> both{{0, false, mm(2), "birch plywood"},
                                    {0, true, mm(1), "birch plywood"}};
  CHECK(called(wood, "left side").strips == both);
  CHECK(called(wood, "shelf 1").strips == std::vector<EdgeStrip>{both.front()});
  CHECK(called(wood, "back").strips.empty());
}

TEST_CASE("What has nothing to stand on, or leaves nothing of a board, is refused") {
  CHECK(refused(cabinet(R"("feet": {}, "case": {"bottom": "none"})")) ==
        "/feet: there is no bottom that feet could stand below; write \"whole\" or \"rails\"");
  CHECK(refused(cabinet(R"("case": {"edge_strip": 600})"))
            .starts_with("/case/edge_strip/front: strips of 600 mm in all are no edges"));
}

TEST_CASE("Between framed ends a framed back is planted: a rebate would cut their mortises") {
  const Worked worked = work(cabinet(
      R"("species": "white oak", "case": {"ends": "framed", "back": {"made": "framed"}},
         "toe": {"height": 100}, "layout": {"front": "pair", "shelves": 1})"));
  CHECK(lies(called(worked.assembly, "back, left stile")).ends_with("560 to 580"));
  CHECK(not_ok(worked.assembly) == kNothing);
}

TEST_CASE("Keys of joints that a case has not, feet on a toe, and what hangs on nothing") {
  CHECK(refused(cabinet(R"("case": {"dowels": {"diameter": 8}})")) ==
        "/case/dowels: has no part in this case: it has no dowels; take it out");
  CHECK(refused(cabinet(R"("feet": {"height": 60}, "toe": {"height": 100})")) ==
        "/feet: it stands on feet or on a toe; keep one of the two");
  CHECK(refused(cabinet(R"("hanging": {"rail": 90}, "case": {"back": {"fit": "planted"}})")) ==
        "/hanging: what it hangs on stands behind a grooved back, and there 0 mm are left for its "
        "18 mm; write \"fit\": \"grooved\" and \"from_back\": 18 mm under \"back\"");
}

TEST_CASE("Framed ends are leaves as deep as the case, their faces outwards") {
  // Stiles of 57, 20 thick: between the ends 900 - 40. A base lifts the case, so that no notch
  // cuts the joints at the foot of the stiles; the back stands in rebates of the rear ones.
  const Worked worked = work(cabinet(
      R"("species": "white oak", "case": {"ends": "framed"}, "toe": {"height": 100},
         "layout": {"front": "pair", "shelves": 2})"));
  const Assembly& wood = worked.assembly;
  CHECK(lies(called(wood, "left side, right stile")) == "0 to 20, 100 to 870, 0 to 57");
  CHECK(lies(called(wood, "left side, left stile")) == "0 to 20, 100 to 870, 523 to 580");
  CHECK(lies(called(wood, "right side, left stile")) == "880 to 900, 100 to 870, 0 to 57");
  CHECK(lies(called(wood, "bottom")) == "20 to 880, 100 to 118, 0 to 574");
  CHECK(lies(called(wood, "back")) == "14 to 886, 100 to 870, 574 to 580");
  CHECK(not_ok(wood) == kNothing);
  CHECK(refused(cabinet(R"("case": {"ends": "framed", "joint": "housed"})")) ==
        "/case/joint: what is let in to a framed end would run out beside its panel; write "
        "\"butted\" or \"dowel\"");
  CHECK(refused(cabinet(R"("case": {"ends": "framed", "end": {"stile_width": 400}})"))
            .starts_with("/case/end"));
}

TEST_CASE("In a corner a panel and a filler close what the neighbour stands before") {
  // A side of 18, a panel up to 600, a filler that shows 50 beside a front that lies 16.5 over it.
  const Worked worked =
      work(cabinet(R"("blind": {"side": "left", "width": 600}, "species": "white oak",
                      "layout": {"front": "door", "hangs": "right"})",
                   R"({"width": 1100, "height": 870, "depth": 580})"));
  const Assembly& wood = worked.assembly;
  CHECK(lies(called(wood, "blind panel")) == "18 to 600, 18 to 852, 0 to 18");
  CHECK(lies(called(wood, "filler")) == "600 to 666.5, 18 to 852, 0 to 18");
  CHECK(lies(called(wood, "door 1, left stile")).starts_with("650 to "));
  CHECK(not_ok(wood) == kNothing);
  CHECK(
      chains(worked).starts_with("across, from the left, left side 18, blind panel 582, filler "
                                 "66.5, opening 1 415.5, right side 18 = 1100"));
  CHECK(
      refused(cabinet(R"("blind": {"side": "right", "width": 500}, "layout": {"front": "drawer"})"))
          .starts_with("/layout: beside a blind part a drawer has nothing to run on"));
}

TEST_CASE("What hangs, and what lies on glass, is told once") {
  const Worked worked = work(cabinet(R"("hanging": {"rail": 90}, "layout": {"columns": [
      {"shelves": {"count": 1, "material": "glass", "thickness": 8}},
      {"shelves": {"count": 1, "material": "glass", "thickness": 8}}]})"));
  std::vector<std::string> about;
  for (const Caution& caution : worked.cautions)
    about.emplace_back(caution.about);
  CHECK(about == std::vector<std::string>{"tipping", "hanging", "shelf loads", "glass shelves"});
  CHECK(called(worked.assembly, "shelf 1").matter == Matter::glass);
}

TEST_CASE("A framed back lies in rebates as deep as it is thick") {
  // Rebates 6 into sides of 18, as the case's joints: the back from 12 to 888, its stiles at either
  // side, and before it 560 clear.
  const Worked worked = work(cabinet(
      R"("species": "white oak", "case": {"back": {"made": "framed"}}, "layout": {"front": "door", "shelves": 1})"));
  const Assembly& wood = worked.assembly;
  CHECK(lies(called(wood, "back, left stile")) == "12 to 69, 0 to 870, 560 to 580");
  CHECK(lies(called(wood, "back, right stile")) == "831 to 888, 0 to 870, 560 to 580");
  CHECK(lies(called(wood, "bottom")) == "12 to 888, 0 to 18, 0 to 560");
  CHECK(not_ok(wood) == kNothing);
  CHECK(refused(cabinet(R"("case": {"back": {"made": "framed", "fit": "grooved"}})")) ==
        "/case/back/fit: a framed back lies in rebates or is planted; write \"rebated\" or "
        "\"planted\"");
}

}  // namespace haunch::test
