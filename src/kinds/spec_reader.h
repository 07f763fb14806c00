// Reading specs and shop files: all kinds of work by the one table of keys.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "document.h"
#include "kind.h"
#include "spec.h"
#include "value_reader.h"

namespace haunch {

/// A key that does not stand where it may be looked for, and what to tell who writes it there.
struct Elsewhere {
  Key key;
  std::string message;
};

/// A key that a part of the work cannot say, as the whole does: where, or why not.
struct SaidElsewhere {
  Key key;
  std::string_view instead;
};
/// What to tell of each. `part`: "the leaf of a set".
std::vector<Elsewhere> elsewhere(std::string_view part, std::span<const SaidElsewhere> keys);

/// Which keys an object may have.
struct KeyScope {
  Owners of = 0;
  std::string_view root = {};  // what the table has before them: "frame." in a frame's own spec
  std::string_view other_root = {};  // the same of keys of another owner among them
  std::string_view within = R"({"tenon": {"relish": …}})";  // a key within another, as an example
  const std::vector<Elsewhere>* elsewhere = nullptr;
  std::vector<Key> others = {};  // objects that are read by themselves
};

/// Reads the entries of `object`, which stands at `path`.
void read_keys(ValueReader& read, const Value& object, const std::string& path,
               const KeyScope& scope, Spec& into);

struct SpecReading {
  Spec spec;
  std::vector<Given> given;  // the sizes of the work; its tolerances are none
  std::vector<Problem> problems;
};

/// Reads one item or shop file. `units` is what bare numbers are in where it does not say itself.
SpecReading read_spec(const Value& document, const KeyScope& scope, std::optional<Unit> units);

/// The lengths that were read, by dotted key.
std::vector<Given> given_lengths(std::vector<ReadLength> lengths);

}  // namespace haunch
