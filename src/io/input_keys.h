// Of files that haunch reads by keys of its own and writes again: what their rows add to
// json_keys.h.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "json_keys.h"

namespace haunch {

/// What may be said in such a file but is not kept.
inline constexpr auto unkept = [](auto&) { return std::optional<std::string>(); };

/// The keys that an object may have.
template <class T>
std::vector<std::string_view> keys_of() {
  std::vector<std::string_view> names;
  for (const JsonKey<T>& key : JsonObject<T>::keys) {
    if (!key.name.empty()) {
      names.push_back(key.name);
      continue;
    }
    for (const SchemaKey& each : key.schema_keys(key))  // that stand among its own
      names.push_back(each.name);
  }
  return names;
}

}  // namespace haunch
