#include "wood_oracle.h"

#include <algorithm>
#include <optional>

#include "haunch/length_text.h"
#include "sloping_wood.h"

namespace haunch::test {

Block common(const Block& a, const Block& b) {
  Block both;
  for (std::size_t i = 0; i < 3; ++i) {
    both.low[i] = std::max(a.low[i], b.low[i]);
    both.high[i] = std::min(a.high[i], b.high[i]);
  }
  return both;
}

Block hull(const Block& a, const Block& b) {
  Block both;
  for (std::size_t i = 0; i < 3; ++i) {
    both.low[i] = std::min(a.low[i], b.low[i]);
    both.high[i] = std::max(a.high[i], b.high[i]);
  }
  return both;
}

bool has_volume(const Block& b) {
  return b.low[0] < b.high[0] && b.low[1] < b.high[1] && b.low[2] < b.high[2];
}

namespace {

using Steps = std::int64_t;

/// A rectangle of two axes, low to high.
struct Rect {
  std::array<Steps, 2> low{};
  std::array<Steps, 2> high{};
};

bool empty(const Rect& r) {
  return r.low[0] >= r.high[0] || r.low[1] >= r.high[1];
}

Rect common(const Rect& a, const Rect& b) {
  Rect both;
  for (std::size_t i = 0; i < 2; ++i) {
    both.low[i] = std::max(a.low[i], b.low[i]);
    both.high[i] = std::min(a.high[i], b.high[i]);
  }
  return both;
}

/// True when the two have a point in common, a face or a corner included.
bool touch(const Block& a, const Block& b) {
  const Block both = common(a, b);
  return both.low[0] <= both.high[0] && both.low[1] <= both.high[1] && both.low[2] <= both.high[2];
}

/// `block` seen along `axis`: the rectangle of its other two axes.
Rect seen_along(const Block& block, std::size_t axis) {
  const std::size_t u = axis == 0 ? 1 : 0;
  const std::size_t v = axis == 2 ? 1 : 2;
  return {{block.low[u], block.low[v]}, {block.high[u], block.high[v]}};
}

/// What is left of `whole` when `taken` is cut out of it.
void cut_away(const Rect& whole, const Rect& taken, std::vector<Rect>& rest) {
  const Rect both = common(whole, taken);
  if (empty(both)) {
    rest.push_back(whole);
    return;
  }
  const auto keep = [&rest](const Rect& part) {
    if (!empty(part)) rest.push_back(part);
  };
  keep({whole.low, {both.low[0], whole.high[1]}});
  keep({{both.high[0], whole.low[1]}, whole.high});
  keep({{both.low[0], whole.low[1]}, {both.high[0], both.low[1]}});
  keep({{both.low[0], both.high[1]}, {both.high[0], whole.high[1]}});
}

/// True when `by` leave nothing of `whole` open.
bool covered(const Rect& whole, const std::vector<Rect>& by) {
  if (empty(whole)) return true;
  std::vector<Rect> open{whole};
  std::vector<Rect> rest;
  for (const Rect& each : by) {
    rest.clear();
    for (const Rect& part : open)
      cut_away(part, each, rest);
    open.swap(rest);
    if (open.empty()) return true;
  }
  return false;
}

// ---- Wood from blanks and cuts ----

/// Joins blocks that lie end to end along `axis` and agree in the other two.
std::vector<Block> joined(std::vector<Block> blocks, std::size_t axis) {
  const std::size_t u = axis == 0 ? 1 : 0;
  const std::size_t v = axis == 2 ? 1 : 2;
  const auto key = [=](const Block& b) {
    return std::array<Steps, 5>{b.low[u], b.high[u], b.low[v], b.high[v], b.low[axis]};
  };
  std::sort(blocks.begin(), blocks.end(),
            [&](const Block& a, const Block& b) { return key(a) < key(b); });
  std::vector<Block> result;
  for (const Block& each : blocks) {
    const bool goes_on =
        !result.empty() && result.back().high[axis] == each.low[axis] &&
        result.back().low[u] == each.low[u] && result.back().high[u] == each.high[u] &&
        result.back().low[v] == each.low[v] && result.back().high[v] == each.high[v];
    if (goes_on) {
      result.back().high[axis] = each.high[axis];
    } else {
      result.push_back(each);
    }
  }
  return result;
}

Block block_of(const Box& box) {
  Block block;
  for (std::size_t i = 0; i < 3; ++i) {
    block.low[i] = box.low[i].steps();
    block.high[i] = box.high[i].steps();
  }
  return block;
}

Block blank_block(const Piece& piece) {
  return block_of({Triple{}, piece.blank});
}

/// A grid of cells between all the faces of a blank and its cuts.
class Grid {
 public:
  Grid(const Block& blank, const std::vector<Block>& cuts) {
    for (std::size_t i = 0; i < 3; ++i) {
      auto& lines = lines_[i];
      lines = {blank.low[i], blank.high[i]};
      for (const Block& cut : cuts) {
        lines.push_back(std::clamp(cut.low[i], blank.low[i], blank.high[i]));
        lines.push_back(std::clamp(cut.high[i], blank.low[i], blank.high[i]));
      }
      std::sort(lines.begin(), lines.end());
      lines.erase(std::unique(lines.begin(), lines.end()), lines.end());
    }
    wood_.assign(cells(0) * cells(1) * cells(2), 1);
    for (const Block& cut : cuts)
      clear(cut);
  }

  /// The runs of wood along the first axis.
  std::vector<Block> runs() const {
    std::vector<Block> result;
    for (std::size_t j = 0; j < cells(1); ++j) {
      for (std::size_t k = 0; k < cells(2); ++k) {
        bool inside = false;
        for (std::size_t i = 0; i < cells(0); ++i) {
          const bool wood = wood_[at(i, j, k)] != 0;
          if (wood && inside) result.back().high[0] = lines_[0][i + 1];
          if (wood && !inside) result.push_back(cell(i, j, k));
          inside = wood;
        }
      }
    }
    return result;
  }

 private:
  std::size_t cells(std::size_t axis) const { return lines_[axis].size() - 1; }
  std::size_t at(std::size_t i, std::size_t j, std::size_t k) const {
    return (j * cells(2) + k) * cells(0) + i;
  }
  Block cell(std::size_t i, std::size_t j, std::size_t k) const {
    return {{lines_[0][i], lines_[1][j], lines_[2][k]},
            {lines_[0][i + 1], lines_[1][j + 1], lines_[2][k + 1]}};
  }
  std::size_t line(std::size_t axis, Steps place) const {
    const auto& lines = lines_[axis];
    const auto found = std::lower_bound(lines.begin(), lines.end(), place);
    return std::min(static_cast<std::size_t>(found - lines.begin()), cells(axis));
  }
  void clear(const Block& cut) {
    for (std::size_t j = line(1, cut.low[1]); j < line(1, cut.high[1]); ++j) {
      for (std::size_t k = line(2, cut.low[2]); k < line(2, cut.high[2]); ++k) {
        for (std::size_t i = line(0, cut.low[0]); i < line(0, cut.high[0]); ++i) {
          wood_[at(i, j, k)] = 0;
        }
      }
    }
  }

  std::array<std::vector<Steps>, 3> lines_;
  std::vector<char> wood_;
};

Block put_in_place(const Block& block, const Place& place) {
  Block result;
  for (std::size_t i = 0; i < 3; ++i) {
    const auto axis = static_cast<std::size_t>(place.axes[i]);
    const Steps origin = place.origin[axis].steps();
    result.low[axis] = origin + block.low[i];
    result.high[axis] = origin + block.high[i];
  }
  return result;
}

Wood carve(const Piece& piece) {
  std::vector<Block> cuts;
  for (const Feature& feature : piece.features) {
    for (const Box& cut : feature.cuts)
      cuts.push_back(block_of(cut));
  }
  const Block blank = blank_block(piece);
  Wood wood{piece.role, put_in_place(blank, piece.place), {}};
  wood.blocks = joined(joined(Grid(blank, cuts).runs(), 1), 2);
  for (Block& block : wood.blocks)
    block = put_in_place(block, piece.place);
  return wood;
}

// ---- Measuring ----

/// How far it is from a section to the nearest wood, and whether it is as far from all of the
/// section.
struct Reach {
  std::optional<Steps> nearest;  // empty: no wood at all
  bool even = false;
};

Reach reach(const std::vector<Block>& wood, const Block& from, std::size_t axis, bool up) {
  const Rect section = seen_along(from, axis);
  const auto distance = [&](const Block& block) {
    return up ? block.low[axis] - from.high[axis] : from.low[axis] - block.high[axis];
  };
  Reach result;
  std::vector<Rect> walls;
  for (const Block& block : wood) {
    const Steps far = distance(block);
    if (far < 0 || (result.nearest && *result.nearest < far)) continue;
    const Rect wall = seen_along(block, axis);
    if (empty(common(section, wall))) continue;
    if (!result.nearest || far < *result.nearest) walls.clear();
    result.nearest = far;
    walls.push_back(wall);
  }
  result.even = result.nearest && covered(section, walls);
  return result;
}

/// Both ways along an axis.
struct Play {
  Reach low, high;

  std::optional<Steps> total() const {
    if (!low.nearest || !high.nearest) return std::nullopt;
    return *low.nearest + *high.nearest;
  }
  bool even() const { return low.even && high.even; }
};

Play play(const std::vector<Block>& wood, const Block& of, std::size_t axis) {
  return {reach(wood, of, axis, false), reach(wood, of, axis, true)};
}

/// A joint is looked at with the first axis along which its piece enters, rising as it goes in; the
/// second across it in the plane of the leaf; the third the thickness.
Block turned(const Block& block, const Heading& heading) {
  const auto in = static_cast<std::size_t>(heading.axis);
  const std::size_t across = in == 0 ? 1 : 0;
  Block result{{block.low[in], block.low[across], block.low[2]},
               {block.high[in], block.high[across], block.high[2]}};
  if (!heading.upwards) {
    result.low[0] = -block.high[in];
    result.high[0] = -block.low[in];
  }
  return result;
}

std::vector<Block> turned(std::vector<Block> blocks, const Heading& heading) {
  for (Block& block : blocks)
    block = turned(block, heading);
  return blocks;
}

/// The two pieces of a joint, turned.
struct View {
  Block receiving_blank, entering_blank;
  std::vector<Block> receiving, entering;
  std::vector<Block> mouths;      // cuts of the receiving piece from the edge that is entered
  std::vector<Block> others;      // all its other cuts, and those right through from edge to edge
  std::vector<Block> grooves;     // those mouths that are grooves, rebates or seats of haunches
  std::vector<Block> rebates;     // those that are rebates
  std::optional<Block> cut_away;  // of the edge, where its moulding makes room for a shoulder
  bool moulded = false;           // the edge that is entered
  Steps moulded_front = 0;        // how deep, at the face side
  Steps moulded_back = 0;         // and at the back
  std::vector<Block> sockets;     // all mouths that are not
  std::vector<Block> mortises;    // those cuts that serve this joint as mortises
  Steps edge = 0;                 // where the receiving piece begins
  Steps line = 0;                 // where the entering piece's shoulder stands
  Steps end = 0;                  // how far the entering piece comes
};

/// The extent of a moulding's prism over its piece's width and thickness.
struct MouldingExtent {
  Length low, high, face, back;
};

MouldingExtent extent_of(const Prism& prism) {
  MouldingExtent extent{prism.outline[0].u, prism.outline[0].u, prism.outline[0].v,
                        prism.outline[0].v};
  for (const Corner& corner : prism.outline) {
    extent.low = std::min(extent.low, corner.u);
    extent.high = std::max(extent.high, corner.u);
    extent.face = std::min(extent.face, corner.v);
    extent.back = std::max(extent.back, corner.v);
  }
  return extent;
}

void note_moulding(View& view, const Feature& feature, const Piece& piece, const Heading& heading) {
  if (feature.kind != FeatureKind::moulding) return;
  for (const Prism& prism : feature.prisms) {
    const MouldingExtent extent = extent_of(prism);
    const bool entered = heading.upwards ? extent.low == Length() : extent.high == piece.blank[1];
    if (!entered) continue;
    view.moulded = true;
    if (extent.face == Length())
      view.moulded_front = extent.back.steps();
    else
      view.moulded_back = (piece.blank[2] - extent.face).steps();
  }
}

View view_of(const Assembly& assembly, const std::vector<Wood>& wood, std::size_t index) {
  const Joint& joint = assembly.joints[index];
  View view;
  view.receiving_blank = turned(wood[joint.receives].blank, joint.heading);
  view.entering_blank = turned(wood[joint.enters].blank, joint.heading);
  view.receiving = turned(wood[joint.receives].blocks, joint.heading);
  view.entering = turned(wood[joint.enters].blocks, joint.heading);
  view.edge = view.receiving_blank.low[0];
  view.end = view.entering_blank.high[0];
  const Piece& piece = assembly.pieces[joint.receives];
  for (const Feature& feature : piece.features) {
    note_moulding(view, feature, piece, joint.heading);
    const auto& joints = feature.joints;
    const bool serves = std::find(joints.begin(), joints.end(), index) != joints.end();
    for (const Box& box : feature.cuts) {
      const Block cut = turned(put_in_place(block_of(box), piece.place), joint.heading);
      const bool mouth = cut.low[0] == view.edge;
      if (mouth) view.mouths.push_back(cut);
      if (!mouth || (!serves && cut.high[0] == view.receiving_blank.high[0])) {
        view.others.push_back(cut);
      }
      const bool rebate = feature.kind == FeatureKind::rebate && piece.role != Role::panel;
      if (mouth && (feature.kind == FeatureKind::groove || feature.kind == FeatureKind::haunching ||
                    feature.kind == FeatureKind::moulding_mitre || rebate))
        view.grooves.push_back(cut);
      if (mouth && rebate) view.rebates.push_back(cut);
      if (serves && feature.kind == FeatureKind::moulding_mitre) view.cut_away = cut;
      if (mouth && !rebate && feature.kind != FeatureKind::moulding_mitre)
        view.sockets.push_back(cut);
      if (serves && feature.kind == FeatureKind::mortise) view.mortises.push_back(cut);
    }
  }
  view.line = view.cut_away ? view.cut_away->high[0] : view.edge;
  return view;
}

/// Blocks between the same two depths put together to one wherever they make a whole rectangle.
std::vector<Block> put_together(std::vector<Block> blocks) {
  std::vector<Block> result;
  while (!blocks.empty()) {
    std::vector<Block> group{blocks.back()};
    blocks.pop_back();
    for (std::size_t i = 0; i < group.size(); ++i) {
      const auto apart = [&](const Block& other) {
        return other.low[0] != group[i].low[0] || other.high[0] != group[i].high[0] ||
               !touch(group[i], other);
      };
      const auto near = std::stable_partition(blocks.begin(), blocks.end(), apart);
      group.insert(group.end(), near, blocks.end());
      blocks.erase(near, blocks.end());
    }
    Block whole = group.front();
    std::vector<Rect> parts;
    for (const Block& each : group) {
      whole = hull(whole, each);
      parts.push_back(seen_along(each, 0));
    }
    if (covered(seen_along(whole, 0), parts)) group = {whole};
    result.insert(result.end(), group.begin(), group.end());
  }
  std::sort(result.begin(), result.end());
  return result;
}

/// The entering wood's end, as one block one step deep for each tenon.
std::vector<Block> ends(const View& view) {
  std::vector<Block> slices;
  std::vector<Block> at_faces;  // beside a tenon: a cope that is as long
  for (const Block& block : view.entering) {
    if (block.high[0] != view.end) continue;
    const bool at_a_face =
        block.low[2] == view.entering_blank.low[2] || block.high[2] == view.entering_blank.high[2];
    (view.moulded && at_a_face ? at_faces : slices)
        .push_back({{view.end - 1, block.low[1], block.low[2]}, block.high});
  }
  return put_together(slices.empty() ? std::move(at_faces) : std::move(slices));
}

/// True when `cut` reaches into another cut or a face of its piece, other than by the edge that is
/// entered.
bool breaks_out(const View& view, const Block& cut) {
  const Block& blank = view.receiving_blank;
  if (cut.high[0] >= blank.high[0]) return true;
  if (cut.low[2] <= blank.low[2] || cut.high[2] >= blank.high[2]) return true;
  const bool from_end_to_end = cut.low[1] <= blank.low[1] && cut.high[1] >= blank.high[1];
  const bool at_an_end = cut.low[1] <= blank.low[1] || cut.high[1] >= blank.high[1];
  if (at_an_end && !from_end_to_end) return true;
  return std::any_of(view.others.begin(), view.others.end(),
                     [&](const Block& other) { return touch(cut, other); });
}

bool is_stub(const Joint& joint) {
  return joint.kind == JointKind::stub_tenon;
}
bool is_bedded(const Joint& joint) {
  return joint.kind == JointKind::panel_in_rebate;
}
bool is_panel(const Joint& joint) {
  return joint.kind == JointKind::panel_in_groove || is_bedded(joint);
}
bool is_tenon(const Joint& joint) {
  return joint.kind == JointKind::mortise_and_tenon;
}
bool is_pane(const Joint& joint) {
  return joint.kind == JointKind::glass_in_rebate || joint.kind == JointKind::sealed_unit_in_rebate;
}
bool is_bead(const Joint& joint) {
  return joint.kind == JointKind::bead_in_rebate;
}

class Judge {
 public:
  explicit Judge(const Assembly& assembly) : assembly_(assembly), wood_(wood_of(assembly)) {}

  std::vector<Fault> faults() {
    cuts_lie_within_blanks();
    if (!joints_make_sense()) return std::move(faults_);
    panels_are_held();
    for (std::size_t i = 0; i < assembly_.joints.size(); ++i)
      measure(i);
    no_wood_is_shared();
    adds_up_to_size();
    face_is_whole();
    return std::move(faults_);
  }

 private:
  void report(FaultKind kind, std::string what) { faults_.push_back({kind, std::move(what)}); }

  const std::string& mark(std::size_t piece) const { return assembly_.pieces[piece].mark; }

  std::string joint_name(std::size_t index) const {
    const Joint& joint = assembly_.joints[index];
    return joint_id(index) + " (" + std::string(word_of(joint.kind)) + ", " + mark(joint.enters) +
           " into " + mark(joint.receives) + ")";
  }

  static std::string figure(std::optional<Steps> steps) {
    return steps ? decimal(Length::from_steps(*steps), Unit::mm) + " mm" : "none";
  }

  // ---- pieces ----

  void cuts_lie_within_blanks() {
    for (const Piece& piece : assembly_.pieces) {
      const Block blank = blank_block(piece);
      for (const Feature& feature : piece.features) {
        for (const Box& box : feature.cuts) {
          const Block cut = block_of(box);
          if (has_volume(cut) && common(cut, blank) == cut) continue;
          report(FaultKind::cut_outside_blank, piece.mark + ": a cut of its " +
                                                   std::string(word_of(feature.kind)) +
                                                   " is empty or lies outside its blank");
        }
        for (const Prism& prism : feature.prisms) {
          if (lies_within(prism, piece)) continue;
          report(FaultKind::cut_outside_blank, piece.mark + ": a slope of its " +
                                                   std::string(word_of(feature.kind)) +
                                                   " is empty or lies outside its blank");
        }
      }
    }
  }

  // ---- which pieces join which ----

  bool joints_make_sense() {
    for (std::size_t i = 0; i < assembly_.joints.size(); ++i) {
      const Joint& joint = assembly_.joints[i];
      const auto count = assembly_.pieces.size();
      const bool real = joint.receives < count && joint.enters < count &&
                        joint.receives != joint.enters && joint.heading.axis != Axis::z;
      if (!real) {
        report(FaultKind::role, joint_id(i) + " does not join two pieces in the leaf's plane");
        return false;
      }
      check_roles(i);
      check_features(i);
    }
    for (std::size_t i = 0; i < assembly_.pieces.size(); ++i)
      check_ends(i);
    return true;
  }

  void check_roles(std::size_t index) {
    const Joint& joint = assembly_.joints[index];
    const Role receives = assembly_.pieces[joint.receives].role;
    const Role enters = assembly_.pieces[joint.enters].role;
    if (is_pane(joint) || is_bead(joint)) {
      const bool right =
          enters == (is_pane(joint) ? Role::glass : Role::bead) &&
          (receives == Role::stile || receives == Role::rail || receives == Role::muntin) &&
          naming(assembly_.pieces[joint.receives], "glass-rebate", index) +
                  naming(assembly_.pieces[joint.receives], "rebate", index) ==
              1;
      if (!right) report(FaultKind::role, joint_name(index) + ": these two are not joined so");
      return;
    }
    const bool known = is_stub(joint) || is_panel(joint) || is_tenon(joint);
    const bool frame = is_panel(joint) ? enters == Role::panel && receives != Role::panel
                                       : (enters == Role::rail && receives == Role::stile) ||
                                             (enters == Role::muntin && receives == Role::rail);
    const bool way =
        enters == Role::panel || (enters == Role::rail) == (joint.heading.axis == Axis::x);
    if (!known || !frame || !way) {
      report(FaultKind::role, joint_name(index) + ": these two are not joined so");
    }
  }

  static int naming(const Piece& piece, std::string_view kind, std::size_t joint) {
    int count = 0;
    for (const Feature& feature : piece.features) {
      if (word_of(feature.kind) != kind) continue;
      count += static_cast<int>(std::count(feature.joints.begin(), feature.joints.end(), joint));
    }
    return count;
  }

  /// A groove names the panels and stubs that it receives, a mortise and a tenon their own joint;
  /// each once.
  void check_features(std::size_t index) {
    const Joint& joint = assembly_.joints[index];
    const Piece& receives = assembly_.pieces[joint.receives];
    const Piece& enters = assembly_.pieces[joint.enters];
    if (is_pane(joint) || is_bead(joint)) return;
    const std::string_view holds = is_bedded(joint) ? "rebate" : "groove";
    const bool right = naming(receives, holds, index) == (is_tenon(joint) ? 0 : 1) &&
                       naming(receives, "mortise", index) == (is_tenon(joint) ? 1 : 0) &&
                       naming(enters, "tenon", index) == (is_panel(joint) ? 0 : 1);
    if (!right) {
      report(FaultKind::role, joint_name(index) + ": not named by the features that make it");
    }
  }

  std::vector<std::size_t> joints_entering_with(std::size_t piece) const {
    std::vector<std::size_t> result;
    for (std::size_t i = 0; i < assembly_.joints.size(); ++i) {
      if (assembly_.joints[i].enters == piece) result.push_back(i);
    }
    return result;
  }

  /// A rail or muntin enters with both ends, a panel with four edges, a stile with none; each once.
  void check_ends(std::size_t piece) {
    const Role role = assembly_.pieces[piece].role;
    const auto joints = joints_entering_with(piece);
    const bool four = role == Role::panel || role == Role::glass;
    const std::size_t wanted = role == Role::stile ? 0 : four ? 4 : role == Role::bead ? 1 : 2;
    std::vector<int> ways;
    for (const std::size_t i : joints) {
      const Heading& heading = assembly_.joints[i].heading;
      ways.push_back(2 * static_cast<int>(heading.axis) + (heading.upwards ? 1 : 0));
    }
    std::sort(ways.begin(), ways.end());
    const bool once = std::adjacent_find(ways.begin(), ways.end()) == ways.end();
    if (joints.size() == wanted && once) return;
    report(role == Role::panel ? FaultKind::panel_edges : FaultKind::role,
           mark(piece) + ": a " + std::string(word_of(role)) + " in " +
               std::to_string(joints.size()) + " joints");
  }

  // ---- what is seen of each panel ----

  /// For each panel the rectangle between the edges of the pieces that hold it, x and y.
  void panels_are_held() {
    sights_.assign(assembly_.pieces.size(), Rect{});
    for (std::size_t piece = 0; piece < assembly_.pieces.size(); ++piece) {
      if (assembly_.pieces[piece].role != Role::panel) continue;
      for (const std::size_t i : joints_entering_with(piece)) {
        const Joint& joint = assembly_.joints[i];
        const auto axis = static_cast<std::size_t>(joint.heading.axis);
        const Block& blank = wood_[joint.receives].blank;
        if (joint.heading.upwards) {
          sights_[piece].high[axis] = blank.low[axis];
        } else {
          sights_[piece].low[axis] = blank.high[axis];
        }
      }
    }
  }

  // ---- joints ----

  void measure(std::size_t index) {
    const Joint& joint = assembly_.joints[index];
    const View view = view_of(assembly_, wood_, index);
    if (is_bead(joint)) {
      measure_bead(index, view);
      return;
    }
    const std::vector<Block> tenons = ends(view);
    if (is_pane(joint)) {
      measure_pane(index, view);
      return;
    }
    if (tenons.empty()) {
      report(FaultKind::clearance, joint_name(index) + ": no wood at the entering end");
      return;
    }
    enters_wood(index, view, tenons);
    if (is_panel(joint)) {
      measure_panel(index, view, tenons);
      return;
    }
    const bool broken = breaks_out_anywhere(joint, view);
    for (const Block& tenon : tenons)
      measure_tenon(index, view, tenon, broken);
    shoulders_seat(index, view);
    if (view.cut_away)
      mitre_fits(index, view);
    else if (view.moulded)
      cope_fits(index);
    if (undivided(joint)) {
      report(FaultKind::undivided, joint_name(index) + ": tenons with no gap between them");
      return;
    }
    measure_haunches(index, view, broken);
    compare_sizes(index, view, tenons);
  }

  /// A pane's blank is all of it. Its edge stands off the rebate by its clearance, its cover is the
  /// bite, and it is bedded on the wall before it by as much as the beads behind it leave.
  void measure_pane(std::size_t index, const View& view) {
    const Joint& joint = assembly_.joints[index];
    const Block& pane = view.entering_blank;
    compare(index, "bite", view.end - view.edge, true, joint.design.bite, false);
    if (view.end <= view.edge) report(FaultKind::no_bite, joint_name(index) + ": no cover");
    Block edge = pane;
    edge.low[0] = view.end - 1;
    const Reach bottom = reach(view.receiving, edge, 0, true);
    compare(index, "edge clearance", bottom.nearest, true, joint.design.bottom, false);
    const Reach wall = reach(view.receiving, edge, 2, false);
    compare(index, "bedding in front", wall.nearest, true, joint.design.bearing, false);
    const Reach back = reach(view.receiving, edge, 2, true);
    if (back.nearest) report(FaultKind::outside, joint_name(index) + ": wood behind the glass");
    for (const Wood& piece : wood_) {
      if (piece.role != Role::bead) continue;
      const Steps apart = piece.blank.low[2] - wood_[joint.enters].blank.high[2];
      const bool before =
          !empty(common(seen_along(piece.blank, 2), seen_along(wood_[joint.enters].blank, 2)));
      if (before) compare(index, "bedding behind", apart, true, joint.design.bearing, false);
    }
  }

  /// A bead lies on the rebate's bottom, ends at the sight edge, and comes to the back of its
  /// piece.
  void measure_bead(std::size_t index, const View& view) {
    const Block& bead = view.entering_blank;
    Block edge = bead;
    edge.low[0] = view.end - 1;
    const Reach bottom = reach(view.receiving, edge, 0, true);
    compare(index, "bead's bottom", bottom.nearest, true, Length(), false);
    if (bead.low[0] != view.edge || bead.high[2] != view.receiving_blank.high[2])
      report(FaultKind::proud, joint_name(index) + ": not flush with the sight edge and the back");
  }

  static bool undivided(const Joint& joint) {
    if (!joint.tenon) return false;
    const auto& each = joint.tenon->each;
    return std::adjacent_find(each.begin(), each.end(), [](const TenonSpan& a, const TenonSpan& b) {
             return a.from_edge + a.width == b.from_edge;
           }) != each.end();
  }

  bool breaks_out_anywhere(const Joint& joint, const View& view) const {
    const auto& cuts = is_stub(joint) ? view.grooves : view.mortises;
    for (std::size_t i = 0; i < cuts.size(); ++i) {
      if (breaks_out(view, cuts[i])) return true;
      if (is_stub(joint)) continue;
      for (const Block& other : view.mouths) {
        const bool groove =
            std::find(view.grooves.begin(), view.grooves.end(), other) != view.grooves.end();
        if (!groove && other != cuts[i] && touch(cuts[i], other)) return true;
      }
    }
    return false;
  }

  void enters_wood(std::size_t index, const View& view, const std::vector<Block>& tenons) {
    const Block& blank = view.receiving_blank;
    const bool panel = is_panel(assembly_.joints[index]);  // its corners may pass a muntin's ends
    for (const Block& tenon : tenons) {
      const bool beside = tenon.low[1] < blank.low[1] || tenon.high[1] > blank.high[1] ||
                          tenon.low[2] < blank.low[2] || tenon.high[2] > blank.high[2];
      if (beside && !panel) {
        report(FaultKind::outside, joint_name(index) + ": wood beside the receiving piece");
      }
    }
    if (!panel && view.end <= view.edge) {
      report(FaultKind::outside, joint_name(index) + ": the tenon does not reach in");
    }
    if (view.end >= blank.high[0])
      report(FaultKind::through, joint_name(index) + ": right through");
  }

  void measure_tenon(std::size_t index, const View& view, const Block& tenon, bool broken) {
    const Joint& joint = assembly_.joints[index];
    const Play cheeks = play(view.receiving, tenon, 2);
    compare(index, "cheeks", cheeks.total(), cheeks.even(), joint.design.cheeks, broken);
    centred(index, "cheeks", cheeks, broken);
    const Reach bottom = reach(view.receiving, tenon, 0, true);
    compare(index, "bottom", bottom.nearest, bottom.even, joint.design.bottom, broken);
    if (is_stub(joint)) {
      if (joint.design.edges)
        report(FaultKind::clearance, joint_name(index) + ": a stub has no edges");
      return;
    }
    const Play edges = play(view.receiving, tenon, 1);
    compare(index, "edges", edges.total(), edges.even(), joint.design.edges, broken);
    centred(index, "edges", edges, broken);
  }

  /// Too little is always a fault; too much, or unevenly much, is not where the mortise is broken.
  void compare(std::size_t index, const std::string& name, std::optional<Steps> measured, bool even,
               std::optional<Length> design, bool broken) {
    if (!design) {
      report(FaultKind::clearance, joint_name(index) + ": no design for its " + name);
      return;
    }
    const Steps wanted = design->steps();
    if (measured == wanted && even) return;
    const bool tight = wanted < 0 || (measured && *measured < wanted);
    report(broken && !tight ? FaultKind::broken : FaultKind::clearance,
           joint_name(index) + ": " + name + " designed " + figure(wanted) + ", measured " +
               figure(measured) + (even ? "" : ", not even"));
  }

  void centred(std::size_t index, const std::string& name, const Play& sides, bool broken) {
    if (broken || !sides.total()) return;
    const Steps off = *sides.low.nearest - *sides.high.nearest;
    if (off >= -1 && off <= 1) return;
    report(FaultKind::clearance, joint_name(index) + ": " + name + " " + figure(sides.low.nearest) +
                                     " on one side, " + figure(sides.high.nearest) +
                                     " on the other");
  }

  /// In front of and behind all that is cut into the edge, the shoulder lies on it in its whole
  /// width.
  void shoulders_seat(std::size_t index, const View& view) {
    if (!view.rebates.empty()) {
      long_and_short_seat(index, view);
      return;
    }
    const Block& blank = view.entering_blank;
    Steps front = blank.high[2];
    Steps back = blank.low[2];
    for (const Block& cut : view.sockets) {
      if (empty(common(seen_along(cut, 0), seen_along(blank, 0)))) continue;
      front = std::min(front, cut.low[2]);
      back = std::max(back, cut.high[2]);
    }
    Rect whole = seen_along(blank, 0);
    if (view.cut_away) {
      whole.low[0] = view.cut_away->low[1];
      whole.high[0] = view.cut_away->high[1];
    } else {
      whole.low[1] += view.moulded_front;
      whole.high[1] -= view.moulded_back;
    }
    lies_on(index, view, {whole.low, {whole.high[0], front}}, view.line, "front");
    lies_on(index, view, {{whole.low[0], back}, whole.high}, view.line, "back");
  }

  /// Where the receiving piece is rebated, the front shoulder lies on its edge and the back one on
  /// the rebate's bottom; its own rebates are taken out of the entering piece.
  void long_and_short_seat(std::size_t index, const View& view) {
    const Block& blank = view.entering_blank;
    const Block& rebate = view.rebates.front();
    Steps front = blank.high[2];
    Steps back = blank.low[2];
    for (const Block& cut : view.sockets) {
      if (empty(common(seen_along(cut, 0), seen_along(blank, 0)))) continue;
      front = std::min(front, cut.low[2]);
      back = std::max(back, cut.high[2]);
    }
    Rect behind{{blank.low[1], back}, {blank.high[1], blank.high[2]}};
    const Piece& piece = assembly_.pieces[assembly_.joints[index].enters];
    const Steps own = rebate.high[0] - rebate.low[0];
    for (const Feature& feature : piece.features) {
      if (feature.kind != FeatureKind::rebate) continue;
      const bool low = feature.cuts.front().low[1] == Length();
      (low ? behind.low[0] : behind.high[0]) += low ? own : -own;
    }
    lies_on(index, view, {{blank.low[1], blank.low[2]}, {blank.high[1], front}}, view.edge,
            "front");
    lies_on(index, view, behind, rebate.high[0], "back");
  }

  /// Over the moulding that a piece enters there is wood of just one of the two at every place,
  /// but where the entering piece is moulded itself.
  void cope_fits(std::size_t index) {
    const Joint& joint = assembly_.joints[index];
    const Piece& receives = assembly_.pieces[joint.receives];
    const Piece& enters = assembly_.pieces[joint.enters];
    const auto across = static_cast<std::size_t>(enters.place.axes[1]);
    Box where = placed_blank(enters);
    for (const Feature& feature : enters.features) {
      if (feature.kind != FeatureKind::moulding) continue;
      const MouldingExtent own = extent_of(feature.prisms.front());
      if (own.low == Length())
        where.low[across] += own.high;
      else
        where.high[across] -= own.high - own.low;
    }
    for (const Feature& feature : receives.features) {
      if (feature.kind != FeatureKind::moulding) continue;
      for (const Prism& prism : feature.prisms)
        cope_fits(index, prism, where);
    }
  }

  /// Where a moulding is cut away, between the mouldings' depth and all that is sunk into the edge,
  /// there is wood of just one of the two at every place.
  void mitre_fits(std::size_t index, const View& view) {
    const Joint& joint = assembly_.joints[index];
    const auto in = static_cast<std::size_t>(joint.heading.axis);
    const Piece& receives = assembly_.pieces[joint.receives];
    const Box edge = placed_blank(receives);
    const Length deep = Length::from_steps(view.line - view.edge);
    Box where = placed_blank(assembly_.pieces[joint.enters]);
    where.low[in] = joint.heading.upwards ? edge.low[in] : edge.high[in] - deep;
    where.high[in] = joint.heading.upwards ? edge.low[in] + deep : edge.high[in];
    Steps front = view.receiving_blank.high[2];
    for (const Block& cut : view.sockets)
      if (!empty(common(seen_along(cut, 0), seen_along(view.entering_blank, 0))))
        front = std::min(front, cut.low[2]);
    where.low[2] = Length::from_steps(view.moulded_front);
    where.high[2] = Length::from_steps(front);
    if (!just_one_holds(receives, assembly_.pieces[joint.enters], where))
      report(FaultKind::shoulder, joint_name(index) + ": the mitre does not fit");
  }

  void cope_fits(std::size_t index, const Prism& prism, Box where) {
    const Joint& joint = assembly_.joints[index];
    const Piece& receives = assembly_.pieces[joint.receives];
    const MouldingExtent extent = extent_of(prism);
    const bool entered =
        joint.heading.upwards ? extent.low == Length() : extent.high == receives.blank[1];
    if (!entered) return;
    const auto in = static_cast<std::size_t>(joint.heading.axis);
    where.low[in] = receives.place.origin[in] + extent.low;
    where.high[in] = receives.place.origin[in] + extent.high;
    where.low[2] = receives.place.origin[2] + extent.face;
    where.high[2] = receives.place.origin[2] + extent.back;
    for (std::size_t axis = 0; axis < 3; ++axis)
      if (where.low[axis] >= where.high[axis]) return;
    if (!just_one_holds(receives, assembly_.pieces[joint.enters], where))
      report(FaultKind::shoulder, joint_name(index) + ": the cope does not fit its moulding");
  }

  void lies_on(std::size_t index, const View& view, const Rect& shoulder, Steps place,
               const std::string& name) {
    std::vector<Rect> contact;
    for (const Block& mine : view.entering)
      for (const Block& theirs : view.receiving)
        if (mine.high[0] == place && theirs.low[0] == place)
          contact.push_back(common(seen_along(mine, 0), seen_along(theirs, 0)));
    if (covered(shoulder, contact)) return;
    report(FaultKind::shoulder, joint_name(index) + ": the " + name + " shoulder is not seated");
  }

  /// Whatever stands beyond the shoulder and stops short of the tenon's end is a haunch.
  /// In front of a rebate and over a moulding only between the tenon's cheeks; the rest is the long
  /// shoulder.
  static std::vector<Block> haunches(const View& view) {
    std::vector<Block> found;
    const std::vector<Block> tenons = ends(view);
    for (Block block : view.entering) {
      if (block.high[0] <= view.line || block.high[0] >= view.end) continue;
      const bool at_a_face = block.low[2] == view.entering_blank.low[2] ||
                             block.high[2] == view.entering_blank.high[2];
      if (view.moulded && !view.cut_away && at_a_face) continue;
      if (!view.rebates.empty()) {
        block.low[2] = std::max(block.low[2], tenons.front().low[2]);
        block.high[2] = std::min(block.high[2], tenons.front().high[2]);
        if (block.low[2] >= block.high[2]) continue;
      }
      block.low[0] = view.line;
      found.push_back(block);
    }
    return put_together(std::move(found));
  }

  void measure_haunches(std::size_t index, const View& view, bool broken) {
    const Joint& joint = assembly_.joints[index];
    if (!joint.tenon) return;
    const TenonSizes& said = *joint.tenon;
    const std::vector<Block> found = haunches(view);
    if (found.size() != said.haunches.size()) {
      report(FaultKind::haunch, joint_name(index) + ": " + std::to_string(found.size()) +
                                    " haunches, said to be " +
                                    std::to_string(said.haunches.size()));
      return;
    }
    for (std::size_t i = 0; i < found.size(); ++i) {
      const Block& haunch = found[i];
      const Steps foot = view.entering_blank.low[1];
      same(index, "haunch depth", haunch.high[0] - haunch.low[0], said.haunch_depth);
      same(index, "haunch thickness", haunch.high[2] - haunch.low[2], said.haunch_thickness);
      same(index, "haunch from edge", haunch.low[1] - foot, said.haunches[i].from_edge);
      same(index, "haunch width", haunch.high[1] - haunch.low[1], said.haunches[i].width);
      measure_haunch(index, view, haunch, broken);
    }
  }

  void measure_haunch(std::size_t index, const View& view, const Block& haunch, bool broken) {
    const bool housed =
        std::any_of(view.grooves.begin(), view.grooves.end(),
                    [&](const Block& groove) { return common(groove, haunch) == haunch; });
    if (!housed) report(FaultKind::haunch, joint_name(index) + ": a haunch outside the groove");
    Block in_wood = haunch;
    for (const Block& rebate : view.rebates)  // where its own long shoulder is behind it
      in_wood.low[0] = std::max(in_wood.low[0], rebate.high[0]);
    for (const Block& mouth : view.mouths)  // or a wider groove beside a seat of its own
      if (view.cut_away && mouth.low[1] <= view.receiving_blank.low[1] &&
          mouth.high[1] >= view.receiving_blank.high[1])
        in_wood.low[0] = std::max(in_wood.low[0], mouth.high[0]);
    if (!has_volume(in_wood)) return;
    const Play cheeks = play(view.receiving, in_wood, 2);
    const auto& fit = assembly_.joints[index].design.cheeks;
    if (fit && cheeks.total() == fit->steps()) return;
    const bool wide = fit && (!cheeks.total() || *cheeks.total() > fit->steps());
    report(
        wide && (broken || !cheeks.total()) ? FaultKind::broken : FaultKind::haunch,
        joint_name(index) + ": haunch cheeks " + figure(cheeks.total()) + ", not the tenon's fit");
  }

  // ---- what the joint says of itself ----

  void compare_sizes(std::size_t index, const View& view, const std::vector<Block>& tenons) {
    const Joint& joint = assembly_.joints[index];
    if (!joint.tenon) {
      report(FaultKind::tenon_sizes, joint_name(index) + ": no tenon sizes");
      return;
    }
    const TenonSizes& said = *joint.tenon;
    const Steps foot = view.entering_blank.low[1];
    if (said.each.size() != tenons.size()) {
      report(FaultKind::tenon_sizes, joint_name(index) + ": " + std::to_string(tenons.size()) +
                                         " tenons, said to be " + std::to_string(said.each.size()));
      return;
    }
    for (std::size_t i = 0; i < tenons.size(); ++i) {
      const Block& tenon = tenons[i];
      same(index, "tenon depth", view.end - view.line, said.depth);
      same(index, "shoulder set back", view.line - view.edge, said.set_back);
      same(index, "tenon thickness", tenon.high[2] - tenon.low[2], said.thickness);
      same(index, "tenon from face", tenon.low[2] - view.entering_blank.low[2], said.from_face);
      same(index, "tenon from edge", tenon.low[1] - foot, said.each[i].from_edge);
      same(index, "tenon width", tenon.high[1] - tenon.low[1], said.each[i].width);
      const Steps over = tenon.high[1] - tenon.low[1] - said.width.steps();
      if (over != 0 && over != 1) same(index, "width of each tenon", over, Length());
    }
    if (joint.mortise.has_value() == is_stub(joint)) {
      report(FaultKind::tenon_sizes,
             joint_name(index) + ": mortise sizes where there is none, or none");
    } else if (joint.mortise) {
      compare_mortise(index);
    }
  }

  void same(std::size_t index, const std::string& name, Steps measured, Length said) {
    if (measured == said.steps()) return;
    report(FaultKind::tenon_sizes, joint_name(index) + ": " + name + " is " + figure(measured) +
                                       ", said to be " + figure(said.steps()));
  }

  /// The mortise's figures, read off its cuts in the receiving piece's own axes.
  void compare_mortise(std::size_t index) {
    const Joint& joint = assembly_.joints[index];
    const MortiseSizes& said = *joint.mortise;
    const Piece& piece = assembly_.pieces[joint.receives];
    std::vector<Block> cuts;
    for (const Feature& feature : piece.features) {
      const auto& joints = feature.joints;
      const bool serves = std::find(joints.begin(), joints.end(), index) != joints.end();
      if (!serves || feature.kind != FeatureKind::mortise) continue;
      for (const Box& box : feature.cuts)
        cuts.push_back(block_of(box));
    }
    std::sort(cuts.begin(), cuts.end());
    if (cuts.size() != said.each.size() || cuts.empty()) {
      report(FaultKind::tenon_sizes, joint_name(index) + ": mortises said are not those cut");
      return;
    }
    for (std::size_t i = 0; i < cuts.size(); ++i) {
      same(index, "mortise from foot", cuts[i].low[0], said.each[i].from_foot);
      same(index, "mortise length", cuts[i].high[0] - cuts[i].low[0], said.each[i].length);
      same(index, "mortise width", cuts[i].high[2] - cuts[i].low[2], said.width);
      same(index, "mortise from face", cuts[i].low[2], said.from_face);
      const Steps deep = cuts[i].high[1] - cuts[i].low[1];
      if (deep != piece.blank[1].steps()) same(index, "mortise depth", deep, said.depth);
    }
    compare_from_shoulder(index, cuts.front().low[0]);
  }

  /// A rail's shoulder stands off its low end by its own tenon.
  void compare_from_shoulder(std::size_t index, Steps from_end) {
    const Joint& joint = assembly_.joints[index];
    for (const std::size_t i : joints_entering_with(joint.receives)) {
      const Joint& own = assembly_.joints[i];
      if (own.heading.upwards || !own.tenon) continue;
      const auto said = joint.mortise->from_shoulder;
      if (!said) {
        report(FaultKind::tenon_sizes, joint_name(index) + ": not told from the shoulder");
        return;
      }
      same(index, "mortise from shoulder", from_end - own.tenon->depth.steps(), *said);
    }
  }

  // ---- panels ----

  void measure_panel(std::size_t index, const View& view, const std::vector<Block>& tongues) {
    const Joint& joint = assembly_.joints[index];
    if (tongues.size() != 1) {
      report(FaultKind::panel_edges, joint_name(index) + ": the panel's edge is not one piece");
      return;
    }
    const Steps bite = view.end - view.edge;
    compare(index, "bite", bite, true, joint.design.bite, false);
    if (bite <= 0) {
      report(FaultKind::no_bite, joint_name(index) + ": the panel stands clear of its groove");
      return;
    }
    const Block seen = within_sight(joint, tongues.front());
    if (!has_volume(seen)) return;
    const bool broken =
        std::any_of(view.grooves.begin(), view.grooves.end(), [&](const Block& groove) {
          return has_volume(common(groove, seen)) && breaks_out(view, groove);
        });
    const Play cheeks = play(view.receiving, seen, 2);
    if (is_bedded(joint)) {
      measure_bed(index, view, seen, tongues.front());
      return;
    }
    const bool flat = assembly_.pieces[joint.enters].features.empty();
    if (flat && cheeks.even() && joint.design.cheeks &&
        *cheeks.total() > joint.design.cheeks->steps()) {
      report(FaultKind::thin_panel, joint_name(index) + ": cheeks " + figure(cheeks.total()));
    } else {
      compare(index, "cheeks", cheeks.total(), cheeks.even(), joint.design.cheeks, broken);
    }
    const Reach bottom = reach(view.receiving, seen, 0, true);
    compare(index, "bottom", bottom.nearest, bottom.even, joint.design.bottom, broken);
    corners_are_free(index, view, tongues.front());
  }

  /// A panel lies on its rebate over all that is seen of it, and has room to its bottom.
  void measure_bed(std::size_t index, const View& view, const Block& seen, const Block& tongue) {
    const Joint& joint = assembly_.joints[index];
    const Reach bed = reach(view.receiving, seen, 2, false);
    compare(index, "bearing", bed.nearest, bed.even, joint.design.bearing, false);
    const Reach bottom = reach(view.receiving, seen, 0, true);
    compare(index, "bottom", bottom.nearest, bottom.even, joint.design.bottom, false);
    corners_are_free(index, view, tongue);
  }

  Block within_sight(const Joint& joint, Block tongue) const {
    const std::size_t across = joint.heading.axis == Axis::x ? 1 : 0;
    const Rect& sight = sights_[joint.enters];
    tongue.low[1] = std::max(tongue.low[1], sight.low[across]);
    tongue.high[1] = std::min(tongue.high[1], sight.high[across]);
    return tongue;
  }

  /// In the corners other joints may leave it more room, but never less.
  void corners_are_free(std::size_t index, const View& view, const Block& tongue) {
    const auto& design = assembly_.joints[index].design.bottom;
    const Reach bottom = reach(view.receiving, tongue, 0, true);
    if (!design || !bottom.nearest || *bottom.nearest >= design->steps()) return;
    report(FaultKind::clearance,
           joint_name(index) + ": a corner has only " + figure(bottom.nearest));
  }

  // ---- the whole ----

  void no_wood_is_shared() {
    for (std::size_t a = 0; a < wood_.size(); ++a) {
      for (std::size_t b = a + 1; b < wood_.size(); ++b) {
        const Block both = common(wood_[a].blank, wood_[b].blank);
        if (!has_volume(both) || !share(a, b, both)) continue;
        report(meet_inside(a, b) ? FaultKind::meeting : FaultKind::shared_wood,
               mark(a) + " and " + mark(b) + " share wood");
      }
    }
  }

  bool share(std::size_t a, std::size_t b, const Block& where) const {
    const Piece& one = assembly_.pieces[a];
    const Piece& other = assembly_.pieces[b];
    if (has_slopes(one) || has_slopes(other)) return share_at_points(one, other);
    return share(wood_[a], wood_[b], where);
  }

  static bool share(const Wood& a, const Wood& b, const Block& where) {
    std::vector<Block> near;
    for (const Block& block : b.blocks) {
      if (has_volume(common(block, where))) near.push_back(block);
    }
    return std::any_of(a.blocks.begin(), a.blocks.end(), [&](const Block& mine) {
      return has_volume(common(mine, where)) &&
             std::any_of(near.begin(), near.end(),
                         [&](const Block& theirs) { return has_volume(common(mine, theirs)); });
    });
  }

  /// True when the two enter one piece from opposite edges, one with a tenon; or one comes right
  /// out of its piece.
  bool meet_inside(std::size_t a, std::size_t b) const {
    for (const std::size_t i : joints_entering_with(a)) {
      const Joint& one = assembly_.joints[i];
      for (const std::size_t j : joints_entering_with(b)) {
        const Joint& other = assembly_.joints[j];
        const bool opposite = one.receives == other.receives &&
                              one.heading.axis == other.heading.axis &&
                              one.heading.upwards != other.heading.upwards;
        if (opposite && !(is_panel(one) && is_panel(other))) return true;
      }
    }
    return comes_out(a) || comes_out(b);
  }

  bool comes_out(std::size_t piece) const {
    for (const std::size_t i : joints_entering_with(piece)) {
      const Joint& joint = assembly_.joints[i];
      const Block receiving = turned(wood_[joint.receives].blank, joint.heading);
      const Block entering = turned(wood_[joint.enters].blank, joint.heading);
      if (entering.high[0] > receiving.high[0]) return true;
    }
    return false;
  }

  void adds_up_to_size() {
    std::optional<Block> all;
    for (std::size_t i = 0; i < wood_.size(); ++i) {
      if (comes_out(i)) continue;
      if (wood_[i].role == Role::panel || wood_[i].role == Role::glass) {
        panel_stays_inside(i);
        continue;
      }
      for (const Block& block : wood_[i].blocks)
        all = all ? hull(*all, block) : block;
    }
    Block size;
    for (std::size_t i = 0; i < 3; ++i)
      size.high[i] = assembly_.size[i].steps();
    if (all != size) report(FaultKind::extent, "the frame does not add up to the size of the leaf");
    if (const Fit* opening = fit_in_opening(assembly_)) {
      // What the leaf reaches over its opening's edges, or short of them.
      const bool inset = opening->meets == Meets::inset;
      const Length across = inset ? -opening->room.across() : opening->lap.across();
      const Length upright = inset ? -opening->room.upright() : opening->lap.upright();
      const bool fits = opening->width + across == assembly_.size[0] &&
                        opening->height + upright == assembly_.size[1];
      if (!fits) report(FaultKind::extent, "leaf and clearances do not add up to the opening");
    }
  }

  void panel_stays_inside(std::size_t piece) {
    const Block& blank = wood_[piece].blank;
    for (std::size_t axis = 0; axis < 3; ++axis) {
      if (blank.low[axis] >= 0 && blank.high[axis] <= assembly_.size[axis].steps()) continue;
      report(axis == 2 ? FaultKind::proud : FaultKind::extent,
             mark(piece) + ": the panel stands out of the leaf");
    }
  }

  void face_is_whole() {
    for (const Joint& joint : assembly_.joints) {
      if (is_panel(joint) && (!joint.design.bite || joint.design.bite->steps() <= 0)) return;
    }
    std::vector<Rect> seen;
    for (const Wood& piece : wood_) {
      for (const Block& block : shadow(piece))
        seen.push_back(seen_along(block, 2));
    }
    const Rect face{{0, 0}, {assembly_.size[0].steps(), assembly_.size[1].steps()}};
    if (covered(face, seen)) return;
    report(a_face_is_broken() ? FaultKind::broken : FaultKind::hole,
           "one can see through the leaf");
  }

  /// True when a groove or mortise takes the face or back of its piece away.
  bool a_face_is_broken() const {
    for (const Piece& piece : assembly_.pieces) {
      for (const Feature& feature : piece.features) {
        if (feature.kind != FeatureKind::groove && feature.kind != FeatureKind::mortise) continue;
        for (const Box& cut : feature.cuts) {
          if (cut.low[2] <= Length() || cut.high[2] >= piece.blank[2]) return true;
        }
      }
    }
    return false;
  }

  /// The piece pressed flat, in fewer blocks.
  static std::vector<Block> shadow(const Wood& piece) {
    std::vector<Block> flat;
    if (std::find(piece.blocks.begin(), piece.blocks.end(), piece.blank) != piece.blocks.end()) {
      return {piece.blank};
    }
    for (Block block : piece.blocks) {
      block.low[2] = 0;
      block.high[2] = 1;
      flat.push_back(block);
    }
    std::sort(flat.begin(), flat.end());
    flat.erase(std::unique(flat.begin(), flat.end()), flat.end());
    return flat;
  }

  const Assembly& assembly_;
  std::vector<Wood> wood_;
  std::vector<Rect> sights_;  // of each panel, by piece
  std::vector<Fault> faults_;
};

}  // namespace

std::vector<Wood> wood_of(const Assembly& assembly) {
  std::vector<Wood> result;
  result.reserve(assembly.pieces.size());
  for (const Piece& piece : assembly.pieces)
    result.push_back(carve(piece));
  return result;
}

bool asked_for(FaultKind kind) {
  return kind >= FaultKind::meeting;
}

std::vector<Fault> judge(const Assembly& assembly) {
  return Judge(assembly).faults();
}

}  // namespace haunch::test
