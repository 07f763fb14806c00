// A file that could not be read or written.
#pragma once

#include <string>
#include <system_error>

namespace haunch {

struct FileFault {
  std::string file;   // as the user named it
  std::string words;  // "cannot be opened: Permission denied"
};

/// `what` with the system's words for `error`, an errno.
inline FileFault system_fault(const std::string& file, const std::string& what, int error) {
  return {file, what + ": " + std::generic_category().message(error)};
}

}  // namespace haunch
