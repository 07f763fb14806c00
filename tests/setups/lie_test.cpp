// How pieces lie at a machine: held as a joiner would who has them in his hands.
#include "lie.h"

#include "datum.h"
#include "examples.h"
#include "making.h"

namespace haunch {
namespace {

using namespace test;

constexpr WorkedSide kFace{2, false}, kBack{2, true}, kLowEdge{1, false}, kHighEdge{1, true},
    kLowEnd{0, false}, kHighEnd{0, true};

Holding held(WorkedLooks worked, DatumLies datum = DatumLies::at_fence) {
  Holding it;
  it.worked = worked;
  it.datum = datum;
  return it;
}
const Holding kUpright = held(WorkedLooks::up);                             // a mortiser, a bench
const Holding kOver = held(WorkedLooks::down);                              // a router table
const Holding kAtFence = held(WorkedLooks::sideways, DatumLies::on_table);  // a spindle
const Holding kFed = held(WorkedLooks::sideways);                           // a bandsaw

/// As it lies where nothing is told from another side than its datum.
Lie lie_of(const Piece& piece, WorkedSide worked, const Holding& holding) {
  const WorkedSide datum = worked.into == 2 ? WorkedSide{1, datum_of(piece).edge_high} : kFace;
  return {piece.place, worked, datum, holding};
}

/// Where the line stands that places of what is made so in a side of a piece are told from.
Toward hand(const Assembly& wood, std::string_view name, FeatureKind makes, WorkedSide side,
            const Holding& holding) {
  for (const Operation& operation : making_of(wood).operations)
    for (const Run& run : operation.runs)
      if (const Piece& piece = wood.pieces[run.piece];
          operation.makes == makes && piece.name == name && run.side == side)
        return hand_of(
            Lie(piece.place, side, datum_side(wood, run, operation.settings).side, holding), piece,
            run);
  throw std::invalid_argument("no such run");
}

Assembly side_door() {
  return wood(house_mm(R"("stile_width": 118, "rail_widths": [118, 195, 230], "panels": 4)"));
}

TEST_CASE("Left and right stile, face to the fence and mortises up, have their feet opposite") {
  const Assembly door = side_door();
  CHECK(hand(door, "left stile", FeatureKind::mortise, kHighEdge, kUpright) == Toward::left);
  CHECK(hand(door, "right stile", FeatureKind::mortise, kLowEdge, kUpright) == Toward::right);
}

TEST_CASE("Over a cutter in the table the same two lie the other way round") {
  const Assembly door = side_door();
  CHECK(hand(door, "left stile", FeatureKind::groove, kHighEdge, kOver) == Toward::right);
  CHECK(hand(door, "right stile", FeatureKind::groove, kLowEdge, kOver) == Toward::left);
}

TEST_CASE("With the face on the table and the edge to the fence a left stile's foot is left") {
  const Assembly door = side_door();
  CHECK(hand(door, "left stile", FeatureKind::groove, kHighEdge, kAtFence) == Toward::left);
  CHECK(hand(door, "right stile", FeatureKind::groove, kLowEdge, kAtFence) == Toward::right);
}

// From in front of the door: a bottom rail's upper edge is up already; its face is turned from the
// joiner to the fence, so that its left end comes to his right.
TEST_CASE("A rail mortised in its upper edge has its left end at the right, in its lower left") {
  const Assembly door = side_door();
  CHECK(hand(door, "bottom rail", FeatureKind::mortise, kHighEdge, kUpright) == Toward::right);
  CHECK(hand(door, "top rail", FeatureKind::mortise, kLowEdge, kUpright) == Toward::left);
}

TEST_CASE("A muntin grooved in both edges is turned end for end between them") {
  const Assembly door = side_door();
  CHECK(hand(door, "muntin, tier 1", FeatureKind::groove, kHighEdge, kOver) == Toward::right);
  CHECK(hand(door, "muntin, tier 1", FeatureKind::groove, kLowEdge, kOver) == Toward::left);
}

TEST_CASE("All six sides of a stile in the mortiser") {
  const Assembly door = side_door();
  const Lie lie = lie_of(piece(door, "left stile"), kHighEdge, kUpright);
  CHECK(lie.at(Toward::up) == kHighEdge);
  CHECK(lie.at(Toward::table) == kLowEdge);
  CHECK(lie.at(Toward::fence) == kFace);
  CHECK(lie.at(Toward::machinist) == kBack);
  CHECK(lie.at(Toward::left) == kLowEnd);
  CHECK(lie.at(Toward::right) == kHighEnd);
}

TEST_CASE("A rail's tenon: upright its end is in the jig, its face to the fence") {
  const Assembly door = side_door();
  const Lie lie = lie_of(piece(door, "top rail"), kLowEnd, kOver);
  CHECK(lie.at(Toward::table) == kLowEnd);
  CHECK(lie.at(Toward::fence) == kFace);
  CHECK(lie.at(Toward::up) == kHighEnd);
}

TEST_CASE("On a sled the rail's end looks to the cutter and its face lies on the table") {
  const Assembly door = side_door();
  const Piece rail = piece(door, "top rail");
  const Lie lie = lie_of(rail, kHighEnd, kAtFence);
  CHECK(lie.at(Toward::fence) == kHighEnd);
  CHECK(lie.at(Toward::table) == kFace);
  CHECK(lie.at(Toward::left) == lie_of(rail, kLowEnd, kAtFence).at(Toward::right));
}

TEST_CASE("Fed past a blade the end goes first, and the face is at the fence") {
  const Lie lie = lie_of(piece(side_door(), "top rail"), kLowEnd, kFed);
  CHECK(lie.at(Toward::left) == kLowEnd);
  CHECK(lie.at(Toward::fence) == kFace);
}

TEST_CASE("What is worked in a face has its face edge at the fence, whichever face it is") {
  const Assembly door =
      wood(house_mm(R"("panels": 2, "panel": {"thickness": 24, "raised": "both"})"));
  const Piece panel = *std::find_if(door.pieces.begin(), door.pieces.end(),
                                    [](const Piece& it) { return it.role == Role::panel; });
  const bool edge_high = datum_of(panel).edge_high;
  for (const WorkedSide& face : {kFace, kBack}) {
    const Lie lie = lie_of(panel, face, kOver);
    CHECK(lie.at(Toward::table) == face);
    CHECK(lie.at(Toward::fence) == WorkedSide{1, edge_high});
  }
  CHECK(lie_of(panel, kFace, kOver).at(Toward::left) ==
        lie_of(panel, kBack, kOver).at(Toward::right));
}

TEST_CASE(
    "A case's sides, front edge to the fence and the inner face up, have their feet opposite") {
  const Assembly chest = example("apron-chest.json");
  CHECK(hand(chest, "left side", FeatureKind::housing, kBack, kUpright) == Toward::left);
  CHECK(hand(chest, "right side", FeatureKind::housing, kFace, kUpright) == Toward::right);
  const Lie lie = lie_of(piece(chest, "left side"), kBack, kUpright);
  CHECK(lie.at(Toward::fence) == kLowEdge);
}

// They lie across the case, some of their axes backwards; as pieces they are a door's.
TEST_CASE("The stiles of a case's framed ends lie as a door's do, whichever end they are of") {
  const Assembly store = example("sack-store.json");
  for (const std::string side : {"left side, ", "right side, "}) {
    CHECK(hand(store, side + "left stile", FeatureKind::mortise, kHighEdge, kUpright) ==
          Toward::left);
    CHECK(hand(store, side + "right stile", FeatureKind::mortise, kLowEdge, kUpright) ==
          Toward::right);
  }
}

TEST_CASE("A hinge's gain is told from the foot, in either stile") {
  for (const bool left : {true, false}) {
    const Assembly door = wood(house_mm(std::string(R"("hangs": ")") + (left ? "left" : "right") +
                                        R"(", "hinges": {"number": 2, "length": 100,
                                             "width": 38, "thickness": 3})"));
    CHECK(hand(door, left ? "left stile" : "right stile", FeatureKind::gain,
               left ? kLowEdge : kHighEdge, kUpright) == (left ? Toward::right : Toward::left));
  }
}

/// The datum of what is made so in a piece, by its side and what it is called.
DatumSide datum(const Assembly& wood, std::string_view name, FeatureKind makes) {
  for (const Operation& operation : making_of(wood).operations)
    for (const Run& run : operation.runs)
      if (operation.makes == makes && wood.pieces[run.piece].name == name)
        return datum_side(wood, run, operation.settings);
  throw std::invalid_argument("no such run");
}

// A jamb's width runs into the wall: its face side looks to the opening or the wall, but mortises
// and tenons are told from the front of the frame.
TEST_CASE("A frame's tenons and mortises lie against the front of the frame they are told from") {
  const Assembly frame = example("yard-frame.json");
  for (const FeatureKind makes : {FeatureKind::tenon, FeatureKind::mortise}) {
    CHECK(datum(frame, "left jamb", makes).side == kLowEdge);
    CHECK(datum(frame, "left jamb", makes).name == "face side");
  }
  CHECK(datum(frame, "head", FeatureKind::mortise).side == kLowEdge);
}

TEST_CASE("What is told from the front or the back of a case lies against that edge") {
  const Assembly shelves = example("recipe-shelves.json");
  const DatumSide pins = datum(shelves, "left side", FeatureKind::shelf_pin_holes);
  CHECK(pins.side == kLowEdge);
  CHECK(pins.name == "front edge");
  const DatumSide groove = datum(example("apron-chest.json"), "left side", FeatureKind::groove);
  CHECK(groove.side == kHighEdge);
  CHECK(groove.name == "back edge");
}

TEST_CASE("Hinge cups are told from the edge that the door hangs on, left or right") {
  const Assembly wardrobe = example("cover-wardrobe.json");
  std::vector<WorkedSide> sides;
  for (const Operation& operation : making_of(wardrobe).operations)
    if (operation.makes == FeatureKind::hinge_cup)
      for (const Run& run : operation.runs)
        sides.push_back(datum_side(wardrobe, run, operation.settings).side);
  CHECK(std::count(sides.begin(), sides.end(), kLowEdge) == 4);
  CHECK(std::count(sides.begin(), sides.end(), kHighEdge) == 4);
}

TEST_CASE("A leaf's joints lie against its face side, also where the leaf is the end of a case") {
  CHECK(datum(side_door(), "left stile", FeatureKind::mortise).side == kFace);
  const Assembly store = example("sack-store.json");
  for (const std::string side : {"left side, ", "right side, "})
    CHECK(datum(store, side + "left stile", FeatureKind::mortise).side == kFace);
}

/// Seen in a mirror: x runs the other way.
Piece mirrored(Piece piece) {
  for (std::size_t own = 0; own < 3; ++own)
    if (piece.place.axes[own] == Axis::x) piece.place.backwards[own] = !piece.place.backwards[own];
  return piece;
}

Toward opposite_hand(Toward toward) {
  if (toward == Toward::left) return Toward::right;
  return toward == Toward::right ? Toward::left : toward;
}

template <typename Check>
void for_every_run(Check check) {
  for (const Assembly& wood : all_examples())
    for (const Operation& operation : making_of(wood).operations)
      for (const Run& run : operation.runs)
        check(wood.pieces[run.piece], run);
}

TEST_CASE("A piece and its mirror image change hands, and nothing else changes") {
  constexpr Toward kAll[] = {Toward::left, Toward::right,     Toward::table,
                             Toward::up,   Toward::machinist, Toward::fence};
  for_every_run([&](const Piece& piece, const Run& run) {
    for (const Holding& holding : {kUpright, kOver, kAtFence}) {
      const Lie lie = lie_of(piece, run.side, holding);
      const Lie mirror = lie_of(mirrored(piece), run.side, holding);
      for (const Toward toward : kAll)
        CHECK(mirror.at(opposite_hand(toward)) == lie.at(toward));
    }
  });
}

TEST_CASE("Every side looks somewhere, and opposite sides opposite ways") {
  for_every_run([&](const Piece& piece, const Run& run) {
    for (const Holding& holding : {kUpright, kOver, kAtFence, kFed}) {
      const Lie lie = lie_of(piece, run.side, holding);
      for (std::size_t into = 0; into < 3; ++into) {
        const auto low = static_cast<unsigned>(lie.of({into, false}));
        const auto high = static_cast<unsigned>(lie.of({into, true}));
        CHECK((low ^ 1U) == high);  // as Toward lists them
      }
    }
  });
}

}  // namespace
}  // namespace haunch
