// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut_vfs.h"

#include <sqlite3.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>

namespace sw::store {

namespace {

constexpr std::size_t kSector = 512;

sqlite3_vfs* realVfs = nullptr;

struct CutFile {
  sqlite3_file base;
  const std::string* path;  // nullptr for files without a name
  sqlite3_file* real;
};

CutFile* cutFile(sqlite3_file* file) {
  return reinterpret_cast<CutFile*>(file);
}
sqlite3_file* realFile(sqlite3_file* file) {
  return cutFile(file)->real;
}
bool off() {
  return CutDisk::instance().off();
}

int cutClose(sqlite3_file* file) {
  delete cutFile(file)->path;
  return realFile(file)->pMethods->xClose(realFile(file));
}
int cutRead(sqlite3_file* file, void* data, int size, sqlite3_int64 offset) {
  return off() ? SQLITE_IOERR_READ
               : realFile(file)->pMethods->xRead(realFile(file), data, size, offset);
}
int cutWrite(sqlite3_file* file, const void* data, int size, sqlite3_int64 offset) {
  CutDisk& disk = CutDisk::instance();
  if (disk.off()) return SQLITE_IOERR_WRITE;
  const bool good = disk.tick();
  if (!good && !disk.off()) return SQLITE_IOERR_WRITE;
  disk.file(*cutFile(file)->path)
      .pending.push_back(
          {false, offset,
           std::string(static_cast<const char*>(data), static_cast<std::size_t>(size))});
  if (!good) return SQLITE_IOERR_WRITE;
  return realFile(file)->pMethods->xWrite(realFile(file), data, size, offset);
}
int cutTruncate(sqlite3_file* file, sqlite3_int64 size) {
  CutDisk& disk = CutDisk::instance();
  if (disk.off()) return SQLITE_IOERR_TRUNCATE;
  const bool good = disk.tick();
  if (!good && !disk.off()) return SQLITE_IOERR_TRUNCATE;
  disk.file(*cutFile(file)->path).pending.push_back({true, size, {}});
  if (!good) return SQLITE_IOERR_TRUNCATE;
  return realFile(file)->pMethods->xTruncate(realFile(file), size);
}
int cutSync(sqlite3_file* file, int) {
  CutDisk& disk = CutDisk::instance();
  if (!disk.tick()) return SQLITE_IOERR_FSYNC;
  const std::string& path = *cutFile(file)->path;
  CutDisk::File& state = disk.file(path);
  for (const auto& operation : state.pending) CutDisk::apply(state.synced, operation);
  state.pending.clear();
  state.nameSynced = true;  // the system's VFS syncs the folder with a new journal's first sync
  ++(path.ends_with("-journal") ? disk.counts.journalSyncs : disk.counts.bookSyncs);
  return SQLITE_OK;
}
int cutFileSize(sqlite3_file* file, sqlite3_int64* size) {
  return off() ? SQLITE_IOERR_FSTAT : realFile(file)->pMethods->xFileSize(realFile(file), size);
}
int cutLock(sqlite3_file* file, int level) {
  return realFile(file)->pMethods->xLock(realFile(file), level);
}
int cutUnlock(sqlite3_file* file, int level) {
  return realFile(file)->pMethods->xUnlock(realFile(file), level);
}
int cutReserved(sqlite3_file* file, int* out) {
  return realFile(file)->pMethods->xCheckReservedLock(realFile(file), out);
}
int cutControl(sqlite3_file* file, int operation, void* argument) {
  return realFile(file)->pMethods->xFileControl(realFile(file), operation, argument);
}
int cutSectorSize(sqlite3_file* file) {
  return realFile(file)->pMethods->xSectorSize(realFile(file));
}
int cutCharacteristics(sqlite3_file* file) {
  return realFile(file)->pMethods->xDeviceCharacteristics(realFile(file));
}

const sqlite3_io_methods kMethods{1,
                                  cutClose,
                                  cutRead,
                                  cutWrite,
                                  cutTruncate,
                                  cutSync,
                                  cutFileSize,
                                  cutLock,
                                  cutUnlock,
                                  cutReserved,
                                  cutControl,
                                  cutSectorSize,
                                  cutCharacteristics,
                                  nullptr,
                                  nullptr,
                                  nullptr,
                                  nullptr,
                                  nullptr,
                                  nullptr};

int cutOpen(sqlite3_vfs*, const char* name, sqlite3_file* file, int flags, int* outFlags) {
  CutFile* self = cutFile(file);
  self->base.pMethods = nullptr;
  if (off()) return SQLITE_CANTOPEN;
  self->real = reinterpret_cast<sqlite3_file*>(self + 1);
  const int code = realVfs->xOpen(realVfs, name, self->real, flags, outFlags);
  if (code != SQLITE_OK) return code;
  self->path = new std::string(name != nullptr ? name : "");
  self->base.pMethods = &kMethods;
  return SQLITE_OK;
}

int cutDelete(sqlite3_vfs*, const char* name, int syncFolder) {
  CutDisk& disk = CutDisk::instance();
  if (disk.off()) return SQLITE_IOERR_DELETE;
  const bool good = disk.tick();
  if (!good && !disk.off()) return SQLITE_IOERR_DELETE;
  CutDisk::File& state = disk.file(name);
  state.deletedUnsynced = true;
  if (!good) return SQLITE_IOERR_DELETE;
  const int code = realVfs->xDelete(realVfs, name, 0);
  if (code == SQLITE_OK && syncFolder != 0) {
    state = CutDisk::File{};
    ++disk.counts.folderSyncs;
  }
  return code;
}

sqlite3_vfs makeVfs() {
  realVfs = sqlite3_vfs_find(nullptr);
  sqlite3_vfs vfs = *realVfs;
  vfs.szOsFile = static_cast<int>(sizeof(CutFile)) + realVfs->szOsFile;
  vfs.pNext = nullptr;
  vfs.zName = "cut";
  vfs.xOpen = cutOpen;
  vfs.xDelete = cutDelete;
  return vfs;
}

}  // namespace

CutDisk& CutDisk::instance() {
  static CutDisk disk;
  static sqlite3_vfs vfs = makeVfs();
  static const int registered = sqlite3_vfs_register(&vfs, 0);
  static_cast<void>(registered);
  return disk;
}

void CutDisk::reset(const std::string& path, const std::string& content) {
  *this = CutDisk{};
  File& book = m_files[path];
  book.synced = content;
  book.nameSynced = true;
}

bool CutDisk::tick() {
  if (m_off) return false;
  ++m_calls;
  if (m_calls == m_cutAt) m_off = true;
  return !m_off && m_calls != m_failAt;
}

void CutDisk::apply(std::string& content, const Operation& operation) {
  if (operation.truncate) {
    content.resize(static_cast<std::size_t>(operation.offset));
    return;
  }
  const auto offset = static_cast<std::size_t>(operation.offset);
  if (content.size() < offset + operation.bytes.size()) {
    content.resize(offset + operation.bytes.size());
  }
  content.replace(offset, operation.bytes.size(), operation.bytes);
}

void CutDisk::restart(std::mt19937& random) {
  std::bernoulli_distribution coin(0.5);
  for (auto& [path, file] : m_files) {
    std::string content = file.synced;
    std::shuffle(file.pending.begin(), file.pending.end(), random);
    for (const Operation& operation : file.pending) {
      if (operation.truncate) {
        if (coin(random)) apply(content, operation);
        continue;
      }
      for (std::size_t at = 0; at < operation.bytes.size(); at += kSector) {
        if (!coin(random)) continue;
        apply(content, {false, operation.offset + static_cast<std::int64_t>(at),
                        operation.bytes.substr(at, kSector)});
      }
    }
    const bool there = file.nameSynced ? !(file.deletedUnsynced && coin(random)) : coin(random);
    std::error_code error;
    std::filesystem::remove(path, error);
    if (there && (file.nameSynced || !file.pending.empty())) {
      std::ofstream(path, std::ios::binary) << content;
    }
  }
  *this = CutDisk{};
}

}  // namespace sw::store
