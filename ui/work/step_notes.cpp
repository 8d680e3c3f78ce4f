// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/step_notes.h"

#include <QLabel>
#include <QPixmap>
#include <QVBoxLayout>

#include "ui/common/clear_layout.h"
#include "ui/common/flow_layout.h"
#include "ui/common/text_label.h"

namespace sw::ui {

StepNotes::StepNotes(ShopSession& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_notes(new TextLabel(TextRole::Quiet, this)),
      m_photos(new FlowLayout) {
  setObjectName(QStringLiteral("stepNotes"));
  m_notes->setObjectName(QStringLiteral("stepNotesText"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(m_notes);
  column->addLayout(m_photos);
}

void StepNotes::present(const StepContext& context) {
  clearLayout(*m_photos);
  QStringList notes;
  bool any = false;
  for (const model::Entry* entry : context.job->valid) {
    if (!context.job->belongsTo(*entry, context.step)) continue;
    if (const auto* note = model::as<model::Note>(*entry)) {
      notes += tr("Note: %1").arg(QString::fromStdString(note->text));
    }
    if (const auto* mark = model::as<model::StepMark>(*entry); mark && !mark->text.empty()) {
      notes += tr("Marked: %1").arg(QString::fromStdString(mark->text));
    }
    if (const auto* rule = model::as<model::Override>(*entry)) {
      notes += tr("Against the rule: %1").arg(QString::fromStdString(rule->why));
    }
    if (const auto* photo = model::as<model::Photo>(*entry)) {
      addPhoto(*photo);
      any = true;
    }
  }
  m_notes->say(notes.join(QLatin1Char('\n')));
  setVisible(any || !notes.isEmpty());
}

void StepNotes::addPhoto(const model::Photo& photo) {
  const auto picture = m_session.workshop().book().picture(photo.hash);
  auto* label = new QLabel(this);
  const QString name =
      QString::fromStdString(photo.caption.empty() ? photo.fileName : photo.caption);
  label->setAccessibleName(tr("Photo: %1").arg(name));
  label->setToolTip(name);
  QPixmap pixels;
  if (picture) {
    pixels.loadFromData(QByteArray::fromStdString(picture->thumbnail));
  }
  if (pixels.isNull()) {
    label->setText(tr("Photo: %1").arg(name));
  } else {
    label->setPixmap(pixels.scaled(160, 120, Qt::KeepAspectRatio, Qt::SmoothTransformation));
  }
  m_photos->addWidget(label);
  label->show();
}

}  // namespace sw::ui
