// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/job_paper.h"

#include "report/job_sheet.h"
#include "report/work_card.h"

namespace sw::report {

namespace {

std::vector<const procedures::Procedure*> proceduresOfPlan(const procedures::Library& library,
                                                           std::string_view plan) {
  std::vector<const procedures::Procedure*> list;
  const auto* found = library.plan(plan);
  if (found == nullptr) return list;
  for (const std::string& id : found->procedures) {
    if (const auto* procedure = library.procedure(id)) list.push_back(procedure);
  }
  return list;
}

PictureMap thumbnailsOf(const workshop::JobState& job, const store::Book& book) {
  PictureMap pictures;
  for (const model::Entry* entry : job.valid) {
    const auto* photo = model::as<model::Photo>(*entry);
    if (photo == nullptr) continue;
    const auto picture = book.picture(photo->hash);
    if (!picture) continue;
    pictures[QString::fromStdString(photo->hash)] = {QByteArray::fromStdString(picture->thumbnail),
                                                     QString::fromStdString(picture->mime)};
  }
  return pictures;
}

Result<QString> shopName(const workshop::ShopState& shop, const store::Book& book) {
  if (!shop.name().empty()) return QString::fromStdString(shop.name());
  // Before version 2 of the book the name was a mere setting.
  const auto name = book.setting("shop_name");
  if (!name) return failAs(name);
  return QString::fromStdString(name->value_or(""));
}

}  // namespace

Result<PaperDocument> makePaper(const PaperRequest& request, const workshop::JobState& job,
                                const workshop::ShopState& shop, const store::Book& book,
                                const procedures::Library& library) {
  const auto name = shopName(shop, book);
  if (!name) return failAs(name);
  PaperDocument made;
  made.pictures = thumbnailsOf(job, book);
  if (request.what == JobPaper::WorkCard) {
    made.document = workCard(
        job, shop, {request.paper, *name, proceduresOfPlan(library, kPlanOfAJobWithoutRuns)});
  } else {
    const auto copy =
        request.what == JobPaper::CustomerCopy ? SheetCopy::Customer : SheetCopy::Workshop;
    made.document = jobSheet(job, shop, {copy, request.paper, *name});
  }
  return made;
}

}  // namespace sw::report
