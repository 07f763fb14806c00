#include "setups_words.h"

#include <algorithm>

namespace haunch {
namespace {

std::string setting_text(const NamedSize& setting, const LengthPrinter& lengths) {
  return setting_words(setting.name, lengths.fine().one(setting.size));
}

std::string fault_text(const WayFinding& finding, const LengthPrinter& lengths) {
  constexpr std::string_view kSizes[] = {" long", " wide", " thick"};
  const std::string is = lengths.one(finding.value);
  const std::string may_be = lengths.one(finding.limit);
  switch (finding.fault) {
    case WayFault::no_machine:
      return "no machine does this";
    case WayFault::cutter_wide:
      return "the narrowest cutter is " + is + " wide, the cut only " + may_be;
    case WayFault::cutter_short:
      return "the cutter reaches " + is + ", the cut is " + may_be + " deep";
    case WayFault::cutter_missing:
      if (finding.value == Length()) return "there is no cutter of this shape";
      return "it takes a cutter of just " + may_be + ", the nearest is " + is;
    case WayFault::piece_short:
      return is + " long; not safe under " + may_be;
    case WayFault::piece_narrow:
      return is + " wide; not safe under " + may_be;
    case WayFault::piece_thin:
      return is + " thick; not safe under " + may_be;
    case WayFault::not_held:
      return is + std::string(kSizes[finding.along]) + ": what holds the work here takes no " +
             (finding.value > finding.limit ? "more" : "less") + " than " + may_be;
    case WayFault::no_room:
      return is + " long: it cannot stand on its end here, where there is room for " + may_be;
    case WayFault::curved:
      return "the cut is curved, and what holds the work here takes it past the cutter straight";
  }
  return {};
}

/// What was tried and helps.
std::string remedy_text(const NamedSize& remedy, const LengthPrinter& lengths) {
  if (remedy.name == SizeName::length)
    return "work it " + lengths.one(remedy.size) + " long and cut it to length after";
  return setting_text(remedy, lengths) + " it could be cut here";
}

}  // namespace

std::string setting_words(SizeName name, const std::string& figure) {
  switch (name) {
    case SizeName::length:
      return figure + " long";
    case SizeName::width:
      return figure + " wide";
    case SizeName::thickness:
      return figure + " thick";
    case SizeName::depth:
      return figure + " deep";
    case SizeName::from_face:
      return figure + " from the face side";
    case SizeName::from_edge:
      return figure + " from the edge";
    case SizeName::from_shoulder:
      return figure + " from the shoulder";
    case SizeName::longer_in_front:
      return figure + " longer at the face";
    case SizeName::longer_at_back:
      return figure + " longer at the back";
    default:
      break;
  }
  std::string word(word_of(name));
  std::replace(word.begin(), word.end(), '_', ' ');
  return word + " " + figure;
}

std::string settings_text(const std::vector<NamedSize>& settings, const LengthPrinter& lengths) {
  std::string text;
  for (const NamedSize& setting : settings)
    text += (text.empty() ? "" : ", ") + setting_text(setting, lengths);
  return text;
}

std::string settings_text(const Setup& setup, const LengthPrinter& lengths) {
  return (setup.profile.empty() ? "" : "\"" + setup.profile + "\", ") +
         settings_text(setup.settings, lengths) +
         (setup.through ? ", right through from both sides" : "");
}

std::string holding_text(const Holding& holding, bool in_face, std::string_view datum_name) {
  const std::string worked = in_face ? "worked face" : "worked side";
  const std::string datum(datum_name);
  switch (holding.worked) {
    case WorkedLooks::up:
      return worked + " up, " + datum + " to the fence";
    case WorkedLooks::down:
      return worked + " down, " + datum + " to the fence";
    case WorkedLooks::sideways:
      break;
  }
  if (holding.datum == DatumLies::on_table)
    return datum + " on the table, " + worked + " to the cutter";
  return datum + " to the fence, " + worked + " first";
}

std::string first_piece_text(const FirstPiece& first, const LengthPrinter& lengths) {
  const LengthPrinter fine = lengths.fine();
  std::string text = std::string(word_of(first.size)) + " " + fine.one(first.wanted);
  if (first.least && first.most)
    text += ", " + fine.one(*first.least) + " to " + fine.one(*first.most);
  return text;
}

std::string operation_words(const Setup& setup) {
  std::string words = setup.operation();
  std::replace(words.begin(), words.end(), '-', ' ');
  return words;
}

std::string finding_text(const WayFinding& finding, const LengthPrinter& lengths) {
  const std::string text = fault_text(finding, lengths);
  return finding.remedy ? text + "; " + remedy_text(*finding.remedy, lengths) : text;
}

}  // namespace haunch
