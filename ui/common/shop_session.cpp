// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/common/shop_session.h"

#include <utility>

#include "phrasing/error_sentence.h"
#include "phrasing/event_sentence.h"

namespace sw::ui {

namespace {

/// "14:03:07", on the wall clock of the shop.
QString timeOfDay(const Timestamp& time) {
  return QString::fromStdString(toIso(time)).mid(11, 8);
}

}  // namespace

Result<std::unique_ptr<ShopSession>> ShopSession::open(const std::string& book,
                                                       store::OpenMode mode,
                                                       const std::string& resources,
                                                       const Clock& clock) {
  auto opened = store::Book::open(book, mode, clock);
  if (!opened) return failAs(opened);
  std::unique_ptr<ShopSession> session(new ShopSession);
  session->m_book = std::move(*opened);
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

Result<workshop::Outcome> ShopSession::perform(workshop::Action action, const Where& where) {
  workshop::Command command;
  if (!m_person.empty()) command.by = m_person;
  if (where.job) command.job = where.job->value;
  if (!where.step.empty()) command.step = where.step;
  command.side = where.side;
  command.action = std::move(action);
  auto outcome = m_workshop->perform(command);
  if (!outcome) {
    emit refused(phrasing::sentence(outcome.error()),
                 QString::fromStdString(outcome.error().field));
    return outcome;
  }
  for (const workshop::Event& event : outcome->events) {
    emit told(phrasing::eventSentence(event.key, event.values));
  }
  emit saved(timeOfDay(m_workshop->clock().now()));
  emit changed();
  return outcome;
}

}  // namespace sw::ui
