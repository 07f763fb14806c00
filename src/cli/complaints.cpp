#include "complaints.h"

#include <algorithm>
#include <utility>

#include "messages.h"
#include "single_file.h"

namespace haunch {

void Complaints::raise(ExitStatus status) {
  status_ = std::max(status_, status);
}

void Complaints::note(const FileFault& fault) {
  raise(kFileFault);
  complain(error_line(fault), streams_);
}

void Complaints::note(const OutputFile& file) {
  if (file.fault()) note(*file.fault());
  if (file.state() == OutputFile::State::reader_gone) reader_gone_ = true;
}

bool Complaints::note(const std::vector<PlacedProblem>& problems) {
  if (!problems.empty()) raise(kBadSpec);
  for (const PlacedProblem& problem : problems)
    complain(error_line(problem), streams_);
  return problems.empty();
}

ExitStatus Complaints::refuse(const std::string& message) {
  raise(kBadSpec);
  complain("haunch: error: " + message, streams_);
  return status_;
}

bool Complaints::can_read(SpecSource& source) {
  const std::vector<FileFault> faults = source.check();
  for (const FileFault& fault : faults)
    note(fault);
  return faults.empty();
}

bool Complaints::take_shop_file(const std::string& file, std::optional<ShopDefaults>& shop) {
  if (file.empty()) return true;
  ShopFile read = read_shop_file(file, streams_.in);
  for (const FileFault& fault : read.faults)
    note(fault);
  shop = std::move(read.shop);
  return note(read.problems) && read.faults.empty() && shop;
}

std::vector<FileIdentity> identities_of(const std::vector<std::string>& files,
                                        const Streams& streams) {
  std::vector<FileIdentity> identities;
  for (const std::string& file : files) {
    if (file.empty()) continue;
    if (const auto identity = file == "-" ? identity_of(streams.in) : identity_of(file))
      identities.push_back(*identity);
  }
  return identities;
}

}  // namespace haunch
