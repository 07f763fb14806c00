// The bytes of one input, as they come in.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace haunch {

/// Reads a descriptor piece by piece and holds what is not taken yet. Views are good until the next
/// call of fill() or take_all().
class Feed {
 public:
  /// Closes the descriptor in the end if it is `owned`.
  Feed(int descriptor, bool owned) : descriptor_(descriptor), owned_(owned) {}
  ~Feed();
  Feed(const Feed&) = delete;
  Feed& operator=(const Feed&) = delete;

  /// Waits for more; false when there is none, at the end or after an error.
  bool fill();
  bool ended() const { return ended_; }
  /// The errno of a failed read, else 0.
  int error() const { return error_; }

  std::string_view waiting() const { return std::string_view(bytes_).substr(taken_); }
  void take(std::size_t count) { taken_ += count; }
  std::string take_all();

 private:
  void make_room();

  int descriptor_;
  bool owned_;
  bool ended_ = false;
  int error_ = 0;
  std::string bytes_;
  std::size_t taken_ = 0;  // of bytes_, from the front
};

}  // namespace haunch
