// SPDX-License-Identifier: GPL-3.0-or-later
#include <QTemporaryDir>
#include <array>
#include <filesystem>
#include <fstream>
#include <istream>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/open_book.h"
#include "cli/resources.h"
#include "commands/commands.h"
#include "phrasing/event_sentence.h"
#include "report_print/picture_intake.h"
#include "store/backup.h"
#include "workshop/command_json.h"
#include "workshop/workshop.h"

namespace sw::app {

namespace {

using model::Json;

constexpr std::array kOptions{
    OptionSpec{"book", "PATH", "the book"},
    OptionSpec{"script", "FILE", "one JSON object a line; - for standard input"},
    OptionSpec{"create", "", "make the book if it is missing"},
    OptionSpec{"dry-run", "", "judge on a copy, write nothing"},
    OptionSpec{"describe", "", "every command with its fields and an example, as JSON"},
};

constexpr std::string_view kDetails =
    "Each line is answered by one line, after its commit: {\"id\",\"entry\",\"entries\",\"job\",\n"
    "\"events\"}, or {\"id\",\"error\":{\"code\",\"field\",\"message\"}}. A line without \"job\" "
    "means the job last named\nor opened, one without \"by\" the person last named. An error "
    "writes nothing and ends nothing;\nthe exit code is then 2. Each event carries its values and, "
    "as \"text\", its sentence. "
    "{\"do\":\"undo\"} takes the last action of the job\nback; it stays on record.\n";

Json eventJson(const workshop::Event& event) {
  Json json = Json::object();
  json["event"] = event.key;
  for (const auto& [name, value] : event.values) json[name] = value;
  json["text"] = phrasing::eventSentence(event.key, event.values).toStdString();
  return json;
}

Json answerJson(const std::string& id, const workshop::Outcome& outcome) {
  Json json = Json::object();
  json["id"] = id;
  if (!outcome.entries.empty()) {
    json["entry"] = outcome.entries.front().value;
    json["entries"] = outcome.entries.size();
  }
  if (outcome.job) json["job"] = outcome.job->value;
  json["events"] = Json::array();
  for (const auto& event : outcome.events) json["events"].push_back(eventJson(event));
  return json;
}

Json errorJson(const std::string& id, const Error& error) {
  Json body = Json::object();
  body["code"] = std::string(codeWord(error));
  if (!error.field.empty()) body["field"] = error.field;
  body["message"] = sentenceText(error);
  Json refusals = Json::array();
  for (const auto& [name, value] : error.details) {
    if (name == "refusal") refusals.push_back(value);
  }
  if (!refusals.empty()) body["refusals"] = std::move(refusals);
  return Json{{"id", id}, {"error", std::move(body)}};
}

/// Feeds the lines of a script to the workshop; remembers who and which job were named last.
class ScriptRun {
 public:
  ScriptRun(workshop::Workshop& shop, std::ostream& out) : m_shop(shop), m_out(out) {}

  [[nodiscard]] bool allAccepted() const { return m_allAccepted; }

  void line(const std::string& text) {
    ++m_number;
    if (text.find_first_not_of(" \t\r") == std::string::npos) return;
    const auto json = model::parseJson(text);
    if (!json) return answer(errorJson(std::to_string(m_number), json.error()), false);
    auto command = workshop::commandFromJson(*json);
    if (!command) return answer(errorJson(idOf(*json), command.error()), false);
    if (command->id.empty()) command->id = std::to_string(m_number);
    if (command->job) m_job = command->job;
    if (command->by) m_by = command->by;
    command->job = m_job;
    command->by = m_by;
    const auto outcome = m_shop.perform(*command);
    if (!outcome) return answer(errorJson(command->id, outcome.error()), false);
    if (outcome->job) m_job = outcome->job->value;
    answer(answerJson(command->id, *outcome), true);
  }

 private:
  [[nodiscard]] std::string idOf(const Json& json) const {
    if (json.is_object() && json.contains("id") && json["id"].is_string()) {
      return json["id"].get<std::string>();
    }
    return std::to_string(m_number);
  }

  void answer(const Json& json, bool accepted) {
    m_allAccepted = m_allAccepted && accepted;
    m_out << json.dump() << '\n' << std::flush;
  }

  workshop::Workshop& m_shop;
  std::ostream& m_out;
  std::size_t m_number = 0;
  bool m_allAccepted = true;
  std::optional<std::int64_t> m_job;
  std::optional<std::string> m_by;
};

int runLines(CommandContext& context, store::Book& book, std::istream& in) {
  const auto resources = resourceFolder();
  if (!resources) return context.fail(resources.error());
  const auto library = procedures::Library::load(resources->string());
  for (const Error& problem : library.problems()) {
    context.streams.err << errorLine(problem, context.name, context.errorFormat);
  }
  const report_print::QtPictureIntake pictures;
  workshop::Workshop shop(book, library, context.clock, &pictures);
  ScriptRun run(shop, context.streams.out);
  std::string text;
  while (std::getline(in, text)) run.line(text);
  if (!context.streams.out) return toInt(ExitCode::CannotWrite);
  return toInt(run.allAccepted() ? ExitCode::Done : ExitCode::BadInput);
}

Result<std::unique_ptr<store::Book>> openOrCreate(const CommandContext& context) {
  const std::string path = bookPath(context);
  if (context.arguments.has("create") && !std::filesystem::exists(path)) {
    std::error_code ignored;
    std::filesystem::create_directories(std::filesystem::path(path).parent_path(), ignored);
    return store::Book::create(path, context.clock);
  }
  return openBook(context, store::OpenMode::ReadWrite);
}

/// Judges the lines on a checked copy that is thrown away.
int dryRun(CommandContext& context, std::istream& in) {
  const QTemporaryDir folder;
  if (!folder.isValid()) {
    return context.fail({ErrorCode::CannotWrite, "store.no_folder", "--dry-run", {}});
  }
  auto copy = store::backup(bookPath(context), folder.path().toStdString(), context.clock);
  if (!copy) return context.fail(copy.error());
  auto book = store::Book::open(copy->path, store::OpenMode::ReadWrite, context.clock);
  if (!book) return context.fail(book.error());
  return runLines(context, **book, in);
}

int runScript(CommandContext& context, std::istream& in) {
  if (context.arguments.has("dry-run")) return dryRun(context, in);
  auto book = openOrCreate(context);
  if (!book) return context.fail(book.error());
  copyOfTheDay(context, **book);
  return runLines(context, **book, in);
}

int run(CommandContext& context) {
  if (context.arguments.has("describe")) {
    context.streams.out << workshop::describeCommands().dump(2) << '\n';
    return toInt(ExitCode::Done);
  }
  const auto script = context.required("script");
  if (!script) return context.fail(script.error());
  if (*script == "-") return runScript(context, context.streams.in);
  std::ifstream file(*script, std::ios::binary);
  if (!file) {
    return context.fail({ErrorCode::NotFound, "cli.cannot_read", "--script", {{"text", *script}}});
  }
  return runScript(context, file);
}

}  // namespace

Command jobCommand() {
  return {"job",
          "feed a job to a book, one JSON command a line",
          "job --book B --script F.jsonl [--create] [--dry-run] | job --describe",
          kDetails,
          kOptions,
          0,
          NeedsGui::Yes,
          &run};
}

}  // namespace sw::app
