#include "edge_words.h"

namespace haunch {

std::string edge_of(const Run& run, const Piece& piece) {
  return place_of(piece, run) + (run.side.into == 2 ? "" : " edge");
}

std::string face_of(const Run& run, const Piece&) {
  return run.side.from_high ? "back" : "face side";
}

std::string moulded_edge(const Run& run, const Piece& piece) {
  const bool arched = size_of(piece.features[run.feature], SizeName::tolerance).has_value();
  return (arched ? "arched " : "") + edge_of(run, piece);
}

namespace {

/// "\"mill ogee\", 9 wide on the face and 10 deep, with a fillet of 1 …"
std::string own_moulding_text(const Operation& moulding, const LengthPrinter& lengths) {
  std::string text = "\"" + moulding.profile + "\" as the shop has it, " +
                     lengths.one(moulding.setting(SizeName::width)) + " wide on the face and " +
                     lengths.one(moulding.setting(SizeName::depth)) + " deep";
  const auto add = [&](SizeName name, std::string_view says) {
    if (moulding.has(name))
      text += ", " + std::string(says) + " " + lengths.one(moulding.setting(name));
  };
  add(SizeName::fillet, "a fillet of");
  add(SizeName::radius, "round to a radius of");
  add(SizeName::hollow_radius, "hollow to a radius of");
  return text + (moulding.both_faces ? "; on both faces" : "; at the face side");
}

}  // namespace

std::string moulding_text(const Operation& moulding, const LengthPrinter& lengths) {
  const Length radius = moulding.setting(SizeName::radius);
  const Length fillet = moulding.setting(SizeName::fillet);
  const Length hollow = moulding.setting(SizeName::hollow_radius);
  const Length quirk = moulding.setting(SizeName::quirk);
  if (quirk > Length())
    return "bead of radius " + lengths.one(radius) + " beside a quirk of " + lengths.one(quirk) +
           ", " + lengths.one(moulding.setting(SizeName::width)) +
           " wide on the face; at the face side";
  if (!moulding.profile.empty()) return own_moulding_text(moulding, lengths);
  std::string text = "bevel";
  if (radius > Length()) text = "ovolo of radius " + lengths.one(radius);
  if (hollow > Length()) text = "cove of radius " + lengths.one(hollow);
  text += ", " + lengths.one(moulding.setting(SizeName::width)) + " wide on the face and " +
          lengths.one(moulding.setting(SizeName::depth)) + " deep";
  if (fillet > Length()) text += ", with a fillet of " + lengths.one(fillet) + " under the face";
  return text + (moulding.both_faces ? "; on both faces" : "; at the face side");
}

std::string corners_text(const Feature& moulding, const LengthPrinter& lengths) {
  std::string text;
  for (const MouldingCorner& corner : moulding.corners) {
    text += text.empty() ? "corners, from the sight edge x from the face: " : "; ";
    if (corner.radius != Length())
      text += corner.radius > Length() ? "round " + lengths.one(corner.radius) + " to "
                                       : "hollow " + lengths.one(-corner.radius) + " to ";
    text += lengths.one(corner.from_edge) + " x " + lengths.one(corner.deep);
  }
  return text;
}

std::string raise_text(const Operation& raise, const LengthPrinter& lengths) {
  const Length radius = raise.setting(SizeName::radius);
  const Length tongue = raise.setting(SizeName::tongue);
  const Length shoulder = raise.setting(SizeName::shoulder);
  const Length slope = raise.setting(SizeName::width) - tongue;
  std::string text = lengths.one(raise.setting(SizeName::width)) + " wide and " +
                     lengths.fine().one(raise.setting(SizeName::depth)) + " deep: from the edge " +
                     (tongue == Length() ? "" : lengths.one(tongue) + " of flat tongue, then ") +
                     "a ";
  text += radius == Length()
              ? "bevel " + lengths.one(slope) + " wide"
              : "cove " + lengths.one(slope) + " wide of radius " + lengths.one(radius);
  text += " that rises " + lengths.fine().one(raise.setting(SizeName::depth) - shoulder);
  return text + (shoulder == Length()
                     ? " to the field"
                     : ", then a shoulder of " + lengths.one(shoulder) + " up to the field");
}

}  // namespace haunch
