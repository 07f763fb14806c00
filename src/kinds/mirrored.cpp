#include "mirrored.h"

#include <algorithm>
#include <string>
#include <utility>

#include "reflected.h"
#include "twin_words.h"

namespace haunch {
namespace {

class MirroredJob : public Job {
 public:
  explicit MirroredJob(std::shared_ptr<const Job> plain) : Job(*plain), plain_(std::move(plain)) {}

  Worked work() const override;
  std::vector<Lever> levers() const override { return plain_->levers(); }
  std::unique_ptr<Job> with(const Lever& lever, Length value) const override {
    return std::make_unique<MirroredJob>(plain_->with(lever, value));
  }
  std::vector<Alternative> alternatives() const override {
    std::vector<Alternative> all = plain_->alternatives();
    for (Alternative& each : all)
      each.job = std::make_unique<MirroredJob>(std::move(each.job));
    return all;
  }

 private:
  std::shared_ptr<const Job> plain_;
};

/// A chain that is told from the left.
void turn(Chain& chain) {
  if (chain.what.find("from the left") == std::string::npos) return;
  std::reverse(chain.links.begin(), chain.links.end());
  for (Chain::Link& link : chain.links)
    link.what = twin_words(link.what);
}

Worked MirroredJob::work() const {
  Worked worked = plain_->work();
  if (!worked.problems.empty()) return worked;
  worked.assembly = reflected(std::move(worked.assembly));
  for (Chain& chain : worked.chains)
    turn(chain);
  std::string words =
      "this is the handed twin: left and right of what the spec says are changed over. Keys (of "
      "what is assumed, of remedies) are told as the spec has them";
  if (kind == "cabinet" || kind == "face-frame")
    words += "; what the layout counts from the left counts from the right";
  worked.cautions.push_back({"mirrored", std::move(words)});
  return worked;
}

}  // namespace

std::unique_ptr<Job> mirrored(std::unique_ptr<Job> plain) {
  auto job = std::make_unique<MirroredJob>(std::move(plain));
  job->name += ", mirrored";
  return job;
}

}  // namespace haunch
