// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/common/message_bar.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

namespace sw::ui {

MessageBar::MessageBar(QWidget* parent)
    : QFrame(parent),
      m_mark(new QLabel(this)),
      m_text(new QLabel(this)),
      m_offer(new QPushButton(this)) {
  setObjectName(QStringLiteral("messageBar"));
  setFrameShape(QFrame::StyledPanel);
  setAutoFillBackground(true);
  setBackgroundRole(QPalette::Base);
  m_mark->setTextFormat(Qt::PlainText);
  QFont bold = m_mark->font();
  bold.setBold(true);
  m_mark->setFont(bold);
  m_text->setObjectName(QStringLiteral("messageText"));
  m_text->setTextFormat(Qt::PlainText);
  m_text->setWordWrap(true);
  m_text->setTextInteractionFlags(Qt::TextSelectableByMouse);
  auto* close = new QPushButton(tr("Put away"), this);
  close->setObjectName(QStringLiteral("messageClose"));
  close->setAccessibleName(tr("Put the message away"));
  connect(close, &QPushButton::clicked, this, &MessageBar::clear);
  auto* row = new QHBoxLayout(this);
  row->addWidget(m_mark);
  row->addWidget(m_text, 1);
  row->addWidget(m_offer);
  row->addWidget(close);
  m_offer->setObjectName(QStringLiteral("messageOffer"));
  m_offer->hide();
  connect(m_offer, &QPushButton::clicked, this, &MessageBar::offerTaken);
  hide();
}

void MessageBar::say(const QString& sentence, Tone tone) {
  m_tone = tone;
  m_offer->hide();
  m_mark->setText(tone == Tone::Refusal ? tr("Not done:") : tr("Note:"));
  m_text->setText(sentence);
  setAccessibleName(m_mark->text() + QLatin1Char(' ') + sentence);
  show();
}

void MessageBar::offer(const QString& text) {
  m_offer->setText(text);
  m_offer->setAccessibleName(text);
  m_offer->show();
}

void MessageBar::clear() {
  m_text->clear();
  hide();
}

void MessageBar::dropAnswer() {
  if (m_tone != Tone::Note) clear();
}

QString MessageBar::text() const {
  return m_text->text();
}

}  // namespace sw::ui
