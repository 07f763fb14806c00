#include "crew.h"

#include <system_error>
#include <utility>

#include "interrupts.h"

namespace haunch {
namespace {

constexpr std::size_t kTasksOfHand = 4;

}  // namespace

Crew::Crew(std::size_t hands, std::function<void(ItemTask&)> work) : work_(std::move(work)) {
  if (hands > 1) hire(hands);
  tasks_ = std::vector<Slot>(hands_.empty() ? 1 : hands_.size() * kTasksOfHand);
}

void Crew::hire(std::size_t hands) {
  const NoInterrupts
      of_hands;  // handed on to them: interrupts are for the thread that writes files
  try {
    while (hands_.size() < hands)
      hands_.emplace_back([this](const std::stop_token& stop) { work_on(stop); });
  } catch (const std::system_error&) {
    // The system gives no more threads; those that it gave do as well, if not as fast.
  }
}

// All are told before the first is waited for, or the others would work on what nobody wants.
Crew::~Crew() {
  for (std::jthread& hand : hands_)
    hand.request_stop();
}

void Crew::work(Slot& slot) const {
  try {
    work_(slot.task);
  } catch (...) {
    slot.fault = std::current_exception();
  }
}

void Crew::work_on(const std::stop_token& stop) {
  std::unique_lock lock(mutex_);
  while (true) {
    more_.wait(lock, stop, [this] { return begun_ < handed_out_; });
    if (stop.stop_requested()) return;
    Slot& slot = slot_of(begun_++);
    lock.unlock();
    work(slot);
    lock.lock();
    slot.done = true;
    done_.notify_one();
  }
}

void Crew::hand_out(ItemTask task) {
  Slot slot{std::move(task), nullptr, false};
  if (hands_.empty()) work(slot);
  const std::scoped_lock lock(mutex_);
  slot_of(handed_out_++) = std::move(slot);
  more_.notify_one();
}

ItemTask Crew::take_back() {
  std::unique_lock lock(mutex_);
  Slot& slot = slot_of(taken_back_++);
  done_.wait(lock, [&] { return hands_.empty() || slot.done; });
  if (slot.fault) std::rethrow_exception(slot.fault);
  return std::move(slot.task);
}

}  // namespace haunch
