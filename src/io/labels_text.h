// Labels as CSV, JSON and a page to read.
#pragma once

#include <string>

#include "labels.h"
#include "text_table.h"

namespace haunch {

/// What is labelled together.
struct LabelOrder {
  std::string name;  // empty: it has none
  std::vector<ItemLabels> items;
};

/// A row for each label.
std::string labels_csv(const LabelOrder& order, Unit unit, CsvProfile profile);

/// Format haunch-labels-1.
std::string labels_json(const LabelOrder& order, Unit unit);

/// A row for each piece of one of an item.
TextTable labels_table(const ItemLabels& item);

/// Item by item, its pieces once.
std::string labels_page(const LabelOrder& order, const LengthPrinter& lengths);

}  // namespace haunch
