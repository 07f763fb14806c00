#include "cover.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace haunch::lumber {

namespace {

constexpr double kTenth = static_cast<double>(Length::kStepsPerMm) / 10;
constexpr std::int64_t kNodes = 200'000;

std::int64_t round_up(double value, std::int64_t step) {
  // Less than any price can differ by, more than doubles err by.
  const double safe = value - 1e-6 - std::abs(value) * 1e-12;
  const auto whole = static_cast<std::int64_t>(std::ceil(std::max(0.0, safe)));
  if (step <= 0) return whole;
  return (whole + step - 1) / step * step;
}

double ratio(const Carrier& carrier) {
  return static_cast<double>(carrier.price) / carrier.value;
}

/// Depth first over the kinds, the cheapest for its value first.
class WholeCover {
 public:
  WholeCover(const std::vector<Carrier>& carriers, std::int64_t step)
      : carriers_(carriers), step_(step) {}

  std::int64_t run(double need, std::int64_t known) {
    descend(0, need, 0);
    return nodes_ > 0 ? best_ : known;
  }

  double fractional(std::size_t index, double need) const {
    double price = 0;
    for (; index < carriers_.size() && need > 0; ++index) {
      const Carrier& carrier = carriers_[index];
      double count = need / carrier.value;
      if (carrier.limit) count = std::min(count, static_cast<double>(*carrier.limit));
      price += count * static_cast<double>(carrier.price);
      need -= count * carrier.value;
      if (!carrier.limit || count < static_cast<double>(*carrier.limit)) return price;
    }
    return need > 0 ? kNever : price;
  }

  static constexpr double kNever = 1e300;

 private:
  void descend(std::size_t index, double need, std::int64_t price) {
    if (need <= 0) {
      best_ = std::min(best_, price);
      return;
    }
    if (index == carriers_.size() || --nodes_ <= 0) return;
    const Carrier& carrier = carriers_[index];
    auto most = static_cast<std::int64_t>(std::ceil(need / carrier.value));
    if (carrier.limit) most = std::min(most, *carrier.limit);
    for (std::int64_t count = most; count >= 0; --count) {
      const double rest = need - static_cast<double>(count) * carrier.value;
      const std::int64_t now = price + count * carrier.price;
      const double least = fractional(index + 1, rest);
      if (least >= kNever) return;
      if (round_up(static_cast<double>(now) + least, step_) >= best_) {
        // With fewer of the cheapest the rest only grows dearer.
        if (rest > 0) return;
        continue;
      }
      descend(index + 1, rest, now);
      if (nodes_ <= 0) return;
    }
  }

  const std::vector<Carrier>& carriers_;
  std::int64_t step_;
  std::int64_t best_ = INT64_MAX;
  std::int64_t nodes_ = kNodes;
};

}  // namespace

Cover cover(std::vector<Carrier> carriers, double need) {
  Cover cover;
  if (need <= 0) return cover;
  std::erase_if(carriers, [](const Carrier& carrier) {
    return carrier.value <= 0 || (carrier.limit && *carrier.limit <= 0);
  });
  std::stable_sort(carriers.begin(), carriers.end(),
                   [](const Carrier& a, const Carrier& b) { return ratio(a) < ratio(b); });
  std::int64_t step = 0;
  for (const Carrier& carrier : carriers)
    step = std::gcd(step, carrier.price);
  WholeCover search(carriers, step);
  const double least = search.fractional(0, need);
  cover.possible = least < WholeCover::kNever;
  if (!cover.possible) return cover;
  cover.parts_of_boards = round_up(least, step);
  cover.whole_boards = std::max(cover.parts_of_boards, search.run(need, cover.parts_of_boards));
  return cover;
}

double part_area(const PartKind& part) {
  return std::floor(static_cast<double>(part.length) / kTenth *
                    (static_cast<double>(part.width) / kTenth) * (1 - 1e-13));
}

double board_area(const BoardKind& board) {
  return std::ceil(board.clear_area() / kTenth / kTenth * (1 + 1e-13));
}

double row_need(const PartKind& part) {
  return static_cast<double>(part.length);
}

double row_room(const BoardKind& board) {
  double room = 0;
  for (const Span& span : board.spans)
    room += static_cast<double>(span.length);
  return room;
}

std::int64_t round_up_to_prices(double value, const Model& model) {
  std::int64_t step = 0;
  for (const BoardKind& board : model.boards)
    step = std::gcd(step, board.price);
  return round_up(value, step);
}

}  // namespace haunch::lumber
