#include "schema.h"

namespace haunch {
namespace {

constexpr std::string_view kLumberSchema = R"schema({
  "$schema": "https://json-schema.org/draft/2020-12/schema",
  "$id": "urn:haunch:lumber-1",
  "title": "What 'haunch lumber' says",
  "description": "Lengths are numbers in 'units', areas in its square, money as in the stock file. x runs along a board, y across.",
  "type": "object",
  "properties": {
    "format": {"const": "haunch-lumber-1"},
    "units": {"enum": ["mm", "in"]},
    "currency": {"type": "string"},
    "plan": {"anyOf": [{"type": "null"}, {"$ref": "#/$defs/plan"}]},
    "parts": {"type": "array", "items": {"$ref": "#/$defs/rough_part"}},
    "not_wood": {"type": "array", "items": {"$ref": "#/$defs/not_wood"}},
    "takings_off": {"type": "array", "items": {"$ref": "#/$defs/taking"}},
    "assumed": {"type": "array", "items": {"$ref": "#/$defs/assumed"}}
  },
  "required": ["format", "units", "plan", "parts", "not_wood", "takings_off", "assumed"],
  "additionalProperties": false,
  "$defs": {
    "size": {"type": "number", "exclusiveMinimum": 0},
    "place": {"type": "number", "minimum": 0},
    "figure": {"type": "number", "minimum": 0},
    "plan": {
      "type": "object",
      "properties": {
        "boards": {"type": "array", "items": {"$ref": "#/$defs/board"}},
        "bill": {"type": "array", "items": {"$ref": "#/$defs/bill_line"}},
        "unplaced": {"type": "array", "items": {"$ref": "#/$defs/unplaced"}},
        "totals": {"$ref": "#/$defs/totals"},
        "bound": {"$ref": "#/$defs/bound"}
      },
      "required": ["boards", "bill", "unplaced", "totals", "bound"],
      "additionalProperties": false
    },
    "board": {
      "type": "object",
      "properties": {
        "stock": {"type": "string", "minLength": 1},
        "copy": {"type": "integer", "minimum": 1},
        "length": {"$ref": "#/$defs/size"},
        "width": {"$ref": "#/$defs/size"},
        "thickness": {"$ref": "#/$defs/size"},
        "material": {"type": "string"},
        "bought": {"type": "boolean"},
        "cost": {"$ref": "#/$defs/figure", "description": "of one, rounded by itself: what is paid is in 'bill'"},
        "cuts": {"type": "array", "minItems": 1, "items": {"$ref": "#/$defs/cut"}},
        "offcuts": {"type": "array", "items": {"$ref": "#/$defs/spot"}},
        "steps": {"type": "array", "items": {"$ref": "#/$defs/step"}}
      },
      "required": ["stock", "copy", "length", "width", "thickness", "material", "bought", "cost", "cuts", "offcuts", "steps"],
      "additionalProperties": false
    },
    "bill_line": {
      "type": "object",
      "properties": {
        "stock": {"type": "string", "minLength": 1},
        "boards": {"type": "integer", "minimum": 1},
        "cost": {"$ref": "#/$defs/figure", "description": "of all, exact until it is rounded; the lines add up to the cost in 'totals'"}
      },
      "required": ["stock", "boards", "cost"],
      "additionalProperties": false
    },
    "spot": {
      "type": "object",
      "properties": {
        "x": {"$ref": "#/$defs/place"},
        "y": {"$ref": "#/$defs/place"},
        "length": {"$ref": "#/$defs/size"},
        "width": {"$ref": "#/$defs/size"}
      },
      "required": ["x", "y", "length", "width"],
      "additionalProperties": false
    },
    "cut": {
      "type": "object",
      "properties": {
        "part": {"type": "string"},
        "x": {"$ref": "#/$defs/place"},
        "y": {"$ref": "#/$defs/place"},
        "length": {"$ref": "#/$defs/size"},
        "width": {"$ref": "#/$defs/size"},
        "piece": {"type": "integer", "minimum": 1},
        "of": {"type": "integer", "minimum": 2},
        "turned": {"const": true}
      },
      "required": ["part", "x", "y", "length", "width"],
      "dependentRequired": {"piece": ["of"], "of": ["piece"]},
      "additionalProperties": false
    },
    "step": {
      "type": "object",
      "properties": {
        "saw": {"enum": ["crosscut", "rip"]},
        "for": {"enum": ["trim", "defect", "section", "strip", "part", "to size"]},
        "from": {"$ref": "#/$defs/place"},
        "to": {"$ref": "#/$defs/place"},
        "piece": {"$ref": "#/$defs/spot"}
      },
      "required": ["saw", "for", "from", "to", "piece"],
      "additionalProperties": false
    },
    "unplaced": {
      "type": "object",
      "properties": {
        "part": {"type": "string"},
        "length": {"$ref": "#/$defs/size"},
        "width": {"$ref": "#/$defs/size"},
        "thickness": {"$ref": "#/$defs/size"},
        "material": {"type": "string"},
        "message": {"type": "string", "minLength": 1}
      },
      "required": ["part", "length", "width", "thickness", "material", "message"],
      "additionalProperties": false
    },
    "totals": {
      "type": "object",
      "properties": {
        "cost": {"$ref": "#/$defs/figure"},
        "area_bought": {"$ref": "#/$defs/figure"},
        "area_parts": {"$ref": "#/$defs/figure"},
        "waste": {"type": "number", "minimum": 0, "maximum": 1},
        "boards": {"type": "integer", "minimum": 0},
        "boards_bought": {"type": "integer", "minimum": 0},
        "area_used": {"$ref": "#/$defs/figure"},
        "area_kerf": {"$ref": "#/$defs/figure"},
        "area_trim": {"$ref": "#/$defs/figure"},
        "area_offcuts": {"$ref": "#/$defs/figure"},
        "area_scrap": {"$ref": "#/$defs/figure"}
      },
      "required": ["cost", "area_bought", "area_parts", "waste", "boards", "boards_bought", "area_used", "area_kerf", "area_trim", "area_offcuts", "area_scrap"],
      "additionalProperties": false
    },
    "bound": {
      "type": "object",
      "properties": {
        "area": {"$ref": "#/$defs/figure"},
        "linear": {"type": ["number", "null"], "minimum": 0},
        "measure": {"enum": ["cost", "area", "boards"]},
        "plan": {"$ref": "#/$defs/figure"},
        "best": {"$ref": "#/$defs/figure", "description": "no plan comes under it, however the parts that are placed are made and cut"},
        "as_made": {"$ref": "#/$defs/figure", "description": "the same with the strips, layers and thicknesses of this plan; no less than best"},
        "boards_above": {"$ref": "#/$defs/figure"}
      },
      "required": ["area", "linear", "measure", "plan", "best", "as_made", "boards_above"],
      "additionalProperties": false
    },
    "rough_part": {
      "type": "object",
      "properties": {
        "part": {"type": "string"},
        "material": {"type": "string"},
        "length": {"$ref": "#/$defs/size"},
        "width": {"$ref": "#/$defs/size"},
        "stock_thickness": {"$ref": "#/$defs/size"},
        "layers": {"type": "integer", "minimum": 1, "maximum": 3},
        "strips": {"type": "integer", "minimum": 1},
        "glue_lines": {"type": "array", "items": {"$ref": "#/$defs/size"}, "maxItems": 2}
      },
      "required": ["part", "material", "length", "width", "stock_thickness", "layers", "strips", "glue_lines"],
      "additionalProperties": false
    },
    "not_wood": {
      "type": "object",
      "properties": {
        "part": {"type": "string"},
        "what": {"type": "string"},
        "length": {"$ref": "#/$defs/size"},
        "width": {"$ref": "#/$defs/size"},
        "thickness": {"$ref": "#/$defs/size"}
      },
      "required": ["part", "what", "length", "width", "thickness"],
      "additionalProperties": false
    },
    "taking": {
      "type": "object",
      "properties": {
        "material": {"type": "string"},
        "thickness": {"$ref": "#/$defs/size"},
        "sheet": {"type": "boolean"},
        "pieces": {"type": "integer", "minimum": 1},
        "area": {"$ref": "#/$defs/figure"},
        "cubic_metres": {"$ref": "#/$defs/figure"},
        "board_feet": {"$ref": "#/$defs/figure"},
        "buy_cubic_metres": {"$ref": "#/$defs/figure"},
        "buy_board_feet": {"$ref": "#/$defs/figure"}
      },
      "required": ["material", "thickness", "sheet", "pieces", "area", "cubic_metres", "board_feet", "buy_cubic_metres", "buy_board_feet"],
      "additionalProperties": false
    },
    "assumed": {
      "type": "object",
      "properties": {"key": {"type": "string"}, "value": {"type": ["number", "string"]}, "why": {"type": "string"}},
      "required": ["key", "value", "why"],
      "additionalProperties": false
    }
  }
}
)schema";

constexpr std::string_view kStockSchema = R"schema({
  "$schema": "https://json-schema.org/draft/2020-12/schema",
  "$id": "urn:haunch:stock-1",
  "title": "A stock file for 'haunch lumber'",
  "description": "What is in the rack, what the yard sells, and how the shop saws. What has a price is for sale.",
  "type": "object",
  "properties": {
    "$schema": {"type": "string"},
    "units": {"enum": ["mm", "in"], "description": "of bare numbers"},
    "currency": {"type": "string", "description": "a word that stands behind prices"},
    "note": {"type": "string"},
    "kerf": {"$ref": "#/$defs/length", "description": "of every cut"},
    "trim": {
      "type": "object",
      "description": "what comes off every board first, the blade's wood included",
      "properties": {"end": {"$ref": "#/$defs/length"}, "edge": {"$ref": "#/$defs/length"}},
      "additionalProperties": false
    },
    "least_offcut": {
      "type": "object",
      "description": "an offcut from this size on is kept",
      "properties": {"length": {"$ref": "#/$defs/size"}, "width": {"$ref": "#/$defs/size"}},
      "additionalProperties": false
    },
    "allowances": {
      "type": "object",
      "description": "what a rough part has more than the finished one; face: each planed face",
      "properties": {
        "length": {"$ref": "#/$defs/length"},
        "width": {"$ref": "#/$defs/length"},
        "face": {"$ref": "#/$defs/length"}
      },
      "additionalProperties": false
    },
    "glue_up": {
      "type": "object",
      "description": "limit: the widest strip of a panel; jointing: off each edge",
      "properties": {"limit": {"$ref": "#/$defs/size"}, "jointing": {"$ref": "#/$defs/length"}},
      "additionalProperties": false
    },
    "waste": {
      "type": "object",
      "description": "for the takings-off",
      "properties": {
        "percent": {"type": "integer", "minimum": 0, "maximum": 99},
        "of": {"enum": ["bought", "needed"]}
      },
      "required": ["percent", "of"],
      "additionalProperties": false
    },
    "match": {"type": "boolean", "description": "parts of one item from one board where they can"},
    "stock": {"type": "array", "items": {"$ref": "#/$defs/item"}}
  },
  "required": ["stock"],
  "additionalProperties": false,
  "$defs": {
    "length": {
      "type": ["number", "string"],
      "minimum": 0,
      "description": "in units, or a text with its own: \"65 mm\", \"2 9/16 in\""
    },
    "size": {"type": ["number", "string"], "exclusiveMinimum": 0, "description": "more than 0"},
    "range": {
      "type": "object",
      "properties": {"from": {"$ref": "#/$defs/size"}, "to": {"$ref": "#/$defs/size"}, "step": {"$ref": "#/$defs/size"}},
      "required": ["from", "to"],
      "additionalProperties": false
    },
    "item": {
      "type": "object",
      "properties": {
        "id": {"type": ["string", "number"], "minLength": 1, "description": "its own, once"},
        "kind": {"enum": ["board", "sheet"]},
        "length": {
          "anyOf": [{"$ref": "#/$defs/size"}, {"$ref": "#/$defs/range"}],
          "description": "along its grain; of what is for sale a range, in steps of 300 mm or 12 in. where none is given"
        },
        "width": {
          "anyOf": [{"$ref": "#/$defs/size"}, {"$ref": "#/$defs/range"}],
          "description": "across its grain; of random widths the narrowest and the widest"
        },
        "thickness": {"$ref": "#/$defs/size", "description": "or quarters: \"5/4\""},
        "surface": {"enum": ["rough", "surfaced"]},
        "species": {"type": "string", "description": "or what the sheet is"},
        "count": {
          "type": "integer", "minimum": 0, "maximum": 100000,
          "description": "in hand one, for sale as many as wanted"
        },
        "taken": {
          "type": "integer", "minimum": 0, "maximum": 100000,
          "description": "by earlier plans and no more among count; numbers go on from there"
        },
        "price": {"type": "number", "minimum": 0, "exclusiveMaximum": 10000000},
        "per": {"enum": ["board", "board_foot", "cubic_metre", "metre", "square_metre"]},
        "grain": {"type": "boolean", "description": "false: parts may be turned on it"},
        "defects": {
          "description": "stretches of the length to skip",
          "type": ["array", "string"],
          "items": {
            "type": "array",
            "prefixItems": [{"$ref": "#/$defs/length"}, {"$ref": "#/$defs/size"}],
            "minItems": 2,
            "maxItems": 2
          }
        },
        "end_trim": {"$ref": "#/$defs/length"},
        "edge_trim": {"$ref": "#/$defs/length"},
        "note": {"type": "string"}
      },
      "required": ["id", "length", "width", "thickness"],
      "dependentRequired": {"price": ["per"], "per": ["price"]},
      "additionalProperties": false
    }
  }
}
)schema";

}  // namespace

std::string_view lumber_schema() {
  return kLumberSchema;
}

std::string_view stock_schema() {
  return kStockSchema;
}

}  // namespace haunch
