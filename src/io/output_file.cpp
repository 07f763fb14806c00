#include "output_file.h"

#include <fcntl.h>
#include <poll.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <utility>

#include "emphasis.h"
#include "interrupts.h"
#include "shown_text.h"

namespace haunch {
namespace {

constexpr std::size_t kHeldBytes = std::size_t{64} * 1024;
constexpr int kNameTries = 100;
std::string folder_of(const std::string& path) {
  const std::size_t slash = path.rfind('/');
  return slash == std::string::npos ? "" : path.substr(0, slash + 1);
}

/// The `i`th name to try for a file of ours in the folder of `target`.
std::string name_beside(const std::string& target, int i) {
  return folder_of(target) + ".haunch-" + std::to_string(::getpid()) + "-" + std::to_string(i) +
         ".tmp";
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
          ::unlink,
          ::link};
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

bool is_standard_output(const std::string& path) {
  return path.empty() || path == "-";
}

OutputFile::OutputFile(const std::string& path, int standard_output,
                       const std::vector<FileIdentity>& inputs, SystemCalls calls)
    : calls_(std::move(calls)), name_(is_standard_output(path) ? "<stdout>" : path) {
  let_writes_fail();
  held_.reserve(kHeldBytes);
  const bool is_standard = is_standard_output(path) || is_same_file(path, standard_output);
  overwrites_ = is_standard ? identity_of(standard_output) : identity_of(path);
  spare(inputs);
  if (state_ == State::failed) return;
  if (is_standard)
    open_direct(::fcntl(standard_output, F_DUPFD_CLOEXEC, 3));
  else
    open_named(path);
}

void OutputFile::spare(const std::vector<FileIdentity>& inputs) {
  if (state_ != State::open || !overwrites_ ||
      std::find(inputs.begin(), inputs.end(), *overwrites_) == inputs.end())
    return;
  state_ = State::failed;
  give_up();
  fault_ = FileFault{name_, "is one of the inputs, and is not written over"};
}

OutputFile::~OutputFile() {
  give_up();
}

void OutputFile::open_direct(int descriptor) {
  if (descriptor < 0) return fail("cannot be opened", errno);
  descriptor_ = descriptor;
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
    std::string temporary = name_beside(target_, i);
    descriptor_ = calls_.open(temporary.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
    if (descriptor_ < 0 && errno == EEXIST) continue;
    if (descriptor_ < 0) return fail("cannot be written", errno);
    // From here on nothing is allocated: thrown out of a constructor, it would leave the file
    // there.
    if (exists) ::fchmod(descriptor_, mode);
    temporary_ = std::move(temporary);
    return guard(temporary_);
  }
  fail("cannot be written", EEXIST);
}

void OutputFile::append(std::string_view text, Content content) {
  if (content == Content::data) return hold(text);
  if (content == Content::emphasised)
    return hold(emphasised(shown_text(text, Newlines::kept_with_pages)));
  while (state_ == State::open && !text.empty())
    hold(take_shown(text, content == Content::pages ? Newlines::kept_with_pages : Newlines::kept));
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
  if (state_ != State::open || descriptor_ < 0 || !is_named()) return state_;
  flush();
  if (state_ == State::open && sync()) close_descriptor();
  return state_;
}

OutputFile::State OutputFile::finish() {
  if (settle() != State::open) return state_;
  if (!is_named()) {
    flush();
    if (state_ == State::open && close_descriptor()) state_ = State::finished;
    return state_;
  }
  const NoInterrupts meanwhile;
  if (calls_.rename(temporary_.c_str(), target_.c_str()) != 0) {
    fail("cannot be written", errno);
    return state_;
  }
  unguard(temporary_);
  temporary_.clear();
  return state_ = State::finished;
}

OutputFile::State OutputFile::finish_for_now() {
  if (settle() != State::open) return state_;
  had_former_ = ::access(target_.c_str(), F_OK) == 0;
  if (had_former_) keep_former();
  provisional_ = finish() == State::finished;
  if (provisional_) sync_folder();
  return state_;
}

/// By a second name for it. A disk without such (FAT) leaves none, and nothing can be taken back.
void OutputFile::keep_former() {
  for (int i = 0; i < kNameTries; ++i) {
    std::string beside = name_beside(target_, i);
    if (calls_.link(target_.c_str(), beside.c_str()) == 0) {
      former_ = std::move(beside);
      return;
    }
    if (errno != EEXIST) return;
  }
}

/// So that after a power cut what is renamed later is not there without what was renamed before.
/// Not all disks can; then their order is not known.
void OutputFile::sync_folder() {
  const std::string folder = folder_of(target_);
  const int descriptor =
      calls_.open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_CLOEXEC | O_DIRECTORY, 0);
  if (descriptor < 0) return;
  calls_.fsync(descriptor);
  calls_.close(descriptor);
}

bool OutputFile::take_back() {
  if (!std::exchange(provisional_, false)) return false;
  if (had_former_ && former_.empty()) return false;
  const bool done = had_former_ ? calls_.rename(former_.c_str(), target_.c_str()) == 0
                                : calls_.unlink(target_.c_str()) == 0;
  if (!done) return false;
  former_.clear();
  state_ = State::failed;
  return true;
}

void OutputFile::stand() {
  provisional_ = false;
  drop_former();
}

void OutputFile::drop_former() {
  if (!former_.empty()) calls_.unlink(former_.c_str());
  former_.clear();
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
  take_back();
  drop_former();
  if (temporary_.empty()) return;
  calls_.unlink(temporary_.c_str());
  unguard(temporary_);
  temporary_.clear();
}

void OutputFile::fail(const std::string& what, int error) {
  state_ = State::failed;
  give_up();
  fault_ = system_fault(name_, what, error);
}

}  // namespace haunch
