#include "commands.h"
#include "schema.h"

namespace haunch {

ExitStatus run_schema(const Invocation& invocation, const Streams& streams) {
  const bool spec = invocation.words.front() == "spec";
  return write_result(spec ? spec_schema() : std::string(report_schema()), invocation, streams);
}

}  // namespace haunch
