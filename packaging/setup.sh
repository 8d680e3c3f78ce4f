#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Sees to the packages the named sections of dependencies.txt list: setup.sh build test
# As root it installs what is missing; otherwise it prints the one line to run and fails.
set -euo pipefail
list="$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)/dependencies.txt"

packages_of() {  # names the packages of one section
  awk -v wanted="$1" '
    /^# section: / { section = $3; next }
    /^#/ || NF == 0 { next }
    section == wanted { print $1 }' "$list"
}

wanted=()
for section in "$@"; do
  mapfile -t names < <(packages_of "$section")
  if [ "${#names[@]}" -eq 0 ]; then
    echo "setup: dependencies.txt has no section \"$section\"" >&2
    exit 2
  fi
  wanted+=("${names[@]}")
done
[ "${#wanted[@]}" -gt 0 ] || { echo "usage: setup.sh SECTION..." >&2; exit 2; }

if ! command -v dpkg-query >/dev/null; then
  echo "setup: this is not a Debian system. Needed, by their Debian 12 names: ${wanted[*]}" >&2
  exit 1
fi

# dpkg-query fails when it does not know a name: that one is simply not among the installed.
installed="$(dpkg-query -W -f '${db:Status-Status} ${Package}\n' "${wanted[@]}" 2>/dev/null || true)"
missing=()
for name in "${wanted[@]}"; do
  grep -qxF "installed $name" <<<"$installed" || missing+=("$name")
done
[ "${#missing[@]}" -gt 0 ] || exit 0

if [ "$(id -u)" -ne 0 ]; then
  {
    echo "setup: packages are missing. Run this line, then start again:"
    echo "  sudo apt-get update && sudo apt-get install -y --no-install-recommends ${missing[*]}"
  } >&2
  exit 1
fi

echo "setup: installing ${missing[*]}"
export DEBIAN_FRONTEND=noninteractive
apt-get update -q </dev/null
apt-get install -q -y --no-install-recommends "${missing[@]}" </dev/null
