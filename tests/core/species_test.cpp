#include "species.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "catch.h"

using namespace haunch;

namespace {

/// `value`, but for rounding.
auto near(double value, double margin = 1e-9) {
  return Catch::Matchers::WithinAbs(value, margin);
}

std::string found(std::string_view name) {
  const auto species = find_species(name);
  return species ? species->name : "none";
}

Species species(std::string_view name) {
  const auto found = find_species(name);
  if (!found) throw std::invalid_argument("there is no " + std::string(name));
  return *found;
}

std::vector<std::string> search(std::string_view words) {
  std::vector<std::string> names;
  for (const Species& each : search_species(words))
    names.push_back(each.name);
  return names;
}

void check_within(const std::optional<double>& value, double low, double high) {
  if (!value) return;
  CHECK(*value >= low);
  CHECK(*value <= high);
}

std::size_t count_group(std::string_view group) {
  const auto all = known_species();
  return static_cast<std::size_t>(std::count_if(
      all.begin(), all.end(), [group](const Species& each) { return each.group == group; }));
}

/// To the fifth decimal, as the tables print.
double printed(double coefficient) {
  return std::round(coefficient * 1e5) / 1e5;
}

}  // namespace

// ---- the table

TEST_CASE("A wood is written one way, however it was named", "[species]") {
  for (const char* name : {"European oak", "oak, European", "EUROPEAN-OAK", " european  oak "})
    CHECK(spelt(name) == "European oak");
  CHECK(spelt("Oak, white") == "white oak");
  CHECK(spelt("Douglas-fir, coast") == spelt("coast douglas fir"));
  CHECK(spelt("TEAK") == "teak");
  CHECK(spelt("utile") == "utile");
  CHECK(spelt("mill  offcuts ") == "mill offcuts");
  CHECK(spelt("").empty());
}

TEST_CASE("Every name of the table is told alike whichever way it is written") {
  for (const Species& each : known_species()) {
    INFO(each.name);
    CHECK(each.name.find("  ") == std::string::npos);  // what is compared as it stands
    CHECK(found(" " + each.name + "\t ") == each.name);
  }
}

TEST_CASE(
    "Two names of one species are one, two species are not, nor is a name that may be several") {
  CHECK(is_one_species("Oak, white", "white-oak"));
  CHECK(is_one_species("sipo", "UTILE"));
  CHECK_FALSE(is_one_species("white oak", "red oak"));
  CHECK_FALSE(is_one_species("maple", "maple"));
}

TEST_CASE("the table has 146 species, each in a group, once and with its source", "[species]") {
  std::set<std::string> names;
  for (const Species& each : known_species()) {
    INFO(each.name);
    CHECK(names.insert(each.name).second);
    CHECK(each.source.find(": ") != std::string::npos);
  }
  CHECK(names.size() == 146);
  CHECK(count_group("hardwood") == 74);
  CHECK(count_group("softwood") == 44);
  CHECK(count_group("tropical") == 28);
}

TEST_CASE("every figure of every species is one that wood can have", "[species]") {
  for (const Species& each : known_species()) {
    INFO(each.name);
    check_within(each.radial, 0.0008, 0.0032);
    check_within(each.tangential, 0.0016, 0.0047);
    check_within(each.radial_shrinkage, 2, 8.5);
    check_within(each.tangential_shrinkage, 4, 13);
    check_within(each.gravity_green, 0.29, 0.8);
    check_within(each.gravity_12, 0.31, 0.9);
    CHECK(each.radial_shrinkage.has_value() == each.tangential_shrinkage.has_value());
  }
}

TEST_CASE("no species moves more along its rays than along its rings", "[species]") {
  for (const Species& each : known_species()) {
    INFO(each.name);
    if (const auto both = coefficients_of(each)) CHECK(both->radial < both->tangential);
    if (each.radial_shrinkage) CHECK(*each.radial_shrinkage < *each.tangential_shrinkage);
  }
}

TEST_CASE("wood is denser dry than green", "[species]") {
  for (const Species& each : known_species()) {
    INFO(each.name);
    if (each.gravity_green && each.gravity_12) CHECK(*each.gravity_green < *each.gravity_12);
  }
}

TEST_CASE("the figures of some woods are as printed", "[species]") {
  const Species& oak = species("Oak, white");
  CHECK(oak.radial == 0.00180);
  CHECK(oak.tangential == 0.00365);
  CHECK(oak.radial_shrinkage == 5.6);
  CHECK(oak.tangential_shrinkage == 10.5);
  CHECK(oak.gravity_green == 0.60);
  CHECK(oak.gravity_12 == 0.68);
  CHECK(oak.source.find("row for the commercial white oak group") != std::string::npos);
  const Species& teak = species("teak");
  CHECK(teak.group == "tropical");
  CHECK(teak.tangential == 0.0026);
  CHECK(teak.source.find("note: flooring-trade charts") != std::string::npos);
}

// ---- coefficients

TEST_CASE("a printed coefficient is taken as it is", "[species]") {
  const auto oak = coefficients_of(species("white oak"));
  REQUIRE(oak);
  CHECK(oak->radial == 0.00180);
  CHECK(oak->tangential == 0.00365);
  CHECK_FALSE(oak->derived);
}

TEST_CASE("where none is printed it follows from the shrinkage and is marked so", "[species]") {
  struct Row {
    std::string_view name;
    double radial, tangential;
  };
  const Row row =
      GENERATE(Row{"Yellow-poplar", 0.00158, 0.00289},  //
               Row{"Ash, blue", 0.00133, 0.00226},      //
               Row{"Baldcypress", 0.00130, 0.00216}, Row{"Cedar, northern white", 0.00074, 0.00169},
               Row{"Pine, eastern white", 0.00071, 0.00212}, Row{"Redwood", 0.00081, 0.00162},   //
               Row{"Spruce, Sitka", 0.00148, 0.00263}, Row{"Mahogany, true", 0.00102, 0.00141},  //
               Row{"Ipe", 0.00230, 0.00282});
  INFO(row.name);
  const auto both = coefficients_of(species(row.name));
  REQUIRE(both);
  CHECK_THAT(printed(both->radial), near(row.radial));
  CHECK_THAT(printed(both->tangential), near(row.tangential));
  CHECK(both->derived);
}

TEST_CASE("a wood with one printed coefficient keeps it and gets the other", "[species]") {
  const Species& hickory = species("shagbark hickory");
  CHECK(coefficient_of(hickory, Direction::tangential)->per_percent == 0.00411);
  CHECK_FALSE(coefficient_of(hickory, Direction::tangential)->derived);
  CHECK_THAT(printed(coefficient_of(hickory, Direction::radial)->per_percent), near(0.00245));
  CHECK(coefficient_of(hickory, Direction::radial)->derived);
  CHECK(coefficients_of(hickory)->derived);
}

TEST_CASE("a wood without figures has no coefficient, not a guessed one", "[species]") {
  CHECK_FALSE(coefficients_of(species("lodgepole pine")));
  CHECK_FALSE(coefficient_of(species("red spruce"), Direction::tangential));
  CHECK_FALSE(coefficient_of(species("padauk"), Direction::radial));
  CHECK_FALSE(coefficients_of(species("padauk")));
  CHECK(coefficient_of(species("padauk"), Direction::tangential)->per_percent == 0.0018);
}

TEST_CASE("the rule gives the printed coefficients of the two tables that have both", "[species]") {
  std::size_t rows = 0;
  for (const Species& each : known_species()) {
    if (each.source.find("13-5 (agrees with") == std::string::npos) continue;
    INFO(each.name);
    Species unprinted = each;
    unprinted.radial = unprinted.tangential = {};
    const auto both = coefficients_of(unprinted);
    REQUIRE(both);
    CHECK(std::abs(both->radial - *each.radial) < 0.000006);
    // Of the American sycamore one table is off by one in the last digit.
    CHECK(std::abs(both->tangential - *each.tangential) < 0.000012);
    ++rows;
  }
  CHECK(rows == 36);
}

// ---- names

TEST_CASE("a species goes by its name in either order, whatever the capitals", "[species]") {
  CHECK(found("Oak, white") == "Oak, white");
  CHECK(found("white oak") == "Oak, white");
  CHECK(found("WHITE OAK") == "Oak, white");
  CHECK(found("oak, european") == "Oak, European");
  CHECK(found("European oak") == "Oak, European");
  CHECK(found("  European   oak ") == "Oak, European");
  CHECK(found("Scots pine") == "Pine, Scots");
  CHECK(found("yellow poplar") == "Yellow-poplar");
  CHECK(found("coast Douglas fir") == "Douglas-fir, coast");
}

TEST_CASE("what stands in brackets or behind a stroke may be left out", "[species]") {
  CHECK(found("Maple, sugar (hard maple)") == "Maple, sugar (hard maple)");
  CHECK(found("sugar maple") == "Maple, sugar (hard maple)");
  CHECK(found("hard maple") == "Maple, sugar (hard maple)");
  CHECK(found("southern yellow pine") == "Pine, southern yellow (group)");
  CHECK(found("sipo") == "Sipo / utile");
  CHECK(found("utile") == "Sipo / utile");
  CHECK(found("Sipo / utile") == "Sipo / utile");
}

TEST_CASE("the trade's own names are known", "[species]") {
  CHECK(found("red oak") == "Oak, northern red");
  CHECK(found("oak, red") == "Oak, northern red");
  CHECK(found("cherry") == "Cherry, black");
  CHECK(found("English oak") == "Oak, European");
  CHECK(found("European redwood") == "Pine, Scots");
  CHECK(found("redwood") == "Redwood");
  CHECK(found("western red cedar") == "Cedar, western redcedar");
  CHECK(found("tulipwood") == "Yellow-poplar");
}

TEST_CASE("every species is found by the name it is listed under", "[species]") {
  for (const Species& each : known_species())
    CHECK(found(each.name) == each.name);
}

TEST_CASE("a name that means several woods, or none, is not guessed at", "[species]") {
  for (const std::string_view name : {"oak", "maple", "soft maple", "mahogany", "oka", ""}) {
    INFO(name);
    CHECK(found(name) == "none");
  }
}

TEST_CASE("a search finds all of its words in any order", "[species]") {
  CHECK(search("white oak") == std::vector<std::string>{"Oak, Oregon white", "Oak, white"});
  CHECK(search("oak white") == search("white oak"));
  CHECK(search("Oak, White") == search("white oak"));
  CHECK(search("soft") == std::vector<std::string>{"Maple, red (soft maple)",  //
                                                   "Maple, silver (soft maple)"});
  CHECK(search("english oak") == std::vector<std::string>{"Oak, European"});
  CHECK(search("").size() == known_species().size());
  CHECK(search("plywood").empty());
}

TEST_CASE("a misspelt name is offered the nearest", "[species]") {
  CHECK(nearest_species("whit oak") == "Oak, white");
  CHECK(nearest_species("oak white") == "Oak, white");
  CHECK(nearest_species("Europaen oak") == "Oak, European");
  CHECK(nearest_species("cheery") == "Cherry, black");
  CHECK(nearest_species("teek") == "Teak");
  CHECK(nearest_species("hard mapel") == "Maple, sugar (hard maple)");
  CHECK(nearest_species("swamp") == "Oak, swamp chestnut");
  CHECK(nearest_species("oak").empty());
  CHECK(nearest_species("plywood").empty());
  CHECK(nearest_species("").empty());
}
