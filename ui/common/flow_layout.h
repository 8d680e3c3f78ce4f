// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLayout>
#include <QList>

namespace sw::ui {

/// Puts its items side by side and goes on to the next line where they do not fit: buttons whose
/// words are longer in another language.
class FlowLayout final : public QLayout {
  Q_OBJECT

 public:
  explicit FlowLayout(QWidget* parent = nullptr);
  ~FlowLayout() override;

  void addItem(QLayoutItem* item) override;
  [[nodiscard]] int count() const override;
  [[nodiscard]] QLayoutItem* itemAt(int index) const override;
  QLayoutItem* takeAt(int index) override;
  [[nodiscard]] Qt::Orientations expandingDirections() const override { return {}; }
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override;
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSize() const override;
  void setGeometry(const QRect& rect) override;

 private:
  /// The height the items take; `place` also moves them there.
  enum class Act { Measure, Place };
  int arrange(const QRect& outer, Act act) const;
  [[nodiscard]] QSize sizeWithin(const QLayoutItem& item, int width) const;
  [[nodiscard]] int gap() const;

  QList<QLayoutItem*> m_items;
};

}  // namespace sw::ui
