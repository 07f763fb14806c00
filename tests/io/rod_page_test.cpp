// What the sheet of a cabinet tells along its sides and partitions, and how it is parted.
#include "joinery_page.h"
#include "pages.h"

namespace haunch::test {
namespace {

std::string cabinet(std::string_view more) {
  return R"({"kind": "cabinet", "units": "mm", "size": {"width": 900, "height": 870, "depth": 580},
             "case": {"material": "birch plywood", "thickness": 18, "joint_depth": 6}, )" +
         std::string(more) + "}";
}

std::string joinery(const std::string& spec) {
  const Assembly its = wood(spec);
  return text_of(joinery_page(its, making_of(its), LengthPrinter(Unit::mm, {})));
}

}  // namespace

TEST_CASE("A side's housings, notch and pins stand in one list from its lower end") {
  // The bottom, 18, stands on the toe of 100 in a housing 0.1 wider; what is left counts from the
  // far end: 870 in all.
  const std::string page = part_of(rod_page, cabinet(R"("toe": {"height": 100, "setback": 60},
      "layout": {"front": "door", "shelves": 1})"));
  INFO(page);
  CHECK(tells(page, "A B front toe notch 0.00 100.00 770.00 60"));
  CHECK(tells(page, "A B inner housing C 99.95 118.05 751.95 6"));
  CHECK(tells(page, "A B inner end rebate D 852.00 870.00 0.00 6"));
  CHECK(tells(page, "A B inner pins: 5 at 32"));
  CHECK(tells(page, "the sides are a pair, mirrored"));
}

TEST_CASE("A row of pins that leaves some holes out is told in stretches") {
  // Two shelves, five holes about each: 10 holes are not all 32 apart.
  const std::string page = part_of(rod_page, R"({"kind": "cabinet", "units": "mm",
      "size": {"width": 800, "height": 720, "depth": 330}, "case": {"thickness": 18},
      "layout": {"front": "pair", "shelves": 2}})");
  INFO(page);
  CHECK(tells(page, "A B inner pins: 5 at 32 168 296 424 10 5 37, 261"));
  CHECK(tells(page, "A B inner pins: 5 at 32 392 520 200 10 5 37, 261"));
}

TEST_CASE("A cabinet's joinery is told for the case, then frame, fronts and drawers") {
  const std::string page = joinery(cabinet(R"("face_frame": {"thickness": 20},
      "layout": {"rows": [{"front": "drawer", "height": 150}, {"front": "door"}]})"));
  INFO(page);
  const std::size_t kcase = page.find("---- CASE\n");
  const std::size_t frame = page.find("---- FACE FRAME\n");
  const std::size_t fronts = page.find("---- FRONTS\n");
  const std::size_t drawers = page.find("---- DRAWERS\n");
  CHECK(kcase < frame);
  CHECK(frame < fronts);
  CHECK(fronts < drawers);
  CHECK(drawers != std::string::npos);
  // What is to be known of the stiles of frame and door stands with them.
  CHECK(page.substr(frame, fronts - frame).find("left and right, face edges together") !=
        std::string::npos);
  CHECK(page.substr(drawers).find("TENONS") == std::string::npos);
}

TEST_CASE("Tails that are all alike are told in a row: the first, the step, the last") {
  const std::string page = part_of(tail_page, R"({"kind": "drawer", "units": "mm",
      "opening": {"width": 420, "height": 150, "depth": 520}, "species": "European oak"})");
  INFO(page);
  CHECK(tells(page, "on end into line lap number from every wide to in"));
  CHECK(tells(page, "B C front A 15 5 6 7.25 23.0 17.0 139.25 1.875"));
  CHECK(!tells(page, "at the shoulder"));
}

TEST_CASE("Tails of what lies flat in a case are marked from its front edge") {
  const std::string page = joinery(R"({"kind": "cabinet", "units": "mm", "species": "oak",
      "size": {"width": 600, "height": 760, "depth": 400},
      "case": {"material": "oak", "thickness": 20, "joint": "lapped-dovetail"},
      "layout": {"front": "none"}})");
  INFO(page);
  CHECK(tells(page, "DOVETAILS, tails from the front edge\n"));
}

}  // namespace haunch::test
