#include "first_piece.h"

#include <algorithm>

namespace haunch {
namespace {

/// What a set-up is measured by, and which plus and minus holds for it.
struct Measured {
  SizeName size;
  std::optional<Dimension> dimension;
};

/// Its thickness is there to be measured once both cheeks are cut.
std::optional<Measured> of_tenon(Cut cut) {
  if (cut == Cut::face_cheek || cut == Cut::face_cope || cut == Cut::haunch) return {};
  return Measured{SizeName::thickness, Dimension::tenon_thickness};
}

std::optional<Measured> measured_of(const Setup& setup) {
  switch (setup.step) {
    case Step::length:
      return Measured{SizeName::length, Dimension::shoulder_length};
    case Step::width:
      return Measured{SizeName::width, Dimension::piece_width};
    case Step::length_over:
    case Step::sheet:
      return Measured{SizeName::length, {}};
    case Step::width_over:
      return Measured{SizeName::width, {}};
    case Step::thickness_over:
    case Step::thickness:
      return Measured{SizeName::thickness, {}};
    default:
      break;
  }
  switch (setup.process) {
    case Process::mortise:
      return Measured{SizeName::width, Dimension::mortise_width};
    case Process::groove:
      return Measured{SizeName::width, Dimension::groove_width};
    case Process::tenon:
    case Process::cope:
      return of_tenon(setup.cut);
    case Process::raise:
      return Measured{SizeName::tongue, Dimension::panel_tongue};
    case Process::bore:
      return Measured{SizeName::diameter, {}};
    case Process::rebate:
    case Process::house:
    case Process::recess:
      return Measured{SizeName::depth, {}};
    default:
      return {};
  }
}

void tighten(FirstPiece& first, Length least, Length most) {
  first.least = std::max(first.least.value_or(least), least);
  first.most = std::min(first.most.value_or(most), most);
}

/// How wide what a tenon goes into is: its mortise, of a stub the groove.
std::optional<Length> hollow_for(const Assembly& wood, std::size_t number) {
  const Joint& joint = wood.joints[number];
  if (joint.mortise) return joint.mortise->width;
  for (const Feature& feature : wood.pieces[joint.receives].features)
    if (feature.kind == FeatureKind::groove &&
        std::find(feature.joints.begin(), feature.joints.end(), number) != feature.joints.end())
      return size_of(feature, SizeName::width);
  return {};
}

/// The tenon goes into everything that is there for it, and is loose in none.
void tighten_to_hollows(FirstPiece& first, const SetupPiece& piece, const SetupItem& item) {
  for (const Run& run : piece.runs)
    if (const auto wide = run.joint ? hollow_for(*item.wood, *run.joint) : std::nullopt)
      tighten(first, *wide - item.loosest_fit, *wide);
}

}  // namespace

std::optional<FirstPiece> first_piece_of(const Setup& setup, const std::vector<SetupItem>& items) {
  const auto measured = measured_of(setup);
  if (!measured) return {};
  const auto wanted = size_of(setup.settings, measured->size);
  if (!wanted) return {};
  FirstPiece first{measured->size, *wanted, {}, {}};
  for (const SetupPiece& piece : setup.pieces) {
    const SetupItem& item = items[piece.of.item];
    std::optional<Length> off;
    if (measured->dimension) off = item.plus_minus[static_cast<std::size_t>(*measured->dimension)];
    if (off)
      tighten(first, *wanted - *off, *wanted + *off);
    else if (setup.process == Process::tenon && setup.step == Step::cut)
      tighten_to_hollows(first, piece, item);
  }
  return first;
}

}  // namespace haunch
