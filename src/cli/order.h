// All items of an order, worked one after the other: for commands that tell of them together.
#pragma once

#include <functional>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "commands.h"
#include "complaints.h"
#include "report.h"
#include "shops.h"
#include "spec_source.h"
#include "tally.h"

namespace haunch {

class Order {
 public:
  /// `specs`: files, folders, or "-". What is wrong goes to `complaints`, which outlives it.
  Order(std::vector<std::string> specs, const Invocation& invocation, const Streams& streams,
        Complaints& complaints)
      : invocation_(invocation),
        streams_(streams),
        source_(std::move(specs), streams.in, invocation.ways),
        shops_(invocation, streams),
        complaints_(complaints) {}

  /// Finds the specs, and reads their shop files. False where one cannot be used.
  bool open() { return complaints_.can_read(source_) && shops_.take(source_.files(), complaints_); }

  /// Checks that fail are another's to tell of, and to raise the exit status for.
  void leave_checks() { minds_checks_ = false; }

  /// What else reads something of every job, and what it finds wrong with it: then it is refused.
  using AlsoReads = std::function<std::vector<Problem>(const Job&)>;
  void also_read(AlsoReads reads) { also_reads_ = std::move(reads); }

  /// An id that no item may have.
  void reserve(const std::string& id) { ids_.insert(id); }

  /// Works every item, and gives each that could be worked to `take`, in their order. Of two with
  /// one id the second is refused, as their pieces could not be told apart. Where checks are wanted
  /// one that fails is told of.
  void work(const Wanted& wanted, const std::function<void(ItemReport)>& take);

  /// Tells how many could not be worked, and `so` what comes of it: "no plan is made".
  void sum_up(const std::string& so) const;

  const Tally& tally() const { return tally_; }
  /// What was wrong with those that were refused.
  const std::vector<PlacedProblem>& problems() const { return problems_; }
  const Shops& shops() const { return shops_; }
  /// The unit of its first item.
  std::optional<Unit> unit() const { return unit_; }
  /// What a result is not to be written over.
  std::vector<std::string> files() const { return files_read(source_, shops_); }

 private:
  std::optional<ItemReport> worked(Record& record, const Wanted& wanted);
  bool pass_over(Record& record);
  bool admit(const ItemReport& item);
  void note(std::vector<PlacedProblem> problems);

  const Invocation& invocation_;
  const Streams& streams_;
  SpecSource source_;
  Shops shops_;
  Complaints& complaints_;
  std::optional<Unit> unit_;
  std::set<std::string> ids_;
  bool minds_checks_ = true;
  AlsoReads also_reads_;
  Tally tally_;
  std::vector<PlacedProblem> problems_;
};

}  // namespace haunch
