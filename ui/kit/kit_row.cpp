// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/kit_row.h"

#include <QPushButton>
#include <QVBoxLayout>

#include "ui/common/flow_layout.h"
#include "ui/common/text_label.h"

namespace sw::ui {

using workshop::KitLine;
using workshop::KitTick;

namespace {

QString needOf(const KitLine& line) {
  QStringList parts;
  if (!line.amount.empty()) parts += QString::fromStdString(line.amount);
  if (line.singleUse) parts += KitRow::tr("new, not used again");
  if (line.optional) parts += KitRow::tr("if wanted");
  if (!line.stillNeeded) parts += KitRow::tr("done with");
  return parts.join(QStringLiteral("; "));
}

QString insteadOf(const KitLine& line) {
  if (line.instead.empty()) return KitRow::tr("Nothing does instead: get it before the step.");
  QStringList names;
  for (const std::string& name : line.instead) names += QString::fromStdString(name);
  return KitRow::tr("Does instead: %1").arg(names.join(QStringLiteral("; ")));
}

QPushButton* tickButton(const QString& text, const QString& name, const QString& what,
                        QWidget* parent) {
  auto* button = new QPushButton(text, parent);
  button->setObjectName(name);
  button->setAccessibleName(what + QStringLiteral(": ") + text);
  button->setCheckable(true);
  button->setAutoDefault(false);
  return button;
}

}  // namespace

KitRow::KitRow(const KitLine& line, KitTick tick, QWidget* parent)
    : QFrame(parent), m_key(line.key), m_stillNeeded(line.stillNeeded) {
  const QString name = QString::fromStdString(line.name);
  const QString key = QString::fromStdString(line.key);
  auto* words = new QVBoxLayout;
  words->setSpacing(2);
  words->addWidget(new TextLabel(name, TextRole::Strong, this));
  auto* need = new TextLabel(TextRole::Quiet, this);
  need->say(needOf(line));
  words->addWidget(need);
  m_have = tickButton(tr("have"), QStringLiteral("have:") + key, name, this);
  m_missing = tickButton(tr("missing"), QStringLiteral("missing:") + key, name, this);
  m_instead = new TextLabel(insteadOf(line), TextRole::Body, this);
  m_instead->setObjectName(QStringLiteral("instead:") + key);
  words->addWidget(m_instead);

  auto* ticks = new FlowLayout;
  ticks->addWidget(m_have);
  ticks->addWidget(m_missing);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->addLayout(words, 3);
  row->addLayout(ticks, 2);
  connect(m_have, &QPushButton::clicked, this, [this] { press(KitTick::Have); });
  connect(m_missing, &QPushButton::clicked, this, [this] { press(KitTick::Missing); });
  show(tick);
}

void KitRow::press(KitTick tick) {
  // Pressed again: not ticked after all.
  show(m_tick == tick ? KitTick::Open : tick);
  emit ticked(QString::fromStdString(m_key), m_tick);
}

void KitRow::show(KitTick tick) {
  m_tick = tick;
  m_have->setChecked(tick == KitTick::Have);
  m_missing->setChecked(tick == KitTick::Missing);
  m_instead->setVisible(tick == KitTick::Missing);
}

}  // namespace sw::ui
