// A front divided into columns and rows, worked by hand.
#include "layout.h"

#include "layout_spec.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

struct Read {
  LayoutNode tree;
  std::string problems;
};

Read read(std::string_view layout, NodesOf of = NodesOf::cabinet) {
  ValueReader reader(Unit::mm);
  Read its{read_layout(reader, value_of(R"({"layout": )" + std::string(layout) + "}"), of), {}};
  its.problems = in_lines(reader.take_problems());
  return its;
}

/// An opening 864 wide and 734 high, from 18 and 100 on, of a case of 18 mm stuff.
constexpr LayoutRules kFrameless{
    Unit::mm, Meets::overlay, Length::from_mm(3), Length::from_mm(18), Length::from_mm(18), {},
    false,    false};

ResolvedLayout resolved(const LayoutNode& tree, const LayoutRules& rules = kFrameless) {
  return resolve(tree, {mm(18), mm(882), mm(118), mm(852)}, rules);
}

std::string words(const Area& area) {
  std::string text;
  for (const Length length : {area.left, area.right, area.low, area.high})
    text += (text.empty() ? "" : " ") + decimal(length, Unit::mm);
  return text;
}

std::string sights(const ResolvedLayout& layout) {
  std::string text;
  for (const LaidOpening& opening : layout.openings)
    text += (text.empty() ? "" : ", ") + words(opening.sight);
  return text;
}

std::string fronts(const ResolvedLayout& layout) {
  std::string text;
  for (const LaidOpening& opening : layout.openings)
    text += (text.empty() ? "" : ", ") + words(opening.front());
  return text;
}

}  // namespace

TEST_CASE("A spec without a layout is one opening") {
  const LayoutNode tree;
  CHECK(sights(resolved(tree)) == "18 882 118 852");
}

TEST_CASE("A column that says its width has it; the rest goes to the others by their shares") {
  // 864 - 300 - 2 x 18 = 528: one share 176, two 352.
  const Read its = read(R"({"columns": [{"width": 300}, {}, {"share": 2}]})");
  CHECK(its.problems.empty());
  const ResolvedLayout layout = resolved(its.tree);
  CHECK(sights(layout) == "18 318 118 852, 336 512 118 852, 530 882 118 852");
  REQUIRE(layout.dividers.size() == 2);
  CHECK(words(layout.dividers[0].at) == "318 336 118 852");
  CHECK(layout.dividers[0].kind == Between::partition);
}

TEST_CASE("Rows go down, and their openings are numbered so") {
  // 734 - 18 = 716 between two that stay open, with a shelf between.
  const Read its = read(R"({"rows": [{"height": 200}, {}]})");
  const ResolvedLayout layout = resolved(its.tree);
  CHECK(sights(layout) == "18 882 652 852, 18 882 118 634");
  CHECK(layout.dividers[0].kind == Between::shelf);
}

TEST_CASE("Odd steps go to the last of those that share") {
  const Read its = read(R"({"columns": [{}, {}, {}]})");
  // 864 - 36 = 828, which three divide; in a width of one step more the last has it.
  const ResolvedLayout layout =
      resolve(its.tree, {mm(18), mm(882) + kStep, mm(118), mm(852)}, kFrameless);
  CHECK(layout.openings[0].sight.width() == mm(276));
  CHECK(layout.openings[1].sight.width() == mm(276));
  CHECK(layout.openings[2].sight.width() == mm(276) + kStep);
}

TEST_CASE("Drawers on metal runners have nothing between them, and their fronts a gap") {
  // 734 / 2 = 367; each front ends 1.5 short of the line between them.
  const Read its = read(R"({"rows": [{"front": "drawer"}, {"front": "drawer"}]})");
  const ResolvedLayout layout = resolved(its.tree);
  CHECK(layout.dividers[0].kind == Between::none);
  CHECK(fronts(layout) == "18 882 486.5 852, 18 882 118 483.5");
}

TEST_CASE("On wooden runners they have a rail between them") {
  LayoutRules rules = kFrameless;
  rules.wooden_runners = true;
  const Read its = read(R"({"rows": [{"front": "drawer"}, {"front": "drawer"}]})");
  CHECK(resolved(its.tree, rules).dividers[0].kind == Between::rail);
}

TEST_CASE("Two fronts over one partition leave the gap between them") {
  // Each laps it by (18 - 3) / 2 = 7.5.
  const Read its = read(R"({"columns": [{"front": "door"}, {"front": "door"}]})");
  CHECK(fronts(resolved(its.tree)) == "18 448.5 118 852, 451.5 882 118 852");
}

TEST_CASE("A finished front can be given in place of its opening") {
  // The front laps the partition by 7.5 and nothing at the side: its opening is 400 - 7.5 wide.
  const Read its =
      read(R"({"columns": [{"front": "door", "front_width": 400}, {"front": "door"}]})");
  const ResolvedLayout layout = resolved(its.tree);
  CHECK(layout.openings[0].sight.width() == mm(392.5));
  CHECK(layout.openings[0].front().width() == mm(400));
}

TEST_CASE("An inset front stands within its opening by the gap") {
  LayoutRules rules = kFrameless;
  rules.meets = Meets::inset;
  rules.gap = mm(2);
  rules.reach = {mm(-2), mm(-2), mm(-2), mm(-2)};
  const Read its = read(R"({"columns": [{"front": "door"}, {"front": "door"}]})");
  CHECK(fronts(resolved(its.tree, rules)) == "20 439 120 850, 461 880 120 850");
}

TEST_CASE("A grade's rows grow downwards by its step") {
  // Four, 734 high in all: 4 h + 6 x 20 = 734, h = 153.5.
  const Read its = read(R"({"front": "drawer", "grade": {"count": 4, "step": 20}})");
  CHECK(its.problems.empty());
  const ResolvedLayout layout = resolved(its.tree);
  REQUIRE(layout.openings.size() == 4);
  for (std::size_t i = 0; i < 4; ++i)
    CHECK(layout.openings[i].sight.height() == mm(153.5 + 20.0 * static_cast<double>(i)));
  CHECK(layout.openings[3].node->front() == FrontKind::drawer);
}

TEST_CASE("A list in a list is bounded by what stands beside it") {
  const Read its = read(R"({"columns": [{"width": 400}, {"rows": [{}, {}]}]})");
  const ResolvedLayout layout = resolved(its.tree);
  REQUIRE(layout.openings.size() == 3);
  REQUIRE(layout.dividers.size() == 2);
  CHECK_FALSE(layout.openings[0].by.left);
  CHECK(layout.openings[0].by.right == 0U);
  CHECK(layout.dividers[1].by.left == 0U);
  CHECK_FALSE(layout.dividers[1].by.right);
  CHECK(layout.openings[1].by.foot == 1U);
}

TEST_CASE("A layout that does not fit says where, by how much, and what would be right") {
  const auto told = [](std::string_view layout) {
    const Read its = read(layout);
    return in_lines(resolved(its.tree).problems);
  };
  CHECK(told(R"({"columns": [{"width": 400}, {"width": 450}]})") ==
        "/layout/columns: the columns and what stands between them take 868 mm of 864 mm: 4 mm too "
        "much; leave one of them without a size, or change one by that much");
  CHECK(told(R"({"rows": [{"height": 300}, {"height": 300}]})") ==
        "/layout/rows: the rows and what stands between them take 618 mm of 734 mm: 116 mm too "
        "little; leave one of them without a size, or change one by that much");
  CHECK(told(R"({"columns": [{}, {"rows": [{"height": 700}, {}, {"height": 200}]}]})") ==
        "/layout/columns/1/rows: the rows and what stands between them take 936 mm of 734 mm: 202 "
        "mm too much; nothing is left for those without a size; make the others less");
}

TEST_CASE("What cannot be said of a part of a layout is told there") {
  const auto told = [](std::string_view layout) { return read(layout).problems; };
  CHECK(told(R"({"columns": [{}], "rows": [{}]})") ==
        "/layout/rows: a part is divided into columns or into rows; keep one of the two, and "
        "divide its parts again");
  CHECK(told(R"({"rows": [{"width": 300}]})") ==
        "/layout/rows/0/width: only a part of columns has a width of its own; take it out");
  CHECK(told(R"({"columns": [{"width": 300, "front_width": 310}]})") ==
        "/layout/columns/0/front_width: says the same as the opening's own size; keep one of the "
        "two");
  CHECK(told(R"({"columns": [{"front": "dor"}]})").find("did you mean \"door\"") !=
        std::string::npos);
  CHECK(told(R"({"columns": []})").find("a list of parts") != std::string::npos);
  CHECK(told(R"({"columns": [{}], "front": "door"})") ==
        "/layout/front: belongs in the parts of what is divided; take it out");
}

TEST_CASE("A part that a leaf closes may say what a leaf may, but what the cabinet says") {
  const Read its = read(R"({"columns": [{"front": "door", "stile_width": 60, "hangs": "right"}]})");
  CHECK(its.problems.empty());
  CHECK(its.tree.nodes[0].said.size("stile_width.left") == mm(60));
  CHECK(read(R"({"front": "door", "clearance": 3})").problems ==
        "/layout/clearance: does not belong to a front of a cabinet: it is the fronts' \"gap\"; "
        "take it out");
  CHECK(read(R"({"front": "none", "stile_width": 60})").problems.find("unknown key") !=
        std::string::npos);
}

}  // namespace haunch::test
