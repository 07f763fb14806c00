#include "operation_json.h"

namespace haunch {
namespace {

/// A yes that is left out where it is a no.
void append_yes(JsonText& json, std::string_view name, bool value) {
  if (!value) return;
  json.key(name);
  json.truth(true);
}

void append_some(JsonText& json, std::string_view name, std::optional<Length> value) {
  if (value) json.member(name, *value);
}

void append_run(JsonText& json, const Assembly& wood, const Run& run) {
  const Piece& piece = wood.pieces[run.piece];
  json.open_object();
  json.member("part", piece.mark);
  json.member("feature", static_cast<std::int64_t>(run.feature));
  if (run.joint) json.member("joint", joint_id(*run.joint));
  json.member("side", side_name(piece, run.side.into, run.side.from_high));
  json.member("from", word(run.from));
  json.member("near", run.near);
  append_some(json, "far", run.far);
  if (run.to) json.member("to", word(*run.to));
  append_some(json, "from_other_end", run.from_other_end);
  if (run.from_shoulder) {
    json.member("shoulder", shoulder_line_word(run.from_shoulder->line));
    json.member("from_shoulder", run.from_shoulder->near);
  }
  append_some(json, "straight", run.straight);
  json.close_object();
}

void append_operation(JsonText& json, const Assembly& wood, const Operation& operation) {
  json.row();
  json.open_object();
  json.member("makes", word(operation.makes));
  if (operation.cut != Cut::whole) json.member("cut", word(operation.cut));
  json.key("settings");
  json.open_object();
  for (const NamedSize& setting : operation.settings)
    json.member(word(setting.name), setting.size);
  json.close_object();
  append_yes(json, "through", operation.through);
  append_yes(json, "open_end", operation.open_end);
  append_yes(json, "both_faces", operation.both_faces);
  json.key("runs");
  json.open_list();
  for (const Run& run : operation.runs)
    append_run(json, wood, run);
  json.close_list();
  json.close_object();
}

}  // namespace

void append_operations_json(JsonText& json, const ItemReport& report) {
  json.key("operations");
  json.open_list();
  for (const Operation& operation : report.making.value().operations)
    append_operation(json, report.wood, operation);
  json.close_list();
}

}  // namespace haunch
