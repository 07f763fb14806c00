#include "succession.h"

#include <set>

namespace haunch {
namespace {

/// Of each setting those that its runs came from, or went to.
using Others = std::vector<std::set<std::size_t>>;

std::optional<std::size_t> only_one(const std::set<std::size_t>& others) {
  return others.size() == 1 ? std::optional(*others.begin()) : std::nullopt;
}

}  // namespace

Succession succession_of(std::size_t was, std::size_t is, const std::vector<Link>& links,
                         const std::function<bool(std::size_t was, std::size_t is)>& same) {
  Others to(was), from(is);
  for (const Link& link : links) {
    to[link.was].insert(link.is);
    from[link.is].insert(link.was);
  }
  Succession found{std::vector<bool>(is), std::vector<std::optional<std::size_t>>(is), {}};
  std::vector<bool> told(was);
  for (std::size_t before = 0; before < was; ++before)
    for (std::size_t after = 0; after < is && !told[before]; ++after)
      if (!found.stays[after] && same(before, after)) told[before] = found.stays[after] = true;
  for (std::size_t after = 0; after < is; ++after) {
    const auto before = only_one(from[after]);
    if (found.stays[after] || !before || told[*before] || !only_one(to[*before])) continue;
    found.from[after] = before;
    told[*before] = true;
  }
  for (std::size_t before = 0; before < was; ++before)
    if (!told[before]) found.goes.push_back(before);
  return found;
}

}  // namespace haunch
