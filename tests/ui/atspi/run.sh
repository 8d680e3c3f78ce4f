#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# run.sh PROGRAM: the short job on a screen, a bus and in folders of its own; all of it ends with it.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
program=$1

if [[ -z ${SW_ON_OWN_BUS:-} ]]; then
  SW_ON_OWN_BUS=1 exec dbus-run-session -- bash "$0" "$program"
fi

folder=$(mktemp -d)
started=()
end() {
  for process in "${started[@]}"; do kill "$process" 2>/dev/null || true; done
  rm -rf "$folder"
}
trap end EXIT

export XDG_RUNTIME_DIR=$folder/run XDG_DATA_HOME=$folder/data XDG_CONFIG_HOME=$folder/config
export XDG_STATE_HOME=$folder/state XDG_CACHE_HOME=$folder/cache
mkdir -p -m 700 "$XDG_RUNTIME_DIR"
mkfifo "$folder/display"
Xvfb -displayfd 3 -screen 0 1280x800x24 -nolisten tcp 3>"$folder/display" 2>/dev/null &
started+=($!)
read -r number <"$folder/display"
export DISPLAY=:$number QT_QPA_PLATFORM=xcb QT_LINUX_ACCESSIBILITY_ALWAYS_ON=1
# Without a window manager no window gets the keyboard for sure.
openbox 2>/dev/null &
started+=($!)

/usr/bin/python3 "$here/short_job.py" "$program"
