// A value that was assumed, in JSON.
#pragma once

#include "json_keys.h"
#include "kind.h"

namespace haunch {

template <>
struct JsonValue<AssumedValue> {
  static void write(JsonText& json, const AssumedValue& value) {
    switch (value.kind) {
      case AssumedValue::Kind::length:
        return json.number(value.length);
      case AssumedValue::Kind::number:
        return json.number(std::int64_t{value.number});
      case AssumedValue::Kind::words:
        return json.text(value.words);
      case AssumedValue::Kind::lengths:
        return write_json(json, value.lengths);
    }
  }
  static std::string schema() {
    return R"({"type": ["number", "string", "array"], "items": {"type": "number"}})";
  }
};

}  // namespace haunch
