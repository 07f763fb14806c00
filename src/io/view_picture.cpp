#include "view_picture.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace haunch {
namespace {

constexpr double kNear = 0.003;  // mm of paper: ends of lines that meet

bool meet(const ViewSpot& a, const ViewSpot& b) {
  return std::abs(a.u - b.u) < kNear && std::abs(a.v - b.v) < kNear;
}

/// Lines that go on in each other as one, so that dashes run round corners.
std::vector<SpotRun> joined_up(std::vector<SpotRun> lines) {
  std::vector<SpotRun> runs;
  while (!lines.empty()) {
    SpotRun run = std::move(lines.back());
    lines.pop_back();
    for (bool grew = true; grew && !lines.empty();) {
      grew = false;
      for (auto line = lines.begin(); line != lines.end(); ++line) {
        if (meet(run.back(), line->back())) std::swap(line->front(), line->back());
        if (!meet(run.back(), line->front())) continue;
        run.push_back(line->back());
        lines.erase(line);
        grew = true;
        break;
      }
    }
    runs.push_back(std::move(run));
  }
  return runs;
}

/// A break: as if drawn by hand, but the same each time.
SpotRun wavy(const ViewSpot& from, const ViewSpot& to) {
  const double length = std::hypot(to.u - from.u, to.v - from.v);
  const int parts = std::max(2, static_cast<int>(std::lround(length / 1.1)));
  const double across_u = -(to.v - from.v) / length, across_v = (to.u - from.u) / length;
  const double much = std::min(1.0, length / 25);
  SpotRun run;
  for (int i = 0; i <= parts; ++i) {
    const double at = static_cast<double>(i) / parts, mm = at * length;
    const double off = much * (0.45 * std::sin(mm * 1.1) + 0.25 * std::sin(mm * 2.7 + 1));
    run.push_back({from.u + (to.u - from.u) * at + across_u * off,
                   from.v + (to.v - from.v) * at + across_v * off});
  }
  return run;
}

Pen pen_of(LineOf of) {
  switch (of) {
    case LineOf::seen:
      return Pen::seen;
    case LineOf::hidden:
      return Pen::hidden;
    case LineOf::cut:
      return Pen::cut;
    case LineOf::broken:
      break;
  }
  return Pen::broken;
}

/// Lines at one angle, cut at the outlines of what they are to fill.
class Hatching {
 public:
  Hatching(const std::vector<SpotRun>& loops, ViewSpot along) : loops_(loops), along_(along) {}

  /// One every `apart`, the first a part of that from where they are to begin: pieces alike are
  /// hatched alike, wherever they stand.
  std::vector<SpotRun> lines(double apart, double phase) const {
    double low = 0, high = 0;
    bool any = false;
    for (const SpotRun& loop : loops_)
      for (const ViewSpot& spot : loop) {
        low = any ? std::min(low, across(spot)) : across(spot);
        high = any ? std::max(high, across(spot)) : across(spot);
        any = true;
      }
    std::vector<SpotRun> lines;
    for (double k = phase; low + k * apart < high; ++k)
      add_line(lines, low + k * apart);
    return lines;
  }

 private:
  double across(const ViewSpot& spot) const { return spot.v * along_.u - spot.u * along_.v; }
  double forth(const ViewSpot& spot) const { return spot.u * along_.u + spot.v * along_.v; }

  void add_line(std::vector<SpotRun>& lines, double at) const {
    std::vector<double> crossings;
    for (const SpotRun& loop : loops_)
      for (std::size_t i = 0; i < loop.size(); ++i) {
        const ViewSpot &a = loop[i], &b = loop[(i + 1) % loop.size()];
        const double from = across(a) - at, to = across(b) - at;
        if ((from < 0) == (to < 0)) continue;
        crossings.push_back(forth(a) + (forth(b) - forth(a)) * from / (from - to));
      }
    std::sort(crossings.begin(), crossings.end());
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2)
      if (crossings[i + 1] - crossings[i] > 0.1)
        lines.push_back({spot(crossings[i], at), spot(crossings[i + 1], at)});
  }

  ViewSpot spot(double forth, double across) const {
    return {along_.u * forth - along_.v * across, along_.v * forth + along_.u * across};
  }

  const std::vector<SpotRun>& loops_;
  ViewSpot along_;
};

/// A line along the grain: its first stroke longer or shorter, so that they begin unevenly.
void add_grain(std::vector<SpotRun>& all, const SpotRun& line, std::size_t number) {
  constexpr double kFirst[] = {2.5, 7, 12, 4.5, 9.5}, kGap = 1.6;
  const ViewSpot from = line.front(), to = line.back();
  const double length = std::hypot(to.u - from.u, to.v - from.v);
  const auto at = [&](double mm) {
    return ViewSpot{from.u + (to.u - from.u) * mm / length, from.v + (to.v - from.v) * mm / length};
  };
  const double first = kFirst[number % std::size(kFirst)];
  all.push_back({from, at(std::min(first, length))});
  if (first + kGap < length) all.push_back({at(first + kGap), to});
}

bool touch(const CutArea& a, const CutArea& b) {
  constexpr double kReach = 3;  // mm: also over the room that is left between them
  const auto room = [](const std::vector<ViewSpot>& loop) {
    Extent all{loop.front(), loop.front()};
    for (const ViewSpot& spot : loop)
      all = around(all, Extent{spot, spot});
    return grown(all, kReach / 2);
  };
  for (const auto& one : a.loops)
    for (const auto& other : b.loops)
      if (!one.empty() && !other.empty() && overlap(room(one), room(other))) return true;
  return false;
}

/// Which areas are hatched leaning to the left: each other than the first one beside it that is
/// told already, else as its piece's number has it.
std::vector<bool> leaning(const std::vector<CutArea>& areas) {
  std::vector<bool> lean;
  for (std::size_t i = 0; i < areas.size(); ++i) {
    bool left = areas[i].piece % 2 == 1;
    for (std::size_t other = 0; other < i; ++other) {
      const bool alike = areas[other].grain.has_value() == areas[i].grain.has_value();
      if (!alike || !touch(areas[i], areas[other])) continue;
      left = !lean[other];
      break;
    }
    lean.push_back(left);
  }
  return lean;
}

Shown shown_of(const CutArea& area, const Piece& piece) {
  if (piece.matter == Matter::glass) return Shown::glass;
  if (piece.matter == Matter::board) return Shown::board;
  return area.grain ? Shown::long_grain : Shown::end_grain;
}

}  // namespace

std::string scale_text(PaperScale scale) {
  return "1:" + std::to_string(scale.one_to);
}

Picture hatching_of(const std::vector<SpotRun>& loops, Shown shown, ViewSpot grain,
                    bool leans_left) {
  const double slant = std::sqrt(0.5);
  const ViewSpot slanted{leans_left ? -slant : slant, slant};
  Stroke stroke{shown == Shown::long_grain ? Pen::grain : Pen::hatch, {}};
  switch (shown) {
    case Shown::end_grain:
      stroke.runs = Hatching(loops, slanted).lines(leans_left ? 1.7 : 1.5, 0.3);
      break;
    case Shown::board: {
      const std::vector<SpotRun> pairs = Hatching(loops, slanted).lines(3.2, 0.3);
      stroke.runs = Hatching(loops, slanted).lines(3.2, 0.55);
      stroke.runs.insert(stroke.runs.end(), pairs.begin(), pairs.end());
      break;
    }
    case Shown::long_grain: {
      std::size_t number = leans_left ? 1 : 0;
      for (const SpotRun& line : Hatching(loops, grain).lines(2.2, 0.45))
        add_grain(stroke.runs, line, number++);
      break;
    }
    case Shown::glass:
      break;
  }
  Picture picture;
  if (!stroke.runs.empty()) picture.strokes.push_back(std::move(stroke));
  return picture;
}

Picture picture_of(const LineView& view, const Assembly& wood, PaperScale scale) {
  Picture picture;
  const std::vector<bool> leans_left = leaning(view.areas);
  for (std::size_t i = 0; i < view.areas.size(); ++i) {
    const CutArea& area = view.areas[i];
    std::vector<SpotRun> loops = area.loops;
    for (SpotRun& loop : loops)
      for (ViewSpot& spot : loop)
        spot = scale.on_paper(spot);
    const Piece& piece = wood.pieces[area.piece];
    Picture hatching =
        hatching_of(loops, shown_of(area, piece), area.grain.value_or(ViewSpot()), leans_left[i]);
    for (Stroke& stroke : hatching.strokes)
      stroke.mark = piece.mark;
    picture.add(hatching);
  }
  std::map<std::pair<std::size_t, Pen>, std::vector<SpotRun>> lines;
  for (const ViewLine& line : view.lines) {
    const ViewSpot from = scale.on_paper(line.from), to = scale.on_paper(line.to);
    if (meet(from, to)) continue;
    std::vector<SpotRun>& its = lines[{line.piece, pen_of(line.of)}];
    its.push_back(line.of == LineOf::broken ? wavy(from, to) : SpotRun{from, to});
  }
  for (auto& [key, runs] : lines)
    picture.strokes.push_back({key.second, key.second == Pen::broken ? runs : joined_up(runs),
                               wood.pieces[key.first].mark});
  return picture;
}

}  // namespace haunch
