// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/child.h"

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace sw::test {

namespace {

namespace fs = std::filesystem;

/// A folder of its own with a space in its name, gone at the end.
class TemporaryFolder {
 public:
  TemporaryFolder() {
    std::string pattern = (fs::temp_directory_path() / "a child XXXXXX").string();
    m_path = mkdtemp(pattern.data());
  }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  ~TemporaryFolder() {
    std::error_code ignored;
    fs::remove_all(m_path, ignored);
  }
  [[nodiscard]] std::string file(const char* name) const { return (m_path / name).string(); }

 private:
  fs::path m_path;
};

std::string contents(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

std::vector<char*> pointers(std::vector<std::string>& texts) {
  std::vector<char*> result;
  for (auto& text : texts) result.push_back(text.data());
  result.push_back(nullptr);
  return result;
}

}  // namespace

ChildRun runChild(const std::string& program, const ChildInput& input) {
  const TemporaryFolder folder;
  std::ofstream(folder.file("in"), std::ios::binary) << input.input;
  const std::string out = input.outFile.empty() ? folder.file("out") : input.outFile;
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  const std::string in = folder.file("in");
  const std::string err = folder.file("err");
  posix_spawn_file_actions_addopen(&actions, 0, in.c_str(), O_RDONLY, 0);
  posix_spawn_file_actions_addopen(&actions, 1, out.c_str(), O_WRONLY | O_CREAT, 0600);
  posix_spawn_file_actions_addopen(&actions, 2, err.c_str(), O_WRONLY | O_CREAT, 0600);
  std::vector<std::string> arguments{program};
  arguments.insert(arguments.end(), input.arguments.begin(), input.arguments.end());
  std::vector<std::string> environment{"PATH=/usr/bin:/bin"};
  environment.insert(environment.end(), input.environment.begin(), input.environment.end());
  pid_t child = 0;
  const int spawned = posix_spawn(&child, program.c_str(), &actions, nullptr,
                                  pointers(arguments).data(), pointers(environment).data());
  posix_spawn_file_actions_destroy(&actions);
  ChildRun run;
  int status = 0;
  if (spawned == 0 && waitpid(child, &status, 0) == child && WIFEXITED(status)) {
    run.exitCode = WEXITSTATUS(status);
  }
  if (input.outFile.empty()) run.out = contents(out);
  run.err = contents(err);
  return run;
}

}  // namespace sw::test
