#include "scribe.h"

#include <algorithm>
#include <optional>

#include "rounding.h"

namespace haunch {
namespace {

/// What a feature takes off an edge, seen along it: a closed outline, u past the sight edge, v
/// through the thickness.
using Outline = std::vector<Corner>;

bool shapes_edges(FeatureKind kind) {
  return kind == FeatureKind::moulding || kind == FeatureKind::rebate ||
         kind == FeatureKind::glass_rebate || kind == FeatureKind::moulding_mitre;
}

/// In the middle of where the end meets the edge: an arched rail's goes on past its stile's.
Length middle_of(const Assembly& assembly, const Junction& junction) {
  const Box end = junction.blank(assembly.pieces[junction.enters]);
  const Box edge = junction.blank(assembly.pieces[junction.receives]);
  const Length low = std::max(end.low[kAcross], edge.low[kAcross]);
  const Length high = std::min(end.high[kAcross], edge.high[kAcross]);
  return low + floor_half(high - low);
}

/// Of all that is worked on the receiver what runs past a place of its edge.
std::vector<Outline> outlines_at(const Piece& receiver, const Junction& junction, Length place) {
  std::vector<Outline> outlines;
  for (const Feature& feature : receiver.features) {
    if (!shapes_edges(feature.kind)) continue;
    for (const Box& cut : feature.cuts) {
      const Box here = junction.from_assembly(placed(cut, receiver.place));
      if (here.low[kAcross] > place || here.high[kAcross] < place) continue;
      outlines.push_back({{here.low[kIn], here.low[kThrough]},
                          {here.high[kIn], here.low[kThrough]},
                          {here.high[kIn], here.high[kThrough]},
                          {here.low[kIn], here.high[kThrough]}});
    }
    for (const Prism& cut : feature.prisms) {
      const Prism here = junction.from_assembly(placed(cut, receiver.place));
      if (here.along == kAcross && here.from <= place && here.to >= place)
        outlines.push_back(here.outline);
    }
  }
  return outlines;
}

/// On a line from one corner to the other, so far through the thickness.
Length in_at(const Corner& a, const Corner& b, Length through) {
  if (through == a.v) return a.u;
  if (through == b.v) return b.u;
  const double share =
      static_cast<double>((through - a.v).steps()) / static_cast<double>((b.v - a.v).steps());
  return a.u + nearest_step(share * static_cast<double>((b.u - a.u).steps()));
}

/// How far a profile goes in at the two ends of a stretch through the thickness.
struct Depths {
  Length low, high;
};

/// What one outline leaves open from the sight edge on, over a stretch that none of its corners
/// lies within; nothing where it does not begin at that edge.
std::optional<Depths> opened_by(const Outline& outline, Strip through) {
  Depths near{Length::from_steps(1), Length::from_steps(1)};
  Depths far{};
  bool any = false;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Corner& a = outline[i];
    const Corner& b = outline[(i + 1) % outline.size()];
    if (std::min(a.v, b.v) > through.low || std::max(a.v, b.v) < through.high) continue;
    const Depths side{in_at(a, b, through.low), in_at(a, b, through.high)};
    near = any ? Depths{std::min(near.low, side.low), std::min(near.high, side.high)} : side;
    far = {std::max(far.low, side.low), std::max(far.high, side.high)};
    any = true;
  }
  if (!any || near.low > Length() || near.high > Length()) return {};
  return far;
}

/// All places through the thickness where an outline has a corner, in order.
std::vector<Length> corners_through(const std::vector<Outline>& outlines, Strip thickness) {
  std::vector<Length> places{thickness.low, thickness.high};
  for (const Outline& outline : outlines)
    for (const Corner& corner : outline)
      if (thickness.low < corner.v && corner.v < thickness.high) places.push_back(corner.v);
  std::sort(places.begin(), places.end());
  places.erase(std::unique(places.begin(), places.end()), places.end());
  return places;
}

bool is_nearer(const Corner& a, const Corner& b) {
  return a.u < b.u;
}

/// Puts a place to a line; one that lies on the way straight through the thickness adds nothing.
void go_on(std::vector<Corner>& line, const Corner& to) {
  if (!line.empty() && line.back() == to) return;
  const auto count = line.size();
  if (count > 1 && line[count - 2].u == to.u && line[count - 1].u == to.u) line.pop_back();
  line.push_back(to);
}

}  // namespace

Length EdgeProfile::furthest() const {
  return std::max_element(line.begin(), line.end(), is_nearer)->u;
}

Length EdgeProfile::nearest() const {
  return std::min_element(line.begin(), line.end(), is_nearer)->u;
}

EdgeProfile EdgeProfile::over(Strip through) const {
  EdgeProfile part;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const Corner& a = line[i];
    const Corner& b = line[i + 1];
    const Length low = std::max(a.v, through.low);
    const Length high = std::min(b.v, through.high);
    if (low > high || a.v == b.v) continue;
    if (low == high && through.low != through.high) continue;
    go_on(part.line, {in_at(a, b, low), low});
    go_on(part.line, {in_at(a, b, high), high});
  }
  return part;
}

EdgeProfile EdgeProfile::seated(Strip through, Strip seat, bool in_mortise) const {
  const EdgeProfile stands = over(seat);
  EdgeProfile whole;
  const auto beside = [&](Strip play, Length held) {
    if (play.low >= play.high) return;
    EdgeProfile its = over(play);
    if (in_mortise || its.nearest() >= held) its.line = {{held, play.low}, {held, play.high}};
    for (const Corner& corner : its.line)
      go_on(whole.line, corner);
  };
  beside({through.low, seat.low}, stands.at_face());
  for (const Corner& corner : stands.line)
    go_on(whole.line, corner);
  beside({seat.high, through.high}, stands.at_back());
  return whole;
}

EdgeProfile worked_edge(const Assembly& assembly, const Junction& junction) {
  const Piece& receiver = assembly.pieces[junction.receives];
  const Box blank = junction.blank(receiver);
  const std::vector<Outline> outlines =
      outlines_at(receiver, junction, middle_of(assembly, junction));
  const std::vector<Length> places =
      corners_through(outlines, {blank.low[kThrough], blank.high[kThrough]});
  EdgeProfile profile;
  for (std::size_t i = 0; i + 1 < places.size(); ++i) {
    Depths open{};
    for (const Outline& outline : outlines)
      if (const auto its = opened_by(outline, {places[i], places[i + 1]}))
        open = {std::max(open.low, its->low), std::max(open.high, its->high)};
    go_on(profile.line, {open.low, places[i]});
    go_on(profile.line, {open.high, places[i + 1]});
  }
  return profile;
}

Length stands_at(const Assembly& assembly, const Junction& junction, Strip through) {
  const Length reach = junction.blank(assembly.pieces[junction.enters]).high[kIn];
  if (reach <= Length()) return {};
  return std::min(reach, worked_edge(assembly, junction).over(through).nearest());
}

Waste beyond(const EdgeProfile& profile, const Box& room) {
  const Strip through{room.low[kThrough], room.high[kThrough]};
  Waste waste;
  if (through.low >= through.high || room.low[kAcross] >= room.high[kAcross]) return waste;
  const std::vector<Corner> line = profile.over(through).line;
  const Length far = std::min(EdgeProfile{line}.furthest(), room.high[kIn]);
  const auto box = [&](Length from, Length to, Length low, Length high) {
    if (from < to)
      waste.cuts.push_back({{from, room.low[kAcross], low}, {to, room.high[kAcross], high}});
  };
  box(far, room.high[kIn], through.low, through.high);
  Outline slope;
  const auto end_slope = [&] {
    if (slope.empty()) return;
    if (slope.back().u != far) slope.push_back({far, slope.back().v});
    if (slope.front().u != far) slope.push_back({far, slope.front().v});
    waste.prisms.push_back({kAcross, room.low[kAcross], room.high[kAcross], std::move(slope)});
    slope = {};
  };
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const bool sloping = line[i].u != line[i + 1].u && line[i].v != line[i + 1].v;
    if (!sloping) {
      end_slope();
      if (line[i].u == line[i + 1].u) box(line[i].u, far, line[i].v, line[i + 1].v);
      continue;
    }
    if (slope.empty()) slope.push_back(line[i]);
    slope.push_back(line[i + 1]);
  }
  end_slope();
  return waste;
}

void cut_off(Feature& feature, const Waste& waste, const Junction& junction, const Place& place) {
  for (const Box& cut : waste.cuts)
    feature.cuts.push_back(junction.own(cut, place));
  for (const Prism& prism : waste.prisms)
    feature.prisms.push_back(junction.own(prism, place));
}

}  // namespace haunch
