// SPDX-License-Identifier: GPL-3.0-or-later
// At the work page with the demonstration job at its end: a key in the readings field until its
// verdict is painted (budget: one 60 Hz frame, 16.7 ms), Enter until the reading is in the book and
// the page shown anew, and how much of that is the book's own append.
//   work_bench [--keys=200] [--folder=/tmp] --demo=DEMO.swbook
#include <unistd.h>

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QTest>
#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iomanip>
#include <iostream>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "model/json.h"
#include "ui/common/shop_session.h"
#include "ui/common/theme.h"
#include "ui/main_window.h"
#include "workshop/command_json.h"
#include "workshop/last_action.h"
#include "workshop/step_status.h"

namespace {

using namespace sw;
using Steady = std::chrono::steady_clock;

const std::string kResources = std::string(SW_SOURCE_DIR) + "/resources";
constexpr model::JobId kJob{13};  // the demonstration shop has had twelve

void require(bool good, const std::string& what) {
  if (good) return;
  std::cerr << "work_bench: " << what << "\n";
  std::exit(1);
}

template <class T>
T got(Result<T> result) {
  require(result.has_value(), result ? "" : result.error().key);
  return std::move(*result);
}

double millisecondsOf(const std::function<void()>& work) {
  const auto begin = Steady::now();
  work();
  return std::chrono::duration<double, std::milli>(Steady::now() - begin).count();
}

void tell(const std::string& what, std::vector<double> times) {
  std::sort(times.begin(), times.end());
  const auto at = [&](double part) {
    return times[static_cast<std::size_t>(part * static_cast<double>(times.size() - 1))];
  };
  std::cout << std::left << std::setw(52) << what << std::right << std::fixed
            << std::setprecision(2) << " median " << std::setw(7) << at(0.5) << "  95 % "
            << std::setw(7) << at(0.95) << "  most " << std::setw(7) << at(1.0) << " ms  ("
            << times.size() << ")\n";
}

std::vector<double> repeated(int times, const std::function<void()>& work) {
  std::vector<double> measured;
  for (int i = 0; i < times; ++i) measured.push_back(millisecondsOf(work));
  return measured;
}

/// The demonstration job without its signing off.
void play(const std::string& path) {
  const SystemClock clock;
  const auto book = got(store::Book::open(path, store::OpenMode::ReadWrite, clock));
  const auto library = procedures::Library::load(kResources);
  workshop::Workshop workshop(*book, library, clock, nullptr);
  std::ifstream in(kResources + "/demo/job.jsonl");
  std::optional<std::int64_t> job;
  for (std::string line; std::getline(in, line);) {
    auto command = got(workshop::commandFromJson(got(model::parseJson(line))));
    if (std::holds_alternative<workshop::SignOff>(command.action)) continue;
    if (!command.job) command.job = job;
    const auto done = workshop.perform(command);  // some lines are refused on purpose
    if (done && done->job) job = done->job->value;
  }
  require(job == kJob.value, "the demonstration job has another number");
}

void settle() {
  QCoreApplication::sendPostedEvents();
  QCoreApplication::processEvents();
}

void tellParts(ui::ShopSession& session) {
  const auto& workshop = session.workshop();
  const auto job = std::make_shared<workshop::JobState>(got(workshop.job(kJob)));
  std::cout << "job: " << job->entries.size() << " entries, " << job->steps.size() << " steps\n";
  const auto now = workshop.clock().now();
  tell("  derived from facts in memory", repeated(50, [&] { (void)workshop.job(kJob); }));
  tell("  copied", repeated(50, [&] { const workshop::JobState copy = *job; }));
  tell("  lines of its steps", repeated(50, [&] { (void)workshop::stepLines(*job, now); }));
  tell("  its last action", repeated(50, [&] { (void)workshop::lastAction(*job); }));
}

}  // namespace

int main(int argc, char** argv) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  // That the offscreen platform has no window frames is no news.
  qInstallMessageHandler([](QtMsgType, const QMessageLogContext&, const QString&) {});
  int keys = 200;
  std::string folder = "/tmp", demo;
  for (int i = 1; i < argc; ++i) {
    const std::string one = argv[i];
    if (one.starts_with("--keys=")) keys = std::stoi(one.substr(7));
    if (one.starts_with("--folder=")) folder = one.substr(9);
    if (one.starts_with("--demo=")) demo = one.substr(7);
  }
  require(!demo.empty(), "--demo names no book");
  const QApplication application(argc, argv);
  ui::applyTheme({});
  const std::string place = folder + "/work_bench_" + std::to_string(getpid());
  const std::string path = place + "/book.swbook";
  std::filesystem::create_directory(place);
  std::filesystem::copy_file(demo, path);
  play(path);
  const SystemClock clock;
  auto session = got(ui::ShopSession::open(path, store::OpenMode::ReadWrite, kResources, clock));
  session->setPerson((*session->workshop().shop())->people().front()->fact.initials);
  ui::MainWindow window(*session);
  window.resize(1280, 800);
  window.show();
  window.go({ui::PageId::Work, kJob, {}, "as-found-pull/pull_ahead", model::Side::Left});
  settle();
  tellParts(*session);
  tell("page shown anew (changed, painted)", repeated(30, [&] {
         emit session->changed();
         settle();
       }));

  auto* readings = window.findChild<QLineEdit*>(QStringLiteral("readings"));
  require(readings != nullptr && readings->isVisible() && readings->isEnabled(), "no field");
  readings->setFocus();
  const QString text = QStringLiteral("18.6 18.8 19.0 18.4 ");
  std::vector<double> typed;
  for (int i = 0; i < keys; ++i) {
    if (i % text.size() == 0) readings->clear();
    settle();
    const QChar key = text.at(i % text.size());
    typed.push_back(millisecondsOf([&] {
      QTest::keyClick(readings, key.toLatin1());
      settle();
    }));
  }
  tell("a key until its verdict is painted", typed);
  workshop::TakeReadings take;
  take.readings = "18.6 18.8";
  const auto used = got(session->job(kJob));
  const std::size_t step = *workshop::stepNamed(*used, "as-found-pull/pull_ahead (left)");
  const auto* series = used->newestSeries(step);
  const auto* shop = *session->workshop().shop();
  take.instrument = shop->revision<model::Instrument>(series->fact.instrument)->name;
  tell("  of it: judged beforehand (rehearse)",
       repeated(30, [&] { (void)session->rehearse(take, ui::whereOf(*used, step)); }));

  std::vector<double> saved;
  for (int i = 0; i < 15; ++i) {
    readings->clear();
    QTest::keyClicks(readings, QStringLiteral("18.6"));
    settle();
    const auto before = got(session->workshop().book().nextEntryId());
    saved.push_back(millisecondsOf([&] {
      QTest::keyClick(readings, Qt::Key_Return);
      settle();
    }));
    require(got(session->workshop().book().nextEntryId()) > before, "nothing was saved");
  }
  tell("Enter until saved and shown anew", saved);
  std::vector<double> appended;
  for (int i = 0; i < 15; ++i) {
    // The same two facts: a reading and the verdict that follows.
    const auto job = got(session->job(kJob));
    std::vector<model::Entry> entries;
    for (const auto& entry : job->entries) {
      if (model::as<model::Reading>(*entry) == nullptr || !entries.empty()) continue;
      entries.assign(2, *entry);
    }
    auto& book = session->workshop().book();
    entries[0].id = got(book.nextEntryId());
    entries[1].id = {entries[0].id.value + 1};
    for (auto& entry : entries) entry.replaces.reset(), entry.reason.reset();
    appended.push_back(
        millisecondsOf([&] { require(book.append(entries).has_value(), "append"); }));
  }
  tell("  of it: the append of two facts by the book alone", appended);
  std::filesystem::remove_all(place);
  return 0;
}
