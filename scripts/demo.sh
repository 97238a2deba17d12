#!/bin/sh
# Does the main job once, on the demo case: reads the marks, weighs the metal, argues the value,
# writes the report. Sets up all that it needs in .venv; see README.md.
#
#     sh scripts/demo.sh [FOLDER]    leaves the case and its report in FOLDER (else planish-demo)
set -eu
folder=${1:-}
case $folder in
'' | /*) ;;
*) folder=$PWD/$folder ;;
esac
cd "$(dirname "$0")/.."
. scripts/environment.sh
environment run
exec "$py" -m planish demo -o "${folder:-$PWD/planish-demo}"
