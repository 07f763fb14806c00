#include "csv_row.h"
#include "lumber_text.h"

namespace haunch {
namespace {

void append_head(CsvRow& row, Unit unit, bool planned) {
  const std::string suffix = unit == Unit::mm ? "_mm" : "_in";
  for (const char* name : {"part", "piece", "of", "material"})
    row.plain(name);
  if (planned)
    for (const char* name : {"stock", "board", "bought"})
      row.plain(name);
  row.plain("thickness" + suffix);
  if (planned)
    for (const char* name : {"x", "y"})
      row.plain(name + suffix);
  row.plain("length" + suffix);
  row.plain("width" + suffix);
  row.end();
}

}  // namespace

std::string lumber_csv(const LumberReport& report, Unit unit, CsvProfile profile) {
  std::string out(csv_start(profile));
  const auto row = [&] { return CsvRow(out, unit, profile); };
  CsvRow head = row();
  append_head(head, unit, report.has_stock);
  const auto begin = [&](CsvRow& line, const LumberPiece& piece) {
    line.text(report.parts[piece.part].name);
    line.count(static_cast<std::int64_t>(piece.number));
    line.count(static_cast<std::int64_t>(piece.of));
    line.text(report.parts[piece.part].material);
  };
  for (std::size_t i = 0; i < report.parts.size() && !report.has_stock; ++i) {
    if (!report.rough[i]) continue;
    const RoughPart& rough = *report.rough[i];
    for (std::size_t number = 1; number <= rough.pieces(); ++number) {
      CsvRow line = row();
      begin(line, {i, number, rough.pieces()});
      line.length(rough.stock_thickness);
      line.length(rough.length);
      line.length(rough.width);
      line.end();
    }
  }
  for (const MaterialPlan& plan : report.plans) {
    for (const lumber::BoardPlan& board : plan.plan.boards) {
      const StockItem& item = report.stock.items[plan.items[board.stock]];
      for (const lumber::Cut& cut : board.cuts) {
        CsvRow line = row();
        begin(line, plan.pieces[cut.want]);
        line.text(item.id);
        line.count(number_of(item, board));
        line.plain(item.price ? "yes" : "no");
        for (const Length length :
             {item.thickness.thickness, cut.spot.x, cut.spot.y, cut.spot.length, cut.spot.width})
          line.length(length);
        line.end();
      }
    }
  }
  return out;
}

}  // namespace haunch
