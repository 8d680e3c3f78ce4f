// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/open_job.h"
#include "report/job_paper.h"

namespace sw::app {

/// --paper A4 | Letter, A4 where it is not given. Errors: InvalidInput "cli.not_one_of".
[[nodiscard]] Result<report::Paper> paperOption(const CommandContext& context);

/// Writes the document to --out, as PDF or HTML by the name's ending. Errors: Missing
/// "cli.option_missing"; InvalidInput "cli.not_one_of"; those of report_print::toPdf and writeFile.
[[nodiscard]] Result<void> writeDocument(const CommandContext& context, const OpenedJob& opened,
                                         const report::PaperDocument& paper);

}  // namespace sw::app
