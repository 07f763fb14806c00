#include "making_change.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>
#include <utility>

#include "succession.h"

namespace haunch {
namespace {

/// Whether a place goes from one end of its piece to the other, along or across it.
bool goes_all_the_way(const Piece& piece, const Run& run) {
  const Length extent = piece.blank[across_axes(run.side.into).u];
  return run.far && run.near == Length() && *run.far == extent;
}

WorkedPlace work_of(const Assembly& wood, const Making& making, std::size_t operation,
                    const Run& run) {
  const Piece& piece = wood.pieces[run.piece];
  WorkedPlace work;
  work.piece = key_of(wood, piece);
  work.mark = piece.mark;
  work.name = piece.name;
  if (run.joint) {
    const Joint& joint = wood.joints[*run.joint];
    const std::size_t other = joint.receives == run.piece ? joint.enters : joint.receives;
    work.for_key = key_of(wood, wood.pieces[other]);
    work.for_mark = wood.pieces[other].mark;
  }
  if (const auto& fitting = piece.features[run.feature].fitting) work.fitting = fitting->name;
  work.setting = making.operations[operation];
  work.setting.runs.clear();
  work.operation = operation;
  work.run = run;
  work.whole_length = goes_all_the_way(piece, run);
  return work;
}

// ---- which work of the one is which of the other

/// What it is, wherever it is and whatever is set for it.
auto identity_of(const WorkedPlace& work) {
  return std::make_tuple(work.piece, work.setting.makes, work.setting.cut, work.run.side.into,
                         work.run.side.from_high, work.for_key, work.fitting);
}
using Identity = decltype(identity_of(std::declval<const WorkedPlace&>()));

struct Same {
  std::vector<std::size_t> was, is;  // by number, from the low end on
};

struct Pair {
  std::optional<std::size_t> was, is;
};

Changes setting_between(const Operation& was, const Operation& is) {
  Changes changes;
  changes.add(was.settings, is.settings);
  changes.add("profile", was.profile, is.profile);
  const auto add_if = [&](std::string_view what, bool before, bool after) {
    changes.add(what, before ? "yes" : "no", after ? "yes" : "no");
  };
  add_if("through", was.through, is.through);
  add_if("open_end", was.open_end, is.open_end);
  add_if("both_faces", was.both_faces, is.both_faces);
  return changes;
}

bool set_the_same(const Operation& was, const Operation& is) {
  return was.makes == is.makes && was.cut == is.cut && setting_between(was, is).empty();
}

std::optional<Length> extent_of(const WorkedPlace& work) {
  if (!work.run.far || work.whole_length) return {};
  return work.run.extent();
}

Changes place_between(const WorkedPlace& was, const WorkedPlace& is) {
  Changes changes;
  if (was.whole_length && is.whole_length) return changes;
  const auto shoulder = [](const Run& run) {
    return run.from_shoulder ? std::optional(run.from_shoulder->near) : std::nullopt;
  };
  changes.add("from", word_of(was.run.from), word_of(is.run.from));
  changes.add("near", was.run.near, is.run.near);
  changes.add("extent", extent_of(was), extent_of(is));
  changes.add("from_shoulder", shoulder(was.run), shoulder(is.run));
  changes.add("from_other_end", was.run.from_other_end, is.run.from_other_end);
  changes.add("straight", was.run.straight, is.run.straight);
  return changes;
}

bool is_the_same(const WorkedPlace& was, const WorkedPlace& is) {
  return set_the_same(was.setting, is.setting) && place_between(was, is).empty();
}

class Pairing {
 public:
  Pairing(const std::vector<WorkedPlace>& was, const std::vector<WorkedPlace>& is)
      : was_(was), is_(is) {
    for (std::size_t number = 0; number < was.size(); ++number)
      same_[identity_of(was[number])].was.push_back(number);
    for (std::size_t number = 0; number < is.size(); ++number)
      same_[identity_of(is[number])].is.push_back(number);
  }

  std::vector<Pair> pairs() {
    for (auto& [identity, same] : same_) {
      sort(same.was, was_);
      sort(same.is, is_);
      pair_equal_ones(same);
      pair_in_order(same);
    }
    return std::move(pairs_);
  }

 private:
  static void sort(std::vector<std::size_t>& numbers, const std::vector<WorkedPlace>& works) {
    std::stable_sort(numbers.begin(), numbers.end(), [&](std::size_t a, std::size_t b) {
      return works[a].run.near < works[b].run.near;
    });
  }

  /// What stays where it is, however many come or go beside it.
  void pair_equal_ones(Same& same) {
    std::erase_if(same.was, [&](std::size_t was) {
      const auto equal = std::find_if(same.is.begin(), same.is.end(), [&](std::size_t is) {
        return is_the_same(was_[was], is_[is]);
      });
      if (equal == same.is.end()) return false;
      pairs_.push_back({was, *equal});
      same.is.erase(equal);
      return true;
    });
  }

  void pair_in_order(const Same& same) {
    for (std::size_t i = 0; i < std::max(same.was.size(), same.is.size()); ++i) {
      Pair pair;
      if (i < same.was.size()) pair.was = same.was[i];
      if (i < same.is.size()) pair.is = same.is[i];
      pairs_.push_back(pair);
    }
  }

  const std::vector<WorkedPlace>& was_;
  const std::vector<WorkedPlace>& is_;
  std::map<Identity, Same> same_;
  std::vector<Pair> pairs_;
};

// ---- what of it is told

std::set<std::string> keys_of(const Assembly& wood) {
  std::set<std::string> keys;
  for (const Piece& piece : wood.pieces)
    keys.insert(key_of(wood, piece));
  return keys;
}

std::size_t count_on(const std::vector<WorkedPlace>& works, const std::set<std::string>& pieces) {
  return static_cast<std::size_t>(
      std::count_if(works.begin(), works.end(),
                    [&](const WorkedPlace& it) { return pieces.contains(it.piece); }));
}

/// In the new work's order, what goes behind.
void add_places(MakingChange& change, std::vector<Pair> pairs, const std::vector<WorkedPlace>& was,
                const std::vector<WorkedPlace>& is, const std::set<std::string>& both) {
  std::stable_sort(pairs.begin(), pairs.end(), [](const Pair& a, const Pair& b) {
    if (a.is && b.is) return *a.is < *b.is;
    return a.is.has_value() != b.is.has_value() ? a.is.has_value() : a.was < b.was;
  });
  for (const Pair& pair : pairs) {
    PlaceChange work;
    if (pair.was) work.was = was[*pair.was];
    if (pair.is) work.is = is[*pair.is];
    if (!both.contains(work.any().piece)) continue;
    if (work.turn() == Turn::changes) {
      work.setting = setting_between(work.was->setting, work.is->setting);
      work.place = place_between(*work.was, *work.is);
    }
    if (work.turn() == Turn::changes && work.setting.empty() && work.place.empty())
      ++change.places.same;
    else
      change.changed_places.push_back(std::move(work));
  }
  change.places.was = count_on(was, both);
  change.places.is = count_on(is, both);
}

// ---- settings

SettingChange change_between(const Operation* was, const Operation* is) {
  SettingChange change;
  const auto take = [](const Operation& operation, std::optional<Operation>& into) {
    into = operation;
    into->runs.clear();
    return operation.runs.size();
  };
  if (was != nullptr) change.runs_was = take(*was, change.was);
  if (is != nullptr) change.runs_is = take(*is, change.is);
  if (was != nullptr && is != nullptr) change.setting = setting_between(*was, *is);
  return change;
}

void add_settings(MakingChange& change, const std::vector<Operation>& was,
                  const std::vector<Operation>& is, const std::vector<Link>& links) {
  const Succession found = succession_of(
      was.size(), is.size(), links,
      [&](std::size_t before, std::size_t after) { return set_the_same(was[before], is[after]); });
  change.settings = {was.size(), is.size(), 0};
  for (std::size_t after = 0; after < is.size(); ++after)
    if (found.stays[after])
      ++change.settings.same;
    else
      change.changed_settings.push_back(
          change_between(found.from[after] ? &was[*found.from[after]] : nullptr, &is[after]));
  for (const std::size_t before : found.goes)
    change.changed_settings.push_back(change_between(&was[before], nullptr));
}

std::vector<Link> links_of(const std::vector<Pair>& pairs, const std::vector<WorkedPlace>& was,
                           const std::vector<WorkedPlace>& is) {
  std::vector<Link> links;
  for (const Pair& pair : pairs)
    if (pair.was && pair.is) links.push_back({was[*pair.was].operation, is[*pair.is].operation});
  return links;
}

}  // namespace

std::string key_of(const Assembly& wood, const Piece& piece) {
  return wood.groups[piece.group].path + "/" + piece.key;
}

std::vector<WorkedPlace> worked_places(const Assembly& wood, const Making& making) {
  std::vector<WorkedPlace> works;
  for (std::size_t operation = 0; operation < making.operations.size(); ++operation)
    for (const Run& run : making.operations[operation].runs)
      works.push_back(work_of(wood, making, operation, run));
  std::stable_sort(works.begin(), works.end(), [](const WorkedPlace& a, const WorkedPlace& b) {
    return a.run.piece < b.run.piece;
  });
  return works;
}

MakingChange making_change(const Assembly& was_wood, const Making& was, const Assembly& is_wood,
                           const Making& is) {
  const std::vector<WorkedPlace> was_places = worked_places(was_wood, was);
  const std::vector<WorkedPlace> is_places = worked_places(is_wood, is);
  std::set<std::string> both;
  std::set<std::string> before = keys_of(was_wood);
  for (const std::string& key : keys_of(is_wood))
    if (before.contains(key)) both.insert(key);
  const std::vector<Pair> pairs = Pairing(was_places, is_places).pairs();
  MakingChange change;
  add_places(change, pairs, was_places, is_places, both);
  add_settings(change, was.operations, is.operations, links_of(pairs, was_places, is_places));
  return change;
}

}  // namespace haunch
