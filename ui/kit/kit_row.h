// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>

#include "workshop/kit.h"

class QPushButton;

namespace sw::ui {

class TextLabel;

/// One line of the kit: what it is, and whether it is there.
class KitRow : public QFrame {
  Q_OBJECT

 public:
  KitRow(const workshop::KitLine& line, workshop::KitTick tick, QWidget* parent);

  [[nodiscard]] const std::string& key() const { return m_key; }
  [[nodiscard]] bool stillNeeded() const { return m_stillNeeded; }
  [[nodiscard]] workshop::KitTick tick() const { return m_tick; }
  [[nodiscard]] QPushButton* have() const { return m_have; }
  [[nodiscard]] QPushButton* missing() const { return m_missing; }

 signals:
  void ticked(const QString& key, sw::workshop::KitTick tick);

 private:
  void press(workshop::KitTick tick);
  void show(workshop::KitTick tick);

  std::string m_key;
  bool m_stillNeeded;
  workshop::KitTick m_tick = workshop::KitTick::Open;
  QPushButton* m_have;
  QPushButton* m_missing;
  TextLabel* m_instead;
};

}  // namespace sw::ui
