#include <algorithm>
#include <iterator>

#include "commands.h"
#include "schemas.h"

namespace haunch {

std::string schema_names(std::size_t first) {
  std::string names;
  for (std::size_t i = first; i < std::size(kSchemas); ++i)
    names += (i == first                     ? ""
              : i + 1 == std::size(kSchemas) ? " or "
                                             : ", ") +
             std::string(kSchemas[i].name);
  return names;
}

ExitStatus run_schema(const Invocation& invocation, const Streams& streams) {
  const std::string& which = invocation.words.front();
  const auto* row = std::find_if(std::begin(kSchemas), std::end(kSchemas),
                                 [&](const SchemaRow& it) { return it.name == which; });
  return write_result(row->text(invocation.view.csv), invocation, streams);
}

}  // namespace haunch
