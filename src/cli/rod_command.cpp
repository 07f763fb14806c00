#include "commands.h"
#include "complaints.h"

namespace haunch {

ExitStatus run_rod(const Invocation&, const Streams& streams) {
  return Complaints(streams).refuse("rod: is not made yet");
}

}  // namespace haunch
