// Building JSON text, in order, with exact lengths.
#pragma once

#include <string>
#include <string_view>

#include "haunch/length_text.h"

namespace haunch {

/// Appends JSON to a string: values, and members and elements with the commas between them.
///
/// A reader may expect one object or list a line: `row()` before a value begins a new line.
class JsonText {
 public:
  JsonText(std::string& out, Unit unit) : out_(out), unit_(unit) {}

  /// Of the lengths.
  Unit unit() const { return unit_; }

  void open_object() { open('{'); }
  void close_object() { close('}'); }
  void open_list() { open('['); }
  void close_list() { close(']'); }
  /// Begins a member of an object; its value follows.
  void key(std::string_view name);
  /// Begins a new line before the next key or value.
  void row() { row_ = true; }

  void text(std::string_view value);
  void number(Length value);
  void number(std::int64_t value);
  /// A figure that is no length, with so many decimals.
  void number(double value, int places);
  /// A number as it is written.
  void written(std::string_view decimal);
  void truth(bool value);
  void null();

  void member(std::string_view name, std::string_view value) { key(name), text(value); }
  void member(std::string_view name, Length value) { key(name), number(value); }
  void member(std::string_view name, std::int64_t value) { key(name), number(value); }

 private:
  void before_value();
  void open(char bracket);
  void close(char bracket);

  std::string& out_;
  Unit unit_;
  bool comma_ = false;  // the next value or key follows another
  bool row_ = false;
};

}  // namespace haunch
