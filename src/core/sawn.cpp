#include "sawn.h"

namespace haunch {

Triple sawn_sizes(const Piece& piece) {
  Triple sizes = piece.blank;
  for (const Feature& feature : piece.features) {
    if (feature.kind != "skew") continue;
    for (const NamedSize& size : feature.sizes) {
      if (size.name == "length") sizes[0] = size.size;
      if (size.name == "width") sizes[1] = size.size;
    }
  }
  return sizes;
}

}  // namespace haunch
