// Solids as ISO 10303-21 text.
#include "step_text.h"

#include <regex>
#include <set>

#include "vocabulary.h"

namespace haunch::test {
namespace {

std::string text_of_block(const std::string& name = "top rail") {
  const auto shell = shell_of({{box(0, 0, 0, 600, 90.5, 22)}, {}});
  REQUIRE(shell);
  return step_text({"door C", name, {"door: C"}}, *shell);
}

std::size_t count(const std::string& text, const std::string& what) {
  std::size_t found = 0;
  for (std::size_t at = text.find(what); at != text.npos; at = text.find(what, at + 1))
    ++found;
  return found;
}

}  // namespace

TEST_CASE("A block is one solid of 6 faces, 12 edges and 8 corners, in millimetres") {
  const std::string text = text_of_block();
  CHECK(count(text, "=MANIFOLD_SOLID_BREP('top rail',") == 1);
  CHECK(count(text, "=ADVANCED_FACE(") == 6);
  CHECK(count(text, "=PLANE(") == 6);
  CHECK(count(text, "=EDGE_CURVE(") == 12);
  CHECK(count(text, "=VERTEX_POINT(") == 8);
  CHECK(count(text, "=ORIENTED_EDGE(") == 24);
  CHECK(count(text, "SI_UNIT(.MILLI.,.METRE.)") == 1);
  CHECK(count(text, "CARTESIAN_POINT('',(600.,90.5,22.))") == 1);
}

TEST_CASE("Every instance that is named is there, once, before it is named") {
  const std::string text = text_of_block();
  std::set<std::string> known;
  std::size_t lines = 0;
  for (std::size_t at = text.find("\n#"); at != text.npos; at = text.find("\n#", at + 1)) {
    const std::string line = text.substr(at + 1, text.find(";\n", at) - at - 1);
    const std::size_t equals = line.find('=');
    const std::regex names("#[0-9]+");
    for (std::sregex_iterator it(line.begin() + static_cast<std::ptrdiff_t>(equals), line.end(),
                                 names);
         it != std::sregex_iterator(); ++it)
      CHECK(known.contains(it->str()));
    CHECK(known.insert(line.substr(0, equals)).second);
    ++lines;
  }
  CHECK(lines > 100);
}

TEST_CASE("The same wood gives the same bytes, without a time or an author") {
  CHECK(text_of_block() == text_of_block());
  CHECK(count(text_of_block(), "FILE_NAME('door C','',(''),(''),'','haunch','');") == 1);
  CHECK(count(text_of_block(),
              "FILE_SCHEMA(('AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF'))") == 1);
}

TEST_CASE("Text is ASCII: quotes and backslashes twice, other letters by their numbers") {
  CHECK(step_string("left stile") == "'left stile'");
  CHECK(step_string("the miller's \\ door") == R"('the miller''s \\ door')");
  CHECK(step_string("Türe") == R"('T\X2\00FC\X0\re')");
  CHECK(step_string("a\nb") == R"('a\X2\000A\X0\b')");
  CHECK(step_string("\xF0\x9F\x9A\xAA") == R"('\X4\0001F6AA\X0\')");
  CHECK(step_string("a\xFF") == R"('a\X2\FFFD\X0\')");
  for (const char byte : text_of_block("Türe \xD7\x93"))
    CHECK((byte == '\n' || (byte >= ' ' && byte <= '~')));
}

}  // namespace haunch::test
