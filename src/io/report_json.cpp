#include "report_json.h"

#include "assumed_json.h"
#include "formats.h"
#include "problem_json.h"
#include "report_rows.h"
#include "run_work.h"
#include "schema.h"
#include "with_it_page.h"

namespace haunch {
namespace {

constexpr std::string_view kUnits = R"({"$ref": "#/$defs/units"})";
constexpr std::string_view kFromOne = R"("minimum": 1)";

/// One item, as far as a section tells of it.
struct ItemTold {
  const ItemReport& report;
  Section section;
  Unit unit;

  bool tells(Section part) const { return section == Section::sheet || section == part; }
};

struct CheckTold {
  const ItemTold& item;
  std::size_t number = 0;

  const Finding& finding() const { return item.report.findings[number]; }
  bool is_searched() const {
    return finding().status != Status::ok && item.report.remedies.has_value();
  }
};

struct VerdictTold {
  const ItemReport& report;
};

struct LimitTold {
  std::optional<Length> min, max;
};

struct RemedyTold {
  Remedy remedy;
  Unit unit;
};

struct SizeTold {
  const Triple& size;
  bool deep;  // its third size is told as a depth
};

OrNull<RemedyTold> remedy_of(const CheckTold& it) {
  const std::optional<Remedies>& remedies = it.item.report.remedies;
  if (!remedies || !remedies->of[it.number]) return {};
  return {RemedyTold{*remedies->of[it.number], it.item.unit}};
}

std::vector<CheckTold> checks_of(const ItemTold& it) {
  std::vector<CheckTold> checks;
  for (std::size_t i = 0; i < it.report.findings.size(); ++i)
    checks.push_back({it, i});
  return checks;
}

/// Of the whole, in kilograms at its moisture at the bench; null where the density of a part is not
/// known.
OrNull<Rounded<3>> weight_of(const ItemReport& report) {
  if (!report.weights || !report.weights->whole.is_known()) return {};
  return {Rounded<3>{report.weights->whole.kilograms}};
}

/// The moisture that it is reckoned at, in percent.
std::optional<Rounded<3>> weight_moisture(const ItemReport& report) {
  if (!report.weights) return {};
  return Rounded<3>{report.weights->percent};
}

/// Of the parts that have a density, where not all do.
std::optional<Rounded<3>> weight_of_known(const ItemReport& report) {
  if (!report.weights || report.weights->whole.is_known() || !report.weights->any_known())
    return {};
  return Rounded<3>{report.weights->whole.kilograms};
}

/// Why that is null.
std::optional<std::string> weight_unknown(const ItemReport& report) {
  if (!report.weights || report.weights->whole.is_known()) return {};
  return unknown_words(report.weights->whole, report.wood, *report.job);
}

/// An opening that was measured all round.
struct FoundTold {
  const Fit& fit;
  const AsFound& found;
};

/// The ids of other items that a run has as a part of it.
std::vector<std::string> taken_by(const Job& job) {
  const RunWork* run = as_run(job);
  return run != nullptr ? run->takes : std::vector<std::string>();
}

std::optional<FoundTold> found_of(const ItemReport& report) {
  const Fit* fit = fit_in_opening(report.wood);
  if (fit == nullptr || !fit->found) return {};
  return FoundTold{*fit, *fit->found};
}

std::optional<SeasonTold> season_of(const ItemTold& it) {
  const bool told = it.tells(Section::check) || it.section == Section::season;
  if (!told || !it.report.seasons) return {};
  return SeasonTold{it.report};
}

std::optional<FitsTold> fits_of(const ItemTold& it) {
  if (!it.tells(Section::check) || !it.report.fits) return {};
  return FitsTold{it.report.wood, *it.report.fits};
}

/// What is put on it, where more than a name is said.
struct FinishTold {
  const FinishSpec& finish;
};

std::optional<FinishTold> finish_told(const ItemReport& report) {
  if (!report.job->finish.is_told()) return {};
  return FinishTold{report.job->finish};
}

/// A fitting of the shop's list, for all of an item's quantity.
struct BoughtTold {
  BoughtLine line;
  std::optional<std::string> order_by;
};

std::vector<BoughtTold> bought_told(const ItemReport& report) {
  std::vector<BoughtTold> all;
  for (BoughtLine& line : bought_by(report)) {
    auto day = order_by(line.fitting, report.job->due);
    all.push_back({std::move(line), std::move(day)});
  }
  return all;
}

/// What is carried as one, and whether it goes by its way.
struct CarriedTold {
  const ItemReport& report;
  Carried carried;

  static std::optional<Length> room(const std::optional<Passing>& way) {
    return way ? std::optional(way->room) : std::nullopt;
  }
};

std::vector<CarriedTold> carried_told(const ItemReport& report) {
  std::vector<CarriedTold> all;
  for (Carried& its : carried(report.wood, *report.job))
    all.push_back({report, std::move(its)});
  return all;
}

std::optional<TogetherTold> together_of(const ItemTold& it) {
  if (!it.tells(Section::joints) || it.report.together.rectangles.empty()) return {};
  return TogetherTold{it.report};
}

}  // namespace

template <>
struct JsonObject<SizeTold> : JsonObjectDefaults {
  static constexpr JsonKey<SizeTold> keys[] = {
      {"width", [](auto& it) { return it.size[0]; }},
      {"height", [](auto& it) { return it.size[1]; }},
      {"thickness", [](auto& it) { return it.deep ? std::nullopt : std::optional(it.size[2]); }},
      {"depth", [](auto& it) { return it.deep ? std::optional(it.size[2]) : std::nullopt; }}};
};

template <>
struct JsonObject<NamedRoom> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<NamedRoom> keys[] = {{"what", the<&NamedRoom::what>},
                                                {"width", the<&NamedRoom::width>},
                                                {"height", the<&NamedRoom::height>}};
};

template <>
struct JsonObject<Chain::Link> : JsonObjectDefaults {
  static constexpr JsonKey<Chain::Link> keys[] = {{"what", the<&Chain::Link::what>},
                                                  {"length", the<&Chain::Link::length>}};
};

template <>
struct JsonObject<Chain> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<Chain> keys[] = {{"what", the<&Chain::what>},
                                            {"links", the<&Chain::links>},
                                            {"total", [](auto& it) { return it.total(); }}};
};

template <>
struct JsonObject<Taper> : JsonObjectDefaults {
  static constexpr JsonKey<Taper> keys[] = {{"first", the<&Taper::first>},
                                            {"last", the<&Taper::last>}};
};

template <>
struct JsonObject<FoundTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "as_found";
  static constexpr JsonKey<FoundTold> keys[] = {
      {"width", [](auto& it) { return it.fit.width; }},
      {"height", [](auto& it) { return it.fit.height; }},
      {"gaps",
       [](auto& it) {
         const bool follow = it.found.follow;
         return ByName<std::array<Length, 3>>{
             {{"left", gaps_along(it.found.left, it.fit.room.left, follow)},
              {"right", gaps_along(it.found.right, it.fit.room.right, follow)},
              {"head", gaps_along(it.found.head, it.fit.room.head, follow)},
              {"foot", gaps_along(it.found.foot, it.fit.room.foot, follow)}}};
       }},
      {"planed", [](auto& it) {
         return only_if(it.found.follow,
                        ByName<Taper>{{{"left", taper_along(it.found.left, true)},
                                       {"right", taper_along(it.found.right, true)},
                                       {"head", taper_along(it.found.head, true)},
                                       {"foot", taper_along(it.found.foot, true)}}});
       }}};
};

template <>
struct JsonObject<CutStrip> : JsonObjectDefaults {
  static constexpr JsonKey<CutStrip> keys[] = {{"edge", the<&CutStrip::edge>},
                                               {"thickness", the<&CutStrip::thickness>},
                                               {"material", the<&CutStrip::material>}};
};

template <>
struct JsonObject<StripTotal> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<StripTotal> keys[] = {{"material", the<&StripTotal::material>},
                                                 {"thickness", the<&StripTotal::thickness>},
                                                 {"width", the<&StripTotal::width>},
                                                 {"length", the<&StripTotal::length>}};
};

template <>
struct JsonObject<CutRow> : JsonObjectDefaults {
  static constexpr std::string_view definition = "cut";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<CutRow> keys[] = {
      {"part", [](auto& it) { return word_of(it.part); }},
      {"marks", the<&CutRow::marks>, R"("minItems": 1)"},
      {"quantity", the<&CutRow::quantity>, kFromOne},
      {"length", the<&CutRow::length>},
      {"saw_length", the<&CutRow::saw_length>},
      {"width", the<&CutRow::width>},
      {"thickness", the<&CutRow::thickness>},
      {"material", the<&CutRow::material>},
      {"grain", the<&CutRow::grain>, R"({"enum": ["along", "upright", "level", "none"]})"},
      {"saw_width", [](auto& it) { return only_if(!it.strips.empty(), it.saw_width); }},
      {"strips", [](auto& it) { return if_any(it.strips); }}};
};

// ---- checks

template <>
struct JsonObject<VerdictTold> : JsonObjectDefaults {
  static constexpr JsonKey<VerdictTold> keys[] = {
      {"fail", [](auto& it) { return it.report.count_of(Status::fail); }},
      {"caution", [](auto& it) { return it.report.count_of(Status::caution); }},
      {"ok", [](auto& it) { return it.report.count_of(Status::ok); }}};
};

template <>
struct JsonObject<LimitTold> : JsonObjectDefaults {
  static constexpr JsonKey<LimitTold> keys[] = {{"min", the<&LimitTold::min>},
                                                {"max", the<&LimitTold::max>}};
};

template <>
struct JsonObject<RemedyTold> : JsonObjectDefaults {
  static constexpr JsonKey<RemedyTold> keys[] = {
      {"key", [](auto& it) -> const std::string& { return it.remedy.key; }},
      {"from", [](auto& it) { return it.remedy.from; }},
      {"to", [](auto& it) { return it.remedy.to; }},
      {"message", [](auto& it) { return remedy_message(it.remedy, it.unit); }}};
};

template <>
struct JsonObject<CheckTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "check";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<CheckTold> keys[] = {
      {"check", [](auto& it) { return it.finding().rule->check; }},
      {"status", [](auto& it) { return it.finding().status; }},
      {"parts", [](auto& it) { return marks_of(it.item.report.wood, it.finding().parts); }},
      {"joint", [](auto& it) { return joint_id_of(it.finding().joint); }},
      {"fitting", [](auto& it) { return if_any(it.finding().fitting); }},
      {"moisture",
       [](auto& it) {
         const std::optional<double>& percent = it.finding().moisture;
         return percent ? std::optional(Rounded<3>{*percent}) : std::nullopt;
       }},
      {"value", [](auto& it) { return it.finding().value; }},
      {"limit",
       [](auto& it) {
         return LimitTold{it.finding().min, it.finding().max};
       }},
      {"message", [](auto& it) { return finding_message(it.finding(), it.item.unit); }},
      {"remedy", [](auto& it) { return remedy_of(it); }},
      {"remedy_search", [](auto& it) {
         return only_if(it.is_searched(), search_of(!search_stopped(it.item.report, it.number)));
       }}};
};

// ---- what was given and assumed, and what there is to mind

template <>
struct JsonObject<Caution> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<Caution> keys[] = {{"about", the<&Caution::about>},
                                              {"message", the<&Caution::words>}};
};

template <>
struct JsonObject<Given> : JsonObjectDefaults {
  static constexpr std::string_view definition = "given";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<Given> keys[] = {
      {"key", the<&Given::key>}, {"written", the<&Given::written>}, {"value", the<&Given::length>}};
};

template <>
struct JsonObject<Assumed> : JsonObjectDefaults {
  static constexpr std::string_view definition = "assumed";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<Assumed> keys[] = {
      {"key", the<&Assumed::key>}, {"value", the<&Assumed::value>}, {"why", the<&Assumed::why>}};
};

template <>
struct JsonObject<FinishTold> : JsonObjectDefaults {
  static constexpr JsonKey<FinishTold> keys[] = {
      {"system", [](auto& it) { return if_any(it.finish.system); }},
      {"faces", [](auto& it) { return word_of(it.finish.faces); },
       R"({"enum": ["both", "front"]})"},
      {"coats", [](auto& it) { return it.finish.coats; }},
      {"film", [](auto& it) { return it.finish.film; }},
      {"when", [](auto& it) {
         return it.finish.when ? std::optional(std::string(word_of(*it.finish.when)))
                               : std::nullopt;
       }}};
};

template <>
struct JsonObject<BoughtTold> : JsonObjectDefaults {
  static constexpr JsonKey<BoughtTold> keys[] = {
      {"name", [](auto& it) -> const std::string& { return it.line.fitting.name; }},
      {"code", [](auto& it) { return if_any(it.line.fitting.code); }},
      {"number", [](auto& it) { return it.line.number; }, kFromOne},
      {"pack", [](auto& it) { return it.line.fitting.pack; }, kFromOne},
      {"packs", [](auto& it) { return it.line.packs(); }, kFromOne},
      {"kilograms_each",
       [](auto& it) {
         const double mass = it.line.fitting.mass;
         return mass > 0 ? std::optional(Rounded<3>{mass}) : std::nullopt;
       }},
      {"price",
       [](auto& it) {
         const auto& price = it.line.fitting.price;
         return price ? std::optional(Rounded<2>{*price}) : std::nullopt;
       }},
      {"priced", [](auto& it) { return if_any(it.line.fitting.priced); }},
      {"lead_days", [](auto& it) { return it.line.fitting.lead_days; }},
      {"order_by", the<&BoughtTold::order_by>}};
};

template <>
struct JsonObject<CarriedTold> : JsonObjectDefaults {
  static constexpr JsonKey<CarriedTold> keys[] = {
      {"name", [](auto& it) -> const std::string& { return it.carried.name; }},
      {"groups",
       [](auto& it) {
         std::vector<std::string> paths;
         for (const std::size_t group : it.carried.groups)
           paths.push_back(it.report.wood.groups[group].path);
         return if_any(paths);
       }},
      {"part",
       [](auto& it) {
         return only_if(it.carried.groups.empty(),
                        it.report.wood.pieces[it.carried.pieces.front()].mark);
       }},
      {"size",
       [](auto& it) {
         return SizeTold{it.carried.size, true};
       }},
      {"kilograms",
       [](auto& it) {
         return it.carried.weight.is_known()
                    ? std::optional(Rounded<3>{it.carried.weight.kilograms})
                    : std::nullopt;
       }},
      {"room_in_door", [](auto& it) { return CarriedTold::room(it.carried.door); }},
      {"room_round_stair", [](auto& it) { return CarriedTold::room(it.carried.stair); }},
      {"room_in_lift", [](auto& it) { return CarriedTold::room(it.carried.lift); }},
      {"goes", [](auto& it) { return it.carried.goes(); }},
      {"pieces_go", [](auto& it) { return it.carried.pieces_go; }}};
};

// ---- items, and what could not be worked

template <>
struct JsonObject<ItemTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "item";
  static constexpr JsonKey<ItemTold> keys[] = {
      {"id", [](auto& it) -> const std::string& { return it.report.job->id; }},
      {"kind", [](auto& it) { return it.report.job->kind; },
       R"({"enum": ["door", "frame", "doorset", "cabinet", "face-frame", "drawer", "run"]})"},
      {"name", [](auto& it) -> const std::string& { return it.report.job->name; }},
      {"note", [](auto& it) { return if_any(it.report.job->note); }},
      {"takes", [](auto& it) { return if_any(taken_by(*it.report.job)); }},
      {"quantity", [](auto& it) { return it.report.job->quantity; }, kFromOne},
      {"units", the<&ItemTold::unit>, kUnits},
      {"size",
       [](auto& it) {
         return SizeTold{it.report.wood.size, goes_back(it.report.wood)};
       }},
      {"rooms", [](auto& it) { return if_any(it.report.rooms); }},
      {"chains", [](auto& it) { return if_any(it.report.chains); }},
      {"as_found", [](auto& it) { return found_of(it.report); }},
      {"groups",
       [](auto& it) { return only_if(it.tells(Section::joints), GroupsTold{it.report.wood}); }},
      {"parts", [](auto& it) { return only_if(it.tells(Section::joints), PartsTold{it.report}); }},
      {"joints",
       [](auto& it) { return only_if(it.tells(Section::joints), JointsTold{it.report}); }},
      {"operations",
       [](auto& it) { return only_if(it.tells(Section::joints), OperationsTold{it.report}); }},
      {"together", [](auto& it) { return together_of(it); }},
      {"finish",
       [](auto& it) { return it.tells(Section::joints) ? finish_told(it.report) : std::nullopt; }},
      {"fittings",
       [](auto& it) {
         return if_any(it.section == Section::sheet ? bought_told(it.report)
                                                    : std::vector<BoughtTold>());
       }},
      {"carried",
       [](auto& it) {
         return if_any(it.tells(Section::check) ? carried_told(it.report)
                                                : std::vector<CarriedTold>());
       }},
      {"cutlist", [](auto& it) { return only_if(it.tells(Section::cutlist), it.report.cutlist); }},
      {"strips", [](auto& it) { return if_any(strip_totals(it.report.cutlist)); }},
      {"verdict",
       [](auto& it) { return only_if(it.tells(Section::check), VerdictTold{it.report}); }},
      {"weight", [](auto& it) { return only_if(it.tells(Section::check), weight_of(it.report)); }},
      {"weight_moisture",
       [](auto& it) {
         return it.tells(Section::check) ? weight_moisture(it.report) : std::nullopt;
       }},
      {"weight_of_known",
       [](auto& it) {
         return it.tells(Section::check) ? weight_of_known(it.report) : std::nullopt;
       }},
      {"weight_unknown",
       [](auto& it) {
         return it.tells(Section::check) ? weight_unknown(it.report) : std::nullopt;
       }},
      {"checks", [](auto& it) { return only_if(it.tells(Section::check), checks_of(it)); }},
      {"remedy_search",
       [](auto& it) {
         const std::optional<Remedies>& remedies = it.report.remedies;
         return remedies ? std::optional(search_of(remedies->complete())) : std::nullopt;
       }},
      {"fits", [](auto& it) { return fits_of(it); }},
      {"season", [](auto& it) { return season_of(it); }},
      {"cautions", [](auto& it) { return if_any(it.report.cautions); }},
      {"given", [](auto& it) -> const std::vector<Given>& { return it.report.job->given; }},
      {"assumed", [](auto& it) -> const std::vector<Assumed>& { return it.report.assumed; }}};
};

std::string report_json_head(Unit unit) {
  return document_head<kReportFormat>() + R"(, "units": ")" + std::string(word_of(unit)) +
         R"(", "items": [)";
}

void append_item_json(std::string& out, const ItemReport& report, Section section, Unit unit,
                      bool first) {
  out += first ? "\n" : ",\n";
  JsonText json(out, unit);
  write_json(json, ItemTold{report, section, unit});
}

void append_error_json(std::string& out, const PlacedProblem& error, bool first) {
  out += first ? "\n  " : ",\n  ";
  JsonText json(out, Unit::mm);
  write_json(json, error);
}

std::string report_schema() {
  constexpr std::string_view kHead = R"(
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "$id": "urn:haunch:report-1",
    "title": "A report of haunch",
    "description": "Lengths are numbers in an item's units: exact in mm; in inches exact where the decimal ends, else to 9 places. 'sheet' gives every part of an item; 'cutlist', 'joints' (with the parts) and 'check' give theirs.")";
  const std::string report =
      document_schema<kReportFormat>({{"units", std::string(kUnits)},
                                      {"items", JsonValue<std::vector<ItemTold>>::schema()},
                                      {"errors", JsonValue<std::vector<PlacedProblem>>::schema()}});
  std::vector<SchemaDefinition> all = {
      {"units", JsonValue<Unit>::schema()},
      {"joint_id", R"({"type": "string", "pattern": "^J[1-9][0-9]*$"})"},
      definition_of<ItemTold>()};
  const auto add = [&](const std::vector<SchemaDefinition>& more) {
    all.insert(all.end(), more.begin(), more.end());
  };
  add(wood_definitions());
  add(operation_definitions());
  add(together_definitions());
  add({definition_of<FoundTold>(), definition_of<CutRow>(), definition_of<CheckTold>()});
  add(season_definitions());
  add(fits_definitions());
  add({definition_of<Given>(), definition_of<Assumed>(), definition_of<PlacedProblem>()});
  return schema_document(kHead, report, all);
}

}  // namespace haunch
