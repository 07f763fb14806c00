#include "rods_csv.h"

#include <algorithm>
#include <utility>

#include "csv_row.h"

namespace haunch {
namespace {

/// Every piece that a mark is carried to, once.
std::string pieces_at(const ItemRods& item, const RodMark& mark) {
  std::vector<std::string> all;
  for (const RodName& name : mark.names)
    for (std::string& piece : marks_of(item.wood, name.pieces))
      if (std::find(all.begin(), all.end(), piece) == all.end()) all.push_back(std::move(piece));
  return joined(all);
}

}  // namespace

std::string rods_csv(const std::vector<ItemRods>& items, Unit unit, CsvProfile profile) {
  std::string out(csv_start(profile));
  CsvRow head(out, unit, profile);
  for (const char* title : {"item", "rod", "from"})
    head.plain(title);
  head.plain("at_" + std::string(word_of(unit)));
  for (const char* title : {"what", "pieces"})
    head.plain(title);
  head.end();
  for (const ItemRods& item : items)
    for (const Rod& rod : item.rods)
      for (const RodMark& mark : rod.marks) {
        CsvRow row(out, unit, profile);
        row.text(item.id);
        row.text((rod.of.empty() ? "" : rod.of + ": ") + std::string(word_of(rod.direction)));
        row.plain(zero_of(rod.direction));
        row.length(mark.at);
        row.text(mark_text(item, rod, mark));
        row.text(pieces_at(item, mark));
        row.end();
      }
  return out;
}

}  // namespace haunch
