// What is to be known of a key of specs and shop files: one row a key, from which come its reading,
// its messages, the shop's say in it, what a remedy may change, the schema and the page of keys.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <string_view>

#include "choices.h"

namespace haunch {

/// What a key holds.
enum class Holds : std::uint8_t {
  size,          // a length above 0
  size_or_zero,  // a length from 0
  count,         // a whole number, `least` to `most`
  word,          // one of `words`
  flag,          // true or false
  text,
  object,  // the keys below it; `plain` says what else may stand in its place
  list,    // of `least` to `most` items, each as the row of the same key with "[]" after it says
  own      // what a reader of its own reads, in the form that `form` tells
};

/// What may stand in place of an object with members.
enum class Plain : std::uint8_t {
  nothing,
  each,  // one value for all of them that can take it
  first  // the value of the first of them
};

/// How a remedy may change a size.
enum class Change : std::uint8_t {
  none,  // not the joiner's to change for a check's sake
  size,  // by 0.5 mm or 1/64 in
  fit    // by 0.01 mm or 0.0005 in
};

/// Whose a key is, as a set of bits.
enum : std::uint16_t {
  kOfDoor = 1,
  kOfFrame = 2,
  kOfSet = 4,
  kOfShop = 8,  // a shop file may say it too
  kOfCabinet = 16,
  kOfFaceFrame = 32,
  kOfDrawer = 64,
  kOfNode = 128,  // of a part of a layout
  kOfRun = 256,
  kOfItems = kOfDoor | kOfFrame | kOfSet | kOfCabinet | kOfFaceFrame | kOfDrawer | kOfRun
};
using Owners = std::uint16_t;

/// A kind of work, whose keys it takes, and what the table has before those that are its own: a
/// frame's begin with "frame.", as a set and a shop file write them.
struct KindOfWork {
  std::string_view name;
  Owners of;
  std::string_view root = {};
};
inline constexpr KindOfWork kKindsOfWork[] = {{"door", kOfDoor},
                                              {"frame", kOfFrame, "frame."},
                                              {"doorset", kOfSet},
                                              {"cabinet", kOfCabinet},
                                              {"face-frame", kOfFaceFrame, "face_frame."},
                                              {"drawer", kOfDrawer, "fronts.drawer."},
                                              {"run", kOfRun, "run."}};

struct KeyRow {
  // Dotted; of a frame with "frame." before it, as a set and a shop write it; "fittings[].at" is
  // said in each object of a list.
  std::string_view key;
  Holds holds = Holds::size;
  Owners of = 0;
  std::string_view about;  // what it is
  std::string_view usual;  // what is taken where nothing is said; empty: nothing is
  Change change = Change::none;
  Words words = {};
  std::uint32_t legal = ~std::uint32_t{0};  // bits: which of the words can be
  int least = 0, most = 0;
  Plain plain = Plain::nothing;
  std::string_view missing = {};  // the spec must say it: what to tell where it does not
  std::string_view instead = {};  // unless it says this key of the same object in its place
  // What to tell where a flag is true that cannot be, a list has too few or too many items, or an
  // object that can have but one member has not one.
  std::string_view refused = {};
  std::string_view form = {};  // what is to be written, where the key alone does not tell

  constexpr bool is_item() const { return key.ends_with("[]"); }
  constexpr bool is_size() const { return holds == Holds::size || holds == Holds::size_or_zero; }
  constexpr bool is_legal(std::size_t word) const { return (legal >> word & 1U) != 0; }
};

/// Rows in short, for the table.
namespace rows {

// Of a fitting that the shop file lists.
inline constexpr std::string_view kByName =
    "one of the shop file's hardware, by its name: what that says holds where nothing else is said";
inline constexpr std::string_view kSaidHere = "what is said here, and as is usual";

constexpr KeyRow length(std::string_view key, Owners of, Change change, std::string_view about,
                        std::string_view usual) {
  return {key, Holds::size, of, about, usual, change};
}
constexpr KeyRow length_or_zero(std::string_view key, Owners of, Change change,
                                std::string_view about, std::string_view usual) {
  return {key, Holds::size_or_zero, of, about, usual, change};
}
constexpr KeyRow count(std::string_view key, Owners of, int least, int most, std::string_view about,
                       std::string_view usual) {
  KeyRow row{key, Holds::count, of, about, usual};
  row.least = least;
  row.most = most;
  return row;
}
template <typename Choice>
constexpr KeyRow word(std::string_view key, Owners of, std::string_view about,
                      std::string_view usual) {
  return {key, Holds::word, of, about, usual, Change::none, kWords<Choice>};
}
template <typename Choice>
constexpr KeyRow word(std::string_view key, Owners of, std::initializer_list<Choice> legal,
                      std::string_view about, std::string_view usual) {
  KeyRow row = word<Choice>(key, of, about, usual);
  row.legal = 0;
  for (const Choice choice : legal)
    row.legal |= std::uint32_t{1} << static_cast<unsigned>(choice);
  return row;
}
constexpr KeyRow flag(std::string_view key, Owners of, std::string_view about) {
  return {key, Holds::flag, of, about, "false"};
}
constexpr KeyRow text(std::string_view key, Owners of, std::string_view about,
                      std::string_view usual) {
  return {key, Holds::text, of, about, usual};
}
constexpr KeyRow object(std::string_view key, Owners of, std::string_view about,
                        Plain plain = Plain::nothing) {
  KeyRow row{key, Holds::object, of, about, {}};
  row.plain = plain;
  return row;
}
constexpr KeyRow own(std::string_view key, Owners of, std::string_view form, std::string_view about,
                     std::string_view usual) {
  KeyRow row{key, Holds::own, of, about, usual};
  row.form = form;
  return row;
}
constexpr KeyRow list(std::string_view key, Owners of, int least, int most, std::string_view form,
                      std::string_view about, std::string_view usual) {
  KeyRow row = count(key, of, least, most, about, usual);
  row.holds = Holds::list;
  row.form = form;
  return row;
}
/// An object that is told to be written in some form where it is none.
constexpr KeyRow formed(KeyRow row, std::string_view form) {
  row.form = form;
  return row;
}
/// A word, or what else a reader of its own reads.
constexpr KeyRow or_own(KeyRow row, std::string_view form) {
  row.holds = Holds::own;
  row.form = form;
  return row;
}
/// An object with one of its members, or a plain value for the first of them.
constexpr KeyRow one_member(KeyRow row, std::string_view why) {
  row.least = row.most = 1;
  row.refused = why;
  return row;
}
/// A flag that cannot be true, or a list of too few or too many items.
constexpr KeyRow refused(KeyRow row, std::string_view why) {
  row.refused = why;
  return row;
}
/// One that a spec cannot leave out, or an object that has it as a member.
constexpr KeyRow needed(KeyRow row, std::string_view missing, std::string_view instead = {}) {
  row.missing = missing;
  row.instead = instead;
  return row;
}

}  // namespace rows
}  // namespace haunch
