// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "procedures/procedure.h"

namespace sw::procedures {

/// All procedures and plans of a folder. A broken file is reported and the others still work.
class Library {
 public:
  /// Reads DIR/procedures/*.json and DIR/plans/*.json, not *.schema.json. A file's name is its id.
  /// A plan that names a procedure that could not be read is left out, a procedure that must come
  /// after one stays; both are problems.
  [[nodiscard]] static Library load(const std::string& resourceFolder);
  [[nodiscard]] static Library of(std::vector<Procedure> procedures,
                                  std::vector<PlanTemplate> plans);

  [[nodiscard]] const Procedure* procedure(std::string_view id) const;
  [[nodiscard]] const PlanTemplate* plan(std::string_view id) const;
  [[nodiscard]] const std::vector<Procedure>& procedures() const { return m_procedures; }
  [[nodiscard]] const std::vector<PlanTemplate>& plans() const { return m_plans; }
  /// What could not be read, one error a file (detail "file"): those of parseProcedure and
  /// parsePlan, and "procedure.folder_missing", "procedure.cannot_read",
  /// "procedure.id_not_file_name", "procedure.unknown_procedure".
  [[nodiscard]] const std::vector<Error>& problems() const { return m_problems; }

 private:
  void checkReferences();

  std::vector<Procedure> m_procedures;
  std::vector<PlanTemplate> m_plans;
  std::vector<Error> m_problems;
};

}  // namespace sw::procedures
