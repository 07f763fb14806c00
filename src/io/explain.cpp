#include "explain.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <utility>

#include "dotted_keys.h"
#include "explain_rework.h"
#include "json_reader.h"
#include "report.h"

namespace haunch {
namespace {

constexpr std::string_view kShopFile = "the shop file";
/// How far a value is pushed to see whether it has any say at all, where sizes go from one cutter
/// to the next: by a twelfth.
constexpr std::int64_t kPush = 12;

std::string pointer(std::string_view dotted) {
  std::string path;
  for (const char c : "." + std::string(dotted))
    path += c == '.' ? '/' : c;
  return path;
}

/// What stands last in brackets: a book, "trade practice".
std::string source_in(const std::string& why) {
  const std::size_t open = why.rfind('(');
  if (open == std::string::npos || !why.ends_with(')')) return {};
  return why.substr(open + 1, why.size() - open - 2);
}

bool is_length(const AssumedValue& value) {
  return value.kind == AssumedValue::Kind::length;
}

/// One item's explanation in the making.
class Explainer {
 public:
  Explainer(const Record& record, const ShopDefaults* shop, const OtherItems* others)
      : record_(record),
        item_(*record.item),
        shop_(shop),
        others_(others),
        rework_(shop, record.default_id, others) {}

  ExplainOutcome explain() {
    JobReading reading = read_job_among(item_, shop_, record_.default_id, others_);
    if (!reading.job) return {{}, std::move(reading.problems)};
    ItemOutcome outcome = report_item(std::move(reading.job), {.checks = true, .making = true});
    if (!outcome.report) return {{}, std::move(outcome.problems)};
    const ItemReport& report = *outcome.report;
    result_.id = report.job->id;
    result_.source = record_.source;
    result_.unit = report.job->unit;
    base_ = figures_of(report);
    list_given(report.job->given);
    list_assumed(report.assumed);
    pin();
    join_stuck();
    result_.stated = result_.values.size();
    explain_assumed();
    explain_figures();
    list_checks(report);
    return {std::move(result_), {}};
  }

 private:
  std::size_t add(ExplainedValue value) {
    index_.emplace(value.what, result_.values.size());
    result_.values.push_back(std::move(value));
    return result_.values.size() - 1;
  }
  Length length_of(std::size_t number) const { return result_.values[number].value.length; }

  // ---- what was given and assumed

  void list_given(const std::vector<Given>& given) {
    for (const Given& each : given) {
      add({each.key, each.length, SaidIn::spec, "written " + each.written, place_of(each.key)});
      movables_.push_back({each.key, each.key, each.length});
    }
  }

  /// "side-door.json:6:30"
  std::string place_of(const std::string& key) const {
    return record_.place_text(offset_of(item_, pointer(key)));
  }

  void list_assumed(const std::vector<Assumed>& assumed) {
    for (const auto& [what, each] : named(assumed)) {
      if (index_.contains(what)) continue;
      const bool differs = what != each->key;
      const SaidIn from = each->why == kShopFile ? SaidIn::shop
                          : differs              ? SaidIn::worked_out
                                                 : SaidIn::built_in;
      const std::size_t number =
          add({what, each->value, from, differs ? after_whose(each->why) : each->why,
               source_in(each->why)});
      if (!differs)
        taken_.push_back(number);
      else if (is_length(each->value))
        differing_[whose(each->why)].push_back({what, each->key, each->value.length});
    }
  }

  // ---- what can be moved

  /// Says everything that was taken, so that each can be moved by itself. What follows from others
  /// that are said, and can't be moved without them, or only one way, is left to follow.
  void pin() {
    pinned_ = item_;
    for (const std::size_t number : taken_) {
      const auto [what, value] =
          std::pair(result_.values[number].what, result_.values[number].value);
      const bool is_list = value.kind == AssumedValue::Kind::lengths;
      if (!is_length(value) && !is_list) continue;
      Value more = pinned_;
      if (!put_at(more, what, written(value))) continue;
      const auto report = rework_.report(more, true);
      if (!report || figures_of(*report) != base_) continue;
      if (is_list) {
        pinned_ = std::move(more);
        list_each(what, value.lengths);
        continue;
      }
      const Movable lever(what, what, value.length);
      if (!rework_.can_move(more, lever) || (is_uneven(more, lever) && follows(lever))) continue;
      pinned_ = std::move(more);
      movables_.push_back(lever);
    }
  }

  /// The sizes of a list that was taken whole.
  void list_each(const std::string& list, const std::vector<Length>& lengths) {
    for (std::size_t i = 0; i < lengths.size(); ++i) {
      const std::string what = list + "." + std::to_string(i);
      add({what, lengths[i], SaidIn::built_in, "as " + list + " is taken", ""});
      movables_.push_back({what, what, lengths[i]});
    }
  }

  /// Whether some figure goes with a value one way otherwise than the other.
  bool is_uneven(const Value& document, const Movable& lever) const {
    const auto up = rework_.figures(moved(document, lever, kNudge));
    const auto down = rework_.figures(moved(document, lever, -kNudge));
    return std::any_of(base_.begin(), base_.end(), [&](const NamedLength& figure) {
      return slope_of(figure.length, figure_in(up, figure.name), figure_in(down, figure.name))
                 .kind == Slope::Kind::uneven;
    });
  }

  /// Whether a size that is left open goes with one that is said.
  bool follows(const Movable& open) const {
    return std::any_of(movables_.begin(), movables_.end(), [&](const Movable& lever) {
      const auto at = figure_in(rework_.taken(moved(pinned_, lever, kNudge)), open.what);
      return at && *at != open.value();
    });
  }

  /// Values that can't be moved one by one, as the work wants some of them to be the same, are
  /// moved together with those of the same size: the first of them has their part.
  void join_stuck() {
    std::vector<Movable> free, joined;
    for (const Movable& lever : movables_) {
      if (rework_.can_move(pinned_, lever)) {
        free.push_back(lever);
        continue;
      }
      const auto same = std::find_if(joined.begin(), joined.end(), [&](const Movable& it) {
        return it.value() == lever.value();
      });
      if (same == joined.end()) {
        joined.push_back(lever);
      } else {
        same->said.push_back(lever.said.front());
        result_.values[index_.at(lever.what)].rule += ", and the same as " + same->what;
      }
    }
    for (const Movable& lever : joined)
      if (rework_.can_move(pinned_, lever))
        free.push_back(lever);
      else
        some_stuck_ = true;
    movables_ = std::move(free);
  }

  // ---- of what sums they are made

  /// Which of what was taken follows other values, and how.
  void explain_assumed() {
    std::map<std::size_t, std::vector<Movable>> led_by;
    const auto base = rework_.taken(item_);
    for (const Movable& lever : movables_)
      for (const Length by : {kNudge, floor_divide(lever.value(), kPush)})
        if (const auto all = rework_.taken(moved(item_, lever, by)))
          for (const std::size_t number : taken_) {
            const std::string& what = result_.values[number].what;
            const bool is_later = index_.at(lever.what) >= number;  // and follows it, if anything
            if (is_later || figure_in(all, what) == figure_in(base, what)) continue;
            auto& leaders = led_by[number];
            if (leaders.empty() || leaders.back().what != lever.what) leaders.push_back(lever);
          }
    for (const auto& [number, leaders] : led_by) {
      if (result_.values[number].from == SaidIn::shop) continue;
      result_.values[number].from = SaidIn::worked_out;
      if (is_length(result_.values[number].value)) explain_one(number, leaders);
    }
  }

  /// With all others said, and this one alone left to follow them.
  void explain_one(std::size_t number, const std::vector<Movable>& leaders) {
    const std::string what = result_.values[number].what;
    const Length at = length_of(number);
    Value open = item_;
    for (const Movable& lever : movables_)
      if (lever.what != what && result_.values[index_.at(lever.what)].from != SaidIn::spec)
        open = moved(open, lever, Length());
    if (figure_in(rework_.taken(open), what) != at) return;
    std::vector<Term> terms;
    for (const Movable& lever : leaders) {
      const Slope slope = slope_of(at, figure_in(rework_.taken(moved(open, lever, kNudge)), what),
                                   figure_in(rework_.taken(moved(open, lever, -kNudge)), what));
      if (slope.kind == Slope::Kind::uneven) return;
      if (slope.kind == Slope::Kind::even) terms.push_back({slope.factor, index_.at(lever.what)});
    }
    if (!terms.empty()) complete(number, std::move(terms));
  }

  /// The item with all said that was taken, and what the figures are with each value moved. Sizes
  /// that differ from rail to rail have one key: for each rail there is a setting in which all have
  /// its size, and what stays the same there may be told by it.
  struct Moved {
    std::size_t value;
    std::optional<Figures> up, down;

    Slope slope(const NamedLength& figure) const {
      return slope_of(figure.length, figure_in(up, figure.name), figure_in(down, figure.name));
    }
  };
  struct Setting {
    std::optional<Figures> base;
    std::vector<Moved> shared, own;
  };

  std::vector<Moved> each_moved(const Value& document, const std::vector<Movable>& levers) const {
    std::vector<Moved> all;
    for (const Movable& lever : levers)
      all.push_back({index_.at(lever.what), rework_.figures(moved(document, lever, kNudge)),
                     rework_.figures(moved(document, lever, -kNudge))});
    return all;
  }

  Setting setting_of(const std::vector<Movable>& own) const {
    Value document = pinned_;
    for (const Movable& size : own)
      document = moved(document, size, Length());
    Setting setting{rework_.figures(document), {}, {}};
    if (!setting.base) return setting;
    return {std::move(setting.base), each_moved(document, movables_), each_moved(document, own)};
  }

  void explain_figures() {
    std::vector<Setting> settings{setting_of({})};
    for (const auto& [rail, sizes] : differing_)
      settings.push_back(setting_of(sizes));
    for (const NamedLength& figure : base_) {
      if (index_.contains(figure.name)) continue;
      const auto own = std::find_if(settings.begin() + 1, settings.end(), [&](const Setting& it) {
        return figure_in(it.base, figure.name) == figure.length &&
               std::any_of(it.own.begin(), it.own.end(), [&](const Moved& each) {
                 return each.slope(figure).kind == Slope::Kind::even;
               });
      });
      explain_figure(figure, own == settings.end() ? settings.front() : *own);
    }
  }

  void explain_figure(const NamedLength& figure, const Setting& setting) {
    const std::size_t number = add({figure.name, figure.length, SaidIn::worked_out, "", ""});
    std::vector<Term> terms;
    for (const auto* levers : {&setting.shared, &setting.own})
      for (const Moved& each : *levers) {
        const Slope slope = each.slope(figure);
        if (slope.kind == Slope::Kind::even) terms.push_back({slope.factor, each.value});
        if (slope.kind != Slope::Kind::uneven) continue;
        result_.values[number].rule = "no one sum of other values";
        return;
      }
    complete(number, std::move(terms));
  }

  /// Gives a value its terms, and what they leave as a term of its own.
  void complete(std::size_t number, std::vector<Term> terms) {
    constexpr std::int64_t kCommon = kNudge.steps();  // of all that a factor can have under it
    Length rest = length_of(number) * kCommon;
    for (const Term& term : terms)
      rest -= length_of(term.value) * (term.factor.over * (kCommon / term.factor.under));
    const Length left = Length::from_steps(rest.steps() / kCommon);  // less than a step is rounding
    const std::string what = result_.values[number].what;
    if (left != Length() && some_stuck_) {
      result_.values[number].rule = "no sum of values that can be changed one by one";
      return;
    }
    if (left != Length() && !terms.empty()) {
      const std::size_t fixed =
          add({what + ".rest", left, SaidIn::built_in, "what no value has a part in", ""});
      terms.push_back({{1, 1}, fixed});
    }
    ExplainedValue& value = result_.values[number];
    if (terms.empty()) {
      value.from = SaidIn::built_in;
      value.rule = "the same whatever is stated";
    }
    value.terms = std::move(terms);
  }

  // ---- checks

  void list_checks(const ItemReport& report) {
    for (const Finding& finding : report.findings) {
      if (!finding.measured) continue;
      std::string what(finding.rule->check);
      for (const std::size_t part : finding.parts)
        what += "." + report.wood.pieces[part].mark;
      if (finding.joint) what += "." + joint_id(*finding.joint);
      const std::string once = what;
      for (int i = 2; index_.contains(what); ++i)
        (what = once).append("#").append(std::to_string(i));
      const std::string reason(finding.rule->reason);
      std::string words = finding_message(finding, result_.unit);
      if (finding.status == Status::ok) words.append(": ").append(reason);
      add({what, finding.value, SaidIn::worked_out, std::move(words), source_in(reason)});
    }
  }

  const Record& record_;
  const Value& item_;
  const ShopDefaults* shop_;
  const OtherItems* others_;
  Rework rework_;
  Explanation result_;
  std::map<std::string, std::size_t> index_;
  std::vector<NamedLength> base_;
  std::vector<std::size_t> taken_;  // of the values: what was taken under a key of its own
  std::vector<Movable> movables_;
  bool some_stuck_ = false;  // a value can't be moved, so what is left of a sum may be its part
  std::map<std::string, std::vector<Movable>> differing_;  // by whose they are: "top rail"
  Value pinned_;
};

}  // namespace

ExplainOutcome explain(const Record& record, const ShopDefaults* shop, const OtherItems* others) {
  return Explainer(record, shop, others).explain();
}

std::vector<std::size_t> meant_by(const Explanation& explanation, std::string_view what) {
  std::vector<std::size_t> below;
  for (std::size_t i = 0; i < explanation.values.size(); ++i) {
    const std::string& name = explanation.values[i].what;
    if (name == what) return {i};
    if (name.size() > what.size() && name.starts_with(what) && name[what.size()] == '.')
      below.push_back(i);
  }
  return below;
}

std::vector<std::size_t> told_of(const Explanation& explanation, std::string_view what) {
  std::vector<std::size_t> told(explanation.values.size());
  std::iota(told.begin(), told.end(), std::size_t{0});
  if (what.empty()) return told;
  std::vector<bool> wanted(told.size());
  std::vector<std::size_t> open = meant_by(explanation, what);
  while (!open.empty()) {
    const std::size_t number = open.back();
    open.pop_back();
    if (wanted[number]) continue;
    wanted[number] = true;
    for (const Term& term : explanation.values[number].terms)
      open.push_back(term.value);
  }
  std::erase_if(told, [&](std::size_t number) { return !wanted[number]; });
  return told;
}

std::string nearest_to(const Explanation& explanation, std::string_view what) {
  std::vector<std::string_view> names;
  for (const ExplainedValue& value : explanation.values)
    names.push_back(value.what);
  return std::string(nearest_word(what, names));
}

std::string fraction_text(Fraction fraction) {
  const std::string over = std::to_string(fraction.over);
  return fraction.under == 1 ? over : over + "/" + std::to_string(fraction.under);
}

}  // namespace haunch
