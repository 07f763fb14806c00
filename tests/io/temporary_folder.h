// A folder for one test, gone with it.
#pragma once

#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

/// Where thousands of files are synced in no time, if there is such a place.
inline std::filesystem::path in_memory() {
  const char* shared = "/dev/shm";
  return ::access(shared, W_OK) == 0 ? shared : std::filesystem::temp_directory_path();
}

class TemporaryFolder {
 public:
  TemporaryFolder() : TemporaryFolder(std::filesystem::temp_directory_path()) {}
  explicit TemporaryFolder(const std::filesystem::path& where) {
    std::string pattern = where / "haunch-test-XXXXXX";
    path_ = ::mkdtemp(pattern.data());
  }
  ~TemporaryFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;

  std::string path(std::string_view name = "") const {
    return name.empty() ? path_ : path_ + "/" + std::string(name);
  }

  /// Writes a file and gives its path.
  std::string write(std::string_view name, std::string_view text) const {
    std::ofstream file(path(name), std::ios::binary);
    file << text;
    return path(name);
  }

  std::string read(std::string_view name) const {
    std::ifstream file(path(name), std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
  }

  /// Everything in it, in order.
  std::vector<std::string> names() const {
    std::vector<std::string> result;
    for (const auto& entry : std::filesystem::directory_iterator(path_))
      result.push_back(entry.path().filename());
    std::sort(result.begin(), result.end());
    return result;
  }

 private:
  std::string path_;
};
