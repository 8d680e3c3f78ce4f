// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <algorithm>

#include "support/child.h"

// The installed program as a script sees it: no display, any locale, real files and streams.

namespace sw::test {
namespace {

const char* const kInput = R"({"value": "2,5 in", "to": "mm"})";

TEST(Binary, ComputesWithoutADisplay) {
  const ChildRun run = runChild(SW_PROGRAM, {{"compute", "convert"}, kInput, {}, {}});
  EXPECT_EQ(run.exitCode, 0) << run.err;
  EXPECT_TRUE(run.out.starts_with(R"({"result":{"value":"63.5 mm",)")) << run.out;
  EXPECT_EQ(run.err, "");
}

TEST(Binary, TheLocaleDoesNotShow) {
  const ChildRun plain = runChild(SW_PROGRAM, {{"compute", "convert"}, kInput, {}, {}});
  for (const char* locale : {"LC_ALL=de_DE.UTF-8", "LC_ALL=C", "LC_ALL=ar_EG.UTF-8"}) {
    const ChildRun run = runChild(SW_PROGRAM, {{"compute", "convert"}, kInput, {locale}, {}});
    EXPECT_EQ(run.out, plain.out) << locale;
  }
}

TEST(Binary, BadInputEndsWithTwoAndWritesNothing) {
  const ChildRun run = runChild(SW_PROGRAM, {{"compute", "convert"}, "{", {}, {}});
  EXPECT_EQ(run.exitCode, 2);
  EXPECT_EQ(run.out, "");
  EXPECT_TRUE(run.err.starts_with("swivelwright compute convert: ")) << run.err;
}

TEST(Binary, AFullDiskEndsWithFour) {
  const ChildRun run = runChild(SW_PROGRAM, {{"compute", "convert"}, kInput, {}, "/dev/full"});
  EXPECT_EQ(run.exitCode, 4);
  EXPECT_EQ(run.err, "swivelwright compute convert: the output cannot be written\n");
}

TEST(Binary, StreamsUntilTheInputEnds) {
  const std::string line =
      std::string(R"({"id": 1, "compute": "convert", "input": )") + kInput + "}\n";
  const ChildRun run =
      runChild(SW_PROGRAM, {{"compute", "--stream"}, line + "bad\n" + line, {}, {}});
  EXPECT_EQ(run.exitCode, 0);
  EXPECT_EQ(std::count(run.out.begin(), run.out.end(), '\n'), 3);
}

TEST(Binary, SaysItsVersion) {
  const ChildRun run = runChild(SW_PROGRAM, {{"--version"}, {}, {}, {}});
  EXPECT_EQ(run.exitCode, 0);
  EXPECT_TRUE(run.out.starts_with("swivelwright ")) << run.out;
}

}  // namespace
}  // namespace sw::test
