#include "edge_page.h"

#include <map>
#include <vector>

#include "machine_sets.h"
#include "report.h"

namespace haunch {
namespace {

/// A rebate along a piece's edge in which panels lie.
bool holds_panels(const Assembly& wood, const Feature& feature) {
  return feature.kind == FeatureKind::rebate && !feature.joints.empty() &&
         wood.joints[feature.joints.front()].kind == JointKind::panel_in_rebate;
}

// ---- grooves, rebates and panels

using CutKey = std::vector<Length>;
using EdgeRows = std::map<std::string, Marks>;  // by the name of the edge
using EdgeSets = std::vector<MachineSet<CutKey, EdgeRows>>;

std::string edges_text(const EdgeRows& rows) {
  std::string text;
  for (const auto& [edge, marks] : rows)
    text += (text.empty() ? "" : "; ") + edge + " of " + joined(marks);
  return text;
}

/// A raise or moulding as its cutter is set: sizes by name.
struct CutterSetting {
  std::vector<NamedSize> sizes;

  Length size(SizeName name) const {
    for (const NamedSize& it : sizes)
      if (it.name == name) return it.size;
    return {};
  }
  friend bool operator==(const CutterSetting& a, const CutterSetting& b) {
    return std::equal(a.sizes.begin(), a.sizes.end(), b.sizes.begin(), b.sizes.end(),
                      [](const NamedSize& x, const NamedSize& y) {
                        return x.name == y.name && x.size == y.size;
                      });
  }
};

std::string raise_text(const CutterSetting& raise, const LengthPrinter& lengths) {
  const Length radius = raise.size(SizeName::radius);
  const Length tongue = raise.size(SizeName::tongue);
  const Length shoulder = raise.size(SizeName::shoulder);
  const Length slope = raise.size(SizeName::width) - tongue;
  std::string text = lengths.one(raise.size(SizeName::width)) + " wide and " +
                     lengths.one(raise.size(SizeName::depth)) + " deep: from the edge " +
                     (tongue == Length() ? "" : lengths.one(tongue) + " of flat tongue, then ") +
                     "a ";
  text += radius == Length()
              ? "bevel " + lengths.one(slope) + " wide"
              : "cove " + lengths.one(slope) + " wide of radius " + lengths.one(radius);
  text += " that rises " + lengths.one(raise.size(SizeName::depth) - shoulder);
  return text + (shoulder == Length()
                     ? " to the field"
                     : ", then a shoulder of " + lengths.one(shoulder) + " up to the field");
}

/// "ovolo of radius 8, 8 wide on the face and 9 deep …"
std::string moulding_text(const Feature& feature, const LengthPrinter& lengths) {
  const CutterSetting moulding{feature.sizes};
  const Length radius = moulding.size(SizeName::radius);
  const Length fillet = moulding.size(SizeName::fillet);
  const Length hollow = moulding.size(SizeName::hollow_radius);
  std::string text = "bevel";
  if (radius > Length()) text = "ovolo of radius " + lengths.one(radius);
  if (hollow > Length()) text = "cove of radius " + lengths.one(hollow);
  text += ", " + lengths.one(moulding.size(SizeName::width)) + " wide on the face and " +
          lengths.one(moulding.size(SizeName::depth)) + " deep";
  if (fillet > Length()) text += ", with a fillet of " + lengths.one(fillet) + " under the face";
  return text;
}

/// The panels by what they were set out to have at their sides and ends, in joints of a kind.
std::vector<MachineSet<CutKey, Marks>> panel_sets(const Assembly& wood, JointKind kind) {
  std::vector<MachineSet<CutKey, Marks>> sets;
  for (std::size_t number = 0; number < wood.pieces.size(); ++number) {
    const Piece& piece = wood.pieces[number];
    CutKey key(5);
    bool held = false;
    for (const Joint& joint : wood.joints) {
      if (joint.enters != number || joint.kind != kind || joint.arched) continue;
      const std::size_t at = joint.heading.axis == piece.place.axes[0] ? 2 : 0;
      key[at] = *joint.design.bottom;
      key[at + 1] = *joint.design.bite;
      key[4] = joint.design.cheeks.value_or(Length());
      held = true;
    }
    if (held) add_once(rows_for(sets, key), piece.mark);
  }
  return sets;
}

}  // namespace

bool has_rebated_edges(const Assembly& wood) {
  for (const Piece& piece : wood.pieces)
    for (const Feature& feature : piece.features)
      if (holds_panels(wood, feature)) return true;
  return false;
}

std::string groove_page(const Assembly& wood, const LengthPrinter& lengths) {
  EdgeSets sets;
  bool any_stopped = false;
  for (const Piece& piece : wood.pieces) {
    for (const Feature& feature : piece.features) {
      if (feature.kind != FeatureKind::groove || feature.cuts.empty()) continue;
      const Box& cut = feature.cuts.front();
      auto& rows = rows_for(sets, CutKey{cut.extent(2), cut.extent(1), cut.low[2]});
      std::string edge = worked_edge(piece, cut.low[1] == Length()) + " edge";
      const bool stopped = cut.extent(0) != piece.blank[0];
      any_stopped = any_stopped || stopped;
      if (stopped)
        edge += ", stopped: from " + lengths.one(cut.low[0]) + " to " + lengths.one(cut.high[0]) +
                (is_upright(piece) ? " from the foot," : " from the left end,");
      add_once(rows[edge], piece.mark);
    }
  }
  if (sets.empty()) return {};
  std::string page = std::string("\nGROOVES, the whole length") +
                     (any_stopped ? " unless they are stopped\n" : "\n");
  for (const auto& [key, rows] : sets) {
    page += "  " + lengths.one(key[0]) + " wide, " + lengths.one(key[1]) + " deep, " +
            lengths.one(key[2]) + " from the face side\n";
    page += "    " + wrapped(edges_text(rows), kPageWidth, 4) + "\n";
  }
  return page;
}

std::string edge_rebate_page(const Assembly& wood, const LengthPrinter& lengths) {
  EdgeSets sets;
  for (const Piece& piece : wood.pieces) {
    for (const Feature& feature : piece.features) {
      if (!holds_panels(wood, feature)) continue;
      const Box& cut = feature.cuts.front();
      auto& rows = rows_for(sets, CutKey{cut.extent(2), cut.extent(1), cut.low[2]});
      add_once(rows[worked_edge(piece, cut.low[1] == Length()) + " edge"], piece.mark);
    }
  }
  if (sets.empty()) return {};
  std::string page = "\nREBATES of the frame, at the back, the whole length\n";
  for (const auto& [key, rows] : sets) {
    page += "  " + lengths.one(key[1]) + " deep from the edge, " + lengths.one(key[0]) +
            " wide from the back, leaving " + lengths.one(key[2]) + " at the face side\n";
    page += "    " + wrapped(edges_text(rows), kPageWidth, 4) + "\n";
  }
  return page;
}

std::string moulding_page(const Assembly& wood, const LengthPrinter& lengths) {
  std::vector<MachineSet<std::string, EdgeRows>> sets;
  bool mitred = false;
  for (const Piece& piece : wood.pieces) {
    for (const Feature& feature : piece.features) {
      mitred = mitred || feature.kind == FeatureKind::moulding_mitre;
      if (feature.kind != FeatureKind::moulding) continue;
      const std::string text =
          moulding_text(feature, lengths) +
          (feature.prisms.size() > 1 ? "; on both faces" : "; at the face side");
      const bool low = feature.prisms.front().outline.back().u == Length();
      add_once(rows_for(sets, text)[worked_edge(piece, low) + " edge"], piece.mark);
    }
  }
  if (sets.empty()) return {};
  std::string page = "\nMOULDINGS, the whole length" +
                     std::string(mitred ? "" : ", after the ends are coped") + "\n";
  for (const auto& [text, rows] : sets) {
    page += "  " + wrapped(text, kPageWidth, 2) + "\n";
    page += "    " + wrapped(edges_text(rows), kPageWidth, 4) + "\n";
  }
  return page;
}

std::string moulding_mitre_page(const Assembly& wood, const LengthPrinter& lengths) {
  TextTable table({"in", "edge", "from", "near", "far", "deep", "mitred at", "takes"});
  Length cut_away;  // of one leaf all the same
  for (const Joint& joint : wood.joints) {
    if (!joint.tenon || joint.tenon->set_back == Length()) continue;
    cut_away = joint.tenon->set_back;
    const Piece& receives = wood.pieces[joint.receives];
    const Piece& enters = wood.pieces[joint.enters];
    const auto along = static_cast<std::size_t>(receives.place.axes[0]);
    const Box end = placed_blank(enters);
    const Length near = end.low[along] - receives.place.origin[along];
    const Length far = end.high[along] - receives.place.origin[along];
    const bool at_foot = near == Length();
    const bool at_head = far == receives.blank[0];
    table.add({receives.mark, worked_edge(receives, joint.heading.upwards),
               is_upright(receives) ? "foot" : "left end", near, far, joint.tenon->set_back,
               std::string(at_foot   ? "far"
                           : at_head ? "near"
                                     : "both"),
               enters.mark});
  }
  if (table.empty()) return {};
  const std::string by = lengths.one(cut_away);
  return "\nMOULDINGS CUT AWAY for the shoulders\n" + table.text(lengths, 2) + "  " +
         wrapped(
             "The edge is cut away through the whole thickness, for the shoulders are set back on "
             "both faces. near, far: at the edge, which is the sight edge; deep: from there. At a "
             "mitred end the cut slopes at 45 degrees, through the whole thickness too, " +
                 by +
                 " in at its bottom. What comes there is mitred to it at its moulded edges, also "
                 "through its whole thickness: at "
                 "the edge from " +
                 by + " behind its shoulder, running out to the shoulder " + by +
                 " in from the edge. Mortises and grooves first, then the mouldings, then cut them "
                 "away.",
             kPageWidth, 2) +
         "\n";
}

std::string rebate_page(const Assembly& wood, const LengthPrinter& lengths) {
  EdgeSets sets;
  for (const Piece& piece : wood.pieces) {
    for (const Feature& feature : piece.features) {
      if (feature.kind != FeatureKind::rebate || piece.role != Role::panel) continue;
      const Box& cut = feature.cuts.front();
      auto& rows = rows_for(sets, CutKey{cut.extent(1), cut.extent(2)});
      add_once(rows[cut.low[2] == Length() ? "face side" : "back"], piece.mark);
    }
  }
  if (sets.empty()) return {};
  std::string page = "\nREBATES, all round\n";
  for (const auto& [key, rows] : sets) {
    page += "  " + lengths.one(key[0]) + " wide, " + lengths.one(key[1]) + " deep\n";
    page += "    " + wrapped(edges_text(rows), kPageWidth, 4) + "\n";
  }
  return page;
}

std::string raise_page(const Assembly& wood, const LengthPrinter& lengths) {
  std::vector<MachineSet<CutterSetting, EdgeRows>> sets;
  for (const Piece& piece : wood.pieces) {
    for (const Feature& feature : piece.features) {
      if (feature.kind != FeatureKind::raise) continue;
      auto& rows = rows_for(sets, CutterSetting{feature.sizes});
      const bool front = feature.cuts.front().low[2] == Length();
      add_once(rows[front ? "face side" : "back"], piece.mark);
    }
  }
  if (sets.empty()) return {};
  std::string page = "\nRAISED PANELS, all round\n";
  for (const auto& [raise, rows] : sets) {
    page += "  " + wrapped(raise_text(raise, lengths), kPageWidth, 2) + "\n";
    page += "    " + wrapped(edges_text(rows), kPageWidth, 4) + "\n";
  }
  return page + "  " +
         wrapped(
             "The ends first, then the long edges, so that what breaks out at the "
             "corners is taken off.",
             kPageWidth, 2) +
         "\n";
}

std::string panel_page(const Assembly& wood, const LengthPrinter& lengths) {
  std::string page;
  TextTable grooved(
      {"panels", "side gap", "side bite", "end gap", "end bite", "play in thickness"});
  for (const auto& [key, marks] : panel_sets(wood, JointKind::panel_in_groove))
    grooved.add({joined(marks), key[0], key[1], key[2], key[3], key[4]});
  if (!grooved.empty()) page += "\nPANELS in their grooves\n" + grooved.text(lengths, 2);
  TextTable bedded({"panels", "side gap", "side bite", "end gap", "end bite"});
  for (const auto& [key, marks] : panel_sets(wood, JointKind::panel_in_rebate))
    bedded.add({joined(marks), key[0], key[1], key[2], key[3]});
  if (!bedded.empty())
    page +=
        "\nPANELS in their rebates, against the wood at the face side\n" + bedded.text(lengths, 2);
  return page;
}

}  // namespace haunch
