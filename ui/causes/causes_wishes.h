// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "workshop/checks_ahead.h"

class QComboBox;
class QPushButton;

namespace sw::ui {

/// How the shop works: its equipment, how the vehicle stands, when to stop looking.
class CausesWishes : public QWidget {
  Q_OBJECT

 public:
  explicit CausesWishes(const diagnosis::CauseFile& file, QWidget* parent = nullptr);
  void show(const workshop::CheckWishes& wishes, double usualStop);

 signals:
  void shopChosen(const QString& key);
  void setupChosen(const QString& key);
  void stopChosen(const QString& minutes);
  void takeBackWanted();

 private:
  QComboBox* m_shop;
  QComboBox* m_setup;
  QComboBox* m_stop;
  QPushButton* m_back;
};

}  // namespace sw::ui
