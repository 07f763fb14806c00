#include <fmt/core.h>

#include <array>

#include "commands.h"
#include "complaints.h"
#include "csv_row.h"
#include "formats.h"
#include "report.h"
#include "schemas.h"
#include "shops.h"
#include "species.h"
#include "text_table.h"

namespace haunch {
namespace {

using Found = std::vector<Species>;

struct SpeciesTold {
  const Found& found;
};

constexpr int kCoefficientPlaces = 5;  // as they are printed

/// A decimal without trailing zeros; nothing for no figure.
std::string figure(const std::optional<double>& value, int places) {
  if (!value) return "";
  std::string text = fmt::format("{:.{}f}", *value, places);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.ends_with('.')) text.pop_back();
  return text;
}

std::string coefficient_figure(const Species& species, Direction direction) {
  const auto coefficient = coefficient_of(species, direction);
  return coefficient ? figure(coefficient->per_percent, kCoefficientPlaces) : "";
}

bool is_derived(const Species& species, Direction direction) {
  const auto coefficient = coefficient_of(species, direction);
  return coefficient && coefficient->derived;
}

/// The directions whose coefficient is worked out from the shrinkage.
std::vector<std::string> derived_directions(const Species& species) {
  std::vector<std::string> words;
  if (is_derived(species, Direction::radial)) words.emplace_back("radial");
  if (is_derived(species, Direction::tangential)) words.emplace_back("tangential");
  return words;
}

/// The figures in the order of CSV.
std::array<std::pair<std::string_view, std::string>, 6> figures_of(const Species& species) {
  return {{{"radial", coefficient_figure(species, Direction::radial)},
           {"tangential", coefficient_figure(species, Direction::tangential)},
           {"radial_shrinkage", figure(species.radial_shrinkage, 2)},
           {"tangential_shrinkage", figure(species.tangential_shrinkage, 2)},
           {"gravity_green", figure(species.gravity_green, 3)},
           {"gravity_12", figure(species.gravity_12, 3)}}};
}

OrNull<Written> written(const std::string& figure) {
  if (figure.empty()) return {};
  return {Written{figure}};
}

}  // namespace

template <>
struct JsonObject<Species> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<Species> keys[] = {
      {"name", the<&Species::name>},
      {"group", the<&Species::group>, R"({"enum": ["hardwood", "softwood", "tropical", "shop"]})"},
      {"radial", [](auto& it) { return written(coefficient_figure(it, Direction::radial)); }},
      {"tangential",
       [](auto& it) { return written(coefficient_figure(it, Direction::tangential)); }},
      {"radial_shrinkage", [](auto& it) { return written(figure(it.radial_shrinkage, 2)); }},
      {"tangential_shrinkage",
       [](auto& it) { return written(figure(it.tangential_shrinkage, 2)); }},
      {"gravity_green", [](auto& it) { return written(figure(it.gravity_green, 3)); }},
      {"gravity_12", [](auto& it) { return written(figure(it.gravity_12, 3)); }},
      {"derived", [](auto& it) { return derived_directions(it); }},
      {"source", the<&Species::source>}};
};

template <>
struct JsonObject<SpeciesTold> : JsonObjectDefaults {
  static constexpr JsonKey<SpeciesTold> keys[] = {
      {among, [](auto&) { return DocumentHead<kSpeciesFormat>(); }},
      {"species", [](auto& it) -> const Found& { return it.found; }}};
};

namespace {

// ---- table

constexpr std::string_view kTableHead =
    "Movement across the grain for each 1 % of moisture, radial (quarter-sawn) and\n"
    "tangential (flat-sawn): 0.002 is 0.2 mm in 100 mm. A * is worked out from the\n"
    "shrinkage. Shrinkage: green to oven-dry, radial/tangential, in percent.\n"
    "SG: specific gravity at 12 % moisture. What is blank is not known.\n";

std::string starred(const Species& species, Direction direction) {
  return coefficient_figure(species, direction) + (is_derived(species, direction) ? "*" : "");
}

/// With so many decimals, that columns line up; nothing for no figure.
std::string lined_up(const std::optional<double>& value, int places) {
  return value ? fmt::format("{:.{}f}", *value, places) : "";
}

std::string shrinkages(const Species& species) {
  if (!species.radial_shrinkage && !species.tangential_shrinkage) return "";
  return lined_up(species.radial_shrinkage, 1) + "/" + lined_up(species.tangential_shrinkage, 1);
}

std::string group_table(const Found& found, std::string_view group) {
  TextTable table({std::string(group), "radial", "tangential", "shrinkage", "SG"});
  for (const Species& species : found)
    if (species.group == group)
      table.add({species.name, starred(species, Direction::radial),
                 starred(species, Direction::tangential), shrinkages(species),
                 lined_up(species.gravity_12, 2)});
  if (table.empty()) return "";
  return "\n" + table.text(LengthPrinter(Unit::mm, {}), 0);
}

std::string table_text(const Found& found, bool with_sources) {
  std::string text(kTableHead);
  for (const std::string_view group : {"shop", "hardwood", "softwood", "tropical"})
    text += group_table(found, group);
  if (!with_sources) return text + "\n'haunch species NAME' tells where the figures come from.\n";
  for (const Species& species : found)
    text += "\n" + wrapped(species.name + ": " + species.source, kPageWidth, 2) + "\n";
  return text;
}

// ---- JSON and CSV

std::string json_text(const Found& found) {
  std::string text;
  JsonText json(text, Unit::mm);
  write_json(json, SpeciesTold{found});
  return text + "\n";
}

std::string csv_text(const Found& found, CsvProfile profile) {
  std::string text(csv_start(profile));
  CsvRow head(text, Unit::mm, profile);
  for (const std::string_view title : {"name", "group"})
    head.plain(title);
  for (const auto& [key, value] : figures_of(Species{}))
    head.plain(key);
  for (const std::string_view title : {"derived", "source"})
    head.plain(title);
  head.end();
  for (const Species& species : found) {
    CsvRow row(text, Unit::mm, profile);
    row.plain(species.name);
    row.plain(species.group);
    for (const auto& [key, value] : figures_of(species))
      row.number(value);
    row.plain(joined(derived_directions(species)));
    row.plain(species.source);
    row.end();
  }
  return text;
}

std::string text_of(const Found& found, const Invocation& invocation) {
  if (invocation.view.format == Format::json) return json_text(found);
  if (invocation.view.format == Format::csv) return csv_text(found, invocation.view.csv);
  return table_text(found, !invocation.words.empty());
}

}  // namespace

std::string species_schema() {
  constexpr std::string_view kHead = R"(
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "$id": "urn:haunch:species-1",
    "title": "What 'haunch species' says",
    "description": "Movement across the grain as a ratio for each 1 % of moisture, shrinkage green to oven-dry in percent, specific gravity; null where it is not known.")";
  return schema_document(kHead, object_schema<SpeciesTold>(), {});
}

ExitStatus run_species(const Invocation& invocation, const Streams& streams) {
  const std::string name = joined(invocation.words);
  Complaints complaints(streams);
  Shops shops(invocation, streams);
  if (!shops.take({"-"}, complaints)) return complaints.status();
  const ShopDefaults* shop = shops.of("-");
  const std::vector<Species> own = shop != nullptr ? shop->spec.woods : std::vector<Species>();
  const Found found = search_species(name, own);
  if (!found.empty())
    return write_result(text_of(found, invocation), invocation, streams, shops.files());
  const std::string nearest = nearest_species(name);
  return complaints.refuse("species: \"" + name + "\" is not known; " +
                           (nearest.empty() ? "'haunch species' lists those that are"
                                            : "did you mean \"" + nearest + "\"?"));
}

}  // namespace haunch
