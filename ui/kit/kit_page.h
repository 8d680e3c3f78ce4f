// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>
#include <vector>

#include "ui/common/page.h"
#include "workshop/kit.h"

class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace sw::ui {

class KitRow;
class TextLabel;

/// What to lay out before the work: every tool, part and consumable of the plan once, ticked as
/// there or missing; what is missing shows what does instead.
class KitPage : public Page {
  Q_OBJECT

 public:
  explicit KitPage(ShopSession& session, QWidget* parent = nullptr);
  void begin(const Goal& goal) override;

 private:
  void build();
  void layOut();
  void rebuild();
  void addRows(const std::vector<workshop::KitLine>& lines);
  void tick(const std::string& key, workshop::KitTick tick);
  void count();

  model::JobId m_job;
  std::map<std::string, workshop::KitTick> m_ticks;
  std::vector<KitRow*> m_rows;
  TextLabel* m_title;
  TextLabel* m_open;
  TextLabel* m_empty;
  QPushButton* m_plan;
  QScrollArea* m_scroll;
  QVBoxLayout* m_list;
  QPushButton* m_work;
};

}  // namespace sw::ui
