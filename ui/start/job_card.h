// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPushButton>

#include "report/lists.h"

class QLabel;

namespace sw::ui {

/// An open job on the start page, pressed to go on: plate, where it goes on, what was hand-tight.
class JobCard : public QPushButton {
  Q_OBJECT

 public:
  explicit JobCard(const report::JobRow& job, QWidget* parent = nullptr);

  [[nodiscard]] model::JobId job() const { return m_job; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;
  [[nodiscard]] bool hasHeightForWidth() const override { return false; }

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  model::JobId m_job;
};

}  // namespace sw::ui
