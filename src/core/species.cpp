#include "species.h"

#include <algorithm>
#include <array>
#include <set>

#include "document.h"
#include "species_data.h"

namespace haunch {
namespace {

/// A small letter for a capital, a space for a hyphen or a tab.
char folded(char character) {
  if (character == '-' || character == '\t') return ' ';
  const bool capital = character >= 'A' && character <= 'Z';
  return capital ? static_cast<char>(character - 'A' + 'a') : character;
}

/// The same of a name, and of runs of spaces one.
std::string folded(std::string_view name) {
  std::string out;
  for (const char each : name) {
    const char character = folded(each);
    if (character == ' ' && (out.empty() || out.back() == ' ')) continue;
    out += character;
  }
  if (out.ends_with(' ')) out.pop_back();
  return out;
}

std::string single_spaced(std::string_view text) {
  std::string out;
  for (const char character : text)
    if (character != ' ' || (!out.empty() && out.back() != ' ')) out += character;
  if (out.ends_with(' ')) out.pop_back();
  return out;
}

/// "Oak" within other words: "oak". Names of places and people stay great.
std::string in_a_sentence(std::string_view name) {
  constexpr std::string_view kGreat[] = {"Douglas", "Spanish", "Santos"};
  std::string text(name);
  const bool great = std::any_of(std::begin(kGreat), std::end(kGreat),
                                 [&](std::string_view it) { return name.starts_with(it); });
  if (!great && !text.empty()) text.front() = folded(text.front());
  return text;
}

/// "oak, white" as it is spoken: "white oak".
std::string spoken(const std::string& name) {
  const std::size_t comma = name.find(", ");
  if (comma == std::string::npos) return name;
  return name.substr(comma + 2) + " " + name.substr(0, comma);
}

/// One of the names by which a species goes; in two parts where it is turned round as it is
/// spoken.
struct NameForm {
  std::string_view first, second = {};

  std::string text() const {
    return second.empty() ? std::string(first) : std::string(first) + " " + std::string(second);
  }
  /// Whether it is the folded name `wanted`; its own spaces are single ones. Nothing is put
  /// together for that: a plan of lumber asks very often, of every species.
  bool is(std::string_view wanted) const {
    const auto folds_to = [](std::string_view part, std::string_view text) {
      return std::equal(part.begin(), part.end(), text.begin(), text.end(),
                        [](char own, char other) { return folded(own) == other; });
    };
    if (second.empty()) return folds_to(first, wanted);
    return wanted.size() == first.size() + 1 + second.size() && wanted[first.size()] == ' ' &&
           folds_to(first, wanted.substr(0, first.size())) &&
           folds_to(second, wanted.substr(first.size() + 1));
  }
};

std::array<NameForm, 3> forms_of(std::string_view name) {
  const std::string_view plain = name.substr(0, name.find(" ("));
  const std::size_t slash = plain.find(" / ");
  if (slash != std::string_view::npos)
    return {{{name}, {plain.substr(0, slash)}, {plain.substr(slash + 3)}}};
  const std::size_t comma = plain.find(", ");
  if (comma == std::string_view::npos) return {{{name}, {plain}, {plain}}};
  return {{{name}, {plain}, {plain.substr(comma + 2), plain.substr(0, comma)}}};
}

/// `name` with single spaces, `wanted` folded.
bool goes_by(std::string_view name, std::string_view wanted) {
  const std::array forms = forms_of(name);
  return std::any_of(forms.begin(), forms.end(),
                     [&](const NameForm& form) { return form.is(wanted); });
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

Species species_of(const SpeciesRow& row) {
  return {std::string(row.name), std::string(row.group), row.radial,
          row.tangential,        row.radial_shrinkage,   row.tangential_shrinkage,
          row.gravity_green,     row.gravity_12,         source_of(row)};
}

/// The row that goes by a folded name, or null. The table is searched from its start, as most runs
/// look nothing up and the others a few names.
const SpeciesRow* row_called(std::string_view wanted) {
  for (const SpeciesRow& row : species_rows())
    if (goes_by(row.name, wanted)) return &row;
  for (const SpeciesAlias& alias : species_aliases())
    if (NameForm{alias.alias}.is(wanted)) return row_called(folded(alias.name));
  return nullptr;
}

const SpeciesRow* look_up(std::string_view name) {
  const std::string wanted = folded(name);
  const SpeciesRow* row = row_called(wanted);
  const std::string as_spoken = spoken(wanted);
  return row == nullptr && as_spoken != wanted ? row_called(as_spoken) : row;
}

/// What was found last is kept: a job asks for its wood several times over.
const SpeciesRow* find_row(std::string_view name) {
  if (name.empty()) return nullptr;
  thread_local std::string last;
  thread_local const SpeciesRow* found = nullptr;
  if (name == last) return found;
  last.clear();  // should there be no memory for the name
  found = look_up(name);
  last = name;
  return found;
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

std::vector<Species> known_species() {
  std::vector<Species> all;
  for (const SpeciesRow& row : species_rows())
    all.push_back(species_of(row));
  return all;
}

std::optional<Species> find_species(std::string_view name) {
  const SpeciesRow* row = find_row(name);
  return row == nullptr ? std::nullopt : std::optional(species_of(*row));
}

std::string spelt(std::string_view name) {
  const SpeciesRow* row = find_row(name);
  if (row == nullptr) return single_spaced(name);
  const std::string wanted = folded(name);
  const std::array forms = forms_of(row->name);
  const NameForm& turned = forms.back();
  if (!turned.second.empty() && (turned.is(wanted) || turned.is(spoken(wanted))))
    return folded(turned.first).ends_with(folded(turned.second))  // "western redcedar"
               ? std::string(turned.first)
               : std::string(turned.first) + " " + in_a_sentence(turned.second);
  for (const NameForm& form : forms)
    if (turned.second.empty() && form.is(wanted)) return in_a_sentence(form.first);
  return single_spaced(name);
}

bool is_one_species(std::string_view a, std::string_view b) {
  const SpeciesRow* row = find_row(a);
  return row != nullptr && row == find_row(b);
}

const Species* find_own_species(std::string_view name, const std::vector<Species>& own) {
  const std::string wanted = folded(name);
  const std::string as_spoken = spoken(wanted);
  for (const Species& species : own) {
    const std::string its = folded(species.name);
    if (goes_by(its, wanted) || goes_by(its, as_spoken)) return &species;
  }
  return nullptr;
}

std::optional<Species> find_species(std::string_view name, const std::vector<Species>& own) {
  if (const Species* found = find_own_species(name, own)) return *found;
  return find_species(name);
}

std::vector<Species> search_species(std::string_view words) {
  return search_species(words, {});
}

std::vector<Species> search_species(std::string_view words, const std::vector<Species>& own) {
  const std::vector<std::string> wanted = words_of(words);
  std::vector<Species> found;
  for (const Species& species : own)
    if (has_all(folded(species.name), wanted)) found.push_back(species);
  const SpeciesRow* by_trade_name = find_row(words);
  for (const SpeciesRow& row : species_rows())
    if ((&row == by_trade_name || has_all(folded(row.name), wanted)) &&
        find_own_species(row.name, own) == nullptr)
      found.push_back(species_of(row));
  return found;
}

std::string nearest_species(std::string_view name) {
  std::set<std::string> known;
  for (const SpeciesRow& row : species_rows())
    for (const NameForm& form : forms_of(row.name))
      known.insert(folded(form.text()));
  for (const SpeciesAlias& alias : species_aliases())
    known.insert(folded(alias.alias));
  const std::string_view nearest = nearest_word(folded(name), {known.begin(), known.end()});
  if (!nearest.empty()) return std::string(row_called(nearest)->name);
  const std::vector<Species> found = search_species(name);
  return found.size() == 1 ? found.front().name : "";
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
