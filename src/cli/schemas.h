// What there are schemas of, a row each: from these rows come 'haunch schema' and what it is told
// it may print.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "schema.h"

namespace haunch {

/// Of what species, moisture and shop say as JSON, made from the rows that they are written by.
std::string species_schema();
std::string moisture_schema();
std::string settings_schema();

struct SchemaRow {
  std::string_view name;
  std::string (*text)(CsvProfile profile);
};

inline constexpr SchemaRow kSchemas[] = {
    {"spec", [](CsvProfile) { return spec_schema(); }},
    {"shop", [](CsvProfile) { return shop_schema(); }},
    {"sheet", sheet_columns},
    {"report", [](CsvProfile) { return report_schema(); }},
    {"stock", [](CsvProfile) { return stock_schema(); }},
    {"rates", [](CsvProfile) { return rates_schema(); }},
    {"lumber", [](CsvProfile) { return lumber_schema(); }},
    {"setups", [](CsvProfile) { return setups_schema(); }},
    {"labels", [](CsvProfile) { return labels_schema(); }},
    {"explain", [](CsvProfile) { return explain_schema(); }},
    {"trial", [](CsvProfile) { return trial_schema(); }},
    {"rod", [](CsvProfile) { return rod_schema(); }},
    {"compare", [](CsvProfile) { return compare_schema(); }},
    {"quote", [](CsvProfile) { return quote_schema(); }},
    {"species", [](CsvProfile) { return species_schema(); }},
    {"moisture", [](CsvProfile) { return moisture_schema(); }},
    {"settings", [](CsvProfile) { return settings_schema(); }},
};

/// Their names from the one numbered `first` on: "sheet, report or stock".
std::string schema_names(std::size_t first);

}  // namespace haunch
