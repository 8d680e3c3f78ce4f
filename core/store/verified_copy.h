// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "base/result.h"
#include "store/connection.h"
#include "store/verified_copy_result.h"

namespace sw::store {

/// Copies a book through SQLite's backup interface under a temporary name, compares and checks the
/// copy, syncs it, and only then gives it its name in the folder ("<stem>.swbook", or
/// "<stem>-2.swbook" where that exists). Nothing that exists is replaced. Errors: CannotWrite
/// "store.cannot_create", "store.disk_full", "store.io_error", BookDamaged "store.copy_differs"
/// (details: reason, text).
[[nodiscard]] Result<VerifiedCopy> copyVerified(Connection& source, const std::string& folder,
                                                const std::string& stem);

/// The same up to the temporary name, which the caller renames; `path` of the result is that file.
[[nodiscard]] Result<VerifiedCopy> copyToTemporary(Connection& source,
                                                   const std::string& temporary);

}  // namespace sw::store
