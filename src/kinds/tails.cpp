#include "tails.h"

#include <utility>

namespace haunch {
namespace {

/// What a stretch of the way across is at a root and at an end; of one that does not slope alike.
struct Sloped {
  Strip root, end;
};

/// Cuts outlines of a junction, right through the thickness of the end.
class Cutter {
 public:
  Cutter(const Junction& junction, const Box& end, Length length)
      : junction_(junction), end_(end), length_(length) {}

  void cut(const Sloped& shape, const Piece& piece, Feature& into) const {
    const Length none;
    if (shape.root.low == shape.end.low && shape.root.high == shape.end.high) {
      into.cuts.push_back(junction_.own({{none, shape.end.low, end_.low[kThrough]},
                                         {length_, shape.end.high, end_.high[kThrough]}},
                                        piece.place));
      return;
    }
    into.prisms.push_back(junction_.own(Prism{kThrough,
                                              end_.low[kThrough],
                                              end_.high[kThrough],
                                              {{none, shape.root.low},
                                               {none, shape.root.high},
                                               {length_, shape.end.high},
                                               {length_, shape.end.low}}},
                                        piece.place));
  }

 private:
  const Junction& junction_;
  const Box end_;
  Length length_;
};

/// Half of the play is the end's, half the receiver's; each has half of its half at either side. At
/// the edges of the receiver, where nothing stands beside a finger, there is none.
Strip with_play(Strip strip, const EndTails& tails, Length more) {
  if (strip.low != tails.between.low) strip.low -= more;
  if (strip.high != tails.between.high) strip.high += more;
  return strip;
}

Sloped tail_of(const EndTails& tails, std::size_t number, Length more) {
  const Strip end = with_play(tails.each[number], tails, more);
  return {{end.low + tails.spread, end.high - tails.spread}, end};
}

/// What is cut away between the tails, and between the outer ones and the edges of the receiver.
std::vector<Sloped> rooms_between(const EndTails& tails, Length less) {
  std::vector<Sloped> rooms;
  Sloped room{{tails.between.low, {}}, {tails.between.low, {}}};
  for (std::size_t i = 0; i <= tails.each.size(); ++i) {
    const bool last = i == tails.each.size();
    const Sloped next = last ? Sloped{} : tail_of(tails, i, -less);
    room.root.high = last ? tails.between.high : next.root.low;
    room.end.high = last ? tails.between.high : next.end.low;
    if (room.root.high > room.root.low) rooms.push_back(room);
    room = {{next.root.high, {}}, {next.end.high, {}}};
  }
  return rooms;
}

}  // namespace

void cut_tails(Assembly& assembly, const Junction& junction, const EndTails& tails, Joint joint,
               FeatureKind on_end, FeatureKind in_receiver) {
  Piece& receiver = assembly.pieces[junction.receives];
  Piece& enterer = assembly.pieces[junction.enters];
  const std::size_t number = assembly.joints.size();
  const Length quarter = floor_divide(tails.play, 4);
  const Cutter cutter(junction, junction.blank(enterer), tails.length);
  Feature ends{on_end, {number}, {}, {{SizeName::depth, tails.length}}};
  for (const Sloped& room : rooms_between(tails, quarter))
    cutter.cut(room, enterer, ends);
  Feature sockets{in_receiver, {number}, {}, {{SizeName::depth, tails.length}}};
  for (std::size_t i = 0; i < tails.each.size(); ++i)
    cutter.cut(tail_of(tails, i, quarter), receiver, sockets);
  joint.tails = TailSizes{tails.length, tails.spread, {}};
  for (std::size_t i = 0; i < tails.each.size(); ++i) {
    const Strip end = tail_of(tails, i, -quarter).end;
    joint.tails->each.push_back({end.low, end.high - end.low});
  }
  enterer.features.push_back(std::move(ends));
  receiver.features.push_back(std::move(sockets));
  assembly.joints.push_back(std::move(joint));
}

}  // namespace haunch
