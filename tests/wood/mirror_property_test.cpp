// The handed twin: what is said of left holds of right, and everything else stays as it is.
#include <algorithm>
#include <tuple>

#include "cabinet_oracle.h"
#include "catch.h"
#include "checks.h"
#include "joint_oracle.h"
#include "json_reader.h"
#include "kind.h"
#include "property_runs.h"
#include "random_cabinet.h"
#include "random_spec.h"
#include "reflected.h"
#include "wood_oracle.h"

namespace haunch::test {
namespace {

/// Its wood with left and right changed over, in an order of its own.
std::vector<Wood> turned(std::vector<Wood> all, std::int64_t width) {
  const auto turn = [&](Block& block) {
    std::tie(block.low[0], block.high[0]) = std::pair(width - block.high[0], width - block.low[0]);
  };
  for (Wood& piece : all) {
    turn(piece.blank);
    for (Block& block : piece.blocks)
      turn(block);
    std::sort(piece.blocks.begin(), piece.blocks.end());
  }
  return all;
}
std::vector<Wood> in_order(std::vector<Wood> all) {
  for (Wood& piece : all)
    std::sort(piece.blocks.begin(), piece.blocks.end());
  std::sort(all.begin(), all.end());
  return all;
}

/// What checks find, but for whose it is: a lap at the left is the twin's at the right.
std::vector<std::string> found(const Assembly& wood) {
  std::vector<std::string> all;
  for (const Finding& finding : check_assembly(wood, Unit::mm)) {
    std::string text(finding.rule->check);
    for (const std::string_view side : {"-left", "-right"})
      if (text.ends_with(side)) text.erase(text.size() - side.size());
    all.push_back(text + " " + std::to_string(static_cast<int>(finding.status)) + " " +
                  std::to_string(finding.value.steps()));
  }
  std::sort(all.begin(), all.end());
  return all;
}

/// What is told of each joint and of each piece's features, by the names of the pieces.
std::string told(const Assembly& wood) {
  std::vector<std::string> lines;
  const auto add = [](std::string& line, Length length) {
    line += " " + std::to_string(length.steps());
  };
  for (const Joint& joint : wood.joints) {
    std::string line = wood.pieces[joint.receives].name + " < " + wood.pieces[joint.enters].name;
    if (joint.tenon)
      for (const TenonSpan& span : joint.tenon->each)
        for (const Length length : {span.from_edge, span.width, joint.tenon->from_face})
          add(line, length);
    if (joint.mortise)
      for (const MortiseSpan& span : joint.mortise->each)
        for (const Length length : {span.from_foot, span.length, joint.mortise->from_face,
                                    joint.mortise->from_shoulder_of(span).value_or(Length())})
          add(line, length);
    lines.push_back(line);
  }
  for (const Piece& piece : wood.pieces)
    for (const Feature& feature : piece.features) {
      std::string line = piece.name + ": " + std::string(word_of(feature.kind));
      for (const NamedSize& size : feature.sizes) {
        line += " " + std::string(word_of(size.name));
        add(line, size.size);
      }
      lines.push_back(line);
    }
  std::sort(lines.begin(), lines.end());
  std::string all;
  for (const std::string& line : lines)
    all += line + "\n";
  return all;
}

std::size_t differs_at(const std::string& a, const std::string& b) {
  const auto [one, other] = std::mismatch(a.begin(), a.end(), b.begin(), b.end());
  return static_cast<std::size_t>(one - a.begin());
}

/// What is not as it should be of a twin.
std::string faults_of_twin(const Assembly& plain, const Assembly& twin, std::uint64_t seed) {
  if (in_order(turned(wood_of(plain), plain.size[0].steps())) != in_order(wood_of(twin)))
    return "its wood is not what is seen in a mirror";
  if (in_order(wood_of(reflected(twin))) != in_order(wood_of(plain)) ||
      told(reflected(twin)) != told(plain))
    return "its own twin is not the plain one";
  if (found(plain) != found(twin)) return "the checks find something else in it";
  if (judge(plain).size() != judge(twin).size())
    return "it is judged otherwise: " + (judge(twin).empty() ? "" : judge(twin).front().what);
  if (joint_faults(plain, seed).empty() && !joint_faults(twin, seed).empty())
    return "a joint is told wrong: " + joint_faults(twin, seed).front().what;
  return {};
}

std::string with_mirror(std::string json) {
  return json.insert(json.find('{') + 1, "\"mirror\": true, ");
}

/// Whether equal parts come out even, so that no odd step goes to one side.
bool is_even(const Assembly& wood) {
  return std::all_of(wood.pieces.begin(), wood.pieces.end(), [&](const Piece& one) {
    return std::all_of(wood.pieces.begin(), wood.pieces.end(), [&](const Piece& other) {
      const Length off = one.blank[1] - other.blank[1];
      return one.role != other.role || off == Length() ||
             (off > Length::from_steps(9) || off < Length::from_steps(-9));
    });
  });
}

}  // namespace

TEST_CASE("The twin of a door is the door in a mirror, and is found as good") {
  const Tally tally = run_over(seeds_for(300), [](std::uint64_t seed, std::string& wrong) {
    const DoorSpec spec = random_door(seed, Keys::some);
    const std::string json = to_json(spec, {spec.unit, seed, false, true});
    const Trial plain = work(json);
    const Trial twin = work(with_mirror(json));
    if (plain.refusal != twin.refusal) wrong += "refused otherwise: " + twin.refusal;
    if (!plain.assembly || !twin.assembly) return Outcome::refused;
    wrong += faults_of_twin(*plain.assembly, *twin.assembly, seed);
    return Outcome::worked;
  });
  require_worked_share(tally, 20);
}

TEST_CASE("The twin of a door is told as a door is whose spec has left and right exchanged") {
  const Tally tally = run_over(seeds_for(300), [](std::uint64_t seed, std::string& wrong) {
    const DoorSpec spec = random_door(seed, Keys::all);
    const Writing writing{spec.unit, seed, false, true};
    const Trial twin = work(with_mirror(to_json(spec, writing)));
    const Trial other = work(to_json(mirrored(spec), writing));
    if (!twin.assembly || !other.assembly) return Outcome::refused;
    if (!is_even(*other.assembly)) return Outcome::aside;
    const std::string one = told(*twin.assembly);
    const std::string two = told(*other.assembly);
    if (one != two) {
      const std::size_t at = one.rfind('\n', differs_at(one, two));
      wrong += "told otherwise:" + one.substr(at == std::string::npos ? 0 : at, 160) + "\nfor" +
               two.substr(at == std::string::npos ? 0 : at, 160);
    }
    return Outcome::worked;
  });
  require_worked_share(tally, 50);
}

TEST_CASE("The twin of a cabinet is found as good, and is its own twin's plain one") {
  const Tally tally = run_over(seeds_for(300), [](std::uint64_t seed, std::string& wrong) {
    const CabinetDraw draw = random_cabinet(seed);
    const Trial plain = work(draw.json);
    const Trial twin = work(with_mirror(draw.json));
    if (plain.refusal != twin.refusal) wrong += "refused otherwise: " + twin.refusal;
    if (!plain.assembly || !twin.assembly) return Outcome::refused;
    if (told(reflected(*twin.assembly)) != told(*plain.assembly))
      wrong += "its own twin is not the plain one";
    if (found(*plain.assembly) != found(*twin.assembly))
      wrong += "the checks find something else in it";
    for (const auto& faults : {faults_at_rest, faults_of_gaps, faults_on_the_way})
      if (faults(*plain.assembly).size() != faults(*twin.assembly).size())
        wrong += "it is judged otherwise";
    return Outcome::worked;
  });
  require_worked_share(tally, 20);
}

}  // namespace haunch::test
