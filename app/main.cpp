// SPDX-License-Identifier: GPL-3.0-or-later
#include <QApplication>
#include <QCoreApplication>
#include <QGuiApplication>
#include <QHash>
#include <clocale>
#include <csignal>
#include <iostream>
#include <memory>

#include "cli/run.h"
#include "commands/commands.h"

namespace {

/// A command opens no window: pages are laid out on the offscreen platform whatever the display, so
/// that they are the same everywhere.
void preparePlatform() {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
}

/// Qt tells where it keeps run-time files when the session names no folder (none are kept), and
/// that the offscreen platform has no window frames: nobody can do anything about either.
void dropPlatformNotices(QtMsgType, const QMessageLogContext&, const QString& message) {
  for (const char* notice : {"XDG_RUNTIME_DIR", "propagateSizeHints"}) {
    if (message.contains(QLatin1String(notice))) return;
  }
  std::cerr << message.toStdString() << '\n';
}

bool hasDisplay() {
  return !qEnvironmentVariableIsEmpty("DISPLAY") ||
         !qEnvironmentVariableIsEmpty("WAYLAND_DISPLAY") ||
         !qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM");
}

std::unique_ptr<QCoreApplication> makeApplication(sw::app::NeedsGui needsGui, int& count,
                                                  char** values) {
  using sw::app::NeedsGui;
  // Without a display the window says so; an application for it would end the program.
  const bool display = needsGui == NeedsGui::Display;
  if (needsGui == NeedsGui::No || (display && !hasDisplay())) {
    return std::make_unique<QCoreApplication>(count, values);
  }
  if (!display) preparePlatform();
  qInstallMessageHandler(dropPlatformNotices);
  std::unique_ptr<QCoreApplication> application;
  if (needsGui == NeedsGui::Yes) {
    application = std::make_unique<QGuiApplication>(count, values);
  } else {
    application = std::make_unique<QApplication>(count, values);
  }
  return application;
}

}  // namespace

int main(int count, char** values) {
  // A reader that goes away is an output that cannot be written, not a sudden end.
  (void)std::signal(SIGPIPE, SIG_IGN);
  // Qt writes the fonts of a PDF in the order of a hash table: the same facts give the same bytes.
  QHashSeed::setDeterministicGlobalSeed();
  std::ios::sync_with_stdio(false);
  const std::vector<std::string> arguments(values + (count > 0 ? 1 : 0), values + count);
  const auto commands = sw::app::commands();
  const auto* command = sw::app::requestedCommand(arguments, commands);
  // Qt takes its own options out of its copy only: ours are read from `arguments`.
  int qtCount = count > 0 ? 1 : 0;
  const auto application = makeApplication(
      command == nullptr ? sw::app::NeedsGui::No : command->needsGui, qtCount, values);
  QCoreApplication::setApplicationName(QStringLiteral("swivelwright"));
  QCoreApplication::setApplicationVersion(QStringLiteral(SW_VERSION));
  // Qt sets the user's locale; numbers in files and answers know none.
  (void)std::setlocale(LC_NUMERIC, "C");
  const sw::SystemClock clock;
  return sw::app::runProgram(arguments, commands, {std::cin, std::cout, std::cerr}, clock);
}
