#include "length_text_target.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  haunch::length_target::length_text_target(bytes, size);
  return 0;
}
