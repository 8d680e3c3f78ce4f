// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/open_job.h"

#include <algorithm>

#include "cli/open_book.h"
#include "cli/resources.h"

namespace sw::app {

namespace {

/// The clock of a job that is only looked at stands at its last entry.
Result<Timestamp> lastEntered(const store::Book& book, model::JobId job) {
  const auto entries = book.jobEntries(job);
  if (!entries) return failAs(entries);
  Timestamp last;
  for (const model::Entry& entry : *entries) last = std::max(last, entry.enteredAt);
  return last;
}

}  // namespace

Result<OpenedJob> openJob(const CommandContext& context) {
  const auto number = context.requiredNumber("job");
  if (!number) return failAs(number);
  const model::JobId jobId{*number};
  auto book = openBook(context, store::OpenMode::ViewOnly);
  if (!book) return failAs(book);
  const auto resources = resourceFolder();
  if (!resources) return failAs(resources);
  const auto asOf = lastEntered(**book, jobId);
  if (!asOf) return failAs(asOf);

  OpenedJob opened;
  opened.book = std::move(*book);
  opened.asOf = *asOf;
  opened.library =
      std::make_unique<procedures::Library>(procedures::Library::load(resources->string()));
  const ManualClock clock(*asOf);
  const workshop::Workshop workshop(*opened.book, *opened.library, clock, nullptr);
  auto job = workshop.job(jobId);
  if (!job) return tl::make_unexpected(job.error().about("--job"));
  opened.job = std::move(*job);
  auto shop = workshop.shopOf(opened.job.entries);
  if (!shop) return failAs(shop);
  opened.shop = std::move(*shop);
  return opened;
}

}  // namespace sw::app
