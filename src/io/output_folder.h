// A folder of results: made new, whole or not at all.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "output_file.h"

namespace haunch {

/// A file of such a folder.
struct FolderFile {
  std::string name;  // with the folders in it that it stands in: "side-door/A.step"
  std::string text;
};

/// Why a folder of that name can't be made: something is there already, or can't be looked at.
std::optional<FileFault> folder_fault(const std::string& path);

/// Writes all files to a folder beside `path` that is then called `path`, all of them synced
/// before. On a fault nothing is left of it, on an interrupt neither: that is kept waiting till all
/// is done. `path` must not be there.
std::optional<FileFault> write_folder(const std::string& path, const std::vector<FolderFile>& files,
                                      const SystemCalls& calls = SystemCalls::real());

/// A user's text as the name of a file or folder on any system, different for different texts:
/// what stands for something in a path, or can't be shown, comes as "%" and two figures a byte.
std::string safe_name(std::string_view text);

}  // namespace haunch
