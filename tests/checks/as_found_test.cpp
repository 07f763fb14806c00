// What stands in an opening that was measured all round. The corner is 200 x 200 with 3 of room at
// each side.
#include "corner.h"

namespace haunch::test {
namespace {

Assembly in_found(AsFound found, StandsIn stands = StandsIn::opening) {
  return corner_but([&](Assembly& leaf) {
    leaf.fits.front().found = found;
    leaf.fits.front().stands = stands;
  });
}

AsFound beyond(Length most) {
  AsFound found;
  found.head[1] = most;
  found.right[2] = floor_half(most);
  return found;
}

Status status_of(const Assembly& leaf, std::string_view check, Unit unit = Unit::mm) {
  for (const Finding& finding : check_assembly(leaf, unit))
    if (finding.rule->check == check) return finding.status;
  throw std::invalid_argument("no such check");
}

}  // namespace

TEST_CASE("A leaf goes into an opening that is nowhere tighter than the square one") {
  CHECK(status_of(in_found({}), "found-room") == Status::ok);
  for (auto side : {&AsFound::left, &AsFound::right, &AsFound::head, &AsFound::foot})
    for (std::size_t place = 0; place < 3; ++place) {
      AsFound found;
      (found.*side)[place] = -mm(0.5);
      CHECK(status_of(in_found(found), "found-room") == Status::fail);
      (found.*side)[place] = mm(0.5);
      CHECK(status_of(in_found(found), "found-room") == Status::ok);
    }
}

TEST_CASE("A gap 3 mm wider than the others is borne, one of more is told") {
  CHECK(status_of(in_found(beyond(mm(3))), "found-gap") == Status::ok);
  CHECK(status_of(in_found(beyond(mm(3.01))), "found-gap") == Status::caution);
  CHECK(status_of(in_found(beyond(inch(0, 1, 8))), "found-gap", Unit::inch) == Status::ok);
}

TEST_CASE("Round a frame 10 mm more are packed; between its jambs nothing is measured") {
  const auto packed = [](Length most) {
    AsFound found;
    found.left[1] = most;
    found.head[1] = mm(50);
    return in_found(found, StandsIn::wall);
  };
  CHECK(status_of(packed(mm(10)), "found-packing") == Status::ok);
  CHECK(status_of(packed(mm(10.01)), "found-packing") == Status::caution);
}

TEST_CASE("What is planed off in the wood is what counts") {
  AsFound found;
  found.left = {-mm(1), -mm(0.5), Length()};
  found.follow = true;
  CHECK(status_of(in_found(found), "found-room") == Status::fail);
  Assembly planed = in_found(found);
  // From the stile's foot to its head along its left edge, 1 at the head.
  Piece& stile = planed.pieces[kStile];
  stile.features.push_back(
      {FeatureKind::planed_taper,
       {},
       {},
       {},
       {{2, Length(), mm(24), {{Length(), Length()}, {mm(200), Length()}, {mm(200), mm(1)}}}}});
  CHECK(status_of(planed, "found-room") == Status::ok);
}

TEST_CASE("An opening that was not measured has no such checks") {
  for (const Finding& finding : check_assembly(corner(), Unit::mm))
    CHECK_FALSE(finding.rule->check.starts_with("found"));
}

}  // namespace haunch::test
