#include "moulding_spec.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "arc.h"
#include "choices.h"
#include "haunch/length_text.h"
#include "rounding.h"

namespace haunch {
namespace {

constexpr double kNearly = 1e-6;  // of angles and of steps

MouldingPoint point_of(const MouldingCorner& corner) {
  return {corner.from_edge, corner.deep};
}

std::vector<MouldingCorner> drawn(const KeyValues& item) {
  std::vector<MouldingCorner> corners;
  for (const KeyValues& corner : item["mouldings[].outline"].items) {
    const auto hollow = corner.size("mouldings[].outline[].hollow");
    const auto round = corner.size("mouldings[].outline[].round");
    corners.push_back({corner.size("mouldings[].outline[].from_edge").value_or(Length()),
                       corner.size("mouldings[].outline[].deep").value_or(Length()),
                       hollow ? -*hollow : round.value_or(Length())});
  }
  return corners;
}

/// The chord between two corners, in steps and radians: 0 runs level towards the sight edge, a
/// quarter turn straight down.
struct Chord {
  double size, slope;

  Chord(const MouldingPoint& from, const MouldingPoint& to) {
    const auto run = static_cast<double>((from.from_edge - to.from_edge).steps());
    const auto fall = static_cast<double>((to.deep - from.deep).steps());
    size = std::hypot(run, fall);
    slope = std::atan2(fall, run);
  }
  /// The least radius of an arc over it that never turns back.
  double least_radius() const {
    return size / (2 * std::sin(std::min(slope, std::numbers::pi / 2 - slope)));
  }
};

/// Adds the corners within an arc; one that stands out begins flat, a hollow one steep.
void add_arc(std::vector<MouldingPoint>& outline, const MouldingPoint& to, Length radius) {
  const MouldingPoint from = outline.back();
  const Chord chord(from, to);
  const bool hollow = radius < Length();
  const double size = std::abs(static_cast<double>(radius.steps()));
  const double half = std::asin(std::min(chord.size / (2 * size), 1.0));
  const double first = hollow ? chord.slope + half : chord.slope - half;
  const int parts = chords_of(size, 2 * half);
  for (int i = 1; i < parts; ++i) {
    const double turned = 2 * half * i / parts;
    const double slope = hollow ? first - turned : first + turned;
    const double way = hollow ? -1 : 1;
    outline.push_back(
        {from.from_edge - nearest_step(way * size * (std::sin(slope) - std::sin(first))),
         from.deep + nearest_step(way * size * (std::cos(first) - std::cos(slope)))});
  }
}

/// The radius that all arcs of a sort have.
std::optional<Length> one_radius(const std::vector<MouldingCorner>& corners, bool hollow) {
  std::optional<Length> radius;
  for (const MouldingCorner& corner : corners) {
    if (corner.radius == Length() || (corner.radius < Length()) != hollow) continue;
    const Length its = hollow ? -corner.radius : corner.radius;
    if (radius && *radius != its) return {};
    radius = its;
  }
  return radius;
}

OwnMoulding moulding_of(const KeyValues& item) {
  const std::vector<MouldingCorner> corners = drawn(item);
  OwnMoulding moulding{item.text("mouldings[].name"), {point_of(corners.front())}, {},
                       one_radius(corners, false),    one_radius(corners, true),   corners};
  for (std::size_t i = 1; i < corners.size(); ++i) {
    const MouldingPoint at = point_of(corners[i]);
    if (corners[i].radius != Length()) add_arc(moulding.outline, at, corners[i].radius);
    moulding.outline.push_back(at);
  }
  if (moulding.outline[1].from_edge == moulding.width()) moulding.fillet = moulding.outline[1].deep;
  return moulding;
}

class MouldingCheck {
 public:
  MouldingCheck(ValueReader& read, const KeyValues& item, std::string path)
      : read_(read), item_(item), path_(std::move(path)), corners_(drawn(item)) {}

  void name(const std::vector<std::string>& before) {
    const std::string& its = item_.text("mouldings[].name");
    const std::string at = child_path(path_, "name");
    const auto& words = kWords<Moulding>;
    if (std::find(std::begin(words), std::end(words), its) != std::end(words))
      read_.problem(at, "\"" + its + "\" is a moulding that haunch has; give it another name");
    else if (std::find(before.begin(), before.end(), its) != before.end())
      read_.problem(at, "\"" + its + "\" is the name of another moulding too; give each its own");
  }

  void outline() {
    if (corners_.size() < 2) return;
    const MouldingCorner& first = corners_.front();
    const MouldingCorner& last = corners_.back();
    if (first.deep != Length() || first.from_edge == Length())
      return problem(0, "begins on the face, \"deep\": 0, somewhere from the sight edge");
    if (last.from_edge != Length() || last.deep == Length())
      return problem(corners_.size() - 1,
                     "ends on the sight edge, \"from_edge\": 0, somewhere below the face");
    if (corners_.front().radius != Length())
      return problem(0, "begins with a corner: an arc leads to it from the one before");
    for (std::size_t i = 1; i < corners_.size(); ++i)
      if (!corner(i)) return;
  }

 private:
  void problem(std::size_t corner, const std::string& message) {
    read_.problem(child_path(child_path(path_, "outline"), corner), "an outline " + message);
  }

  /// Each is nearer to the sight edge or deeper than the one before, and never the other way.
  bool corner(std::size_t i) {
    const MouldingCorner& before = corners_[i - 1];
    const MouldingCorner& at = corners_[i];
    const KeyValues& written = item_["mouldings[].outline"].items[i];
    if (at.from_edge > before.from_edge || at.deep < before.deep ||
        (at.from_edge == before.from_edge && at.deep == before.deep)) {
      problem(i,
              "falls from the face to the sight edge and never goes back: no straight cutter "
              "gets under it, and no coped end goes over it");
      return false;
    }
    if (written["mouldings[].outline[].round"].stated &&
        written["mouldings[].outline[].hollow"].stated) {
      problem(i, "has one arc to a corner; write \"round\" or \"hollow\"");
      return false;
    }
    return corners_[i].radius == Length() || arc(i);
  }

  bool arc(std::size_t i) {
    const Chord chord(point_of(corners_[i - 1]), point_of(corners_[i]));
    const auto radius = std::abs(static_cast<double>(corners_[i].radius.steps()));
    if (chord.slope < kNearly || chord.slope > std::numbers::pi / 2 - kNearly) {
      problem(i,
              "has no arc between two corners that stand level or straight below each other; "
              "take the radius out");
      return false;
    }
    if (radius >= chord.least_radius() * (1 - kNearly)) return true;
    const double least = chord.least_radius() / static_cast<double>(Length::kStepsPerMm);
    problem(i, fmt::format("turns back in an arc of so small a radius; make it at least {:.1f} mm, "
                           "{:.2f} in",
                           std::ceil(least * 10) / 10, std::ceil(least / 25.4 * 100) / 100));
    return false;
  }

  ValueReader& read_;
  const KeyValues& item_;
  std::string path_;
  std::vector<MouldingCorner> corners_;
};

}  // namespace

std::vector<OwnMoulding> mouldings_of(const std::vector<KeyValues>& items) {
  std::vector<OwnMoulding> mouldings;
  for (const KeyValues& item : items)
    mouldings.push_back(moulding_of(item));
  return mouldings;
}

void check_mouldings(ValueReader& read, const std::vector<KeyValues>& items,
                     const std::string& path) {
  std::vector<std::string> names;
  for (std::size_t i = 0; i < items.size(); ++i) {
    MouldingCheck check(read, items[i], child_path(path, i));
    check.name(names);
    check.outline();
    names.push_back(items[i].text("mouldings[].name"));
  }
}

}  // namespace haunch
