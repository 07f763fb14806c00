#include "doorset_spec.h"

#include <algorithm>
#include <utility>

#include "doorset_leaf.h"
#include "frame_plan.h"
#include "opening_spec.h"
#include "shop.h"
#include "spec_reader.h"

namespace haunch {
namespace {

constexpr std::string_view kHasOne = "the set has one";
constexpr std::string_view kHasIt = "the set has it";
constexpr std::string_view kHowTheyMeet = "the set says how its leaves meet";

/// What a leaf cannot say, and where its set does.
constexpr SaidElsewhere kOfTheSet[] = {
    {"kind", "the set's leaf is always a door"},
    {"id", kHasOne},
    {"name", kHasOne},
    {"note", kHasOne},
    {"due", kHasOne},
    {"finish", kHasOne},
    {"extras", "the set has them"},
    {"access", kHasOne},
    {"supply_only", "the set says it"},
    {"mirror", "the whole set is mirrored"},
    {"units", "the set has them"},
    {"quantity", kHasIt},
    {"species", kHasIt},
    {"opening", "the frame makes it"},
    {"clearance", "it stands in the frame: \"frame\": {\"clearance\": …}"},
    {"moisture", kHasIt},
    {"grain", kHasIt},
    {"woods", "the set has them"},
    {"use", kHasIt},
    {"leaves", "the set says how many"},
    {"meets", "the frame's \"lip\" says whether it is rebated"},
    {"lap", "it is the frame's \"lip\""},
    {"meeting_clearance", kHowTheyMeet},
    {"meeting_lap", kHowTheyMeet},
    {"meeting_rest", kHowTheyMeet},
    {"active", kHowTheyMeet},
    {"work", kHasIt},
    {"tolerance", kHasIt},
    {"fit", kHasIt},
};

/// What a frame by itself says, and in a set its leaf.
std::vector<Elsewhere> elsewhere_of_set() {
  return {{"frame.leaf.thickness", "is the leaf's own; write it as \"leaf\": {\"thickness\": …}"},
          {"frame.leaf.lip_thickness",
           "is the leaf's own; write it as \"leaf\": {\"lip_thickness\": …}"}};
}

/// Reads the leaf's keys, with the set's units.
void read_leaf(const Value& item, DoorsetReading& reading) {
  static const std::vector<Elsewhere> kElsewhere = elsewhere("the leaf of a set", kOfTheSet);
  reading.leaf.units = reading.spec.units;
  const Value* leaf = item.find("leaf");
  if (leaf == nullptr) return;
  ValueReader read(reading.spec.units);
  if (read.is_object(*leaf, "/leaf", "an object; write the keys of a door in it, or {}"))
    read_keys(read, *leaf, "/leaf", {.of = kOfDoor, .elsewhere = &kElsewhere}, reading.leaf);
  if (reading.spec.count("leaves") == 2 && reading.leaf["hangs"].stated)
    read.problem("/leaf/hangs", "a pair hangs at both sides; take it out");
  for (Given& given : given_lengths(read.take_lengths()))
    reading.given.push_back(std::move(given));
  add(reading.problems, read.take_problems());
}

}  // namespace

bool is_said_by_set(Key key_of_leaf) {
  return std::any_of(std::begin(kOfTheSet), std::end(kOfTheSet),
                     [&](const auto& it) { return it.key == key_of_leaf; });
}

DoorsetReading read_doorset_spec(const Value& item, const ShopDefaults* shop) {
  static const std::vector<Elsewhere> kElsewhere = elsewhere_of_set();
  SpecReading set =
      read_spec(item, {.of = kOfSet, .elsewhere = &kElsewhere, .others = {"leaf"}}, units_of(shop));
  DoorsetReading reading{std::move(set.spec), {}, std::move(set.given), std::move(set.problems)};
  read_leaf(item, reading);
  // The leaf's panels' gaps are chosen for the season, its wood is the set's, and so is the way of
  // working, by which its fits are forecast.
  take_from_whole(reading.leaf, reading.spec,
                  {"species", "moisture", "grain", "use", "work", "tolerance", "fit"});
  if (reading.problems.empty())
    add(reading.problems, take_found_opening(reading.spec, kWallOpening));
  if (shop != nullptr) {
    const Spec& its = shop->of_use(use_of(reading.spec, *shop, stated_height(reading.spec)));
    overlay(reading.spec, its, kOfFrame);
    overlay(reading.leaf, its, kOfDoor);
    reading.leaf.forget("finish.film");  // the frame's clearance has it
  }
  return reading;
}

}  // namespace haunch
