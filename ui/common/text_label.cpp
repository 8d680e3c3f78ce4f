// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/common/text_label.h"

#include <QApplication>
#include <QEvent>

#include "ui/common/theme.h"

namespace sw::ui {

TextLabel::TextLabel(TextRole role, QWidget* parent) : TextLabel({}, role, parent) {}

TextLabel::TextLabel(const QString& text, TextRole role, QWidget* parent)
    : QLabel(text, parent), m_role(role) {
  setTextFormat(Qt::PlainText);
  setWordWrap(role != TextRole::Heading);
  dress();
}

void TextLabel::say(const QString& text) {
  setText(text);
  setVisible(!text.isEmpty());
}

void TextLabel::changeEvent(QEvent* event) {
  QLabel::changeEvent(event);
  const bool theme = event->type() == QEvent::StyleChange ||
                     event->type() == QEvent::ApplicationFontChange ||
                     event->type() == QEvent::PaletteChange;
  if (theme && !m_dressing) dress();
}

void TextLabel::dress() {
  m_dressing = true;
  const Theme theme = currentTheme();
  const Sizes sizes = sizesOf(theme.mode);
  QFont font = QApplication::font();
  font.setPixelSize(sizes.textPixels);
  if (m_role == TextRole::Heading) font.setPixelSize(sizes.headingPixels);
  if (m_role == TextRole::Title) {
    font.setPixelSize(theme.mode == Mode::Workshop ? sizes.valuePixels * 4 / 5
                                                   : sizes.headingPixels);
  }
  if (m_role == TextRole::Value) font.setPixelSize(sizes.valuePixels);
  font.setBold(m_role == TextRole::Strong || m_role == TextRole::Value ||
               m_role == TextRole::Title);
  setFont(font);
  if (m_role == TextRole::Quiet) {
    QPalette colours = palette();
    colours.setColor(QPalette::WindowText, quietColour(theme.look));
    setPalette(colours);
  }
  m_dressing = false;
}

}  // namespace sw::ui
