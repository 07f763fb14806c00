// The one table of keys, and the page of docs that is made from it.
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <set>

#include "keys_page.h"
#include "spec_reader.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// The row of the object that a key is a member of; null at the top, also of a part of a layout.
const KeyRow* group_of(const KeyRow& member) {
  const std::size_t dot = member.key.rfind('.');
  if (member.of == kOfNode && dot == member.key.find('.')) return nullptr;
  for (const KeyRow& row : kKeys)
    if (dot != std::string_view::npos && row.key == member.key.substr(0, dot)) return &row;
  return nullptr;
}

std::string text_of(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace

TEST_CASE("No kind of work has two keys of one name") {
  std::set<std::pair<std::string_view, unsigned>> seen;
  for (const KeyRow& row : kKeys)
    for (const unsigned of :
         {kOfDoor, kOfFrame, kOfSet, kOfShop, kOfCabinet, kOfFaceFrame, kOfDrawer, kOfNode, kOfRun})
      if ((row.of & of) != 0) CHECK(seen.emplace(row.key, of).second);
}

TEST_CASE("Every member of a group stands below a row of that") {
  for (const KeyRow& row : kKeys) {
    INFO(row.key);
    const KeyRow* group = group_of(row);
    const bool at_top = row.of == kOfNode && row.key.find('.') == row.key.rfind('.');
    CHECK((group != nullptr) == (!at_top && row.key.find('.') != std::string_view::npos));
    if (group != nullptr) CHECK(group->holds == Holds::object);
  }
}

TEST_CASE("The items of a list stand in the row after it") {
  for (std::size_t i = 0; i < kKeys.size(); ++i) {
    INFO(kKeys[i].key);
    if (kKeys[i].holds == Holds::list) CHECK(kKeys[i + 1].key == std::string(kKeys[i].key) + "[]");
    if (kKeys[i].is_item()) CHECK(kKeys[i - 1].holds == Holds::list);
  }
}

TEST_CASE("Every key says what it is, whose it is, and what its words are") {
  for (const KeyRow& row : kKeys) {
    INFO(row.key);
    CHECK_FALSE(row.about.empty());
    CHECK(row.of != 0);
    if (row.holds == Holds::word) CHECK_FALSE(row.words.empty());
    if (row.holds != Holds::own) CHECK((row.holds == Holds::word || row.words.empty()));
    CHECK((row.holds == Holds::count || row.holds == Holds::list || !row.refused.empty()) >=
          (row.most > 0));
    CHECK((row.change == Change::none || row.is_size()));
    if (row.holds == Holds::own || row.holds == Holds::list) CHECK_FALSE(row.form.empty());
  }
}

TEST_CASE("What an object may be without its braces, its members can be") {
  for (const KeyRow& row : kKeys) {
    if (row.plain == Plain::nothing) continue;
    INFO(row.key);
    for (const KeyRow& member : kKeys)
      if (row.plain == Plain::each && group_of(member) == &row)
        CHECK((member.is_size() || member.holds == Holds::word));
  }
}

TEST_CASE("A key that is looked up by its path is that key") {
  for (const Key key : AllKeys())
    CHECK(find_key(key.path())->path() == key.path());
  CHECK(find_key("panel.raise.profile") == Key("panel.raise.profile"));
  CHECK_FALSE(find_key("panel.raise.profil"));
  CHECK_FALSE(find_key(""));
}

TEST_CASE("A word goes from the spec into its values, and from there into what is assumed") {
  const SpecReading reading =
      read_spec(value_of(R"({"units": "mm", "opening": {"width": 930, "height": 2060},
                   "panel": {"raised": "front", "raise": {"profile": "cove"}}})"),
                {.of = kOfDoor}, {});
  CHECK(in_lines(reading.problems).empty());
  CHECK(reading.spec.word<Profile>("panel.raise.profile") == Profile::cove);
  CHECK(reading.spec["panel.raise.profile"].by_spec());
  CHECK(reading.spec.said_by("panel.raise") == SaidBy::spec);
  CHECK(reading.spec.said_by("panel.gap") == SaidBy::nobody);
}

TEST_CASE("The page of keys is what the table says") {
  const std::string file = std::string(HAUNCH_DOCS) + "/keys.md";
  if (std::getenv("HAUNCH_ACCEPT") != nullptr) std::ofstream(file, std::ios::binary) << keys_page();
  CHECK(text_of(file) == keys_page());
}

}  // namespace haunch::test
