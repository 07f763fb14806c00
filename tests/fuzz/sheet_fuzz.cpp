#include "sheet_target.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  haunch::sheet_target(bytes, size);
  return 0;
}
