// Words for tests: lengths, specs in short, pieces and joints by name, wood compared.
#pragma once

#include <algorithm>
#include <cmath>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "catch.h"
#include "haunch/length_text.h"
#include "haunch/wood.h"
#include "json_reader.h"
#include "kind.h"
#include "shop.h"
#include "solid.h"

namespace Catch {

template <>
struct StringMaker<haunch::Length> {
  static std::string convert(haunch::Length length) {
    return haunch::decimal(length, haunch::Unit::mm) + " mm";
  }
};

template <>
struct StringMaker<std::optional<haunch::Length>> {
  static std::string convert(const std::optional<haunch::Length>& length) {
    return length ? StringMaker<haunch::Length>::convert(*length) : "none";
  }
};

template <>
struct StringMaker<haunch::Box> {
  static std::string convert(const haunch::Box& box) {
    std::string text = "[";
    for (const haunch::Triple& corner : {box.low, box.high})
      for (const haunch::Length length : corner)
        text += (text.size() > 1 ? ", " : "") + haunch::decimal(length, haunch::Unit::mm);
    return text + "]";
  }
};

}  // namespace Catch

namespace haunch::test {

inline constexpr Length kStep = Length::from_steps(1);

/// Millimetres, to the thousandth.
inline Length mm(double millimetres) {
  return Length::from_mm_thousandths(std::llround(millimetres * 1000));
}

/// inch(2, 3, 8) is 2 3/8 in.
inline Length inch(std::int64_t whole, std::int64_t parts = 0, std::int64_t of = 1) {
  return Length::from_inch_parts(whole * of + parts, of);
}

/// A box in millimetres, as a report prints it.
inline Box box(double x0, double y0, double z0, double x1, double y1, double z1) {
  return {{mm(x0), mm(y0), mm(z0)}, {mm(x1), mm(y1), mm(z1)}};
}

// ---- specs in, work out

/// A house door of 930 x 2060 mm, a cabinet door of 400 x 700 mm, and the same kinds in inches: 36
/// x 80 and 16 x 28. `more`: further keys of the spec.
inline std::string door_spec(std::string_view start, std::string_view more) {
  return R"({"kind": "door", )" + std::string(start) + (more.empty() ? "" : ", ") +
         std::string(more) + "}";
}
/// A house door that says no more than its opening.
inline std::string bare_house_mm(std::string_view more = {}) {
  return door_spec(R"("units": "mm", "opening": {"width": 930, "height": 2060})", more);
}
inline std::string bare_house_in(std::string_view more = {}) {
  return door_spec(R"("units": "in", "opening": {"width": 36, "height": 80})", more);
}
/// The same with one gap all round, the foot too, unless `more` speaks of it: a leaf of 924 x 2054.
inline std::string with_gap(std::string_view gap, std::string_view more) {
  if (more.find("\"clearance\"") != std::string_view::npos) return std::string(more);
  return std::string(gap) + (more.empty() ? "" : ", ") + std::string(more);
}
inline std::string house_mm(std::string_view more = {}) {
  return bare_house_mm(with_gap(R"("clearance": 3)", more));
}
inline std::string cabinet_mm(std::string_view more = {}) {
  return door_spec(R"("units": "mm", "opening": {"width": 400, "height": 700})", more);
}
inline std::string house_in(std::string_view more = {}) {
  return bare_house_in(with_gap(R"("clearance": "1/8")", more));
}
inline std::string cabinet_in(std::string_view more = {}) {
  return door_spec(R"("units": "in", "opening": {"width": 16, "height": 28})", more);
}

inline std::string in_lines(const std::vector<Problem>& problems) {
  std::string text;
  for (const Problem& problem : problems)
    text += (text.empty() ? "" : "\n") + problem.path + ": " + problem.message;
  return text;
}

inline Value value_of(std::string_view json) {
  Reading reading = read_json(json);
  if (!reading.problems.empty())
    throw std::invalid_argument("not JSON: " + in_lines(reading.problems));
  return std::move(*reading.value);
}

inline ShopDefaults shop(std::string_view json) {
  ShopReading reading = read_shop(value_of(json));
  if (!reading.shop) throw std::invalid_argument("no shop file: " + in_lines(reading.problems));
  return std::move(*reading.shop);
}

inline std::unique_ptr<Job> job(std::string_view spec, const ShopDefaults* shop = nullptr) {
  JobReading reading = read_job(value_of(spec), shop, "job");
  if (!reading.job) throw std::invalid_argument("refused: " + in_lines(reading.problems));
  return std::move(reading.job);
}

inline Worked work(const Job& job) {
  Worked worked = job.work();
  if (!worked.problems.empty())
    throw std::invalid_argument("refused: " + in_lines(worked.problems));
  return worked;
}

/// A spec that must be right, worked.
inline Worked work(std::string_view spec, const ShopDefaults* shop = nullptr) {
  return work(*job(spec, shop));
}

inline Assembly wood(std::string_view spec, const ShopDefaults* shop = nullptr) {
  return work(spec, shop).assembly;
}

/// Why a spec is refused, in reading or in working: `path: message` in lines; empty if it is not.
inline std::string refusal(std::string_view spec, const ShopDefaults* shop = nullptr) {
  const JobReading reading = read_job(value_of(spec), shop, "job");
  return in_lines(reading.job ? reading.job->work().problems : reading.problems);
}

/// The places of what a spec is refused for, each once, in lines.
inline std::string refused_at(std::string_view spec) {
  const JobReading reading = read_job(value_of(spec), nullptr, "job");
  std::vector<std::string> paths;
  for (const Problem& problem : reading.job ? reading.job->work().problems : reading.problems)
    if (std::find(paths.begin(), paths.end(), problem.path) == paths.end())
      paths.push_back(problem.path);
  std::string text;
  for (const std::string& path : paths)
    text += (text.empty() ? "" : "\n") + path;
  return text;
}

// ---- what was assumed

inline std::vector<std::string> assumed_keys(const Worked& worked) {
  std::vector<std::string> keys;
  for (const Assumed& assumed : worked.assumed)
    keys.push_back(assumed.key);
  std::sort(keys.begin(), keys.end());
  return keys;
}

inline std::vector<Assumed> assumed_under(const Worked& worked, std::string_view key) {
  std::vector<Assumed> found;
  for (const Assumed& assumed : worked.assumed)
    if (assumed.key == key) found.push_back(assumed);
  return found;
}

/// All lengths that were assumed under a key.
inline std::vector<Length> assumed(const Worked& worked, std::string_view key) {
  std::vector<Length> lengths;
  for (const Assumed& found : assumed_under(worked, key)) {
    const AssumedValue& value = found.value;
    if (value.kind == AssumedValue::Kind::length) lengths.push_back(value.length);
    lengths.insert(lengths.end(), value.lengths.begin(), value.lengths.end());
  }
  return lengths;
}

inline std::vector<std::string> reasons(const Worked& worked, std::string_view key) {
  std::vector<std::string> texts;
  for (const Assumed& found : assumed_under(worked, key))
    texts.push_back(found.why);
  return texts;
}

// ---- pieces and joints

inline std::size_t piece_number(const Assembly& assembly, std::string_view name) {
  for (std::size_t i = 0; i < assembly.pieces.size(); ++i)
    if (assembly.pieces[i].name == name) return i;
  throw std::invalid_argument("there is no " + std::string(name));
}

inline Piece piece(const Assembly& assembly, std::string_view name) {
  return assembly.pieces[piece_number(assembly, name)];
}

/// How the whole, or the frame of it, stands in its opening.
inline Fit& opening_of(Assembly& assembly) {
  for (Fit& fit : assembly.fits)
    if (fit.stands == StandsIn::wall || fit.stands == StandsIn::opening) return fit;
  throw std::invalid_argument("it stands in no opening");
}
inline const Fit& opening_of(const Assembly& assembly) {
  return *fit_in_opening(assembly);
}

/// How the leaves of a set hang in its frame, from the left.
inline std::vector<Fit> hangings_of(const Assembly& assembly) {
  std::vector<Fit> hangings;
  for (const Fit* hung : fits_that_stand(assembly, StandsIn::group))
    hangings.push_back(*hung);
  return hangings;
}

/// The joint by which one piece enters another.
inline Joint joint(const Assembly& assembly, std::string_view receives, std::string_view enters) {
  const std::size_t receiver = piece_number(assembly, receives);
  const std::size_t enterer = piece_number(assembly, enters);
  for (const Joint& joint : assembly.joints)
    if (joint.receives == receiver && joint.enters == enterer) return joint;
  throw std::invalid_argument("the " + std::string(enters) + " does not enter the " +
                              std::string(receives));
}

/// All cuts of a piece's features of one kind, in their order.
inline std::vector<Box> cuts(const Piece& piece, std::string_view kind) {
  std::vector<Box> boxes;
  for (const Feature& feature : piece.features)
    if (word_of(feature.kind) == kind)
      boxes.insert(boxes.end(), feature.cuts.begin(), feature.cuts.end());
  return boxes;
}

inline std::size_t count_role(const Assembly& assembly, std::string_view role) {
  return static_cast<std::size_t>(
      std::count_if(assembly.pieces.begin(), assembly.pieces.end(),
                    [&](const Piece& piece) { return word_of(piece.role) == role; }));
}

// ---- wood

/// The boxes less the others.
inline std::vector<Box> less(std::vector<Box> boxes, const std::vector<Box>& others) {
  for (const Box& other : others)
    take_out(boxes, other);
  return boxes;
}

/// What is left of a piece between two places of its length, in its own axes.
inline std::vector<Box> wood_between(const Piece& piece, Length from, Length to) {
  Piece lying = piece;
  lying.place = Place{};
  Box slab{{}, piece.blank};
  slab.low[0] = from;
  slab.high[0] = to;
  return clipped(solid_of(lying).wood.boxes, slab);
}

/// Empty when the wood between two places of a piece's length is these boxes; else what there is
/// too much or too little.
inline std::vector<Box> wood_differs(const Piece& piece, Length from, Length to,
                                     const std::vector<Box>& wanted) {
  const std::vector<Box> stands = wood_between(piece, from, to);
  std::vector<Box> differences = less(stands, wanted);
  for (const Box& missing : less(wanted, stands))
    differences.push_back(missing);
  return differences;
}

inline const std::vector<Box> kNoWood;

}  // namespace haunch::test
