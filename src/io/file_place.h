// What stands at a path. Neither throws: a path that cannot be looked at (links in a ring, a name
// too long, a folder that may not be entered) is left to whoever opens it, and to the system's
// words.
#pragma once

#include <string>

namespace haunch {

bool is_folder(const std::string& path);

/// Whether nothing stands there, for certain.
bool is_absent(const std::string& path);

/// Whether something stands there, for certain; a link that leads nowhere does.
bool is_present(const std::string& path);

}  // namespace haunch
