// SPDX-License-Identifier: GPL-3.0-or-later
// What the book costs beside the bare SQLite C interface with the same schema, triggers and
// settings: one saved reading (median of 20 interleaved pairs), opening a large book, listing its
// jobs.
//   append_bench [--jobs=20000] [--readings=50] [--folder=/tmp]
#include <benchmark/benchmark.h>
#include <sqlite3.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <string>
#include <vector>

#include "small_shop.h"
#include "store/book.h"

namespace {

using namespace sw;

int jobCount = 20'000;
int readingsPerJob = 50;
std::string benchFolder;

/// Ends the program with a message: a benchmark of something that failed is worth nothing.
void require(bool good, const std::string& what) {
  if (good) return;
  std::cerr << "append_bench: " << what << "\n";
  std::exit(1);
}

template <class T>
T got(Result<T> result) {
  require(result.has_value(),
          result ? "" : result.error().key + " " + result.error().detail("text"));
  return std::move(*result);
}

double microseconds(const auto& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double, std::micro>(std::chrono::steady_clock::now() - start)
      .count();
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

/// The same rows by the C interface.
class Bare {
 public:
  explicit Bare(const std::string& path) {
    require(sqlite3_open_v2(path.c_str(), &m_handle, SQLITE_OPEN_READWRITE, nullptr) == SQLITE_OK,
            "open");
    for (const char* setting : {"PRAGMA foreign_keys = ON", "PRAGMA recursive_triggers = ON",
                                "PRAGMA cell_size_check = ON", "PRAGMA journal_mode = DELETE",
                                "PRAGMA synchronous = EXTRA"}) {
      run(setting);
    }
    m_entry = prepare("INSERT INTO entry VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    m_reading = prepare("INSERT INTO fact_reading VALUES (?, ?, ?, ?, ?, ?, ?)");
    m_series = prepare(
        "INSERT INTO fact_series SELECT ?, * FROM (SELECT quantity, limit_key, \"limit\", "
        "instrument, instrument_check, state_seal, state_rods, state_damper, "
        "state_sealant, state_grease, state_movement, state_position, "
        "angle_within_kind, angle_within_number, angle_within_unit, angle_within_si, "
        "arm_kind, arm_number, arm_unit, arm_si, planned, settling, safety "
        "FROM fact_series WHERE entry = 7)");
    m_opened = prepare("INSERT INTO fact_job_opened (entry, vehicle, request) VALUES (?, ?, '')");
    m_begin = prepare("BEGIN IMMEDIATE");
    m_commit = prepare("COMMIT");
  }
  Bare(const Bare&) = delete;
  Bare& operator=(const Bare&) = delete;
  ~Bare() {
    for (sqlite3_stmt* statement : {m_entry, m_reading, m_series, m_opened, m_begin, m_commit}) {
      sqlite3_finalize(statement);
    }
    sqlite3_close_v2(m_handle);
  }

  void run(const char* sql) {
    require(sqlite3_exec(m_handle, sql, nullptr, nullptr, nullptr) == SQLITE_OK, sql);
  }
  void begin() { step(m_begin); }
  void commit() { step(m_commit); }

  void reading(std::int64_t id, std::int64_t job, std::int64_t run, std::int64_t series) {
    entry(id, job, run, "reading");
    sqlite3_bind_int64(m_reading, 1, id);
    sqlite3_bind_int64(m_reading, 2, series);
    text(m_reading, 3, "force");
    text(m_reading, 4, "18.5");
    text(m_reading, 5, "N");
    sqlite3_bind_double(m_reading, 6, 18.5);
    text(m_reading, 7, "used");
    step(m_reading);
  }
  void series(std::int64_t id, std::int64_t job) {
    entry(id, job, 0, "series");
    sqlite3_bind_int64(m_series, 1, id);
    step(m_series);
  }
  void opened(std::int64_t id, std::int64_t job) {
    entry(id, job, 0, "job_opened");
    sqlite3_bind_int64(m_opened, 1, id);
    sqlite3_bind_int64(m_opened, 2, 1 + job % 500);
    step(m_opened);
  }
  int rows(const char* sql) {
    sqlite3_stmt* statement = prepare(sql);
    int count = 0;
    while (sqlite3_step(statement) == SQLITE_ROW) {
      for (int i = 0; i < sqlite3_column_count(statement); ++i) sqlite3_column_text(statement, i);
      ++count;
    }
    sqlite3_finalize(statement);
    return count;
  }

 private:
  sqlite3_stmt* prepare(const char* sql) {
    sqlite3_stmt* statement = nullptr;
    require(sqlite3_prepare_v2(m_handle, sql, -1, &statement, nullptr) == SQLITE_OK,
            std::string(sql) + sqlite3_errmsg(m_handle));
    return statement;
  }
  void text(sqlite3_stmt* statement, int at, const char* value) {
    sqlite3_bind_text(statement, at, value, -1, SQLITE_STATIC);
  }
  void step(sqlite3_stmt* statement) {
    require(sqlite3_step(statement) == SQLITE_DONE, sqlite3_errmsg(m_handle));
    sqlite3_reset(statement);
  }
  void entry(std::int64_t id, std::int64_t job, std::int64_t run, const char* kind) {
    sqlite3_bind_int64(m_entry, 1, id);
    sqlite3_bind_int64(m_entry, 2, job);
    if (run > 0) {
      sqlite3_bind_int64(m_entry, 3, run);
    } else {
      sqlite3_bind_null(m_entry, 3);
    }
    text(m_entry, 4, "pull");
    text(m_entry, 5, "left");
    text(m_entry, 6, kind);
    text(m_entry, 7, "2031-03-22T20:40:09.000Z");
    sqlite3_bind_int64(m_entry, 8, 120);
    text(m_entry, 9, "2031-03-22T20:40:09.500Z");
    sqlite3_bind_int64(m_entry, 10, 120);
    sqlite3_bind_int64(m_entry, 11, 1);
    text(m_entry, 14, "");
    text(m_entry, 15, "0.1.0");
    step(m_entry);
  }

  sqlite3* m_handle = nullptr;
  sqlite3_stmt* m_entry = nullptr;
  sqlite3_stmt* m_reading = nullptr;
  sqlite3_stmt* m_series = nullptr;
  sqlite3_stmt* m_opened = nullptr;
  sqlite3_stmt* m_begin = nullptr;
  sqlite3_stmt* m_commit = nullptr;
};

const ManualClock benchClock{store::kStart};

std::string freshBook(const std::string& name) {
  const std::string path = benchFolder + "/" + name;
  const auto entries = store::smallShop();
  const auto book = got(store::Book::create(path, benchClock));
  require(book->append(entries).has_value(), "append");
  return path;
}

model::Entry savedReading(std::int64_t id) {
  model::Entry entry = store::makeReading(id, 7, 18.5);
  entry.run = model::RunId{6};
  entry.side = model::Side::Left;
  entry.step = "pull";
  entry.by = model::EntryId{1};
  return entry;
}

void savedReadingPairs(benchmark::State& state) {
  constexpr int kPairs = 20;
  constexpr int kSavesEach = 10;
  const auto book = got(
      store::Book::open(freshBook("pairs-book.swbook"), store::OpenMode::ReadWrite, benchClock));
  Bare bare(freshBook("pairs-bare.swbook"));
  std::int64_t ours = 9;
  std::int64_t theirs = 9;
  for (auto _ : state) {
    std::vector<double> book_us;
    std::vector<double> bare_us;
    std::vector<double> ratios;
    for (int pair = 0; pair < kPairs; ++pair) {
      book_us.push_back(microseconds([&] {
                          for (int i = 0; i < kSavesEach; ++i) {
                            const std::vector<model::Entry> action{savedReading(ours++)};
                            require(book->append(action).has_value() && !book->dayFileTrouble(),
                                    "append");
                          }
                        }) /
                        kSavesEach);
      bare_us.push_back(microseconds([&] {
                          for (int i = 0; i < kSavesEach; ++i) {
                            bare.begin();
                            bare.reading(theirs++, 1, 6, 7);
                            bare.commit();
                          }
                        }) /
                        kSavesEach);
      ratios.push_back(book_us.back() / bare_us.back());
    }
    state.counters["book_us"] = median(book_us);
    state.counters["bare_us"] = median(bare_us);
    state.counters["ratio"] = median(ratios);
  }
}
BENCHMARK(savedReadingPairs)->Iterations(3)->Unit(benchmark::kMillisecond);

const std::string& largeBook() {
  static const std::string path = [] {
    const std::string made = freshBook("large.swbook");
    Bare bare(made);
    bare.run("PRAGMA synchronous = OFF");
    bare.begin();
    std::int64_t id = 9;
    for (int job = 2; job <= jobCount + 1; ++job) {
      bare.opened(id++, job);
      const std::int64_t series = id;
      bare.series(id++, job);
      for (int i = 0; i < readingsPerJob; ++i) bare.reading(id++, job, 0, series);
    }
    bare.commit();
    std::cout << "large book: " << jobCount << " jobs, " << id - 1 << " entries, "
              << std::filesystem::file_size(made) / 1'000'000 << " MB\n";
    return made;
  }();
  return path;
}

double openingTime(const std::string& path) {
  std::vector<double> times;
  for (int i = 0; i < 9; ++i) {
    times.push_back(microseconds(
        [&] { got(store::Book::open(path, store::OpenMode::ReadWrite, benchClock)); }));
  }
  return median(times);
}

void openingLargeAndEmpty(benchmark::State& state) {
  const std::string empty = freshBook("empty.swbook");
  const std::string& large = largeBook();
  for (auto _ : state) {
    state.counters["empty_us"] = openingTime(empty);
    state.counters["large_us"] = openingTime(large);
    state.counters["ratio"] = state.counters["large_us"] / state.counters["empty_us"];
  }
}
BENCHMARK(openingLargeAndEmpty)->Iterations(1)->Unit(benchmark::kMillisecond);

void listingJobs(benchmark::State& state) {
  const auto book = got(store::Book::open(largeBook(), store::OpenMode::ViewOnly, benchClock));
  Bare bare(largeBook());
  const char* sql =
      "SELECT o.job, f.vehicle, o.id, o.done_at, o.done_offset, c.done_at, c.done_offset, "
      "g.outcome "
      "FROM fact_job_opened f JOIN entry o ON o.id = f.entry LEFT JOIN entry c ON c.id = (SELECT "
      "max(n.id) FROM entry n WHERE n.kind = 'job_closed' AND n.job = o.job AND NOT EXISTS (SELECT "
      "1 "
      "FROM entry r WHERE r.replaces = n.id)) LEFT JOIN fact_job_closed g ON g.entry = c.id WHERE "
      "NOT "
      "EXISTS (SELECT 1 FROM entry r WHERE r.replaces = o.id) ORDER BY o.job";
  for (auto _ : state) {
    std::vector<double> ours;
    std::vector<double> theirs;
    for (int i = 0; i < 5; ++i) {
      ours.push_back(microseconds([&] { benchmark::DoNotOptimize(got(book->jobs()).size()); }));
      theirs.push_back(microseconds([&] { benchmark::DoNotOptimize(bare.rows(sql)); }));
    }
    state.counters["book_us"] = median(ours);
    state.counters["bare_us"] = median(theirs);
    state.counters["ratio"] = median(ours) / median(theirs);
  }
}
BENCHMARK(listingJobs)->Iterations(1)->Unit(benchmark::kMillisecond);

/// Takes our own options out of the list.
void readOptions(int& argc, char** argv) {
  std::string base = std::filesystem::temp_directory_path();
  int kept = 1;
  for (int i = 1; i < argc; ++i) {
    const std::string option = argv[i];
    if (option.starts_with("--jobs=")) {
      jobCount = std::stoi(option.substr(7));
    } else if (option.starts_with("--readings=")) {
      readingsPerJob = std::stoi(option.substr(11));
    } else if (option.starts_with("--folder=")) {
      base = option.substr(9);
    } else {
      argv[kept++] = argv[i];
    }
  }
  argc = kept;
  benchFolder = base + "/append-bench-" + std::to_string(getpid());
  std::filesystem::create_directories(benchFolder);
}

}  // namespace

int main(int argc, char** argv) {
  readOptions(argc, argv);
  benchmark::Initialize(&argc, argv);
  if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 2;
  benchmark::RunSpecifiedBenchmarks();
  std::filesystem::remove_all(benchFolder);
  return 0;
}
