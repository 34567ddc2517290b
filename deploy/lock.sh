#!/bin/sh
# Writes both lock files anew from pyproject.toml. Needs uv (a development tool; pip installs it).
set -eu
cd "$(dirname "$0")/.."
compile() {
    uv pip compile --quiet --universal --python-version 3.11 --generate-hashes \
        --no-annotate --no-header --no-emit-index-url --extra build "$@" pyproject.toml
}
compile --output-file requirements.lock
compile --extra dev --constraints requirements.lock --output-file requirements-dev.lock
