#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Builds everything as users get it and runs all tests. Arguments go to ctest:
#   bash packaging/test.sh -R Units
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

bash packaging/setup.sh build test
cmake --preset release -DSW_BUILD_TESTS=ON
cmake --build --preset release --parallel "$(nproc)"
ctest --preset release "$@"
