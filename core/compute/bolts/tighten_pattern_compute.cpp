// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/bolts/bolts.h"

#include <nlohmann/json.hpp>

#include "compute/input_reader.h"
#include "mechanics/bolts/tightening_order.h"

namespace sw::compute {

Description describeTightenPattern() {
  std::vector<FieldDescription> inputs{{.name = "fasteners",
                                        .kind = "whole number",
                                        .presence = Presence::Required,
                                        .range = "1 to 12",
                                        .meaning = "on one circle, numbered clockwise"}};
  for (auto& field : envelopeFields({})) inputs.push_back(std::move(field));
  return {.title = "In which order are fasteners on a circle tightened?",
          .method = "opposite to opposite, each once",
          .source = "common practice, no source",
          .inputs = std::move(inputs),
          .outputs = {{.name = "order",
                       .kind = "list of whole number",
                       .presence = Presence::Required,
                       .meaning = "the fasteners by number, first to last"}},
          .exampleInput = R"({"fasteners": 5})",
          .exampleOutput = R"({
  "result": {"order": [1, 3, 5, 2, 4]},
  "notes": [
    {"code": "documentation",
     "text": "Where the vehicle's own documentation gives an order, that one holds."}],
  "method": {
    "name": "opposite to opposite, each once",
    "source": "common practice, no source",
    "options": {}}
})"};
}

Result<Outcome> runTightenPattern(const Json& json) {
  Outcome outcome;
  InputReader reader(json, "", outcome.notes);
  reader.requireKey("fasteners");
  const auto fasteners = reader.wholeNumber("fasteners", 1, mechanics::kMostFasteners);
  reader.takeSeed();
  if (const auto read = reader.finish(); !read) return failAs(read);
  const auto order = mechanics::tighteningOrder(fasteners.value_or(0));
  if (!order) return failAs(order);
  outcome.result = {{"order", *order}};
  outcome.notes.push_back(
      {"documentation", "Where the vehicle's own documentation gives an order, that one holds."});
  return outcome;
}

}  // namespace sw::compute
