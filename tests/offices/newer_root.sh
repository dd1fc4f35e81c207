# Sourced: a private Debian 13 beside the machine's own Debian 12, and commands that run in it. Sees the checkout and the
# build folder at the places they have outside. Expects $checkout and $build.

skip() { echo "skipped: $1"; exit 0; }

# newer_root NAME PACKAGES: makes the root of this name where it is not there yet; ends with a word where it cannot.
newer_root() {
    local name=$1 packages part mirror
    packages=$(echo $2)
    newer_root=${XDG_CACHE_HOME:-$HOME/.cache}/trenchbook/debian-13-$name
    [ "$(. /etc/os-release && echo "${VERSION_CODENAME:-}")" = bookworm ] || skip "this system is not Debian 12"
    [ "$(id -u)" = 0 ] || skip "a root of another system is made and entered as root only"
    unshare --mount true 2>/dev/null || skip "no mounts of our own are allowed here"
    [ "$(cat "$newer_root/packages" 2>/dev/null)" = "$packages" ] && return
    command -v mmdebstrap >/dev/null || skip "mmdebstrap is not installed"
    # The mirror and the proxy that this machine's own packages come from.
    mirror=$(apt-get indextargets --format '$(SITE)' 'Created-By: Packages' 'Origin: Debian' 'Codename: bookworm' |
        head -n 1)
    [ -n "$mirror" ] || skip "this machine has no package lists to take a mirror from"
    part=$newer_root.part
    rm -rf "$newer_root" "$part"
    mkdir -p "$part"
    apt-config dump Acquire | grep -i '::proxy ' >"$part.proxy"
    mmdebstrap --variant=apt --aptopt="$part.proxy" --aptopt='APT::Install-Recommends "false"' \
        --dpkgopt=force-unsafe-io --dpkgopt='path-exclude=/usr/share/doc/*' --dpkgopt='path-exclude=/usr/share/man/*' \
        --include="${packages// /,}" trixie "$part" "$mirror" ||
        { rm -rf "$part" "$part.proxy"; skip "Debian 13 cannot be fetched from this machine's mirror"; }
    rm -f "$part.proxy"
    echo "$packages" >"$part/packages"
    mv "$part" "$newer_root"
}

# in_newer_root COMMANDS: runs them there, in the checkout. All mounts end with it.
in_newer_root() {
    unshare --mount --propagation private bash -c '
        root=$1 checkout=$2 build=$3
        mkdir -p "$root$checkout" "$root$build"
        mount --bind /proc "$root/proc" && mount --rbind /dev "$root/dev" && mount -t tmpfs tmpfs "$root/tmp" &&
            mkdir -p "$root$checkout" "$root$build" && mount --bind "$checkout" "$root$checkout" &&
            mount --bind "$build" "$root$build" || exit 1
        exec chroot "$root" /usr/bin/env -i PATH=/usr/sbin:/usr/bin:/sbin:/bin HOME=/root LANG=C.UTF-8 \
            TRENCHBOOK_BUILD="$build" bash -c "cd \"\$0\" && $4" "$checkout"
    ' in-newer-root "$newer_root" "$checkout" "$build" "$1"
}
