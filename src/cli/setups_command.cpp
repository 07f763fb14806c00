#include "commands.h"
#include "complaints.h"

namespace haunch {

ExitStatus run_setups(const Invocation&, const Streams& streams) {
  return Complaints(streams).refuse("setups: is not made yet");
}

}  // namespace haunch
