#include "second_result.h"

#include "formats.h"
#include "messages.h"
#include "output_pair.h"

namespace haunch {

void write_both_results(const std::string& first, const SecondResult& second,
                        const Invocation& invocation, const Streams& streams,
                        const std::vector<std::string>& inputs, Complaints& complaints) {
  const std::vector<FileIdentity> read = identities_of(inputs, streams);
  OutputFile one(invocation.output, streams.out, read);
  OutputFile other(second.file, streams.out, read);
  bool whole = false;
  {
    const auto lock = still(streams);
    whole = write_both({one, first, content_of(invocation.view)}, {other, second.text});
  }
  complaints.note(one);
  complaints.note(other);
  if (one.state() == OutputFile::State::reader_gone)
    complain(second.file + ": error: is not written, as " + std::string(second.first) +
                 " was not read to its end",
             streams);
  if (!whole)
    complain(
        invocation.output + ": error: is in place all the same; " + std::string(second.if_alone),
        streams);
}

std::string second_fault(std::string_view option, const std::string& second,
                         const Invocation& invocation, std::string_view first) {
  const std::string start = std::string(option) + ": ";
  if (second == "-" && is_standard_output(invocation.output))
    return start + std::string(first) + " goes to standard output already; give one of them a file";
  if (is_one_file(second, invocation.output))
    return start + "is the file of -o too; give each its own";
  return {};
}

}  // namespace haunch
