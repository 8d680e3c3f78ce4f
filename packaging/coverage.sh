#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Line coverage of core by all tests; fails below the floor.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
floor=85

bash packaging/setup.sh build test developer
cmake --preset coverage
cmake --build --preset coverage --parallel "$(nproc)"
# Counts add up over runs, and counts of an older build mean nothing.
find build/coverage -name '*.gcda' -delete
ctest --preset coverage "$@"
mkdir -p out/coverage
gcovr --root . --object-directory build/coverage --filter core/ --sort-percentage \
  --fail-under-line "$floor" --print-summary --html-details out/coverage/index.html --txt out/coverage/summary.txt \
  -j "$(nproc)" || {
  status=$?
  echo "coverage: below $floor % of the lines of core (or gcovr failed); see out/coverage/summary.txt" >&2
  exit "$status"
}
cat out/coverage/summary.txt
