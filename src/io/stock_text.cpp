#include "json_text.h"
#include "stock_file.h"

namespace haunch {
namespace {

void append_sizes(JsonText& json, const StockItem& item) {
  json.member("length", item.length);
  json.key("width");
  if (item.widest) {
    json.open_object();
    json.member("from", item.width);
    json.member("to", *item.widest);
    json.close_object();
  } else {
    json.number(item.width);
  }
  if (item.quarters.empty())
    json.member("thickness", item.thickness.thickness);
  else
    json.member("thickness", item.quarters);
  if (item.thickness.sheet) json.member("kind", "sheet");
  if (item.thickness.surfaced != item.thickness.sheet)
    json.member("surface", item.thickness.surfaced ? "surfaced" : "rough");
  if (!item.species.empty()) json.member("species", item.species);
}

void append_defects(JsonText& json, const std::vector<lumber::Defect>& defects) {
  if (defects.empty()) return;
  json.key("defects");
  json.open_list();
  for (const lumber::Defect& defect : defects) {
    json.open_list();
    json.number(defect.from);
    json.number(defect.to);
    json.close_list();
  }
  json.close_list();
}

void append_item(JsonText& json, const StockItem& item) {
  json.row();
  json.open_object();
  json.member("id", item.id);
  append_sizes(json, item);
  if (item.count) json.member("count", static_cast<std::int64_t>(*item.count));
  if (item.taken > 0) json.member("taken", static_cast<std::int64_t>(item.taken));
  if (item.price) {
    json.key("price");
    constexpr int kPlaces = 4;
    constexpr double kUnit = 10'000;
    json.number(static_cast<double>(item.price->ten_thousandths) / kUnit, kPlaces);
    json.member("per", per_word(item.price->per));
  }
  if (!item.grain) {
    json.key("grain");
    json.truth(false);
  }
  append_defects(json, item.defects);
  if (item.end_trim) json.member("end_trim", *item.end_trim);
  if (item.edge_trim) json.member("edge_trim", *item.edge_trim);
  json.close_object();
}

void append_pair(JsonText& json, std::string_view group, std::string_view first, Length one,
                 std::string_view second, Length two) {
  json.row();
  json.key(group);
  json.open_object();
  json.member(first, one);
  json.member(second, two);
  json.close_object();
}

void append_sawing(JsonText& json, const Sawing& sawing) {
  json.member("kerf", sawing.kerf);
  append_pair(json, "trim", "end", sawing.end_trim, "edge", sawing.edge_trim);
  append_pair(json, "least_offcut", "length", sawing.offcut_length, "width", sawing.offcut_width);
  json.row();
  json.key("allowances");
  json.open_object();
  json.member("length", sawing.allowances.length);
  json.member("width", sawing.allowances.width);
  json.member("face", sawing.allowances.face);
  json.close_object();
  append_pair(json, "glue_up", "limit", sawing.strip_limit, "jointing", sawing.jointing);
  json.row();
  json.key("waste");
  json.open_object();
  json.member("percent", static_cast<std::int64_t>(sawing.waste.percent));
  json.member("of", sawing.waste.of_bought ? "bought" : "needed");
  json.close_object();
  json.key("match");
  json.truth(sawing.match);
}

}  // namespace

std::string stock_text(const StockFile& file) {
  std::string out;
  JsonText json(out, file.unit);
  json.open_object();
  json.member("units", unit_word(file.unit));
  if (!file.currency.empty()) json.member("currency", file.currency);
  append_sawing(json, file.sawing);
  json.row();
  json.key("stock");
  json.open_list();
  for (const StockItem& item : file.items)
    append_item(json, item);
  json.close_list();
  json.close_object();
  return out + "\n";
}

}  // namespace haunch
