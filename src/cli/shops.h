// Which shop file is taken for which spec, and what it says.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "complaints.h"
#include "invocation.h"
#include "shop.h"
#include "spec_source.h"

namespace haunch {

/// What led to a shop file. An earlier one wins.
enum class FoundBy : std::uint8_t { option, environment, place };

/// One shop file, read.
struct FoundShop {
  std::string file;
  FoundBy by = FoundBy::option;
  Record record;  // its text, for who asks where a value stands
  ShopDefaults shop;
};

/// The shop files of a run: the one that `--shop` names, else the one that HAUNCH_SHOP names, else
/// for each spec the shop.json in its folder; standard input lies in the folder that the run is in.
/// All are read before the first spec, so that no item is worked with half of a shop's sizes.
class Shops {
 public:
  Shops(const Invocation& invocation, const Streams& streams)
      : invocation_(invocation), streams_(streams) {}

  /// Finds and reads the shop files for these specs, and tells on standard error of those that the
  /// command line does not name. False when one cannot be used.
  bool take(const std::vector<std::string>& specs, Complaints& complaints);

  /// For specs that stand in the file of that name, as records have it; null where there is none.
  const ShopDefaults* of(const std::string& source) const;

  const std::vector<FoundShop>& found() const { return found_; }
  /// Not to be written over.
  std::vector<std::string> files() const;

  /// HAUNCH_SHOP; empty where it is not set.
  static std::string environment();

 private:
  bool take_one(const std::string& file, FoundBy by, Complaints& complaints);
  bool take_beside(const std::string& spec, Complaints& complaints);
  void tell(const std::string& file, FoundBy by, Complaints& complaints) const;

  const Invocation& invocation_;
  const Streams& streams_;
  std::vector<FoundShop> found_;
  bool for_all_ = false;                          // one for all specs, or none for any
  std::map<std::string, std::size_t> of_folder_;  // places in `found_`
};

/// All files that specs were read from up to now, those that they are like and shop files with
/// them.
std::vector<std::string> files_read(const SpecSource& source, const Shops& shops);

}  // namespace haunch
