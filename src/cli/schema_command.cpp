#include "commands.h"
#include "schema.h"

namespace haunch {

ExitStatus run_schema(const Invocation& invocation, const Streams& streams) {
  const std::string& which = invocation.words.front();
  if (which == "spec") return write_result(spec_schema(), invocation, streams);
  if (which == "sheet")
    return write_result(sheet_columns(invocation.view.csv), invocation, streams);
  if (which == "lumber") return write_result(lumber_schema(), invocation, streams);
  if (which == "explain") return write_result(explain_schema(), invocation, streams);
  if (which == "report") return write_result(report_schema(), invocation, streams);
  return write_result(stock_schema(), invocation, streams);
}

}  // namespace haunch
