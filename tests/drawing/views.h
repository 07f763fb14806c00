// Words for what is drawn.
#pragma once

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "../vocabulary.h"
#include "section.h"

namespace haunch::test {

/// A board of that length, width and thickness along x, y and z, with its low corner there.
inline Piece board_at(const std::string& mark, const Triple& at, const Triple& size) {
  Piece piece;
  piece.mark = mark;
  piece.name = mark;
  piece.blank = size;
  piece.place.origin = at;
  return piece;
}

/// What is cut out of a piece, in its own axes.
inline Feature cut_out(const Box& cut) {
  Feature feature;
  feature.cuts.push_back(cut);
  return feature;
}

inline Triple mm3(double x, double y, double z) {
  return {mm(x), mm(y), mm(z)};
}

inline Assembly of_pieces(std::vector<Piece> pieces) {
  Assembly assembly;
  assembly.pieces = std::move(pieces);
  return assembly;
}

/// "3.5": to the thousandth, without noughts at its end.
inline std::string figure(double value) {
  return decimal(mm(value), Unit::mm);
}

/// "0,0 10,0": from the lower or left end.
inline std::string told(const ViewLine& line) {
  ViewSpot a = line.from;
  ViewSpot b = line.to;
  if (b.u < a.u - 1e-6 || (std::abs(b.u - a.u) < 1e-6 && b.v < a.v)) std::swap(a, b);
  return figure(a.u) + "," + figure(a.v) + " " + figure(b.u) + "," + figure(b.v);
}

/// All lines of one kind, in the order of their words.
inline std::vector<std::string> lines(const LineView& view, LineOf of) {
  std::vector<std::string> all;
  for (const ViewLine& line : view.lines)
    if (line.of == of) all.push_back(told(line));
  std::sort(all.begin(), all.end());
  return all;
}

using Words = std::vector<std::string>;

/// Of one piece, in square millimetres.
inline double area_of(const CutArea& area) {
  double twice = 0;
  for (const auto& loop : area.loops)
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const ViewSpot& a = loop[i];
      const ViewSpot& b = loop[(i + 1) % loop.size()];
      twice += a.u * b.v - b.u * a.v;
    }
  return std::abs(twice) / 2;
}

inline double length_of(const ViewLine& line) {
  return std::hypot(line.to.u - line.from.u, line.to.v - line.from.v);
}

}  // namespace haunch::test
