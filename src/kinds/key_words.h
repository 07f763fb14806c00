// Words that every table of a spec's keys has in common.
#pragma once

namespace haunch {

/// How a remedy may change a size.
enum class Change {
  none,  // not the joiner's to change for a check's sake
  size,  // by 0.5 mm or 1/64 in
  fit    // by 0.01 mm or 0.0005 in
};

/// Whose keys are being read: a spec's, or a shop file's, which may not name an item but may list
/// cutters.
enum class Reader { spec, shop };

}  // namespace haunch
