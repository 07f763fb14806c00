#include "formats.h"
#include "operation_json.h"
#include "problem_json.h"
#include "schema.h"
#include "setups_report.h"

namespace haunch {
namespace {

constexpr std::string_view kFromZero = R"("minimum": 0)";
constexpr std::string_view kFromOne = R"("minimum": 1)";

struct SetupsTold {
  const SetupsReport& report;
  Unit unit;
};

struct SetupPieceTold;

struct SetupTold {
  const SetupsReport& report;
  std::size_t number;

  const Setup& setup() const { return report.plan.setups[number]; }
  OrNull<std::string> cutter() const {
    const std::string name = report.cutter_name(setup());
    return {only_if(!name.empty(), name)};
  }
  std::vector<SetupPieceTold> pieces() const;
};

/// Sides of the piece as it stands in what is made of it.
struct LieTold {
  const Piece& piece;
  Lie lie;
  Toward zero;

  Surface at(Toward toward) const { return side_of(piece, lie.at(toward)); }
};

struct SetupPieceTold {
  const SetupTold& in;
  const SetupPiece& piece;

  const SetupsReport& report() const { return in.report; }
  std::vector<PlaceTold> places() const {
    return each_in<PlaceTold>(report().item_of(piece).wood, piece.runs);
  }
  std::optional<LieTold> lie() const;
};

std::vector<SetupPieceTold> SetupTold::pieces() const {
  return each_in<SetupPieceTold>(*this, setup().pieces);
}

std::optional<LieTold> SetupPieceTold::lie() const {
  if (piece.runs.empty()) return {};
  const Piece& wood = report().piece_of(piece);
  const auto lie = report().lie_of(in.setup(), piece, piece.runs.front());
  if (!lie) return {};
  return LieTold{wood, *lie, hand_of(*lie, wood, piece.runs.front())};
}

std::vector<SetupTold> all_setups(const SetupsReport& report) {
  std::vector<SetupTold> all;
  for (std::size_t number = 0; number < report.plan.setups.size(); ++number)
    all.push_back({report, number});
  return all;
}

std::vector<std::string> ids_of(const std::vector<std::size_t>& setups) {
  std::vector<std::string> ids;
  for (const std::size_t setup : setups)
    ids.push_back(setup_id(setup));
  return ids;
}

}  // namespace

template <>
struct JsonObject<FirstPiece> : JsonObjectDefaults {
  static constexpr JsonKey<FirstPiece> keys[] = {{"measure", the<&FirstPiece::size>},
                                                 {"wanted", the<&FirstPiece::wanted>},
                                                 {"least", the<&FirstPiece::least>},
                                                 {"most", the<&FirstPiece::most>}};
};

template <>
struct JsonObject<SecondFace> : JsonObjectDefaults {
  static constexpr JsonKey<SecondFace> keys[] = {{"leaves", the<&SecondFace::leaves>},
                                                 {"most_a_side", the<&SecondFace::most>}};
};

template <>
struct JsonObject<NamedSize> : JsonObjectDefaults {
  static constexpr JsonKey<NamedSize> keys[] = {{"size", the<&NamedSize::name>},
                                                {"to", the<&NamedSize::size>}};
};

template <>
struct JsonObject<WayFinding> : JsonObjectDefaults {
  static constexpr JsonKey<WayFinding> keys[] = {{"fault", the<&WayFinding::fault>},
                                                 {"value", the<&WayFinding::value>},
                                                 {"limit", the<&WayFinding::limit>},
                                                 {"remedy", the<&WayFinding::remedy>}};
};

template <>
struct JsonObject<LieTold> : JsonObjectDefaults {
  static constexpr JsonKey<LieTold> keys[] = {
      {"up", [](auto& it) { return it.at(Toward::up); }},
      {"table", [](auto& it) { return it.at(Toward::table); }},
      {"fence", [](auto& it) { return it.at(Toward::fence); }},
      {"left", [](auto& it) { return it.at(Toward::left); }},
      {"zero", the<&LieTold::zero>}};
};

template <>
struct JsonObject<SetupPieceTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "piece";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<SetupPieceTold> keys[] = {
      {"item",
       [](auto& it) -> const std::string& { return it.report().item_of(it.piece).job->id; }},
      {"mark", [](auto& it) -> const std::string& { return it.report().piece_of(it.piece).mark; }},
      {"count", [](auto& it) { return it.report().count_of(it.piece); }, kFromOne},
      {"features", [](auto& it) { return it.piece.features; }},
      {"goes_on_with", [](auto& it) { return if_any(it.piece.goes_on_with); }},
      {"places", [](auto& it) { return it.places(); }},
      {"lies", [](auto& it) { return it.lie(); }},
      {"both_faces", [](auto& it) { return only_if(it.piece.both_faces, true); }},
      {"strips", [](auto& it) { return only_if(it.piece.strips > 1, it.piece.strips); }},
      {"horn", [](auto& it) { return only_if(it.piece.horn > Length(), it.piece.horn); }},
      {"second_face", [](auto& it) { return it.piece.second_face; }},
      {"findings", [](auto& it) { return if_any(it.piece.findings); }}};
};

template <>
struct JsonObject<SetupTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "setup";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<SetupTold> keys[] = {
      {"id", [](auto& it) { return setup_id(it.number); }},
      {"operation", [](auto& it) { return it.setup().operation(); }},
      {"machine", [](auto& it) { return it.report.machine_name(it.setup()); }},
      {"cutter", [](auto& it) { return it.cutter(); }},
      {"holding", [](auto& it) { return if_any(it.report.holding_name(it.setup())); }},
      {"settings", [](auto& it) { return settings_told(it.setup().settings); }},
      {"through", [](auto& it) { return only_if(it.setup().through, true); }},
      {"profile", [](auto& it) { return if_any(it.setup().profile); }},
      {"pieces", [](auto& it) { return it.pieces(); }, R"("minItems": 1)"},
      {"after", [](auto& it) { return ids_of(it.setup().after); }},
      {"passes", [](auto& it) { return it.setup().passes; }, kFromOne},
      {"first_piece", [](auto& it) { return it.setup().first_piece; }},
      {"rest_days",
       [](auto& it) { return only_if(it.setup().rest_days > 0, it.setup().rest_days); }, kFromOne}};
};

template <>
struct JsonObject<SetupCount> : JsonObjectDefaults {
  static constexpr JsonKey<SetupCount> keys[] = {
      {"setups", the<&SetupCount::setups>, kFromZero},
      {"lower_bound", the<&SetupCount::lower_bound>, kFromZero},
      {"piece_by_piece", the<&SetupCount::piece_by_piece>, kFromZero},
      {"machine_changes", the<&SetupCount::machine_changes>, kFromZero},
      {"fewest_machine_changes", the<&SetupCount::fewest_machine_changes>, kFromZero},
      {"is_fewest", the<&SetupCount::is_fewest>}};
};

template <>
struct JsonObject<Machine> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<Machine> keys[] = {{"name", the<&Machine::name>},
                                              {"does", the<&Machine::does>}};
};

template <>
struct JsonObject<SetupsTold> : JsonObjectDefaults {
  static constexpr JsonKey<SetupsTold> keys[] = {
      {among, [](auto&) { return DocumentHead<kSetupsFormat>(); }},
      {"units", the<&SetupsTold::unit>},
      {"shop", [](auto& it) { return if_any(it.report.shop); }},
      {on_row, "machines",
       [](auto& it) -> const std::vector<Machine>& { return it.report.machines; }},
      {on_row, "setups", [](auto& it) { return all_setups(it.report); }},
      {on_row, "count", [](auto& it) { return it.report.plan.count; }},
      {on_row, "errors",
       [](auto& it) -> const std::vector<PlacedProblem>& { return it.report.errors; }}};
};

std::string setups_json(const SetupsReport& report, Unit unit) {
  std::string out;
  JsonText json(out, unit);
  write_json(json, SetupsTold{report, unit});
  return out + "\n";
}

std::string setups_schema() {
  constexpr std::string_view kHead = R"(
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "$id": "urn:haunch:setups-1",
    "title": "What 'haunch setups' says",
    "description": "Lengths are numbers in 'units'. Set-ups stand in the order of the work; 'features' are indices into the features of a report's part, each of which is in one set-up.")";
  return schema_document(kHead, object_schema<SetupsTold>(),
                         {{"joint_id", R"({"type": "string", "pattern": "^J[1-9][0-9]*$"})"},
                          {"line", JsonValue<Line>::schema()},
                          definition_of<PlaceTold>(),
                          definition_of<SetupPieceTold>(),
                          definition_of<SetupTold>(),
                          definition_of<PlacedProblem>()});
}

}  // namespace haunch
