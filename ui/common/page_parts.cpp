// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/common/page_parts.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHeaderView>
#include <QLineEdit>
#include <QScrollArea>
#include <QTableWidget>
#include <QTimer>
#include <QWheelEvent>

#include "ui/common/theme.h"

namespace sw::ui {

namespace {

class CalmComboBox final : public QComboBox {
 public:
  using QComboBox::QComboBox;

 protected:
  void wheelEvent(QWheelEvent* event) override { event->ignore(); }
};

}  // namespace

QLineEdit* lineEdit(const char* name, const QString& accessible, const QString& placeholder,
                    QWidget* parent) {
  auto* edit = new QLineEdit(parent);
  edit->setObjectName(QString::fromLatin1(name));
  edit->setAccessibleName(accessible);
  edit->setPlaceholderText(placeholder);
  edit->setClearButtonEnabled(false);
  return edit;
}

QComboBox* comboBox(const char* name, const QString& accessible, QWidget* parent) {
  auto* box = new CalmComboBox(parent);
  box->setObjectName(QString::fromLatin1(name));
  box->setAccessibleName(accessible);
  box->setFocusPolicy(Qt::StrongFocus);  // nor does the wheel take the keyboard there
  return box;
}

QFormLayout* fieldForm() {
  auto* form = new QFormLayout;
  form->setRowWrapPolicy(QFormLayout::WrapLongRows);
  return form;
}

void addRow(QFormLayout* form, const QString& label, QWidget* field) {
  // Room for a figure and its unit in both modes; a longer label goes above it.
  field->setMinimumWidth(3 * sizesOf(Mode::Workshop).target);
  form->addRow(label, field);
  // The layout puts a label that does not grow near the top of a tall field.
  form->labelForField(field)->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Expanding);
}

QLineEdit* addLine(QFormLayout* form, const char* name, const QString& label,
                   const QString& placeholder, QWidget* parent) {
  QString spoken = label;
  auto* edit = lineEdit(name, spoken.remove(QLatin1Char('&')), placeholder, parent);
  addRow(form, label, edit);
  return edit;
}

std::optional<std::string> typed(const QLineEdit* edit) {
  const QString text = edit->text().trimmed();
  if (text.isEmpty()) return std::nullopt;
  return text.toStdString();
}

QScrollArea* scrolled(QWidget* inside, const char* name, QWidget* parent) {
  auto* scroll = new QScrollArea(parent);
  scroll->setObjectName(QString::fromLatin1(name));
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setWidgetResizable(true);
  scroll->setWidget(inside);
  return scroll;
}

void putCursor(QWidget* widget) {
  widget->setFocus(Qt::OtherFocusReason);
  for (QWidget* above = widget->parentWidget(); above != nullptr; above = above->parentWidget()) {
    auto* scroll = qobject_cast<QScrollArea*>(above);
    if (scroll == nullptr) continue;
    // A page that was only just shown has no places yet.
    QTimer::singleShot(0, widget, [scroll, widget] { scroll->ensureWidgetVisible(widget); });
  }
}

QTableWidget* rowTable(const char* name, const QString& accessible, const QStringList& heads,
                       QWidget* parent) {
  auto* table = new QTableWidget(0, static_cast<int>(heads.size()), parent);
  table->setObjectName(QString::fromLatin1(name));
  table->setAccessibleName(accessible);
  table->setHorizontalHeaderLabels(heads);
  table->setEditTriggers(QAbstractItemView::NoEditTriggers);
  table->setSelectionBehavior(QAbstractItemView::SelectRows);
  table->setSelectionMode(QAbstractItemView::SingleSelection);
  table->setTabKeyNavigation(false);
  table->setShowGrid(false);
  table->setWordWrap(true);
  table->setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
  table->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  table->verticalHeader()->hide();
  table->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
  table->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  table->horizontalHeader()->setHighlightSections(false);
  table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  return table;
}

void fillRow(QTableWidget* table, int row, const QStringList& texts) {
  for (int column = 0; column < static_cast<int>(texts.size()); ++column) {
    table->setItem(row, column, new QTableWidgetItem(texts.at(column)));
  }
}

}  // namespace sw::ui
