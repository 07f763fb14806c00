#include "operation.h"

#include <algorithm>
#include <tuple>

namespace haunch {

Length Operation::setting(SizeName name) const {
  for (const NamedSize& it : settings)
    if (it.name == name) return it.size;
  return {};
}

bool Operation::has(SizeName name) const {
  return std::any_of(settings.begin(), settings.end(),
                     [&](const NamedSize& it) { return it.name == name; });
}

bool set_alike(const Operation& a, const Operation& b) {
  return std::tie(a.makes, a.cut, a.through, a.open_end, a.both_faces) ==
             std::tie(b.makes, b.cut, b.through, b.open_end, b.both_faces) &&
         std::equal(a.settings.begin(), a.settings.end(), b.settings.begin(), b.settings.end(),
                    [](const NamedSize& x, const NamedSize& y) {
                      return x.name == y.name && x.size == y.size;
                    });
}

std::string_view word(Cut cut) {
  constexpr std::string_view kWords[] = {"whole",     "face-cheek", "back-cheek", "face-cope",
                                         "back-cope", "haunch",     "flare"};
  return kWords[static_cast<std::size_t>(cut)];
}

std::string_view word(Line line) {
  return word_of(line);
}

}  // namespace haunch
