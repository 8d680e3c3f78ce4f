// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

#include "procedures/library.h"
#include "store/book.h"
#include "workshop/command.h"
#include "workshop/job_state.h"
#include "workshop/recent_facts.h"

namespace sw::workshop {

/// Something worth telling after an action: a verdict, an appended run, a query about two figures.
/// The sentence is made in phrasing from key and values.
struct Event {
  std::string key;
  std::vector<std::pair<std::string, std::string>> values;
};

struct Outcome {
  std::vector<model::EntryId> entries;  ///< what was appended, in order
  std::optional<model::JobId> job;
  std::vector<Event> events;
};

/// What a command would bring about, with the job as it would then stand (absent for commands of
/// the shop).
struct Rehearsal {
  Outcome outcome;
  std::optional<JobState> job;
};

class Context;

/// Turns a picture file into what the book keeps: shrunk, turned upright, with a thumbnail.
class PictureIntake {
 public:
  struct Prepared {
    store::Book::Picture picture;
    std::int64_t width = 0;
    std::int64_t height = 0;
  };
  PictureIntake() = default;
  PictureIntake(const PictureIntake&) = delete;
  PictureIntake& operator=(const PictureIntake&) = delete;
  virtual ~PictureIntake() = default;
  /// Errors: NotFound, InvalidInput "picture.unreadable" (detail "format").
  [[nodiscard]] virtual Result<Prepared> prepare(const std::string& path) const = 0;
};

/// The one way in. Every action of a user is a command, judged by the rules of the job, committed
/// as one transaction, answered by events. The window and `job --script` are its two callers.
class Workshop {
 public:
  /// All arguments must outlive the workshop; `pictures` may be null (then photos are refused).
  Workshop(store::Book& book, const procedures::Library& library, const Clock& clock,
           const PictureIntake* pictures);

  /// Judges and commits. On error nothing was written.
  [[nodiscard]] Result<Outcome> perform(const Command& command);

  /// Judges and writes nothing: what is typed can be judged before it is accepted. Errors: those of
  /// perform. Settings are not judged, the shop's name among them.
  [[nodiscard]] Result<Rehearsal> rehearse(const Command& command) const;

  [[nodiscard]] Result<JobState> job(model::JobId job) const;
  /// The shop as it is now.
  [[nodiscard]] Result<const ShopState*> shop() const;
  /// The shop as a job sees it: as of its closing, or now.
  [[nodiscard]] Result<ShopState> shopOf(const JobFacts& facts) const;
  [[nodiscard]] const Clock& clock() const { return m_clock; }
  [[nodiscard]] store::Book& book() const { return m_book; }

 private:
  [[nodiscard]] Result<Context> judge(const Command& command) const;
  [[nodiscard]] std::shared_ptr<const procedures::Procedure> frozenProcedure(
      const ShopState& shop, const std::string& hash) const;

  store::Book& m_book;
  const procedures::Library& m_library;
  const Clock& m_clock;
  const PictureIntake* m_pictures;
  mutable RecentFacts m_recent;
  mutable std::unique_ptr<ShopState> m_shop;  ///< dropped when a shop fact is appended
  mutable std::unordered_map<std::string, std::shared_ptr<const procedures::Procedure>>
      m_procedures;
};

/// The version written into entries.
[[nodiscard]] std::string programVersion();

}  // namespace sw::workshop
