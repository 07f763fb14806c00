#include "stock_file.h"

#include <algorithm>
#include <charconv>
#include <set>
#include <utility>

#include "glue_up.h"
#include "value_reader.h"

namespace haunch {
namespace {

constexpr std::string_view kSchema = "stock";
constexpr int kMostOfOne = 100'000;
constexpr int kPricePlaces = 4;

/// A price in ten thousandths; nothing of what is no plain decimal of so many places.
std::optional<std::int64_t> price_of(const std::string& text) {
  constexpr std::size_t kMostDigits = 7;
  const std::size_t point = std::min(text.find('.'), text.size());
  std::string digits = text.substr(0, point);
  const std::string places = point < text.size() ? text.substr(point + 1) : "";
  if (digits.empty() || digits.size() > kMostDigits || places.size() > kPricePlaces) return {};
  digits += places + std::string(kPricePlaces - places.size(), '0');
  if (digits.find_first_not_of("0123456789") != std::string::npos) return {};
  std::int64_t price = 0;
  std::from_chars(digits.data(), digits.data() + digits.size(), price);
  return price;
}

/// What one comes to; nothing of what is too dear to be reckoned with. It has a price.
std::optional<lumber::Exact> reckoned_cost(const StockItem& item) {
  constexpr std::int64_t kDearest = 1'000'000'000;
  constexpr lumber::Wide kTenThousandths = 10'000;
  const auto price = lumber::Exact::of(item.price->ten_thousandths, kTenThousandths);
  const auto cost = product(measure_of(item), price);
  return cost && cost->floored(1, 0) < kDearest ? cost : std::nullopt;
}

/// A word out of a longer text, as a value of its own.
Value part_of(const Value& whole, std::string text) {
  const auto first = text.find_first_not_of(' ');
  text = first == std::string::npos ? std::string()
                                    : text.substr(first, text.find_last_not_of(' ') - first + 1);
  Value value;
  const bool number = !text.empty() && std::count(text.begin(), text.end(), '.') <= 1 &&
                      text.find_first_not_of("0123456789.") == std::string::npos;
  value.kind = number ? Value::Kind::number : Value::Kind::text;
  value.offset = whole.offset;
  value.text = std::move(text);
  return value;
}

/// Reads a stock file; every fault is a problem with its place.
class StockReader {
 public:
  StockReader(const Value& document, std::optional<Unit> units)
      : document_(document), units_(units), values_(units, kSchema) {}

  StockReading read() {
    if (document_.kind != Value::Kind::object) {
      values_.wrong_type(document_, "", "a stock file; write an object {…} with \"stock\"");
      return {{}, values_.take_problems()};
    }
    check_keys(document_, "", stock_file_keys());
    read_units();
    file_ = usual_stock_file(units_.value_or(Unit::mm));
    read_settings();
    read_items();
    std::vector<Problem> problems = values_.take_problems();
    if (!problems.empty()) return {{}, std::move(problems)};
    return {std::move(file_), {}};
  }

 private:
  void check_keys(const Value& object, const std::string& path,
                  const std::vector<std::string_view>& known) {
    for (const Entry& entry : object.entries)
      if (std::find(known.begin(), known.end(), entry.key) == known.end())
        values_.unknown_key(entry, child_path(path, entry.key), known);
  }

  void read_units() {
    const Value* units = document_.find("units");
    if (units == nullptr) return;
    const auto choice = values_.choice(*units, "/units", {"mm", "in"});
    if (choice) units_ = *choice == 0 ? Unit::mm : Unit::inch;
    // The reader of lengths begins anew, now that it can know the unit.
    std::vector<Problem> problems = values_.take_problems();
    values_ = ValueReader(units_, kSchema);
    if (!choice) values_.let_units_be();
    for (Problem& problem : problems)
      values_.problem(problem.path, problem.message, problem.offset);
  }

  // ---- how the shop saws

  void forget_assumed(std::string_view key) {
    std::erase_if(file_.assumed, [&](const Assumed& each) { return each.key == key; });
  }

  void setting(const Value& object, std::string_view group, std::string_view key, Length& length,
               bool zero_allowed = true) {
    const Value* value = object.find(key);
    if (value == nullptr) return;
    const std::string path =
        group.empty() ? child_path("", key) : child_path(child_path("", group), key);
    if (const auto read = values_.length(*value, path, zero_allowed)) length = *read;
    forget_assumed(group.empty() ? std::string(key) : std::string(group) + "." + std::string(key));
  }

  const Value* group(std::string_view key, const std::vector<std::string_view>& keys) {
    const Value* value = document_.find(key);
    if (value == nullptr) return nullptr;
    const std::string path = child_path("", key);
    if (value->kind != Value::Kind::object) {
      values_.wrong_type(*value, path, "an object; its keys are " + quoted_list(keys, "and"));
      return nullptr;
    }
    check_keys(*value, path, keys);
    return value;
  }

  void read_settings() {
    Sawing& sawing = file_.sawing;
    setting(document_, "", "kerf", sawing.kerf);
    if (const Value* trim = group("trim", {"end", "edge"})) {
      setting(*trim, "trim", "end", sawing.end_trim);
      setting(*trim, "trim", "edge", sawing.edge_trim);
    }
    if (const Value* least = group("least_offcut", {"length", "width"})) {
      setting(*least, "least_offcut", "length", sawing.offcut_length, false);
      setting(*least, "least_offcut", "width", sawing.offcut_width, false);
    }
    if (const Value* more = group("allowances", {"length", "width", "face"})) {
      setting(*more, "allowances", "length", sawing.allowances.length);
      setting(*more, "allowances", "width", sawing.allowances.width);
      setting(*more, "allowances", "face", sawing.allowances.face);
    }
    if (const Value* glue = group("glue_up", {"limit", "jointing"})) {
      setting(*glue, "glue_up", "limit", sawing.strip_limit, false);
      setting(*glue, "glue_up", "jointing", sawing.jointing);
    }
    read_waste();
    if (const Value* match = document_.find("match"))
      sawing.match = truth(*match, "/match").value_or(false);
    if (const Value* currency = document_.find("currency"))
      file_.currency = values_.text(*currency, "/currency").value_or("");
  }

  void read_waste() {
    constexpr int kMost = 99;
    const Value* waste = group("waste", {"percent", "of"});
    if (waste == nullptr) return;
    const Value* percent = waste->find("percent");
    const Value* of = waste->find("of");
    if (percent == nullptr || of == nullptr) {
      if (!values_.was_meant("/waste/percent") && !values_.was_meant("/waste/of"))
        values_.problem("/waste",
                        "lacks one of its two; write {\"percent\": 30, \"of\": \"bought\"}, "
                        "or \"of\": \"needed\"");
      return;
    }
    lumber::WasteRule& rule = file_.sawing.waste;
    rule.percent = values_.whole_number(*percent, "/waste/percent", 0, kMost).value_or(0);
    rule.of_bought = values_.choice(*of, "/waste/of", {"bought", "needed"}) == std::size_t{0};
    forget_assumed("waste");
  }

  std::optional<bool> truth(const Value& value, const std::string& path) {
    const std::string_view word = value.text;
    if (value.kind == Value::Kind::boolean || value.kind == Value::Kind::text) {
      if (word == "true" || word == "yes") return true;
      if (word == "false" || word == "no") return false;
    }
    values_.wrong_type(value, path, "an answer; write true or false");
    return {};
  }

  // ---- boards and sheets

  void read_items() {
    const Value* stock = document_.find("stock");
    if (stock == nullptr) {
      if (!values_.was_meant("/stock"))
        values_.problem("", "lacks \"stock\", the list of boards and sheets");
      return;
    }
    if (stock->kind != Value::Kind::list) {
      values_.wrong_type(*stock, "/stock", "a list; write [{\"id\": …, \"length\": …, …}]");
      return;
    }
    for (std::size_t i = 0; i < stock->list.size(); ++i)
      read_item(stock->list[i], child_path("/stock", i));
  }

  void read_item(const Value& value, const std::string& path) {
    if (value.kind != Value::Kind::object) {
      values_.wrong_type(value, path, "a board or sheet; write {\"id\": …, \"length\": …, …}");
      return;
    }
    check_keys(value, path, stock_item_keys());
    StockItem item;
    read_id(value, path, item);
    if (const Value* species = value.find("species"))
      item.species = values_.text(*species, child_path(path, "species")).value_or("");
    read_kind(value, path, item);
    read_sizes(value, path, item);
    read_price(value, path, item);
    read_count(value, path, item);
    if (const Value* grain = value.find("grain"))
      item.grain = truth(*grain, child_path(path, "grain")).value_or(true);
    read_trim(value, path, item);
    check_trim(path, item);
    if (const Value* defects = value.find("defects"))
      read_defects(*defects, child_path(path, "defects"), item);
    const std::size_t first = file_.items.size();
    add_lengths(item, path);
    // Of a range of lengths the last is the dearest.
    if (first < file_.items.size() && file_.items.back().price &&
        !reckoned_cost(file_.items.back()))
      values_.problem(child_path(path, "price"),
                      "one of it comes to 1000000000 or more; look at \"price\", \"per\" and the "
                      "sizes");
  }

  /// One board; of a range of lengths one of each, called after it.
  void add_lengths(const StockItem& item, const std::string& path) {
    if (lengths_.to == Length()) {
      file_.items.push_back(item);
      return;
    }
    for (Length length = item.length; length <= lengths_.to; length += lengths_.step) {
      StockItem& one = file_.items.emplace_back(item);
      one.length = length;
      one.id += " " + decimal(length, file_.unit);
      claim(one.id, child_path(path, "id"));
    }
  }

  /// A length, or {"from", "to", "step"}, as CSV "1800..5400".
  void read_length(const Value& value, const Value& board, const std::string& board_path,
                   StockItem& item) {
    constexpr std::int64_t kMostLengths = 60;
    const std::string path = child_path(board_path, "length");
    lengths_ = {};
    const auto range = read_range(value, path, {"from", "to", "step"}, "shortest", "longest");
    if (!range) {
      item.length = values_.length(value, path, false).value_or(Length());
      return;
    }
    std::optional<Length> step =
        file_.unit == Unit::mm ? Length::from_mm(300) : Length::from_inch_parts(12);
    if (const Value* by = value.find("step"))
      step = values_.length(*by, child_path(path, "step"), false);
    item.length = range->from.value_or(Length());
    if (!range->from || !range->to || !step) return;
    if (*range->from > *range->to)
      values_.problem(path, "the shortest is longer than the longest; write the lesser first");
    else if ((*range->to - *range->from).steps() / step->steps() >= kMostLengths)
      values_.problem(path, "makes over 60 lengths; take longer steps");
    else if (board.find("count") != nullptr || board.find("price") == nullptr)
      values_.problem(path, "a range of lengths is for what the yard sells, without a \"count\"");
    else
      lengths_ = {*range->to, *step};
  }

  void read_id(const Value& value, const std::string& path, StockItem& item) {
    const Value* id = required(value, path, "id", "a name of its own");
    if (id == nullptr) return;
    const std::string at = child_path(path, "id");
    const auto text =
        id->kind == Value::Kind::number ? std::optional(id->text) : values_.text(*id, at);
    if (!text) return;
    item.id = *text;
    if (item.id.empty()) values_.problem(at, "is empty; give the board a name of its own");
    if (!item.id.empty()) claim(item.id, at);
  }

  void claim(const std::string& id, const std::string& path) {
    if (!ids_.insert(id).second)
      values_.problem(path, "\"" + id +
                                "\" is the id of an earlier board too; give each its own, or one "
                                "of them a \"count\"");
  }

  const Value* required(const Value& value, const std::string& path, std::string_view key,
                        const std::string& what) {
    const Value* found = value.find(key);
    if (found == nullptr && !values_.was_meant(child_path(path, key)))
      values_.problem(path, "lacks \"" + std::string(key) + "\", " + what);
    return found;
  }

  void read_kind(const Value& value, const std::string& path, StockItem& item) {
    if (const Value* kind = value.find("kind"))
      item.thickness.sheet =
          values_.choice(*kind, child_path(path, "kind"), {"board", "sheet"}) == std::size_t{1};
    item.thickness.surfaced = item.thickness.sheet;
    if (const Value* surface = value.find("surface"))
      item.thickness.surfaced = values_.choice(*surface, child_path(path, "surface"),
                                               {"rough", "surfaced"}) == std::size_t{1};
  }

  void read_sizes(const Value& value, const std::string& path, StockItem& item) {
    if (const Value* length = required(value, path, "length", "along its grain"))
      read_length(*length, value, path, item);
    if (const Value* width = required(value, path, "width", "across its grain"))
      read_width(*width, child_path(path, "width"), item);
    const Value* thickness =
        required(value, path, "thickness", "a length, or quarters such as \"5/4\"");
    if (thickness == nullptr) return;
    if (const auto quarters =
            lumber::quarters_thickness(thickness->text, item.thickness.surfaced)) {
      item.quarters = thickness->text;
      item.thickness.thickness = *quarters;
      item.nominal = *lumber::quarters_thickness(thickness->text, false);
      return;
    }
    item.thickness.thickness =
        values_.length(*thickness, child_path(path, "thickness"), false).value_or(Length());
    item.nominal = item.thickness.thickness;
  }

  /// "150..250", or nothing where there is no such range in it.
  static std::optional<std::pair<Value, Value>> range_of(const Value& value) {
    const std::size_t dots = value.text.find("..");
    if (value.kind != Value::Kind::text || dots == std::string::npos) return {};
    return std::pair(part_of(value, value.text.substr(0, dots)),
                     part_of(value, value.text.substr(dots + 2)));
  }

  struct Range {
    std::optional<Length> from, to;
  };

  /// {"from", "to"}, or "150..250"; nothing where it is neither.
  std::optional<Range> read_range(const Value& value, const std::string& path,
                                  const std::vector<std::string_view>& keys,
                                  const std::string& least, const std::string& most) {
    if (const auto range = range_of(value))
      return Range{values_.length(range->first, path, false),
                   values_.length(range->second, path, false)};
    if (value.kind != Value::Kind::object) return {};
    check_keys(value, path, keys);
    const auto end = [&](std::string_view key, const std::string& which) {
      const Value* found = required(value, path, key, "the " + which);
      return found == nullptr ? std::optional<Length>()
                              : values_.length(*found, child_path(path, key), false);
    };
    const std::optional<Length> from = end("from", least);
    return Range{from, end("to", most)};
  }

  void read_width(const Value& value, const std::string& path, StockItem& item) {
    const auto range = read_range(value, path, {"from", "to"}, "narrowest", "widest");
    if (!range) {
      item.width = values_.length(value, path, false).value_or(Length());
      return;
    }
    if (!range->from || !range->to) return;
    if (*range->from > *range->to)
      values_.problem(path, "the narrowest is wider than the widest; write the lesser first");
    item.width = *range->from;
    item.widest = *range->to;
  }

  void read_price(const Value& value, const std::string& path, StockItem& item) {
    const Value* price = value.find("price");
    const Value* per = value.find("per");
    if (price == nullptr) {
      if (per != nullptr && !values_.was_meant(child_path(path, "price")))
        values_.problem(child_path(path, "per"),
                        "goes with a price; add \"price\", or leave it out of what is in hand");
      return;
    }
    const std::string at = child_path(path, "price");
    if (per == nullptr && !values_.was_meant(child_path(path, "per"))) {
      values_.problem(
          at, as_written(*price) + " lacks its unit; add \"per\": " + quoted_list(kWords<Per>));
      return;
    }
    const auto amount = amount_of(*price, at);
    const auto choice =
        per == nullptr ? std::nullopt : values_.choice(*per, child_path(path, "per"), kWords<Per>);
    if (amount && choice) item.price = Price{*amount, static_cast<Per>(*choice)};
    if (item.price && item.price->per == Per::board && lengths_.to != Length())
      values_.problem(child_path(path, "per"),
                      "boards of a range of lengths are not all of one price; write another unit");
  }

  std::optional<std::int64_t> amount_of(const Value& price, const std::string& path) {
    const bool number = price.kind == Value::Kind::number;
    const bool text = price.kind == Value::Kind::text;
    const auto amount = number || text ? price_of(price.text) : std::nullopt;
    if (number && amount) return amount;
    std::string comma = price.text;
    std::replace(comma.begin(), comma.end(), ',', '.');
    if (amount)
      values_.problem(path, as_written(price) + " is a text; write the number without quotes");
    else if (text && price_of(comma))
      values_.problem(path, as_written(price) + " has a decimal comma; write " + comma);
    else if (price.text.starts_with('-') && price_of(price.text.substr(1)))
      values_.problem(path, as_written(price) + " is negative; a price is 0 or more");
    else
      values_.wrong_type(price, path,
                         "a price; write a number under 10000000, with up to 4 decimals");
    return {};
  }

  void read_count(const Value& value, const std::string& path, StockItem& item) {
    if (const Value* count = value.find("count"))
      item.count = values_.whole_number(*count, child_path(path, "count"), 0, kMostOfOne);
    else if (value.find("price") == nullptr)
      item.count = 1;
    if (const Value* taken = value.find("taken"))
      item.taken =
          values_.whole_number(*taken, child_path(path, "taken"), 0, kMostOfOne).value_or(0);
  }

  void read_trim(const Value& value, const std::string& path, StockItem& item) {
    if (const Value* trim = value.find("end_trim"))
      item.end_trim = values_.length(*trim, child_path(path, "end_trim"), true);
    if (const Value* trim = value.find("edge_trim"))
      item.edge_trim = values_.length(*trim, child_path(path, "edge_trim"), true);
  }

  void check_trim(const std::string& path, const StockItem& item) {
    const Length ends = item.end_trim.value_or(file_.sawing.end_trim) * 2;
    const Length edges = item.edge_trim.value_or(file_.sawing.edge_trim) * 2;
    if (item.length > Length() && ends >= item.length)
      values_.problem(child_path(path, "length"),
                      "nothing is left of it when both ends are trimmed");
    if (item.width > Length() && edges >= item.width)
      values_.problem(child_path(path, "width"),
                      "nothing is left of it when both edges are trimmed");
  }

  void read_defects(const Value& value, const std::string& path, StockItem& item) {
    if (value.kind == Value::Kind::text) {
      std::string left = value.text;
      while (!left.empty()) {
        const std::size_t end = std::min(left.find(';'), left.size());
        const Value piece = part_of(value, left.substr(0, end));
        left.erase(0, end + 1);
        if (const auto range = range_of(piece))
          read_defect(range->first, range->second, path, item);
        else
          defect_is_no_range(piece, path);
      }
      return;
    }
    if (value.kind != Value::Kind::list) {
      defect_is_no_range(value, path);
      return;
    }
    for (std::size_t i = 0; i < value.list.size(); ++i) {
      const Value& each = value.list[i];
      const std::string at = child_path(path, i);
      if (each.kind == Value::Kind::list && each.list.size() == 2)
        read_defect(each.list[0], each.list[1], at, item);
      else
        defect_is_no_range(each, at);
    }
  }

  void defect_is_no_range(const Value& value, const std::string& path) {
    values_.wrong_type(value, path,
                       "a stretch of the length; write [[1200, 1350]], or \"1200..1350\" in CSV");
  }

  void read_defect(const Value& first, const Value& last, const std::string& path,
                   StockItem& item) {
    const auto from = values_.length(first, path, true);
    const auto to = values_.length(last, path, false);
    if (!from || !to) return;
    const std::string written = first.text + " to " + last.text;
    if (*from >= *to)
      values_.problem(path, written + ": a defect ends after it begins; write the lesser first");
    else if (item.length > Length() && *to > item.length)
      values_.problem(path, written + " ends outside the board, which is " +
                                in_words(item.length, file_.unit) + " long");
    else
      item.defects.push_back({*from, *to});
  }

  const Value& document_;
  std::optional<Unit> units_;
  ValueReader values_;
  StockFile file_;
  std::set<std::string> ids_;
  struct Lengths {
    Length to, step;
  };
  Lengths lengths_;  // of the board being read; 0 where it has one length
};

}  // namespace

lumber::Exact measure_of(const StockItem& item) {
  using lumber::Exact;
  using lumber::Wide;
  constexpr Wide kInch = Length::kStepsPerInch;
  constexpr Wide kMetre = Length::from_mm(1000).steps();
  constexpr Wide kBoardFoot = 144 * kInch * kInch * kInch;
  const Wide length = item.length.steps();
  const Wide both_widths = (item.width + item.widest.value_or(item.width)).steps();
  const Wide thickness = item.nominal.steps();
  switch (item.price->per) {
    case Per::board_foot:  // stock under 1 in. counts as 1 in., as the retail trade has it
      return Exact::of(length * both_widths * std::max(thickness, kInch), 2 * kBoardFoot);
    case Per::cubic_metre:
      return Exact::of(length * both_widths * thickness, 2 * kMetre * kMetre * kMetre);
    case Per::metre:
      return Exact::of(length, kMetre);
    case Per::square_metre:
      return Exact::of(length * both_widths, 2 * kMetre * kMetre);
    case Per::board:
      break;
  }
  return Exact::of(1);
}

lumber::Exact cost_of(const StockItem& item) {
  return item.price ? reckoned_cost(item).value() : lumber::Exact();
}

StockFile usual_stock_file(Unit unit) {
  const bool mm = unit == Unit::mm;
  const auto size = [&](std::int64_t thousandths, std::int64_t parts, std::int64_t of) {
    return mm ? Length::from_mm_thousandths(thousandths) : Length::from_inch_parts(parts, of);
  };
  StockFile file;
  file.unit = unit;
  Sawing& sawing = file.sawing;
  sawing.kerf = size(3200, 1, 8);
  sawing.offcut_length = size(300'000, 12, 1);
  sawing.offcut_width = size(50'000, 2, 1);
  sawing.allowances = lumber::usual_allowances(unit);
  sawing.strip_limit = lumber::usual_strips(unit).widest;
  sawing.jointing = lumber::usual_strips(unit).jointing;
  const char* middle = "from the middle of what handbooks print, which differ";
  file.assumed = {
      {"kerf", sawing.kerf, "a full-kerf table-saw blade, as saw references agree"},
      {"trim.end", sawing.end_trim, "nothing, where nothing is said: look at the ends"},
      {"trim.edge", sawing.edge_trim, "nothing, where nothing is said"},
      {"least_offcut.length", sawing.offcut_length, "our choice; what is less is not kept"},
      {"least_offcut.width", sawing.offcut_width, "our choice; what is less is not kept"},
      {"allowances.length", sawing.allowances.length, middle},
      {"allowances.width", sawing.allowances.width, middle},
      {"allowances.face", sawing.allowances.face,
       "for each planed face, of a furniture-making textbook"},
      {"glue_up.limit", sawing.strip_limit, "our choice, for flat-sawn strips of panels"},
      {"glue_up.jointing", sawing.jointing, "our choice, for each edge"},
      {"waste", std::string("30 % of what is bought"), "our choice, for the takings-off alone"},
  };
  return file;
}

StockReading read_stock(const Value& document, std::optional<Unit> units) {
  return StockReader(document, units).read();
}

}  // namespace haunch
