// What a spec may say, and what it is told when it says otherwise.
#include "vocabulary.h"

namespace haunch::test {

TEST_CASE("Only the opening has no default") {
  CHECK(refusal(R"({"kind": "door", "units": "mm"})") ==
        ": \"opening\" is missing; give \"opening\": {\"width\": …, \"height\": …}");
  CHECK(refusal(R"({"kind": "door", "units": "mm", "opening": {"width": 930}})") ==
        "/opening: \"height\" is missing; an opening has a width and a height");
  CHECK(refusal(house_mm()).empty());
}

TEST_CASE("An item says which kind of work it is") {
  CHECK(refusal(R"({"units": "mm", "opening": {"width": 930, "height": 2060}})") ==
        ": \"kind\" is missing; write \"kind\": \"door\"");
  CHECK(refusal(R"({"kind": "dor", "units": "mm", "opening": {"width": 930, "height": 2060}})") ==
        "/kind: \"dor\" is not known here; did you mean \"door\"?");
  CHECK(refusal("42") == ": 42 is not a spec; write an object, {\"kind\": \"door\", …}");
}

TEST_CASE("A bare number is in the spec's units, a text may carry its own") {
  const Assembly leaf = wood(house_in(R"("stile_width": 4.5, "thickness": "44 mm")"));
  CHECK(piece(leaf, "left stile").blank == Triple{inch(79, 3, 4), inch(4, 1, 2), mm(44)});
}

TEST_CASE("A bare number wants units, and that is said once") {
  CHECK(refusal(R"({"kind": "door", "opening": {"width": 930, "height": 2060}})") ==
        "/opening/width: 930 has no unit; give \"units\": \"mm\" or \"units\": \"in\", or write "
        "\"930 mm\" or \"930 in\"");
}

TEST_CASE("A misspelt key is told the nearest right one") {
  CHECK(refusal(house_mm("\"tenon_deph\": 70")) ==
        "/tenon_deph: unknown key; did you mean \"tenon_depth\"?");
  CHECK(refusal(house_mm(R"("tenon": {"relsh": 30})")) ==
        "/tenon/relsh: unknown key; did you mean \"relish\"?");
  CHECK(refusal(house_mm(R"("mortise": {"colour": 30})")) ==
        "/mortise/colour: unknown key; the keys here are \"ends\", \"width\", "
        "\"from_face\" and \"cutter\"");
  CHECK(refusal(house_mm(R"("rail_widths": [{"widht": 100, "width": 100}, 230])")) ==
        "/rail_widths/0/widht: unknown key; did you mean \"width\"?");
  CHECK(refusal(house_mm("\"handles\": 3")) ==
        "/handles: unknown key; 'haunch schema spec' lists the keys");
}

TEST_CASE("What is told names the figures, and what would be right") {
  CHECK(refusal(house_mm(
            R"("mortise": {"width": 16}, "tenon": {"thickness": 15.8}, "fit_allowance": 0.1)")) ==
        "/fit_allowance: mortise 16 mm less tenon 15.8 mm is 0.2 mm, not 0.1 mm; give two of "
        "mortise.width, tenon.thickness and fit_allowance");
  CHECK(refusal(cabinet_mm("\"rail_widths\": [21, 57]"))
            .starts_with("/rail_widths/0: the top rail is too narrow for a tenon: 21 mm less "
                         "groove_depth 9 mm less tenon.relish 12 mm; make it wider"));
  CHECK(refusal(house_mm("\"panels\": 5"))
            .ends_with("give a multiple of 2, or say how many in each tier from the top: "
                       "{\"across\": [2, 3]}"));
  CHECK(refusal(house_mm("\"stile_width\": 462")) ==
        "/stile_width: the stiles take 924 mm of the leaf's 924 mm; make them narrower");
  CHECK(refusal(house_mm(R"("mullion_width": 80, "muntin_width": 80)")) ==
        "/mullion_width: is the same thing as \"muntin_width\"; keep one of the two");
}

TEST_CASE("Cutters are the shop's, not a spec's") {
  CHECK(refused_at(house_mm("\"cutters\": [8, 10]")) == "/cutters");
}

TEST_CASE("A negative clearance is an error, 0 is none") {
  for (const char* key :
       {R"("clearance": -1)", R"("fit_allowance": -0.1)", R"("tenon": {"edge_clearance": -1})",
        R"("tenon": {"bottom_clearance": -1})", R"("panel": {"gap": -1})",
        R"("panel": {"allowance": -1})"})
    CHECK_FALSE(refusal(house_mm(key)).empty());
}

TEST_CASE("A size of 0 is too small where there must be wood") {
  for (const char* key :
       {"thickness", "stile_width", "muntin_width", "tenon_depth", "groove_depth"})
    CHECK(refusal(house_mm("\"" + std::string(key) + "\": 0")) ==
          "/" + std::string(key) + ": 0 is too small; it must be more than 0");
  CHECK(refusal(house_mm("\"rail_widths\": [100, 0]")) ==
        "/rail_widths/1: 0 is too small; it must be more than 0");
}

TEST_CASE("What is no length is told what one looks like") {
  CHECK(refusal(house_mm("\"thickness\": true")) ==
        "/thickness: true is not a length; write a number, or a text such as \"65 mm\" or \"2 "
        "9/16 in\"");
  CHECK(refusal(house_mm("\"thickness\": \"44,5 mm\""))
            .starts_with("/thickness: \"44,5 mm\" is not a length: "));
  CHECK(refusal(house_mm("\"thickness\": \"101 m\"")) ==
        "/thickness: \"101 m\" is too large; the most is 100 m");
}

TEST_CASE("Groups are objects, and only some may be one length") {
  CHECK(refusal(house_mm("\"tenon\": 5"))
            .starts_with("/tenon: 5 is not an object; the keys in it are \"thickness\", "));
  CHECK(refusal(R"({"kind": "door", "units": "mm", "opening": 930})") ==
        "/opening: 930 is not an object; the keys in it are \"width\", \"height\", \"widths\", "
        "\"heights\", "
        "\"diagonals\", \"follow\" and \"most_planed\"");
  CHECK(refusal(house_mm("\"groove\": []")) ==
        "/groove: a list is not an object; the keys in it are \"width\" and \"from_face\"");
  CHECK(refusal(house_mm(R"("stile_width": 118, "clearance": 4, "panel": {"gap": 2})")).empty());
}

TEST_CASE("Choices have few words") {
  CHECK(refusal(house_mm(R"("panel": {"rebate": "bak"})")) ==
        "/panel/rebate: \"bak\" is not known here; did you mean \"back\"?");
  CHECK(refusal(house_mm(R"("panel": {"grain": "diagonal"})")) ==
        "/panel/grain: \"diagonal\" is not known here; write \"upright\" or \"level\"");
}

TEST_CASE("Panels are a count, or so many across") {
  CHECK(refusal(house_mm("\"panels\": 2.5")) ==
        "/panels: 2.5 is not a whole number; write one from 1 to 5000");
  CHECK(refusal(house_mm("\"panels\": 0")) ==
        "/panels: 0 is out of range; it must be from 1 to 5000");
  CHECK(refusal(house_mm("\"panels\": {}")) ==
        "/panels: \"across\" is missing; write a number, or {\"across\": …}");
  CHECK(refusal(house_mm("\"panels\": {\"across\": []}")) ==
        "/panels/across: the list is empty; give the number of panels for each tier from the top");
}

TEST_CASE("All that is wrong is said at once") {
  const std::string wrong =
      refusal(house_mm(R"("thickness": true, "rail_widths": [100, "x"], "tenon": {"relish": -3})"));
  CHECK(wrong.find("/thickness: ") != std::string::npos);
  CHECK(wrong.find("/rail_widths/1: ") != std::string::npos);
  CHECK(wrong.find("/tenon/relish: ") != std::string::npos);
}

TEST_CASE("A job is called what the spec calls it") {
  const auto named = job(house_mm(
      R"("id": "side-door", "name": "side door", "note": "by Friday", "species": "oak",
         "quantity": 3)"));
  CHECK(named->id == "side-door");
  CHECK(named->kind == "door");
  CHECK(named->name == "side door");
  CHECK(named->note == "by Friday");
  CHECK(named->species.all == "oak");
  CHECK(named->quantity == 3);
  CHECK(named->unit == Unit::mm);
  const auto silent = job(house_in());
  CHECK(silent->id == "job");  // what the reader was told to call it
  CHECK(silent->name == "door");
  CHECK(silent->species.all.empty());
  CHECK(silent->quantity == 1);
  CHECK(silent->unit == Unit::inch);
}

TEST_CASE("A text with a line break in it is refused") {
  CHECK(refusal(house_mm(R"("name": "side\ndoor")"))
            .starts_with("/name: \"side door\" has a line break"));
}

}  // namespace haunch::test
