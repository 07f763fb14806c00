// What work weighs, piece by piece, and what is said where a figure is missing.
#include "weight.h"

#include "materials.h"
#include "moisture.h"
#include "solid.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

struct Scale {
  std::unique_ptr<Job> job;
  Assembly wood;
  Weights weights;

  explicit Scale(const std::string& spec)
      : job(test::job(spec)), wood(work(*job).assembly), weights(weigh(wood, *job)) {}

  std::string told() const {
    std::string text;
    for (const Caution& caution : weight_cautions(weights, wood, *job))
      text += std::string(caution.about) + ": " + caution.words + "\n";
    return text;
  }
  std::string about() const {
    std::string text;
    for (const Caution& caution : weight_cautions(weights, wood, *job))
      text += (text.empty() ? "" : ", ") + std::string(caution.about);
    return text;
  }
};

std::string names_doubted(const std::string& spec) {
  std::string text;
  for (const Caution& caution : doubts_of_names(*job(spec)))
    text += caution.words + "\n";
  return text;
}

bool tells(const std::string& text, std::string_view words) {
  return text.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("The pieces weigh what is left of their wood, at the bench or at 12 %") {
  for (const auto& [moisture, percent] :
       {std::pair<std::string, double>{R"(, "moisture": {"build": 8})", 8}, {"", 12}}) {
    const Scale scale(cabinet_mm(R"("species": "white oak")" + moisture));
    REQUIRE(scale.weights.whole.is_known());
    CHECK(scale.weights.percent == percent);
    const double density = *density_kg_m3(*find_species("white oak"), percent);
    // A flat panel has no cuts.
    const Triple& panel = scale.wood.pieces.back().blank;
    double volume = 1;
    for (const Length size : panel)
      volume *= static_cast<double>(size.steps()) / Length::kStepsPerMm;
    CHECK(std::abs(*scale.weights.pieces.back() - volume / 1e9 * density) < 1e-6);
    // A stile is lighter than its blank.
    CHECK(*scale.weights.pieces.front() < 696.0 * 57 * 20 / 1e9 * density);
  }
}

TEST_CASE("Each piece is weighed as its own wood") {
  const Scale oak(cabinet_mm(R"("species": "white oak")"));
  const Scale mixed(
      cabinet_mm(R"("species": {"frame": "white oak", "panel": "western redcedar"})"));
  CHECK(*oak.weights.pieces.front() == *mixed.weights.pieces.front());
  const double ratio = *mixed.weights.pieces.back() / *oak.weights.pieces.back();
  const double by_hand = *density_kg_m3(*find_species("western redcedar"), 12) /
                         *density_kg_m3(*find_species("white oak"), 12);
  CHECK(std::abs(ratio - by_hand) < 1e-9);
}

TEST_CASE("A leaf of over 23 kg is lifted by two, one below is not told of") {
  const auto of_oak = [](std::string_view more) {
    return Scale(cabinet_mm(R"("species": "white oak", )" + std::string(more)));
  };
  CHECK(of_oak(R"("horn": 0)").about().empty());
  // A frame alone of 0.028 m3, of some 760 kg/m3.
  const Scale thick = of_oak(R"("thickness": 300)");
  CHECK(thick.about() == "lifting");
  CHECK(of_oak(R"("thickness": 300, "moisture": {"build": 8})").about() == "lifting");
  CHECK(Scale(house_mm(R"("species": "white oak", "hinges": {})")).about() ==
        "weight on the hinges, lifting");
  CHECK(Scale(house_mm(R"("species": "white oak")")).about() == "lifting");
}

TEST_CASE("Of what has no density the weight is not known, and that is said") {
  const Scale hung(house_mm(R"("species": {"frame": "white oak", "panel": "LVL"}, "hinges": {})"));
  CHECK_FALSE(hung.weights.whole.is_known());
  CHECK(hung.about() == "weight on the hinges, lifting");
  CHECK(tells(hung.told(),
              "weight on the hinges: weight not known: no density for LVL; the rest "
              "comes to "));
  const Scale small(cabinet_mm(R"("species": {"frame": "LVL", "panel": "MDF"})"));
  CHECK(small.told() == "weight not known: no density for LVL, MDF\n");
  // With no wood named the sheet says so among what it assumes; hinges have to know.
  CHECK(Scale(cabinet_mm(R"("horn": 0)")).about().empty());
  CHECK(tells(Scale(house_mm(R"("hinges": {})")).told(),
              "weight on the hinges: weight not known: no wood is named; see that"));
  CHECK(tells(Scale(cabinet_mm(R"("species": "maple")")).told(), "no density for maple"));
}

TEST_CASE("A spec gives the figures of a material that is not listed") {
  const std::string woods = R"(, "woods": [{"name": "LVL", "density": 600}])";
  const Scale scale(cabinet_mm(R"("species": "LVL")" + woods));
  CHECK(scale.weights.whole.is_known());
  const Scale oak(cabinet_mm(R"("species": "white oak")"));
  const double density = *density_kg_m3(*find_species("white oak"), 12);
  CHECK(std::abs(scale.weights.whole.kilograms / oak.weights.whole.kilograms - 600 / density) <
        1e-9);
  CHECK(refusal(cabinet_mm(R"("species": "LVL", "moisture": {"build": 8})" + woods)) ==
        "/species: \"LVL\" has no figures of movement in print, so its seasons cannot be worked; "
        "give them under \"woods\", or name a wood that has");
  CHECK(job(cabinet_mm(R"("species": "LVL", "moisture": {"build": 8},
      "woods": [{"name": "LVL", "density": 600, "radial": 0, "tangential": 0}])"))
            ->season);
  CHECK(refused_at(cabinet_mm(R"("woods": [{"name": "LVL", "density": 41}])")) ==
        "/woods/0/density");
  CHECK(
      refused_at(cabinet_mm(R"("woods": [{"name": "LVL", "density": 600, "gravity_12": 0.6}])")) ==
      "/woods/0/density");
}

TEST_CASE("A wood that is near a listed one is worked, and the listed one is named") {
  CHECK(
      tells(names_doubted(cabinet_mm(R"("species": "white oke")")), "if \"Oak, white\" is meant"));
  CHECK(tells(names_doubted(cabinet_mm(R"("species": "maple")")),
              "\"maple\" may be any of 5 listed woods, such as \"Maple, "));
  CHECK(names_doubted(cabinet_mm(R"("species": "white oak")")).empty());
  CHECK(names_doubted(cabinet_mm(R"("species": {"frame": "LVL", "panel": "MDF"})")).empty());
  CHECK(names_doubted(cabinet_mm(R"("species": "white oke", "woods": [{"name": "white oke"}])"))
            .empty());
}

TEST_CASE("Of a pair it is told which leaf the weight is of") {
  const auto told = [](std::string_view more) {
    return Scale(house_mm(R"("species": "European oak", "leaves": 2, "hinges": {})" +
                          std::string(more)))
        .told();
  };
  CHECK(tells(told(""), "hinges: each leaf comes to some "));
  // 60 behind the lap in front are the left leaf's.
  CHECK(
      tells(told(R"(, "meeting_lap": 60)"), "hinges: the left leaf, the heavier, comes to some "));
  CHECK(tells(told(R"(, "meeting_lap": 60, "active": "left")"),
              "hinges: the right leaf, the heavier, comes to some "));
}

TEST_CASE("Glass is weighed, a sealed unit's maker gives its weight") {
  const auto glazed = [](std::string_view panel) {
    return Scale(
        house_mm(R"("species": "European oak", "hinges": {}, "panel": )" + std::string(panel)));
  };
  CHECK(glazed(R"({"kind": "glass", "thickness": 6})").weights.whole.is_known());
  CHECK(tells(glazed(R"({"kind": "sealed-unit", "thickness": 16})").told(),
              "no density for sealed units, whose weight their maker gives; the rest comes to"));
}

TEST_CASE("In a set the frame has one wood, and stiles, rails and panels their own") {
  const Scale set(R"({"kind": "doorset", "units": "mm",
      "species": {"frame": "Scots pine", "stile": "LVL", "rail": "white oak", "panel": "white oak"},
      "woods": [{"name": "LVL", "density": 600}, {"name": "Scots pine", "density": 520}],
      "frame": {"leaf": {"width": 800, "height": 1981}}, "leaf": {}})");
  REQUIRE(set.weights.leaves.size() == 1);
  CHECK(set.weights.whole.is_known());
  CHECK(set.weights.leaves.front().weight.kilograms < set.weights.whole.kilograms);
  const auto material = [&](std::string_view name) {
    return material_of(piece(set.wood, name), *set.job);
  };
  CHECK(material("left jamb") == "Scots pine");
  CHECK(material("left stile") == "LVL");
  CHECK(material("top rail") == "white oak");
}

TEST_CASE("No wood is asked for of a role that the work does not have") {
  const std::string year = R"(, "moisture": {"build": 8})";
  const std::string woods =
      R"("species": {"stile": "white oak", "rail": "white oak", "panel": "white oak"})";
  CHECK(job(cabinet_mm(woods + year))->work().problems.empty());
  const Worked worked = job(cabinet_mm(woods + R"(, "panels": 2)" + year))->work();
  REQUIRE(worked.problems.size() == 1);
  CHECK(tells(worked.problems.front().message, "names no wood for: muntin"));
}

}  // namespace haunch::test
