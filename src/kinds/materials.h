// What the pieces of a job are made of, by name, and what is doubtful in those names.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "kind.h"

namespace haunch {

/// What is bought as sheets and used as thick as they are, by the words of the trade.
bool is_sheet_goods(std::string_view material);

/// What a piece of a job is made of: its own material, else the species of its role.
const std::string& material_of(const Piece& piece, const Job& job);

/// The same to weigh it by: dowels, wedges and the like, for which no wood is named, are taken to
/// be of the stiles' wood.
const std::string& weighed_as(const Piece& piece, const Job& job);

/// Whether any wood is named.
bool names_any_wood(const Job& job);

/// Names of woods that are near a listed one, or could mean several, and yet are none: each is
/// worked as a material of its own, and whoever wrote it is told.
std::vector<Caution> doubts_of_names(const Job& job);

}  // namespace haunch
