// SPDX-License-Identifier: GPL-3.0-or-later
#include "store/check_book.h"

#include <algorithm>
#include <array>
#include <filesystem>

#include "store/book_opening.h"
#include "store/fact_columns.h"
#include "store/schema.h"

namespace sw::store {

namespace {

constexpr std::size_t kMostOfAKind = 20;

/// A statement that returns the entries that break a promise: entry id, and a text.
struct Invariant {
  const char* key = nullptr;
  Severity severity = Severity::Fault;
  SqlLiteral sql;
};

/// A field that names another entry, the kind that entry must have, and whether it is of the same
/// job.
#define SW_REFERENCE(table, column, kind, same)                                  \
  Invariant {                                                                    \
    "check.wrong_reference", Severity::Fault,                                    \
        "SELECT f.\"entry\", '" table "." column "' FROM \"fact_" table          \
        "\" f "                                                                  \
        "JOIN \"entry\" e ON e.\"id\" = f.\"entry\" "                            \
        "LEFT JOIN \"entry\" t ON t.\"id\" = f.\"" column "\" WHERE f.\"" column \
        "\" IS NOT NULL AND (t.\"kind\" IS NOT '" kind "' " same ") LIMIT 20"    \
  }
#define SW_SAME_JOB "OR t.\"job\" IS NOT e.\"job\""

constexpr std::array kInvariants{
    Invariant{"check.replaces_forward", Severity::Fault,
              "SELECT \"id\", \"replaces\" FROM \"entry\" WHERE \"replaces\" >= \"id\" LIMIT 20"},
    Invariant{"check.replaces_other_job", Severity::Fault,
              "SELECT e.\"id\", e.\"replaces\" FROM \"entry\" e JOIN \"entry\" t "
              "ON t.\"id\" = e.\"replaces\" WHERE t.\"job\" IS NOT e.\"job\" LIMIT 20"},
    Invariant{"check.replaces_other_kind", Severity::Fault,
              "SELECT e.\"id\", e.\"replaces\" FROM \"entry\" e JOIN \"entry\" t "
              "ON t.\"id\" = e.\"replaces\" WHERE t.\"kind\" IS NOT e.\"kind\" "
              "AND e.\"kind\" <> 'withdrawal' LIMIT 20"},
    Invariant{"check.run_not_started", Severity::Fault,
              "SELECT e.\"id\", e.\"run\" FROM \"entry\" e LEFT JOIN \"entry\" t "
              "ON t.\"id\" = e.\"run\" WHERE e.\"run\" IS NOT NULL "
              "AND (t.\"kind\" IS NOT 'run_started' OR t.\"job\" IS NOT e.\"job\") LIMIT 20"},
    Invariant{"check.by_not_a_person", Severity::Fault,
              "SELECT e.\"id\", e.\"by_person\" FROM \"entry\" e LEFT JOIN \"entry\" t "
              "ON t.\"id\" = e.\"by_person\" WHERE e.\"by_person\" IS NOT NULL "
              "AND t.\"kind\" IS NOT 'person' LIMIT 20"},
    Invariant{"check.job_not_opened", Severity::Fault,
              "SELECT min(e.\"id\"), e.\"job\" FROM \"entry\" e WHERE e.\"job\" IS NOT NULL "
              "AND NOT EXISTS (SELECT 1 FROM \"entry\" o WHERE o.\"kind\" = 'job_opened' "
              "AND o.\"job\" = e.\"job\") GROUP BY e.\"job\" LIMIT 20"},
    SW_REFERENCE("reading", "series", "series", SW_SAME_JOB),
    SW_REFERENCE("verdict", "series", "series", SW_SAME_JOB),
    SW_REFERENCE("series", "instrument", "instrument", ""),
    SW_REFERENCE("series", "instrument_check", "instrument_check", ""),
    SW_REFERENCE("series", "limit", "spec_item", ""),
    SW_REFERENCE("torque_check", "wrench", "instrument", ""),
    SW_REFERENCE("torque_check", "spec", "spec_item", ""),
    SW_REFERENCE("shim_pack", "instrument", "instrument", ""),
    Invariant{"check.picture_missing", Severity::Fault,
              "SELECT f.\"entry\", f.\"hash\" FROM \"fact_photo\" f WHERE NOT EXISTS "
              "(SELECT 1 FROM \"picture\" p WHERE p.\"hash\" = f.\"hash\") LIMIT 20"},
    Invariant{"check.procedure_missing", Severity::Fault,
              "SELECT f.\"entry\", f.\"hash\" FROM \"fact_run_started\" f WHERE f.\"hash\" "
              "NOT IN (SELECT \"hash\" FROM \"fact_procedure_text\") LIMIT 20"},
    Invariant{"check.clock_went_back", Severity::Note,
              "SELECT \"id\", \"entered_at\" FROM (SELECT \"id\", \"entered_at\", "
              "lag(\"entered_at\") OVER (ORDER BY \"id\") AS before FROM \"entry\") "
              "WHERE \"entered_at\" < before LIMIT 20"},
};

/// Collects findings; a statement that fails is a finding, too.
class Collector {
 public:
  Collector(Connection& connection, CheckReport& report)
      : m_connection(connection), m_report(report) {}

  void add(Severity severity, const std::string& key,
           std::vector<std::pair<std::string, std::string>> details) {
    m_report.findings.push_back({severity, key, std::move(details)});
  }

  void faults(const std::string& key, const Result<std::vector<std::string>>& faults) {
    if (!faults) return add(Severity::Fault, key, faults.error().details);
    for (std::size_t i = 0; i < std::min(faults->size(), kMostOfAKind); ++i) {
      add(Severity::Fault, key, {{"text", (*faults)[i]}});
    }
  }

  void rows(const std::string& key, Severity severity, const Sql& sql,
            std::string_view bound = {}) {
    auto query = m_connection.query(sql);
    if (!query) return failed(key, query.error());
    if (!bound.empty()) query->bind(bound);
    if (const auto ran = query->run(); !ran) return failed(key, ran.error());
    for (;;) {
      const auto row = query->next();
      if (!row) return failed(key, row.error());
      if (!*row) return;
      add(severity, key, {{"entry", query->text(0)}, {"text", query->text(1)}});
    }
  }

  std::int64_t number(SqlLiteral sql) {
    const auto value = m_connection.integer(sql);
    if (!value) failed("check.integrity", value.error());
    return value.value_or(0);
  }

 private:
  void failed(const std::string& key, const Error& error) {
    add(Severity::Fault, "check.cannot_read", {{"check", key}, {"text", error.detail("text")}});
  }

  Connection& m_connection;
  CheckReport& m_report;
};

void checkKinds(Collector& collector) {
  forEachKind([&]<class Fact>() {
    Sql missing("SELECT e.\"id\", e.\"kind\" FROM \"entry\" e LEFT JOIN ");
    missing.name("fact_", Fact::kKind)
        .add(" f ON f.\"entry\" = e.\"id\" WHERE e.\"kind\" = ? AND f.\"entry\" IS NULL LIMIT 20");
    collector.rows("check.fact_missing", Severity::Fault, missing, Fact::kKind);
    Sql extra("SELECT f.\"entry\", e.\"kind\" FROM ");
    extra.name("fact_", Fact::kKind)
        .add(" f JOIN \"entry\" e ON e.\"id\" = f.\"entry\" WHERE e.\"kind\" <> ? LIMIT 20");
    collector.rows("check.fact_extra", Severity::Fault, extra, Fact::kKind);
  });
}

void checkSchema(Collector& collector, Connection& connection, const BookOptions& options) {
  const auto golden = goldenSchema(options.migrations, options.schemaVersion());
  const auto found = schemaText(connection);
  if (!golden || !found || *golden != *found) collector.add(Severity::Fault, "check.schema", {});
}

CheckReport look(Connection& connection, const BookOptions& options) {
  CheckReport report;
  Collector collector(connection, report);
  collector.faults("check.integrity", integrityFaults(connection));
  collector.faults("check.foreign_key", foreignKeyFaults(connection));
  checkSchema(collector, connection, options);
  if (!report.sound()) return report;  // what follows would only repeat it
  report.entries = collector.number("SELECT count(*) FROM \"entry\"");
  report.jobs = collector.number("SELECT count(DISTINCT \"job\") FROM \"entry\"");
  const std::int64_t newest = collector.number("SELECT max(\"id\") FROM \"entry\"");
  if (newest != report.entries) {
    collector.add(
        Severity::Fault, "check.gap",
        {{"entries", std::to_string(report.entries)}, {"newest", std::to_string(newest)}});
  }
  checkKinds(collector);
  for (const Invariant& invariant : kInvariants) {
    collector.rows(invariant.key, invariant.severity, invariant.sql);
  }
  return report;
}

Result<void> runMore(const std::string& path, const Clock& clock, const BookOptions& options,
                     std::span<const BookCheck> more, CheckReport& report) {
  const auto book = Book::open(path, OpenMode::ViewOnly, clock, options);
  if (!book) return failAs(book);
  for (const BookCheck& check : more) {
    auto findings = check(**book);
    if (!findings) return failAs(findings);
    std::move(findings->begin(), findings->end(), std::back_inserter(report.findings));
  }
  return {};
}

Result<CheckReport> lookAtFile(const std::string& path, const Clock& clock,
                               const BookOptions& options) {
  const std::string file = resolved(path);
  const auto registration = OpenFile::enter(file, options.schemaVersion());
  if (!registration && registration.error().code != ErrorCode::BookDamaged) {
    return failAs(registration);
  }
  const auto connection = connectForChecking(file, clock, options.vfs);
  if (connection) return look(**connection, options);
  if (connection.error().code != ErrorCode::BookDamaged) return failAs(connection);
  CheckReport report;
  report.findings.push_back({Severity::Fault, "check.integrity", connection.error().details});
  return report;
}

std::size_t countOf(const std::vector<CheckFinding>& findings, Severity severity) {
  return static_cast<std::size_t>(
      std::count_if(findings.begin(), findings.end(),
                    [&](const CheckFinding& finding) { return finding.severity == severity; }));
}

}  // namespace

std::size_t CheckReport::faults() const {
  return countOf(findings, Severity::Fault);
}
std::size_t CheckReport::notes() const {
  return countOf(findings, Severity::Note);
}

CheckFinding CheckReport::summary() const {
  CheckFinding line{sound() ? Severity::Note : Severity::Fault,
                    sound() ? "check.sound" : "check.faulty",
                    {{"entries", std::to_string(entries)},
                     {"jobs", std::to_string(jobs)},
                     {"faults", std::to_string(faults())},
                     {"notes", std::to_string(notes())}}};
  for (const CheckFinding& finding : findings) {
    if (finding.severity != Severity::Fault) continue;
    line.details.emplace_back("first", finding.key);
    break;
  }
  return line;
}

Result<CheckReport> checkBook(const std::string& path, const Clock& clock,
                              std::span<const BookCheck> more) {
  return checkBook(path, clock, more, BookOptions{});
}

Result<CheckReport> checkBook(const std::string& path, const Clock& clock,
                              std::span<const BookCheck> more, const BookOptions& options) {
  const std::string type = options.fileSystemType(path);
  if (std::filesystem::exists(path) && isNetworkFileSystem(type)) {
    return fail(ErrorCode::BookOnNetwork, "store.on_network", {},
                {{"path", path}, {"file_system", type}});
  }
  auto report = lookAtFile(path, clock, options);
  if (!report || !report->sound() || more.empty()) return report;
  if (const auto ran = runMore(path, clock, options, more, *report); !ran) return failAs(ran);
  return report;
}

}  // namespace sw::store
