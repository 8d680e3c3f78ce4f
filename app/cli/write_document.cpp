// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/write_document.h"

#include "report/html.h"
#include "report_print/pdf.h"

namespace sw::app {

namespace {

report::PictureMap thumbnails(const OpenedJob& opened) {
  report::PictureMap pictures;
  for (const model::Entry* entry : opened.job.valid) {
    const auto* photo = model::as<model::Photo>(*entry);
    if (photo == nullptr) continue;
    // A picture that cannot be read is missing from the page; its caption and hash stay.
    const auto picture = opened.book->picture(photo->hash);
    if (!picture) continue;
    pictures[QString::fromStdString(photo->hash)] = {QByteArray::fromStdString(picture->thumbnail),
                                                     QString::fromStdString(picture->mime)};
  }
  return pictures;
}

}  // namespace

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
  const auto pictures = thumbnails(opened);
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
