// SPDX-License-Identifier: GPL-3.0-or-later
// The promises of opening: reliability rules for SQLite in rollback mode (SQLite documentation:
// "How To Corrupt", "SQLite Over a Network", "Defense Against The Dark Arts", "Database File
// Format").
#include <signal.h>
#include <stdio.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdio>

#include "store/book_access.h"
#include "store/book_file.h"
#include "store/schema.h"
#include "store_fixture.h"

namespace sw::store {

namespace {

class OpeningTest : public StoreTest {
 protected:
  /// Opening answers `key` in both modes, and neither touches the file or leaves one beside it.
  void expectUntouched(const std::string& key, const BookOptions& options = {}) {
    const std::string before = bytesOf(path);
    for (const OpenMode mode : {OpenMode::ReadWrite, OpenMode::ViewOnly}) {
      EXPECT_EQ(openKey(mode, options), key);
      EXPECT_EQ(bytesOf(path), before);
    }
    for (const auto& item : std::filesystem::directory_iterator(folder.path())) {
      const std::string name = item.path().filename().string();
      EXPECT_TRUE(name == "shop.swbook" || name == "shop-days") << name;
    }
  }
  void patch(std::size_t at, const std::string& bytes) {
    std::string all = bytesOf(path);
    all.replace(at, bytes.size(), bytes);
    writeBytes(path, all);
  }
};

std::string inQuotes(const std::string& text) {
  return "'" + text + "'";
}

/// What the helper program prints; as another user when `user` is given and we are root, since root
/// writes a file of mode 0444.
std::string helper(const std::string& verb, const std::string& path, bool asOther = false) {
  const std::string drop =
      asOther && geteuid() == 0 ? "setpriv --reuid=65534 --regid=65534 --clear-groups " : "";
  const std::string command =
      drop + inQuotes(SW_BOOK_HELPER) + " " + verb + " " + inQuotes(path) + " 2>/dev/null";
  FILE* pipe = popen(command.c_str(), "r");
  std::string out;
  std::array<char, 256> buffer{};
  while (fgets(buffer.data(), buffer.size(), pipe) != nullptr) out += buffer.data();
  pclose(pipe);
  return out;
}

/// A second program that holds the book until it is told to end, or is killed.
class OtherProgram {
 public:
  explicit OtherProgram(const std::string& path) {
    std::array<int, 2> in{};
    std::array<int, 2> out{};
    if (pipe(in.data()) != 0 || pipe(out.data()) != 0) return;
    m_pid = fork();
    if (m_pid == 0) {
      dup2(in[0], 0);
      dup2(out[1], 1);
      close(in[1]);
      close(out[0]);
      execl(SW_BOOK_HELPER, SW_BOOK_HELPER, "hold", path.c_str(), nullptr);
      _exit(127);
    }
    close(in[0]);
    close(out[1]);
    m_in = in[1];
    std::array<char, 3> said{};
    EXPECT_EQ(::read(out[0], said.data(), said.size()), 3);
    EXPECT_EQ(std::string(said.data(), 2), "ok");
    close(out[0]);
  }
  OtherProgram(const OtherProgram&) = delete;
  OtherProgram& operator=(const OtherProgram&) = delete;
  ~OtherProgram() { end(); }
  void kill() {
    ::kill(m_pid, SIGKILL);
    end();
  }
  void end() {
    if (m_pid <= 0) return;
    close(m_in);
    waitpid(m_pid, nullptr, 0);
    m_pid = 0;
  }

 private:
  pid_t m_pid = 0;
  int m_in = -1;
};

}  // namespace

TEST_F(OpeningTest, SettingsAreReadBack) {
  auto book = makeSmallShop();
  Connection& connection = BookAccess::connection(*book);
  const std::vector<std::pair<std::string, std::string>> expected{
      {"foreign_keys", "1"},
      {"recursive_triggers", "1"},
      {"cell_size_check", "1"},
      {"journal_mode", "delete"},
      {"synchronous", "3"},
      {"busy_timeout", "250"},
      {"application_id", std::to_string(0x5357564C)},
      {"user_version", std::to_string(allMigrations().back().to)}};
  for (const auto& [name, value] : expected) {
    EXPECT_EQ(connection.schemaValue("PRAGMA " + name).value_or("error"), value) << name;
  }
}

TEST_F(OpeningTest, GuardsAreOn) {
  auto book = makeSmallShop();
  sqlite3* handle = BookAccess::connection(*book).handle();
  int flag = -1;
  sqlite3_db_config(handle, SQLITE_DBCONFIG_DEFENSIVE, -1, &flag);
  EXPECT_EQ(flag, 1);
  sqlite3_db_config(handle, SQLITE_DBCONFIG_TRUSTED_SCHEMA, -1, &flag);
  EXPECT_EQ(flag, 0);
  EXPECT_EQ(sqlite3_limit(handle, SQLITE_LIMIT_LENGTH, -1), 20'000'000);
  EXPECT_EQ(sqlite3_limit(handle, SQLITE_LIMIT_SQL_LENGTH, -1), 100'000);
  EXPECT_EQ(sqlite3_limit(handle, SQLITE_LIMIT_COLUMN, -1), 100);
  EXPECT_EQ(sqlite3_limit(handle, SQLITE_LIMIT_ATTACHED, -1), 1);
}

TEST_F(OpeningTest, ASettingThatDoesNotTakeIsAnError) {
  // A database in memory cannot have a rollback journal in a file; SQLite says "memory" instead.
  auto connection = Connection::open({}, Access::ReadWrite);
  ASSERT_TRUE(connection);
  const auto settings = durabilitySettings();
  const auto applied = applySettings(**connection, settings);
  ASSERT_FALSE(applied);
  EXPECT_EQ(applied.error().key, "store.setting_refused");
  EXPECT_EQ(applied.error().detail("name"), "journal_mode");
  EXPECT_EQ(applied.error().detail("found"), "memory");
}

TEST_F(OpeningTest, AnotherJournalModeIsPutRight) {
  makeSmallShop().reset();
  EXPECT_EQ(RawBook(path).value("PRAGMA journal_mode = WAL"), "wal");
  auto book = reopen();
  EXPECT_EQ(BookAccess::connection(*book).value("PRAGMA journal_mode").value_or(""), "delete");
  EXPECT_FALSE(std::filesystem::exists(path + "-wal"));
}

TEST_F(OpeningTest, EveryTableIsStrict) {
  makeSmallShop().reset();
  RawBook raw(path);
  EXPECT_EQ(raw.value("SELECT count(*) FROM pragma_table_list WHERE schema = 'main' "
                      "AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' AND strict = 0"),
            "0");
}

TEST_F(OpeningTest, MissingIsMissing) {
  EXPECT_EQ(openKey(OpenMode::ReadWrite), "store.missing");
  EXPECT_EQ(openKey(OpenMode::ViewOnly), "store.missing");
  EXPECT_FALSE(std::filesystem::exists(path));
  EXPECT_FALSE(std::filesystem::exists(path + ".lock"));
}

TEST_F(OpeningTest, AForeignFileIsForeign) {
  for (const std::string& bytes : {std::string(), std::string("hello"), std::string(5000, 'x'),
                                   std::string("SQLite format 3")}) {
    writeBytes(path, bytes);
    expectUntouched("store.foreign");
  }
  std::filesystem::remove(path);
  EXPECT_EQ(RawBook(path).run("CREATE TABLE t (x); INSERT INTO t VALUES (1)"), "");
  expectUntouched("store.foreign");
  std::filesystem::remove(path);
  std::filesystem::create_directory(path);
  EXPECT_EQ(openKey(OpenMode::ReadWrite), "store.foreign");
}

TEST_F(OpeningTest, ADamagedBookIsDamaged) {
  makeSmallShop().reset();
  const std::string good = bytesOf(path);
  patch(0, "XXXXXX");  // the magic, with our number still there
  expectUntouched("store.damaged");
  writeBytes(path, good);
  patch(5 * 4096, std::string(4096, '\x5A'));
  expectUntouched("store.damaged");
  writeBytes(path, good.substr(0, good.size() - 4096));
  expectUntouched("store.damaged");
  writeBytes(path, good);
  EXPECT_EQ(openKey(OpenMode::ReadWrite), "ok");
}

TEST_F(OpeningTest, ABookWithAnotherSchemaIsDamaged) {
  for (const char* change :
       {"DROP TRIGGER \"entry_no_update\"", "CREATE TABLE extra (x INTEGER) STRICT",
        "DROP INDEX \"entry_job\"", "ALTER TABLE \"fact_note\" ADD COLUMN \"more\" TEXT"}) {
    path = folder / (std::to_string(std::string(change).size()) + ".swbook");
    makeSmallShop().reset();
    EXPECT_EQ(RawBook(path).run(change), "");
    const std::string before = bytesOf(path);
    EXPECT_EQ(openKey(OpenMode::ReadWrite), "store.damaged") << change;
    EXPECT_EQ(bytesOf(path), before);
  }
}

TEST_F(OpeningTest, ANewerBookIsNamedAndLeftAlone) {
  makeSmallShop().reset();
  EXPECT_EQ(RawBook(path).run("PRAGMA user_version = 7"), "");
  expectUntouched("store.newer");
  const auto book = Book::open(path, OpenMode::ReadWrite, clock);
  ASSERT_FALSE(book);
  EXPECT_EQ(book.error().code, ErrorCode::BookNewer);
  EXPECT_EQ(book.error().detail("version"), "7");
  EXPECT_EQ(book.error().detail("ours"), std::to_string(allMigrations().back().to));
  EXPECT_EQ(book.error().detail("program"), "0.1.0");
}

TEST_F(OpeningTest, AReadOnlyBookIsReadOnlyAndCanBeViewed) {
  makeSmallShop().reset();
  std::filesystem::permissions(path, std::filesystem::perms(0444));
  const std::string before = bytesOf(path);
  EXPECT_NE(helper("write", path, true).find("store.read_only"), std::string::npos);
  EXPECT_EQ(helper("read", path, true), "ok\n");
  // A writable file in a folder that is not: no journal could be made.
  std::filesystem::permissions(path, std::filesystem::perms(0666));
  chmod(folder.path().c_str(), 0555);
  EXPECT_NE(helper("write", path, true).find("reason=folder"), std::string::npos);
  chmod(folder.path().c_str(), 0755);
  std::filesystem::permissions(path, std::filesystem::perms(0200));
  EXPECT_NE(helper("read", path, true).find("store.cannot_read"), std::string::npos);
  std::filesystem::permissions(path, std::filesystem::perms(0600));
  EXPECT_EQ(bytesOf(path), before);
}

TEST_F(OpeningTest, ABookOnANetworkIsRefusedWithItsName) {
  makeSmallShop().reset();
  BookOptions options;
  for (const std::string type :
       {"nfs", "nfs4", "cifs", "smb3", "9p", "fuse.sshfs", "fuse.rclone"}) {
    options.fileSystemType = [&](const std::string&) { return type; };
    expectUntouched("store.on_network", options);
    const auto book = Book::open(path, OpenMode::ViewOnly, clock, options);
    ASSERT_FALSE(book);
    EXPECT_EQ(book.error().detail("file_system"), type);
    EXPECT_EQ(Book::create(folder / "new.swbook", clock, options).error().key, "store.on_network");
  }
  for (const std::string type : {"ext4", "btrfs", "xfs", "tmpfs", "vfat", "fuseblk", "overlay"}) {
    options.fileSystemType = [&](const std::string&) { return type; };
    EXPECT_EQ(openKey(OpenMode::ReadWrite, options), "ok") << type;
  }
}

TEST_F(OpeningTest, CreatingNeverReplacesAFile) {
  writeBytes(path, "precious");
  const auto book = Book::create(path, clock);
  ASSERT_FALSE(book);
  EXPECT_EQ(book.error().code, ErrorCode::Conflict);
  EXPECT_EQ(book.error().key, "store.exists");
  EXPECT_EQ(bytesOf(path), "precious");
  EXPECT_EQ(Book::create(folder / "none/x.swbook", clock).error().key, "store.cannot_create");
}

TEST_F(OpeningTest, ANewBookIsForItsOwnerAlone) {
  makeSmallShop().reset();
  struct stat info {};
  ASSERT_EQ(stat(path.c_str(), &info), 0);
  EXPECT_EQ(info.st_mode & 0777U, 0600U);
}

TEST_F(OpeningTest, ASecondProgramIsToldWhoAndSinceWhenAndMayView) {
  makeSmallShop().reset();
  OtherProgram other(path);
  const auto book = Book::open(path, OpenMode::ReadWrite, clock);
  ASSERT_FALSE(book);
  EXPECT_EQ(book.error().code, ErrorCode::BookLocked);
  EXPECT_EQ(book.error().key, "store.locked");
  EXPECT_NE(book.error().detail("who").find('@'), std::string::npos);
  EXPECT_TRUE(parseTimestamp(book.error().detail("since"))) << book.error().detail("since");
  EXPECT_EQ(openKey(OpenMode::ViewOnly), "ok");
  other.end();
  EXPECT_EQ(openKey(OpenMode::ReadWrite), "ok");
}

TEST_F(OpeningTest, ASecondBookInOneProgramIsRefusedToo) {
  auto book = makeSmallShop();
  EXPECT_EQ(openKey(OpenMode::ReadWrite), "store.locked");
  EXPECT_EQ(openKey(OpenMode::ViewOnly), "ok");
  EXPECT_NE(helper("write", path).find("store.locked"), std::string::npos);
}

TEST_F(OpeningTest, AKilledProgramBlocksNobody) {
  makeSmallShop().reset();
  OtherProgram other(path);
  EXPECT_EQ(openKey(OpenMode::ReadWrite), "store.locked");
  other.kill();
  EXPECT_TRUE(std::filesystem::exists(path + ".lock"));
  EXPECT_EQ(openKey(OpenMode::ReadWrite), "ok");
  EXPECT_FALSE(std::filesystem::exists(path + ".lock"));
}

TEST_F(OpeningTest, OpeningAgainToViewDoesNotDropTheWritersLocks) {
  // POSIX locks end with any close() of the file in the process: while a transaction runs, a
  // view-only opening must not read the header by itself. Another program then would get in.
  auto book = makeSmallShop();
  auto transaction = Transaction::begin(BookAccess::connection(*book));
  ASSERT_TRUE(transaction);
  EXPECT_EQ(openKey(OpenMode::ViewOnly), "ok");
  const std::string script =
      "import sqlite3,sys\n"
      "c=sqlite3.connect(sys.argv[1],timeout=0)\n"
      "try:\n  c.execute('BEGIN IMMEDIATE'); print('got in')\n"
      "except sqlite3.OperationalError as e: print(e)\n";
  writeBytes(folder / "try.py", script);
  FILE* pipe = popen(
      ("/usr/bin/python3 " + inQuotes(folder / "try.py") + " " + inQuotes(path)).c_str(), "r");
  std::array<char, 256> said{};
  EXPECT_NE(fgets(said.data(), said.size(), pipe), nullptr);
  pclose(pipe);
  EXPECT_EQ(std::string(said.data()), "database is locked\n");
}

TEST_F(OpeningTest, ALinkLeadsToTheSameBookAndLock) {
  auto book = makeSmallShop();
  std::filesystem::create_symlink(path, folder / "link.swbook");
  EXPECT_EQ(Book::open(folder / "link.swbook", OpenMode::ReadWrite, clock).error().key,
            "store.locked");
}

TEST_F(OpeningTest, ALargeBookIsNotReadWholeAtEveryOpening) {
  makeSmallShop().reset();
  patch(5 * 4096, std::string(4096, '\x5A'));
  BookOptions options;
  EXPECT_EQ(openKey(OpenMode::ReadWrite, options), "store.damaged");
  options.quickCheckUpTo = 4096;
  EXPECT_EQ(openKey(OpenMode::ReadWrite, options), "ok");
}

}  // namespace sw::store
