#include "json_text.h"

#include <nlohmann/json.hpp>
#include <string>

#include "catch.h"

using haunch::JsonText;

namespace {

std::string as_json(std::string_view text) {
  std::string out;
  JsonText(out, haunch::Unit::mm).text(text);
  return out;
}

}  // namespace

TEST_CASE("texts in JSON hold nothing that a terminal would act on, and read back the same",
          "[json_text]") {
  for (const std::string text : {"side-door", "Türe \"zur\" Mühle\\", "\x1b[31m\t\n\r\x7f",
                                 "\xc2\x9b"
                                 "2J",
                                 "left\xe2\x80\xaeright\xe2\x81\xa6\xe2\x80\xa8", "🚪"}) {
    CAPTURE(text);
    CHECK(nlohmann::json::parse(as_json(text)) == text);
  }
  CHECK(as_json("\x1b\xc2\x9b\x7f") == R"("\u001b\u009b\u007f")");
  CHECK(as_json("\xe2\x80\xae") == R"("\u202e")");
  CHECK(as_json("ü") == "\"ü\"");
}

TEST_CASE("a byte that is not UTF-8 is no JSON, so U+FFFD stands for it", "[json_text]") {
  CHECK(as_json("a\xff"
                "b") ==
        "\"a\xEF\xBF\xBD"
        "b\"");
}
