// A kind of work: from the values of a spec to an assembly. One file a kind, one line in the list
// in kind.cpp.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "access.h"
#include "bought_fitting.h"
#include "document.h"
#include "extra_spec.h"
#include "finish_spec.h"
#include "haunch/length_text.h"
#include "haunch/wood.h"
#include "season.h"
#include "tolerances.h"

namespace haunch {

/// A length, several, words or a number. Not a variant: with a text in it, that of libstdc++ 12 is
/// undefined when memory runs out while it is copied.
struct AssumedValue {
  AssumedValue(Length its_length) : kind(Kind::length), length(its_length) {}
  AssumedValue(std::vector<Length> its_lengths)
      : kind(Kind::lengths), lengths(std::move(its_lengths)) {}
  AssumedValue(std::string its_words) : kind(Kind::words), words(std::move(its_words)) {}
  AssumedValue(int its_number) : kind(Kind::number), number(its_number) {}

  enum class Kind { length, lengths, words, number } kind;
  Length length;
  std::vector<Length> lengths;
  std::string words;
  int number = 0;

  friend bool operator==(const AssumedValue& a, const AssumedValue& b) = default;
};

/// A value that the spec did not give, and where it came from.
struct Assumed {
  std::string key;  // as in the spec, dotted: "tenon.relish"
  AssumedValue value;
  std::string why;
};

/// A length that the spec gives, and how it was read.
struct Given {
  std::string key;      // dotted, a rail by its place from the top, 0 first: "rail_widths.1.top"
  std::string written;  // as in the spec, without its quotes
  Length length;
};

/// Where a fitting goes as the figure of its place rises.
enum class Moves {
  nothing,  // it is no place
  up,
  down,
  along  // up or to the right, as its piece lies
};

/// What of a design a change touches, the least first: where something stands, a size of a joint or
/// a gap, how wide or thick a member is.
enum class Touches { place, size, proportion };

/// One size of a job that may be changed to put a check right.
struct Lever {
  std::string key;   // as in the spec, dotted; a rail by its place from the top, 0 first:
                     // "rail_widths.1.top"
  std::string what;  // whose it is, where the key does not say: "lock rail"
  Length value;      // as worked
  Length step;       // the least change worth making, > 0
  Length least;      // the spec refuses anything lower
  Moves moves = Moves::nothing;
  std::vector<Length> only = {};  // rising: no other values can be had; empty: by steps

  Touches touches() const;
};

/// Something that whoever makes or fits the work is to be told once, with the document it rests on.
struct Caution {
  std::string_view about;  // a literal: "escape route"
  std::string words;
};

/// What every caution of a code or standard ends with.
constexpr std::string_view kDecides =
    "; the adopted local code, the authority and a licensed professional decide";

/// A size that the work leads through, beside those of its pieces: "leaf", "wall opening".
struct NamedRoom {
  std::string what;
  Length width, height;
};

/// Lengths that follow on each other in one line and add up to the whole of it.
struct Chain {
  struct Link {
    std::string what;  // "left side", "opening 2"
    Length length;
  };
  std::string what;  // "across the front"
  std::vector<Link> links;

  Length total() const;
};

/// What working a job gives: the wood, and what had to be assumed. With problems there is no wood.
struct Worked {
  Assembly assembly;
  std::vector<Assumed> assumed;
  std::vector<Problem> problems;
  std::vector<NamedRoom> rooms;  // from the outside in
  std::vector<Chain> chains;
  std::vector<Caution> cautions;
};

class Job;

/// A job with something other than a size changed.
struct Alternative {
  std::string key;       // as in the spec, dotted
  std::string from, to;  // in words
  std::unique_ptr<Job> job;
};

/// What leaves are to serve for, which their wood does not show.
struct Service {
  bool cabinet = false;     // on a cabinet, not in a house's doorway
  bool outside = false;     // in an outside wall
  bool accessible = false;  // on an accessible route
};

/// One item of a spec, read: what it is called, and how it is worked.
class Job {
 public:
  virtual ~Job() = default;

  std::string id;
  std::string_view kind;  // as in the spec: "door"
  std::string name;       // what the shop calls it; the kind where the spec is silent
  std::string note;
  std::string due;  // a day as 2031-05-17, so that texts compare as days do; or empty
  FinishSpec finish;
  bool supply_only = false;         // nothing is hung or fitted
  std::optional<Value> other_work;  // that is no cut, as written: a list
  OfRoles<std::string> species;     // empty: not stated
  std::vector<Species> woods;     // that the spec or the shop file adds, or gives other figures of
  std::vector<ExtraSpec> extras;  // as they lie before one, of a handed twin turned about
  std::vector<TakenFitting> fittings;  // from the shop's list, each use once
  std::optional<Access> access;        // where the way to its place is told
  int quantity = 1;
  Unit unit = Unit::mm;
  std::vector<Given> given;  // in the order of the spec
  /// How far off cuts may come, where the spec or the shop speaks of it; and what was taken for
  /// that besides.
  std::optional<Tolerances> tolerances;
  std::vector<Assumed> assumed_tolerances;
  std::vector<Assumed> assumed_names;  // id and quantity, where the spec is silent
  /// What its wood goes through, where the spec or the shop speaks of moisture; and what was taken
  /// for that besides.
  std::optional<Season> season;
  std::vector<Assumed> assumed_season;
  /// What its panels go through in a usual year, where neither speaks of it and their wood is
  /// known.
  std::optional<Season> usual_year;
  Service service;

  /// Sets the job out. Throws LengthOverflow when a size is beyond reckoning.
  virtual Worked work() const = 0;
  /// The sizes that a remedy may change, with their values as worked. Only of a job that works
  /// without problems.
  virtual std::vector<Lever> levers() const = 0;
  /// The same job with one of its levers set to `value`; everything the spec left open is chosen
  /// anew.
  virtual std::unique_ptr<Job> with(const Lever& lever, Length value) const = 0;
  /// Other ways to do the same work that may help it through its seasons, each once; several of a
  /// key are told in the order in which they are to be tried.
  virtual std::vector<Alternative> alternatives() const { return {}; }
};

/// What reading an item gave: a job, or what is wrong with its spec (all of it, in the order of the
/// text).
struct JobReading {
  std::unique_ptr<Job> job;
  std::vector<Problem> problems;
};

struct Spec;  // what one document states, by key; see spec.h

/// Names the job, whose kind is set, as its spec does, noting what was assumed.
void name_job(Job& job, const Spec& spec, std::string_view default_id);

struct ShopDefaults;  // what a shop file says, read; see shop.h

/// Reads one item. `shop` may be null. An item without an id gets `default_id`.
JobReading read_job(const Value& item, const ShopDefaults* shop, std::string_view default_id);

}  // namespace haunch
