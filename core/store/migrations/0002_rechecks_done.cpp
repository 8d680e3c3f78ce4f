// SPDX-License-Identifier: GPL-3.0-or-later
// Frozen: books with this schema exist. Rechecks that were carried out; the shop's name as a fact.
#include "store/migrations/insert_only.h"
#include "store/migrations/migration.h"

namespace sw::store {

Migration rechecksDone() {
  Migration step{2, "rechecks done", {}};
  auto& out = step.statements;
  out.emplace_back(R"sql(CREATE TABLE "fact_shop_named" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "name" TEXT NOT NULL CHECK (instr("name", char(0)) = 0)
) STRICT)sql");
  out.emplace_back(R"sql(CREATE TABLE "fact_recheck_done" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "recheck" INTEGER NOT NULL REFERENCES "entry" ("id"),
  "result" TEXT NOT NULL CHECK (instr("result", char(0)) = 0)
) STRICT)sql");
  addFactKind(out, "shop_named");
  addFactKind(out, "recheck_done");
  return step;
}

}  // namespace sw::store
