// How the program ends. Of 0 to 4 the highest that applies.
#pragma once

namespace haunch {

enum ExitStatus {
  kDone = 0,          // cautions included
  kCheckFailed = 1,   // some item will not go together or not last
  kBadSpec = 2,       // a spec, a shop file or the command line is wrong
  kFileFault = 3,     // a file could not be read or written
  kProgramFault = 4,  // haunch itself is at fault
  // Instead of 0: the reader of a pipe went before it took all. As of a program that SIGPIPE ended.
  kReaderGone = 141
};

}  // namespace haunch
