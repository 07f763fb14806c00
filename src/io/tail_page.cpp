// Dovetails and finger joints, as they are marked on the end of a board.
#include <algorithm>
#include <vector>

#include "joinery_parts.h"
#include "machine_sets.h"
#include "report.h"

namespace haunch {
namespace {

/// Ends that are cut alike.
struct AlikeEnds {
  const Joint* joint;
  bool at_low;  // of the entering pieces
  Marks enter, receive;
};

bool are_alike(const AlikeEnds& ends, const Joint& joint) {
  const TailSizes& one = *ends.joint->tails;
  const TailSizes& other = *joint.tails;
  return ends.joint->kind == joint.kind && ends.at_low != joint.heading.upwards &&
         one.length == other.length && one.spread == other.spread &&
         std::equal(one.each.begin(), one.each.end(), other.each.begin(), other.each.end(),
                    [](const TenonSpan& a, const TenonSpan& b) {
                      return a.from_edge == b.from_edge && a.width == b.width;
                    });
}

std::vector<AlikeEnds> ends_in(const Assembly& wood, bool sloping) {
  std::vector<AlikeEnds> all;
  for (const Joint& joint : wood.joints) {
    if (!joint.tails || (joint.tails->spread > Length()) != sloping) continue;
    auto its = std::find_if(all.begin(), all.end(),
                            [&](const AlikeEnds& ends) { return are_alike(ends, joint); });
    if (its == all.end()) its = all.insert(all.end(), {&joint, !joint.heading.upwards, {}, {}});
    add_once(its->enter, wood.pieces[joint.enters].mark);
    add_once(its->receive, wood.pieces[joint.receives].mark);
  }
  return all;
}

/// Of a lapped joint what is left before its tails.
Length lap_of(const Assembly& wood, const Joint& joint) {
  const Piece& receives = wood.pieces[joint.receives];
  const auto in = static_cast<std::size_t>(joint.heading.axis);
  return placed_blank(receives).extent(in) - joint.tails->length;
}

PageText told(const Assembly& wood, const AlikeEnds& ends, const LengthPrinter& lengths) {
  const TailSizes& tails = *ends.joint->tails;
  const Piece& piece = wood.pieces[ends.joint->enters];
  std::string text = end_name(piece, ends.at_low) + " of " + joined(ends.enter) + ", into " +
                     joined(ends.receive) + ": shoulder line " + lengths.one(tails.length) +
                     " from the end";
  if (tails.spread > Length())
    text += ", where each is " + lengths.fine().one(tails.spread) + " narrower at either side";
  if (const Length lap = lap_of(wood, *ends.joint); lap > Length())
    text +=
        "; sockets " + lengths.one(tails.length) + " deep, " + lengths.one(lap) + " of lap left";
  return PageText::paragraph(text);
}

PageText table_of(const AlikeEnds& ends, const LengthPrinter& lengths) {
  const TailSizes& tails = *ends.joint->tails;
  TextTable table({"", "begins", "ends", "wide", "at the shoulder", "to"});
  std::size_t number = 0;
  for (const TenonSpan& span : tails.each) {
    const Length high = span.from_edge + span.width;
    const bool slopes = tails.spread > Length();
    const auto root = [&](Length at) { return slopes ? std::optional(at) : std::nullopt; };
    table.add({std::to_string(++number), Cell::of_fit(span.from_edge), Cell::of_fit(high),
               Cell::of_fit(span.width), Cell::of_fit(root(span.from_edge + tails.spread)),
               Cell::of_fit(root(high - tails.spread))});
  }
  return PageText::table(table, lengths, 4);
}

// ---- ends whose tails are all alike and as far apart: a row each, stepped off

/// From where one begins to where the next does, if it is always the same and all are as wide.
std::optional<Length> step_of(const TailSizes& tails) {
  // What is shared out evenly differs by steps that nobody can measure.
  constexpr Length kSame = Length::from_mm_thousandths(1);
  const auto same = [&](Length a, Length b) { return std::max(a, b) - std::min(a, b) <= kSame; };
  if (tails.each.size() < 3) return {};
  const Length step = tails.each[1].from_edge - tails.each[0].from_edge;
  for (std::size_t i = 0; i < tails.each.size(); ++i)
    if (!same(tails.each[i].width, tails.each[0].width) ||
        (i > 0 && !same(tails.each[i].from_edge - tails.each[i - 1].from_edge, step)))
      return {};
  return step;
}

std::vector<std::string> step_titles() {
  return {"on", "end", "into", "line", "lap", "number", "from", "every", "wide", "to", "in"};
}

std::vector<Cell> step_row(const Assembly& wood, const AlikeEnds& ends, Length step) {
  const TailSizes& tails = *ends.joint->tails;
  const TenonSpan& last = tails.each.back();
  const std::string end = end_name(wood.pieces[ends.joint->enters], ends.at_low);
  const auto if_any = [](Length size) {
    return size > Length() ? std::optional(size) : std::nullopt;
  };
  return {Cell::of_mark(joined(ends.enter)),          end.substr(0, end.find(' ')),
          Cell::of_mark(joined(ends.receive)),        tails.length,
          if_any(lap_of(wood, *ends.joint)),          std::to_string(tails.each.size()),
          Cell::of_fit(tails.each.front().from_edge), Cell::of_fit(step),
          Cell::of_fit(tails.each.front().width),     Cell::of_fit(last.from_edge + last.width),
          Cell::of_fit(if_any(tails.spread))};
}

std::string step_legend(bool sloping) {
  return std::string(
             "line: shoulder line from the end; from, to: where the first begins, where the "
             "last ends; every: from one to the next") +
         (sloping ? "; in: narrower at the line by, each side" : "");
}

/// The edge that the low places across a tailed piece are told from: of what lies flat its front
/// one.
std::string marked_from(const Assembly& wood, bool sloping) {
  const auto lies = [&](const Joint& joint) {
    return joint.tails && (joint.tails->spread > Length()) == sloping &&
           wood.pieces[joint.enters].place.axes[1] == Axis::z;
  };
  const bool flat = std::any_of(wood.joints.begin(), wood.joints.end(), lies);
  return flat ? "from the front edge" : "from the lower edge";
}

PageParts page_of(const Assembly& wood, bool sloping, const LengthPrinter& lengths) {
  PageText uneven;
  TextTable even(step_titles());
  for (const AlikeEnds& ends : ends_in(wood, sloping))
    if (const auto step = step_of(*ends.joint->tails))
      even.add(step_row(wood, ends, *step));
    else
      uneven += told(wood, ends, lengths) + table_of(ends, lengths);
  const PageText body = PageText::table(even, lengths, 2) + uneven;
  if (body.empty()) return {};
  const std::string how =
      sloping ? "Mark the tails at the end, square the line round, saw; sockets from them."
              : "Cut the fingers of both ends with one cutter; what is told are those of the ends "
                "named, and of the other piece it is the slots.";
  return {
      {(sloping ? "DOVETAILS, tails " : "FINGERS, ") + marked_from(wood, sloping),
       body,
       {PageText::paragraph(even.empty() ? "" : step_legend(sloping)), PageText::paragraph(how)}}};
}

}  // namespace

PageParts tail_page(const Assembly& wood, const Making&, const LengthPrinter& lengths) {
  PageParts page = page_of(wood, true, lengths);
  append(page, page_of(wood, false, lengths));
  return page;
}

}  // namespace haunch
