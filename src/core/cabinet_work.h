// Cabinets, alone or several in a run.
#pragma once

#include "haunch/wood.h"

namespace haunch {

/// Whether it is a cabinet, or a run of them.
inline bool is_cabinet_work(const Assembly& assembly) {
  const GroupKind kind = assembly.whole().kind;
  return kind == GroupKind::cabinet || kind == GroupKind::run;
}

}  // namespace haunch
