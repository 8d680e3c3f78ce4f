// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/write_document.h"

#include "report_print/pdf.h"

namespace sw::app {

Result<report::Paper> paperOption(const CommandContext& context) {
  const auto text = context.arguments.value("paper").value_or("A4");
  if (text == "A4") return report::Paper::A4;
  if (text == "Letter") return report::Paper::Letter;
  return fail(ErrorCode::InvalidInput, "cli.not_one_of", "--paper",
              {{"text", text}, {"choices", "A4, Letter"}});
}

Result<void> writeDocument(const CommandContext& context, const OpenedJob& opened,
                           const report::PaperDocument& paper) {
  const auto out = context.required("out");
  if (!out) return failAs(out);
  if (out->ends_with(".html")) {
    const QString html = report::toHtml(paper.document, report::HtmlTarget::File, paper.pictures);
    return report_print::writeFile(*out, html.toUtf8());
  }
  if (!out->ends_with(".pdf")) {
    return fail(ErrorCode::InvalidInput, "cli.not_one_of", "--out",
                {{"text", *out}, {"choices", "NAME.pdf, NAME.html"}});
  }
  const auto pdf = report_print::toPdf(paper.document, {paper.pictures, opened.asOf});
  if (!pdf) return failAs(pdf);
  return report_print::writeFile(*out, *pdf);
}

}  // namespace sw::app
