// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

#include "cli/command.h"
#include "procedures/library.h"
#include "store/book.h"
#include "workshop/workshop.h"

namespace sw::app {

/// One job of a book opened for looking, as it stood when its last fact was entered: what is asked
/// of it does not depend on the clock.
struct OpenedJob {
  std::unique_ptr<store::Book> book;
  std::unique_ptr<procedures::Library> library;
  workshop::JobState job;
  workshop::ShopState shop{{}};
  Timestamp asOf;  ///< when the last fact was entered
};

/// Opens --book and reads --job. Errors: as openBook; InvalidInput "cli.not_a_whole_number";
/// NotFound "workshop.no_job", "cli.no_resources".
[[nodiscard]] Result<OpenedJob> openJob(const CommandContext& context);

}  // namespace sw::app
