#include <utility>

#include "commands.h"
#include "complaints.h"
#include "order.h"
#include "rods_csv.h"
#include "rods_json.h"
#include "rods_page.h"
#include "rods_svg.h"

namespace haunch {
namespace {

std::string text_of(const std::vector<ItemRods>& items, const Invocation& invocation, Unit unit) {
  const View& view = invocation.view;
  const LengthPrinter lengths(unit, view.lengths, view.page_width);
  switch (view.format) {
    case Format::json:
      return rods_json(items, unit);
    case Format::csv:
      return rods_csv(items, unit, view.csv);
    case Format::svg:
      return rods_svg(items, lengths, invocation.paper);
    default:
      return rods_page(items, lengths);
  }
}

std::string usage_fault(const Invocation& invocation) {
  if (invocation.words.empty())
    return "rod: no spec is named; give a file, or - for standard input";
  if (!invocation.paper.empty() && invocation.view.format != Format::svg)
    return "--paper: is for rods that are drawn; add --format svg";
  return {};
}

}  // namespace

ExitStatus run_rod(const Invocation& invocation, const Streams& streams) {
  Complaints complaints(streams);
  const std::string fault = usage_fault(invocation);
  if (!fault.empty()) return complaints.refuse(fault);
  Order order(invocation.words, invocation, streams, complaints);
  if (!order.open()) return complaints.status();
  std::vector<ItemRods> items;
  order.work({.checks = true, .making = true},
             [&](ItemReport item) { items.push_back(rods_of(std::move(item))); });
  order.sum_up("what is refused has no rod");
  if (items.empty()) return complaints.status();
  const Unit unit = invocation.view.unit.value_or(order.unit().value_or(Unit::mm));
  write_result(text_of(items, invocation, unit), invocation, streams, order.files(), complaints);
  return complaints.status();
}

}  // namespace haunch
