// SPDX-License-Identifier: GPL-3.0-or-later
// A developer's tool: writes the commands of a simulated job as a script, one JSON object a line.
//   record_job SETUP.jsonl REGISTRATION START OUT.jsonl [PLAN]
// SETUP is fed first and not written; START is the time the job begins (ISO 8601); PLAN is
// swivel-preload where it is not named.
#include <QCoreApplication>
#include <QTemporaryDir>
#include <fstream>
#include <iostream>
#include <nlohmann/json.hpp>

#include "demo/mechanic.h"
#include "workshop/command_json.h"

namespace {

int complain(const sw::Error& error) {
  std::cerr << error.key << " " << error.field << " " << error.detail("refusal") << "\n";
  return 1;
}

class Recorder {
 public:
  Recorder(sw::ManualClock& clock, std::ostream& out) : m_clock(clock), m_out(out) {}

  void operator()(sw::workshop::Command command) {
    command.job.reset();
    command.id = std::to_string(++m_number);
    command.doneAt = sw::toIso(m_clock.now());
    m_out << sw::workshop::toJson(command).dump() << "\n";
  }

 private:
  sw::ManualClock& m_clock;
  std::ostream& m_out;
  int m_number = 0;
};

}  // namespace

int main(int count, char** values) {
  using namespace sw;
  if (count != 5 && count != 6) return 2;
  const std::string plan = count == 6 ? values[5] : "swivel-preload";
  const QCoreApplication application(count, values);
  const auto start = parseTimestamp(values[3]);
  if (!start) return complain(start.error());
  ManualClock clock(*start);
  const QTemporaryDir folder;
  auto book = store::Book::create(folder.filePath("record.swbook").toStdString(), clock);
  if (!book) return complain(book.error());
  const auto library = procedures::Library::load(std::string(SW_SOURCE_DIR) + "/resources");
  workshop::Workshop shop(**book, library, clock, nullptr);
  std::ifstream setUp(values[1]);
  for (std::string line; std::getline(setUp, line);) {
    const auto json = model::parseJson(line);
    if (!json) return complain(json.error());
    const auto command = workshop::commandFromJson(*json);
    if (!command) return complain(command.error());
    if (const auto done = shop.perform(*command); !done) return complain(done.error());
  }
  std::ofstream out(values[4]);
  app::demo::Mechanic mechanic(shop, clock, "MT", 20261123);
  mechanic.setListener(Recorder(clock, out));
  workshop::Command open;
  const auto* known = library.plan(plan);
  const bool preload = plan == "swivel-preload";
  open.action =
      workshop::OpenJob{values[2], std::nullopt,
                        preload || known == nullptr ? "Shakes at the wheel near 70" : known->title};
  const auto opened = mechanic.send(open);
  if (!opened) return complain(opened.error());
  const auto started = mechanic.send(*opened->job, workshop::StartPlan{plan, std::nullopt});
  if (!started) return complain(started.error());
  app::demo::Situation situation;
  situation.left.interferenceMillimetres = 0.375;
  situation.right.interferenceMillimetres = 0.46;
  if (const auto worked = mechanic.work(*opened->job, situation); !worked) {
    return complain(worked.error());
  }
  if (const auto signedOff = mechanic.send(*opened->job, workshop::SignOff{}); !signedOff) {
    return complain(signedOff.error());
  }
  return 0;
}
