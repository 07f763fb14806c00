#include "random_cabinet.h"

#include <fmt/format.h>

#include <algorithm>
#include <initializer_list>

#include "random_spec.h"

namespace haunch::test {
namespace {

constexpr int kDeepest = 3;

/// About how large a part of the front is, in mm: so that most of what is drawn goes in.
struct Room {
  int width = 0, height = 0;
};

/// Members of a JSON object, in the order in which they were drawn.
class Members {
 public:
  void add(std::string_view key, std::string_view value) {
    text_ += fmt::format(R"({}"{}": {})", text_.empty() ? "" : ", ", key, value);
  }
  void add_object(std::string_view key, const Members& members) {
    if (!members.empty()) add(key, members.object());
  }
  /// All members of another.
  void add_all(const Members& from) {
    if (!from.empty()) text_ += (text_.empty() ? "" : ", ") + from.text_;
  }
  bool empty() const { return text_.empty(); }
  std::string object() const { return "{" + text_ + "}"; }

 private:
  std::string text_;
};

std::string quoted(std::string_view word) {
  return fmt::format(R"("{}")", word);
}

class Drawing {
 public:
  explicit Drawing(std::uint64_t seed) : dice_(seed) {}

  CabinetDraw draw() {
    draw_.unit = chance(65) ? Unit::mm : Unit::inch;
    const std::int64_t kind = dice_.between(1, 10);
    Members all;
    draw_.kind = kind <= 7 ? "cabinet" : kind <= 8 ? "face-frame" : "drawer";
    all.add("kind", quoted(draw_.kind));
    all.add("units", quoted(draw_.unit == Unit::mm ? "mm" : "in"));
    if (chance(60)) all.add("species", quoted(wood()));
    if (draw_.kind == "cabinet") cabinet(all);
    if (draw_.kind == "face-frame") face_frame_alone(all);
    if (draw_.kind == "drawer") drawer_alone(all);
    draw_.json = all.object();
    return draw_;
  }

 private:
  bool chance(int percent) { return dice_.chance(percent); }
  int whole(int least, int most) { return static_cast<int>(dice_.between(least, most)); }
  std::string_view word(std::initializer_list<std::string_view> words) {
    return *(words.begin() + whole(0, static_cast<int>(words.size()) - 1));
  }
  std::string_view wood() {
    return word({"European oak", "European beech", "hard maple", "black walnut"});
  }

  /// A length between two in mm, as the shop writes such: tenths of a millimetre now and then, or
  /// sixteenths of an inch.
  std::string size(double least, double most) {
    if (draw_.unit == Unit::mm) {
      const int fine = chance(30) ? 10 : 1;
      const auto tenths =
          dice_.between(static_cast<int>(least * fine), static_cast<int>(most * fine));
      return decimal(Length::from_mm_thousandths(tenths * (1000 / fine)), Unit::mm);
    }
    const int parts = most < 8 ? 32 : 16;
    const auto many = dice_.between(static_cast<int>(least * parts / 25.4),
                                    static_cast<int>(most * parts / 25.4));
    if (many % parts == 0) return std::to_string(many / parts);
    return fmt::format(R"("{} {}/{}")", many / parts, many % parts, parts);
  }
  void maybe(Members& to, std::string_view key, int percent, double least, double most) {
    if (chance(percent)) to.add(key, size(least, most));
  }
  void maybe_word(Members& to, std::string_view key, int percent,
                  std::initializer_list<std::string_view> words) {
    if (chance(percent)) to.add(key, quoted(word(words)));
  }

  // ---- a cabinet

  void cabinet(Members& all) {
    const Room room{whole(380, 1400), whole(450, 2100)};
    Members over_all;
    over_all.add("width", size(room.width, room.width + 5));
    over_all.add("height", size(room.height, room.height + 5));
    over_all.add("depth", size(330, 620));
    all.add_object("size", over_all);
    draw_.framed = chance(45);
    on_wood_ = chance(40);
    inset_ = draw_.framed;
    const bool toe = chance(45);
    all.add_object("case", case_keys());
    if (toe) all.add("toe", toe_keys());
    if (draw_.framed) all.add("face_frame", face_frame_keys(true).object());
    all.add_object("fronts", fronts_keys());
    const Room front{room.width - 80, room.height - (toe ? 200 : 80)};
    if (chance(90)) all.add("layout", node(front, 1, "", true).object());
    if (draw_.loose_shelves > 0 && chance(50)) pin_rows(all);
  }

  Members case_keys() {
    Members keys;
    const bool solid = chance(30);
    if (solid) keys.add("material", quoted(wood()));
    if (solid || chance(70)) {
      draw_.stuff = draw_.unit == Unit::mm ? solid ? word({"18", "20", "22"})
                                                   : word({"17.4", "17.6", "18", "18.2", "19"})
                                           : word({R"("3/4")", R"("23/32")", R"("11/16")"});
      keys.add("thickness", draw_.stuff);
    }
    const std::string_view joint = word({"", "housed", "stopped-housing", "rebated", "tongued",
                                         "butted", "housed", "stopped-housing"});
    if (!joint.empty()) keys.add("joint", quoted(joint));
    if (joint != "butted") {
      maybe(keys, "joint_depth", 30, 5, 8);
      maybe(keys, "fit_allowance", 20, 0, 0.3);
    }
    if (joint == "stopped-housing") maybe(keys, "stop", 50, 8, 25);
    if (joint == "tongued") maybe(keys, "tongue", 50, 6, 10);
    if (!draw_.framed || !on_wood_) maybe_word(keys, "top", 25, {"whole", "rails"});
    keys.add_object("back", back_keys(joint == "butted"));
    return keys;
  }

  Members back_keys(bool butted) {
    Members keys;
    const std::string_view fit = butted ? "planted" : word({"", "grooved", "rebated", "planted"});
    if (!fit.empty()) keys.add("fit", quoted(fit));
    if (chance(40)) keys.add("material", quoted("birch plywood"));
    maybe(keys, "thickness", 40, 5, 9);
    if (fit != "planted") maybe(keys, "depth", 20, 5, 8);
    if (fit == "grooved") maybe(keys, "from_back", 40, 6, 25);
    if (fit != "planted") maybe(keys, "gap", 20, 0.5, 2);
    return keys;
  }

  std::string toe_keys() {
    Members keys;
    maybe(keys, "height", 70, 70, 120);
    maybe(keys, "setback", 70, 40, 80);
    maybe_word(keys, "by", 50, {"notched", "legs", "base"});
    if (keys.empty()) keys.add("by", quoted("notched"));
    return keys.object();
  }

  Members face_frame_keys(bool in_cabinet) {
    Members keys;
    maybe(keys, "thickness", 40, 18, 25);
    maybe(keys, "stile_width", 40, 35, 60);
    maybe(keys, "rail_width", 40, 35, 60);
    maybe(keys, "mullion_width", 20, 35, 60);
    if (chance(20)) keys.add("scribe", fmt::format(R"({{"left": {}}})", size(5, 20)));
    if (in_cabinet && chance(20)) keys.add("over", size(0, 6));
    const std::string_view joint =
        word({"", "mortise-and-tenon", "stub", "dowel", "half-lap", "bridle", "butted", "screws"});
    if (!joint.empty()) keys.add("joint", quoted(joint));
    if (joint == "mortise-and-tenon" || joint.empty()) {
      Members tenon;
      maybe(tenon, "depth", 30, 15, 22);
      maybe(tenon, "shoulder", 30, 3, 7);
      keys.add_object("tenon", tenon);
    }
    if (joint == "screws" && chance(50)) keys.add("screws", R"({"by": "plug"})");
    if (chance(15)) keys.add("bead", fmt::format(R"({{"width": {}}})", size(5, 8)));
    return keys;
  }

  Members fronts_keys() {
    Members keys;
    if (chance(30)) {
      inset_ = chance(50);
      keys.add("meets", quoted(inset_ ? "inset" : "overlay"));
    }
    maybe(keys, "gap", 30, 1.5, 4);
    maybe(keys, "thickness", 20, 18, 24);
    if (chance(25)) {
      Members door;
      maybe(door, "thickness", 50, 19, 25);
      maybe(door, "stile_width", 50, 45, 70);
      keys.add_object("door", door);
    }
    if (chance(30) && !inset_) keys.add("hinges", chance(50) ? "{}" : R"({"number": 3})");
    Members drawer;
    drawer.add("runner", on_wood_ ? R"({"kind": "wood"})" : metal_runner());
    drawer_box(drawer, false);
    keys.add_object("drawer", drawer);
    return keys;
  }

  std::string metal_runner() {
    const bool mm = draw_.unit == Unit::mm;
    return fmt::format(R"({{"side": {}, "length": {}}})", mm ? "12.7" : R"("1/2")",
                       mm ? "250" : "10");
  }

  void drawer_box(Members& drawer, bool alone) {
    if (chance(20)) drawer.add("material", quoted("birch plywood"));
    if (chance(25)) drawer.add("sides", fmt::format(R"({{"thickness": {}}})", size(11, 16)));
    if (chance(20)) drawer.add("bottom", fmt::format(R"({{"from_edge": {}}})", size(8, 14)));
    if (alone) maybe(drawer, "front_thickness", 30, 18, 24);
  }

  void pin_rows(Members& all) {
    Members keys;
    maybe(keys, "pitch", 50, 25, 50);
    maybe(keys, "from_front", 40, 30, 60);
    all.add_object("pin_rows", keys);
  }

  // ---- a layout

  /// `said`: the size that the list gives it, with its key; empty: its share.
  Members node(Room room, int depth, std::string_view said, bool in_cabinet) {
    Members keys;
    if (!said.empty())
      keys.add(said, size(said == "width" ? room.width : room.height,
                          said == "width" ? room.width : room.height));
    const bool divides = depth <= kDeepest && chance(depth == 1 ? 85 : 40);
    if (divides && room.width > 480 && (room.height < 500 || chance(50))) {
      keys.add("columns", list(room, depth, true, in_cabinet));
      return keys;
    }
    if (divides && room.height > 480) {
      keys.add("rows", list(room, depth, false, in_cabinet));
      return keys;
    }
    if (in_cabinet) fill(keys, room);
    return keys;
  }

  std::string list(Room room, int depth, bool across, bool in_cabinet) {
    const int length = across ? room.width : room.height;
    const int most = std::min(3, length / 220);
    const int count = whole(2, std::max(2, most));
    const Room each{across ? room.width / count - 30 : room.width,
                    across ? room.height : room.height / count - 30};
    std::string text;
    for (int i = 0; i < count; ++i) {
      const bool says = i + 1 < count && chance(35);
      Members keys = node(each, depth + 1, !says ? "" : across ? "width" : "height", in_cabinet);
      if (!says && chance(10)) keys.add("share", std::to_string(whole(1, 2)));
      text += (i == 0 ? "" : ", ") + keys.object();
    }
    return "[" + text + "]";
  }

  void fill(Members& keys, Room room) {
    const int roll = whole(1, 100);
    if (roll <= 30 && room.width >= 220 && room.height >= 250 && room.width <= 650) {
      keys.add("front", quoted("door"));
      if (chance(40)) keys.add("hangs", quoted(word({"left", "right"})));
      ++draw_.doors;
      maybe_shelves(keys, room);
    } else if (roll <= 50 && room.width >= 450 && room.height >= 250) {
      keys.add("front", quoted("pair"));
      draw_.doors += 2;
      maybe_shelves(keys, room);
    } else if (roll <= 75 && room.width >= 250 && room.height >= 100 && room.height <= 450) {
      keys.add("front", quoted("drawer"));
      ++draw_.drawers;
    } else if (roll <= 85 && room.width >= 250 && room.height >= 400) {
      const int count = whole(2, room.height / 150);
      keys.add("front", quoted("drawer"));
      keys.add("grade", fmt::format(R"({{"count": {}, "step": {}}})", count, size(0, 20)));
      draw_.graded = true;
      draw_.drawers += count;
    } else if (roll <= 90) {
      keys.add("front", quoted("fixed"));
      ++draw_.plain_fronts;
    } else {
      if (chance(50)) keys.add("front", quoted("none"));
      maybe_shelves(keys, room);
    }
  }

  void maybe_shelves(Members& keys, Room room) {
    if (!chance(50) || room.height < 350) return;
    const int count = whole(1, std::max(1, room.height / 350));
    draw_.loose_shelves += count;
    if (chance(50)) {
      keys.add("shelves", std::to_string(count));
      return;
    }
    Members shelves;
    shelves.add("count", std::to_string(count));
    maybe_word(shelves, "load", 50, {"books", "clothes", "crockery"});
    maybe(shelves, "thickness", 30, 17, 24);
    keys.add_object("shelves", shelves);
  }

  // ---- a face frame, a drawer

  void face_frame_alone(Members& all) {
    const Room room{whole(400, 1800), whole(450, 2000)};
    Members over_all;
    over_all.add("width", size(room.width, room.width + 5));
    over_all.add("height", size(room.height, room.height + 5));
    all.add_object("size", over_all);
    all.add_all(face_frame_keys(false));
    if (chance(90))
      all.add("layout", node({room.width - 80, room.height - 80}, 1, "", false).object());
  }

  void drawer_alone(Members& all) {
    Members opening;
    opening.add("width", size(200, 900));
    opening.add("height", size(90, 350));
    opening.add("depth", size(330, 600));
    all.add_object("opening", opening);
    const std::string_view meets = word({"", "inset", "overlay", "rebate"});
    if (!meets.empty()) all.add("meets", quoted(meets));
    const bool metal = chance(40);
    all.add("runner", metal ? metal_runner() : R"({"kind": "wood"})");
    drawer_box(all, true);
    Members corner;
    if (!metal) maybe_word(corner, "front", 40, {"lapped-dovetail", "rebated", "tongued"});
    maybe_word(corner, "back", 40, {"dovetail", "finger", "housed", "rebated", "dowel"});
    all.add_object("corner", corner);
    draw_.drawers = 1;
  }

  Dice dice_;
  CabinetDraw draw_;
  bool on_wood_ = false;
  bool inset_ = false;
};

}  // namespace

CabinetDraw random_cabinet(std::uint64_t seed) {
  return Drawing(seed).draw();
}

std::string with_stuff(const CabinetDraw& draw, const std::string& thickness) {
  const std::string key = R"("thickness": )" + draw.stuff;
  std::string json = draw.json;
  return json.replace(json.find(key, json.find(R"("case")")), key.size(),
                      R"("thickness": )" + thickness);
}

}  // namespace haunch::test
