// The options of `haunch trial` by which single readings are given, one each time.
#pragma once

#include <array>
#include <string_view>

namespace haunch {

/// Where a reading belongs: to the piece with the tenon, to the one that receives it, or to their
/// cuts.
enum class TrialPart { tenon_piece, mortise_piece, tenon, mortise };

struct TrialOption {
  std::string_view option;
  TrialPart part;
  std::string_view key;  // as in a file of readings; of a mortise's width, whatever it is
};

inline constexpr std::array kTrialOptions = {
    TrialOption{"--tenon", TrialPart::tenon, "thickness"},
    TrialOption{"--tenon-face", TrialPart::tenon, "from_face"},
    TrialOption{"--tenon-depth", TrialPart::tenon, "depth"},
    TrialOption{"--tenon-stock", TrialPart::tenon_piece, "thickness"},
    TrialOption{"--mortise", TrialPart::mortise, "width"},
    TrialOption{"--mortise-face", TrialPart::mortise, "from_face"},
    TrialOption{"--mortise-depth", TrialPart::mortise, "depth"},
    TrialOption{"--mortise-stock", TrialPart::mortise_piece, "thickness"},
};

}  // namespace haunch
