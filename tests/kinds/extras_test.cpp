// Extras: what comes with an item and has no place in it; and gaps between what is coated.
#include "extras.h"

#include "vocabulary.h"
#include "volume.h"

namespace haunch::test {
namespace {

std::string with_extra(const std::string& extra) {
  return house_mm(R"("species": "European oak", "extras": [{)" + extra + "}]");
}

constexpr std::string_view kCornice = R"("name": "cornice", "length": 1000, "width": 70, )"
                                      R"("thickness": 30)";

std::string cornice(const std::string& more) {
  return with_extra(std::string(kCornice) + ", " + more);
}

/// A spec's work with its extras beside it, as it is told.
Assembly laid(const std::string& spec) {
  const auto its = job(spec);
  Assembly wood = work(*its).assembly;
  lay_beside(wood, its->extras);
  return wood;
}

Piece one_extra(const std::string& spec) {
  const Assembly wood = laid(spec);
  REQUIRE(lies_beside(wood.pieces.back()));
  return wood.pieces.back();
}

}  // namespace

TEST_CASE("Extras are laid to the right of the work, each with the next mark") {
  const std::string spec =
      with_extra(R"("name": "stave", "quantity": 3, "length": 900, "width": 90, "thickness": 27, )"
                 R"("material": "European ash")");
  const Assembly plain = wood(house_mm());
  const Assembly all = laid(spec);
  REQUIRE(all.pieces.size() == plain.pieces.size() + 3);
  CHECK(all.pieces[plain.pieces.size()].name == "stave 1");
  CHECK(all.pieces.back().name == "stave 3");
  CHECK(extra_name(all.pieces.back()) == "stave");
  CHECK(all.pieces.back().material == "European ash");
  CHECK(all.groups.back().path == "extras");
  for (const std::size_t piece : pieces_of(all, all.groups.size() - 1))
    CHECK(placed_blank(all.pieces[piece]).low[0] > all.size[0]);
}

TEST_CASE("A board is no wood, and what says no material is of the species of the item") {
  CHECK(one_extra(cornice(R"("material": "birch plywood")")).matter == Matter::board);
  CHECK(one_extra(with_extra(std::string(kCornice))).matter == Matter::wood);
  CHECK(one_extra(with_extra(std::string(kCornice))).material.empty());
}

TEST_CASE("Two flat mitres take a square of the width away, two half ones") {
  const Piece its = one_extra(cornice(R"("cuts": [{"cut": "mitre", "in": "left", "longer": "upper"},
                          {"cut": "mitre", "in": "right", "longer": "upper"}])"));
  CHECK(volume_left(its) == Approx((1000 * 70 - 70 * 70) * 30));
}

TEST_CASE("A mitre with its face longer takes half a square of the thickness") {
  const Piece its =
      one_extra(cornice(R"("cuts": [{"cut": "mitre", "in": "left", "longer": "face"}])"));
  CHECK(volume_left(its) == Approx(1000 * 70 * 30 - 30 * 30 / 2 * 70));
}

TEST_CASE("Grooves and rebates are where they are said") {
  const Piece its = one_extra(
      cornice(R"("cuts": [{"cut": "groove", "in": "back", "from": 10, "width": 6, "depth": 8},
                          {"cut": "groove", "in": "upper", "from": 12, "width": 5, "depth": 9,
                           "at": 100, "length": 200},
                          {"cut": "rebate", "in": "face", "along": "right", "width": 15, "depth": 4}])"));
  REQUIRE(its.features.size() == 3);
  CHECK(its.features[0].cuts.front() == box(0, 10, 22, 1000, 16, 30));
  CHECK(its.features[1].cuts.front() == box(100, 61, 12, 300, 70, 17));
  CHECK(its.features[2].cuts.front() == box(985, 0, 0, 1000, 70, 4));
}

TEST_CASE("An ovolo is a quarter round as deep as it is wide") {
  const Piece its =
      one_extra(cornice(R"("edges": [{"edge": "lower", "profile": "ovolo", "width": 12}])"));
  REQUIRE(its.features.size() == 1);
  CHECK(size_of(its.features[0], SizeName::depth) == mm(12));
  // What is left of a square of 12 beside a quarter of a circle.
  const double gone = 1000.0 * 70 * 30 - volume_left(its);
  CHECK(gone > 12 * 12 * 0.2146 * 1000);  // its chords lie inside of the round
  CHECK(gone < 12 * 12 * 0.2146 * 1000 * 1.02);
}

TEST_CASE("A handed twin has its extras turned about") {
  const auto its = job(R"({"mirror": true, )" +
                       cornice(R"("cuts": [{"cut": "mitre", "in": "left", "longer": "upper"},
                                           {"cut": "hole", "in": "face", "at": 100, "diameter": 8}])")
                           .substr(1));
  REQUIRE(its->extras.front().cuts.size() == 2);
  CHECK(its->extras.front().cuts[0].in == Surface::right);
  CHECK(its->extras.front().cuts[1].start == mm(900));
}

TEST_CASE("What an extra cannot have is refused where it is written") {
  CHECK(refusal(cornice(R"("cuts": [{"cut": "mitre", "in": "face", "longer": "upper"}])")) ==
        "/extras/0/cuts/0: a mitre is cut on an end; write \"left\" or \"right\"");
  CHECK(refusal(cornice(
            R"("cuts": [{"cut": "groove", "in": "face", "from": 66, "width": 6, "depth": 8}])")) ==
        "/extras/0/cuts/0: reaches beyond its piece; make it less, or move it");
  CHECK(refusal(cornice(R"("cuts": [{"cut": "hole", "in": "face", "at": 100, "width": 8}])")) ==
        "/extras/0/cuts/0: \"diameter\" is missing; a hole has one\n"
        "/extras/0/cuts/0/width: a hole has none; take it out");
  CHECK(refusal(cornice(
            R"("edges": [{"edge": "lower", "profile": "ovolo", "width": 12, "depth": 10}])")) ==
        "/extras/0/edges/0: a quarter round is as deep as it is wide, below its fillet; leave "
        "\"depth\" out");
  CHECK(refusal(with_extra(R"("name": "cornice", "length": 1000)")) ==
        "/extras/0: \"width\" is missing; an extra has a length, a width and a thickness\n"
        "/extras/0: \"thickness\" is missing; an extra has a length, a width and a thickness");
}

// ---- gaps between what is coated

TEST_CASE("A gap is cut wider by the film on both sides of it") {
  const std::string film = R"("finish": {"system": "oil", "film": 0.1})";
  CHECK(wood(house_mm(film)).size[0] == mm(930 - 2 * 3.2));
  CHECK(wood(house_mm(film)).size[1] == mm(2060 - 2 * 3.2));
  CHECK(wood(house_mm(R"("finish": "oil")")).size[0] == mm(930 - 2 * 3));
  const Assembly pair = wood(house_mm(R"("leaves": 2, "meeting_clearance": 3, )" + film));
  const Neighbours leaves = neighbours_of(pair, *fits_that_stand(pair, StandsIn::beside).front());
  CHECK(placed_blanks(pair, leaves.right).low[0] - placed_blanks(pair, leaves.left).high[0] ==
        mm(3.2));
}

TEST_CASE("A set's gaps and a cabinet's are cut bare once, also where the shop tells the film") {
  const ShopDefaults film = shop(R"({"units": "mm", "finish": {"film": 0.1}})");
  const std::string set =
      R"({"kind": "doorset", "units": "mm", "leaf": {},
          "frame": {"leaf": {"width": 826, "height": 2040}, "clearance": 3}})";
  const Assembly doors = wood(set, &film);
  CHECK(fits_that_stand(doors, StandsIn::group).front()->room.left == mm(3.2));
  CHECK(doors.size[0] == wood(set).size[0] + mm(0.4));
  const std::string cabinet =
      R"({"kind": "cabinet", "units": "mm", "size": {"width": 600, "height": 870, "depth": 580},
          "fronts": {"meets": "inset", "gap": 2}, "layout": {"front": "door"}})";
  const Assembly bare = wood(cabinet, &film), finished = wood(cabinet);
  CHECK(piece(bare, "door 1, left stile").blank[0] ==
        piece(finished, "door 1, left stile").blank[0] - mm(0.4));
}

}  // namespace haunch::test
