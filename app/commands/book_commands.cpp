// SPDX-License-Identifier: GPL-3.0-or-later
// check-book, backup and restore: the book as a file.
#include <array>
#include <ostream>

#include "cli/open_book.h"
#include "commands/commands.h"
#include "phrasing/finding_sentence.h"
#include "store/backup.h"
#include "store/check_book.h"
#include "workshop/check_verdicts.h"

namespace sw::app {

namespace {

constexpr std::array kBackupOptions{
    OptionSpec{"book", "PATH", "the book"},
    OptionSpec{"to", "DIR", "folder that gets the copy, e.g. on a stick"},
};
constexpr std::array kRestoreOptions{
    OptionSpec{"book", "PATH", "where the book is to stand"},
    OptionSpec{"replace", "", "move the book that stands there aside first"},
};

std::string findingText(const store::CheckFinding& finding) {
  return phrasing::findingSentence(finding.key, finding.details).toStdString();
}

int checkBook(CommandContext& context) {
  if (context.arguments.positional().empty()) {
    return context.fail({ErrorCode::Missing, "cli.book_missing", "BOOK", {}});
  }
  const std::array<store::BookCheck, 1> more{&workshop::checkVerdicts};
  const auto report = store::checkBook(context.arguments.positional().front(), context.clock, more);
  if (!report) return context.fail(report.error());
  context.streams.out << findingText(report->summary()) << '\n';
  for (const auto& finding : report->findings) {
    context.streams.out << "  " << findingText(finding) << '\n';
  }
  return toInt(report->sound() ? ExitCode::Done : ExitCode::Findings);
}

int backup(CommandContext& context) {
  const auto folder = context.required("to");
  if (!folder) return context.fail(folder.error());
  const auto copy = store::backup(bookPath(context), *folder, context.clock);
  if (!copy) return context.fail(copy.error());
  context.streams.out << copy->path << '\n';
  return toInt(ExitCode::Done);
}

int restore(CommandContext& context) {
  if (context.arguments.positional().empty()) {
    return context.fail({ErrorCode::Missing, "cli.copy_missing", "FILE", {}});
  }
  const auto existing =
      context.arguments.has("replace") ? store::Existing::MoveAside : store::Existing::Refuse;
  const auto restored = store::restore(context.arguments.positional().front(), bookPath(context),
                                       existing, context.clock);
  if (!restored) return context.fail(restored.error());
  context.streams.out << restored->path << ": " << restored->jobs << " jobs, " << restored->entries
                      << " entries\n";
  if (restored->movedAside) {
    context.streams.out << "The book that stood there is kept as " << *restored->movedAside << '\n';
  }
  return toInt(ExitCode::Done);
}

}  // namespace

Command checkBookCommand() {
  return {
      "check-book",
      "look at everything a book promises; changes nothing",
      "check-book BOOK",
      "Integrity, foreign keys, invariants, and every verdict computed again. One line says what "
      "was found;\nthe exit code is 1 when something is wrong.\n",
      {},
      1,
      NeedsGui::No,
      &checkBook};
}

Command backupCommand() {
  return {"backup",
          "a checked, dated copy of a book",
          "backup --book B --to DIR",
          "",
          kBackupOptions,
          0,
          NeedsGui::No,
          &backup};
}

Command restoreCommand() {
  return {"restore",
          "put a checked copy back in place",
          "restore FILE --book B [--replace]",
          "A book that already stands there is refused, or moved aside with --replace; it is never "
          "overwritten.\n",
          kRestoreOptions,
          1,
          NeedsGui::No,
          &restore};
}

}  // namespace sw::app
