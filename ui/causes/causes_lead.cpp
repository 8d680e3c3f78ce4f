// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/causes/causes_lead.h"

#include <QPushButton>
#include <QVBoxLayout>
#include <cmath>

#include "compute/diagnosis/cause_input.h"
#include "compute/diagnosis/causes_picture.h"
#include "phrasing/cause_words.h"
#include "ui/bench/figure_view.h"
#include "ui/common/flow_layout.h"
#include "ui/common/plain_text.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"

namespace sw::ui {

namespace {

constexpr std::size_t kLeading = 4;
constexpr int kPictureRows = 17;  // em

}  // namespace

CausesLead::CausesLead(QWidget* parent)
    : QWidget(parent),
      m_comeback(new TextLabel(TextRole::Strong, this)),
      m_lead(new TextLabel(TextRole::Strong, this)),
      m_picture(new FigureView(this)),
      m_why(new WordButton("causesWhy", tr("Why?"), this)),
      m_figures(new WordButton("causesFigures", tr("Chances as figures"), this)),
      m_whyText(new TextLabel(TextRole::Body, this)) {
  m_comeback->setObjectName(QStringLiteral("comeback"));
  m_comeback->hide();
  m_lead->setObjectName(QStringLiteral("causesLead"));
  m_picture->setMaximumHeight(kPictureRows * fontInfo().pixelSize());
  m_why->setCheckable(true);
  m_figures->setCheckable(true);
  m_whyText->setObjectName(QStringLiteral("causesBecause"));
  m_whyText->hide();
  auto* buttons = new FlowLayout;
  buttons->addWidget(m_why);
  buttons->addWidget(m_figures);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(m_comeback);
  column->addWidget(m_lead);
  column->addWidget(m_picture);
  column->addLayout(buttons);
  column->addWidget(m_whyText);
  connect(m_why, &QPushButton::toggled, this, &CausesLead::refresh);
  connect(m_figures, &QPushButton::toggled, this, &CausesLead::refresh);
}

void CausesLead::show(std::shared_ptr<const diagnosis::CauseFile> file,
                      std::shared_ptr<const workshop::ChecksAhead> ahead) {
  m_file = std::move(file);
  m_ahead = std::move(ahead);
  refresh();
}

void CausesLead::sayComeback(const QString& sentence) {
  m_comeback->say(sentence);
}

QString CausesLead::nameOf(std::size_t cause) const {
  return text(m_file->table.causes[cause].name);
}

/// What was put right before a drive without the shake; empty while it shakes.
QString CausesLead::curedText() const {
  QStringList names;
  for (const std::size_t cause : m_ahead->cured) names += nameOf(cause);
  return names.join(QStringLiteral(", "));
}

QString CausesLead::leadText() const {
  const auto& first = m_ahead->ranking.causes.front();
  if (!m_ahead->cured.empty()) {
    return tr("The last drive was without the shake. Put right before it: %1. If it comes back, "
              "tell it here and go on.")
        .arg(curedText());
  }
  QString lead = tr("Look first for %1: %2.")
                     .arg(nameOf(first.cause), phrasing::likelihoodWords(first.probability));
  if (m_ahead->pair) {
    lead += QLatin1Char(' ') +
            tr("Two faults together would explain it better: %1, and %2.")
                .arg(nameOf(m_ahead->pair->causes[0]), nameOf(m_ahead->pair->causes[1]));
  } else if (m_ahead->ranking.surprising) {
    lead += QLatin1Char(' ') +
            tr("These answers hardly go together: ask again, or two faults are there.");
  }
  return lead;
}

QString CausesLead::whyText(std::size_t place) const {
  const auto& cause = m_ahead->ranking.causes[place];
  QStringList lines;
  for (const auto& shift : cause.shifts) {
    const auto& evidence = m_ahead->known.evidence[shift.evidence];
    const QString speaks = phrasing::speaksWords(cause.probability, shift.without);
    if (speaks == phrasing::speaksWords(0.5, 0.5)) continue;  // hardly matters
    const QString known = text(compute::evidenceWords(*m_file, evidence));
    lines += m_figures->isChecked() ? tr("%1: %2 (%3 of 100 without it, %4 with it)")
                                          .arg(known, speaks, phrasing::ofHundred(shift.without),
                                               phrasing::ofHundred(cause.probability))
                                    : tr("%1: %2").arg(known, speaks);
  }
  if (lines.isEmpty()) {
    lines += tr("nothing told speaks for or against it; it is how often it is met");
  }
  return nameOf(cause.cause) + QStringLiteral("\n   ") + lines.join(QStringLiteral("\n   "));
}

void CausesLead::refresh() {
  if (!m_ahead) return;
  const auto& causes = m_ahead->ranking.causes;
  std::vector<compute::CauseBar> bars;
  QStringList why;
  for (std::size_t i = 0; i < causes.size(); ++i) {
    bars.push_back({m_file->table.causes[causes[i].cause].name, causes[i].probability});
    if (i < kLeading) why += whyText(i);
  }
  m_lead->say(leadText());
  const auto as =
      m_figures->isChecked() ? compute::ChanceAs::WordsAndFigure : compute::ChanceAs::Words;
  m_picture->show([bars, as](figure::Size size) { return compute::causesPicture(bars, size, as); });
  m_whyText->setText(why.join(QLatin1Char('\n')));
  m_whyText->setVisible(m_why->isChecked());
}

}  // namespace sw::ui
