#include "weight.h"

#include <fmt/core.h>

#include <algorithm>
#include <map>
#include <string_view>

#include "extras.h"
#include "materials.h"
#include "moisture.h"
#include "volume.h"

namespace haunch {
namespace {

/// Where the moisture at the bench is not stated: that at which densities are printed.
constexpr double kUsualPercent = 12;

/// The most that one person should lift under the best conditions: 51 lb (23 kg), NIOSH.
constexpr double kOnePersonLifts = 23;

/// Much of a sealed unit is gas; its weight is not that of so much glass.
bool is_sealed_unit(const Assembly& wood, std::size_t piece) {
  return std::any_of(wood.joints.begin(), wood.joints.end(), [&](const Joint& joint) {
    return joint.enters == piece && joint.kind == JointKind::sealed_unit_in_rebate;
  });
}

/// Weighs the pieces of a job; each wood is looked up once.
class Scale {
 public:
  Scale(const Assembly& wood, const Job& job, double percent)
      : wood_(wood), job_(job), percent_(percent) {}

  std::optional<double> kilograms_of(std::size_t piece) {
    constexpr double kCubicMmInCubicMetre = 1e9;
    const auto density = density_of(piece);
    if (!density) return {};
    return *density * volume_left(wood_.pieces[piece]) / kCubicMmInCubicMetre;
  }

 private:
  std::optional<double> density_of(std::size_t piece) {
    if (is_sealed_unit(wood_, piece)) return {};
    if (wood_.pieces[piece].matter == Matter::glass) return kGlassDensity;
    const std::string& name = weighed_as(wood_.pieces[piece], job_);
    const auto [known, is_new] = densities_.try_emplace(name);
    if (!is_new) return known->second;
    if (const auto species = find_species(name, job_.woods))
      known->second = density_kg_m3(*species, percent_);
    return known->second;
  }

  const Assembly& wood_;
  const Job& job_;
  double percent_;
  std::map<std::string_view, std::optional<double>> densities_;  // by the names that the job holds
};

/// The sum of pieces that are `of` something.
template <typename Of>
Weight sum_of(const std::vector<std::optional<double>>& pieces, Of of) {
  Weight sum;
  for (std::size_t piece = 0; piece < pieces.size(); ++piece) {
    if (!of(piece)) continue;
    if (!pieces[piece])
      sum.unknown.push_back(piece);
    else
      sum.kilograms += *pieces[piece];
  }
  return sum;
}

/// To whole kilograms or pounds.
std::string in_unit(double kilograms, Unit unit) {
  constexpr double kPounds = 1 / 0.45359237;
  return unit == Unit::mm ? fmt::format("{:.0f} kg", kilograms)
                          : fmt::format("{:.0f} lb", kilograms * kPounds);
}

bool has_hinges(const Assembly& wood, std::size_t group) {
  return std::any_of(wood.pieces.begin(), wood.pieces.end(), [&](const Piece& piece) {
    return piece.group == group &&
           std::any_of(piece.features.begin(), piece.features.end(),
                       [](const Feature& it) { return it.kind == FeatureKind::gain; });
  });
}

/// Of several leaves the heaviest, if one is by a figure that is told.
struct Heaviest {
  std::string name;
  const LeafWeight* leaf = nullptr;
};

Heaviest heaviest_of(const Weights& weights, const Assembly& wood, Unit unit) {
  Heaviest heaviest{"the leaf", &weights.leaves.front()};
  if (weights.leaves.size() == 1) return heaviest;
  const auto less = [](const LeafWeight& a, const LeafWeight& b) {
    return a.weight.kilograms < b.weight.kilograms;
  };
  const auto [least, most] =
      std::minmax_element(weights.leaves.begin(), weights.leaves.end(), less);
  heaviest.leaf = &*most;
  heaviest.name = in_unit(least->weight.kilograms, unit) == in_unit(most->weight.kilograms, unit)
                      ? "each leaf"
                      : "the " + group_name(wood.groups[most->group]) + ", the heavier,";
  return heaviest;
}

}  // namespace

bool Weights::any_known() const {
  return std::any_of(pieces.begin(), pieces.end(), [](const auto& it) { return it.has_value(); });
}

Weights weigh(const Assembly& wood, const Job& job) {
  Weights weights;
  weights.percent = job.season ? job.season->moisture.build : kUsualPercent;
  Scale scale(wood, job, weights.percent);
  for (std::size_t piece = 0; piece < wood.pieces.size(); ++piece)
    weights.pieces.push_back(scale.kilograms_of(piece));
  weights.whole =
      sum_of(weights.pieces, [&](std::size_t piece) { return !lies_beside(wood.pieces[piece]); });
  for (std::size_t group = 0; group < wood.groups.size(); ++group)
    if (wood.groups[group].kind == GroupKind::leaf)
      weights.leaves.push_back({group, sum_of(weights.pieces, [&](std::size_t piece) {
                                  return wood.pieces[piece].group == group;
                                })});
  return weights;
}

std::string unknown_words(const Weight& weight, const Assembly& wood, const Job& job) {
  std::vector<std::string> names;
  for (const std::size_t piece : weight.unknown) {
    std::string name = is_sealed_unit(wood, piece) ? "sealed units, whose weight their maker gives"
                                                   : weighed_as(wood.pieces[piece], job);
    if (std::find(names.begin(), names.end(), name) == names.end())
      names.push_back(std::move(name));
  }
  // What has no name at all comes last.
  std::stable_partition(names.begin(), names.end(), [](const auto& it) { return !it.empty(); });
  std::string words;
  for (const std::string& name : names) {
    if (name.empty())
      words += (words.empty() ? "" : ", and ") + std::string("no wood is named");
    else
      words += (words.empty() ? "no density for " : ", ") + name;
  }
  return words;
}

namespace {

/// "no density for LVL; the rest comes to 31 kg".
std::string why_unknown(const Weight& weight, const Assembly& wood, const Job& job) {
  return unknown_words(weight, wood, job) +
         (weight.kilograms > 0 ? "; the rest comes to " + in_unit(weight.kilograms, job.unit) : "");
}

}  // namespace

std::string weight_words(const Weight& weight, const Assembly& wood, const Job& job) {
  if (weight.is_known()) return in_unit(weight.kilograms, job.unit);
  return "weight not known: " + why_unknown(weight, wood, job);
}

std::vector<Caution> weight_cautions(const Weights& weights, const Assembly& wood, const Job& job) {
  std::vector<Caution> cautions;
  if (weights.leaves.empty()) return cautions;
  const auto& [name, leaf] = heaviest_of(weights, wood, job.unit);
  const Weight& weight = leaf->weight;
  const std::string comes_to =
      weight.is_known()
          ? fmt::format("{} comes to some {} at {} moisture", name, weight_words(weight, wood, job),
                        percent_words(weights.percent))
          : weight_words(weight, wood, job);
  const bool hung = has_hinges(wood, leaf->group);
  if (hung)
    cautions.push_back({"weight on the hinges",
                        comes_to + "; see that the load table of the hinges' maker carries it"});
  if (weight.kilograms > kOnePersonLifts)
    cautions.push_back(
        {"lifting", comes_to + "; above 23 kg (51 lb, NIOSH's limit for one person under the best "
                               "conditions) lift it with two"});
  else if (!hung && !weight.is_known() && names_any_wood(job))
    cautions.push_back({"weight not known", why_unknown(weight, wood, job)});
  return cautions;
}

}  // namespace haunch
