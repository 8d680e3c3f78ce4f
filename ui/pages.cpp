// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages.h"

#include <QCoreApplication>
#include <array>
#include <string>

#include "ui/main_window.h"

namespace sw::ui {

namespace {

constexpr std::array kPages{
    Page{"start", "open jobs, rechecks due, a new job", false},
    Page{"new-job", "a job in under a minute", false},
    Page{"sheet", "a job on paper: previewed, saved as PDF", true},
};

}  // namespace

std::span<const Page> pages() {
  return kPages;
}

Result<void> showPage(MainWindow& window, std::string_view name, std::optional<model::JobId> job) {
  if (name == "start") {
    window.showStart();
  } else if (name == "new-job") {
    window.showNewJob();
  } else if (name == "sheet") {
    if (!job) return fail(ErrorCode::Missing, "ui.page_needs_job", "--job");
    window.showSheet(*job);
  } else {
    std::string names;
    for (const Page& page : kPages) names += (names.empty() ? "" : ", ") + std::string(page.name);
    return fail(ErrorCode::NotFound, "ui.no_page", "--page",
                {{"text", std::string(name)}, {"choices", names}});
  }
  return {};
}

QImage pictureOf(MainWindow& window, const QSize& size, double scale) {
  window.resize(size);
  window.show();
  // Layouts settle in the event loop; what wraps settles in a second round.
  for (int round = 0; round < 3; ++round) QCoreApplication::processEvents();
  QImage image((QSizeF(size) * scale).toSize(), QImage::Format_ARGB32_Premultiplied);
  image.setDevicePixelRatio(scale);
  image.fill(window.palette().color(QPalette::Window));
  window.render(&image);
  return image;
}

}  // namespace sw::ui
