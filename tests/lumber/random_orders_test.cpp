// Orders drawn at random: every plan is looked at by the oracle; small ones are solved by trying
// everything.
#include <algorithm>
#include <cstdlib>

#include "catch.h"
#include "effort.h"
#include "plan_oracle.h"
#include "random.h"

using namespace haunch;
using namespace haunch::lumber;

namespace {

Length tenths(std::size_t count) {
  return Length::from_mm_thousandths(static_cast<std::int64_t>(count) * 100);
}

Stock random_stock(Random& random, std::size_t index) {
  Stock stock;
  stock.id = "stock" + std::to_string(index);
  const bool sheet = random.below(4) == 0;
  stock.length = tenths(10'000 + random.below(25'000));
  stock.width = tenths(sheet ? 8'000 + random.below(5'000) : 900 + random.below(2'000));
  if (random.below(3) == 0) stock.count = static_cast<std::int64_t>(random.below(6));
  stock.bought = random.below(3) != 0;
  stock.cost = static_cast<Money>(random.below(4000));
  stock.end_trim = tenths(random.below(3) == 0 ? 0 : random.below(200));
  stock.edge_trim = tenths(random.below(3) == 0 ? 0 : random.below(60));
  stock.grain = random.below(5) != 0;
  while (random.below(3) == 0) {
    const Length from = tenths(random.below(9'000));
    stock.defects.push_back({from, from + tenths(1 + random.below(900))});
  }
  return stock;
}

CuttingOrder random_order(Random& random) {
  CuttingOrder order;
  const std::size_t stocks = 1 + random.below(4);
  for (std::size_t index = 0; index < stocks; ++index)
    order.stock.push_back(random_stock(random, index));
  const std::size_t kinds = 1 + random.below(8);
  for (std::size_t kind = 0; kind < kinds; ++kind) {
    Want want;
    want.length = tenths(1'000 + random.below(random.below(8) == 0 ? 30'000 : 9'000));
    want.width = tenths(200 + random.below(1'500));
    want.turnable = random.below(6) == 0;
    if (random.below(5) == 0) want.group = "group" + std::to_string(random.below(3));
    const std::size_t copies = 1 + random.below(5);
    for (std::size_t copy = 0; copy < copies; ++copy) {
      want.name = "part" + std::to_string(order.wants.size());
      order.wants.push_back(want);
    }
  }
  const std::size_t kerfs[] = {0, 5, 24, 32, 40};
  order.saw = {.kerf = tenths(kerfs[random.below(5)]),
               .offcut_length = tenths(3'000),
               .offcut_width = tenths(500),
               .keep_offcuts = random.below(4) != 0};
  order.stages = static_cast<Stages>(random.below(6));
  order.prefer = static_cast<Prefer>(random.below(3));
  order.seed = random.next();
  return order;
}

/// The fewest bars that hold the parts: each part tried in each bar begun, and in a new one.
class FewestBars {
 public:
  FewestBars(std::vector<std::int64_t> parts, std::int64_t room)
      : parts_(std::move(parts)), room_(room), best_(parts_.size()) {}

  std::size_t run() {
    std::vector<std::int64_t> bars;
    descend(0, bars);
    return best_;
  }

 private:
  void descend(std::size_t part, std::vector<std::int64_t>& bars) {
    if (bars.size() >= best_ && part < parts_.size()) return;
    if (part == parts_.size()) {
      best_ = std::min(best_, bars.size());
      return;
    }
    for (std::size_t bar = 0; bar < bars.size(); ++bar) {
      if (bars[bar] + parts_[part] > room_) continue;
      bars[bar] += parts_[part];
      descend(part + 1, bars);
      bars[bar] -= parts_[part];
    }
    bars.push_back(parts_[part]);
    descend(part + 1, bars);
    bars.pop_back();
  }

  std::vector<std::int64_t> parts_;
  std::int64_t room_;
  std::size_t best_;
};

/// The fewest boards that hold the parts in strips as long as the board, parts end to end in a
/// strip: each part tried in each strip begun and in a new one, then each strip on each board.
class FewestBoards {
 public:
  struct Part {
    std::int64_t length, width;
  };

  FewestBoards(std::vector<Part> parts, std::int64_t long_room, std::int64_t wide_room)
      : parts_(std::move(parts)), room_(long_room), wide_(wide_room), best_(parts_.size()) {}

  std::size_t run() {
    std::vector<Part> strips;
    descend(0, strips);
    return best_;
  }

 private:
  void descend(std::size_t part, std::vector<Part>& strips) {
    if (part == parts_.size()) {
      std::vector<std::int64_t> widths;
      for (const Part& strip : strips)
        widths.push_back(strip.width);
      best_ = std::min(best_, FewestBars(widths, wide_).run());
      return;
    }
    const Part& next = parts_[part];
    for (std::size_t strip = 0; strip < strips.size(); ++strip) {
      if (strips[strip].length + next.length > room_) continue;
      const Part before = strips[strip];
      strips[strip] = {before.length + next.length, std::max(before.width, next.width)};
      descend(part + 1, strips);
      strips[strip] = before;
    }
    strips.push_back(next);
    descend(part + 1, strips);
    strips.pop_back();
  }

  std::vector<Part> parts_;
  std::int64_t room_, wide_;
  std::size_t best_;
};

}  // namespace

TEST_CASE("every plan of a random order is sound, and none comes under its bounds") {
  Random random(20'261);
  for (std::int64_t run = 0; run < test::times_effort(1000); ++run) {
    const CuttingOrder order = random_order(random);
    INFO("order " << run);
    const Plan plan = plan_cutting(order);
    const std::vector<std::string> found = objections(plan, order);
    INFO((found.empty() ? "" : found.front()));
    REQUIRE(found.empty());
  }
}

TEST_CASE("up to eight parts in a row take the fewest bars there can be") {
  Random random(4711);
  for (std::int64_t run = 0; run < test::times_effort(300); ++run) {
    CuttingOrder order;
    const std::int64_t kerf = static_cast<std::int64_t>(random.below(5));
    order.saw.kerf = Length::from_mm(kerf);
    std::vector<std::int64_t> enlarged;
    const std::size_t parts = 1 + random.below(8);
    for (std::size_t part = 0; part < parts; ++part) {
      const auto length = static_cast<std::int64_t>(100 + random.below(600));
      enlarged.push_back(length + kerf);
      order.wants.push_back(
          {.name = "part", .length = Length::from_mm(length), .width = Length::from_mm(40)});
    }
    Stock bar;
    bar.id = "bar";
    bar.length = Length::from_mm(1000);
    bar.width = Length::from_mm(60);
    bar.bought = true;
    bar.cost = 100;
    order.stock = {bar};
    const Plan plan = plan_cutting(order);
    INFO("order " << run);
    REQUIRE(objections(plan, order).empty());
    const std::size_t fewest = FewestBars(enlarged, 1000 + kerf).run();
    CHECK(plan.boards.size() == fewest);
    CHECK(plan.bounds.best <= static_cast<std::int64_t>(fewest) * 100);
  }
}

TEST_CASE("up to seven parts in strips take the fewest boards there can be") {
  Random random(1866);
  int as_few = 0;
  const std::int64_t runs = test::times_effort(300);
  for (std::int64_t run = 0; run < runs; ++run) {
    CuttingOrder order;
    order.stages = Stages::rip_crosscut;
    const auto kerf = static_cast<std::int64_t>(random.below(5));
    order.saw.kerf = Length::from_mm(kerf);
    std::vector<FewestBoards::Part> enlarged;
    const std::size_t parts = 2 + random.below(6);
    for (std::size_t part = 0; part < parts; ++part) {
      const auto length = static_cast<std::int64_t>(150 + random.below(500));
      const auto width = static_cast<std::int64_t>(40 + random.below(120));
      enlarged.push_back({length + kerf, width + kerf});
      order.wants.push_back(
          {.name = "part", .length = Length::from_mm(length), .width = Length::from_mm(width)});
    }
    Stock board;
    board.id = "board";
    board.length = Length::from_mm(1000);
    board.width = Length::from_mm(200);
    board.bought = true;
    board.cost = 100;
    order.stock = {board};
    const Plan plan = plan_cutting(order);
    INFO("order " << run);
    REQUIRE(objections(plan, order).empty());
    const std::size_t fewest = FewestBoards(enlarged, 1000 + kerf, 200 + kerf).run();
    if (plan.boards.size() == fewest) ++as_few;
    CHECK(plan.boards.size() <= fewest + 1);
    CHECK(plan.bounds.best <= static_cast<std::int64_t>(fewest) * 100);
  }
  CHECK(as_few >= runs - runs / 1000);
}
