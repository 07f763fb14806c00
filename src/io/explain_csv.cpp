#include "explain_csv.h"

#include "csv_row.h"

namespace haunch {
namespace {

/// "2 x opening.width; -1/3 x muntin_width"
std::string sum_text(const Explanation& explanation, const ExplainedValue& value) {
  std::string text;
  for (const Term& term : value.terms)
    text += (text.empty() ? "" : "; ") + fraction_text(term.factor) + " x " +
            explanation.values[term.value].what;
  return text;
}

void value_field(CsvRow& row, const AssumedValue& value) {
  if (value.kind == AssumedValue::Kind::length) return row.length(value.length);
  if (value.kind == AssumedValue::Kind::number) return row.count(value.number);
  if (value.kind == AssumedValue::Kind::words) return row.text(value.words);
  row.plain("");  // of a list each stands in a row of its own
}

}  // namespace

void append_explanation_csv(std::string& out, const Explanation& explanation, std::string_view what,
                            Unit unit, CsvProfile profile) {
  if (out.empty()) {
    out += csv_start(profile);
    CsvRow titles(out, unit, profile);
    for (const std::string_view title :
         {"item", "what", "value", "unit", "from", "rule", "source", "sum"})
      titles.plain(title);
    titles.end();
  }
  for (const std::size_t number : told_of(explanation, what)) {
    const ExplainedValue& value = explanation.values[number];
    CsvRow row(out, unit, profile);
    row.text(explanation.id);
    row.text(value.what);
    value_field(row, value.value);
    row.plain(value.value.kind == AssumedValue::Kind::length ? word_of(unit) : "");
    row.plain(word_of(value.from));
    row.text(value.rule);
    row.text(value.source);
    row.text(sum_text(explanation, value));
    row.end();
  }
}

}  // namespace haunch
