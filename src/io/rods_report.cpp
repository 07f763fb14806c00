#include "rods_report.h"

#include <algorithm>
#include <utility>

#include "run_rods.h"
#include "run_work.h"

namespace haunch {

ItemRods rods_of(ItemReport item) {
  ItemRods rods{item.job->id, item.job->name, item.job->unit, std::move(item.wood), {}};
  if (const RunWork* run = as_run(*item.job)) {
    rods.rods = run_rods(rods.wood, run->along_wall(), rods.unit);
    return rods;
  }
  for (const RodDirection direction :
       {RodDirection::height, RodDirection::width, RodDirection::depth})
    if (direction != RodDirection::depth || goes_back(rods.wood))
      rods.rods.push_back(rod_of(rods.wood, *item.making, direction));
  return rods;
}

std::string rod_name(const Rod& rod) {
  return (rod.of.empty() ? "" : rod.of + ": ") + std::string(word_of(rod.direction)) + " rod";
}

std::string strip_name(const Rod& rod, std::size_t strip) {
  const RodStrip& its = rod.strips[strip];
  const bool alone = std::none_of(rod.strips.begin(), rod.strips.end(), [&](const RodStrip& other) {
    return other.role == its.role && other.of != its.of;
  });
  std::string of = alone ? "" : its.of + " ";
  std::replace(of.begin(), of.end(), '-', ' ');
  if (its.pieces.size() > 1) return of + several_of(its.role);
  std::string one = of + std::string(word_of(its.role));
  std::replace(one.begin(), one.end(), '-', ' ');
  return one;
}

std::string pieces_text(const ItemRods& item, const Rod& rod, const RodName& name) {
  const bool one = name.pieces.size() == 1;
  const std::string what =
      one ? item.wood.pieces[name.pieces.front()].name : strip_name(rod, name.strip);
  return what + " " + joined(marks_of(item.wood, name.pieces));
}

std::string what_text(const ItemRods& item, const RodName& name) {
  if (name.takes.empty()) return name.what;
  return name.what + ", takes " + joined(marks_of(item.wood, name.takes));
}

std::string mark_text(const ItemRods& item, const Rod& rod, const RodMark& mark) {
  std::string text;
  for (const RodName& name : mark.names)
    text +=
        (text.empty() ? "" : "; ") + pieces_text(item, rod, name) + ": " + what_text(item, name);
  return text;
}

}  // namespace haunch
