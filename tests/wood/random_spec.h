// Random door specs for property tests: the same seed gives the same spec on every machine.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "haunch/length_text.h"

namespace haunch::test {

/// A small random source (splitmix64) whose sequence no library changes.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed) {}

  std::uint64_t roll();
  /// A whole number from `low` to `high`, both included; `low` if the range is empty.
  std::int64_t between(std::int64_t low, std::int64_t high);
  bool chance(int percent) { return between(1, 100) <= percent; }

 private:
  std::uint64_t state_;
};

/// One length of a spec under its dotted key: "tenon.relish", "stile_width.left".
struct SpecLength {
  std::string_view key;
  Length length;
};

struct SpecRail {
  Length width;
  std::string name;       // empty: none
  std::string_view line;  // "top", "centre", "bottom"; empty: not placed
  Length height;          // of that line above the leaf's foot
};

enum class PanelsAs { left_out, count, across, each_tier };

/// What is otherwise of the panels of one tier. Keys and words as in DoorSpec.
struct TierPanels {
  std::vector<SpecLength> lengths;
  std::string rebate, raised, profile, grain, kind;

  std::optional<Length> find(std::string_view key) const;
};

/// A door spec before it is written down. What is not in `lengths` is left out.
struct DoorSpec {
  Unit unit = Unit::mm;
  std::vector<SpecLength> lengths;
  std::vector<SpecRail> rails;  // empty: left out
  PanelsAs panels_as = PanelsAs::left_out;
  std::vector<int> across;  // panels in each tier from the top
  std::string edge;         // empty: left out; so the rest
  std::string moulding, moulded_faces;
  std::string rebate;
  std::string raised, profile;
  std::string grain;
  std::string kind;               // of panels: "solid", "board"
  std::vector<TierPanels> tiers;  // from the top; empty: left out
  std::string name;
  std::string species;
  int quantity = 0;  // 0: left out

  std::optional<Length> find(std::string_view key) const;
};

enum class Keys { some, all };

/// A spec as a joiner might write it, now and then with a silly value. With Keys::all nothing that
/// decides the wood is left to a default (and so to the unit), every length is a multiple of 0.003
/// mm, which shares out evenly among up to six, and there is nothing silly in it.
DoorSpec random_door(std::uint64_t seed, Keys keys);

/// How a spec is put on paper.
struct Writing {
  Unit unit = Unit::mm;
  std::uint64_t style =
      0;  // decides which lengths are written as text, and in which of the two units
  bool shuffled = false;  // keys of every object in an order that `style` decides
  bool rail_names = true;
};

/// The spec as JSON text; every way of writing it says exactly the same lengths.
std::string to_json(const DoorSpec& spec, const Writing& writing);

/// Every length times `times`.
DoorSpec scaled(DoorSpec spec, std::int64_t times);

/// Left and right exchanged.
DoorSpec mirrored(DoorSpec spec);

}  // namespace haunch::test
