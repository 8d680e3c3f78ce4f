// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/notes.h"

namespace sw::compute {

Note readNote(ReadNote note, const std::string& path, const ParsedQuantity& parsed) {
  const std::string as = parsed.value.text();
  switch (note) {
    case ReadNote::BareNumber:
      return {"bare_number", path + ": no unit was given; read as " + as};
    case ReadNote::MassAsForce:
      return {"mass_read_as_force", path + ": a unit of mass on a force; read as " + as};
    case ReadNote::MassAsTorque:
      return {"mass_read_as_torque", path + ": a unit of mass in a torque; read as " + as};
    case ReadNote::CommaAsDecimal:
      return {"comma_as_decimal", path + ": the comma is the decimal mark; read as " + as};
  }
  return {};
}

}  // namespace sw::compute
