#include <span>

#include "commands.h"

int main(int count, char** values) {
  const std::span<const char* const> all(values, static_cast<std::size_t>(count));
  return haunch::run(all.empty() ? all : all.subspan(1), haunch::Streams());
}
