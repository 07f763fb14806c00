#include "along_wall.h"

#include <algorithm>
#include <utility>

#include "twin_words.h"

namespace haunch {
namespace {

void turn(Length& low, Length& high, Length width) {
  low = std::exchange(high, width - low);
  low = width - low;
}

}  // namespace

AlongWall turned_about(AlongWall along, Length width, const std::vector<std::string>& paths) {
  const auto twin_of = [&](const std::string& path) {
    const std::string twin = twin_words(path);
    return std::find(paths.begin(), paths.end(), twin) == paths.end() ? path : twin;
  };
  for (AlongStand& stand : along.stands) {
    turn(stand.low, stand.high, width);
    turn(stand.part.room.low[0], stand.part.room.high[0], width);
    stand.part.path = twin_of(stand.part.path);
    if (stand.what == AlongStand::What::cabinet) stand.name = stand.part.path;
    for (Chain& chain : stand.part.chains)
      chain = twin_chain(std::move(chain));
  }
  std::reverse(along.stands.begin(), along.stands.end());
  for (MeasuredWall& wall : along.measured)
    turn(wall.left, wall.right, width);
  for (FloorPlace& place : along.floor)
    place.along = width - place.along;
  std::reverse(along.floor.begin(), along.floor.end());
  std::swap(along.left_wall, along.right_wall);
  along.fixed_from_left = !along.fixed_from_left;
  for (std::string& over : along.cutouts)
    over = twin_of(over);
  return along;
}

}  // namespace haunch
