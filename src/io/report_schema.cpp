#include "schema.h"

namespace haunch {
namespace {

constexpr std::string_view kReportSchema = R"schema({
  "$schema": "https://json-schema.org/draft/2020-12/schema",
  "$id": "urn:haunch:report-1",
  "title": "A report of haunch",
  "description": "Lengths are numbers in an item's units: exact in mm; in inches exact where the decimal ends, else to 9 places. 'sheet' gives every part of an item; 'cutlist', 'joints' (with the parts) and 'check' give theirs.",
  "type": "object",
  "properties": {
    "format": {"const": "haunch-report-1"},
    "units": {"$ref": "#/$defs/units"},
    "items": {"type": "array", "items": {"$ref": "#/$defs/item"}},
    "errors": {"type": "array", "items": {"$ref": "#/$defs/error"}}
  },
  "required": ["format", "units", "items", "errors"],
  "additionalProperties": false,
  "$defs": {
    "units": {"enum": ["mm", "in"]},
    "joint_id": {"type": "string", "pattern": "^J[1-9][0-9]*$"},
    "item": {
      "type": "object",
      "properties": {
        "id": {"type": "string"},
        "kind": {"enum": ["door", "frame", "doorset"]},
        "name": {"type": "string"},
        "note": {"type": "string"},
        "quantity": {"type": "integer", "minimum": 1},
        "units": {"$ref": "#/$defs/units"},
        "size": {
          "type": "object",
          "properties": {"width": {"type": "number"}, "height": {"type": "number"}, "thickness": {"type": "number"}},
          "required": ["width", "height", "thickness"],
          "additionalProperties": false
        },
        "rooms": {
          "type": "array",
          "items": {
            "type": "object",
            "properties": {"what": {"type": "string"}, "width": {"type": "number"}, "height": {"type": "number"}},
            "required": ["what", "width", "height"],
            "additionalProperties": false
          }
        },
        "parts": {"type": "array", "items": {"$ref": "#/$defs/part"}},
        "joints": {"type": "array", "items": {"$ref": "#/$defs/joint"}},
        "operations": {"type": "array", "items": {"$ref": "#/$defs/operation"}},
        "cutlist": {"type": "array", "items": {"$ref": "#/$defs/cut"}},
        "checks": {"type": "array", "items": {"$ref": "#/$defs/check"}},
        "remedy_search": {"enum": ["complete", "stopped"]},
        "fits": {"$ref": "#/$defs/fits"},
        "season": {"$ref": "#/$defs/season"},
        "cautions": {
          "type": "array",
          "items": {
            "type": "object",
            "properties": {"about": {"type": "string"}, "message": {"type": "string"}},
            "required": ["about", "message"],
            "additionalProperties": false
          }
        },
        "given": {"type": "array", "items": {"$ref": "#/$defs/given"}},
        "assumed": {"type": "array", "items": {"$ref": "#/$defs/assumed"}}
      },
      "required": ["id", "kind", "name", "quantity", "units", "size", "given", "assumed"],
      "additionalProperties": false
    },
    "part": {
      "type": "object",
      "properties": {
        "mark": {"type": "string"},
        "name": {"type": "string"},
        "role": {"type": "string"},
        "material": {"type": "string"},
        "length": {"type": "number"},
        "width": {"type": "number"},
        "thickness": {"type": "number"},
        "at": {
          "type": "object",
          "properties": {
            "origin": {"type": "array", "items": {"type": "number"}, "minItems": 3, "maxItems": 3},
            "axes": {"type": "array", "items": {"enum": ["x", "y", "z"]}, "minItems": 3, "maxItems": 3}
          },
          "required": ["origin", "axes"],
          "additionalProperties": false
        },
        "shoulders": {
          "type": "object",
          "properties": {
            "line": {"enum": ["shoulder", "face shoulder", "back shoulder", "sight line"]},
            "low": {"$ref": "#/$defs/shoulder_lengths"},
            "high": {"$ref": "#/$defs/shoulder_lengths"},
            "between": {"$ref": "#/$defs/shoulder_lengths"}
          },
          "required": ["line", "between"],
          "additionalProperties": false
        },
        "features": {"type": "array", "items": {"$ref": "#/$defs/feature"}}
      },
      "required": ["mark", "name", "role", "material", "length", "width", "thickness", "at", "features"],
      "additionalProperties": false
    },
    "shoulder_lengths": {
      "type": "object",
      "properties": {"line": {"type": "number"}, "face": {"type": "number"}, "back": {"type": "number"}},
      "required": ["line", "face", "back"],
      "additionalProperties": false
    },
    "feature": {
      "type": "object",
      "properties": {
        "kind": {"type": "string"},
        "joint": {"$ref": "#/$defs/joint_id"},
        "joints": {"type": "array", "items": {"$ref": "#/$defs/joint_id"}},
        "width": {"type": "number"},
        "depth": {"type": "number"},
        "thickness": {"type": "number"},
        "from_face": {"type": "number"},
        "from_foot": {"type": "number"},
        "from_shoulder": {"type": "number"},
        "length": {"type": "number"},
        "tongue": {"type": "number"},
        "shoulder": {"type": "number"},
        "radius": {"type": "number"},
        "diameter": {"type": "number"},
        "from_corner": {"type": "number"},
        "hollow_radius": {"type": "number"},
        "fillet": {"type": "number"},
        "longer_in_front": {"type": "number"},
        "rise": {"type": "number"},
        "span": {"type": "number"},
        "along_curve": {"type": "number"},
        "at_crown": {"type": "number"},
        "side": {"type": "number"},
        "centre_from_foot": {"type": "number"},
        "opening_rise": {"type": "number"},
        "opening_span": {"type": "number"},
        "opening_radius": {"type": "number"},
        "tolerance": {"type": "number"},
        "from_edge": {"type": "number"},
        "fitting": {"type": "string"},
        "into": {"enum": ["face", "back", "left", "right", "upper", "lower"]},
        "cuts": {
          "type": "array",
          "items": {"type": "array", "items": {"type": "number"}, "minItems": 6, "maxItems": 6}
        },
        "prisms": {"type": "array", "items": {"$ref": "#/$defs/prism"}, "minItems": 1}
      },
      "required": ["kind", "cuts"],
      "additionalProperties": false
    },
    "prism": {
      "type": "object",
      "properties": {
        "along": {"enum": ["length", "width", "thickness"]},
        "from": {"type": "number"},
        "to": {"type": "number"},
        "polygon": {
          "type": "array",
          "items": {"type": "array", "items": {"type": "number"}, "minItems": 2, "maxItems": 2},
          "minItems": 3
        }
      },
      "required": ["along", "from", "to", "polygon"],
      "additionalProperties": false
    },
    "joint": {
      "type": "object",
      "properties": {
        "id": {"$ref": "#/$defs/joint_id"},
        "kind": {"enum": ["mortise-and-tenon", "stub-tenon", "twin-tenon", "loose-tenon", "butt", "through-tenon", "wedge", "bridle", "pin", "dowel", "half-lap", "mitre", "mitre-spline", "panel-in-groove", "panel-in-rebate", "glass-in-rebate", "sealed-unit-in-rebate", "bead-in-rebate", "housing", "rebated-corner"]},
        "receives": {"type": "string"},
        "enters": {"type": "string"},
        "tenon": {
          "type": "object",
          "properties": {
            "thickness": {"type": "number"},
            "width": {"type": "number"},
            "depth": {"type": "number"},
            "count": {"type": "integer", "minimum": 1},
            "from_face": {"type": "number"},
            "set_back": {"type": "number"},
            "longer_at_face": {"type": "number"},
            "longer_at_back": {"type": "number"},
            "each": {
              "type": "array",
              "items": {
                "type": "object",
                "properties": {"from_edge": {"type": "number"}, "width": {"type": "number"}, "from_face": {"type": "number"}},
                "required": ["from_edge", "width"],
                "additionalProperties": false
              }
            },
            "edge_radius": {"type": "number"},
            "haunch_depth": {"type": "number"},
            "haunch_thickness": {"type": "number"},
            "haunch_from_face": {"type": "number"},
            "haunches": {
              "type": "array",
              "items": {
                "type": "object",
                "properties": {"from_edge": {"type": "number"}, "width": {"type": "number"}},
                "required": ["from_edge", "width"],
                "additionalProperties": false
              }
            }
          },
          "required": ["thickness", "width", "depth", "count", "from_face", "each"],
          "additionalProperties": false
        },
        "shoulders": {
          "type": "object",
          "properties": {
            "end": {"enum": ["low", "high"]},
            "face": {"type": "number"},
            "back": {"type": "number"},
            "straight": {"type": "boolean"}
          },
          "required": ["end", "face", "back", "straight"],
          "additionalProperties": false
        },
        "mortise": {
          "type": "object",
          "properties": {
            "width": {"type": "number"},
            "length": {"type": "number"},
            "depth": {"type": "number"},
            "from_foot": {"type": "number"},
            "from_edge": {"type": "number"},
            "from_shoulder": {"type": "number"},
            "shoulder": {"enum": ["face", "back", "sight line"]},
            "from_face": {"type": "number"},
            "through": {"type": "boolean"},
            "flare": {
              "type": "object",
              "properties": {"depth": {"type": "number"}, "width": {"type": "number"}},
              "required": ["depth", "width"],
              "additionalProperties": false
            },
            "end_radius": {"type": "number"},
            "free_width": {"type": "number"},
            "each": {
              "type": "array",
              "minItems": 2,
              "items": {
                "type": "object",
                "properties": {
                  "from_foot": {"type": "number"},
                  "from_edge": {"type": "number"},
                  "length": {"type": "number"},
                  "from_face": {"type": "number"}
                },
                "required": ["from_foot", "length"],
                "additionalProperties": false
              }
            }
          },
          "required": ["width", "length", "depth", "from_foot", "from_face"],
          "additionalProperties": false
        },
        "clearance": {
          "type": "object",
          "properties": {
            "cheeks": {"type": "number"},
            "edges": {"type": "number"},
            "bottom": {"type": "number"},
            "bite": {"type": "number"},
            "bearing": {"type": "number"},
            "edge": {"type": "number"},
            "draw": {"type": "number"}
          },
          "required": [],
          "additionalProperties": false
        }
      },
      "required": ["id", "kind", "receives", "enters", "clearance"],
      "additionalProperties": false
    },
    "operation": {
      "type": "object",
      "properties": {
        "makes": {"type": "string"},
        "cut": {"enum": ["face-cheek", "back-cheek", "haunch", "flare"]},
        "settings": {"type": "object", "additionalProperties": {"type": "number"}},
        "through": {"type": "boolean"},
        "open_end": {"type": "boolean"},
        "both_faces": {"type": "boolean"},
        "runs": {"type": "array", "minItems": 1, "items": {"$ref": "#/$defs/run"}}
      },
      "required": ["makes", "settings", "runs"],
      "additionalProperties": false
    },
    "line": {"enum": ["foot", "lower end", "left end", "lower edge", "left edge", "inner face", "lower face", "top", "left", "right", "sill", "head", "transom"]},
    "run": {
      "type": "object",
      "properties": {
        "part": {"type": "string"},
        "feature": {"type": "integer", "minimum": 0},
        "joint": {"$ref": "#/$defs/joint_id"},
        "side": {"enum": ["face", "back", "left", "right", "upper", "lower"]},
        "from": {"$ref": "#/$defs/line"},
        "near": {"type": "number"},
        "far": {"type": "number"},
        "to": {"$ref": "#/$defs/line"},
        "from_other_end": {"type": "number"},
        "shoulder": {"enum": ["shoulder", "face shoulder", "back shoulder", "sight line"]},
        "from_shoulder": {"type": "number"},
        "straight": {"type": "number"}
      },
      "required": ["part", "feature", "side", "from", "near"],
      "additionalProperties": false
    },
    "cut": {
      "type": "object",
      "properties": {
        "part": {"type": "string"},
        "marks": {"type": "array", "items": {"type": "string"}, "minItems": 1},
        "quantity": {"type": "integer", "minimum": 1},
        "length": {"type": "number"},
        "saw_length": {"type": "number"},
        "width": {"type": "number"},
        "thickness": {"type": "number"},
        "material": {"type": "string"},
        "grain": {"enum": ["along", "upright", "level", "none"]}
      },
      "required": ["part", "marks", "quantity", "length", "saw_length", "width", "thickness", "material", "grain"],
      "additionalProperties": false
    },
    "check": {
      "type": "object",
      "properties": {
        "check": {"type": "string"},
        "status": {"enum": ["ok", "caution", "fail"]},
        "parts": {"type": "array", "items": {"type": "string"}},
        "joint": {"$ref": "#/$defs/joint_id"},
        "fitting": {"type": "string"},
        "moisture": {"type": "number"},
        "value": {"type": "number"},
        "limit": {
          "type": "object",
          "properties": {"min": {"type": "number"}, "max": {"type": "number"}},
          "required": [],
          "additionalProperties": false
        },
        "message": {"type": "string"},
        "remedy": {
          "anyOf": [
            {"type": "null"},
            {
              "type": "object",
              "properties": {
                "key": {"type": "string"},
                "from": {"type": "number"},
                "to": {"type": "number"},
                "message": {"type": "string"}
              },
              "required": ["key", "from", "to", "message"],
              "additionalProperties": false
            }
          ]
        },
        "remedy_search": {"enum": ["complete", "stopped"]}
      },
      "required": ["check", "status", "parts", "value", "limit", "message", "remedy"],
      "additionalProperties": false
    },
    "season": {
      "type": "object",
      "properties": {
        "moisture": {"$ref": "#/$defs/states"},
        "panels": {
          "type": "array",
          "items": {
            "type": "object",
            "properties": {
              "mark": {"type": "string"},
              "low": {"$ref": "#/$defs/panel_state"},
              "build": {"$ref": "#/$defs/panel_state"},
              "high": {"$ref": "#/$defs/panel_state"}
            },
            "required": ["mark", "low", "build", "high"],
            "additionalProperties": false
          }
        },
        "leaf": {"$ref": "#/$defs/leaf_season"},
        "left_leaf": {"$ref": "#/$defs/leaf_season"},
        "right_leaf": {"$ref": "#/$defs/leaf_season"},
        "tenons": {
          "type": "array",
          "items": {
            "type": "object",
            "properties": {
              "joint": {"type": "string"},
              "low": {"type": "number"},
              "build": {"type": "number"},
              "high": {"type": "number"},
              "limit": {"type": "number"}
            },
            "required": ["joint", "low", "build", "high", "limit"],
            "additionalProperties": false
          }
        },
        "weight": {
          "type": ["object", "null"],
          "properties": {
            "kilograms": {"type": "number"},
            "parts": {"type": "object", "additionalProperties": {"type": "number"}},
            "not_weighed": {"type": "array", "items": {"type": "string"}},
            "leaves": {"type": "array", "items": {"type": "number"}}
          },
          "required": ["kilograms", "parts"],
          "additionalProperties": false
        },
        "remedies": {
          "type": "array",
          "items": {
            "type": "object",
            "properties": {
              "key": {"type": "string"},
              "from": {"type": "string"},
              "to": {"type": "string"},
              "helps": {"type": "boolean"}
            },
            "required": ["key", "from", "to", "helps"],
            "additionalProperties": false
          }
        },
        "remedy_search": {"enum": ["complete", "stopped"]}
      },
      "required": ["moisture", "panels", "tenons", "weight", "remedies", "remedy_search"],
      "additionalProperties": false
    },
    "states": {
      "type": "object",
      "properties": {
        "low": {"type": "number"},
        "build": {"type": "number"},
        "high": {"type": "number"}
      },
      "required": ["low", "build", "high"],
      "additionalProperties": false
    },
    "leaf_season": {
      "type": "object",
      "properties": {
        "low": {"$ref": "#/$defs/leaf_state"},
        "build": {"$ref": "#/$defs/leaf_state"},
        "high": {"$ref": "#/$defs/leaf_state"}
      },
      "required": ["low", "build", "high"],
      "additionalProperties": false
    },
    "panel_state": {
      "type": "object",
      "properties": {
        "width": {"type": "number"},
        "gap": {"type": "number"},
        "bite": {"type": "number"}
      },
      "required": ["width", "gap", "bite"],
      "additionalProperties": false
    },
    "leaf_state": {
      "type": "object",
      "properties": {
        "width": {"type": "number"},
        "clearance_left": {"type": "number"},
        "clearance_right": {"type": "number"},
        "height": {"type": "number"},
        "clearance_head": {"type": "number"},
        "clearance_foot": {"type": "number"}
      },
      "required": ["width", "clearance_left", "clearance_right", "height", "clearance_head", "clearance_foot"],
      "additionalProperties": false
    },
    "fits": {
      "type": "object",
      "properties": {
        "work": {"enum": ["hand", "router", "nc"]},
        "tolerance": {"type": "object", "additionalProperties": {"type": "number"}},
        "one_setting": {"type": "array", "items": {"type": "string"}},
        "deviations": {"type": "integer"},
        "setting_share": {"type": "number"},
        "band": {
          "type": "object",
          "properties": {"min": {"type": "number"}, "max": {"type": "number"}},
          "required": ["min", "max"],
          "additionalProperties": false
        },
        "joints": {
          "type": "array",
          "items": {
            "type": "object",
            "properties": {
              "joint": {"$ref": "#/$defs/joint_id"},
              "fits": {"type": "integer"},
              "play": {"type": "number"},
              "worst": {
                "type": "object",
                "properties": {"min": {"type": "number"}, "max": {"type": "number"}},
                "required": ["min", "max"],
                "additionalProperties": false
              },
              "rss": {
                "type": "object",
                "properties": {"min": {"type": "number"}, "max": {"type": "number"}},
                "required": ["min", "max"],
                "additionalProperties": false
              },
              "band": {
                "type": "object",
                "properties": {"min": {"type": "number"}, "max": {"type": "number"}},
                "required": ["min", "max"],
                "additionalProperties": false
              },
              "share": {"type": "number"}
            },
            "required": ["joint", "fits", "play", "worst", "rss", "band", "share"],
            "additionalProperties": false
          }
        },
        "left_out": {
          "type": "array",
          "items": {
            "type": "object",
            "properties": {
              "kind": {"enum": ["dowel", "half-lap"]},
              "joints": {"type": "array", "items": {"$ref": "#/$defs/joint_id"}},
              "why": {"type": "string"}
            },
            "required": ["kind", "joints", "why"],
            "additionalProperties": false
          }
        },
        "leaf": {
          "type": "object",
          "properties": {
            "share": {"type": ["number", "null"]},
            "best_allowance": {"type": ["number", "null"]},
            "best_share": {"type": ["number", "null"]},
            "wanted_share": {"type": "number"},
            "least_allowance": {"type": ["number", "null"]}
          },
          "required": ["share", "best_allowance", "best_share", "wanted_share", "least_allowance"],
          "additionalProperties": false
        },
        "width": {
          "type": "object",
          "properties": {
            "parts": {"type": "array", "items": {"type": "string"}},
            "size": {"type": "number"},
            "worst": {
              "type": "object",
              "properties": {"min": {"type": "number"}, "max": {"type": "number"}},
              "required": ["min", "max"],
              "additionalProperties": false
            },
            "rss": {
              "type": "object",
              "properties": {"min": {"type": "number"}, "max": {"type": "number"}},
              "required": ["min", "max"],
              "additionalProperties": false
            }
          },
          "required": ["parts", "size", "worst", "rss"],
          "additionalProperties": false
        },
        "height": {
          "type": "object",
          "properties": {
            "parts": {"type": "array", "items": {"type": "string"}},
            "size": {"type": "number"},
            "worst": {
              "type": "object",
              "properties": {"min": {"type": "number"}, "max": {"type": "number"}},
              "required": ["min", "max"],
              "additionalProperties": false
            },
            "rss": {
              "type": "object",
              "properties": {"min": {"type": "number"}, "max": {"type": "number"}},
              "required": ["min", "max"],
              "additionalProperties": false
            }
          },
          "required": ["parts", "size", "worst", "rss"],
          "additionalProperties": false
        },
        "flush": {
          "type": "object",
          "properties": {
            "size": {"type": "number"},
            "worst": {
              "type": "object",
              "properties": {"min": {"type": "number"}, "max": {"type": "number"}},
              "required": ["min", "max"],
              "additionalProperties": false
            },
            "rss": {
              "type": "object",
              "properties": {"min": {"type": "number"}, "max": {"type": "number"}},
              "required": ["min", "max"],
              "additionalProperties": false
            }
          },
          "required": ["size", "worst", "rss"],
          "additionalProperties": false
        }
      },
      "required": ["work", "tolerance", "one_setting", "deviations", "setting_share", "band", "joints", "left_out", "leaf"],
      "additionalProperties": false
    },
    "given": {
      "type": "object",
      "properties": {"key": {"type": "string"}, "written": {"type": "string"}, "value": {"type": "number"}},
      "required": ["key", "written", "value"],
      "additionalProperties": false
    },
    "assumed": {
      "type": "object",
      "properties": {
        "key": {"type": "string"},
        "value": {"type": ["number", "string", "array"], "items": {"type": "number"}},
        "why": {"type": "string"}
      },
      "required": ["key", "value", "why"],
      "additionalProperties": false
    },
    "error": {
      "type": "object",
      "properties": {
        "source": {"type": "string"},
        "line": {"type": "integer", "minimum": 1},
        "column": {"type": "integer", "minimum": 1},
        "path": {"type": "string"},
        "message": {"type": "string"}
      },
      "required": ["source", "line", "column", "path", "message"],
      "additionalProperties": false
    }
  }
}
)schema";

}  // namespace

std::string_view report_schema() {
  return kReportSchema;
}

}  // namespace haunch
