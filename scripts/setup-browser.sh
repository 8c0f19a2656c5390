#!/usr/bin/env bash
# The tests in a real browser need Chromium, those of serial devices socat. On a Debian-like system this installs them, if
# they are not there already; elsewhere set CHROMIUM to the path of yours, and install socat.
set -euo pipefail
missing=()
[ -n "${CHROMIUM:-}" ] || [ -x /usr/bin/chromium ] || missing+=(chromium fonts-dejavu-core)
command -v socat >/dev/null || missing+=(socat)
[ "${#missing[@]}" -eq 0 ] && exit 0
as_root=''
[ "$(id -u)" -eq 0 ] || as_root='sudo'
$as_root apt-get update -qq
DEBIAN_FRONTEND=noninteractive $as_root apt-get install -y -qq --no-install-recommends "${missing[@]}"
