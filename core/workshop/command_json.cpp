// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/command_json.h"

#include <nlohmann/json.hpp>
#include <type_traits>

#include "workshop/command_examples.h"

namespace sw::workshop {

namespace {

using model::Json;
using model::ObjectReader;

template <class T>
struct Inner {
  using type = T;
  static constexpr bool kOptional = false;
};
template <class T>
struct Inner<std::optional<T>> {
  using type = T;
  static constexpr bool kOptional = true;
};

template <HasWords E>
std::vector<std::string_view> wordsOf() {
  std::vector<std::string_view> words;
  for (const auto& [value, text] : Words<E>::table) words.push_back(text);
  return words;
}

template <class T>
std::optional<T> readValue(ObjectReader& in, std::string_view name) {
  if constexpr (std::is_same_v<T, std::string>) {
    return in.text(name);
  } else if constexpr (std::is_same_v<T, bool>) {
    return in.boolean(name);
  } else if constexpr (std::is_same_v<T, std::int64_t>) {
    return in.integer(name);
  } else if constexpr (std::is_same_v<T, double>) {
    return in.number(name);
  } else if constexpr (std::is_same_v<T, JsonText>) {
    const Json* value = in.object(name);
    return value == nullptr ? std::nullopt : std::optional(JsonText{value->dump()});
  } else {
    const auto word = in.oneOf(name, wordsOf<T>());
    return word ? fromWord<T>(*word) : std::nullopt;
  }
}

struct Reader {
  ObjectReader& in;

  template <class T>
  void operator()(std::string_view name, T& value, std::string_view) const {
    using Value = typename Inner<T>::type;
    auto read = readValue<Value>(in, name);
    if constexpr (Inner<T>::kOptional) {
      value = std::move(read);
    } else if (read) {
      value = std::move(*read);
    } else if (in.ok()) {
      in.fail({ErrorCode::Missing, "json.missing", in.pathOf(name), {}});
    }
  }
};

struct Writer {
  Json& out;

  template <class T>
  void operator()(std::string_view name, const T& value, std::string_view meaning) const {
    if constexpr (Inner<T>::kOptional) {
      if (value) (*this)(name, *value, meaning);
    } else if constexpr (HasWords<T>) {
      out[std::string(name)] = std::string(wordOf(value));
    } else if constexpr (std::is_same_v<T, JsonText>) {
      out[std::string(name)] = Json::parse(value.text, nullptr, false);
    } else {
      out[std::string(name)] = value;
    }
  }
};

template <class T>
constexpr std::string_view typeName() {
  if constexpr (std::is_same_v<T, std::string>)
    return "text";
  else if constexpr (std::is_same_v<T, bool>)
    return "true_or_false";
  else if constexpr (std::is_same_v<T, std::int64_t>)
    return "whole_number";
  else if constexpr (std::is_same_v<T, double>)
    return "number";
  else if constexpr (std::is_same_v<T, JsonText>)
    return "object";
  else
    return "word";
}

struct Describer {
  Json& fields;

  template <class T>
  void operator()(std::string_view name, const T&, std::string_view meaning) const {
    using Value = typename Inner<T>::type;
    Json field = Json::object();
    field["name"] = std::string(name);
    field["type"] = std::string(typeName<Value>());
    field["required"] = !Inner<T>::kOptional;
    if constexpr (HasWords<Value>) {
      field["words"] = Json::array();
      for (const auto word : wordsOf<Value>()) field["words"].push_back(std::string(word));
    }
    field["meaning"] = std::string(meaning);
    fields.push_back(std::move(field));
  }
};

/// The fields every command may carry.
template <class Self, class V>
void commonFields(Self& command, V&& visit) {
  visit("by", command.by, "initials of who did it");
  visit("done_at", command.doneAt, "when the hands did it (ISO 8601); default now");
  visit("job", command.job, "job number; default the last one named or opened");
  visit("step", command.step, "procedure/step");
  visit("side", command.side, "as seen from the driver's seat");
  visit("round", command.round, "round of the procedure; default the newest");
}

template <std::size_t I = 0>
bool readAction(std::string_view name, ObjectReader& in, Action& out) {
  if constexpr (I == std::variant_size_v<Action>) {
    return false;
  } else {
    using One = std::variant_alternative_t<I, Action>;
    if (One::kName != name) return readAction<I + 1>(name, in, out);
    One action;
    One::fields(action, Reader{in});
    out = std::move(action);
    return true;
  }
}

template <std::size_t I = 0>
void describeActions(Json& list) {
  if constexpr (I < std::variant_size_v<Action>) {
    using One = std::variant_alternative_t<I, Action>;
    Json entry = Json::object();
    entry["do"] = std::string(One::kName);
    entry["summary"] = std::string(One::kSummary);
    entry["fields"] = Json::array();
    One action;
    One::fields(action, Describer{entry["fields"]});
    entry["example"] = std::string(exampleOf(One::kName));
    list.push_back(std::move(entry));
    describeActions<I + 1>(list);
  }
}

std::string idText(const Json* id) {
  if (id == nullptr) return {};
  return id->is_string() ? id->get<std::string>() : id->dump();
}

}  // namespace

Result<Command> commandFromJson(const Json& json) {
  ObjectReader in(json, "");
  Command command;
  command.id = idText(in.raw("id"));
  const std::string name = in.requiredText("do");
  commonFields(command, Reader{in});
  if (!in.ok()) return tl::make_unexpected(*in.error());
  if (!readAction(name, in, command.action)) {
    return fail(ErrorCode::NotFound, "workshop.unknown_command", "/do", {{"text", name}});
  }
  if (auto done = in.finish(); !done) return failAs(done);
  return command;
}

Json toJson(const Command& command) {
  Json json = Json::object();
  if (!command.id.empty()) json["id"] = command.id;
  std::visit(
      [&](const auto& action) { json["do"] = std::string(std::decay_t<decltype(action)>::kName); },
      command.action);
  commonFields(command, Writer{json});
  std::visit(
      [&](const auto& action) { std::decay_t<decltype(action)>::fields(action, Writer{json}); },
      command.action);
  return json;
}

Json describeCommands() {
  Json description = Json::object();
  description["common_fields"] = Json::array();
  Command command;
  commonFields(command, Describer{description["common_fields"]});
  description["commands"] = Json::array();
  describeActions(description["commands"]);
  return description;
}

}  // namespace sw::workshop
