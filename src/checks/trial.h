// Trial cuts: from readings of one tenon and its mortise to what the machines are to be set to.
//
// Every size across the thickness is taken from the face side, as it is gauged. A move is positive
// towards the back, or deeper.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "haunch/length_text.h"
#include "haunch/wood.h"
#include "readings.h"
#include "tolerances.h"

namespace haunch {

/// From none to the loosest fit that glue bridges: 0.25 mm, 0.010 in.
FitBand usual_band(Unit unit);

/// By how much the parts of a thickness may miss the whole: 0.05 mm, 0.002 in.
Length usual_caliper_error(Unit unit);

/// One piece as it was set out to be at the joint.
struct CheekDesign {
  Length stock;      // its thickness
  Length from_face;  // face side to the near cheek, or the near wall
  Length across;     // tenon thickness, or mortise width
  Length depth;
};

/// What was read of it. Empty: not measured.
struct CheekReadings {
  std::optional<Readings> stock;
  std::optional<Readings> from_face;
  std::optional<Readings> across;
  std::optional<Readings> from_back;  // back to the far cheek, or the far wall
  std::optional<Readings> depth;
};

/// A tenon and what it stands in: a mortise, or of a stub the groove.
struct JointDesign {
  bool stub = false;
  std::string_view tenon_role;    // of the piece with the tenon: "rail"
  std::string_view mortise_role;  // of the piece that receives it: "stile"
  CheekDesign tenon;
  CheekDesign mortise;

  Length fit() const { return mortise.across - tenon.across; }
};

/// Of a joint with a tenon on the piece that enters; nothing of any other.
std::optional<JointDesign> joint_design(const Assembly& wood, std::size_t joint);

struct JointReadings {
  CheekReadings tenon;
  CheekReadings mortise;
  FitBand band;
  Length caliper_error;
};

/// Readings across one thickness that cannot all be right.
struct Contradiction {
  bool of_tenon = true;
  Length stock;
  std::optional<Length> from_face, across, from_back;

  Length sum() const;
};

/// Parts that make more than the thickness, or all of them less, by more than the caliper error.
std::vector<Contradiction> contradictions(const JointReadings& readings);

/// Whether `reading` looks like `designed` read in the other unit: too large or too small by 25.4,
/// a fifth of that allowed either way.
enum class WrongUnit { no, read_in_mm, read_in_inches };
WrongUnit wrong_unit(Length reading, Length designed);

/// A size that was reckoned with, and where it comes from.
enum class Source { measured, added_up, designed };

template <>
inline constexpr std::string_view kWords<Source>[] = {"measured", "added up", "designed"};
struct Taken {
  Length size;
  Source source = Source::designed;

  bool known() const { return source != Source::designed; }
};

/// One piece as it was cut, as far as the readings tell; the rest as designed.
struct AsCut {
  Taken stock, from_face, across, depth;
};

/// How the entering piece stands to the receiving one: positive, proud of it.
struct Flush {
  Length face;  // with the tenon in the middle of its mortise
  Length back;
  Length face_least, face_most;  // with the tenon pushed to the back, to the face side
};
Flush flush(const AsCut& tenon, const AsCut& mortise);

/// A cutter, fence or stop.
enum class Setting { face_cheek, back_cheek, tenon_depth, mortise_place, mortise_depth };

template <>
inline constexpr std::string_view kWords<Setting>[] = {"face-cheek", "back-cheek", "tenon-depth",
                                                       "mortise-from-face", "mortise-depth"};

/// What it makes now and is to make: a place from the face side, or a depth.
struct Correction {
  Setting setting;
  Length from;
  Length to;
  std::optional<Length> within;  // nine times in ten; nothing from a single reading
  bool in_doubt = false;         // no more than the readings can tell

  Length move() const { return to - from; }
};

/// Whether the shop keeps its band once the settings are right: three spreads to either side of the
/// wanted fit within it.
enum class Hold {
  unknown,     // too few readings for a spread
  keeps,       // even if the spread is as large as so few readings leave open
  unsure,      // so few readings leave open a spread that keeps it, and one that does not
  off_centre,  // not at the wanted fit, but in the middle of the band
  cannot       // even if the spread is as small as so few readings leave open
};

template <>
inline constexpr std::string_view kWords<Hold>[] = {"unknown", "keeps", "unsure", "off-centre",
                                                    "cannot"};

struct Outlook {
  FitBand band;
  Length wanted;  // as designed, or the middle of a band that leaves the design outside
  std::optional<Length> spread, spread_at_most;  // of the fit
  std::optional<double> share;                   // of joints inside the band, 0 to 1
  Hold hold = Hold::unknown;
  std::size_t count = 0;  // readings that the spread is of
  /// unsure: how many in all would tell, if they spread alike; nothing where even 100 would not.
  std::optional<std::size_t> would_tell;

  /// Whether six spreads go into the band, taken as they were read.
  bool is_kept_as_read() const { return spread && *spread * 6 <= band.max - band.min; }
};

/// What the readings of a joint mean and what to change.
struct JointTrial {
  AsCut tenon, mortise;
  std::optional<Length> fit;     // nothing if neither tenon nor mortise was measured across
  std::optional<Length> bottom;  // below the tenon's end; nothing if no depth was measured
  std::optional<Flush> flush;    // nothing unless both places from the face side are known
  Flush after;                   // once all is set as told
  Length tenon_wanted;           // its thickness, for the mortise as it is
  std::vector<Correction> corrections;
  Outlook outlook;

  /// By how much the tenon is too thick.
  Length too_thick() const { return tenon.across.size - tenon_wanted; }
};

/// The mortise keeps the width its cutter makes, and its middle goes where it was designed; the
/// tenon is set to the wanted fit in it. With settings moved as told, the next cut has that fit to
/// the step.
JointTrial try_joint(const JointDesign& design, const JointReadings& readings);

}  // namespace haunch
