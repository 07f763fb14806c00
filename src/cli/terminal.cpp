#include "terminal.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <charconv>
#include <cstdlib>
#include <cstring>

namespace haunch {

std::optional<std::size_t> terminal_columns(int descriptor) {
  if (isatty(descriptor) == 0) return {};
  winsize size{};
  if (ioctl(descriptor, TIOCGWINSZ, &size) == 0 && size.ws_col > 0) return size.ws_col;
  const char* columns = std::getenv("COLUMNS");  // NOLINT(concurrency-mt-unsafe): never set here
  std::size_t number = 0;
  if (columns == nullptr) return {};
  const char* end = columns + std::strlen(columns);
  const bool is_number = std::from_chars(columns, end, number).ptr == end;
  return is_number && number > 0 ? std::optional(number) : std::nullopt;
}

}  // namespace haunch
