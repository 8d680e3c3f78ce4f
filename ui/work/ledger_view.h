// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractListModel>
#include <QWidget>

#include "ui/common/shop_session.h"
#include "ui/work/step_section.h"

class QPushButton;

namespace sw::ui {

class FlowLayout;
class ReasonRow;
class RowList;
class TextLabel;

/// Rows of the ledger: what is off, hand-tight or put on first, what is back again below.
class LedgerModel final : public QAbstractListModel {
  Q_OBJECT

 public:
  using QAbstractListModel::QAbstractListModel;
  void present(SharedJob job);
  [[nodiscard]] const workshop::LedgerView* itemAt(int row) const;
  [[nodiscard]] std::size_t openItems() const { return m_open; }

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

 private:
  SharedJob m_job;
  std::vector<std::size_t> m_order;
  std::size_t m_open = 0;
};

/// What came off and what was put on, always in sight. A chosen item can be moved on by hand; what
/// no step names is added with one line and, if wanted, a photo.
class LedgerPanel final : public QWidget {
  Q_OBJECT

 public:
  LedgerPanel(ShopSession& session, QWidget* parent);
  void present(SharedJob job, std::optional<std::size_t> step);

  /// Gives a picture file; an empty answer adds none.
  std::function<QString()> choosePicture;

 private:
  void layOut();
  void chosen();
  void moveItem(model::LedgerState state, const std::string& reason);
  void addItem();
  void addPhoto(const std::string& caption, const Where& where);
  [[nodiscard]] Where whereOfStep() const;
  [[nodiscard]] Where whereOfItem(const workshop::LedgerView& item) const;

  ShopSession& m_session;
  SharedJob m_job;
  std::optional<std::size_t> m_step;
  LedgerModel m_model;
  TextLabel* m_title;
  TextLabel* m_empty;
  RowList* m_list;
  QWidget* m_moves;
  FlowLayout* m_moveButtons;
  QPushButton* m_add;
  ReasonRow* m_reason;
};

}  // namespace sw::ui
