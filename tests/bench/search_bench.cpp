// SPDX-License-Identifier: GPL-3.0-or-later
// What a search of the book costs beside the bare SQLite C interface with one statement a kind of
// fact that finds as many rows that still stand, vehicles by plate and the rest newest first.
// Budget: at most twice.
//   search_bench [--jobs=5000] [--folder=/tmp]
#include <sqlite3.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <random>
#include <string>
#include <vector>

#include "small_shop.h"
#include "store/book.h"

namespace {

using namespace sw;

void require(bool good, const std::string& what) {
  if (good) return;
  std::cerr << "search_bench: " << what << "\n";
  std::exit(1);
}

template <class T>
T got(Result<T> result) {
  require(result.has_value(), result ? "" : result.error().key + result.error().detail("text"));
  return std::move(*result);
}

std::string sentence(std::mt19937& random) {
  static const std::vector<std::string> words{"left",     "right",   "seal",   "knocks", "wheel",
                                              "balanced", "greased", "damper", "rod",    "worn"};
  std::string text;
  for (int i = 0; i < 8; ++i) text += words[random() % words.size()] + " ";
  return text;
}

std::vector<model::Entry> shopOf(std::int64_t jobs) {
  std::mt19937 random(318);
  std::vector<model::Entry> entries;
  const auto put = [&](model::Payload payload, std::optional<std::int64_t> job = std::nullopt) {
    entries.push_back(
        store::makeEntry(static_cast<std::int64_t>(entries.size()) + 1, std::move(payload), job));
  };
  for (std::int64_t i = 1; i <= 500; ++i) {
    model::Vehicle vehicle;
    vehicle.vehicle = {i};
    vehicle.registration = "Q " + std::to_string(1000 + i);
    vehicle.owner = sentence(random);
    put(vehicle);
  }
  for (std::int64_t job = 1; job <= jobs; ++job) {
    model::JobOpened opened;
    opened.vehicle = {1 + job % 500};
    opened.request = sentence(random);
    put(opened, job);
    model::Complaint complaint;
    complaint.words = sentence(random);
    put(complaint, job);
    for (int i = 0; i < 5; ++i) {
      put(model::Note{sentence(random) + (job % 1000 == 7 ? "cotter" : "")}, job);
      model::PartUsed part;
      part.name = sentence(random);
      part.quantity = {QuantityKind::Number, "1", "", 1};
      put(part, job);
    }
  }
  return entries;
}

constexpr const char* kStands = "NOT EXISTS (SELECT 1 FROM entry r WHERE r.replaces = f.entry)";

struct Bare {
  std::string what, table, more, order;
};

std::vector<Bare> bareStatements() {
  std::vector<Bare> list{
      {"f.registration || ' ' || f.make_model || ' ' || f.vin || ' ' || f.owner || ' ' || f.notes",
       "fact_vehicle f",
       " AND NOT EXISTS (SELECT 1 FROM fact_vehicle n WHERE n.vehicle = f.vehicle AND n.entry > "
       "f.entry)",
       "f.registration"}};
  const std::string job = ", entry e, entry j, fact_job_opened o";
  const std::string joined =
      " AND e.id = f.entry AND j.kind = 'job_opened' AND j.job = e.job AND o.entry = j.id AND NOT "
      "EXISTS (SELECT 1 FROM entry r WHERE r.replaces = j.id)";
  for (const auto& [what, table] :
       std::vector<std::pair<std::string, std::string>>{{"f.request", "fact_job_opened"},
                                                        {"f.words", "fact_complaint"},
                                                        {"f.name", "fact_part_used"},
                                                        {"f.text", "fact_note"}}) {
    list.push_back({what, table + " f" + job, joined, "f.entry DESC"});
  }
  return list;
}

/// Up to 100 rows, one kind after the other.
int bareSearch(sqlite3* handle, const std::vector<std::string>& words) {
  int rows = 0;
  for (const Bare& bare : bareStatements()) {
    std::string sql = "SELECT f.entry, " + bare.what + " FROM " + bare.table + " WHERE ";
    for (const std::string& word : words) sql += "(" + bare.what + ") LIKE '%" + word + "%' AND ";
    sql += kStands + bare.more + " ORDER BY " + bare.order;
    sqlite3_stmt* statement = nullptr;
    require(sqlite3_prepare_v2(handle, sql.c_str(), -1, &statement, nullptr) == SQLITE_OK, sql);
    while (rows < 100 && sqlite3_step(statement) == SQLITE_ROW) {
      rows += sqlite3_column_text(statement, 1) != nullptr ? 1 : 0;
    }
    sqlite3_finalize(statement);
  }
  return rows;
}

double milliseconds(const auto& work) {
  std::vector<double> times;
  for (int i = 0; i < 9; ++i) {
    const auto start = std::chrono::steady_clock::now();
    work();
    const std::chrono::duration<double, std::milli> time = std::chrono::steady_clock::now() - start;
    times.push_back(time.count());
  }
  std::sort(times.begin(), times.end());
  return times[times.size() / 2];
}

}  // namespace

int main(int count, char** arguments) {
  std::int64_t jobs = 5000;
  std::string folder = std::filesystem::temp_directory_path().string();
  for (int i = 1; i < count; ++i) {
    const std::string argument = arguments[i];
    if (argument.starts_with("--jobs=")) jobs = std::atoll(argument.c_str() + 7);
    if (argument.starts_with("--folder=")) folder = argument.substr(9);
  }
  folder += "/search_bench." + std::to_string(getpid());
  std::filesystem::create_directories(folder);
  const std::string path = folder + "/shop.swbook";
  const ManualClock clock(store::kStart);
  {
    const auto book = got(store::Book::create(path, clock));
    require(book->append(shopOf(jobs)).has_value(), "append");
    sqlite3* handle = nullptr;
    require(sqlite3_open_v2(path.c_str(), &handle, SQLITE_OPEN_READONLY, nullptr) == SQLITE_OK,
            "open");
    for (const std::vector<std::string>& words : std::vector<std::vector<std::string>>{
             {"cotter"}, {"q", "1318"}, {"seal"}, {"worn", "damper", "left"}, {"e"}, {"nowhere"}}) {
      std::string typed;
      for (const std::string& word : words) typed += word + " ";
      std::size_t hits = 0;
      const double ours = milliseconds([&] { hits = got(book->search(typed, 100)).size(); });
      int rows = 0;
      const double bare = milliseconds([&] { rows = bareSearch(handle, words); });
      require(static_cast<std::size_t>(rows) == hits, "both must find as much: " + typed);
      std::cout << typed << ": " << hits << " hits, book " << ours << " ms, bare " << bare
                << " ms, ratio " << ours / bare << "\n";
    }
    sqlite3_close_v2(handle);
  }
  std::filesystem::remove_all(folder);
}
