// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTemporaryDir>
#include <memory>
#include <string>

#include "gtest/gtest.h"
#include "procedures/library.h"
#include "store/book.h"
#include "store/book_options.h"
#include "workshop/workshop.h"

namespace sw::test {

/// A shop with a new book in a folder whose name holds a space and a letter beyond ASCII, a clock
/// set by hand and the procedures as shipped. Commands are given as JSON, as a script would.
class Shop {
 public:
  explicit Shop(const store::BookOptions& options = {});

  /// Closes the book and opens it as the program does today, or as one of these options would.
  void reopenBook(const store::BookOptions& options = {});
  void reopen() { workshop = std::make_unique<workshop::Workshop>(*book, library, clock, nullptr); }

  Result<workshop::Outcome> say(const std::string& json);

  /// The command must be accepted.
  workshop::Outcome ok(const std::string& json);

  /// The command must be refused with this key; gives the error.
  Error refused(const std::string& json, const std::string& key);

  static std::string describe(const Result<workshop::Outcome>& outcome);

  workshop::JobState state();

  static bool told(const workshop::Outcome& outcome, const std::string& key);

  static std::string value(const workshop::Outcome& outcome, const std::string& key,
                           const std::string& name);

  /// Three people, instruments and one vehicle with an invented spec sheet.
  void setUp(const std::string& vehicleExtras = "");

  /// A drive on record, without the holds before one.
  void drive(model::ShakeResult shake, model::RoadTestWhen when = model::RoadTestWhen::After);

  void spec(const std::string& rest);

  void setUpSpecs();

  QTemporaryDir folder;
  ManualClock clock;
  procedures::Library library;
  std::string path;
  std::unique_ptr<store::Book> book;
  std::unique_ptr<workshop::Workshop> workshop;
  std::string by;
  std::int64_t job = 0;
};

}  // namespace sw::test
