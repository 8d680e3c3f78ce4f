// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "procedures/library.h"

// The files in resources/ as they are shipped: bare JSON for what the files say, and read by the
// library for what the program makes of them.

namespace sw::test {

struct ShippedFile {
  std::string name;  ///< without folder and ".json"
  nlohmann::json json;
};

/// All data files of resources/FOLDER, schemas left out, by name.
[[nodiscard]] std::vector<ShippedFile> shippedFiles(const std::string& folder);
[[nodiscard]] nlohmann::json shippedSchema(const std::string& folder);
[[nodiscard]] const procedures::Library& shippedLibrary();

/// Calls `visit(file, step)` for every step of every procedure.
using StepVisit =
    std::function<void(const procedures::Procedure& procedure, const procedures::Step& step)>;
void eachStep(const StepVisit& visit);

/// "file/step", for messages.
[[nodiscard]] std::string placeOf(const procedures::Procedure& procedure,
                                  const procedures::Step& step);
/// The step, or nothing with a failed test.
[[nodiscard]] const procedures::Step* findStep(const std::string& procedure,
                                               const std::string& step);

}  // namespace sw::test
