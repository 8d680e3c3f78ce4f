// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <random>
#include <string>
#include <vector>

namespace sw::store {

/// A disk whose power can fail. It stands behind the SQLite VFS "cut" and keeps, beside the files
/// themselves (what the running system sees), the image that was synced (what the platter holds).
/// After a cut the files become that image plus a random part of what was written since, in a
/// random order, torn at 512 bytes. The model is that of SQLite's own crash tests (SQLite
/// documentation, "How SQLite Is Tested", 3.3), reduced to one process and to cuts at I/O calls.
class CutDisk {
 public:
  /// The one disk behind the VFS "cut", which the first call registers.
  static CutDisk& instance();

  /// A fresh disk that holds one synced file.
  void reset(const std::string& path, const std::string& content);
  /// The power fails at the n-th writing call from now.
  void cutAfter(int calls) { m_cutAt = m_calls + calls; }
  /// The n-th writing call from now fails once, with the power on.
  void failOnceAfter(int calls) { m_failAt = m_calls + calls; }
  [[nodiscard]] bool off() const { return m_off; }
  [[nodiscard]] int calls() const { return m_calls; }
  /// Puts the files into the state a restart would find.
  void restart(std::mt19937& random);

  struct Counts {
    int journalSyncs = 0;
    int bookSyncs = 0;
    int folderSyncs = 0;  ///< after the journal was deleted
  };
  Counts counts;

  // For the VFS.
  struct Operation {
    bool truncate = false;
    std::int64_t offset = 0;  ///< or the new size
    std::string bytes;
  };
  struct File {
    std::string synced;
    bool nameSynced = false;
    bool deletedUnsynced = false;
    std::vector<Operation> pending;
  };
  /// Counts one writing call; false if it fails.
  bool tick();
  File& file(const std::string& path) { return m_files[path]; }
  static void apply(std::string& content, const Operation& operation);

 private:
  std::map<std::string, File> m_files;
  int m_calls = 0;
  int m_cutAt = -1;
  int m_failAt = -1;
  bool m_off = false;
};

}  // namespace sw::store
