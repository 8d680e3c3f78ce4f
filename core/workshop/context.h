// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "units/parse.h"
#include "workshop/workshop.h"

// Internal to core/workshop: what one command works on while it is judged.

namespace sw::workshop {

/// Where in a job a fact belongs.
struct Place {
  std::optional<model::RunId> run;
  std::string step;
  std::optional<model::Side> side;
};

/// The facts a command is about to append, and the job as it stands with them. Nothing reaches the
/// book before the whole command has been judged.
class Context {
 public:
  struct Setup {
    store::Book* book = nullptr;
    const ShopState* shop = nullptr;
    const procedures::Library* library = nullptr;
    const PictureIntake* pictures = nullptr;
    ProcedureLookup lookup;
    Timestamp now;
    Timestamp doneAt;
    std::optional<model::EntryId> by;
    model::EntryId next;
    const std::vector<model::EntryId>* starts = nullptr;  ///< RecentFacts::starts
  };
  explicit Context(Setup setup) : m(std::move(setup)) {}

  [[nodiscard]] store::Book& book() const { return *m.book; }
  [[nodiscard]] const ShopState& shop() const { return *m.shop; }
  [[nodiscard]] const procedures::Library& library() const { return *m.library; }
  [[nodiscard]] const PictureIntake* pictures() const { return m.pictures; }
  [[nodiscard]] const std::vector<model::EntryId>& starts() const { return *m.starts; }
  [[nodiscard]] Timestamp now() const { return m.now; }
  [[nodiscard]] Timestamp doneAt() const { return m.doneAt; }

  /// The job the command is about. Errors as deriveJob.
  [[nodiscard]] Result<void> enterJob(model::JobId job, JobFacts facts);
  /// Starts a new job: later facts belong to it.
  void openJob(model::JobId job) { m_jobId = job; }
  [[nodiscard]] bool inJob() const { return m_state.has_value(); }
  [[nodiscard]] const JobState& job() const { return *m_state; }
  [[nodiscard]] std::optional<model::JobId> jobId() const { return m_jobId; }
  /// Derives the job again with what was added so far.
  [[nodiscard]] Result<void> refresh();
  /// The same where something was added since.
  [[nodiscard]] Result<void> refreshIfStale();

  void setStep(std::optional<std::size_t> step) { m_step = step; }
  [[nodiscard]] std::optional<std::size_t> step() const { return m_step; }
  void setSide(std::optional<model::Side> side) { m_side = side; }
  [[nodiscard]] std::optional<model::Side> side() const { return m_side; }
  [[nodiscard]] Place placeOf(std::size_t step) const;
  /// The command's step, or its bare side.
  [[nodiscard]] Place place() const;

  model::EntryId add(model::Payload payload, const Place& place);
  /// A fact of the shop: belongs to no job.
  model::EntryId addShop(model::Payload payload);
  /// A new entry that takes the place of `old`.
  model::EntryId replace(const model::Entry& old, model::Payload payload,
                         model::CorrectionReason reason, const std::string& text,
                         std::optional<model::Side> side);
  void addPicture(store::Book::Picture picture) { m_pictures.push_back(std::move(picture)); }
  void tell(std::string key, std::vector<std::pair<std::string, std::string>> values = {});

  [[nodiscard]] const std::vector<model::Entry>& added() const { return m_added; }
  [[nodiscard]] const std::vector<store::Book::Picture>& newPictures() const { return m_pictures; }
  [[nodiscard]] const std::vector<Event>& events() const { return m_events; }

 private:
  model::Entry header(const Place& place) const;

  Setup m;
  std::optional<model::JobId> m_jobId;
  JobFacts m_base;
  std::optional<JobState> m_state;
  std::size_t m_derivedFrom = 0;  ///< how much of m_added the state knows
  std::optional<std::size_t> m_step;
  std::optional<model::Side> m_side;
  std::vector<model::Entry> m_added;
  std::vector<store::Book::Picture> m_pictures;
  std::vector<Event> m_events;
};

/// Reads a quantity as typed and tells how it was read where that is worth saying.
[[nodiscard]] Result<TypedQuantity> readQuantity(Context& context, std::string_view text,
                                                 const std::string& field, QuantityKind kind,
                                                 const std::string& defaultUnit = {});
/// The same for an optional field.
[[nodiscard]] Result<std::optional<TypedQuantity>> readQuantity(
    Context& context, const std::optional<std::string>& text, const std::string& field,
    QuantityKind kind, const std::string& defaultUnit = {});
[[nodiscard]] Result<std::optional<Date>> readDate(const std::optional<std::string>& text,
                                                   const std::string& field);
/// "4.50" -> 450. Errors: InvalidInput "workshop.not_money".
[[nodiscard]] Result<std::int64_t> readMoney(std::string_view text, const std::string& field);
/// The quantity kind an instrument of this type measures; empty for Other.
[[nodiscard]] std::optional<QuantityKind> measuredBy(model::InstrumentKind type);

// One judge a command; each fills the context or explains why not.
[[nodiscard]] Result<void> act(const SetPerson& action, Context& context);
[[nodiscard]] Result<void> act(const SetInstrument& action, Context& context);
[[nodiscard]] Result<void> act(const CheckInstrument& action, Context& context);
[[nodiscard]] Result<void> act(const SetVehicle& action, Context& context);
[[nodiscard]] Result<void> act(const SetSpec& action, Context& context);
[[nodiscard]] Result<void> act(const CopySpec& action, Context& context);
[[nodiscard]] Result<void> act(const SourceSpec& action, Context& context);
[[nodiscard]] Result<void> act(const OpenJob& action, Context& context);
[[nodiscard]] Result<void> act(const SetComplaint& action, Context& context);
[[nodiscard]] Result<void> act(const CheckCause& action, Context& context);
[[nodiscard]] Result<void> act(const StartPlan& action, Context& context);
[[nodiscard]] Result<void> act(const StartProcedure& action, Context& context);
[[nodiscard]] Result<void> act(const ChooseSupport& action, Context& context);
[[nodiscard]] Result<void> act(const AnswerHold& action, Context& context);
[[nodiscard]] Result<void> act(const DoStep& action, Context& context);
[[nodiscard]] Result<void> act(const MarkBefore& action, Context& context);
[[nodiscard]] Result<void> act(const Observe& action, Context& context);
[[nodiscard]] Result<void> act(const TakeReadings& action, Context& context);
[[nodiscard]] Result<void> act(const Correct& action, Context& context);
[[nodiscard]] Result<void> act(const Withdraw& action, Context& context);
[[nodiscard]] Result<void> act(const Undo& action, Context& context);
[[nodiscard]] Result<void> act(const MoveSeries& action, Context& context);
[[nodiscard]] Result<void> act(const MarkTorque& action, Context& context);
[[nodiscard]] Result<void> act(const MoveLedger& action, Context& context);
[[nodiscard]] Result<void> act(const UsePart& action, Context& context);
[[nodiscard]] Result<void> act(const RecordPack& action, Context& context);
[[nodiscard]] Result<void> act(const AddLabour& action, Context& context);
[[nodiscard]] Result<void> act(const DeclineWork& action, Context& context);
[[nodiscard]] Result<void> act(const AddNote& action, Context& context);
[[nodiscard]] Result<void> act(const Calculate& action, Context& context);
[[nodiscard]] Result<void> act(const TellOfShake& action, Context& context);
[[nodiscard]] Result<void> act(const LeaveOutOfLearning& action, Context& context);
[[nodiscard]] Result<void> act(const TakeIntoLearning& action, Context& context);
[[nodiscard]] Result<void> act(const PutCauseRight& action, Context& context);
[[nodiscard]] Result<void> act(const AddPhoto& action, Context& context);
[[nodiscard]] Result<void> act(const StartTimer& action, Context& context);
[[nodiscard]] Result<void> act(const OverrideRule& action, Context& context);
[[nodiscard]] Result<void> act(const RecordRoadTest& action, Context& context);
[[nodiscard]] Result<void> act(const AddRecheck& action, Context& context);
[[nodiscard]] Result<void> act(const FinishRecheck& action, Context& context);
[[nodiscard]] Result<void> act(const SignOff& action, Context& context);
[[nodiscard]] Result<void> act(const CloseJob& action, Context& context);
[[nodiscard]] Result<void> act(const SetSetting& action, Context& context);

}  // namespace sw::workshop
