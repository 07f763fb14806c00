// What is told of a change is all of it: over random specs, nothing is told where nothing changes,
// back is the mirror of there, and what is told makes the new work of the old one.
#include <algorithm>
#include <map>

#include "catch.h"
#include "comparison.h"
#include "frame_draw.h"
#include "json_reader.h"
#include "property_runs.h"
#include "random_cabinet.h"

namespace haunch::test {
namespace {

std::optional<ItemReport> report_of(const std::string& spec) {
  Reading reading = read_json(spec);
  if (!reading.value) return {};
  JobReading job = read_job(*reading.value, nullptr, "item");
  if (!job.job) return {};
  return std::move(report_item(std::move(job.job), kCompared).report);
}

// ---- there and back

std::string figure(const std::optional<Length>& length) {
  return length ? decimal(*length, Unit::mm) : "none";
}

/// Changes in lines; of those that are told backwards, as if they were told forwards.
class Lines {
 public:
  explicit Lines(bool backwards) : backwards_(backwards) {}

  void add(const std::string& of, const Changes& changes) {
    for (const FigureChange& it : changes.figures)
      add(of + " " + std::string(it.what), figure(it.was), figure(it.is));
    for (const WordChange& it : changes.words)
      add(of + " " + std::string(it.what), it.was, it.is);
  }
  void add(const std::string& of, std::string was, std::string is) {
    if (backwards_) std::swap(was, is);
    lines_.push_back(of + ": " + was + " to " + is);
  }
  std::vector<std::string> sorted() {
    std::sort(lines_.begin(), lines_.end());
    return lines_;
  }

 private:
  bool backwards_;
  std::vector<std::string> lines_;
};

std::string there(bool is) {
  return is ? "there" : "none";
}

std::string words_of(const Operation& setting) {
  std::string words = std::string(word_of(setting.makes)) + " " + std::string(word_of(setting.cut));
  for (const NamedSize& size : setting.settings)
    words += " " + decimal(size.size, Unit::mm);
  return words;
}

std::vector<std::string> lines_of(const ItemComparison& item, bool backwards) {
  Lines lines(backwards);
  lines.add("whole", item.whole);
  for (const PieceChange& it : item.changed_pieces) {
    lines.add("piece " + it.key, it.cut);
    lines.add("piece " + it.key, there(it.was.has_value()), there(it.is.has_value()));
  }
  for (const MarkChange& it : item.marks)
    lines.add("mark " + it.key, it.was, it.is);
  for (const PlaceChange& it : item.making.changed_places) {
    const std::string of = "place " + it.any().piece + " for " + it.any().for_key;
    lines.add(of, it.place);
    lines.add(of, it.setting);
    lines.add(of, there(it.was.has_value()), there(it.is.has_value()));
  }
  for (const SettingChange& it : item.making.changed_settings) {
    lines.add("setting", it.setting);
    lines.add("setting", it.was ? words_of(*it.was) : "none", it.is ? words_of(*it.is) : "none");
  }
  for (const JointChange& it : item.changed_joints)
    lines.add("joint", it.was ? it.was->id : "none", it.is ? it.is->id : "none");
  for (const CheckChange& it : item.changed_checks)
    lines.add(std::string(it.any().finding.rule->check), it.was ? it.was->marks : "none",
              it.is ? it.is->marks : "none");
  for (const NumberChange& it : item.changed_hardware)
    lines.add(it.what, std::to_string(it.was), std::to_string(it.is));
  return lines.sorted();
}

std::vector<std::string> lines_of(const SetupsChange& change, bool backwards) {
  Lines lines(backwards);
  const auto side = [](const std::optional<SetupTold>& told) {
    std::string words = told ? told->machine : "none";
    if (told)
      for (const NamedSize& size : told->settings)
        words += " " + decimal(size.size, Unit::mm);
    return words;
  };
  for (const SetupChange& it : change.changed) {
    lines.add(it.operation, it.changes);
    lines.add(it.operation, side(it.was), side(it.is));
  }
  return lines.sorted();
}

// ---- all is told

/// The figure of a row that goes by this name in changes.
Length* figure_of(CutRow& row, std::string_view what) {
  if (what == "length") return &row.length;
  if (what == "saw_length") return &row.saw_length;
  if (what == "width") return &row.width;
  if (what == "saw_width") return &row.saw_width;
  return what == "thickness" ? &row.thickness : nullptr;
}

using Cuts = std::map<std::string, CutRow>;

Cuts cuts_of(const ItemReport& report) {
  Cuts cuts;
  for (const Piece& piece : report.wood.pieces)
    cuts.emplace(key_of(report.wood, piece), cut_row_of(piece, *report.job));
  return cuts;
}

/// The old cut list with what is told.
Cuts changed(Cuts cuts, const ItemComparison& item) {
  for (const PieceChange& piece : item.changed_pieces) {
    if (!piece.is) {
      cuts.erase(piece.key);
      continue;
    }
    if (!piece.was) cuts.emplace(piece.key, *piece.is);
    CutRow& row = cuts.at(piece.key);
    for (const FigureChange& change : piece.cut.figures)
      if (Length* its = figure_of(row, change.what)) *its += *change.by();
    for (const WordChange& change : piece.cut.words)
      if (change.what == "material") row.material = change.is;
  }
  return cuts;
}

std::string wrong_cuts(const ItemReport& was, const ItemReport& is, const ItemComparison& item) {
  std::string wrong;
  const Cuts told = changed(cuts_of(was), item);
  Cuts made = cuts_of(is);
  if (told.size() != made.size()) wrong += "not all pieces that come and go are told\n";
  for (auto [key, row] : told) {
    const auto its = made.find(key);
    if (its == made.end()) {
      wrong += key + " is told and not there\n";
      continue;
    }
    for (const std::string_view what : {"length", "saw_length", "width", "saw_width", "thickness"})
      if (!same_size(*figure_of(row, what), *figure_of(its->second, what)))
        wrong += key + " is not as " + std::string(what) + " is told\n";
    if (row.material != its->second.material) wrong += key + " is of other wood\n";
  }
  return wrong;
}

/// Wood that is taken from a piece, whatever it is called.
std::string shape_of(const Piece& piece) {
  std::vector<std::string> all;
  for (const Feature& feature : piece.features) {
    std::string text(word_of(feature.kind));
    for (const Box& cut : feature.cuts)
      for (const Triple& corner : {cut.low, cut.high})
        for (const Length length : corner)
          text += " " + decimal(length, Unit::mm);
    for (const Prism& prism : feature.prisms)
      for (const Corner& corner : prism.outline)
        text += " " + decimal(corner.u, Unit::mm) + " " + decimal(corner.v, Unit::mm);
    all.push_back(text);
  }
  std::sort(all.begin(), all.end());
  std::string text;
  for (const std::string& each : all)
    text += each + "\n";
  return text;
}

/// What is not told to change has the same cuts; sizes within the least that is told of leave some
/// difference.
std::string wrong_shapes(const ItemReport& was, const ItemReport& is, const ItemComparison& item) {
  std::map<std::string, const Piece*> before;
  for (const Piece& piece : was.wood.pieces)
    before[key_of(was.wood, piece)] = &piece;
  std::map<std::string, bool> told;
  for (const PieceChange& piece : item.changed_pieces)
    told[piece.key] = true;
  std::string wrong;
  for (const Piece& piece : is.wood.pieces) {
    const std::string key = key_of(is.wood, piece);
    if (told[key]) continue;
    const Piece* old = before.at(key);
    if (old->blank == piece.blank && shape_of(*old) != shape_of(piece))
      wrong += key + " is of another shape, which is not told\n" + shape_of(*old) + "now\n" +
               shape_of(piece);
  }
  return wrong;
}

std::string one_way_only(const std::vector<std::string>& forwards,
                         const std::vector<std::string>& backwards) {
  std::vector<std::string> differ;
  std::set_symmetric_difference(forwards.begin(), forwards.end(), backwards.begin(),
                                backwards.end(), std::back_inserter(differ));
  std::string wrong;
  for (const std::string& line : differ)
    wrong += "one way only: " + line + "\n";
  return wrong;
}

std::string wrong_between(const ItemReport& was, const ItemReport& is) {
  const ItemComparison item = compare(was, is);
  return wrong_cuts(was, is, item) + wrong_shapes(was, is, item) +
         one_way_only(lines_of(item, false), lines_of(compare(is, was), true));
}

SetupsReport setups_of(ItemReport item) {
  std::vector<ItemReport> items;
  items.push_back(std::move(item));
  return report_setups(std::move(items), usual_machines(Unit::mm), "", Unit::mm);
}

std::string wrong_setups(ItemReport old_item, ItemReport new_item) {
  const SetupsReport was = setups_of(std::move(old_item)), is = setups_of(std::move(new_item));
  const SetupsChange there = setups_change(was, is);
  const SetupsChange itself = setups_change(is, is);
  std::string wrong = one_way_only(lines_of(there, false), lines_of(setups_change(is, was), true));
  if (!itself.changed.empty()) wrong += "its set-ups differ from themselves\n";
  const auto changed = [&](Turn turn) {
    return static_cast<std::size_t>(
        std::count_if(there.changed.begin(), there.changed.end(),
                      [&](const SetupChange& it) { return it.turn() == turn; }));
  };
  const std::size_t both = there.setups.same + changed(Turn::changes);
  if (both + changed(Turn::comes) != there.setups.is ||
      both + changed(Turn::goes) != there.setups.was)
    wrong += "not all set-ups are told\n";
  return wrong;
}

Outcome judge(const std::string& old_spec, const std::string& new_spec, std::string& wrong) {
  auto was = report_of(old_spec), is = report_of(new_spec);
  if (!was || !is) return Outcome::refused;
  if (!compare(*was, *was).is_same()) wrong += "it differs from itself\n";
  wrong += wrong_between(*was, *is);
  wrong += wrong_setups(std::move(*was), std::move(*is));
  if (!wrong.empty()) wrong += old_spec + "\n" + new_spec + "\n";
  return Outcome::worked;
}

/// The same door with one length another.
DoorSpec with_another_length(DoorSpec spec, Dice& dice) {
  const auto which =
      static_cast<std::size_t>(dice.between(0, static_cast<std::int64_t>(spec.lengths.size()) - 1));
  spec.lengths[which].length += Length::from_mm_thousandths(dice.between(1, 20'000));
  return spec;
}

}  // namespace

TEST_CASE("what changes of random doors is told, there as back", "[compare][property]") {
  const Tally tally = run_over(seeds_for(300), [](std::uint64_t seed, std::string& wrong) {
    const DoorSpec old = random_door(seed, Keys::some);
    Dice dice(seed);
    const DoorSpec next = dice.chance(80) ? with_another_length(old, dice)
                                          : random_door(seed + 1'000'000, Keys::some);
    return judge(to_json(old, {old.unit, seed, false, true}),
                 to_json(next, {next.unit, seed, false, true}), wrong);
  });
  require_worked_share(tally, 30);
}

TEST_CASE("what changes of random sets is told, there as back", "[compare][property]") {
  const Tally tally = run_over(seeds_for(60), [](std::uint64_t seed, std::string& wrong) {
    return judge(FrameDraw(seed).set(), FrameDraw(seed + 1'000'000).set(), wrong);
  });
  require_worked_share(tally, 20);
}

TEST_CASE("what changes of random cabinets is told, there as back", "[compare][property]") {
  const Tally tally = run_over(seeds_for(60), [](std::uint64_t seed, std::string& wrong) {
    const CabinetDraw old = random_cabinet(seed);
    const std::string next = seed % 2 == 0 && !old.stuff.empty()
                                 ? with_stuff(old, old.unit == Unit::mm ? "17" : "0.7")
                                 : random_cabinet(seed + 1'000'000).json;
    return judge(old.json, next, wrong);
  });
  require_worked_share(tally, 20);
}

}  // namespace haunch::test
