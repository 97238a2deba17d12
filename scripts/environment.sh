# shellcheck shell=sh
# Sourced by demo.sh and test.sh: finds Python, makes the environment, installs what is pinned.
# Plain POSIX sh; needs python3 only: no pip, no venv package, no root.
#
#   PLANISH_PYTHON   the Python to use (else the first suitable of python3, python3.13 ... 3.11)
#   PLANISH_ENV      folder of the environment (else .venv beside the sources)
#   PLANISH_APT      "no": never install packages of the system, even as root

say() { printf '%s\n' "$*" >&2; }
stop() {
    say "planish: $*"
    exit 2
}

find_python() {
    for python in ${PLANISH_PYTHON:-python3 python3.13 python3.12 python3.11}; do
        if "$python" -c 'import sys; sys.exit(not (3, 11) <= sys.version_info[:2] < (3, 14))' \
            >/dev/null 2>&1; then
            return 0
        fi
    done
    stop "no Python 3.11, 3.12 or 3.13 found; install python3, or name one in PLANISH_PYTHON"
}

may_apt() {
    [ "$(id -u)" = 0 ] && [ "${PLANISH_APT:-yes}" != no ] && command -v apt-get >/dev/null 2>&1
}

apt_install() { # apt_install PACKAGE...
    say "Installing system packages: $*"
    apt-get update -qq >/dev/null && DEBIAN_FRONTEND=noninteractive \
        apt-get install -qq -y --no-install-recommends "$@" >/dev/null
}

# pip out of its wheel, after its checksum
pip() {
    "$python" -c '
import hashlib, pathlib, sys
digest, name = pathlib.Path("tools/SHA256SUMS").read_text().split()
if hashlib.sha256(pathlib.Path("tools", name).read_bytes()).hexdigest() != digest:
    sys.exit(f"planish: tools/{name} is damaged; get it again with: git checkout tools")
' || exit 2
    PIP_ROOT_USER_ACTION=ignore PYTHONPATH=$(echo tools/pip-*.whl) \
        "$py" -m pip --disable-pip-version-check "$@"
}

stamp() { # stamp KIND: changes whenever what would be installed changes
    echo "$1 $(cat "$(lock_of "$1")" pyproject.toml | cksum)"
}

lock_of() {
    case $1 in
    run) echo constraints-run.txt ;;
    dev) echo constraints.txt ;;
    esac
}

# environment KIND (run or dev): sets $py, a Python in which planish and its packages import.
environment() {
    find_python
    place=${PLANISH_ENV:-.venv}
    py=$place/bin/python
    if [ ! -e "$place/target" ] && ! "$py" -c '' >/dev/null 2>&1; then
        say "Making an environment in $place ($("$python" --version))"
        make_place
    fi
    [ ! -e "$place/target" ] || py=$python
    if ! grep -qxF "$(stamp "$1")" "$place/installed" 2>/dev/null; then
        say "Installing the pinned packages of $(lock_of "$1") into $place"
        install_packages "$(lock_of "$1")" || stop "the packages could not be installed: the" \
            "lines above say why; a package index must be within reach"
        stamp run >"$place/installed"
        [ "$1" = run ] || stamp "$1" >>"$place/installed"
    fi
    if [ -e "$place/target" ]; then
        PYTHONPATH=$PWD/src:$(cd "$place/target" && pwd)
        export PYTHONPATH
    fi
}

make_place() {
    "$python" -m venv --clear --without-pip "$place" >/dev/null 2>&1 && return 0
    if may_apt && apt_install python3-venv &&
        "$python" -m venv --clear --without-pip "$place" >/dev/null 2>&1; then
        return 0
    fi
    say "Python has no venv module here: the packages go into the plain folder $place/target"
    rm -rf "$place"
    mkdir -p "$place/target" || stop "cannot write $place; run from a folder that you own"
}

install_packages() { # install_packages LOCK-FILE
    if [ -e "$place/target" ]; then
        rm -rf "$place/target" && mkdir "$place/target" &&
            pip install --quiet --only-binary :all: --require-hashes -r "$1" \
                --target "$place/target"
    else
        pip install --quiet --only-binary :all: --require-hashes -r "$1" &&
            pip install --quiet --no-deps --no-build-isolation --no-index --editable .
    fi
}
