// How a task is done in a shop: the machine, the cutter, the holding, and what stands against it.
#include "way.h"

#include <tuple>

#include "examples.h"
#include "joint_tasks.h"
#include "making.h"
#include "milling.h"
#include "tasks.h"

namespace haunch {
namespace {

using namespace test;

Machine machine(std::string name, std::vector<Process> does, std::vector<Cutter> cutters = {}) {
  Machine it;
  it.name = std::move(name);
  it.does = std::move(does);
  it.cutters = std::move(cutters);
  return it;
}

Cutter chisel(double width, double reach) {
  return {"chisel", mm(width), mm(reach), {}};
}

Machine mortiser(std::vector<Cutter> cutters = {chisel(12, 70), chisel(16, 90)}) {
  return machine("mortiser", {Process::mortise}, std::move(cutters));
}

/// By the name of its machine and its cutter, with its passes: `bench`, `mortiser, 14 mm, 2`.
std::string told(const ShopWay& way, const std::vector<Machine>& machines) {
  if (!way.machine) return "none";
  const Machine& machine = machines[*way.machine];
  std::string text = machine.name;
  if (way.cutter) text += ", " + machine.cutters[*way.cutter].name;
  if (way.passes > 1) text += ", " + std::to_string(way.passes);
  return text;
}

std::string usually(const Task& task, Unit unit = Unit::mm) {
  const std::vector<Machine> machines = usual_machines(unit);
  const ShopWay way = way_for(task, machines);
  CHECK(way.findings.empty());
  return told(way, machines);
}

/// What stands against a way, but for its remedy.
bool is(const WayFinding& finding, WayFault fault, Length value, Length limit,
        std::size_t along = 0) {
  return std::tie(finding.fault, finding.value, finding.limit, finding.along) ==
         std::tie(fault, value, limit, along);
}

WayFinding only_finding(const ShopWay& way) {
  REQUIRE(way.findings.size() == 1);
  return way.findings.front();
}

TEST_CASE("A shop without a machine for it cannot do it") {
  const ShopWay way = way_for(mortise(14, 70), {machine("saw", {Process::rip})});
  CHECK_FALSE(way.machine);
  CHECK(is(only_finding(way), WayFault::no_machine, {}, {}));
}

TEST_CASE("Of two machines that can, the one that the shop names first is taken") {
  const std::vector<Machine> machines{machine("router", {Process::mortise}), mortiser()};
  CHECK(way_for(mortise(16, 70), machines).machine == 0);
}

TEST_CASE("A piece that is too short for the first machine goes to the next") {
  std::vector<Machine> machines{machine("router", {Process::groove}),
                                machine("bench", {Process::groove})};
  machines[0].smallest[0] = mm(305);
  CHECK(way_for(groove(8, 9, size_mm(304, 60, 22)), machines).machine == 1);
  CHECK(way_for(groove(8, 9, size_mm(305, 60, 22)), machines).machine == 0);
}

TEST_CASE("Where none can without a fault the one with the fewest is told, and its faults") {
  std::vector<Machine> machines{machine("small", {Process::mortise}, {chisel(20, 40)}),
                                mortiser({chisel(12, 60)})};
  machines[0].smallest[2] = mm(50);
  const ShopWay way = way_for(mortise(12, 70), machines);
  CHECK(way.machine == 1);
  CHECK(is(only_finding(way), WayFault::cutter_short, mm(60), mm(70)));
}

TEST_CASE("A mortise takes the chisel that is just as wide, in one pass") {
  const ShopWay way = way_for(mortise(16, 78), {mortiser({chisel(8, 90), chisel(16, 90)})});
  CHECK(way.cutter == 1);
  CHECK(way.passes == 1);
}

TEST_CASE("Else the widest that is narrower, side by side as often as it takes") {
  const std::vector<Machine> shop{mortiser({chisel(6, 90), chisel(8, 90), chisel(12, 90)})};
  const ShopWay twice = way_for(mortise(15, 78), shop);
  CHECK(twice.cutter == 2);
  CHECK(twice.passes == 2);
  CHECK(way_for(mortise(25, 78), shop).passes == 3);
  CHECK(twice.findings.empty());
}

TEST_CASE("A cutter is too wide for a mortise, not for a rebate") {
  const ShopWay way = way_for(mortise(10, 50), {mortiser()});
  CHECK(is(only_finding(way), WayFault::cutter_wide, mm(12), mm(10)));
  CHECK(way.cutter == 0);
  Task rebate = groove(10, 9);
  rebate.process = Process::rebate;
  CHECK(way_for(rebate, {machine("router", {Process::rebate}, {chisel(20, 30)})}).findings.empty());
}

TEST_CASE("A cutter that reaches just as deep as the cut does") {
  CHECK(way_for(mortise(12, 70), {mortiser()}).findings.empty());
  CHECK(is(only_finding(way_for(mortise(12, 70.1), {mortiser()})), WayFault::cutter_short, mm(70),
           mm(70.1)));
}

TEST_CASE("What goes right through is cut from both edges: the chisel need reach but half") {
  Task through = mortise(12, 118);
  through.setting.through = true;
  CHECK(way_for(through, {mortiser({chisel(12, 59)})}).findings.empty());
  CHECK(only_finding(way_for(through, {mortiser({chisel(12, 58)})})).limit == mm(59));
}

TEST_CASE("A deep cut takes passes by the step of its cutter, the last one shallow or not") {
  const auto passes = [](double depth) {
    return way_for(groove(8, depth),
                   {machine("router", {Process::groove}, {{"8 mm cutter", mm(8), mm(30), mm(6)}})})
        .passes;
  };
  CHECK(passes(6) == 1);
  CHECK(passes(6.1) == 2);
  CHECK(passes(12) == 2);
  CHECK(passes(13) == 3);
}

TEST_CASE("Passes side by side are gone over as deep each") {
  CHECK(way_for(groove(15, 13),
                {machine("router", {Process::groove}, {{"8 mm cutter", mm(8), mm(30), mm(6)}})})
            .passes == 6);
}

TEST_CASE("A hole wants a bit of just its diameter") {
  const std::vector<Machine> shop{
      machine("drill", {Process::bore}, {{"8", mm(8), {}, {}}, {"10", mm(10), {}, {}}})};
  CHECK(way_for(hole(10, 34), shop).cutter == 1);
  CHECK(is(only_finding(way_for(hole(9.5, 34), shop)), WayFault::cutter_missing, mm(10), mm(9.5)));
}

TEST_CASE("A cutter of which no width is told has any") {
  CHECK(way_for(hole(9.5, 34), {machine("drill", {Process::bore}, {{"bit", {}, mm(60), {}}})})
            .findings.empty());
}

TEST_CASE("An ovolo takes an ovolo's cutter, and nothing else a cutter that is named so") {
  const std::vector<Machine> shop{
      machine("router", {Process::mould, Process::groove},
              {{"Ovolo 6 mm", {}, {}, {}}, {"8 mm straight", mm(8), {}, {}}})};
  const Task ovolo =
      task(Process::mould, FeatureKind::moulding, stile(), 1,
           {{SizeName::width, mm(5)}, {SizeName::depth, mm(6)}, {SizeName::radius, mm(5)}});
  CHECK(way_for(ovolo, shop).cutter == 0);
  CHECK(way_for(groove(8, 9), shop).cutter == 1);
  Task bevel = ovolo;
  bevel.setting.settings.pop_back();
  CHECK(only_finding(way_for(bevel, shop)).fault == WayFault::cutter_missing);
}

TEST_CASE("A raised panel takes the raising cutter, and where there is none a straight one") {
  const Task raise = task(Process::raise, FeatureKind::raise, size_mm(938, 276, 34), 2,
                          {{SizeName::width, mm(48)}, {SizeName::depth, mm(11.2)}});
  Machine table = machine("router", {Process::raise},
                          {{"straight", mm(20), {}, {}}, {"panel-raising", {}, {}, mm(4)}});
  CHECK(way_for(raise, {table}).cutter == 1);
  CHECK(way_for(raise, {table}).passes == 3);
  table.cutters.pop_back();
  CHECK(way_for(raise, {table}).cutter == 0);
}

TEST_CASE("Standing, a tenon is sawn as deep as it is long; flat, its cheek in passes") {
  Machine saw = machine("saw", {Process::tenon}, {{"cutters", mm(20), mm(40), {}}});
  saw.holds = {{"jig", WorkedLooks::down, DatumLies::at_fence, {}, {}}};
  CHECK(is(only_finding(way_for(tenon(76), {saw})), WayFault::cutter_short, mm(40), mm(76)));
  saw.holds = {{"sled", WorkedLooks::sideways, DatumLies::on_table, {}, {}}};
  const ShopWay flat = way_for(tenon(76), {saw});
  CHECK(flat.findings.empty());
  CHECK(flat.passes == 4);
}

TEST_CASE("A piece is too short, too narrow, too thin to run safely") {
  Machine planer = machine("planer", {Process::surface});
  planer.smallest = {mm(305), mm(20), mm(10)};
  Task surface;
  surface.process = Process::surface;
  surface.size = size_mm(200, 15, 8);
  const ShopWay way = way_for(surface, {planer});
  REQUIRE(way.findings.size() == 3);
  CHECK(is(way.findings[0], WayFault::piece_short, mm(200), mm(305), 0));
  CHECK(is(way.findings[1], WayFault::piece_narrow, mm(15), mm(20), 1));
  CHECK(is(way.findings[2], WayFault::piece_thin, mm(8), mm(10), 2));
  surface.size = size_mm(305, 20, 10);
  CHECK(way_for(surface, {planer}).findings.empty());
}

TEST_CASE("The first way of holding that takes the piece is used") {
  Machine mortise_machine = mortiser();
  const auto limited = [](std::string name, double most) {
    Holding holding;
    holding.name = std::move(name);
    holding.size[0].most = mm(most);
    return holding;
  };
  mortise_machine.holds = {limited("vice", 600), limited("long table", 2200),
                           limited("longer", 3000)};
  CHECK(way_for(mortise(12, 70), {mortise_machine}).holding == 1);
  const ShopWay way = way_for(mortise(12, 70, size_mm(3100, 118, 44)), {mortise_machine});
  CHECK(is(only_finding(way), WayFault::not_held, mm(3100), mm(600), 0));
}

TEST_CASE("A curved groove runs along no fence: the cutter goes along it") {
  Task curved = groove(15, 12, size_mm(858, 192, 44));
  curved.setting.settings.push_back({SizeName::along_curve, mm(748)});
  CHECK(usually(curved) == "hand router, 15 mm straight cutter, 2");
  Machine table = machine("table", {Process::groove});
  table.holds = {{"fence", WorkedLooks::down, DatumLies::at_fence, {}, {}}};
  CHECK(only_finding(way_for(curved, {table})).fault == WayFault::curved);
}

TEST_CASE("A half-lap is cleared in passes side by side, as wide as what lies in it") {
  Task lap =
      task(Process::house, FeatureKind::lap, size_mm(896, 60, 22), 2, {{SizeName::depth, mm(11)}});
  lap.setting.runs.front().far = mm(60);
  CHECK(usually(lap) == "hand router, 25 mm straight cutter, 6");
}

TEST_CASE("A piece stands on its end only where there is room below") {
  Machine drill = machine("drill", {Process::bore});
  Holding upright;
  upright.room_below = mm(600);
  drill.holds = {upright};
  const Triple rail = size_mm(858, 100, 26);
  CHECK(is(only_finding(way_for(hole(10, 34, rail, 0), {drill})), WayFault::no_room, mm(858),
           mm(600)));
  CHECK(way_for(hole(10, 34, rail, 1), {drill}).findings.empty());
  CHECK(way_for(hole(10, 34, size_mm(600, 100, 26), 0), {drill}).findings.empty());
}

bool has_remedy(const ShopWay& way, SizeName name, Length size) {
  const auto& remedy = only_finding(way).remedy;
  return remedy && remedy->name == name && remedy->size == size;
}

TEST_CASE("Round ends are left by a cutter that turns, not by a chisel") {
  Task round = mortise(12, 40);
  round.setting.settings.push_back({SizeName::radius, mm(6)});
  const std::vector<Cutter> both{{"12 mm Chisel", mm(12), mm(90), {}},
                                 {"12 mm slot cutter", mm(12), mm(60), {}}};
  CHECK(way_for(round, {mortiser(both)}).cutter == 1);
  CHECK(way_for(mortise(12, 40), {mortiser(both)}).cutter == 0);
  CHECK(only_finding(way_for(round, {mortiser({both.front()})})).fault == WayFault::cutter_missing);
}

TEST_CASE("What opens a mortise for wedges is too narrow for a machine's chisels") {
  Task flare = mortise(2.6, 90);
  flare.setting.cut = Cut::flare;
  CHECK(usually(flare) == "bench");
}

TEST_CASE("A sheet is run along its longer side, wherever its grain lies") {
  Task sheet;
  sheet.process = Process::cut_sheet;
  sheet.size = size_mm(168, 466, 20);
  CHECK(usually(sheet) == "table saw, saw blade");
  sheet.size = size_mm(168, 166, 20);
  CHECK(usually(sheet) == "bench");
}

TEST_CASE("The nearest cutter is offered, where with it all would be well") {
  CHECK(has_remedy(way_for(mortise(10, 50), {mortiser()}), SizeName::width, mm(12)));
  CHECK(has_remedy(way_for(hole(9.5, 34), {machine("drill", {Process::bore},
                                                   {{"8", mm(8), {}, {}}, {"9", mm(9), {}, {}}})}),
                   SizeName::diameter, mm(9)));
  CHECK_FALSE(only_finding(way_for(mortise(10, 80), {mortiser()})).remedy);
}

TEST_CASE("A cut that is too deep could be as deep as the cutter reaches, from both edges twice") {
  Task deep = mortise(12, 118);
  CHECK(has_remedy(way_for(deep, {mortiser()}), SizeName::depth, mm(70)));
  deep.setting.through = true;
  CHECK(has_remedy(way_for(deep, {mortiser({chisel(12, 50)})}), SizeName::depth, mm(100)));
}

TEST_CASE("A short piece is worked longer and then cut off, unless it is worked at its end") {
  std::vector<Machine> machines{machine("router", {Process::groove, Process::tenon})};
  machines[0].smallest[0] = mm(305);
  CHECK(
      has_remedy(way_for(groove(8, 9, size_mm(200, 60, 22)), machines), SizeName::length, mm(305)));
  CHECK_FALSE(only_finding(way_for(tenon(30, size_mm(200, 60, 42)), machines)).remedy);
}

TEST_CASE("In a usual shop a house door's joints are cut by machine") {
  CHECK(usually(mortise(15, 78)) == "mortiser, 15 mm chisel");
  CHECK(usually(groove(15, 13)) == "router table, 15 mm straight cutter, 3");
  CHECK(usually(tenon(76)) == "table saw with tenon jig, saw blade");
  CHECK(usually(tenon(116)) == "bandsaw with fence, bandsaw blade");
  CHECK(usually(hole(10, 34)) == "drill press, bit");
}

TEST_CASE("What is beyond its machines is done by hand") {
  CHECK(usually(hole(10, 34, size_mm(858, 100, 26), 0)) == "bench");
  CHECK(usually(groove(8, 9, size_mm(300, 60, 22))) == "bench");
  Task lock = mortise(16, 100);
  CHECK(usually(lock) == "bench");
}

TEST_CASE("A usual shop can do everything, in millimetres and in inches") {
  for (const Unit unit : {Unit::mm, Unit::inch})
    for (std::size_t process = 0; process < std::size(kWords<Process>); ++process) {
      Task any;
      any.process = static_cast<Process>(process);
      any.size = size_mm(20, 3, 3);
      CHECK(way_for(any, usual_machines(unit)).findings.empty());
    }
}

TEST_CASE("Inches have chisels in sixteenths, and 12 in. is the shortest past a cutter") {
  Task in = mortise(12.7, 60);
  CHECK(usually(in, Unit::inch) == "mortiser, 1/2 in chisel");
  CHECK(usually(groove(12.7, 9, {inch(12), inch(3), inch(1)}), Unit::inch) ==
        "router table, 1/2 in straight cutter, 2");
  CHECK(usually(groove(12.7, 9, {inch(11, 15, 16), inch(3), inch(1)}), Unit::inch) == "bench");
}

TEST_CASE("What is let in once a leaf is glued up is held with the whole leaf") {
  const Assembly door = wood(house_mm(R"("hangs": "left", "hinges": {"number": 3, "length": 100,
                                         "width": 36, "thickness": 3})"));
  const Making making = making_of(door);
  SetupItem item;
  item.wood = &door;
  item.making = &making;
  for (const Task& its : joint_tasks(item, 0)) {
    if (its.setting.makes == FeatureKind::gain) {
      CHECK(its.size == size_mm(2054, 924, 44));
      CHECK(usually(its) == "hand router, 25 mm straight cutter, 2");
    }
    if (its.process == Process::groove && its.of.piece == 0)
      CHECK(its.size == size_mm(2054 + 50, 100, 44));
  }
}

TEST_CASE("A shop that tells of its cutters alone has chisels of those widths") {
  const std::vector<Machine> machines = usual_machines(Unit::mm, {mm(6), mm(10)});
  CHECK(told(way_for(mortise(15, 70), machines), machines) == "mortiser, 10 mm chisel, 2");
  CHECK(told(way_for(groove(6, 6), machines), machines) == "router table, 6 mm straight cutter");
}

TEST_CASE("Nothing stands against any cut of any example in a usual shop") {
  const std::vector<Machine> machines = usual_machines(Unit::mm);
  for (const Assembly& wood : all_examples()) {
    const Making making = making_of(wood);
    SetupItem item;
    item.wood = &wood;
    item.making = &making;
    item.milling = usual_milling(Unit::mm);
    for (const std::vector<Task>& tasks : {joint_tasks(item, 0), milling_tasks(item, 0)})
      for (const Task& task : tasks)
        CHECK(way_for(task, machines).findings.empty());
  }
}

TEST_CASE("No two usual machines have one name") {
  for (const Unit unit : {Unit::mm, Unit::inch}) {
    std::vector<std::string> names;
    for (const Machine& machine : usual_machines(unit))
      names.push_back(machine.name);
    std::sort(names.begin(), names.end());
    CHECK(std::adjacent_find(names.begin(), names.end()) == names.end());
  }
}

}  // namespace
}  // namespace haunch
