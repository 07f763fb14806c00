#include "lumber_planner.h"

#include <algorithm>
#include <set>
#include <tuple>
#include <utility>

#include "glue_up.h"
#include "lumber_bill.h"
#include "other_stock.h"
#include "species.h"

namespace haunch {
namespace {

using lumber::StockThickness;
using lumber::ThicknessWay;

std::string lower(std::string text) {
  for (char& c : text)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return text;
}

/// A name that may mean several species ("beech") is as hard as all of them.
bool is_hardwood(const std::string& material) {
  const auto species = find_species(material);
  if (species) return species->group != "softwood";
  const auto found = search_species(material);
  return !material.empty() && !found.empty() &&
         std::none_of(found.begin(), found.end(),
                      [](const Species& each) { return each.group == "softwood"; });
}

using Way = LumberWay;

/// Rough parts are sawn to whole millimetres or sixteenths, upwards.
Length rough_step(Unit unit) {
  return lumber::usual_strips(unit).step;
}

/// What plans are best by, in order; less is better.
struct Merit {
  std::size_t unplaced = 0;
  double preferred = 0;
  lumber::Money cost = 0;
  std::size_t split_groups = 0;
  double area = 0;

  friend bool operator<(const Merit& a, const Merit& b) {
    return std::tie(a.unplaced, a.preferred, a.cost, a.split_groups, a.area) <
           std::tie(b.unplaced, b.preferred, b.cost, b.split_groups, b.area);
  }

  void add(const MaterialPlan& plan, lumber::Prefer prefer) {
    const lumber::Totals& totals = plan.plan.totals;
    const lumber::Area lost = totals.kerf + totals.trim + totals.scrap;
    unplaced += plan.plan.unplaced.size();
    cost += totals.cost;
    split_groups += plan.plan.split_groups.size();
    area += lumber::square_mm(totals.area_used);
    if (prefer == lumber::Prefer::waste) preferred += lumber::square_mm(lost);
    if (prefer == lumber::Prefer::boards) preferred += static_cast<double>(totals.boards);
  }
};

/// Works out the ways to make each part, and plans material by material.
class Planner {
 public:
  Planner(LumberReport& report, LumberWishes wishes) : report_(report), wishes_(wishes) {}

  void run() {
    for (std::size_t i = 0; i < report_.parts.size(); ++i)
      find_ways(i);
    if (!report_.has_stock || !kerf_is_right()) return;
    while (plan_all()) {
    }
    try_refused_again();
    try_more_strips();
    try_thicker_in_hand();
    try_other_seeds();
    if (try_other_stock()) try_other_seeds();
    keep_what_was_chosen();
  }

  const std::vector<std::vector<Way>>& ways() const { return ways_; }

  Merit merit_of_all() const {
    Merit merit;
    for (const MaterialPlan& plan : report_.plans)
      merit.add(plan, wishes_.prefer);
    merit.unplaced += report_.unplaced.size();
    return merit;
  }

 private:
  const Sawing& sawing() const { return report_.stock.sawing; }

  // ---- ways

  /// The material that a part is cut from: its own, or the only one there is.
  std::string material_of(const LumberPart& part) const {
    if (!part.material.empty() || report_.stock.items.empty()) return part.material;
    const std::string& first = report_.stock.items.front().species;
    const bool only =
        std::all_of(report_.stock.items.begin(), report_.stock.items.end(),
                    [&](const StockItem& item) { return same_material(item.species, first); });
    return only ? first : part.material;
  }

  std::vector<StockThickness> thicknesses_of(const LumberPart& part) const {
    if (!report_.has_stock && part.of_sheet) return {{part.finished.thickness, true, true}};
    if (!report_.has_stock)
      return lumber::usual_thicknesses(report_.unit, is_hardwood(part.material));
    std::vector<StockThickness> all;
    for (const StockItem& item : report_.stock.items)
      if (same_material(item.species, part.material) && (item.thickness.sheet || !part.of_sheet) &&
          std::find(all.begin(), all.end(), item.thickness) == all.end())
        all.push_back(item.thickness);
    return all;
  }

  Length widest(const std::string& material, const StockThickness& thickness) const {
    if (!report_.has_stock) return Length::from_mm(1'000'000);
    Length widest;
    for (const StockItem& item : report_.stock.items)
      if (same_material(item.species, material) && item.thickness == thickness)
        widest = std::max(widest, item.width - item.edge_trim.value_or(sawing().edge_trim) * 2);
    return widest;
  }

  /// What is sawn larger than the part; nothing of one that is given as it is sawn.
  lumber::Allowances allowances_of(const LumberPart& part) const {
    return part.is_rough ? lumber::Allowances() : sawing().allowances;
  }

  void find_ways(std::size_t index) {
    LumberPart& part = report_.parts[index];
    part.material = material_of(part);
    const auto thicknesses = thicknesses_of(part);
    std::vector<Way> ways;
    for (const ThicknessWay& way : lumber::ways_to_thickness(part.finished.thickness, thicknesses,
                                                             allowances_of(part).face)) {
      const StockThickness& stock = thicknesses[way.stock];
      for (const RoughPart& rough : roughs_of(part, way, stock))
        ways.push_back({stock, rough});
    }
    report_.rough.push_back(ways.empty() ? std::nullopt : std::optional(ways.front().rough));
    if (ways.empty()) refuse(index, nothing_thick_enough(part, thicknesses));
    ways_.push_back(std::move(ways));
    chosen_.push_back(0);
    first_lack_.emplace_back();
  }

  /// How it is sawn: in one piece; else of the fewest strips, then of one and two more.
  std::vector<RoughPart> roughs_of(const LumberPart& part, const ThicknessWay& way,
                                   const StockThickness& stock) const {
    RoughPart rough;
    rough.stock_thickness = stock.thickness;
    rough.sheet = stock.sheet;
    rough.layers = way.layers;
    rough.glue_lines = way.glue_lines;
    const lumber::Allowances none;
    const lumber::Allowances& allowances = stock.sheet ? none : allowances_of(part);
    rough.length = lumber::rough_length(part.finished, allowances);
    rough.width = lumber::rough_width(part.finished, allowances);
    if (stock.sheet) return {rough};
    rough.length = -floor_multiple(-rough.length, rough_step(report_.unit));
    rough.width = -floor_multiple(-rough.width, rough_step(report_.unit));
    const Length widest_stock = widest(part.material, stock);
    const bool limited = part.is_panel && rough.width > sawing().strip_limit;
    if (!limited && rough.width <= widest_stock) return {rough};
    const lumber::StripRule rule{limited ? sawing().strip_limit : rough.width, sawing().jointing,
                                 rough_step(report_.unit)};
    return of_strips(rough, rule, widest_stock);
  }

  /// A strip is never under half the limit where fewer would do.
  std::vector<RoughPart> of_strips(const RoughPart& whole, const lumber::StripRule& rule,
                                   Length widest_stock) const {
    constexpr std::size_t kMostMore = 2;
    const auto fewest = lumber::strips_for(whole.width, rule, widest_stock);
    std::vector<RoughPart> all;
    for (std::size_t more = 0; fewest && more <= kMostMore; ++more) {
      const Length width = lumber::strip_width(whole.width, fewest->count + more, rule);
      if (more > 0 && width * 2 < sawing().strip_limit) break;
      all.push_back(whole);
      all.back().strips = fewest->count + more;
      all.back().width = width;
    }
    return all;
  }

  std::string nothing_thick_enough(const LumberPart& part,
                                   const std::vector<StockThickness>& thicknesses) const {
    const std::string wood = part.material.empty() ? "its species is not told; of that the stock"
                                                   : "of " + part.material + " the stock";
    const Length step = rough_step(report_.unit);
    const auto up = [&](Length size) {
      return in_words(-floor_multiple(-size, step), report_.unit);
    };
    if (part.of_sheet)
      return wood + " holds no sheet as thick; would do: " +
             in_words(part.finished.thickness, report_.unit) + ", " +
             in_words(part.finished.length, report_.unit) + " x " +
             in_words(part.finished.width, report_.unit);
    const lumber::Allowances& allowances = sawing().allowances;
    const std::string would = "; would do: " + up(part.finished.thickness + allowances.face * 2) +
                              " rough, " + up(lumber::rough_length(part.finished, allowances)) +
                              " x " + up(lumber::rough_width(part.finished, allowances));
    if (thicknesses.empty()) return wood + " holds none" + would;
    return wood + " holds none thick enough, laminated from three neither" + would;
  }

  void refuse(std::size_t part, std::string why) {
    report_.unplaced.push_back({part, std::move(why)});
  }

  bool kerf_is_right() {
    for (std::size_t i = 0; i < report_.parts.size(); ++i) {
      if (!report_.rough[i]) continue;
      const Length least = std::min(report_.rough[i]->length, report_.rough[i]->width);
      if (least > sawing().kerf) continue;
      report_.problems.push_back({"/kerf",
                                  in_words(sawing().kerf, report_.unit) + " is as wide as part " +
                                      report_.parts[i].name + " or wider, which is " +
                                      in_words(least, report_.unit) +
                                      " rough; a saw takes less than what it cuts",
                                  report_.stock.kerf_offset});
      return false;
    }
    return true;
  }

  // ---- plans

  MaterialPlan& plan_for(const std::string& material, const StockThickness& thickness) {
    for (MaterialPlan& plan : report_.plans)
      if (plan.thickness == thickness && same_material(plan.material, material)) return plan;
    MaterialPlan plan;
    plan.material = material;
    plan.thickness = thickness;
    for (std::size_t i = 0; i < report_.stock.items.size(); ++i) {
      const StockItem& item = report_.stock.items[i];
      if (item.thickness != thickness || !same_material(item.species, material)) continue;
      plan.items.push_back(i);
      plan.order.stock.push_back(stock_of(item, report_));
    }
    plan.order.saw = {sawing().kerf, sawing().offcut_length, sawing().offcut_width, true};
    plan.order.stages = wishes_.stages;
    plan.order.prefer = wishes_.prefer;
    plan.order.effort = wishes_.effort;
    plan.order.seed = wishes_.seed;
    report_.plans.push_back(std::move(plan));
    return report_.plans.back();
  }

  const Way& way_of(std::size_t part) const { return ways_[part][chosen_[part]]; }

  void add_pieces(MaterialPlan& plan, std::size_t index, const Way& way) const {
    const LumberPart& part = report_.parts[index];
    const std::size_t of = way.rough.pieces();
    for (std::size_t number = 1; number <= of; ++number) {
      lumber::Want want;
      want.name = part.name;
      want.length = way.rough.length;
      want.width = way.rough.width;
      if (of > 1)
        want.group = part.name;
      else if (sawing().match)
        want.group = part.face;
      plan.pieces.push_back({index, number, of});
      plan.order.wants.push_back(std::move(want));
    }
  }

  /// Plans all; true when a part went over to other stock, so that it is to be planned again.
  bool plan_all() {
    plan_as_chosen();
    bool again = false;
    for (const MaterialPlan& plan : report_.plans)
      again = move_on(plan) || again;
    return again;
  }

  void plan_as_chosen() {
    std::vector<MaterialPlan> before = std::move(report_.plans);
    report_.plans.clear();
    for (std::size_t i = 0; i < report_.parts.size(); ++i)
      if (chosen_[i] < ways_[i].size())
        add_pieces(plan_for(report_.parts[i].material, way_of(i).thickness), i, way_of(i));
    for (MaterialPlan& plan : report_.plans)
      take_plan(plan, before);
  }

  /// The plan for this order: of the round before, where nothing has changed in it.
  void take_plan(MaterialPlan& plan, std::vector<MaterialPlan>& before) {
    const auto same = std::find_if(before.begin(), before.end(), [&](const MaterialPlan& it) {
      return it.thickness == plan.thickness && same_material(it.material, plan.material) &&
             std::equal(it.pieces.begin(), it.pieces.end(), plan.pieces.begin(), plan.pieces.end(),
                        [](const LumberPiece& a, const LumberPiece& b) {
                          return a.part == b.part && a.number == b.number && a.of == b.of;
                        });
    });
    plan.plan = same != before.end() ? std::move(same->plan) : planned(plan.order);
  }

  lumber::Plan planned(const lumber::CuttingOrder& order) {
    lumber::Plan plan = lumber::plan_cutting(order);
    work_ += plan.work;
    return plan;
  }

  /// Whether to plan once more what took so much work.
  bool may_try(std::int64_t work) const {
    constexpr std::int64_t kMostWork = 2'000'000'000;
    return work_ + work <= kMostWork * wishes_.effort;
  }

  bool may_try_all() const {
    std::int64_t work = 0;
    for (const MaterialPlan& plan : report_.plans)
      work += plan.plan.work;
    return may_try(work);
  }

  /// Parts that lack stock try the next that would do; those that have none left are told.
  bool move_on(const MaterialPlan& plan) {
    std::set<std::size_t> moved;
    for (const lumber::Unplaced& each : plan.plan.unplaced) {
      const std::size_t part = plan.pieces[each.want].part;
      if (!moved.insert(part).second) continue;
      if (first_lack_[part].empty()) first_lack_[part] = lack_words(plan, each);
      if (!choose_other_stock(part)) refuse(part, first_lack_[part]);
    }
    return !moved.empty();
  }

  /// The next way that is not from the same boards; false when there is none left.
  bool choose_other_stock(std::size_t part) {
    const Way now = way_of(part);
    while (++chosen_[part] < ways_[part].size())
      if (!same_but_strips(way_of(part), now)) return true;
    return false;
  }

  std::string lack_words(const MaterialPlan& plan, const lumber::Unplaced& lack) const {
    const std::string would = "; would do: " + in_words(lack.stock_length, report_.unit) + " x " +
                              in_words(lack.stock_width, report_.unit) + ", " +
                              in_words(plan.thickness.thickness, report_.unit) + " thick";
    if (lack.why == lumber::Lack::size) return "fits none of the stock" + would;
    std::string count;
    if (const auto& shortage = plan.plan.shortage) {
      if (shortage->kind == lumber::Shortage::Kind::pieces)
        count = " (of this size " + std::to_string(shortage->wanted) +
                " are wanted, the stock yields at most " + std::to_string(shortage->at_most) + ")";
      else if (shortage->kind == lumber::Shortage::Kind::area)
        count = " (the parts are larger than all of it)";
    }
    return "the stock ran out" + count + would;
  }

  // ---- is there a better way?

  Merit merit_of(const MaterialPlan& plan) const {
    Merit merit;
    merit.add(plan, wishes_.prefer);
    return merit;
  }

  static std::vector<std::size_t> parts_of(const MaterialPlan& plan) {
    std::vector<std::size_t> parts;
    for (const LumberPiece& piece : plan.pieces)
      if (piece.number == 1) parts.push_back(piece.part);
    return parts;
  }

  /// More strips than the fewest may fall better into the boards.
  void try_more_strips() {
    constexpr std::size_t kFewPieces = 100;
    for (MaterialPlan& plan : report_.plans) {
      try_strips(plan, [&](std::size_t part) { return best_strips(plan, part); });
      for (const std::size_t more : {std::size_t{1}, std::size_t{2}})
        if (plan.pieces.size() <= kFewPieces && may_try(plan.plan.work))
          try_strips(plan, [&](std::size_t part) { return least_strips(part) + more; });
    }
  }

  /// Plans again with so many strips for each part, as far as there is such a way.
  template <typename Count>
  void try_strips(MaterialPlan& plan, const Count& strips_of) {
    MaterialPlan other = plan;
    other.pieces.clear();
    other.order.wants.clear();
    const std::vector<std::size_t> before = chosen_;
    for (const std::size_t part : parts_of(plan)) {
      if (way_of(part).rough.strips > 1) choose_strips(part, strips_of(part));
      add_pieces(other, part, way_of(part));
    }
    if (chosen_ == before) return;
    other.plan = planned(other.order);
    if (merit_of(other) < merit_of(plan))
      plan = std::move(other);
    else
      chosen_ = before;
  }

  /// Small orders are searched from other seeds too, unless nothing can be better.
  void try_other_seeds() {
    constexpr std::size_t kSmall = 150;
    constexpr int kMore = 2;
    for (MaterialPlan& plan : report_.plans) {
      for (int more = 0; more < kMore && plan.pieces.size() <= kSmall; ++more) {
        if (plan.plan.bounds.proven && plan.plan.split_groups.empty()) break;
        if (!may_try(plan.plan.work)) break;
        MaterialPlan other = plan;
        other.order.seed += static_cast<std::uint64_t>(more) + 1;
        other.plan = planned(other.order);
        const bool better = merit_of(other) < merit_of(plan);
        if (better) std::swap(plan.plan, other.plan);
        raise_bound(plan, other);
      }
    }
  }

  bool same_but_strips(const Way& a, const Way& b) const {
    return a.thickness == b.thickness && a.rough.layers == b.rough.layers;
  }

  void choose_strips(std::size_t part, std::size_t count) {
    const Way now = way_of(part);
    for (std::size_t i = 0; i < ways_[part].size(); ++i)
      if (same_but_strips(ways_[part][i], now) && ways_[part][i].rough.strips == count)
        chosen_[part] = i;
  }

  std::size_t least_strips(std::size_t part) const {
    std::size_t least = way_of(part).rough.strips;
    for (const Way& way : ways_[part])
      if (same_but_strips(way, way_of(part))) least = std::min(least, way.rough.strips);
    return least;
  }

  /// The number that takes the least of a board's width when strips lie side by side on it.
  std::size_t best_strips(const MaterialPlan& plan, std::size_t part) const {
    std::size_t best = way_of(part).rough.strips;
    double least = 0;
    for (const Way& way : ways_[part]) {
      if (!same_but_strips(way, way_of(part))) continue;
      for (const lumber::Stock& stock : plan.order.stock) {
        const Length kerf = sawing().kerf;
        const Length clear = stock.width - stock.edge_trim * 2 + kerf;
        const auto abreast = clear.steps() / (way.rough.width + kerf).steps();
        if (abreast < 1) continue;
        const double width = static_cast<double>(way.rough.strips) *
                             static_cast<double>(clear.steps()) / static_cast<double>(abreast);
        if (least > 0 && width >= least) continue;
        least = width;
        best = way.rough.strips;
      }
    }
    return best;
  }

  /// Where boards must be bought, thicker ones in hand may do as well, planed down.
  void try_thicker_in_hand() {
    constexpr int kMostTrials = 6;
    std::set<std::size_t> tried;
    for (int trial = 0; trial < kMostTrials && may_try_all(); ++trial) {
      find_idle_boards();
      std::vector<std::size_t> parts;
      for (const MaterialPlan& plan : report_.plans) {
        parts = bought_and_movable(plan, tried);
        if (!parts.empty()) break;
      }
      if (parts.empty()) return;
      tried.insert(parts.begin(), parts.end());
      move_if_better(parts);
    }
  }

  /// Parts cut from boards that must be bought, the last of them first, as many as thicker boards
  /// that lie idle in the rack may hold.
  std::vector<std::size_t> bought_and_movable(const MaterialPlan& plan,
                                              const std::set<std::size_t>& tried) const {
    std::vector<std::size_t> parts;
    std::set<std::size_t> seen;
    lumber::Area area;
    for (auto board = plan.plan.boards.rbegin(); board != plan.plan.boards.rend(); ++board) {
      if (!plan.order.stock[board->stock].bought) continue;
      for (const lumber::Cut& cut : board->cuts) {
        const std::size_t part = plan.pieces[cut.want].part;
        if (tried.contains(part) || seen.contains(part)) continue;
        const auto way = thicker_in_hand(part);
        if (!way) continue;
        const lumber::Area with = area + rough_area(ways_[part][*way].rough);
        if (with > idle(report_.parts[part].material, ways_[part][*way].thickness)) continue;
        area = with;
        parts.push_back(part);
        seen.insert(part);
      }
    }
    return parts;
  }

  static lumber::Area rough_area(const RoughPart& rough) {
    lumber::Area area;
    for (std::size_t piece = 0; piece < rough.pieces(); ++piece)
      area += lumber::area_of(rough.length, rough.width);
    return area;
  }

  /// The way from the next thicker stock of which boards lie idle in the rack.
  std::optional<std::size_t> thicker_in_hand(std::size_t part) const {
    const Way& now = way_of(part);
    for (std::size_t i = 0; i < ways_[part].size(); ++i) {
      const Way& way = ways_[part][i];
      if (way.thickness.thickness > now.thickness.thickness && !way.thickness.sheet &&
          way.rough.layers == now.rough.layers && way.rough.strips == now.rough.strips &&
          idle(report_.parts[part].material, way.thickness) > lumber::Area())
        return i;
    }
    return {};
  }

  /// What of the boards in hand no plan takes, by what they are.
  void find_idle_boards() {
    std::vector<std::int64_t> left;
    for (const StockItem& item : report_.stock.items)
      left.push_back(item.price ? 0 : item.count.value_or(0));
    for (const MaterialPlan& plan : report_.plans)
      for (const lumber::BoardPlan& board : plan.plan.boards)
        --left[plan.items[board.stock]];
    idle_.clear();
    for (std::size_t i = 0; i < left.size(); ++i) {
      const StockItem& item = report_.stock.items[i];
      if (left[i] <= 0) continue;
      const lumber::Area one = lumber::area_of(item.length, item.width);
      idle_.push_back({item.species, item.thickness, {one.square_steps * left[i]}});
    }
  }

  lumber::Area idle(const std::string& material, const StockThickness& thickness) const {
    lumber::Area area;
    for (const IdleBoards& boards : idle_)
      if (boards.thickness == thickness && same_material(boards.material, material))
        area += boards.area;
    return area;
  }

  void move_if_better(const std::vector<std::size_t>& parts) {
    plan_if_better([&] {
      for (const std::size_t part : parts)
        chosen_[part] = thicker_in_hand(part).value_or(chosen_[part]);
    });
  }

  /// Other stock may come to less, in hand or for sale: thicker, of another surface, or of the same
  /// in other strips. In small orders some of the parts go over too; what was tried is not again.
  bool try_other_stock() {
    constexpr std::size_t kSmall = 150;
    constexpr std::size_t kPieces = 12'000;  // planned anew in all
    constexpr std::size_t kMost = 200;       // trials, and in large orders:
    constexpr std::size_t kFew = 3;
    const bool small = pieces_of_all() <= kSmall;
    std::size_t trials =
        small ? std::min(kMost, kPieces / std::max<std::size_t>(1, pieces_of_all())) : kFew;
    constexpr std::int64_t kWork = 800'000'000;  // of all trials, counted
    most_trial_work_ = work_ + kWork * wishes_.effort;
    std::set<ChosenWays> tried = {chosen_};
    bool gained = false;
    while (try_moves(stock_moves(report_, ways_, dear_plans(), !small), tried, trials))
      gained = true;
    return gained;
  }

  /// True as soon as one of them gains; the moves are then to be made up anew. The first to cheaper
  /// boards is tried even if the order has had its share of work.
  bool try_moves(const std::vector<StockMove>& moves, std::set<ChosenWays>& tried,
                 std::size_t& trials) {
    for (const StockMove& move : moves) {
      const bool first_to_cheaper = move.cheaper && tried.size() == 1;
      if (trials == 0) return false;
      const bool enough = work_ > most_trial_work_ || !may_try_all();
      if (enough && !first_to_cheaper) continue;
      // Waste is reckoned by area, which knows nothing of what is planed away.
      const bool thicker_too = wishes_.prefer != lumber::Prefer::waste;
      const ChosenWays chosen = after_move(move, ways_, chosen_, thicker_too);
      if (!tried.insert(chosen).second) continue;
      --trials;
      if (take_if_better(chosen)) return true;
    }
    return false;
  }

  std::size_t pieces_of_all() const {
    std::size_t pieces = 0;
    for (const MaterialPlan& plan : report_.plans)
      pieces += plan.pieces.size();
    return pieces;
  }

  /// The plans that could come to less: by cost those that buy.
  std::vector<std::size_t> dear_plans() const {
    std::vector<std::size_t> dear;
    for (std::size_t i = 0; i < report_.plans.size(); ++i)
      if (wishes_.prefer != lumber::Prefer::cost || report_.plans[i].plan.totals.cost > 0)
        dear.push_back(i);
    return dear;
  }

  /// Plans all as chosen; parts that find no place go back to where they were. False, and all is
  /// as before, where that gains nothing.
  bool take_if_better(const ChosenWays& chosen) {
    const std::vector<MaterialPlan> plans = report_.plans;
    const ChosenWays before = std::exchange(chosen_, chosen);
    const Merit merit = merit_by_volume();
    plan_as_chosen();
    if (send_back(before)) plan_as_chosen();
    if (merit_by_volume() < merit) return true;
    chosen_ = before;
    report_.plans = plans;
    return false;
  }

  /// Between thicknesses stock is compared by volume: none is planed from thicker without a gain.
  Merit merit_by_volume() const {
    Merit merit = merit_of_all();
    merit.area = 0;
    for (const MaterialPlan& plan : report_.plans)
      merit.area += lumber::square_mm(plan.plan.totals.area_used) *
                    static_cast<double>(plan.thickness.thickness.steps());
    return merit;
  }

  bool send_back(const ChosenWays& before) {
    bool any = false;
    for (const MaterialPlan& plan : report_.plans) {
      for (const lumber::Unplaced& each : plan.plan.unplaced) {
        const std::size_t part = plan.pieces[each.want].part;
        any = any || chosen_[part] != before[part];
        chosen_[part] = before[part];
      }
    }
    return any;
  }

  /// Plans all anew after the change, and takes it back where that gains nothing.
  template <typename Change>
  void plan_if_better(const Change& change) {
    const auto chosen = chosen_;
    const auto lacks = first_lack_;
    const std::vector<MaterialPlan> plans = report_.plans;
    const std::vector<UnplacedPart> unplaced = report_.unplaced;
    const Merit before = merit_of_all();
    change();
    while (plan_all()) {
    }
    if (merit_of_all() < before) return;
    chosen_ = chosen;
    first_lack_ = lacks;
    report_.plans = plans;
    report_.unplaced = unplaced;
  }

  /// A part may have been refused for another's sake that was refused too, later.
  void try_refused_again() {
    constexpr std::size_t kMostTrials = 12;
    std::vector<std::size_t> parts;
    for (const UnplacedPart& each : report_.unplaced)
      if (!ways_[each.part].empty() && parts.size() < kMostTrials) parts.push_back(each.part);
    for (const std::size_t part : parts) {
      plan_if_better([&] {
        std::erase_if(report_.unplaced, [&](const UnplacedPart& it) { return it.part == part; });
        chosen_[part] = 0;
      });
    }
  }

  void keep_what_was_chosen() {
    for (std::size_t i = 0; i < report_.parts.size(); ++i) {
      if (chosen_[i] >= ways_[i].size()) continue;
      report_.rough[i] = way_of(i).rough;
      const RoughPart& first = ways_[i].front().rough;
      report_.rough[i]->thicker = report_.rough[i]->stock_thickness > first.stock_thickness ||
                                  report_.rough[i]->layers > first.layers;
    }
    std::sort(report_.unplaced.begin(), report_.unplaced.end(),
              [](const UnplacedPart& a, const UnplacedPart& b) { return a.part < b.part; });
  }

  LumberReport& report_;
  LumberWishes wishes_;
  std::vector<std::vector<Way>> ways_;  // of each part
  std::vector<std::size_t> chosen_;     // of them; past the end: none
  struct IdleBoards {
    std::string material;
    StockThickness thickness;
    lumber::Area area;
  };
  std::vector<IdleBoards> idle_;
  std::int64_t work_ = 0;                // of all plans so far, counted
  std::int64_t most_trial_work_ = 0;     // what it may come to by trials of other stock
  std::vector<std::string> first_lack_;  // why the best way did not do
};

/// Pass after pass, as many as the effort says, of which the best is kept: so a greater effort
/// finds all that a lesser one does.
class Passes {
 public:
  Passes(LumberReport& report, const LumberWishes& wishes) : best_(report), wishes_(wishes) {}

  void run() {
    const LumberReport bare = best_;
    Planner first(best_, wishes_of(1));
    first.run();
    if (!best_.has_stock || !best_.problems.empty()) return;
    bound_every_way(best_, first.ways(), wishes_);
    if (wishes_.effort == 1) return;
    Merit merit = first.merit_of_all();
    for (int pass = 2; pass <= wishes_.effort && !nothing_to_gain(); ++pass) {
      LumberReport other = bare;
      Planner planner(other, wishes_of(pass));
      planner.run();
      if (planner.merit_of_all() < merit) {
        merit = planner.merit_of_all();
        std::swap(best_, other);
      }
      raise_bounds(other);
    }
    bound_every_way(best_, first.ways(), wishes_);
  }

 private:
  /// Another seed each; every second one looks twice as long, every fourth four times.
  LumberWishes wishes_of(int pass) const {
    constexpr int kLongest = 16;
    constexpr std::uint64_t kFar = 0x9E3779B97F4A7C15;
    LumberWishes wishes = wishes_;
    wishes.effort = std::min(pass & -pass, kLongest);
    wishes.seed += kFar * static_cast<std::uint64_t>(pass - 1);
    return wishes;
  }

  bool nothing_to_gain() const {
    return best_.unplaced.empty() &&
           std::all_of(best_.bounds.begin(), best_.bounds.end(),
                       [](const PlansBound& each) { return each.bounds.proven; }) &&
           std::all_of(best_.plans.begin(), best_.plans.end(),
                       [](const MaterialPlan& plan) { return plan.plan.split_groups.empty(); });
  }

  void raise_bounds(const LumberReport& other) {
    for (MaterialPlan& plan : best_.plans)
      for (const MaterialPlan& each : other.plans)
        raise_bound(plan, each);
  }

  LumberReport& best_;
  const LumberWishes& wishes_;
};

}  // namespace

bool same_material(const std::string& a, const std::string& b) {
  return lower(a) == lower(b) || is_one_species(a, b);
}

lumber::Stock stock_of(const StockItem& item, const LumberReport& report) {
  lumber::Stock stock;
  stock.id = item.id;
  stock.length = item.length;
  stock.width = item.width;
  if (item.count) stock.count = *item.count;
  stock.bought = item.price.has_value();
  stock.cost = cost_in(item, report.money_unit);
  stock.end_trim = item.end_trim.value_or(report.stock.sawing.end_trim);
  stock.edge_trim = item.edge_trim.value_or(report.stock.sawing.edge_trim);
  stock.grain = item.grain;
  stock.defects = item.defects;
  return stock;
}

void make_plans(LumberReport& report, const LumberWishes& wishes) {
  Passes(report, wishes).run();
}

}  // namespace haunch
