#include "pattern.h"

#include "catch.h"
#include "orders.h"
#include "shelves.h"

using namespace haunch;
using namespace haunch::lumber;

namespace {

/// Kinds in the model's order: which is which is asked by length.
std::uint32_t kind_of(const Model& model, std::int64_t length) {
  for (std::uint32_t kind = 0; kind < model.parts.size(); ++kind)
    if (model.parts[kind].length == (mm(length).steps() + model.kerf)) return kind;
  FAIL("no part of this length");
  return 0;
}

Model yard_model() {
  return model_of(
      order_of({part(600, 100), part(600, 100), part(300, 60)}, {yard("ash", 1000, 200, 900)}, 3));
}

}  // namespace

TEST_CASE("a row is as long as its parts and their kerfs, and as wide as the widest") {
  const Model model = yard_model();
  const Row row{{kind_of(model, 600)}, {kind_of(model, 300)}};
  CHECK(extent(row, model, {}) == mm(603 + 303).steps());
  CHECK(height(row, model, {}) == mm(103).steps());
  CHECK(extent(Section{row, {{kind_of(model, 600)}}}, model, {}) == mm(906).steps());
}

TEST_CASE("a board's parts are counted over all its rows, and those too many taken out") {
  const Model model = yard_model();
  const Item large{kind_of(model, 600)}, small{kind_of(model, 300)};
  Pattern pattern{0, {{false, {{{large, small}, {large, small}}}}}, {}};
  count_parts(pattern);
  CHECK(pattern.parts.size() == 2);
  std::vector<int> limit(2, 0);
  limit[large.kind] = 2;
  limit[small.kind] = 1;
  drop_beyond(pattern, limit);
  std::vector<int> counts(2, 0);
  for (const auto& [kind, count] : pattern.parts)
    counts[kind] = count;
  CHECK(counts == limit);
}

TEST_CASE("a plan that leaves a part out is worse than any that does not") {
  const Model model = yard_model();
  const Item large{kind_of(model, 600)};
  Pattern one{0, {{false, {{{large}}}}}, {}};
  count_parts(one);
  Solution whole{{one, one, one}, {0, 0}};
  Solution short_of{{one}, {0, 0}};
  short_of.missing[large.kind] = 1;
  CHECK(score_of(whole, model) < score_of(short_of, model));
  CHECK(score_of(whole, model).cost == 2700);
  CHECK(score_of(whole, model).boards == 3);
}

TEST_CASE("two parts beside each other and one behind them go on a board as they come") {
  const Model model = yard_model();
  const Item large{kind_of(model, 600)}, small{kind_of(model, 300)};
  CHECK(board_on_shelves({large, small}, model, 0));
  // 103 + 103 is more than the 203 of the board's width and kerf.
  CHECK_FALSE(board_on_shelves({large, large}, model, 0));
}
