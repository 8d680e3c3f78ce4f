// SPDX-License-Identifier: GPL-3.0-or-later
#include "store/migrations/insert_only.h"

namespace sw::store {

namespace {

/// `text` with every "@table" and "@key" and "@kind" put in.
std::string filled(std::string_view text, std::string_view table, std::string_view key,
                   std::string_view kind) {
  std::string out;
  while (!text.empty()) {
    const auto put = [&](std::string_view mark, std::string_view value) {
      if (!text.starts_with(mark)) return false;
      out += value;
      text.remove_prefix(mark.size());
      return true;
    };
    if (put("@table", table) || put("@key", key) || put("@kind", kind)) continue;
    out += text.front();
    text.remove_prefix(1);
  }
  return out;
}

/// A fact stands only under an entry of its kind.
std::string rightKind(std::string_view kind) {
  return filled(R"sql(CREATE TRIGGER "fact_@kind_right_kind" BEFORE INSERT ON "fact_@kind"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT '@kind'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END)sql",
                {}, {}, kind);
}

}  // namespace

void addInsertOnly(std::vector<std::string>& statements, std::string_view table,
                   std::string_view key) {
  for (const std::string_view text :
       {R"sql(CREATE TRIGGER "@table_no_update" BEFORE UPDATE ON "@table"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END)sql",
        R"sql(CREATE TRIGGER "@table_no_delete" BEFORE DELETE ON "@table"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END)sql",
        R"sql(CREATE TRIGGER "@table_no_second" BEFORE INSERT ON "@table"
WHEN EXISTS (SELECT 1 FROM "@table" WHERE "@key" = NEW."@key")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END)sql"}) {
    statements.push_back(filled(text, table, key, {}));
  }
}

void addFactKind(std::vector<std::string>& statements, std::string_view kind) {
  statements.push_back(
      filled(R"sql(INSERT INTO "kind" ("word") VALUES ('@kind'))sql", {}, {}, kind));
  addInsertOnly(statements, std::string("fact_").append(kind), "entry");
  statements.push_back(rightKind(kind));
}

}  // namespace sw::store
