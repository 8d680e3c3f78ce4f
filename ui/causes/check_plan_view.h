// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <memory>

#include "procedures/library.h"
#include "workshop/checks_ahead.h"

class QVBoxLayout;

namespace sw::ui {

class TextLabel;

/// What was found and is to be put right, the checks ahead in their order, and those that were
/// made.
class CheckPlanView : public QWidget {
  Q_OBJECT

 public:
  explicit CheckPlanView(const procedures::Library& library, QWidget* parent = nullptr);
  void show(std::shared_ptr<const diagnosis::CauseFile> file,
            std::shared_ptr<const workshop::ChecksAhead> ahead);

 signals:
  void makeWanted(std::size_t check);
  void leaveOutWanted(std::size_t check);
  void planWanted(const QString& plan);

 private:
  void showFound();
  void addFound(std::size_t cause);
  void addCheck(std::size_t place);
  void showMade();
  [[nodiscard]] QString planWords() const;
  [[nodiscard]] QString checkWords(std::size_t place) const;
  [[nodiscard]] QString madeWords(const workshop::MadeCheck& made) const;

  const procedures::Library& m_library;
  std::shared_ptr<const diagnosis::CauseFile> m_file;
  std::shared_ptr<const workshop::ChecksAhead> m_ahead;
  TextLabel* m_words;
  QVBoxLayout* m_rows;
  QVBoxLayout* m_made;
};

}  // namespace sw::ui
