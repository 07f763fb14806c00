// What becomes of settings from an old work to a new one.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

namespace haunch {

/// Something that was run with an old setting and is run with a new one, both by number.
struct Link {
  std::size_t was = 0, is = 0;
};

struct Succession {
  std::vector<bool> stays;                       // of each new one: it was set before
  std::vector<std::optional<std::size_t>> from;  // of each other new one the old one that it was
  std::vector<std::size_t> goes;                 // old ones that neither stay nor become others
};

/// One becomes another where all that was run with it and still is, is run with that, which is run
/// with nothing else that was.
Succession succession_of(std::size_t was, std::size_t is, const std::vector<Link>& links,
                         const std::function<bool(std::size_t was, std::size_t is)>& same);

}  // namespace haunch
