// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/quick/card_row_view.h"

#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <QWheelEvent>

#include "ui/common/flow_layout.h"
#include "ui/common/text_label.h"

namespace sw::ui {

namespace {

constexpr int kDown = 1;  // what a tick that is down is kept as

/// Does not change under the wheel of a mouse that scrolls the page.
class SteadyCombo final : public QComboBox {
 public:
  using QComboBox::QComboBox;

 protected:
  void wheelEvent(QWheelEvent* event) override { event->ignore(); }
};

/// As wide as its hint.
class HintEdit final : public QLineEdit {
 public:
  using QLineEdit::QLineEdit;
  [[nodiscard]] QSize sizeHint() const override {
    const QSize hint = QLineEdit::sizeHint();
    const int words = fontMetrics().horizontalAdvance(placeholderText() + QStringLiteral("    "));
    return {qMax(hint.width(), words), hint.height()};
  }
};

/// Long answers stand below their question, short fields beside the step.
bool standsBelow(CardKind kind) {
  return kind == CardKind::Answer || kind == CardKind::Statement || kind == CardKind::RoadTest;
}

}  // namespace

CardRowView::CardRowView(const CardRow& row, const RowValues& values, Head head, QWidget* parent)
    : QFrame(parent), m_key(row.key), m_title(row.title) {
  setObjectName(QString::fromStdString("row:" + row.key));
  auto* words = new QVBoxLayout;
  words->setSpacing(2);
  if (head == Head::WithTitle) {
    words->addWidget(new TextLabel(row.title, TextRole::Strong, this));
  }
  if (!row.detail.isEmpty()) {
    const bool asks = standsBelow(row.kind);
    words->addWidget(new TextLabel(row.detail, asks ? TextRole::Body : TextRole::Quiet, this));
  }
  auto* fields = new FlowLayout;
  for (const CardField& field : row.fields) fields->addWidget(make(field, values));
  m_problem = new TextLabel(TextRole::Strong, this);
  m_problem->setObjectName(QString::fromStdString("problem:" + row.key));
  m_problem->hide();

  auto* both =
      new QBoxLayout(standsBelow(row.kind) ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
  both->addLayout(words, 2);
  both->addLayout(fields, 3);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addLayout(both);
  column->addWidget(m_problem);
}

void CardRowView::mark(const QString& sentence) {
  m_problem->say(sentence);
}

QWidget* CardRowView::make(const CardField& field, const RowValues& values) {
  const auto found = values.find(field.name);
  const QString value =
      QString::fromStdString(found != values.end() ? found->second : field.preset);
  QWidget* made = field.look == FieldLook::Text     ? makeText(field, value)
                  : field.look == FieldLook::Choice ? makeChoice(field, value)
                                                    : makeTick(field, value);
  made->setObjectName(QString::fromStdString(m_key + "/" + field.name));
  made->setAccessibleName(m_title + QStringLiteral(": ") + field.label);
  if (m_first == nullptr) m_first = made;
  m_last = made;
  return made;
}

QWidget* CardRowView::makeText(const CardField& field, const QString& value) {
  auto* edit = new HintEdit(value, this);
  edit->setPlaceholderText(field.hint);
  connect(edit, &QLineEdit::textEdited, this,
          [this, name = QString::fromStdString(field.name)](const QString& text) {
            emit edited(name, text.trimmed());
          });
  // The number pad alone goes from value to value.
  connect(edit, &QLineEdit::returnPressed, this, [this] { focusNextChild(); });
  return edit;
}

QWidget* CardRowView::makeChoice(const CardField& field, const QString& value) {
  auto* combo = new SteadyCombo(this);
  combo->setFocusPolicy(Qt::StrongFocus);
  combo->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  combo->addItem(field.choices.empty() ? tr("none on file") : tr("not chosen"), QString());
  for (const auto& [word, text] : field.choices) {
    combo->addItem(text, QString::fromStdString(word));
  }
  combo->setCurrentIndex(qMax(0, combo->findData(value)));
  connect(combo, &QComboBox::currentIndexChanged, this,
          [this, combo, name = QString::fromStdString(field.name)] {
            emit edited(name, combo->currentData().toString());
          });
  return combo;
}

QWidget* CardRowView::makeTick(const CardField& field, const QString& value) {
  auto* button = new QPushButton(field.label, this);
  button->setCheckable(true);
  button->setAutoDefault(false);
  button->setChecked(!value.isEmpty());
  m_ticks.push_back(button);
  connect(button, &QPushButton::toggled, this,
          [this, button, name = QString::fromStdString(field.name)](bool down) {
            emit edited(name, down ? QString::number(kDown) : QString());
            if (!down) return;
            for (QPushButton* other : m_ticks) {
              if (other != button) other->setChecked(false);
            }
          });
  return button;
}

}  // namespace sw::ui
