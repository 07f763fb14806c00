// Drawings of items: their figures are those of the report, their texts and ids are safe.
#include <algorithm>
#include <set>

#include "drawing_svg.h"
#include "edge_details.h"
#include "joint_chains.h"
#include "member_chains.h"
#include "seasons.h"
#include "vocabulary.h"
#include "whole_views.h"

namespace haunch::test {
namespace {

using Places = std::vector<Length>;

const LengthPrinter kShopMm(Unit::mm, kBenchLengths);

ItemReport report_of(const std::string& spec) {
  JobReading reading = read_job(value_of(spec), nullptr, "door");
  REQUIRE(reading.job);
  return *report_item(std::move(reading.job), {.checks = true, .making = true}).report;
}

std::vector<Places> chains_along(const ItemReport& item, ChainsOf of, Axis axis) {
  std::vector<Places> chains;
  for (const PlacedChain& chain : chains_told({item.wood, item.chains, item.rooms}, of))
    if (chain.axis == axis) chains.push_back(chain.places);
  return chains;
}

/// What is dimensioned along an axis on a section through a joint, of what receives and what
/// enters.
std::vector<Places> joint_figures(const ItemReport& item, std::size_t joint, Axis across,
                                  Axis axis) {
  const auto views = joint_views(item.wood);
  const auto shown = std::find_if(views.begin(), views.end(), [&](const JointView& view) {
    return std::find(view.joints.begin(), view.joints.end(), joint) != view.joints.end();
  });
  REQUIRE(shown != views.end());
  for (const CutAway& cut : shown->sections) {
    if (cut.plane.across != across) continue;
    const NotedView view(section_of(drawn_of(item.wood), cut), item.wood, sight_of(cut.plane), {2},
                         kShopMm);
    std::vector<Places> figures;
    for (const PlacedChain& chain : joint_chains(view, *shown, cut)) {
      if (chain.axis != axis) continue;
      Places places = chain.places, links;
      std::sort(places.begin(), places.end());
      places.erase(std::unique(places.begin(), places.end()), places.end());
      for (std::size_t i = 1; i < places.size(); ++i)
        links.push_back(places[i] - places[i - 1]);
      figures.push_back(links);
    }
    return figures;
  }
  return {};
}

/// 924 x 2054, stiles 118, rails 118, 195 and 230.
std::string side_door(std::string_view more = {}) {
  return house_mm(R"("clearance": 3, "thickness": 44, "stile_width": 118, "tenon_depth": 76,
                     "groove_depth": 13, "fit_allowance": 0.15,
                     "rail_widths": [118, {"width": 195, "top": 965}, 230])" +
                  (more.empty() ? std::string() : ", " + std::string(more)));
}

}  // namespace

TEST_CASE("A leaf's widths and heights are told from edge to edge, the whole outermost") {
  const ItemReport item = report_of(side_door());
  CHECK(
      chains_along(item, ChainsOf::elevation, Axis::x) ==
      std::vector<Places>{{mm(0), mm(118), mm(806), mm(924)}, {mm(0), mm(924)}, {mm(0), mm(924)}});
  CHECK(chains_along(item, ChainsOf::elevation, Axis::y).front() ==
        Places{mm(0), mm(230), mm(770), mm(965), mm(1936), mm(2054)});
}

TEST_CASE("A moulding and a raise are drawn with the figures that they are set by") {
  const ItemReport item = report_of(house_mm(
      R"("thickness": 40, "species": "European oak", "edge": {"kind": "coped", "profile": "ovolo", "width": 9},
         "panel": {"raised": "both", "thickness": 30, "raise": {"width": 45, "tongue": 12}})"));
  std::vector<std::multiset<std::string>> figures;
  for (const auto& [piece, block] : edge_details(item, kShopMm, {{0, 0}, {180, 250}})) {
    figures.emplace_back();
    for (const Lettering& lettering : block.picture.letterings)
      figures.back().insert(lettering.text);
  }
  REQUIRE(figures.size() == 2);
  // From the edge 9; from the face 1 of fillet, 9 of round, 30 behind it.
  CHECK(figures[0].count("9") == 2);
  CHECK(figures[0].count("1") == 1);
  CHECK(figures[0].count("30") == 1);
  // 12 of tongue and 33 of slope; a shoulder of 2 at each face.
  CHECK(figures[1].count("12") == 1);
  CHECK(figures[1].count("33") == 1);
  CHECK(figures[1].count("2") == 2);
  for (const auto& its : figures)
    CHECK(its.count("face") == 1);
}

TEST_CASE("A cabinet's chains are those of its sheet") {
  const ItemReport item = report_of(
      R"({"kind": "cabinet", "units": "mm", "size": {"width": 600, "height": 720, "depth": 400},
          "case": {"thickness": 18}, "layout": {"columns": [{"width": 250}, {}]}})");
  const auto chains = chains_along(item, ChainsOf::elevation, Axis::x);
  CHECK(chains.front() == Places{mm(0), mm(18), mm(268), mm(286), mm(582), mm(600)});
}

TEST_CASE("Hinges are told at the side where they hang, from the foot of their leaf") {
  const ItemReport item = report_of(
      side_door(R"("hangs": "right", "hinges": {"at": [230, {"from_top": 150}], "length": 100})"));
  const auto leaves = hung_leaves(item.wood);
  REQUIRE(leaves.size() == 1);
  CHECK(leaves.front().at_right);
  CHECK(leaves.front().hinges == Places{mm(230), mm(330), mm(1804), mm(1904)});
  const auto told = chains_told({item.wood, item.chains, item.rooms}, ChainsOf::elevation);
  CHECK(std::any_of(told.begin(), told.end(), [](const PlacedChain& chain) {
    return chain.side == PaperSide::right && chain.axis == Axis::y;
  }));
}

TEST_CASE("Of a pair with rebated meeting stiles the face is told, with the gap there") {
  const ItemReport item = report_of(R"({"kind": "door", "units": "mm", "leaves": 2,
      "opening": {"width": 1330, "height": 2060}, "clearance": 3, "stile_width": 108,
      "meeting_clearance": 3, "rail_widths": [110, 230], "meeting_lap": 9})");
  const auto chains = chains_along(item, ChainsOf::elevation, Axis::x);
  const Places& face = chains.front();
  REQUIRE(face.size() == 8);
  CHECK(face[4] - face[3] == mm(3));
  CHECK(face.back() == item.wood.size[0]);
  CHECK(meeting_cut(item.wood));
}

TEST_CASE("Lines to an outer chain leave out the figures of the inner one") {
  const ItemReport item = report_of(side_door());
  NotedView view({}, item.wood, sight_from(ViewedFrom::front), {10}, kShopMm);
  view.chain(PaperSide::below, Axis::x, {mm(0), mm(300), mm(320), mm(340)});
  view.chain(PaperSide::below, Axis::x, {mm(0), mm(310), mm(330), mm(924)});
  view.chain(PaperSide::below, Axis::x, {mm(0), mm(924)});
  for (const Stroke& stroke : view.picture().strokes) {
    const SpotRun& run = stroke.runs.front();
    if (stroke.pen != Pen::thin || run.size() != 2 || run[0].u != run[1].u) continue;
    for (const Lettering& figure : view.picture().letterings) {
      const Extent text = extent_of(figure);
      const double middle = (text.low.v + text.high.v) / 2;
      CHECK_FALSE((text.low.u < run[0].u && run[0].u < text.high.u &&
                   std::min(run[0].v, run[1].v) < middle && middle < std::max(run[0].v, run[1].v)));
    }
  }
}

TEST_CASE("An arch is told by its springing and its crown, not by its rail's blank") {
  const ItemReport item = report_of(R"({"kind": "door", "units": "mm", "stile_width": 100,
      "opening": {"width": 930, "height": 2060}, "clearance": 3,
      "rail_widths": [110, 195, 230], "arch": {"rise": 90}})");
  const auto chains = chains_along(item, ChainsOf::elevation, Axis::y);
  const Length top = item.wood.size[1], crown = top - mm(110);
  CHECK(std::vector(chains.front().end() - 2, chains.front().end()) == Places{crown, top});
  const auto springs = std::find_if(chains.begin(), chains.end(), [&](const Places& places) {
    return std::count(places.begin(), places.end(), crown - mm(90)) == 1;
  });
  REQUIRE(springs != chains.end());
  CHECK(std::count(springs->begin(), springs->end(), crown) == 1);
}

TEST_CASE("Chains reach from end to end of a doorset: above its head, and below its leaf") {
  const ItemReport item = report_of(R"({"kind": "doorset", "units": "mm",
      "frame": {"wall_opening": {"width": 900, "height": 2100}},
      "leaf": {"thickness": 44, "hangs": "left", "hinges": {"number": 3, "length": 100}}})");
  const auto chains = chains_along(item, ChainsOf::elevation, Axis::y);
  CHECK(chains.front().front() == Length());
  CHECK(chains.front().back() == item.wood.size[1]);
  const auto leaf = std::find_if(item.wood.fits.begin(), item.wood.fits.end(),
                                 [](const Fit& fit) { return fit.swing() != nullptr; });
  REQUIRE(leaf != item.wood.fits.end());
  const Box box = placed_blanks(item.wood, leaf->group);
  CHECK(std::count(chains.begin(), chains.end(), Places{box.low[1], box.high[1]}) == 1);
}

TEST_CASE("A tenon is told by the sizes that it has in the report") {
  const ItemReport item = report_of(side_door());
  // The first joint, of the top rail: 76 deep, in a mortise of 78.
  CHECK(joint_figures(item, 0, Axis::y, Axis::z) ==
        std::vector<Places>{{mm(14.5), mm(15), mm(14.5)}, {mm(14.575), mm(14.85), mm(14.575)}});
  const auto across = joint_figures(item, 0, Axis::y, Axis::x);
  REQUIRE(across.size() == 2);
  CHECK(across[0].back() == mm(78));
  CHECK(across[1] == Places{mm(2), mm(76)});
}

TEST_CASE("A panel's edge is told by what it stands in its groove, and what is free before it") {
  const ItemReport item = report_of(side_door());
  const auto panel =
      std::find_if(item.wood.joints.begin(), item.wood.joints.end(), [&](const Joint& joint) {
        return joint.kind == JointKind::panel_in_groove && is_at_long_edge(item.wood, joint);
      });
  REQUIRE(panel != item.wood.joints.end());
  const auto number = static_cast<std::size_t>(panel - item.wood.joints.begin());
  CHECK(joint_figures(item, number, Axis::y, Axis::x)[1] ==
        Places{*panel->design.bottom, *panel->design.bite});
}

TEST_CASE("The driest and the wettest panel are drawn with the season's figures") {
  ItemReport item = report_of(
      side_door(R"("species": "European oak", "moisture": {"low": 7, "build": 9, "high": 13})"));
  REQUIRE(item.seasons);
  REQUIRE(item.job->season);
  const std::size_t piece = item.seasons->panels.front().piece;
  const auto panel =
      std::find_if(item.wood.joints.begin(), item.wood.joints.end(), [&](const Joint& joint) {
        return joint.enters == piece && is_at_long_edge(item.wood, joint);
      });
  const auto number = static_cast<std::size_t>(panel - item.wood.joints.begin());
  for (const std::size_t state : {kLow, kHigh}) {
    const Moisture& moisture = item.seasons->moisture;
    const PanelState& told = item.seasons->panels.front().at[state];
    ItemReport moved = report_of(side_door());
    moved.wood =
        at_moisture(item.wood, *item.job->season, state == kLow ? moisture.low : moisture.high);
    const Places figures = joint_figures(moved, number, Axis::y, Axis::x)[1];
    REQUIRE(figures.size() == 2);
    CHECK(figures[0] == told.gap);
    CHECK(figures[1] == told.bite);
  }
}

TEST_CASE("Ids are there once in all sheets of an order") {
  std::set<std::string> ids;
  std::size_t sheets = 0;
  for (const std::string id : {"K1", "K1/2", "K1 2"}) {
    const ItemReport item = report_of(cabinet_mm(R"("id": ")" + id + "\""));
    for (const DrawingSheet& sheet : drawing_of(item, kShopMm, *paper_called("a4"))) {
      ids.insert(sheet.id);
      ++sheets;
      CHECK(sheet.svg.find("id=\"" + sheet.id + "\"") != std::string::npos);
    }
  }
  CHECK(ids.size() == sheets);
}

TEST_CASE("A user's text is text in a drawing") {
  const ItemReport item = report_of(cabinet_mm(R"("name": "</svg><script>\"&' \u202Ealert")"));
  for (const DrawingSheet& sheet : drawing_of(item, kShopMm, *paper_called("letter"))) {
    CHECK(sheet.svg.find("<script") == std::string::npos);
    CHECK(sheet.svg.find("\u202E") == std::string::npos);
    CHECK(sheet.svg.find("&lt;/svg&gt;&lt;script&gt;&quot;&amp;&#39;") != std::string::npos);
  }
}

TEST_CASE("No figure runs to an edge that its section does not show") {
  // The lock rail's own edges lie 12.6 beyond its mortises, where the groove has taken the wood.
  const ItemReport door = report_of(side_door());
  CHECK(joint_figures(door, 2, Axis::z, Axis::y) ==
        std::vector<Places>{{mm(64.3), mm(41.2), mm(64.3)}, {mm(63.5), mm(42), mm(63.5)}});
}

}  // namespace haunch::test
