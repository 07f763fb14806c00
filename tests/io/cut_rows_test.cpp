// How boards are cut up, as the page of a plan tells it: read back, rows add up and no part is
// lost.
#include <iterator>
#include <map>
#include <random>
#include <sstream>

#include "lumber_report.h"
#include "lumber_text.h"
#include "pages.h"
#include "stock_words.h"

namespace haunch::test {
namespace {

LumberPart strip(const std::string& name, int length, int width) {
  LumberPart made;
  made.name = "bin/" + name;
  made.item = made.face = "bin";
  made.label = "piece";
  made.material = "beech";
  made.finished = {mm(length), mm(width), mm(20), Length()};
  made.is_rough = true;
  return made;
}

StockFile boards(int number, const std::string& trim = {}) {
  return stock(R"({"units": "mm", "kerf": 3, )" + trim +
               R"("stock": [{"id": "rack", "length": 2100, "width": 170, "thickness": 20,
                             "surface": "surfaced", "species": "beech", "count": )" +
               std::to_string(number) + "}]}");
}

std::string page_of(const LumberReport& report) {
  return lumber_page(report, LengthPrinter(Unit::mm, {}));
}

/// "crosscut 2100 x 70 into …" with the sizes in it added up, and how many these are.
struct ReadRow {
  std::string kind;
  double length = 0, width = 0, sum = 0;
  int pieces = 0;

  double whole() const { return kind == "rip" ? width : length; }
};

std::vector<std::string> lines_of(const std::string& page) {
  std::vector<std::string> lines;
  std::istringstream text(page.substr(page.find("\nCUTS")));
  for (std::string line; std::getline(text, line) && line != "WHERE THE STOCK GOES";)
    if (line.starts_with("      "))
      lines.back() += " " + line.substr(6);
    else
      lines.push_back(line);
  return lines;
}

ReadRow read_row(const std::string& line) {
  ReadRow row;
  row.kind = line.find("rip ") != std::string::npos ? "rip" : "crosscut";
  const std::size_t into = line.find(" into ");
  const std::size_t by = line.rfind(" x ", into);
  row.length = std::stod(line.substr(line.rfind(' ', by - 1) + 1));
  row.width = std::stod(line.substr(by + 3));
  std::string words = line.substr(into + 6);
  for (std::size_t open; (open = words.find('(')) != std::string::npos;)
    words.erase(open, words.find(')', open) + 1 - open);
  std::istringstream text(words);
  std::vector<std::string> all{std::istream_iterator<std::string>(text), {}};
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (all[i].front() < '0' || all[i].front() > '9') continue;
    const bool counted = i + 2 < all.size() && all[i + 1] == "of";
    const int number = counted ? std::stoi(all[i]) : 1;
    if (counted) i += 2;
    row.sum += number * std::stod(all[i]);
    row.pieces += number;
  }
  return row;
}

/// The names in brackets, each as often as it stands there.
std::map<std::string, int> names_in(const std::vector<std::string>& lines) {
  std::map<std::string, int> names;
  for (const std::string& line : lines) {
    std::istringstream words(line);
    for (std::string word; words >> word;) {
      const std::size_t at = word.find("bin/");
      if (at == std::string::npos) continue;
      word = word.substr(at);
      word.erase(word.find_last_not_of(");,") + 1);
      ++names[word];
    }
  }
  return names;
}

}  // namespace

TEST_CASE("equal crosscuts are one row, boards that are cut alike are told once", "[cut_rows]") {
  std::vector<LumberPart> parts;
  for (const char* name : {"A", "B", "C", "D", "E", "F", "G", "H"})
    parts.push_back(strip(name, 500, 170));
  const std::string page = page_of(report_lumber(parts, boards(2), Unit::mm, {}));
  INFO(page);
  CHECK(tells(page, "BOARDS 1 2: rack, its no. 1 2"));
  CHECK(tells(in_words_only(page), "crosscut 2100 x 170 into 4 of 500 (of board 1: "));
  CHECK(tells(in_words_only(page), " and 88 scrap"));
}

TEST_CASE("trims are told once for all boards", "[cut_rows]") {
  const std::string page =
      page_of(report_lumber({strip("A", 1900, 150), strip("B", 900, 150)},
                            boards(2, R"("trim": {"end": 20, "edge": 4}, )"), Unit::mm, {}));
  INFO(page);
  CHECK(tells(page, "first, of every board: crosscut 20 off each end, rip 4 off each edge"));
  CHECK(page.find("trim:") == std::string::npos);
  CHECK(tells(page, "crosscut 2060 x 162 into 1900"));
}

TEST_CASE("a row of cuts and the blade between them make the piece, and no part is lost",
          "[cut_rows]") {
  std::mt19937 dice(7);
  const auto between = [&](int least, int most) {
    return least + static_cast<int>(dice() % static_cast<unsigned>(most - least + 1));
  };
  int rows = 0;
  for (int round = 0; round < 40; ++round) {
    std::vector<LumberPart> parts;
    const int kinds = between(1, 4);
    for (int kind = 0; kind < kinds; ++kind) {
      const int length = between(2, 9) * 100;
      const int width = between(3, 16) * 10;
      for (int copy = between(1, 5); copy > 0; --copy)
        parts.push_back(strip("P" + std::to_string(parts.size()), length, width));
    }
    const LumberReport report = report_lumber(parts, boards(20), Unit::mm, {});
    REQUIRE(report.unplaced.empty());
    const std::string page = page_of(report);
    INFO(page);
    const std::vector<std::string> lines = lines_of(page);
    for (const std::string& line : lines) {
      if (line.find(" into ") == std::string::npos) continue;
      INFO(line);
      const ReadRow row = read_row(line);
      const double dust = row.whole() - row.sum;
      // The last of a row has the blade beyond it, unless what is left is told too.
      CHECK(dust >= 3 * (row.pieces - 1) - 0.01);
      CHECK(dust <= 3 * row.pieces + 0.01);
      ++rows;
    }
    const auto names = names_in(lines);
    CHECK(names.size() == parts.size());
    for (const auto& [name, times] : names)
      CHECK(times == 1);
  }
  CHECK(rows > 100);
}

}  // namespace haunch::test
