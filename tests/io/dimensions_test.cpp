// Figures of dimensions, and where they stand.
#include "dimensions.h"

#include "vocabulary.h"

namespace haunch::test {
namespace {

using Figures = std::vector<std::string>;

const LengthPrinter kShopMm(Unit::mm, kBenchLengths), kShopInches(Unit::inch, kBenchLengths);

/// At 1:1, one after the other from zero.
DimensionChain chain_of(const std::vector<Length>& links) {
  DimensionChain chain{false, {0}, links};
  for (const Length link : links)
    chain.places.push_back(chain.places.back() + static_cast<double>(link.steps()) / 1.6e6);
  return chain;
}

Figures figures_of(const DrawnChain& chain) {
  Figures figures;
  for (const Lettering& lettering : chain.picture.letterings)
    figures.push_back(lettering.text);
  return figures;
}

}  // namespace

TEST_CASE("A chain is printed as finely as it takes to add up") {
  CHECK(chain_figures({mm(118), mm(688), mm(118)}, kShopMm) == Figures{"118", "688", "118"});
  // 14.6 + 14.9 + 14.6 would be 44.1, and 14.58 twice 44.01
  CHECK(chain_figures({mm(14.575), mm(14.85), mm(14.575)}, kShopMm) ==
        Figures{"14.575", "14.85", "14.575"});
  // A whole that is told beside its parts is as fine as they are.
  CHECK(chain_figures({mm(57.15), mm(320.675), mm(57.15)}, kShopMm) ==
        Figures{"57.15", "320.675", "57.15"});
  CHECK(chain_figures({mm(434.975)}, kShopMm) == Figures{"434.975"});
  CHECK(chain_figures({inch(2, 1, 4), inch(12, 5, 8)}, kShopInches) == Figures{"2 1/4", "12 5/8"});
}

TEST_CASE("What can't be printed so that it adds up says so") {
  const Length third = Length::from_steps(mm(10).steps() / 3);
  CHECK(chain_figures({third, mm(18), third, third}, kShopMm) ==
        Figures{"about 3.3", "18", "about 3.3", "about 3.3"});
}

TEST_CASE("A figure that is wider than its link stands in a row of its own") {
  const DrawnChain above =
      draw_chain(chain_of({mm(3), mm(40), mm(3)}), kShopMm, TightFigures::above);
  CHECK(figures_of(above) == Figures{"40", "3", "3"});
  CHECK(above.picture.letterings[1].at.v > above.picture.letterings[0].at.v + 3.5);
  const DrawnChain below =
      draw_chain(chain_of({mm(3), mm(40), mm(3)}), kShopMm, TightFigures::below);
  CHECK(below.picture.letterings[1].at.v < 0);
}

TEST_CASE("Where many figures would stand close, places are told from one zero") {
  const DrawnChain chain = draw_chain(chain_of({mm(2.5), mm(2.5), mm(3.5), mm(2.5), mm(2.5)}),
                                      kShopMm, TightFigures::above);
  CHECK(figures_of(chain) == Figures{"0", "2.5", "5", "8.5", "11", "13.5"});
}

TEST_CASE("Figures of a chain don't lie on each other") {
  const std::vector<Length> links(9, mm(6.5));
  for (const TightFigures tight : {TightFigures::above, TightFigures::below})
    for (const bool upright : {false, true}) {
      DimensionChain chain = chain_of(links);
      chain.upright = upright;
      const Picture picture = draw_chain(chain, kShopMm, tight).picture;
      for (std::size_t i = 0; i < picture.letterings.size(); ++i)
        for (std::size_t other = 0; other < i; ++other)
          CHECK_FALSE(
              overlap(extent_of(picture.letterings[i]), extent_of(picture.letterings[other])));
    }
}

}  // namespace haunch::test
