// Building SVG text whose user unit is a millimetre: elements, in order, with exact lengths.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "haunch/length.h"

namespace haunch {

/// Text for the content or an attribute of XML, without characters that XML has no place for.
std::string xml_text(std::string_view text);

class SvgText {
 public:
  explicit SvgText(std::string& out) : out_(out) {}

  /// Begins an element; its attributes follow, then one of the three below.
  SvgText& open(std::string_view element);
  SvgText& with(std::string_view attribute, Length mm);
  SvgText& with(std::string_view attribute, std::string_view value);
  void empty();
  void holds(std::string_view text);
  /// What is written from here on stands in it, until it is closed.
  void inside();
  void close();

 private:
  std::string& out_;
  std::string element_;
  std::vector<std::string> around_;
};

}  // namespace haunch
