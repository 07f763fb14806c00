// The machines that an order is worked at.
#pragma once

#include <string>
#include <vector>

#include "complaints.h"
#include "machine.h"
#include "order.h"

namespace haunch {

struct ShopMachines {
  std::vector<Machine> machines;
  std::string file;      // that tells of them; empty: they are the usual ones
  bool refused = false;  // two files tell of machines: one order is worked in one shop
};

/// Of an order whose specs are read. Where no shop file tells of machines, one may still tell of
/// cutters. `command`: that asks.
ShopMachines machines_of(const Order& order, const std::string& command, Complaints& complaints);

}  // namespace haunch
