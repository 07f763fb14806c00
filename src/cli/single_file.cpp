#include "single_file.h"

#include <utility>

#include "file_place.h"

namespace haunch {

SingleObject read_single(const std::string& file, const std::string& what, bool may_be_listed,
                         int standard_input, const SourceWays& ways) {
  SingleObject single;
  if (file != "-" && is_folder(file)) {
    single.faults.push_back({file, "is a folder; " + what + " is wanted"});
    return single;
  }
  SpecSource source({file}, standard_input, ways);
  single.faults = source.check();
  if (!single.faults.empty()) return single;
  auto record = source.next();
  if (!record) return single;
  if (record->fault) {
    single.faults.push_back(*record->fault);
    return single;
  }
  if (!record->item || record->spoilt) {
    record->ends_text = true;  // what follows is not looked at
    single.problems = record->place({});
    return single;
  }
  const bool listed = record->index && !may_be_listed;
  if (listed || source.next())
    single.problems.push_back(
        {record->source, 1, 1, "",
         (listed ? "is a list; " : "holds more than one object; ") + what + " is one object"});
  else
    single.record = std::move(record);
  return single;
}

}  // namespace haunch
