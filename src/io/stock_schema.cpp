#include "schema.h"

namespace haunch {
namespace {

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

std::string_view stock_schema() {
  return kStockSchema;
}

}  // namespace haunch
