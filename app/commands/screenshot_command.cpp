// SPDX-License-Identifier: GPL-3.0-or-later
#include <QApplication>
#include <QTemporaryDir>
#include <array>
#include <charconv>
#include <ostream>

#include "cli/open_book.h"
#include "cli/resources.h"
#include "commands/commands.h"
#include "store/backup.h"
#include "ui/common/theme.h"
#include "ui/main_window.h"
#include "ui/pages.h"

namespace sw::app {

namespace {

constexpr int kLeastSide = 200;
constexpr int kMostSide = 8000;

constexpr std::array kOptions{
    OptionSpec{"book", "PATH", "the book"},
    OptionSpec{"page", "NAME", "which page; --list names them"},
    OptionSpec{"job", "N", "the job, for pages of a job"},
    OptionSpec{"step", "NAME", "procedure/step, for the work page"},
    OptionSpec{"side", "WORD", "left or right, for a step of a side"},
    OptionSpec{"by", "INITIALS", "who is at work"},
    OptionSpec{"out", "F.png", "where the picture goes"},
    OptionSpec{"size", "WxH", "logical pixels (1280x800)"},
    OptionSpec{"scale", "1|2", "pixels a logical pixel (1)"},
    OptionSpec{"theme", "WORD", "light, dark or high-contrast (light)"},
    OptionSpec{"mode", "WORD", "desk or workshop (desk)"},
    OptionSpec{"list", "", "the pages"},
};

Result<QSize> sizeOption(const CommandContext& context) {
  const std::string text = context.arguments.value("size").value_or("1280x800");
  int width = 0;
  int height = 0;
  const char* const end = text.data() + text.size();
  const auto first = std::from_chars(text.data(), end, width);
  const bool cross = first.ec == std::errc{} && first.ptr != end && *first.ptr == 'x';
  const auto second = cross ? std::from_chars(first.ptr + 1, end, height) : first;
  const bool fits =
      width >= kLeastSide && height >= kLeastSide && width <= kMostSide && height <= kMostSide;
  if (!cross || second.ec != std::errc{} || second.ptr != end || !fits) {
    return fail(ErrorCode::InvalidInput, "cli.not_a_size", "--size", {{"text", text}});
  }
  return QSize(width, height);
}

/// The word of an enumeration, `otherwise` where none is given.
template <HasWords E>
Result<E> wordOption(const CommandContext& context, const std::string& option, E otherwise) {
  const auto text = context.arguments.value(option);
  if (!text) return otherwise;
  if (const auto value = fromWord<E>(*text)) return *value;
  std::string choices;
  for (const auto& [value, word] : Words<E>::table) {
    choices += (choices.empty() ? "" : ", ") + std::string(word);
  }
  return fail(ErrorCode::InvalidInput, "cli.not_one_of", "--" + option,
              {{"text", *text}, {"choices", choices}});
}

Result<double> scaleOption(const CommandContext& context) {
  const std::string text = context.arguments.value("scale").value_or("1");
  if (text == "1" || text == "2") return text == "2" ? 2.0 : 1.0;
  return fail(ErrorCode::InvalidInput, "cli.not_one_of", "--scale",
              {{"text", text}, {"choices", "1, 2"}});
}

struct Wish {
  QSize size;
  double scale = 1;
  ui::Theme theme;
  std::string page, out;
  ui::Goal goal;
};

Result<Wish> readWish(const CommandContext& context) {
  Wish wish;
  const auto size = sizeOption(context);
  if (!size) return failAs(size);
  wish.size = *size;
  const auto scale = scaleOption(context);
  if (!scale) return failAs(scale);
  wish.scale = *scale;
  const auto look = wordOption(context, "theme", ui::Look::Light);
  if (!look) return failAs(look);
  const auto mode = wordOption(context, "mode", ui::Mode::Desk);
  if (!mode) return failAs(mode);
  wish.theme = {*look, *mode};
  const auto page = context.required("page");
  if (!page) return failAs(page);
  wish.page = *page;
  const auto out = context.required("out");
  if (!out) return failAs(out);
  wish.out = *out;
  if (context.arguments.has("job")) {
    const auto job = context.requiredNumber("job");
    if (!job) return failAs(job);
    wish.goal.job = model::JobId{*job};
  }
  wish.goal.step = context.arguments.value("step").value_or("");
  if (const auto side = context.arguments.value("side"))
    wish.goal.side = fromWord<model::Side>(*side);
  return wish;
}

int listPages(const CommandContext& context) {
  for (const ui::PageRow& page : ui::pages()) {
    context.streams.out << wordOf(page.id) << '\t' << page.summary << '\n';
  }
  return toInt(ExitCode::Done);
}

int run(CommandContext& context) {
  if (context.arguments.has("list")) return listPages(context);
  const auto wish = readWish(context);
  if (!wish) return context.fail(wish.error());
  const auto resources = resourceFolder();
  if (!resources) return context.fail(resources.error());
  // A checked copy that is thrown away: the pages are shown as they are while work goes on.
  const QTemporaryDir folder;
  if (!folder.isValid()) {
    return context.fail({ErrorCode::CannotWrite, "store.no_folder", "--out", {}});
  }
  const auto copy = store::backup(bookPath(context), folder.path().toStdString(), context.clock);
  if (!copy) return context.fail(copy.error());
  const auto session = ui::ShopSession::open(copy->path, store::OpenMode::ReadWrite,
                                             resources->string(), context.clock);
  if (!session) return context.fail(session.error());
  if (const auto by = context.arguments.value("by")) (*session)->setPerson(*by);
  ui::applyTheme(wish->theme);
  ui::MainWindow window(**session);
  const auto shown = ui::showPage(window, wish->page, wish->goal);
  if (!shown) return context.fail(shown.error());
  const QImage image = ui::pictureOf(window, wish->size, wish->scale);
  if (!image.save(QString::fromStdString(wish->out), "PNG")) {
    return context.fail(
        {ErrorCode::CannotWrite, "print.cannot_write", "--out", {{"path", wish->out}}});
  }
  context.streams.out << wish->out << '\n';
  return toInt(ExitCode::Done);
}

}  // namespace

Command screenshotCommand() {
  return {.name = "screenshot",
          .summary = "a picture of a page of the window",
          .usage =
              "screenshot --book B --page NAME --out F.png [--size WxH] [--scale 2] [--step S] "
              "[--theme dark] | screenshot --list",
          .details = "",
          .options = kOptions,
          .mostPositional = 0,
          .needsGui = NeedsGui::Widgets,
          .run = run};
}

}  // namespace sw::app
