// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "procedures/procedure.h"

namespace sw::procedures {

/// All procedures and plans of a folder. A broken file is reported and the others still work.
class Library {
 public:
  /// Reads DIR/procedures/*.json and DIR/plans/*.json.
  [[nodiscard]] static Library load(const std::string& resourceFolder);
  [[nodiscard]] static Library of(std::vector<Procedure> procedures, std::vector<PlanTemplate> plans);

  [[nodiscard]] const Procedure* procedure(std::string_view id) const;
  [[nodiscard]] const PlanTemplate* plan(std::string_view id) const;
  [[nodiscard]] const std::vector<Procedure>& procedures() const { return m_procedures; }
  [[nodiscard]] const std::vector<PlanTemplate>& plans() const { return m_plans; }
  /// What could not be read, one error a file (detail "file").
  [[nodiscard]] const std::vector<Error>& problems() const { return m_problems; }

 private:
  std::vector<Procedure> m_procedures;
  std::vector<PlanTemplate> m_plans;
  std::vector<Error> m_problems;
};

}  // namespace sw::procedures
