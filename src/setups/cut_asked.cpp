#include "cut_asked.h"

#include <algorithm>
#include <cctype>

namespace haunch {
namespace {

constexpr std::string_view kBevel = "bevel";
constexpr std::string_view kRaising = "raising";
constexpr std::string_view kDovetail = "dovetail";

struct NamedShape {
  std::string_view word, shape;
};
constexpr NamedShape kShapes[] = {{"ovolo", "ovolo"},   {"cove", "cove"},      {"bead", "bead"},
                                  {kBevel, kBevel},     {"chamfer", kBevel},   {kRaising, kRaising},
                                  {"raiser", kRaising}, {kDovetail, kDovetail}};

/// By the sizes that only it has; one that slopes has none but its width and depth.
std::string_view shape_of(const Operation& moulding) {
  if (!moulding.profile.empty()) return moulding.profile;
  if (moulding.has(SizeName::quirk)) return "bead";
  if (moulding.has(SizeName::hollow_radius)) return "cove";
  if (moulding.has(SizeName::radius)) return "ovolo";
  return kBevel;
}

CutAsked of_depth(Length depth) {
  CutAsked asked;
  asked.depth = asked.reach = depth;
  return asked;
}

/// Between two walls, or round.
CutAsked of_recess(const Operation& setting, WidthAsked fit, SizeName across) {
  CutAsked asked = of_depth(setting.setting(SizeName::depth));
  if (setting.through) asked.reach = asked.depth - floor_half(asked.depth);
  asked.round_ends = setting.makes == FeatureKind::mortise && setting.has(SizeName::radius);
  if (!setting.has(across)) return asked;
  asked.fit = fit;
  asked.width = setting.setting(across);
  return asked;
}

/// A half-lap is as wide as what lies in it: the narrowest of them decides.
CutAsked of_housing(const Operation& setting) {
  CutAsked asked = of_recess(setting, WidthAsked::within, SizeName::width);
  if (setting.makes != FeatureKind::lap) return asked;
  for (const Run& run : setting.runs)
    asked.width = std::min(asked.width.value_or(run.extent()), run.extent());
  asked.fit = WidthAsked::within;
  return asked;
}

/// Of a tenon that stands upright, or lies with its end to a saw, as deep as it is long; of one
/// that lies flat over a cutter as deep as its deeper cheek, in passes along it.
CutAsked of_tenon(const Task& task, const Holding* held) {
  const Operation& setting = task.setting;
  const Length depth = setting.setting(SizeName::depth);
  const bool flat = held != nullptr && held->worked == WorkedLooks::sideways &&
                    held->datum == DatumLies::on_table;
  if (task.side().into != 0 || !flat) return of_depth(depth);
  const Length before = setting.setting(SizeName::from_face);
  const Length behind = task.size[2] - before - setting.setting(SizeName::thickness);
  CutAsked asked = of_depth(std::max(before, behind));
  asked.width = depth;
  return asked;
}

CutAsked of_shape(const Operation& setting, std::string_view shape) {
  CutAsked asked = of_depth(setting.setting(SizeName::depth));
  asked.shape = shape;
  return asked;
}

/// Or of the rounding of a dowel, that is no moulding.
CutAsked of_moulding(const Operation& setting) {
  if (setting.makes != FeatureKind::moulding) return of_shape(setting, {});
  CutAsked asked = of_shape(setting, shape_of(setting));
  asked.shape_needed = true;
  return asked;
}

std::string in_small_letters(std::string_view name) {
  std::string small(name);
  std::transform(small.begin(), small.end(), small.begin(),
                 [](unsigned char letter) { return static_cast<char>(std::tolower(letter)); });
  return small;
}

}  // namespace

bool is_chisel(std::string_view cutter) {
  return in_small_letters(cutter).find("chisel") != std::string::npos;
}

std::string_view shape_of(std::string_view cutter) {
  const std::string name = in_small_letters(cutter);
  for (const NamedShape& named : kShapes)
    if (name.find(named.word) != std::string::npos) return named.shape;
  return {};
}

CutAsked cut_asked(const Task& task, const Holding* held) {
  const Operation& setting = task.setting;
  switch (task.process) {
    case Process::crosscut:
    case Process::rip:
    case Process::cut_sheet:
    case Process::mitre:
    case Process::curve:
    case Process::taper:
    case Process::notch:
      return of_depth(task.size[2]);  // sawn right through, lying flat
    case Process::surface:
    case Process::thickness:
    case Process::glue:
      return {};
    case Process::bore:
      return of_recess(setting, WidthAsked::exactly, SizeName::diameter);
    case Process::mortise:
    case Process::groove:
    case Process::finger:
    case Process::recess:
      return of_recess(setting, WidthAsked::within, SizeName::width);
    case Process::house:
      return of_housing(setting);
    case Process::rebate:
      return of_recess(setting, WidthAsked::any, SizeName::width);
    case Process::tenon:
    case Process::cope:
      return of_tenon(task, held);
    case Process::dovetail:
      return of_shape(setting, kDovetail);
    case Process::raise:
      return of_shape(setting, kRaising);
    case Process::mould:
      return of_moulding(setting);
  }
  return {};
}

}  // namespace haunch
