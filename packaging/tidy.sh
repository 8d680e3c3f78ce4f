#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# clang-tidy over core and app with the list in .clang-tidy; any finding fails the build.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

bash packaging/setup.sh build developer
cmake --preset tidy
cmake --build --preset tidy --parallel "$(nproc)" -- -k 0
