#include "spec_text.h"

#include "json_text.h"

namespace haunch {
namespace {

void append(std::string& text, const Value& value) {
  switch (value.kind) {
    case Value::Kind::null:
      text += "null";
      return;
    case Value::Kind::boolean:
    case Value::Kind::number:
      text += value.text;
      return;
    case Value::Kind::text:
      JsonText(text, Unit::mm).text(value.text);
      return;
    case Value::Kind::list:
      text += '[';
      for (const Value& each : value.list) {
        if (&each != value.list.data()) text += ", ";
        append(text, each);
      }
      text += ']';
      return;
    case Value::Kind::object:
      text += '{';
      for (const Entry& entry : value.entries) {
        if (&entry != value.entries.data()) text += ", ";
        JsonText(text, Unit::mm).text(entry.key);
        text += ": ";
        append(text, entry.value);
      }
      text += '}';
      return;
  }
}

}  // namespace

std::string spec_line(const Value& document) {
  std::string text;
  append(text, document);
  return text;
}

std::string spec_text(const Value& document) {
  std::string text = "{";
  for (const Entry& entry : document.entries) {
    text += &entry == document.entries.data() ? "\n  " : ",\n  ";
    JsonText(text, Unit::mm).text(entry.key);
    text += ": ";
    append(text, entry.value);
  }
  return text + "\n}\n";
}

}  // namespace haunch
