#include "item_reading.h"

namespace haunch {

std::optional<OtherItems> others_of(const Record& record, const Shops& shops) {
  if (!record.named) return {};
  OtherItems others{{}, record.named->ids};
  for (const NamedItem& named : record.named->named)
    others.named.push_back({named.id, named.item.get(), shops.of(named.source), named.default_id});
  return others;
}

JobReading read_item(const Record& record, const Shops& shops) {
  const std::optional<OtherItems> others = others_of(record, shops);
  return read_job_among(*record.item, shops.of(record.source), record.default_id,
                        others ? &*others : nullptr);
}

}  // namespace haunch
