#include "rods_sheets.h"

#include <algorithm>
#include <utility>

#include "utf8.h"

namespace haunch {
namespace {

constexpr Length kRegister = whole_mm(9);           // a column for crosses at each side of paper
constexpr std::int64_t kWords = 48;                 // letters beside a rod in one piece
constexpr std::size_t kFewPieces = 4;               // as many are named above their strip
constexpr Length kGoesOn = kOverlap + whole_mm(5);  // the least that a sheet takes, so that the
                                                    // next one begins after it

std::size_t letters_in(Length width) {
  return static_cast<std::size_t>(floor_divide(width, kLetterWidth.steps()).steps());
}

/// How many bytes of `text` the first `width` letters take.
std::size_t bytes_of(std::string_view text, std::size_t width) {
  std::size_t bytes = 0;
  for (std::size_t count = 0; bytes < text.size(); ++bytes)
    if (!continues_character(text[bytes]) && count++ == width) break;
  return bytes;
}

/// Broken at spaces, and a word that is too long wherever it has to be.
std::vector<std::string> lines_of(const std::string& text, std::size_t width) {
  const std::string broken = wrapped(text, width, 0);
  std::vector<std::string> lines;
  for (std::string_view rest = broken; !rest.empty();) {
    const std::string_view line = rest.substr(0, rest.find('\n'));
    const std::size_t taken = bytes_of(line, width);
    lines.emplace_back(line.substr(0, taken));
    rest.remove_prefix(taken < line.size() ? taken : std::min(taken + 1, rest.size()));
  }
  return lines;
}

// ---- words

std::string heading_of(const ItemRods& item, const Rod& rod, std::size_t strip) {
  const std::vector<std::size_t>& pieces = rod.strips[strip].pieces;
  std::string name = strip_name(rod, strip);
  if (pieces.size() > kFewPieces) return name;
  return name + " " + joined(marks_of(item.wood, pieces));
}

/// "A B": the strips say what these are; "door stiles" of many that are all on one.
std::string short_pieces(const ItemRods& item, const Rod& rod, const RodName& name) {
  const bool all = name.pieces.size() == rod.strips[name.strip].pieces.size();
  if (all && name.pieces.size() > kFewPieces) return strip_name(rod, name.strip);
  return joined(marks_of(item.wood, name.pieces));
}

/// "A B: lower end; E: lower edge"; what is the same on several strips once.
std::string short_text(const ItemRods& item, const Rod& rod, const RodMark& mark) {
  struct Told {
    std::string pieces, what;
  };
  std::vector<Told> told;
  for (const RodName& name : mark.names) {
    const std::string what = what_text(item, name);
    const auto same =
        std::find_if(told.begin(), told.end(), [&](const Told& it) { return it.what == what; });
    if (same == told.end())
      told.push_back({short_pieces(item, rod, name), what});
    else
      same->pieces.append(", ").append(short_pieces(item, rod, name));
  }
  std::string text;
  for (const Told& its : told) {
    if (!text.empty()) text += "; ";
    text.append(its.pieces).append(": ").append(its.what);
  }
  return text;
}

// ---- columns

/// The strips, and where figures and words stand beside them.
void lay_columns(RodForm& form, std::size_t longest_figure) {
  const Length beside = kFree + (form.paper ? kRegister : Length());
  const auto strips = static_cast<std::int64_t>(form.headings.size());
  form.strips = beside;
  form.strip = std::clamp(floor_divide(whole_mm(60), strips), kLine, whole_mm(9));
  form.strips_end = form.strip_at(form.headings.size());
  form.figures_end = form.strips_end + kLeader + letters(longest_figure);
  form.words = form.figures_end + whole_mm(3);
  form.width = form.paper ? form.paper->width : form.words + kLetterWidth * kWords + beside;
}

Length lettering_between(const RodForm& form, Length from, Length to) {
  Length height;
  for (const RodLabel& label : form.labels)
    if (label.at >= from && label.at <= to) height += label.height();
  return height;
}

/// From `from` as far as `room` holds the lettering.
Length farthest(const RodForm& form, Length from, Length to, Length room) {
  for (auto label = form.labels.rbegin(); label != form.labels.rend(); ++label) {
    if (label->at > to) continue;
    if (label->at < from + kGoesOn || lettering_between(form, from, to) <= room) break;
    to = label->at - tenths_of_mm(5);
  }
  return to;
}

}  // namespace

Length letters(std::size_t count) {
  return kLetterWidth * static_cast<std::int64_t>(count);
}

RodForm form_of(const ItemRods& item, const Rod& rod, const LengthPrinter& lengths,
                const std::optional<Paper>& paper) {
  RodForm form;
  form.paper = paper;
  std::size_t figure = 0;
  std::size_t heading = 0;
  for (const RodMark& mark : rod.marks) {
    form.labels.push_back({mark.at, lengths.one(mark.at), {}});
    figure = std::max(figure, display_width(form.labels.back().figure));
  }
  for (std::size_t strip = 0; strip < rod.strips.size(); ++strip) {
    form.headings.push_back(heading_of(item, rod, strip));
    heading = std::max(heading, display_width(form.headings.back()));
  }
  lay_columns(form, figure);
  const std::size_t width = letters_in(form.width - form.strips - form.words);
  for (std::size_t mark = 0; mark < rod.marks.size(); ++mark)
    form.labels[mark].lines = lines_of(short_text(item, rod, rod.marks[mark]), width);
  const std::size_t head = head_of(item, rod, form, lengths, {99, 99}).lines.size();
  form.top =
      kFree + std::max(letters(heading) + whole_mm(2), kHeadLine * static_cast<std::int64_t>(head));
  return form;
}

std::vector<RodSheet> sheets_of(const Rod& rod, const RodForm& form) {
  const Length first = rod.marks.front().at;
  const Length last = rod.marks.back().at;
  if (!form.paper) {
    const Length rod_itself = last - first + kBeyond * 2;
    const Length area = std::max(rod_itself, lettering_between(form, first, last));
    return {{first, last, form.top + area + kFoot + kFree}};
  }
  const Length area = form.paper->height - form.top - kFoot - kFree;
  std::vector<RodSheet> sheets;
  for (Length from = first;; from = sheets.back().to - kOverlap) {
    const Length to = farthest(form, from, std::min(last, from + area - kBeyond * 2), area);
    sheets.push_back({from, to, form.paper->height});
    if (to >= last) return sheets;
  }
}

std::string title_of(const ItemRods& item, const Rod& rod, const SheetNumber& sheet) {
  std::string text = item.id + (rod.of.empty() ? ": " : ", ") + rod_name(rod);
  if (sheet.of > 1)
    text += ", sheet " + std::to_string(sheet.number) + " of " + std::to_string(sheet.of);
  return text;
}

RodHead head_of(const ItemRods& item, const Rod& rod, const RodForm& form,
                const LengthPrinter& lengths, const SheetNumber& sheet) {
  const std::size_t width = letters_in(form.width - kFree - form.head());
  RodHead head{lines_of(title_of(item, rod, sheet), width), 0};
  head.title = head.lines.size();
  const auto add = [&](const std::string& text) {
    for (std::string& line : lines_of(text, width))
      head.lines.push_back(std::move(line));
  };
  add("the " + std::string(zero_of(rod.direction)) + " is at the lower end; " +
      lengths.one(rod.length) + " " + std::string(word_of(lengths.unit())) + " long");
  if (sheet.of > 1) add("lay crosses of one number on each other");
  return head;
}

}  // namespace haunch
