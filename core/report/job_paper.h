// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "procedures/library.h"
#include "report/html.h"
#include "store/book.h"
#include "workshop/job_state.h"

// The printed documents of a job with all that they take from the book: one way for the window and
// the command line.

namespace sw::report {

/// What the work card of a job without runs is made from.
inline constexpr const char* kPlanOfAJobWithoutRuns = "swivel-preload";

enum class JobPaper { WorkshopCopy, CustomerCopy, WorkCard };

struct PaperRequest {
  JobPaper what = JobPaper::WorkshopCopy;
  Paper paper = Paper::A4;
};

struct PaperDocument {
  Document document;
  PictureMap pictures;  ///< thumbnails of the job's photos; one that cannot be read is left out
};

/// `shop` is the shop as of the job's closing; `library` gives the card of a job without a plan.
/// Errors: those of the book.
[[nodiscard]] Result<PaperDocument> makePaper(const PaperRequest& request,
                                              const workshop::JobState& job,
                                              const workshop::ShopState& shop,
                                              const store::Book& book,
                                              const procedures::Library& library);

}  // namespace sw::report
