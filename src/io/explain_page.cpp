#include "explain_page.h"

#include <algorithm>

#include "report_page.h"
#include "text_table.h"

namespace haunch {
namespace {

/// The other unit for orientation: inches in decimals.
LengthPrinter printer(Unit unit, Unit own, const View& view) {
  const LengthPrinter lengths(unit, view.lengths);
  return unit == own ? lengths : lengths.in_decimals();
}

std::string in_both(const AssumedValue& value, const View& view, Unit own) {
  const Unit other = own == Unit::mm ? Unit::inch : Unit::mm;
  const auto in = [&](Unit unit) { return value_text(value, printer(unit, own, view)); };
  if (value.kind != AssumedValue::Kind::length) return in(own);
  return in(own) + " " + std::string(word_of(own)) + " (" + in(other) + " " +
         std::string(word_of(other)) + ")";
}

/// "spec, line 6", "shaker.json, line 2" of another spec than its own, "built in: usual for a house
/// door"
std::string origin_text(const ExplainedValue& value, const std::string& spec) {
  std::string text(word_of(value.from));
  if (value.from == SaidIn::spec) {
    const std::size_t column = value.source.rfind(':');
    const std::size_t line = value.source.rfind(':', column - 1) + 1;
    std::string file = value.source.substr(0, line - 1);
    if (file == "--with") return file;
    return (file == spec ? text : file) + ", line " + value.source.substr(line, column - line);
  }
  if (value.from == SaidIn::shop || value.rule.empty()) return text;
  return text + ": " + value.rule;
}

/// "+", "- 2 x", "+ 1/3 of"
std::string factor_text(Fraction factor, bool first) {
  const bool minus = factor.over < 0;
  if (minus) factor.over = -factor.over;
  std::string text = minus ? "-" : first ? "" : "+";
  if (factor == Fraction{1, 1}) return text;
  if (!text.empty()) text += " ";
  return text + fraction_text(factor) + (factor.under == 1 ? " x" : " of");
}

/// What is put together first, then what comes off.
std::string sum_text(const Explanation& explanation, const ExplainedValue& value,
                     const LengthPrinter& lengths) {
  std::vector<Term> terms = value.terms;
  std::stable_partition(terms.begin(), terms.end(),
                        [](const Term& term) { return term.factor.over > 0; });
  TextTable table({"", "", "", ""});
  for (const Term& term : terms) {
    const ExplainedValue& its = explanation.values[term.value];
    table.add({factor_text(term.factor, &term == &terms.front()), its.what, its.value.length,
               origin_text(its, explanation.source)});
  }
  const std::string text = table.text(lengths, 4);
  return text.substr(text.find('\n') + 1);  // its line of titles, which are empty
}

std::string one_page(const Explanation& explanation, const ExplainedValue& value, const View& view,
                     Unit unit) {
  std::string page = hanging(value.what + ": " + in_both(value.value, view, unit) + ", " +
                                 origin_text(value, explanation.source) +
                                 (value.source.empty() || value.from == SaidIn::spec ||
                                          value.rule.find(value.source) != std::string::npos
                                      ? ""
                                      : " (" + value.source + ")"),
                             0);
  return page + sum_text(explanation, value, LengthPrinter(unit, view.lengths));
}

bool is_size(const AssumedValue& value) {
  return value.kind == AssumedValue::Kind::length || value.kind == AssumedValue::Kind::lengths;
}

std::string all_page(const Explanation& explanation, const View& view, Unit own) {
  TextTable sizes({"size", "mm", "in", "from"});
  TextTable others({"other", "is", "from"});
  const LengthPrinter mm = printer(Unit::mm, own, view), inches = printer(Unit::inch, own, view);
  for (std::size_t i = 0; i < explanation.stated; ++i) {
    const ExplainedValue& value = explanation.values[i];
    if (is_size(value.value))
      sizes.add({value.what, value_text(value.value, mm), value_text(value.value, inches),
                 origin_text(value, explanation.source)});
    else
      others.add({value.what, value_text(value.value, mm), origin_text(value, explanation.source)});
  }
  std::string page = "\n" + sizes.text(mm, 2);
  if (!others.empty()) page += "\n" + others.text(mm, 2);
  return page;
}

}  // namespace

std::string explain_page(const Explanation& explanation, std::string_view what, const View& view) {
  const Unit unit = view.unit.value_or(explanation.unit);
  std::string page = explanation.id + "\n";
  if (what.empty()) return page + all_page(explanation, view, unit);
  const std::vector<std::size_t> meant = meant_by(explanation, what);
  for (const std::size_t number : meant)
    page += "\n" + one_page(explanation, explanation.values[number], view, unit);
  for (const std::size_t number : told_of(explanation, what)) {
    const ExplainedValue& value = explanation.values[number];
    const bool is_told = std::find(meant.begin(), meant.end(), number) != meant.end();
    if (!is_told && !value.terms.empty()) page += "\n" + one_page(explanation, value, view, unit);
  }
  return page;
}

}  // namespace haunch
