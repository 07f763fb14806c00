// The texts kept from fuzzing: a fault aborts, and the last file shown by --success is the one.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <vector>

#include "../fuzz/length_text_target.h"
#include "catch.h"

TEST_CASE("every text kept from fuzzing is read or refused as it should be", "[length_text]") {
  std::vector<std::filesystem::path> files;
  for (const auto& entry :
       std::filesystem::directory_iterator(HAUNCH_TEST_DATA "/fuzz/corpus/length_text"))
    files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  REQUIRE(files.size() >= 24);
  for (const auto& file : files) {
    std::ifstream in(file, std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    CAPTURE(file.filename().string());
    const std::vector<std::uint8_t> bytes(text.begin(), text.end());
    haunch::length_target::length_text_target(bytes.data(), bytes.size());
    SUCCEED();
  }
}
