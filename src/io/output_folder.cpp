#include "output_folder.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <set>
#include <string_view>

#include "interrupts.h"
#include "shown_text.h"
#include "utf8.h"

namespace haunch {
namespace {

constexpr int kNameTries = 100;

std::string without_slashes(std::string path) {
  while (path.size() > 1 && path.back() == '/')
    path.pop_back();
  return path;
}

/// The folder while it is filled. It is removed with all that is in it, unless it is put in place:
/// without allocating anything, as there may be no memory left.
class FolderAtWork {
 public:
  FolderAtWork(std::string target, const SystemCalls& calls)
      : target_(std::move(target)), calls_(calls) {}
  FolderAtWork(const FolderAtWork&) = delete;
  FolderAtWork& operator=(const FolderAtWork&) = delete;
  ~FolderAtWork() {
    if (folder_.empty()) return;
    for (auto it = made_.rbegin(); it != made_.rend(); ++it)
      std::remove(it->c_str());
    std::remove(folder_.c_str());
  }

  /// All of these say whether all is well; else errno tells what is not.
  bool make() {
    const std::size_t slash = target_.rfind('/');
    const std::string beside = slash == std::string::npos ? "" : target_.substr(0, slash + 1);
    for (int i = 0; i < kNameTries; ++i) {
      std::string folder =
          beside + ".haunch-" + std::to_string(::getpid()) + "-" + std::to_string(i) + ".tmp";
      if (::mkdir(folder.c_str(), 0777) == 0) {
        folder_ = std::move(folder);
        return true;
      }
      if (errno != EEXIST) return false;
    }
    return false;
  }

  bool write(const FolderFile& file) {
    if (!make_folders(file.name)) return false;
    const std::string& path = made_.emplace_back(folder_ + "/" + file.name);
    const int descriptor = calls_.open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (descriptor < 0) return false;
    const bool written = write_all(descriptor, file.text) && sync(descriptor);
    const int error = errno;
    const bool closed = calls_.close(descriptor) == 0 || errno == EINTR;
    if (!written) errno = error;
    return written && closed;
  }

  bool put_in_place() {
    for (const std::string& each : inner_)
      if (!sync_folder(folder_ + "/" + each)) return false;
    if (!sync_folder(folder_)) return false;
    if (calls_.rename(folder_.c_str(), target_.c_str()) != 0) return false;
    folder_.clear();
    return true;
  }

 private:
  bool make_folders(const std::string& name) {
    for (std::size_t slash = name.find('/'); slash != std::string::npos;
         slash = name.find('/', slash + 1)) {
      const std::string inner = name.substr(0, slash);
      if (!inner_.insert(inner).second) continue;
      if (::mkdir(made_.emplace_back(folder_ + "/" + inner).c_str(), 0777) != 0) return false;
    }
    return true;
  }

  bool write_all(int descriptor, std::string_view bytes) const {
    while (!bytes.empty()) {
      const ssize_t written = calls_.write(descriptor, bytes.data(), bytes.size());
      if (written < 0 && errno == EINTR) continue;
      if (written == 0) errno = EIO;
      if (written <= 0) return false;
      bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
  }

  bool sync(int descriptor) const {
    int result = 0;
    do {
      result = calls_.fsync(descriptor);
    } while (result != 0 && errno == EINTR);
    return result == 0;
  }

  /// Not all disks can sync a folder; that it can't be opened is a fault.
  bool sync_folder(const std::string& folder) const {
    const int descriptor = calls_.open(folder.c_str(), O_RDONLY | O_CLOEXEC | O_DIRECTORY, 0);
    if (descriptor < 0) return false;
    calls_.fsync(descriptor);
    calls_.close(descriptor);
    return true;
  }

  std::string target_;
  const SystemCalls& calls_;
  std::string folder_;  // its name till it is in place; empty when there is none
  std::set<std::string> inner_;
  std::vector<std::string> made_;  // in it, in turn
};

}  // namespace

std::optional<FileFault> folder_fault(const std::string& path) {
  struct stat status {};
  if (::stat(path.c_str(), &status) == 0)
    return FileFault{path, "is there already, and is not written over; name a new folder"};
  if (errno != ENOENT) return system_fault(path, "cannot be made", errno);
  return {};
}

std::optional<FileFault> write_folder(const std::string& path, const std::vector<FolderFile>& files,
                                      const SystemCalls& calls) {
  const NoInterrupts meanwhile;
  if (auto fault = folder_fault(path)) return fault;
  FolderAtWork folder(without_slashes(path), calls);
  const bool done = folder.make() &&
                    std::all_of(files.begin(), files.end(),
                                [&](const FolderFile& file) { return folder.write(file); }) &&
                    folder.put_in_place();
  if (!done) return system_fault(path, "cannot be made", errno);
  return {};
}

std::string safe_name(std::string_view text) {
  constexpr std::string_view kMeans = "/\\:*?\"<>|%";
  std::string name;
  const std::string_view whole = text;
  while (!text.empty()) {
    const Utf8Character character = first_character(text);
    const std::size_t size = std::max<std::size_t>(character.size, 1);
    // A dot at the front hides a file or leads out of the folder; some systems drop one at the end.
    const bool at_end = text.size() == whole.size() || text.size() == size;
    const bool unsafe = character.size == 0 || acts_on_screen(character.code) ||
                        kMeans.find(text.front()) != std::string_view::npos ||
                        (at_end && (text.front() == '.' || text.front() == ' '));
    for (const char byte : text.substr(0, size)) {
      constexpr std::string_view kFigures = "0123456789ABCDEF";
      const auto value = static_cast<unsigned char>(byte);
      if (unsafe)
        name += {'%', kFigures[value / 16U], kFigures[value % 16U]};
      else
        name += byte;
    }
    text.remove_prefix(size);
  }
  return name;
}

}  // namespace haunch
