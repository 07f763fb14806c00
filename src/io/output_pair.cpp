#include "output_pair.h"

#include "interrupts.h"

namespace haunch {
namespace {

using State = OutputFile::State;

/// With one of them written directly nothing can be taken back, and interrupts are not kept waiting
/// for a slow reader.
void write_in_turn(const Part& first, const Part& second) {
  if (first.file.finish() != State::finished) return;
  if (!second.file.is_named()) second.file.append(second.text, second.content);
  second.file.finish();
}

bool put_in_place(OutputFile& first, OutputFile& second) {
  const NoInterrupts meanwhile;
  if (first.finish_for_now() != State::finished) return true;
  if (second.finish() != State::finished) return first.take_back();
  first.stand();
  return true;
}

}  // namespace

bool write_both(const Part& first, const Part& second) {
  if (second.file.is_named()) {
    second.file.append(second.text, second.content);
    second.file.settle();
  }
  if (second.file.state() != State::open) return true;
  first.file.append(first.text, first.content);
  if (first.file.is_named() && second.file.is_named()) {
    if (first.file.settle() != State::open) return true;
    return put_in_place(first.file, second.file);
  }
  write_in_turn(first, second);
  return true;
}

}  // namespace haunch
