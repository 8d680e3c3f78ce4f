// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "phrasing/sentence_tables.h"

namespace sw::phrasing {

namespace {

constexpr auto kRows = std::to_array<SentenceRow>({
    {"picture.missing",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]there is no such picture file[: {name}]. Check its name and place.", "photo")},
    {"picture.unreadable",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the picture cannot be read[: {name}][ (format {format})]. Save "
                        "it as JPEG or PNG and add it again.",
                        "photo")},
    {"picture.too_large",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the picture is too large[: {name}]: more than 50 megapixels or "
                        "128 MB. Make it smaller and add it again.",
                        "photo")},
    {"picture.not_written",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the picture could not be made ready for the book. Nothing was "
                        "recorded; save it as JPEG or PNG and add it again.",
                        "photo")},
    {"report.no_entry",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the book has no entry {text}. The answers of job and the "
                        "export show the numbers.",
                        "history of a value")},
    {"print.no_pdf", QT_TRANSLATE_NOOP3("phrasing",
                                        "[{field}: ]the PDF could not be made. Write the sheet as "
                                        "HTML instead, and please report this.",
                                        "job sheet")},
    {"print.cannot_write",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the file could not be written[: {path}][ ({why})]. Check the "
                        "folder and the room on the disk.",
                        "job sheet; {why} is what the system said")},
});

}  // namespace

std::span<const SentenceRow> sheetSentences() {
  return kRows;
}

}  // namespace sw::phrasing
