// Fits by tolerance, as a page and as JSON.
#include "tolerance_page.h"

#include <nlohmann/json.hpp>

#include "report_rows.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

Tolerances to_a_tenth() {
  Tolerances tolerances;
  tolerances.each.fill({mm(0.1), true});
  tolerances.fit = {mm(0), mm(0.25)};
  return tolerances;
}

struct Forecast {
  Assembly wood;
  FitForecast fits;
};

Forecast forecast(const Tolerances& tolerances, std::string_view more = "") {
  Assembly leaf = wood(house_mm(more));
  FitForecast fits = forecast_fits(leaf, tolerances, Unit::mm);
  return {std::move(leaf), std::move(fits)};
}

nlohmann::json as_json(const Forecast& its, Unit unit) {
  std::string text;
  JsonText json(text, unit);
  json.open_object();
  json.key("fits");
  write_json(json, FitsTold{its.wood, its.fits});
  json.member("after", "it");
  json.close_object();
  return nlohmann::json::parse(text);
}

bool fits_the_page(const std::string& page) {
  std::size_t line = 0;
  while (line < page.size()) {
    const std::size_t end = page.find('\n', line);
    if (display_width(std::string_view(page).substr(line, end - line)) > kPageWidth) return false;
    line = end + 1;
  }
  return true;
}

}  // namespace

TEST_CASE("The page tells the same joints once, the leaf's share and the stacks") {
  const Forecast its = forecast(to_a_tenth());
  const std::string page = text_of(tolerance_page(its.wood, its.fits, LengthPrinter(Unit::mm, {})));
  INFO(page);
  CHECK(page.starts_with("\nFITS, cut by router and saw; a plus/minus is 3 standard deviations\n"));
  CHECK(page.find("  6 mortise-and-tenon    10  0.15  -0.05  0.35        0.14  98.2 %\n") !=
        std::string::npos);
  CHECK(page.find("  bands: 0 to 0.25 where glued, 0 to 0.8 for panels\n") != std::string::npos);
  CHECK(page.find("fit_allowance for the most of them: 0.125, ") != std::string::npos);
  CHECK(page.find("  leaf width         924        0.3        0.20  A + C + B\n") !=
        std::string::npos);
  CHECK(fits_the_page(page));
}

TEST_CASE("In inches fits are decimals, and the page is no wider") {
  const Assembly leaf = wood(house_in(R"("panels": 6)"));
  Tolerances tolerances;
  tolerances.each.fill({Length::from_inch_parts(4, 1000), true});
  tolerances.fit = {Length(), Length::from_inch_parts(10, 1000)};
  const std::string page = text_of(tolerance_page(leaf, forecast_fits(leaf, tolerances, Unit::inch),
                                                  LengthPrinter(Unit::inch, {})));
  INFO(page);
  CHECK(page.find("14 mortise-and-tenon    18   0.0060  -0.0020   0.0140      0.0055") !=
        std::string::npos);
  CHECK(page.find("leaf width    35 3/4") != std::string::npos);
  CHECK(fits_the_page(page));
}

TEST_CASE("A share that is out of reach is said to be so") {
  Tolerances tolerances = to_a_tenth();
  tolerances.each.fill({mm(0.4), true});
  const Forecast its = forecast(tolerances);
  const std::string page = text_of(tolerance_page(its.wood, its.fits, LengthPrinter(Unit::mm, {})));
  INFO(page);
  CHECK(page.find("95 % is out of reach") != std::string::npos);
  CHECK(as_json(its, Unit::mm)["fits"]["leaf"]["least_allowance"].is_null());
}

TEST_CASE("The report carries every joint's play in its own unit, and shares from 0 to 1") {
  const Forecast its = forecast(to_a_tenth());
  const nlohmann::json report = as_json(its, Unit::mm);
  CHECK(report["after"] == "it");
  const nlohmann::json& fits = report["fits"];
  CHECK(fits["work"] == "router");
  CHECK(fits["tolerance"]["mortise_place"] == 0.1);
  CHECK(fits["one_setting"].size() == kDimensions);
  CHECK(fits["setting_share"] == 0.5);
  CHECK(fits["joints"].size() == its.wood.joints.size());
  const nlohmann::json& joint = fits["joints"][0];
  CHECK(joint["joint"] == "J1");
  CHECK(joint["fits"] == 1);
  CHECK(joint["play"] == 0.15);
  CHECK(joint["worst"]["min"] == -0.05);
  CHECK(joint["worst"]["max"] == 0.35);
  CHECK(joint["band"]["max"] == 0.25);
  // 0.1 x sqrt(2) / 3 for one standard deviation: from 3.1820 below to 2.1213 above.
  CHECK(joint["share"] == 0.9823);
  CHECK(fits["left_out"].empty());
  CHECK(fits["leaf"]["best_allowance"] == 0.125);
  CHECK(fits["leaf"]["wanted_share"] == 0.95);
  CHECK(fits["width"]["parts"] == nlohmann::json::array({"A", "C", "B"}));
  CHECK(fits["width"]["size"] == 924);
  CHECK(fits["flush"]["size"] == 0);
  CHECK(as_json(its, Unit::inch)["fits"]["tolerance"]["mortise_place"] == 0.003937008);
}

TEST_CASE("What is left out is told on the page and in the report") {
  const Forecast its = forecast(to_a_tenth(), R"("joint": "dowel", "panels": 2)");
  const std::string page = text_of(tolerance_page(its.wood, its.fits, LengthPrinter(Unit::mm, {})));
  INFO(page);
  const std::size_t dowels = its.fits.left_out.size();
  CHECK(page.find("left out: dowels (" + std::to_string(dowels) +
                  " joints); of holes and dowels no plus/minus is taken") != std::string::npos);
  CHECK(page.find("what is left out not") != std::string::npos);
  CHECK(page.find("fit_allowance for the most") == std::string::npos);
  const nlohmann::json fits = as_json(its, Unit::mm)["fits"];
  REQUIRE(fits["left_out"].size() == 1);
  CHECK(fits["left_out"][0]["kind"] == "dowel");
  CHECK(fits["left_out"][0]["joints"].size() == dowels);
  CHECK(fits["leaf"]["share"].is_number());
}

TEST_CASE("Where all is left out there is no share of leaves") {
  const Forecast its =
      forecast(to_a_tenth(), R"("joint": "half-lap", "panel": {"kind": "glass", "thickness": 6})");
  const std::string page = text_of(tolerance_page(its.wood, its.fits, LengthPrinter(Unit::mm, {})));
  INFO(page);
  CHECK(page.find("left out: half-laps") != std::string::npos);
  CHECK(page.find("of leaves go together") == std::string::npos);
  CHECK(page.find("bands") == std::string::npos);
  const nlohmann::json fits = as_json(its, Unit::mm)["fits"];
  CHECK(fits["joints"].empty());
  CHECK(fits["leaf"]["share"].is_null());
}

}  // namespace haunch::test
