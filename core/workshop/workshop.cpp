// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/workshop.h"

#include <algorithm>

#include "workshop/context.h"

#ifndef SW_VERSION
#error "SW_VERSION comes from the build"
#endif

namespace sw::workshop {

namespace {

template <class T>
constexpr bool kShopOnly =
    std::is_same_v<T, SetPerson> || std::is_same_v<T, SetInstrument> ||
    std::is_same_v<T, CheckInstrument> || std::is_same_v<T, SetVehicle> ||
    std::is_same_v<T, SetSpec> || std::is_same_v<T, CopySpec> || std::is_same_v<T, SourceSpec> ||
    std::is_same_v<T, OpenJob> || std::is_same_v<T, SetSetting>;

/// Corrections of the record and rechecks are still possible when the job is closed; work is not.
template <class T>
constexpr bool kAfterClosing =
    std::is_same_v<T, Correct> || std::is_same_v<T, Withdraw> || std::is_same_v<T, MoveSeries> ||
    std::is_same_v<T, AddNote> || std::is_same_v<T, Calculate> ||
    std::is_same_v<T, LeaveOutOfLearning> || std::is_same_v<T, TakeIntoLearning> ||
    std::is_same_v<T, FinishRecheck>;

bool needsJob(const Action& action) {
  return std::visit([](const auto& one) { return !kShopOnly<std::decay_t<decltype(one)>>; },
                    action);
}

bool allowedAfterClosing(const Action& action) {
  return std::visit([](const auto& one) { return kAfterClosing<std::decay_t<decltype(one)>>; },
                    action);
}

/// "procedure/step" with the side and, if given, the round.
Result<std::size_t> resolveStep(const JobState& job, const Command& command) {
  const std::string& name = *command.step;
  const auto slash = name.find('/');
  const auto notFound = [&] {
    return fail(ErrorCode::NotFound, "workshop.no_step", "step",
                {{"text", name}, {"side", command.side ? std::string(wordOf(*command.side)) : ""}});
  };
  if (slash == std::string::npos) return notFound();
  const std::string procedure = name.substr(0, slash);
  const std::string step = name.substr(slash + 1);
  std::optional<std::size_t> best;
  for (std::size_t r = 0; r < job.runs.size(); ++r) {
    const RunView& run = job.runs[r];
    if (run.fact.procedure != procedure) continue;
    if (command.round && run.fact.round != *command.round) continue;
    const auto found = job.findStep(r, step, command.side);
    if (found && (!best || run.id > job.runs[job.steps[*best].run].id)) best = found;
  }
  if (!best) return notFound();
  return *best;
}

Result<std::optional<model::EntryId>> resolvePerson(const ShopState& shop, const Command& command) {
  if (!command.by) {
    if (!needsJob(command.action) || shop.people().empty()) return std::nullopt;
    return fail(ErrorCode::Missing, "workshop.who", "by");
  }
  const auto* person = shop.personByInitials(*command.by);
  if (person == nullptr) {
    return fail(ErrorCode::NotFound, "workshop.no_person", "by", {{"text", *command.by}});
  }
  return std::optional(person->entry);
}

Result<Timestamp> resolveDoneAt(const Command& command, Timestamp now) {
  if (!command.doneAt) return now;
  auto time = parseTimestamp(*command.doneAt);
  if (!time) return tl::make_unexpected(time.error().about("done_at"));
  if (*time > now) {
    return fail(ErrorCode::OutOfRange, "workshop.done_in_future", "done_at",
                {{"text", *command.doneAt}});
  }
  return *time;
}

Outcome outcomeOf(const Context& context) {
  Outcome outcome;
  for (const auto& entry : context.added()) outcome.entries.push_back(entry.id);
  outcome.job = context.jobId();
  outcome.events = context.events();
  return outcome;
}

bool touchesShop(const std::vector<model::Entry>& entries) {
  return std::any_of(entries.begin(), entries.end(),
                     [](const model::Entry& entry) { return !entry.job.has_value(); });
}

const model::Entry* closingIn(const JobFacts& facts) {
  const auto found = std::find_if(facts.begin(), facts.end(), [](const auto& entry) {
    return model::as<model::JobClosed>(*entry) != nullptr;
  });
  return found == facts.end() ? nullptr : found->get();
}

}  // namespace

std::string programVersion() {
  return SW_VERSION;
}

Workshop::Workshop(store::Book& book, const procedures::Library& library, const Clock& clock,
                   const PictureIntake* pictures)
    : m_book(book), m_library(library), m_clock(clock), m_pictures(pictures) {}

Result<const ShopState*> Workshop::shop() const {
  if (!m_shop) {
    auto entries = m_book.shopEntries();
    if (!entries) return failAs(entries);
    m_shop = std::make_unique<ShopState>(*entries);
  }
  return m_shop.get();
}

std::shared_ptr<const procedures::Procedure> Workshop::frozenProcedure(
    const ShopState& shop, const std::string& hash) const {
  const auto known = m_procedures.find(hash);
  if (known != m_procedures.end()) return known->second;
  const auto* text = shop.procedureText(hash);
  if (text == nullptr) return nullptr;
  auto parsed = procedures::parseProcedure(text->fact.text, text->fact.procedure);
  if (!parsed) return nullptr;
  auto procedure = std::make_shared<const procedures::Procedure>(std::move(*parsed));
  m_procedures.emplace(hash, procedure);
  return procedure;
}

Result<ShopState> Workshop::shopOf(const JobFacts& facts) const {
  if (const model::Entry* closing = closingIn(facts)) {
    auto entries = m_book.shopEntriesUpTo(closing->id);
    if (!entries) return failAs(entries);
    return ShopState(*entries);
  }
  auto now = shop();
  if (!now) return failAs(now);
  return **now;
}

Result<JobState> Workshop::job(model::JobId job) const {
  auto facts = m_recent.ofJob(m_book, job);
  if (!facts) return failAs(facts);
  const auto derived = [&](const ShopState& asOf) {
    return deriveJob(
        std::move(*facts), asOf,
        [&](const std::string& hash) { return frozenProcedure(asOf, hash); }, m_clock.now());
  };
  if (closingIn(*facts) == nullptr) {  // the shop as it is now, which need not be copied
    const auto now = shop();
    if (!now) return failAs(now);
    return derived(**now);
  }
  const auto asOf = shopOf(*facts);
  if (!asOf) return failAs(asOf);
  return derived(*asOf);
}

Result<Context> Workshop::judge(const Command& command) const {
  auto current = shop();
  if (!current) return failAs(current);
  const ShopState& shopNow = **current;
  const Timestamp now = m_clock.now();
  auto doneAt = resolveDoneAt(command, now);
  if (!doneAt) return failAs(doneAt);
  auto by = resolvePerson(shopNow, command);
  if (!by) return failAs(by);
  auto next = m_book.nextEntryId();
  if (!next) return failAs(next);

  const auto lookup = [this, shop = &shopNow](const std::string& hash) {
    return frozenProcedure(*shop, hash);
  };
  Context context({&m_book, &shopNow, &m_library, m_pictures, lookup, now, *doneAt, *by, *next,
                   &m_recent.starts()});
  if (needsJob(command.action)) {
    if (!command.job) return fail(ErrorCode::Missing, "workshop.which_job", "job");
    auto facts = m_recent.ofJob(m_book, {*command.job});
    if (!facts) return failAs(facts);
    if (auto entered = context.enterJob({*command.job}, std::move(*facts)); !entered) {
      return failAs(entered);
    }
    if (context.job().closed && !allowedAfterClosing(command.action)) {
      return fail(ErrorCode::Refused, "workshop.job_closed", "job",
                  {{"job", std::to_string(*command.job)}});
    }
    context.setSide(command.side);
    if (command.step) {
      auto step = resolveStep(context.job(), command);
      if (!step) return failAs(step);
      context.setStep(*step);
    }
  }
  auto judged =
      std::visit([&](const auto& action) { return act(action, context); }, command.action);
  if (!judged) return failAs(judged);
  return context;
}

Result<Outcome> Workshop::perform(const Command& command) {
  auto context = judge(command);
  if (!context) return failAs(context);
  if (!context->added().empty()) {
    auto written = m_book.append(context->added(), context->newPictures());
    if (!written) return failAs(written);
    m_recent.appended(context->added());
    if (touchesShop(context->added())) m_shop.reset();
  }
  return outcomeOf(*context);
}

Result<Rehearsal> Workshop::rehearse(const Command& command) const {
  if (std::holds_alternative<SetSetting>(command.action)) return Rehearsal{};
  auto context = judge(command);
  if (!context) return failAs(context);
  Rehearsal rehearsal{outcomeOf(*context), std::nullopt};
  if (!context->inJob()) return rehearsal;
  if (auto stands = context->refreshIfStale(); !stands) return failAs(stands);
  rehearsal.job = context->job();
  return rehearsal;
}

}  // namespace sw::workshop
