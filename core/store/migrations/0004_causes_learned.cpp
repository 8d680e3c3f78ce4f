// SPDX-License-Identifier: GPL-3.0-or-later
// Frozen: books with this schema exist. Answers about a shake, own numbers of causes, jobs that are
// no lesson.
#include "store/migrations/insert_only.h"
#include "store/migrations/migration.h"

namespace sw::store {

Migration causesLearned() {
  Migration step{4, "causes learned", {}};
  auto& out = step.statements;
  out.emplace_back(R"sql(CREATE TABLE "fact_shake_told" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "feature" TEXT NOT NULL CHECK (instr("feature", char(0)) = 0),
  "answer" TEXT NOT NULL CHECK (instr("answer", char(0)) = 0)
) STRICT)sql");
  out.emplace_back(R"sql(CREATE TABLE "fact_learning_left_out" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "why" TEXT NOT NULL CHECK (instr("why", char(0)) = 0)
) STRICT)sql");
  out.emplace_back(R"sql(CREATE TABLE "fact_cause_numbers" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "numbers" TEXT NOT NULL CHECK (instr("numbers", char(0)) = 0)
) STRICT)sql");
  addFactKind(out, "shake_told");
  addFactKind(out, "learning_left_out");
  addFactKind(out, "cause_numbers");
  return step;
}

}  // namespace sw::store
