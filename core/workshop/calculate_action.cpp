// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/calculation.h"
#include "model/json.h"
#include "workshop/context.h"

namespace sw::workshop {

Result<void> act(const Calculate& action, Context& context) {
  const auto calculation = compute::findCalculation(action.calculation);
  if (!calculation) return tl::make_unexpected(calculation.error().about("calculation"));
  const auto input = model::parseJson(action.input.text);
  if (!input) return tl::make_unexpected(input.error().about("input"));
  const auto answer = compute::evaluate(*calculation, *input);
  if (!answer) {
    return tl::make_unexpected(answer.error().about("input" + answer.error().field));
  }
  context.add(model::Calculated{action.calculation, input->dump(), answer->dump(),
                                action.remark.value_or("")},
              context.place());
  context.tell("calculated", {{"text", std::string(calculation->title)}});
  return {};
}

}  // namespace sw::workshop
