// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/entry.h"
#include "model/json.h"

namespace sw::model {

/// One entry as one flat JSON object: header keys, "kind", "fact": {fields of the kind}. Absent
/// optionals are absent keys. A typed quantity is {"number","unit","kind","si"}.
[[nodiscard]] Json toJson(const Entry& entry);
/// The inverse; fromJson(toJson(e)) == e field by field. Errors as ObjectReader, and NotFound
/// "model.unknown_kind".
[[nodiscard]] Result<Entry> entryFromJson(const Json& json);
/// Only the payload's fields.
[[nodiscard]] Json payloadJson(const Payload& payload);

}  // namespace sw::model
