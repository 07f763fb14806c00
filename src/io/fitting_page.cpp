#include <algorithm>
#include <tuple>
#include <vector>

#include "cabinet_work.h"
#include "joinery_parts.h"
#include "machine_sets.h"
#include "report.h"

namespace haunch {
namespace {

/// What is let in to one side of one piece.
struct LetIn {
  const Operation* operation;
  const Run* run;
};

/// Which of the sizes tells its place across the side.
SizeName across_of(const Operation& operation) {
  for (const SizeName name : {SizeName::from_front, SizeName::from_edge, SizeName::from_face})
    if (operation.has(name)) return name;
  return SizeName::from_face;
}
std::string_view across_title(SizeName across) {
  return across == SizeName::from_front  ? "from front"
         : across == SizeName::from_edge ? "from edge"
                                         : "from face";
}

std::vector<std::string> fitting_titles(const LetIn& first) {
  const Run& run = *first.run;
  return {"",
          "",
          "from " + std::string(word_of(run.from)),
          "to",
          "from " + std::string(word_of(*run.to)),
          "round",
          "long",
          "wide",
          "deep",
          std::string(across_title(across_of(*first.operation)))};
}

std::vector<Cell> fitting_row(const Piece& piece, const LetIn& it) {
  const auto cell = [&](SizeName size) {
    return it.operation->has(size) ? Cell(it.operation->setting(size)) : Cell(std::string());
  };
  const Run& run = *it.run;
  return {piece.features[run.feature].fitting->name,
          std::string(word_of(it.operation->makes)),
          run.near,
          run.far,
          *run.from_other_end,
          cell(SizeName::diameter),
          cell(SizeName::length),
          cell(SizeName::width),
          it.operation->through ? Cell(std::string("through")) : cell(SizeName::depth),
          cell(across_of(*it.operation))};
}

std::string inner_face(const Piece& jamb) {
  return has_long_rebate(jamb) ? "inner face, in the bottom of its rebate" : "inner face";
}

/// "outer edge", of a stile; else "upper edge", "inner face", "face side" …
std::string side_text(const Assembly& wood, const Piece& piece, const Run& run) {
  const std::string side(word_of(side_of(piece, run.side)));
  if (piece.role == Role::jamb && piece.place.axes[run.side.into] == Axis::x)
    return (piece.place.origin[0] == Length()) == (side == "right") ? inner_face(piece)
                                                                    : "outer face";
  if (run.side.into == 2)
    return side == "face" ? "face side" : side == "back" ? side : side + " face";
  if (run.side.into == 0) return side + " end";
  const bool outer = piece.role == Role::stile &&
                     (piece.place.origin[0] == told_in(wood, piece).low[0]) == (side == "left");
  return piece.role == Role::stile ? (outer ? "outer edge" : "face edge") : side + " edge";
}

/// What is told with the rods of a case and the cups of its leaves.
bool is_told_elsewhere(FeatureKind kind) {
  return kind == FeatureKind::shelf_pin_holes || kind == FeatureKind::hinge_cup ||
         kind == FeatureKind::screw_hole;
}

/// Edges first, then faces, then ends; in each the order in which it was set out.
std::vector<LetIn> all_let_in(const Assembly& wood, const Making& making) {
  std::vector<LetIn> all;
  for (const Operation& operation : making.operations)
    for (const Run& run : operation.runs)
      if (wood.pieces[run.piece].features[run.feature].fitting &&
          !is_told_elsewhere(operation.makes))
        all.push_back({&operation, &run});
  const auto place = [](const LetIn& it) {
    constexpr int kOrder[] = {2, 0, 1};
    return std::tuple(it.run->piece, kOrder[it.run->side.into], it.run->side.from_high,
                      it.run->feature);
  };
  std::sort(all.begin(), all.end(),
            [&](const LetIn& a, const LetIn& b) { return place(a) < place(b); });
  return all;
}

PageText sides_text(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  const std::vector<LetIn> all = all_let_in(wood, making);
  PageText text;
  for (auto first = all.begin(); first != all.end();) {
    const Run& run = *first->run;
    const Piece& piece = wood.pieces[run.piece];
    TextTable table(fitting_titles(*first));
    for (; first != all.end() && first->run->piece == run.piece && first->run->side == run.side;
         ++first)
      table.add(fitting_row(piece, *first));
    text += PageText::hanging(piece.mark + ", " + piece.name + ": " + side_text(wood, piece, run)) +
            PageText::table(table, lengths, 4);
  }
  return text;
}

bool is_arched(const Assembly& wood) {
  return std::any_of(wood.pieces.begin(), wood.pieces.end(), [](const Piece& piece) {
    return std::any_of(piece.features.begin(), piece.features.end(), [](const Feature& feature) {
      return feature.kind == FeatureKind::arched_head && size_of(feature, SizeName::side);
    });
  });
}

bool is_jamb_with_fittings(const Piece& piece) {
  return piece.role == Role::jamb &&
         std::any_of(piece.features.begin(), piece.features.end(),
                     [](const Feature& feature) { return feature.fitting.has_value(); });
}

bool is_leaf_work(const Assembly& wood) {
  return !is_cabinet_work(wood);
}

/// The lines that the titles name.
std::string lines_text(const Assembly& wood, const Making& making) {
  std::string text = is_leaf_work(wood) ? "From foot, top, left and right: of the leaf"
                                        : "From foot, top, left, right, front and rear: of the "
                                          "leaf, of what is no leaf's of the piece itself";
  if (is_arched(wood)) text += ", of a stile under the arched top the top of its outer edge";
  const auto jamb = std::find_if(wood.pieces.begin(), wood.pieces.end(), is_jamb_with_fittings);
  if (jamb == wood.pieces.end()) return text;
  const auto number = static_cast<std::size_t>(jamb - wood.pieces.begin());
  text +=
      "; of a jamb " + std::string(making.shoulders[number].low ? "from the shoulder on the sill"
                                                                : "from its own foot");
  const Piece* lintel = lintel_of(wood);
  if (lintel == nullptr) return text;
  const bool rebated = underside_in_rebate(*lintel) != lintel->place.origin[1];
  return text + " and from the underside of the " + std::string(word_of(lintel->role)) +
         (rebated ? ", in its rebate" : "");
}

/// A faceplate's own depth does not shift that of the mortise behind it.
std::string depth_text(const Assembly& wood) {
  const bool rebated = std::any_of(wood.pieces.begin(), wood.pieces.end(), [](const Piece& piece) {
    return is_jamb_with_fittings(piece) && has_long_rebate(piece);
  });
  return "Deep: from the edge or face, not from the bottom of another cut" +
         std::string(rebated ? "; in a jamb's rebate from the bottom of the rebate." : ".");
}

}  // namespace

PageParts fittings_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  const PageText page = sides_text(wood, making, lengths);
  if (page.empty()) return {};
  const PageText lines = PageText::paragraph(
      lines_text(wood, making) + ". " + depth_text(wood) +
      " From edge: the piece's outer edge, or where it has none the left or lower "
      "one. Of a round hole its middle is told.");
  const bool leaf = is_leaf_work(wood);
  return {{leaf ? "FITTINGS, let in after glue-up, horns sawn off" : "FITTINGS", page, {lines}}};
}

std::vector<std::string> fitting_lines(const Assembly& wood, const Making& making,
                                       const LengthPrinter& lengths) {
  std::vector<std::string> lines;
  const Run* last = nullptr;
  for (const LetIn& it : all_let_in(wood, making)) {
    const Run& run = *it.run;
    const Piece& piece = wood.pieces[run.piece];
    if (last == nullptr || last->piece != run.piece || !(last->side == run.side))
      lines.push_back(piece.mark + ", " + side_text(wood, piece, run) + ":");
    last = &run;
    std::string words = piece.features[run.feature].fitting->name;
    words += " " + std::string(word_of(it.operation->makes)) + " " + lengths.one(run.near);
    if (run.far) words += " to " + lengths.one(*run.far);
    words += " from " + std::string(word_of(run.from));
    const auto add = [&](SizeName size, std::string_view says) {
      if (it.operation->has(size))
        words += ", " + lengths.one(it.operation->setting(size)) + " " + std::string(says);
    };
    add(SizeName::diameter, "round");
    add(SizeName::width, "wide");
    if (it.operation->through)
      words += ", through";
    else
      add(SizeName::depth, "deep");
    add(across_of(*it.operation), across_title(across_of(*it.operation)));
    lines.push_back(std::move(words));
  }
  return lines;
}

}  // namespace haunch
