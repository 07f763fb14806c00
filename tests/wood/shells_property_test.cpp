// Every piece of every example and of random work as a closed shell: one body, its volume that of
// blank less cuts. HAUNCH_TEST_SEED=n runs the spec with that seed again.
#include "../setups/examples.h"
#include "../shells.h"
#include "bench.h"
#include "frame_draw.h"
#include "property_runs.h"
#include "random_cabinet.h"
#include "random_spec.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

std::string piece_faults(const Piece& piece) {
  Piece alone = piece;
  alone.place = on_bench(piece);
  const Solid solid = solid_of(alone, Fittings::let_in);
  const std::string who = piece.mark + " " + piece.name + ": ";
  const auto shell = shell_of(solid.wood);
  if (!shell) return who + "no shell\n";
  std::string faults = faults_of(*shell);
  if (!faults.empty()) faults.insert(0, who);
  const double volume = volume_of(solid);
  if (std::abs(volume_of(*shell) - volume) > 1e-6 * volume)
    faults += who + "volume " + std::to_string(volume_of(*shell)) + " of " +
              std::to_string(volume) + "\n";
  const long sum = euler(*shell);
  if (sum % 2 != 0 || sum > 2 * static_cast<long>(shell->bodies))
    faults += who + "Euler's rule comes to " + std::to_string(sum) + "\n";
  return faults;
}

std::string wood_faults(const Assembly& wood) {
  std::string faults;
  for (const Piece& piece : wood.pieces)
    faults += piece_faults(piece);
  return faults;
}

Outcome try_shells(const std::string& json, std::string& wrong) {
  const Trial trial = work(json);
  if (!trial.assembly) return Outcome::refused;
  wrong += wood_faults(*trial.assembly);
  return Outcome::worked;
}

}  // namespace

TEST_CASE("Every piece of every example is one closed shell with the volume of its wood") {
  for (const Assembly& wood : all_examples()) {
    CHECK(wood_faults(wood).empty());
    for (const Piece& piece : wood.pieces) {
      const auto shell = shell_of(solid_of(piece, Fittings::let_in).wood);
      INFO(piece.mark << " " << piece.name);
      CHECK((shell && shell->bodies == 1));
    }
  }
}

TEST_CASE("Every piece of random doors is a closed shell with the volume of its wood") {
  require_worked_share(run_over(seeds_for(150),
                                [](std::uint64_t seed, std::string& wrong) {
                                  const DoorSpec spec = random_door(seed, Keys::some);
                                  return try_shells(to_json(spec, {spec.unit, seed}), wrong);
                                }),
                       40);
}

TEST_CASE(
    "Every piece of random cabinets and drawers is a closed shell with the volume of its wood") {
  require_worked_share(run_over(seeds_for(150),
                                [](std::uint64_t seed, std::string& wrong) {
                                  return try_shells(random_cabinet(seed).json, wrong);
                                }),
                       40);
}

TEST_CASE("Every piece of random sets is a closed shell with the volume of its wood") {
  require_worked_share(run_over(seeds_for(50),
                                [](std::uint64_t seed, std::string& wrong) {
                                  return try_shells(FrameDraw(seed).set(), wrong);
                                }),
                       40);
}

}  // namespace haunch::test
