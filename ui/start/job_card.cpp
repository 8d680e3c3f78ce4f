// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/start/job_card.h"

#include <QLabel>
#include <QVBoxLayout>

#include "ui/common/theme.h"

namespace sw::ui {

namespace {

QLabel* line(const QString& text, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setTextFormat(Qt::PlainText);
  label->setWordWrap(true);
  label->setAttribute(Qt::WA_TransparentForMouseEvents);
  return label;
}

QString joined(const std::vector<std::string>& items) {
  QStringList list;
  for (const std::string& item : items) list += QString::fromStdString(item);
  return list.join(QStringLiteral(", "));
}

}  // namespace

JobCard::JobCard(const report::JobRow& job, QWidget* parent) : QPushButton(parent), m_job(job.job) {
  setObjectName(QStringLiteral("job_%1").arg(job.job.value));
  setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Minimum);
  auto* column = new QVBoxLayout(this);
  column->setSpacing(2);
  const QString plate = QString::fromStdString(job.registration);
  auto* head = line(tr("%1 – job %2").arg(plate).arg(job.job.value), this);
  QFont bold = head->font();
  bold.setBold(true);
  head->setFont(bold);
  column->addWidget(head);
  const QString step = QString::fromStdString(job.step);
  QStringList spoken{head->text()};
  const auto add = [&](const QString& text) {
    column->addWidget(line(text, this));
    spoken += text;
  };
  add(step.isEmpty() ? tr("No plan yet.") : tr("Goes on at %1").arg(step));
  if (!job.handTight.empty()) add(tr("Only hand-tight: %1").arg(joined(job.handTight)));
  if (!job.holdsToAsk.empty()) add(tr("Asked again today: %1").arg(joined(job.holdsToAsk)));
  setAccessibleName(spoken.join(QStringLiteral(". ")));
}

QSize JobCard::sizeHint() const {
  const int height = layout()->hasHeightForWidth() && width() > 0
                         ? layout()->totalHeightForWidth(width())
                         : layout()->sizeHint().height();
  return {layout()->sizeHint().width(), qMax(height, sizesOf(currentTheme().mode).target)};
}

QSize JobCard::minimumSizeHint() const {
  return {sizesOf(currentTheme().mode).target, sizeHint().height()};
}

void JobCard::resizeEvent(QResizeEvent* event) {
  QPushButton::resizeEvent(event);
  updateGeometry();
}

}  // namespace sw::ui
