#include "frame_spec.h"

#include <algorithm>
#include <utility>

#include "frame_rules.h"
#include "shop.h"

namespace haunch {
namespace {

const std::vector<std::string_view> kStopWords = {"planted", "rebate"};
const std::vector<std::string_view> kHeadWords = {"housed", "rebated", "tenoned"};

constexpr bool kOfItem = true;

KeyRow item_size(std::string_view key, std::string_view words) {
  return {key, Holds::size, Change::none, words, nullptr, kOfItem};
}
KeyRow size(std::string_view key, Change change, std::string_view words) {
  return {key, Holds::size, change, words};
}
KeyRow gap(std::string_view key, Change change, std::string_view words) {
  return {key, Holds::size_or_zero, change, words};
}
KeyRow flag(std::string_view key, std::string_view words) {
  return {key, Holds::flag, Change::none, words, nullptr, kOfItem};
}

const KeyRow kRows[] = {
    item_size("wall_opening.width", "width of the opening in the wall"),
    item_size("wall_opening.height", "height of the opening in the wall"),
    item_size("frame.width", "width over the jambs"),
    item_size("frame.height", "height from the frame's foot to its top"),
    item_size("leaf.width", "width of the leaf, its lips with it"),
    item_size("leaf.height", "height of the leaf, its lip with it"),
    size("leaf.thickness", Change::none, "thickness of the leaf"),
    size("leaf.lip_thickness", Change::none, "of a rebated leaf's lip, which lies on the face"),
    {"rule", Holds::word, Change::none, "a published rule from the wall's opening to the leaf",
     &frame_rule_words()},
    gap("fitting_allowance.left", Change::none, "between frame and wall, left"),
    gap("fitting_allowance.right", Change::none, "between frame and wall, right"),
    gap("fitting_allowance.head", Change::none, "between frame and wall, head"),
    gap("fitting_allowance.foot", Change::none, "between frame and wall, foot"),
    gap("clearance.left", Change::none, "gap beside the leaf, left"),
    gap("clearance.right", Change::none, "gap beside the leaf, right"),
    gap("clearance.head", Change::none, "gap above the leaf"),
    gap("clearance.foot", Change::none, "gap below the leaf, to the floor or threshold"),
    gap("lip.left", Change::none, "how far a rebated leaf laps its frame, left"),
    gap("lip.right", Change::none, "how far a rebated leaf laps its frame, right"),
    gap("lip.head", Change::none, "how far a rebated leaf laps its frame, head"),
    size("jamb_width", Change::size, "width of jambs and head, from face to back of the frame"),
    size("jamb_thickness", Change::size, "thickness of the jambs"),
    size("head_thickness", Change::size, "thickness of the head"),
    {"stop.kind", Holds::word, Change::none, "planted on, or worked from the solid", &kStopWords},
    size("stop.depth", Change::size, "how far the stop stands behind the leaf"),
    size("stop.width", Change::size, "width of a planted stop"),
    gap("stop.gap", Change::size, "play between the leaf's back and its stop"),
    gap("reveal", Change::size, "how far the leaf stands back from the frame's face"),
    {"head_joint", Holds::word, Change::none, "how head and jambs meet", &kHeadWords},
    size("housing_depth", Change::size, "how far the head goes into the jambs"),
    gap("fit_allowance", Change::fit,
        "housing width minus head, or mortise width minus tenon thickness"),
    gap("horn", Change::size,
        "of housed jambs, what stands above the head; of a tenoned head, left on at each end"),
    size("tenon.depth", Change::size, "length of a jamb's tenon from its shoulder"),
    gap("tenon.relish", Change::size, "what a tenon loses at the outside of its jamb"),
    gap("tenon.edge_clearance", Change::fit, "play at each edge of a tenon in its mortise"),
    gap("tenon.bottom_clearance", Change::size, "mortise depth minus tenon depth"),
    size("mortise.width", Change::size, "width of every mortise"),
    gap("mortise.from_face", Change::size, "face of the frame to the near wall of every mortise"),
    size("threshold.height", Change::size, "height of a threshold between the jambs"),
    size("sill.height", Change::size, "height of a sill that the jambs are tenoned into"),
    size("transom.thickness", Change::size, "height of a transom's section"),
    item_size("transom.light", "clear height between transom and head"),
    flag("exterior", "in an outside wall"),
    flag("escape_route", "on an escape route"),
    flag("accessible", "on an accessible route"),
    flag("existing_opening", "in an opening whose old paint or frame is disturbed"),
    flag("fire_rated", "of a fire-rated set: refused"),
};

constexpr std::string_view kSpreads[] = {"fitting_allowance", "clearance", "lip"};

void note_misspelt_units(ValueReader& read, const Value& document) {
  for (const Entry& entry : document.entries)
    if (entry.key != "units" && !nearest_word(entry.key, {"units"}).empty()) read.let_units_be();
}

}  // namespace

const KeyTable& frame_keys() {
  static const KeyTable kTable{kRows, kSpreads};
  return kTable;
}

FrameReading read_frame_spec(const Value& document, std::optional<Unit> units) {
  ValueReader unit_reader(units);
  FrameReading reading;
  const auto stated = read_units(unit_reader, document);
  reading.head.units = stated ? stated : units;
  reading.head.units_by_shop = !stated && units;
  reading.problems = unit_reader.take_problems();
  ValueReader read(reading.head.units);
  note_misspelt_units(read, document);
  read_item_head(read, document, reading.head);
  reading.values = read_keys(read, frame_keys(), document, "", Reader::spec, item_head_keys());
  reading.given = given_lengths(read.take_lengths());
  if (!reading.head.units) {
    reading.head.units = unit_of_sizes(reading.given);
    reading.head.units_inferred = reading.head.units.has_value();
  }
  for (Problem& problem : read.take_problems())
    reading.problems.push_back(std::move(problem));
  return reading;
}

ShopFrame read_shop_frame(const Value& shop, std::optional<Unit> units) {
  const Value* frame = shop.find("frame");
  if (frame == nullptr) return {};
  ValueReader read(units);
  ShopFrame result;
  if (frame->kind != Value::Kind::object)
    read.wrong_type(*frame, "/frame", "an object; write the keys of a frame in it");
  else
    result.values = read_keys(read, frame_keys(), *frame, "/frame", Reader::shop, {});
  result.problems = read.take_problems();
  return result;
}

void take_shop_frame(FrameReading& reading, const ShopDefaults& shop) {
  reading.values.overlay(read_shop_frame(shop.values(), shop.units()).values);
  const Value* species = shop.values().find("species");
  if (species == nullptr || !reading.head.species.empty()) return;
  reading.head.species = species->text;
  reading.head.species_by_shop = !species->text.empty();
}

void refuse_fire_rated(FrameReading& reading, std::string_view path) {
  if (!reading.values.says("fire_rated")) return;
  reading.problems.push_back(
      {child_path(path, "fire_rated"),
       "a fire-rated set is not worked or altered from here: its frame, leaf, gaps and fittings "
       "are "
       "those of its listing (NFPA 80 allows little more at the job than undercutting by up to 3/4 "
       "in); ask its maker and the authority, and leave it to them",
       {}});
}

}  // namespace haunch
