#!/usr/bin/env bash
# The tests in a real browser need Chromium. On a Debian-like system this installs it, if it is not there already;
# elsewhere set CHROMIUM to the path of yours.
set -euo pipefail
[ -n "${CHROMIUM:-}" ] && exit 0
[ -x /usr/bin/chromium ] && exit 0
as_root=''
[ "$(id -u)" -eq 0 ] || as_root='sudo'
$as_root apt-get update -qq
DEBIAN_FRONTEND=noninteractive $as_root apt-get install -y -qq --no-install-recommends chromium fonts-dejavu-core
