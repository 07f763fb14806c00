// Where figures come from: each a sum of what was stated and taken.
#include "explain.h"

#include <algorithm>

#include "catch.h"
#include "explain_json.h"
#include "json_reader.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

Record record_of(const std::string& text) {
  Record record;
  record.source = "door.json";
  record.default_id = "door";
  record.item = read_json(text).value;
  record.text = std::make_shared<SourceText>();
  record.text->text = text;
  return record;
}

Explanation explained(const std::string& text) {
  ExplainOutcome outcome = explain(record_of(text), nullptr);
  REQUIRE(outcome.explanation);
  return std::move(*outcome.explanation);
}

const ExplainedValue& value_of(const Explanation& all, std::string_view what) {
  const auto meant = meant_by(all, what);
  INFO(what);
  REQUIRE(meant.size() == 1);
  return all.values[meant.front()];
}

/// "opening.width - 2 clearance": in the order in which values were stated.
std::string sum_of(const Explanation& all, std::string_view what) {
  std::string text;
  for (const Term& term : value_of(all, what).terms)
    text +=
        (text.empty() ? "" : " ") + fraction_text(term.factor) + " " + all.values[term.value].what;
  return text;
}

constexpr const char* kDoor = R"({"kind": "door", "units": "mm",
  "opening": {"width": 930, "height": 2060}, "clearance": 3, "stile_width": 118,
  "rail_widths": [118, 230], "tenon_depth": 76, "groove_depth": 13})";

/// Worked once, as it takes a while.
const Explanation& door() {
  static const Explanation all = explained(kDoor);
  return all;
}

}  // namespace

TEST_CASE("a rail is what is between the stiles and two tenons", "[explain]") {
  const Explanation& all = door();
  CHECK(value_of(all, "C.length").value.length == mm(840));
  CHECK(sum_of(all, "C.length") == "1 opening.width -2 clearance -2 stile_width 2 tenon_depth");
  CHECK(value_of(all, "C.length").from == SaidIn::worked_out);
}

TEST_CASE("what the spec says has its place in the text", "[explain]") {
  const Explanation& all = door();
  const ExplainedValue& stile = value_of(all, "stile_width");
  CHECK(stile.from == SaidIn::spec);
  CHECK(stile.source == "door.json:2:77");
  CHECK(stile.terms.empty());
}

TEST_CASE("what is taken is worked out where it follows other sizes, else built in", "[explain]") {
  const Explanation& all = door();
  CHECK(value_of(all, "panel.gap.across_grain").from == SaidIn::built_in);
  // The mortise goes from one cutter to the next with the thickness, and is no sum of it.
  CHECK(value_of(all, "mortise.width").from == SaidIn::worked_out);
  CHECK(value_of(all, "mortise.width").terms.empty());
  CHECK(sum_of(all, "tenon.thickness") == "1 mortise.width -1 fit_allowance");
  CHECK(sum_of(all, "groove.width") == "1 mortise.width");
}

TEST_CASE("a size in the middle takes halves", "[explain]") {
  CHECK(sum_of(door(), "mortise.from_face") == "1/2 thickness -1/2 mortise.width");
}

TEST_CASE("what differs from rail to rail is told of the rail", "[explain]") {
  const Explanation& all = door();
  CHECK(sum_of(all, "J1.tenon.width") ==
        "1 rail_widths.0 -1 groove_depth -1 tenon.relish.top rail");
}

TEST_CASE("widths that a mitre wants to be the same are moved together", "[explain]") {
  const Explanation all = explained(
      R"({"kind": "door", "units": "mm", "opening": {"width": 500, "height": 700}, "clearance": 2,
          "stile_width": 60, "rail_widths": [60, 60], "joint": {"corner": "mitre"}})");
  const std::string panel = sum_of(all, "E.length");
  INFO(panel);
  CHECK(panel.find("-2 stile_width") != std::string::npos);
  CHECK(panel.find("rail_widths") == std::string::npos);
  CHECK(value_of(all, "rail_widths.1").rule == "written 60, and the same as stile_width");
}

TEST_CASE("a part, a joint, a key or a check stands for all that is below it", "[explain]") {
  const Explanation& all = door();
  CHECK(meant_by(all, "C").size() > 5);
  CHECK(meant_by(all, "J1").size() > 5);
  CHECK(meant_by(all, "opening").size() == 2);
  CHECK(meant_by(all, "groove-wall").size() == 4);
  CHECK(meant_by(all, "groove").size() == 2);
  CHECK(meant_by(all, "clout").empty());
  CHECK(nearest_to(all, "C.lenght") == "C.length");
}

TEST_CASE("an explanation of one figure brings what it comes from", "[explain]") {
  const Explanation& all = door();
  std::vector<std::string> told;
  for (const std::size_t number : told_of(all, "tenon.thickness"))
    told.push_back(all.values[number].what);
  CHECK(told == std::vector<std::string>{"mortise.width", "fit_allowance", "tenon.thickness"});
}

TEST_CASE("what cannot be worked is not explained", "[explain]") {
  const ExplainOutcome outcome = explain(record_of(R"({"kind": "door", "units": "mm",
    "opening": {"width": 930, "height": 2060}, "stile_width": 600})"),
                                         nullptr);
  CHECK_FALSE(outcome.explanation);
  CHECK(outcome.problems.size() == 1);
}

}  // namespace haunch::test
