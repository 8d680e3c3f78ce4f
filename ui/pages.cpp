// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages.h"

#include <QCoreApplication>
#include <algorithm>
#include <array>
#include <string>

#include "ui/bench/bench_page.h"
#include "ui/causes/causes_page.h"
#include "ui/causes/learning_page.h"
#include "ui/causes/numbers_page.h"
#include "ui/complaint/complaint_page.h"
#include "ui/complaint/new_job_page.h"
#include "ui/finish/finish_page.h"
#include "ui/help/help_page.h"
#include "ui/instruments/instruments_page.h"
#include "ui/kit/kit_page.h"
#include "ui/main_window.h"
#include "ui/quick/quick_page.h"
#include "ui/sheet/sheet_page.h"
#include "ui/start/start_page.h"
#include "ui/vehicles/vehicle_page.h"
#include "ui/work/work_page.h"

namespace sw::ui {

namespace {

constexpr std::array kPages{
    PageRow{PageId::Start, "open jobs, rechecks due, a new job", PageScope::Book},
    PageRow{PageId::NewJob, "a job in under a minute", PageScope::Book},
    PageRow{PageId::Work, "step by step: what to do, measure and torque, and the ledger",
            PageScope::Job},
    PageRow{PageId::Vehicle, "a vehicle, its spec sheet and its jobs", PageScope::Job},
    PageRow{PageId::Complaint, "the complaint, causes looked at, the start of the plan",
            PageScope::Job},
    PageRow{PageId::Causes, "what makes it shake, and which check next", PageScope::Job},
    PageRow{PageId::Numbers, "the numbers of causes and checks, and the shop's own",
            PageScope::Book},
    PageRow{PageId::Learning, "what ended jobs taught of causes", PageScope::Book},
    PageRow{PageId::Instruments, "scales, gauges and wrenches, and own checks of them",
            PageScope::Book},
    PageRow{PageId::Kit, "tools, parts and consumables of the plan, ticked off", PageScope::Job},
    PageRow{PageId::Quick, "a filled-in work card is copied into the job", PageScope::Job},
    PageRow{PageId::Sheet, "a job on paper: previewed, printed, saved as PDF", PageScope::Job},
    PageRow{PageId::Finish, "what stands against sign-off, and the end of the job", PageScope::Job},
    PageRow{PageId::Bench, "calculations to use outside of a step", PageScope::Book},
    PageRow{PageId::Help, "help on a page, and all keys", PageScope::Book},
};

}  // namespace

std::span<const PageRow> pages() {
  return kPages;
}

Page* makePage(PageId id, ShopSession& session, QWidget* parent) {
  switch (id) {
    case PageId::NewJob:
      return new NewJobPage(session, parent);
    case PageId::Work:
      return new WorkPage(session, parent);
    case PageId::Finish:
      return new FinishPage(session, parent);
    case PageId::Vehicle:
      return new VehiclePage(session, parent);
    case PageId::Complaint:
      return new ComplaintPage(session, parent);
    case PageId::Causes:
      return new CausesPage(session, parent);
    case PageId::Numbers:
      return new NumbersPage(session, parent);
    case PageId::Learning:
      return new LearningPage(session, parent);
    case PageId::Instruments:
      return new InstrumentsPage(session, parent);
    case PageId::Kit:
      return new KitPage(session, parent);
    case PageId::Quick:
      return new QuickPage(session, parent);
    case PageId::Sheet:
      return new SheetPage(session, parent);
    case PageId::Bench:
      return new BenchPage(session, parent);
    case PageId::Help:
      return new HelpPage(session, parent);
    case PageId::Start:
    default:
      return new StartPage(session, parent);
  }
}

Result<void> showPage(MainWindow& window, std::string_view name, Goal goal) {
  const auto id = fromWord<PageId>(name);
  const auto known = [&](const PageRow& row) { return id == row.id; };
  const auto* row = std::find_if(kPages.begin(), kPages.end(), known);
  if (row == kPages.end()) {
    std::string names;
    for (const PageRow& page : kPages) {
      names += (names.empty() ? "" : ", ") + std::string(wordOf(page.id));
    }
    return fail(ErrorCode::NotFound, "ui.no_page", "--page",
                {{"text", std::string(name)}, {"choices", names}});
  }
  if (row->scope == PageScope::Job && !goal.job) {
    return fail(ErrorCode::Missing, "ui.page_needs_job", "--job");
  }
  goal.page = *id;
  if (row->scope == PageScope::Book) goal.job.reset();
  window.go(goal);
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
