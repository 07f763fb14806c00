// Pairs of leaves, square and rebated, by hand.
#include <algorithm>
#include <cmath>

#include "findings.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A pair in an opening of 1206 x 2050: both leaves with their gap are 1200 x 2044.
std::string pair_mm(std::string_view more = {}) {
  return door_spec(
      R"("units": "mm", "leaves": 2, "opening": {"width": 1206, "height": 2050}, "clearance": 3, )"
      R"("stile_width": {"left": 100, "right": 90}, "rail_widths": [100, {"width": 195, "top": 960}, 230])",
      more);
}

}  // namespace

TEST_CASE(
    "A square pair shares its opening evenly, hanging stiles outside, meeting stiles inside") {
  const Assembly wood = work(pair_mm()).assembly;
  // (1200 - 3) / 2 = 598.5 each.
  CHECK(wood.size == Triple{mm(1200), mm(2044), mm(44)});
  CHECK(piece(wood, "left leaf, left stile").blank[1] == mm(100));
  CHECK(piece(wood, "left leaf, right stile").blank[1] == mm(90));
  CHECK(piece(wood, "left leaf, right stile").place.origin[0] == mm(508.5));
  CHECK(piece(wood, "right leaf, left stile").place.origin[0] == mm(601.5));
  CHECK(piece(wood, "right leaf, left stile").blank[1] == mm(90));
  CHECK(piece(wood, "right leaf, right stile").place.origin[0] == mm(1100));
  CHECK(finding(wood, "meeting-front").value == mm(3));
  CHECK(finding(wood, "meeting-back").value == mm(3));
  CHECK(doubted(wood) == kNothing);
}

TEST_CASE("Rebated meeting stiles are seen equally wide; the one behind goes on by the lap") {
  const Assembly wood = work(pair_mm(R"("meeting_lap": 13, "meeting_rest": 2)")).assembly;
  const Piece& behind = piece(wood, "left leaf, right stile");
  const Piece& before = piece(wood, "right leaf, left stile");
  // Seen from 508.5 to 598.5, the gap, and on from 601.5; behind as far as 611.5.
  CHECK(behind.blank[1] == mm(103));
  CHECK(behind.place.origin[0] == mm(508.5));
  CHECK(before.blank[1] == mm(90));
  CHECK(before.place.origin[0] == mm(601.5));
  // (44 - 2) / 2 = 21 thick in front, 2 apart, 21 thick behind.
  CHECK(cuts(behind, "meeting-rebate").front() == box(0, 90, 0, 2044, 103, 23));
  CHECK(cuts(before, "meeting-rebate").front() == box(0, 0, 21, 2044, 13, 44));
  CHECK(finding(wood, "meeting-front").value == mm(3));
  CHECK(finding(wood, "meeting-back").value == mm(3));
  CHECK(finding(wood, "meeting-rest").value == mm(2));
  CHECK(finding(wood, "meeting-lap").value == mm(10));
  CHECK(finding(wood, "meeting-sight").value == mm(0));
  // 598.5 less 100 and 90, in both leaves.
  CHECK(piece(wood, "left leaf, top rail").blank[0] ==
        piece(wood, "right leaf, top rail").blank[0]);
  CHECK(joint(wood, "left leaf, left stile", "left leaf, top rail").tenon->depth == mm(51));
  CHECK(doubted(wood) == kNothing);
}

TEST_CASE("A fitting of a pair is on the leaf that it names, and told from that leaf's left edge") {
  // The right leaf begins at 598.5 + 3 = 601.5.
  const auto plate = [](std::string_view on) {
    return pair_mm(
        R"("fittings": [{"name": "plate", "on": ")" + std::string(on) +
        R"(", "into": "face", "at": 250, "cuts": [{"length": 60, "width": 40, "depth": 3}]}])");
  };
  const auto recess_in = [&](std::string_view on) {
    const Assembly wood = work(plate(on)).assembly;
    std::size_t number = 0;
    for (const Piece& its : wood.pieces)
      for (const Feature& feature : its.features)
        number += feature.fitting ? 1U : 0U;
    CHECK(number == 1);
    return placed(cuts(piece(wood, on), "recess").front(), piece(wood, on).place).low[0];
  };
  CHECK(recess_in("left leaf, lock rail") == mm(250));
  CHECK(recess_in("right leaf, lock rail") == mm(601.5 + 250));
  CHECK(refusal(plate("lock rail")) ==
        "/fittings/0/on: both leaves of the pair have a \"lock rail\"; write \"left leaf, lock "
        "rail\" or \"right leaf, lock rail\"");
}

TEST_CASE("The leaf that opens first laps before the other, whichever it is") {
  const Assembly wood =
      work(pair_mm(R"("meeting_lap": 13, "meeting_rest": 2, "active": "left")")).assembly;
  CHECK(piece(wood, "left leaf, right stile").blank[1] == mm(90));
  CHECK(cuts(piece(wood, "left leaf, right stile"), "meeting-rebate").front() ==
        box(0, 77, 21, 2044, 90, 44));
  CHECK(piece(wood, "right leaf, left stile").blank[1] == mm(103));
  CHECK(piece(wood, "right leaf, left stile").place.origin[0] == mm(588.5));
  CHECK(cuts(piece(wood, "right leaf, left stile"), "meeting-rebate").front() ==
        box(0, 0, 0, 2044, 13, 23));
  CHECK(doubted(wood) == kNothing);
}

TEST_CASE("The gap of a pair is measured in the wood, before and behind") {
  Assembly wood = work(pair_mm(R"("meeting_lap": 13)")).assembly;
  for (Piece& its : wood.pieces)
    if (its.name == "right leaf, left stile")
      for (Feature& feature : its.features)
        if (feature.kind == FeatureKind::meeting_rebate) feature.cuts.clear();
  // Without its rebate the stile in front stands in the tongue behind it.
  CHECK(finding(wood, "fouling").status == Status::fail);
  CHECK(finding(wood, "meeting-back").value == mm(-10));
  CHECK(finding(wood, "meeting-front").value == mm(3));
}

TEST_CASE("Panels proud of the frame are not where leaves meet") {
  // 44 thick, the tongue of 14.6 stands 14.7 behind the face: a panel of 40 stands 10.7 proud.
  for (const std::string raised : {"front", "back", "both"}) {
    for (const std::string lap : {"0", "13"}) {
      INFO(raised << ", lap " << lap);
      const std::string thickness = raised == "both" ? "60" : "40";
      const Assembly wood = work(pair_mm(R"("meeting_lap": )" + lap + R"(, "panel": {"raised": ")" +
                                         raised + R"(", "thickness": )" + thickness + "}"))
                                .assembly;
      CHECK(finding(wood, "panel-flush").value > mm(7));
      CHECK(finding(wood, "meeting-front").value == mm(3));
      CHECK(finding(wood, "meeting-back").value == mm(3));
      CHECK(finding(wood, "meeting-sight").value == mm(0));
      CHECK(doubted(wood) == std::vector<std::string>{"panel-flush"});
    }
  }
}

TEST_CASE("A small lap is told") {
  CHECK(doubted(work(pair_mm(R"("meeting_lap": 8)")).assembly) ==
        std::vector<std::string>{"meeting-lap"});
}

TEST_CASE("Both leaves of a pair hang at the outside; the lock is in the one that opens first") {
  const Assembly wood =
      work(pair_mm(R"("hinges": {"number": 3}, "lock": {"case": )"
                   R"({"height": 150, "depth": 60, "thickness": 15}, "height": 1100})"))
          .assembly;
  CHECK(cuts(piece(wood, "left leaf, left stile"), "gain").size() == 3);
  CHECK(cuts(piece(wood, "right leaf, right stile"), "gain").size() == 3);
  CHECK(cuts(piece(wood, "right leaf, left stile"), "lock-mortise").size() == 1);
  CHECK(cuts(piece(wood, "left leaf, right stile"), "lock-mortise").empty());
}

TEST_CASE("In their frame rebated leaves swing one after the other") {
  const Assembly wood = work(R"({"kind": "doorset", "units": "mm", "leaves": 2, "meeting_lap": 13,
              "frame": {"leaf": {"width": 1200, "height": 2044}}})")
                            .assembly;
  CHECK(doubted(wood).empty());
  REQUIRE(hangings_of(wood).size() == 2);
  const Fit& meeting = *fits_that_stand(wood, StandsIn::beside).front();
  CHECK(wood.groups[meeting.group].path == "right-leaf");
  CHECK(meeting.meets == Meets::rebate);
  // The corner at the back of the right leaf's rebate passes the front of the tongue that it laps:
  // 22.75 behind the face, 28.75 behind the pin. It is 598.5 + 1.5 - 13 = 587 from the pin and 50
  // behind it, the tongue 590.
  const double reach = std::sqrt(587.0 * 587 + 50.0 * 50 - 28.75 * 28.75);
  const std::vector<Finding> all = check_assembly(wood, Unit::mm);
  const auto right = std::find_if(all.begin(), all.end(), [&](const Finding& it) {
    return it.rule->check == "swing-room" &&
           it.parts.front() == piece_number(wood, "right leaf, left stile");
  });
  REQUIRE(right != all.end());
  const double room = static_cast<double>(right->value.steps()) / Length::kStepsPerMm;
  CHECK(std::abs(room - (590 - reach)) < 1e-5);
}

TEST_CASE("What a pair cannot be is told at its key") {
  CHECK(refused_at(house_mm(R"("meeting_lap": 13)")) == "/meeting_lap");
  CHECK(refused_at(house_mm(R"("active": "left")")) == "/active");
  CHECK(refused_at(pair_mm(R"("meeting_lap": 3)")) == "/meeting_lap");
  CHECK(refused_at(pair_mm(R"("meeting_lap": 13, "joint": "through")")) == "/joint");
  CHECK(refused_at(pair_mm(R"("meeting_lap": 90)")) == "/meeting_lap");
  CHECK(refused_at(pair_mm(R"("meeting_lap": 13, "meeting_rest": 44)")) == "/meeting_rest");
  CHECK(refused_at(pair_mm(R"("meeting_rest": 2)")) == "/meeting_rest");
  CHECK(refused_at(pair_mm(R"("meeting_clearance": 1200)")) == "/meeting_clearance");
  CHECK(refused_at(pair_mm(R"("hangs": "left", "hinges": {"number": 2})")) == "/hangs");
  CHECK(refused_at(pair_mm(R"("active": "middle")")) == "/active");
}

TEST_CASE("The gap of a pair closes as its stiles swell") {
  const std::string wet =
      R"("species": "European oak", "moisture": {"low": 8, "build": 8, "high": 16})";
  const auto its = job(pair_mm(wet));
  bool told = false;
  for (const Finding& it : check_job(its->work().assembly, *its)) {
    if (it.rule->check != "meeting-gap") continue;
    told = true;
    CHECK(it.value < mm(3));
    CHECK(it.value > mm(-3));
  }
  CHECK(told);
}

}  // namespace haunch::test
