// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QScrollArea>
#include <functional>
#include <vector>

#include "ui/work/step_section.h"
#include "workshop/step_status.h"

class QFrame;
class QPushButton;

namespace sw::ui {

class BenchSection;
class FlowLayout;
class ReasonRow;
class StepNotes;
class TextLabel;

/// The panel of the chosen step: what to do and mind, what comes first where it waits, the sections
/// of what the step asks for, and how it is marked. Pictures are dropped on it.
class StepPanel final : public QScrollArea {
  Q_OBJECT

 public:
  StepPanel(ShopSession& session, QWidget* parent);

  void present(const StepContext& context, const workshop::StepLine& line,
               std::optional<std::size_t> next);
  /// The keyboard goes to what is to be entered, or to what comes next.
  void takeKeyboard();
  /// To the next step, once this one is done. It stands below the panel, in sight whatever the
  /// panel is scrolled to.
  [[nodiscard]] QPushButton* goOnButton() const;

  /// Gives a picture file; an empty answer adds none.
  std::function<QString()> choosePicture;

 signals:
  void goWanted(const sw::ui::Goal& goal);
  void stepWanted(std::size_t step);

 protected:
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  void build();
  void layOut(QWidget* inside);
  void wire();
  void bringTo(QWidget& field);
  void showHead();
  void foldText();
  void showLock(const workshop::StepLine& line);
  void showFoot(const workshop::StepLine& line);
  void mark(model::StepAction action);
  void goAgainst();
  bool addPhoto(const QString& file);
  [[nodiscard]] Where here() const;
  [[nodiscard]] bool plain() const;

  ShopSession& m_session;
  StepContext m_context;
  std::optional<std::size_t> m_next;
  bool m_open = false;  ///< can be worked on now

  TextLabel* m_title;
  TextLabel* m_place;
  TextLabel* m_caution;
  QPushButton* m_how;  ///< with gloves the words wait behind it: step and limit come first
  TextLabel* m_text;
  TextLabel* m_alone;
  QFrame* m_lock;
  TextLabel* m_lockText;
  FlowLayout* m_lockWays;
  QPushButton* m_allBefore;
  QPushButton* m_against;
  std::vector<StepSection*> m_sections;
  BenchSection* m_bench;
  StepNotes* m_notes;
  QPushButton* m_goOn;
  QPushButton* m_done;
  QPushButton* m_before;
  QPushButton* m_notApplicable;
  QPushButton* m_reopen;
  QPushButton* m_note;
  QPushButton* m_photo;
  ReasonRow* m_reason;
};

}  // namespace sw::ui
