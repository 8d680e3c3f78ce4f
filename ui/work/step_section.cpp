// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/step_section.h"

#include <QLineEdit>
#include <QTimer>

#include <algorithm>
#include "phrasing/names.h"

#include "phrasing/error_sentence.h"
#include "workshop/rules.h"

namespace sw::ui {

namespace {

constexpr int kDraftDelay = 400;  // ms after the last key

}  // namespace

StepSection::StepSection(ShopSession& session, const char* name, QWidget* parent)
    : QWidget(parent), m_session(session) {
  setObjectName(QString::fromLatin1(name));
}

void StepSection::present(const StepContext& context) {
  const auto placeOf = [](const StepContext& one) {
    return one.job ? one.job->stepName(one.step) +
                         std::to_string(one.job->runs[one.view().run].id.value) + "/" +
                         std::to_string(one.job->job.value)
                   : std::string();
  };
  const bool same = placeOf(m_context) == placeOf(context);
  m_context = context;
  if (!same) {
    for (const Guarded& guarded : m_guarded) {
      const QSignalBlocker quiet(guarded.field);
      guarded.field->setText(session().draft(draftPlace(guarded.field->objectName())));
    }
  }
  lockFields();
  fill(same ? Showing::SameStep : Showing::OtherStep);
}

bool StepSection::send(workshop::Action action) {
  const auto where = whereOf(*m_context.job, m_context.step);
  if (!session().perform(std::move(action), where)) return false;
  emit recorded();
  return true;
}

Result<workshop::Rehearsal> StepSection::rehearse(workshop::Action action) const {
  return session().rehearse(std::move(action), whereOf(*m_context.job, m_context.step));
}

void StepSection::guard(QLineEdit* field, const QString& placeholder) {
  m_guarded.push_back({field, placeholder});
  auto* wait = new QTimer(field);
  wait->setSingleShot(true);
  wait->setInterval(kDraftDelay);
  connect(field, &QLineEdit::textEdited, wait, qOverload<>(&QTimer::start));
  connect(wait, &QTimer::timeout, this, [this, field] {
    if (m_context.job) session().keepDraft(draftPlace(field->objectName()), field->text());
  });
  // What was accepted or taken away is no draft any more.
  connect(field, &QLineEdit::textChanged, this, [this, field, wait](const QString& text) {
    if (!text.isEmpty() || !m_context.job) return;
    wait->stop();
    session().keepDraft(draftPlace(field->objectName()), {});
  });
}

void StepSection::setExample(QLineEdit* field, const QString& placeholder) {
  for (Guarded& guarded : m_guarded) {
    if (guarded.field == field) guarded.placeholder = placeholder;
  }
  lockFields();
}

QString StepSection::whyNot(const Error& error) {
  return error.field == "by" ? tr("Choose at the top who is at work.") : phrasing::sentence(error);
}

bool StepSection::lacks(std::string_view key) const {
  const auto refusals = workshop::lacking(*m_context.job, m_context.step);
  return std::any_of(refusals.begin(), refusals.end(),
                     [key](const workshop::Refusal& refusal) { return refusal.key == key; });
}

void StepSection::keepChoice(const QString& what, const QString& choice) {
  if (m_context.job) session().keepDraft(draftPlace(what), choice);
}

QString StepSection::keptChoice(const QString& what) const {
  return session().draft(draftPlace(what));
}

QString StepSection::draftPlace(const QString& what) const {
  const workshop::StepView& view = m_context.view();
  return QStringLiteral("job/%1/run/%2/step/%3/%4/%5")
      .arg(m_context.job->job.value)
      .arg(m_context.job->runs[view.run].id.value)
      .arg(QString::fromStdString(view.step->id),
           view.side ? QString::fromLatin1(wordOf(*view.side)) : QStringLiteral("once"), what);
}

void StepSection::lockFields() {
  for (const Guarded& guarded : m_guarded) {
    guarded.field->setEnabled(!m_context.locked());
    guarded.field->setPlaceholderText(m_context.locked() ? m_context.lockedWhy
                                                         : guarded.placeholder);
  }
}

QString stepTitle(const workshop::StepView& step) {
  const QString title = QString::fromStdString(step.step->title);
  if (!step.side) return title;
  QString side = phrasing::sideName(*step.side, {});
  side[0] = side.at(0).toUpper();
  QString rest = title;
  // A title begins a sentence; behind the side it goes on, unless it is an abbreviation.
  if (rest.size() > 1 && rest.at(1).isLower()) rest[0] = rest.at(0).toLower();
  return StepSection::tr("%1: %2").arg(side, rest);
}

std::optional<std::string> typedIn(const QLineEdit& field) {
  const QString text = field.text().trimmed();
  if (text.isEmpty()) return std::nullopt;
  return text.toStdString();
}

QLineEdit* namedField(const char* name, const QString& accessible, QWidget* parent) {
  auto* field = new QLineEdit(parent);
  field->setObjectName(QString::fromLatin1(name));
  field->setAccessibleName(accessible);
  return field;
}

}  // namespace sw::ui
