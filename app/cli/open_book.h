// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <string>

#include "cli/command.h"
#include "store/book.h"

namespace sw::app {

/// --book PATH, or the book in the user's data folder (XDG: data home/swivelwright/shop.swbook).
[[nodiscard]] std::string bookPath(const CommandContext& context);

/// Opens the named book. Errors as store::Book::open.
[[nodiscard]] Result<std::unique_ptr<store::Book>> openBook(const CommandContext& context,
                                                            store::OpenMode mode);

/// The first opening of a day leaves a dated copy in the shop's backup folder (setting
/// "backup_folder", default beside the book). A folder that is not there, a stick that is out, is
/// told on standard error and stops nothing.
void copyOfTheDay(const CommandContext& context, const store::Book& book);

}  // namespace sw::app
