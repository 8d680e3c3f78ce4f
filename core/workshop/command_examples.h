// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

namespace sw::workshop {

/// A line of a job script with the command, as it could stand there; empty for an unknown name.
[[nodiscard]] std::string_view exampleOf(std::string_view command);

}  // namespace sw::workshop
