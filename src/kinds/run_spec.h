// What the spec of a run says.
#pragma once

#include <array>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "other_items.h"
#include "run_frame.h"
#include "run_lines.h"
#include "run_work.h"
#include "spec.h"
#include "spec_reader.h"

namespace haunch {

/// What the table has before the keys of runs.
inline constexpr std::string_view kRunRoot = "run.";

/// A cabinet that runs take, worked once, however often and at how many tries it is asked for.
class TakenCabinet {
 public:
  TakenCabinet(std::unique_ptr<const Job> job, std::vector<SetLine> its_lines)
      : set_lines(std::move(its_lines)), job_(std::move(job)) {}

  /// What each of the run's lines did to it.
  const std::vector<SetLine> set_lines;

  const Job& job() const { return *job_; }
  /// Throws LengthOverflow as Job::work() does. Not for several threads at once.
  const Worked& worked() const {
    if (!worked_) worked_ = job_->work();
    return *worked_;
  }

 private:
  std::unique_ptr<const Job> job_;
  mutable std::optional<Worked> worked_;
};

/// One in the order of a run.
struct RunEntry {
  enum class What : unsigned char { cabinet, filler, gap, end_panel };

  What what = What::cabinet;
  std::string id;                       // of a cabinet
  std::shared_ptr<TakenCabinet> taken;  // the same, once it was read
  Length width;                         // of the others, as it is said
  std::string purpose;                  // of a gap: "oven"
  std::optional<Length> front_height;   // of what is put in it
};

struct RunSpec {
  Spec own;
  std::vector<RunEntry> order;  // from the left
  std::vector<RunLine> lines;
  std::array<std::shared_ptr<const RunWork>, 2> through;  // in the corner at its left, its right
  std::vector<RunFrame> frames;
};

struct RunSpecReading {
  RunSpec spec;
  std::vector<Given> given;
  std::vector<Problem> problems;
};

RunSpecReading read_run_spec(const Value& item, const ShopDefaults* shop,
                             std::string_view default_id, const OtherItems* others);

}  // namespace haunch
