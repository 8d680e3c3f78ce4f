// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/swivel/shim_fields.h"

#include <nlohmann/json.hpp>

#include "compute/output.h"

namespace sw::compute {

namespace {

constexpr int kMostOnHand = 1000;
constexpr int kMostShims = 100;

}  // namespace

mechanics::ShimEffect readLayout(InputReader& reader) {
  return reader.requiredWord("layout", {"cap_flange", "inner"}) == "inner"
             ? mechanics::ShimEffect::ThickerRaises
             : mechanics::ShimEffect::ThinnerRaises;
}

mechanics::ShimStock readStock(InputReader& reader) {
  mechanics::ShimStock stock;
  reader.requireKey("shims");
  reader.eachObject("shims", [&](InputReader& shim) {
    mechanics::ShimSize size;
    size.thickness = shim.required<Length>("thickness", Sign::Positive);
    size.onHand = shim.wholeNumber("on_hand", 0, kMostOnHand);
    stock.sizes.push_back(size);
  });
  stock.maxPack = reader.optional<Length>("max_pack", Sign::Positive);
  reader.requireKey("max_count");
  stock.maxCount = reader.wholeNumber("max_count", 1, kMostShims).value_or(1);
  return stock;
}

Json packJson(const mechanics::AllowedPack& pack) {
  Json shims = Json::array();
  for (const Length shim : pack.shims) shims.push_back(quantityText(shim));
  return {{"pack", quantityText(pack.total)}, {"shims", std::move(shims)}, {"count", pack.count()}};
}

FieldDescription layoutField() {
  return {.name = "layout",
          .kind = "word",
          .presence = Presence::Required,
          .range = "cap_flange | inner",
          .meaning =
              "where the shims sit: under the flange of the cap (fewer raise the force) or "
              "between pin and cap (more raise it); asked, never inferred"};
}

std::vector<FieldDescription> stockFields() {
  return {{.name = "shims",
           .kind = "list of object",
           .presence = Presence::Required,
           .meaning = "sizes on hand",
           .fields = {quantityField("thickness", QuantityKind::Length, "of one shim",
                                    {.presence = Presence::Required, .range = "more than 0"}),
                      {.name = "on_hand",
                       .kind = "whole number",
                       .range = "0 to 1000",
                       .meaning = "how many; absent: as many as wanted"}}},
          quantityField("max_pack", QuantityKind::Length, "the thickest pack the vehicle allows",
                        {.range = "more than 0"}),
          {.name = "max_count",
           .kind = "whole number",
           .presence = Presence::Required,
           .range = "1 to 100",
           .meaning = "the most shims in one pack"}};
}

std::vector<FieldDescription> packFields() {
  return {quantityField("pack", QuantityKind::Length, "total of the pack"),
          {.name = "shims", .kind = "list of length", .unit = "mm", .meaning = "thickest first"},
          {.name = "count", .kind = "whole number", .meaning = "of shims"}};
}

}  // namespace sw::compute
