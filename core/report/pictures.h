// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "report/html.h"
#include "store/book.h"
#include "workshop/job_state.h"

namespace sw::report {

/// The thumbnails of a job's photos by hash. A picture that cannot be read is left out: its caption
/// and hash stay on the page.
[[nodiscard]] PictureMap thumbnailsOf(const workshop::JobState& job, const store::Book& book);

}  // namespace sw::report
