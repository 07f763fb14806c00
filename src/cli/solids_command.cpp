#include <iterator>
#include <utility>
#include <vector>

#include "commands.h"
#include "complaints.h"
#include "order.h"
#include "output_folder.h"
#include "solids.h"

namespace haunch {
namespace {

std::string usage_fault(const Invocation& invocation) {
  if (invocation.words.empty())
    return "solids: no spec is named; give a file, a folder, or - for standard input";
  if (is_standard_output(invocation.output))
    return "solids: there is one file a piece; name a new folder for them, as -o solids";
  return {};
}

}  // namespace

ExitStatus run_solids(const Invocation& invocation, const Streams& streams) {
  Complaints complaints(streams);
  const std::string wrong = usage_fault(invocation);
  if (!wrong.empty()) return complaints.refuse(wrong);
  if (const auto fault = folder_fault(invocation.output)) {
    complaints.note(*fault);
    return complaints.status();
  }
  Order order(invocation.words, invocation, streams, complaints);
  if (!order.open()) return complaints.status();
  std::vector<FolderFile> files;
  order.work({.checks = true, .making = true}, [&](const ItemReport& item) {
    ItemSolids solids = solids_of(item);
    for (const std::string& fault : solids.faults)
      complaints.refuse(item.job->id + ": " + fault);
    std::move(solids.files.begin(), solids.files.end(), std::back_inserter(files));
  });
  order.sum_up("what is refused has no solids");
  if (files.empty() || complaints.status() >= kFileFault) return complaints.status();
  if (const auto fault = write_folder(invocation.output, files)) complaints.note(*fault);
  return complaints.status();
}

}  // namespace haunch
