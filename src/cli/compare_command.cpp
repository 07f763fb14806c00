#include "commands.h"
#include "complaints.h"

namespace haunch {

ExitStatus run_compare(const Invocation&, const Streams& streams) {
  return Complaints(streams).refuse("compare: is not made yet");
}

}  // namespace haunch
