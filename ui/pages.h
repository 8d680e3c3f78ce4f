// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QImage>
#include <QSize>
#include <optional>
#include <span>
#include <string_view>

#include "base/result.h"
#include "model/ids.h"

namespace sw::ui {

class MainWindow;

/// A page of the window by name, for pictures of it and for tests that walk all pages.
struct Page {
  std::string_view name;
  std::string_view summary;
  bool ofAJob = false;  ///< shows one job
};
[[nodiscard]] std::span<const Page> pages();

/// Goes to a page. Errors: NotFound "ui.no_page"; Missing "ui.page_needs_job".
[[nodiscard]] Result<void> showPage(MainWindow& window, std::string_view name,
                                    std::optional<model::JobId> job);

/// The window as it is, `size` logical pixels large, each of them `scale` pixels wide.
[[nodiscard]] QImage pictureOf(MainWindow& window, const QSize& size, double scale);

}  // namespace sw::ui
