// Overlay and rebated leaves, by hand.
#include <cmath>

#include "findings.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A rebated house door: 924 x 2054 stand in the opening; 13 of lip left, right and at the head.
std::string rebated_mm(std::string_view more = {}) {
  return house_mm(R"("meets": "rebate", "thickness": 40, "lip_thickness": 14.5, )"
                  R"("rail_widths": [113, {"width": 195, "top": 960}, 230])" +
                  std::string(more.empty() ? "" : ", ") + std::string(more));
}

}  // namespace

TEST_CASE("An overlay leaf is its opening and its laps") {
  const Assembly wood =
      work(cabinet_mm(R"("meets": "overlay", "lap": {"left": 16, "right": 7.5, "head": 15})"))
          .assembly;
  CHECK(wood.size == Triple{mm(423.5), mm(715), mm(20)});
  CHECK(findings(wood, "lap-left").front().value == mm(16));
  CHECK(findings(wood, "lap-right").front().value == mm(7.5));
  CHECK(findings(wood, "lap-head").front().value == mm(15));
  CHECK(findings(wood, "lap-foot").empty());
  CHECK(findings(wood, "opening-width").empty());
  CHECK(doubted(wood) == kNothing);
}

TEST_CASE("A lap under 3 mm is doubted; one that is not as designed fails") {
  CHECK(doubted(wood(cabinet_mm(R"("meets": "overlay", "lap": 2.5)"))) ==
        std::vector<std::string>{"lap-left", "lap-right", "lap-head", "lap-foot"});
  Assembly small = wood(cabinet_mm(R"("meets": "overlay", "lap": 16)"));
  opening_of(small).width += mm(1);
  CHECK(findings(small, "lap-right").front().status == Status::fail);
  CHECK(findings(small, "lap-right").front().value == mm(15));
}

TEST_CASE("A rebated leaf stands in its opening behind its lip, and laps it before") {
  const Assembly leaf = work(rebated_mm()).assembly;
  CHECK(leaf.size == Triple{mm(950), mm(2067), mm(40)});
  // From 14.5 on, 13 wide along the edge and, beside that, across the upper end.
  CHECK(cuts(piece(leaf, "left stile"), "lip-rebate") ==
        std::vector<Box>{box(0, 0, 14.5, 2067, 13, 40), box(2054, 13, 14.5, 2067, 100, 40)});
  CHECK(cuts(piece(leaf, "right stile"), "lip-rebate") ==
        std::vector<Box>{box(0, 87, 14.5, 2067, 100, 40), box(2054, 0, 14.5, 2067, 87, 40)});
  // A tenon of two thirds of 100 - 13: 58. 950 less two stiles of 100 is 750.
  CHECK(piece(leaf, "top rail").blank[0] == mm(866));
  CHECK(cuts(piece(leaf, "top rail"), "lip-rebate").front() == box(0, 100, 14.5, 866, 113, 40));
  CHECK(cuts(piece(leaf, "bottom rail"), "lip-rebate").empty());
  CHECK(findings(leaf, "opening-width").front().value == mm(6));
  CHECK(findings(leaf, "opening-height").front().value == mm(6));
  for (const char* side : {"lap-left", "lap-right", "lap-head"})
    CHECK(findings(leaf, side).front().value == mm(10));
  // The relish: a third of 113 - 13, and 13.
  CHECK(joint(leaf, "left stile", "top rail").tenon->each.back().from_edge +
            joint(leaf, "left stile", "top rail").tenon->each.back().width ==
        mm(67));
  CHECK(doubted(leaf) == kNothing);
}

TEST_CASE("A groove is filled as far as the edge of a lip, whose rebate takes what is behind it") {
  const Assembly leaf = work(rebated_mm()).assembly;
  // The tenon to 113 less its relish of 46 is 67; from there on the haunch, 113 less 67 long.
  for (const char* stile : {"left stile", "right stile"}) {
    const TenonSpan haunch = joint(leaf, stile, "top rail").tenon->haunches.back();
    CHECK(haunch.from_edge == mm(67));
    CHECK(haunch.width == mm(46));
  }
  // 866 long with tenons of 58; the haunch 11 deep in a groove of 12, 13 to 27 from the face. In
  // the last step of the lip the rail ends 11 past its shoulders, up to the rebate at 14.5.
  const Piece rail = piece(leaf, "top rail");
  std::vector<Box> seen = {box(47, 112.9, 13.1, 819, 113, 14.5)};
  for (const Feature& feature : rail.features)
    seen = less(std::move(seen), feature.cuts);
  CHECK(seen == std::vector<Box>{box(47, 112.9, 13.1, 819, 113, 14.5)});
  // A stub stands in the groove over the whole edge too.
  const Assembly stub = work(rebated_mm(R"("tenon_depth": 12)")).assembly;
  const TenonSpan tenon = joint(stub, "left stile", "top rail").tenon->each.back();
  CHECK(tenon.from_edge + tenon.width == mm(113));
}

TEST_CASE("Wood behind a mortise counts up to the rebate") {
  const Assembly deep = work(rebated_mm(R"("tenon_depth": 81)")).assembly;
  // 100 less 81 and 2 of clearance is 17; the rebate takes 13 of them.
  CHECK(findings(deep, "mortise-behind").front().value == mm(4));
  CHECK(findings(deep, "mortise-behind").front().status == Status::caution);
}

TEST_CASE("A cabinet's lip goes all round, half as thick as its leaf") {
  const Assembly leaf = work(cabinet_mm(R"("meets": "rebate")")).assembly;
  // 396 x 696 and 10 all round.
  CHECK(leaf.size == Triple{mm(416), mm(716), mm(20)});
  CHECK(cuts(piece(leaf, "bottom rail"), "lip-rebate").front().low[2] == mm(10));
  CHECK(findings(leaf, "lap-foot").front().value == mm(8));
  CHECK(doubted(leaf) == kNothing);
}

TEST_CASE("By DIN 18101 a rebated leaf of 860 x 1985 hangs in a wall of 885 x 2005") {
  const Assembly set =
      work(
          R"({"kind": "doorset", "units": "mm", "frame": {"wall_opening": {"width": 885, "height": 2005},
              "rule": "din-18101-rebated", "head_joint": "rebated", "jamb_thickness": 22, "stop": {"kind": "rebate"}},
              "leaf": {"thickness": 40, "lip_thickness": 14.5, "rail_widths": [113, {"width": 195, "top": 960}, 200]}})")
          .assembly;
  const Piece& left = piece(set, "left stile");
  CHECK(piece(set, "right stile").place.origin[0] + mm(100) - left.place.origin[0] == mm(860));
  CHECK(left.blank[0] == mm(1985));
  CHECK(left.place.origin[2] == mm(-14.5));
  // 25.5 of the leaf and 1.5 of play stand in the frame's rebate.
  CHECK(cuts(piece(set, "left jamb"), "rebate").front().high[1] == mm(27));
  CHECK(findings(set, "gap-left").front().value == mm(3));
  CHECK(findings(set, "gap-stop").front().value == mm(1.5));
  CHECK(findings(set, "lip-rest").front().value == mm(0));
  CHECK(findings(set, "lip-left").front().value == mm(10));
  CHECK(findings(set, "lip-head").front().value == mm(10));
  // The pin at the lip's edge: 847 to the far edge behind the lip, 46 behind the pin, and the
  // frame's face 20.5 behind it; 850 to the jamb.
  const double reach = std::sqrt(847.0 * 847 + 46.0 * 46 - 20.5 * 20.5);
  const double room =
      static_cast<double>(findings(set, "swing-room").front().value.steps()) / Length::kStepsPerMm;
  CHECK(std::abs(room - (850 - reach)) < 1e-5);
  CHECK(doubted(set) == kNothing);
}

TEST_CASE("From wall to leaf, a leaf with lips is told over them and in the frame") {
  std::string text;
  for (const NamedRoom& room :
       work(R"({"kind": "doorset", "units": "mm", "leaf": {"thickness": 40}, "frame": {
               "wall_opening": {"width": 885, "height": 2005}, "rule": "din-18101-rebated"}})")
           .rooms)
    text += room.what + " " + decimal(room.width, Unit::mm) + " x " +
            decimal(room.height, Unit::mm) + "\n";
  // 13 of lip at each side and at the head; 3 from each jamb, 3 from the head and 10 at the foot.
  CHECK(
      text.find("room for the leaf 840 x 1985\nleaf 860 x 1985\nleaf in the frame 834 x 1972\n") !=
      std::string::npos);
}

TEST_CASE("A pair's lips are at its outer edges") {
  const Assembly pair = work(door_spec(R"("units": "mm", "opening": {"width": 800, "height": 700})",
                                       R"("leaves": 2, "meets": "rebate", "meeting_lap": 10)"))
                            .assembly;
  CHECK(pair.size[0] == mm(816));
  CHECK(cuts(piece(pair, "left leaf, left stile"), "lip-rebate").front().high[1] == mm(10));
  CHECK(cuts(piece(pair, "left leaf, right stile"), "lip-rebate").front() ==
        box(0, 0, 10, 10, 67, 20));
  CHECK(findings(pair, "lap-left").front().value == mm(8));
  CHECK(findings(pair, "meeting-lap").front().value == mm(8));
  CHECK(doubted(pair) == kNothing);
}

TEST_CASE("The rebate behind a lip takes the ends of what comes out at the leaf's edges") {
  // A leaf of 924 x 2050 with a lip of 13, 16 thick; the tenon stands 14.5 from the face.
  const Assembly leaf = wood(house_mm(R"("meets": "rebate", "joint": "through")"));
  const Box cut = cuts(piece(leaf, "lock rail"), "lip-rebate").front();
  CHECK(cut.low[0] == mm(0));
  CHECK(cut.high[0] == mm(13));
  CHECK(cuts(piece(leaf, "wedge of lock rail"), "lip-rebate").size() == 1);
  for (const char* joint : {"through", "bridle", "half-lap", "dowel", "twin"}) {
    INFO(joint);
    CHECK(failing(wood(house_mm(R"("meets": "rebate", "joint": {"corner": ")" + std::string(joint) +
                                R"("})"))) == kNothing);
  }
}

TEST_CASE("Sight edges are rebated or moulded whatever a leaf's outer edges are") {
  for (const char* edge : {"rebated", "coped", "mitred"})
    for (const char* meets : {R"("meets": "rebate")", R"("meets": "overlay", "lap": 16)",
                              R"("meets": "rebate", "leaves": 2, "meeting_lap": 12)"}) {
      const std::string more = R"("edge": ")" + std::string(edge) + R"(", )" + meets;
      INFO(more);
      CHECK(failing(work(door_spec(R"("units": "mm", "opening": {"width": 1500, "height": 2060})",
                                   more))
                        .assembly) == kNothing);
    }
}

TEST_CASE("What an overlay or rebated leaf cannot be is told at its key") {
  CHECK(refused_at(cabinet_mm(R"("meets": "over")")) == "/meets");
  CHECK(refused_at(cabinet_mm(R"("meets": "overlay")")) == "/meets");
  CHECK(refused_at(cabinet_mm(R"("meets": "overlay", "lap": 16, "clearance": 2)")) == "/clearance");
  CHECK(refused_at(cabinet_mm(R"("meets": "overlay", "lap": 16, "lip_thickness": 8)")) ==
        "/lip_thickness");
  CHECK(refused_at(cabinet_mm(R"("lap": 16)")) == "/lap");
  CHECK(refused_at(cabinet_mm(R"("meets": "rebate", "lap": 2)")) == "/lap");
  CHECK(refused_at(cabinet_mm(R"("meets": "rebate", "lip_thickness": 20)")) == "/lip_thickness");
  CHECK(refused_at(cabinet_mm(R"("meets": "rebate", "lap": 57)")) == "/lap");
  CHECK(refused_at(cabinet_mm(R"("meets": "rebate", "tenon": {"relish": 10})")) == "/tenon/relish");
  CHECK(refused_at(cabinet_mm(R"("meets": "rebate", "hinges": {"number": 2})")) == "/hinges");
  CHECK(refused_at(cabinet_mm(R"("meets": "rebate", "joint": "through", "lap": 20,
                                  "stile_width": 60, "wedge": {"length": 39})")) ==
        "/wedge/length");
  CHECK(refused_at(cabinet_mm(R"("meets": "rebate", "joint": "twin", "thickness": 40)")).empty());
}

TEST_CASE("Through its seasons an overlay leaf keeps its lap, a rebated one its gap and its lap") {
  const std::string oak =
      R"("species": "European oak", "moisture": {"low": 6, "build": 8, "high": 14}, )";
  for (const char* meets : {R"("meets": "overlay", "lap": 16)", R"("meets": "rebate")"}) {
    INFO(meets);
    const auto its = job(cabinet_mm(oak + meets));
    std::size_t laps = 0;
    std::size_t gaps = 0;
    for (const Finding& it : check_job(its->work().assembly, *its)) {
      if (!it.moisture) continue;
      if (it.rule->check.starts_with("lap-")) ++laps;
      if (it.rule->check.starts_with("opening-")) ++gaps;
      CHECK(it.status != Status::fail);
    }
    CHECK(laps == 8);
    CHECK(gaps == (std::string(meets).find("overlay") != std::string::npos ? 0 : 8));
  }
}

}  // namespace haunch::test
