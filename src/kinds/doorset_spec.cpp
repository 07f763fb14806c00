#include "doorset_spec.h"

#include <algorithm>
#include <utility>

#include "shop.h"

namespace haunch {
namespace {

const std::vector<std::string_view> kActiveWords = {"left", "right"};

const KeyRow kRows[] = {
    {"pin_out", Holds::size_or_zero, Change::none,
     "how far the hinges' pin stands before the leaf's face"},
    {"lock_bevel", Holds::size_or_zero, Change::size,
     "how much the leaf is planed off at the back of its lock edge"},
    {"meeting_clearance", Holds::size_or_zero, Change::none, "gap between the leaves of a pair"},
    {"meeting_lap", Holds::size_or_zero, Change::size,
     "how far rebated meeting stiles lap; 0: square ones"},
    {"meeting_rest", Holds::size_or_zero, Change::none,
     "gap in the thickness between rebated meeting stiles"},
    {"active", Holds::word, Change::none, "which leaf of a pair opens first, and has the lock",
     &kActiveWords},
    {"strike.height", Holds::size, Change::size, "middle of the strike above the leaf's foot"},
    {"strike.plate.length", Holds::size, Change::none, "of the strike's plate"},
    {"strike.plate.width", Holds::size, Change::none, "of the strike's plate"},
    {"strike.plate.thickness", Holds::size, Change::none, "of the plate, how deep it is let in"},
    {"strike.mortise.length", Holds::size, Change::none, "of what latch and bolt shut into"},
    {"strike.mortise.width", Holds::size, Change::none, "of what latch and bolt shut into"},
    {"strike.mortise.depth", Holds::size, Change::size,
     "of that, from the face that the leaf's edge looks at"},
};

/// What a leaf cannot say, as its set does, and where.
struct Elsewhere {
  std::string_view key, instead;
};
constexpr Elsewhere kOfTheSet[] = {
    {"kind", "the set's leaf is always a door"},
    {"id", "the set has one"},
    {"name", "the set has one"},
    {"note", "the set has one"},
    {"units", "the set has them"},
    {"quantity", "the set has it"},
    {"species", "the set has it"},
    {"opening", "the frame makes it"},
    {"clearance", "it stands in the frame: \"frame\": {\"clearance\": …}"},
    {"moisture", "the set has it"},
    {"grain", "the set has it"},
    {"leaves", "the set says how many"},
    {"meets", "the frame's \"lip\" says whether it is rebated"},
    {"lap", "it is the frame's \"lip\""},
    {"meeting_clearance", "the set says how its leaves meet"},
    {"meeting_lap", "the set says how its leaves meet"},
    {"meeting_rest", "the set says how its leaves meet"},
    {"active", "the set says how its leaves meet"},
    {"work", "fits are forecast of a leaf alone: \"kind\": \"door\""},
    {"tolerance", "fits are forecast of a leaf alone: \"kind\": \"door\""},
    {"fit", "fits are forecast of a leaf alone: \"kind\": \"door\""},
};

void read_leaf(ValueReader& read, const Value& item, DoorsetReading& reading) {
  const Value* leaf = item.find("leaf");
  if (leaf == nullptr) return;
  if (leaf->kind != Value::Kind::object) {
    read.wrong_type(*leaf, "/leaf", "an object; write the keys of a door in it, or {}");
    return;
  }
  for (const Entry& entry : leaf->entries)
    for (const Elsewhere& other : kOfTheSet)
      if (entry.key == other.key)
        read.problem(
            child_path("/leaf", entry.key),
            "does not belong to the leaf of a set: " + std::string(other.instead) + "; take it out",
            entry.offset);
  if (reading.leaves == 2 && leaf->find("hangs") != nullptr)
    read.problem("/leaf/hangs", "a pair hangs at both sides; take it out");
  reading.leaf = leaf;
}

void read_frame_part(ValueReader& read, const Value& item, DoorsetReading& reading) {
  const Value* frame = item.find("frame");
  if (frame == nullptr) {
    if (!read.was_meant("/frame"))
      read.problem("",
                   "\"frame\" is missing; give \"frame\": {\"wall_opening\": {\"width\": …, "
                   "\"height\": …}}, or its \"leaf\" size");
    return;
  }
  if (frame->kind != Value::Kind::object) {
    read.wrong_type(*frame, "/frame", "an object; write the keys of a frame in it");
    return;
  }
  reading.frame.values = read_keys(read, frame_keys(), *frame, "/frame", Reader::spec, {});
  if (reading.frame.values.of("leaf.thickness").stated())
    read.problem("/frame/leaf/thickness",
                 "is the leaf's own; write it as \"leaf\": {\"thickness\": …}");
  if (reading.frame.values.of("leaf.lip_thickness").stated())
    read.problem("/frame/leaf/lip_thickness",
                 "is the leaf's own; write it as \"leaf\": {\"lip_thickness\": …}");
}

std::vector<std::string_view> other_keys() {
  std::vector<std::string_view> keys = item_head_keys();
  keys.insert(keys.end(),
              {"frame", "leaf", "leaves", "moisture", "grain", "work", "tolerance", "fit"});
  return keys;
}

/// Of its joints some are of a leaf and some of a frame, whose cuts are not known to be alike.
void refuse_fits(ValueReader& read, const Value& item) {
  for (const Entry& entry : item.entries)
    if (entry.key == "work" || entry.key == "tolerance" || entry.key == "fit")
      read.problem(child_path("", entry.key),
                   "fits are forecast of a leaf by itself, not of a set and its frame; work the "
                   "leaf as \"kind\": \"door\", in the size that the set gives it, and take this "
                   "out here",
                   entry.offset);
}

/// What its season is read from: its species, one for all, is read with its name.
Value without_species(const Value& item) {
  Value season = item;
  std::erase_if(season.entries, [](const Entry& it) { return it.key == "species"; });
  return season;
}

}  // namespace

const KeyTable& doorset_keys() {
  static const KeyTable kTable{kRows, {}};
  return kTable;
}

DoorsetReading read_doorset_spec(const Value& item, const ShopDefaults* shop) {
  DoorsetReading reading;
  const std::optional<Unit> shop_units = shop != nullptr ? shop->units() : std::nullopt;
  ValueReader unit_reader(shop_units);
  ItemHead& head = reading.frame.head;
  const auto stated = read_units(unit_reader, item);
  head.units = stated ? stated : shop_units;
  head.units_by_shop = !stated && shop_units;
  reading.problems = unit_reader.take_problems();
  ValueReader read(head.units);
  read_item_head(read, item, head);
  reading.values = read_keys(read, doorset_keys(), item, "", Reader::spec, other_keys());
  if (const Value* leaves = item.find("leaves"); leaves != nullptr)
    reading.leaves = read.whole_number(*leaves, "/leaves", 1, 2).value_or(1);
  reading.season = read_season_spec(read, without_species(item));
  refuse_fits(read, item);
  read_frame_part(read, item, reading);
  read_leaf(read, item, reading);
  reading.frame.given = given_lengths(read.take_lengths());
  if (!head.units) {
    head.units = unit_of_sizes(reading.frame.given);
    head.units_inferred = head.units.has_value();
  }
  if (shop != nullptr) take_shop_frame(reading.frame, *shop);
  refuse_fire_rated(reading.frame, "/frame");
  for (std::vector<Problem> problems : {read.take_problems(), std::move(reading.frame.problems)})
    for (Problem& problem : problems)
      reading.problems.push_back(std::move(problem));
  return reading;
}

}  // namespace haunch
