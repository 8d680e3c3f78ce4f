// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QImage>
#include <QSize>
#include <optional>
#include <span>
#include <string_view>

#include "base/result.h"
#include "ui/common/goal.h"

class QWidget;

namespace sw::ui {

class MainWindow;
class Page;
class ShopSession;

/// What a page shows: the book, or one job (or the vehicle of that job).
enum class PageScope { Book, Job };

/// A page of the window by name, for pictures of it and for tests that walk all pages.
struct PageRow {
  PageId id;
  std::string_view summary;
  PageScope scope = PageScope::Book;
};
[[nodiscard]] std::span<const PageRow> pages();
/// Makes the page; `parent` owns it.
[[nodiscard]] Page* makePage(PageId id, ShopSession& session, QWidget* parent);

/// Goes to a page. Errors: NotFound "ui.no_page"; Missing "ui.page_needs_job".
/// Of `goal`, page and scope are filled in.
[[nodiscard]] Result<void> showPage(MainWindow& window, std::string_view name, Goal goal);

/// The window as it is, `size` logical pixels large, each of them `scale` pixels wide.
[[nodiscard]] QImage pictureOf(MainWindow& window, const QSize& size, double scale);

}  // namespace sw::ui
