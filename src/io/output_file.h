// Results out: to a file, whole or not at all, or to standard output.
#pragma once

#include <sys/types.h>

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "file_fault.h"
#include "view.h"

namespace haunch {

/// The calls by which a result reaches the disk. Tests put others in their place.
struct SystemCalls {
  std::function<int(const char* path, int flags, mode_t mode)> open;
  std::function<ssize_t(int descriptor, const void* bytes, std::size_t count)> write;
  std::function<int(int descriptor)> fsync;
  std::function<int(int descriptor)> close;
  std::function<int(const char* from, const char* to)> rename;
  std::function<int(const char* path)> unlink;
  std::function<int(const char* from, const char* to)> link;

  static SystemCalls real();
};

/// One file, whatever it is called.
struct FileIdentity {
  dev_t device = 0;
  ino_t number = 0;

  friend bool operator==(const FileIdentity&, const FileIdentity&) = default;
};

/// Of an ordinary file that is there; others may be read and written at once.
std::optional<FileIdentity> identity_of(const std::string& path);
std::optional<FileIdentity> identity_of(int descriptor);

/// Whether two names lead to one file, be it there or not.
bool is_one_file(const std::string& one, const std::string& other);

/// No name, or "-".
bool is_standard_output(const std::string& path);

/// Where results go.
///
/// A named file is written under another name in the same folder, synced and renamed when it is
/// finished; without that, or after any fault, the name keeps what it held and nothing is left
/// over, on an interrupt neither. A link is followed; an existing file keeps its permissions. What
/// is no ordinary file (/dev/stdout, a pipe) is written directly. Writes fail from then on where a
/// signal would have ended the program (let_writes_fail).
/// Two named files at a time in a process at most (interrupts.h).
class OutputFile {
 public:
  /// No `path`, "-" or standard output by another name writes to the descriptor `standard_output`.
  /// A file that is one of `inputs` is refused.
  OutputFile(const std::string& path, int standard_output,
             const std::vector<FileIdentity>& inputs = {}, SystemCalls calls = SystemCalls::real());
  ~OutputFile();
  OutputFile(const OutputFile&) = delete;
  OutputFile& operator=(const OutputFile&) = delete;

  enum class State {
    open,         // all is well so far
    finished,     // all is written
    reader_gone,  // a pipe closed by its reader before it took all: no use in going on
    failed        // see fault()
  };

  /// Refuses a file that is one of these inputs too, which came to light when it was open.
  void spare(const std::vector<FileIdentity>& inputs);
  /// Whole characters, held back up to 64 KiB. This is the one place where what is shown is made
  /// safe for a terminal (shown_text.h). After a fault it does nothing.
  void append(std::string_view text, Content content = Content::shown);
  /// Whether it is put in place as a whole; else it is written directly.
  bool is_named() const { return !target_.empty(); }
  /// Makes a named file whole, though still under its other name. Nothing is appended after it.
  State settle();
  /// Settles, and puts the file in its place; writes what is left of a direct one.
  State finish();
  /// Finishes a named file so that take_back() can put back what was there. That is done when it is
  /// destroyed too, unless stand() was called.
  State finish_for_now();
  /// False when the file stays in place all the same.
  bool take_back();
  void stand();

  State state() const { return state_; }
  const std::optional<FileFault>& fault() const { return fault_; }

 private:
  void open_direct(int descriptor);
  void open_named(const std::string& path);
  void open_beside(mode_t mode, bool exists);
  void hold(std::string_view bytes);
  void flush();
  bool write_piece(std::string_view& bytes);
  void keep_former();
  void drop_former();
  void sync_folder();
  bool sync();
  bool close_descriptor();
  void give_up();
  void fail(const std::string& what, int error);

  SystemCalls calls_;
  std::string name_;                        // as the user gave it
  std::optional<FileIdentity> overwrites_;  // what was there before
  std::string target_;                      // with links followed; empty when written directly
  std::string temporary_;                   // empty when there is none
  std::string former_;  // another name of the file that was there before, while it may come back
  bool had_former_ = false;
  bool provisional_ = false;  // in place, but not to stay yet
  int descriptor_ = -1;
  State state_ = State::open;
  std::optional<FileFault> fault_;
  std::string held_;
};

}  // namespace haunch
