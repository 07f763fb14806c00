#include "with_it_page.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "choices.h"
#include "extras.h"

namespace haunch {
namespace {

// ---- extras

/// "lower edge ovolo 8 x 8"
std::string edge_words(const ExtraEdge& edge, const LengthPrinter& lengths) {
  const EdgeDesign& its = edge.design;
  std::string words =
      fmt::format("{} edge {} {} wide, {} deep", edge.edge == Edge::high ? "upper" : "lower",
                  word_of(its.profile), lengths.one(its.width), lengths.one(its.depth));
  if (its.fillet > Length())
    words += (its.profile == Moulding::bead ? ", quirk " : ", fillet ") + lengths.one(its.fillet);
  return words + (its.faces == MouldedFaces::both ? ", face and back" : "");
}

bool is_face(Surface side) {
  return side == Surface::face || side == Surface::back;
}

/// "face", "upper edge", "left end"
std::string side_words(Surface side) {
  std::string word(word_of(side));
  if (is_face(side)) return word;
  return word + (side == Surface::left || side == Surface::right ? " end" : " edge");
}

std::string groove_words(const ExtraCut& cut, const LengthPrinter& lengths) {
  std::string words =
      fmt::format("groove {} wide, {} deep in the {}, {} from the {}", lengths.one(cut.width),
                  lengths.one(cut.depth), side_words(cut.in), lengths.one(cut.from),
                  is_face(cut.in) ? "lower edge" : "face");
  if (cut.start > Length() || cut.length > Length())
    words += ", from " + lengths.one(cut.start) +
             (cut.length > Length() ? " to " + lengths.one(cut.start + cut.length) : "") +
             " off the left end";
  return words;
}

std::string hole_words(const ExtraCut& cut, const LengthPrinter& lengths) {
  const bool end = cut.in == Surface::left || cut.in == Surface::right;
  return fmt::format(
      "hole of {}{} in the {}, its middle {} from the {}, {} from the {}", lengths.one(cut.width),
      cut.depth > Length() ? ", " + lengths.one(cut.depth) + " deep," : " right through",
      side_words(cut.in), lengths.one(cut.start), end ? "lower edge" : "left end",
      lengths.one(cut.from), is_face(cut.in) ? "lower edge" : "face");
}

std::string cut_words(const ExtraCut& cut, const LengthPrinter& lengths) {
  switch (cut.kind) {
    case ExtraCutKind::groove:
      return groove_words(cut, lengths);
    case ExtraCutKind::rebate:
      return fmt::format("rebate {} wide, {} deep from the {}, along the {}",
                         lengths.one(cut.width), lengths.one(cut.depth), side_words(cut.in),
                         side_words(cut.along));
    case ExtraCutKind::hole:
      return hole_words(cut, lengths);
    case ExtraCutKind::mitre:
      return fmt::format("{} mitred, long point at the {}", side_words(cut.in),
                         side_words(cut.along));
  }
  return {};
}

std::string work_words(const ExtraSpec& extra, const LengthPrinter& lengths) {
  std::string words;
  for (const ExtraEdge& edge : extra.edges)
    words += (words.empty() ? "" : "; ") + edge_words(edge, lengths);
  for (const ExtraCut& cut : extra.cuts)
    words += (words.empty() ? "" : "; ") + cut_words(cut, lengths);
  return words.empty() ? "no work but its size" : words;
}

}  // namespace

PageParts extras_page(const ItemReport& report, const LengthPrinter& lengths) {
  PageText text;
  auto piece = std::find_if(report.wood.pieces.begin(), report.wood.pieces.end(), lies_beside);
  for (const ExtraSpec& extra : report.job->extras) {
    std::vector<std::string> marks;
    for (int number = 0; number < extra.quantity; ++number)
      marks.push_back((piece++)->mark);
    const std::string words = joined(marks) + "  " + extra.name + ": " + work_words(extra, lengths);
    text += PageText::about(std::move(marks), words);
  }
  if (text.empty()) return {};
  return {{"EXTRAS, as each lies face up: its length from the left, its width from the lower edge",
           text}};
}

// ---- finish

PageParts finish_page(const ItemReport& report, const LengthPrinter& lengths) {
  const FinishSpec& finish = report.job->finish;
  if (!finish.is_told()) return {};
  std::string words = finish.system.empty() ? "the shop's first" : finish.system;
  if (finish.coats)
    words += fmt::format(", {} coat{}", *finish.coats, *finish.coats == 1 ? "" : "s");
  words += finish.faces == FinishedFaces::both ? ", face and back" : ", the backs left bare";
  if (finish.when)
    words += finish.when == FinishedWhen::before ? ", on the pieces before they are put together"
                                                 : ", on the whole after it is put together";
  PageText text = PageText::hanging(words);
  if (finish.film > Length())
    text += PageText::hanging(fmt::format(
        "{} of film on each side: gaps round leaves, drawers and fronts are cut {} wider than they "
        "are to be, and stand here bare",
        lengths.one(finish.film), lengths.one(finish.film * 2)));
  text += PageText::hanging(std::string("left bare") +
                            (finish.when == FinishedWhen::before ? ", and masked" : "") +
                            ": joints and all that is glued; what drawers run on and by");
  return {{"FINISH", text}};
}

// ---- fittings

std::vector<BoughtLine> bought_by(const ItemReport& report) {
  return bought_for(report.wood, report.job->fittings, report.job->quantity);
}

std::string bought_words(const BoughtLine& line, const std::string& due) {
  const BoughtFitting& its = line.fitting;
  std::string words = its.name;
  if (!its.code.empty()) words += " (" + its.code + ")";
  words += ": " + std::to_string(line.number);
  if (its.pack > 1)
    words += fmt::format(", {} pack{} of {}", line.packs(), line.packs() == 1 ? "" : "s", its.pack);
  if (its.mass > 0)
    words += fmt::format("; {:.2f} kg", its.mass * static_cast<double>(line.number));
  if (its.lead_days)
    words += fmt::format("; {} day{} to come", *its.lead_days, *its.lead_days == 1 ? "" : "s");
  if (const auto day = order_by(its, due)) words += ", so order by " + *day;
  return words;
}

PageParts bought_page(const ItemReport& report) {
  PageText text;
  for (const BoughtLine& line : bought_by(report))
    text += PageText::hanging(bought_words(line, report.job->due));
  if (text.empty()) return {};
  const int quantity = report.job->quantity;
  return {{"FITTINGS of the shop's list" +
               (quantity > 1 ? ", for all " + std::to_string(quantity) : std::string()),
           text}};
}

// ---- the way to its place

namespace {

/// "yes", "tilted", "NO".
std::string way_word(const Passing& way) {
  return !way.goes() ? "NO" : way.tilted ? "tilted" : "yes";
}

std::string kilograms_words(const Weight& weight) {
  if (weight.is_known()) return fmt::format("{:.0f}", weight.kilograms);
  return weight.kilograms > 0 ? fmt::format("{:.0f} and more", weight.kilograms) : "not known";
}

/// What is done with what does not go as a whole.
std::string remark_words(const Carried& its) {
  if (its.goes()) return {};
  if (its.groups.empty()) return its.name + ": does not go in one piece";
  if (its.groups.size() > 1) return its.name + ": put the two together there";
  return its.name + (its.pieces_go ? ": its pieces go, so that it can be put together there"
                                   : ": not all of its pieces go either");
}

/// Why some weights are not known, once.
std::string unknown_of_all(const std::vector<Carried>& all, const ItemReport& report) {
  Weight whole;
  for (const Carried& its : all)
    whole.unknown.insert(whole.unknown.end(), its.weight.unknown.begin(), its.weight.unknown.end());
  if (whole.is_known()) return {};
  return "weight not known: " + unknown_words(whole, report.wood, *report.job);
}

}  // namespace

PageParts carrying_page(const ItemReport& report, const LengthPrinter& lengths) {
  const std::vector<Carried> all = carried(report.wood, *report.job);
  if (all.empty()) return {};
  const Access& way = *report.job->access;
  std::vector<std::string> titles{"", "width", "height", "depth", "kg"};
  if (way.door) titles.emplace_back("door");
  if (way.stair) titles.emplace_back("stair");
  if (way.lift) titles.emplace_back("lift");
  TextTable table(std::move(titles));
  PageText remarks;
  for (const Carried& its : all) {
    std::vector<Cell> row{its.name, its.size[0], its.size[1], its.size[2],
                          kilograms_words(its.weight)};
    for (const auto& each : {its.door, its.stair, its.lift})
      if (each) row.emplace_back(way_word(*each));
    table.add(std::move(row));
    remarks += PageText::hanging(remark_words(its));
  }
  remarks += PageText::hanging(unknown_of_all(all, report));
  remarks += PageText::paragraph(
      "as boxes, with room before and behind what they pass, without hands and blankets");
  return {{"GETTING IT THERE: what is carried as one, and whether it goes",
           PageText::table(table, lengths, 2) + remarks}};
}

}  // namespace haunch
