#include "run_spec.h"

#include <algorithm>
#include <map>
#include <utility>

#include "run_corner.h"
#include "shop.h"
#include "value_reader.h"

namespace haunch {
namespace {

struct EntryKey {
  Key key;
  RunEntry::What what;
};
constexpr EntryKey kEntryKeys[] = {{"run.order[].cabinet", RunEntry::What::cabinet},
                                   {"run.order[].filler", RunEntry::What::filler},
                                   {"run.order[].gap", RunEntry::What::gap},
                                   {"run.order[].end_panel", RunEntry::What::end_panel}};

constexpr std::string_view kOneOfThese =
    R"(write the id of a cabinet, {"filler": 30}, {"gap": 600, "for": "oven"} or {"end_panel": 20})";

std::string in_quotes(const std::string& text) {
  return "\"" + text + "\"";
}

/// One of what an order lists; `path`: where it stands.
RunEntry entry_of(const KeyValues& item, const std::string& path, std::vector<Problem>& problems) {
  RunEntry entry;
  int said = 0;
  for (const EntryKey& its : kEntryKeys) {
    if (!item[its.key].stated) continue;
    if (++said == 1) entry.what = its.what;
  }
  if (said > 1)
    problems.push_back({path, "one thing stands at a place; " + std::string(kOneOfThese), {}});
  if (said == 0 && item["run.order[]"].stated)
    problems.push_back(
        {path, "says nothing of what stands there; " + std::string(kOneOfThese), {}});
  entry.id = item.text("run.order[].cabinet");
  for (const SizeKey size : {SizeKey("run.order[].filler"), SizeKey("run.order[].gap"),
                             SizeKey("run.order[].end_panel")})
    if (const auto its = item.size(size)) entry.width = *its;
  entry.purpose = item.text("run.order[].for");
  entry.front_height = item.size("run.order[].front_height");
  for (const Key key : std::initializer_list<Key>{"run.order[].for", "run.order[].front_height"})
    if (item[key].stated && entry.what != RunEntry::What::gap)
      problems.push_back({child_path(path, key.path().substr(key.path().rfind('.') + 1)),
                          "is of what is put in a gap; give the gap's width: {\"gap\": 600, …}",
                          {}});
  return entry;
}

// ---- cabinets

/// Finds the cabinets that a run names, and tells of those that it cannot have.
class NamedCabinets {
 public:
  NamedCabinets(const OtherItems* others, const std::vector<RunLine>& lines,
                std::vector<Problem>& problems)
      : others_(others), lines_(lines), problems_(problems) {}

  void take(RunEntry& entry, const std::string& path) {
    const auto [known, is_new] = taken_.emplace(entry.id, nullptr);
    if (is_new) known->second = found(entry.id, path);
    entry.taken = known->second;
  }

 private:
  std::shared_ptr<TakenCabinet> found(const std::string& id, const std::string& path) {
    if (others_ == nullptr) {
      refuse(path, in_quotes(id) +
                       " is looked for among the specs of one command, and this one takes an item "
                       "by itself; give both to 'haunch sheet'");
      return nullptr;
    }
    const auto is_it = [&](const OtherItem& other) { return other.id == id; };
    const auto first = std::find_if(others_->named.begin(), others_->named.end(), is_it);
    if (first == others_->named.end()) {
      refuse(path, unknown(id));
      return nullptr;
    }
    if (std::find_if(first + 1, others_->named.end(), is_it) != others_->named.end()) {
      refuse(path, "two items are called " + in_quotes(id) + "; give each its own id");
      return nullptr;
    }
    return read(*first, path);
  }

  std::shared_ptr<TakenCabinet> read(const OtherItem& other, const std::string& path) {
    JobReading reading;
    std::vector<SetLine> set;
    if (other.item != nullptr) {
      Value item = *other.item;
      for (const RunLine& line : lines_)
        set.push_back(set_line(item, line));
      reading = read_job(item, other.shop, other.default_id);
    }
    if (!reading.job || !reading.problems.empty()) {
      refuse(path, in_quotes(other.id) + " has errors of its own; put them right first");
      return nullptr;
    }
    if (reading.job->kind != "cabinet") {
      refuse(path, in_quotes(other.id) + " is a " + std::string(reading.job->kind) +
                       "; a run takes cabinets");
      return nullptr;
    }
    if (reading.job->quantity > 1) {
      refuse(path, in_quotes(other.id) +
                       " has a quantity of its own; a run takes one for each time it names it: "
                       "take it out there");
      return nullptr;
    }
    return std::make_shared<TakenCabinet>(std::move(reading.job), std::move(set));
  }

  std::string unknown(const std::string& id) const {
    std::vector<std::string_view> ids(others_->ids.begin(), others_->ids.end());
    const std::string_view nearest = nearest_word(id, ids);
    std::string message = "no item of these specs is called " + in_quotes(id);
    if (!nearest.empty())
      return message + "; did you mean " + in_quotes(std::string(nearest)) + "?";
    return message + "; name its file too, or put it into this one";
  }

  void refuse(const std::string& path, std::string message) {
    problems_.push_back({path, std::move(message), {}});
  }

  const OtherItems* others_;
  const std::vector<RunLine>& lines_;
  std::vector<Problem>& problems_;
  std::map<std::string, std::shared_ptr<TakenCabinet>> taken_;
};

// ---- lists that go together

std::vector<Length> lengths_of(const Spec& spec, Key list, SizeKey item) {
  std::vector<Length> all;
  for (const KeyValues& its : spec[list].items)
    all.push_back(its.size(item).value_or(Length()));
  return all;
}

bool rises(const std::vector<Length>& all) {
  return std::adjacent_find(all.begin(), all.end(), [](Length a, Length b) { return a >= b; }) ==
         all.end();
}

void doubt_pairs(const std::vector<Length>& places, std::size_t readings, const std::string& path,
                 const std::string& of, std::vector<Problem>& problems) {
  if (places.size() != readings)
    problems.push_back({path,
                        "has " + std::to_string(places.size()) + " places for " +
                            std::to_string(readings) + " readings of " + of +
                            "; write one for each",
                        {}});
  else if (!rises(places))
    problems.push_back({path, "does not rise from one to the next; write the lowest first", {}});
}

void doubt_readings(const Spec& spec, std::vector<Problem>& problems) {
  const std::vector<Length> at = lengths_of(spec, "run.wall.at", "run.wall.at[]");
  const std::size_t lengths = spec["run.wall.lengths"].items.size();
  if (spec["run.wall.at"].stated)
    doubt_pairs(at, lengths, "/wall/at", "the wall's length", problems);
  else if (lengths > 1)
    problems.push_back({"/wall",
                        "\"at\" is missing; write the heights that the lengths were measured at: "
                        "\"at\": [0, 900, …]",
                        {}});
  if (spec["run.floor.at"].stated && spec["run.floor.rise"].stated)
    doubt_pairs(lengths_of(spec, "run.floor.at", "run.floor.at[]"),
                spec["run.floor.rise"].items.size(), "/floor/at", "the floor", problems);
}

void read_corners(RunSpec& spec, std::string_view default_id, const OtherItems* others,
                  std::vector<Problem>& problems) {
  const std::string own = spec.own["id"].stated ? spec.own.text("id") : std::string(default_id);
  const struct {
    Key corner, wall;
    std::string path;
  } ends[] = {{"run.corner.left", "run.wall.left", "/corner/left"},
              {"run.corner.right", "run.wall.right", "/corner/right"}};
  for (std::size_t end = 0; end < 2; ++end) {
    if (!spec.own[ends[end].corner].stated) continue;
    if (spec.own[ends[end].wall].stated)
      problems.push_back({ends[end].path,
                          "another run stands there; take out what \"wall\" says of that end",
                          {}});
    spec.through[end] =
        run_in_corner(spec.own.text(ends[end].corner), ends[end].path, own, others, problems);
  }
  if (spec.own.word<CornerForm>("run.corner.form") == CornerForm::diagonal)
    problems.push_back({"/corner/form",
                        "is not made: fronts stand square to their cases here, and one across a "
                        "corner needs a case with five sides; let one run go through with a blind "
                        "case, \"blind\": {\"side\": \"right\", …}",
                        {}});
}

}  // namespace

RunSpecReading read_run_spec(const Value& item, const ShopDefaults* shop,
                             std::string_view default_id, const OtherItems* others) {
  SpecReading spec =
      read_spec(item, {.of = kOfRun, .root = kRunRoot, .within = R"({"wall": {"lengths": …}})"},
                units_of(shop));
  RunSpecReading reading{
      {std::move(spec.spec), {}, {}, {}, {}}, std::move(spec.given), std::move(spec.problems)};
  if (shop != nullptr) overlay(reading.spec.own, shop->of_use(Use::cabinet), kOfRun);
  if (!reading.problems.empty()) return reading;
  doubt_readings(reading.spec.own, reading.problems);
  reading.spec.lines =
      read_lines(item, reading.spec.own.units.value_or(Unit::mm), reading.problems);
  read_corners(reading.spec, default_id, others, reading.problems);
  NamedCabinets cabinets(others, reading.spec.lines, reading.problems);
  const std::vector<KeyValues>& items = reading.spec.own["run.order"].items;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const std::string path = child_path("/order", i);
    reading.spec.order.push_back(entry_of(items[i], path, reading.problems));
    RunEntry& entry = reading.spec.order.back();
    if (entry.what == RunEntry::What::cabinet && !entry.id.empty()) cabinets.take(entry, path);
  }
  share_frames(reading.spec, reading.problems);
  return reading;
}

}  // namespace haunch
