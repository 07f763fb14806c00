#include "mirrored.h"

#include <algorithm>
#include <string>
#include <utility>

#include "extras.h"
#include "reflected.h"
#include "run_work.h"
#include "twin_words.h"

namespace haunch {
namespace {

/// Of what was mirrored, changed.
std::unique_ptr<Job> mirrored_plain(std::unique_ptr<Job> plain);

/// `Base`: Job, or RunWork of a run.
template <typename Base>
class MirroredOf : public Base {
 public:
  explicit MirroredOf(std::shared_ptr<const Base> plain) : Base(*plain), plain_(std::move(plain)) {}

  Worked work() const override;
  std::vector<Lever> levers() const override { return plain_->levers(); }
  std::unique_ptr<Job> with(const Lever& lever, Length value) const override {
    return mirrored_plain(plain_->with(lever, value));
  }
  std::vector<Alternative> alternatives() const override {
    std::vector<Alternative> all = plain_->alternatives();
    for (Alternative& each : all)
      each.job = mirrored_plain(std::move(each.job));
    return all;
  }

 protected:
  const Base& plain() const { return *plain_; }

 private:
  std::shared_ptr<const Base> plain_;
};

using MirroredJob = MirroredOf<Job>;

class MirroredRun : public MirroredOf<RunWork> {
 public:
  using MirroredOf::MirroredOf;

  static WallPlanes turned(const WallPlanes& planes, Length width) {
    return {width - planes.right, width - planes.left, planes.back, planes.level};
  }

  Surroundings surroundings() const override {
    Surroundings around = plain().surroundings();
    const Length width = plain().work().assembly.size[0];
    for (Boundary& boundary : around.boundaries) {
      boundary.name = twin_words(boundary.name);
      for (Corner& corner : boundary.shape.outline)  // across the assembly in each of them
        corner.u = width - corner.u;
    }
    around.planes = turned(around.planes, width);
    for (ThroughRun& through : around.corners) {
      through.at_right = !through.at_right;
      through.planes = turned(through.planes, through.wood.size[0]);
      through.wood = reflected(std::move(through.wood));
    }
    return around;
  }

  AlongWall along_wall() const override {
    const Assembly wood = plain().work().assembly;
    std::vector<std::string> paths;
    for (const Group& group : wood.groups)
      paths.push_back(group.path);
    return turned_about(plain().along_wall(), wood.size[0], paths);
  }
};

template <typename Base>
Worked MirroredOf<Base>::work() const {
  Worked worked = plain_->work();
  if (!worked.problems.empty()) return worked;
  worked.assembly = reflected(std::move(worked.assembly));
  for (Chain& chain : worked.chains)
    chain = twin_chain(std::move(chain));
  for (Caution& caution : worked.cautions)
    if (caution.about == "order of fixing") caution.words = twin_words(caution.words);
  std::string words =
      "this is the handed twin: left and right of what the spec says are changed over. Keys (of "
      "what is assumed, of remedies) are told as the spec has them";
  if (this->kind == "cabinet" || this->kind == "face-frame")
    words += "; what the layout counts from the left counts from the right";
  worked.cautions.push_back({"mirrored", std::move(words)});
  return worked;
}

std::unique_ptr<Job> mirrored_plain(std::unique_ptr<Job> plain) {
  if (as_run(*plain) == nullptr) return std::make_unique<MirroredJob>(std::move(plain));
  std::shared_ptr<const Job> job = std::move(plain);
  return std::make_unique<MirroredRun>(std::static_pointer_cast<const RunWork>(std::move(job)));
}

}  // namespace

std::unique_ptr<Job> mirrored(std::unique_ptr<Job> plain) {
  std::unique_ptr<Job> job = mirrored_plain(std::move(plain));
  job->name += ", mirrored";
  for (ExtraSpec& extra : job->extras)
    extra = turned_about(std::move(extra));
  return job;
}

}  // namespace haunch
