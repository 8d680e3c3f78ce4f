// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <limits>
#include <vector>

#include "report/lists.h"
#include "workshop/workshop.h"

// The lists of lists.h, read from a book.

namespace sw::report {

enum class WhichJobs { All, Open };

/// In order of number. Errors: those of the book.
[[nodiscard]] Result<std::vector<JobRow>> jobRowsOf(const workshop::Workshop& workshop,
                                                    WhichJobs which);
[[nodiscard]] Result<std::vector<VehicleRow>> vehicleRowsOf(const workshop::Workshop& workshop);
/// By date, as they stand today by the workshop's clock; the first `most` of them.
[[nodiscard]] Result<std::vector<DueRow>> dueRowsOf(
    const workshop::Workshop& workshop,
    std::size_t most = std::numeric_limits<std::uint32_t>::max());

}  // namespace sw::report
