// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "report/sheet_context.h"

// Internal to core/report: the sections of the job sheet. A section with nothing to say has no
// blocks and is left out.

namespace sw::report {

// sheet_head.cpp
[[nodiscard]] Section jobSection(const SheetContext& context);
[[nodiscard]] Section vehicleSection(const SheetContext& context);
[[nodiscard]] Section complaintSection(const SheetContext& context);
[[nodiscard]] Section causesSection(const SheetContext& context);
[[nodiscard]] Section planSection(const SheetContext& context);

// sheet_readings.cpp
[[nodiscard]] Section readingsSection(const SheetContext& context);
[[nodiscard]] Section instrumentsSection(const SheetContext& context);
/// The verdict as it stands: overridden as not proved, loose, or as given, with its explanation.
[[nodiscard]] Cell verdictCell(const SheetContext& context, const workshop::SeriesView& series);
/// Value ± U, empty without a verdict.
[[nodiscard]] QString resultText(const workshop::SeriesView& series);
/// The limit's figures, empty where there is none.
[[nodiscard]] QString limitOf(const SheetContext& context, const workshop::SeriesView& series);
/// A title for the series: the step and the side.
[[nodiscard]] QString seriesTitle(const SheetContext& context, const workshop::SeriesView& series);

// sheet_work.cpp
[[nodiscard]] Section packsSection(const SheetContext& context);
[[nodiscard]] Section torqueSection(const SheetContext& context);
[[nodiscard]] Section ledgerSection(const SheetContext& context);
[[nodiscard]] Section roadTestSection(const SheetContext& context);
[[nodiscard]] Section observationsSection(const SheetContext& context);

// sheet_calculations.cpp
[[nodiscard]] Section calculationsSection(const SheetContext& context);

// sheet_safety.cpp
[[nodiscard]] Section holdsSection(const SheetContext& context);
[[nodiscard]] Section overridesSection(const SheetContext& context);
[[nodiscard]] Section cautionsSection(const SheetContext& context);
[[nodiscard]] Section endSection(const SheetContext& context);

// sheet_money.cpp
[[nodiscard]] Section partsSection(const SheetContext& context);

// sheet_record.cpp
[[nodiscard]] Section declinedSection(const SheetContext& context);
[[nodiscard]] Section rechecksSection(const SheetContext& context);
[[nodiscard]] Section notesSection(const SheetContext& context);
[[nodiscard]] Section photosSection(const SheetContext& context);
[[nodiscard]] Section correctionsSection(const SheetContext& context);
[[nodiscard]] Section peopleSection(const SheetContext& context);

// sheet_customer.cpp
[[nodiscard]] Section workDoneSection(const SheetContext& context);
[[nodiscard]] Section beforeAfterSection(const SheetContext& context);

}  // namespace sw::report
