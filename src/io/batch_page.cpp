#include "batch_page.h"

#include <algorithm>
#include <map>
#include <span>
#include <tuple>
#include <utility>

#include "report_page.h"
#include "together_page.h"

namespace haunch {
namespace {

/// Items that are worked alike: all but id, name, note and quantity is the same.
using Sheet = std::vector<const ItemSheet*>;

bool cut_the_same(const std::vector<CutRow>& a, const std::vector<CutRow>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const CutRow& one, const CutRow& other) {
                      return one.marks == other.marks && cut_alike(one, other);
                    });
}

bool worked_alike(const ItemSheet& a, const ItemSheet& b) {
  const auto same_parts = [](const PagePart& one, const PagePart& other) {
    return one.stands == Stands::before_all ? other.stands == one.stands : one == other;
  };
  return a.sizes == b.sizes && a.set_out == b.set_out && a.checks == b.checks &&
         cut_the_same(a.cuts, b.cuts) &&
         std::equal(a.parts.begin(), a.parts.end(), b.parts.begin(), b.parts.end(), same_parts);
}

std::vector<Sheet> sheets_of(const std::vector<ItemSheet>& items) {
  std::vector<Sheet> sheets;
  for (const ItemSheet& item : items) {
    const auto same = std::find_if(sheets.begin(), sheets.end(), [&](const Sheet& sheet) {
      return worked_alike(*sheet.front(), item);
    });
    if (same == sheets.end())
      sheets.push_back({&item});
    else
      same->push_back(&item);
  }
  return sheets;
}

std::int64_t number_off(const Sheet& sheet) {
  std::int64_t all = 0;
  for (const ItemSheet* item : sheet)
    all += item->quantity;
  return all;
}

/// The numbers of sheets, from 1: "1 2 4".
std::string numbers(const std::vector<std::size_t>& sheets) {
  std::string text;
  for (const std::size_t sheet : sheets)
    text += (text.empty() ? "" : " ") + std::to_string(sheet + 1);
  return text;
}

// ---- what is told once

/// What is said on sheets, and on which: the same words once.
class OnSheets {
 public:
  void add(const std::string& words, std::size_t sheet) {
    const auto same =
        std::find_if(said_.begin(), said_.end(), [&](const auto& it) { return it.first == words; });
    if (same == said_.end())
      said_.push_back({words, {sheet}});
    else if (same->second.back() != sheet)
      same->second.push_back(sheet);
  }
  const std::vector<std::pair<std::string, std::vector<std::size_t>>>& said() const {
    return said_;
  }

 private:
  std::vector<std::pair<std::string, std::vector<std::size_t>>> said_;
};

/// Where other sheets have other words on it, with those that it is for.
std::string remarks(const OnSheets& all) {
  std::string text;
  for (const auto& [words, sheets] : all.said()) {
    const bool alone = all.said().size() == 1;
    text += alone ? words : "  on " + numbers(sheets) + ":" + words.substr(1);
  }
  return text;
}

bool has_one_way_to_read(const std::vector<Sheet>& sheets, const std::string& heading,
                         const std::vector<PageText>& legends) {
  for (const Sheet& sheet : sheets)
    for (const PagePart& part : sheet.front()->parts)
      if (part.heading == heading && part.legends != legends) return false;
  return true;
}

/// How the parts of all sheets are read, where all of a heading are read alike; it is taken from
/// them.
std::string legends_of(std::vector<PageParts>& parts, const std::vector<Sheet>& sheets) {
  OnSheets legends;
  for (std::size_t sheet = 0; sheet < parts.size(); ++sheet)
    for (PagePart& part : parts[sheet]) {
      if (!has_one_way_to_read(sheets, part.heading, part.legends)) continue;
      for (const PageText& legend : std::exchange(part.legends, {}))
        legends.add(legend.text(), sheet);
    }
  std::string text;
  for (const auto& [legend, on] : legends.said())
    text += legend;
  return text.empty() ? text : "\nHOW THE SHEETS ARE READ\n" + text;
}

// ---- the cut list

/// Pieces that are cut alike, on whatever sheet.
struct BatchCut {
  CutRow row;
  OnSheets marks;
};

/// What is called the same on all sheets, such as the top rail, keeps its name.
void merge_named(CutRow& row, const CutRow& other) {
  const std::string called = row.called;
  merge(row, other);
  if (called == other.called && called != word_of(row.part)) row.called = called;
}

std::vector<BatchCut> cuts_of(const std::vector<Sheet>& sheets) {
  std::vector<BatchCut> cuts;
  for (std::size_t sheet = 0; sheet < sheets.size(); ++sheet)
    for (const ItemSheet* item : sheets[sheet])
      for (const CutRow& row : item->cuts) {
        auto same = std::find_if(cuts.begin(), cuts.end(),
                                 [&](const BatchCut& other) { return cut_alike(other.row, row); });
        if (same == cuts.end())
          same = cuts.insert(cuts.end(), {row, {}});
        else
          merge_named(same->row, row);
        same->marks.add(joined(row.marks), sheet);
      }
  return cuts;
}

/// Together what is of one wood and thickness, the widest and longest first.
void sort_for_cutting(std::vector<BatchCut>& cuts) {
  std::stable_sort(cuts.begin(), cuts.end(), [](const BatchCut& a, const BatchCut& b) {
    const auto order = [](const CutRow& row) {
      return std::tuple(std::string_view(row.material), row.part, -row.thickness, -row.width,
                        -row.saw_length);
    };
    return order(a.row) < order(b.row);
  });
}

/// "A B on 1 2; C D on 3": on which sheets they have which marks.
std::string marks_text(const OnSheets& marks, bool one_sheet) {
  std::string text;
  for (const auto& [words, sheets] : marks.said())
    text += (text.empty() ? "" : "; ") + words + (one_sheet ? "" : " on " + numbers(sheets));
  return text;
}

/// The rows from one to another, all of one wood.
std::string cut_table(std::span<const BatchCut> cuts, bool one_sheet,
                      const LengthPrinter& lengths) {
  std::vector<std::string> titles = cut_titles();
  titles.emplace_back("marks on sheets");
  TextTable table(std::move(titles));
  for (const BatchCut& cut : cuts) {
    std::vector<Cell> cells = cut_cells(cut.row);
    cells.emplace_back(marks_text(cut.marks, one_sheet));
    table.add(std::move(cells));
  }
  return table.text(lengths, 2);
}

/// A table of each wood, where there are several.
std::string cut_tables(const std::vector<BatchCut>& cuts, bool one_sheet,
                       const LengthPrinter& lengths) {
  std::string text;
  for (auto first = cuts.begin(); first != cuts.end();) {
    const std::string& wood = first->row.material;
    const auto last = std::find_if(first, cuts.end(),
                                   [&](const BatchCut& it) { return it.row.material != wood; });
    text += (wood.empty() ? " wood not told" : " " + wood) + "\n" +
            cut_table({first, last}, one_sheet, lengths);
    first = last;
  }
  return text;
}

std::vector<CutRow> rows_of(const std::vector<BatchCut>& cuts) {
  std::vector<CutRow> rows;
  for (const BatchCut& cut : cuts)
    rows.push_back(cut.row);
  return rows;
}

std::string cut_page(const std::vector<Sheet>& sheets, const LengthPrinter& lengths) {
  std::vector<BatchCut> cuts = cuts_of(sheets);
  if (cuts.empty()) return {};
  sort_for_cutting(cuts);
  const std::string& wood = cuts.front().row.material;
  const bool one_wood = wood == cuts.back().row.material;
  const bool one_sheet = sheets.size() == 1;
  OnSheets said;
  for (std::size_t sheet = 0; sheet < sheets.size(); ++sheet)
    if (const std::string words = sheets[sheet].front()->cut_remarks.text(); !words.empty())
      said.add(words, sheet);
  return "\nCUT LIST, for all" + (one_wood && !wood.empty() ? ", " + wood : "") + "\n" +
         (one_wood ? cut_table(cuts, one_sheet, lengths) : cut_tables(cuts, one_sheet, lengths)) +
         remarks(said) + strips_text(strip_totals(rows_of(cuts)), lengths).text();
}

// ---- hardware

/// Of all items together.
std::string hardware_page(const std::vector<Sheet>& sheets, const LengthPrinter& lengths) {
  std::vector<Hardware> all;
  for (const Sheet& sheet : sheets)
    for (const Hardware& its : sheet.front()->hardware) {
      const auto same = std::find_if(all.begin(), all.end(), [&](const Hardware& it) {
        return it.what == its.what && it.size == its.size;
      });
      const std::int64_t number = its.number * number_off(sheet);
      if (same == all.end())
        all.push_back({its.what, its.size, number});
      else
        same->number += number;
    }
  if (all.empty()) return {};
  return "\nHARDWARE, for all\n" + hanging(hardware_text(all, lengths));
}

// ---- before all sheets

std::string checks_text(const ItemSheet& item) {
  if (item.failed == 0 && item.cautions == 0) return "pass";
  std::string text = item.failed > 0 ? std::to_string(item.failed) + " FAIL" : "";
  if (item.cautions == 0) return text;
  return text + (text.empty() ? "" : ", ") + std::to_string(item.cautions) +
         (item.cautions == 1 ? " caution" : " cautions");
}

/// "hatch, loft (3)"; what they were set out in and their notes where no sheet tells that.
std::string items_text(const Sheet& sheet, bool with_notes) {
  std::string text;
  for (const ItemSheet* item : sheet) {
    text += (text.empty() ? "" : with_notes ? "; " : ", ") + item->id;
    if (item->quantity > 1) text += " (" + std::to_string(item->quantity) + ")";
    if (with_notes) text += item->set_out + (item->note.empty() ? "" : ": " + item->note);
  }
  return text;
}

std::string sheets_page(const std::vector<Sheet>& sheets, bool with_notes,
                        const LengthPrinter& lengths) {
  TextTable table({"sheet", "off", "wide", "high", "thick", "checks", "items"});
  for (std::size_t number = 0; number < sheets.size(); ++number) {
    const ItemSheet& item = *sheets[number].front();
    table.add({std::to_string(number + 1), std::to_string(number_off(sheets[number])), item.size[0],
               item.size[1], item.size[2], checks_text(item),
               items_text(sheets[number], with_notes)});
  }
  return table.text(lengths, 2);
}

/// "19 to 22 values a sheet are"
std::string assumed_on(const std::vector<Sheet>& sheets) {
  std::size_t least = sheets.front().front()->assumed;
  std::size_t most = 0;
  for (const Sheet& sheet : sheets) {
    least = std::min(least, sheet.front()->assumed);
    most = std::max(most, sheet.front()->assumed);
  }
  if (most == 0) return {};
  return (least == most ? "" : std::to_string(least) + " to ") + std::to_string(most) +
         " values a sheet are";
}

std::string title(const std::vector<Sheet>& sheets, Unit unit, std::size_t lot) {
  std::int64_t off = 0;
  for (const Sheet& sheet : sheets)
    off += number_off(sheet);
  return (lot > 0 ? "BATCH " + std::to_string(lot) : std::string("BATCH")) + ": " +
         std::to_string(off) + " off on " + std::to_string(sheets.size()) +
         (sheets.size() == 1 ? " sheet" : " sheets") + "; sizes in " + unit_words(unit) + "\n";
}

// ---- a sheet

/// Items of one sheet that have one name, note and quantity in a line: "hatch, loft: flap, 2 off
/// each".
std::string names_of(const Sheet& sheet) {
  std::vector<std::pair<const ItemSheet*, std::string>> lines;
  for (const ItemSheet* item : sheet) {
    const auto same = std::find_if(lines.begin(), lines.end(), [&](const auto& it) {
      return std::tie(it.first->name, it.first->note, it.first->quantity) ==
             std::tie(item->name, item->note, item->quantity);
    });
    if (same == lines.end())
      lines.emplace_back(item, item->id);
    else
      same->second += ", " + item->id;
  }
  std::string text;
  for (const auto& [item, ids] : lines) {
    const bool one = ids == item->id;
    text += hanging(ids + ": " + item->name + ", " + std::to_string(item->quantity) + " off" +
                        (one ? "" : " each") + item->set_out,
                    0);
    text += hanging(item->note.empty() ? "" : "note: " + item->note);
  }
  return text;
}

/// "GROOVES" of "GROOVES, the whole length", "STILES" of "STILES P Q".
std::string short_heading(const PagePart& part) {
  const std::string heading = part.heading.substr(0, part.heading.find_first_of(",;:"));
  return heading.starts_with("STILES ") ? "STILES" : heading;
}

/// The first sheet before it that says the same.
std::optional<std::size_t> told_before(const PagePart& part, const std::vector<PageParts>& parts,
                                       std::size_t sheet) {
  if (part.stands == Stands::on_every_sheet) return {};
  for (std::size_t other = 0; other < sheet; ++other)
    if (std::find(parts[other].begin(), parts[other].end(), part) != parts[other].end())
      return other;
  return {};
}

/// What is told on this sheet itself, below what is as on others.
std::string parts_text(const std::vector<PageParts>& parts, std::size_t sheet) {
  struct AsOn {
    std::string headings, section;
  };
  std::map<std::size_t, AsOn> as_on;
  PageParts own;
  for (const PagePart& part : parts[sheet])
    if (const auto other = told_before(part, parts, sheet)) {
      AsOn& its = as_on[*other];
      its.headings += its.headings.empty() ? "" : ", ";
      if (part.section != its.section) its.headings += "of the " + part.section + " ";
      its.section = part.section;
      its.headings += short_heading(part);
    } else {
      own.push_back(part);
    }
  std::string text;
  for (const auto& [other, its] : as_on)
    text += (text.empty() ? "as on sheet " : "; as on sheet ") + std::to_string(other + 1) + ": " +
            its.headings;
  return hanging(text) + text_of(own);
}

std::string sheet_line(std::size_t number, std::size_t of, const View& view) {
  const std::string words = "sheet " + std::to_string(number + 1) + " of " + std::to_string(of);
  if (view.on_paper) return "\f" + words + "\n";
  const std::string line = "---- " + words + " ";
  return "\n" + line + std::string(view.page_width - line.size(), '-') + "\n";
}

/// What is not put together before all of them.
std::vector<PageParts> parts_of(const std::vector<Sheet>& sheets) {
  std::vector<PageParts> all;
  for (const Sheet& sheet : sheets) {
    all.push_back(sheet.front()->parts);
    std::erase_if(all.back(), [](const PagePart& it) { return it.stands == Stands::before_all; });
  }
  return all;
}

}  // namespace

std::string batch_page(const std::vector<ItemSheet>& items, const View& view, Unit unit,
                       std::size_t lot) {
  bool rounded =
      std::any_of(items.begin(), items.end(), [](const ItemSheet& it) { return it.rounded; });
  const LengthPrinter lengths(unit, view.lengths, view.page_width, &rounded);
  const std::vector<Sheet> sheets = sheets_of(items);
  std::vector<PageParts> parts = parts_of(sheets);
  const bool all_before =
      std::all_of(parts.begin(), parts.end(), [](const PageParts& its) { return its.empty(); });
  std::string page = title(sheets, unit, lot) + sheets_page(sheets, all_before, lengths) +
                     cut_page(sheets, lengths) + hardware_page(sheets, lengths) +
                     legends_of(parts, sheets);
  page += last_line(assumed_on(sheets), rounded, unit, view);
  if (view.section == Section::sheet) page += page_cautions(view.page_width).text();
  page = fitted(page, view.page_width);
  if (all_before) return page;
  for (std::size_t number = 0; number < sheets.size(); ++number) {
    const ItemSheet& item = *sheets[number].front();
    const bool passes = item.failed == 0 && item.cautions == 0;
    page += sheet_line(number, sheets.size(), view) +
            fitted(names_of(sheets[number]) + item.sizes.text() +
                       (passes ? "" : hanging(verdict(item))) + parts_text(parts, number),
                   view.page_width);
  }
  return page;
}

}  // namespace haunch
