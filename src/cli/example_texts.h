// Specs to start from, as they stand in the files of examples/.
#pragma once

#include <span>
#include <string_view>

namespace haunch {

struct ExampleText {
  std::string_view name;  // of the job: "cabinet-door"
  std::string_view text;
};

/// In the order in which they are told.
std::span<const ExampleText> example_texts();

}  // namespace haunch
