#include "row_patterns.h"

#include "catch.h"

using namespace haunch::lumber;

namespace {

// They fall in value for size: 1.2, 1.125, 1.
const std::vector<RowItem> kItems{{5, 6, 2}, {4, 4.5, 3}, {3, 3, 5}};

}  // namespace

TEST_CASE("two of 5 fill a bar of 10") {
  RowSearch search;
  const RowChoice& choice = search.best(kItems, 10, 0, 1000);
  CHECK(choice.value == 12);
  CHECK(choice.counts == std::vector<int>{2, 0, 0});
  CHECK(choice.at_most == 12);
}

TEST_CASE("a bar of 12 is better filled whole than with the dearest first") {
  RowSearch search;
  CHECK(search.best(kItems, 12, 0, 1000).value == 13.5);
}

TEST_CASE("no more of a part than are wanted") {
  RowSearch search;
  CHECK(search.best({{5, 6, 1}, {4, 4.5, 1}}, 20, 0, 1000).value == 10.5);
}

TEST_CASE("what is not worth more than was asked for is no choice") {
  RowSearch search;
  CHECK(search.best(kItems, 12, 13.5, 1000).value == 0);
  CHECK(search.best(kItems, 12, 13.4, 1000).value == 13.5);
}

TEST_CASE("a search cut short says how much more there might be") {
  RowSearch search;
  const RowChoice& choice = search.best(kItems, 12, 0, 2);
  CHECK(choice.at_most >= 13.5);
  CHECK(choice.value <= choice.at_most);
}
