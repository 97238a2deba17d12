#!/bin/sh
# Passes every check: style and types, the floors of the house, the tests. Sets up all that it
# needs in .venv; see README.md.
#
#     sh scripts/test.sh             everything
#     sh scripts/test.sh quick       leaves out the tests marked slow
set -eu
cd "$(dirname "$0")/.."
. scripts/environment.sh
environment dev

case ${1:-} in
quick) which='not slow' ;;
'') which='slow or not slow' ;;
*) stop "test.sh: '$1' is not known; give nothing, or: quick" ;;
esac

# Some tests hand the report to programs of the system; without them they skip and say so.
lacking=
command -v pdftotext >/dev/null 2>&1 || lacking="$lacking poppler-utils"
command -v javac >/dev/null 2>&1 || lacking="$lacking default-jdk-headless"
[ -e /usr/share/java/jaxb-runtime.jar ] || lacking="$lacking libjaxb-java"
if [ -n "$lacking" ]; then
    if may_apt; then
        # shellcheck disable=SC2086 # a list of words
        apt_install $lacking || say "They could not be installed: tests that need them will skip."
    else
        say "Not installed:$lacking. Tests that need them will skip."
    fi
fi

failed=
check() { # check NAME COMMAND...
    say "== $1"
    shift
    "$@" || failed=yes
}
check "ruff: style" "$py" -m ruff check --quiet .
check "ruff: layout" "$py" -m ruff format --check --quiet .
check "mypy: types" "$py" -m mypy
check "import-linter: floors" "$py" -c \
    'from importlinter.cli import lint_imports_command as run; run(["--no-cache"])'
check "pytest: tests" "$py" -m pytest -q -m "$which"
[ -z "$failed" ] || stop "a check failed; see above"
