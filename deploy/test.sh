#!/bin/sh
# Everything that says whether the tree is good: style, types, structure, tests. Arguments go on to pytest.
# Browser tests run where Chromium is found; BOUTWISE_REQUIRE=browser,postgres turns a skip into a failure.
set -eu
cd "$(dirname "$0")/.."
. deploy/venv.sh
prepare requirements-dev.lock
.venv/bin/ruff format --check --quiet .
.venv/bin/ruff check --quiet .
.venv/bin/mypy
.venv/bin/lint-imports
exec .venv/bin/python -m pytest -n 2 --dist worksteal "$@"
