#include "commands.h"
#include "schema.h"

namespace haunch {

ExitStatus run_schema(const Invocation& invocation, const Streams& streams) {
  const std::string& which = invocation.words.front();
  if (which == "spec") return write_result(spec_schema(), invocation, streams);
  const std::string_view text = which == "stock"    ? stock_schema()
                                : which == "lumber" ? lumber_schema()
                                                    : report_schema();
  return write_result(std::string(text), invocation, streams);
}

}  // namespace haunch
