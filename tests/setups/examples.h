// The examples, worked.
#pragma once

#include <filesystem>
#include <fstream>
#include <sstream>

#include "../vocabulary.h"

namespace haunch::test {

inline Assembly example(const std::string& name) {
  std::stringstream text;
  text << std::ifstream(std::string(HAUNCH_EXAMPLES) + "/" + name).rdbuf();
  return wood(text.str());
}

/// Those of examples/ that hold one item.
inline std::vector<Assembly> all_examples() {
  std::vector<Assembly> all;
  for (const auto& file : std::filesystem::directory_iterator(HAUNCH_EXAMPLES)) {
    std::stringstream text;
    text << std::ifstream(file.path()).rdbuf();
    const Reading document = read_json(text.str());
    if (!document.value) continue;
    const JobReading reading = read_job(*document.value, nullptr, "job");
    if (reading.job) all.push_back(reading.job->work().assembly);
  }
  REQUIRE(all.size() > 30);
  return all;
}

}  // namespace haunch::test
