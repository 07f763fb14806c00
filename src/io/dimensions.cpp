#include "dimensions.h"

#include <algorithm>
#include <cmath>

#include "paper.h"
#include "spread.h"

namespace haunch {
namespace {

constexpr double kFigure = 3.5;                  // of the figures
constexpr double kFirstRow = 0.9, kRowUp = 4.4;  // base lines above the chain's
constexpr double kTick = 1.1;                    // half of an end's stroke
constexpr double kAside = 1.2;                   // that a figure leaves free in its link
constexpr double kFarOut = 80;                   // beyond the ends of a chain no figure goes

Length exactly(double mm) {
  return Length::from_steps(std::llround(mm * static_cast<double>(Length::kStepsPerMm)));
}
double mm_of(Length length) {
  return static_cast<double>(length.steps()) / static_cast<double>(Length::kStepsPerMm);
}

bool adds_up(const std::vector<Length>& links, const LengthPrinter& lengths) {
  Length sum, printed;
  for (const Length link : links) {
    sum += link;
    printed += lengths.as_printed(link);
  }
  return printed == lengths.as_printed(sum);
}

class ChainDrawing {
 public:
  ChainDrawing(const DimensionChain& chain, const LengthPrinter& lengths)
      : chain_(chain), figures_(chain_figures(chain.links, lengths)) {}

  DrawnChain draw() {
    line(Pen::thin, {chain_.places.front(), 0}, {chain_.places.back(), 0});
    for (const double place : chain_.places)
      line(Pen::tick, {place - kTick, -kTick}, {place + kTick, kTick});
    for (std::size_t link = 0; link < chain_.links.size(); ++link)
      if (fits(link)) figure(link, middle(link), kFirstRow);
    tight_ones();
    return {std::move(picture_), above_};
  }

 private:
  double middle(std::size_t link) const {
    return (chain_.places[link] + chain_.places[link + 1]) / 2;
  }
  double width(std::size_t link) const { return width_of({{}, figures_[link], kFigure}) + kAside; }
  bool fits(std::size_t link) const {
    return width(link) <= chain_.places[link + 1] - chain_.places[link];
  }

  /// A place along the chain and above it, on the paper.
  ViewSpot spot(const ViewSpot& place) const {
    return chain_.upright ? ViewSpot{-place.v, place.u} : place;
  }
  void line(Pen pen, const ViewSpot& from, const ViewSpot& to) {
    picture_.line(pen, spot(from), spot(to));
  }

  void figure(std::size_t link, double at, double up) {
    Lettering its{spot({at, up}), figures_[link], kFigure};
    its.upright = chain_.upright;
    its.mm = chain_.links[link];
    picture_.letterings.push_back(std::move(its));
    above_ = std::max(above_, up + kFigure * 0.85);
  }

  /// Figures that are wider than their links: in a row of their own, moved apart, each with a line
  /// from where it belongs.
  void tight_ones() {
    std::vector<std::size_t> tight;
    std::vector<Block> blocks;
    for (std::size_t link = 0; link < chain_.links.size(); ++link) {
      if (fits(link)) continue;
      tight.push_back(link);
      blocks.push_back({exactly(middle(link) - width(link) / 2), exactly(width(link))});
    }
    const std::vector<Length> starts = spread(blocks, exactly(chain_.places.front() - kFarOut),
                                              exactly(chain_.places.back() + kFarOut));
    for (std::size_t i = 0; i < tight.size(); ++i) {
      const double at = mm_of(starts[i]) + width(tight[i]) / 2;
      const double up = kFirstRow + kRowUp;
      picture_.strokes.push_back(
          {Pen::thin,
           {{spot({middle(tight[i]), 0}), spot({middle(tight[i]), kFirstRow + kFigure * 0.6}),
             spot({at, up - 0.4})}}});
      figure(tight[i], at, up);
    }
  }

  const DimensionChain& chain_;
  std::vector<std::string> figures_;
  Picture picture_;
  double above_ = 0;
};

}  // namespace

std::vector<std::string> chain_figures(const std::vector<Length>& links,
                                       const LengthPrinter& lengths) {
  const LengthPrinter finer[] = {lengths, lengths.fine(), lengths.exact()};
  const auto good = std::find_if(std::begin(finer), std::end(finer),
                                 [&](const auto& its) { return adds_up(links, its); });
  const bool about = good == std::end(finer);
  std::vector<std::string> figures;
  for (const Length link : links)
    figures.push_back((about ? "about " : "") + (about ? lengths : *good).one(link));
  return figures;
}

DrawnChain draw_chain(const DimensionChain& chain, const LengthPrinter& lengths) {
  return ChainDrawing(chain, lengths).draw();
}

}  // namespace haunch
