// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/common/shop_session.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <utility>

#include "phrasing/error_sentence.h"
#include "phrasing/event_sentence.h"
#include "phrasing/names.h"
#include "report/fact_text.h"
#include "workshop/shop_pulls.h"

namespace sw::ui {

namespace {

const std::string kLastJob = "window.last_job";
constexpr int kUndoLength = 80;  // letters of a tip
const std::string kLook = "window.look";

/// "14:03:07", on the wall clock of the shop.
QString timeOfDay(const Timestamp& time) {
  return QString::fromStdString(toIso(time)).mid(11, 8);
}

/// The panel shows readings and their verdict while they are typed: saying it again would only hide
/// what is new.
bool shownAnyway(const workshop::Event& event) {
  const auto field = std::find(event.values.begin(), event.values.end(),
                               std::pair<std::string, std::string>("field", "readings"));
  return event.key == "readings_taken" || event.key == "verdict" ||
         (event.key == "read_as" && field != event.values.end());
}

/// What is worth saying; a whole round that was added is one sentence, not one a procedure.
QStringList sentencesOf(const std::vector<workshop::Event>& events) {
  const bool round = std::any_of(events.begin(), events.end(), [](const workshop::Event& event) {
    return event.key == "runs_appended";
  });
  QStringList sentences;
  for (const workshop::Event& event : events) {
    if (shownAnyway(event) || (round && event.key == "run_appended")) continue;
    sentences += phrasing::eventSentence(event.key, event.values);
  }
  return sentences;
}

/// Changes what ended jobs taught: one ends, is left out or corrected, or the numbers are others.
bool teaches(const workshop::Action& action) {
  if (const auto* set = std::get_if<workshop::SetSetting>(&action)) {
    return set->key == "cause_numbers";
  }
  return std::visit(
      [](const auto& one) {
        using T = std::decay_t<decltype(one)>;
        return std::is_same_v<T, workshop::SignOff> || std::is_same_v<T, workshop::CloseJob> ||
               std::is_same_v<T, workshop::LeaveOutOfLearning> ||
               std::is_same_v<T, workshop::TakeIntoLearning> ||
               std::is_same_v<T, workshop::Correct> || std::is_same_v<T, workshop::Withdraw> ||
               std::is_same_v<T, workshop::Undo>;
      },
      action);
}

/// Says that it shakes.
bool saysItShakes(const workshop::Action& action) {
  return std::holds_alternative<workshop::TellOfShake>(action) ||
         std::holds_alternative<workshop::SetComplaint>(action);
}

}  // namespace

Where whereOf(const workshop::JobState& job, std::size_t step) {
  const workshop::StepView& view = job.steps.at(step);
  const workshop::RunView& run = job.runs.at(view.run);
  return {job.job, run.fact.procedure + "/" + view.step->id, view.side, run.fact.round, {}};
}

Result<std::unique_ptr<ShopSession>> ShopSession::open(const std::string& book,
                                                       store::OpenMode mode,
                                                       const std::string& resources,
                                                       const Clock& clock) {
  auto opened = store::Book::open(book, mode, clock);
  if (!opened) return failAs(opened);
  std::unique_ptr<ShopSession> session(new ShopSession);
  session->m_book = std::move(*opened);
  session->m_resources = QString::fromStdString(resources);
  session->m_library = procedures::Library::load(resources);
  session->m_workshop = std::make_unique<workshop::Workshop>(*session->m_book, session->m_library,
                                                             clock, &session->m_pictures);
  const auto shop = session->m_workshop->shop();
  if (!shop) return failAs(shop);
  const auto people = (*shop)->people();
  if (people.size() == 1) session->m_person = people.front()->fact.initials;
  return session;
}

QString ShopSession::bookPath() const {
  return QString::fromStdString(m_book->path());
}

void ShopSession::setPerson(const std::string& initials) {
  if (m_person == initials) return;
  m_person = initials;
  emit changed();
}

workshop::Command ShopSession::commandOf(workshop::Action action, const Where& where) const {
  workshop::Command command;
  if (!m_person.empty()) command.by = m_person;
  if (where.job) command.job = where.job->value;
  if (!where.step.empty()) command.step = where.step;
  command.side = where.side;
  command.round = where.round;
  command.doneAt = where.doneAt;
  command.action = std::move(action);
  return command;
}

Result<std::shared_ptr<const workshop::JobState>> ShopSession::job(model::JobId job) const {
  const Date today = localDate(m_workshop->clock().now());
  if (m_known && m_known->job == job && m_known->day == today) return m_known->state;
  auto state = m_workshop->job(job);
  if (!state) return failAs(state);
  m_known = Known{job, today, std::make_shared<const workshop::JobState>(std::move(*state))};
  return m_known->state;
}

Result<workshop::Rehearsal> ShopSession::rehearse(workshop::Action action,
                                                  const Where& where) const {
  return m_workshop->rehearse(commandOf(std::move(action), where));
}

Result<std::shared_ptr<const workshop::ShopLearning>> ShopSession::learning() const {
  if (m_learning) return m_learning;
  auto learning = workshop::shopLearning(*m_workshop);
  if (!learning) return failAs(learning);
  m_learning = std::make_shared<const workshop::ShopLearning>(std::move(*learning));
  return m_learning;
}

/// An earlier job of the same vehicle taught something, and it has not come back yet.
bool ShopSession::mayComeBack(const Where& where) const {
  if (!m_learning || !where.job) return false;
  const auto state = job(*where.job);
  if (!state) return false;
  return std::any_of(m_learning->jobs.begin(), m_learning->jobs.end(),
                     [&](const workshop::Taught& one) {
                       return !one.row.next && one.row.job != *where.job &&
                              one.row.vehicle == (*state)->vehicle.fact.vehicle;
                     });
}

Result<workshop::Outcome> ShopSession::perform(workshop::Action action, const Where& where) {
  if (teaches(action) || (saysItShakes(action) && mayComeBack(where))) m_learning.reset();
  auto outcome = m_workshop->perform(commandOf(std::move(action), where));
  if (!outcome) {
    emit refused(phrasing::sentence(outcome.error()),
                 QString::fromStdString(outcome.error().field));
    return outcome;
  }
  m_known.reset();
  if (outcome->job && !outcome->entries.empty()) {
    m_actions[outcome->job->value].push_back({outcome->entries.front(), outcome->entries.back()});
  }
  const QStringList sentences = sentencesOf(outcome->events);
  if (!sentences.isEmpty()) emit told(sentences.join(QLatin1Char('\n')));
  emit saved(timeOfDay(m_workshop->clock().now()));
  emit changed();
  return outcome;
}

std::optional<workshop::ActionEntries> ShopSession::lastActionOf(model::JobId job) const {
  const auto found = m_actions.find(job.value);
  if (found == m_actions.end() || found->second.empty()) return std::nullopt;
  return found->second.back();
}

model::Json ShopSession::benchInput(const workshop::JobState& job, std::string_view calculation,
                                    const workshop::BenchPlace& place) const {
  const auto shop = m_workshop->shop();
  if (!shop) return model::Json::object();
  auto input = workshop::benchInput(job, **shop, calculation, place);
  if (calculation != "shim-pack") return input;
  auto known = m_pulls.find(job.job.value);
  if (known == m_pulls.end()) {
    const auto pulls = workshop::closedPulls(*m_workshop, job);
    known = m_pulls.emplace(job.job.value, pulls ? pulls->dump() : "[]").first;
  }
  auto history = model::parseJson(known->second);
  if (history && !history->empty()) input["history"] = std::move(*history);
  return input;
}

QString ShopSession::undoText(model::JobId job) const {
  const auto state = this->job(job);
  if (!state || (*state)->closed) return {};
  const auto action = workshop::lastAction(**state, lastActionOf(job));
  if (action.empty()) return {};
  // Of a line of readings, the readings tell most; of other actions, their first fact.
  QStringList readings;
  for (const model::Entry* entry : action) {
    if (const auto* reading = model::as<model::Reading>(*entry)) {
      readings += QString::fromStdString(reading->value.text());
    }
  }
  const QString what = phrasing::factName(model::kindOf(
      readings.isEmpty() ? action.front()->payload : model::Payload(model::Reading{})));
  const QString how = readings.isEmpty() ? report::fieldsText(*action.front(), nullptr)
                                         : readings.join(QStringLiteral(", "));
  return what + QStringLiteral(": ") + how.left(kUndoLength);
}

void ShopSession::undo(model::JobId job) {
  workshop::Undo action;
  if (const auto last = lastActionOf(job)) {
    action.from = last->first.value;
    action.to = last->last.value;
  }
  if (!perform(action, {job, {}, {}, {}, {}})) return;
  // The undo is no action to be undone, and neither is what it took back.
  auto& actions = m_actions[job.value];
  actions.resize(actions.size() > 2 ? actions.size() - 2 : 0);
  emit changed();
}

void ShopSession::keepDraft(const QString& place, const QString& text) {
  if (viewOnly()) return;
  const std::string key = place.toStdString();
  // A draft is a convenience: where it cannot be kept, the entry itself still tells.
  (void)(text.isEmpty() ? m_book->dropDraft(key) : m_book->setDraft({key, text.toStdString()}));
}

QString ShopSession::draft(const QString& place) const {
  const auto drafts = m_book->drafts();
  if (!drafts) return {};
  for (const store::Draft& draft : *drafts) {
    if (draft.place == place.toStdString()) return QString::fromStdString(draft.text);
  }
  return {};
}

void ShopSession::keepPlace(model::JobId job, const std::string& step) {
  if (viewOnly()) return;
  if (lastStep(job) != step) (void)m_book->setCursor(job, step);
  if (lastJob() != job) (void)m_book->setSetting(kLastJob, std::to_string(job.value));
}

std::string ShopSession::lastStep(model::JobId job) const {
  const auto place = m_book->cursor(job);
  return place && *place ? **place : std::string{};
}

void ShopSession::keepLook(const std::string& words) {
  if (!viewOnly()) (void)m_book->setSetting(kLook, words);
}

std::string ShopSession::look() const {
  const auto words = m_book->setting(kLook);
  return words && *words ? **words : std::string{};
}

std::optional<model::JobId> ShopSession::lastJob() const {
  const auto text = m_book->setting(kLastJob);
  if (!text || !*text) return std::nullopt;
  bool isNumber = false;
  const qlonglong number = QString::fromStdString(**text).toLongLong(&isNumber);
  if (!isNumber) return std::nullopt;
  return model::JobId{number};
}

}  // namespace sw::ui
