#include <algorithm>
#include <array>

#include "commands.h"
#include "complaints.h"
#include "csv_row.h"
#include "dotted_keys.h"
#include "formats.h"
#include "json_reader.h"
#include "schemas.h"
#include "shops.h"
#include "text_table.h"
#include "value_reader.h"

namespace haunch {
namespace {

constexpr std::array<std::string_view, 3> kFoundBy = {"named by --shop", "named by HAUNCH_SHOP",
                                                      "found beside the spec"};

/// What a shop file says of one key.
struct Setting {
  std::string key, value;
  TextPlace place;
};

std::vector<Setting> settings_of(const FoundShop& shop) {
  std::vector<Setting> settings;
  for (const Leaf& leaf : leaves_of(*shop.record.item))
    if (leaf.key != "$schema")
      settings.push_back(
          {leaf.key,
           leaf.value->kind == Value::Kind::text ? leaf.value->text : as_written(*leaf.value),
           place_in(shop.record.text->text, leaf.value->offset)});
  return settings;
}

std::string_view found_by(FoundBy by) {
  return kFoundBy.at(static_cast<std::size_t>(by));
}

struct ShopsTold {
  const Shops& shops;
};

}  // namespace

template <>
struct JsonObject<Setting> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<Setting> keys[] = {
      {"key", the<&Setting::key>},
      {"value", the<&Setting::value>},
      {"line", [](auto& it) { return it.place.line; }, R"("minimum": 1)"},
      {"column", [](auto& it) { return it.place.column; }, R"("minimum": 1)"}};
};

template <>
struct JsonObject<FoundShop> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<FoundShop> keys[] = {
      {"file", the<&FoundShop::file>},
      {"found", [](auto& it) { return Word<kFoundBy>(it.by); }},
      {"settings", [](auto& it) { return settings_of(it); }}};
};

template <>
struct JsonObject<ShopsTold> : JsonObjectDefaults {
  static constexpr JsonKey<ShopsTold> keys[] = {
      {among, [](auto&) { return DocumentHead<kSettingsFormat>(); }},
      {"shop_files", [](auto& it) { return it.shops.found(); }}};
};

namespace {

std::string place_words(const FoundShop& shop, const Setting& setting) {
  return shop.file + ":" + std::to_string(setting.place.line) + ":" +
         std::to_string(setting.place.column);
}

// ---- table

constexpr std::string_view kLayers =
    R"(The shop file is the one that --shop names, else the one that HAUNCH_SHOP names,
else for each spec the shop.json in its folder; "none" as a name takes none.
A spec's own value wins over the shop's, the shop's over the usual one.

)";

/// What there is to choose a shop file by, and what came of each.
std::string layers_text(const Invocation& invocation, const Shops& shops) {
  const std::string named = Shops::environment();
  std::string text(kLayers);
  text += "  --shop       " + (invocation.shop.empty() ? "not given" : invocation.shop) + "\n";
  text += "  HAUNCH_SHOP  " + (named.empty() ? "not set" : named) +
          (!named.empty() && !invocation.shop.empty() ? "   (--shop goes before it)" : "") + "\n";
  const bool looks = named.empty() && invocation.shop.empty();
  text += "  shop.json    ";
  if (!looks) return text + "not looked for\n";
  if (shops.found().empty()) return text + "none there\n";
  for (const FoundShop& each : shops.found())
    text += (&each == shops.found().data() ? "" : "               ") + each.file + "\n";
  return text;
}

std::string table_text(const Invocation& invocation, const Shops& shops) {
  std::string text = layers_text(invocation, shops);
  if (shops.found().empty())
    text += "\nNo shop file is in force: what a spec leaves out is as usual.\n";
  for (const FoundShop& shop : shops.found()) {
    TextTable table({"key", "value", "where"});
    for (const Setting& setting : settings_of(shop))
      table.add({setting.key, setting.value, place_words(shop, setting)});
    text += "\nIN FORCE: " + shop.file + ", " + std::string(found_by(shop.by)) + "\n" +
            table.text(LengthPrinter(Unit::mm, {}), 2);
  }
  return text;
}

// ---- JSON and CSV

std::string json_text(const Shops& shops) {
  std::string text;
  JsonText json(text, Unit::mm);
  write_json(json, ShopsTold{shops});
  return text + "\n";
}

std::string csv_text(const Shops& shops, CsvProfile profile) {
  std::string text(csv_start(profile));
  CsvRow head(text, Unit::mm, profile);
  for (const std::string_view title : {"file", "found", "key", "value", "line", "column"})
    head.plain(title);
  head.end();
  for (const FoundShop& shop : shops.found())
    for (const Setting& setting : settings_of(shop)) {
      CsvRow row(text, Unit::mm, profile);
      row.text(shop.file);
      row.plain(found_by(shop.by));
      row.text(setting.key);
      row.text(setting.value);
      row.count(static_cast<std::int64_t>(setting.place.line));
      row.count(static_cast<std::int64_t>(setting.place.column));
      row.end();
    }
  return text;
}

std::string text_of(const Invocation& invocation, const Shops& shops) {
  if (invocation.view.format == Format::json) return json_text(shops);
  if (invocation.view.format == Format::csv) return csv_text(shops, invocation.view.csv);
  return table_text(invocation, shops);
}

}  // namespace

std::string settings_schema() {
  constexpr std::string_view kHead = R"(
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "$id": "urn:haunch:settings-1",
    "title": "What 'haunch shop' says",
    "description": "The shop files that are in force, and what each says and where.")";
  return schema_document(kHead, object_schema<ShopsTold>(), {});
}

ExitStatus run_shop(const Invocation& invocation, const Streams& streams) {
  Complaints complaints(streams);
  SpecSource source(invocation.words, streams.in);
  if (!complaints.can_read(source)) return complaints.status();
  Invocation told = invocation;  // the page itself says which file it is
  told.quiet = true;
  Shops shops(told, streams);
  const std::vector<std::string> specs =
      invocation.words.empty() ? std::vector<std::string>{"-"} : source.files();
  if (!shops.take(specs, complaints)) return complaints.status();
  std::vector<std::string> inputs = shops.files();
  inputs.insert(inputs.end(), specs.begin(), specs.end());
  return write_result(text_of(invocation, shops), invocation, streams, inputs);
}

}  // namespace haunch
