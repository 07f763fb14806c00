// Top rails arched below, by hand.
#include <cmath>

#include "arch.h"
#include "findings.h"
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
      if (feature.kind == kind && one.name == name) return one.size;
  throw std::invalid_argument("no such size");
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
  CHECK(findings(wood, "shared-wood").front().value == mm(0));
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
  CHECK(refused_at(arched_mm(R"("arch": {"rise": 90}, "panel": {"raised": "front"})")) ==
        "/panel/raised");
  CHECK(refused_at(arched_mm(R"("arch": {"rise": 90}, "joint": "loose")")) == "/joint");
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

}  // namespace haunch::test
