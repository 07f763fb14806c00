// What is fitted and hung, by the names that a rates file is asked for.
#include "fitted.h"

#include "priced.h"

namespace haunch {
namespace {

using namespace test;

Assembly example(const std::string& name) {
  std::stringstream text;
  text << std::ifstream(std::string(HAUNCH_EXAMPLES) + "/" + name).rdbuf();
  return wood(text.str());
}

/// "3 runners 450 mm" each.
std::vector<std::string> fitted(const Assembly& wood) {
  std::vector<std::string> all;
  for (const FittedGoods& goods : fitted_to(wood))
    all.push_back(std::to_string(goods.number) + " " + goods.name);
  return all;
}

/// "3 drawer" each.
std::vector<std::string> hung(const Assembly& wood) {
  std::vector<std::string> all;
  for (const HungGroup& group : hung_in(wood))
    all.push_back(std::to_string(group.number) + " " + std::string(word_of(group.kind)) +
                  (group.in_wall ? " in the wall" : ""));
  return all;
}

using Words = std::vector<std::string>;

TEST_CASE("A lock is one, however many recesses it has, and its strike comes with it") {
  const Assembly door = example("mill-yard.json");
  CHECK(fitted(door) == Words{"3 hinges with flaps 100 mm", "1 lock"});
  CHECK(hung(door) == Words{"1 leaf in the wall"});
}

TEST_CASE("In a set the hinges count on the leaf, which is hung in the shop") {
  const Assembly set = example("flour-loft.json");
  CHECK(fitted(set) == Words{"2 hinges with flaps 100 mm"});
  CHECK(hung(set) == Words{"1 leaf"});
}

TEST_CASE("A cabinet has runners, pins and screws, and hangs its drawers and its door") {
  const Assembly cabinet = example("proving-base.json");
  CHECK(fitted(cabinet) == Words{"3 runners 450 mm", "4 shelf pins 5 mm", "21 screws 4.5 mm"});
  CHECK(hung(cabinet) == Words{"3 drawer", "1 leaf"});
}

TEST_CASE("A frame alone has nothing that is hung") {
  CHECK(hung(example("kneading-room.json")).empty());
}

}  // namespace
}  // namespace haunch
