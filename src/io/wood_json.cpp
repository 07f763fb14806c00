#include "materials.h"
#include "report_rows.h"

namespace haunch {
namespace {

constexpr std::string_view kOwnAxes[] = {"length", "width", "thickness"};
constexpr std::string_view kEnds[] = {"low", "high"};
/// Ways that an axis runs: those towards lower figures follow the others.
constexpr std::string_view kWays[] = {"x", "y", "z", "-x", "-y", "-z"};

struct GroupTold {
  const Assembly& wood;
  const Group& group;

  /// What the group stands in, and how it moves there.
  const Fit* fit() const {
    for (const Fit& fit : wood.fits)
      if (fit.stands != StandsIn::beside && &wood.groups[fit.group] == &group) return &fit;
    return nullptr;
  }
};

OrNull<Movement> movement_of(const GroupTold& it) {
  const Fit* fit = it.fit();
  if (fit == nullptr || std::holds_alternative<std::monostate>(fit->moves)) return {};
  return {fit->moves};
}

template <class Way>
std::optional<Way> way_of(const Movement& moves) {
  const Way* way = std::get_if<Way>(&moves);
  return way != nullptr ? std::optional(*way) : std::nullopt;
}

std::array<Word<kWays>, 3> ways_of(const Place& place) {
  const auto way = [&](std::size_t own) {
    const auto axis = static_cast<std::size_t>(place.axes[own]);
    return Word<kWays>(place.backwards[own] ? axis + 3 : axis);
  };
  return {way(0), way(1), way(2)};
}

struct PartTold {
  const ItemReport& report;
  const Piece& piece;
  const Shoulders& shoulders;

  const std::string& of() const { return report.wood.groups[piece.group].path; }
};

struct ShouldersTold {
  const Piece& piece;
  const Shoulders& shoulders;

  EndShoulders between() const {
    const auto of = [&](Length EndShoulders::*which) {
      return shoulders.between(which, piece.blank[0]);
    };
    return {of(&EndShoulders::line), of(&EndShoulders::face), of(&EndShoulders::back)};
  }
};

struct FeatureTold {
  const Piece& piece;
  const Feature& feature;

  std::optional<Surface> into() const {
    if (!feature.fitting) return {};
    return side_of(piece, {feature.fitting->into, feature.fitting->from_high});
  }
  /// A groove may serve several joints, what is not one serves one.
  bool has_one_joint() const {
    return feature.kind != FeatureKind::groove && feature.joints.size() == 1;
  }
};

struct JointTold {
  const ItemReport& report;
  std::size_t number = 0;

  const Joint& joint() const { return report.wood.joints[number]; }
  const Piece& enters() const { return report.wood.pieces[joint().enters]; }
  std::optional<JointShoulders> shoulders() const {
    return shoulders_at(joint(), enters(), report.making.value().shoulders[joint().enters]);
  }
};

std::optional<Length> above_zero(Length length) {
  return only_if(length > Length(), length);
}

std::optional<Length> of_haunches(const TenonSizes& tenon, Length size) {
  return only_if(!tenon.haunches.empty(), size);
}

}  // namespace

std::optional<JointId> joint_id_of(std::optional<std::size_t> joint) {
  if (!joint) return {};
  return JointId{*joint};
}

std::vector<JointId> joint_ids(const std::vector<std::size_t>& joints) {
  std::vector<JointId> ids;
  for (const std::size_t joint : joints)
    ids.push_back({joint});
  return ids;
}

template <>
inline constexpr std::string_view kWords<Axis>[] = {"x", "y", "z"};

// ---- what is cut out of a piece

template <>
struct JsonValue<Box> {
  using Ends = std::array<Length, 6>;
  static void write(JsonText& json, const Box& box) {
    const auto& [low, high] = box;
    write_json(json, Ends{low[0], low[1], low[2], high[0], high[1], high[2]});
  }
  static std::string schema() { return JsonValue<Ends>::schema(); }
};

template <>
struct JsonValue<Corner> {
  using Place = std::array<Length, 2>;
  static void write(JsonText& json, const Corner& corner) {
    write_json(json, Place{corner.u, corner.v});
  }
  static std::string schema() { return JsonValue<Place>::schema(); }
};

template <>
struct JsonObject<Prism> : JsonObjectDefaults {
  static constexpr std::string_view definition = "prism";
  static constexpr JsonKey<Prism> keys[] = {
      {"along", [](auto& it) { return Word<kOwnAxes>(it.along); }},
      {"from", the<&Prism::from>},
      {"to", the<&Prism::to>},
      {"polygon", the<&Prism::outline>, R"("minItems": 3)"}};
};

template <>
struct JsonObject<MouldingCorner> : JsonObjectDefaults {
  static constexpr JsonKey<MouldingCorner> keys[] = {
      {"from_edge", the<&MouldingCorner::from_edge>},
      {"deep", the<&MouldingCorner::deep>},
      {"round", [](auto& it) { return only_if(it.radius > Length(), it.radius); }},
      {"hollow", [](auto& it) { return only_if(it.radius < Length(), -it.radius); }}};
};

/// A feature tells those of its sizes that it has, in the order in which they are read off.
template <>
struct JsonMembers<std::vector<NamedSize>> {
  static void write(JsonText& json, const std::vector<NamedSize>& sizes) {
    for (const NamedSize& size : sizes)
      json.member(word_of(size.name), size.size);
  }
  static std::vector<SchemaKey> schema_keys() {
    std::vector<SchemaKey> keys;
    for (const std::string_view name : kWords<SizeName>)
      keys.push_back({name, JsonValue<Length>::schema(), false});
    return keys;
  }
};

template <>
struct JsonObject<FeatureTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "feature";
  static constexpr JsonKey<FeatureTold> keys[] = {
      {"kind", [](auto& it) { return word_of(it.feature.kind); }},
      {"profile", [](auto& it) { return if_any(it.feature.profile); }},
      {"corners", [](auto& it) { return if_any(it.feature.corners); }, R"("minItems": 1)"},
      {"fitting",
       [](auto& it) {
         return it.feature.fitting ? std::optional(it.feature.fitting->name) : std::nullopt;
       }},
      {"into", [](auto& it) { return it.into(); }},
      {"joint",
       [](auto& it) {
         return it.has_one_joint() ? std::optional(JointId{it.feature.joints.front()})
                                   : std::nullopt;
       }},
      {"joints",
       [](auto& it) {
         return it.has_one_joint() ? std::nullopt : if_any(joint_ids(it.feature.joints));
       }},
      {among, [](auto& it) -> const std::vector<NamedSize>& { return it.feature.sizes; }},
      {"cuts", [](auto& it) -> const std::vector<Box>& { return it.feature.cuts; }},
      {"prisms", [](auto& it) { return if_any(it.feature.prisms); }, R"("minItems": 1)"}};
};

// ---- groups

template <>
struct JsonObject<Place> : JsonObjectDefaults {
  static constexpr JsonKey<Place> keys[] = {{"origin", the<&Place::origin>},
                                            {"axes", [](auto& it) { return ways_of(it); }}};
};

/// Shown is a quarter turn that brings the face side forward. It counts from the first of the other
/// two axes towards the second.
template <>
struct JsonObject<Swing> : JsonObjectDefaults {
  static constexpr JsonKey<Swing> keys[] = {
      {"axis", the<&Swing::axis>}, {"at", the<&Swing::pin>}, {"degrees", [](auto& it) {
                                                                return it.at_high ? 90 : -90;
                                                              }}};
};

template <>
struct JsonObject<Slide> : JsonObjectDefaults {
  static constexpr JsonKey<Slide> keys[] = {{"along", the<&Slide::along>}, {"by", the<&Slide::by>}};
};

template <>
struct JsonObject<Movement> : JsonObjectDefaults {
  static constexpr std::string_view also = R"("minProperties": 1, "maxProperties": 1)";
  static constexpr JsonKey<Movement> keys[] = {
      {"swing", [](auto& it) { return way_of<Swing>(it); }},
      {"slide", [](auto& it) { return way_of<Slide>(it); }}};
};

template <>
struct JsonObject<GroupTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "group";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<GroupTold> keys[] = {
      {"path", [](auto& it) -> const std::string& { return it.group.path; }},
      {"kind", [](auto& it) { return it.group.kind; }},
      {"at", [](auto& it) -> const Place& { return it.group.at; }},
      {"moves", [](auto& it) { return movement_of(it); }}};
};

void JsonValue<GroupsTold>::write(JsonText& json, const GroupsTold& groups) {
  write_json(json, each_in<GroupTold>(groups.wood, groups.wood.groups));
}

// ---- parts

template <>
struct JsonObject<EndShoulders> : JsonObjectDefaults {
  static constexpr std::string_view definition = "shoulder_lengths";
  static constexpr JsonKey<EndShoulders> keys[] = {{"line", the<&EndShoulders::line>},
                                                   {"face", the<&EndShoulders::face>},
                                                   {"back", the<&EndShoulders::back>}};
};

template <>
struct JsonObject<ShouldersTold> : JsonObjectDefaults {
  static constexpr JsonKey<ShouldersTold> keys[] = {
      {"line", [](auto& it) { return it.shoulders.line; }},
      {"low", [](auto& it) -> const std::optional<EndShoulders>& { return it.shoulders.low; }},
      {"high", [](auto& it) -> const std::optional<EndShoulders>& { return it.shoulders.high; }},
      {"between", [](auto& it) { return it.between(); }}};
};

template <>
struct JsonObject<PartTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "part";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<PartTold> keys[] = {
      {"mark", [](auto& it) -> const std::string& { return it.piece.mark; }},
      {"name", [](auto& it) -> const std::string& { return it.piece.name; }},
      {"key", [](auto& it) { return it.of() + "/" + it.piece.key; }},
      {"role", [](auto& it) { return word_of(it.piece.role); }},
      {"of", [](auto& it) -> const std::string& { return it.of(); }},
      {"material",
       [](auto& it) -> const std::string& { return material_of(it.piece, *it.report.job); }},
      {"length", [](auto& it) { return it.piece.blank[0]; }},
      {"width", [](auto& it) { return it.piece.blank[1]; }},
      {"thickness", [](auto& it) { return it.piece.blank[2]; }},
      {"at", [](auto& it) -> const Place& { return it.piece.place; }},
      {"shoulders",
       [](auto& it) {
         return only_if(it.shoulders.any(), ShouldersTold{it.piece, it.shoulders});
       }},
      {"features", [](auto& it) { return each_in<FeatureTold>(it.piece, it.piece.features); }}};
};

void JsonValue<PartsTold>::write(JsonText& json, const PartsTold& parts) {
  std::vector<PartTold> each;
  const std::vector<Shoulders>& shoulders = parts.report.making.value().shoulders;
  for (std::size_t i = 0; i < shoulders.size(); ++i)
    each.push_back({parts.report, parts.report.wood.pieces[i], shoulders[i]});
  write_json(json, each);
}

// ---- joints

template <>
struct JsonObject<TenonSpan> : JsonObjectDefaults {
  static constexpr JsonKey<TenonSpan> keys[] = {{"from_edge", the<&TenonSpan::from_edge>},
                                                {"width", the<&TenonSpan::width>},
                                                {"from_face", the<&TenonSpan::from_face>}};
};

template <>
struct JsonObject<TenonSizes> : JsonObjectDefaults {
  static constexpr JsonKey<TenonSizes> keys[] = {
      {"thickness", the<&TenonSizes::thickness>},
      {"width", the<&TenonSizes::width>},
      {"depth", the<&TenonSizes::depth>},
      {"count", [](auto& it) { return it.each.size(); }, R"("minimum": 1)"},
      {"from_face", the<&TenonSizes::from_face>},
      {"edge_radius", [](auto& it) { return above_zero(it.edge_radius); }},
      {"set_back", [](auto& it) { return above_zero(it.set_back); }},
      {"longer_at_face", [](auto& it) { return above_zero(it.longer_at_face); }},
      {"longer_at_back", [](auto& it) { return above_zero(it.longer_at_back); }},
      {"each", the<&TenonSizes::each>},
      {"haunch_depth", [](auto& it) { return of_haunches(it, it.haunch_depth); }},
      {"haunch_thickness", [](auto& it) { return of_haunches(it, it.haunch_thickness); }},
      {"haunch_from_face", [](auto& it) { return of_haunches(it, it.haunch_from_face); }},
      {"haunches", [](auto& it) { return if_any(it.haunches); }}};
};

template <>
struct JsonObject<TailSizes> : JsonObjectDefaults {
  static constexpr JsonKey<TailSizes> keys[] = {
      {"length", the<&TailSizes::length>},
      {"spread", the<&TailSizes::spread>},
      {"count", [](auto& it) { return it.each.size(); }, R"("minimum": 1)"},
      {"each", the<&TailSizes::each>}};
};

template <>
struct JsonObject<MortiseSpan> : JsonObjectDefaults {
  static constexpr JsonKey<MortiseSpan> keys[] = {{"from_foot", the<&MortiseSpan::from_foot>},
                                                  {"from_edge", the<&MortiseSpan::from_edge>},
                                                  {"length", the<&MortiseSpan::length>},
                                                  {"from_face", the<&MortiseSpan::from_face>}};
};

template <>
struct JsonObject<Flare> : JsonObjectDefaults {
  static constexpr JsonKey<Flare> keys[] = {{"depth", the<&Flare::depth>},
                                            {"width", the<&Flare::width>}};
};

template <>
struct JsonObject<MortiseSizes> : JsonObjectDefaults {
  static constexpr JsonKey<MortiseSizes> keys[] = {
      {"width", the<&MortiseSizes::width>},
      {"length", [](auto& it) { return it.each.front().length; }},
      {"depth", the<&MortiseSizes::depth>},
      {"from_foot", [](auto& it) { return it.each.front().from_foot; }},
      {"from_edge", [](auto& it) { return it.each.front().from_edge; }},
      {"from_shoulder", the<&MortiseSizes::from_shoulder>},
      {"shoulder", [](auto& it) { return if_any(it.shoulder); },
       R"({"enum": ["face", "back", "sight line"]})"},
      {"from_face", the<&MortiseSizes::from_face>},
      {"through", [](auto& it) { return only_if(it.through, true); }},
      {"flare", the<&MortiseSizes::flare>},
      {"end_radius", [](auto& it) { return above_zero(it.end_radius); }},
      {"free_width", the<&MortiseSizes::free_width>},
      {"each", the<&MortiseSizes::each>, R"("minItems": 1)"}};
};

template <>
struct JsonObject<Clearances> : JsonObjectDefaults {
  static constexpr JsonKey<Clearances> keys[] = {
      {"cheeks", the<&Clearances::cheeks>},   {"edges", the<&Clearances::edges>},
      {"bottom", the<&Clearances::bottom>},   {"bite", the<&Clearances::bite>},
      {"bearing", the<&Clearances::bearing>}, {"edge", the<&Clearances::edge>},
      {"draw", the<&Clearances::draw>}};
};

template <>
struct JsonObject<JointShoulders> : JsonObjectDefaults {
  static constexpr JsonKey<JointShoulders> keys[] = {
      {"end", [](auto& it) { return Word<kEnds>(!it.at_low); }},
      {"face", the<&JointShoulders::face>},
      {"back", the<&JointShoulders::back>},
      {"straight", the<&JointShoulders::straight>}};
};

template <>
struct JsonObject<JointTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "joint";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<JointTold> keys[] = {
      {"id", [](auto& it) { return JointId{it.number}; }},
      {"kind", [](auto& it) { return it.joint().kind; }},
      {"receives",
       [](auto& it) -> const std::string& {
         return it.report.wood.pieces[it.joint().receives].mark;
       }},
      {"enters", [](auto& it) -> const std::string& { return it.enters().mark; }},
      {"tenon", [](auto& it) -> const std::optional<TenonSizes>& { return it.joint().tenon; }},
      {"shoulders", [](auto& it) { return it.shoulders(); }},
      {"mortise",
       [](auto& it) -> const std::optional<MortiseSizes>& { return it.joint().mortise; }},
      {"tails", [](auto& it) -> const std::optional<TailSizes>& { return it.joint().tails; }},
      {"clearance", [](auto& it) -> const Clearances& { return it.joint().design; }}};
};

void JsonValue<JointsTold>::write(JsonText& json, const JointsTold& joints) {
  std::vector<JointTold> each;
  for (std::size_t i = 0; i < joints.report.wood.joints.size(); ++i)
    each.push_back({joints.report, i});
  write_json(json, each);
}

std::vector<SchemaDefinition> wood_definitions() {
  return {definition_of<GroupTold>(),   definition_of<PartTold>(), definition_of<EndShoulders>(),
          definition_of<FeatureTold>(), definition_of<Prism>(),    definition_of<JointTold>()};
}

}  // namespace haunch
