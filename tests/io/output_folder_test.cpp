// A folder of results comes whole or not at all.
#include "output_folder.h"

#include <cerrno>
#include <filesystem>

#include "catch.h"
#include "struck_calls.h"
#include "temporary_folder.h"

namespace haunch::test {
namespace {

using Names = std::vector<std::string>;

const std::vector<FolderFile> kFiles{
    {"door/A.step", "stile"}, {"door/B.step", std::string(200'000, 'x')}, {"gate/A.step", ""}};

std::string words_of(const std::optional<FileFault>& fault) {
  return fault ? fault->words : "";
}

}  // namespace

TEST_CASE("A folder is made with all its files, and nothing beside it") {
  const TemporaryFolder folder;
  REQUIRE_FALSE(write_folder(folder.path("solids/"), kFiles));
  CHECK(folder.names() == Names{"solids"});
  CHECK(folder.read("solids/door/A.step") == "stile");
  CHECK(folder.read("solids/door/B.step").size() == 200'000);
  CHECK(std::filesystem::exists(folder.path("solids/gate/A.step")));
}

TEST_CASE("A folder or file that is there already is left as it is") {
  const TemporaryFolder folder;
  folder.write("solids", "mine");
  const auto fault = write_folder(folder.path("solids"), kFiles);
  CHECK(words_of(fault) == "is there already, and is not written over; name a new folder");
  CHECK(folder.read("solids") == "mine");
  CHECK(folder.names() == Names{"solids"});
}

TEST_CASE("Where a folder can't be made, the system says why") {
  const TemporaryFolder folder;
  CHECK(words_of(write_folder(folder.path("not/there"), kFiles)) ==
        "cannot be made: No such file or directory");
  folder.write("file", "");
  CHECK(words_of(write_folder(folder.path("file/within"), kFiles)) ==
        "cannot be made: Not a directory");
}

TEST_CASE("Whichever call fails, nothing is left; or all is there") {
  const TemporaryFolder folder(in_memory());
  std::size_t failed = 0;
  for (int nth = 1;; ++nth) {
    bool struck = false;
    const auto calls = struck_calls([&](int number) {
      if (number != nth) return 0;
      struck = true;
      return ENOSPC;
    });
    const auto fault = write_folder(folder.path("solids"), kFiles, calls);
    if (!struck) break;
    if (fault) {
      ++failed;
      CHECK(fault->words == "cannot be made: No space left on device");
      CHECK(folder.names().empty());
    } else {
      CHECK(std::filesystem::exists(folder.path("solids/gate/A.step")));
      std::filesystem::remove_all(folder.path("solids"));
    }
  }
  // Of three files: opened, synced and closed, two of them written; three folders opened; renamed.
  CHECK(failed == 3 * 3 + 2 + 3 + 1);
}

TEST_CASE("A user's text as a name stays within its folder, and differs where the text does") {
  CHECK(safe_name("side-door") == "side-door");
  CHECK(safe_name("Türe 2") == "Türe 2");
  CHECK(safe_name("K1/2") == "K1%2F2");
  CHECK(safe_name("..") == "%2E%2E");
  CHECK(safe_name("../../etc") == "%2E.%2F..%2Fetc");
  CHECK(safe_name(".hidden") == "%2Ehidden");
  CHECK(safe_name("a.b") == "a.b");
  CHECK(safe_name("a. ") == "a.%20");
  CHECK(safe_name("50%2F") == "50%252F");
  CHECK(safe_name("a\nb\x7F") == "a%0Ab%7F");
  CHECK(safe_name("\xE2\x80\xAE") == "%E2%80%AE");  // writes from right to left
  CHECK(safe_name("\xFF") == "%FF");
  CHECK(safe_name("<odd> & \"quoted\"") == "%3Codd%3E & %22quoted%22");
}

}  // namespace haunch::test
