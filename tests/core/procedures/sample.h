// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>

#include <string>

#include "procedures/procedure.h"

namespace sw::procedures {

/// A file with these steps (the inside of the list) and an otherwise sound head.
inline std::string fileWith(const std::string& steps) {
  return R"({"schema": 1, "id": "sample", "title": "Sample", "purpose": "To be read.", )"
         R"("steps": [)" +
         steps + "]}";
}

/// A step to do, with more fields in front of the closing brace.
inline std::string doStep(const std::string& id, const std::string& more = {}) {
  return R"({"id": ")" + id + R"(", "kind": "do", "title": "Do it")" +
         (more.empty() ? "" : ", " + more) + "}";
}

inline Result<Procedure> read(const std::string& steps) {
  return parseProcedure(fileWith(steps), "sample.json");
}

}  // namespace sw::procedures
