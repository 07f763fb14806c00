#include "formats.h"

namespace haunch {

std::string_view tool_version() {
  return HAUNCH_VERSION;
}

}  // namespace haunch
