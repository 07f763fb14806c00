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
    {"A shop file alone", "See [shop-file.md](shop-file.md).", "", kOfShop}};

bool is_of_frames(const KeyRow& row) {
  return row.key.starts_with("frame.");
}

/// The first section that a key belongs to tells of it.
bool belongs(const KeyRow& row, const Section& section) {
  const Owners items = row.of & kOfItems;
  if (section.of == kOfItems) return (items & kOfFrame) != 0 && !is_of_frames(row);
  if (section.of == kOfFrame) return is_of_frames(row);
  if (section.of == kOfShop) return items == 0;
  if (is_of_frames(row) || (items & kOfFrame) != 0) return false;
  return section.of == kOfDoor ? (items & kOfDoor) != 0 : items == kOfSet;
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
