// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "compute/calculation.h"
#include "mechanics/brakes/even_samples.h"

namespace sw::compute {

/// [{"order","captured_share","amplitude","phase"}]
[[nodiscard]] Json ordersJson(const std::vector<mechanics::Order>& orders);
[[nodiscard]] FieldDescription ordersField();

/// Orders that can hide from these points altogether: "2 and 4"; empty where there is none.
[[nodiscard]] std::string blindOrders(const std::vector<mechanics::Order>& orders);
/// What these points can miss of the orders they are not blind to.
[[nodiscard]] std::vector<Note> captureNotes(std::size_t points,
                                             const std::vector<mechanics::Order>& orders);

}  // namespace sw::compute
