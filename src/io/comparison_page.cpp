#include "comparison_page.h"

#include <algorithm>
#include <iterator>

#include "machine_sets.h"
#include "page_part.h"
#include "report_page.h"
#include "setups_words.h"

namespace haunch {
namespace {

constexpr std::string_view kTo = " → ";

// ---- words

std::string with_blanks(std::string_view word) {
  std::string text(word);
  std::replace(text.begin(), text.end(), '-', ' ');
  std::replace(text.begin(), text.end(), '_', ' ');
  return text;
}

std::string counted(std::size_t number, const std::string& one, const std::string& several) {
  return std::to_string(number) + " " + (number == 1 ? one : several);
}

void add_to_list(std::string& list, std::string_view text, std::string_view between = ", ") {
  if (!list.empty() && !text.empty()) list += between;
  list += text;
}

/// Words that several changes share, and the marks of all of them.
struct Line {
  std::string head, text;
  Marks marks, others = {};
  Role part = Role::stile;
  std::string called = {};
  std::size_t number = 1;
};

// ---- figures

/// Finer where the two would read alike.
LengthPrinter fine_enough(const LengthPrinter& lengths, Length was, Length is) {
  if (lengths.one(was) != lengths.one(is)) return lengths;
  const LengthPrinter fine = lengths.fine();
  return fine.one(was) != fine.one(is) ? fine : lengths.exact();
}

/// "(+20)": what the figures before it differ by, as they are printed.
std::string by_text(Length was, Length is, const LengthPrinter& lengths) {
  const Length by = lengths.as_printed(is) - lengths.as_printed(was);
  return std::string("(") + (by > Length() ? "+" : "") + lengths.one(by) + ")";
}

/// "840 → 860 long (+20)"; of a figure that only one has, "none → 860 long".
std::string figure_text(const FigureChange& change, const std::string& words,
                        const LengthPrinter& lengths) {
  const std::string behind = words.empty() ? "" : " " + words;
  if (!change.was) return std::string("none") + std::string(kTo) + lengths.one(*change.is) + behind;
  if (!change.is) return lengths.one(*change.was) + std::string(kTo) + "none" + behind;
  const LengthPrinter printer = fine_enough(lengths, *change.was, *change.is);
  return printer.one(*change.was) + std::string(kTo) + printer.one(*change.is) + behind + " " +
         by_text(*change.was, *change.is, printer);
}

/// "14.5 → 6 from the face side (-8.5)", "pitch 32 → 25 (-7)"
std::string setting_figure_text(const FigureChange& change, const LengthPrinter& lengths) {
  for (std::size_t name = 0; name < std::size(kWords<SizeName>); ++name) {
    if (kWords<SizeName>[name] != change.what) continue;
    const std::string words = setting_words(static_cast<SizeName>(name), "");
    return words.starts_with(' ') ? figure_text(change, words.substr(1), lengths)
                                  : words + figure_text(change, "", lengths);
  }
  return figure_text(change, with_blanks(change.what), lengths);
}

std::string word_text(const WordChange& change) {
  const auto or_none = [](const std::string& text) {
    return text.empty() ? std::string("none") : text;
  };
  return with_blanks(change.what) + " " + or_none(change.was) + std::string(kTo) +
         or_none(change.is);
}

// ---- pieces

/// How a size of a piece is called behind its figure.
std::string size_words(std::string_view what) {
  if (what == "length") return "long";
  if (what == "width") return "wide";
  if (what == "height") return "high";
  if (what == "thickness") return "thick";
  if (what == "depth") return "deep";
  if (what == "saw_length") return "to saw to";
  if (what == "saw_width") return "to rip to";
  if (what == "shoulder_to_shoulder_face") return "between its shoulders in front";
  if (what == "shoulder_to_shoulder_back") return "between those behind";
  return with_blanks(what);
}

const FigureChange* figure_of(const Changes& changes, std::string_view what) {
  for (const FigureChange& figure : changes.figures)
    if (figure.what == what) return &figure;
  return nullptr;
}

/// Whether it is told with another: a length that is sawn to itself, shoulders in one line.
bool is_told_with(const Changes& changes, const FigureChange& figure, std::string_view what,
                  std::string_view other) {
  if (figure.what != what) return false;
  const FigureChange* same = figure_of(changes, other);
  return same != nullptr && same->was == figure.was && same->is == figure.is;
}

std::string cut_text(const Changes& changes, const LengthPrinter& lengths) {
  constexpr std::string_view kFront = "shoulder_to_shoulder_face",
                             kBehind = "shoulder_to_shoulder_back";
  std::string text;
  for (const WordChange& word : changes.words)
    add_to_list(text, word_text(word));
  const FigureChange *front = figure_of(changes, kFront), *behind = figure_of(changes, kBehind);
  const bool in_line =
      front != nullptr && behind != nullptr && front->was == behind->was && front->is == behind->is;
  for (const FigureChange& figure : changes.figures) {
    if (is_told_with(changes, figure, "saw_length", "length") ||
        is_told_with(changes, figure, "saw_width", "width") ||
        is_told_with(changes, figure, kBehind, kFront))
      continue;
    const bool is_shoulder = figure.what == kFront && in_line;
    const bool is_thickness = figure.what == "thickness";
    add_to_list(text,
                figure_text(figure, is_shoulder ? "between shoulders" : size_words(figure.what),
                            is_thickness ? lengths.fine() : lengths));
  }
  return text;
}

std::string sizes_text(const CutRow& row, const LengthPrinter& lengths) {
  std::string text = lengths.one(row.length) + " x " + lengths.one(row.width) + " x " +
                     lengths.fine().one(row.thickness);
  if (row.saw_length != row.length) text += ", saw to " + lengths.one(row.saw_length);
  return text + (row.material.empty() ? "" : ", " + row.material);
}

/// Adds a line, or its marks to one that reads alike.
void add_line(std::vector<Line>& lines, Line line) {
  const auto same = std::find_if(lines.begin(), lines.end(), [&](const Line& it) {
    return it.head == line.head && it.text == line.text && it.part == line.part;
  });
  if (same == lines.end()) {
    lines.push_back(std::move(line));
    return;
  }
  for (const std::string& mark : line.marks)
    add_once(same->marks, mark);
  for (const std::string& mark : line.others)
    add_once(same->others, mark);
  ++same->number;
}

// ---- set-ups

/// "14.5 → 6 from the face side (-8.5)"
std::string setting_change_text(const Changes& changes, const LengthPrinter& lengths) {
  std::string text;
  for (const FigureChange& figure : changes.figures)
    add_to_list(text, setting_figure_text(figure, lengths.fine()));
  for (const WordChange& word : changes.words)
    add_to_list(text, word_text(word));
  return text;
}

/// What of it does not change.
std::string settings_left(const SetupChange& change, const LengthPrinter& lengths) {
  std::vector<NamedSize> left;
  for (const NamedSize& size : change.any().settings)
    if (figure_of(change.changes, word_of(size.name)) == nullptr) left.push_back(size);
  return settings_text(left, lengths);
}

/// "mortiser", "bench → thicknesser"; at the same machine what else is changed there.
std::string machine_text(const SetupChange& change) {
  if (change.was && change.is && change.was->machine != change.is->machine)
    return change.was->machine + std::string(kTo) + change.is->machine;
  std::string text = change.any().machine;
  for (const WordChange& word : change.changes.words)
    add_to_list(text, word_text(word));
  return text;
}

std::string setup_line(const SetupChange& change, const LengthPrinter& lengths) {
  std::string text = setting_change_text({change.changes.figures, {}}, lengths);
  add_to_list(text, settings_left(change, lengths), "; ");
  add_to_list(text, machine_text(change), "; ");
  if (change.is) add_to_list(text, joined(change.is->marks), "; ");
  const std::string_view head = change.turn() == Turn::comes  ? "new: "
                                : change.turn() == Turn::goes ? "no more: "
                                                              : "";
  return std::string(head) + change.words + (head.empty() ? ": " : ", ") + text;
}

PageParts setups_page(const SetupsChange& change, const LengthPrinter& lengths) {
  if (change.changed.empty()) return {};
  PageText body;
  for (const SetupChange& setup : change.changed)
    body += PageText::hanging(setup_line(setup, lengths));
  return {{"SET-UPS: " + std::to_string(change.setups.same) + " of " +
               std::to_string(change.setups.is) + (change.setups.same == 1 ? " stays" : " stay"),
           body}};
}

class ItemPage {
 public:
  /// `setups`: of it alone; null where they are told of a whole order.
  ItemPage(const ItemComparison& item, const SetupsChange* setups, const LengthPrinter& lengths)
      : item_(item), setups_(setups), lengths_(lengths) {}

  std::string text() const {
    std::string page = whole_text();
    const bool same_setups = setups_ == nullptr || setups_->changed.empty();
    if (item_.is_same() && same_setups) return page + still_fails() + same_text();
    PageParts parts;
    append(parts, saw_page());
    append(parts, old_pieces_page());
    if (setups_ != nullptr) append(parts, setups_page(*setups_, lengths_));
    append(parts, places_page());
    append(parts, joints_page());
    append(parts, marks_page());
    append(parts, checks_page());
    append(parts, hardware_page());
    append(parts, weight_page());
    return page + text_of(parts) + as_before_text();
  }

 private:
  // ---- head

  /// "leaf 924 → 944 wide (+20), 2054 high, 44 thick"
  std::string whole_text() const {
    std::string text;
    const std::string_view names[] = {"width", "height", item_.third_size};
    for (std::size_t axis = 0; axis < 3; ++axis) {
      const FigureChange* change = figure_of(item_.whole, names[axis]);
      add_to_list(text, change != nullptr
                            ? figure_text(*change, size_words(names[axis]), lengths_)
                            : lengths_.one(item_.size[axis]) + " " + size_words(names[axis]));
    }
    for (const WordChange& word : item_.whole.words)
      add_to_list(text, word_text(word));
    if (item_.was_quantity != item_.is_quantity)
      add_to_list(text, std::to_string(item_.was_quantity) + std::string(kTo) +
                            std::to_string(item_.is_quantity) + " off");
    return hanging(item_.is_kind + " " + text);
  }

  std::string same_text() const {
    return "\n" + hanging("Nothing changes. The same in both: " + tallies(true) + ".", 0);
  }

  /// Of one sort all is the same.
  static void add_tally(std::string& list, const Tallied& its, const std::string& one,
                        const std::string& several) {
    if (its.same > 0 && its.same == its.was && its.same == its.is)
      add_to_list(list, counted(its.same, one, several));
  }

  /// What is the same throughout: of all, or of what has no part on the page.
  std::string tallies(bool pieces_too) const {
    std::string text;
    if (pieces_too) add_tally(text, item_.pieces, "piece", "pieces");
    if (setups_ != nullptr) add_tally(text, setups_->setups, "set-up", "set-ups");
    add_tally(text, item_.making.places, "place worked", "places worked");
    add_tally(text, item_.joints, "joint", "joints");
    add_tally(text, item_.checks, "check", "checks");
    if (item_.changed_hardware.empty() && item_.hardware.is > 0) add_to_list(text, "hardware");
    if (item_.changed_weights.empty() && item_.weight_known) add_to_list(text, "weight");
    return text;
  }

  std::string as_before_text() const {
    const std::string text = tallies(false);
    return text.empty() ? "" : "\n" + hanging("As before: " + text + ".", 0);
  }

  // ---- at the saw

  PageParts saw_page() const {
    std::vector<Line> lines;
    for (const PieceChange& piece : item_.changed_pieces) {
      if (piece.turn() == Turn::changes && piece.cut.empty()) continue;
      const CutRow& row = piece.any();
      const std::string head = piece.turn() == Turn::comes  ? "new: "
                               : piece.turn() == Turn::goes ? "gone: old "
                                                            : "";
      add_line(lines, {head,
                       piece.turn() == Turn::changes ? cut_text(piece.cut, lengths_)
                                                     : sizes_text(row, lengths_),
                       row.marks,
                       {},
                       row.part,
                       row.called});
    }
    if (lines.empty()) return {};
    PageText body;
    for (const Line& line : lines)
      body += PageText::hanging(line.head + joined(line.marks) + " " +
                                (line.number == 1 ? line.called : several_of(line.part)) + ": " +
                                line.text);
    return {{"AT THE SAW: " + stay_text(item_.cut_alike), body}};
  }

  /// What to do with pieces that are cut already: they bear the old marks.
  PageParts old_pieces_page() const {
    std::string from_old, anew;
    for (const PieceChange& piece : item_.changed_pieces) {
      if (piece.turn() == Turn::goes) continue;
      const std::string& mark = piece.is->marks.front();
      const bool is_renamed = piece.was && piece.was->marks.front() != mark;
      add_to_list(piece.from_old ? from_old : anew,
                  mark + (piece.from_old && is_renamed ? " from " + piece.was->marks.front() : ""),
                  item_.marks.empty() ? " " : ", ");
    }
    if (from_old.empty() && anew.empty()) return {};
    return {
        {"IF THE OLD ONES ARE CUT ALREADY: " + stay_text(item_.pieces.same) + ", work and all",
         PageText::hanging(from_old.empty() ? "" : "can be cut from the old ones: " + from_old) +
             PageText::hanging(anew.empty() ? "" : "to be made new: " + anew)}};
  }

  /// "4 of 11 pieces stay as they are"
  std::string stay_text(std::size_t number) const {
    return std::to_string(number) + " of " + counted(item_.pieces.is, "piece", "pieces") +
           (number == 1 ? " stays as it is" : " stay as they are");
  }

  // ---- at the machines

  /// "mortise", "haunches"
  static std::string work_words(const Operation& setting, std::size_t number = 1) {
    std::string words =
        with_blanks(setting.cut == Cut::whole ? word_of(setting.makes) : word_of(setting.cut));
    if (number > 1 && !words.ends_with("s")) words += words.ends_with("h") ? "es" : "s";
    return words;
  }

  /// Whether the change of a setting tells it already.
  bool is_told_by_setting(const PlaceChange& place) const {
    return std::any_of(item_.making.changed_settings.begin(), item_.making.changed_settings.end(),
                       [&](const SettingChange& setting) {
                         return setting.was && setting.is &&
                                set_alike(*setting.was, place.was->setting) &&
                                set_alike(*setting.is, place.is->setting);
                       });
  }

  static std::string from_words(const Run& run) {
    return "from the " + std::string(word_of(run.from));
  }

  std::string moved_text(const PlaceChange& place) const {
    std::string text;
    for (const WordChange& word : place.place.words)
      add_to_list(text, "told from the " + word.is + ", no more from the " + word.was);
    for (const FigureChange& figure : place.place.figures) {
      std::string words = size_words(figure.what);
      if (figure.what == "near") words = from_words(place.is->run);
      if (figure.what == "extent") words = place.is->run.side.into == 0 ? "wide" : "long";
      if (figure.what == "from_shoulder") words = "from its shoulder";
      if (figure.what == "straight") words = "straight in it";
      if (figure.what == "from_other_end" && place.is->run.to)
        words = "from the " + std::string(word_of(*place.is->run.to));
      if (figure.what != "straight" || place.place.figures.size() == 1)
        add_to_list(text, figure_text(figure, words, lengths_));
    }
    if (!place.setting.empty() && !is_told_by_setting(place))
      add_to_list(text, "set otherwise: " + setting_change_text(place.setting, lengths_), "; ");
    return text;
  }

  std::string stands_text(const WorkedPlace& place) const {
    if (place.whole_length) return "all along";
    std::string text = lengths_.one(place.run.near) + " " + from_words(place.run);
    if (place.run.far)
      text +=
          ", " + lengths_.one(place.run.extent()) + (place.run.side.into == 0 ? " wide" : " long");
    return text;
  }

  /// But its length, which its place tells.
  static std::vector<NamedSize> settings_beside(const WorkedPlace& place) {
    std::vector<NamedSize> settings = place.setting.settings;
    if (place.run.far)
      std::erase_if(settings, [&](const NamedSize& size) {
        return size.name == SizeName::length && size.size == place.run.extent();
      });
    return settings;
  }

  std::string place_text(const PlaceChange& place) const {
    if (place.turn() == Turn::changes) return moved_text(place);
    const std::string setting = settings_text(settings_beside(place.any()), lengths_);
    return stands_text(place.any()) +
           (place.turn() == Turn::goes || setting.empty() ? "" : "; " + setting);
  }

  static std::string place_head(const PlaceChange& place) {
    return place.turn() == Turn::comes ? "new: " : place.turn() == Turn::goes ? "no more: " : "";
  }

  /// Of a piece of the old work or the new the mark that it has in the new; "old C" of one that is
  /// gone.
  std::string mark_now(const std::string& key, const std::string& mark) const {
    for (const MarkChange& change : item_.marks)
      if (change.key == key) return change.is;
    for (const PieceChange& change : item_.changed_pieces)
      if (change.key == key && change.turn() == Turn::goes) return "old " + mark;
    return mark;
  }

  PageParts places_page() const {
    std::vector<Line> lines;
    for (const PlaceChange& place : item_.making.changed_places) {
      const WorkedPlace& any = place.any();
      const std::string text = place_text(place);
      if (text.empty()) continue;
      Line line{place_head(place), text, {mark_now(any.piece, any.mark)}};
      line.head += work_words(any.setting, 2);
      line.called = work_words(any.setting, 1);
      if (!any.fitting.empty()) line.text = any.fitting + ": " + line.text;
      if (!any.for_mark.empty()) line.others = {mark_now(any.for_key, any.for_mark)};
      add_line(lines, std::move(line));
    }
    if (lines.empty()) return {};
    PageText body;
    for (const Line& line : lines)
      body += PageText::hanging(place_line(line));
    const Tallied& places = item_.making.places;
    return {{"PLACES: " + std::to_string(places.same) + " of " + std::to_string(places.is) +
                 (places.same == 1 ? " stays" : " stay") + ", on pieces that both have",
             body}};
  }

  /// "mortises in A B for C: 1948 → 1968 from the foot (+20)"
  static std::string place_line(const Line& line) {
    std::string head = line.head;
    if (line.number == 1) {
      const std::size_t begin = head.find(": ");
      head = (begin == std::string::npos ? "" : head.substr(0, begin + 2)) + line.called;
    }
    return head + " on " + joined(line.marks) +
           (line.others.empty() ? "" : " for " + joined(line.others)) + ": " + line.text;
  }

  // ---- joints and marks

  static std::string play_words(std::string_view what) {
    if (what == "cheeks" || what == "edges") return "play of its " + std::string(what);
    if (what == "edge") return "play at its edge";
    return what == "bottom" ? "room at its bottom" : with_blanks(what);
  }

  std::string joint_text(const Changes& changes) const {
    std::string text;
    for (const WordChange& word : changes.words)
      add_to_list(text, with_blanks(word.was) + std::string(kTo) + with_blanks(word.is));
    for (const FigureChange& figure : changes.figures)
      add_to_list(text, play_words(figure.what) + " " + figure_text(figure, "", lengths_.fine()));
    return text;
  }

  PageParts joints_page() const {
    if (item_.changed_joints.empty()) return {};
    std::vector<Line> lines;
    for (const JointChange& joint : item_.changed_joints) {
      const JointTold& any = joint.any();
      if (joint.turn() == Turn::changes)
        add_line(lines, {"", joint_text(joint.changes), {any.id}});
      else
        add_line(lines,
                 {joint.is ? "new: " : "no more: old ", with_blanks(word_of(any.kind)), {any.id}});
    }
    PageText body;
    for (const Line& line : lines)
      body +=
          PageText::hanging(line.head.empty() ? joined(line.marks) + ": " + line.text
                                              : line.head + joined(line.marks) + ", " + line.text);
    return {{"JOINTS: " + std::to_string(item_.joints.same) + " of " +
                 std::to_string(item_.joints.is) + (item_.joints.same == 1 ? " stays" : " stay"),
             body}};
  }

  PageParts marks_page() const {
    if (item_.marks.empty()) return {};
    std::string text;
    for (const MarkChange& mark : item_.marks)
      add_to_list(text, mark.was + std::string(kTo) + mark.is);
    return {{"MARKS: pieces that stay and go by another", PageText::hanging(text)}};
  }

  // ---- checks

  static std::string status_text(Status status) {
    return status == Status::fail ? "FAIL" : std::string(word_of(status));
  }

  std::string check_text(const CheckChange& check) const {
    const CheckTold& any = check.any();
    std::string text(any.finding.rule->check);
    if (check.turn() == Turn::changes && check.was->finding.measured &&
        check.is->finding.measured) {
      const FigureChange figure{"", check.was->finding.value, check.is->finding.value};
      if (figure.was != figure.is) text += " " + figure_text(figure, "", lengths_.fine());
    }
    return text + ": " + finding_message(any.finding, lengths_.unit());
  }

  static std::string check_head(const CheckChange& check) {
    const std::string status = status_text(check.any().finding.status);
    switch (check.turn()) {
      case Turn::stays:
        return status + " as before";
      case Turn::comes:
        return "new, " + status;
      case Turn::goes:
        return "no more, was " + status + " of old";
      case Turn::changes:
        break;
    }
    return status_text(check.was->finding.status) + std::string(kTo) + status;
  }

  std::vector<Line> check_lines(bool staying_only) const {
    std::vector<Line> lines;
    for (const CheckChange& check : item_.changed_checks)
      if (!staying_only || check.turn() == Turn::stays)
        add_line(lines, {check_head(check), check_text(check), {check.any().marks}});
    return lines;
  }

  static PageText body_of(const std::vector<Line>& lines) {
    PageText body;
    for (const Line& line : lines)
      body += PageText::hanging(line.head + "  " + joined(line.marks) + "  " + line.text);
    return body;
  }

  PageParts checks_page() const {
    if (item_.changed_checks.empty()) return {};
    return {{"CHECKS: " + std::to_string(item_.checks.same) + " of " +
                 std::to_string(item_.checks.is) + " come out as before",
             body_of(check_lines(false))}};
  }

  /// Though nothing changes.
  std::string still_fails() const { return body_of(check_lines(true)).text(); }

  // ---- what is bought

  static std::string weight_text(const std::optional<double>& weight) {
    return weight ? kilograms_text(weight) + " kg" : "not known";
  }

  PageParts hardware_page() const {
    PageText body;
    for (const NumberChange& change : item_.changed_hardware)
      body += PageText::hanging(
          change.what + (change.size ? " " + lengths_.one(*change.size) : "") + ": " +
          std::to_string(change.was) + std::string(kTo) + std::to_string(change.is));
    if (body.empty()) return {};
    return {{"HARDWARE", body}};
  }

  PageParts weight_page() const {
    std::string text;
    for (const WeightChange& change : item_.changed_weights)
      add_to_list(text,
                  (change.whole ? "" : "the " + with_blanks(change.of) + " ") +
                      weight_text(change.was) + std::string(kTo) + weight_text(change.is),
                  "; ");
    if (text.empty()) return {};
    return {{"WEIGHT: " + text}};
  }

  const ItemComparison& item_;
  const SetupsChange* setups_;
  const LengthPrinter& lengths_;
};

std::string names_text(const ItemComparison& item) {
  return item.was_id == item.is_id ? item.is_id : item.was_id + std::string(kTo) + item.is_id;
}

std::string lone_text(const std::vector<LoneItem>& items, std::string_view head) {
  std::string text;
  for (const LoneItem& item : items)
    add_to_list(text, item.id + " (" + counted(item.pieces, "piece", "pieces") +
                          (item.quantity > 1 ? ", " + std::to_string(item.quantity) + " off" : "") +
                          ")");
  return text.empty() ? "" : hanging(std::string(head) + text);
}

}  // namespace

std::string comparison_page(const Comparison& comparison, const ComparedNames& names,
                            const LengthPrinter& lengths) {
  const std::string compared = names.was + " to " + names.is;
  const std::string units = "; sizes in " + unit_words(lengths.unit()) + "\n";
  const bool single =
      comparison.items.size() == 1 && comparison.come.empty() && comparison.gone.empty();
  if (single) {
    const ItemComparison& item = comparison.items.front();
    return names_text(item) + ": what changes from " + compared + units +
           ItemPage(item, &comparison.setups, lengths).text();
  }
  std::string page = "What changes from " + compared + units;
  std::string stay;
  for (const ItemComparison& item : comparison.items)
    if (item.is_same()) add_to_list(stay, item.is_id);
  page += hanging(stay.empty() ? "" : "stay as they are: " + stay);
  page += lone_text(comparison.come, "new: ") + lone_text(comparison.gone, "gone: ");
  if (comparison.is_same())
    page += "\n" + hanging("Nothing changes. The same in both: " +
                               counted(comparison.items.size(), "item", "items") + ", " +
                               counted(comparison.setups.setups.is, "set-up", "set-ups") + ".",
                           0);
  for (const ItemComparison& item : comparison.items)
    if (!item.is_same() || !item.changed_checks.empty())
      page += "\n" + names_text(item) + "\n" + ItemPage(item, nullptr, lengths).text();
  return page + text_of(setups_page(comparison.setups, lengths));
}

}  // namespace haunch
