// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "measure/evaluation.h"
#include "units/unit.h"

namespace sw::ui {

/// Readings against their limit: a mark each, the mean with its uncertainty, the limit as a band
/// and, hatched beside its edges, the zone in which a value stays undecided.
class ReadingsPlot final : public QWidget {
  Q_OBJECT

 public:
  struct Content {
    std::vector<double> readings;  ///< used ones, SI
    double mean = 0;
    double expandedUncertainty = 0;
    double undecidedWithin = 0;
    LimitBand limit;
    Unit unit;
    Verdict verdict = Verdict::NoLimit;
  };

  explicit ReadingsPlot(QWidget* parent = nullptr);
  void present(Content content);
  void clear();
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  struct Axis;
  void drawZones(QPainter& painter, const Axis& axis) const;
  void drawReadings(QPainter& painter, const Axis& axis) const;
  void drawScale(QPainter& painter, const Axis& axis) const;

  Content m_content;
};

}  // namespace sw::ui
