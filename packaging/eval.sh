#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Runs the evaluations whose tables stand in README.md and prints them.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

bash packaging/setup.sh build test
cmake --preset release -DSW_BUILD_TESTS=ON
cmake --build --preset release --parallel "$(nproc)" --target shim_advisor_eval check_plan_eval
build/release/tests/eval/shim_advisor_eval
echo
build/release/tests/eval/check_plan_eval
