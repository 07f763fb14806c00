#include "report_json.h"

#include "json_text.h"
#include "operation_json.h"
#include "season_page.h"
#include "tolerance_page.h"

namespace haunch {
namespace {

void append_triple(JsonText& json, const Triple& triple) {
  json.open_list();
  for (const Length length : triple)
    json.number(length);
  json.close_list();
}

void append_size(JsonText& json, const Triple& size) {
  json.key("size");
  json.open_object();
  json.member("width", size[0]);
  json.member("height", size[1]);
  json.member("thickness", size[2]);
  json.close_object();
}

void append_cuts(JsonText& json, const std::vector<Box>& cuts) {
  json.key("cuts");
  json.open_list();
  for (const Box& cut : cuts) {
    json.open_list();
    for (const Triple& corner : {cut.low, cut.high})
      for (const Length length : corner)
        json.number(length);
    json.close_list();
  }
  json.close_list();
}

void append_prism(JsonText& json, const Prism& prism) {
  constexpr std::string_view kOwnAxes[] = {"length", "width", "thickness"};
  json.open_object();
  json.member("along", kOwnAxes[prism.along]);
  json.member("from", prism.from);
  json.member("to", prism.to);
  json.key("polygon");
  json.open_list();
  for (const Corner& corner : prism.outline) {
    json.open_list();
    json.number(corner.u);
    json.number(corner.v);
    json.close_list();
  }
  json.close_list();
  json.close_object();
}

void append_prisms(JsonText& json, const std::vector<Prism>& prisms) {
  if (prisms.empty()) return;
  json.key("prisms");
  json.open_list();
  for (const Prism& prism : prisms)
    append_prism(json, prism);
  json.close_list();
}

void append_served(JsonText& json, const Feature& feature) {
  if (feature.kind != FeatureKind::groove && feature.joints.size() == 1) {
    json.member("joint", joint_id(feature.joints.front()));
  } else if (!feature.joints.empty()) {
    json.key("joints");
    json.open_list();
    for (const std::size_t joint : feature.joints)
      json.text(joint_id(joint));
    json.close_list();
  }
}

void append_feature(JsonText& json, const Piece& piece, const Feature& feature) {
  json.open_object();
  json.member("kind", word(feature.kind));
  if (feature.fitting) {
    json.member("fitting", feature.fitting->name);
    json.member("into", side_name(piece, feature.fitting->into, feature.fitting->from_high));
  }
  append_served(json, feature);
  for (const NamedSize& size : feature.sizes)
    json.member(word(size.name), size.size);
  append_cuts(json, feature.cuts);
  append_prisms(json, feature.prisms);
  json.close_object();
}

void append_place(JsonText& json, const Place& place) {
  constexpr std::string_view kAxisNames[] = {"x", "y", "z"};
  json.key("at");
  json.open_object();
  json.key("origin");
  append_triple(json, place.origin);
  json.key("axes");
  json.open_list();
  for (const Axis axis : place.axes)
    json.text(kAxisNames[static_cast<std::size_t>(axis)]);
  json.close_list();
  json.close_object();
}

void append_end(JsonText& json, std::string_view name, const std::optional<EndShoulders>& end) {
  if (!end) return;
  json.key(name);
  json.open_object();
  json.member("line", end->line);
  json.member("face", end->face);
  json.member("back", end->back);
  json.close_object();
}

void append_shoulders(JsonText& json, const Piece& piece, const Shoulders& shoulders) {
  if (!shoulders.any()) return;
  json.key("shoulders");
  json.open_object();
  json.member("line", shoulder_line_word(shoulders.line));
  append_end(json, "low", shoulders.low);
  append_end(json, "high", shoulders.high);
  append_end(json, "between",
             EndShoulders{shoulders.between(&EndShoulders::line, piece.blank[0]),
                          shoulders.between(&EndShoulders::face, piece.blank[0]),
                          shoulders.between(&EndShoulders::back, piece.blank[0])});
  json.close_object();
}

void append_part(JsonText& json, const Piece& piece, const std::string& material,
                 const Shoulders& shoulders) {
  json.row();
  json.open_object();
  json.member("mark", piece.mark);
  json.member("name", piece.name);
  json.member("role", word(piece.role));
  json.member("material", material);
  json.member("length", piece.blank[0]);
  json.member("width", piece.blank[1]);
  json.member("thickness", piece.blank[2]);
  append_place(json, piece.place);
  append_shoulders(json, piece, shoulders);
  json.key("features");
  json.open_list();
  for (const Feature& feature : piece.features)
    append_feature(json, piece, feature);
  json.close_list();
  json.close_object();
}

void append_spans(JsonText& json, std::string_view name, const std::vector<TenonSpan>& spans) {
  json.key(name);
  json.open_list();
  for (const TenonSpan& span : spans) {
    json.open_object();
    json.member("from_edge", span.from_edge);
    json.member("width", span.width);
    if (span.from_face) json.member("from_face", *span.from_face);
    json.close_object();
  }
  json.close_list();
}

void append_tenon(JsonText& json, const TenonSizes& tenon) {
  json.key("tenon");
  json.open_object();
  json.member("thickness", tenon.thickness);
  json.member("width", tenon.width);
  json.member("depth", tenon.depth);
  json.member("count", std::ssize(tenon.each));
  json.member("from_face", tenon.from_face);
  if (tenon.edge_radius > Length()) json.member("edge_radius", tenon.edge_radius);
  if (tenon.set_back > Length()) json.member("set_back", tenon.set_back);
  if (tenon.longer_at_face > Length()) json.member("longer_at_face", tenon.longer_at_face);
  if (tenon.longer_at_back > Length()) json.member("longer_at_back", tenon.longer_at_back);
  append_spans(json, "each", tenon.each);
  if (!tenon.haunches.empty()) {
    json.member("haunch_depth", tenon.haunch_depth);
    json.member("haunch_thickness", tenon.haunch_thickness);
    json.member("haunch_from_face", tenon.haunch_from_face);
    append_spans(json, "haunches", tenon.haunches);
  }
  json.close_object();
}

void append_mortise(JsonText& json, const MortiseSizes& mortise) {
  json.key("mortise");
  json.open_object();
  json.member("width", mortise.width);
  json.member("length", mortise.each.front().length);
  json.member("depth", mortise.depth);
  json.member("from_foot", mortise.each.front().from_foot);
  if (mortise.each.front().from_edge) json.member("from_edge", *mortise.each.front().from_edge);
  if (mortise.from_shoulder) json.member("from_shoulder", *mortise.from_shoulder);
  if (!mortise.shoulder.empty()) json.member("shoulder", mortise.shoulder);
  json.member("from_face", mortise.from_face);
  if (mortise.through) {
    json.key("through");
    json.truth(true);
  }
  if (mortise.flare) {
    json.key("flare");
    json.open_object();
    json.member("depth", mortise.flare->depth);
    json.member("width", mortise.flare->width);
    json.close_object();
  }
  if (mortise.end_radius > Length()) json.member("end_radius", mortise.end_radius);
  if (mortise.free_width) json.member("free_width", *mortise.free_width);
  if (mortise.each.size() > 1) {
    json.key("each");
    json.open_list();
    for (const MortiseSpan& span : mortise.each) {
      json.open_object();
      json.member("from_foot", span.from_foot);
      if (span.from_edge) json.member("from_edge", *span.from_edge);
      json.member("length", span.length);
      if (span.from_face) json.member("from_face", *span.from_face);
      json.close_object();
    }
    json.close_list();
  }
  json.close_object();
}

void append_joint_shoulders(JsonText& json, const std::optional<JointShoulders>& shoulders) {
  if (!shoulders) return;
  json.key("shoulders");
  json.open_object();
  json.member("end", shoulders->at_low ? "low" : "high");
  json.member("face", shoulders->face);
  json.member("back", shoulders->back);
  json.key("straight");
  json.truth(shoulders->straight);
  json.close_object();
}

void append_joint(JsonText& json, const Assembly& wood, std::size_t number,
                  const Shoulders& shoulders) {
  const Joint& joint = wood.joints[number];
  json.row();
  json.open_object();
  json.member("id", joint_id(number));
  json.member("kind", word(joint.kind));
  json.member("receives", wood.pieces[joint.receives].mark);
  json.member("enters", wood.pieces[joint.enters].mark);
  if (joint.tenon) append_tenon(json, *joint.tenon);
  append_joint_shoulders(json, shoulders_at(joint, wood.pieces[joint.enters], shoulders));
  if (joint.mortise) append_mortise(json, *joint.mortise);
  json.key("clearance");
  json.open_object();
  if (joint.design.cheeks) json.member("cheeks", *joint.design.cheeks);
  if (joint.design.edges) json.member("edges", *joint.design.edges);
  if (joint.design.bottom) json.member("bottom", *joint.design.bottom);
  if (joint.design.bite) json.member("bite", *joint.design.bite);
  if (joint.design.bearing) json.member("bearing", *joint.design.bearing);
  if (joint.design.edge) json.member("edge", *joint.design.edge);
  if (joint.design.draw) json.member("draw", *joint.design.draw);
  json.close_object();
  json.close_object();
}

void append_cut_row(JsonText& json, const CutRow& row) {
  json.row();
  json.open_object();
  json.member("part", word(row.part));
  json.key("marks");
  json.open_list();
  for (const std::string& mark : row.marks)
    json.text(mark);
  json.close_list();
  json.member("quantity", row.quantity);
  json.member("length", row.length);
  json.member("saw_length", row.saw_length);
  json.member("width", row.width);
  json.member("thickness", row.thickness);
  json.member("material", row.material);
  json.member("grain", row.grain);
  json.close_object();
}

void append_remedy(JsonText& json, const std::optional<Remedy>& remedy, Unit unit) {
  json.key("remedy");
  if (!remedy) {
    json.null();
    return;
  }
  json.open_object();
  json.member("key", remedy->key);
  json.member("from", remedy->from);
  json.member("to", remedy->to);
  json.member("message", remedy_message(*remedy, unit));
  json.close_object();
}

void append_check(JsonText& json, const ItemReport& report, std::size_t number, Unit unit) {
  const Finding& finding = report.findings[number];
  json.row();
  json.open_object();
  json.member("check", finding.rule->check);
  json.member("status", status_word(finding.status));
  json.key("parts");
  json.open_list();
  for (const std::size_t part : finding.parts)
    json.text(report.wood.pieces[part].mark);
  json.close_list();
  if (finding.joint) json.member("joint", joint_id(*finding.joint));
  if (!finding.fitting.empty()) json.member("fitting", finding.fitting);
  if (finding.moisture) {
    json.key("moisture");
    json.number(*finding.moisture, 3);
  }
  json.member("value", finding.value);
  json.key("limit");
  json.open_object();
  if (finding.min) json.member("min", *finding.min);
  if (finding.max) json.member("max", *finding.max);
  json.close_object();
  json.member("message", finding_message(finding, unit));
  append_remedy(json, report.remedies ? report.remedies->of[number] : std::nullopt, unit);
  if (finding.status != Status::ok && report.remedies)
    json.member("remedy_search", search_word(!search_stopped(report, number)));
  json.close_object();
}

void append_value(JsonText& json, const AssumedValue& value) {
  switch (value.kind) {
    case AssumedValue::Kind::length:
      return json.number(value.length);
    case AssumedValue::Kind::number:
      return json.number(std::int64_t{value.number});
    case AssumedValue::Kind::words:
      return json.text(value.words);
    case AssumedValue::Kind::lengths:
      json.open_list();
      for (const Length length : value.lengths)
        json.number(length);
      return json.close_list();
  }
}

void append_given(JsonText& json, const std::vector<Given>& given) {
  json.key("given");
  json.open_list();
  for (const Given& it : given) {
    json.row();
    json.open_object();
    json.member("key", it.key);
    json.member("written", it.written);
    json.member("value", it.length);
    json.close_object();
  }
  json.close_list();
}

void append_assumed(JsonText& json, const std::vector<Assumed>& assumed) {
  json.key("assumed");
  json.open_list();
  for (const Assumed& it : assumed) {
    json.row();
    json.open_object();
    json.member("key", it.key);
    json.key("value");
    append_value(json, it.value);
    json.member("why", it.why);
    json.close_object();
  }
  json.close_list();
}

void append_rooms(JsonText& json, const std::vector<NamedRoom>& rooms) {
  if (rooms.empty()) return;
  json.key("rooms");
  json.open_list();
  for (const NamedRoom& room : rooms) {
    json.row();
    json.open_object();
    json.member("what", room.what);
    json.member("width", room.width);
    json.member("height", room.height);
    json.close_object();
  }
  json.close_list();
}

void append_cautions(JsonText& json, const std::vector<Caution>& cautions) {
  if (cautions.empty()) return;
  json.key("cautions");
  json.open_list();
  for (const Caution& caution : cautions) {
    json.row();
    json.open_object();
    json.member("about", caution.about);
    json.member("message", caution.words);
    json.close_object();
  }
  json.close_list();
}

void append_parts(JsonText& json, const ItemReport& report) {
  json.key("parts");
  json.open_list();
  const std::vector<Shoulders>& shoulders = report.making.value().shoulders;
  for (std::size_t number = 0; number < report.wood.pieces.size(); ++number) {
    const Piece& piece = report.wood.pieces[number];
    append_part(json, piece, material_of(piece, *report.job), shoulders[number]);
  }
  json.close_list();
}

void append_joints(JsonText& json, const ItemReport& report) {
  json.key("joints");
  json.open_list();
  const std::vector<Shoulders>& shoulders = report.making.value().shoulders;
  for (std::size_t number = 0; number < report.wood.joints.size(); ++number)
    append_joint(json, report.wood, number, shoulders[report.wood.joints[number].enters]);
  json.close_list();
}

void append_cutlist(JsonText& json, const ItemReport& report) {
  json.key("cutlist");
  json.open_list();
  for (const CutRow& row : report.cutlist)
    append_cut_row(json, row);
  json.close_list();
}

void append_checks(JsonText& json, const ItemReport& report, Unit unit) {
  json.key("checks");
  json.open_list();
  for (std::size_t number = 0; number < report.findings.size(); ++number)
    append_check(json, report, number, unit);
  json.close_list();
}

}  // namespace

std::string report_json_head(Unit unit) {
  return R"({"format": "haunch-report-1", "units": ")" + std::string(unit_word(unit)) +
         R"(", "items": [)";
}

void append_item_json(std::string& out, const ItemReport& report, Section section, Unit unit,
                      bool first) {
  out += first ? "\n" : ",\n";
  JsonText json(out, unit);
  json.open_object();
  json.member("id", report.job->id);
  json.member("kind", report.job->kind);
  json.member("name", report.job->name);
  if (!report.job->note.empty()) json.member("note", report.job->note);
  json.member("quantity", std::int64_t{report.job->quantity});
  json.member("units", unit_word(unit));
  append_size(json, report.wood.size);
  append_rooms(json, report.rooms);
  const bool whole = section == Section::sheet;
  if (whole || section == Section::joints) {
    append_parts(json, report);
    append_joints(json, report);
    append_operations_json(json, report);
  }
  if (whole || section == Section::cutlist) append_cutlist(json, report);
  if (whole || section == Section::check) append_checks(json, report, unit);
  if (report.remedies) json.member("remedy_search", search_word(report.remedies->complete()));
  if ((whole || section == Section::check) && report.fits)
    append_fits_json(json, report.wood, *report.fits);
  if (report.seasons && (whole || section == Section::check || section == Section::season))
    append_season_json(json, report);
  append_cautions(json, report.cautions);
  append_given(json, report.job->given);
  append_assumed(json, report.assumed);
  json.close_object();
}

void append_error_json(std::string& out, const PlacedProblem& error, bool first) {
  out += first ? "\n  " : ",\n  ";
  JsonText json(out, Unit::mm);
  json.open_object();
  json.member("source", error.source);
  json.member("line", static_cast<std::int64_t>(error.line));
  json.member("column", static_cast<std::int64_t>(error.column));
  json.member("path", error.path);
  json.member("message", error.message);
  json.close_object();
}

}  // namespace haunch
