// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/causes/check_plan_view.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "phrasing/cause_words.h"
#include "ui/common/clear_layout.h"
#include "ui/common/plain_text.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"

namespace sw::ui {

CheckPlanView::CheckPlanView(const procedures::Library& library, QWidget* parent)
    : QWidget(parent),
      m_library(library),
      m_words(new TextLabel(TextRole::Strong, this)),
      m_rows(new QVBoxLayout),
      m_made(new QVBoxLayout) {
  m_words->setObjectName(QStringLiteral("planWords"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(m_words);
  column->addLayout(m_rows);
  column->addLayout(m_made);
}

void CheckPlanView::show(std::shared_ptr<const diagnosis::CauseFile> file,
                         std::shared_ptr<const workshop::ChecksAhead> ahead) {
  m_file = std::move(file);
  m_ahead = std::move(ahead);
  clearLayout(*m_rows);
  m_words->say(planWords());
  showFound();
  if (m_ahead->cured.empty()) {
    for (std::size_t i = 0; i < m_ahead->plan.steps.size(); ++i) addCheck(i);
  }
  showMade();
}

QString CheckPlanView::planWords() const {
  if (!m_ahead->cured.empty()) return tr("Nothing to look for while it does not shake.");
  if (!m_ahead->plan.steps.empty()) {
    return tr("In this order, until it is found or given up: about %1 on average.")
        .arg(phrasing::workTime(m_ahead->plan.minutes));
  }
  const auto again = m_ahead->lookAgain;
  return again
             ? tr("No check left is worth its time. Worth a second look before handing it on: %1.")
                   .arg(text(m_file->checks[*again].name))
             : tr("No check left is worth its time: look again where the signs point, or hand it "
                  "on.");
}

/// What a check found is put right before the search goes on.
void CheckPlanView::showFound() {
  for (const auto& made : m_ahead->known.made) {
    if (!made.waitsFor.empty()) continue;
    for (const std::size_t cause : made.found) {
      if (!m_ahead->known.isPutRight(cause)) addFound(cause);
    }
  }
}

/// A cause that was found, and the plan that puts it right.
void CheckPlanView::addFound(std::size_t cause) {
  const auto& one = m_file->table.causes[cause];
  m_rows->addWidget(
      new TextLabel(tr("Found: %1. Put it right, drive, and ask again.").arg(text(one.name)),
                    TextRole::Strong, this));
  const auto repair = std::find_if(m_file->repairs.begin(), m_file->repairs.end(),
                                   [&](const auto& each) { return each.cause == cause; });
  const auto* plan = repair == m_file->repairs.end() ? nullptr : m_library.plan(repair->plan);
  if (plan == nullptr) return;
  auto* start = new WordButton("repair", tr("Add to the job: %1").arg(text(plan->title)), this);
  start->setObjectName(QStringLiteral("repair_") + text(one.key));
  connect(start, &QPushButton::clicked, this, [this, id = text(plan->id)] { emit planWanted(id); });
  m_rows->addWidget(start, 0, Qt::AlignLeft);
}

QString CheckPlanView::checkWords(std::size_t place) const {
  const auto& step = m_ahead->plan.steps[place];
  QString words = tr("%1. %2 – %3")
                      .arg(place + 1)
                      .arg(text(m_file->checks[step.check].name),
                           phrasing::workTime(m_ahead->problem.checks[step.check].minutes));
  if (step.moveMinutes > 0) {
    words += tr(", after %1 of set-up (%2)")
                 .arg(phrasing::workTime(step.moveMinutes), text(m_file->setups[step.setup].name));
  }
  const auto& others = m_ahead->plan.beginnings;
  const auto other = std::find_if(others.begin(), others.end(),
                                  [&](const auto& one) { return one.check == step.check; });
  if (place > 0 && other != others.end()) {
    const double more = other->minutes - m_ahead->plan.minutes;
    if (more >= 1) words += tr("; taken first, %1 more on average").arg(phrasing::workTime(more));
  }
  return words;
}

/// One line of the plan with its two buttons beside it.
void CheckPlanView::addCheck(std::size_t place) {
  const std::size_t at = m_ahead->plan.steps[place].check;
  const auto& check = m_file->checks[at];
  auto* line = new QWidget(this);  // goes with all that is in it
  auto* row = new QHBoxLayout(line);
  row->setContentsMargins(0, 0, 0, 0);
  row->addWidget(
      new TextLabel(checkWords(place), place == 0 ? TextRole::Strong : TextRole::Body, line), 1);
  auto* now = new WordButton("make", tr("Do this check"), line);
  now->setObjectName(QStringLiteral("make_") + text(check.key));
  now->setAccessibleName(tr("Do this check: %1").arg(text(check.name)));
  connect(now, &QPushButton::clicked, this, [this, at] { emit makeWanted(at); });
  row->addWidget(now);
  auto* out = new WordButton("out", tr("Leave it out"), line);
  out->setObjectName(QStringLiteral("out_") + text(check.key));
  out->setAccessibleName(tr("Leave it out: %1").arg(text(check.name)));
  out->setEnabled(!check.first);  // what keeps a driver safe is not left out
  if (check.first) out->setToolTip(tr("This one keeps the driver safe: it is not left out."));
  connect(out, &QPushButton::clicked, this, [this, at] { emit leaveOutWanted(at); });
  row->addWidget(out);
  m_rows->addWidget(line);
}

QString CheckPlanView::madeWords(const workshop::MadeCheck& made) const {
  if (made.clear) return tr("nothing found");
  if (made.found.empty()) return tr("could not be told");
  QStringList names;
  for (const std::size_t cause : made.found) names += text(m_file->table.causes[cause].name);
  QString words = tr("found: %1").arg(names.join(QStringLiteral(", ")));
  if (!made.waitsFor.empty()) words += tr("; proves nothing before play was looked for");
  return words;
}

void CheckPlanView::showMade() {
  clearLayout(*m_made);
  for (const auto& made : m_ahead->known.made) {
    m_made->addWidget(new TextLabel(
        tr("Made: %1 – %2").arg(text(m_file->checks[made.check].name), madeWords(made)),
        TextRole::Body, this));
  }
  for (const auto& right : m_ahead->known.putRight) {
    const QString name = text(m_file->table.causes[right.cause].name);
    const auto& cured = m_ahead->cured;
    const bool proven = std::find(cured.begin(), cured.end(), right.cause) != cured.end();
    m_made->addWidget(new TextLabel(
        proven
            ? tr("Put right: %1").arg(name)
            : tr("Put right: %1. Drive before you look on; what the drive shows is recorded with "
                 "its step.")
                  .arg(name),
        TextRole::Body, this));
  }
}

}  // namespace sw::ui
