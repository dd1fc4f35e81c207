# Sourced: the packages that building and testing need, and installing those that are missing.
# system: the release of Debian that they are for, this machine's where nobody says. Debian 12 has a Boost and a
# clang-format of several versions; the plain names are what later ones have.
system=${system:-$(. /etc/os-release && echo "${VERSION_CODENAME:-}")}
boost=libboost-dev
format=
clang_runtime=libclang-rt-dev
if [ "$system" = bookworm ]; then
    boost=libboost1.81-dev
    format=clang-format-14
    clang_runtime=libclang-rt-14-dev
fi
packages="cmake ninja-build g++ ccache $boost libreoffice-calc libreoffice-dev libgtest-dev librapidcheck-dev libexpat1-dev zlib1g-dev
    libglpk-dev python3-uno python3-pytest python3-pytest-xdist procps poppler-utils fonts-liberation fonts-dejavu-core
    $format faketime xvfb xdotool openbox"
# For the package for Windows, .ci/windows.sh: not needed for anything else. GoogleTest comes as source, for the tests.
windows_packages="g++-mingw-w64-x86-64-posix googletest unzip"

# missing_packages NAME...: those that are not installed.
missing_packages() {
    local package
    for package in "$@"; do
        dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null | grep -qx installed || echo "$package"
    done
}

# install_packages NAME...
install_packages() {
    local root=
    [ "$(id -u)" = 0 ] || root=sudo
    $root apt-get update &&
        $root env DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends "$@"
}
