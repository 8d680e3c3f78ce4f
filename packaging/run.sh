#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Builds the program, makes the demonstration book, does the demonstration job, prints its sheet;
# then opens the window, or takes pictures of its pages where there is no display.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

bash packaging/setup.sh build

# The tests need packages of their own, so they are left out until test.sh asks for them; both
# scripts share the build folder, and neither builds twice what the other has built.
configure=(cmake --preset release)
[ -e build/release/CMakeCache.txt ] || configure+=(-DSW_BUILD_TESTS=OFF)
"${configure[@]}"
cmake --build --preset release --target swivelwright --parallel "$(nproc)"
program=build/release/app/swivelwright

# The demonstration book stays as you left it; delete it to have it made anew.
mkdir -p out
[ -e out/demo.swbook ] || "$program" demo --book out/demo.swbook

# The job is done afresh each time, in a book of its own. The demonstration shop has had twelve
# jobs; the script opens the next.
job=13
rm -rf out/demo-job
mkdir out/demo-job
"$program" demo --book out/demo-job/demo-job.swbook
"$program" job --book out/demo-job/demo-job.swbook --script resources/demo/job.jsonl \
  >out/demo-job/answers.jsonl
"$program" check-book out/demo-job/demo-job.swbook
"$program" sheet --book out/demo-job/demo-job.swbook --job "$job" --out out/demo-job-sheet.pdf

echo
echo "Demonstration book: $PWD/out/demo.swbook"
echo "Job sheet:          $PWD/out/demo-job-sheet.pdf"

if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
  exec "$program" --book out/demo.swbook
fi
mkdir -p out/pages
"$program" screenshot --list | cut -f1 | while read -r page; do
  for theme in light dark; do
    for scale in 1 2; do
      "$program" screenshot --book out/demo-job/demo-job.swbook --page "$page" --job "$job" \
        --theme "$theme" --scale "$scale" --out "out/pages/$page-$theme-${scale}x.png" >/dev/null
    done
  done
done
echo "Pages:              $PWD/out/pages"
