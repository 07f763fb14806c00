#include "spec_target.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  haunch::spec_target(bytes, size);
  return 0;
}
