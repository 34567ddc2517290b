# Sourced by try.sh and test.sh: makes .venv and installs a lock file, once per content of the lock.
# Usage: prepare LOCKFILE
prepare() {
    lock=$1
    python=${PYTHON:-python3}
    "$python" -c 'import sys; sys.exit(sys.version_info < (3, 11))' ||
        { echo "Boutwise needs Python 3.11 or newer; $python is older." >&2; exit 1; }
    [ -x .venv/bin/python ] || "$python" -m venv .venv
    if ! cmp -s "$lock" ".venv/installed-$lock" || ! cmp -s pyproject.toml .venv/installed-pyproject.toml; then
        echo "Installing what $lock pins (once) ..."
        .venv/bin/python -m pip install --quiet --disable-pip-version-check --require-hashes -r "$lock"
        .venv/bin/python -m pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation -e .
        cp "$lock" ".venv/installed-$lock"
        cp pyproject.toml .venv/installed-pyproject.toml
    fi
}
