// What of the report's JSON has its rows in files of its own: groups, parts, joints and
// operations, seasons, fits.
#pragma once

#include <string>
#include <vector>

#include "json_keys.h"
#include "report.h"

namespace haunch {

/// A joint by its number, "J1" for 0.
struct JointId {
  std::size_t number = 0;
};

std::optional<JointId> joint_id_of(std::optional<std::size_t> joint);
std::vector<JointId> joint_ids(const std::vector<std::size_t>& joints);

struct GroupsTold {
  const Assembly& wood;
};

struct PartsTold {
  const ItemReport& report;
};

struct JointsTold {
  const ItemReport& report;
};

struct OperationsTold {
  const ItemReport& report;
};

struct SeasonTold {
  const ItemReport& report;
};

struct FitsTold {
  const Assembly& wood;
  const FitForecast& forecast;
};

struct TogetherTold {
  const ItemReport& report;
};

template <>
struct JsonValue<JointId> {
  static void write(JsonText& json, JointId joint) { json.text(joint_id(joint.number)); }
  static std::string schema() { return reference_schema("joint_id"); }
};

template <>
struct JsonValue<GroupsTold> {
  static void write(JsonText& json, const GroupsTold& groups);
  static std::string schema() { return list_schema(reference_schema("group")); }
};

template <>
struct JsonValue<PartsTold> {
  static void write(JsonText& json, const PartsTold& parts);
  static std::string schema() { return list_schema(reference_schema("part")); }
};

template <>
struct JsonValue<JointsTold> {
  static void write(JsonText& json, const JointsTold& joints);
  static std::string schema() { return list_schema(reference_schema("joint")); }
};

template <>
struct JsonValue<OperationsTold> {
  static void write(JsonText& json, const OperationsTold& operations);
  static std::string schema() { return list_schema(reference_schema("operation")); }
};

template <>
struct JsonValue<SeasonTold> {
  static void write(JsonText& json, const SeasonTold& season);
  static std::string schema() { return reference_schema("season"); }
};

template <>
struct JsonValue<FitsTold> {
  static void write(JsonText& json, const FitsTold& fits);
  static std::string schema() { return reference_schema("fits"); }
};

template <>
struct JsonValue<TogetherTold> {
  static void write(JsonText& json, const TogetherTold& together);
  static std::string schema() { return reference_schema("together"); }
};

/// What the schema says of each, under the names that are referred to.
std::vector<SchemaDefinition> wood_definitions();
std::vector<SchemaDefinition> operation_definitions();
std::vector<SchemaDefinition> season_definitions();
std::vector<SchemaDefinition> fits_definitions();
std::vector<SchemaDefinition> together_definitions();

}  // namespace haunch
