#include "feed.h"

#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <utility>

#include "json_reader.h"

namespace haunch {
namespace {

constexpr std::size_t kPiece = std::size_t{64} * 1024;

}  // namespace

Feed::~Feed() {
  if (owned_) ::close(descriptor_);
}

/// Twice as much as is held, and all that is ever held before that is more than half of it: a
/// string that grows by itself would take twice as much as the longest document.
void Feed::make_room() {
  constexpr std::size_t kMost = kMaxDocumentBytes + kPiece;
  const std::size_t needed = bytes_.size() - taken_ + kPiece;
  if (needed <= bytes_.capacity()) {
    bytes_.erase(0, taken_);
  } else {
    std::string wider;
    wider.reserve(4 * needed < kMost ? 2 * needed : std::max(needed, kMost));
    wider.append(waiting());
    bytes_.swap(wider);
  }
  taken_ = 0;
}

bool Feed::fill() {
  if (ended_) return false;
  make_room();
  char piece[kPiece];  // not bytes_ itself, which would be filled with zeros first
  ssize_t got = 0;
  do {
    got = ::read(descriptor_, piece, kPiece);
  } while (got < 0 && errno == EINTR);
  if (got < 0) error_ = errno;
  ended_ = got <= 0;
  if (got > 0) bytes_.append(piece, static_cast<std::size_t>(got));
  return !ended_;
}

std::string Feed::take_all() {
  bytes_.erase(0, taken_);
  taken_ = 0;
  return std::exchange(bytes_, {});
}

}  // namespace haunch
