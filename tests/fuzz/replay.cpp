// Runs a fuzz target over kept inputs, without a fuzzer: `replay FILE-OR-FOLDER…`. Linked with one
// *_fuzz.cpp.
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size);

namespace {

void replay(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  const std::vector<char> text{std::istreambuf_iterator<char>(file), {}};
  const std::vector<std::uint8_t> bytes(text.begin(), text.end());
  std::printf("%s\n", path.c_str());
  std::fflush(stdout);  // the last name printed is the one that failed
  LLVMFuzzerTestOneInput(bytes.data(), bytes.size());
}

}  // namespace

int main(int count, char** arguments) {
  std::size_t inputs = 0;
  for (int i = 1; i < count; ++i) {
    const std::filesystem::path path = arguments[i];
    if (!std::filesystem::is_directory(path)) {
      replay(path);
      ++inputs;
      continue;
    }
    for (const auto& entry : std::filesystem::directory_iterator(path)) {
      replay(entry.path());
      ++inputs;
    }
  }
  return inputs == 0 ? 1 : 0;
}
