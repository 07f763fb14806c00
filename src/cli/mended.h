// Specs with the remedies taken that a check printed.
#pragma once

#include <string>
#include <vector>

#include "document.h"
#include "other_items.h"
#include "report.h"
#include "shop.h"

namespace haunch {

class Mended {
 public:
  /// Takes the remedies of `report` into a copy of its item, and works that again. Gives what is to
  /// be told of it; nothing where no remedy was printed.
  std::string take(const Value& item, const ItemReport& report, const ShopDefaults* shop,
                   const OtherItems* others);

  /// A spec a key a line, or several one a line.
  std::string text() const;
  bool empty() const { return items_.empty(); }

 private:
  std::vector<Value> items_;
};

}  // namespace haunch
