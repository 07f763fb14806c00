#include "together_page.h"

#include <algorithm>
#include <utility>

#include "cabinet_work.h"

namespace haunch {
namespace {

constexpr std::string_view kSection = "PUTTING TOGETHER";

// ---- diagonals

/// "case outside 1247.5; drawer 2, drawer 3 572.9"
std::string diagonals_text(const std::vector<Rectangle>& all, const LengthPrinter& lengths) {
  struct Told {
    std::string what, figures;
  };
  std::vector<Told> told;
  for (const Rectangle& its : all) {
    const std::string figures = lengths.one(its.diagonal());
    const auto same = std::find_if(told.begin(), told.end(),
                                   [&](const Told& it) { return it.figures == figures; });
    if (same == told.end())
      told.push_back({its.what, figures});
    else
      same->what += ", " + its.what;
  }
  std::string text;
  for (const Told& its : told)
    text += (text.empty() ? "" : "; ") + its.what + " " + its.figures;
  return text;
}

// ---- the order

std::string_view from_where(const Heading& move) {
  constexpr std::string_view kFrom[][2] = {{"from the right", "from the left"},
                                           {"from above", "from below"},
                                           {"from behind", "from the front"}};
  return kFrom[static_cast<std::size_t>(move.axis)][move.upwards ? 1 : 0];
}

/// "box front" of "drawer 1, box front".
std::string own_name(const Piece& piece) {
  const std::size_t comma = piece.name.find(", ");
  return comma == std::string::npos ? piece.name : piece.name.substr(comma + 2);
}

/// "drawers 1 2 3, door 1" of groups, whose names may end in a number.
std::string group_names(const Assembly& wood, const std::vector<std::size_t>& groups) {
  std::string text;
  std::string last;
  std::size_t begins = 0;  // of the last kind
  for (const std::size_t group : groups) {
    const std::string name = group_name(wood.groups[group]);
    const std::size_t space = name.rfind(' ');
    const std::string kind = name.substr(0, space);
    if (space == std::string::npos || kind != last) {
      text += text.empty() ? "" : ", ";
      begins = text.size() + kind.size();
      text += name;
    } else {
      if (text.compare(begins, 1, "s") != 0) text.insert(begins, "s");
      text += name.substr(space);
    }
    last = space == std::string::npos ? "" : kind;
  }
  return text;
}

class OrderWords {
 public:
  OrderWords(const Assembly& wood, const GroupOrder& order, bool names)
      : wood_(wood), order_(order), names_(names) {}

  std::string text() const {
    std::string text;
    for (std::size_t step = 0; step < order_.steps.size();) {
      const AssemblyStep& first = order_.steps[step];
      if (first.how == StepHow::laid_in) break;
      std::string what = called(first);
      for (++step; step < order_.steps.size() && goes_like(first, order_.steps[step]); ++step)
        what += (names_ ? ", " : " ") + called(order_.steps[step]);
      text += (text.empty() ? "" : "; ") + what + way_of(first);
    }
    return text + closed_in() + stuck();
  }

 private:
  static bool goes_like(const AssemblyStep& a, const AssemblyStep& b) {
    if (a.how != b.how || a.move.has_value() != b.move.has_value()) return false;
    return a.how == StepHow::fixed_on || !a.move ||
           (a.move->axis == b.move->axis && a.move->upwards == b.move->upwards);
  }

  /// Of a leaf or a face frame, which lies flat before one, not from where.
  bool lies_flat() const {
    const GroupKind kind = wood_.groups[order_.group].kind;
    return kind == GroupKind::leaf || kind == GroupKind::face_frame;
  }

  std::string way_of(const AssemblyStep& step) const {
    if (step.how == StepHow::fixed_on) return " fixed on";
    if (!step.move) return {};
    const std::string slid = step.how == StepHow::slides ? " slid in" : "";
    return lies_flat() ? slid : slid + " " + std::string(from_where(*step.move));
  }

  std::string called(std::size_t piece) const {
    return names_ ? own_name(wood_.pieces[piece]) : wood_.pieces[piece].mark;
  }
  std::string called(const AssemblyStep& step) const {
    if (step.pieces.size() == 1) return called(step.pieces.front());
    return group_name(wood_.groups[wood_.pieces[step.pieces.front()].group]);
  }

  std::string closed_in() const {
    std::string text;
    for (const ClosedIn& its : order_.closed_in)
      text += "; " + called(its.panel) + " must be in before " + called(order_.steps[its.step]) +
              " closes it";
    return text;
  }

  std::string stuck() const {
    if (order_.stuck.empty()) return {};
    std::string text = order_.steps.empty() ? "" : "; ";
    text += "CANNOT BE CLOSED one piece after the other:";
    for (const std::size_t piece : order_.stuck)
      text += " " + wood_.pieces[piece].mark;
    return text + " hold each other";
  }

  const Assembly& wood_;
  const GroupOrder& order_;
  bool names_;
};

/// What is put in when all else stands: what is laid in, then what slides, then what swings.
std::string last_text(const Assembly& wood) {
  std::string text;
  for (const Piece& piece : wood.pieces)
    if (piece.loose && piece.role == Role::shelf) text += (text.empty() ? "" : " ") + piece.mark;
  std::vector<std::size_t> groups;
  const auto add_moving = [&](auto moves) {
    for (const Fit& fit : wood.fits)
      if (moves(fit) && wood.groups[fit.group].in) groups.push_back(fit.group);
  };
  add_moving([](const Fit& fit) { return std::holds_alternative<Slide>(fit.moves); });
  add_moving([](const Fit& fit) { return std::holds_alternative<Swing>(fit.moves); });
  return text + (text.empty() || groups.empty() ? "" : ", ") + group_names(wood, groups);
}

bool has_kind(const Assembly& wood, GroupKind kind) {
  return std::any_of(wood.groups.begin(), wood.groups.end(),
                     [kind](const Group& it) { return it.kind == kind; });
}

}  // namespace

std::string hardware_text(const std::vector<Hardware>& all, const LengthPrinter& lengths) {
  std::string text;
  for (const Hardware& its : all) {
    std::string what = its.what;
    if (const std::size_t end = what.find("s "); its.number == 1 && end != std::string::npos)
      what.erase(end, 1);
    text += (text.empty() ? "" : "; ") + std::to_string(its.number) + " " + what;
    if (its.size) text += " " + lengths.one(*its.size);
  }
  return text;
}

/// Whether some face frame of a run is before several of its cases.
bool spans_cases(const Assembly& wood) {
  return std::any_of(wood.groups.begin() + 1, wood.groups.end(), [&](const Group& group) {
    return group.kind == GroupKind::face_frame &&
           wood.groups[group.in.value_or(0)].kind == GroupKind::run;
  });
}

std::vector<std::string> order_lines(const Assembly& wood, const std::vector<GroupOrder>& orders) {
  std::vector<std::string> lines;
  std::vector<bool> told(orders.size());
  for (std::size_t first = 0; first < orders.size(); ++first) {
    if (told[first]) continue;
    const std::string by_names = OrderWords(wood, orders[first], true).text();
    std::vector<std::size_t> who{orders[first].group};
    for (std::size_t other = first + 1; other < orders.size(); ++other) {
      if (OrderWords(wood, orders[other], true).text() != by_names) continue;
      told[other] = true;
      who.push_back(orders[other].group);
    }
    lines.push_back(group_names(wood, who) + ": " +
                    (who.size() == 1 ? OrderWords(wood, orders[first], false).text() : by_names));
  }
  std::string then =
      has_kind(wood, GroupKind::carcase) && has_kind(wood, GroupKind::face_frame)
          ? spans_cases(wood) ? "each face frame on its cases; " : "the face frame on the case; "
          : "";
  if (const std::string last = last_text(wood); !last.empty()) then += "once it is level " + last;
  if (!then.empty()) lines.push_back("then " + then);
  return lines;
}

PageParts together_page(const ItemReport& report, const LengthPrinter& lengths) {
  const Together& its = report.together;
  if (its.rectangles.empty()) return {};
  PageParts page;
  if (!its.hardware.empty())
    page.push_back({"HARDWARE for one", PageText::hanging(hardware_text(its.hardware, lengths))});
  page.push_back({"DIAGONALS, both alike to a thousandth of them while the glue is wet",
                  PageText::hanging(diagonals_text(its.rectangles, lengths))});
  PageText order;
  for (const std::string& line : order_lines(report.wood, its.orders))
    order += PageText::hanging(line);
  page.push_back({"ORDER of putting together, and from where", order});
  for (PagePart& part : page) {
    if (is_cabinet_work(report.wood)) part.section = kSection;
    if (part.body.blocks().size() == 1) join_first_line(part, lengths.page_width());
  }
  return page;
}

}  // namespace haunch
