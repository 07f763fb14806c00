#include "glazing_bar.h"

#include <array>
#include <utility>

#include "half_lap.h"
#include "junction.h"
#include "marks.h"
#include "share.h"

namespace haunch {
namespace {

constexpr std::array<Axis, 3> kUpright{Axis::y, Axis::x, Axis::z};
constexpr std::array<Axis, 3> kLevel{Axis::x, Axis::y, Axis::z};

/// Equal sights between bars, to the step; odd steps go to the last ones.
std::vector<Strip> sights_between(Strip whole, std::size_t panes, Length bar) {
  const Length bars = bar * (static_cast<std::int64_t>(panes) - 1);
  std::vector<Strip> sights;
  Length low = whole.low;
  for (const Length sight : share_evenly(whole.high - whole.low - bars, panes)) {
    sights.push_back({low, low + sight});
    low += sight + bar;
  }
  return sights;
}

/// Sets out the bars of one light.
class BarSetter {
 public:
  BarSetter(Assembly& assembly, const Light& light, const BarDesign& bars, const std::string& which,
            const std::string& key)
      : wood_(assembly), light_(light), bars_(bars), which_(which), key_(key) {}

  std::vector<Light> set_out() {
    const std::vector<Strip> wide = sights_between(light_.wide, bars_.across, bars_.width);
    const std::vector<Strip> high = sights_between(light_.high, bars_.up, bars_.width);
    for (std::size_t i = 0; i + 1 < wide.size(); ++i)
      upright_.push_back(add_bar(true, wide[i].high, i, wide.size() - 1));
    for (std::size_t i = 0; i + 1 < high.size(); ++i)
      level_.push_back(add_bar(false, high[i].high, i, high.size() - 1));
    for (const Bar& upright : upright_)
      for (const Bar& level : level_)
        if (bars_.upright_through)
          halve(upright.low.piece, level.low.piece, Axis::x);
        else
          halve(level.low.piece, upright.low.piece, Axis::y);
    return panes(wide, high);
  }

 private:
  /// The rebates along its two edges; both are of one piece.
  struct Bar {
    GrooveRef low, high;
  };

  Bar add_bar(bool upright, Length at, std::size_t number, std::size_t count);
  void tenon(std::size_t bar, const LightSide& side, Heading heading);
  void halve(std::size_t keeps_face, std::size_t keeps_back, Axis way);
  LightSide side_of(const GrooveRef& rebate) const { return {rebate, bars_.rebate}; }
  std::vector<Light> panes(const std::vector<Strip>& wide, const std::vector<Strip>& high) const;

  Assembly& wood_;
  const Light& light_;
  const BarDesign& bars_;
  const std::string& which_;
  const std::string& key_;
  std::vector<Bar> upright_, level_;  // from the left; from the foot
};

/// A bar from `at` on across its width, tenoned into both sides of the light.
BarSetter::Bar BarSetter::add_bar(bool upright, Length at, std::size_t number, std::size_t count) {
  const Strip along = upright ? light_.high : light_.wide;
  const Length depth = bars_.tenon.depth;
  const Length thickness = wood_.size[2];
  const Length from = along.low - depth;
  const std::string name = upright ? "upright bar" : "level bar";
  const std::string numbered = count > 1 ? " " + std::to_string(number + 1) : "";
  const std::size_t piece = add_piece(
      wood_, name + numbered + which_, Role::glazing_bar,
      {along.high - along.low + depth * 2, bars_.width, thickness},
      {{upright ? at : from, upright ? from : at, Length()}, upright ? kUpright : kLevel});
  wood_.pieces[piece].key = key_ + "/" + in_key(name) + "-" + std::to_string(number + 1);
  const GrooveDesign rebate{bars_.rebate, thickness - bars_.front, bars_.front};
  const auto work = [&](Edge edge) {
    return work_along_edge(wood_, piece, edge, FeatureKind::glass_rebate, rebate);
  };
  const Bar bar{work(Edge::low), work(Edge::high)};
  const Axis axis = upright ? Axis::y : Axis::x;
  tenon(piece, upright ? light_.foot : light_.left, {axis, false});
  tenon(piece, upright ? light_.head : light_.right, {axis, true});
  return bar;
}

void BarSetter::tenon(std::size_t bar, const LightSide& side, Heading heading) {
  Tenons(bars_.tenon, bars_.mortise)
      .cut(wood_, {Junction(wood_, side.rebate.piece, bar, heading),
                   side.rebate.feature,
                   side.shoulder,
                   {}});
}

/// Halves two bars where they cross. The one that keeps its back loses its face over the width of
/// the other, which stays whole there, and behind that its tongue down to the middle.
void BarSetter::halve(std::size_t keeps_face, std::size_t keeps_back, Axis way) {
  const Junction junction(wood_, keeps_face, keeps_back, {way, true});
  Piece& receiver = wood_.pieces[keeps_face];
  Piece& enterer = wood_.pieces[keeps_back];
  const Length none;
  const Length width = bars_.width;
  const Length low = bars_.rebate - bars_.lap_play;
  const Length high = width - low;
  const Length meet = bars_.lap_from_face;
  const Box slot = junction.own({{none, low, meet}, {width, high, wood_.size[2]}}, receiver.place);
  const std::size_t number = wood_.joints.size();
  receiver.features.push_back({FeatureKind::lap,
                               {number},
                               {slot},
                               {{SizeName::width, high - low},
                                {SizeName::depth, wood_.size[2] - meet},
                                {SizeName::from_face, meet}}});
  Feature face{FeatureKind::lap,
               {number},
               {junction.own({{none, none, none}, {width, width, bars_.front}}, enterer.place)},
               {{SizeName::width, width}, {SizeName::depth, meet}}};
  if (meet > bars_.front)
    face.cuts.push_back(
        junction.own({{low, none, bars_.front}, {high, width, meet}}, enterer.place));
  enterer.features.push_back(std::move(face));
  Joint joint = junction.joint(JointKind::half_lap, kLapMeasures);
  joint.has_shoulder = false;
  joint.design.bearing = none;
  joint.design.edges = bars_.lap_play * 2;
  joint.tenon = TenonSizes{wood_.size[2] - meet,
                           bars_.tongue(),
                           width,
                           meet,
                           {{bars_.rebate, bars_.tongue()}},
                           {},
                           {},
                           {}};
  joint.mortise = MortiseSizes{wood_.size[2] - meet, width, meet, {}, {{slot.low[0], high - low}}};
  joint.mortise->through = true;
  wood_.joints.push_back(std::move(joint));
}

std::vector<Light> BarSetter::panes(const std::vector<Strip>& wide,
                                    const std::vector<Strip>& high) const {
  std::vector<Light> panes;
  for (std::size_t row = 0; row < high.size(); ++row)
    for (std::size_t i = 0; i < wide.size(); ++i)
      panes.push_back({i == 0 ? light_.left : side_of(upright_[i - 1].high),
                       i + 1 == wide.size() ? light_.right : side_of(upright_[i].low),
                       row + 1 == high.size() ? light_.head : side_of(level_[row].low),
                       row == 0 ? light_.foot : side_of(level_[row - 1].high), wide[i], high[row]});
  return panes;
}

}  // namespace

std::vector<Light> divide_light(Assembly& assembly, const Light& light, const BarDesign& bars,
                                const std::string& which, const std::string& key) {
  return BarSetter(assembly, light, bars, which, key).set_out();
}

}  // namespace haunch
