// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/job_sheet.h"

#include "report/quantity_text.h"
#include "report/sheet_sections.h"
#include "report/wording.h"

namespace sw::report {

namespace {

using SectionMaker = Section (*)(const SheetContext&);

constexpr SectionMaker kWorkshopCopy[] = {
    jobSection,          vehicleSection,  complaintSection, causesSection,       roadTestSection,
    readingsSection,     packsSection,    torqueSection,    calculationsSection, planSection,
    observationsSection, holdsSection,    overridesSection, ledgerSection,       partsSection,
    declinedSection,     rechecksSection, notesSection,     photosSection,       correctionsSection,
    instrumentsSection,  cautionsSection, endSection,       peopleSection};

constexpr SectionMaker kCustomerCopy[] = {jobSection,      vehicleSection,     complaintSection,
                                          workDoneSection, beforeAfterSection, roadTestSection,
                                          partsSection,    declinedSection,    rechecksSection,
                                          endSection,      peopleSection};

QString vehicleName(const model::Vehicle& vehicle) {
  if (vehicle.makeModel.empty()) return fromUtf8(vehicle.registration);
  return fromUtf8(vehicle.registration) + QStringLiteral(", ") + fromUtf8(vehicle.makeModel);
}

}  // namespace

Document jobSheet(const workshop::JobState& job, const workshop::ShopState& shop,
                  const SheetOptions& options) {
  const SheetContext context(job, shop, options);
  const bool workshopCopy = options.copy == SheetCopy::Workshop;
  Document document;
  document.paper = options.paper;
  document.issuer = options.shopName;
  document.title = QStringLiteral("Job sheet %1").arg(job.job.value);
  document.subtitle =
      vehicleName(job.vehicle.fact) + QStringLiteral(" – ") +
      (workshopCopy ? QStringLiteral("workshop copy") : QStringLiteral("customer copy"));
  document.running =
      fromUtf8(job.vehicle.fact.registration) + QStringLiteral(" – job %1").arg(job.job.value);
  const auto add = [&](const auto& makers) {
    for (const SectionMaker make : makers) {
      Section section = make(context);
      if (!section.blocks.empty()) document.sections.push_back(std::move(section));
    }
  };
  if (workshopCopy) {
    add(kWorkshopCopy);
  } else {
    add(kCustomerCopy);
  }
  document.footer = {ruleSentence(), noClearanceSentence()};
  return document;
}

}  // namespace sw::report
