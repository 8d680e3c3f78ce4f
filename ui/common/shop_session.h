// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QString>
#include <memory>
#include <optional>
#include <string>

#include "report_print/picture_intake.h"
#include "workshop/workshop.h"

namespace sw::ui {

/// Where a command belongs.
struct Where {
  std::optional<model::JobId> job;
  std::string step;  ///< "procedure/step"
  std::optional<model::Side> side;
};

/// The open book and the way in: pages read from it and send it commands; it tells all pages when
/// something changed.
class ShopSession : public QObject {
  Q_OBJECT

 public:
  /// Errors: those of store::Book::open. `clock` must outlive the session.
  [[nodiscard]] static Result<std::unique_ptr<ShopSession>> open(const std::string& book,
                                                                 store::OpenMode mode,
                                                                 const std::string& resources,
                                                                 const Clock& clock);

  [[nodiscard]] const workshop::Workshop& workshop() const { return *m_workshop; }
  [[nodiscard]] const procedures::Library& library() const { return m_library; }
  [[nodiscard]] bool viewOnly() const { return m_book->viewOnly(); }
  [[nodiscard]] QString bookPath() const;

  /// Initials of who is at work; empty before anybody was chosen.
  [[nodiscard]] const std::string& person() const { return m_person; }
  void setPerson(const std::string& initials);

  /// Judges and commits; the outcome is told by the signals below, in this order: told for each
  /// event, saved, changed; or refused alone.
  Result<workshop::Outcome> perform(workshop::Action action, const Where& where = {});

 signals:
  void told(const QString& sentence);
  void saved(const QString& at);
  void refused(const QString& sentence, const QString& field);
  void changed();

 private:
  ShopSession() = default;

  std::unique_ptr<store::Book> m_book;
  procedures::Library m_library;
  report_print::QtPictureIntake m_pictures;
  std::unique_ptr<workshop::Workshop> m_workshop;
  std::string m_person;
};

}  // namespace sw::ui
