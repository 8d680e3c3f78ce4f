// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/entry_json.h"

#include <nlohmann/json.hpp>
#include <type_traits>

namespace sw::model {

namespace {

template <class T>
struct IsOptional : std::false_type {};
template <class T>
struct IsOptional<std::optional<T>> : std::true_type {};
template <class T>
struct IsId : std::false_type {};
template <class Tag>
struct IsId<Id<Tag>> : std::true_type {};

Json toJsonValue(const TypedQuantity& q) {
  Json json = Json::object();
  json["number"] = q.number;
  json["unit"] = q.unit;
  json["kind"] = std::string(word(q.kind));
  json["si"] = q.si;
  return json;
}

/// Fills one JSON object from a struct's fields.
struct Writer {
  Json& out;

  template <class T>
  void operator()(std::string_view name, const T& value) const {
    if constexpr (IsOptional<T>::value) {
      if (value) (*this)(name, *value);
    } else if constexpr (std::is_same_v<T, PullState>) {
      Json state = Json::object();
      PullState::fields(value, Writer{state});
      out[std::string(name)] = std::move(state);
    } else if constexpr (std::is_same_v<T, TypedQuantity>) {
      out[std::string(name)] = toJsonValue(value);
    } else if constexpr (std::is_same_v<T, QuantityKind>) {
      out[std::string(name)] = std::string(word(value));
    } else if constexpr (std::is_same_v<T, Date> || std::is_same_v<T, Timestamp>) {
      out[std::string(name)] = toIso(value);
    } else if constexpr (IsId<T>::value) {
      out[std::string(name)] = value.value;
    } else if constexpr (HasWords<T>) {
      out[std::string(name)] = std::string(wordOf(value));
    } else {
      out[std::string(name)] = value;
    }
  }
};

/// Reads a struct's fields from one JSON object through a strict reader.
struct Reader {
  ObjectReader& in;

  void missing(std::string_view name) const {
    in.fail({ErrorCode::Missing, "json.missing", in.pathOf(name), {}});
  }
  template <class T>
  void assign(std::string_view name, const std::optional<T>& read, T& value) const {
    if (read) {
      value = *read;
    } else {
      missing(name);
    }
  }

  void quantity(std::string_view name, TypedQuantity& value) const {
    const Json* json = in.object(name);
    if (json == nullptr) return missing(name);
    ObjectReader reader(*json, in.pathOf(name));
    value.number = reader.requiredText("number");
    value.unit = reader.requiredText("unit");
    const auto kind = quantityKindFromWord(reader.requiredText("kind"));
    value.kind = kind.value_or(QuantityKind::Number);
    value.si = reader.number("si").value_or(0.0);
    if (const auto done = reader.finish(); !done) in.fail(done.error());
  }

  template <class T>
  void operator()(std::string_view name, std::optional<T>& value) const {
    if (!in.has(name)) {
      value.reset();
      return;
    }
    T inner{};
    (*this)(name, inner);
    value = std::move(inner);
  }

  template <class T>
  void operator()(std::string_view name, T& value) const {
    if constexpr (std::is_same_v<T, PullState>) {
      const Json* json = in.object(name);
      if (json == nullptr) return missing(name);
      ObjectReader reader(*json, in.pathOf(name));
      PullState::fields(value, Reader{reader});
      if (const auto done = reader.finish(); !done) in.fail(done.error());
    } else if constexpr (std::is_same_v<T, TypedQuantity>) {
      quantity(name, value);
    } else if constexpr (std::is_same_v<T, std::string>) {
      assign(name, in.text(name), value);
    } else if constexpr (std::is_same_v<T, bool>) {
      assign(name, in.boolean(name), value);
    } else if constexpr (std::is_same_v<T, double>) {
      assign(name, in.number(name), value);
    } else if constexpr (std::is_same_v<T, std::int64_t>) {
      assign(name, in.integer(name), value);
    } else if constexpr (IsId<T>::value) {
      assign(name, in.integer(name), value.value);
    } else {
      fromText(name, value);
    }
  }

  template <class T>
  void fromText(std::string_view name, T& value) const {
    const std::string text = in.requiredText(name);
    if (!in.ok()) return;
    bool known = false;
    if constexpr (std::is_same_v<T, Date>) {
      const auto date = parseDate(text);
      known = date.has_value();
      if (date) value = *date;
    } else if constexpr (std::is_same_v<T, Timestamp>) {
      const auto time = parseTimestamp(text);
      known = time.has_value();
      if (time) value = *time;
    } else if constexpr (std::is_same_v<T, QuantityKind>) {
      const auto kind = quantityKindFromWord(text);
      known = kind.has_value();
      if (kind) value = *kind;
    } else {
      const auto found = fromWord<T>(text);
      known = found.has_value();
      if (found) value = *found;
    }
    if (!known) {
      in.fail({ErrorCode::InvalidInput, "json.not_one_of", in.pathOf(name), {{"text", text}}});
    }
  }
};

/// Visits the header fields under their JSON names.
template <class Self, class V>
void headerFields(Self& entry, V&& visit) {
  visit("id", entry.id);
  visit("job", entry.job);
  visit("run", entry.run);
  visit("step", entry.step);
  visit("side", entry.side);
  visit("done_at", entry.doneAt);
  visit("entered_at", entry.enteredAt);
  visit("by", entry.by);
  visit("replaces", entry.replaces);
  visit("reason", entry.reason);
  visit("reason_text", entry.reasonText);
  visit("program_version", entry.programVersion);
}

template <std::size_t I = 0>
bool readPayload(std::string_view kind, ObjectReader& in, Payload& out) {
  if constexpr (I == std::variant_size_v<Payload>) {
    return false;
  } else {
    using Fact = std::variant_alternative_t<I, Payload>;
    if (Fact::kKind != kind) return readPayload<I + 1>(kind, in, out);
    Fact fact;
    Fact::fields(fact, Reader{in});
    out = std::move(fact);
    return true;
  }
}

}  // namespace

Json payloadJson(const Payload& payload) {
  Json json = Json::object();
  std::visit([&](const auto& fact) { std::decay_t<decltype(fact)>::fields(fact, Writer{json}); },
             payload);
  return json;
}

Json toJson(const Entry& entry) {
  Json json = Json::object();
  headerFields(entry, Writer{json});
  json["kind"] = std::string(kindOf(entry.payload));
  json["fact"] = payloadJson(entry.payload);
  return json;
}

Result<Entry> entryFromJson(const Json& json) {
  ObjectReader in(json, "");
  Entry entry;
  headerFields(entry, Reader{in});
  const std::string kind = in.requiredText("kind");
  const Json* fact = in.object("fact");
  if (fact == nullptr) in.fail({ErrorCode::Missing, "json.missing", "/fact", {}});
  if (!in.ok()) return tl::make_unexpected(*in.error());
  ObjectReader factReader(*fact, "/fact");
  if (!readPayload(kind, factReader, entry.payload)) {
    return sw::fail(ErrorCode::NotFound, "model.unknown_kind", "/kind", {{"kind", kind}});
  }
  if (auto done = factReader.finish(); !done) return failAs(done);
  if (auto done = in.finish(); !done) return failAs(done);
  return entry;
}

}  // namespace sw::model
