#include "svg_text.h"

#include "haunch/length_text.h"

namespace haunch {

std::string xml_text(std::string_view text) {
  std::string out;
  for (const char c : text)
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      case '\'':
        out += "&#39;";
        break;
      default:
        out += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
    }
  return out;
}

SvgText& SvgText::open(std::string_view element) {
  element_ = element;
  out_ += std::string(around_.size(), ' ') + "<" + element_;
  return *this;
}

SvgText& SvgText::with(std::string_view attribute, Length mm) {
  return with(attribute, decimal(mm, Unit::mm));
}

SvgText& SvgText::with(std::string_view attribute, std::string_view value) {
  out_ += " " + std::string(attribute) + "=\"" + xml_text(value) + "\"";
  return *this;
}

void SvgText::empty() {
  out_ += "/>\n";
}

void SvgText::holds(std::string_view text) {
  out_ += ">" + xml_text(text) + "</" + element_ + ">\n";
}

void SvgText::inside() {
  out_ += ">\n";
  around_.push_back(element_);
}

void SvgText::close() {
  const std::string element = around_.back();
  around_.pop_back();
  out_ += std::string(around_.size(), ' ') + "</" + element + ">\n";
}

}  // namespace haunch
