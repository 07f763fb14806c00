// Checking an assembly: from its wood alone, as a joiner does at a dry fit.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "finding.h"
#include "haunch/length_text.h"
#include "haunch/wood.h"
#include "kind.h"

namespace haunch {

/// Every check on every joint and piece, in a fixed order. `unit` is the shop's: the trade's limits
/// come in both.
std::vector<Finding> check_assembly(const Assembly& assembly, Unit unit);

/// The same of a job's work, with what goes by more than its wood: by what its leaves serve for,
/// and of panels by a usual year where nothing is said of moisture.
std::vector<Finding> check_built(const Assembly& assembly, const Job& job);

/// The same, and where the job has seasons those of its wood at their moistures.
std::vector<Finding> check_job(const Assembly& assembly, const Job& job);

/// The families of checks that some findings came from: enough to see what became of these.
class ChecksOf {
 public:
  /// `findings` are of check_job.
  explicit ChecksOf(const std::vector<Finding>& findings);

 private:
  friend class GradualChecks;
  std::vector<bool> families_;  // of those in their order
  bool moved_ = false;          // those of wood at the moistures of a job's seasons too
};

struct Bench;

/// check_job, a part at a time: what is not looked at is not measured, and nothing is twice.
class GradualChecks {
 public:
  GradualChecks(const Assembly& assembly, const Job& job);
  ~GradualChecks();

  /// What some families find, in their order; of all of them.
  std::vector<Finding> some(const ChecksOf& checks);
  std::vector<Finding> all();

 private:
  const std::vector<Finding>& moved();

  const Assembly& assembly_;
  const Job& job_;
  std::unique_ptr<Bench> bench_;
  std::optional<std::vector<Finding>> moved_;
};

/// Every rule that check_assembly may report, in the order of its families.
std::vector<const Rule*> all_rules();

/// Shelves whose sag is no finding, as nothing is known of how stiff they are.
std::optional<Caution> shelves_not_looked_at(const Assembly& assembly, const Job& job);

}  // namespace haunch
