#include "extras.h"

#include <algorithm>
#include <utility>

#include "choices.h"
#include "marks.h"
#include "materials.h"
#include "round_bore.h"
#include "rounding.h"

namespace haunch {
namespace {

constexpr std::size_t kLength = 0, kWidth = 1, kThickness = 2;

/// Of a piece that lies before one, face up.
bool is_end(Surface side) {
  return side == Surface::left || side == Surface::right;
}
bool is_edge(Surface side) {
  return side == Surface::lower || side == Surface::upper;
}

/// The piece's own axis across a side, and whether the side is at the high end of it.
std::size_t axis_of(Surface side) {
  if (is_end(side)) return kLength;
  return is_edge(side) ? kWidth : kThickness;
}
bool is_high(Surface side) {
  return side == Surface::right || side == Surface::upper || side == Surface::back;
}

/// The axis that `from` is told along, from its low end.
std::size_t axis_of_from(Surface in) {
  return in == Surface::face || in == Surface::back ? kWidth : kThickness;
}

Length or_none(std::optional<Length> size) {
  return size.value_or(Length());
}

// ---- what a spec says

/// A quarter round is as deep as wide below its fillet; a bead as high as half of what its quirk
/// leaves of its width.
EdgeDesign design_of(const KeyValues& item) {
  EdgeDesign design;
  design.kind = EdgeKind::coped;
  design.profile = item.word<Moulding>("extras[].edges[].profile").value_or(Moulding::bevel);
  design.faces = item.word<MouldedFaces>("extras[].edges[].faces").value_or(MouldedFaces::front);
  design.width = or_none(item.size("extras[].edges[].width"));
  const bool bead = design.profile == Moulding::bead;
  design.fillet =
      item.size("extras[].edges[].fillet")
          .value_or(bead ? nearest_step(static_cast<double>(design.width.steps()) / 4) : Length());
  const Length usual =
      bead ? floor_half(design.width - design.fillet) : design.width + design.fillet;
  design.depth = item.size("extras[].edges[].depth").value_or(usual);
  return design;
}

ExtraEdge edge_of(const KeyValues& item) {
  const auto edge = item.word<Surface>("extras[].edges[].edge").value_or(Surface::lower);
  return {edge == Surface::upper ? Edge::high : Edge::low, design_of(item)};
}

ExtraCut cut_of(const KeyValues& item, const Triple& size) {
  ExtraCut cut;
  cut.kind = item.word<ExtraCutKind>("extras[].cuts[].cut").value_or(ExtraCutKind::groove);
  cut.in = item.word<Surface>("extras[].cuts[].in").value_or(Surface::face);
  const bool mitre = cut.kind == ExtraCutKind::mitre;
  cut.along = mitre ? item.word<Surface>("extras[].cuts[].longer").value_or(Surface::lower)
                    : item.word<Surface>("extras[].cuts[].along").value_or(Surface::lower);
  cut.start = or_none(item.size("extras[].cuts[].at"));
  cut.length = or_none(item.size("extras[].cuts[].length"));
  const bool hole = cut.kind == ExtraCutKind::hole;
  cut.width =
      or_none(hole ? item.size("extras[].cuts[].diameter") : item.size("extras[].cuts[].width"));
  const Length middle = floor_half(size[axis_of_from(cut.in)]);
  cut.from = item.size("extras[].cuts[].from").value_or(hole ? middle : Length());
  cut.depth = or_none(item.size("extras[].cuts[].depth"));
  return cut;
}

Triple size_of_extra(const KeyValues& item) {
  return {or_none(item.size("extras[].length")), or_none(item.size("extras[].width")),
          or_none(item.size("extras[].thickness"))};
}

// ---- its wood

/// The box of what goes so deep into a side.
Box in_side(const Triple& size, Surface in, Length depth) {
  Box box{{}, size};
  const std::size_t axis = axis_of(in);
  if (is_high(in))
    box.low[axis] = size[axis] - depth;
  else
    box.high[axis] = depth;
  return box;
}

Box groove_box(const ExtraCut& cut, const Triple& size) {
  Box box = in_side(size, cut.in, cut.depth);
  const std::size_t across = axis_of_from(cut.in);
  box.low[across] = cut.from;
  box.high[across] = cut.from + cut.width;
  box.low[kLength] = cut.start;
  box.high[kLength] = cut.length > Length() ? cut.start + cut.length : size[kLength];
  return box;
}

/// Along an edge or an end.
Box rebate_box(const ExtraCut& cut, const Triple& size) {
  Box box = in_side(size, cut.in, cut.depth);
  const Box beside = in_side(size, cut.along, cut.width);
  const std::size_t axis = axis_of(cut.along);
  box.low[axis] = beside.low[axis];
  box.high[axis] = beside.high[axis];
  return box;
}

Box hole_box(const ExtraCut& cut, const Triple& size) {
  const Length depth = cut.depth > Length() ? cut.depth : size[axis_of(cut.in)];
  Box box = in_side(size, cut.in, depth);
  const Length radius = floor_half(cut.width);
  const std::size_t across = axis_of_from(cut.in);
  // In an end it is told along the width, as a groove's place is along the length elsewhere.
  const std::size_t along = is_end(cut.in) ? kWidth : kLength;
  box.low[across] = cut.from - radius;
  box.high[across] = box.low[across] + cut.width;
  box.low[along] = cut.start - radius;
  box.high[along] = box.low[along] + cut.width;
  return box;
}

/// Half a square, from the longer side on: as long as the piece is wide (or thick).
Prism mitre_prism(const ExtraCut& cut, const Triple& size) {
  const bool flat = is_edge(cut.along);
  const Length deep = size[flat ? kWidth : kThickness];
  const Length end = cut.in == Surface::right ? size[kLength] : Length();
  const Length in = cut.in == Surface::right ? end - deep : deep;
  const Length longer = is_high(cut.along) ? deep : Length();
  const Length shorter = deep - longer;
  Prism prism;
  prism.along = flat ? kThickness : kWidth;
  prism.to = size[prism.along];
  prism.outline = {{end, longer}, {end, shorter}, {in, shorter}};
  return prism;
}

Box box_of(const ExtraCut& cut, const Triple& size) {
  switch (cut.kind) {
    case ExtraCutKind::groove:
      return groove_box(cut, size);
    case ExtraCutKind::rebate:
      return rebate_box(cut, size);
    default:
      return hole_box(cut, size);
  }
}

Feature feature_of(const ExtraCut& cut, const Triple& size) {
  if (cut.kind == ExtraCutKind::mitre) {
    const Prism prism = mitre_prism(cut, size);
    const Length wide = size[is_edge(cut.along) ? kWidth : kThickness];
    return {FeatureKind::mitre, {}, {}, {{SizeName::width, wide}}, {prism}};
  }
  const Box box = box_of(cut, size);
  const SizeName place = axis_of_from(cut.in) == kWidth ? SizeName::from_edge : SizeName::from_face;
  if (cut.kind == ExtraCutKind::hole) {
    const std::size_t along = axis_of(cut.in);
    return {FeatureKind::bore,
            {},
            {},
            {{SizeName::diameter, cut.width},
             {SizeName::depth, box.extent(along)},
             {SizeName::from_foot, cut.start},
             {place, cut.from}},
            {round_hole(box, along, bore_corners(cut.width))}};
  }
  const bool groove = cut.kind == ExtraCutKind::groove;
  Feature feature{groove ? FeatureKind::groove : FeatureKind::rebate,
                  {},
                  {box},
                  {{SizeName::width, cut.width}, {SizeName::depth, cut.depth}}};
  if (groove) feature.sizes.push_back({place, cut.from});
  return feature;
}

std::size_t add_extra(Assembly& wood, const ExtraSpec& extra, int number, Length right,
                      Length low) {
  const std::string name =
      extra.quantity > 1 ? extra.name + " " + std::to_string(number) : extra.name;
  const std::size_t piece = add_piece(wood, name, Role::extra, extra.size, {{right, low, {}}});
  Piece& its = wood.pieces[piece];
  its.group = wood.groups.size() - 1;
  its.material = extra.material;
  its.matter = is_sheet_goods(extra.material) ? Matter::board : Matter::wood;
  its.key = "extras/" + in_key(name);
  for (const ExtraEdge& edge : extra.edges)
    stick(wood, piece, edge.edge, edge.design);
  for (const ExtraCut& cut : extra.cuts)
    wood.pieces[piece].features.push_back(feature_of(cut, extra.size));
  return piece;
}

}  // namespace

std::vector<ExtraSpec> extras_of(const KeyValues& spec) {
  std::vector<ExtraSpec> extras;
  for (const KeyValues& item : spec["extras"].items) {
    ExtraSpec extra{item.text("extras[].name"),
                    item.count("extras[].quantity").value_or(1),
                    size_of_extra(item),
                    item.text("extras[].material"),
                    {},
                    {}};
    for (const KeyValues& edge : item["extras[].edges"].items)
      extra.edges.push_back(edge_of(edge));
    for (const KeyValues& cut : item["extras[].cuts"].items)
      extra.cuts.push_back(cut_of(cut, extra.size));
    extras.push_back(std::move(extra));
  }
  return extras;
}

namespace {

/// Tells what of one extra cannot be.
class ExtraCheck {
 public:
  ExtraCheck(ValueReader& read, const Value& written, const KeyValues& item, std::string path)
      : read_(read), written_(written), item_(item), path_(std::move(path)) {}

  void all() {
    for (const Length size : size_)
      if (size == Length()) return;  // told of already
    each("edges", "extras[].edges",
         [&](const KeyValues& item, const Value&, const std::string& at) {
           edge(edge_of(item).design, at);
         });
    each("cuts", "extras[].cuts",
         [&](const KeyValues& item, const Value& value, const std::string& at) {
           if (item["extras[].cuts[].cut"].stated && item["extras[].cuts[].in"].stated)
             cut(cut_of(item, size_), value, at);
         });
  }

 private:
  template <typename Check>
  void each(std::string_view name, Key key, Check check) {
    const Value* list = written_.find(name);
    const std::vector<KeyValues>& items = item_[key].items;
    if (list == nullptr || list->list.size() != items.size()) return;
    for (std::size_t i = 0; i < items.size(); ++i)
      if (list->list[i].kind == Value::Kind::object)
        check(items[i], list->list[i], child_path(child_path(path_, name), i));
  }

  void edge(const EdgeDesign& design, const std::string& at) {
    const bool both = design.faces == MouldedFaces::both;
    const bool round = design.profile == Moulding::ovolo || design.profile == Moulding::cove;
    if (design.width >= size_[kWidth])
      read_.problem(at, "the moulding is as wide as its piece; make it narrower");
    else if (design.depth * (both ? 2 : 1) > size_[kThickness])
      read_.problem(at, "the moulding is deeper than its piece is thick; make it less deep");
    else if (round && design.depth != design.width + design.fillet)
      read_.problem(at,
                    "a quarter round is as deep as it is wide, below its fillet; leave "
                    "\"depth\" out");
    else if (design.profile == Moulding::bead && design.depth * 2 + design.fillet != design.width)
      read_.problem(at,
                    "a bead is half as deep as what its quirk leaves of its width; leave "
                    "\"depth\" out");
  }

  void cut(const ExtraCut& its, const Value& value, const std::string& at) {
    const std::size_t problems = told_;
    for (const std::string_view key : needed_of(its.kind))
      if (value.find(key) == nullptr)
        tell(at, "\"" + std::string(key) + "\" is missing; a " + std::string(word_of(its.kind)) +
                     " has one");
    for (const std::string_view key : foreign_to(its.kind))
      if (value.find(key) != nullptr)
        tell(child_path(at, key), "a " + std::string(word_of(its.kind)) + " has none; take it out");
    if (told_ > problems) return;
    if (its.kind == ExtraCutKind::mitre)
      mitre(its, at);
    else if (its.kind == ExtraCutKind::rebate && axis_of(its.in) == axis_of(its.along))
      tell(at, "a rebate lies between two sides that meet; \"along\" is another than \"in\"");
    else if (its.kind == ExtraCutKind::groove && is_end(its.in))
      tell(at,
           "a groove runs along a face or an edge; write \"face\", \"back\", \"lower\" or "
           "\"upper\"");
    else
      within(box_of(its, size_), at);
  }

  static std::vector<std::string_view> needed_of(ExtraCutKind kind) {
    switch (kind) {
      case ExtraCutKind::groove:
        return {"width", "depth", "from"};
      case ExtraCutKind::rebate:
        return {"width", "depth", "along"};
      case ExtraCutKind::hole:
        return {"diameter", "at"};
      case ExtraCutKind::mitre:
        return {"longer"};
    }
    return {};
  }

  static std::vector<std::string_view> foreign_to(ExtraCutKind kind) {
    switch (kind) {
      case ExtraCutKind::groove:
        return {"diameter", "along", "longer"};
      case ExtraCutKind::rebate:
        return {"diameter", "at", "from", "length", "longer"};
      case ExtraCutKind::hole:
        return {"width", "length", "along", "longer"};
      case ExtraCutKind::mitre:
        return {"width", "length", "along", "diameter", "depth", "at", "from"};
    }
    return {};
  }

  void mitre(const ExtraCut& its, const std::string& at) {
    if (!is_end(its.in))
      tell(at, "a mitre is cut on an end; write \"left\" or \"right\"");
    else if (size_[is_edge(its.along) ? kWidth : kThickness] > size_[kLength])
      tell(at, "the mitre is longer than its piece; turn the piece, or make it longer");
  }

  void within(const Box& box, const std::string& at) {
    for (std::size_t axis = 0; axis < 3; ++axis)
      if (box.low[axis] < Length() || box.high[axis] > size_[axis] ||
          box.low[axis] >= box.high[axis])
        return tell(at, "reaches beyond its piece; make it less, or move it");
    if (box == Box{{}, size_}) tell(at, "takes all of its piece away; make it less");
  }

  void tell(std::string at, std::string message) {
    ++told_;
    read_.problem(std::move(at), std::move(message));
  }

  ValueReader& read_;
  const Value& written_;
  const KeyValues& item_;
  const std::string path_;
  const Triple size_ = size_of_extra(item_);
  std::size_t told_ = 0;
};

}  // namespace

void check_extra(ValueReader& read, const Value& extra, const KeyValues& item,
                 const std::string& path) {
  ExtraCheck(read, extra, item, path).all();
}

ExtraSpec turned_about(ExtraSpec extra) {
  for (ExtraCut& cut : extra.cuts) {
    for (Surface* side : {&cut.in, &cut.along})
      if (is_end(*side)) *side = *side == Surface::left ? Surface::right : Surface::left;
    if (cut.kind == ExtraCutKind::hole && !is_end(cut.in))
      cut.start = extra.size[kLength] - cut.start;
    if (cut.kind == ExtraCutKind::groove) {
      const Length length = cut.length > Length() ? cut.length : extra.size[kLength] - cut.start;
      cut.start = extra.size[kLength] - cut.start - length;
      cut.length = length;
    }
  }
  return extra;
}

void lay_beside(Assembly& wood, const std::vector<ExtraSpec>& extras) {
  if (extras.empty()) return;
  constexpr Length kRoom = Length::from_mm(100);
  wood.groups.push_back({GroupKind::extras, "extras", std::size_t{0}, {}});
  Length low;
  for (const ExtraSpec& extra : extras)
    for (int number = 1; number <= extra.quantity; ++number) {
      add_extra(wood, extra, number, wood.size[0] + kRoom, low);
      low += extra.size[kWidth] + kRoom;
    }
}

std::string extra_name(const Piece& piece) {
  std::string name = piece.name;
  const std::size_t last = name.find_last_not_of("0123456789");
  if (last != std::string::npos && last + 1 < name.size() && name[last] == ' ') name.erase(last);
  return name;
}

}  // namespace haunch
