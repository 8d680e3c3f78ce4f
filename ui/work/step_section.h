// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <memory>

#include "ui/common/goal.h"
#include "ui/common/shop_session.h"

class QLineEdit;

namespace sw::ui {

using SharedJob = std::shared_ptr<const workshop::JobState>;

/// The chosen step with all that its panel shows.
struct StepContext {
  SharedJob job;
  std::size_t step = 0;
  const workshop::ShopState* shop = nullptr;
  QString lockedWhy;  ///< empty = entries are taken

  [[nodiscard]] const workshop::StepView& view() const { return job->steps[step]; }
  [[nodiscard]] const procedures::Step& definition() const { return *view().step; }
  [[nodiscard]] bool locked() const { return !lockedWhy.isEmpty(); }
};

/// One part of the panel of a step: what it asks for, as far as the step has it.
class StepSection : public QWidget {
  Q_OBJECT

 public:
  StepSection(ShopSession& session, const char* name, QWidget* parent);

  /// Whether the step has anything for this section.
  [[nodiscard]] virtual bool suits(const StepContext& context) const = 0;
  /// Shows the step as it stands. What was typed stays while the step stays the same.
  void present(const StepContext& context);
  /// The field the keyboard goes to; null where there is none.
  [[nodiscard]] virtual QWidget* firstField() = 0;
  /// Whether the step has what this section asks for, so that the keyboard passes it by.
  [[nodiscard]] virtual bool satisfied() const { return false; }

 signals:
  void goWanted(const sw::ui::Goal& goal);
  /// Something was recorded: the keyboard may go to what comes next.
  void recorded();
  /// The job as it would stand with what is typed here; the job as it is, where nothing is or what
  /// is typed would not be taken.
  void supposed(const sw::ui::SharedJob& job);

 protected:
  [[nodiscard]] ShopSession& session() const { return m_session; }
  [[nodiscard]] const StepContext& context() const { return m_context; }
  /// Sends a command about this very step; true when it was taken.
  bool send(workshop::Action action);
  /// Why an entry would not be taken, in the words of the window.
  [[nodiscard]] static QString whyNot(const Error& error);
  /// Whether a refusal of this key still stands against the step's being done.
  [[nodiscard]] bool lacks(std::string_view key) const;
  [[nodiscard]] Result<workshop::Rehearsal> rehearse(workshop::Action action) const;

  /// Fills the section; `fresh` says that another step was shown before.
  enum class Showing { SameStep, OtherStep };
  virtual void fill(Showing showing) = 0;

  /// A field of this section whose unaccepted text is kept in the book; it is locked with the
  /// reason written on it while the step waits.
  void guard(QLineEdit* field, const QString& placeholder);
  /// Another example on a guarded field, as the step wants it.
  void setExample(QLineEdit* field, const QString& placeholder);
  /// What was chosen for the entry being typed, kept with its text.
  void keepChoice(const QString& what, const QString& choice);
  [[nodiscard]] QString keptChoice(const QString& what) const;

 private:
  struct Guarded {
    QLineEdit* field;
    QString placeholder;
  };
  [[nodiscard]] QString draftPlace(const QString& what) const;
  void lockFields();

  ShopSession& m_session;
  StepContext m_context;
  std::vector<Guarded> m_guarded;
};

/// "Right: pull, about 15 degrees to the left": the side first, so that it is not mistaken for a
/// word of the title.
[[nodiscard]] QString stepTitle(const workshop::StepView& step);
/// What is in the field, without blanks at the ends; empty optional where nothing is.
[[nodiscard]] std::optional<std::string> typedIn(const QLineEdit& field);
/// A field with its names.
[[nodiscard]] QLineEdit* namedField(const char* name, const QString& accessible, QWidget* parent);

}  // namespace sw::ui
