// A shop file: the spec's value wins over the shop's, the shop's over the built-in.
#include "vocabulary.h"

namespace haunch::test {
namespace {

std::string shop_refusal(std::string_view json) {
  return in_lines(read_shop(value_of(json)).problems);
}

}  // namespace

TEST_CASE("The shop's value takes the place of the usual one, and is named as the shop's") {
  const ShopDefaults own = shop(R"({"units": "mm", "clearance": 4, "stile_width": 110,
                                    "tenon": {"bottom_clearance": 3}, "horn": 40})");
  const Worked worked = work(bare_house_mm(), &own);
  CHECK(worked.assembly.size[0] == mm(922));
  CHECK(piece(worked.assembly, "left stile").blank[1] == mm(110));
  CHECK(piece(worked.assembly, "left stile").horn == mm(40));
  CHECK(assumed(worked, "horn") == std::vector{mm(40)});
  CHECK(reasons(worked, "horn") == std::vector<std::string>{"the shop file"});
  CHECK(reasons(worked, "tenon.bottom_clearance") == std::vector<std::string>{"the shop file"});
  // What rests on it is chosen anew: two thirds of 110 are 73.
  CHECK(assumed(worked, "tenon_depth") == std::vector{mm(73)});
}

TEST_CASE("The spec's value wins over the shop's, and is not listed") {
  const ShopDefaults own = shop(R"({"units": "mm", "thickness": 50, "species": "ash"})");
  const Worked worked = work(house_mm(R"("thickness": 44, "species": "oak")"), &own);
  CHECK(worked.assembly.size[2] == mm(44));
  CHECK(assumed_under(worked, "thickness").empty());
  CHECK(assumed_under(worked, "species").empty());
  CHECK(job(house_mm(), &own)->species.all == "ash");
  CHECK(reasons(work(house_mm(), &own), "species") == std::vector<std::string>{"the shop file"});
}

TEST_CASE("A shop says how arches are made, not that there are any") {
  const ShopDefaults own = shop(R"({"units": "mm", "arch": {"at": "top", "tolerance": 1}})");
  CHECK(work(house_mm(), &own).assembly.beyond.empty());
  CHECK_FALSE(work(house_mm(R"("arch": {"rise": 80}, "panels": 2)"), &own).assembly.beyond.empty());
}

TEST_CASE("Members of a group are overlaid one by one") {
  const ShopDefaults own = shop(R"({"units": "mm", "clearance": {"foot": 8, "head": 4},
                                    "panel": {"gap": 2, "grain": "level"}})");
  const Worked worked =
      work(house_mm(R"("clearance": {"head": 5}, "panel": {"gap": {"along_grain": 0}})"), &own);
  CHECK(opening_of(worked.assembly).room.head == mm(5));
  CHECK(opening_of(worked.assembly).room.foot == mm(8));
  CHECK(opening_of(worked.assembly).room.left == mm(3));
  CHECK(assumed(worked, "panel.gap.across_grain") == std::vector{mm(2)});
  CHECK(assumed_under(worked, "panel.gap.along_grain").empty());
  CHECK(piece(worked.assembly, "panel, tier 1").place.axes[0] == Axis::x);
}

TEST_CASE("The shop may have its own rails and panels") {
  const ShopDefaults own = shop(R"({"units": "mm", "rail_widths": [90, 90, 90], "panels": 4})");
  const Worked worked = work(house_mm(), &own);
  CHECK(count_role(worked.assembly, "panel") == 4);
  CHECK(assumed(worked, "rail_widths") == std::vector{mm(90), mm(90), mm(90)});
  CHECK(reasons(worked, "panels") == std::vector<std::string>{"the shop file"});
  CHECK(count_role(wood(house_mm("\"rail_widths\": [100, 200], \"panels\": 1"), &own), "panel") ==
        1);
}

TEST_CASE("Bare numbers are in the units of the file they stand in") {
  const ShopDefaults inches = shop(R"({"units": "in", "horn": 2})");
  CHECK(piece(wood(house_mm(), &inches), "left stile").horn == inch(2));
  // A spec without units of its own takes the shop's.
  const Worked worked =
      work(R"({"kind": "door", "opening": {"width": 36, "height": 80}})", &inches);
  CHECK(worked.assembly.size[0] == inch(35, 3, 4));
  CHECK(reasons(worked, "units") == std::vector<std::string>{"the shop file"});
}

TEST_CASE("The shop's share of a fit gives way to the spec's") {
  const ShopDefaults own =
      shop(R"({"units": "mm", "tenon": {"thickness": 10}, "fit_allowance": 0.2})");
  // Alone: 10 + 0.2.
  CHECK(joint(wood(house_mm(), &own), "left stile", "top rail").mortise->width == mm(10.2));
  // With a mortise of 16 three would be given: the spec's stays.
  const Joint top =
      joint(wood(house_mm(R"("mortise": {"width": 16})"), &own), "left stile", "top rail");
  CHECK(top.mortise->width == mm(16));
  CHECK(top.tenon->thickness == mm(15.8));
}

TEST_CASE("A shop may take its kind of work for granted") {
  const ShopDefaults own = shop(R"({"kind": "door", "units": "mm"})");
  CHECK(refusal(R"({"opening": {"width": 930, "height": 2060}})", &own).empty());
}

TEST_CASE("A shop file names no single item") {
  for (const char* key : {"id", "note"})
    CHECK(shop_refusal("{\"" + std::string(key) + "\": \"side-door\"}")
              .starts_with("/" + std::string(key) + ": "));
  CHECK(shop_refusal(R"({"quantity": 2})").starts_with("/quantity: "));
  CHECK(shop_refusal(R"({"units": "mm", "opening": {"width": 930, "height": 2060}})")
            .starts_with("/opening: "));
  CHECK(shop_refusal(R"({"units": "mm", "cutters": []})") ==
        "/cutters: the list is empty; leave it out, or fill it");
  CHECK(shop_refusal("[1]") ==
        ": a list is not a shop file; write an object of the keys that a spec may leave out");
  CHECK(shop_refusal(R"({"horn": 25})").starts_with("/horn: 25 has no unit"));
}

TEST_CASE("A shop file holds what is for house doors and for cabinet doors beside the rest") {
  const ShopDefaults both = shop(R"({"units": "mm", "species": "ash", "groove_depth": 11,
      "house": {"thickness": 54, "tenon_depth": 70},
      "cabinet": {"thickness": 22, "tenon_depth": 8, "groove_depth": 9}})");
  const Assembly entry = wood(house_mm(), &both);
  CHECK(piece(entry, "left stile").blank[2] == mm(54));
  CHECK(joint(entry, "left stile", "top rail").tenon->depth == mm(70));
  CHECK(cuts(piece(entry, "left stile"), "groove").front().extent(1) == mm(11));
  const Assembly cupboard = wood(cabinet_mm(), &both);
  CHECK(piece(cupboard, "left stile").blank[2] == mm(22));
  CHECK(joint(cupboard, "left stile", "top rail").tenon->depth == mm(8));
  CHECK(cuts(piece(cupboard, "left stile"), "groove").front().extent(1) == mm(9));
  CHECK(reasons(work(cabinet_mm(), &both), "thickness") ==
        std::vector<std::string>{"the shop file"});
  CHECK(
      shop_refusal(R"({"units": "mm", "house": {"thicknes": 54}})").starts_with("/house/thicknes"));
  CHECK(shop_refusal(R"({"units": "mm", "house": {"units": "in"}})").starts_with("/house/units"));
  CHECK(shop_refusal(R"({"units": "mm", "house": 3})").starts_with("/house"));
}

TEST_CASE("Machines are read in the shop's order, with all that is told of them") {
  const ShopDefaults own = shop(R"({"units": "mm", "machines": [
    {"name": "mortiser", "does": ["mortise"],
     "cutters": [{"name": "16 mm chisel", "width": 16, "reach": 90}, {"name": "chain"}],
     "holds": [{"name": "vice", "length": {"least": 300, "most": 2200}, "room_below": 800}],
     "smallest": {"length": 150}, "set_minutes": 8, "piece_minutes": 1.5},
    {"name": "bench", "does": ["recess", "glue"]}]})");
  REQUIRE(own.spec.machines.size() == 2);
  const Machine& mortiser = own.spec.machines.front();
  CHECK(mortiser.does == std::vector{Process::mortise});
  CHECK(mortiser.cutters[0].width == mm(16));
  CHECK_FALSE(mortiser.cutters[1].width);
  CHECK(mortiser.holds[0].size[0].most == mm(2200));
  CHECK(mortiser.holds[0].room_below == mm(800));
  CHECK(mortiser.smallest[0] == mm(150));
  CHECK(mortiser.piece_minutes == 1.5);
  CHECK(own.spec.machines[1].does == std::vector{Process::recess, Process::glue});
}

TEST_CASE("Limits that nothing lies between are refused; a single size is none") {
  const auto held = [](std::string_view range) {
    return shop_refusal(R"({"units": "mm", "machines": [{"name": "saw", "does": ["rip"],
                            "holds": [{"name": "flat", "width": )" +
                        std::string(range) + "}]}]}");
  };
  CHECK(held(R"({"least": 300, "most": 200})") ==
        "/machines/0/holds/0/width/least: 300 is more than \"most\", 200; nothing goes into it");
  CHECK(held(R"({"least": 300, "most": 300})").empty());
  CHECK(held(R"({"least": 300})").empty());
}

TEST_CASE("Two machines of one name are refused, and a process that one does twice") {
  CHECK(shop_refusal(R"({"machines": [{"name": "saw", "does": ["rip", "rip"]},
                                      {"name": "saw", "does": ["crosscut"]}]})") ==
        "/machines/0/does/1: \"rip\" stands here twice; keep one\n"
        "/machines/1/name: \"saw\" is the name of another machine too; give each its own");
}

TEST_CASE("What is worked up has its datum at the fence, worked sideways on the table or there") {
  const auto held = [](std::string_view how) {
    return shop_refusal(R"({"machines": [{"name": "saw", "does": ["rip"],
                            "holds": [{"name": "flat", )" +
                        std::string(how) + "}]}]}");
  };
  CHECK(held(R"("datum": "table")") ==
        "/machines/0/holds/0/datum: the table is under what is worked up or down, so that its "
        "datum is at the fence; write \"fence\", or \"worked\": \"sideways\"");
  CHECK(held(R"("datum": "table", "worked": "sideways")").empty());
  CHECK(held(R"("datum": "fence", "worked": "sideways")").empty());
}

}  // namespace haunch::test
