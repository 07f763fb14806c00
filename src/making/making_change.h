// What changes at the machines from an old work to a new: what is worked on pieces that both have,
// and what machines are set to for it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "change.h"
#include "making.h"

namespace haunch {

/// "leaf/top-rail": by this a piece is known again, as in the report's parts[].key.
std::string key_of(const Assembly& wood, const Piece& piece);

/// What is worked at one place of a piece, told by names that hold beyond its assembly.
struct WorkedPlace {
  std::string piece;          // its key
  std::string mark, name;     // of the piece
  std::string for_key;        // of the piece that it is worked for; empty: for no single one
  std::string for_mark;       // of that
  std::string fitting;        // that it is let in for
  Operation setting;          // without its runs
  std::size_t operation = 0;  // its number in its Making
  Run run;
  bool whole_length = false;  // or width: from one end of its piece to the other
};

/// Of all pieces, in their order.
std::vector<WorkedPlace> worked_places(const Assembly& wood, const Making& making);

/// One that is and was not, was and is not, or differs.
struct PlaceChange {
  std::optional<WorkedPlace> was, is;
  Changes setting, place;

  Turn turn() const { return turn_of(was, is); }
  const WorkedPlace& any() const { return is ? *is : *was; }
};

/// A setting of a machine that comes, goes, or becomes another for all that was run with it.
struct SettingChange {
  std::optional<Operation> was, is;  // without their runs
  std::size_t runs_was = 0, runs_is = 0;
  Changes setting;

  Turn turn() const { return turn_of(was, is); }
  const Operation& any() const { return is ? *is : *was; }
};

/// The works of pieces that both have are told one by one; those of pieces that come and go are
/// told by the pieces.
struct MakingChange {
  Tallied places, settings;  // places: of pieces that both have
  std::vector<PlaceChange> changed_places;
  std::vector<SettingChange> changed_settings;
};

MakingChange making_change(const Assembly& was_wood, const Making& was, const Assembly& is_wood,
                           const Making& is);

}  // namespace haunch
