#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <map>
#include <numeric>

#include "alike_boards.h"
#include "lumber_bill.h"
#include "lumber_text.h"

namespace haunch {
namespace {

/// Shares of a whole in tenths of a percent that add up to 1000, the largest remainders first.
std::vector<int> shares(const std::vector<double>& parts) {
  constexpr int kWhole = 1000;
  const double whole = std::accumulate(parts.begin(), parts.end(), 0.0);
  std::vector<int> tenths(parts.size(), 0);
  if (whole <= 0) return tenths;
  std::vector<std::pair<double, std::size_t>> rests;
  int given = 0;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const double exact = parts[i] / whole * kWhole;
    tenths[i] = static_cast<int>(exact);
    given += tenths[i];
    rests.emplace_back(static_cast<double>(tenths[i]) - exact, i);
  }
  std::sort(rests.begin(), rests.end());
  for (std::size_t i = 0; given < kWhole && i < rests.size(); ++i, ++given)
    ++tenths[rests[i].second];
  return tenths;
}

/// "0.0726" of 72600 with 6 places: those that are 0 left out, down to so many.
std::string decimal_words(std::int64_t figure, int places, int least_places) {
  while (places > least_places && figure % 10 == 0) {
    figure /= 10;
    --places;
  }
  std::string digits = fmt::format("{:0{}}", figure, places + 1);
  if (places > 0) digits.insert(digits.size() - static_cast<std::size_t>(places), ".");
  return digits;
}

/// Names of which the same is said, in the order in which each was said first.
class SaidOf {
 public:
  void add(const std::string& words, const std::string& name) {
    const auto [place, is_new] = places_.try_emplace(words, said_.size());
    if (is_new) said_.push_back({words, {}});
    said_[place->second].second.push_back(name);
  }

  const std::vector<std::pair<std::string, std::vector<std::string>>>& all() const { return said_; }

 private:
  std::map<std::string, std::size_t> places_;
  std::vector<std::pair<std::string, std::vector<std::string>>> said_;
};

/// The page of one report.
class LumberPage {
 public:
  LumberPage(const LumberReport& report, const LengthPrinter& lengths)
      : report_(report), lengths_(lengths) {
    find_origins();
  }

  LumberText text() const {
    LumberText text{head(), {}};
    const auto add = [&](PageParts parts) { append(text.parts, std::move(parts)); };
    if (report_.has_stock) {
      add(shopping_list());
      add(from_the_rack());
      add(unplaced());
    }
    add(glue_ups());
    if (report_.has_stock) {
      add(boards());
      add(figures());
    }
    add(rough_sizes());
    add(not_wood());
    add(takings_off());
    add(assumed());
    return text;
  }

  /// What found no place: a heading, and a text for parts of which the same is to be said.
  std::vector<std::string> unplaced_texts() const {
    if (report_.unplaced.empty()) return {};
    SaidOf same;
    for (const UnplacedPart& each : report_.unplaced) {
      const LumberPart& part = report_.parts[each.part];
      const std::string words = " (" + part.label + (part.is_rough ? "), rough " : "), finished ") +
                                size(part.finished.length, part.finished.width) + " x " +
                                one(part.finished.thickness) + ": " + each.why;
      same.add(words, part.name);
    }
    std::vector<std::string> texts = {"NOT PLACED, " + std::to_string(report_.unplaced.size()) +
                                      " of " + std::to_string(report_.parts.size())};
    for (const auto& [words, names] : same.all())
      texts.push_back(joined(names) + words);
    return texts;
  }

 private:
  std::string one(Length length) const { return lengths_.one(length); }
  std::string size(Length length, Length width) const { return one(length) + " x " + one(width); }
  /// Areas are in square metres, of an inch page in square feet.
  std::string area_unit() const { return lengths_.unit() == Unit::mm ? "m2" : "ft2"; }
  double area_figure(double square_mm) const {
    constexpr double kSquareMetre = 1e6;
    constexpr double kSquareFoot = 304.8 * 304.8;
    return square_mm / (lengths_.unit() == Unit::mm ? kSquareMetre : kSquareFoot);
  }
  const std::string& currency() const { return report_.stock.currency; }

  PageText head() const {
    std::vector<std::string> items;
    for (const LumberPart& part : report_.parts)
      if (items.empty() || items.back() != part.item) items.push_back(part.item);
    PageText page = PageText::hanging("lumber for " + std::to_string(report_.parts.size()) +
                                          " parts of " + std::to_string(items.size()) +
                                          (items.size() == 1 ? " item" : " items") + "; sizes in " +
                                          (lengths_.unit() == Unit::mm ? "mm" : "inches"),
                                      0);
    if (!report_.has_stock)
      page += PageText::hanging(
          "takings-off only: no stock file was given, so nothing is planned; add --stock FILE "
          "for boards and cuts");
    return page;
  }

  /// How many of each item of stock the plan takes.
  std::map<std::size_t, int> taken() const {
    std::map<std::size_t, int> counts;
    for (const MaterialPlan& plan : report_.plans)
      for (const lumber::BoardPlan& board : plan.plan.boards)
        ++counts[plan.items[board.stock]];
    return counts;
  }

  /// As the yard is asked for it.
  PageParts shopping_list() const {
    const std::vector<BillLine> bill = bill_of(report_);
    if (bill.empty()) return {{"BUY nothing"}};
    PageText page;
    bool random = false;
    for (const BillLine& each : bill) {
      const StockItem& item = report_.stock.items[each.item];
      random = random || item.widest;
      page += PageText::hanging(std::to_string(each.count) + " of " + yard_words(item) + " (" +
                                item.id + "): " + price_words(item, each));
    }
    page += PageText::hanging("together " + money_words(total_of(bill), currency()));
    if (random)
      page += PageText::hanging(
          "or wider: of random widths the plan counts on the narrowest and the price on the "
          "middle one; any board as wide or wider will do");
    return {{"BUY", page}};
  }

  /// "European oak 54 rough, 4200 x 280 or wider"
  std::string yard_words(const StockItem& item) const {
    const std::string surface = item.thickness.sheet      ? ""
                                : item.thickness.surfaced ? " surfaced"
                                                          : " rough";
    return (item.species.empty() ? "" : item.species + " ") + thickness_name(item, lengths_) +
           surface + ", " + size(item.length, item.width) + (item.widest ? " or wider" : "");
  }

  /// "0.126 m3 at 2350.00, 296.10 EUR"
  std::string price_words(const StockItem& item, const BillLine& bought) const {
    constexpr int kPricePlaces = 4;
    struct Measure {
      std::string_view unit;
      int least_places, most_places;
    };
    constexpr std::array<Measure, 5> kMeasures = {
        {{"", 0, 0}, {" board ft", 1, 4}, {" m3", 3, 6}, {" m", 2, 3}, {" m2", 2, 4}}};
    const std::string price = decimal_words(item.price->ten_thousandths, kPricePlaces, 2);
    const std::string all = ", " + money_words(bought.cost, currency());
    if (item.price->per == Per::board) return price + " each" + all;
    const auto& [unit, least, most] = kMeasures[static_cast<std::size_t>(item.price->per)];
    const std::int64_t measure = measure_of(item).rounded(bought.count, most);
    return decimal_words(measure, most, least) + std::string(unit) + " at " + price + all;
  }

  PageParts from_the_rack() const {
    TextTable table({"stock", "boards", "length", "width", "thick", "of"});
    for (const auto& [index, count] : taken()) {
      const StockItem& item = report_.stock.items[index];
      if (item.price) continue;
      table.add({item.id, std::to_string(count), item.length, item.width,
                 thickness_name(item, lengths_), item.species});
    }
    if (table.empty()) return {{"FROM THE RACK nothing"}};
    return {{"FROM THE RACK", PageText::table(table, lengths_, 2)}};
  }

  PageParts unplaced() const {
    const std::vector<std::string> texts = unplaced_texts();
    if (texts.empty()) return {};
    PageText page;
    for (std::size_t i = 1; i < texts.size(); ++i)
      page += PageText::hanging(texts[i]);
    return {{texts.front(), page}};
  }

  // ---- glue-ups

  PageParts glue_ups() const {
    SaidOf same;
    for (std::size_t i = 0; i < report_.parts.size(); ++i) {
      if (!report_.rough[i] || report_.rough[i]->pieces() == 1) continue;
      same.add(glue_words(*report_.rough[i]), report_.parts[i].name);
    }
    PageText page;
    for (const auto& [words, names] : same.all())
      page += PageText::hanging(joined(names) + ": " + words);
    if (page.empty()) return {};
    return {{"GLUE-UPS", page + laying() + glue_rules()}};
  }

  /// How the strips of parts lie, and which boards those of each come from.
  PageText laying() const {
    SaidOf same;
    for (std::size_t i = 0; i < report_.parts.size(); ++i)
      if (report_.rough[i] && report_.rough[i]->strips > 1)
        same.add(laying_words(i), report_.parts[i].name + origin(i));
    PageText page;
    for (const auto& [words, names] : same.all()) {
      std::string text;
      for (const std::string& name : names)
        text.append(text.empty() ? "" : "; ").append(name);
      page += PageText::hanging(text.append(": ").append(words));
    }
    return page;
  }

  std::string laying_words(std::size_t part) const {
    const RoughPart& rough = *report_.rough[part];
    const std::string all = "1 to " + std::to_string(rough.strips);
    std::string words = "lay " + all + " side by side, ";
    if (rough.layers > 1) words = "in each layer lay the strips side by side, ";
    if (report_.parts[part].quarter_sawn) {
      words += "the best face of each up";
    } else {
      words += rough.layers > 1 ? "heart side up and down in turn" : turns(rough.strips);
    }
    return words;
  }

  /// "heart side up in 1 3, bark side up in 2"
  static std::string turns(std::size_t strips) {
    std::vector<std::string> heart;
    std::vector<std::string> bark;
    for (std::size_t i = 1; i <= strips; ++i)
      (i % 2 == 1 ? heart : bark).push_back(std::to_string(i));
    return "heart side up in " + joined(heart) + ", bark side up in " + joined(bark);
  }

  /// Strips of a part on one board.
  struct Origin {
    const MaterialPlan* plan = nullptr;
    const lumber::BoardPlan* board = nullptr;
    std::vector<std::size_t> numbers;
  };

  void find_origins() {
    origins_.resize(report_.parts.size());
    for (const MaterialPlan& plan : report_.plans) {
      for (const lumber::BoardPlan& board : plan.plan.boards) {
        for (const lumber::Cut& cut : board.cuts) {
          const LumberPiece& piece = plan.pieces[cut.want];
          std::vector<Origin>& origins = origins_[piece.part];
          if (origins.empty() || origins.back().board != &board)
            origins.push_back({&plan, &board, {}});
          origins.back().numbers.push_back(piece.number);
        }
      }
    }
  }

  /// " from yard-27 no. 1", or " (1 2 from rack-3, 3 from yard-27 no. 1)"
  std::string origin(std::size_t part) const {
    const std::vector<Origin>& origins = origins_[part];
    if (origins.empty()) return {};
    if (origins.size() == 1)
      return " from " + board_name(*origins.front().plan, *origins.front().board);
    std::string words;
    for (const Origin& each : origins) {
      std::vector<std::size_t> numbers = each.numbers;
      std::sort(numbers.begin(), numbers.end());
      std::vector<std::string> names;
      for (const std::size_t number : numbers)
        names.push_back(std::to_string(number));
      words += (words.empty() ? " (" : ", ") + joined(names) + " from " +
               board_name(*each.plan, *each.board);
    }
    return words + ")";
  }

  /// "rack-3", "yard-27 no. 2"
  std::string board_name(const MaterialPlan& plan, const lumber::BoardPlan& board) const {
    const StockItem& item = report_.stock.items[plan.items[board.stock]];
    const bool one = item.count == 1 && item.taken == 0;
    return item.id + (one ? "" : " no. " + std::to_string(number_of(item, board)));
  }

  static PageText glue_rules() {
    return PageText::hanging(
        "the numbers are those of the cuts; keep the strips in this order when jointing, grain "
        "all one way. Heart and bark side up in turn lies flatter, where strips are flat-sawn; "
        "all one way up looks better and wants a frame or battens to hold it flat.");
  }

  std::string glue_words(const RoughPart& rough) const {
    std::string words;
    if (rough.layers > 1) {
      words = std::to_string(rough.layers) + " layers from " + one(rough.stock_thickness) +
              ", each planed on both faces; glue line";
      words += rough.glue_lines.size() > 1 ? "s " : " ";
      for (std::size_t i = 0; i < rough.glue_lines.size(); ++i)
        words += (i > 0 ? " and " : "") + one(rough.glue_lines[i]);
      words += " from the face side";
    }
    if (rough.strips > 1)
      words += (words.empty() ? "" : "; ") + std::to_string(rough.strips) +
               (rough.layers > 1 ? " strips a layer, " : " strips, ") +
               size(rough.length, rough.width) + " as sawn, " + one(report_.stock.sawing.jointing) +
               " off each edge in jointing";
    return words;
  }

  // ---- boards

  PageParts boards() const {
    const std::vector<AlikeBoards> all = alike_boards(report_, lengths_);
    if (all.empty()) return {};
    const std::string trim = trim_of(report_, all.front(), lengths_);
    PageText page;
    if (!trim.empty()) page += PageText::hanging("first, of every board: " + trim);
    page += PageText::hanging(
        "sizes in a row are from the low end (crosscut) or the low edge (rip) of what "
        "lies on the saw; between two goes the blade, " +
        one(report_.stock.sawing.kerf));
    PageParts parts{{"CUTS, in order", page}};
    for (const AlikeBoards& alike : all)
      parts.push_back(board_page(alike, trim));
    return parts;
  }

  PagePart board_page(const AlikeBoards& alike, const std::string& usual_trim) const {
    PageText page;
    const std::string trim = trim_of(report_, alike, lengths_);
    if (alike.first().steps.empty()) {
      for (const NumberedBoard& each : alike.boards)
        page += whole_board(*alike.plan, *each.board);
    } else if (trim != usual_trim) {
      page += PageText::hanging("first, of this: " + (trim.empty() ? "no trim" : trim));
    }
    std::size_t number = 0;
    for (CutLine& line : CutRows(report_, *alike.plan, lengths_).lines(alike.boards))
      page += PageText::numbered(++number, std::move(line.words));
    return {wrapped(board_heading(report_, alike, lengths_), kPageWidth, 2),
            page + offcuts_line(alike.first(), alike.boards.size() > 1)};
  }

  PageText whole_board(const MaterialPlan& plan, const lumber::BoardPlan& board) const {
    PageText page;
    for (const lumber::Cut& cut : board.cuts)
      page += PageText::hanging("as it is: " + piece_name(report_, plan.pieces[cut.want]));
    return page;
  }

  /// "kept: 853 x 67.8; 6 of 589 x 73.8"
  PageText offcuts_line(const lumber::BoardPlan& board, bool of_each) const {
    std::vector<std::pair<std::string, int>> counts;
    for (const lumber::Spot& spot : board.offcuts) {
      const std::string words = size(spot.length, spot.width);
      const auto same = std::find_if(counts.begin(), counts.end(),
                                     [&](const auto& each) { return each.first == words; });
      if (same == counts.end())
        counts.emplace_back(words, 1);
      else
        ++same->second;
    }
    std::string kept;
    for (const auto& [words, count] : counts)
      kept +=
          (kept.empty() ? "" : "; ") + (count > 1 ? std::to_string(count) + " of " : "") + words;
    if (kept.empty()) return {};
    return PageText::hanging((of_each ? "offcuts kept of each: " : "offcuts kept: ") + kept);
  }

  // ---- figures

  PageParts figures() const {
    const lumber::Totals totals = totals_of(report_);
    if (totals.boards == 0) return {};
    const std::array<lumber::Area, 5> areas = {totals.parts, totals.kerf, totals.trim,
                                               totals.offcuts, totals.scrap};
    constexpr std::array kNames = {"parts", "kerf", "trim", "offcuts kept",
                                   "scrap, defects among it"};
    std::vector<double> parts;
    for (const lumber::Area area : areas)
      parts.push_back(lumber::square_mm(area));
    const std::vector<int> tenths = shares(parts);
    TextTable table({"", area_unit(), "%"});
    for (std::size_t i = 0; i < areas.size(); ++i)
      table.add({kNames[i], fmt::format("{:7.3f}", area_figure(lumber::square_mm(areas[i]))),
                 fmt::format("{:3}.{}", tenths[i] / 10, tenths[i] % 10)});
    table.add({"all stock used",
               fmt::format("{:7.3f}", area_figure(lumber::square_mm(totals.area_used))), "100.0"});
    return {{"WHERE THE STOCK GOES", PageText::table(table, lengths_, 2) + bound_lines()}};
  }

  std::string measured(lumber::Measure measure, std::int64_t figure) const {
    switch (measure) {
      case lumber::Measure::money:
        return money_words(figure, currency());
      case lumber::Measure::boards:
        return std::to_string(figure) + (figure == 1 ? " board" : " boards");
      case lumber::Measure::square_mm:
        break;
    }
    return fmt::format("{:.3f} {}", area_figure(static_cast<double>(figure)), area_unit());
  }

  /// "costs less", of what the plans are measured in.
  static std::string_view does_better(lumber::Measure measure) {
    constexpr std::string_view kBetter[] = {"costs less", "uses less stock", "takes fewer boards"};
    return kBetter[static_cast<std::size_t>(measure)];
  }

  PageText bound_lines() const {
    PageText page;
    for (const PlansBound& exact : report_.bounds) {
      const PlansBound each = as_billed(exact, report_);
      page += PageText::hanging(bound_line(each)) + as_made_line(each);
      for (const std::size_t plan : each.plans)
        if (!report_.plans[plan].plan.split_groups.empty())
          page += PageText::hanging("from more than one board: " +
                                    joined(report_.plans[plan].plan.split_groups));
    }
    return page;
  }

  /// "oak 54 and 27: 270.87 EUR; no plan costs less than 251.20 EUR: 0.21 boards above it (reckoned
  /// by area)"
  std::string bound_line(const PlansBound& each) const {
    constexpr std::array<std::string_view, 4> kBinding = {"by area", "by area in whole boards",
                                                          "from all ways to cut a board",
                                                          "from all ways to cut whole boards"};
    const lumber::Bounds& bounds = each.bounds;
    const std::string none = (report_.unplaced.empty() ? "no plan " : "no plan for these parts ") +
                             std::string(does_better(bounds.measure));
    std::string words = plans_name(each) + ": " + measured(bounds.measure, bounds.plan);
    if (bounds.proven)
      words += ", and " + none + " (reckoned ";
    else
      words += fmt::format("; {} than {}: {:.2f} boards above it (reckoned ", none,
                           measured(bounds.measure, bounds.best), bounds.boards_above);
    return words + std::string(kBinding[static_cast<std::size_t>(bounds.binding)]) + ")";
  }

  /// What is known beyond that of the ways chosen.
  PageText as_made_line(const PlansBound& each) const {
    if (!each.any_choice || each.bounds.proven || each.as_made <= each.bounds.best) return {};
    const std::string none = "with the strips, layers and thicknesses chosen here none " +
                             std::string(does_better(each.bounds.measure));
    if (each.as_made == each.bounds.plan) return PageText::hanging(none);
    return PageText::hanging(none + " than " + measured(each.bounds.measure, each.as_made));
  }

  /// "European oak 54 and 27"
  std::string plans_name(const PlansBound& each) const {
    const MaterialPlan& first = report_.plans[each.plans.front()];
    std::string name = first.material.empty() ? "stock" : first.material;
    for (std::size_t i = 0; i < each.plans.size(); ++i) {
      const bool last = i > 0 && i + 1 == each.plans.size();
      name += (i == 0 ? " "
               : last ? " and "
                      : ", ") +
              one(report_.plans[each.plans[i]].thickness.thickness);
    }
    return name;
  }

  // ---- rough sizes, takings-off

  PageParts rough_sizes() const {
    struct Row {
      std::vector<std::string> names;
      RoughPart rough;
      std::string material;
    };
    std::vector<Row> rows;
    for (std::size_t i = 0; i < report_.parts.size(); ++i) {
      if (!report_.rough[i]) continue;
      const RoughPart& rough = *report_.rough[i];
      auto row = std::find_if(rows.begin(), rows.end(), [&](const Row& it) {
        return it.rough.length == rough.length && it.rough.width == rough.width &&
               it.rough.stock_thickness == rough.stock_thickness &&
               it.rough.pieces() == rough.pieces() && it.material == report_.parts[i].material;
      });
      if (row == rows.end()) row = rows.insert(row, {{}, rough, report_.parts[i].material});
      row->names.push_back(report_.parts[i].name);
    }
    if (rows.empty()) return {};
    TextTable table({"pieces", "length", "width", "from", "of", "for"});
    for (const Row& row : rows)
      table.add({std::to_string(row.names.size() * row.rough.pieces()), row.rough.length,
                 row.rough.width, row.rough.stock_thickness, row.material,
                 Cell::of_mark(joined(row.names))});
    return {{"ROUGH SIZES", PageText::table(table, lengths_, 2) + thicker()}};
  }

  PageText thicker() const {
    std::vector<std::string> names;
    for (std::size_t i = 0; i < report_.parts.size(); ++i)
      if (report_.rough[i] && report_.rough[i]->thicker) names.push_back(report_.parts[i].name);
    if (names.empty()) return {};
    return PageText::hanging("thinner stock would do, but lacks or does worse: " + joined(names));
  }

  /// Alike ones together, called by what they are of.
  PageParts not_wood() const {
    struct Row {
      const LumberPart* first;
      std::vector<std::string> names;
    };
    std::vector<Row> rows;
    for (const LumberPart& part : report_.not_wood) {
      auto row = std::find_if(rows.begin(), rows.end(), [&](const Row& it) {
        const lumber::FinishedPart& size = it.first->finished;
        return it.first->material == part.material && size.length == part.finished.length &&
               size.width == part.finished.width && size.thickness == part.finished.thickness;
      });
      if (row == rows.end()) row = rows.insert(row, {&part, {}});
      row->names.push_back(part.name);
    }
    TextTable table({"pieces", "what", "length", "width", "thick", "for"});
    for (const Row& row : rows) {
      const lumber::FinishedPart& size = row.first->finished;
      table.add({std::to_string(row.names.size()),
                 row.names.size() > 1 && !row.first->material.empty() ? row.first->material
                                                                      : row.first->label,
                 size.length, size.width, size.thickness, Cell::of_mark(joined(row.names))});
    }
    if (table.empty()) return {};
    return {{"NOT OF WOOD, finished sizes", PageText::table(table, lengths_, 2)}};
  }

  PageParts takings_off() const {
    if (report_.takings.empty()) return {};
    const lumber::WasteRule& waste = report_.stock.sawing.waste;
    TextTable table({"of", "thick", "pieces", area_unit(), "m3", "board ft", "buy m3",
                     "buy board ft", "sheets"});
    for (const TakingRow& row : report_.takings) {
      const double cubic = lumber::cubic_metres(row.taking.area, row.nominal);
      const double feet = lumber::board_feet(row.taking.area, row.nominal);
      const auto volume = [&](double figure, int places) {
        return row.sheet ? std::string("-") : fmt::format("{:.{}f}", figure, places);
      };
      std::string sheets;
      if (row.sheet_area)
        sheets = fmt::format("{:.1f}", lumber::to_buy(lumber::square_mm(row.taking.area) /
                                                          lumber::square_mm(*row.sheet_area),
                                                      waste));
      table.add({row.material.empty() ? "not told" : row.material,
                 row.quarters.empty() ? one(row.thickness) : row.quarters,
                 std::to_string(row.taking.pieces),
                 fmt::format("{:.2f}", area_figure(lumber::square_mm(row.taking.area))),
                 volume(cubic, 4), volume(feet, 1), volume(lumber::to_buy(cubic, waste), 4),
                 volume(lumber::to_buy(feet, waste), 1), sheets});
    }
    const std::string rule =
        waste.of_bought
            ? fmt::format(
                  "buy: {} % of what is bought is taken for waste, so that it is what is "
                  "needed divided by {:.2f}",
                  waste.percent, (100 - waste.percent) / 100.0)
            : fmt::format("buy: {} % is added to what is needed", waste.percent);
    return {{"TAKINGS-OFF, rough sizes, by the plank",
             PageText::table(table, lengths_, 2) + PageText::hanging(rule) +
                 PageText::hanging(
                     "board feet by the thickness as traded; under 1 in. it counts as 1 in.")}};
  }

  PageParts assumed() const {
    if (report_.stock.assumed.empty()) return {};
    TextTable table({"key", "value", "why"});
    for (const Assumed& each : report_.stock.assumed) {
      const bool is_length = each.value.kind == AssumedValue::Kind::length;
      table.add({each.key, is_length ? one(each.value.length) : each.value.words, each.why});
    }
    return {{"ASSUMED, for want of a word in the stock file", PageText::table(table, lengths_, 2)}};
  }

  const LumberReport& report_;
  const LengthPrinter& lengths_;
  std::vector<std::vector<Origin>> origins_;  // of each part, board by board
};

}  // namespace

std::string money_words(std::int64_t hundredths, const std::string& currency) {
  return decimal_words(hundredths, 2, 2) + (currency.empty() ? "" : " " + currency);
}

std::string piece_name(const LumberReport& report, const LumberPiece& piece) {
  const std::string& name = report.parts[piece.part].name;
  if (piece.of == 1) return name;
  return name + " (" + std::to_string(piece.number) + " of " + std::to_string(piece.of) + ")";
}

LumberText lumber_text(const LumberReport& report, const LengthPrinter& lengths) {
  return LumberPage(report, lengths).text();
}

std::vector<std::string> unplaced_texts(const LumberReport& report, const LengthPrinter& lengths) {
  return LumberPage(report, lengths).unplaced_texts();
}

std::string lumber_page(const LumberReport& report, const LengthPrinter& lengths) {
  const LumberText text = lumber_text(report, lengths);
  return text.head.text() + text_of(text.parts);
}

}  // namespace haunch
