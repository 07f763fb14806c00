// Runs: along a wall of any length the pieces add up to it, at each height that was measured.
#include <fmt/format.h>

#include <random>
#include <string>
#include <utility>
#include <vector>

#include "runs.h"

namespace haunch::test {
namespace {

std::string in_words(const Chain& chain) {
  std::string words;
  for (const Chain::Link& link : chain.links)
    words += (words.empty() ? "" : ", ") + link.what + " " + decimal(link.length, Unit::mm);
  return words;
}

Cabinets two_cases() {
  return Cabinets().with("b1", 600).with("b2", 900);
}

}  // namespace

TEST_CASE("What is left over beside a wall becomes a filler there") {
  const Worked run =
      two_cases().worked(R"("wall": {"lengths": 1540, "right": "free"}, "order": ["b1", "b2"])");
  CHECK(in_words(run.chains.front()) == "filler 1 37, b1 600, between 3, b2 900");
  const Piece filler = piece(run.assembly, "filler 1");
  CHECK(filler.blank == Triple{mm(780), mm(37), mm(20)});
  CHECK(placed_blank(filler).low == Triple{mm(0), mm(100), mm(0)});
}

TEST_CASE("Between two walls it is shared out, in whole millimetres but for the last") {
  const Worked run = two_cases().worked(R"("wall": {"lengths": 1536}, "order": ["b1", "b2"])");
  CHECK(in_words(run.chains.front()) == "filler 1 16, b1 600, between 3, b2 900, filler 2 17");
}

TEST_CASE("A filler that the order names at a wall is as wide as said, and takes what is left") {
  const Worked left =
      two_cases().worked(R"("wall": {"lengths": 1540}, "order": [{"filler": 20}, "b1", "b2"])");
  CHECK(in_words(left.chains.front()) == "filler 1 20, b1 600, between 3, b2 900, filler 2 17");
  const Worked only = two_cases().worked(
      R"("wall": {"lengths": 1540, "right": "free"}, "order": [{"filler": 20}, "b1", "b2"])");
  CHECK(in_words(only.chains.front()) == "filler 1 37, b1 600, between 3, b2 900");
}

TEST_CASE("Less than a filler can be planed of stays open beside the wall") {
  const Worked run =
      two_cases().worked(R"("wall": {"lengths": 1508, "right": "free"}, "order": ["b1", "b2"])");
  CHECK(count_role(run.assembly, "filler") == 0);
  CHECK(in_words(run.chains.front()) == "open to the left wall 5, b1 600, between 3, b2 900");
}

TEST_CASE("Along a wall 30 mm out the filler is planed to it") {
  const Worked run = two_cases().worked(
      R"("wall": {"lengths": [1570, 1555, 1540], "at": [0, 440, 880], "right": "free"},
         "order": ["b1", "b2"])");
  CHECK(in_words(run.chains[0]) == "filler 1 67, b1 600, between 3, b2 900");
  CHECK(in_words(run.chains[1]) == "filler 1 52, b1 600, between 3, b2 900");
  CHECK(in_words(run.chains[2]) == "filler 1 37, b1 600, between 3, b2 900");
  const Piece filler = piece(run.assembly, "filler 1");
  // From 100 up, where the wall stands back 26.591 mm more than at 880.
  CHECK(filler.blank[1] > mm(63.59));
  CHECK(filler.blank[1] < mm(63.592));
  REQUIRE(filler.features.size() == 1);
  CHECK(filler.features.front().kind == FeatureKind::planed_taper);
  CHECK(filler.features.front().prisms.size() == 2);  // from 100 to 440, and from there on
}

TEST_CASE("Random runs add up to the wall at every height") {
  std::mt19937 random(18);
  const auto from = [&](int least, int most) {
    return std::uniform_int_distribution<int>(least, most)(random);
  };
  for (int time = 0; time < 60; ++time) {
    Cabinets cabinets;
    std::string order;
    const int number = from(1, 5);
    for (int i = 0; i < number; ++i) {
      cabinets.with(fmt::format("b{}", i), from(300, 900));
      order += fmt::format(R"({}"b{}")", i == 0 ? "" : ", ", i);
      if (from(0, 3) == 0) order += fmt::format(R"(, {{"filler": {}}})", from(12, 60));
      if (from(0, 3) == 0) order += fmt::format(R"(, {{"gap": {}}})", from(300, 700));
    }
    const int lengths[] = {from(1500, 4000), from(1500, 4000), from(1500, 4000)};
    const Worked run = cabinets.worked(fmt::format(
        R"("wall": {{"lengths": [{}, {}, {}], "at": [0, 900, 2100], "right": "{}"}}, "order": [{}])",
        lengths[0], lengths[1], lengths[2], from(0, 1) == 0 ? "wall" : "free", order));
    INFO(order);
    for (int i = 0; i < 3; ++i)
      CHECK(run.chains[static_cast<std::size_t>(i)].total() == Length::from_mm(lengths[i]));
  }
}

TEST_CASE("A run that is too long says by how much, and what to give up") {
  const Worked run = two_cases().worked(
      R"("wall": {"lengths": 2000, "right": "free"},
         "order": [{"filler": 30}, "b1", {"gap": 500, "for": "oven"}, "b2"])");
  CHECK(in_words(run.chains.front()) ==
        "too long by -30, filler 1 30, b1 600, gap for the oven 500, b2 900");
  REQUIRE(run.cautions.front().about == "too long");
  CHECK(run.cautions.front().words ==
        "by 30 mm; give up filler 1, 30 mm wide, "
        "or make b1 570 mm wide, not 600 mm, or make gap for the oven 470 mm wide, not 500 mm, or "
        "make b2 870 mm wide, not 900 mm");
}

TEST_CASE("The cases stand on the level of the floor's highest point") {
  const Worked run = two_cases().worked(
      R"("wall": {"lengths": 1540, "right": "free"}, "order": ["b1", "b2"],
         "floor": {"at": [0, 1000, 2000], "rise": [0, 10, 4]})");
  std::vector<std::string> up;
  for (const Chain& chain : run.chains)
    if (chain.what.starts_with("up from the floor")) up.push_back(in_words(chain));
  // At 37 from the left, 637, 640 and 1540.
  CHECK(up == std::vector<std::string>{"packed 9.63, case 880", "packed 3.63, case 880",
                                       "packed 3.6, case 880", "packed 3.24, case 880"});
}

TEST_CASE("Legs are turned out by what the floor falls") {
  const Worked run =
      Cabinets()
          .with("b1", 600, R"("toe": {"height": 100, "by": "legs"})")
          .worked(R"("wall": {"lengths": 600, "left": "free", "right": "free"}, "order": ["b1"],
                     "floor": {"at": [0, 600], "rise": [0, 9]})");
  CHECK(in_words(run.chains[1]) == "legs 109, case 780");
  CHECK(in_words(run.chains[2]) == "legs 100, case 780");
}

TEST_CASE("A cabinet that is named twice stands twice") {
  const Worked run = Cabinets().with("b1", 600).worked(
      R"("wall": {"lengths": 1203, "left": "free", "right": "free"}, "order": ["b1", "b1"])");
  CHECK(run.assembly.size[0] == mm(1203));
  CHECK(piece(run.assembly, "b1 2, left side").blank == piece(run.assembly, "b1, left side").blank);
  CHECK(placed_blank(piece(run.assembly, "b1 2, left side")).low[0] == mm(603));
}

TEST_CASE("The twin of a run stands the other way round") {
  const std::string keys =
      R"("wall": {"lengths": [1570, 1540], "at": [0, 880], "right": "free"}, "order": ["b1", "b2"])";
  const Worked plain = two_cases().worked(keys);
  const Worked twin = two_cases().worked(keys + R"(, "mirror": true)");
  CHECK(twin.assembly.size == plain.assembly.size);
  CHECK(in_words(twin.chains.front()) == "b2 900, between 3, b1 600, filler 1 67");
  const Box filler = placed_blank(piece(twin.assembly, "filler 1"));
  CHECK(filler.high[0] == twin.assembly.size[0]);
}

TEST_CASE("What a run cannot have is refused where it stands") {
  Cabinets cabinets = two_cases();
  cabinets.with("b3", 600, R"("quantity": 2)").with("sink", 600);
  const auto refused = [&](const std::string& keys) {
    return cabinets.refusal_of(R"("wall": {"lengths": 3000}, )" + keys);
  };
  CHECK(refused(R"("order": ["snik"])") ==
        R"(/order/0: no item of these specs is called "snik"; did you mean "sink"?)");
  CHECK(
      refused(R"("order": ["b3"])") ==
      R"(/order/0: "b3" has a quantity of its own; a run takes one for each time it names it: take it out there)");
  CHECK(refused(R"("order": ["b1", {"gap": 600, "filler": 30}])")
            .starts_with("/order/1: one thing stands at a place; "));
  CHECK(refused(R"("order": ["b1", {"filler": 30, "for": "oven"}])") ==
        R"(/order/1/for: is of what is put in a gap; give the gap's width: {"gap": 600, …})");
  CHECK(refused(R"("order": [{"filler": 30}])") ==
        "/order: names no cabinet; a run has one at least");
  CHECK(
      cabinets.refusal_of(R"("wall": {"lengths": [3000, 2990]}, "order": ["b1"])") ==
      R"(/wall: "at" is missing; write the heights that the lengths were measured at: "at": [0, 900, …])");
  CHECK(cabinets.refusal_of(
            R"("wall": {"lengths": [3000, 2990], "at": [900, 0]}, "order": ["b1"])") ==
        "/wall/at: does not rise from one to the next; write the lowest first");
}

TEST_CASE("A worktop lies on the cases, from the wall to the end that is free") {
  const Worked run = two_cases().worked(
      R"("wall": {"lengths": [1570, 1540], "at": [0, 880], "plumb": "right", "right": "free"},
         "order": ["b1", "b2"], "worktop": {"thickness": 30, "overhang": {"front": 25, "right": 10},
         "cutouts": [{"over": "b2", "width": 560, "depth": 440, "from_front": 60}]})");
  const Piece worktop = piece(run.assembly, "worktop");
  CHECK(worktop.blank == Triple{mm(1550), mm(585), mm(30)});
  CHECK(run.assembly.size[1] == mm(910));
  CHECK(run.assembly.size[2] == mm(585));
  CHECK(placed_blank(worktop).low[1] == mm(880));
  // The middle of b2 is at 1540 - 450 = 1090.
  CHECK(worktop.features.front().cuts.front() ==
        Box{{mm(810), mm(60), mm(0)}, {mm(1370), mm(500), mm(30)}});
  CHECK(in_words(run.chains[run.chains.size() - 2]) ==
        "worktop 810, cut-out over b2 560, worktop 180");
  CHECK(in_words(run.chains.back()) == "worktop 60, cut-out over b2 440, worktop 85");
}

TEST_CASE("A worktop that cannot be is refused where it is written") {
  const Cabinets cabinets = two_cases();
  const auto refused = [&](const std::string& worktop) {
    return cabinets.refusal_of(R"("wall": {"lengths": 3000}, "order": ["b1", "b2"], "worktop": )" +
                               worktop);
  };
  CHECK(refused(R"({"thickness": 30})").empty());
  CHECK(
      refused(R"({"thickness": 30, "cutouts": [{"over": "sink", "width": 500, "depth": 400}]})") ==
      R"(/worktop/cutouts/0/over: no cabinet of this run is called "sink")");
  CHECK(refused(R"({"thickness": 30, "cutouts": [{"over": "b1", "width": 500, "depth": 600}]})") ==
        "/worktop/cutouts/0/depth: leaves nothing of a worktop 585 mm deep; write less");
}

TEST_CASE("One toe board stands before all cases, its foot planed to the floor") {
  const Worked run = two_cases().worked(
      R"("wall": {"lengths": 1540, "right": "free"}, "order": ["b1", "b2"], "toe": "one board",
         "floor": {"at": [0, 1000, 2000], "rise": [0, 10, 4]})");
  int boards = 0;
  for (const Piece& each : run.assembly.pieces)
    boards += each.role == Role::toe_board;
  CHECK(boards == 1);
  // From the wall, below the filler; 10 mm higher than a toe where the floor is lowest.
  const Piece board = piece(run.assembly, "toe board");
  CHECK(board.blank == Triple{mm(1540), mm(110), mm(18)});
  CHECK(placed_blank(board).low == Triple{mm(0), mm(0), mm(42)});
  CHECK(size_of(board.features.front(), SizeName::depth) == mm(10));
  CHECK(run.assembly.size[1] == mm(890));
  CHECK(placed_blank(piece(run.assembly, "b1, left side")).low[1] == mm(10));
}

TEST_CASE("A toe board in one line needs the same toes") {
  Cabinets cabinets = two_cases();
  cabinets.with("high", 600, R"("toe": {"height": 120})");
  CHECK(cabinets
            .refusal_of(R"("wall": {"lengths": 3000}, "order": ["b1", "high"], "toe": "one board")")
            .starts_with("/toe: stands in one line"));
}

TEST_CASE("A line gives the uppermost drawers of all cabinets one height") {
  Cabinets cabinets;
  cabinets.with("b1", 600, R"("layout": {"rows": [{"front": "drawer"}, {"front": "drawer"}]})")
      .with("b2", 900,
            R"("layout": {"rows": [{"front_height": 150, "front": "drawer"}, {"front": "pair"}]})")
      .with("b3", 500, R"("layout": {"front": "door"})");
  const std::string keys = R"("wall": {"lengths": 3000}, "order": ["b1", "b2", "b3"], "lines": )";
  const Worked run = cabinets.worked(keys + R"({"top-drawer": 140})");
  CHECK(piece(run.assembly, "b1, drawer 1, front").blank[1] == mm(140));
  CHECK(piece(run.assembly, "b2, drawer 1, front").blank[1] == mm(140));
  std::string told;
  for (const Caution& caution : run.cautions)
    if (caution.about == "lines") told = caution.words;
  CHECK(told ==
        "top-drawer, fronts 140 mm high: b1, b2; in place of a height of its own in b2; no drawer "
        "is uppermost in b3");
  CHECK(cabinets.refusal_of(keys + R"({"middle": 140})").starts_with("/lines/middle: is no line"));
  CHECK(cabinets.refusal_of(keys + R"({"top-drawer": 900})")
            .starts_with(R"(/order/0: "b1" cannot be worked with the run's lines: )"));
}

TEST_CASE("A run in a corner begins at the fronts of the one that goes through") {
  Cabinets cabinets = two_cases();
  cabinets.with("deep", 1000, R"("blind": {"side": "left", "width": 560})")
      .with_run("south", R"("wall": {"lengths": 2000, "right": "free"}, "order": ["deep", "b1"])");
  const Worked free = cabinets.worked(
      R"("wall": {"lengths": 2200, "left": "free"}, "corner": {"right": "south"},
         "order": ["b1", "b2"])");
  // 2200 - 560 - 600 - 3 - 900.
  CHECK(in_words(free.chains.front()) ==
        "b1 600, between 3, b2 900, filler 1 137, south, to the fronts of its cases 560");
  const Worked walled = cabinets.worked(
      R"("wall": {"lengths": 2200}, "corner": {"right": "south"}, "order": ["b1", "b2"])");
  // Its fronts stand 20 before its cases and its handles 35 before them; 5 is left to pass.
  CHECK(
      in_words(walled.chains.front()) ==
      "filler 1 97, b1 600, between 3, b2 900, filler 2 40, south, to the fronts of its cases 560");
}

TEST_CASE("Beside a blind case nothing closes what is left in the corner") {
  const Worked run = two_cases()
                         .with("deep", 1000, R"("blind": {"side": "right", "width": 560})")
                         .worked(R"("wall": {"lengths": 1700, "left": "free"},
                                    "order": ["b1", "deep"])");
  CHECK(count_role(run.assembly, "filler") == 2);  // its blind panel and its own filler
  CHECK(in_words(run.chains.front()) ==
        "b1 600, between 3, deep 1000, left in the corner, to the right wall 97");
}

TEST_CASE("A corner that cannot be is refused where it is written") {
  Cabinets cabinets = two_cases();
  cabinets.with_run("south", R"("wall": {"lengths": 2000}, "order": ["b1"])")
      .with_run("west",
                R"("wall": {"lengths": 2000}, "order": ["b1"], "corner": {"left": "north"})");
  const auto refused = [&](const std::string& keys) {
    return cabinets.refusal_of(R"("order": ["b1"], "wall": {"lengths": 2000}, "corner": )" + keys);
  };
  CHECK(refused(R"({"left": "b1"})") ==
        R"(/corner/left: "b1" is a cabinet; it is a run that goes through in a corner)");
  CHECK(refused(R"({"left": "suoth"})") ==
        R"(/corner/left: "suoth" is the id of no item of these specs; did you mean "south"?)");
  CHECK(refused(R"({"left": "north"})") ==
        R"(/corner/left: "north" is this run itself; write the id of the one that goes through)");
  CHECK(
      refused(R"({"left": "west"})") ==
      R"(/corner/left: "west" begins beside this run itself; one of the two goes through to the wall: take its corner out)");
  CHECK(refused(R"({"left": "south", "form": "diagonal"})")
            .starts_with("/corner/form: is not made: fronts stand square to their cases here"));
  CHECK(cabinets.refusal_of(R"("order": ["b1"], "wall": {"lengths": 2000, "left": "wall"},
                               "corner": {"left": "south"})") ==
        R"(/corner/left: another run stands there; take out what "wall" says of that end)");
}

TEST_CASE("In a corner one worktop goes through, and the other ends at its edge") {
  Cabinets cabinets = two_cases();
  cabinets.with_run("south", R"("wall": {"lengths": 2000}, "order": ["b1"],
                                "worktop": {"thickness": 30})");
  const Worked run = cabinets.worked(
      R"("wall": {"lengths": 1800, "right": "free"}, "corner": {"left": "south"}, "order": ["b1"],
         "worktop": {"thickness": 30})");
  CHECK(piece(run.assembly, "worktop").blank[0] == mm(1800 - 560 - 25));
}

TEST_CASE("A worktop that goes to a wall stands over nothing there") {
  CHECK(
      two_cases().refusal_of(R"("wall": {"lengths": 1800, "right": "free"}, "order": ["b1"],
                                "worktop": {"thickness": 30, "overhang": {"left": 20}})") ==
      R"(/worktop/overhang/left: the worktop goes to the wall there, and stands over nothing; take it out, or write "wall": {"left": "free"})");
}

}  // namespace haunch::test
