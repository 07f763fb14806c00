// Two results that belong together: a cutting plan, and the stock that it leaves.
#pragma once

#include <string_view>

#include "output_file.h"

namespace haunch {

/// What goes into one of the two.
struct Part {
  OutputFile& file;
  std::string_view text;
  Content content = Content::shown;
};

/// Writes `first`, and `second` only when all of `first` is out: in its place, synced, or taken by
/// the pipe that it goes to.
///
/// Two named files come whole, both or neither: on every fault that a call of the system reports,
/// on every signal that can be caught, and without memory. What ends the process between the two
/// renamings (SIGKILL, a power cut) leaves the first without the second, never the other way round.
/// When the second cannot be renamed, what was in place of the first is put back; true, unless that
/// failed too, or the disk knows no second names (FAT): the first then stays in place alone.
bool write_both(const Part& first, const Part& second);

}  // namespace haunch
