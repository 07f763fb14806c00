#include "comparison_csv.h"

#include <string_view>

#include "csv_row.h"

namespace haunch {
namespace {

/// What a row is of.
struct Subject {
  std::string_view of;  // "piece", "place"
  Turn turn = Turn::changes;
  std::string key;                // of a piece, or other words by which it is known again
  std::string was_mark, is_mark;  // of pieces; of a joint its id
  std::string makes;              // what is worked
  std::string called;
};

class ComparisonTable {
 public:
  ComparisonTable(Unit unit, CsvProfile profile)
      : unit_(unit), profile_(profile), out_(csv_start(profile)) {
    const std::string in = "_" + std::string(word_of(unit));
    CsvRow titles(out_, unit, profile);
    for (const std::string& title :
         {std::string("item"), std::string("of"), std::string("turn"), std::string("key"),
          std::string("old_mark"), std::string("new_mark"), std::string("makes"),
          std::string("name"), std::string("what"), "old" + in, "new" + in, "by" + in,
          std::string("old_words"), std::string("new_words")})
      titles.plain(title);
    titles.end();
  }

  std::string text(const Comparison& comparison) {
    for (const ItemComparison& item : comparison.items)
      add(item);
    id_.clear();
    for (const SetupChange& setup : comparison.setups.changed)
      add(setup);
    for (const LoneItem& item : comparison.come)
      add_lone(item, Turn::comes);
    for (const LoneItem& item : comparison.gone)
      add_lone(item, Turn::goes);
    return std::move(out_);
  }

 private:
  void add(const ItemComparison& item) {
    id_ = item.is_id;
    add_all({"item", Turn::changes, {}, {}, {}, {}, {}}, item.whole);
    if (item.was_quantity != item.is_quantity)
      words({"item", Turn::changes, {}, {}, {}, {}, {}}, "quantity",
            std::to_string(item.was_quantity), std::to_string(item.is_quantity));
    for (const PieceChange& piece : item.changed_pieces)
      add(piece);
    for (const MarkChange& mark : item.marks)
      words({"mark", Turn::changes, mark.key, mark.was, mark.is, {}, mark.name}, "mark", mark.was,
            mark.is);
    for (const SettingChange& setting : item.making.changed_settings)
      add(setting);
    for (const PlaceChange& place : item.making.changed_places)
      add(place);
    for (const JointChange& joint : item.changed_joints)
      add(joint);
    for (const CheckChange& check : item.changed_checks)
      add(check);
    for (const NumberChange& number : item.changed_hardware)
      words({"hardware",
             Turn::changes,
             {},
             {},
             {},
             {},
             number.what + (number.size ? " " + in_words(*number.size, unit_) : "")},
            "number", std::to_string(number.was), std::to_string(number.is));
    for (const WeightChange& weight : item.changed_weights)
      words({"weight", Turn::changes, weight.of, {}, {}, {}, {}}, "kg", kilograms_text(weight.was),
            kilograms_text(weight.is));
  }

  void add_lone(const LoneItem& item, Turn turn) {
    id_ = item.id;
    const std::string quantity = std::to_string(item.quantity);
    words({"item", turn, {}, {}, {}, {}, {}}, "quantity", turn == Turn::goes ? quantity : "",
          turn == Turn::comes ? quantity : "");
  }

  void add(const PieceChange& piece) {
    const Subject subject{"piece",
                          piece.turn(),
                          piece.key,
                          piece.was ? piece.was->marks.front() : "",
                          piece.is ? piece.is->marks.front() : "",
                          {},
                          piece.any().called};
    add_all(subject, piece.cut);
    if (piece.turn() != Turn::changes) add_sizes(subject, piece);
  }

  /// Of a piece that only one has.
  void add_sizes(const Subject& subject, const PieceChange& piece) {
    const auto size = [&](std::string_view what, Length CutRow::*which) {
      figure(subject, {what, piece.was ? std::optional(*piece.was.*which) : std::nullopt,
                       piece.is ? std::optional(*piece.is.*which) : std::nullopt});
    };
    size("length", &CutRow::length);
    size("saw_length", &CutRow::saw_length);
    size("width", &CutRow::width);
    size("saw_width", &CutRow::saw_width);
    size("thickness", &CutRow::thickness);
  }

  static std::string makes(const Operation& operation) {
    return std::string(operation.cut == Cut::whole ? word_of(operation.makes)
                                                   : word_of(operation.cut));
  }

  void add(const SettingChange& setting) {
    const Subject subject{"setting", setting.turn(), {}, {}, {}, makes(setting.any()), {}};
    add_all(subject, setting.setting);
    if (setting.turn() == Turn::changes) return;
    Changes all;
    for (const NamedSize& size : setting.any().settings)
      all.add(word_of(size.name), setting.was ? std::optional(size.size) : std::nullopt,
              setting.is ? std::optional(size.size) : std::nullopt);
    add_all(subject, all);
    if (all.empty()) words(subject, "", "", "");
  }

  void add(const SetupChange& setup) {
    const auto marks = [](const std::optional<SetupTold>& side) {
      return side ? joined(side->marks) : std::string();
    };
    const Subject subject{
        "setup",         setup.turn(),       {}, marks(setup.was), marks(setup.is),
        setup.operation, setup.any().machine};
    add_all(subject, setup.changes);
    if (setup.turn() == Turn::changes) return;
    static const std::vector<NamedSize> kNone;
    Changes all;
    all.add(setup.was ? setup.was->settings : kNone, setup.is ? setup.is->settings : kNone);
    all.add("machine", setup.was ? setup.was->machine : "", setup.is ? setup.is->machine : "");
    add_all(subject, all);
  }

  void add(const PlaceChange& place) {
    const WorkedPlace& any = place.any();
    const Subject subject{"place",
                          place.turn(),
                          any.piece,
                          place.was ? place.was->mark : "",
                          place.is ? place.is->mark : "",
                          makes(any.setting),
                          any.fitting};
    add_all(subject, place.place);
    add_all(subject, place.setting);
    if (place.turn() == Turn::changes) return;
    const auto of = [](const std::optional<WorkedPlace>& side) {
      return side ? std::optional(side->run.near) : std::nullopt;
    };
    figure(subject, {"near", of(place.was), of(place.is)});
  }

  void add(const JointChange& joint) {
    const Subject subject{"joint",
                          joint.turn(),
                          {},
                          joint.was ? joint.was->id : "",
                          joint.is ? joint.is->id : "",
                          {},
                          joint.any().receives + " " + joint.any().enters};
    add_all(subject, joint.changes);
    if (joint.turn() != Turn::changes)
      words(subject, "kind", joint.was ? word_of(joint.was->kind) : "",
            joint.is ? word_of(joint.is->kind) : "");
  }

  void add(const CheckChange& check) {
    const auto value = [](const std::optional<CheckTold>& side) {
      return side && side->finding.measured ? std::optional(side->finding.value) : std::nullopt;
    };
    const auto status = [](const std::optional<CheckTold>& side) {
      return side ? word_of(side->finding.status) : "";
    };
    row({"check",
         check.turn(),
         {},
         check.was ? check.was->marks : "",
         check.is ? check.is->marks : "",
         {},
         {}},
        {check.any().finding.rule->check, value(check.was), value(check.is)}, status(check.was),
        status(check.is));
  }

  void add_all(const Subject& subject, const Changes& changes) {
    for (const FigureChange& change : changes.figures)
      figure(subject, change);
    for (const WordChange& change : changes.words)
      words(subject, change.what, change.was, change.is);
  }

  void figure(const Subject& subject, const FigureChange& change) { row(subject, change, {}, {}); }
  void words(const Subject& subject, std::string_view what, std::string_view was,
             std::string_view is) {
    row(subject, {what, {}, {}}, was, is);
  }

  void row(const Subject& subject, const FigureChange& change, std::string_view was,
           std::string_view is) {
    CsvRow row(out_, unit_, profile_);
    row.text(id_);
    row.plain(subject.of);
    row.plain(word_of(subject.turn));
    row.text(subject.key);
    row.plain(subject.was_mark);
    row.plain(subject.is_mark);
    row.plain(subject.makes);
    row.text(subject.called);
    row.plain(change.what);
    row.length(change.was);
    row.length(change.is);
    row.length(change.by());
    row.text(std::string(was));
    row.text(std::string(is));
    row.end();
  }

  Unit unit_;
  CsvProfile profile_;
  std::string out_;
  std::string id_;
};

}  // namespace

std::string comparison_csv(const Comparison& comparison, Unit unit, CsvProfile profile) {
  return ComparisonTable(unit, profile).text(comparison);
}

}  // namespace haunch
