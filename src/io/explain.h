// Where each figure of an item comes from: what was stated, what was taken for want of that, and
// of what sum of them each size is made.
//
// No rule is written here a second time. The item is worked again with each of its values moved a
// little, up and down; by how much every other figure moves with it is that value's part in it.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "kind.h"
#include "other_items.h"
#include "spec_source.h"

namespace haunch {

/// Who said a value.
enum class SaidIn : std::uint8_t { spec, shop, built_in, worked_out };

template <>
inline constexpr std::string_view kWords<SaidIn>[] = {"spec", "shop", "built in", "worked out"};

/// In lowest terms, `under` above 0.
struct Fraction {
  std::int64_t over = 0, under = 1;

  friend bool operator==(const Fraction&, const Fraction&) = default;
};

/// So many times another value of the same explanation.
struct Term {
  Fraction factor;
  std::size_t value = 0;  // by index
};

struct ExplainedValue {
  std::string
      what;  // a key, "tenon.relish"; or a figure of the report, "C.length", "J1.tenon.width"
  AssumedValue value;
  SaidIn from = SaidIn::worked_out;
  std::string rule;              // in words
  std::string source;            // the place in the spec, a handbook, or empty
  std::vector<Term> terms = {};  // the value is their sum; empty: it is no such sum
};

struct Explanation {
  std::string id;
  std::string source;  // the file of its spec
  Unit unit = Unit::mm;
  std::vector<ExplainedValue> values;  // each `what` once
  std::size_t stated = 0;              // so many, the first, are of keys
};

/// An item's explanation, or the problems that stand against it.
struct ExplainOutcome {
  std::optional<Explanation> explanation;
  std::vector<Problem> problems;
};

/// Explains one item, which is there: everything given and assumed, all lengths of its parts,
/// joints and operations, and the figures of its checks. Works it about four times as often as it
/// has values.
ExplainOutcome explain(const Record& record, const ShopDefaults* shop,
                       const OtherItems* others = nullptr);

/// Those of an explanation that are meant: the value of that name, or those whose names go on from
/// it with a dot, "C", "J1", "tenon". By index.
std::vector<std::size_t> meant_by(const Explanation& explanation, std::string_view what);

/// Those that are meant, and all values that stand in their sums; all where `what` is empty.
std::vector<std::size_t> told_of(const Explanation& explanation, std::string_view what);

/// What an explanation has a name nearest to `what`, or nothing.
std::string nearest_to(const Explanation& explanation, std::string_view what);

/// "2", "1/3"
std::string fraction_text(Fraction fraction);

}  // namespace haunch
