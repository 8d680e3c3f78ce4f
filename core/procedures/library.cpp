// SPDX-License-Identifier: GPL-3.0-or-later
#include "procedures/library.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <system_error>

namespace sw::procedures {

namespace {

namespace fs = std::filesystem;

template <class T>
const T* byId(const std::vector<T>& all, std::string_view id) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const T& x) { return x.id == id; });
  return found == all.end() ? nullptr : &*found;
}

Error fileProblem(ErrorCode code, std::string key, const std::string& file) {
  return {code, std::move(key), {}, {{"file", file}}};
}

bool isDataFile(const fs::path& path) {
  const std::string name = path.filename().string();
  return path.extension() == ".json" && !name.ends_with(".schema.json");
}

/// The folder's data files in order of name.
Result<std::vector<fs::path>> dataFiles(const fs::path& folder) {
  std::error_code error;
  std::vector<fs::path> files;
  fs::directory_iterator entry(folder, error);
  while (!error && entry != fs::directory_iterator()) {
    if (isDataFile(entry->path())) files.push_back(entry->path());
    entry.increment(error);
  }
  if (error) {
    return tl::make_unexpected(
        fileProblem(ErrorCode::NotFound, "procedure.folder_missing", folder.string()));
  }
  std::sort(files.begin(), files.end());
  return files;
}

/// One byte more than allowed is read, so that the parser refuses what is too large.
Result<std::string> readFile(const fs::path& path) {
  const std::string name = path.filename().string();
  std::error_code error;
  std::ifstream in;
  if (fs::is_regular_file(path, error)) in.open(path, std::ios::binary);
  std::string text(kMaxFileBytes + 1, '\0');
  in.read(text.data(), static_cast<std::streamsize>(text.size()));
  if (!in.is_open() || in.bad()) {
    return tl::make_unexpected(fileProblem(ErrorCode::NotFound, "procedure.cannot_read", name));
  }
  text.resize(static_cast<std::size_t>(in.gcount()));
  return text;
}

template <class T, class Parse>
Result<T> readOne(const fs::path& path, Parse parse) {
  const auto text = readFile(path);
  if (!text) return failAs(text);
  auto value = parse(*text, path.filename().string());
  if (value && value->id != path.stem().string()) {
    Error error =
        fileProblem(ErrorCode::Conflict, "procedure.id_not_file_name", path.filename().string());
    error.field = "/id";
    error.details.emplace_back("id", value->id);
    return tl::make_unexpected(std::move(error));
  }
  return value;
}

template <class T, class Parse>
void readFolder(const fs::path& folder, Parse parse, std::vector<T>& out,
                std::vector<Error>& problems) {
  const auto files = dataFiles(folder);
  if (!files) return problems.push_back(files.error());
  for (const fs::path& path : *files) {
    auto value = readOne<T>(path, parse);
    if (value) {
      out.push_back(std::move(*value));
    } else {
      problems.push_back(value.error());
    }
  }
}

Error unknownProcedure(const std::string& file, std::string field, const std::string& id) {
  Error error = fileProblem(ErrorCode::NotFound, "procedure.unknown_procedure", file);
  error.field = std::move(field);
  error.details.emplace_back("procedure", id);
  return error;
}

}  // namespace

Library Library::load(const std::string& resourceFolder) {
  Library library;
  const fs::path root(resourceFolder);
  readFolder(root / "procedures", parseProcedure, library.m_procedures, library.m_problems);
  readFolder(root / "plans", parsePlan, library.m_plans, library.m_problems);
  library.checkReferences();
  return library;
}

Library Library::of(std::vector<Procedure> procedures, std::vector<PlanTemplate> plans) {
  Library library;
  library.m_procedures = std::move(procedures);
  library.m_plans = std::move(plans);
  return library;
}

void Library::checkReferences() {
  const auto missing = [this](const std::vector<std::string>& ids) {
    return std::find_if(ids.begin(), ids.end(),
                        [this](const std::string& id) { return procedure(id) == nullptr; });
  };
  for (const Procedure& each : m_procedures) {
    const auto id = missing(each.after);
    if (id != each.after.end()) {
      m_problems.push_back(unknownProcedure(each.id + ".json", "/after", *id));
    }
  }
  std::erase_if(m_plans, [&](const PlanTemplate& each) {
    const auto id = missing(each.procedures);
    if (id == each.procedures.end()) return false;
    m_problems.push_back(unknownProcedure(each.id + ".json", "/procedures", *id));
    return true;
  });
}

const Procedure* Library::procedure(std::string_view id) const {
  return byId(m_procedures, id);
}

const PlanTemplate* Library::plan(std::string_view id) const {
  return byId(m_plans, id);
}

}  // namespace sw::procedures
