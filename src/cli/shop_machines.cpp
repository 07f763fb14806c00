#include "shop_machines.h"

#include <set>

#include "way.h"

namespace haunch {
namespace {

std::vector<Length> cutters_of(const Shops& shops) {
  std::set<Length> widths;
  for (const FoundShop& shop : shops.found())
    widths.insert(shop.shop.spec.cutters.begin(), shop.shop.spec.cutters.end());
  return {widths.begin(), widths.end()};
}

}  // namespace

ShopMachines machines_of(const Order& order, const std::string& command, Complaints& complaints) {
  ShopMachines found;
  for (const FoundShop& shop : order.shops().found()) {
    if (shop.shop.spec.machines.empty()) continue;
    if (!found.file.empty()) {
      complaints.refuse(command + ": both " + found.file + " and " + shop.file +
                        " tell of machines; name one of them with --shop");
      found.refused = true;
    }
    found.machines = shop.shop.spec.machines;
    found.file = shop.file;
  }
  if (found.file.empty())
    found.machines = usual_machines(order.unit().value_or(Unit::mm), cutters_of(order.shops()));
  return found;
}

}  // namespace haunch
