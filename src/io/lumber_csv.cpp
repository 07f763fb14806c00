#include "csv_row.h"
#include "lumber_text.h"

namespace haunch {
namespace {

/// A row for each cut of a plan; without stock, for each rough piece. What comes last was added
/// last, so that the columns before it stay where they were.
class LumberTable {
 public:
  LumberTable(const LumberReport& report, Unit unit, CsvProfile profile)
      : report_(report), unit_(unit), profile_(profile), out_(csv_start(profile)) {}

  std::string text() {
    add_head();
    if (!report_.has_stock)
      for (std::size_t part = 0; part < report_.parts.size(); ++part)
        add_rough(part);
    for (const MaterialPlan& plan : report_.plans)
      for (const lumber::BoardPlan& board : plan.plan.boards)
        for (const lumber::Cut& cut : board.cuts)
          add_cut(plan, board, cut);
    for (const UnplacedPart& unplaced : report_.unplaced)
      add_unplaced(unplaced);
    return std::move(out_);
  }

 private:
  CsvRow row() { return {out_, unit_, profile_}; }
  bool planned() const { return report_.has_stock; }

  void add_head() {
    const std::string suffix = "_" + std::string(word_of(unit_));
    CsvRow head = row();
    const auto titles = [&](std::initializer_list<const char*> names,
                            std::string_view behind = {}) {
      for (const char* name : names)
        head.plain(name + std::string(behind));
    };
    titles({"part", "piece", "of", "material"});
    if (planned()) titles({"stock", "board", "bought"});
    titles({"thickness"}, suffix);
    if (planned()) titles({"x", "y"}, suffix);
    titles({"length", "width"}, suffix);
    titles({"item", "called"});
    if (planned()) titles({"board_length", "board_width"}, suffix);
    titles({"note"});
    head.end();
  }

  void begin(CsvRow& line, const LumberPiece& piece) const {
    const LumberPart& part = report_.parts[piece.part];
    line.text(part.name);
    line.count(static_cast<std::int64_t>(piece.number));
    line.count(static_cast<std::int64_t>(piece.of));
    line.text(part.material);
  }

  void end(CsvRow& line, std::size_t number, const lumber::BoardPlan* board,
           const lumber::CuttingOrder* order, const std::string& note) const {
    line.text(report_.parts[number].item);
    line.text(report_.parts[number].label);
    if (board != nullptr) {
      line.length(order->stock[board->stock].length);
      line.length(order->stock[board->stock].width);
    } else if (planned()) {
      line.plain("");
      line.plain("");
    }
    line.text(note);
    line.end();
  }

  void add_rough(std::size_t number) {
    if (!report_.rough[number]) return;
    const RoughPart& rough = *report_.rough[number];
    for (std::size_t piece = 1; piece <= rough.pieces(); ++piece) {
      CsvRow line = row();
      begin(line, {number, piece, rough.pieces()});
      for (const Length length : {rough.stock_thickness, rough.length, rough.width})
        line.length(length);
      end(line, number, nullptr, nullptr, {});
    }
  }

  void add_cut(const MaterialPlan& plan, const lumber::BoardPlan& board, const lumber::Cut& cut) {
    const StockItem& item = report_.stock.items[plan.items[board.stock]];
    const LumberPiece& piece = plan.pieces[cut.want];
    CsvRow line = row();
    begin(line, piece);
    line.text(item.id);
    line.count(number_of(item, board));
    line.plain(item.price ? "yes" : "no");
    for (const Length length :
         {item.thickness.thickness, cut.spot.x, cut.spot.y, cut.spot.length, cut.spot.width})
      line.length(length);
    end(line, piece.part, &board, &plan.order, {});
  }

  /// What no board is for is told, with why.
  void add_unplaced(const UnplacedPart& unplaced) {
    CsvRow line = row();
    begin(line, {unplaced.part, 1, 1});
    constexpr int kOfBoards = 8;  // stock, board, bought, thickness, x, y, length, width
    for (int empty = 0; empty < kOfBoards; ++empty)
      line.plain("");
    end(line, unplaced.part, nullptr, nullptr, unplaced.why);
  }

  const LumberReport& report_;
  Unit unit_;
  CsvProfile profile_;
  std::string out_;
};

}  // namespace

std::string lumber_csv(const LumberReport& report, Unit unit, CsvProfile profile) {
  return LumberTable(report, unit, profile).text();
}

}  // namespace haunch
