// "like": a spec that takes another spec's keys first.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "document.h"
#include "spec_merge.h"

namespace haunch {

/// A text that some values of a document come from: their places go on from `start`.
struct OtherText {
  std::string source;
  std::shared_ptr<const std::string> text;
  std::uint32_t start = 0;
};

/// The specs that others are like, each read once.
class Likes {
 public:
  /// Puts what `item` is like under it. `source` is where the item stands, `start` the first place
  /// beyond its text; the texts that are taken from are added to `others`. `id`, `quantity` and
  /// `note` belong to one item and are never taken. Gives what is wrong with "like".
  std::vector<Problem> take(Value& item, const std::string& source, std::uint32_t start,
                            Lists lists, std::vector<OtherText>& others);
  /// Of all that was taken from.
  std::vector<std::string> files() const;

 private:
  /// A spec that others are like, with what it is like itself; or why there is none.
  struct Other {
    Value item;
    std::vector<OtherText> texts;
    std::uint32_t extent = 0;  // the first place beyond its texts
    std::string fault;
  };

  const Other& other(const std::string& file, std::vector<std::string> way);
  Other read(const std::string& file, std::vector<std::string> way);
  std::string put_under(Value& item, const std::string& source, std::uint32_t start, Lists lists,
                        std::vector<OtherText>& others, const std::vector<std::string>& way);

  std::map<std::string, Other> others_;
};

}  // namespace haunch
