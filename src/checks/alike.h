// Joints that are the same to whatever measures them are measured once.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include "haunch/wood.h"
#include "junction.h"

namespace haunch {

/// How the joints of an assembly look to whatever measures them. What is cut out of their pieces is
/// seen through once for each, where it is asked for at all.
class Looks {
 public:
  explicit Looks(const Assembly& assembly);

  /// Whether two joints have the same to be measured: both pieces are cut alike, as seen from where
  /// they meet. So are the two ends of a rail, though one is the other's mirror image.
  bool are_alike(std::size_t a, std::size_t b);

 private:
  using Boxes = std::vector<std::array<Length, 6>>;
  using Prisms = std::vector<std::vector<Length>>;
  /// One of the two pieces of a joint, as seen from where they meet: what cuts take away, as
  /// figures to be compared, in an order of their own.
  struct Side {
    const Piece* piece;
    Box blank;
    std::optional<Boxes> boxes = {};
    std::optional<Prisms> prisms = {};
  };
  struct Look {
    Junction junction;
    Side receives, enters;
  };

  const Boxes& boxes_of(std::size_t joint, Side Look::*side);
  const Prisms& prisms_of(std::size_t joint, Side Look::*side);

  const Assembly& assembly_;
  std::vector<Look> looks_;  // of each joint
};

}  // namespace haunch
