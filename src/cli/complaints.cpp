#include "complaints.h"

#include <algorithm>

#include "messages.h"

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

void Complaints::tell(const std::string& line) {
  if (told_.insert(line).second) complain(line, streams_);
}

bool Complaints::can_read(SpecSource& source) {
  const std::vector<FileFault> faults = source.check();
  for (const FileFault& fault : faults)
    note(fault);
  return faults.empty();
}

void write_result(const std::string& text, const Invocation& invocation, const Streams& streams,
                  const std::vector<std::string>& inputs, Complaints& complaints) {
  OutputFile file(invocation.output, streams.out, identities_of(inputs, streams));
  {
    const auto lock = still(streams);
    file.append(text, content_of(invocation.view));
    file.finish();
  }
  complaints.note(file);
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
