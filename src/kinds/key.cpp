#include "key.h"

namespace haunch {

std::optional<Key> find_key(std::string_view path) {
  for (const Key key : AllKeys())
    if (key.path() == path) return key;
  return {};
}

namespace {

std::string with_name(std::string path, std::string_view from, std::string_view to) {
  const std::size_t at = path.rfind(from);
  return at == std::string::npos ? path : path.replace(at, from.size(), to);
}

}  // namespace

std::string muntin_name(const std::string& path) {
  return with_name(path, "mullion_", "muntin_");
}

std::string mullion_name(const std::string& path) {
  return with_name(path, "muntin_", "mullion_");
}

std::string Where::path() const {
  std::string path(key.path());
  if (number) path += "." + std::to_string(*number);
  return path.append(member);
}

}  // namespace haunch
