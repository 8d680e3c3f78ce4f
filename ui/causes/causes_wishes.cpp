// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/causes/causes_wishes.h"

#include <QComboBox>
#include <QFormLayout>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <array>

#include "phrasing/cause_words.h"
#include "ui/common/page_parts.h"
#include "ui/common/plain_text.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"

namespace sw::ui {

namespace {

/// What not finding it may cost, in hours: when to stop looking.
constexpr std::array kStops{1.0, 2.0, 4.0, 8.0, 16.0};

void choose(QComboBox* box, const QString& key) {
  box->setCurrentIndex(std::max(0, box->findData(key)));
}

}  // namespace

CausesWishes::CausesWishes(const diagnosis::CauseFile& file, QWidget* parent)
    : QWidget(parent),
      m_shop(comboBox("causesShop", tr("The shop"), this)),
      m_setup(comboBox("causesSetup", tr("The vehicle stands"), this)),
      m_stop(comboBox("causesStop", tr("Stop looking"), this)),
      m_back(new WordButton("takeAllBack", tr("Take the left-out checks in again"), this)) {
  for (const auto& preset : file.presets) m_shop->addItem(text(preset.name), text(preset.key));
  m_setup->addItem(tr("as the job says"), QString());
  for (const auto& setup : file.setups) m_setup->addItem(text(setup.name), text(setup.key));
  for (const double hours : kStops) {
    m_stop->addItem(
        tr("where handing it on instead costs about %1").arg(phrasing::workTime(hours * 60)),
        QString::number(hours * 60));
  }
  auto* form = fieldForm();
  addRow(form, tr("The &shop"), m_shop);
  addRow(form, tr("The &vehicle stands"), m_setup);
  addRow(form, tr("Stop &looking"), m_stop);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(new TextLabel(tr("How you work"), TextRole::Heading, this));
  column->addLayout(form);
  column->addWidget(m_back, 0, Qt::AlignLeft);
  connect(m_back, &QPushButton::clicked, this, &CausesWishes::takeBackWanted);
  connect(m_shop, &QComboBox::activated, this,
          [this] { emit shopChosen(m_shop->currentData().toString()); });
  connect(m_setup, &QComboBox::activated, this,
          [this] { emit setupChosen(m_setup->currentData().toString()); });
  connect(m_stop, &QComboBox::activated, this,
          [this] { emit stopChosen(m_stop->currentData().toString()); });
}

void CausesWishes::show(const workshop::CheckWishes& wishes, double usualStop) {
  choose(m_shop, text(wishes.preset));
  choose(m_setup, text(wishes.setup));
  const QString minutes = QString::number(wishes.givingUp.value_or(usualStop));
  if (m_stop->findData(minutes) < 0) {  // a number of the shop's own
    m_stop->addItem(tr("where handing it on instead costs about %1")
                        .arg(phrasing::workTime(minutes.toDouble())),
                    minutes);
  }
  choose(m_stop, minutes);
  m_back->setVisible(!wishes.leftOut.empty());
}

}  // namespace sw::ui
