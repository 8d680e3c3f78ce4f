// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "source_file.h"

namespace sw::layers {

/// The licence line stands first (after the interpreter line of a script).
[[nodiscard]] Breaches checkLicenceLine(const SourceFile& file);

/// A header has #pragma once.
[[nodiscard]] Breaches checkPragmaOnce(const SourceFile& file);

/// A source file has at most 700 lines.
[[nodiscard]] Breaches checkLength(const SourceFile& file);

/// In a header, each declaration of a function that returns Result carries [[nodiscard]].
[[nodiscard]] Breaches checkNodiscard(const SourceFile& file);

/// Under core/store no statement is put together with .arg(): values are bound.
[[nodiscard]] Breaches checkSqlIsBound(const SourceFile& file);

/// No path of one person's or one machine's folders.
[[nodiscard]] Breaches checkNoMachinePaths(const SourceFile& file);

}  // namespace sw::layers
