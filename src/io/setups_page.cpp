#include <algorithm>
#include <map>
#include <utility>

#include "machine_sets.h"
#include "order_marks.h"
#include "report_page.h"
#include "setups_places.h"
#include "setups_words.h"
#include "trial.h"

namespace haunch {
namespace {

/// What is true of pieces, each with their marks.
using MarksUnder = std::vector<std::pair<std::string, std::vector<std::string>>>;

std::vector<std::string>& marks_under(MarksUnder& all, const std::string& what) {
  const auto its =
      std::find_if(all.begin(), all.end(), [&](const auto& other) { return other.first == what; });
  if (its != all.end()) return its->second;
  return all.emplace_back(what, std::vector<std::string>()).second;
}

/// Lays out set-ups that follow on each other at one machine and do the same.
class SetupsPage {
 public:
  SetupsPage(const SetupsReport& report, const LengthPrinter& lengths)
      : report_(report), lengths_(lengths) {}

  SetupsText text() const {
    SetupsText text{head(), {}, cautions()};
    const auto& setups = report_.plan.setups;
    for (std::size_t first = 0; first < setups.size();) {
      std::size_t end = first + 1;
      while (end < setups.size() && go_together(setups[first], setups[end]))
        ++end;
      text.parts.push_back(block(first, end));
      first = end;
    }
    return text;
  }

 private:
  static bool go_together(const Setup& a, const Setup& b) {
    return a.machine == b.machine && a.operation() == b.operation();
  }

  bool is_one_item() const { return report_.items.size() == 1; }

  PageText head() const {
    std::string text;
    for (const ItemReport& item : report_.items)
      text += (text.empty() ? "" : ", ") + item.job->id +
              (item.job->quantity > 1 ? ", " + std::to_string(item.job->quantity) + " off" : "");
    const std::string count = std::to_string(report_.plan.setups.size());
    const PageText title =
        PageText::hanging(text + ": " + count + " set-ups, in the order of the work; sizes in " +
                              unit_words(lengths_.unit()),
                          0, lengths_.page_width());
    if (report_.shop.empty())
      return title + PageText::paragraph("no shop file tells of machines; usual ones are taken: " +
                                         machines());
    return title + PageText::paragraph("machines of " + report_.shop);
  }

  /// Those that something is run on.
  std::string machines() const {
    std::vector<std::string> names;
    for (const Setup& setup : report_.plan.setups)
      if (const std::string name = report_.machine_name(setup);
          std::find(names.begin(), names.end(), name) == names.end())
        names.push_back(name);
    std::string text;
    for (const std::string& name : names)
      text += (text.empty() ? "" : ", ") + name;
    return text;
  }

  PagePart block(std::size_t first, std::size_t end) const {
    const Setup& setup = report_.plan.setups[first];
    std::string title = operation_words(setup);
    std::transform(title.begin(), title.end(), title.begin(),
                   [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
    PagePart part{title + ", " + report_.machine_name(setup)};
    if (setup.pieces.front().runs.empty())
      part.body = sawing(first, end);
    else
      for (std::size_t number = first; number < end; ++number)
        part.body += joint(number);
    return part;
  }

  // ---- sawing, milling, glue-up

  PageText sawing(std::size_t first, std::size_t end) const {
    TextTable table({"", "set to", "first piece", "pieces"});
    for (std::size_t number = first; number < end; ++number) {
      const Setup& setup = report_.plan.setups[number];
      const bool limited = setup.first_piece && setup.first_piece->least;
      const bool glued = setup.step == Step::together;
      table.add({Cell::of_name(setup_id(number)),
                 glued ? group_of(setup.pieces.front()) : settings_text(setup.settings, lengths_),
                 limited ? first_piece_text(*setup.first_piece, lengths_) : "",
                 Cell::of_mark(marks_of_all(setup))});
    }
    return PageText::table(table, lengths_, 2) + rest(report_.plan.setups[end - 1]) +
           findings(first, end);
  }

  /// "leaf", "drawer 2"
  std::string group_of(const SetupPiece& piece) const {
    return group_name(report_.item_of(piece).wood.groups[report_.piece_of(piece).group]);
  }

  static PageText rest(const Setup& setup) {
    if (setup.rest_days == 0) return {};
    return PageText::paragraph("then let all rest in stick, " + std::to_string(setup.rest_days) +
                               (setup.rest_days == 1 ? " day" : " days") + " at least");
  }

  std::string marks_of_all(const Setup& setup) const {
    std::vector<std::string> marks;
    for (const SetupPiece& piece : setup.pieces)
      add_once(marks, mark_of(piece) + (piece.strips > 1 ? strips_text(piece.strips) : ""));
    return joined(marks);
  }

  static std::string strips_text(std::size_t strips) {
    return " (" + std::to_string(strips) + " strips)";
  }

  /// "A"; of several items "K1/A", of several alike of one "K1/A x3".
  std::string mark_of(const SetupPiece& piece) const {
    const std::string& mark = report_.piece_of(piece).mark;
    if (is_one_item()) return mark;
    const std::int64_t count = report_.count_of(piece);
    return order_mark(report_.item_of(piece).job->id, mark) +
           (count > 1 ? " x" + std::to_string(count) : "");
  }

  // ---- joints, edges, holes

  PageText joint(std::size_t number) const {
    const Setup& setup = report_.plan.setups[number];
    std::string line = settings_text(setup, lengths_);
    if (const std::string cutter = report_.cutter_name(setup); !cutter.empty())
      line += "; " + cutter;
    if (setup.passes > 1) line += ", " + std::to_string(setup.passes) + " passes";
    PageText text = PageText::named(setup_id(number), line) + holding(setup);
    if (setup.first_piece && setup.first_piece->least)
      text +=
          PageText::paragraph("first piece: " + first_piece_text(*setup.first_piece, lengths_), 4);
    text += trial(setup);
    TextTable table({"piece", "worked", "from", "places"});
    for (const SetupPiece& piece : setup.pieces)
      add_rows(table, setup, piece);
    return text + PageText::table(table, lengths_, 4) + second_faces(setup) + horns(setup) +
           findings(number, number + 1);
  }

  /// Of a joint whose readings 'haunch trial' takes.
  PageText trial(const Setup& setup) const {
    const SetupPiece& piece = setup.pieces.front();
    const auto joint = piece.runs.front().joint;
    const bool has_trial = setup.first_piece && setup.first_piece->size == SizeName::thickness &&
                           joint && joint_design(report_.item_of(piece).wood, *joint);
    if (!has_trial) return {};
    return PageText::paragraph("trial cut before the run: haunch trial, joint " + joint_id(*joint) +
                                   (is_one_item() ? "" : " of " + report_.item_of(piece).job->id),
                               4);
  }

  PageText holding(const Setup& setup) const {
    const Holding* held = report_.holding_of(setup);
    if (held == nullptr) return {};
    std::vector<std::string> ways;
    for (const SetupPiece& piece : setup.pieces) {
      const Run& run = piece.runs.front();
      const DatumSide datum = datum_side(report_.item_of(piece).wood, run, setup.settings);
      add_once(ways, holding_text(*held, run.side.into == 2, datum.name));
    }
    std::string text = held->name;
    for (const std::string& way : ways)
      text += "; " + way;
    return PageText::hanging(text, 4);
  }

  void add_rows(TextTable& table, const Setup& setup, const SetupPiece& piece) const {
    for (const PlacesTold& told : places_of(report_, setup, piece, lengths_))
      table.add_alike({Cell::of_mark(mark_of(piece)), told.worked, told.zero, told.places});
  }

  PageText second_faces(const Setup& setup) const {
    std::map<std::string, Marks> told;
    for (const SetupPiece& piece : setup.pieces)
      if (piece.second_face)
        add_once(told["measure what the first has left; set the depth to that less " +
                      lengths_.fine().one(piece.second_face->leaves) + ", but to no more than " +
                      lengths_.one(piece.second_face->most)],
                 mark_of(piece));
    PageText text;
    for (const auto& [rule, marks] : told)
      text += PageText::hanging("second face of " + joined(marks) + ": " + rule, 4);
    return text;
  }

  /// Of all pieces where they are equally long, else by their marks.
  PageText horns(const Setup& setup) const {
    MarksUnder all;
    bool on_all = true;
    for (const SetupPiece& piece : setup.pieces) {
      on_all = on_all && piece.horn > Length();
      if (piece.horn == Length()) continue;
      const std::string what =
          "the " + std::string(is_upright(report_.piece_of(piece)) ? "foot" : "left end") + " is " +
          lengths_.one(piece.horn) + " in from the end that is sawn";
      add_once(marks_under(all, what), mark_of(piece));
    }
    PageText text;
    for (const auto& [what, marks] : all)
      text += PageText::hanging("horns are still on" +
                                    (on_all && all.size() == 1 ? "" : " " + joined(marks)) + ": " +
                                    what,
                                4);
    return text;
  }

  PageText findings(std::size_t first, std::size_t end) const {
    PageText text;
    for (std::size_t number = first; number < end; ++number)
      for (const auto& [what, marks] : findings_of(report_.plan.setups[number]))
        text +=
            PageText::about(marks, "FAIL " + setup_id(number) + " " + joined(marks) + ": " + what);
    return text;
  }

  /// What stands against a set-up, each with the marks of all pieces that it is true of.
  MarksUnder findings_of(const Setup& setup) const {
    MarksUnder all;
    for (const SetupPiece& piece : setup.pieces)
      for (const WayFinding& finding : piece.findings) {
        const std::string what = finding_text(finding, lengths_);
        add_once(marks_under(all, what), mark_of(piece));
      }
    return all;
  }

  PageText cautions() const {
    return PageText::paragraph(
        "Guards on, dust drawn off, work held; try each set-up in scrap of the same thickness "
        "first. What stands here orders the work; it does not make a machine safe: its maker's "
        "book and the rules of the place decide.",
        0, lengths_.page_width());
  }

  const SetupsReport& report_;
  const LengthPrinter& lengths_;
};

}  // namespace

SetupsText setups_text(const SetupsReport& report, const LengthPrinter& lengths) {
  return SetupsPage(report, lengths).text();
}

std::string setups_page(const SetupsReport& report, const LengthPrinter& lengths) {
  const SetupsText text = setups_text(report, lengths);
  return text.head.text() + text_of(text.parts) +
         (report.tally.refused > 0 ? "\n" + not_here(report.tally) : "") + "\n" +
         text.cautions.text();
}

}  // namespace haunch
