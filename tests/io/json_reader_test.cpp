#include "json_reader.h"

#include <string>
#include <vector>

#include "catch.h"

using haunch::place_in;
using haunch::read_json;
using haunch::Reading;
using haunch::TextPlace;
using haunch::Value;

namespace {

using Lines = std::vector<std::string>;

/// "LINE:COLUMN: path: message" for each problem of a text.
Lines problems(const std::string& text) {
  Lines lines;
  for (const haunch::Problem& problem : read_json(text).problems) {
    const TextPlace place = place_in(text, *problem.offset);
    lines.push_back(std::to_string(place.line) + ":" + std::to_string(place.column) + ": " +
                    problem.path + ": " + problem.message);
  }
  return lines;
}

/// The one problem of a text that gives no value.
std::string problem(const std::string& text) {
  CHECK_FALSE(read_json(text).value);
  const Lines lines = problems(text);
  REQUIRE(lines.size() == 1);
  return lines[0];
}

Value value(const std::string& text) {
  Reading reading = read_json(text);
  REQUIRE(reading.problems.empty());
  REQUIRE(reading.value);
  return std::move(*reading.value);
}

std::string repeated(std::string_view text, std::size_t times) {
  std::string result;
  for (std::size_t i = 0; i < times; ++i)
    result += text;
  return result;
}

std::string nested(std::size_t depth) {
  return std::string(depth, '[') + std::string(depth, ']');
}

}  // namespace

TEST_CASE("a spec is read with every value at its place", "[json_reader]") {
  const std::string text =
      "{ \"opening\" : {\"width\":930},\n  \"rails\": [118, \"2 3/8\", true, null] }";
  const Value door = value(text);
  CHECK(door.kind == Value::Kind::object);
  CHECK(door.offset == 0);
  REQUIRE(door.entries.size() == 2);
  CHECK(door.entries[0].key == "opening");
  CHECK(door.entries[0].offset == text.find("\"opening\""));
  CHECK(door.find("opening")->offset == text.find("{\"width\""));
  CHECK(door.find("opening")->find("width")->offset == text.find("930"));
  const Value& rails = *door.find("rails");
  CHECK(rails.offset == text.find('['));
  REQUIRE(rails.list.size() == 4);
  CHECK(rails.list[0].kind == Value::Kind::number);
  CHECK(rails.list[1].kind == Value::Kind::text);
  CHECK(rails.list[1].text == "2 3/8");
  CHECK(rails.list[1].offset == text.find("\"2 3/8\""));
  CHECK(rails.list[2].kind == Value::Kind::boolean);
  CHECK(rails.list[2].text == "true");
  CHECK(rails.list[2].offset == text.find("true"));
  CHECK(rails.list[3].kind == Value::Kind::null);
  CHECK(rails.list[3].offset == text.find("null"));
}

TEST_CASE("a number stays as it was written", "[json_reader]") {
  for (const std::string written : {"0", "-0", "70", "70.50", "0.1000000000000000000001",
                                    "18446744073709551616", "1e2", "-1.5E-3", "2E+1"}) {
    CHECK(value(written).text == written);
    CHECK(value("[" + written + "]").list[0].text == written);
    CHECK(value("{\"a\":" + written + "}").entries[0].value.text == written);
  }
}

TEST_CASE("a text is decoded, and what follows it is still at its place", "[json_reader]") {
  const std::string text = R"(["a\"b\\", "\u00e9\ud83d\udeaa\/\n", 7])";
  const Value list = value(text);
  CHECK(list.list[0].text == "a\"b\\");
  CHECK(list.list[1].text == "\xC3\xA9\xF0\x9F\x9A\xAA/\n");
  CHECK(list.list[2].offset == text.find('7'));
  CHECK(value(R"({"\u0069d": 1})").entries[0].key == "id");
  CHECK(value("[\"\xC3\xA9\"]").list[0].text == "\xC3\xA9");
}

TEST_CASE("empty lists and objects are read", "[json_reader]") {
  CHECK(value("[]").kind == Value::Kind::list);
  CHECK(value(" { } ").kind == Value::Kind::object);
  CHECK(value(" { } ").offset == 1);
  CHECK(value("[{}, [], {\"a\": []}]").list.size() == 3);
}

TEST_CASE("a byte order mark is passed over and is no column", "[json_reader]") {
  const std::string text = "\xEF\xBB\xBF{\"a\": 1}";
  CHECK(value(text).offset == 3);
  CHECK(place_in(text, 3) == TextPlace{1, 1});
  CHECK(problem("\xEF\xBB\xBF{\"a\": oak}") ==
        "1:7: /a: the text oak stands without quotes; write \"oak\"");
  CHECK(problem("\xEF\xBB\xBF\xEF\xBB\xBF{}") ==
        "1:1: : a byte order mark within the file, as from files put together; remove it");
  CHECK(problem("\xEF\xBB\xBF") == "1:1: : nothing stands here; a spec begins with '{'");
}

TEST_CASE("a place counts lines and characters from 1", "[json_reader]") {
  const std::string text = "ab\r\n\xC3\xA9x\n\ny";
  CHECK(place_in(text, 0) == TextPlace{1, 1});
  CHECK(place_in(text, 1) == TextPlace{1, 2});
  CHECK(place_in(text, 4) == TextPlace{2, 1});
  CHECK(place_in(text, 6) == TextPlace{2, 2});
  CHECK(place_in(text, 8) == TextPlace{3, 1});
  CHECK(place_in(text, 9) == TextPlace{4, 1});
  CHECK(place_in(text, 10) == TextPlace{4, 2});
}

TEST_CASE("a repeated key is refused at its second place, and reading goes on", "[json_reader]") {
  const std::string text =
      "{\"thickness\": 44,\n \"panel\": {\"gap\": 3, \"gap\": 4},\n \"thickness\": [45], \"horn\": "
      "1}";
  CHECK(problems(text) == Lines{"2:22: /panel/gap: repeated key; it stands already at column 12",
                                "3:2: /thickness: repeated key; it stands already at line 1"});
  const Reading reading = read_json(text);
  REQUIRE(reading.value);
  CHECK(reading.value->entries.size() == 3);
  CHECK(reading.value->find("thickness")->text == "44");
  CHECK(reading.value->find("panel")->entries.size() == 1);
  CHECK(reading.value->find("horn")->text == "1");
}

TEST_CASE("a key repeated in other letters is the same key", "[json_reader]") {
  CHECK(problems(R"({"id": 1, "\u0069d": 2})") ==
        Lines{"1:11: /id: repeated key; it stands already at column 2"});
}

TEST_CASE("a repeated key within a repeated key is told too", "[json_reader]") {
  CHECK(problems(R"({"a": 1, "a": {"b": 1, "b": {"c": 1, "c": 2}}})") ==
        Lines{"1:10: /a: repeated key; it stands already at column 2",
              "1:24: /a/b: repeated key; it stands already at column 16",
              "1:38: /a/b/c: repeated key; it stands already at column 30"});
}

TEST_CASE("of many problems the first twenty are worded and all are counted", "[json_reader]") {
  const Reading reading = read_json("{\"a\": 1" + repeated(", \"a\": 2", 100) + "}");
  REQUIRE(reading.problems.size() == 100);
  CHECK(reading.problems[19].message == "repeated key; it stands already at column 2");
  CHECK(reading.problems[20].message.empty());
  CHECK(reading.problems[99].offset == 7 + 99 * 8 + 2);
}

TEST_CASE("nesting is read to a depth of 64", "[json_reader]") {
  CHECK(read_json(nested(64)).problems.empty());
  CHECK(problem(nested(65)) == "1:65: " + repeated("/0", 64) + ": nested more than 64 deep");
  CHECK(problem(std::string(1'000'000, '[')) ==
        "1:65: " + repeated("/0", 64) + ": nested more than 64 deep");
  CHECK(problem(repeated("{\"a\":", 100'000)) ==
        "1:321: " + repeated("/a", 64) + ": nested more than 64 deep");
}

TEST_CASE("a million values are read, and no more", "[json_reader]") {
  CHECK(read_json("[0" + repeated(",0", 999'998) + "]").problems.empty());
  CHECK(problem("[0" + repeated(",0", 999'999) + "]") ==
        "1:2000000: /999999: more than 1000000 values in one document");
}

TEST_CASE("an object has 100 keys at most", "[json_reader]") {
  std::string keys;
  for (int i = 0; i < 100; ++i)
    keys += "\"k" + std::to_string(i) + "\": 1,\n";
  CHECK(read_json("{" + keys + "\"k0\": 1}").problems[0].message ==
        "more than 100 keys in one object");
  CHECK(problem("{" + keys + "\"more\": 1}") == "101:1: : more than 100 keys in one object");
  keys.erase(keys.rfind(','));
  CHECK(read_json("{" + keys + "}").problems.empty());
}

TEST_CASE("a text has 10,000 characters at most, however they are written", "[json_reader]") {
  CHECK(value("[\"" + std::string(10'000, 'x') + "\"]").list[0].text.size() == 10'000);
  CHECK(value("[\"" + repeated("\xC3\xA9", 10'000) + "\"]").list[0].text.size() == 20'000);
  CHECK(value("[\"" + repeated("\\ud83d\\udeaa", 10'000) + "\"]").list[0].text.size() == 40'000);
  const std::string text = "{\"note\": \"" + repeated("\xC3\xA9", 10'001) + "\", \"horn\": 1}";
  CHECK(problems(text) == Lines{"1:10: /note: a text of 10001 characters; at most 10000 are read"});
  CHECK(read_json(text).value->find("horn") != nullptr);
  CHECK(problem("{\"note\": \"" + std::string(200'000, 'x') + "\"}") ==
        "1:10: /note: a text of more than 120002 characters");
}

TEST_CASE("a key has 10,000 characters at most and is shown by its beginning", "[json_reader]") {
  const std::string text = "{\"" + std::string(10'001, 'k') + "\": 1, \"horn\": 2}";
  CHECK(problems(text) == Lines{"1:2: /" + std::string(40, 'k') +
                                "...: a key of 10001 characters; at most 10000 are read"});
  CHECK(read_json(text).value->entries.size() == 1);
}

TEST_CASE("what is too long to be read is told by its path", "[json_reader]") {
  const std::string long_key = "\"" + std::string(130'000, 'k') + "\": 1}";
  CHECK(problem("{\"a\": [1, {" + long_key + "]}") ==
        "1:12: /a/1/" + std::string(40, 'k') + "...: a text of more than 120002 characters");
  CHECK(problem("{\"a\": 1, " + long_key) ==
        "1:10: /" + std::string(40, 'k') + "...: a text of more than 120002 characters");
  CHECK(problem("{\"a\": {\"b\": 1, \"c\": " + std::string(10'001, '1') + "}}") ==
        "1:21: /a/c: a number of more than 10000 characters");
  // Where reading stops before it, no path is made up.
  CHECK(problem("{\"a\" 1, \"b\": " + std::string(10'001, '1') + "}") ==
        "1:14: : a number of more than 10000 characters");
}

TEST_CASE("a zero byte is refused, and what stands behind it is not dropped", "[json_reader]") {
  const std::string text("{} \0 rubbish", 12);
  CHECK(problem(text) == "1:4: : a zero byte stands here; save the file as plain text");
}

TEST_CASE("an endless number or gap is refused", "[json_reader]") {
  CHECK(problem("[" + std::string(10'001, '1') + "]") ==
        "1:2: /0: a number of more than 10000 characters");
  CHECK(problem("[1" + std::string(1'000'001, ' ') + "1]") ==
        "1:3: /1: a stretch of blanks of more than 1000000 characters");
  CHECK(read_json("[1" + std::string(999'999, ' ') + ",1]").problems.empty());
}

TEST_CASE("a document has 64 MiB at most", "[json_reader]") {
  std::string text = "[" + repeated("1," + std::string(999'998, ' '), 67) + "1,";
  text.resize(haunch::kMaxDocumentBytes - 2, ' ');
  text += "1]";
  CHECK(text.size() == haunch::kMaxDocumentBytes);
  CHECK(read_json(text).problems.empty());
  CHECK(problem(text + " ") == "1:1: : more than 64 MiB in one document");
}

TEST_CASE("other encodings than UTF-8 are named", "[json_reader]") {
  using namespace std::string_literals;
  const std::string utf16 = "1:1: : the text is UTF-16; save it as UTF-8";
  const std::string utf32 = "1:1: : the text is UTF-32; save it as UTF-8";
  CHECK(problem("\xFF\xFE{\0}\0"s) == utf16);
  CHECK(problem("\xFE\xFF\0{\0}"s) == utf16);
  CHECK(problem("{\0}\0"s) == utf16);
  CHECK(problem("\0{\0}"s) == utf16);
  CHECK(problem("\xFF\xFE\0\0{\0\0\0"s) == utf32);
  CHECK(problem("\0\0\xFE\xFF\0\0\0{"s) == utf32);
  CHECK(problem("{\0\0\0}\0\0\0"s) == utf32);
  CHECK(problem("\0\0\0{\0\0\0}"s) == utf32);
}

TEST_CASE("bytes that are no UTF-8 are named, wherever they stand", "[json_reader]") {
  CHECK(problem("{\"note\": \"caf\xE9\"}") ==
        "1:14: /note: the byte 0xE9 is not UTF-8 but é of Latin-1 or Windows-1252; save the text "
        "as UTF-8");
  CHECK(
      problem("{\"a\": \xE9}") ==
      "1:7: : the byte 0xE9 is not UTF-8 but é of Latin-1 or Windows-1252; save the text as UTF-8");
  CHECK(problem("[\"\xC0\xAF\"]") ==
        "1:3: /0: the byte 0xC0 is not UTF-8; save the text as UTF-8");  // overlong
  CHECK(problem("[\"\xED\xA0\x80\"]") ==
        "1:3: /0: the byte 0xED is not UTF-8; save the text as UTF-8");  // surrogate
  CHECK(problem("[\"\xF4\x90\x80\x80\"]") ==
        "1:3: /0: the byte 0xF4 is not UTF-8; save the text as UTF-8");
  CHECK(problem("[\"\xE2\x82\"]") == "1:3: /0: the byte 0xE2 is not UTF-8; save the text as UTF-8");
}

TEST_CASE("an empty text is told as such", "[json_reader]") {
  CHECK(problem("") == "1:1: : nothing stands here; a spec begins with '{'");
  CHECK(problem(" \n\t\r\n ") == "1:1: : nothing stands here; a spec begins with '{'");
}

TEST_CASE("what is no JSON is told with what would be right", "[json_reader]") {
  struct Row {
    std::string text;
    std::string problem;
  };
  const std::vector<Row> rows{
      // cut off
      {"{", "1:2: : the text ends here; the '{' at column 1 is still open"},
      {"{\"a\"", "1:5: : the text ends here; the '{' at column 1 is still open"},
      {"{\"a\":", "1:6: : the text ends here; the '{' at column 1 is still open"},
      {"{\"a\": 1,", "1:9: : the text ends here; the '{' at column 1 is still open"},
      {"{\n \"a\": {\"b\": [1, 2\n\n",
       "2:18: /a/b: the text ends here; the '[' at column 13 is still open"},
      {"{\n \"a\": 1\n", "2:8: : the text ends here; the '{' at line 1 is still open"},
      {"{\"a\": \"oak", "1:7: /a: the text is not closed; '\"' is missing"},
      {"{\"a", "1:2: : the text is not closed; '\"' is missing"},
      {"{\"a\": tru", "1:7: /a: the text tru stands without quotes; write \"tru\""},
      // commas
      {"{\"a\": 1,}", "1:8: : a comma before '}'; leave it out"},
      {"{\"a\": 1\n,\n}", "2:1: : a comma before '}'; leave it out"},
      {"[1, 2, ]", "1:6: : a comma before ']'; leave it out"},
      {"{\"a\": 1,, \"b\": 2}", "1:9: : two commas in a row; one is enough"},
      {"[1,,2]", "1:4: : two commas in a row; one is enough"},
      {"[,1]", "1:2: : a comma before the first value; leave it out"},
      {"{,\"a\": 1}", "1:2: : a comma before the first key; leave it out"},
      {"{\"a\": 1 \"b\": 2}", "1:9: : a comma is missing before '\"'"},
      {"{\"a\": 1\n \"b\": 2}", "2:2: : a comma is missing before '\"'"},
      {"{\"a\": {} \"b\": 2}", "1:10: : a comma is missing before '\"'"},
      {"{\"a\": [118 195]}", "1:12: /a: a comma is missing before '1'"},
      {"{\"a\": [118 \"x\"]}", "1:12: /a: a comma is missing before '\"'"},
      {"[{} {}]", "1:5: : a comma is missing before '{'"},
      {"{\"a\": 1; \"b\": 2}", "1:8: : ';' stands here; ',' or '}' would be right"},
      {"[1; 2]", "1:3: : ';' stands here; ',' or ']' would be right"},
      // colons
      {"{\"a\" 1}", "1:6: : '1' stands here; ':' would be right"},
      {"{\"a\" = 1}", "1:6: : '=' stands here; ':' would be right"},
      {"{\"a\":: 1}", "1:6: : two colons in a row; one is enough"},
      {"{\"a\":, \"b\": 2}", "1:6: /a: the key has no value; write one after the colon"},
      {"{\"a\"}", "1:5: /a: the key has no value; write a colon and the value"},
      {"[\"a\": 1]", "1:5: : ':' stands here; ',' or ']' would be right"},
      // brackets
      {"{\"a\": 1]", "1:8: : ']' stands here, but the '{' at column 1 is open; '}' would be right"},
      {"{\"a\":\n [1, 2}",
       "2:7: /a: '}' stands here, but the '[' at column 2 is open; ']' would be right"},
      {"{]", "1:2: : ']' stands here, but the '{' at column 1 is open; '}' would be right"},
      {"[}", "1:2: : '}' stands here, but the '[' at column 1 is open; ']' would be right"},
      {"{\"a\": 1}}", "1:9: : '}' closes nothing; leave it out"},
      {"[1]]", "1:4: : ']' closes nothing; leave it out"},
      {"{\"a\": 1} {\"b\": 2}",
       "1:10: : '{' stands after the end; several items stand in a list [ ] or one on a line"},
      // quotes
      {"{'a': 1}", "1:2: : single quotes; write double quotes"},
      {"{\"a\": 'oak'}", "1:7: : single quotes; write double quotes"},
      {"{\"a\": \xE2\x80\x9Coak\xE2\x80\x9D}",
       "1:7: : typographic quotes; write plain double quotes"},
      {"{a: 1}", "1:2: : the key a stands without quotes; write \"a\""},
      {"{\"a\": 1, b_c: 1}", "1:10: : the key b_c stands without quotes; write \"b_c\""},
      {"{\"a\": \"36\"\"}",
       "1:11: : the text ended before this; a quote within a text is written \\\""},
      {"{\"a\": \"5\"x\"}",
       "1:10: : the text ended before this; a quote within a text is written \\\""},
      {"{\"a\"b\": 1}", "1:5: : the text ended before this; a quote within a text is written \\\""},
      // words
      {"{\"a\": True}", "1:7: /a: True; JSON writes true"},
      {"{\"a\": None}", "1:7: /a: None; JSON writes null"},
      {"{\"a\": NaN}", "1:7: /a: NaN is no number in JSON; write one in digits"},
      {"[1, -Infinity]", "1:5: /1: -Infinity is no number in JSON; write one in digits"},
      {"{\"a\": [118, oak]}", "1:13: /a/1: the text oak stands without quotes; write \"oak\""},
      {"kind: door", "1:1: : 'k' stands here; '{' would be right"},
      // comments and odd characters
      {"{\"a\": 1 // mm\n}", "1:9: : a comment; JSON has none, leave it out"},
      {"{\"a\": /* mm */ 1}", "1:7: : a comment; JSON has none, leave it out"},
      {"# door\n{\"a\": 1}", "1:1: : a comment; JSON has none, leave it out"},
      {"{\"a\":\xC2\xA0"
       "1}",
       "1:6: : the character U+00A0 stands here; write a plain space or none"},
      {"{\"a\": @}", "1:7: : '@' stands here; a value would be right"},
      {"{\"a\": 1, @}", "1:10: : '@' stands here; a key in double quotes would be right"},
      // within texts
      {"{\"a\": \"oak\n\"}", "1:7: /a: the text is not closed on its line; '\"' is missing"},
      {"{\"a\": \"oak\t\"}", "1:11: /a: a tab within a text; write \\t"},
      {"{\"a\": \"oak\x01\"}", "1:11: /a: the character U+0001 within a text; write \\u0001"},
      {"{\"a\": \"C:\\x\"}", "1:10: /a: a backslash alone; within a text it is written \\\\"},
      {"{\"a\": \"\\u12\"}", "1:8: /a: \\u takes four hexadecimal digits"},
      {"{\"a\": \"\\ud800\"}", "1:8: /a: \\ud800 is half a character; both halves are needed"},
      {"{\"a\": \"\\udc00\"}", "1:8: /a: \\udc00 is half a character; both halves are needed"},
      {"{\"a\": \"\\ud800\\u0041\"}",
       "1:8: /a: \\ud800 is half a character; both halves are needed"},
      {"{\"a\": \"oak\\", "1:11: /a: the text ends within an escape"},
      // numbers
      {"{\"a\": +5}", "1:7: /a: +5 has a plus sign; write 5"},
      {"{\"a\": .5}", "1:7: /a: .5 begins with its point; write 0.5"},
      {"{\"a\": 5.}", "1:7: /a: 5. ends with its point; write 5"},
      {"{\"a\": 007}", "1:7: /a: 007 begins with 0; write 7"},
      {"[1, -00.5]", "1:5: /1: -00.5 begins with 0; write -0.5"},
      {"{\"a\": -}", "1:7: /a: - is no number; write one such as 70 or 70.5"},
      {"{\"a\": 1e}", "1:7: /a: 1e is no number; write one such as 70 or 70.5"},
      {"{\"a\": 1e999}", "1:7: /a: 1e999 is too large a number"},
      {"[" + std::string(400, '9') + "]",
       "1:2: /0: " + std::string(40, '9') + "... is no number or too large"},
      {"{\"a\": 70,5}", "1:7: /a: 70,5 has a decimal comma; write 70.5"},
      // lengths without their quotes
      {"{\"a\": 60 mm}", "1:7: /a: 60 mm stands without quotes; write \"60 mm\""},
      {"[118, 2 3/8, 5]", "1:7: /1: 2 3/8 stands without quotes; write \"2 3/8\""},
      {"{\"a\": 3/8}", "1:7: /a: 3/8 stands without quotes; write \"3/8\""},
      {"{\"a\": 36\"}", "1:7: /a: 36\" stands without quotes; write \"36 in\""},
      {"{\"a\": 2 3/8\"}", "1:7: /a: 2 3/8\" stands without quotes; write \"2 3/8 in\""},
      {"{\"a\": 6'-8\"}", "1:7: /a: 6'-8\" stands without quotes; write it as \"6 ft 8 in\""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(problem(row.text) == row.problem);
  }
}

TEST_CASE("problems before a syntax error are kept", "[json_reader]") {
  CHECK(problems("{\"a\": 1, \"a\": 2, }") ==
        Lines{"1:10: /a: repeated key; it stands already at column 2",
              "1:16: : a comma before '}'; leave it out"});
}
