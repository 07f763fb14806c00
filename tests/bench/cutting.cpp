// Cutting plans measured: how far above the bound, and how long. Prints a line for each set.
//
//   haunch_bench_cutting [SETS]     a tenth of the usual number of orders with SETS 1, all with 10
#include "cutting.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string>

#include "random.h"

using namespace haunch;
using namespace haunch::lumber;

namespace {

Length mm(std::size_t whole) {
  return Length::from_mm(static_cast<std::int64_t>(whole));
}

/// Parts for a row: one stock length, all as wide as it.
CuttingOrder row_order(Random& random, std::size_t pieces, std::size_t capacity, std::size_t least,
                       std::size_t most) {
  CuttingOrder order;
  for (std::size_t piece = 0; piece < pieces; ++piece) {
    order.wants.push_back({.name = "p" + std::to_string(piece),
                           .length = mm(least + random.below(most - least + 1)),
                           .width = mm(50)});
  }
  order.stock.push_back({.id = "bar",
                         .length = mm(capacity),
                         .width = mm(50),
                         .bought = true,
                         .cost = 100,
                         .end_trim = {},
                         .edge_trim = {}});
  return order;
}

CuttingOrder limited_row(Random& random) {
  CuttingOrder order = row_order(random, 60, 3000, 200, 1200);
  order.saw.kerf = mm(4);
  order.stock.clear();
  for (std::size_t index = 0; index < 4; ++index) {
    const std::size_t length = 2400 + 600 * index;
    order.stock.push_back({.id = "bar" + std::to_string(index),
                           .length = mm(length),
                           .width = mm(50),
                           .count = 8,
                           .bought = true,
                           .cost = static_cast<Money>(length / 3 + random.below(150)),
                           .end_trim = {},
                           .edge_trim = {}});
  }
  return order;
}

void add_boards(CuttingOrder& order, Random& random) {
  const std::size_t widths[] = {150, 180, 220, 260};
  std::size_t index = 0;
  for (const std::size_t width : widths) {
    const std::size_t length = 2400 + 300 * random.below(6);
    order.stock.push_back({.id = "board" + std::to_string(index++),
                           .length = mm(length),
                           .width = mm(width),
                           .bought = true,
                           .cost = static_cast<Money>(length * width / 300 + random.below(200)),
                           .end_trim = mm(10),
                           .edge_trim = mm(3)});
  }
}

/// Lengths and widths in steps of 5 mm from the least on, so many steps; up to so many of a size.
struct PartSizes {
  std::size_t least_length, length_steps, least_width, width_steps, most_alike;
};

void add_parts(CuttingOrder& order, Random& random, std::size_t parts, const PartSizes& sizes) {
  std::size_t made = 0;
  while (made < parts) {
    const Length length = mm(sizes.least_length + 5 * random.below(sizes.length_steps));
    const Length width = mm(sizes.least_width + 5 * random.below(sizes.width_steps));
    const std::size_t count = 1 + random.below(sizes.most_alike);
    for (std::size_t copy = 0; copy < count && made < parts; ++copy, ++made)
      order.wants.push_back({.name = "p" + std::to_string(made), .length = length, .width = width});
  }
}

CuttingOrder week_on_boards(Random& random, std::size_t parts) {
  CuttingOrder order;
  order.saw = {.kerf = mm(3), .offcut_length = mm(400), .offcut_width = mm(60)};
  add_parts(order, random, parts, {250, 360, 35, 22, 8});
  add_boards(order, random);
  return order;
}

CuttingOrder week_on_sheets(Random& random, std::size_t parts) {
  CuttingOrder order;
  order.saw = {.kerf = mm(3), .offcut_length = mm(400), .offcut_width = mm(300)};
  add_parts(order, random, parts, {200, 200, 150, 90, 6});
  order.stock.push_back({.id = "sheet",
                         .length = mm(2440),
                         .width = mm(1220),
                         .bought = true,
                         .cost = 6400,
                         .end_trim = mm(6),
                         .edge_trim = mm(6)});
  order.stock.push_back({.id = "half",
                         .length = mm(1220),
                         .width = mm(1220),
                         .bought = true,
                         .cost = 3500,
                         .end_trim = mm(6),
                         .edge_trim = mm(6)});
  return order;
}

/// A shelf of the baseline: what is left of its length, how wide it is.
struct Shelf {
  Length left, width;
};

/// The boards of one stock that first-fit shelves take: parts by falling width, each on the first
/// shelf with room, else on a new one on the first board with room; none where a part does not fit.
std::size_t boards_by_shelves(const CuttingOrder& order, const Stock& stock) {
  const Length room = stock.length - stock.end_trim * 2 + order.saw.kerf;
  const Length wide = stock.width - stock.edge_trim * 2 + order.saw.kerf;
  std::vector<Shelf> shelves;
  std::vector<Length> boards;
  std::vector<Want> wants = order.wants;
  std::stable_sort(wants.begin(), wants.end(),
                   [](const Want& a, const Want& b) { return a.width > b.width; });
  for (const Want& want : wants) {
    const Length length = want.length + order.saw.kerf;
    const Length width = want.width + order.saw.kerf;
    if (length > room || width > wide) return 0;
    auto shelf = std::find_if(shelves.begin(), shelves.end(), [&](const Shelf& it) {
      return it.left >= length && it.width >= width;
    });
    if (shelf == shelves.end()) {
      auto board =
          std::find_if(boards.begin(), boards.end(), [&](Length left) { return left >= width; });
      if (board == boards.end()) board = boards.insert(boards.end(), wide);
      *board -= width;
      shelf = shelves.insert(shelves.end(), {room, width});
    }
    shelf->left -= length;
  }
  return boards.size();
}

/// What the cheapest stock costs cut by first-fit shelves; 0 where none does for all parts.
Money cost_by_shelves(const CuttingOrder& order) {
  Money least = 0;
  for (const Stock& stock : order.stock) {
    const Money cost = stock.cost * static_cast<Money>(boards_by_shelves(order, stock));
    if (!stock.count && cost > 0 && (least == 0 || cost < least)) least = cost;
  }
  return least;
}

/// What a set of orders came to.
struct Tally {
  int orders = 0, proven = 0, incomplete = 0;
  double above_sum = 0, above_most = 0, boards_most = 0, seconds_most = 0, seconds = 0;
  int beside_shelves = 0, over_shelves = 0;
  double less_than_shelves = 0;

  void add(const CuttingOrder& order) {
    const auto start = std::chrono::steady_clock::now();
    const Plan plan = plan_cutting(order);
    const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
    const Bounds& bounds = plan.bounds;
    ++orders;
    if (bounds.proven) ++proven;
    if (!plan.unplaced.empty()) {
      ++incomplete;
    } else if (bounds.best > 0) {
      const double above = static_cast<double>(bounds.plan) / static_cast<double>(bounds.best) - 1;
      above_sum += above;
      above_most = std::max(above_most, above);
      boards_most = std::max(boards_most, bounds.boards_above);
    }
    if (const Money shelves = cost_by_shelves(order); shelves > 0 && plan.unplaced.empty()) {
      ++beside_shelves;
      if (plan.totals.cost > shelves) ++over_shelves;
      less_than_shelves += 1 - static_cast<double>(plan.totals.cost) / static_cast<double>(shelves);
    }
    seconds += taken.count();
    seconds_most = std::max(seconds_most, taken.count());
  }

  void print(const char* name) const {
    std::printf(
        "%-28s %4d orders  %4d proven best  %2d short  above bound: mean %5.2f %% most %5.2f %%, "
        "boards %.2f  seconds: mean %.2f most %.2f\n",
        name, orders, proven, incomplete, 100 * above_sum / orders, 100 * above_most, boards_most,
        seconds / orders, seconds_most);
    if (beside_shelves > 0)
      std::printf("%-28s %4d beside first-fit shelves: mean %.2f %% cheaper, dearer %d times\n", "",
                  beside_shelves, 100 * less_than_shelves / beside_shelves, over_shelves);
    std::fflush(stdout);
  }
};

template <typename Make>
void measure(const char* name, int orders, Make make) {
  Random random(2718);
  Tally tally;
  for (int order = 0; order < orders; ++order)
    tally.add(make(random));
  tally.print(name);
}

}  // namespace

int main(int argc, char** argv) {
  const int sets = argc > 1 ? std::atoi(argv[1]) : 1;
  measure("row 120 of 20-100 in 150", 4 * sets,
          [](Random& r) { return row_order(r, 120, 150, 20, 100); });
  measure("row 100 of 1-100 in 100", 4 * sets,
          [](Random& r) { return row_order(r, 100, 100, 1, 100); });
  measure("row 50 of 20-100 in 120", 4 * sets,
          [](Random& r) { return row_order(r, 50, 120, 20, 100); });
  measure("row 100 of 150-200 in 1000", 4 * sets,
          [](Random& r) { return row_order(r, 100, 1000, 150, 200); });
  measure("row triplets in 1000", 2 * sets,
          [](Random& r) { return row_order(r, 60, 1000, 250, 500); });
  measure("row, limited lengths", 4 * sets, limited_row);
  measure("boards, 60 parts", 4 * sets, [](Random& r) { return week_on_boards(r, 60); });
  measure("boards, 300 parts", 2 * sets, [](Random& r) { return week_on_boards(r, 300); });
  measure("sheets, 60 parts", 4 * sets, [](Random& r) { return week_on_sheets(r, 60); });
  measure("sheets, 300 parts", 2 * sets, [](Random& r) { return week_on_sheets(r, 300); });
  measure("boards, 3000 parts", sets > 1 ? 1 : 0,
          [](Random& r) { return week_on_boards(r, 3000); });
}
