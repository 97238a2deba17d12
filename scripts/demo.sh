#!/bin/sh
# Does the main job once, on the demo case: reads the marks, weighs the metal, argues the value,
# writes the report. Sets up all that it needs in .venv; see README.md.
#
#     sh scripts/demo.sh [FOLDER]    leaves the case and its report in FOLDER (planish-demo)
set -eu
cd "$(dirname "$0")/.."
. scripts/environment.sh
environment run
exec "$py" -m planish demo -o "${1:-planish-demo}"
