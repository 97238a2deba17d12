#!/bin/sh
# Writes the two lock files anew from pyproject.toml: every package that may be installed, at one
# version, with the hashes of its files. Needs uv. No index address is written into them.
#
#     sh scripts/lock.sh            keep the versions that still fit
#     sh scripts/lock.sh --upgrade  take the newest
set -eu
cd "$(dirname "$0")/.."
command -v uv >/dev/null 2>&1 || PATH="$PWD/.venv/bin:$PATH"
lock() { # lock OUTPUT EXTRA-ARGUMENTS
    output=$1
    shift
    uv pip compile --quiet --universal --generate-hashes --python-version 3.11 --no-header \
        --no-emit-index-url --no-emit-find-links "$@" pyproject.toml --output-file "$output"
}
lock constraints.txt --extra build --extra dev "$@"
# a part of the first: what the program needs to run (and hatchling, to install itself)
lock constraints-run.txt --extra build --constraint constraints.txt "$@"
