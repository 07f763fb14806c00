// What a small workshop has. Of its figures one has a source: no piece shorter than 12 in. (305 mm)
// is run past a spindle or router cutter without a fixture that carries it (manuals of spindle
// moulders, a government's guide to guarding machines, magazines' series on safety); the same is
// taken for planing and ripping. All others are ours, as machines of such a workshop usually have
// them, and so are the minutes: a shop that wants to count on them times its own.

#include <initializer_list>
#include <utility>

#include "usual_cutters.h"
#include "way.h"

namespace haunch {
namespace {

struct Minutes {
  double set, piece, metre;
};

constexpr SizeRange kAny = {};

class UsualMachines {
 public:
  UsualMachines(Unit unit, std::vector<Length> cutters)
      : unit_(unit), cutters_(cutters.empty() ? usual_cutters(unit) : std::move(cutters)) {}

  std::vector<Machine> all() const {
    return {crosscut_saw(), table_saw(),     crosscut_sled(), tenon_jig(),   surface_planer(),
            thicknesser(),  mortiser(),      router_table(),  coping_sled(), hand_router(),
            bandsaw(),      bandsaw_fence(), drill_press(),   bench()};
  }

 private:
  /// Millimetres, or sixteenths of an inch.
  Length size(int mm, int sixteenths) const {
    return unit_ == Unit::mm ? Length::from_mm(mm) : Length::from_inch_parts(sixteenths, 16);
  }
  SizeRange up_to(int mm, int inches) const { return {{}, size(mm, inches * 16)}; }
  Length shortest() const { return size(305, 12 * 16); }

  static Machine machine(std::string name, std::vector<Process> does, Minutes minutes) {
    Machine it;
    it.name = std::move(name);
    it.does = std::move(does);
    it.set_minutes = minutes.set;
    it.piece_minutes = minutes.piece;
    it.metre_minutes = minutes.metre;
    return it;
  }

  static Holding along_fence(WorkedLooks worked, SizeRange length, SizeRange width) {
    return {"along the fence", worked, DatumLies::at_fence, {length, width, kAny}, {}};
  }

  Machine crosscut_saw() const {
    Machine it = machine("crosscut saw", {Process::crosscut, Process::mitre}, {2, 0.5, 0});
    it.cutters = {{"crosscut blade", {}, size(80, 50), {}}};
    it.holds = {{"flat, against the fence",
                 WorkedLooks::sideways,
                 DatumLies::on_table,
                 {kAny, up_to(300, 12), kAny},
                 {}}};
    return it;
  }

  Machine table_saw() const {
    Machine it = machine("table saw", {Process::rip, Process::cut_sheet}, {3, 0.5, 0.3});
    it.cutters = {{"saw blade", {}, size(80, 50), {}}};
    it.smallest[0] = shortest();
    return it;
  }

  /// What is too wide for the crosscut saw.
  Machine crosscut_sled() const {
    Machine it = machine("table saw with sled", {Process::crosscut}, {5, 1, 0});
    it.cutters = {{"saw blade", {}, size(80, 50), {}}};
    it.holds = {{"flat on the sled",
                 WorkedLooks::sideways,
                 DatumLies::on_table,
                 {up_to(1500, 60), up_to(800, 32), kAny},
                 {}}};
    return it;
  }

  /// The work stands on its end and is carried past the blade.
  Machine tenon_jig() const {
    Machine it =
        machine("table saw with tenon jig", {Process::tenon, Process::finger}, {10, 1.5, 0});
    it.cutters = {{"saw blade", {}, size(80, 50), {}}};
    it.holds = {{"upright in the jig",
                 WorkedLooks::down,
                 DatumLies::at_fence,
                 {up_to(1500, 60), up_to(250, 10), kAny},
                 {}}};
    return it;
  }

  Machine surface_planer() const {
    Machine it = machine("surface planer", {Process::surface}, {2, 1, 0.5});
    it.holds = {along_fence(WorkedLooks::down, kAny, up_to(300, 12))};
    it.smallest = {shortest(), size(20, 12), size(10, 6)};
    return it;
  }

  Machine thicknesser() const {
    Machine it = machine("thicknesser", {Process::thickness}, {2, 0.5, 0.3});
    it.holds = {
        {"flat", WorkedLooks::up, DatumLies::at_fence, {kAny, up_to(300, 12), up_to(180, 7)}, {}}};
    it.smallest = {shortest(), size(20, 12), size(5, 3)};
    return it;
  }

  /// Wider chisels are longer.
  Machine mortiser() const {
    Machine it = machine("mortiser", {Process::mortise}, {8, 1.5, 15});
    for (const Length width : cutters_) {
      Length reach = size(95, 60);
      if (width < size(12, 8)) reach = size(75, 48);
      if (width < size(8, 5)) reach = size(60, 40);
      it.cutters.push_back({in_words(width, unit_) + " chisel", width, reach, {}});
    }
    it.holds = {{"clamped to the fence",
                 WorkedLooks::up,
                 DatumLies::at_fence,
                 {kAny, up_to(250, 10), up_to(130, 5)},
                 size(300, 12 * 16)}};
    return it;
  }

  /// For routers: straight ones as wide as the chisels, so that a groove agrees with its mortises.
  std::vector<Cutter> router_cutters() const {
    std::vector<Cutter> cutters;
    const Length step = size(6, 4);
    for (const Length width : cutters_) {
      const Length reach = width < size(8, 5) ? size(20, 12) : size(40, 26);
      cutters.push_back({in_words(width, unit_) + " straight cutter", width, reach, step});
    }
    for (const char* shape : {"ovolo", "cove", "bevel", "bead"})
      cutters.push_back({std::string(shape) + " cutter", {}, size(25, 16), step});
    return cutters;
  }

  Machine router_table() const {
    Machine it =
        machine("router table", {Process::groove, Process::rebate, Process::mould, Process::raise},
                {8, 0.5, 0.5});
    it.cutters = router_cutters();
    it.cutters.push_back({"panel-raising cutter", {}, size(25, 16), size(4, 3)});
    it.holds = {along_fence(WorkedLooks::down, up_to(3000, 120), up_to(800, 32))};
    it.smallest[0] = shortest();
    return it;
  }

  /// What is carried on a sled may be shorter.
  Machine coping_sled() const {
    Machine it = machine("router table with sled", {Process::cope}, {10, 1, 0});
    it.holds = {{"flat on the sled, backed",
                 WorkedLooks::sideways,
                 DatumLies::on_table,
                 {up_to(1500, 60), up_to(250, 10), kAny},
                 {}}};
    return it;
  }

  /// Along a guide, the work as is handy; housings too, as few wide boards go along a fence on end.
  Machine hand_router() const {
    Machine it = machine("hand router",
                         {Process::groove, Process::rebate, Process::house, Process::mould,
                          Process::recess, Process::mortise},
                         {8, 1.5, 1});
    it.cutters = router_cutters();
    it.smallest[0] = shortest();
    return it;
  }

  static std::vector<Cutter> bandsaw_blade(Length reach) {
    return {{"bandsaw blade", {}, reach, {}}};
  }

  Machine bandsaw() const {
    Machine it = machine("bandsaw", {Process::curve, Process::taper}, {2, 1, 1.5});
    it.cutters = bandsaw_blade(size(200, 128));
    it.holds = {{"flat on the table",
                 WorkedLooks::sideways,
                 DatumLies::on_table,
                 {up_to(2500, 100), up_to(350, 14), kAny},
                 {}}};
    it.smallest[0] = size(150, 96);
    return it;
  }

  /// Tenons that are too deep for the saw's blade: the work stands on its edge.
  Machine bandsaw_fence() const {
    Machine it = machine("bandsaw with fence", {Process::tenon}, {5, 1, 1.5});
    it.cutters = bandsaw_blade(size(200, 128));
    it.holds = {along_fence(WorkedLooks::sideways, up_to(2500, 100), up_to(200, 8))};
    it.smallest[0] = size(150, 96);
    return it;
  }

  Machine drill_press() const {
    Machine it = machine("drill press", {Process::bore}, {3, 0.5, 0});
    it.cutters = {{"bit", {}, size(80, 50), {}}};
    it.holds = {{"clamped to the fence",
                 WorkedLooks::up,
                 DatumLies::at_fence,
                 {up_to(2500, 100), up_to(350, 14), up_to(150, 6)},
                 size(600, 24 * 16)}};
    return it;
  }

  /// By hand, which does whatever no machine does.
  static Machine bench() {
    Machine it = machine("bench", {}, {5, 5, 5});
    for (std::size_t process = 0; process < std::size(kWords<Process>); ++process)
      it.does.push_back(static_cast<Process>(process));
    return it;
  }

  Unit unit_;
  std::vector<Length> cutters_;
};

}  // namespace

std::vector<Machine> usual_machines(Unit unit, std::vector<Length> cutters) {
  return UsualMachines(unit, std::move(cutters)).all();
}

}  // namespace haunch
