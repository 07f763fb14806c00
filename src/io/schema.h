// The JSON Schemas (2020-12) of what goes in and what comes out.
#pragma once

#include <string>

#include "view.h"

namespace haunch {

/// Of a spec, made from the same table of keys that specs are read by.
std::string spec_schema();

/// Of a shop file, made from that table too.
std::string shop_schema();

/// Of the report, format haunch-report-1, made from the rows that it is written by.
std::string report_schema();

/// Of what lumber says, format haunch-lumber-1, made from the rows that it is written by.
std::string lumber_schema();

/// Of what labels says, format haunch-labels-1, made from the rows that it is written by.
std::string labels_schema();

/// Of what explain says, format haunch-explain-1, made from the rows that it is written by.
std::string explain_schema();

/// Of what setups says, format haunch-setups-1, made from the rows that it is written by.
std::string setups_schema();

/// Of what trial says, format haunch-trial-1, made from the rows that it is written by.
std::string trial_schema();

/// Of what rod says, format haunch-rod-1, made from the rows that it is written by.
std::string rod_schema();

/// Of what compare says, format haunch-compare-1, made from the rows that it is written by.
std::string compare_schema();

/// Of what quote says, format haunch-quote-1, made from the rows that it is written by.
std::string quote_schema();

/// Of a stock file, made from the rows that one is written by.
std::string stock_schema();

/// Of a rates file, made from the rows that one is written by.
std::string rates_schema();

/// The columns that a sheet of items may have, as CSV, made from the same table of keys.
std::string sheet_columns(CsvProfile profile);

}  // namespace haunch
