// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QtCore/QString>
#include <span>
#include <string>
#include <string_view>

#include "phrasing/template_text.h"

// The tables behind error_sentence.h, one a source file. Placeholders are the error's details and
// {field}; how they are filled stands in template_text.h.

namespace sw::phrasing {

struct SentenceRow {
  std::string_view key;
  Source source;
};

/// units, measure, mechanics, clock.
[[nodiscard]] std::span<const SentenceRow> measuringSentences();
/// json, model, procedures.
[[nodiscard]] std::span<const SentenceRow> procedureSentences();
/// compute: what an input may not be.
[[nodiscard]] std::span<const SentenceRow> computeSentences();
/// mechanics, one table a subject; geometry is with the wheels.
[[nodiscard]] std::span<const SentenceRow> swivelSentences();
[[nodiscard]] std::span<const SentenceRow> brakeSentences();
[[nodiscard]] std::span<const SentenceRow> boltSentences();
[[nodiscard]] std::span<const SentenceRow> wheelSentences();
/// diagnosis: plans and tables of causes.
[[nodiscard]] std::span<const SentenceRow> diagnosisSentences();
[[nodiscard]] std::span<const SentenceRow> storeSentences();
[[nodiscard]] std::span<const SentenceRow> workshopSentences();
/// Pictures and printed sheets.
[[nodiscard]] std::span<const SentenceRow> sheetSentences();
/// Events of the workshop (event_sentence.h); placeholders are their values.
[[nodiscard]] std::span<const SentenceRow> eventSentences();

}  // namespace sw::phrasing
