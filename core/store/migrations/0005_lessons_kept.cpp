// SPDX-License-Identifier: GPL-3.0-or-later
// Frozen: books with this schema exist. Causes put right, what a job taught of its shake when it
// ended.
#include "store/migrations/insert_only.h"
#include "store/migrations/migration.h"

namespace sw::store {

Migration lessonsKept() {
  Migration step{5, "lessons kept", {}};
  auto& out = step.statements;
  out.emplace_back(R"sql(CREATE TABLE "fact_cause_put_right" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "cause" TEXT NOT NULL CHECK (instr("cause", char(0)) = 0),
  "how" TEXT NOT NULL CHECK (instr("how", char(0)) = 0)
) STRICT)sql");
  out.emplace_back(R"sql(CREATE TABLE "fact_lesson" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "causes" TEXT NOT NULL CHECK (instr("causes", char(0)) = 0),
  "answers" TEXT NOT NULL CHECK (instr("answers", char(0)) = 0)
) STRICT)sql");
  addFactKind(out, "cause_put_right");
  addFactKind(out, "lesson");
  return step;
}

}  // namespace sw::store
