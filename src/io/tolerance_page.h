// Fits by tolerance, as a page of the sheet and as JSON.
#pragma once

#include <string>

#include "text_table.h"
#include "tolerance.h"

namespace haunch {

class JsonText;

std::string tolerance_page(const Assembly& wood, const FitForecast& forecast,
                           const LengthPrinter& lengths);

/// Begins a member "fits" of an open object.
void append_fits_json(JsonText& json, const Assembly& wood, const FitForecast& forecast);

}  // namespace haunch
