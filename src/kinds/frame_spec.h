// What a spec of `kind: "frame"` may say, and reading it: no defaults, no geometry.
#pragma once

#include <optional>
#include <vector>

#include "document.h"
#include "haunch/length_text.h"
#include "key_table.h"
#include "kind.h"

namespace haunch {

enum class StopKind { planted, rebate };
enum class HeadJoint { housed, rebated, tenoned };

/// Everything that a frame's spec may state, dotted.
const KeyTable& frame_keys();

struct FrameReading {
  ItemHead head;
  KeyedValues values;
  std::vector<Given> given;
  std::vector<Problem> problems;
};

/// Reads an item.
FrameReading read_frame_spec(const Value& document, std::optional<Unit> units);

/// What a shop file says of frames, under "frame".
struct ShopFrame {
  KeyedValues values;
  std::vector<Problem> problems;
};
ShopFrame read_shop_frame(const Value& shop, std::optional<Unit> units);

/// Fills what the item leaves open from the shop file.
void take_shop_frame(FrameReading& reading, const ShopDefaults& shop);

/// A fire-rated set is not worked: its frame and leaf are made to their own listing. `path`: of the
/// frame's keys.
void refuse_fire_rated(FrameReading& reading, std::string_view path);

}  // namespace haunch
