// What a run finds wrong: told as it comes, and kept as the exit status.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "commands.h"
#include "file_fault.h"
#include "output_file.h"
#include "spec_source.h"

namespace haunch {

class Complaints {
 public:
  explicit Complaints(const Streams& streams) : streams_(streams) {}

  /// The highest so far; where there is nothing else to tell, that the reader went.
  ExitStatus status() const { return status_ == kDone && reader_gone_ ? kReaderGone : status_; }
  void raise(ExitStatus status);

  void note(const FileFault& fault);
  /// What became of a result.
  void note(const OutputFile& file);
  /// True when there are none.
  bool note(const std::vector<PlacedProblem>& problems);
  /// An error that has no place in a file, with "haunch: error: " before it.
  ExitStatus refuse(const std::string& message);

  /// What is to be known, and no fault: once, however often it comes up.
  void tell(const std::string& line);

  /// What `source` cannot read at all is noted; false if there is any.
  bool can_read(SpecSource& source);

 private:
  const Streams& streams_;
  ExitStatus status_ = kDone;
  bool reader_gone_ = false;
  std::set<std::string> told_;
};

/// Writes a result, over none of the files that it came from; `complaints` hears what became of it.
void write_result(const std::string& text, const Invocation& invocation, const Streams& streams,
                  const std::vector<std::string>& inputs, Complaints& complaints);

/// The files of those names, "-" being standard input, so that none of them is written over. Empty
/// names are passed over.
std::vector<FileIdentity> identities_of(const std::vector<std::string>& files,
                                        const Streams& streams);

}  // namespace haunch
