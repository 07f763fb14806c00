#include "feed.h"

#include <unistd.h>

#include <cerrno>
#include <utility>

namespace haunch {
namespace {

constexpr std::size_t kPiece = std::size_t{64} * 1024;

}  // namespace

Feed::~Feed() {
  if (owned_) ::close(descriptor_);
}

bool Feed::fill() {
  if (ended_) return false;
  bytes_.erase(0, taken_);
  taken_ = 0;
  const std::size_t held = bytes_.size();
  bytes_.resize(held + kPiece);
  ssize_t got = 0;
  do {
    got = ::read(descriptor_, bytes_.data() + held, kPiece);
  } while (got < 0 && errno == EINTR);
  if (got < 0) error_ = errno;
  ended_ = got <= 0;
  bytes_.resize(held + (got > 0 ? static_cast<std::size_t>(got) : 0));
  return !ended_;
}

std::string Feed::take_all() {
  bytes_.erase(0, taken_);
  taken_ = 0;
  return std::exchange(bytes_, {});
}

}  // namespace haunch
