#include <string>
#include <vector>

#include "commands.h"

int main(int count, char** values) {
  const std::vector<std::string> arguments(values + (count > 0 ? 1 : 0), values + count);
  return haunch::run(arguments, haunch::Streams());
}
