// One door in two ways: what must not change when a spec is written otherwise, and what must change
// with it.

#include <algorithm>
#include <functional>

#include "catch.h"
#include "property_runs.h"
#include "random_spec.h"
#include "wood_oracle.h"

namespace haunch::test {

namespace {

/// Works a door written in two ways and hands both assemblies to `relation`, which says what is
/// wrong. Either both can be worked or none.
Outcome compare(const std::string& one, const std::string& other, std::string& wrong,
                const std::function<std::string(const Assembly&, const Assembly&)>& relation) {
  const Trial first = work(one);
  const Trial second = work(other);
  if (first.assembly.has_value() != second.assembly.has_value()) {
    wrong = "one is refused (" + first.refusal + second.refusal + "), the other is not";
  } else if (first.assembly) {
    wrong = relation(*first.assembly, *second.assembly);
  }
  if (!wrong.empty()) wrong += "\n" + one + "\n" + other;
  return first.assembly ? Outcome::worked : Outcome::refused;
}

std::string same_wood(const Assembly& a, const Assembly& b) {
  if (a.size != b.size) return "the leaves differ in size";
  if (wood_of(a) != wood_of(b)) return "the wood differs";
  return {};
}

/// The same cuts, box for box, in the same features.
std::string same_cuts(const Assembly& a, const Assembly& b) {
  if (a.pieces.size() != b.pieces.size()) return "not as many pieces";
  for (std::size_t i = 0; i < a.pieces.size(); ++i) {
    const Piece& one = a.pieces[i];
    const Piece& other = b.pieces[i];
    const bool same = one.mark == other.mark && one.blank == other.blank &&
                      one.place.origin == other.place.origin &&
                      one.place.axes == other.place.axes &&
                      std::equal(one.features.begin(), one.features.end(), other.features.begin(),
                                 other.features.end(), [](const Feature& x, const Feature& y) {
                                   return x.kind == y.kind && x.cuts == y.cuts;
                                 });
    if (!same) return "piece " + one.mark + " differs";
  }
  return {};
}

void scale(Block& block, std::int64_t times) {
  for (std::size_t i = 0; i < 3; ++i) {
    block.low[i] *= times;
    block.high[i] *= times;
  }
}

/// Left and right exchanged in a leaf so wide.
void mirror(Block& block, std::int64_t width) {
  const std::int64_t low = block.low[0];
  block.low[0] = width - block.high[0];
  block.high[0] = width - low;
}

/// The wood with every block changed, its blocks in order.
template <typename Change>
std::vector<Wood> changed(std::vector<Wood> wood, const Change& change) {
  for (Wood& piece : wood) {
    change(piece.blank);
    for (Block& block : piece.blocks)
      change(block);
    std::sort(piece.blocks.begin(), piece.blocks.end());
  }
  return wood;
}

std::vector<Wood> in_order(std::vector<Wood> wood) {
  wood = changed(std::move(wood), [](Block&) {});
  std::sort(wood.begin(), wood.end());
  return wood;
}

/// Specs with all keys divide by up to six without odd steps.
bool divides_evenly(const Assembly& assembly) {
  return std::all_of(assembly.joints.begin(), assembly.joints.end(), [](const Joint& joint) {
    return !joint.tenon || joint.tenon->each.size() <= 6;
  });
}

TEST_CASE("a leaf written in millimetres and in inches is the same wood", "[wood][property]") {
  const Tally tally = run_over(seeds_for(2'000), [](std::uint64_t seed, std::string& wrong) {
    const DoorSpec spec = random_door(seed, Keys::all);
    return compare(to_json(spec, {Unit::mm, seed, false, true}),
                   to_json(spec, {Unit::inch, seed + 1, false, true}), wrong, same_wood);
  });
  require_worked_share(tally, 70);
}

TEST_CASE("a leaf three times as large has wood three times as large", "[wood][property]") {
  const Tally tally = run_over(seeds_for(2'000), [](std::uint64_t seed, std::string& wrong) {
    const DoorSpec spec = random_door(seed, Keys::all);
    const std::int64_t times = 2 + static_cast<std::int64_t>(seed % 2);
    const Writing writing{spec.unit, seed, false, true};
    bool aside = false;
    const Outcome outcome =
        compare(to_json(spec, writing), to_json(scaled(spec, times), writing), wrong,
                [&](const Assembly& small, const Assembly& large) {
                  aside = !divides_evenly(small);
                  const auto grown = changed(wood_of(small), [&](Block& b) { scale(b, times); });
                  const auto grown_sorted = in_order(grown);
                  const bool same = aside || grown_sorted == in_order(wood_of(large));
                  return std::string(same ? "" : "the wood did not grow alike");
                });
    return aside ? Outcome::aside : outcome;
  });
  require_worked_share(tally, 70);
}

TEST_CASE("the names of rails change no cut", "[wood][property]") {
  const Tally tally = run_over(seeds_for(2'000), [](std::uint64_t seed, std::string& wrong) {
    DoorSpec spec = random_door(seed, Keys::some);
    for (std::size_t i = 0; i < spec.rails.size(); ++i) {
      spec.rails[i].name = "rail " + std::to_string(i + 1);
    }
    return compare(to_json(spec, {spec.unit, seed, false, true}),
                   to_json(spec, {spec.unit, seed, false, false}), wrong, same_cuts);
  });
  require_worked_share(tally, 60);
}

TEST_CASE("keys in another order are the same leaf", "[wood][property]") {
  const Tally tally = run_over(seeds_for(2'000), [](std::uint64_t seed, std::string& wrong) {
    const DoorSpec spec = random_door(seed, Keys::some);
    return compare(to_json(spec, {spec.unit, seed, false, true}),
                   to_json(spec, {spec.unit, seed + 7, true, true}), wrong, same_cuts);
  });
  require_worked_share(tally, 60);
}

TEST_CASE("left and right exchanged in the spec are exchanged in the wood", "[wood][property]") {
  const Tally tally = run_over(seeds_for(2'000), [](std::uint64_t seed, std::string& wrong) {
    const DoorSpec spec = random_door(seed, Keys::all);
    const Writing writing{spec.unit, seed, false, true};
    bool aside = false;
    const Outcome outcome =
        compare(to_json(spec, writing), to_json(mirrored(spec), writing), wrong,
                [&](const Assembly& one, const Assembly& other) {
                  aside = !divides_evenly(one);
                  const std::int64_t width = one.size[0].steps();
                  const auto turned = changed(wood_of(one), [&](Block& b) { mirror(b, width); });
                  const bool same = aside || in_order(turned) == in_order(wood_of(other));
                  return std::string(same ? "" : "the wood is not mirrored");
                });
    return aside ? Outcome::aside : outcome;
  });
  require_worked_share(tally, 70);
}

}  // namespace

}  // namespace haunch::test
