// Several items told together: one cut list, what is alike once, and nothing lost by it.
#include "batch_page.h"

#include <algorithm>
#include <initializer_list>
#include <sstream>

#include "pages.h"
#include "report_page.h"

namespace haunch::test {
namespace {

/// Cupboard doors that differ in what is named here.
struct Ordered {
  std::string id;
  int quantity;
  int width, height;
  std::string more = {};
};

std::string spec_of(const Ordered& door) {
  return R"({"kind": "door", "units": "mm", "id": ")" + door.id + R"(", "quantity": )" +
         std::to_string(door.quantity) + R"(, "opening": {"width": )" + std::to_string(door.width) +
         R"(, "height": )" + std::to_string(door.height) + "}" +
         (door.more.empty() ? "" : ", " + door.more) + "}";
}

std::vector<ItemSheet> sheets_for(const std::vector<Ordered>& doors, const View& view = {}) {
  std::vector<ItemSheet> sheets;
  for (const Ordered& door : doors) {
    const ItemOutcome outcome = report_item(job(spec_of(door)), wanted_for(view));
    sheets.push_back(item_sheet(*outcome.report, view, Unit::mm));
  }
  return sheets;
}

const std::vector<Ordered> kKitchen = {{"sink", 2, 398, 716},
                                       {"flour", 1, 398, 716},
                                       {"stove", 1, 298, 716},
                                       {"larder", 2, 448, 1180},
                                       {"baskets", 3, 448, 716}};

/// What stands below the line of a sheet, up to the next one.
std::vector<std::string> split_at_sheets(const std::string& page) {
  std::vector<std::string> sheets;
  std::size_t at = page.find("\fsheet ");
  while (at != std::string::npos) {
    const std::size_t next = page.find("\fsheet ", at + 1);
    sheets.push_back(page.substr(at, next - at));
    at = next;
  }
  return sheets;
}

/// The sheet that a sheet names for what stands below a heading; itself, where it names none.
std::size_t sheet_that_tells(const std::string& sheet, const std::string& heading,
                             std::size_t number) {
  const std::string words = in_words_only(sheet);
  std::size_t at = words.find("as on sheet ");
  const std::size_t end = words.find(heading, at);
  if (at == std::string::npos || end == std::string::npos) return number;
  const std::size_t last = words.rfind("as on sheet ", end);
  const bool own = sheet.find("\n\n" + heading) != std::string::npos;
  return own ? number : static_cast<std::size_t>(std::stoi(words.substr(last + 12))) - 1;
}

}  // namespace

TEST_CASE("Items that are worked alike share a sheet, with their ids and counts", "[batch]") {
  View view;
  view.on_paper = true;
  const std::string page = batch_page(sheets_for(kKitchen), view, Unit::mm, 0);
  INFO(page);
  CHECK(page.find("BATCH: 9 off on 4 sheets; sizes in mm\n") == 0);
  CHECK(tells(in_words_only(page), "1 3 394 712 20 pass sink (2), flour "));
  CHECK(split_at_sheets(page).size() == 4);
  CHECK(tells(page, "\fsheet 1 of 4\nsink: door, 2 off\nflour: door, 1 off\n  leaf 394 wide"));
}

TEST_CASE("A door that is another in one thing only has a sheet of its own", "[batch]") {
  for (const char* more :
       {R"("thickness": 21)", R"("fit_allowance": 0.2)", R"("panel": {"gap": 2})",
        R"("species": "ash")", R"("clearance": 2.5)"}) {
    INFO(more);
    CHECK(tells(
        batch_page(sheets_for({{"a", 1, 398, 716}, {"b", 1, 398, 716, more}}), {}, Unit::mm, 0),
        "2 off on 2 sheets"));
  }
  CHECK(tells(batch_page(sheets_for({{"a", 1, 398, 716}, {"b", 5, 398, 716, R"("note": "left")"}}),
                         {}, Unit::mm, 0),
              "6 off on 1 sheet;"));
}

TEST_CASE("Equal pieces of all sheets are one row, which says what they are for", "[batch]") {
  // Stiles 712 long: two a leaf in 3 + 1 + 3 leaves; rails for the leaves 444 wide: in 2 + 3.
  const std::string page = in_words_only(batch_page(sheets_for(kKitchen), {}, Unit::mm, 0));
  INFO(page);
  CHECK(tells(page, "stiles 14 712 57 20.0 A B on 1 2 4 "));
  CHECK(tells(page, "rails 10 406 57 20.0 C D on 3 4 "));
  CHECK(tells(page, "panels 3 614 292 7.6 upright E on 1 "));
}

TEST_CASE("Each wood has a table of its own in the cut list", "[batch]") {
  const std::string page = batch_page(sheets_for({{"a", 1, 398, 716, R"("species": "oak")"},
                                                  {"b", 1, 398, 716, R"("species": "ash")"},
                                                  {"c", 1, 398, 716}}),
                                      {}, Unit::mm, 0);
  INFO(page);
  const std::string words = in_words_only(page);
  CHECK(tells(words, "CUT LIST, for all wood not told part pieces "));
  CHECK(words.find(" ash part pieces ") < words.find(" oak part pieces "));
  CHECK(tells(
      words,
      "oak part pieces length width thick grain marks on sheets stiles 2 712 57 20.0 A B on 1"));
}

TEST_CASE("The pieces of the batch are as many as those of its items", "[batch]") {
  const std::vector<ItemSheet> sheets = sheets_for(kKitchen);
  std::int64_t wanted = 0;
  for (const ItemSheet& sheet : sheets)
    for (const CutRow& row : sheet.cuts)
      wanted += row.quantity;
  std::istringstream page(batch_page(sheets, {}, Unit::mm, 0));
  std::int64_t printed = 0;
  std::string title;
  std::getline(page, title);
  for (std::string line; std::getline(page, line) && line != "HOW THE SHEETS ARE READ";) {
    std::istringstream words(line);
    std::string part;
    std::int64_t pieces = 0;
    if (line.find(" on ") != std::string::npos && words >> part >> pieces) printed += pieces;
  }
  CHECK(printed == wanted);
  CHECK(wanted == 9 * 5);
}

TEST_CASE("What a sheet does not tell stands on the sheet that it names", "[batch]") {
  View view;
  view.on_paper = true;
  for (const bool full : {false, true}) {
    view.full = full;
    const std::vector<ItemSheet> items = sheets_for(kKitchen, view);
    const std::string page = batch_page(items, view, Unit::mm, 0);
    const std::vector<std::string> sheets = split_at_sheets(page);
    const std::string before = page.substr(0, page.find('\f'));
    std::size_t looked_at = 0;
    for (std::size_t number = 0; number < sheets.size(); ++number) {
      const ItemSheet& item = items[number == 0 ? 0 : number + 1];  // the first two share one
      for (const PagePart& part : item.parts) {
        if (part.stands == Stands::before_all) continue;
        const std::string heading = part.heading.substr(0, part.heading.find_first_of(",;:"));
        const std::size_t on = sheet_that_tells(sheets[number], heading, number);
        INFO(item.id << " " << part.heading << " on " << on + 1);
        CHECK(tells(sheets[on], part.heading + "\n" + part.body.text()));
        for (const PageText& legend : part.legends)
          CHECK((tells(before, legend.text()) || tells(sheets[on], legend.text())));
        ++looked_at;
      }
    }
    CHECK(looked_at > 15);
  }
}

TEST_CASE("What is wrong with an item stands on its own sheet and before all", "[batch]") {
  const std::string fails = R"("mortise": {"width": 16})";
  const std::string page = batch_page(
      sheets_for({{"a", 1, 398, 716, fails}, {"b", 1, 498, 716, fails}, {"c", 1, 398, 716}}), {},
      Unit::mm, 0);
  INFO(page);
  CHECK(tells(page.substr(0, page.find("\n\n")), " FAIL"));
  const std::size_t second = page.find("sheet 2 of 3");
  CHECK(page.find("\nCHECKS: ", second) < page.find("sheet 3 of 3"));
  CHECK(page.find("\nFAIL", page.find("sheet 3 of 3")) == std::string::npos);
}

TEST_CASE("What is read in two ways is told where it is read so", "[batch]") {
  // Of the second the tenons at the lower ends only are told, so they are read otherwise.
  const std::string page = batch_page(
      sheets_for({{"a", 1, 398, 716}, {"b", 1, 898, 2000, R"("joint": {"corner": "bridle"})"}}), {},
      Unit::mm, 0);
  INFO(page);
  const std::size_t sheets = page.find("---- sheet 1");
  CHECK(page.find("square: the widest tenon") < sheets);
}

TEST_CASE("Lots of a long run are numbered", "[batch]") {
  CHECK(batch_page(sheets_for({{"a", 1, 398, 716}, {"b", 1, 398, 717}}), {}, Unit::mm, 2)
            .starts_with("BATCH 2: 2 off on 2 sheets"));
}

TEST_CASE("What is bought for all cabinets of a batch is counted together", "[batch]") {
  // Two with one loose shelf and one of three with two: 2 x 4 and 3 x 8 pins.
  const auto sheet = [](std::string_view id, int quantity, int shelves) {
    const std::string spec = R"({"kind": "cabinet", "units": "mm", "id": ")" + std::string(id) +
                             R"(", "quantity": )" + std::to_string(quantity) +
                             R"(, "size": {"width": 600, "height": 700, "depth": 300},
        "layout": {"front": "none", "shelves": )" +
                             std::to_string(shelves) + "}}";
    const ItemOutcome outcome = report_item(job(spec), wanted_for(View()));
    return item_sheet(*outcome.report, View(), Unit::mm);
  };
  const std::string page =
      batch_page({sheet("jars", 2, 1), sheet("tins", 3, 2)}, View(), Unit::mm, 0);
  INFO(page);
  CHECK(tells(page, "HARDWARE, for all\n  32 shelf pins 5"));
}

}  // namespace haunch::test
