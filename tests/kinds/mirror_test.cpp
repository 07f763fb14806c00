// Handed twins: "mirror" turns what is worked about, and nothing of how it is told by its keys.
#include <algorithm>

#include "checks.h"
#include "reflected.h"
#include "twin_words.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

std::string mirrored(std::string spec) {
  return spec.insert(spec.find('{') + 1, "\"mirror\": true, ");
}

/// Where all its wood stands, whatever it is called.
std::vector<std::string> stands(const Assembly& wood) {
  std::vector<std::string> all;
  for (const Piece& piece : wood.pieces) {
    std::string text(word_of(piece.role));
    const Box box = placed_blank(piece);
    for (std::size_t axis = 0; axis < 3; ++axis)
      text += " " + decimal(box.low[axis], Unit::mm) + " to " + decimal(box.high[axis], Unit::mm);
    all.push_back(text);
  }
  std::sort(all.begin(), all.end());
  return all;
}

constexpr std::string_view kCabinet =
    R"({"kind": "cabinet", "units": "mm", "size": {"width": 900, "height": 870, "depth": 580},
        "face_frame": {"stile_width": {"left": 50, "right": 40}}, "fronts": {"hinges": {}},
        "layout": {"columns": [{"width": 300, "front": "door", "hangs": "right", "shelves": 1},
                               {"rows": [{"front": "fixed"}, {"front": "door"}]}]}})";
/// The same as a joiner would write its twin.
constexpr std::string_view kTwin =
    R"({"kind": "cabinet", "units": "mm", "size": {"width": 900, "height": 870, "depth": 580},
        "face_frame": {"stile_width": {"left": 40, "right": 50}}, "fronts": {"hinges": {}},
        "layout": {"columns": [{"rows": [{"front": "fixed"}, {"front": "door", "hangs": "right"}]},
                               {"width": 300, "front": "door", "shelves": 1}]}})";

}  // namespace

TEST_CASE("Names change sides by whole words") {
  CHECK(twin_words("door 1, left stile") == "door 1, right stile");
  CHECK(twin_words("right-leaf") == "left-leaf");
  CHECK(twin_words("left of the right bead") == "right of the left bead");
  CHECK(twin_words("upright, leftover") == "upright, leftover");
}

TEST_CASE("The twin of a cabinet is what its twin's spec gives") {
  const Assembly twin = wood(mirrored(std::string(kCabinet)));
  CHECK(stands(twin) == stands(wood(kTwin)));
  const auto plates = [](const Assembly& it, std::string_view name) {
    const Piece& side = piece(it, name);
    return std::count_if(side.features.begin(), side.features.end(),
                         [](const Feature& each) { return each.kind == FeatureKind::screw_hole; });
  };
  // The door over the fixed front hung at its left, on the partition; now at the partition's left.
  const Assembly other = wood(kTwin);
  for (const char* name : {"left side", "right side", "partition 1"})
    CHECK(plates(twin, name) == plates(other, name));
}

TEST_CASE("The twin of a twin is the plain one, pieces and joints by the same marks") {
  const Assembly plain = wood(kCabinet);
  const Assembly twice = reflected(reflected(plain));
  REQUIRE(twice.pieces.size() == plain.pieces.size());
  for (std::size_t i = 0; i < plain.pieces.size(); ++i) {
    CHECK(twice.pieces[i].mark == plain.pieces[i].mark);
    CHECK(twice.pieces[i].name == plain.pieces[i].name);
    CHECK(placed_blank(twice.pieces[i]) == placed_blank(plain.pieces[i]));
  }
  for (std::size_t i = 0; i < plain.joints.size(); ++i)
    CHECK(twice.joints[i].enters == plain.joints[i].enters);
}

TEST_CASE("The left of the twin has the marks that are the left's, whatever wood stands there") {
  const Assembly twin =
      wood(mirrored(bare_house_mm(R"("stile_width": {"left": 90, "right": 120})")));
  CHECK(piece(twin, "left stile").mark == "A");
  CHECK(piece(twin, "left stile").blank[1] == mm(120));
  CHECK(placed_blank(piece(twin, "left stile")).low[0] == Length());
}

TEST_CASE("A leaf of the twin hangs at the other side, with its lock across from it") {
  const Assembly twin = wood(mirrored(bare_house_mm(
      R"("hangs": "left", "hinges": {}, "lock": {"case": {"height": 165, "depth": 90,
         "thickness": 15}})")));
  const auto has = [&](std::string_view name, FeatureKind kind) {
    const Piece& stile = piece(twin, name);
    return std::any_of(stile.features.begin(), stile.features.end(),
                       [&](const Feature& it) { return it.kind == kind; });
  };
  CHECK(has("right stile", FeatureKind::gain));
  CHECK(has("left stile", FeatureKind::lock_mortise));
}

TEST_CASE("A twin is told by the keys of its spec") {
  const auto plain = job(bare_house_mm());
  const auto twin = job(mirrored(bare_house_mm()));
  CHECK(plain->levers().size() == twin->levers().size());
  const Worked one = work(*plain);
  const Worked other = work(*twin);
  REQUIRE(one.assumed.size() == other.assumed.size());
  for (std::size_t i = 0; i < one.assumed.size(); ++i)
    CHECK(one.assumed[i].key == other.assumed[i].key);
  CHECK(twin->name == "door, mirrored");
  CHECK(std::any_of(other.cautions.begin(), other.cautions.end(),
                    [](const Caution& it) { return it.about == "mirrored"; }));
  // What a remedy changes is still the twin's.
  for (const Lever& lever : twin->levers())
    if (lever.key == "stile_width.left")
      CHECK(piece(work(*twin->with(lever, mm(130))).assembly, "right stile").blank[1] == mm(130));
  CHECK(refused_at(mirrored(bare_house_mm(R"("stile_width": {"left": 900, "right": 90})"))) ==
        refused_at(bare_house_mm(R"("stile_width": {"left": 900, "right": 90})")));
}

TEST_CASE("Twins of sets, drawers, frames and what stands in them are found as good") {
  for (
      const std::string_view spec :
      {R"({"kind": "doorset", "units": "mm", "frame": {"wall_opening": {"width": 900, "height": 2100}},
            "leaf": {"hangs": "left", "hinges": {}}})",
       R"({"kind": "frame", "units": "mm", "wall_opening": {"width": 900, "height": 2100}})",
       R"({"kind": "drawer", "units": "mm", "opening": {"width": 420, "height": 150, "depth": 520},
            "meets": "overlay", "lap": {"left": 20, "right": 5, "head": 8, "foot": 8},
            "runner": {"side": 12.7, "length": 450}})",
       R"({"kind": "face-frame", "units": "mm", "size": {"width": 900, "height": 700},
            "layout": {"columns": [{"width": 300}, {}]}})"}) {
    const auto found = [](const Assembly& wood) {
      std::vector<std::string> all;
      for (const Finding& finding : check_assembly(wood, Unit::mm))
        all.push_back(std::string(finding.rule->check) + " " +
                      std::to_string(static_cast<int>(finding.status)));
      std::sort(all.begin(), all.end());
      return all;
    };
    CAPTURE(spec);
    const Assembly plain = wood(spec);
    CHECK(found(wood(mirrored(std::string(spec)))) == found(plain));
  }
}

TEST_CASE("A part alone cannot be mirrored") {
  CHECK(
      refusal(
          R"({"kind": "doorset", "units": "mm", "frame": {"wall_opening": {"width": 900, "height": 2100}},
                    "leaf": {"mirror": true}})") ==
      "/leaf/mirror: does not belong to the leaf of a set: the whole set is mirrored; take it "
      "out");
  CHECK(refusal(R"({"kind": "cabinet", "units": "mm", "size": {"width": 900, "height": 870,
                    "depth": 580}, "layout": {"front": "door", "mirror": true}})") ==
        "/layout/mirror: does not belong to a front of a cabinet: the whole cabinet is mirrored; "
        "take it out");
}

}  // namespace haunch::test
