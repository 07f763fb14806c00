// How the program ends. When several apply, the highest.
#pragma once

namespace haunch {

enum ExitStatus {
  kDone = 0,         // cautions included
  kCheckFailed = 1,  // some item will not go together or not last
  kBadSpec = 2,      // a spec, a shop file or the command line is wrong
  kFileFault = 3,    // a file could not be read or written
  kProgramFault = 4  // haunch itself is at fault
};

}  // namespace haunch
