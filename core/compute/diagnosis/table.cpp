// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "compute/calculations.h"
#include "compute/diagnosis/diagnosis.h"

namespace sw::compute {

namespace {

constexpr std::array kTable{
    Calculation{"rank-causes", "What makes it shake?", Subject::Diagnosis, describeRankCauses,
                runRankCauses},
    Calculation{"next-check", "Which check next?", Subject::Diagnosis, describeNextCheck,
                runNextCheck},
};

}  // namespace

std::span<const Calculation> diagnosisCalculations() {
  return kTable;
}

}  // namespace sw::compute
