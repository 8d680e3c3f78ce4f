// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "procedures/library.h"
#include "store/book.h"

namespace sw::app::demo {

/// Fills a new book with the demonstration shop: people, instruments, seven vehicles with spec
/// sheets and twelve jobs over two years, three of them open at different steps. All invented; the
/// same every time. `clock` must be the clock the book was created with; it is set and moved on.
/// `setUpFile` is resources/demo/shop.jsonl.
[[nodiscard]] Result<void> buildDemoShop(store::Book& book, const procedures::Library& library,
                                         ManualClock& clock, const std::string& setUpFile);

/// The moment the demonstration begins.
[[nodiscard]] Timestamp demoStart();

}  // namespace sw::app::demo
