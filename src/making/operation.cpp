#include "operation.h"

#include <algorithm>
#include <tuple>

namespace haunch {

Length Operation::setting(SizeName name) const {
  return size_of(settings, name).value_or(Length());
}

bool Operation::has(SizeName name) const {
  return size_of(settings, name).has_value();
}

bool set_alike(const Operation& a, const Operation& b) {
  return std::tie(a.makes, a.cut, a.through, a.open_end, a.both_faces, a.profile) ==
             std::tie(b.makes, b.cut, b.through, b.open_end, b.both_faces, b.profile) &&
         std::equal(a.settings.begin(), a.settings.end(), b.settings.begin(), b.settings.end(),
                    [](const NamedSize& x, const NamedSize& y) {
                      return x.name == y.name && x.size == y.size;
                    });
}

}  // namespace haunch
