// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/common/word_button.h"

#include <QStyleOptionButton>
#include <QStylePainter>

#include "ui/common/theme.h"

namespace sw::ui {

namespace {

constexpr int kWraps = Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap | Qt::TextShowMnemonic;
constexpr int kAny = 10'000;

}  // namespace

WordButton::WordButton(const QString& text, QWidget* parent) : QPushButton(text, parent) {
  QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum, QSizePolicy::PushButton);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
}

WordButton::WordButton(const char* name, const QString& text, QWidget* parent)
    : WordButton(text, parent) {
  setObjectName(QString::fromLatin1(name));
}

int WordButton::airBeside() const {
  return sizesOf(currentTheme().mode).textPixels * 3 / 4;
}

int WordButton::heightForWidth(int width) const {
  const int inside = qMax(1, width - 2 * airBeside());
  const int words = fontMetrics().boundingRect(0, 0, inside, kAny, kWraps, text()).height();
  return qMax(sizeHint().height(), words + airBeside());
}

QSize WordButton::sizeHint() const {
  const int words = fontMetrics().size(Qt::TextShowMnemonic, text()).width();
  const QSize usual = QPushButton::sizeHint();
  return {qMax(words + 2 * airBeside() + 2, sizesOf(currentTheme().mode).target), usual.height()};
}

QSize WordButton::minimumSizeHint() const {
  const Sizes sizes = sizesOf(currentTheme().mode);
  return {qMin(sizeHint().width(), 5 * sizes.target), sizes.target};
}

void WordButton::paintEvent(QPaintEvent*) {
  QStylePainter painter(this);
  QStyleOptionButton option;
  initStyleOption(&option);
  option.text.clear();
  painter.drawControl(QStyle::CE_PushButton, option);
  const bool chosen = option.state.testFlag(QStyle::State_On);
  const QRect inside = rect().adjusted(airBeside(), 0, -airBeside(), 0);
  painter.drawItemText(inside, kWraps, option.palette, isEnabled(), text(),
                       chosen ? QPalette::HighlightedText : QPalette::ButtonText);
}

}  // namespace sw::ui
