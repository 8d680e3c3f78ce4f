// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/open_job.h"
#include "report/document.h"

namespace sw::app {

/// --paper A4 | Letter, A4 where it is not given. Errors: InvalidInput "cli.not_one_of".
[[nodiscard]] Result<report::Paper> paperOption(const CommandContext& context);

/// The shop's name in force at the job's closing (or now); empty where none was given.
[[nodiscard]] Result<std::string> shopName(const OpenedJob& opened);

/// Writes the document to --out, as PDF or HTML by the name's ending, with the thumbnails of the
/// job's photos. Errors: Missing "cli.option_missing"; InvalidInput "cli.not_one_of"; those of
/// report_print::toPdf and writeFile.
[[nodiscard]] Result<void> writeDocument(const CommandContext& context, const OpenedJob& opened,
                                         const report::Document& document);

}  // namespace sw::app
