// Faults put into sound cabinets on purpose, one at a time: the checks find each.

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "cabinet_oracle.h"
#include "checks.h"
#include "effort.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A case without a frame: a drawer on metal runners over a leaf with a loose shelf, beside a
/// partition an open part with a fixed shelf; cups and pins are bored.
constexpr const char* kFrameless = R"({"kind": "cabinet", "units": "mm",
  "size": {"width": 900, "height": 870, "depth": 580}, "case": {"joint": "JOINT"},
  "toe": {"by": "notched"}, "pin_rows": {"pitch": 32},
  "fronts": {"meets": "MEETS", "hinges": {}, "drawer": {"runner": {"side": 12.7, "length": 450}}},
  "layout": {"columns": [
    {"width": 420, "rows": [{"height": 160, "front": "drawer"},
                            {"front": "door", "shelves": 1}]},
    {"rows": [{"front": "none"}, {"front": "fixed"}]}]}})";

/// With a frame before it, and drawers on wooden runners.
constexpr const char* kFramed = R"({"kind": "cabinet", "units": "mm",
  "size": {"width": 900, "height": 870, "depth": 580}, "face_frame": {"joint": "FACE"},
  "fronts": {"drawer": {"runner": RUNNER}},
  "layout": {"columns": [
    {"front": "drawer", "grade": {"count": 3, "step": 20}}, {"front": "door", "shelves": 1}]}})";

std::string with(std::string spec, std::string_view word, std::string_view in_its_place) {
  const std::size_t at = spec.find(word);
  if (at != std::string::npos) spec.replace(at, word.size(), in_its_place);
  return spec;
}

/// What is not well, each with where it is.
std::vector<std::string> doubts_of(const Assembly& wood) {
  std::vector<std::string> all;
  for (const Finding& finding : check_assembly(wood, Unit::mm)) {
    if (finding.status == Status::ok) continue;
    std::string text(finding.rule->check);
    for (const std::size_t part : finding.parts)
      text += " " + wood.pieces[part].name;
    all.push_back(text);
  }
  return all;
}

/// Puts a fault in; false where there is nothing to put it in.
using Fault = std::function<bool(Assembly&)>;

Piece* first_called(Assembly& wood, std::string_view start, std::string_view group = "") {
  for (Piece& piece : wood.pieces)
    if (piece.name.starts_with(start) && wood.groups[piece.group].path.starts_with(group))
      return &piece;
  return nullptr;
}

/// A piece whose name begins so, longer in one of its own axes, at its far end.
Fault grown(std::string_view name, std::size_t axis, double by, std::string_view group = "") {
  return [=](Assembly& wood) {
    Piece* piece = first_called(wood, name, group);
    if (piece != nullptr) piece->blank[axis] += mm(by);
    return piece != nullptr;
  };
}

bool is_loose(const Assembly& wood, std::size_t piece) {
  return wood.pieces[piece].loose;
}

bool is_housed(const Assembly& wood, std::size_t piece) {
  return std::any_of(wood.joints.begin(), wood.joints.end(), [&](const Joint& joint) {
    return joint.enters == piece &&
           (joint.kind == JointKind::housing || joint.kind == JointKind::stopped_housing ||
            joint.kind == JointKind::tongue);
  });
}

/// The same of the first that is so.
Fault grown_if(bool (*is_so)(const Assembly&, std::size_t), std::string_view name, std::size_t axis,
               double by) {
  return [=](Assembly& wood) {
    for (std::size_t i = 0; i < wood.pieces.size(); ++i) {
      if (!wood.pieces[i].name.starts_with(name) || !is_so(wood, i)) continue;
      wood.pieces[i].blank[axis] += mm(by);
      return true;
    }
    return false;
  };
}

Fault shifted(std::string_view name, std::size_t axis, double by) {
  return [=](Assembly& wood) {
    Piece* piece = first_called(wood, name);
    if (piece != nullptr) piece->place.origin[axis] += mm(by);
    return piece != nullptr;
  };
}

/// A sound box of the first drawer, but wider than its runners leave it room.
bool widened_box(Assembly& wood) {
  Piece* side = first_called(wood, "drawer 1, right side");
  side->place.origin[0] += mm(2);
  for (const char* name : {"drawer 1, box front", "drawer 1, back", "drawer 1, bottom"})
    if (Piece* across = first_called(wood, name)) across->blank[0] += mm(2);
  return first_called(wood, "drawer 1, box front") != nullptr;
}

/// The first cut of a piece's features of one kind: a face of it moved.
Fault cut_off(std::string_view name, FeatureKind kind, const std::function<void(Box&)>& change) {
  return [=](Assembly& wood) {
    for (Piece& piece : wood.pieces) {
      if (!piece.name.starts_with(name)) continue;
      for (Feature& feature : piece.features)
        if (feature.kind == kind && !feature.cuts.empty()) {
          change(feature.cuts.front());
          return true;
        }
    }
    return false;
  };
}

/// All bores of the first feature of a kind, deeper or elsewhere along their piece.
Fault bored_off(FeatureKind kind, double deeper, double along) {
  return [=](Assembly& wood) {
    for (Piece& piece : wood.pieces)
      for (Feature& feature : piece.features) {
        if (feature.kind != kind || feature.prisms.empty()) continue;
        for (Prism& prism : feature.prisms) {
          // Bores run along the thickness, from one of its faces.
          const bool from_low = prism.from == Length();
          (from_low ? prism.to : prism.from) += from_low ? mm(deeper) : -mm(deeper);
          for (Corner& corner : prism.outline)
            corner.u += mm(along);
        }
        return true;
      }
    return false;
  };
}

struct Case {
  const char* what;
  Fault fault;
};

std::vector<Case> cases() {
  const auto deeper = [](Box& box) {
    // From the face that it is cut in, on the thickness.
    if (box.low[2] == Length())
      box.high[2] += mm(1);
    else
      box.low[2] -= mm(1);
  };
  const auto higher = [](Box& box) {
    box.low[0] += mm(1);
    box.high[0] += mm(1);
  };
  const auto wider = [](Box& box) { box.high[0] += mm(1); };
  return {
      {"a side 2 mm too long", grown("left side", 0, 2)},
      {"a side 2 mm too wide", grown("left side", 1, 2)},
      {"a bottom 2 mm too long", grown("bottom", 0, 2)},
      {"a bottom 2 mm too short", grown("bottom", 0, -2)},
      {"a top 2 mm too long", grown("top", 0, 2, "case")},
      {"a partition 2 mm too long", grown("partition", 0, 2)},
      {"a partition 2 mm too short", grown("partition", 0, -2)},
      {"a housing 1 mm too deep", cut_off("left side", FeatureKind::housing, deeper)},
      {"a housing 1 mm too high", cut_off("left side", FeatureKind::housing, higher)},
      {"a housing 1 mm too wide", cut_off("left side", FeatureKind::housing, wider)},
      {"a fixed shelf 1 mm too long", grown_if(is_housed, "shelf 1", 0, 1)},
      {"a fixed shelf 1 mm too short", grown_if(is_housed, "shelf 1", 0, -1)},
      {"a housed shelf 1 mm too thick", grown_if(is_housed, "shelf 1", 2, 1)},
      {"a loose shelf 4 mm too long", grown_if(is_loose, "shelf", 0, 4)},
      {"a leaf's stile 2 mm too wide", grown("door 1, right stile", 1, 2)},
      {"a leaf's stiles 2 mm too long", grown("door 1, left stile", 0, 2)},
      {"a plain front 2 mm too wide", grown("front 1", 1, 2)},
      {"a plain front 2 mm too high", grown("front 1", 0, 2)},
      {"a drawer's front 2 mm too wide", grown("drawer 1, front", 0, 2)},
      {"a drawer's front 2 mm too high", grown("drawer 1, front", 1, 2)},
      {"a cup 5 mm too deep", bored_off(FeatureKind::hinge_cup, 5, 0)},
      {"a row of pin holes 5 mm too high", bored_off(FeatureKind::shelf_pin_holes, 0, 5)},
      {"pin holes 6 mm too deep", bored_off(FeatureKind::shelf_pin_holes, 6, 0)},
      {"a packing strip 2 mm too far in", shifted("packing", 0, 2)},
      {"a drawer's box 2 mm too wide", widened_box},
      {"a drawer's side 2 mm out", shifted("drawer 1, right side", 0, 2)},
      {"a drawer's side 2 mm too thick", grown("drawer 1, right side", 2, 2)},
      {"a drawer's back 2 mm too long", grown("drawer 1, back", 0, 2)},
      {"a drawer's bottom 4 mm too wide", grown("drawer 1, bottom", 0, 4)},
      {"a runner 2 mm too high", shifted("runner 1", 1, 2)},
      {"a runner 2 mm too low", shifted("runner 1", 1, -2)},
      {"a guide 2 mm too far in", shifted("guide 1", 0, 2)},
      {"a back 2 mm too wide", grown("back", 1, 2, "case")},
      {"a back 2 mm too long", grown("back", 0, 2, "case")},
      {"a back 2 mm too thick", grown("back", 2, 2, "case")},
      {"a rail of the frame 2 mm too long", grown("top rail", 0, 2, "face-frame")},
      {"a rail of the frame 2 mm too wide", grown("rail 1", 1, 2, "face-frame")},
      {"a stile of the frame 2 mm too wide", grown("left stile", 1, 2, "face-frame")},
      {"a mullion 2 mm too long", grown("mullion", 0, 2, "face-frame")},
      {"a toe board 2 mm too long", grown("toe board", 0, 2)},
  };
}

TEST_CASE("Each fault that is put into a sound cabinet is found", "[wood]") {
  std::vector<Assembly> sound;
  for (const char* joint : {"housed", "stopped-housing", "rebated", "tongued", "butted"})
    for (const char* meets : {"inset", "overlay"})
      sound.push_back(wood(with(with(kFrameless, "JOINT", joint), "MEETS", meets)));
  for (const char* joint : {"mortise-and-tenon", "dowel", "half-lap", "butted"})
    for (const char* runner : {R"({"kind": "wood"})", R"({"side": 12.7, "length": 450})"})
      sound.push_back(wood(with(with(kFramed, "FACE", joint), "RUNNER", runner)));
  std::vector<std::vector<std::string>> doubts_before;
  for (const Assembly& cabinet : sound)
    doubts_before.push_back(doubts_of(cabinet));
  // With less effort in fewer of them, each fault from another one on.
  const std::int64_t wanted = times_effort(static_cast<std::int64_t>(sound.size()));
  std::size_t first = 0;
  for (const Case& its : cases()) {
    std::int64_t put_in = 0;
    ++first;
    for (std::size_t each = 0; each < sound.size() && put_in < wanted; ++each) {
      const std::size_t i = (first + each) % sound.size();
      Assembly faulty = sound[i];
      if (!its.fault(faulty)) continue;
      ++put_in;
      INFO(its.what << " in " << i);
      CHECK(doubts_of(faulty) != doubts_before[i]);
    }
    INFO(its.what);
    CHECK(put_in > 0);
  }
}

TEST_CASE("The second opinion is not blind", "[wood]") {
  const Assembly sound =
      wood(with(with(kFramed, "FACE", "dowel"), "RUNNER", R"({"side": 12.7, "length": 450})"));
  CHECK(faults_at_rest(sound).empty());
  CHECK(faults_of_gaps(sound).empty());
  CHECK(faults_of_loose_shelves(sound, mm(3)).empty());
  CHECK(faults_on_the_way(sound).empty());
  const auto faulty = [&](const Fault& fault) {
    Assembly cabinet = sound;
    REQUIRE(fault(cabinet));
    return cabinet;
  };
  CHECK_FALSE(faults_at_rest(faulty(grown("bottom", 0, 1))).empty());
  CHECK_FALSE(faults_at_rest(faulty(grown("left side", 1, 1))).empty());
  CHECK_FALSE(faults_of_gaps(faulty(grown("drawer 1, front", 0, 1))).empty());
  CHECK_FALSE(faults_of_loose_shelves(faulty(grown_if(is_loose, "shelf", 0, 1)), mm(3)).empty());
  // The box of a drawer goes by the stiles with 12.7 to spare.
  CHECK_FALSE(faults_on_the_way(faulty(grown("left stile", 1, 13, "face-frame"))).empty());
}

}  // namespace
}  // namespace haunch::test
