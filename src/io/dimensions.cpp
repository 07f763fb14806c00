#include "dimensions.h"

#include <algorithm>
#include <cmath>

#include "paper.h"
#include "spread.h"

namespace haunch {
namespace {

constexpr double kFigure = 3.5;                  // of the figures
constexpr double kFirstRow = 0.9, kRowUp = 4.4;  // base lines above the chain's
constexpr double kAcross = 4.3;                  // that a figure across the line takes of it
constexpr double kBelowRow = -5.6;
constexpr double kTick = 1.1;   // half of an end's stroke
constexpr double kAside = 1.2;  // that a figure leaves free in its link
constexpr double kFarOut = 80;  // beyond the ends of a chain no figure goes

Length exactly(double mm) {
  return Length::from_steps(std::llround(mm * static_cast<double>(Length::kStepsPerMm)));
}
double mm_of(Length length) {
  return static_cast<double>(length.steps()) / static_cast<double>(Length::kStepsPerMm);
}

/// Whether all is printed as it is: the same figures in another chain come to the same sum then.
bool is_exact(const std::vector<Length>& links, const LengthPrinter& lengths) {
  return std::all_of(links.begin(), links.end(), [&](Length link) {
    return lengths.as_printed(link) == link && !lengths.one(link).starts_with('~');
  });
}

/// Whether the figures, none of them rounded in a way that shows, come to the figure of their sum.
bool adds_up(const std::vector<Length>& links, const LengthPrinter& lengths) {
  Length sum, printed;
  for (const Length link : links) {
    if (lengths.one(link).starts_with('~')) return false;
    sum += link;
    printed += lengths.as_printed(link);
  }
  return printed == lengths.as_printed(sum);
}

/// Those that are rounded say so.
std::vector<std::string> about_figures(const std::vector<Length>& links,
                                       const LengthPrinter& lengths) {
  std::vector<std::string> figures;
  for (const Length link : links)
    figures.push_back((lengths.as_printed(link) == link ? "" : "about ") + lengths.one(link));
  return figures;
}

class ChainDrawing {
 public:
  ChainDrawing(const DimensionChain& chain, const LengthPrinter& lengths, TightFigures tight)
      : chain_(chain),
        lengths_(lengths.unit() == Unit::mm ? lengths.fine() : lengths),
        figures_(chain_figures(chain.links, lengths)),
        tight_up_(tight == TightFigures::above ? kFirstRow + kRowUp : kBelowRow) {}

  DrawnChain draw() {
    for (std::size_t link = 0; link < chain_.links.size(); ++link)
      picture_.strokes.push_back(
          {Pen::thin,
           {{spot({chain_.places[link], 0}), spot({chain_.places[link + 1], 0})}},
           "",
           chain_.links[link]});
    for (const double place : chain_.places)
      line(Pen::tick, {place - kTick, -kTick}, {place + kTick, kTick});
    if (is_crowded())
      running();
    else
      each();
    return {std::move(picture_), above_, below_};
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
    picture_.letterings.push_back(std::move(its));
    above_ = std::max(above_, up + kFigure * 0.85);
    below_ = std::max(below_, kFigure * 0.25 - up);
  }

  void each() {
    for (std::size_t link = 0; link < chain_.links.size(); ++link)
      if (fits(link)) figure(link, middle(link), kFirstRow);
    tight_ones();
  }

  /// Whether figures that are wider than their links would reach far beyond the chain.
  bool is_crowded() const {
    double tight = 0;
    int count = 0;
    for (std::size_t link = 0; link < chain_.links.size(); ++link)
      if (!fits(link)) {
        tight += width(link);
        ++count;
      }
    return count > 3 && tight > 1.2 * (chain_.places.back() - chain_.places.front());
  }

  /// Places from one zero, the lower or left end, instead: their figures stand across the line.
  void running() {
    const double way = tight_up_ > 0 ? 1 : -1;
    std::vector<Block> blocks;
    for (const double place : chain_.places)
      blocks.push_back({exactly(place - kAcross / 2), exactly(kAcross)});
    const std::vector<Length> starts = spread(blocks, exactly(chain_.places.front() - kFarOut),
                                              exactly(chain_.places.back() + kFarOut));
    Length at;
    double widest = 0;
    for (std::size_t i = 0; i < chain_.places.size(); ++i) {
      if (i > 0) at += chain_.links[i - 1];
      const double middle = mm_of(starts[i]) + kAcross / 2;
      picture_.strokes.push_back(
          {Pen::thin,
           {{spot({chain_.places[i], 0}), spot({chain_.places[i], way * kPastChain}),
             spot({middle, way * (kPastChain + 1.4)})}}});
      const double width = across(at, middle, way * (kPastChain + 1.9));
      widest = std::max(widest, width);
    }
    (way > 0 ? above_ : below_) = kPastChain + 1.9 + widest;
  }

  /// As fine as in a chain of links, where that can be printed.
  std::string running_figure(Length at) const {
    if (lengths_.unit() != Unit::mm) return lengths_.one(at);
    const std::string exact = lengths_.exact().one(at);
    return exact.starts_with('~') ? lengths_.one(at) : exact;
  }

  /// A figure across the line, and how long it is.
  double across(Length at, double middle, double up) {
    const double down = kFigure * 0.36;
    Lettering its{spot({chain_.upright ? middle - down : middle + down, up}), running_figure(at),
                  kFigure};
    its.upright = !chain_.upright;
    its.anchor = (up > 0) == chain_.upright ? Anchor::end : Anchor::start;
    const double width = width_of(its);
    picture_.letterings.push_back(std::move(its));
    return width;
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
      lead(middle(tight[i]), at);
      figure(tight[i], at, tight_up_);
    }
  }

  /// From a link to its figure.
  void lead(double link, double figure) {
    const bool above = tight_up_ > 0;
    const double turn = above ? kFirstRow + kFigure * 0.6 : -kPastChain;
    const double end = above ? tight_up_ - 0.4 : tight_up_ + kFigure * 0.85;
    picture_.strokes.push_back(
        {Pen::thin, {{spot({link, 0}), spot({link, turn}), spot({figure, end})}}});
  }

  const DimensionChain& chain_;
  LengthPrinter lengths_;
  std::vector<std::string> figures_;
  Picture picture_;
  double tight_up_;
  double above_ = 0, below_ = kPastChain;
};

}  // namespace

std::vector<std::string> chain_figures(const std::vector<Length>& links,
                                       const LengthPrinter& lengths) {
  const bool in_mm = lengths.unit() == Unit::mm;
  const LengthPrinter finer[] = {lengths, in_mm ? lengths.fine() : lengths.in_decimals(),
                                 in_mm ? lengths.exact() : lengths.in_decimals()};
  const auto* good = std::find_if(std::begin(finer), std::end(finer), [&](const auto& its) {
    return in_mm ? is_exact(links, its) : adds_up(links, its);
  });
  if (good == std::end(finer))
    good = std::find_if(std::begin(finer), std::end(finer),
                        [&](const auto& its) { return adds_up(links, its); });
  if (good == std::end(finer)) return about_figures(links, lengths);
  std::vector<std::string> figures;
  for (const Length link : links)
    figures.push_back(good->one(link));
  return figures;
}

DrawnChain draw_chain(const DimensionChain& chain, const LengthPrinter& lengths,
                      TightFigures tight) {
  return ChainDrawing(chain, lengths, tight).draw();
}

}  // namespace haunch
