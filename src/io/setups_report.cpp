#include "setups_report.h"

#include <algorithm>

#include "panel_trial.h"
#include "trial.h"

namespace haunch {
namespace {

SetupItem setup_item(const ItemReport& report) {
  const Job& job = *report.job;
  SetupItem item;
  item.wood = &report.wood;
  item.making = &*report.making;
  item.orders = report.together.orders;
  item.quantity = job.quantity;
  item.milling = usual_milling(job.unit);
  item.most_unequal = most_unequal(job.unit);
  item.loosest_fit = (job.tolerances ? job.tolerances->fit : usual_band(job.unit)).max;
  if (job.tolerances)
    for (std::size_t i = 0; i < kDimensions; ++i)
      item.plus_minus[i] = job.tolerances->each[i].plus_minus;
  return item;
}

}  // namespace

std::string SetupsReport::machine_name(const Setup& setup) const {
  return setup.machine ? machines[*setup.machine].name : "no machine";
}

std::string SetupsReport::cutter_name(const Setup& setup) const {
  return setup.cutter ? machines[*setup.machine].cutters[*setup.cutter].name : "";
}

const Holding* SetupsReport::holding_of(const Setup& setup) const {
  return setup.holding ? &machines[*setup.machine].holds[*setup.holding] : nullptr;
}

std::string SetupsReport::holding_name(const Setup& setup) const {
  const Holding* holding = holding_of(setup);
  return holding != nullptr ? holding->name : "";
}

std::optional<Lie> SetupsReport::lie_of(const Setup& setup, const SetupPiece& piece,
                                        const Run& run) const {
  const Holding* holding = holding_of(setup);
  if (holding == nullptr) return {};
  const DatumSide datum = datum_side(item_of(piece).wood, run, setup.settings);
  return Lie(piece_of(piece).place, run.side, datum.side, *holding);
}

bool SetupsReport::has_findings() const {
  return std::any_of(plan.setups.begin(), plan.setups.end(), [](const Setup& setup) {
    return std::any_of(setup.pieces.begin(), setup.pieces.end(),
                       [](const SetupPiece& piece) { return !piece.findings.empty(); });
  });
}

std::string setup_id(std::size_t number) {
  return "S" + std::to_string(number + 1);
}

std::vector<SetupItem> setup_items(const std::vector<ItemReport>& items) {
  std::vector<SetupItem> all;
  for (const ItemReport& item : items)
    all.push_back(setup_item(item));
  return all;
}

SetupsReport report_setups(std::vector<ItemReport> items, std::vector<Machine> machines,
                           std::string shop, Unit unit) {
  SetupsReport report{unit, std::move(items), std::move(machines), std::move(shop), {}, {}, {}};
  if (report.machines.empty()) report.machines = usual_machines(unit);
  report.plan = plan_setups(setup_items(report.items), report.machines);
  return report;
}

}  // namespace haunch
