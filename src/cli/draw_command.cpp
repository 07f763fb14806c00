#include "commands.h"
#include "complaints.h"

namespace haunch {

ExitStatus run_draw(const Invocation& invocation, const Streams& streams) {
  if (invocation.words.empty())
    return Complaints(streams).refuse(
        "draw: no spec is named; give a file, a folder, or - for standard input");
  return kDone;
}

}  // namespace haunch
