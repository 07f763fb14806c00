#include "keys_page.h"

#include <fmt/format.h>

#include "doorset_spec.h"
#include "key.h"

namespace haunch::test {
namespace {

struct Section {
  std::string_view title, words, root;
  Owners of;
};
constexpr Section kSections[] = {
    {"Any spec", "What names an item, and its wood. The page of each kind says which it takes.", "",
     kOfItems},
    {"A door", "See [door.md](door.md#keys).", "", kOfDoor},
    {"A frame",
     "See [frame.md](frame.md#keys). In a doorset and in a shop file they stand in `\"frame\": "
     "{…}`.",
     "frame.", kOfFrame},
    {"A doorset", "See [doorset.md](doorset.md#keys).", "", kOfSet},
    {"A cabinet", "See [cabinet.md](cabinet.md#keys).", "", kOfCabinet},
    {"A part of a layout",
     "What stands in the lists of a [layout](cabinet.md#layout). One that a leaf or a drawer "
     "closes "
     "may say their keys besides.",
     "layout_node.", kOfNode},
    {"A face frame",
     "See [face-frame.md](face-frame.md#keys). In a cabinet and in a shop file they stand in "
     "`\"face_frame\": {…}`.",
     "face_frame.", kOfFaceFrame},
    {"A drawer",
     "See [drawer.md](drawer.md#keys). In a cabinet and in a shop file they stand in `\"fronts\": "
     "{\"drawer\": {…}}`.",
     "fronts.drawer.", kOfDrawer},
    {"A run of cabinets", "See [run.md](run.md#keys). In a shop file they stand in `\"run\": {…}`.",
     "run.", kOfRun},
    {"A shop file alone", "See [shop-file.md](shop-file.md).", "", kOfShop}};

/// Whose section tells of a key: that which its path begins with; else what most have, or the first
/// of those that have it.
Owners teller_of(const KeyRow& row) {
  for (const Section& section : kSections)
    if (!section.root.empty() && row.key.starts_with(section.root)) return section.of;
  const Owners items = row.of & kOfItems;
  if (items == 0) return kOfShop;
  if ((items & kOfFrame) != 0) return kOfItems;
  for (const Owners of : {kOfDoor, kOfSet, kOfCabinet})
    if ((items & of) != 0) return of;
  return items;
}

bool belongs(const KeyRow& row, const Section& section) {
  return teller_of(row) == section.of;
}

std::string words_in(const KeyRow& row) {
  std::string all;
  for (std::size_t i = 0; i < row.words.size(); ++i)
    if (row.is_legal(i)) all += fmt::format("{}`\"{}\"`", all.empty() ? "" : ", ", row.words[i]);
  return all;
}

std::string form_of(const KeyRow& row) {
  switch (row.holds) {
    case Holds::size:
      return "length";
    case Holds::size_or_zero:
      return "length or 0";
    case Holds::count:
      return fmt::format("{} to {}", row.least, row.most);
    case Holds::word:
      return words_in(row);
    case Holds::flag:
      return "`true`, `false`";
    case Holds::text:
      return "text";
    case Holds::object:
      if (row.plain == Plain::nothing) return "object";
      return row.is_item() ? "object, or the value of its first key" : "object, or one for all";
    case Holds::list:
      return std::string(row.form.substr(0, row.form.find(';')));
    case Holds::own:
      return std::string(row.form);
  }
  return {};
}

/// Where else it may be said.
std::string also_in(const KeyRow& row, const Section& section) {
  std::string also;
  const auto add = [&](bool is, std::string_view what) {
    if (is) also += (also.empty() ? "" : ", ") + std::string(what);
  };
  const bool of_set = (row.of & kOfSet) != 0;
  add((row.of & kOfShop) != 0 && section.of != kOfShop, "shop");
  add(of_set && section.of == kOfDoor, "doorset");
  add(row.key.starts_with("panel.") && row.key != "panel.tiers", "tier");
  return also;
}

std::string remedy_of(const KeyRow& row) {
  return row.change == Change::none ? "" : row.change == Change::size ? "yes" : "in fine steps";
}

std::string line_of(const KeyRow& row, const Section& section) {
  std::string_view key = row.key;
  if (key.starts_with(section.root)) key.remove_prefix(section.root.size());
  return fmt::format("| `{}` | {} | {} | {} | {} | {} |\n", key, form_of(row), row.about, row.usual,
                     also_in(row, section), remedy_of(row));
}

}  // namespace

std::string keys_page() {
  std::string page =
      "# Keys\n\n"
      "Every key, from the table that specs are read by. Keys within others are written with dots "
      "here and in braces in a spec:\n`tenon.relish` is `\"tenon\": {\"relish\": …}`. How values "
      "are "
      "written: [spec.md](spec.md). `fittings[].at` is said in each object of that list. *Also "
      "in*: a [shop file](shop-file.md)\nmay say it, a doorset "
      "says it of its leaf, or it can be said of one tier of panels. *Remedy*: a "
      "[remedy](check.md) may change it.\n";
  for (const Section& section : kSections) {
    page += fmt::format("\n## {}\n\n{}\n\n", section.title, section.words);
    page +=
        "| key | value | what it is | left out | also in | remedy |\n|---|---|---|---|---|---|\n";
    for (const KeyRow& row : kKeys)
      if (belongs(row, section)) page += line_of(row, section);
  }
  return page;
}

}  // namespace haunch::test
