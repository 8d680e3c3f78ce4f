// SPDX-License-Identifier: GPL-3.0-or-later
// From the start of a process to a window that is painted and waits for the hand: the program's
// window on a book with many jobs beside a bare QMainWindow of the same Qt, interleaved. Budget:
// the bare one and 150 ms. The daily copy of the book is not part of it.
//   start_bench [--jobs=10000] [--runs=11] [--folder=/tmp] [--keep] --demo=DEMO.swbook
// The book holds the demonstration's open jobs and the closed ones besides, one in four with a
// recheck that is due.
#include <sys/resource.h>
#include <unistd.h>

#include <QApplication>
#include <QLabel>
#include <QMainWindow>
#include <QProcess>
#include <QTimer>
#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <functional>
#include <iostream>
#include <string>
#include <vector>

#include "base/clock.h"
#include "store/book.h"
#include "ui/common/shop_session.h"
#include "ui/common/theme.h"
#include "ui/main_window.h"

namespace {

using namespace sw;
using Steady = std::chrono::steady_clock;

double milliseconds(Steady::duration time) {
  return std::chrono::duration<double, std::milli>(time).count();
}

void require(bool good, const std::string& what) {
  if (good) return;
  std::cerr << "start_bench: " << what << "\n";
  std::exit(1);
}

template <class T>
T got(Result<T> result) {
  require(result.has_value(), result ? "" : result.error().key);
  return std::move(*result);
}

/// Appends closed jobs of new vehicles, a thousand entries a transaction.
class Filler {
 public:
  explicit Filler(store::Book& book) : m_book(book) { m_next = got(book.nextEntryId()).value; }

  void vehicles(std::int64_t count) {
    const std::int64_t first = got(m_book.nextVehicleId()).value;
    for (std::int64_t i = 0; i < count; ++i) {
      model::Vehicle vehicle;
      vehicle.vehicle = {first + i};
      vehicle.registration = "Q " + std::to_string(1000 + i);
      vehicle.owner = "Owner of " + vehicle.registration;
      put(vehicle, std::nullopt);
    }
    flush();
    m_firstVehicle = first;
    m_vehicles = count;
  }

  void job(std::int64_t number, std::int64_t index) {
    model::JobOpened opened;
    opened.vehicle = {m_firstVehicle + index % m_vehicles};
    opened.request = "Shakes at about 70";
    put(opened, number);
    model::Complaint complaint;
    complaint.words = "worse after a bump";
    put(complaint, number);
    for (int i = 0; i < 16; ++i) put(model::Note{"left hub wet, looked at again"}, number);
    if (index % 4 == 0) {
      model::RecheckDue due;
      due.what = "Wheel nuts after the first drive";
      due.on = Date{2027, 1 + static_cast<int>(index / 4 % 12), 3};
      put(due, number);
    }
    put(model::JobClosed{model::JobOutcome::ClosedWithoutSignOff, "owner took it home"}, number);
    if (m_entries.size() > 1000) flush();
  }

  void flush() {
    if (m_entries.empty()) return;
    const auto done = m_book.append(m_entries);
    require(done.has_value(), done ? "" : done.error().key);
    m_entries.clear();
  }

 private:
  void put(model::Payload payload, std::optional<std::int64_t> job) {
    model::Entry entry;
    entry.id = {m_next++};
    if (job) entry.job = model::JobId{*job};
    // Twenty jobs a day, so that the day files are of the usual size.
    constexpr std::int64_t kDay = 24LL * 3600 * 1000;
    entry.doneAt = entry.enteredAt = {1'730'000'000'000 + (job.value_or(0) / 20) * kDay, 60};
    entry.programVersion = "bench";
    entry.payload = std::move(payload);
    m_entries.push_back(std::move(entry));
  }

  store::Book& m_book;
  std::vector<model::Entry> m_entries;
  std::int64_t m_next = 0, m_firstVehicle = 0, m_vehicles = 1;
};

void fill(const std::string& path, std::int64_t jobs) {
  const SystemClock clock;
  const auto book = got(store::Book::open(path, store::OpenMode::ReadWrite, clock));
  Filler filler(*book);
  filler.vehicles(std::max<std::int64_t>(1, jobs / 5));
  const std::int64_t first = got(book->nextJobId()).value;
  for (std::int64_t i = 0; i < jobs; ++i) filler.job(first + i, i);
  filler.flush();
}

/// A child: shows its window and ends at once as soon as nothing is left to paint or to do; taking
/// things down is no part of a start.
int show(QWidget& window, const std::function<void()>& shown = {}) {
  window.resize(1280, 800);
  window.show();
  QTimer::singleShot(0, [&] {
    QCoreApplication::processEvents();
    if (shown) shown();
    std::cout << std::flush;
    _exit(0);
  });
  return QApplication::exec();
}

int bare(int argc, char** argv) {
  const QApplication application(argc, argv);
  QMainWindow window;
  window.setCentralWidget(new QLabel(QStringLiteral("Bare"), &window));
  return show(window);
}

int program(int argc, char** argv, const std::string& book, bool tell) {
  const auto begin = Steady::now();
  const QApplication application(argc, argv);
  const auto qt = Steady::now();
  const SystemClock clock;
  const auto session = got(ui::ShopSession::open(book, store::OpenMode::ReadWrite,
                                                 std::string(SW_SOURCE_DIR) + "/resources", clock));
  const auto opened = Steady::now();
  ui::applyTheme({});
  ui::MainWindow window(*session);
  const auto made = Steady::now();
  return show(window, [&] {
    if (!tell) return;
    std::cout << "  of one start: Qt " << milliseconds(qt - begin) << " ms, book and procedures "
              << milliseconds(opened - qt) << " ms, window made " << milliseconds(made - opened)
              << " ms, shown and painted " << milliseconds(Steady::now() - made) << " ms\n";
  });
}

/// Wall time, and the time the child used of the processors, which other programs do not lengthen.
struct Taken {
  double wall = 0, processor = 0;
};

double processorOfChildren() {
  rusage used{};
  getrusage(RUSAGE_CHILDREN, &used);
  const auto of = [](const timeval& time) {
    return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_usec) / 1e3;
  };
  return of(used.ru_utime) + of(used.ru_stime);
}

Taken timeOf(const QString& self, const QStringList& arguments) {
  QProcess process;
  process.setProcessChannelMode(QProcess::ForwardedChannels);
  const double before = processorOfChildren();
  const auto begin = Steady::now();
  process.start(self, arguments);
  require(process.waitForFinished(60'000) && process.exitCode() == 0, "a child failed");
  return {milliseconds(Steady::now() - begin), processorOfChildren() - before};
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

}  // namespace

int main(int argc, char** argv) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  // That the offscreen platform has no window frames is no news.
  qInstallMessageHandler([](QtMsgType, const QMessageLogContext&, const QString&) {});
  std::int64_t jobs = 10'000;
  int runs = 11;
  bool keep = false;
  std::string folder = "/tmp", demo;
  for (int i = 1; i < argc; ++i) {
    const std::string one = argv[i];
    if (one == "--bare") return bare(argc, argv);
    if (one.starts_with("--program=")) return program(argc, argv, one.substr(10), false);
    if (one.starts_with("--parts=")) return program(argc, argv, one.substr(8), true);
    if (one.starts_with("--jobs=")) jobs = std::stoll(one.substr(7));
    if (one.starts_with("--runs=")) runs = std::stoi(one.substr(7));
    if (one.starts_with("--folder=")) folder = one.substr(9);
    if (one == "--keep") keep = true;
    if (one.starts_with("--demo=")) demo = one.substr(7);
  }
  require(!demo.empty(), "--demo names no book");
  const QCoreApplication application(argc, argv);
  const std::string place = folder + "/start_bench_" + std::to_string(getpid());
  const std::string book = place + "/book.swbook";
  std::filesystem::create_directory(place);
  std::filesystem::copy_file(demo, book);
  fill(book, jobs);
  const QString self = QCoreApplication::applicationFilePath();
  const QString ofBook = QString::fromStdString("--program=" + book);
  std::vector<double> bareWall, bareUsed, wall, used;
  for (int run = 0; run < runs; ++run) {
    const Taken bareOne = timeOf(self, {QStringLiteral("--bare")});
    const Taken one = timeOf(self, {ofBook});
    bareWall.push_back(bareOne.wall);
    bareUsed.push_back(bareOne.processor);
    wall.push_back(one.wall);
    used.push_back(one.processor);
  }
  const auto line = [](const char* what, double bareTime, double programTime) {
    std::cout << "  " << what << ": bare QMainWindow " << bareTime << " ms, program " << programTime
              << " ms, more by " << programTime - bareTime << " ms\n";
  };
  std::cout << jobs << " jobs beside the demonstration's, " << runs
            << " interleaved runs, medians\n";
  line("wall", median(bareWall), median(wall));
  line("processor", median(bareUsed), median(used));
  (void)timeOf(self, {QString::fromStdString("--parts=" + book)});
  if (!keep) std::filesystem::remove_all(place);
  return 0;
}
