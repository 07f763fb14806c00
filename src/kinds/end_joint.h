// How the end of a member is joined to what it ends on. One class for each way, in the file that
// cuts it; whatever sets members out asks these and knows no joint by name.
#pragma once

#include <memory>
#include <optional>
#include <string_view>
#include <vector>

#include "haunch/wood.h"
#include "junction.h"

namespace haunch {

/// A stretch of a piece's width.
struct Strip {
  Length low;
  Length high;
};

/// An end that is to be joined.
struct End {
  Junction junction;
  std::size_t groove = 0;  // which feature of the receiver is the groove there
  std::optional<Length> receiver_shoulder = {};  // along the receiver, if it has one of its own
  std::string_view shoulder = {};                // which one, "face" or "back", where they differ
  std::size_t joint = 0;                         // the first that is added for it
};

/// What is let in to an end apart from the two members, once all else stands: one sort after the
/// other, so that members have the marks that they have without.
enum class Own : unsigned char { none, loose_tenons, dowels, pins, splines, wedges };
inline constexpr Own kOwnPieces[] = {Own::loose_tenons, Own::dowels, Own::pins, Own::splines,
                                     Own::wedges};

/// A joint with every size settled.
class EndJoint {
 public:
  EndJoint() = default;
  EndJoint(const EndJoint&) = delete;
  EndJoint& operator=(const EndJoint&) = delete;
  virtual ~EndJoint() = default;

  /// How far the entering member goes past the receiver's sight edge.
  virtual Length reach() const { return {}; }
  /// What of that is set back, where a moulding is cut away for its shoulder.
  virtual Length set_back() const { return {}; }
  /// Whether that is the member itself, with its edges, over the receiver.
  virtual bool runs_on() const { return false; }
  /// Whether it takes up the end of the receiver's groove, which else stops behind it.
  virtual bool fills_groove() const { return false; }
  /// Cuts both members, which lie where they belong, and adds the joint.
  virtual void cut(Assembly& assembly, const End& end) const = 0;

  virtual Own own_pieces() const { return Own::none; }
  virtual void add_own_pieces(Assembly&, const End&) const {}
};

/// What holds one end: its joint first, then what is driven in to that.
using EndJoints = std::vector<std::unique_ptr<const EndJoint>>;

extern const Measures kButtMeasures;

/// Stands a flat end on the receiver, scribed to its edge where it goes on past that, with nothing
/// to hold it there yet.
void butt(Assembly& assembly, const End& end);

/// That alone, where glue and screws are not drawn.
class Butt : public EndJoint {
 public:
  void cut(Assembly& assembly, const End& end) const override { butt(assembly, end); }
};

/// Joins an end, its own pieces excepted.
void join(Assembly& assembly, End& end, const EndJoints& joints);

}  // namespace haunch
