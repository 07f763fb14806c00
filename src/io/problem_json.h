// What could not be worked, as our JSON tells it.
#pragma once

#include "json_keys.h"
#include "spec_source.h"

namespace haunch {

template <>
struct JsonObject<PlacedProblem> : JsonObjectDefaults {
  static constexpr std::string_view definition = "error";
  static constexpr JsonKey<PlacedProblem> keys[] = {
      {"source", the<&PlacedProblem::source>},
      {"line", the<&PlacedProblem::line>, R"("minimum": 1)"},
      {"column", the<&PlacedProblem::column>, R"("minimum": 1)"},
      {"path", the<&PlacedProblem::path>},
      {"message", the<&PlacedProblem::message>}};
};

}  // namespace haunch
