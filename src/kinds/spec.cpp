#include "spec.h"

#include <algorithm>
#include <stdexcept>

#include "listed_fittings.h"

namespace haunch {
namespace {

const KeyValue kNothing;

bool is_of_panels(Key key) {
  return key.is_below("panel");
}

/// Which of a panel's faces are worked: one word for that stands for all of them.
constexpr Key kFaces[] = {"panel.rebate", "panel.raised", "panel.flush"};

bool is_face(Key key) {
  return std::find(std::begin(kFaces), std::end(kFaces), key) != std::end(kFaces);
}

bool says_face(const KeyValues& panel) {
  return std::any_of(std::begin(kFaces), std::end(kFaces),
                     [&](Key face) { return panel[face].stated; });
}

/// Fills what is not said of a panel from what is said of others; of another kind they say nothing
/// of it.
void fill_panel(KeyValues& panel, const KeyValues& from, bool by_shop) {
  if (panel["panel.kind"].stated && panel_kind(panel) != panel_kind(from)) return;
  const bool has_face = says_face(panel);
  for (const auto& [key, value] : from.all()) {
    if (!is_of_panels(key) || panel[key].stated || (has_face && is_face(key))) continue;
    KeyValue& its = panel.edit(key) = value;
    its.by_shop = by_shop || value.by_shop;
  }
}

/// What a shop says of edges of one kind is not of another's.
void forget_shops_edge(KeyValues& spec) {
  for (const Key key : std::initializer_list<Key>{"edge.width", "edge.depth", "edge.fillet",
                                                  "edge.profile", "edge.faces"})
    if (spec[key].by_shop) spec.forget(key);
}

/// Whether the shop's value is taken where the spec has none. Of species it is all or nothing.
bool is_open(const KeyValues& spec, Key key, bool names_species) {
  if (key == Key("species") || key.is_below("species")) return !names_species;
  return !is_of_panels(key) && !spec[key].stated;
}

void take_lists(Spec& spec, const Spec& shop) {
  const auto take = [&](Key key, auto Spec::*list) {
    if (!spec[key].stated && shop[key].stated) spec.*list = shop.*list;
  };
  take("rail_widths", &Spec::rails);
  take("panels", &Spec::panels);
  take("hinges.at", &Spec::hinge_places);
  take("fittings", &Spec::fittings);
  take("tolerance.one_setting", &Spec::one_setting);
  if (spec.cutters.empty()) spec.cutters = shop.cutters;
  spec.woods.insert(spec.woods.end(), shop.woods.begin(), shop.woods.end());
}

}  // namespace

const KeyValue& KeyValues::operator[](Key key) const {
  const auto found = values_.find(key);
  return found == values_.end() ? kNothing : found->second;
}

std::optional<int> KeyValues::count(Key key) const {
  const KeyValue& its = (*this)[key];
  return its.stated ? std::optional(its.number) : std::nullopt;
}

SaidBy KeyValues::said_by(Key key) const {
  SaidBy source = SaidBy::nobody;
  for (const auto& [its, value] : values_)
    if (value.stated && (its == key || its.is_below(key)))
      source = std::max(source, value.by_shop ? SaidBy::shop : SaidBy::spec);
  return source;
}

namespace {

void fill(Spec& spec, const Spec& from, Owners of, bool by_shop) {
  take_lists(spec, from);
  const bool names_species = spec.speaks_of("species");
  for (const auto& [key, value] : from.all()) {
    if ((key.row().of & of) == 0 || !value.stated || !is_open(spec, key, names_species)) continue;
    KeyValue& its = spec.edit(key) = value;
    its.by_shop = by_shop || value.by_shop;
  }
  if ((of & (kOfDoor | kOfShop)) != 0) fill_panel(spec, from, by_shop);
}

}  // namespace

void overlay(Spec& spec, const Spec& shop, Owners of) {
  // What the spec names by itself goes before what the shop says of all such fittings; what the
  // shop names goes after.
  if (of == kOfShop)
    spec.listed = shop.listed;
  else
    take_listed(spec, shop.listed);
  fill(spec, shop, of, true);
  if (of != kOfShop) take_listed(spec, shop.listed);
  if ((of & (kOfDoor | kOfShop)) == 0) return;
  const auto edge = shop.word<EdgeKind>("edge.kind");
  if (edge && spec.word<EdgeKind>("edge.kind") != edge) forget_shops_edge(spec);
}

void take_open(Spec& spec, const Spec& of_all, Owners of) {
  fill(spec, of_all, of, false);
}

void set_size(KeyValues& values, std::string_view path, Length value) {
  const auto key = find_key(path);
  if (!key) throw std::logic_error("no key of that lever: " + std::string(path));
  for (const Key each : AllKeys())
    if (each.row().is_size() && (each == *key || each.is_below(*key))) values.set(each, value);
}

OfRoles<std::string> species_of(const KeyValues& spec) {
  OfRoles<std::string> species;
  species.all = spec.text("species.frame");
  for (const RoleKeys& role : kRoles)
    if (spec[role.species].stated) species.own[std::string(role.role)] = spec.text(role.species);
  return species;
}

KeyValues panels_of_tier(const Spec& spec, std::size_t tier) {
  KeyValues panel = spec.tiers.at(tier);
  fill_panel(panel, spec, false);
  return panel;
}

void set_panels(KeyValues& spec, const KeyValues& panels) {
  for (const Key key : AllKeys())
    if (is_of_panels(key)) spec.forget(key);
  for (const auto& [key, value] : panels.all())
    if (is_of_panels(key)) spec.edit(key) = value;
}

}  // namespace haunch
