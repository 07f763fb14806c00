#include "materials.h"

#include <fmt/core.h>

#include <algorithm>
#include <cctype>

#include "species.h"

namespace haunch {
namespace {

std::vector<std::string> names_of(const OfRoles<std::string>& species) {
  std::vector<std::string> names;
  const auto add = [&](const std::string& name) {
    if (!name.empty() && std::find(names.begin(), names.end(), name) == names.end())
      names.push_back(name);
  };
  add(species.all);
  for (const auto& its : species.own)
    add(its.second);
  return names;
}

}  // namespace

bool is_sheet_goods(std::string_view material) {
  constexpr std::string_view kSheets[] = {
      "mdf",           "hdf",        "osb",       "ply",        "chipboard", "particle board",
      "particleboard", "blockboard", "hardboard", "fibreboard", "fiberboard"};
  std::string folded(material);
  std::transform(folded.begin(), folded.end(), folded.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return std::any_of(std::begin(kSheets), std::end(kSheets),
                     [&](std::string_view word) { return folded.find(word) != std::string::npos; });
}

const std::string& material_of(const Piece& piece, const Job& job) {
  return piece.material.empty() ? job.species.of(piece.role) : piece.material;
}

const std::string& weighed_as(const Piece& piece, const Job& job) {
  const std::string& material = material_of(piece, job);
  const bool of_a_joint =
      (piece.role >= Role::wedge && piece.role <= Role::spline) || piece.role == Role::bead;
  return material.empty() && of_a_joint ? job.species.of(Role::stile) : material;
}

bool names_any_wood(const Job& job) {
  return !names_of(job.species).empty();
}

std::vector<Caution> doubts_of_names(const Job& job) {
  std::vector<Caution> doubts;
  for (const std::string& name : names_of(job.species)) {
    if (find_species(name, job.woods)) continue;
    const std::vector<Species> several = search_species(name, job.woods);
    const std::string nearest = nearest_species(name);
    if (several.size() > 1)
      doubts.push_back(
          {"wood", fmt::format("\"{}\" may be any of {} listed woods, such as \"{}\"; "
                               "write which, so that its weight and movement are known",
                               name, several.size(), several.front().name)});
    else if (!nearest.empty())
      doubts.push_back(
          {"wood", fmt::format("\"{}\" is no listed wood, and is worked as a material of "
                               "its own; if \"{}\" is meant, write that, so that its "
                               "weight and movement are known",
                               name, nearest)});
  }
  return doubts;
}

}  // namespace haunch
