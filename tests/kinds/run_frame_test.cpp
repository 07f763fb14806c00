// Face frames that span several cases of a run: worked by hand, they add up over the frame.
#include <fmt/format.h>

#include <string>
#include <vector>

#include "checks.h"
#include "runs.h"

namespace haunch::test {
namespace {

const std::string kFree = R"("wall": {"lengths": 1500, "left": "free", "right": "free"}, )";

std::string in_words(const Chain& chain) {
  std::string words;
  for (const Chain::Link& link : chain.links)
    words += (words.empty() ? "" : ", ") + link.what + " " + decimal(link.length, Unit::mm);
  return words;
}

std::string chain_of(const Worked& run, const std::string& what) {
  for (const Chain& chain : run.chains)
    if (chain.what.starts_with(what)) return in_words(chain);
  return "no chain " + what;
}

/// A case with a face frame, its front divided so.
std::string framed(const std::string& layout, const std::string& frame = "{}") {
  return R"("face_frame": )" + frame + R"(, "layout": )" + layout;
}

const std::string kDoor = R"({"front": "door"})";
const std::string kDrawerAndDoor = R"({"rows": [{"front": "drawer"}, {"front": "door"}]})";

Cabinets two_cases(const std::string& frame = "{}") {
  return Cabinets()
      .with("b1", 600, framed(kDoor, frame))
      .with("b2", 900, framed(R"({"front": "pair"})", frame));
}

Box at(const Worked& run, const std::string& name) {
  return placed_blank(piece(run.assembly, name));
}

}  // namespace

TEST_CASE("One frame spans two cases, a mullion before the sides that meet") {
  const Worked run =
      two_cases().worked(kFree + R"("order": ["b1", "b2"], "frames": [["b1", "b2"]])");
  CHECK(chain_of(run, "along the wall") == "b1 600, b2 900");
  // Two sides of 18 and 3 packed between them: 39.
  CHECK(chain_of(run, "frame 1, across") ==
        "left stile 40, opening of b1 540.5, mullion 39, opening of b2 840.5, right stile 40");
  CHECK(chain_of(run, "behind frame 1") ==
        "frame over it 3, case of b1 595.5, packed 3, case of b2 895.5, frame over it 3");
  CHECK(run.assembly.size == Triple{mm(1500), mm(880), mm(560)});
  CHECK(count_role(run.assembly, "mullion") == 1);
  const Box mullion = at(run, "frame 1, mullion");
  CHECK(mullion.low[0] == at(run, "b1, right side").low[0]);
  CHECK(mullion.high[0] == at(run, "b2, left side").high[0]);
}

TEST_CASE("Its rails go right through, its mullion stands between them") {
  const Worked run = two_cases(R"({"joint": "screws"})")
                         .worked(kFree + R"("order": ["b1", "b2"], "frames": [["b1", "b2"]])");
  for (const char* rail : {"frame 1, top rail", "frame 1, bottom rail"}) {
    CHECK(at(run, rail).low[0] == mm(40));
    CHECK(at(run, rail).high[0] == mm(1460));
  }
  CHECK(at(run, "frame 1, mullion").low[1] == mm(140));
  CHECK(at(run, "frame 1, mullion").high[1] == mm(840));
  CHECK(at(run, "frame 1, left stile").extent(1) == mm(780));
}

TEST_CASE("The cases have no frames of their own, and the same gap stands round every front") {
  const Worked run =
      two_cases().worked(kFree + R"("order": ["b1", "b2"], "frames": [["b1", "b2"]])");
  int frames = 0;
  for (const Group& group : run.assembly.groups)
    frames += group.kind == GroupKind::face_frame ? 1 : 0;
  CHECK(frames == 1);
  const Length mullion = at(run, "frame 1, mullion").low[0];
  CHECK(at(run, "b1, door 1, left stile").low[0] == mm(42));
  CHECK(mullion - at(run, "b1, door 1, right stile").high[0] == mm(2));
  CHECK(at(run, "b2, door 1, left stile").low[0] - (mullion + mm(39)) == mm(2));
  CHECK(at(run, "b2, door 2, right stile").high[0] == mm(1458));
}

TEST_CASE("Fronts that lie over a frame leave one gap before its mullion") {
  Cabinets cabinets;
  for (const char* id : {"b1", "b2"})
    cabinets.with(id, 750, framed(kDoor) + R"(, "fronts": {"meets": "overlay"})");
  const Worked run = cabinets.worked(kFree + R"("order": ["b1", "b2"], "frames": [["b1", "b2"]])");
  CHECK(at(run, "b2, door 1, left stile").low[0] - at(run, "b1, door 1, right stile").high[0] ==
        mm(3));
}

TEST_CASE("Rails between drawers and doors end on the mullion, at the height of the run's line") {
  const Worked run = Cabinets()
                         .with("b1", 600, framed(kDrawerAndDoor))
                         .with("b2", 900, framed(kDrawerAndDoor))
                         .worked(kFree + R"("order": ["b1", "b2"], "frames": [["b1", "b2"]],
                             "lines": {"top-drawer": 140})");
  CHECK(chain_of(run, "frame 1 at b1, down") ==
        "top rail 40, row 1 144, rail 40, row 2 516, bottom rail 40, toe 100");
  CHECK(chain_of(run, "frame 1 at b2, down") == chain_of(run, "frame 1 at b1, down"));
  CHECK(at(run, "frame 1, rail 1").low[1] == at(run, "frame 1, rail 2").low[1]);
}

// Their own boards go up behind the bottom rail; one before the sides would stand in them there.
TEST_CASE("One toe board before cases with a frame is as high as their sides are cut out") {
  const Worked run = two_cases().worked(
      kFree + R"("order": ["b1", "b2"], "frames": [["b1", "b2"]], "toe": "one board")");
  CHECK(piece(run.assembly, "toe board").blank[1] == mm(100));
  for (const Finding& finding : check_assembly(run.assembly, Unit::mm))
    CHECK(finding.status != Status::fail);
}

TEST_CASE("What one case says of the frame goes for all of it") {
  const Worked run = Cabinets()
                         .with("b1", 600, framed(kDoor, R"({"stile_width": {"left": 50}})"))
                         .with("b2", 900, framed(kDoor, R"({"mullion_width": 60, "thickness": 22,
                                             "stile_width": {"right": 70}, "scribe": {"right": 5}})"))
                         .worked(kFree + R"("order": ["b1", "b2"], "frames": [["b1", "b2"]])");
  CHECK(chain_of(run, "frame 1, across") ==
        "left stile 50, opening of b1 520, mullion 60, opening of b2 795, right stile 75");
  CHECK(piece(run.assembly, "frame 1, left stile").blank[2] == mm(22));
}

TEST_CASE("A frame that is too long is divided at a mullion, into parts as even as can be") {
  Cabinets cabinets;
  for (const char* id : {"b1", "b2", "b3", "b4"})
    cabinets.with(id, 600, framed(kDoor, R"({"joint": "screws"})"));
  const Worked run = cabinets.worked(
      R"("wall": {"lengths": 2400, "left": "free", "right": "free"}, "longest_frame": 2000,
         "order": ["b1", "b2", "b3", "b4"], "frames": [["b1", "b2", "b3", "b4"]])");
  CHECK(chain_of(run, "frame 1, part 1, across") ==
        "left stile 40, opening of b1 540.5, mullion 39, opening of b2 561, right stile 19.5");
  CHECK(chain_of(run, "frame 1, part 2, across") ==
        "left stile 19.5, opening of b3 561, mullion 39, opening of b4 540.5, right stile 40");
  CHECK(at(run, "frame 1 part 1, right stile").high[0] ==
        at(run, "frame 1 part 2, left stile").low[0]);
}

TEST_CASE("One that is named twice in the order stands behind a frame by its second name") {
  const Worked run =
      Cabinets()
          .with("b1", 600, framed(kDoor))
          .worked(kFree + R"("order": ["b1", "b1", "b1"], "frames": [["b1-2", "b1-3"]])");
  CHECK(chain_of(run, "along the wall") ==
        "b1 600, between 3, b1-2 600, b1-3 600, too long by -303");
}

TEST_CASE("The twin of a run has its frames the other way round") {
  const std::string keys = kFree + R"("order": ["b1", "b2"], "frames": [["b1", "b2"]])";
  const Worked plain = two_cases().worked(keys);
  const Worked twin = two_cases().worked(keys + R"(, "mirror": true)");
  CHECK(chain_of(twin, "frame 1, across") ==
        "left stile 40, opening of b2 840.5, mullion 39, opening of b1 540.5, right stile 40");
  CHECK(at(twin, "frame 1, mullion").low[0] == mm(1500) - at(plain, "frame 1, mullion").high[0]);
}

TEST_CASE("What one frame cannot span is refused in words") {
  const auto refused = [](const std::string& frame, const std::string& second,
                          const std::string& keys) {
    return Cabinets()
        .with("b1", 600, framed(kDoor, frame))
        .with("b2", 600, second)
        .refusal_of(R"("wall": {"lengths": 3000}, )" + keys);
  };
  const std::string plain = framed(kDoor);
  const std::string both = R"("order": ["b1", "b2"], "frames": [["b1", "b2"]])";
  CHECK(refused("{}", plain, R"("order": ["b1", "b2"], "frames": [["b1"]])") ==
        "/frames/0: names one case, and a frame before one is its own; take it out, or name the "
        "next case too");
  CHECK(
      refused("{}", plain, R"("order": ["b1", {"gap": 300}, "b2"], "frames": [["b1", "b2"]])") ==
      R"(/frames/0/1: between "b1" and "b2" stands a gap; a frame spans cases side by side: move )"
      "it, or write a frame for each side of it");
  CHECK(refused("{}", R"("layout": {"front": "door"})", both) ==
        R"(/frames/0: "b2" has no face frame; write "face_frame": {} in it, or take it out here)");
  CHECK(
      refused("{}", plain + R"(, "toe": {"height": 80})", both) ==
      R"(/frames/0: "b1" has a toe of 100 mm, "b2" 80 mm; one frame lies on cases that are alike )"
      "in it: make them so, or give each a frame of its own");
  CHECK(refused(R"({"mullion_width": 38})", plain, both) ==
        "/frames/0: mullions of 38 mm do not cover the sides of two cases and the packing between "
        R"(them, 39 mm in all; make "mullion_width" so wide at least, or leave it out)");
  CHECK(
      refused(R"({"scribe": 10})", plain, both) ==
      R"(/frames/0: "b1" leaves 10 mm to scribe at its right, where the frame goes on over "b2"; )"
      R"(say "scribe" of its other side alone)");
  CHECK(refused(R"({"thickness": 20})", framed(kDoor, R"({"thickness": 22})"), both) ==
        R"(/frames/0: "b1" and "b2" do not say the same of "face_frame.thickness", and the frame )"
        "is one; write it alike, or in one of them");
  CHECK(
      refused("{}", plain, both + R"(, "longest_frame": 500)") ==
      "/longest_frame: is less than the 600 mm of b1 alone, and a frame is divided between cases; "
      "make it longer, or that case narrower");
}

}  // namespace haunch::test
