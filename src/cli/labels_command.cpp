#include "commands.h"
#include "complaints.h"

namespace haunch {

ExitStatus run_labels(const Invocation&, const Streams& streams) {
  return Complaints(streams).refuse("labels: is not made yet");
}

}  // namespace haunch
