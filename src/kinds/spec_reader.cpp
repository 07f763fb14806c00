#include "spec_reader.h"

#include <algorithm>
#include <utility>

#include "day.h"
#include "extras.h"
#include "fittings_spec.h"
#include "listed_fittings.h"
#include "machine_spec.h"
#include "moulding_spec.h"
#include "season_spec.h"

namespace haunch {
namespace {

constexpr int kMostAcross = 1000;
constexpr int kMostPanels = 5'000;

/// Reads one object of keys, and the objects in it.
class KeyReader {
 public:
  KeyReader(ValueReader& read, const KeyScope& scope, Spec& spec)
      : read_(read), scope_(scope), spec_(spec) {}

  /// Whether each key that is read by a reader of its own has one, and each list what takes it.
  static constexpr bool has_all_readers();

  /// `prefix` is the dotted key before its entries' own, with its dot.
  void read_object(const Value& object, const std::string& prefix, const std::string& path) {
    for (const Entry& entry : object.entries) {
      const std::string name = name_of(entry.key, prefix);
      const std::string entry_path = child_path(path, entry.key);
      if (entry.key.find('.') != std::string::npos)
        read_.problem(
            entry_path,
            "unknown key; a key within another stands in its braces: " + std::string(scope_.within),
            entry.offset);
      else if (name != entry.key && object.find(name) != nullptr)
        read_.problem(entry_path, "is the same thing as \"" + name + "\"; keep one of the two",
                      entry.offset);
      else
        read_entry(entry, prefix + name, prefix, entry_path);
    }
    demand_members(object, prefix, path);
  }

 private:
  using ReadOwn = void (KeyReader::*)(const Value&, const std::string& path, Key);
  struct OwnReader {
    Key key;
    ReadOwn read;
  };
  static const OwnReader kOwnReaders[];

  bool is_shop() const { return scope_.of == kOfShop; }
  bool in_scope(const KeyRow& row) const { return (row.of & scope_.of) != 0; }

  /// A key's own name, where a muntin may be called a mullion.
  std::string name_of(const std::string& written, const std::string& prefix) const {
    std::string usual = muntin_name(written);
    return usual == written || key_of(prefix + written) ? written : usual;
  }

  /// A key as it is written here.
  std::string_view shown(Key key) const {
    std::string_view path = key.path();
    for (const std::string_view root : {scope_.root, scope_.other_root})
      if (!root.empty() && path.starts_with(root)) {
        path.remove_prefix(root.size());
        break;
      }
    return path;
  }

  std::optional<Key> key_of(std::string_view written) const {
    if (written.empty()) return {};
    // Most keys end otherwise; what they are called here need not be made out for that.
    for (const Key key : AllKeys())
      if (key.path().back() == written.back() && in_scope(key.row()) && !key.row().is_item() &&
          shown(key) == written)
        return key;
    return {};
  }

  void read_entry(const Entry& entry, const std::string& written, const std::string& prefix,
                  const std::string& path) {
    if (const std::string* message = where_else(written))
      return read_.problem(path, *message, entry.offset);
    const auto key = key_of(written);
    if (!key) return tell_of_unknown(entry, written, prefix, path);
    if (std::find(scope_.others.begin(), scope_.others.end(), *key) != scope_.others.end()) return;
    if (path.substr(path.rfind('/') + 1) != shown(*key).substr(prefix.size()))
      spec_.mullions.push_back(*key);
    read_value(*key, entry.value, path);
  }

  const std::string* where_else(std::string_view written) const {
    if (scope_.elsewhere == nullptr) return nullptr;
    for (const Elsewhere& it : *scope_.elsewhere)
      if (shown(it.key) == written) return &it.message;
    return nullptr;
  }

  void tell_of_unknown(const Entry& entry, const std::string& written, const std::string& prefix,
                       const std::string& path) {
    const bool other = std::any_of(kKeys.begin(), kKeys.end(), [&](const KeyRow& row) {
      return row.key == written && (is_shop() || row.of == kOfShop);
    });
    if (other)
      read_.problem(path,
                    is_shop() ? "belongs in a spec, not here; take it out"
                              : "belongs in a shop file, not here; take it out",
                    entry.offset);
    else
      read_.unknown_key(entry, path, names_after(prefix));
  }

  void read_value(Key key, const Value& value, const std::string& path) {
    const KeyRow& row = key.row();
    switch (row.holds) {
      case Holds::size:
      case Holds::size_or_zero:
        return take_size(key, read_.length(value, path, row.holds == Holds::size_or_zero));
      case Holds::count:
        return take_number(key, read_.whole_number(value, path, row.least, row.most));
      case Holds::word:
        return take_number(key, read_word(row, value, path));
      case Holds::flag:
        return take_flag(key, read_.flag(value, path), path);
      case Holds::text:
        return take_text(key, value, path);
      case Holds::object:
        return read_group(key, value, path);
      case Holds::list:
        return read_list(key, value, path);
      case Holds::own:
        return read_own(key, value, path);
    }
  }

  void take_size(Key key, std::optional<Length> size) {
    if (size) spec_.set(key, *size);
  }
  void take_number(Key key, std::optional<int> number) {
    if (number) spec_.set(key, *number);
  }
  void take_flag(Key key, std::optional<bool> flag, const std::string& path) {
    if (flag == true && !key.row().refused.empty())
      read_.problem(path, std::string(key.row().refused));
    take_number(key, flag);
  }
  void take_text(Key key, const Value& value, const std::string& path) {
    const auto text = read_.text(value, path);
    if (text && !text->empty()) spec_.set(key, *text);
    if (text && text->empty() && key == Key("id"))
      read_.problem(path, "an id must not be empty; leave it out to have one made");
  }

  /// The place among all of a choice's words of one that can be.
  std::optional<int> read_word(const KeyRow& row, const Value& value, const std::string& path) {
    return word_among(row.words, row.legal, value, path);
  }
  std::optional<int> word_among(Words words, std::uint32_t legal, const Value& value,
                                const std::string& path) {
    std::vector<std::string_view> some;
    std::vector<int> places;
    for (std::size_t i = 0; i < words.size(); ++i) {
      if ((legal >> i & 1U) == 0) continue;
      some.push_back(words[i]);
      places.push_back(static_cast<int>(i));
    }
    const auto place = read_.choice(value, path, some);
    return place ? std::optional(places[*place]) : std::nullopt;
  }

  // ---- keys with members

  std::vector<Key> members_of(Key group) const {
    std::vector<Key> members;
    for (const Key key : AllKeys())
      if (in_scope(key.row()) && key.is_below(group)) members.push_back(key);
    return members;
  }

  /// An object of them, or what may stand in its place.
  void read_group(Key key, const Value& value, const std::string& path) {
    const std::vector<Key> members = members_of(key);
    const std::string prefix = std::string(shown(key)) + ".";
    const Plain plain = key.row().plain;
    const bool is_object = value.kind == Value::Kind::object;
    const bool texts = plain == Plain::first && members.front().row().holds == Holds::text;
    if (texts && members.size() > 1 && !is_object && value.kind != Value::Kind::text)
      read_.wrong_type(value, path, text_or_object(key, members.front(), prefix));
    else if (plain == Plain::first && (members.size() == 1 || !is_object)) {
      read_value(members.front(), value, path);
    } else if (is_object) {
      spec_.set_stated(key);
      read_object(value, prefix, path);
      if (key.row().most == 1 && value.entries.size() != 1)
        read_.problem(path, std::string(key.row().refused));
    } else if (plain == Plain::nothing) {
      read_.wrong_type(value, path, wanted_of(key, prefix));
    } else if (members.front().row().holds == Holds::word) {
      spread_word(members, value, path);
    } else if (value.kind == Value::Kind::list) {
      read_.wrong_type(value, path,
                       "a length; write one for all, or an object with " +
                           quoted_list(names_after(prefix), "and"));
    } else if (const auto length =
                   read_.length(value, path, members.front().row().holds == Holds::size_or_zero)) {
      for (const Key member : members)
        spec_.set(member, *length);
    }
  }

  std::string text_or_object(Key key, Key first, const std::string& prefix) const {
    return "a text for its \"" + std::string(shown(first).substr(prefix.size())) + "\", or " +
           wanted_of(key, prefix);
  }

  std::string wanted_of(Key key, const std::string& prefix) const {
    if (!key.row().form.empty()) return "an object; " + std::string(key.row().form);
    return "an object; the keys in it are " + quoted_list(names_after(prefix), "and");
  }

  /// One word for all members that can take it.
  void spread_word(const std::vector<Key>& members, const Value& value, const std::string& path) {
    std::uint32_t legal = 0;
    for (const Key member : members)
      legal |= member.row().legal;
    const auto word = word_among(members.front().row().words, legal, value, path);
    for (const Key member : members)
      if (word && member.row().is_legal(static_cast<std::size_t>(*word))) spec_.set(member, *word);
  }

  /// The names that an object after `prefix` may have, each once.
  std::vector<std::string_view> names_after(const std::string& prefix) const {
    std::vector<std::string_view> names;
    for (const Key key : AllKeys()) {
      std::string_view name = shown(key);
      if (!in_scope(key.row()) || !name.starts_with(prefix) || where_else(name) != nullptr)
        continue;
      name.remove_prefix(prefix.size());
      name = name.substr(0, name.find_first_of(".["));
      if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
    std::erase(names, "$schema");
    return names;
  }

  /// What an item, or an object that it has, cannot be without.
  void demand_members(const Value& object, const std::string& prefix, const std::string& path) {
    if (is_shop() && prefix.empty()) return;
    for (const Key key : AllKeys()) {
      if (key.row().missing.empty() || !in_scope(key.row())) continue;
      const std::string_view whole = shown(key);
      if (!whole.starts_with(prefix)) continue;
      const std::string_view name = whole.substr(prefix.size());
      const bool asked = name.find('.') == std::string_view::npos && where_else(whole) == nullptr;
      const std::string_view instead = key.row().instead;
      const bool replaced = !instead.empty() && object.find(instead) != nullptr;
      if (asked && !replaced && object.find(name) == nullptr &&
          !read_.was_meant(child_path(path, name)))
        read_.problem(
            path, "\"" + std::string(name) + "\" is missing; " + std::string(key.row().missing));
    }
  }

  // ---- lists

  bool is_list(const KeyRow& row, const Value& value, const std::string& path) {
    const std::size_t size = value.list.size();
    if (value.kind != Value::Kind::list)
      read_.wrong_type(value, path, row.form);
    else if (std::cmp_greater_equal(size, row.least) && std::cmp_less_equal(size, row.most))
      return true;
    else if (!row.refused.empty())
      read_.problem(path, std::string(row.refused) + ", not " + std::to_string(size));
    else if (size == 0)
      read_.problem(path, "the list is empty; leave it out, or fill it");
    else if (std::cmp_less(size, row.least))
      read_.problem(path, "the list is too short, with " + std::to_string(size) +
                              "; write at least " + std::to_string(row.least));
    else
      read_.problem(path, "has " + std::to_string(size) + " members; write at most " +
                              std::to_string(row.most));
    return false;
  }

  /// A list that is written as the only item that it has.
  void read_only_item(Key key, const Value& value, const std::string& path) {
    Spec item;
    KeyReader(read_, scope_, item).read_value(key.item(), value, path);
    spec_.set_stated(key);
    spec_.edit(key).items = {std::move(item)};
  }

  /// Every item has values of its own, by the keys of items.
  void read_list(Key key, const Value& value, const std::string& path) {
    if (key.row().plain == Plain::first && value.kind != Value::Kind::list)
      return read_only_item(key, value, path);
    if (!is_list(key.row(), value, path)) return;
    std::vector<KeyValues> items;
    for (std::size_t i = 0; i < value.list.size(); ++i) {
      Spec item;
      KeyReader(read_, scope_, item).read_value(key.item(), value.list[i], child_path(path, i));
      items.push_back(std::move(item));
    }
    spec_.set_stated(key);
    spec_.edit(key).items = std::move(items);
    read_own(key, value, path);
  }

  void take_rails(const Value& value, const std::string& path, Key key);
  void take_cutters(const Value& value, const std::string& path, Key key);
  void take_one_setting(const Value& value, const std::string& path, Key key);
  /// They are needed no more once what they say is taken. Those of recesses stay: their fitting
  /// takes them.
  std::vector<KeyValues> items_of(Key list) { return std::exchange(spec_.edit(list).items, {}); }
  void take_hinges(const Value&, const std::string&, Key key) {
    spec_.hinge_places = hinge_places_of(items_of(key));
  }
  void take_fittings(const Value&, const std::string&, Key key) {
    spec_.fittings = fittings_of(items_of(key));
  }
  void take_machines(const Value& value, const std::string& path, Key key) {
    spec_.machines = machines_of(items_of(key));
    check_machines(read_, value, spec_.machines, path);
  }
  /// Its items stay: the job takes them.
  void take_extras(const Value& value, const std::string& path, Key key) {
    for (std::size_t i = 0; i < value.list.size(); ++i)
      check_extra(read_, value.list[i], spec_[key].items[i], child_path(path, i));
  }
  void take_hardware(const Value& value, const std::string& path, Key key) {
    spec_.listed = listed_of(items_of(key));
    check_listed(read_, value, spec_.listed, path);
  }
  /// Keys of a shop file, of which the list takes those of fittings.
  void read_fitting_cuts(const Value& value, const std::string& path, Key key) {
    if (!read_.is_object(value, path, std::string(key.row().form))) return;
    Spec said;
    KeyReader(read_, scope_, said).read_object(value, "", path);
    spec_.set_stated(key);
    spec_.edit(key).items = {std::move(said)};
  }
  void read_kilograms(const Value& value, const std::string& path, Key key) {
    constexpr double kLeast = 0.001, kMost = 10'000;
    if (const auto kg = read_.number(value, path, kLeast, kMost, "kilograms"))
      spec_.set_figure(key, *kg);
  }
  void read_money(const Value& value, const std::string& path, Key key) {
    constexpr double kMost = 1'000'000;
    if (const auto money = read_.number(value, path, 0, kMost, "an amount of money"))
      spec_.set_figure(key, *money);
  }
  void take_mouldings(const Value&, const std::string& path, Key key) {
    check_mouldings(read_, spec_[key].items, path);
  }
  /// A word of the table, or the name of a moulding of the shop's own.
  void read_profile(const Value& value, const std::string& path, Key key) {
    const auto text = read_.text(value, path);
    if (!text) return;
    const KeyRow& row = key.row();
    for (std::size_t word = 0; word < row.words.size(); ++word)
      if (row.is_legal(word) && row.words[word] == *text)
        return spec_.set(key, static_cast<int>(word));
    spec_.set(key, *text);
  }
  void take_recesses(const Value& value, const std::string& path, Key key) {
    for (std::size_t i = 0; i < value.list.size(); ++i)
      check_recess(read_, value.list[i], spec_[key].items[i], child_path(path, i));
  }

  // ---- what is no plain value

  void read_own(Key key, const Value& value, const std::string& path);
  void skip(const Value&, const std::string&, Key) {}
  void read_panels(const Value& value, const std::string& path, Key key);
  void read_across(const Value& value, const std::string& path, Key key);
  void read_tiers(const Value& value, const std::string& path, Key key);
  KeyValues read_tier(const Value& value, const std::string& path);
  void read_moisture(const Value& value, const std::string& path, Key key) {
    if (const auto percent = read_percent(read_, value, path)) spec_.set_figure(key, *percent);
  }
  /// Of a shelf, in kg, or what it carries.
  void read_load(const Value& value, const std::string& path, Key key) {
    if (value.kind == Value::Kind::text) {
      if (const auto word = read_.choice(value, path, kWords<Load>))
        spec_.set(key, std::string(kWords<Load>[*word]));
    } else if (const auto kg = read_.number(value, path, 0.1, 1000,
                                            R"(kilograms, or what it carries, such as "books")")) {
      spec_.set_figure(key, *kg);
    }
  }
  void read_minutes(const Value& value, const std::string& path, Key key) {
    constexpr double kMost = 10'000;
    if (const auto minutes = read_.number(value, path, 0, kMost, "minutes"))
      spec_.set_figure(key, *minutes);
  }
  void read_work(const Value& value, const std::string& path, Key key) {
    if (value.kind == Value::Kind::list && !is_shop()) {
      spec_.other_work = value;
    } else if ((scope_.of & (kOfDoor | kOfSet | kOfShop)) == 0) {
      read_.problem(path, as_written(value) + " is no list of work; ways of working are told of " +
                              "leaves, whose fits are forecast: \"kind\": \"door\" or \"doorset\"");
    } else if (const auto way = read_.choice(value, path, kWords<Work>)) {
      spec_.set(key, static_cast<int>(*way));
    }
  }
  void read_day(const Value& value, const std::string& path, Key key) {
    const auto text = read_.text(value, path);
    if (!text) return;
    if (day_of(*text))
      spec_.set(key, *text);
    else
      read_.problem(path, as_written(value) + " is no day; write year, month and day: 2031-05-17");
  }

  void read_woods_of(const Value& value, const std::string& path, Key key) {
    spec_.woods = read_woods(read_, value, path, scope_.of == kOfShop);
    spec_.set_stated(key);
  }

  ValueReader& read_;
  const KeyScope& scope_;
  Spec& spec_;
};

constexpr KeyReader::OwnReader KeyReader::kOwnReaders[] = {
    {"$schema", &KeyReader::skip},
    {"kind", &KeyReader::skip},   // read before its reader is chosen
    {"units", &KeyReader::skip},  // read before everything else
    {"due", &KeyReader::read_day},
    {"work", &KeyReader::read_work},
    {"moisture.low", &KeyReader::read_moisture},
    {"moisture.build", &KeyReader::read_moisture},
    {"moisture.high", &KeyReader::read_moisture},
    {"woods", &KeyReader::read_woods_of},
    {"panels", &KeyReader::read_panels},
    {"panel.tiers", &KeyReader::read_tiers},
    // What takes the items of a list.
    {"rail_widths", &KeyReader::take_rails},
    {"hinges.at", &KeyReader::take_hinges},
    {"fittings", &KeyReader::take_fittings},
    {"fittings[].cuts", &KeyReader::take_recesses},
    {"tolerance.one_setting", &KeyReader::take_one_setting},
    {"cutters", &KeyReader::take_cutters},
    {"machines", &KeyReader::take_machines},
    {"extras", &KeyReader::take_extras},
    {"extras[].edges", &KeyReader::skip},  // taken with their extra
    {"extras[].cuts", &KeyReader::skip},
    {"hardware", &KeyReader::take_hardware},
    {"hardware[].cuts", &KeyReader::read_fitting_cuts},
    {"hardware[].mass", &KeyReader::read_kilograms},
    {"hardware[].price", &KeyReader::read_money},
    {"hardware[].priced", &KeyReader::read_day},
    {"access.carry", &KeyReader::read_kilograms},
    {"edge.profile", &KeyReader::read_profile},
    {"mouldings", &KeyReader::take_mouldings},
    {"mouldings[].outline", &KeyReader::skip},  // taken with its moulding
    // Taken with their machine.
    {"machines[].does", &KeyReader::skip},
    {"machines[].cutters", &KeyReader::skip},
    {"machines[].holds", &KeyReader::skip},
    {"machines[].set_minutes", &KeyReader::read_minutes},
    {"machines[].piece_minutes", &KeyReader::read_minutes},
    {"machines[].metre_minutes", &KeyReader::read_minutes},
    {"layout_node.shelves.load", &KeyReader::read_load},
    // Read by readers of theirs.
    {"layout", &KeyReader::skip},
    {"layout_node.columns", &KeyReader::skip},
    {"layout_node.rows", &KeyReader::skip},
    {"fronts.door", &KeyReader::skip},
    // Taken when all of them are read.
    {"opening.widths", &KeyReader::skip},
    {"opening.heights", &KeyReader::skip},
    {"opening.diagonals", &KeyReader::skip},
    {"frame.wall_opening.widths", &KeyReader::skip},
    {"frame.wall_opening.heights", &KeyReader::skip},
    {"frame.wall_opening.diagonals", &KeyReader::skip},
    // What is said in it is read with the whole.
    {"case.end", &KeyReader::skip},
    {"case.back.leaf", &KeyReader::skip},
    {"fronts.drawer.sides.heights", &KeyReader::skip},
    {"fronts.drawer.runner.holes", &KeyReader::skip},
    {"run.wall.lengths", &KeyReader::skip},
    {"run.wall.at", &KeyReader::skip},
    {"run.floor.at", &KeyReader::skip},
    {"run.floor.rise", &KeyReader::skip},
    {"run.order", &KeyReader::skip},
    {"run.frames", &KeyReader::skip},
    {"run.frames[]", &KeyReader::skip},
    {"run.worktop.cutouts", &KeyReader::skip},
    // Its keys are names.
    {"run.lines", &KeyReader::skip},
};

constexpr bool KeyReader::has_all_readers() {
  return std::all_of(kKeys.begin(), kKeys.end(), [](const KeyRow& row) {
    return (row.holds != Holds::own && row.holds != Holds::list) ||
           std::any_of(std::begin(kOwnReaders), std::end(kOwnReaders), [&](const OwnReader& own) {
             return kKeys[own.key.number()].key == row.key;
           });
  });
}
static_assert(KeyReader::has_all_readers());

void KeyReader::read_own(Key key, const Value& value, const std::string& path) {
  for (const OwnReader& own : kOwnReaders)
    if (own.key == key) return (this->*own.read)(value, path, key);
}

constexpr SizeKey kRailLines[] = {"rail_widths[].top", "rail_widths[].centre",
                                  "rail_widths[].bottom"};  // in the order of RailLine

RailSpec rail_of(const KeyValues& item) {
  RailSpec rail{item.size("rail_widths[].width").value_or(Length()),
                item.text("rail_widths[].name"),
                {},
                {},
                !item["rail_widths[]"].stated};
  for (std::size_t line = 0; line < std::size(kRailLines); ++line)
    if (const auto height = item.size(kRailLines[line])) {
      rail.line = static_cast<RailLine>(line);
      rail.height = *height;
    }
  return rail;
}

/// Tells of the second line that an object places its rail by.
void check_rail_lines(ValueReader& read, const Value& rail, const std::string& path) {
  bool placed = false;
  for (const Entry& entry : rail.entries) {
    const Words lines = kWords<RailLine>;
    if (std::find(lines.begin(), lines.end(), entry.key) == lines.end()) continue;
    if (placed)
      read.problem(child_path(path, entry.key),
                   "a rail is placed by one line; keep one of \"top\", \"centre\" and \"bottom\"",
                   entry.offset);
    placed = true;
  }
}

void KeyReader::take_rails(const Value& value, const std::string& path, Key key) {
  const std::vector<KeyValues> items = items_of(key);
  spec_.rails.clear();
  for (std::size_t i = 0; i < items.size(); ++i) {
    const std::string rail_path = child_path(path, i);
    check_rail_lines(read_, value.list[i], rail_path);
    spec_.rails.push_back(rail_of(items[i]));
    const bool at_an_end = i == 0 || i + 1 == items.size();
    if (at_an_end && spec_.rails.back().line)
      read_.problem(rail_path, std::string(i == 0 ? "the top rail stands at the head"
                                                  : "the bottom rail stands at the foot") +
                                   " of the leaf; only rails between the two are placed");
  }
}

void KeyReader::read_panels(const Value& value, const std::string& path, Key key) {
  if (value.kind == Value::Kind::object) {
    for (const Entry& entry : value.entries) {
      if (entry.key == "across")
        read_across(entry.value, child_path(path, "across"), key);
      else
        read_.unknown_key(entry, child_path(path, entry.key), {"across"});
    }
    if (value.entries.empty())
      read_.problem(path, "\"across\" is missing; write a number, or {\"across\": …}");
  } else if (value.kind == Value::Kind::list) {
    read_.wrong_type(
        value, path,
        "a number of panels; for so many in each tier from the top write {\"across\": […]}");
  } else if (const auto count = read_.whole_number(value, path, 1, kMostPanels)) {
    spec_.panels = PanelCount{*count};
    spec_.set_stated(key);
  }
}

void KeyReader::read_across(const Value& value, const std::string& path, Key key) {
  PanelsAcross across;
  if (value.kind != Value::Kind::list) {
    if (const auto number = read_.whole_number(value, path, 1, kMostAcross))
      across.each = {*number};
  }
  for (std::size_t i = 0; i < value.list.size(); ++i)
    across.each.push_back(
        read_.whole_number(value.list[i], child_path(path, i), 1, kMostAcross).value_or(1));
  if (value.kind == Value::Kind::list && value.list.empty())
    read_.problem(path, "the list is empty; give the number of panels for each tier from the top");
  if (across.each.empty()) return;
  spec_.panels = std::move(across);
  spec_.set_stated(key);
}

void KeyReader::read_tiers(const Value& value, const std::string& path, Key key) {
  if (value.kind != Value::Kind::list) {
    read_.wrong_type(value, path,
                     "a list with the panels of each tier from the top, such as "
                     "[{\"raised\": \"front\"}, {}]");
    return;
  }
  if (value.list.empty())
    read_.problem(path, "the list is empty; give an object for each tier from the top");
  std::vector<KeyValues> tiers;
  for (std::size_t i = 0; i < value.list.size(); ++i)
    tiers.push_back(read_tier(value.list[i], child_path(path, i)));
  if (!tiers.empty()) spec_.set_stated(key);
  spec_.tiers = std::move(tiers);
}

/// A tier's panels have the keys of all panels.
KeyValues KeyReader::read_tier(const Value& value, const std::string& path) {
  if (value.kind != Value::Kind::object) {
    read_.wrong_type(value, path,
                     "an object; write {} for panels as in the other tiers, or what is otherwise");
    return {};
  }
  if (const Value* tiers = value.find("tiers"); tiers != nullptr) {
    read_.problem(child_path(path, "tiers"), "a tier has no tiers; take this out");
    return {};
  }
  Spec tier;
  KeyReader(read_, scope_, tier).read_object(value, "panel.", path);
  return tier;
}

void KeyReader::take_cutters(const Value&, const std::string&, Key key) {
  for (const KeyValues& item : items_of(key))
    if (const auto cutter = item.size("cutters[]")) spec_.cutters.push_back(*cutter);
  std::sort(spec_.cutters.begin(), spec_.cutters.end());
}

void KeyReader::take_one_setting(const Value& value, const std::string& path, Key key) {
  const std::vector<KeyValues> items = items_of(key);
  auto& all = spec_.one_setting;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const auto dimension = items[i].word<Dimension>("tolerance.one_setting[]");
    if (!dimension) continue;
    if (std::find(all.begin(), all.end(), *dimension) != all.end())
      read_.problem(child_path(path, i),
                    as_written(value.list[i]) + " stands here twice; keep one");
    all.push_back(*dimension);
  }
}

bool is_size_of_work(const Given& given) {
  return !given.key.starts_with("tolerance.") && !given.key.starts_with("fit.");
}

/// What a spec without units is in, as all its sizes carry their own; none where there are none.
std::optional<Unit> unit_of_sizes(const std::vector<Given>& given) {
  if (given.empty()) return {};
  const bool metric = std::any_of(given.begin(), given.end(), [](const Given& it) {
    return it.written.find_first_of("mM") != std::string::npos;
  });
  return metric ? Unit::mm : Unit::inch;
}

/// The units a document states for itself.
std::optional<Unit> read_units(ValueReader& read, const Value& document) {
  const Value* units = document.find("units");
  if (units == nullptr) return {};
  const auto word = read.choice(*units, "/units", kWords<Unit>);
  return word && *word == 1 ? Unit::inch : Unit::mm;
}

bool has_misspelt_units(const Value& document) {
  return std::any_of(document.entries.begin(), document.entries.end(), [](const Entry& entry) {
    return entry.key != "units" && !nearest_word(entry.key, {"units"}).empty();
  });
}

}  // namespace

std::vector<Elsewhere> elsewhere(std::string_view part, std::span<const SaidElsewhere> keys) {
  std::vector<Elsewhere> all;
  for (const auto& [key, instead] : keys)
    all.push_back({key, "does not belong to " + std::string(part) + ": " + std::string(instead) +
                            "; take it out"});
  return all;
}

void read_keys(ValueReader& read, const Value& object, const std::string& path,
               const KeyScope& scope, Spec& into) {
  KeyReader(read, scope, into).read_object(object, "", path);
}

SpecReading read_spec(const Value& document, const KeyScope& scope, std::optional<Unit> units) {
  SpecReading reading;
  Spec& spec = reading.spec;
  ValueReader unit_reader(units);
  const auto stated = read_units(unit_reader, document);
  spec.units = stated ? stated : units;
  spec.units_by_shop = !stated && units;
  reading.problems = unit_reader.take_problems();
  ValueReader read(spec.units);
  if (has_misspelt_units(document)) read.let_units_be();
  read_keys(read, document, "", scope, spec);
  reading.given = given_lengths(read.take_lengths());
  if (!spec.units && scope.of != kOfShop) {
    spec.units = unit_of_sizes(reading.given);
    spec.units_inferred = spec.units.has_value();
  }
  add(reading.problems, read.take_problems());
  return reading;
}

std::vector<Given> given_lengths(std::vector<ReadLength> lengths) {
  std::vector<Given> given;
  for (ReadLength& length : lengths) {
    std::string key = length.path.substr(1);
    std::replace(key.begin(), key.end(), '/', '.');
    given.push_back({std::move(key), std::move(length.written), length.length});
  }
  std::erase_if(given, [](const Given& it) { return !is_size_of_work(it); });
  return given;
}

}  // namespace haunch
