// SPDX-License-Identifier: GPL-3.0-or-later
// Frozen: books with this schema exist. Calculations put into a job; more kinds of quantity.
#include "store/migrations/insert_only.h"
#include "store/migrations/migration.h"

namespace sw::store {

Migration calculationsKept() {
  Migration step{3, "calculations kept", {}};
  auto& out = step.statements;
  out.emplace_back(
      R"sql(INSERT INTO "quantity_kind" ("word") VALUES ('area'), ('stiffness'), ('unbalance'))sql");
  out.emplace_back(R"sql(CREATE TABLE "fact_calculated" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "calculation" TEXT NOT NULL CHECK (instr("calculation", char(0)) = 0),
  "input" TEXT NOT NULL CHECK (instr("input", char(0)) = 0),
  "answer" TEXT NOT NULL CHECK (instr("answer", char(0)) = 0),
  "remark" TEXT NOT NULL CHECK (instr("remark", char(0)) = 0)
) STRICT)sql");
  addFactKind(out, "calculated");
  return step;
}

}  // namespace sw::store
