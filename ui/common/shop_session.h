// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QString>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "report_print/picture_intake.h"
#include "workshop/bench_input.h"
#include "workshop/last_action.h"
#include "workshop/shop_learning.h"
#include "workshop/workshop.h"

namespace sw::ui {

/// Where a command belongs.
struct Where {
  std::optional<model::JobId> job;
  std::string step;  ///< "procedure/step"
  std::optional<model::Side> side;
  std::optional<std::int64_t> round;
  std::optional<std::string> doneAt;  ///< ISO 8601, for work copied in afterwards
};
/// The place of a step of a job.
[[nodiscard]] Where whereOf(const workshop::JobState& job, std::size_t step);

/// The open book and the way in: pages read from it and send it commands; it tells all pages when
/// something changed.
class ShopSession : public QObject {
  Q_OBJECT

 public:
  /// Errors: those of store::Book::open. `clock` must outlive the session.
  [[nodiscard]] static Result<std::unique_ptr<ShopSession>> open(const std::string& book,
                                                                 store::OpenMode mode,
                                                                 const std::string& resources,
                                                                 const Clock& clock);

  [[nodiscard]] const workshop::Workshop& workshop() const { return *m_workshop; }
  [[nodiscard]] const procedures::Library& library() const { return m_library; }
  [[nodiscard]] bool viewOnly() const { return m_book->viewOnly(); }
  [[nodiscard]] QString bookPath() const;
  /// The folder of procedures, plans and help.
  [[nodiscard]] const QString& resources() const { return m_resources; }

  /// Initials of who is at work; empty before anybody was chosen.
  [[nodiscard]] const std::string& person() const { return m_person; }
  void setPerson(const std::string& initials);

  /// The job as it stands today; shared by all pages until something changes. Errors: those of
  /// workshop::Workshop::job.
  [[nodiscard]] Result<std::shared_ptr<const workshop::JobState>> job(model::JobId job) const;
  /// What the job knows of a calculation's input, the shop's closed jobs included. Those are read
  /// once a session and job.
  [[nodiscard]] model::Json benchInput(const workshop::JobState& job, std::string_view calculation,
                                       const workshop::BenchPlace& place) const;
  /// What ended jobs taught, and the table of causes in use; shared until something that teaches
  /// changes. Errors: those of workshop::shopLearning.
  [[nodiscard]] Result<std::shared_ptr<const workshop::ShopLearning>> learning() const;
  /// The shop as that job sees it.
  [[nodiscard]] Result<const workshop::ShopState*> shop() const { return m_workshop->shop(); }
  /// What the command would bring about; writes nothing and tells nobody.
  [[nodiscard]] Result<workshop::Rehearsal> rehearse(workshop::Action action,
                                                     const Where& where = {}) const;

  /// Judges and commits; the outcome is told by the signals below, in this order: told once
  /// for what is worth saying, saved, changed; or refused alone.
  Result<workshop::Outcome> perform(workshop::Action action, const Where& where = {});

  /// What undo would take back in this job, in words: "reading: 18.5 N"; empty = nothing.
  [[nodiscard]] QString undoText(model::JobId job) const;
  void undo(model::JobId job);

  /// What was typed and not accepted yet: kept in the book, so that a power cut does not lose it.
  void keepDraft(const QString& place, const QString& text);
  [[nodiscard]] QString draft(const QString& place) const;
  /// Where somebody was, to be offered again at the next start.
  void keepPlace(model::JobId job, const std::string& step);
  /// How the window looked last, in the words of `wordsOf`; empty at the first start.
  void keepLook(const std::string& words);
  [[nodiscard]] std::string look() const;
  [[nodiscard]] std::string lastStep(model::JobId job) const;
  [[nodiscard]] std::optional<model::JobId> lastJob() const;

 signals:
  void told(const QString& sentence);
  void saved(const QString& at);
  void refused(const QString& sentence, const QString& field);
  void changed();

 private:
  ShopSession() = default;
  [[nodiscard]] bool mayComeBack(const Where& where) const;
  [[nodiscard]] workshop::Command commandOf(workshop::Action action, const Where& where) const;
  /// The last action of this session in the job, where there was one.
  [[nodiscard]] std::optional<workshop::ActionEntries> lastActionOf(model::JobId job) const;

  struct Known {
    model::JobId job;
    Date day;
    std::shared_ptr<const workshop::JobState> state;
  };
  std::unique_ptr<store::Book> m_book;
  procedures::Library m_library;
  report_print::QtPictureIntake m_pictures;
  std::unique_ptr<workshop::Workshop> m_workshop;
  std::string m_person;
  QString m_resources;
  mutable std::optional<Known> m_known;
  mutable std::shared_ptr<const workshop::ShopLearning> m_learning;
  mutable std::map<std::int64_t, std::string> m_pulls;  ///< of closed jobs like a job, as JSON
  std::map<std::int64_t, std::vector<workshop::ActionEntries>> m_actions;  ///< a job each
};

}  // namespace sw::ui
