// A result that is not in place without the one that it comes from: stock without its plan, rates
// without their quote.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "commands.h"
#include "complaints.h"

namespace haunch {

struct SecondResult {
  std::string file;
  std::string text;
  std::string_view first;     // what it comes from: "the plan"
  std::string_view if_alone;  // what to know where that stands without it
};

/// Writes the first to where the invocation says, and the second only when all of that is out.
void write_both_results(const std::string& first, const SecondResult& second,
                        const Invocation& invocation, const Streams& streams,
                        const std::vector<std::string>& inputs, Complaints& complaints);

/// What is wrong with where they are to go; empty: nothing. `option` names the second.
std::string second_fault(std::string_view option, const std::string& second,
                         const Invocation& invocation, std::string_view first);

}  // namespace haunch
