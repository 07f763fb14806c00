// Top rails arched below, and leaves whose top is arched, by hand.
#include <fmt/format.h>

#include <cmath>

#include "arch.h"
#include "findings.h"
#include "polyhedron.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// 924 x 2054: 724 between stiles of 100.
std::string arched_mm(std::string_view more = R"("arch": {"rise": 90})") {
  return house_mm(R"("stile_width": 100, "rail_widths": [110, {"width": 195, "top": 960}, 230], )" +
                  std::string(more));
}

double in_mm(Length length) {
  return static_cast<double>(length.steps()) / Length::kStepsPerMm;
}

Length size(const Piece& its, std::string_view kind, std::string_view name) {
  for (const Feature& feature : its.features)
    for (const NamedSize& one : feature.sizes)
      if (word_of(feature.kind) == kind && word_of(one.name) == name) return one.size;
  throw std::invalid_argument("no such size");
}

/// The same leaf in an opening whose head rises 120 over its 930: r = (465^2 + 120^2) / 240.
constexpr double kOpening = 960.9375;

std::string topped_mm(std::string_view more = R"("arch": {"rise": 120, "at": "both"})") {
  return arched_mm(more);
}

/// Height above the foot of a curve of that radius, so far from the middle of the leaf. Its crown
/// would stand 2057 high were it the opening's.
double height(double radius, double off) {
  return 2057 - kOpening + std::sqrt(radius * radius - off * off);
}

/// A stile's feature of a kind, moved up but for what is at the blank's end.
Assembly moved_up(Assembly wood, std::string_view name, std::string_view kind, Length by) {
  for (Piece& its : wood.pieces)
    for (Feature& feature : its.features)
      for (Prism& prism : feature.prisms)
        for (Corner& corner : prism.outline)
          if (its.name == name && word_of(feature.kind) == kind && corner.u < its.blank[0])
            (its.place.axes[0] == Axis::y ? corner.u : corner.v) += by;
  return wood;
}

struct Spot {
  double x, y;
};

double to_line(const Spot& from, const Spot& a, const Spot& b) {
  const double x = b.x - a.x;
  const double y = b.y - a.y;
  const double along =
      std::clamp(((from.x - a.x) * x + (from.y - a.y) * y) / (x * x + y * y), 0.0, 1.0);
  return std::hypot(from.x - a.x - along * x, from.y - a.y - along * y);
}

/// The lines that bound what a feature takes, in the leaf's axes.
std::vector<std::pair<Spot, Spot>> lines_of(const Piece& its, const Feature& feature) {
  std::vector<std::pair<Spot, Spot>> lines;
  const bool upright = its.place.axes[0] == Axis::y;
  const auto spot = [&](const Corner& corner) {
    return Spot{in_mm((upright ? corner.v : corner.u) + its.place.origin[0]),
                in_mm((upright ? corner.u : corner.v) + its.place.origin[1])};
  };
  for (const Prism& prism : feature.prisms)
    for (std::size_t i = 0; i < prism.outline.size(); ++i)
      lines.emplace_back(spot(prism.outline[i]),
                         spot(prism.outline[(i + 1) % prism.outline.size()]));
  return lines;
}

using Lines = std::vector<std::pair<Spot, Spot>>;

/// From places all along a circle about the middle of the leaf, as far as the lines go, to the
/// nearest of them: what chords leave it by, square to the curve.
double farthest(const Lines& lines, const Spot& centre, double radius) {
  double left = lines.front().first.x;
  double right = left;
  for (const auto& [a, b] : lines) {
    left = std::min({left, a.x, b.x});
    right = std::max({right, a.x, b.x});
  }
  constexpr int kPlaces = 2'000;
  double most = 0;
  for (int i = -kPlaces; i <= kPlaces; ++i) {
    const double angle = std::acos(0.0) * i / kPlaces;
    const Spot place{centre.x + radius * std::sin(angle), centre.y + radius * std::cos(angle)};
    if (place.x < left || place.x > right) continue;
    double least = radius;
    for (const auto& [a, b] : lines)
      least = std::min(least, to_line(place, a, b));
    most = std::max(most, least);
  }
  return most;
}

/// The most that anything arched in a leaf leaves its circle. All circles have one middle.
double farthest_in(const Assembly& wood) {
  const Piece& rail = piece(wood, "top rail");
  double centre_y = 0;
  for (const Feature& feature : rail.features) {
    if (feature.kind == FeatureKind::arched_head)
      centre_y = in_mm(size(rail, word_of(feature.kind), "centre_from_foot"));
    if (feature.kind == FeatureKind::arch && centre_y == 0)
      centre_y = 2054 - 110 - in_mm(size(rail, word_of(feature.kind), "radius"));
  }
  const Spot centre{in_mm(wood.size[0]) / 2, centre_y};
  double most = 0;
  for (const Piece& its : wood.pieces)
    for (const Feature& feature : its.features) {
      if (feature.prisms.empty()) continue;
      // A panel's rebate follows its top, as wide as the grooves are deep.
      const double radius = feature.kind == FeatureKind::rebate
                                ? in_mm(size(its, "arched-top", "radius")) - 12
                                : in_mm(size(its, word_of(feature.kind), "radius"));
      most = std::max(most, farthest(lines_of(its, feature), centre, radius));
    }
  if (opening_of(wood).arch.empty()) return most;
  Lines opening;
  for (std::size_t i = 1; i < opening_of(wood).arch.size(); ++i) {
    const Corner& a = opening_of(wood).arch[i - 1];
    const Corner& b = opening_of(wood).arch[i];
    opening.push_back({{in_mm(a.u), in_mm(a.v)}, {in_mm(b.u), in_mm(b.v)}});
  }
  return std::max(most,
                  farthest(opening, centre, in_mm(size(rail, "arched-head", "opening_radius"))));
}

}  // namespace

TEST_CASE("The radius of an arch follows from span and rise") {
  const Assembly wood = work(arched_mm()).assembly;
  const Piece& rail = piece(wood, "top rail");
  // (724^2 / 4 + 90^2) / 180
  const double radius = 139144.0 / 180;
  CHECK(std::abs(in_mm(size(rail, "arch", "radius")) - radius) < 1e-5);
  CHECK(std::abs(in_mm(size(rail, "arch", "along_curve")) - 2 * radius * std::asin(362 / radius)) <
        1e-5);
  CHECK(std::abs(in_mm(size(rail, "groove", "radius")) - radius - 12) < 1e-5);
  CHECK(std::abs(in_mm(size(rail, "groove", "along_curve")) -
                 2 * (radius + 12) * std::asin(362 / (radius + 12))) < 1e-5);
  CHECK(size(rail, "arch", "span") == mm(724));
}

TEST_CASE("The blank of an arched rail holds crown and rise") {
  const Assembly wood = work(arched_mm()).assembly;
  const Piece& rail = piece(wood, "top rail");
  CHECK(rail.blank[1] == mm(200));
  CHECK(rail.place.origin[1] == mm(1854));
  // The panel goes up to the crown, 1944, and 12 - 3 into the groove; from 960 less 12 - 1.
  const Piece& panel = piece(wood, "panel, tier 1");
  CHECK(panel.place.origin[1] + panel.blank[0] == mm(1953));
  CHECK(panel.place.origin[1] == mm(949));
  CHECK(doubted(wood) == kNothing);
}

TEST_CASE("Bite and room along an arch are measured in the wood, as designed to the step") {
  const Assembly wood = work(arched_mm()).assembly;
  bool told = false;
  for (const Finding& it : findings(wood, "panel-room")) {
    if (!wood.joints[*it.joint].arched) continue;
    told = true;
    CHECK(it.value == mm(3));
  }
  CHECK(told);
  Assembly high = wood;
  for (Piece& its : high.pieces)
    if (its.name == "panel, tier 1") its.place.origin[1] += mm(2);
  for (const Finding& it : findings(high, "panel-room"))
    if (high.joints[*it.joint].arched) CHECK(it.value == mm(1));
  for (const Finding& it : findings(high, "panel-bite"))
    if (high.joints[*it.joint].arched) CHECK(it.value == mm(11));
}

TEST_CASE("The tenon loses what the groove takes at the shoulder") {
  const Assembly wood = work(arched_mm()).assembly;
  const double radius = 139144.0 / 180;
  const double lost = std::sqrt((radius + 12) * (radius + 12) - 362 * 362) -
                      std::sqrt(radius * radius - 362.0 * 362);
  const Joint& its = joint(wood, "left stile", "top rail");
  const double from = in_mm(its.tenon->each.front().from_edge);
  // 13.552, or what a chord within 0.1 of the curve makes of it, up to whole millimetres.
  CHECK(from == 14);
  CHECK(from == std::ceil(lost));
  CHECK(from == std::ceil(lost - 0.12));
}

TEST_CASE("Chords keep the tolerance, and a closer one has more of them") {
  Arch arch{mm(100), mm(724), mm(1854), mm(90), mm(0.1)};
  const double radius = arch.radius();
  const int chords = chords_of(arch);
  CHECK(chords % 2 == 0);
  const double angle = 2 * std::asin(in_mm(mm(362)) / (radius / Length::kStepsPerMm)) / chords;
  CHECK(radius / Length::kStepsPerMm * (1 - std::cos(angle / 2)) <= 0.1);
  arch.tolerance = mm(0.01);
  CHECK(chords_of(arch) > chords * 2);
  const auto line = arch_line(arch, Length(), mm(100), mm(824), Heights::up);
  CHECK(line.front() == Corner{mm(100), mm(1854)});
  CHECK(line.back() == Corner{mm(824), mm(1854)});
  CHECK(std::any_of(line.begin(), line.end(), [](const Corner& it) {
    return it == Corner{mm(462), mm(1944)};
  }));
}

TEST_CASE("Half a circle rises by half its span") {
  const Assembly wood =
      work(cabinet_mm(R"("arch": {"shape": "semicircular"}, "rail_widths": [57, 57])")).assembly;
  // 396 less two stiles of 57.
  const Piece& rail = piece(wood, "top rail");
  CHECK(size(rail, "arch", "rise") == mm(141));
  CHECK(size(rail, "arch", "radius") == mm(141));
  CHECK(rail.blank[1] == mm(198));
  for (const std::string& check : doubted(wood))
    CHECK(check != "panel-room");
  CHECK(findings(wood, "fouling").front().value == mm(0));
}

TEST_CASE("A thick panel's rebate follows the arch") {
  const Assembly wood =
      work(arched_mm(R"("arch": {"rise": 90}, "panel": {"thickness": 22})")).assembly;
  CHECK(doubted(wood) == kNothing);
  const Assembly level =
      work(
          arched_mm(
              R"("arch": {"rise": 90}, "panel": {"thickness": 22, "grain": "level", "rebate": "both"})"))
          .assembly;
  CHECK(doubted(level) == kNothing);
}

TEST_CASE("What an arch cannot be is told at its key") {
  CHECK(refused_at(arched_mm(R"("arch": {"rise": 363})")) == "/arch/rise");
  CHECK(refused_at(arched_mm(R"("arch": {"rise": 0})")) == "/arch/rise");
  CHECK(refused_at(arched_mm(R"("arch": {"tolerance": 1})")) == "/arch/tolerance");
  CHECK(refused_at(arched_mm(R"("arch": {"shape": "semicircular", "rise": 90})")) == "/arch/rise");
  CHECK(refused_at(arched_mm(R"("arch": {"shape": "ogee"})")) == "/arch/shape");
  CHECK(refused_at(arched_mm(R"("arch": {"rise": 90, "tolerance": "0.00001 mm"})")) ==
        "/arch/tolerance");
  CHECK(refused_at(arched_mm(R"("arch": {"rise": 90}, "panels": {"across": [2, 1]})")) ==
        "/panels");
}

TEST_CASE("Through its seasons a panel keeps clear of its arch") {
  const auto its = job(arched_mm(
      R"("arch": {"rise": 90}, "species": "European oak", "moisture": {"low": 7, "build": 9, "high": 12})"));
  std::size_t told = 0;
  const Assembly wood = its->work().assembly;
  for (const Finding& it : check_job(wood, *its)) {
    if (!it.moisture || it.rule->check != "panel-room" || !wood.joints[*it.joint].arched) continue;
    ++told;
    CHECK(it.status == Status::ok);
  }
  CHECK(told == 2);
}

TEST_CASE("An arched top is concentric with its opening, nearer by the clearance") {
  const Assembly wood = work(topped_mm()).assembly;
  const Piece& rail = piece(wood, "top rail");
  CHECK(in_mm(size(rail, "arched-head", "opening_radius")) == kOpening);
  CHECK(in_mm(size(rail, "arched-head", "radius")) == kOpening - 3);
  CHECK(in_mm(size(rail, "arched-head", "centre_from_foot")) == 2057 - kOpening);
  // The rail is even, 110: 957.9375 less that; groove and panel go with it.
  CHECK(in_mm(size(rail, "arch", "radius")) == kOpening - 113);
  CHECK(in_mm(size(rail, "groove", "radius")) == kOpening - 101);
  CHECK(in_mm(size(piece(wood, "panel, tier 1"), "arched-top", "radius")) == kOpening - 104);
  // sqrt(847.9375^2 - 362^2) is 766.782, 81.156 less than the radius.
  CHECK(std::abs(in_mm(size(rail, "arch", "rise")) - 81.156) < 0.001);
  const double turn = std::asin(462 / (kOpening - 3));
  CHECK(std::abs(in_mm(size(rail, "arched-head", "along_curve")) - 2 * turn * (kOpening - 3)) <
        1e-5);
  CHECK(doubted(wood) == kNothing);
}

TEST_CASE("The blanks of an arched top hold its curves, up to whole millimetres") {
  const Assembly wood = work(topped_mm()).assembly;
  const Piece& stile = piece(wood, "left stile");
  // 1096.0625 + sqrt(957.9375^2 - 362^2) = 1982.97 at the sight edge
  CHECK(stile.blank[0] == mm(1983));
  CHECK(piece(wood, "right stile").blank[0] == mm(1983));
  const Piece& rail = piece(wood, "top rail");
  CHECK(rail.blank[1] == mm(110 + 82));
  CHECK(rail.place.origin[1] + rail.blank[1] == mm(2054));
  CHECK(size(rail, "arch", "at_crown") == mm(110));
}

TEST_CASE("What is marked out of an arch comes from its circle, not from its chords") {
  const auto near = [](Length length, double millimetres) {
    return std::abs(in_mm(length) - millimetres) < 1e-5;
  };
  const Assembly loft = work(arched_mm()).assembly;
  // The middle is 773.022 below the crown at 1944, the panel's top 9 beyond the arch; its sides
  // stand 9 beyond the sight edges, 371 from the middle, on a foot at 949.
  const double radius = 139144.0 / 180;
  const double side = 1944 - radius + std::sqrt((radius + 9) * (radius + 9) - 371 * 371) - 949;
  CHECK(std::abs(side - 910.395) < 0.001);
  CHECK(near(size(piece(loft, "panel, tier 1"), "arched-top", "side"), side));
  const Assembly hall = work(topped_mm()).assembly;
  const double edge = height(kOpening - 3, 462);
  CHECK(near(size(piece(hall, "left stile"), "arched-head", "side"), edge));
  CHECK(near(size(piece(hall, "top rail"), "arched-head", "rise"), 2054 - edge));
  CHECK(near(size(piece(hall, "panel, tier 1"), "arched-top", "side"),
             height(kOpening - 104, 371) - 949));
  // However far its chords may leave it.
  const Assembly coarse =
      work(arched_mm(R"("arch": {"rise": 120, "at": "both", "tolerance": 0.4})")).assembly;
  CHECK(near(size(piece(coarse, "left stile"), "arched-head", "side"), edge));
}

TEST_CASE("Chords of leaf and opening lie side by side, however flat and coarse: the gap is kept") {
  for (const int rise : {3, 8, 20, 60, 120})
    for (const char* tolerance : {"0.4", "0.1"}) {
      INFO(rise << " in chords of " << tolerance);
      const Assembly wood =
          work(arched_mm(fmt::format(R"("arch": {{"rise": {}, "at": "both", "tolerance": {}}})",
                                     rise, tolerance)))
              .assembly;
      CHECK(finding(wood, "opening-arch").value == mm(3));
      CHECK(failing(wood) == kNothing);
    }
}

TEST_CASE("Measured square to the curve, all wood that is arched keeps the tolerance") {
  // A flat arch, a usual one, one that is almost half a circle, and half a circle.
  for (const char* shape : {R"("rise": 12)", R"("rise": 90)", R"("rise": 355)", R"("rise": 361.9)",
                            R"("shape": "semicircular")"})
    for (const double tolerance : {0.1, 0.02, 0.4}) {
      const std::string keys = fmt::format(R"("arch": {{{}, "tolerance": {}}})", shape, tolerance);
      INFO(keys);
      const double most = farthest_in(work(arched_mm(keys)).assembly);
      CHECK(most <= tolerance + 1e-5);
      CHECK(most > tolerance / 8);
    }
  for (const char* shape : {R"("rise": 12)", R"("rise": 120)", R"("rise": 300)"}) {
    INFO(shape);
    const std::string keys = std::string(R"("panel": {"thickness": 22}, "arch": {)") + shape;
    CHECK(farthest_in(work(arched_mm(keys + R"(, "at": "both"})")).assembly) <= 0.1 + 1e-5);
    const std::string wide = R"("rail_widths": [400, {"width": 195, "top": 960}, 230], )";
    CHECK(farthest_in(work(house_mm(wide + keys + R"(, "at": "top"})")).assembly) <= 0.1 + 1e-5);
  }
}

TEST_CASE("Under an arched top the tenon keeps its relish where the mortise is deepest") {
  const Assembly wood = work(topped_mm()).assembly;
  const Joint& its = joint(wood, "left stile", "top rail");
  // 67 + 2 deep, so 31 from the leaf's edge: 102.44 below the crown, or a chord's tenth more: 103
  // to mark. A third of the other 89 is 30 of relish.
  CHECK(std::abs(2054 - height(kOpening - 3, 431) - 102.44) < 0.01);
  const TenonSpan& tenon = its.tenon->each.front();
  CHECK(tenon.from_edge + tenon.width == mm(192 - 103 - 30));
  // The haunch goes as far as the stile's blank, 121 above the rail's, and is sawn with it.
  const TenonSpan& haunch = its.tenon->haunches.back();
  CHECK(haunch.from_edge == mm(59));
  CHECK(haunch.from_edge + haunch.width == mm(1983 - 1862));
  // What is left above the mortise, in the wood: less 0.4 of play, more what was marked down.
  const Length left = finding(wood, "mortise-end").value;
  CHECK(left >= mm(29.6));
  CHECK(left < mm(29.6 + 0.6));
}

TEST_CASE("The gap to an arched opening is measured upright in the wood, and least at the crown") {
  const Assembly wood = work(topped_mm()).assembly;
  CHECK(finding(wood, "opening-arch").value == mm(3));
  CHECK(opening_of(wood).arch.front() == Corner{mm(-3), mm(2057 - 120)});
  CHECK(opening_of(wood).arch.back() == Corner{mm(927), mm(2057 - 120)});
  // Of a stile that is left a millimetre too high, and of one that is sawn as much too low.
  const Assembly high = moved_up(wood, "left stile", "arched-head", mm(1));
  CHECK(failing(high) == std::vector<std::string>{"opening-arch"});
  const Assembly low = moved_up(wood, "left stile", "arched-head", mm(-1));
  CHECK(failing(low) == std::vector<std::string>{"face-closed"});
}

TEST_CASE("What an arched top leaves of the leaf's box is no hole in it") {
  Assembly wood = work(topped_mm()).assembly;
  CHECK(finding(wood, "face-closed").value == mm(0));
  wood.beyond.pop_back();
  CHECK(failing(wood) == std::vector<std::string>{"face-closed"});
}

TEST_CASE("Only the top is arched: a straight rail below it has muntins and raised panels") {
  const Assembly wood =
      work(house_mm(R"("stile_width": 100, "rail_widths": [200, {"width": 195, "top": 960}, 230], )"
                    R"("panels": {"across": 3}, "arch": {"rise": 100, "at": "top"}, )"
                    R"("panel": {"thickness": 22, "raised": "front"})"))
          .assembly;
  CHECK(doubted(wood) == kNothing);
  CHECK(piece(wood, "top rail").blank[1] == mm(200));
  CHECK(finding(wood, "opening-arch").value == mm(3));
}

TEST_CASE("Muntins leave wood behind their mortises under the curve") {
  const auto deep = [](const char* arch) {
    const Assembly wood =
        work(house_mm(R"("rail_widths": [100, {"width": 195, "top": 960}, 230], )"
                      R"("panels": {"across": 3}, "tenon_depth": 92, "stile_width": 140)" +
                      std::string(arch)))
            .assembly;
    CHECK(failing(wood) == kNothing);
    return joint(wood, "top rail", "muntin 1, tier 1").tenon->depth;
  };
  // 100 less 5 and 2 of bottom clearance.
  CHECK(deep("") == mm(92));
  // (465^2 + 40^2) / 80 = 2722.8, less 3: the muntins' outer edges stand 167.3 from the middle,
  // where the curve takes 5.2 of the 100.
  CHECK(deep(R"(, "arch": {"rise": 40, "at": "top"})") == mm(87));
}

TEST_CASE("Half a circle over a leaf, and half of one below it") {
  const Assembly wood =
      work(house_mm(R"("stile_width": 100, "rail_widths": [100, {"width": 195, "top": 960}, 230], )"
                    R"("arch": {"shape": "semicircular", "at": "both"})"))
          .assembly;
  const Piece& rail = piece(wood, "top rail");
  CHECK(size(rail, "arched-head", "radius") == mm(462));
  CHECK(size(rail, "arch", "radius") == mm(362));
  CHECK(size(rail, "arch", "rise") == mm(362));
  CHECK(rail.blank[1] == mm(462));
  // The stiles' outer edges end where the half circle begins.
  CHECK(size(piece(wood, "left stile"), "arched-head", "side") == mm(2054 - 462));
  CHECK(failing(wood) == kNothing);
}

TEST_CASE("Hinges count from the corner of the leaf's edge, not from its crown") {
  const auto top_hinge = [](const char* arch) {
    const Assembly wood =
        work(arched_mm(R"("hinges": {"from_top": 150, "length": 100})" + std::string(arch)))
            .assembly;
    CHECK(failing(wood) == kNothing);
    Length high;
    for (const Feature& feature : piece(wood, "left stile").features)
      if (feature.fitting)
        for (const Box& cut : feature.cuts)
          high = std::max(high, cut.high[0]);
    return high;
  };
  CHECK(top_hinge("") == mm(2054 - 150));
  // The edge is 1935.2 high, 1935 to be marked.
  CHECK(top_hinge(R"(, "arch": {"rise": 120, "at": "both"})") == mm(1935 - 150));
}

TEST_CASE("A fitting above the curve, or too near below it, stands in no wood") {
  const auto bolt = [](const char* at) {
    return failing(
        work(topped_mm(
                 R"("arch": {"rise": 120, "at": "both"}, "fittings": [{"name": "bolt", "on": "A", )"
                 R"("into": "left", "at": )" +
                 std::string(at) +
                 R"(, "cuts": [{"length": 20, "width": 10, "from": 17, "depth": 10}]}])"))
            .assembly);
  };
  const std::vector<std::string> clash{"fitting-clash"};
  // The edge is 1935.2 high: 20 from 1910 on leave 5.2 of it, from 1913 on 2.2.
  CHECK(bolt("1910") == kNothing);
  CHECK(bolt("1913") == clash);
  CHECK(bolt("1950") == clash);
}

TEST_CASE("What an arched top cannot be is told at its key") {
  const auto told = [](const std::string& more, const char* rise = "120") {
    return refused_at(arched_mm(R"("arch": {"at": "both", "rise": )" + std::string(rise) + "}" +
                                (more.empty() ? "" : ", ") + more));
  };
  CHECK(told("").empty());
  CHECK(refused_at(arched_mm(R"("arch": {"at": "top"})")) == "/arch/at");
  CHECK(refused_at(arched_mm(R"("arch": {"at": "crown", "rise": 9})")) == "/arch/at");
  CHECK(told("", "466") == "/arch/rise");
  CHECK(told(R"("leaves": 2, "joint": {"corner": "half-lap"})") == "/joint");
  CHECK(told(R"("meets": "rebate", "lap": {"left": 10, "right": 12, "head": 10})") == "/lap/left");
  CHECK(told(R"("clearance": {"left": 2})") == "/clearance/left");
  CHECK(told(R"("joint": "mitre")") == "/joint");
  CHECK(told(R"("tenon_depth": 12)") == "/tenon_depth");
  CHECK(told(R"("panels": {"across": [2, 1]})") == "/panels");
  // Uneven stiles, a rail too wide for its radius, and a gap that half a circle has no room for.
  CHECK(refused_at(house_mm(
            R"("stile_width": {"left": 90, "right": 100}, "arch": {"at": "both", "rise": 120})")) ==
        "/stile_width/left");
  CHECK(refused_at(house_mm(R"("stile_width": 100, "rail_widths": [101, 195, 230], )"
                            R"("arch": {"at": "both", "shape": "semicircular"})")) ==
        "/rail_widths/0");
  CHECK(refused_at(house_mm(
            R"("clearance": {"head": 5}, "arch": {"at": "top", "shape": "semicircular"})")) ==
        "/clearance/head");
  // A straight rail of 100 is gone at the stiles where the curve is 119 lower.
  CHECK(refused_at(house_mm(R"("arch": {"at": "top", "rise": 300})")) == "/arch/rise");
  CHECK(refused_at(
            house_mm(R"("rail_widths": [60, 195, 230], "arch": {"at": "top", "rise": 120})")) ==
        "/rail_widths/0");
}

TEST_CASE("Through tenons, twins and round ends stand under an arched top") {
  for (const char* joint :
       {"\"through\"", "\"twin\"", R"({"corner": "twin", "middle": "loose"})"}) {
    const Assembly wood =
        work(arched_mm(R"("arch": {"rise": 90, "at": "both"}, "joint": )" + std::string(joint)))
            .assembly;
    CHECK(failing(wood) == kNothing);
  }
  const Assembly round =
      work(
          arched_mm(R"("arch": {"rise": 120, "at": "both"}, "mortise": {"ends": "tenon-rounded"})"))
          .assembly;
  CHECK(failing(round) == kNothing);
}

TEST_CASE("Every joint of the trade holds the ends of an arched rail, but no mitre under a curve") {
  for (const char* joint : {"twin", "loose", "through", "bridle", "dowel", "half-lap"})
    for (const char* at : {"underside", "top", "both"}) {
      const Assembly wood =
          work(house_mm(R"("stile_width": 110, "rail_widths": [200, 195, 230], )"
                        R"("arch": {"rise": 60, "at": ")" +
                        std::string(at) + R"("}, "joint": {"corner": ")" + joint + "\"}"))
              .assembly;
      INFO(joint << " " << at);
      CHECK(failing(wood) == kNothing);
    }
}

TEST_CASE("A mitred rail may be arched where the arch springs from the sight corners") {
  // 60 at the crown and a rise of 50 make it as wide as its stiles at the corners.
  const std::string rest = R"("joint": {"corner": "mitre"}, "arch": {"rise": 50})";
  CHECK(failing(work(house_mm(R"("stile_width": 110, "rail_widths": [60, 195, 110], )" + rest))
                    .assembly) == kNothing);
  CHECK(refused_at(house_mm(R"("stile_width": 110, "rail_widths": [110, 195, 110], )" + rest)) ==
        "/rail_widths/0");
}

TEST_CASE("Dowels and loose tenons lie above the groove, which rises into the rail") {
  const Assembly wood =
      work(arched_mm(R"("arch": {"rise": 90}, "joint": {"corner": "dowel"})")).assembly;
  Length low = mm(3000);
  Length deep;
  for (const Feature& feature : piece(wood, "top rail").features) {
    if (feature.kind != FeatureKind::dowel_hole) continue;
    const Box hole = bounds_of(feature.prisms.front());
    low = std::min(low, hole.low[1]);
    if (hole.low[0] == Length()) deep = hole.high[0];
  }
  // r = 773.022, and the groove's bottom 12 further out.
  const double radius = 139144.0 / 180 + 12;
  const double off = 362 - in_mm(deep);
  const double groove = std::sqrt(radius * radius - off * off) -
                        std::sqrt((radius - 12) * (radius - 12) - 362.0 * 362);
  CHECK(in_mm(low) >= std::ceil(groove) + 5);
}

// ---- what stands under an arch

TEST_CASE("A pane's top is concentric with its arch, and its curved bead lies home") {
  const Assembly wood =
      work(arched_mm(R"("arch": {"rise": 90}, "panel": {"kind": "glass", "thickness": 6})"))
          .assembly;
  CHECK(failing(wood) == kNothing);
  const double radius = 139144.0 / 180;
  const Piece& pane = piece(wood, "glass, tier 1");
  const Piece& bead = piece(wood, "head bead, tier 1");
  const double rebate = in_mm(bead.blank[1]) - 90;
  const double clearance = 3;
  CHECK(std::abs(in_mm(size(pane, "arched-top", "radius")) - radius - rebate + clearance) < 1e-5);
  CHECK(std::abs(in_mm(size(bead, "arch", "radius")) - radius) < 1e-5);
  CHECK(std::abs(in_mm(size(bead, "arched-top", "radius")) - radius - rebate) < 1e-5);
  // Its mitres rise from the sight corner to where the curve over the rebates' bottom ends.
  const double half = 362 + rebate;
  const double up = std::sqrt((radius + rebate) * (radius + rebate) - half * half) -
                    std::sqrt(radius * radius - 362.0 * 362);
  CHECK(std::abs(in_mm(size(bead, "arched-top", "side")) - up) < 1e-4);
  const Piece& side = piece(wood, "left bead, tier 1");
  CHECK(std::abs(in_mm(side.place.origin[1] + side.blank[0]) - 1854 - up) < 1e-4);
}

TEST_CASE("Raised and bedded panels, and mouldings, follow the arch") {
  for (const char* more :
       {R"("panel": {"raised": "front"})",
        R"("panel": {"raised": "both", "raise": {"profile": "cove"}})", R"("edge": "rebated")",
        R"("edge": "coped")", R"("edge": {"kind": "mitred", "faces": "both"})",
        R"("edge": {"kind": "coped", "profile": "bevel"})"})
    for (const char* at : {"underside", "top", "both"}) {
      const Assembly wood =
          work(arched_mm(R"("arch": {"rise": 70, "at": ")" + std::string(at) + "\"}, " + more))
              .assembly;
      INFO(more << " " << at);
      CHECK(failing(wood) == kNothing);
    }
}

// ---- tops of leaves that lap, and of pairs

TEST_CASE("A leaf that laps over an arched opening goes over its curve by the lap") {
  const Assembly over = work(bare_house_mm(R"("rail_widths": [218, 230], "meets": "overlay",
                                              "lap": 10, "arch": {"at": "both", "rise": 120})"))
                            .assembly;
  CHECK(failing(over) == kNothing);
  CHECK(std::abs(in_mm(size(piece(over, "top rail"), "arched-head", "radius")) - kOpening - 10) <
        1e-5);
  const Assembly lip =
      work(arched_mm(R"("arch": {"at": "both", "rise": 120}, "meets": "rebate", "lap": 13)"))
          .assembly;
  CHECK(failing(lip) == kNothing);
  // 13 of lip over a gap of 3; behind it the gap is left.
  CHECK(std::abs(in_mm(size(piece(lip, "top rail"), "arched-head", "radius")) - kOpening - 10) <
        1e-5);
  for (const Finding& it : findings(lip, "opening-arch"))
    CHECK(it.value == mm(3));
}

TEST_CASE("One arch goes over both leaves of a pair, each with its half of it") {
  const Assembly pair =
      work(door_spec(R"("units": "mm", "opening": {"width": 1500, "height": 2060})",
                     R"("leaves": 2, "clearance": 3, "stile_width": 100,
                        "rail_widths": [210, 195, 230], "arch": {"at": "top", "rise": 150})"))
          .assembly;
  CHECK(failing(pair) == kNothing);
  // r = (750^2 + 150^2) / 300, its leaf's top 3 less.
  const double radius = (750.0 * 750 + 150 * 150) / 300 - 3;
  for (const char* rail : {"left leaf, top rail", "right leaf, top rail"})
    CHECK(std::abs(in_mm(size(piece(pair, rail), "arched-head", "radius")) - radius) < 1e-5);
  // Meeting stiles go up to the crown, or as near as the gap between them lets them.
  CHECK(in_mm(piece(pair, "left leaf, right stile").blank[0]) == 2054);
  CHECK(in_mm(piece(pair, "right leaf, left stile").blank[0]) == 2054);
  // 100 from the hinged edge, 647 from the middle.
  const double hinged = 2054 - radius + std::sqrt(radius * radius - 647.0 * 647);
  CHECK(in_mm(piece(pair, "left leaf, left stile").blank[0]) == std::ceil(hinged));
}

}  // namespace haunch::test
