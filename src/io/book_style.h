// The head of a book: how it looks on a screen, on a phone, and printed.
#pragma once

#include <string>

#include "paper.h"

namespace haunch {

/// Of a table with the class "n3" the third column is of figures, which stand to the right; with
/// "w3" of many words, in lines below each other.
std::string column_rules();

/// From the document's first line up to the beginning of its body.
std::string book_head(const std::string& title, const Paper& paper);

}  // namespace haunch
