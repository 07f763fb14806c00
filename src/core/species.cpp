#include "species.h"

#include <algorithm>
#include <map>

#include "document.h"
#include "species_data.h"

namespace haunch {
namespace {

/// Small letters, hyphens and runs of spaces as one space.
std::string folded(std::string_view name) {
  std::string out;
  for (char character : name) {
    if (character == '-' || character == '\t') character = ' ';
    if (character == ' ' && (out.empty() || out.back() == ' ')) continue;
    const bool capital = character >= 'A' && character <= 'Z';
    out += capital ? static_cast<char>(character - 'A' + 'a') : character;
  }
  if (out.ends_with(' ')) out.pop_back();
  return out;
}

/// "oak, white" as it is spoken: "white oak".
std::string spoken(const std::string& name) {
  const std::size_t comma = name.find(", ");
  if (comma == std::string::npos) return name;
  return name.substr(comma + 2) + " " + name.substr(0, comma);
}

/// The names by which a species of the table goes, folded.
std::vector<std::string> names_of(const std::string& name) {
  const std::string whole = folded(name);
  const std::string plain = whole.substr(0, whole.find(" ("));
  const std::size_t slash = plain.find(" / ");
  if (slash != std::string::npos) return {whole, plain.substr(0, slash), plain.substr(slash + 3)};
  return {whole, plain, spoken(plain)};
}

std::string source_of(const SpeciesRow& row) {
  std::string source;
  const auto add = [&source](std::string_view head, std::string_view text) {
    if (text.empty()) return;
    if (!source.empty()) source += "; ";
    source += std::string(head) + ": " + std::string(text);
  };
  add("coefficients", row.coefficients_from);
  add("shrinkage", row.shrinkage_from);
  add("specific gravity", row.gravity_from);
  add("note", row.note);
  return source;
}

std::vector<Species> species_of_rows() {
  std::vector<Species> all;
  for (const SpeciesRow& row : species_rows())
    all.push_back({std::string(row.name), std::string(row.group), row.radial, row.tangential,
                   row.radial_shrinkage, row.tangential_shrinkage, row.gravity_green,
                   row.gravity_12, source_of(row)});
  return all;
}

using SpeciesIndex = std::map<std::string, const Species*, std::less<>>;

SpeciesIndex index_of_names() {
  SpeciesIndex index;
  for (const Species& species : known_species())
    for (std::string& name : names_of(species.name))
      index.emplace(std::move(name), &species);
  for (const SpeciesAlias& alias : species_aliases())
    index.emplace(folded(alias.alias), index.at(folded(alias.name)));
  return index;
}

const SpeciesIndex& species_index() {
  static const SpeciesIndex kIndex = index_of_names();
  return kIndex;
}

std::vector<std::string> words_of(std::string_view text) {
  std::string left = folded(text);
  std::replace(left.begin(), left.end(), ',', ' ');
  std::vector<std::string> words;
  for (std::size_t at = 0; at < left.size();) {
    const std::size_t end = std::min(left.find(' ', at), left.size());
    if (end > at) words.push_back(left.substr(at, end - at));
    at = end + 1;
  }
  return words;
}

bool has_all(const std::string& name, const std::vector<std::string>& words) {
  return std::all_of(words.begin(), words.end(), [&name](const std::string& word) {
    return name.find(word) != std::string::npos;
  });
}

}  // namespace

const std::vector<Species>& known_species() {
  static const std::vector<Species> kSpecies = species_of_rows();
  return kSpecies;
}

const Species* find_species(std::string_view name) {
  const SpeciesIndex& index = species_index();
  const std::string wanted = folded(name);
  auto found = index.find(wanted);
  if (found == index.end()) found = index.find(spoken(wanted));
  return found == index.end() ? nullptr : found->second;
}

const Species* find_species(std::string_view name, const std::vector<Species>& own) {
  const std::string wanted = folded(name);
  for (const Species& species : own) {
    const std::vector<std::string> names = names_of(species.name);
    if (std::find(names.begin(), names.end(), wanted) != names.end() ||
        std::find(names.begin(), names.end(), spoken(wanted)) != names.end())
      return &species;
  }
  return find_species(name);
}

std::vector<const Species*> search_species(std::string_view words) {
  const std::vector<std::string> wanted = words_of(words);
  const Species* by_trade_name = find_species(words);
  std::vector<const Species*> found;
  for (const Species& species : known_species())
    if (&species == by_trade_name || has_all(folded(species.name), wanted))
      found.push_back(&species);
  return found;
}

std::vector<const Species*> search_species(std::string_view words,
                                           const std::vector<Species>& own) {
  const std::vector<std::string> wanted = words_of(words);
  std::vector<const Species*> found;
  for (const Species& species : own)
    if (has_all(folded(species.name), wanted)) found.push_back(&species);
  for (const Species* species : search_species(words))
    if (find_species(species->name, own) == species) found.push_back(species);
  return found;
}

std::string nearest_species(std::string_view name) {
  std::vector<std::string_view> names;
  for (const auto& [known, species] : species_index())
    names.emplace_back(known);
  const std::string_view nearest = nearest_word(folded(name), names);
  if (!nearest.empty()) return species_index().find(nearest)->second->name;
  const std::vector<const Species*> found = search_species(name);
  return found.size() == 1 ? found.front()->name : "";
}

std::optional<Coefficient> coefficient_of(const Species& species, Direction direction) {
  const bool radial = direction == Direction::radial;
  if (const auto printed = radial ? species.radial : species.tangential)
    return Coefficient{*printed, false};
  const auto shrinkage = radial ? species.radial_shrinkage : species.tangential_shrinkage;
  if (!shrinkage) return {};
  return Coefficient{*shrinkage / (3000 - 20 * *shrinkage), true};
}

std::optional<Coefficients> coefficients_of(const Species& species) {
  const auto radial = coefficient_of(species, Direction::radial);
  const auto tangential = coefficient_of(species, Direction::tangential);
  if (!radial || !tangential) return {};
  return Coefficients{radial->per_percent, tangential->per_percent,
                      radial->derived || tangential->derived};
}

}  // namespace haunch
