#include <fmt/core.h>

#include <charconv>
#include <variant>

#include "commands.h"
#include "csv_row.h"
#include "formats.h"
#include "moisture.h"
#include "schemas.h"

namespace haunch {
namespace {

enum class Scale : unsigned char { celsius, fahrenheit };

struct Air {
  double temperature = 0;  // in the scale asked for
  double humidity = 0;     // percent
  double moisture = 0;     // of the wood, percent
  Scale scale = Scale::celsius;
};

constexpr int kMoisturePlaces = 2;

}  // namespace

template <>
inline constexpr std::string_view kWords<Scale>[] = {"celsius", "fahrenheit"};

template <>
struct JsonObject<Air> : JsonObjectDefaults {
  static constexpr JsonKey<Air> keys[] = {
      {among, [](auto&) { return DocumentHead<kMoistureFormat>(); }},
      {"temperature", [](auto& it) { return Written{fmt::format("{}", it.temperature)}; }},
      {"unit", the<&Air::scale>},
      {"humidity", [](auto& it) { return Written{fmt::format("{}", it.humidity)}; }},
      {"moisture", [](auto& it) { return Rounded<kMoisturePlaces>{it.moisture}; }}};
};

namespace {

std::string json_text(const Air& air) {
  std::string text;
  JsonText json(text, Unit::mm);
  write_json(json, air);
  return text + "\n";
}

/// A number as a shop writes it: digits and a point, a minus before it.
std::variant<double, UsageError> number_of(std::string_view option, const std::string& text,
                                           std::string_view example) {
  if (text.empty()) return UsageError{fmt::format("moisture: {} is missing; {}", option, example)};
  double number = 0;
  const char* end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, number, std::chars_format::fixed);
  const bool plain = text.find_first_not_of("-.0123456789") == std::string::npos;
  if (read.ec == std::errc() && read.ptr == end && plain) return number;
  return UsageError{fmt::format("{}: \"{}\" is not a number; {}", option, text, example)};
}

UsageError humidity_fault(const std::string& written, double humidity) {
  std::string hint;
  if (humidity > 0 && humidity < 1) hint = fmt::format("; in percent that is {:g}", humidity * 100);
  return UsageError{fmt::format("--humidity: {} is outside of what is published, {} to {} %{}",
                                written, kDriestAir, kDampestAir, hint)};
}

UsageError temperature_fault(const std::string& written, bool fahrenheit) {
  return UsageError{fmt::format("--temperature: {} {} is outside of what is published, {}", written,
                                fahrenheit ? "°F" : "°C",
                                fahrenheit ? "30 to 270 °F" : "-1.1 to 132.2 °C")};
}

std::variant<Air, UsageError> air_of(const Invocation& invocation) {
  if (!invocation.words.empty())
    return UsageError{"moisture: \"" + invocation.words.front() +
                      "\" is one word too many; it takes --temperature and --humidity"};
  const auto temperature =
      number_of("--temperature", invocation.temperature,
                invocation.fahrenheit ? "write degrees Fahrenheit, such as 70"
                                      : "write degrees Celsius, such as 21, or add --fahrenheit");
  if (const auto* error = std::get_if<UsageError>(&temperature)) return *error;
  const auto humidity =
      number_of("--humidity", invocation.humidity, "write percent, such as 45 or 45.5");
  if (const auto* error = std::get_if<UsageError>(&humidity)) return *error;
  Air air{std::get<double>(temperature), std::get<double>(humidity), 0,
          invocation.fahrenheit ? Scale::fahrenheit : Scale::celsius};
  const double celsius = invocation.fahrenheit ? to_celsius(air.temperature) : air.temperature;
  if (celsius < kColdestCelsius || celsius > kHottestCelsius)
    return temperature_fault(invocation.temperature, invocation.fahrenheit);
  const auto moisture = equilibrium_moisture(celsius, air.humidity);
  if (!moisture) return humidity_fault(invocation.humidity, air.humidity);
  air.moisture = *moisture;
  return air;
}

std::string text_of(const Air& air, const Invocation& invocation) {
  if (invocation.view.format == Format::json) return json_text(air);
  if (invocation.view.format == Format::table)
    return fmt::format("at {} {} and {} % relative humidity, wood comes to {:.1f} % moisture\n",
                       air.temperature, air.scale == Scale::fahrenheit ? "°F" : "°C", air.humidity,
                       air.moisture);
  std::string text(csv_start(invocation.view.csv));
  CsvRow row(text, Unit::mm, invocation.view.csv);
  for (const std::string_view title : {"temperature", "unit", "humidity", "moisture"})
    row.plain(title);
  row.end();
  CsvRow figures(text, Unit::mm, invocation.view.csv);
  figures.number(fmt::format("{}", air.temperature));
  figures.plain(word_of(air.scale));
  figures.number(fmt::format("{}", air.humidity));
  figures.number(air.moisture, kMoisturePlaces);
  figures.end();
  return text;
}

}  // namespace

std::string moisture_schema() {
  constexpr std::string_view kHead = R"(
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "$id": "urn:haunch:moisture-1",
    "title": "What 'haunch moisture' says",
    "description": "The moisture that wood comes to in air of a temperature and a relative humidity, in percent.")";
  return schema_document(kHead, object_schema<Air>(), {});
}

ExitStatus run_moisture(const Invocation& invocation, const Streams& streams) {
  const auto air = air_of(invocation);
  if (const auto* error = std::get_if<UsageError>(&air)) {
    complain("haunch: error: " + error->message, streams);
    return kBadSpec;
  }
  return write_result(text_of(std::get<Air>(air), invocation), invocation, streams);
}

}  // namespace haunch
