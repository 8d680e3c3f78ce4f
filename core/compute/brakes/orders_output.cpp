// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/brakes/orders_output.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "compute/output.h"

namespace sw::compute {

namespace {

constexpr std::size_t kBestPoints = 11;

std::string percent(double share) {
  return std::to_string(std::lround(100 * share)) + " %";
}

}  // namespace

Json ordersJson(const std::vector<mechanics::Order>& orders) {
  Json list = Json::array();
  for (const mechanics::Order& each : orders) {
    Json object = {{"order", each.order}, {"captured_share", plainNumber(each.capturedShare)}};
    if (each.wave) {
      object["amplitude"] = quantityText(each.wave->amount);
      object["phase"] = quantityText(each.wave->angle);
    }
    list.push_back(std::move(object));
  }
  return list;
}

FieldDescription ordersField() {
  return {
      .name = "orders",
      .kind = "list of object",
      .presence = Presence::Required,
      .meaning = "waves round the turn, orders 1 to 4",
      .fields = {{.name = "order",
                  .kind = "whole number",
                  .presence = Presence::Required,
                  .meaning = "waves a turn"},
                 {.name = "captured_share",
                  .kind = "number",
                  .presence = Presence::Required,
                  .range = "0 to 1",
                  .meaning = "least part of its peak-to-peak that this many points show, whatever "
                             "its phase; 0: they are blind to it"},
                 quantityField("amplitude", QuantityKind::Length,
                               "half of its peak-to-peak; absent where the points cannot tell it"),
                 quantityField("phase", QuantityKind::Angle,
                               "the wave is amplitude x cos(order x place - phase)")}};
}

std::string blindOrders(const std::vector<mechanics::Order>& orders) {
  std::string text;
  for (const mechanics::Order& each : orders) {
    if (each.capturedShare > 0) continue;
    text.append(text.empty() ? "" : " and ").append(std::to_string(each.order));
  }
  return text;
}

std::vector<Note> captureNotes(std::size_t points, const std::vector<mechanics::Order>& orders) {
  std::vector<Note> notes;
  const std::string count = std::to_string(points) + " points";
  if (const std::string blind = blindOrders(orders); !blind.empty()) {
    notes.push_back({"blind_orders", count + " can be blind to " + blind +
                                         " waves a turn: the disc may vary between them."});
  }
  double least = 1;
  for (const mechanics::Order& each : orders) {
    if (each.capturedShare > 0) least = std::min(least, each.capturedShare);
  }
  std::string text = count + " show at least " + percent(least) + " of each order up to 4";
  text += blindOrders(orders).empty() ? "." : " that they see.";
  if (points != kBestPoints) text += " 11 even steps show 98 % of every order up to 10.";
  notes.push_back({"captured", std::move(text)});
  return notes;
}

}  // namespace sw::compute
