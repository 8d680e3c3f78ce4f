// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>

// Test discovery runs the binary without the test's environment, so the platform default stands
// here.
int main(int argc, char** argv) {
  setenv("QT_QPA_PLATFORM", "offscreen", 0);
  setenv("TZ", "UTC", 1);
  testing::InitGoogleMock(&argc, argv);
  return RUN_ALL_TESTS();
}
