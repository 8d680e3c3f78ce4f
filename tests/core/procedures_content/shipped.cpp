// SPDX-License-Identifier: GPL-3.0-or-later
#include "shipped.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

namespace sw::test {

namespace {

namespace fs = std::filesystem;

fs::path resources() {
  return fs::path(SW_SOURCE_DIR) / "resources";
}

nlohmann::json readJson(const fs::path& path) {
  std::ifstream in(path);
  return nlohmann::json::parse(in);
}

bool isSchema(const fs::path& path) {
  return path.filename().string().ends_with(".schema.json");
}

}  // namespace

std::vector<ShippedFile> shippedFiles(const std::string& folder) {
  std::vector<ShippedFile> files;
  for (const auto& entry : fs::directory_iterator(resources() / folder)) {
    const fs::path& path = entry.path();
    if (path.extension() != ".json" || isSchema(path)) continue;
    files.push_back({path.stem().string(), readJson(path)});
  }
  std::sort(files.begin(), files.end(),
            [](const ShippedFile& a, const ShippedFile& b) { return a.name < b.name; });
  return files;
}

nlohmann::json shippedSchema(const std::string& folder) {
  for (const auto& entry : fs::directory_iterator(resources() / folder)) {
    if (isSchema(entry.path())) return readJson(entry.path());
  }
  return {};
}

const procedures::Library& shippedLibrary() {
  static const auto library = procedures::Library::load(resources().string());
  return library;
}

void eachStep(const StepVisit& visit) {
  for (const auto& procedure : shippedLibrary().procedures()) {
    for (const auto& step : procedure.steps) visit(procedure, step);
  }
}

std::string placeOf(const procedures::Procedure& procedure, const procedures::Step& step) {
  return procedure.id + "/" + step.id;
}

const procedures::Step* findStep(const std::string& procedure, const std::string& step) {
  if (const auto* found = shippedLibrary().procedure(procedure)) {
    for (const auto& each : found->steps) {
      if (each.id == step) return &each;
    }
  }
  ADD_FAILURE() << "no step " << procedure << "/" << step;
  return nullptr;
}

}  // namespace sw::test
