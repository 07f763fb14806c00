#include "tongue.h"

#include <utility>

#include "joint_rules.h"

namespace haunch {
namespace {

constexpr Rule kFit{"tongue-fit", "of play between tongue and housing, both sides together",
                    "a tongue tighter than none will not go home, one looser than 0.010 in shows "
                    "and rocks (trade practice)"};
constexpr Rule kRoom{"tongue-room", "from the tongue's end to the housing's bottom",
                     "the shoulder must close before the tongue meets the bottom, and glue needs a "
                     "place to go"};

constexpr Measure kBuilt[] = {{Figure::cheeks, &kFit, Asked::as_designed, &Limits::loosest_fit},
                              {Figure::bottom, &kRoom},
                              {Figure::seat, &kSeat}};
constexpr Measure kMoved[] = {
    kCheeksUnpressed, {Figure::bottom, &kRoom, Asked::at_least}, kShouldersShut[0]};

Box housing_for(const TongueDesign& tongue, const Box& receiver) {
  Box cut = receiver;
  cut.low[kIn] = Length();
  cut.high[kIn] = tongue.length + tongue.bottom;
  cut.low[kThrough] = tongue.from_face - floor_half(tongue.allowance);
  cut.high[kThrough] = cut.low[kThrough] + tongue.thickness + tongue.allowance;
  return cut;
}

/// What the end loses before its tongue and behind it.
std::vector<Box> beside_tongue(const TongueDesign& tongue, Box end) {
  end.low[kIn] = end.high[kIn] - tongue.length;
  Box before = end;
  Box behind = end;
  before.high[kThrough] = end.low[kThrough] + tongue.from_face;
  behind.low[kThrough] = before.high[kThrough] + tongue.thickness;
  std::vector<Box> cuts;
  for (const Box& cut : {before, behind})
    if (cut.extent(kThrough) > Length()) cuts.push_back(cut);
  return cuts;
}

}  // namespace

const Measures kTongueMeasures{kBuilt, kMoved, {}, true};

void Tongue::cut(Assembly& assembly, const End& end) const {
  const Junction& junction = end.junction;
  const std::size_t number = assembly.joints.size();
  Joint joint = junction.joint(JointKind::tongue, kTongueMeasures);
  joint.design.cheeks = tongue_.allowance;
  joint.design.bottom = tongue_.bottom;
  Piece& receiver = assembly.pieces[junction.receives];
  Piece& enterer = assembly.pieces[junction.enters];
  const Box cut = housing_for(tongue_, junction.blank(receiver));
  receiver.features.push_back(
      {FeatureKind::housing,
       {number},
       {junction.own(cut, receiver.place)},
       {{SizeName::width, cut.extent(kThrough)}, {SizeName::depth, cut.extent(kIn)}}});
  Feature tongue{FeatureKind::tongue,
                 {number},
                 {},
                 {{SizeName::thickness, tongue_.thickness},
                  {SizeName::depth, tongue_.length},
                  {SizeName::from_face, tongue_.from_face}}};
  for (const Box& beside : beside_tongue(tongue_, junction.blank(enterer)))
    tongue.cuts.push_back(junction.own(beside, enterer.place));
  enterer.features.push_back(std::move(tongue));
  assembly.joints.push_back(std::move(joint));
}

}  // namespace haunch
