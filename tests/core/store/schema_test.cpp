// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <nlohmann/json.hpp>
#include <sstream>

#include "store/book_access.h"
#include "store/check_book.h"
#include "store/fact_columns.h"
#include "store/schema.h"
#include "store_fixture.h"

namespace sw::store {

namespace {

class SchemaTest : public StoreTest {};

std::string squeezed(const std::string& text) {
  std::string out;
  for (const char c : text) {
    const bool space = c == ' ' || c == '\n';
    if (!space) {
      out += c;
    } else if (!out.empty() && out.back() != ' ') {
      out += ' ';
    }
  }
  return out;
}

std::string typeName(ColumnType type) {
  if (type == ColumnType::Integer) return "INTEGER";
  return type == ColumnType::Real ? "REAL" : "TEXT";
}

/// What the table must say about a column, beside its type.
std::string constraintOf(const Column& column) {
  const std::string name = "\"" + column.name + "\"";
  const bool quantity = !column.words.empty() && column.words == quantityKindWords();
  if (quantity) return "REFERENCES \"quantity_kind\" (\"word\")";
  if (column.entry)
    return name + " INTEGER" + (column.nullable ? "" : " NOT NULL") +
           " REFERENCES \"entry\" (\"id\")";
  if (column.flag) return name + " IN (0, 1)";
  if (column.type == ColumnType::Real) return "abs(" + name + ") < 1e300";
  if (column.words.empty()) return name;
  std::string list;
  for (const auto word : column.words)
    list += (list.empty() ? "'" : ", '") + std::string(word) + "'";
  return name + " IN (" + list + ")";
}

std::string dataPath(const std::string& name) {
  return std::string(SW_SOURCE_DIR) + "/tests/data/schema/" + name;
}

std::vector<std::string> linesOf(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

/// Every entry of a book, in order of id, as JSON.
std::vector<std::string> exportOf(const Book& book) {
  std::vector<std::string> lines;
  const auto next = book.nextEntryId();
  for (std::int64_t id = 1; next && id < next->value; ++id) {
    const auto entry = book.entry(model::EntryId{id});
    lines.push_back(entry && *entry ? model::toJson(**entry).dump() : "missing");
  }
  return lines;
}

}  // namespace

TEST_F(SchemaTest, EveryKindHasATableWithTheColumnsOfItsFields) {
  makeBook().reset();
  RawBook raw(path);
  forEachKind([&]<class Fact>() {
    const std::string table = "fact_" + std::string(Fact::kKind);
    std::vector<std::string> expected{"entry", "INTEGER", "0"};
    for (const Column& column : columnsOf<Fact>()) {
      expected.insert(expected.end(),
                      {column.name, typeName(column.type), column.nullable ? "0" : "1"});
    }
    EXPECT_EQ(raw.values("SELECT name, type, \"notnull\" FROM pragma_table_xinfo('" + table + "')"),
              expected)
        << table;
    const std::string text =
        squeezed(raw.value("SELECT sql FROM sqlite_schema WHERE name = '" + table + "'"));
    for (const Column& column : columnsOf<Fact>()) {
      EXPECT_NE(text.find(constraintOf(column)), std::string::npos)
          << table << ": " << constraintOf(column);
    }
  });
}

TEST_F(SchemaTest, TheListsOfWordsAreThoseOfTheModel) {
  makeBook().reset();
  RawBook raw(path);
  std::vector<std::string> kinds;
  forEachKind([&]<class Fact>() { kinds.emplace_back(Fact::kKind); });
  std::sort(kinds.begin(), kinds.end());
  EXPECT_EQ(raw.values("SELECT word FROM kind ORDER BY word"), kinds);
  std::vector<std::string> quantities;
  for (const auto word : quantityKindWords()) quantities.emplace_back(word);
  std::sort(quantities.begin(), quantities.end());
  EXPECT_EQ(raw.values("SELECT word FROM quantity_kind ORDER BY word"), quantities);
  const std::string entry =
      squeezed(raw.value("SELECT sql FROM sqlite_schema WHERE name = 'entry'"));
  std::string reasons;
  for (const auto& [value, word] : Words<model::CorrectionReason>::table) {
    reasons += (reasons.empty() ? "'" : ", '") + std::string(word) + "'";
  }
  EXPECT_NE(entry.find("\"reason\" IN (" + reasons + ")"), std::string::npos);
}

TEST_F(SchemaTest, NoFactCanBeChangedDeletedOrPutInTwice) {
  makeSmallShop().reset();
  RawBook raw(path);
  // Without recursive triggers INSERT OR REPLACE would pass by the DELETE trigger; the INSERT
  // trigger must stop it in any program, whatever that program's settings.
  for (const char* recursive :
       {"PRAGMA recursive_triggers = OFF", "PRAGMA recursive_triggers = ON"}) {
    EXPECT_EQ(raw.run(recursive), "");
    std::vector<std::pair<std::string, std::string>> tables{
        {"entry", "id"}, {"kind", "word"}, {"quantity_kind", "word"}};
    for (const std::string kind : {"person", "instrument", "vehicle", "procedure_text",
                                   "job_opened", "run_started", "series", "reading"}) {
      tables.emplace_back("fact_" + kind, "entry");
    }
    for (const auto& [table, key] : tables) {
      const auto rows = raw.values("SELECT * FROM " + table);
      EXPECT_EQ(raw.run("UPDATE " + table + " SET " + key + " = " + key), "store.insert_only");
      EXPECT_EQ(raw.run("DELETE FROM " + table), "store.insert_only");
      EXPECT_EQ(raw.run("INSERT OR REPLACE INTO " + table + " SELECT * FROM " + table),
                "store.insert_only");
      EXPECT_EQ(raw.run("INSERT INTO " + table + " SELECT * FROM " + table), "store.insert_only");
      EXPECT_EQ(raw.values("SELECT * FROM " + table), rows);
    }
  }
}

TEST_F(SchemaTest, EveryTableButThreeIsInsertOnly) {
  makeBook().reset();
  RawBook raw(path);
  const auto open = raw.values(
      "SELECT name FROM sqlite_schema t WHERE type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE "
      "'\\' AND (SELECT count(*) FROM sqlite_schema g WHERE g.type = 'trigger' AND g.tbl_name = "
      "t.name AND g.name IN (t.name || '_no_update', t.name || '_no_delete', t.name || "
      "'_no_second')) < 3 ORDER BY name");
  EXPECT_EQ(open, (std::vector<std::string>{"cursor", "draft", "setting"}));
}

TEST_F(SchemaTest, AFactStandsOnlyUnderAnEntryOfItsKind) {
  makeSmallShop().reset();
  RawBook raw(path);
  EXPECT_EQ(raw.run("INSERT INTO fact_note VALUES (8, 'x')"), "store.wrong_kind");
  EXPECT_EQ(raw.run("INSERT INTO fact_note VALUES (77, 'x')"), "store.wrong_kind");
}

TEST_F(SchemaTest, AFreshBookHasTheSchemaOfTheKeptOne) {
  const std::string kept = folder / "kept.swbook";
  ASSERT_EQ(RawBook(kept).run(bytesOf(dataPath("v5.sql"))), "");
  auto fixture = Connection::open(kept, Access::ReadOnly);
  ASSERT_TRUE(fixture);
  auto book = makeBook();
  const auto fresh = schemaText(BookAccess::connection(*book));
  const auto expected = schemaText(**fixture);
  ASSERT_TRUE(fresh && expected);
  EXPECT_EQ(*fresh, *expected);
  EXPECT_EQ(goldenSchema(allMigrations(), 5).value_or(""), *expected);
}

TEST_F(SchemaTest, TheKeptBooksOfEveryVersionOpenWithAllTheirEntries) {
  for (int version = 1; version <= allMigrations().back().to; ++version) {
    const std::string name = "v" + std::to_string(version);
    SCOPED_TRACE(name);
    path = folder / (name + ".swbook");
    ASSERT_EQ(RawBook(path).run(bytesOf(dataPath(name + ".sql"))), "");
    const auto expected = linesOf(bytesOf(dataPath(name + ".jsonl")));
    ASSERT_GT(expected.size(), 60U);
    for (int opening = 0; opening < 2; ++opening) {
      auto book = reopen();
      ASSERT_TRUE(book);
      EXPECT_EQ(exportOf(*book), expected);
    }
    const auto report = checkBook(path, clock);
    ASSERT_TRUE(report);
    EXPECT_EQ(report->faults(), 0U) << report->summary().details.back().second;
  }
}

}  // namespace sw::store
