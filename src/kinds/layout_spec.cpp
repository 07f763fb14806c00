#include "layout_spec.h"

#include <algorithm>

namespace haunch {
namespace {

constexpr int kMostNodes = 500;
constexpr int kDeepest = 12;
constexpr std::string_view kAnExample =
    R"({"columns": [{"width": 400, "front": "door"}, {"rows": […]}]})";

constexpr std::string_view kHasOne = "the cabinet has one";
constexpr std::string_view kHasIt = "the cabinet has it";
constexpr std::string_view kOfLeafAlone = "fits are forecast of a leaf alone: \"kind\": \"door\"";

/// What a front cannot say, and what does.
constexpr SaidElsewhere kOfTheCabinet[] = {
    {"kind", "what closes a part is its \"front\""},
    {"id", kHasOne},
    {"name", kHasOne},
    {"note", kHasOne},
    {"due", kHasOne},
    {"finish", kHasOne},
    {"extras", "the cabinet has them"},
    {"access", kHasOne},
    {"supply_only", "the cabinet says it"},
    {"mirror", "the whole cabinet is mirrored"},
    {"like", kHasOne},
    {"$schema", kHasOne},
    {"units", "the cabinet has them"},
    {"quantity", kHasIt},
    {"species", kHasIt},
    {"moisture", kHasIt},
    {"grain", kHasIt},
    {"woods", "the cabinet has them"},
    {"use", "it is a cabinet's"},
    {"opening", "the layout makes it"},
    {"clearance", "it is the fronts' \"gap\""},
    {"meets", "it is the fronts' \"meets\""},
    {"lap", "what bounds a part settles it"},
    {"leaves", "two leaves are \"front\": \"pair\""},
    {"meeting_clearance", "it is the fronts' \"gap\""},
    {"escape_route", kOfLeafAlone},
    {"accessible", kOfLeafAlone},
    {"existing_opening", kOfLeafAlone},
    {"work", kOfLeafAlone},
    {"tolerance", kOfLeafAlone},
    {"fit", kOfLeafAlone},
};

class LayoutReader {
 public:
  LayoutReader(ValueReader& read, NodesOf of) : read_(read), of_(of) {}

  LayoutNode read_node(const Value& value, const std::string& path, Division within, int depth);

 private:
  bool goes_on(const std::string& path, int depth);
  void read_nodes(const Value& list, LayoutNode& node, int depth);
  void doubt(const LayoutNode& node, const Value& value, Division within);
  void doubt_size(const LayoutNode& node, Key size, Key front, bool fits, std::string_view where);
  void grade(LayoutNode& node) const;

  ValueReader& read_;
  NodesOf of_;
  int nodes_ = 0;
};

/// As it is written in its object.
std::string_view last_of(Key key) {
  return key.path().substr(key.path().rfind('.') + 1);
}

/// Which keys a node may have: its own, and those of what closes it.
KeyScope scope_of(const Value& value, NodesOf of) {
  KeyScope scope{.of = kOfNode, .root = kNodeRoot, .within = R"({"shelves": {"count": …}})"};
  const Value* front = value.find("front");
  if (of == NodesOf::face_frame || front == nullptr) return scope;
  if (front->text == "door" || front->text == "pair") scope.of |= kOfDoor;
  if (front->text == "drawer") scope.of |= kOfDrawer;
  scope.other_root = "fronts.drawer.";
  scope.elsewhere = &said_by_cabinet();
  return scope;
}

bool LayoutReader::goes_on(const std::string& path, int depth) {
  if (++nodes_ == kMostNodes + 1)
    read_.problem(path, "a layout of more than 500 parts is not worked; make two pieces of it");
  if (depth > kDeepest)
    read_.problem(path, "is divided more than 12 deep; write it with fewer lists in each other");
  return nodes_ <= kMostNodes && depth <= kDeepest;
}

LayoutNode LayoutReader::read_node(const Value& value, const std::string& path, Division within,
                                   int depth) {
  LayoutNode node;
  node.path = path;
  if (!goes_on(path, depth)) return node;
  if (!read_.is_object(value, path, "a part of a layout; write such as " + std::string(kAnExample)))
    return node;
  read_keys(read_, value, path, scope_of(value, of_), node.said);
  for (const Division division : {Division::columns, Division::rows}) {
    const Value* list = value.find(division == Division::columns ? "columns" : "rows");
    if (list == nullptr) continue;
    node.division = division;
    read_nodes(*list, node, depth);
  }
  doubt(node, value, within);
  if (node.said["layout_node.grade"].stated && node.division == Division::none) grade(node);
  return node;
}

void LayoutReader::read_nodes(const Value& list, LayoutNode& node, int depth) {
  const std::string path =
      child_path(node.path, node.division == Division::columns ? "columns" : "rows");
  if (list.kind != Value::Kind::list || list.list.empty())
    return read_.wrong_type(list, path,
                            "a list of parts; write such as [{\"front\": \"door\"}, …]");
  node.nodes.clear();
  for (std::size_t i = 0; i < list.list.size(); ++i)
    node.nodes.push_back(read_node(list.list[i], child_path(path, i), node.division, depth + 1));
}

/// A size is said of the opening or of its front, and along the list alone.
void LayoutReader::doubt_size(const LayoutNode& node, Key size, Key front, bool fits,
                              std::string_view where) {
  for (const Key key : {size, front})
    if (node.said[key].stated && !fits)
      read_.problem(child_path(node.path, last_of(key)), std::string(where));
  if (fits && node.said[size].stated && node.said[front].stated)
    read_.problem(child_path(node.path, last_of(front)),
                  "says the same as the opening's own size; keep one of the two");
}

void LayoutReader::doubt(const LayoutNode& node, const Value& value, Division within) {
  const bool divided = node.division != Division::none;
  if (value.find("columns") != nullptr && value.find("rows") != nullptr)
    read_.problem(child_path(node.path, "rows"),
                  "a part is divided into columns or into rows; keep one of the two, and divide "
                  "its parts again");
  for (const Key key :
       std::initializer_list<Key>{"layout_node.front", "layout_node.shelves", "layout_node.grade"})
    if (divided && node.said[key].stated)
      read_.problem(child_path(node.path, last_of(key)),
                    "belongs in the parts of what is divided; take it out");
  if (!divided && node.said["layout_node.between"].stated && !node.said["layout_node.grade"].stated)
    read_.problem(child_path(node.path, "between"),
                  "stands between the parts of what is divided; this one is not");
  doubt_size(node, "layout_node.width", "layout_node.front_width", within == Division::columns,
             "only a part of columns has a width of its own; take it out");
  doubt_size(node, "layout_node.height", "layout_node.front_height", within == Division::rows,
             "only a part of rows has a height of its own; take it out");
}

/// Rows that grow, each closed as the node says.
void LayoutReader::grade(LayoutNode& node) const {
  LayoutNode row;
  row.path = node.path;
  row.said = node.said;
  for (const Key key :
       std::initializer_list<Key>{"layout_node.width", "layout_node.height",
                                  "layout_node.front_width", "layout_node.front_height",
                                  "layout_node.share", "layout_node.between", "layout_node.grade"})
    row.said.forget(key);
  const Length step = node.said.size("layout_node.grade.step").value_or(Length());
  node.division = Division::rows;
  for (int i = 0; i < node.said.count("layout_node.grade.count").value_or(0); ++i) {
    row.more = step * i;
    node.nodes.push_back(row);
  }
}

}  // namespace

bool is_said_by_cabinet(Key key_of_front) {
  return std::any_of(std::begin(kOfTheCabinet), std::end(kOfTheCabinet), [&](const auto& it) {
    return it.key == key_of_front || key_of_front.is_below(it.key);
  });
}

const std::vector<Elsewhere>& said_by_cabinet() {
  static const std::vector<Elsewhere> kElsewhere = elsewhere("a front of a cabinet", kOfTheCabinet);
  return kElsewhere;
}

LayoutNode read_layout(ValueReader& read, const Value& item, NodesOf of) {
  const Value* layout = item.find("layout");
  if (layout == nullptr) return {};
  return LayoutReader(read, of).read_node(*layout, "/layout", Division::none, 1);
}

}  // namespace haunch
