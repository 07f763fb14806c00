#include "fittings_spec.h"

namespace haunch {
namespace {

bool has(const Value& object, std::string_view key) {
  return object.find(key) != nullptr;
}

void demand(ValueReader& read, const Value& object, const std::string& path, std::string_view key,
            std::string_view why) {
  if (!has(object, key) && !read.was_meant(child_path(path, key)))
    read.problem(path, "\"" + std::string(key) + "\" is missing; " + std::string(why));
}

RecessSpec recess_of(const KeyValues& item) {
  const auto size = [&](SizeKey key) { return item.size(key).value_or(Length()); };
  return {size("fittings[].cuts[].start"),     size("fittings[].cuts[].length"),
          size("fittings[].cuts[].width"),     size("fittings[].cuts[].diameter"),
          item.size("fittings[].cuts[].from"), item.size("fittings[].cuts[].depth")};
}

}  // namespace

std::vector<FittingSpec> fittings_of(const std::vector<KeyValues>& items) {
  std::vector<FittingSpec> fittings;
  for (const KeyValues& item : items) {
    FittingSpec fitting{item.text("fittings[].name"),
                        item.text("fittings[].on"),
                        item.word<Surface>("fittings[].into").value_or(Surface::face),
                        item.size("fittings[].at").value_or(Length()),
                        {},
                        item.says("fittings[].mirrored")};
    if (fitting.name.empty()) fitting.name = "fitting " + std::to_string(fittings.size() + 1);
    for (const KeyValues& recess : item["fittings[].cuts"].items)
      fitting.recesses.push_back(recess_of(recess));
    fittings.push_back(std::move(fitting));
  }
  return fittings;
}

std::vector<HingePlace> hinge_places_of(const std::vector<KeyValues>& items) {
  std::vector<HingePlace> places;
  for (const KeyValues& item : items) {
    const auto from_top = item.size("hinges.at[].from_top");
    places.push_back({from_top.value_or(item.size("hinges.at[].from_foot").value_or(Length())),
                      from_top.has_value()});
  }
  return places;
}

void check_recess(ValueReader& read, const Value& recess, const KeyValues& item,
                  const std::string& path) {
  if (recess.kind != Value::Kind::object) return;
  for (const std::string_view key : {"length", "width"})
    if (!has(recess, "diameter"))
      demand(read, recess, path, key,
             "a recess has a length and a width, a round hole a \"diameter\"");
    else if (has(recess, key))
      read.problem(child_path(path, key),
                   "a round hole has a diameter only; for a recess with square corners take "
                   "\"diameter\" out");
  if (!item.says("fittings[].cuts[].through"))
    demand(read, recess, path, "depth",
           "write how deep it is, or \"through\": true where it goes right through");
  else if (has(recess, "depth"))
    read.problem(child_path(path, "through"),
                 "goes right through, so it has no depth; keep one of them");
}

}  // namespace haunch
