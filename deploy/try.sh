#!/bin/sh
# Plays the main job on this machine: no token, no account, no database server.
#   sh deploy/try.sh          serves the rehearsal page until stopped
#   sh deploy/try.sh --once   plays the opening story, prints it, and ends
set -eu
cd "$(dirname "$0")/.."
. deploy/venv.sh
prepare requirements.lock
exec env BOUTWISE_KEY=none .venv/bin/boutwise rehearse "$@"
