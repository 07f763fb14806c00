// Fittings that a shop says once, and specs take by name.
#include "listed_fittings.h"

#include "vocabulary.h"

namespace haunch::test {
namespace {

constexpr std::string_view kShop = R"({"units": "mm", "hinges": {"width": 33}, "hardware": [
  {"name": "butt 75", "pack": 2, "price": 7.8, "priced": "2031-02-01", "lead_days": 10,
   "cuts": {"hinges": {"length": 75, "width": 30, "thickness": 2.5}}},
  {"name": "cup 35", "cuts": {"fronts": {"hinges": {"cup": {"diameter": 35, "depth": 12}}}}},
  {"name": "slide 450", "cuts": {"fronts": {"drawer": {"runner": {"side": 12.7, "length": 450}}}}}]})";

const Feature& gain(const Assembly& wood) {
  for (const Piece& piece : wood.pieces)
    for (const Feature& feature : piece.features)
      if (feature.kind == FeatureKind::gain) return feature;
  throw std::invalid_argument("no hinge");
}

}  // namespace

TEST_CASE("What the list says of a hinge is cut, before what the shop says of all") {
  const ShopDefaults its = shop(kShop);
  const Assembly wood = test::wood(house_mm(R"("hinges": "butt 75")"), &its);
  CHECK(size_of(gain(wood), SizeName::length) == mm(75));
  CHECK(size_of(gain(wood), SizeName::width) == mm(30));
  CHECK(size_of(gain(wood), SizeName::depth) == mm(2.5));
}

TEST_CASE("What the spec says besides wins") {
  const ShopDefaults its = shop(kShop);
  const Assembly wood =
      test::wood(house_mm(R"("hinges": {"fitting": "butt 75", "number": 2, "width": 28})"), &its);
  CHECK(size_of(gain(wood), SizeName::length) == mm(75));
  CHECK(size_of(gain(wood), SizeName::width) == mm(28));
}

TEST_CASE("An item tells what it takes by name, each use once") {
  const ShopDefaults its = shop(kShop);
  const auto door = job(house_mm(R"("hinges": "butt 75")"), &its);
  REQUIRE(door->fittings.size() == 1);
  CHECK(door->fittings.front().use == FittingUse::hinges);
  CHECK(door->fittings.front().bought.pack == 2);
  const auto cabinet =
      job(R"({"kind": "cabinet", "units": "mm", "size": {"width": 600, "height": 870, "depth": 580},
              "fronts": {"hinges": "cup 35", "drawer": {"runner": {"fitting": "slide 450"}}},
              "layout": {"rows": [{"height": 150, "front": "drawer"}, {"front": "door"}]}})",
          &its);
  REQUIRE(cabinet->fittings.size() == 2);
  CHECK(cabinet->fittings[0].use == FittingUse::cup_hinges);
  CHECK(cabinet->fittings[1].use == FittingUse::runners);
}

TEST_CASE("A name that no list has is refused, with the nearest that it has") {
  const ShopDefaults its = shop(kShop);
  CHECK(refusal(house_mm(R"("hinges": "but 75")"), &its) ==
        "/hinges: \"but 75\" is not in the shop file's \"hardware\"; did you mean \"butt 75\"?");
  CHECK(refusal(house_mm(R"("hinges": {"fitting": "butt 75"})")) ==
        "/hinges/fitting: \"butt 75\" is taken by name from the shop file, which lists no "
        "\"hardware\"; give one with --shop, or write the sizes here");
}

TEST_CASE("A list's own faults are told in the shop file") {
  const auto faults = [](std::string_view hardware) {
    return in_lines(
        read_shop(value_of(R"({"units": "mm", "hardware": )" + std::string(hardware) + "}"))
            .problems);
  };
  CHECK(faults(R"([{"name": "a"}, {"name": "a"}])") ==
        "/hardware/1/name: \"a\" is the name of another fitting too; give each its own");
  CHECK(faults(R"([{"name": "a", "cuts": {"thickness": 44}}])") ==
        "/hardware/0/cuts: \"thickness\" is not of a fitting; write keys of \"hinges\", \"lock\", "
        "\"fronts.hinges\" or \"fronts.drawer.runner\"");
  CHECK(faults(R"([{"name": "a", "priced": "2031-02-01"}])") ==
        "/hardware/0/priced: is the day of a price that is not told; write \"price\" too");
}

}  // namespace haunch::test
