#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Compares every C++ file with .clang-format; changes nothing. `--fix` rewrites the files.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

command -v clang-format-16 >/dev/null || bash packaging/setup.sh developer
case "${1:-}" in
  "") options=(--dry-run -Werror) ;;
  --fix) options=(-i) ;;
  *) echo "usage: check-format.sh [--fix]" >&2; exit 2 ;;
esac
find core app ui tests -name '*.cpp' -print0 -o -name '*.h' -print0 | xargs -0 clang-format-16 "${options[@]}"
echo "check-format: done"
