// The least that a program with our libraries does: parse one file with nlohmann/json and print a
// line.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <fstream>
#include <nlohmann/json.hpp>

int main(int count, char** values) {
  CLI::App app;
  std::string file;
  app.add_option("file", file)->required();
  CLI11_PARSE(app, count, values);
  std::ifstream in(file);
  const auto spec = nlohmann::json::parse(in);
  fmt::print("{}\n", spec.size());
}
