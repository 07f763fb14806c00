#include "step_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <map>
#include <utility>

#include "spots.h"
#include "utf8.h"

namespace haunch {
namespace {

// A step is 0.000000625 mm: nine decimals tell it exactly.
constexpr int kPlaceDecimals = 9;
// Of directions: over 10 m off by less than a step.
constexpr int kWayDecimals = 15;

/// With a decimal point, and no zeros that say nothing: "12.", "0.5", "-3.25".
std::string number(double value, int decimals) {
  std::string text = fmt::format("{:.{}f}", value, decimals);
  text.erase(text.find_last_not_of('0') + 1);
  return text == "-0." ? "0." : text;
}

std::string triple(const Spot& spot, int decimals) {
  return number(spot[0], decimals) + "," + number(spot[1], decimals) + "," +
         number(spot[2], decimals);
}

std::string list(const std::vector<std::size_t>& numbers) {
  std::string text;
  for (const std::size_t each : numbers)
    text += fmt::format("{}#{}", text.empty() ? "" : ",", each);
  return "(" + text + ")";
}

Spot of_length_one(const Spot& way) {
  const double size = size_of(way);
  return {way[0] / size, way[1] / size, way[2] / size};
}

/// The instances of a file, numbered as they come.
class Instances {
 public:
  std::size_t add(std::string_view entity) {
    text_ += fmt::format("#{}={};\n", ++count_, entity);
    return count_;
  }

  std::size_t point(const Spot& steps) {
    constexpr auto kSteps = static_cast<double>(Length::kStepsPerMm);
    const Spot mm{steps[0] / kSteps, steps[1] / kSteps, steps[2] / kSteps};
    return add(fmt::format("CARTESIAN_POINT('',({}))", triple(mm, kPlaceDecimals)));
  }

  /// Those that are the same are there once.
  std::size_t direction(const Spot& way) {
    const std::string text = triple(of_length_one(way), kWayDecimals);
    const auto [found, is_new] = directions_.try_emplace(text, 0);
    if (is_new) found->second = add(fmt::format("DIRECTION('',({}))", text));
    return found->second;
  }

  const std::string& text() const { return text_; }

 private:
  std::string text_;
  std::size_t count_ = 0;
  std::map<std::string, std::size_t> directions_;
};

/// Writes the shell of one solid.
class SolidText {
 public:
  SolidText(Instances& out, const Shell& shell) : out_(out), shell_(shell) {}

  std::size_t write(const std::string& name) {
    for (const Spot& corner : shell_.corners) {
      points_.push_back(out_.point(corner));
      vertices_.push_back(out_.add(fmt::format("VERTEX_POINT('',#{})", points_.back())));
    }
    for (const ShellEdge& its : shell_.edges)
      edges_.push_back(edge(its));
    std::vector<std::size_t> faces;
    for (const ShellFace& its : shell_.faces)
      faces.push_back(face(its));
    const std::size_t shell = out_.add("CLOSED_SHELL(''," + list(faces) + ")");
    return out_.add(fmt::format("MANIFOLD_SOLID_BREP({},#{})", step_string(name), shell));
  }

 private:
  std::size_t edge(const ShellEdge& its) {
    const std::size_t way = out_.direction(minus(shell_.corners[its.to], shell_.corners[its.from]));
    const std::size_t vector = out_.add(fmt::format("VECTOR('',#{},1.)", way));
    const std::size_t line = out_.add(fmt::format("LINE('',#{},#{})", points_[its.from], vector));
    return out_.add(fmt::format("EDGE_CURVE('',#{},#{},#{},.T.)", vertices_[its.from],
                                vertices_[its.to], line));
  }

  std::size_t face(const ShellFace& its) {
    std::vector<std::size_t> bounds{bound("FACE_OUTER_BOUND", its.outer)};
    for (const ShellLoop& hole : its.holes)
      bounds.push_back(bound("FACE_BOUND", hole));
    return out_.add(fmt::format("ADVANCED_FACE('',{},#{},.T.)", list(bounds), plane(its)));
  }

  std::size_t bound(std::string_view kind, const ShellLoop& loop) {
    std::vector<std::size_t> uses;
    for (const EdgeUse& use : loop)
      uses.push_back(out_.add(fmt::format("ORIENTED_EDGE('',*,*,#{},{})", edges_[use.edge],
                                          use.forwards ? ".T." : ".F.")));
    const std::size_t ring = out_.add("EDGE_LOOP(''," + list(uses) + ")");
    return out_.add(fmt::format("{}('',#{},.T.)", kind, ring));
  }

  std::size_t plane(const ShellFace& its) {
    const EdgeUse& first = its.outer.front();
    const ShellEdge& edge = shell_.edges[first.edge];
    const std::size_t normal = out_.direction(its.side.normal);
    const std::size_t along =
        out_.direction(minus(shell_.corners[edge.to], shell_.corners[edge.from]));
    const std::size_t axes = out_.add(fmt::format("AXIS2_PLACEMENT_3D('',#{},#{},#{})",
                                                  points_[start_of(shell_, first)], normal, along));
    return out_.add(fmt::format("PLANE('',#{})", axes));
  }

  Instances& out_;
  const Shell& shell_;
  std::vector<std::size_t> points_, vertices_, edges_;
};

/// Millimetres and radians, and how near two points are one.
std::size_t write_context(Instances& out) {
  const std::size_t mm = out.add("(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))");
  const std::size_t radian = out.add("(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))");
  const std::size_t steradian = out.add("(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())");
  const std::size_t near = out.add(fmt::format(
      "UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(1.E-6),#{},'distance_accuracy_value','')", mm));
  return out.add(
      fmt::format("(GEOMETRIC_REPRESENTATION_CONTEXT(3)"
                  "GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((#{}))"
                  "GLOBAL_UNIT_ASSIGNED_CONTEXT((#{},#{},#{}))"
                  "REPRESENTATION_CONTEXT('',''))",
                  near, mm, radian, steradian));
}

/// What the shape is of.
std::size_t write_product(Instances& out, const StepPart& part) {
  const std::size_t application =
      out.add("APPLICATION_CONTEXT('managed model based 3d engineering')");
  out.add(
      fmt::format("APPLICATION_PROTOCOL_DEFINITION('international standard',"
                  "'ap242_managed_model_based_3d_engineering',2014,#{})",
                  application));
  const std::size_t field =
      out.add(fmt::format("PRODUCT_CONTEXT('',#{},'mechanical')", application));
  const std::size_t product = out.add(
      fmt::format("PRODUCT({},{},'',(#{}))", step_string(part.id), step_string(part.name), field));
  const std::size_t formation =
      out.add(fmt::format("PRODUCT_DEFINITION_FORMATION('','',#{})", product));
  const std::size_t stage = out.add(
      fmt::format("PRODUCT_DEFINITION_CONTEXT('part definition',#{},'design')", application));
  const std::size_t definition =
      out.add(fmt::format("PRODUCT_DEFINITION('','',#{},#{})", formation, stage));
  return out.add(fmt::format("PRODUCT_DEFINITION_SHAPE('','',#{})", definition));
}

std::string header(const StepPart& part) {
  std::string about;
  for (const std::string& line : part.about)
    about += (about.empty() ? "" : ",\n  ") + step_string(line);
  return "ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION((" + about + "),'2;1');\nFILE_NAME(" +
         step_string(part.id) +
         ",'',(''),(''),'','haunch','');\n"
         "FILE_SCHEMA(('AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF'));\nENDSEC;\n";
}

}  // namespace

std::string step_string(std::string_view text) {
  std::string result = "'";
  while (!text.empty()) {
    const Utf8Character character = first_character(text);
    const char32_t code = character.size == 0 ? U'\uFFFD' : character.code;
    if (code >= 0x20 && code < 0x7F) {
      if (text.front() == '\'' || text.front() == '\\') result += text.front();
      result += text.front();
    } else if (code < 0x10000) {
      result += fmt::format("\\X2\\{:04X}\\X0\\", static_cast<unsigned>(code));
    } else {
      result += fmt::format("\\X4\\{:08X}\\X0\\", static_cast<unsigned>(code));
    }
    text.remove_prefix(std::max<std::size_t>(character.size, 1));
  }
  return result + "'";
}

std::string step_text(const StepPart& part, const Shell& shell) {
  Instances out;
  const std::size_t shape_of = write_product(out, part);
  const std::size_t context = write_context(out);
  const std::size_t zero = out.point({});
  const std::size_t up = out.direction({0, 0, 1});
  const std::size_t right = out.direction({1, 0, 0});
  const std::size_t axes =
      out.add(fmt::format("AXIS2_PLACEMENT_3D('',#{},#{},#{})", zero, up, right));
  const std::size_t solid = SolidText(out, shell).write(part.name);
  const std::size_t shape = out.add(
      fmt::format("ADVANCED_BREP_SHAPE_REPRESENTATION('',(#{},#{}),#{})", axes, solid, context));
  out.add(fmt::format("SHAPE_DEFINITION_REPRESENTATION(#{},#{})", shape_of, shape));
  return header(part) + "DATA;\n" + out.text() + "ENDSEC;\nEND-ISO-10303-21;\n";
}

}  // namespace haunch
