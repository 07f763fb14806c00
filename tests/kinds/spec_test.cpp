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
        "/mortise/colour: unknown key; the keys here are \"width\" or \"from_face\"");
  CHECK(refusal(house_mm(R"("rail_widths": [{"widht": 100, "width": 100}, 230])")) ==
        "/rail_widths/0/widht: unknown key; did you mean \"width\"?");
  CHECK(refusal(house_mm("\"hinges\": 3")) ==
        "/hinges: unknown key; 'haunch schema spec' lists the keys");
}

TEST_CASE("Cutters are the shop's, not a spec's") {
  CHECK(refusal(house_mm("\"cutters\": [8, 10]")).starts_with("/cutters: unknown key"));
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
        "/thickness: true is not a length; write a number, or a text such as \"70 mm\" or \"2 3/4 "
        "in\"");
  CHECK(refusal(house_mm("\"thickness\": \"44,5 mm\""))
            .starts_with("/thickness: \"44,5 mm\" is not a length: "));
  CHECK(refusal(house_mm("\"thickness\": \"101 m\"")) ==
        "/thickness: \"101 m\" is too large; the most is 100 m");
}

TEST_CASE("Groups are objects, and only some may be one length") {
  CHECK(refusal(house_mm("\"tenon\": 5"))
            .starts_with("/tenon: 5 is not an object; the keys in it are \"thickness\", "));
  CHECK(refusal(R"({"kind": "door", "units": "mm", "opening": 930})") ==
        "/opening: 930 is not an object; the keys in it are \"width\" or \"height\"");
  CHECK(refusal(house_mm("\"groove\": []")) ==
        "/groove: a list is not an object; the keys in it are \"width\" or \"from_face\"");
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
        "/panels: 2.5 is not a whole number; write one from 1 to 50000");
  CHECK(refusal(house_mm("\"panels\": 0")) ==
        "/panels: 0 is out of range; it must be from 1 to 50000");
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
  CHECK(named->species == "oak");
  CHECK(named->quantity == 3);
  CHECK(named->unit == Unit::mm);
  const auto silent = job(house_in());
  CHECK(silent->id == "job");  // what the reader was told to call it
  CHECK(silent->name == "door");
  CHECK(silent->species.empty());
  CHECK(silent->quantity == 1);
  CHECK(silent->unit == Unit::inch);
}

TEST_CASE("A text with a line break in it is refused") {
  CHECK(refusal(house_mm(R"("name": "side\ndoor")"))
            .starts_with("/name: \"side door\" has a line break"));
}

}  // namespace haunch::test
