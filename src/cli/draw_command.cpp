#include <iterator>
#include <optional>
#include <utility>
#include <vector>

#include "commands.h"
#include "complaints.h"
#include "drawing_svg.h"
#include "order.h"
#include "output_folder.h"

namespace haunch {
namespace {

/// A name that ends so is that of a file; any other is that of a folder.
bool names_a_file(const std::string& output) {
  return is_standard_output(output) || output.ends_with(".svg") || output.ends_with(".SVG");
}

Paper paper_for(const Invocation& invocation, Unit unit) {
  const std::string usual = unit == Unit::inch ? "letter" : "a4";
  return *paper_called(invocation.paper.empty() ? usual : invocation.paper);
}

/// What was drawn, for one file or for a folder of them.
class Drawings {
 public:
  Drawings(const Invocation& invocation, bool one_file)
      : invocation_(invocation), one_file_(one_file) {}

  void add(const ItemReport& item, const Order& order) {
    const View& view = invocation_.view;
    if (!unit_) {
      unit_ = view.unit.value_or(order.unit().value_or(Unit::mm));
      paper_ = paper_for(invocation_, *unit_);
    }
    const LengthPrinter lengths(*unit_, view.lengths);
    if (one_file_) {
      std::vector<SheetPicture> its = drawing_sheets(item, lengths, paper_);
      std::move(its.begin(), its.end(), std::back_inserter(sheets_));
      return;
    }
    for (const DrawingSheet& sheet : drawing_of(item, lengths, paper_))
      files_.push_back({safe_name(sheet.id) + ".svg", sheet_file(sheet)});
  }

  bool empty() const { return sheets_.empty() && files_.empty(); }
  std::string text() const { return drawing_file(sheets_, *unit_, paper_); }
  const std::vector<FolderFile>& files() const { return files_; }

 private:
  const Invocation& invocation_;
  bool one_file_;
  std::optional<Unit> unit_;
  Paper paper_;
  std::vector<SheetPicture> sheets_;
  std::vector<FolderFile> files_;
};

}  // namespace

ExitStatus run_draw(const Invocation& invocation, const Streams& streams) {
  Complaints complaints(streams);
  if (invocation.words.empty())
    return complaints.refuse(
        "draw: no spec is named; give a file, a folder, or - for standard input");
  const bool one_file = names_a_file(invocation.output);
  if (!one_file)
    if (const auto fault = folder_fault(invocation.output)) {
      complaints.note(*fault);
      return complaints.status();
    }
  Order order(invocation.words, invocation, streams, complaints);
  if (!order.open()) return complaints.status();
  Drawings drawings(invocation, one_file);
  order.work({.checks = true, .cutlist = true, .making = true},
             [&](const ItemReport& item) { drawings.add(item, order); });
  order.sum_up("what is refused is not drawn");
  if (drawings.empty()) return complaints.status();
  if (one_file)
    write_result(drawings.text(), invocation, streams, order.files(), complaints);
  else if (complaints.status() < kFileFault)
    if (const auto fault = write_folder(invocation.output, drawings.files()))
      complaints.note(*fault);
  return complaints.status();
}

}  // namespace haunch
