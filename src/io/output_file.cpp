#include "output_file.h"

#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <utility>

#include "shown_text.h"

namespace haunch {
namespace {

constexpr std::size_t kHeldBytes = std::size_t{64} * 1024;
constexpr int kNameTries = 100;
constexpr std::array<int, 3> kInterrupts{SIGINT, SIGTERM, SIGHUP};

// What the handler needs, fixed in place: it may run between any two instructions, and may not
// allocate.
constexpr std::size_t kMostLeftovers = 2;
std::array<std::array<char, 4096>, kMostLeftovers> leftover_paths{};
std::array<volatile sig_atomic_t, kMostLeftovers> leftover_there{};
std::array<struct sigaction, kInterrupts.size()> former_actions{};

extern "C" void remove_leftover(int signal) {
  for (std::size_t i = 0; i < kMostLeftovers; ++i)
    if (leftover_there[i] != 0) ::unlink(leftover_paths[i].data());
  for (std::size_t i = 0; i < kInterrupts.size(); ++i)
    if (kInterrupts[i] == signal) ::sigaction(signal, &former_actions[i], nullptr);
  ::raise(signal);  // comes as soon as this returns, and does what it would have done without us
}

/// Keeps interrupts waiting while it lives.
class NoInterrupts {
 public:
  NoInterrupts() {
    sigset_t interrupts;
    ::sigemptyset(&interrupts);
    for (const int signal : kInterrupts)
      ::sigaddset(&interrupts, signal);
    ::pthread_sigmask(SIG_BLOCK, &interrupts, &before_);
  }
  ~NoInterrupts() { ::pthread_sigmask(SIG_SETMASK, &before_, nullptr); }
  NoInterrupts(const NoInterrupts&) = delete;
  NoInterrupts& operator=(const NoInterrupts&) = delete;

 private:
  sigset_t before_{};
};

bool any_leftover() {
  return std::any_of(leftover_there.begin(), leftover_there.end(),
                     [](const volatile sig_atomic_t& there) { return there != 0; });
}

/// From here on an interrupt removes `path`. One that was ignored (nohup) stays ignored.
void guard(const std::string& path) {
  std::size_t free = 0;
  while (free < kMostLeftovers && leftover_there[free] != 0)
    ++free;
  if (free == kMostLeftovers || path.size() >= leftover_paths[free].size()) return;
  const bool first = !any_leftover();
  std::memcpy(leftover_paths[free].data(), path.c_str(), path.size() + 1);
  leftover_there[free] = 1;
  if (!first) return;
  struct sigaction action {};
  action.sa_handler = remove_leftover;
  ::sigemptyset(&action.sa_mask);
  for (std::size_t i = 0; i < kInterrupts.size(); ++i) {
    ::sigaction(kInterrupts[i], nullptr, &former_actions[i]);
    if (former_actions[i].sa_handler != SIG_IGN) ::sigaction(kInterrupts[i], &action, nullptr);
  }
}

void unguard(const std::string& path) {
  bool was_there = false;
  for (std::size_t i = 0; i < kMostLeftovers; ++i) {
    if (leftover_there[i] == 0 || path != leftover_paths[i].data()) continue;
    leftover_there[i] = 0;
    was_there = true;
  }
  if (!was_there || any_leftover()) return;
  for (std::size_t i = 0; i < kInterrupts.size(); ++i)
    ::sigaction(kInterrupts[i], &former_actions[i], nullptr);
}

bool is_same_file(const std::string& path, int descriptor) {
  struct stat named {};
  struct stat held {};
  return ::stat(path.c_str(), &named) == 0 && ::fstat(descriptor, &held) == 0 &&
         named.st_dev == held.st_dev && named.st_ino == held.st_ino;
}

/// Where `path` leads when all links are followed, the last one even to a file that is not there
/// yet.
std::string followed(const std::string& path) {
  constexpr int kMostLinks = 40;
  std::filesystem::path target = path;
  std::error_code error;
  for (int links = 0; links < kMostLinks && std::filesystem::is_symlink(target, error); ++links)
    target = target.parent_path() / std::filesystem::read_symlink(target, error);
  return target;
}

std::string folder_of(const std::string& path) {
  const std::size_t slash = path.rfind('/');
  return slash == std::string::npos ? "" : path.substr(0, slash + 1);
}

std::optional<FileIdentity> identity(const struct stat& status) {
  if (!S_ISREG(status.st_mode)) return std::nullopt;
  return FileIdentity{status.st_dev, status.st_ino};
}

}  // namespace

SystemCalls SystemCalls::real() {
  return {[](const char* path, int flags, mode_t mode) { return ::open(path, flags, mode); },
          ::write,
          ::fsync,
          ::close,
          [](const char* from, const char* to) { return std::rename(from, to); },
          ::unlink};
}

std::optional<FileIdentity> identity_of(const std::string& path) {
  struct stat status {};
  return ::stat(path.c_str(), &status) == 0 ? identity(status) : std::nullopt;
}

std::optional<FileIdentity> identity_of(int descriptor) {
  struct stat status {};
  return ::fstat(descriptor, &status) == 0 ? identity(status) : std::nullopt;
}

bool is_one_file(const std::string& one, const std::string& other) {
  if (one.empty() || other.empty()) return false;
  std::error_code error;
  const auto place = [&error](const std::string& path) {
    return std::filesystem::weakly_canonical(std::filesystem::absolute(followed(path), error),
                                             error);
  };
  return place(one) == place(other) && !error;
}

OutputFile::OutputFile(const std::string& path, int standard_output,
                       const std::vector<FileIdentity>& inputs, SystemCalls calls)
    : calls_(std::move(calls)), name_(path.empty() ? "<stdout>" : path) {
  held_.reserve(kHeldBytes);
  const bool is_standard = path.empty() || is_same_file(path, standard_output);
  const auto target = is_standard ? identity_of(standard_output) : identity_of(path);
  if (target && std::find(inputs.begin(), inputs.end(), *target) != inputs.end()) {
    state_ = State::failed;
    fault_ = FileFault{name_, "is one of the inputs, and is not written over"};
  } else if (is_standard) {
    open_direct(::fcntl(standard_output, F_DUPFD_CLOEXEC, 3));
  } else {
    open_named(path);
  }
}

OutputFile::~OutputFile() {
  give_up();
}

void OutputFile::open_direct(int descriptor) {
  if (descriptor < 0) return fail("cannot be opened", errno);
  descriptor_ = descriptor;
  ::signal(SIGPIPE,
           SIG_IGN);  // so that a closed pipe is a failed write, not the end of the process
}

void OutputFile::open_named(const std::string& path) {
  struct stat status {};
  const bool exists = ::stat(path.c_str(), &status) == 0;
  if (!exists && errno != ENOENT) return fail("cannot be opened", errno);
  if (exists && S_ISDIR(status.st_mode)) return fail("cannot be written", EISDIR);
  if (exists && !S_ISREG(status.st_mode))
    return open_direct(calls_.open(path.c_str(), O_WRONLY | O_CLOEXEC | O_NOCTTY, 0));
  // A rename would replace even a file that is set to read only.
  if (exists && ::access(path.c_str(), W_OK) != 0) return fail("cannot be written", errno);
  target_ = followed(path);
  open_beside(exists ? status.st_mode & 0777U : 0666, exists);
}

/// Makes the temporary file. `mode` is kept to the letter for a file that `exists`, else bent by
/// the umask.
void OutputFile::open_beside(mode_t mode, bool exists) {
  for (int i = 0; i < kNameTries; ++i) {
    const NoInterrupts meanwhile;
    const std::string temporary = folder_of(target_) + ".haunch-" + std::to_string(::getpid()) +
                                  "-" + std::to_string(i) + ".tmp";
    descriptor_ = calls_.open(temporary.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
    if (descriptor_ < 0 && errno == EEXIST) continue;
    if (descriptor_ < 0) return fail("cannot be written", errno);
    if (exists) ::fchmod(descriptor_, mode);
    temporary_ = temporary;
    return guard(temporary_);
  }
  fail("cannot be written", EEXIST);
}

void OutputFile::append(std::string_view text, Content content) {
  if (content == Content::data) return hold(text);
  while (state_ == State::open && !text.empty())
    hold(take_shown(text, Newlines::kept));
}

void OutputFile::hold(std::string_view bytes) {
  while (state_ == State::open && !bytes.empty()) {
    const std::size_t count = std::min(kHeldBytes - held_.size(), bytes.size());
    held_.append(bytes.substr(0, count));
    bytes.remove_prefix(count);
    if (held_.size() == kHeldBytes) flush();
  }
}

void OutputFile::flush() {
  std::string_view bytes = held_;
  while (!bytes.empty() && write_piece(bytes)) {
  }
  held_.clear();
}

/// Writes as much of `bytes` as the system takes at once. False after a fault.
bool OutputFile::write_piece(std::string_view& bytes) {
  const ssize_t written = calls_.write(descriptor_, bytes.data(), bytes.size());
  if (written > 0) {
    bytes.remove_prefix(static_cast<std::size_t>(written));
    return true;
  }
  const int error = written == 0 ? EIO : errno;
  if (error == EINTR) return true;
  if (error == EAGAIN) {  // a pipe that its other owner set so
    struct pollfd ready {
      descriptor_, POLLOUT, 0
    };
    ::poll(&ready, 1, -1);
    return true;
  }
  if (error == EPIPE && target_.empty()) {
    state_ = State::reader_gone;
    give_up();
  } else {
    fail("cannot be written", error);
  }
  return false;
}

OutputFile::State OutputFile::settle() {
  if (state_ != State::open || descriptor_ < 0) return state_;
  flush();
  if (state_ == State::open && sync()) close_descriptor();
  return state_;
}

OutputFile::State OutputFile::finish() {
  if (settle() != State::open) return state_;
  const NoInterrupts meanwhile;
  if (!temporary_.empty()) {
    if (calls_.rename(temporary_.c_str(), target_.c_str()) != 0) {
      fail("cannot be written", errno);
      return state_;
    }
    unguard(temporary_);
    temporary_.clear();
  }
  return state_ = State::finished;
}

bool OutputFile::sync() {
  if (temporary_.empty()) return true;
  int result = 0;
  do {
    result = calls_.fsync(descriptor_);
  } while (result != 0 && errno == EINTR);
  if (result != 0) fail("cannot be written", errno);
  return result == 0;
}

/// A full disk across a network may show only here.
bool OutputFile::close_descriptor() {
  const int result = calls_.close(std::exchange(descriptor_, -1));
  if (result == 0 || errno == EINTR) return true;  // interrupted, it is closed all the same
  fail("cannot be written", errno);
  return false;
}

/// Leaves nothing behind. Harmless when there is nothing.
void OutputFile::give_up() {
  const NoInterrupts meanwhile;
  if (descriptor_ >= 0) calls_.close(std::exchange(descriptor_, -1));
  if (temporary_.empty()) return;
  calls_.unlink(temporary_.c_str());
  unguard(temporary_);
  temporary_.clear();
}

void OutputFile::fail(const std::string& what, int error) {
  state_ = State::failed;
  fault_ = system_fault(name_, what, error);
  give_up();
}

}  // namespace haunch
