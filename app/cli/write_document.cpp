// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/write_document.h"

#include "report/html.h"
#include "report/pictures.h"
#include "report_print/pdf.h"

namespace sw::app {

Result<report::Paper> paperOption(const CommandContext& context) {
  const auto text = context.arguments.value("paper").value_or("A4");
  if (text == "A4") return report::Paper::A4;
  if (text == "Letter") return report::Paper::Letter;
  return fail(ErrorCode::InvalidInput, "cli.not_one_of", "--paper",
              {{"text", text}, {"choices", "A4, Letter"}});
}

Result<std::string> shopName(const OpenedJob& opened) {
  if (!opened.shop.name().empty()) return opened.shop.name();
  // Before version 2 of the book the name was a mere setting.
  auto name = opened.book->setting("shop_name");
  if (!name) return failAs(name);
  return name->value_or("");
}

Result<void> writeDocument(const CommandContext& context, const OpenedJob& opened,
                           const report::Document& document) {
  const auto out = context.required("out");
  if (!out) return failAs(out);
  const auto pictures = report::thumbnailsOf(opened.job, *opened.book);
  if (out->ends_with(".html")) {
    const QString html = report::toHtml(document, report::HtmlTarget::File, pictures);
    return report_print::writeFile(*out, html.toUtf8());
  }
  if (!out->ends_with(".pdf")) {
    return fail(ErrorCode::InvalidInput, "cli.not_one_of", "--out",
                {{"text", *out}, {"choices", "NAME.pdf, NAME.html"}});
  }
  const auto pdf = report_print::toPdf(document, {pictures, opened.asOf});
  if (!pdf) return failAs(pdf);
  return report_print::writeFile(*out, *pdf);
}

}  // namespace sw::app
