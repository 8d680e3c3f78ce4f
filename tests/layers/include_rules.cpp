// SPDX-License-Identifier: GPL-3.0-or-later
#include "include_rules.h"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <regex>
#include <sstream>

namespace sw::layers {
namespace {

constexpr auto kFolders = std::to_array<std::string_view>(
    {"base", "units", "measure", "mechanics", "signal", "model", "procedures", "diagnosis",
     "phrasing", "figure", "compute", "store", "workshop", "report", "report_print"});

// The arrows as DEVELOPERS.md draws them.
const std::map<std::string, std::vector<std::string>, std::less<>>& arrows() {
  static const std::map<std::string, std::vector<std::string>, std::less<>> kArrows{
      {"base", {}},
      {"units", {"base"}},
      {"measure", {"units"}},
      {"mechanics", {"measure"}},
      {"signal", {"measure"}},
      {"model", {"measure"}},
      {"procedures", {"model", "mechanics"}},
      {"diagnosis", {"model", "measure", "signal"}},
      {"phrasing", {"model", "diagnosis", "mechanics"}},
      {"figure", {"base"}},
      {"compute", {"phrasing", "figure", "mechanics", "signal", "diagnosis"}},
      {"store", {"model"}},
      {"workshop", {"store", "procedures", "compute", "diagnosis", "mechanics", "signal"}},
      {"report", {"workshop", "phrasing"}},
      {"report_print", {"report", "figure"}},
  };
  return kArrows;
}

bool isCoreFolder(std::string_view name) {
  return std::ranges::find(kFolders, name) != kFolders.end();
}

std::string_view firstPart(std::string_view path) {
  return path.substr(0, path.find('/'));
}

/// "units" for "core/units/parse.h", "app" for anything under app/.
std::optional<std::string> folderOf(std::string_view path) {
  const auto top = firstPart(path);
  if (top == "app") return "app";
  if (top != "core" || path.size() <= 5) return std::nullopt;
  return std::string(firstPart(path.substr(5)));
}

struct Include {
  std::string header;
  bool quoted = false;
};

std::optional<Include> includeIn(const std::string& line) {
  static const std::regex kInclude(
      R"(^\s*#\s*(?:include|include_next|import)\s*([<"])([^>"]+)[>"])");
  std::smatch match;
  if (line.find('#') == std::string::npos || !std::regex_search(line, match, kInclude))
    return std::nullopt;
  return Include{match[2].str(), match[1].str() == "\""};
}

bool isQtFree(std::string_view folder) {
  constexpr auto kQtFree = std::to_array<std::string_view>(
      {"base", "units", "measure", "mechanics", "signal", "figure"});
  return std::ranges::find(kQtFree, folder) != kQtFree.end();
}

/// What is wrong with a Qt header in this folder, if anything.
std::optional<std::string> qtBreach(std::string_view folder, const std::string& header) {
  const auto part = qtPartOf(header);
  if (part == QtPart::None) return std::nullopt;
  if (part == QtPart::Sql && folder != "store") return "Qt Sql outside store: " + header;
  if (folder == "app") return std::nullopt;
  if (isQtFree(folder)) return "Qt below model: " + header;
  if (part == QtPart::Gui && folder != "report_print") {
    return "Qt Gui outside report_print: " + header;
  }
  if (part == QtPart::Other) {
    return "Widgets, or a header not among the known Qt Core, Sql and Gui classes: " + header;
  }
  return std::nullopt;
}

/// What is wrong with a header of our own, if it is one.
std::optional<std::string> arrowBreach(std::string_view folder, const Include& include) {
  const std::string target(firstPart(include.header));
  if (include.header.find("..") != std::string::npos) {
    return "include by its path from core: " + include.header;
  }
  if (isCoreFolder(target) && include.header.size() > target.size()) {
    if (folder == "app" || reachableFrom(folder).contains(target)) return std::nullopt;
    return "forbidden arrow " + std::string(folder) + " -> " + target + ": " + include.header;
  }
  if (folder == "app") return std::nullopt;
  const bool named = include.header.find('/') != std::string::npos;
  if (target == "app" || target == "ui" || (include.quoted && named)) {
    return "core includes from outside core: " + include.header;
  }
  return std::nullopt;
}

/// base stands on the standard library and tl::expected alone; SQLite's own interface is store's.
std::optional<std::string> libraryBreach(std::string_view folder, const std::string& header) {
  if (header == "sqlite3.h" && folder != "store") return "SQLite outside store: " + header;
  if (folder != "base") return std::nullopt;
  const bool foreign = header.find('/') != std::string::npos && !isCoreFolder(firstPart(header));
  if (foreign && header != "tl/expected.hpp") return "a library in base: " + header;
  return std::nullopt;
}

void check(const SourceFile& file, std::string_view folder, const Include& include, int line,
           Breaches& breaches) {
  for (auto breach : {qtBreach(folder, include.header), arrowBreach(folder, include),
                      libraryBreach(folder, include.header)}) {
    if (breach) breaches.push_back({file.path, line, *breach});
  }
}

}  // namespace

std::span<const std::string_view> coreFolders() {
  return kFolders;
}

std::set<std::string> reachableFrom(std::string_view folder) {
  std::set<std::string> reached{std::string(folder)};
  const auto from = arrows().find(folder);
  if (from == arrows().end()) return reached;
  for (const auto& next : from->second) reached.merge(reachableFrom(next));
  return reached;
}

Breaches checkIncludes(const SourceFile& file) {
  Breaches breaches;
  const auto folder = folderOf(file.path);
  if (!folder) return breaches;
  if (*folder != "app" && !isCoreFolder(*folder)) {
    return {{file.path, 0, "a folder of core without arrows: " + *folder}};
  }
  std::istringstream lines(file.text);
  std::string line;
  for (int number = 1; std::getline(lines, line); ++number) {
    if (const auto include = includeIn(line)) check(file, *folder, *include, number, breaches);
  }
  return breaches;
}

Breaches checkLinks(const SourceFile& file) {
  static const std::regex kLibrary(R"(sw_core_library\s*\(\s*(\w+)([^)]*)\))");
  static const std::regex kLinks(R"(\bLINKS\b([a-z_\s]*))");
  Breaches breaches;
  for (std::sregex_iterator it(file.text.begin(), file.text.end(), kLibrary), end; it != end;
       ++it) {
    const auto folder = (*it)[1].str();
    const auto arguments = (*it)[2].str();
    const auto allowed = reachableFrom(folder);
    std::smatch links;
    if (!std::regex_search(arguments, links, kLinks)) continue;
    std::istringstream names(links[1].str());
    for (std::string name; names >> name;) {
      if (!allowed.contains(name)) {
        breaches.push_back({file.path, 0, "forbidden link " + folder + " -> " + name});
      }
    }
  }
  return breaches;
}

}  // namespace sw::layers
