// Objects of our JSON, a row a key: from the same rows an object is written and its schema made.
//
//   rows     JsonObject<T> (one's own specialization), JsonKey<T>, the<&T::member>
//   values   lengths, whole numbers, texts, truths, lists of them, objects; Rounded, Word, OrNull
//   use      write_json, object_schema, schema_document
#pragma once

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "haunch/trade.h"
#include "json_text.h"

namespace haunch {

/// How values of one kind are written, `write(json, value)`, and what a schema says of them,
/// `schema()`. What is no plain value is an object, with rows of its own.
template <class Value>
struct JsonValue;

template <class Value>
void write_json(JsonText& json, const Value& value) {
  JsonValue<Value>::write(json, value);
}

/// What is in the braces of an object: its rows, or of a value whose keys are not always the same,
/// what stands here for it.
template <class T>
struct JsonMembers;

/// Marks a key that begins a new line.
struct OnRow {};
inline constexpr OnRow on_row;

/// Marks a value whose members stand among the object's own; of one that may be missing, all may.
struct Among {};
inline constexpr Among among;

struct SchemaKey {
  std::string_view name;
  std::string schema;
  bool required = true;
};

/// One key of an object that tells of a T. A std::optional is a key that may be missing.
template <class T>
struct JsonKey {
  std::string_view name;
  std::string_view also;  // what the schema says besides what the value's type tells
  bool begins_row = false;
  void (*write)(JsonText&, const JsonKey&, const T&) = nullptr;
  std::vector<SchemaKey> (*schema_keys)(const JsonKey&) = nullptr;

  /// `get` takes the value out of a T. `also`: keywords for the value's schema, as in
  /// R"("minimum": 1)", or in braces the whole of it.
  template <class Get>
  constexpr JsonKey(std::string_view name_, Get get, std::string_view also_ = {});

  /// The same, on a line of its own.
  template <class Get>
  constexpr JsonKey(OnRow, std::string_view name_, Get get, std::string_view also_ = {})
      : JsonKey(name_, get, also_) {
    begins_row = true;
  }

  template <class Get>
  constexpr JsonKey(Among, Get get);
};

/// What every JsonObject<T> says unless it says otherwise; its rows are `keys`.
struct JsonObjectDefaults {
  static constexpr std::string_view definition =
      {};                                       // its name in the schema; empty: told in place
  static constexpr std::string_view also = {};  // more keywords of its schema
  static constexpr bool on_rows = false;        // each of a list begins a new line
};

template <class T>
struct JsonObject;

/// A member as it stands.
template <auto kMember>
inline constexpr auto the = [](const auto& it) -> const auto& {
  return std::invoke(kMember, it);
};

/// Each of a list with what it stands in, for rows that tell of both: View{context, each}.
template <class View, class Context, class List>
std::vector<View> each_in(const Context& context, const List& list) {
  std::vector<View> views;
  views.reserve(list.size());
  for (const auto& each : list)
    views.push_back({context, each});
  return views;
}

// ---- values that need a word of their own

/// A figure that is no length, to so many decimals.
template <int kPlaces>
struct Rounded {
  double value = 0;
};

/// A figure as it is printed, a decimal.
struct Written {
  std::string decimal;
};

/// One of a list of words, by its number; `kList` is all that the schema allows. Choices that have
/// kWords are written by those.
template <const auto& kList>
struct Word {
  std::size_t number = 0;

  template <class Number>
  constexpr explicit Word(Number which) : number(static_cast<std::size_t>(which)) {}
};

/// Null where there is none.
template <class Value>
struct OrNull {
  std::optional<Value> value;
};

/// Values of one kind, each under a name of its own.
template <class Value>
struct ByName {
  std::vector<std::pair<std::string_view, Value>> each;
};

/// The value of a key that is there only then.
template <class Value>
std::optional<Value> only_if(bool is_there, const Value& value) {
  return is_there ? std::optional(value) : std::nullopt;
}

/// A list or text, unless it is empty.
template <class List>
std::optional<List> if_any(const List& list) {
  return only_if(!list.empty(), list);
}

// ---- schemas

struct SchemaDefinition {
  std::string_view name;
  std::string schema;
};

/// A schema with more keywords, or in braces another in its place.
std::string schema_with(std::string schema, std::string_view also);
std::string list_schema(const std::string& items);
/// A list of so many, no more and no fewer.
std::string list_schema(const std::string& items, std::size_t count);
std::string words_schema(std::span<const std::string_view> words);
std::string nullable_schema(const std::string& schema);
std::string object_schema(const std::vector<SchemaKey>& keys, std::string_view also);
std::string reference_schema(std::string_view definition);

/// A whole schema, laid out to be read. `head`: the members that come before "type".
std::string schema_document(std::string_view head, const std::string& object,
                            const std::vector<SchemaDefinition>& definitions);

template <class T>
std::string object_schema() {
  return object_schema(JsonMembers<T>::schema_keys(), JsonObject<T>::also);
}

template <class T>
SchemaDefinition definition_of() {
  return {JsonObject<T>::definition, object_schema<T>()};
}

// ---- how each kind of value is written

template <class T>
struct JsonMembers {
  static void write(JsonText& json, const T& it) {
    for (const JsonKey<T>& key : JsonObject<T>::keys)
      key.write(json, key, it);
  }
  static std::vector<SchemaKey> schema_keys() {
    std::vector<SchemaKey> keys;
    for (const JsonKey<T>& key : JsonObject<T>::keys)
      for (SchemaKey& each : key.schema_keys(key))
        keys.push_back(std::move(each));
    return keys;
  }
};

template <class T>
void write_object(JsonText& json, const T& it) {
  json.open_object();
  JsonMembers<T>::write(json, it);
  json.close_object();
}

template <class Value>
struct JsonValue {
  static void write(JsonText& json, const Value& it) { write_object(json, it); }
  static std::string schema() {
    if (JsonObject<Value>::definition.empty()) return object_schema<Value>();
    return reference_schema(JsonObject<Value>::definition);
  }
};

template <>
struct JsonValue<Length> {
  static void write(JsonText& json, Length value) { json.number(value); }
  static std::string schema() { return R"({"type": "number"})"; }
};

template <class Value>
requires std::is_integral_v<Value>
struct JsonValue<Value> {
  static void write(JsonText& json, Value value) { json.number(static_cast<std::int64_t>(value)); }
  static std::string schema() { return R"({"type": "integer"})"; }
};

template <>
struct JsonValue<bool> {
  static void write(JsonText& json, bool value) { json.truth(value); }
  static std::string schema() { return R"({"type": "boolean"})"; }
};

template <class Value>
requires std::is_convertible_v<Value, std::string_view>
struct JsonValue<Value> {
  static void write(JsonText& json, std::string_view value) { json.text(value); }
  static std::string schema() { return R"({"type": "string"})"; }
};

template <int kPlaces>
struct JsonValue<Rounded<kPlaces>> {
  static void write(JsonText& json, Rounded<kPlaces> figure) { json.number(figure.value, kPlaces); }
  static std::string schema() { return R"({"type": "number"})"; }
};

template <>
struct JsonValue<Written> {
  static void write(JsonText& json, const Written& figure) { json.written(figure.decimal); }
  static std::string schema() { return R"({"type": "number"})"; }
};

template <const auto& kList>
struct JsonValue<Word<kList>> {
  static void write(JsonText& json, Word<kList> word) { json.text(kList[word.number]); }
  static std::string schema() { return words_schema(kList); }
};

template <class Choice>
requires std::is_enum_v<Choice>
struct JsonValue<Choice> {
  static void write(JsonText& json, Choice choice) { json.text(word_of(choice)); }
  static std::string schema() { return words_schema(kWords<Choice>); }
};

template <class Value>
struct JsonValue<OrNull<Value>> {
  static void write(JsonText& json, const OrNull<Value>& it) {
    if (it.value)
      write_json(json, *it.value);
    else
      json.null();
  }
  static std::string schema() { return nullable_schema(JsonValue<Value>::schema()); }
};

template <class Value>
struct JsonValue<std::vector<Value>> {
  static void write(JsonText& json, const std::vector<Value>& list) {
    json.open_list();
    for (const Value& each : list) {
      if constexpr (requires { JsonObject<Value>::on_rows; })
        if (JsonObject<Value>::on_rows) json.row();
      write_json(json, each);
    }
    json.close_list();
  }
  static std::string schema() { return list_schema(JsonValue<Value>::schema()); }
};

template <class Value, std::size_t kCount>
struct JsonValue<std::array<Value, kCount>> {
  static void write(JsonText& json, const std::array<Value, kCount>& list) {
    json.open_list();
    for (const Value& each : list)
      write_json(json, each);
    json.close_list();
  }
  static std::string schema() { return list_schema(JsonValue<Value>::schema(), kCount); }
};

template <class Value>
struct JsonValue<ByName<Value>> {
  static void write(JsonText& json, const ByName<Value>& it) {
    json.open_object();
    for (const auto& [name, value] : it.each) {
      json.key(name);
      write_json(json, value);
    }
    json.close_object();
  }
  static std::string schema() {
    return R"({"type": "object", "additionalProperties": )" + JsonValue<Value>::schema() + "}";
  }
};

// ---- keys

template <class Value>
struct JsonMember {
  static constexpr bool kRequired = true;
  using Kind = Value;
};

template <class Value>
struct JsonMember<std::optional<Value>> {
  static constexpr bool kRequired = false;
  using Kind = Value;
};

template <class Value>
void write_member(JsonText& json, std::string_view name, bool begins_row, const Value& value) {
  if constexpr (!JsonMember<Value>::kRequired) {
    if (value) write_member(json, name, begins_row, *value);
  } else {
    if (begins_row) json.row();
    json.key(name);
    write_json(json, value);
  }
}

template <class Get, class T>
using Gotten = std::remove_cvref_t<std::invoke_result_t<Get, const T&>>;

template <class T>
template <class Get>
constexpr JsonKey<T>::JsonKey(std::string_view name_, Get, std::string_view also_)
    : name(name_),
      also(also_),
      write([](JsonText& json, const JsonKey& key, const T& it) {
        write_member(json, key.name, key.begins_row, Get{}(it));
      }),
      schema_keys([](const JsonKey& key) {
        using Member = JsonMember<Gotten<Get, T>>;
        return std::vector<SchemaKey>{
            {key.name, schema_with(JsonValue<typename Member::Kind>::schema(), key.also),
             Member::kRequired}};
      }) {}

template <class T>
template <class Get>
constexpr JsonKey<T>::JsonKey(Among, Get)
    : write([](JsonText& json, const JsonKey&, const T& it) {
        JsonMembers<Gotten<Get, T>>::write(json, Get{}(it));
      }),
      schema_keys([](const JsonKey&) { return JsonMembers<Gotten<Get, T>>::schema_keys(); }) {}

template <class T>
struct JsonMembers<std::optional<T>> {
  static void write(JsonText& json, const std::optional<T>& it) {
    if (it) JsonMembers<T>::write(json, *it);
  }
  static std::vector<SchemaKey> schema_keys() {
    std::vector<SchemaKey> keys = JsonMembers<T>::schema_keys();
    for (SchemaKey& key : keys)
      key.required = false;
    return keys;
  }
};

}  // namespace haunch
