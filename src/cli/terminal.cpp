#include "terminal.h"

#include <sys/ioctl.h>
#include <unistd.h>

namespace haunch {

std::optional<std::size_t> terminal_columns(int descriptor) {
  winsize size{};
  if (isatty(descriptor) == 0 || ioctl(descriptor, TIOCGWINSZ, &size) != 0 || size.ws_col == 0)
    return {};
  return size.ws_col;
}

}  // namespace haunch
