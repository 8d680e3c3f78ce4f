// SPDX-License-Identifier: GPL-3.0-or-later
#include <QApplication>
#include <QScreen>
#include <array>
#include <filesystem>

#include "cli/open_book.h"
#include "cli/resources.h"
#include "commands/commands.h"
#include "phrasing/error_sentence.h"
#include "ui/common/theme.h"
#include "ui/main_window.h"

namespace sw::app {

namespace {

constexpr QSize kUsualSize{1280, 800};
constexpr std::array kOptions{OptionSpec{"book", "PATH", "the book"}};

Result<void> makeFirstBook(const CommandContext& context) {
  const std::string path = bookPath(context);
  if (context.arguments.has("book") || std::filesystem::exists(path)) return {};
  std::error_code ignored;
  std::filesystem::create_directories(std::filesystem::path(path).parent_path(), ignored);
  const auto made = store::Book::create(path, context.clock);
  if (!made) return failAs(made);
  return {};
}

/// The setting of the desktop: a dark window colour asks for the dark look.
ui::Look lookOfDesktop() {
  const QColor window = QGuiApplication::palette().color(QPalette::Window);
  return window.lightnessF() < 0.5F ? ui::Look::Dark : ui::Look::Light;
}

int run(CommandContext& context) {
  if (qobject_cast<QApplication*>(QCoreApplication::instance()) == nullptr) {
    return context.fail({ErrorCode::Missing, "cli.no_display", {}, {}});
  }
  const auto resources = resourceFolder();
  if (!resources) return context.fail(resources.error());
  if (const auto made = makeFirstBook(context); !made) return context.fail(made.error());
  auto session = ui::ShopSession::open(bookPath(context), store::OpenMode::ReadWrite,
                                       resources->string(), context.clock);
  QString whoHasIt;
  if (!session && session.error().code == ErrorCode::BookLocked) {
    whoHasIt = phrasing::sentence(session.error());
    session = ui::ShopSession::open(bookPath(context), store::OpenMode::ViewOnly,
                                    resources->string(), context.clock);
  }
  if (!session) return context.fail(session.error());
  if (!(*session)->viewOnly()) copyOfTheDay(context, (*session)->workshop().book());
  // As it was left: after a power cut nobody looks for the key of the large digits.
  ui::applyTheme(ui::themeOf((*session)->look(), {lookOfDesktop(), ui::Mode::Desk}));
  ui::MainWindow window(**session);
  if (QGuiApplication::primaryScreen()->availableSize().width() <= kUsualSize.width() ||
      QGuiApplication::primaryScreen()->availableSize().height() <= kUsualSize.height()) {
    window.setWindowState(Qt::WindowMaximized);
  }
  window.resize(kUsualSize);
  window.show();
  if (!whoHasIt.isEmpty()) window.say(whoHasIt);
  return QApplication::exec();
}

}  // namespace

Command windowCommand() {
  return {.name = kWindowCommand,
          .summary = "open the window; the same as no command at all",
          .usage = "window [--book B]",
          .details =
              "A book in your data folder is made when it is missing. A book that another "
              "program has open is\nshown for reading.\n",
          .options = kOptions,
          .mostPositional = 0,
          .needsGui = NeedsGui::Display,
          .run = run};
}

}  // namespace sw::app
