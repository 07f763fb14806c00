// The kind of work `door`: a leaf of grooved frame and panels.
#pragma once

#include <memory>
#include <string_view>
#include <vector>

#include "document.h"
#include "door_plan.h"
#include "kind.h"
#include "spec.h"

namespace haunch {

JobReading read_door(const Value& item, const ShopDefaults* shop, std::string_view default_id);

/// A door whose spec is read and filled from the shop file.
class DoorJob : public Job {
 public:
  Spec spec;

  Worked work() const override;
  std::vector<Lever> levers() const override;
  std::unique_ptr<Job> with(const Lever& lever, Length value) const override;
  std::vector<Alternative> alternatives() const override;

 private:
  /// A leaf's plan, and the leaf itself where it was set out already, to see what its wood does.
  struct PlannedLeaf {
    PlannedDoor door;
    std::optional<Assembly> set_out = {};
  };

  /// The leaves of a pair are planned alike; what the one assumes the other does.
  PlannedLeaf plan(WhichLeaf leaf = WhichLeaf::left) const;
  std::optional<Alternative> quarter_sawn() const;
  Alternative one_more_muntin() const;
  void add_builds(std::vector<Alternative>& all, bool drier) const;
  void set_rail(Spec& changed, std::string_view place, Length value) const;
  std::vector<RailSpec> planned_rails() const;
};

/// What the solid panels of a leaf go through in a usual year, where its spec does not speak of it
/// and their wood is known.
std::optional<Season> usual_year_of(const Spec& leaf);
/// The same, with what was taken for it.
void take_usual_year(Job& job, const Spec& leaf);

}  // namespace haunch
