#include "timing.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <tuple>

#include "operation_names.h"

namespace haunch {
namespace {

constexpr std::string_view kAll = "all";

bool is_group(std::string_view name) {
  return std::find(std::begin(kWords<WorkGroup>), std::end(kWords<WorkGroup>), name) !=
         std::end(kWords<WorkGroup>);
}

bool is_all(const std::string& name) {
  return name.empty() || name == kAll;
}

/// The work of an order that a row names. What is an operation of it by its whole name is that
/// alone: "tenon" is no haunch where there are both.
std::vector<const HourLine*> named_by(const HoursPlan& hours, const std::string& name) {
  std::vector<const HourLine*> whole;
  std::vector<const HourLine*> family;
  for (const HourLine& line : hours.lines) {
    const bool by_group = is_all(name) || word_of(line.group) == name;
    const std::string operation = hyphened(line.operation);
    if (by_group || operation == hyphened(name)) whole.push_back(&line);
    if (is_family_of(hyphened(name), operation)) family.push_back(&line);
  }
  return whole.empty() ? family : whole;
}

/// Rows matched with the work that is planned.
class Notebook {
 public:
  Notebook(const std::vector<ActualRow>& rows, const std::vector<PlannedJob>& jobs) : jobs_(jobs) {
    for (const ActualRow& row : rows)
      take(row);
  }

  Timings timings() && {
    Timings timings{{}, std::move(problems_)};
    for (auto& [key, timing] : timings_)
      timings.all.push_back(std::move(timing));
    return timings;
  }

 private:
  using Key = std::tuple<std::string, std::string, std::string>;

  void problem(std::string message, std::string column, std::uint32_t offset) {
    problems_.push_back({"column " + std::move(column), std::move(message), offset});
  }

  const PlannedJob* job_of(const ActualRow& row) {
    const auto its = std::find_if(jobs_.begin(), jobs_.end(),
                                  [&](const PlannedJob& job) { return job.order == row.order; });
    if (its != jobs_.end()) return &*its;
    std::vector<std::string_view> known;
    for (const PlannedJob& job : jobs_)
      known.push_back(job.order);
    problem("\"" + row.order + "\" is no order that is given here" + offered(row.order, known) +
                "; give its spec too, or leave the row out",
            "order", row.order_offset);
    return nullptr;
  }

  static std::string offered(const std::string& name, const std::vector<std::string_view>& known) {
    const std::string_view nearest = nearest_word(name, known);
    return nearest.empty() ? "" : ", as \"" + std::string(nearest) + "\" is";
  }

  void take(const ActualRow& row) {
    const PlannedJob* job = job_of(row);
    if (job == nullptr) return;
    Timing timing;
    timing.job = {row.order, row.date};
    timing.name = row.operation;
    timing.taken = row.minutes.minutes();
    timing.lines = named_by(job->hours, row.operation);
    if (timing.lines.empty()) {
      not_of_it(row, *job);
      return;
    }
    timing.of_some = row.pieces.has_value();
    if (row.pieces) timing.pieces_share = pieces_share(row, *job, timing.lines);
    if (timing.pieces_share > 1) {
      problem(std::to_string(*row.pieces) + " is more than the order has of it; look at the " +
                  "number, or give as many in the spec",
              "pieces", row.pieces_offset);
      return;
    }
    if (timing.planned() > 0)
      add(row, timing);
    else
      problem("no minutes are planned for it, so that nothing can be corrected by what it took",
              "operation", row.operation_offset);
  }

  /// Of what was not worked by the piece: so many of the items.
  static double pieces_share(const ActualRow& row, const PlannedJob& job,
                             const std::vector<const HourLine*>& lines) {
    std::int64_t planned = job.quantity;
    if (!is_all(row.operation) && !is_group(row.operation)) {
      planned = 0;
      for (const HourLine* line : lines)
        planned = std::max(planned, line->pieces);
    }
    return static_cast<double>(*row.pieces) /
           static_cast<double>(std::max<std::int64_t>(planned, 1));
  }

  /// Rows of one job and work add up: their minutes, and the pieces where all tell of some.
  void add(const ActualRow& row, const Timing& timing) {
    const Key key{row.order, row.date, is_all(row.operation) ? std::string(kAll) : row.operation};
    const auto [its, is_new] = timings_.try_emplace(key, timing);
    if (is_new) return;
    Timing& sum = its->second;
    sum.taken += timing.taken;
    sum.pieces_share = sum.of_some && timing.of_some ? sum.pieces_share + timing.pieces_share : 1;
    sum.of_some = sum.of_some && timing.of_some;
  }

  void not_of_it(const ActualRow& row, const PlannedJob& job) {
    std::vector<std::string_view> known{kAll};
    known.insert(known.end(), std::begin(kWords<WorkGroup>), std::end(kWords<WorkGroup>));
    for (const HourLine& line : job.hours.lines)
      known.push_back(line.operation);
    const std::string name = hyphened(row.operation);
    if (names_operation(name) || is_group(name))
      problem("\"" + row.order + "\" has no " + row.operation +
                  " in it; look at the order, or at the work",
              "operation", row.operation_offset);
    else
      problem("\"" + row.operation + "\" is no work of \"" + row.order + "\"" +
                  offered(row.operation, known) +
                  "; write an operation, a group (milling, machining, bench, finish, site), or all",
              "operation", row.operation_offset);
  }

  const std::vector<PlannedJob>& jobs_;
  std::map<Key, Timing> timings_;
  std::vector<Problem> problems_;
};

}  // namespace

double Timing::planned_of(const HourLine& line) const {
  const bool once = line.unit == WorkUnit::order || line.unit == WorkUnit::trip;
  return line.setup.minutes() + line.run.minutes() * (once ? 1 : pieces_share);
}

double Timing::planned() const {
  double sum = 0;
  for (const HourLine* line : lines)
    sum += planned_of(*line);
  return sum;
}

Timings timings_of(const std::vector<ActualRow>& rows, const std::vector<PlannedJob>& jobs) {
  return Notebook(rows, jobs).timings();
}

}  // namespace haunch
