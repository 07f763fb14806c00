// What of an order is bought ready: glass, fittings, edge strip, what its finish takes.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "area.h"
#include "cost.h"
#include "report.h"

namespace haunch {

struct GoodsCost {
  std::vector<CostLine> lines;
  std::vector<MissingFigure> missing;
};

/// Of items, each made so many times.
GoodsCost goods_cost(const std::vector<ItemReport>& items, const std::vector<std::int64_t>& counts,
                     const Rates& rates);

/// The word for it in a spec.
inline constexpr std::string_view kNoFinish = "none";

/// What an item is finished with: as it says, else the first of the rates file; null for nothing.
const Finish* finish_of(const Job& job, const Rates& rates);

/// The price of goods from the list for them, else from that of all that is bought in; null where
/// there is none.
const Goods* priced(const Rates& rates, const std::vector<Goods>& list, const std::string& name);

/// How much boards of an area are in the unit of a price; nothing of one by the piece or metre.
std::optional<double> measure_of(PricedBy per, lumber::Area area, Length thickness);

/// "m3", "m2"
std::string measure_words(PricedBy per);

/// With no more than so many places, and no zeros at their end.
std::string figure_text(double figure, int places);

}  // namespace haunch
