// Money shared out: no hundredth is lost, and none is made.
#include "shares.h"

#include <numeric>
#include <random>

#include "catch.h"

namespace haunch::test {
namespace {

std::vector<std::int64_t> shared(std::int64_t whole, const std::vector<double>& weights) {
  std::vector<std::int64_t> shares;
  for (const Money& share : shares_of({whole}, weights))
    shares.push_back(share.hundredths);
  return shares;
}

}  // namespace

TEST_CASE("Ten euros among three that bear alike: the odd cent goes to the first") {
  CHECK(shared(1000, {1, 1, 1}) == std::vector<std::int64_t>{334, 333, 333});
  CHECK(shared(1001, {1, 1, 1}) == std::vector<std::int64_t>{334, 334, 333});
}

TEST_CASE("What is left over goes to those that lost most by rounding down") {
  // Of 1.00: 14.28.., 28.57.., 57.14.. cents.
  CHECK(shared(100, {1, 2, 4}) == std::vector<std::int64_t>{14, 29, 57});
}

TEST_CASE("Who bears nothing pays nothing; where nobody bears anything, all pay alike") {
  CHECK(shared(777, {0, 5, 0}) == std::vector<std::int64_t>{0, 777, 0});
  CHECK(shared(9, {0, 0}) == std::vector<std::int64_t>{5, 4});
  CHECK(shared(0, {3, 4}) == std::vector<std::int64_t>{0, 0});
}

TEST_CASE("Shares add up to the whole, and none is a cent or more from its due") {
  std::mt19937 random(5);
  for (int round = 0; round < 20'000; ++round) {
    const auto whole = static_cast<std::int64_t>(random() % 10'000'000);
    std::vector<double> weights(1 + random() % 30);
    for (double& weight : weights)
      weight = static_cast<double>(random() % 1000) / 7;
    const std::vector<std::int64_t> shares = shared(whole, weights);
    REQUIRE(std::accumulate(shares.begin(), shares.end(), std::int64_t{0}) == whole);
    const double sum = std::accumulate(weights.begin(), weights.end(), 0.0);
    if (sum == 0) continue;
    for (std::size_t i = 0; i < shares.size(); ++i) {
      const double due = static_cast<double>(whole) * weights[i] / sum;
      REQUIRE(std::abs(static_cast<double>(shares[i]) - due) < 1 + 1e-6);
    }
  }
}

}  // namespace haunch::test
